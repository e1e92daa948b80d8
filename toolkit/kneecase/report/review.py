"""A review: every answer the record supports, what was not measured, and the red flags before all else."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable
from dataclasses import dataclass

from kneecase import measures, recovery
from kneecase.answers import Answer
from kneecase.errors import InputError
from kneecase.record import MEASURES, Banner, Case, Reading, banner_of
from kneecase.report.red_flags import RedFlags, red_flags

__all__ = ["QUESTIONS", "Question", "Review", "Section", "review", "reviewed"]


@dataclass(frozen=True, kw_only=True)
class Section:
    """One answer of a review, with the key that says which question it answers."""

    key: str
    answer: Answer


@dataclass(frozen=True, kw_only=True)
class Review:
    """Everything a review shows.

    ``not_measured`` names what the record holds no reading for; ``not_worked_out`` pairs a
    question with the sentence that says why it has no answer.
    """

    case: Case
    banner: Banner
    flags: RedFlags
    sections: tuple[Section, ...]
    not_measured: tuple[str, ...]
    not_worked_out: tuple[tuple[str, str], ...]

    @property
    def in_scope(self) -> bool:
        """Whether kneecase reasons about this knee at all."""
        return not self.banner.outside_scope


@dataclass(frozen=True, kw_only=True)
class Question:
    """One question of a review: what it is called, what it needs, and the answer to it.

    ``asked`` says that it is answered from what was told at the visits, not from readings.
    """

    key: str
    words: str
    needs: tuple[str, ...]
    answer: Callable[[Case, dt.date], Answer]
    days: int = 1
    asked: bool = False


def _group(*groups: str) -> tuple[str, ...]:
    return tuple(measure.id for measure in MEASURES.values() if measure.group in groups)


_TORQUE = ("quadriceps_torque", "hamstring_torque", "quadriceps_force", "hamstring_force")

QUESTIONS = (
    Question(
        key="flexion_gain",
        words="gain of flexion",
        needs=("knee_flexion",),
        days=2,
        answer=lambda case, on: recovery.motion_gain(case, "knee_flexion", on=on),
    ),
    Question(
        key="extension_gain",
        words="gain of extension",
        needs=("knee_extension",),
        days=2,
        answer=lambda case, on: recovery.motion_gain(case, "knee_extension", on=on),
    ),
    Question(
        key="motion",
        words="motion against the other knee",
        needs=("knee_flexion", "knee_extension", "heel_height_difference"),
        answer=lambda case, on: measures.motion_deficits(case, on),
    ),
    Question(
        key="effusion",
        words="effusion",
        needs=("effusion",),
        answer=lambda case, on: measures.effusion_course(case, on),
    ),
    Question(
        key="symptoms",
        words="pain and soreness",
        needs=(),
        answer=lambda case, on: measures.pain_and_soreness(case, on),
        asked=True,
    ),
    Question(
        key="girth",
        words="girth",
        needs=_group("girth"),
        answer=lambda case, on: measures.girth_differences(case, on),
    ),
    Question(
        key="strength",
        words="strength",
        needs=_TORQUE,
        answer=lambda case, on: measures.strength_symmetry(case, on),
    ),
    Question(
        key="go_ahead",
        words="whether maximal hopping may go ahead",
        needs=_group("hop"),
        answer=lambda case, on: measures.hop_go_ahead(case, on),
    ),
    Question(
        key="hops",
        words="hop tests",
        needs=_group("hop"),
        answer=lambda case, on: measures.hop_symmetry(case, on),
    ),
    Question(
        key="capacity",
        words="the other limb before surgery",
        needs=(*_group("hop"), *_TORQUE),
        answer=lambda case, on: measures.preoperative_capacity(case, on),
    ),
    Question(
        key="balance",
        words="star excursion balance",
        needs=_group("balance"),
        answer=lambda case, on: measures.star_excursion(case, on),
    ),
    Question(
        key="landing",
        words="landing and step-down quality",
        needs=_group("movement"),
        answer=lambda case, on: measures.landing_quality(case, on),
    ),
    Question(
        key="scores",
        words="outcome scores",
        needs=_group("score"),
        answer=lambda case, on: measures.outcome_scores(case, on),
    ),
)
"""The questions of a review, in its order."""


def review(case: Case, on: dt.date | None = None) -> tuple[Answer, ...]:
    """Every answer the record supports on the day ``on`` (default the last recorded date).

    A knee outside the scope of kneecase gets none: it is recorded, and its red flags are shown.

    Parameters
    ----------
    case : Case
        The case.
    on : datetime.date, optional
        As known on this day.

    Returns
    -------
    tuple of Answer
        In the order of a review; a question without a reading since surgery has none.

    Examples
    --------
    >>> import datetime as dt
    >>> from kneecase.record import Athlete, Case, Surgery
    >>> surgery = Surgery(date=dt.date(2026, 3, 2), side="left")
    >>> review(Case(athlete=Athlete(pseudonym="Rush"), surgery=surgery))
    ()
    """
    return tuple(section.answer for section in reviewed(case, on).sections)


def reviewed(case: Case, on: dt.date | None = None) -> Review:
    """The whole review: answers, red flags, and what could not be answered and why.

    Parameters
    ----------
    case : Case
        The case.
    on : datetime.date, optional
        As known on this day; the last recorded date by default.

    Returns
    -------
    Review
        What the page and the text show.
    """
    day = on or case.last_date
    banner = banner_of(case, day)
    sections: list[Section] = []
    absent: list[str] = []
    refused: list[tuple[str, str]] = []
    for question in () if banner.outside_scope else QUESTIONS:
        days = _days_told(case, day) if question.asked else _days_measured(case, question.needs, day)
        if days == 0:
            absent.append(question.words + _reasons(case, question.needs, day))
            continue
        if days < question.days:
            refused.append((question.words, f"the operated knee was read on {days} day, and it takes two."))
            continue
        try:
            sections.append(Section(key=question.key, answer=question.answer(case, day)))
        except InputError as error:
            refused.append((question.words, str(error)))
    return Review(
        case=case,
        banner=banner,
        flags=red_flags(case, day),
        sections=tuple(sections),
        not_measured=tuple(absent),
        not_worked_out=tuple(refused),
    )


def _days_measured(case: Case, needs: tuple[str, ...], day: dt.date) -> int:
    return len({reading.date for reading in _since_surgery(case, needs, day) if not reading.missing})


def _days_told(case: Case, day: dt.date) -> int:
    """Days since surgery on which pain or soreness was asked."""
    told = [v.date for v in case.visits if v.pain or v.soreness]
    return len({date for date in told if case.surgery.date <= date <= day})


def _reasons(case: Case, needs: tuple[str, ...], day: dt.date) -> str:
    """The reasons recorded for having no reading, such as ' (unsafe on 2026-02-18)'."""
    given = [f"{r.missing} on {r.date.isoformat()}" for r in _since_surgery(case, needs, day) if r.missing]
    return f" ({', '.join(dict.fromkeys(given))})" if given else ""


def _since_surgery(case: Case, needs: tuple[str, ...], day: dt.date) -> list[Reading]:
    """Rows of the operated limb, or of no limb."""
    return [
        reading
        for reading in case.readings
        if reading.measure in needs
        and reading.side != case.uninvolved
        and case.surgery.date <= reading.date <= day
    ]
