"""From the rows of ``measurements.csv`` to readings, every fault noted on the way."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from typing import Literal, cast

from kneecase.record.catalogue import MEASURES, Measure
from kneecase.record.columns import EXTENSION_SUFFIX, FLEXION_SUFFIX
from kneecase.record.conditions import Conditions
from kneecase.record.date_column import DateBounds, DateColumn
from kneecase.record.dates import DateOrder
from kneecase.record.entries import Entry, measured, weigh
from kneecase.record.measure_cells import (
    has_no_value,
    is_knee_motion,
    is_value_wanted,
    item_number,
    measure_of,
    whole_number,
)
from kneecase.record.neutral_zero import neutral_zero
from kneecase.record.numbers import decimal_mark
from kneecase.record.problems import CellError, Row
from kneecase.record.rows import Condition, Reading, Side
from kneecase.record.terms import MISSING_REASONS, STATUSES
from kneecase.record.words import closed_word, side_word

__all__ = ["CaseFacts", "readings_from"]

_NUMBER_COLUMNS = ("value", "angle_deg", "speed_deg_per_s", "lever_arm_m")
_EXTENSION, _FLEXION = MEASURES["knee_extension"], MEASURES["knee_flexion"]
_DEGREES = ("", "deg", "°", "degree", "degrees")

_Status = Literal["scored", "lost", "practice"]
_Missing = Literal["", "declined", "unsafe", "not done"]


@dataclass(frozen=True)
class CaseFacts:
    """What ``case.toml`` says that the tables are read with; ``None`` where it could not be read."""

    bounds: DateBounds = field(default_factory=DateBounds)
    involved: Side | None = None
    date_order: DateOrder | None = None


def readings_from(
    rows: Sequence[Row],
    facts: CaseFacts,
    extra: Sequence[str] = (),
    id_for: Callable[[int], str] = "r{:04d}".format,
) -> list[Reading]:
    """The readings of a table, in the order of its rows; a row with a fault gives none.

    ``extra`` names the columns kneecase does not know; ``id_for`` makes the id of a row without
    one from a running number.
    """
    reader = _Reader(rows, facts, tuple(extra), id_for)
    return [reading for row in rows for reading in reader.of(row)]


@dataclass(frozen=True, slots=True)
class _Shared:
    """What the one or two readings of a row have in common."""

    id: str
    date: dt.date | None
    trial: int | None
    status: _Status
    missing: _Missing
    condition: Condition


class _Reader:
    """Reads one row after another, with what the whole table settles."""

    def __init__(
        self, rows: Sequence[Row], facts: CaseFacts, extra: tuple[str, ...], id_for: Callable[[int], str]
    ) -> None:
        self._involved = facts.involved
        self._extra = extra
        self._id_for = id_for
        self._dates = DateColumn(rows, facts.date_order, facts.bounds)
        self._mark = decimal_mark(row.cell(name) for row in rows for name in _NUMBER_COLUMNS)
        self._conditions = Conditions(self._mark)
        self._taken = {row.cell("id") for row in rows}
        self._count = 0

    def of(self, row: Row) -> Sequence[Reading]:
        """The readings of one row: one, two for neutral-zero motion, none where there is a fault."""
        before = row.problems.error_count
        shared = self._shared(row)
        if is_knee_motion(row):
            found = self._motion(row, shared)
        else:
            measure = measure_of(row)
            if measure is None:
                side_word(row, "side", self._involved)  # a side may be misspelled here too
            found = () if measure is None else self._single(row, measure, shared)
        return found if row.problems.error_count == before else ()

    def _shared(self, row: Row) -> _Shared:
        return _Shared(
            id=row.cell("id") or self._new_id(),
            date=self._dates.date(row),
            trial=whole_number(row, "trial"),
            status=cast(_Status, closed_word(row, "status", STATUSES) or "scored"),
            missing=cast(_Missing, closed_word(row, "missing", MISSING_REASONS)),
            condition=self._conditions.of(row),
        )

    def _single(self, row: Row, measure: Measure, shared: _Shared) -> Sequence[Reading]:
        side, item = self._side(row, measure, measure.label), item_number(row, measure, measure.label)
        if has_no_value(row):
            return self._reading(row, measure, shared, side, None, item=item)
        entry = measured(row, measure, self._mark) if is_value_wanted(row) else None
        if entry is None or not weigh(row, measure, entry, item):
            return ()
        return self._reading(row, measure, shared, side, entry, item=item)

    def _motion(self, row: Row, shared: _Shared) -> Sequence[Reading]:
        """Extension and flexion from one row of neutral-zero text."""
        side = self._side(row, _FLEXION, "knee motion")
        item_number(row, _FLEXION, "knee motion")
        extension = flexion = None
        if not has_no_value(row):
            found = _motion_entries(row)
            if found is None:
                return ()
            extension, flexion = found
        return (
            *self._reading(row, _EXTENSION, shared, side, extension, suffix=EXTENSION_SUFFIX),
            *self._reading(row, _FLEXION, shared, side, flexion, suffix=FLEXION_SUFFIX),
        )

    def _reading(
        self,
        row: Row,
        measure: Measure,
        shared: _Shared,
        side: Side | None,
        entry: Entry | None,
        *,
        item: int | None = None,
        suffix: str = "",
    ) -> Sequence[Reading]:
        if shared.date is None:
            return ()
        cells = row.cells
        reading = Reading(
            id=shared.id + suffix,
            date=shared.date,
            measure=measure.id,
            side=side,
            value=None if entry is None else entry.value,
            unit=measure.unit,
            item=item,
            trial=shared.trial,
            status=shared.status,
            missing=shared.missing,
            tester=row.cell("tester"),
            device=row.cell("device"),
            condition=shared.condition,
            text="" if entry is None else entry.text,
            raw_value="" if entry is None else entry.raw_value,
            raw_unit=row.cell("unit") if entry is None else entry.raw_unit,
            note=cells.get("note", ""),
            row=row.number,
            extra={name: cells[name] for name in self._extra if cells.get(name)} if self._extra else {},
        )
        return (reading,)

    def _new_id(self) -> str:
        self._count += 1
        while (name := self._id_for(self._count)) in self._taken:
            self._count += 1
        return name

    def _side(self, row: Row, measure: Measure, label: str) -> Side | None:
        typed = row.cell("side")
        if measure.per_limb and not typed:
            row.error("side", f"{label} is taken on one limb, so it needs a side", "Write left or right.")
        if not measure.per_limb and typed:
            row.error("side", f"{label} belongs to no side", "Leave side blank.")
            return None
        return side_word(row, "side", self._involved)


def _motion_entries(row: Row) -> tuple[Entry, Entry] | None:
    """Extension and flexion of a neutral-zero cell, or ``None`` with the fault noted."""
    typed, unit = row.cell("value"), row.cell("unit")
    if unit.lower() not in _DEGREES:
        row.error("unit", "neutral-zero motion is in degrees", "Leave unit blank or write deg.")
    if not is_value_wanted(row):
        return None
    try:
        angles = neutral_zero(typed)
    except CellError as error:
        row.refuse("value", error)
        return None
    extension, flexion = (Entry(angle, typed, unit, typed) for angle in angles)
    weigh(row, _EXTENSION, extension, None)
    weigh(row, _FLEXION, flexion, None)
    return extension, flexion
