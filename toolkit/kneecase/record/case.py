"""A case: one athlete, one operated knee, everything recorded about it."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import TYPE_CHECKING

from kneecase.errors import InputError, Problem
from kneecase.record.rows import Athlete, Event, Limit, Reading, Side, Surgery, Visit, other_side
from kneecase.record.terms import OUTSIDE_SCOPE

if TYPE_CHECKING:
    import pandas as pd

__all__ = ["Case"]


@dataclass(frozen=True, kw_only=True)
class Case:
    """One recorded case, read-only; methods that change something return a new one.

    Parameters
    ----------
    athlete, surgery : Athlete, Surgery
        Who, and the operation.
    readings, visits : tuple of Reading, tuple of Visit
        In order of date, then of the file.
    limits, events : tuple of Limit, tuple of Event
        Surgeon's limits and dated events.
    warnings : tuple of Problem
        What was unlikely but possible when the case was read; nothing was changed.
    path : Path or None
        The folder it was read from.
    fingerprint : mapping
        SHA-256 of each file as read, so that a save can tell whether the disk moved on.
    texts : mapping
        The text of each file as read, kept so that comments, unknown keys and columns survive a save.
    """

    athlete: Athlete
    surgery: Surgery
    readings: tuple[Reading, ...] = ()
    visits: tuple[Visit, ...] = ()
    limits: tuple[Limit, ...] = ()
    events: tuple[Event, ...] = ()
    warnings: tuple[Problem, ...] = ()
    format_version: int = 1
    path: Path | None = None
    fingerprint: Mapping[str, str] = field(default_factory=dict, repr=False, hash=False)
    texts: Mapping[str, str] = field(default_factory=dict, repr=False, hash=False)

    # -- sides and time -------------------------------------------------------------

    @property
    def involved(self) -> Side:
        """The operated side."""
        return self.surgery.side

    @property
    def uninvolved(self) -> Side:
        """The other side."""
        return other_side(self.surgery.side)

    def limb(self, side: Side | None) -> str:
        """``"involved"``, ``"uninvolved"``, or ``""`` for a measure that has no side."""
        if side is None:
            return ""
        return "involved" if side == self.involved else "uninvolved"

    @property
    def last_date(self) -> dt.date:
        """The last recorded date: of a reading or visit, else of the surgery. Never today."""
        dates = [*(r.date for r in self.readings), *(v.date for v in self.visits)]
        return max([self.surgery.date, *dates])

    def weeks(self, date: dt.date, since: dt.date | None = None) -> float:
        """Weeks from surgery, or from ``since``, to ``date`` [weeks]: days ÷ 7, negative before."""
        return (date - (since or self.surgery.date)).days / 7

    def as_of(self, date: dt.date) -> Case:
        """The case as it was known at the end of ``date``: nothing recorded later is in it.

        Being a part of the case, it cannot be saved over the whole.

        Raises
        ------
        InputError
            If ``date`` is not a calendar date.
        """
        if isinstance(date, dt.datetime) or not isinstance(date, dt.date):
            raise InputError(f"date must be a calendar date (datetime.date), got {date!r}.")
        limits = tuple(
            replace(limit, lifted=limit.lifted if limit.lifted and limit.lifted <= date else None)
            for limit in self.limits
            if limit.start <= date
        )
        return replace(
            self,
            readings=tuple(r for r in self.readings if r.date <= date),
            visits=tuple(v for v in self.visits if v.date <= date),
            events=tuple(e for e in self.events if e.date <= date),
            limits=limits,
            fingerprint={},
        )

    # -- choosing readings ----------------------------------------------------------

    def readings_of(
        self,
        measure: str,
        *,
        side: Side | None = None,
        on: dt.date | None = None,
        until: dt.date | None = None,
        motion: str | None = None,
    ) -> tuple[Reading, ...]:
        """Readings of one measure in order of date, including lost trials and reasons for none.

        Parameters
        ----------
        measure : str
            Id of the measure in :data:`kneecase.record.MEASURES`.
        side : {"left", "right"}, optional
            Only this side.
        on, until : datetime.date, optional
            Only that day; only up to and including that day.
        motion : str, optional
            Only ``"active"``, ``"passive"`` or ``""`` (not said).

        Raises
        ------
        InputError
            If the measure is unknown.
        """
        from kneecase.record.catalogue import measure_named

        measure_named(measure)
        return tuple(
            r
            for r in self.readings
            if r.measure == measure
            and (side is None or r.side == side)
            and (on is None or r.date == on)
            and (until is None or r.date <= until)
            and (motion is None or r.condition.motion == motion)
        )

    # -- orders and scope -----------------------------------------------------------

    def limits_in_force(self, on: dt.date | None = None) -> tuple[Limit, ...]:
        """The surgeon's limits that bind on the day ``on`` (default the last recorded date)."""
        day = on or self.last_date
        return tuple(limit for limit in self.limits if limit.in_force(day))

    def limit(self, kind: str, on: dt.date | None = None) -> Limit | None:
        """The tightest limit of ``kind`` in force, or ``None``; one without a number allows nothing."""
        found = [limit for limit in self.limits_in_force(on) if limit.kind == kind]
        if not found:
            return None
        if kind == "extension":  # the largest angle short of straight that must be kept
            return max(found, key=lambda limit: float("inf") if limit.value is None else limit.value)
        return min(found, key=lambda limit: float("-inf") if limit.value is None else limit.value)

    @property
    def outside_scope(self) -> tuple[str, ...]:
        """Concomitant procedures that put this knee outside what kneecase reasons about."""
        return tuple(name for name in self.surgery.concomitant if name in OUTSIDE_SCOPE)

    # -- tables and files -----------------------------------------------------------

    @property
    def measurements(self) -> pd.DataFrame:
        """One row a reading or trial, as a pandas table.

        Columns ``date, week, measure, side, limb, trial, value, unit, tester, device, note``
        come first; then ``item, status, missing, position, motion, timing, mode, angle_deg,
        speed_deg_per_s, lever_arm_m, administration, text, raw_value, raw_unit, id``.
        ``week`` counts from surgery [weeks]; ``value`` is in ``unit``.
        """
        from kneecase.record.tables import measurements_table

        return measurements_table(self)

    def with_readings(self, *readings: Reading) -> Case:
        """A new case with these readings added, in order of date; nothing is saved.

        Raises
        ------
        InputError
            If a reading's id is already in the case.
        """
        known = {r.id for r in self.readings}
        for reading in readings:
            if reading.id in known:
                raise InputError(f"reading id must be new in the case, got {reading.id!r} again.")
            known.add(reading.id)
        return replace(self, readings=tuple(sorted((*self.readings, *readings), key=lambda r: r.date)))

    def without_readings(self, *ids: str) -> Case:
        """A new case without the readings of these ids; nothing is saved.

        Raises
        ------
        InputError
            If there is no reading of that id.
        """
        known = {r.id for r in self.readings}
        for id_ in ids:
            if id_ not in known:
                raise InputError(f"id must be that of a reading in the case, got {id_!r}.")
        gone = set(ids)
        return replace(self, readings=tuple(r for r in self.readings if r.id not in gone))

    def with_visits(self, *visits: Visit) -> Case:
        """A new case with these visits added, in order of date; nothing is saved.

        Raises
        ------
        InputError
            If a visit's id is already in the case.
        """
        known = {v.id for v in self.visits}
        for visit in visits:
            if visit.id in known:
                raise InputError(f"visit id must be new in the case, got {visit.id!r} again.")
            known.add(visit.id)
        return replace(self, visits=tuple(sorted((*self.visits, *visits), key=lambda v: v.date)))

    def with_limits(self, *limits: Limit) -> Case:
        """A new case with these limits or orders of the surgeon added after the others; nothing is saved."""
        return replace(self, limits=(*self.limits, *limits))

    def with_events(self, *events: Event) -> Case:
        """A new case with these dated events added after the others; nothing is saved."""
        return replace(self, events=(*self.events, *events))

    def save(self, path: str | Path | None = None) -> Case:
        """Write the case to its folder, or to ``path``, and return it as it now stands on disk.

        Atomic: a process killed at any instant leaves a readable case. The version before
        is kept and can be had back (:func:`kneecase.record.undo`).

        Raises
        ------
        CaseChangedError
            If the files changed on disk since this case was read.
        CaseLockedError
            If another program is saving the case at this moment.
        SaveError
            If the folder cannot be written (read-only, full disk); nothing was changed.
        """
        from kneecase.record.saving import save_case

        return save_case(self, path)
