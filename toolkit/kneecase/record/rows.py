"""The rows of a record: what was measured, asked, ordered and done, each with its date.

Everything here is frozen and plain. Left and right are used in the record;
arithmetic elsewhere speaks of the involved (operated) and uninvolved limb.
Dates are calendar dates without a time zone.
"""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Literal

__all__ = ["Athlete", "Condition", "Event", "Limit", "Reading", "Side", "Surgery", "Visit", "other_side"]

Side = Literal["left", "right"]


def other_side(side: Side) -> Side:
    """The opposite side.

    Parameters
    ----------
    side : {"left", "right"}
        One side.

    Returns
    -------
    {"left", "right"}
        The other.
    """
    return "right" if side == "left" else "left"


@dataclass(frozen=True, kw_only=True)
class Condition:
    """How a reading was taken; two readings are compared only where this agrees.

    ``motion`` is ``"active"``, ``"passive"`` or ``""`` (not said); ``timing`` is
    ``"before"`` or ``"after"`` treatment or warm water, or ``""``; ``mode`` is
    ``"isometric"``, ``"concentric"`` or ``"eccentric"``; ``administration`` is the
    id of the way a test was given (see :mod:`kneecase.measures`).
    """

    position: str = ""
    motion: str = ""
    timing: str = ""
    mode: str = ""
    angle_deg: float | None = None
    speed_deg_per_s: float | None = None
    lever_arm_m: float | None = None
    administration: str = ""

    def words(self) -> str:
        """The condition in words, for people; empty when nothing was said."""
        parts = [self.motion, self.position, self.mode]
        if self.angle_deg is not None:
            parts.append(f"at {self.angle_deg:g}°")
        if self.speed_deg_per_s is not None:
            parts.append(f"at {self.speed_deg_per_s:g}°/s")
        if self.lever_arm_m is not None:
            parts.append(f"lever arm {self.lever_arm_m:g} m")
        if self.timing:
            parts.append(f"{self.timing} treatment")
        return ", ".join(part for part in parts if part)


@dataclass(frozen=True, kw_only=True)
class Reading:
    """One reading or trial, or the reason there is none.

    ``value`` is in the measure's own unit (``unit``); ``raw_value`` and
    ``raw_unit`` keep what was typed.  ``value`` is ``None`` exactly when
    ``missing`` gives the reason.  ``text`` keeps an entry that was words
    (an effusion grade, neutral-zero motion).  ``row`` is the line of the file
    it came from; ``extra`` keeps the columns kneecase does not know.
    """

    id: str
    date: dt.date
    measure: str
    side: Side | None
    value: float | None
    unit: str
    item: int | None = None
    trial: int | None = None
    status: Literal["scored", "lost", "practice"] = "scored"
    missing: Literal["", "declined", "unsafe", "not done"] = ""
    tester: str = ""
    device: str = ""
    condition: Condition = field(default_factory=Condition)
    text: str = ""
    raw_value: str = ""
    raw_unit: str = ""
    note: str = ""
    row: int | None = None
    extra: Mapping[str, str] = field(default_factory=dict, hash=False)


@dataclass(frozen=True, kw_only=True)
class Visit:
    """What was asked, done and decided on one day.

    ``answers`` maps a question of :data:`kneecase.record.QUESTIONS` to
    ``"yes"``, ``"no"`` or ``"not asked"``; a question that is absent was not
    asked.  ``pain`` maps ``"rest"``, ``"activity"`` and ``"next morning"`` to
    0–10 [points]; a missing key was not asked.
    """

    id: str
    date: dt.date
    clinician: str = ""
    pain: Mapping[str, float] = field(default_factory=dict, hash=False)
    answers: Mapping[str, str] = field(default_factory=dict, hash=False)
    soreness: str = ""
    aids: str = ""
    setting: str = ""
    activity: str = ""
    dose: str = ""
    response_next_day: str = ""
    action: str = ""
    agreement: str = ""
    reason: str = ""
    decided_by: str = ""
    surgeon_told: str = ""
    override_of: str = ""
    note: str = ""
    row: int | None = None
    extra: Mapping[str, str] = field(default_factory=dict, hash=False)

    def answer(self, question: str) -> str:
        """``"yes"``, ``"no"`` or ``"not asked"``; never assumes."""
        return self.answers.get(question, "not asked")


@dataclass(frozen=True, kw_only=True)
class Event:
    """Something that restarts the clock or bends the course: manipulation, re-injury, second surgery."""

    date: dt.date
    kind: str
    note: str = ""


@dataclass(frozen=True, kw_only=True)
class Limit:
    """A surgeon's written limit or order.

    ``kind`` is one of :data:`kneecase.record.LIMIT_KINDS`.  Without ``until`` and
    ``lifted`` it is in force until lifted.  ``value`` is the largest allowed
    number [``unit``] for kinds that have one.
    """

    kind: str
    start: dt.date
    value: float | None = None
    unit: str = ""
    until: dt.date | None = None
    lifted: dt.date | None = None
    ordered_by: str = ""
    note: str = ""

    def in_force(self, on: dt.date) -> bool:
        """Whether the limit binds on the day ``on``; the last day of ``until`` still counts."""
        if on < self.start or (self.lifted is not None and on >= self.lifted):
            return False
        return self.until is None or on <= self.until


@dataclass(frozen=True, kw_only=True)
class Athlete:
    """Who the record is about; a pseudonym, never a name."""

    pseudonym: str
    year_of_birth: int | None = None
    age_years: float | None = None
    sex: str = ""
    mass_kg: float | None = None
    height_cm: float | None = None
    limb_length_cm: Mapping[Side, float] = field(default_factory=dict, hash=False)
    shank_length_cm: Mapping[Side, float] = field(default_factory=dict, hash=False)
    dominant_side: Side | None = None
    sport: str = ""
    position: str = ""
    skeletally_mature: bool | None = None


@dataclass(frozen=True, kw_only=True)
class Surgery:
    """The operation and what was done besides; ``earlier`` lists previous injuries or surgery by side."""

    date: dt.date
    side: Side
    graft: str = ""
    harvest_side: Side | None = None
    allograft: bool | None = None
    revision: bool | None = None
    concomitant: tuple[str, ...] = ()
    earlier: Mapping[Side, tuple[str, ...]] = field(default_factory=dict, hash=False)
