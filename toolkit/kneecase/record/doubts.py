"""Faults and doubts that only show when the rows of a table are seen together."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable, Hashable, Iterable, Sequence
from dataclasses import replace
from typing import Literal, TypeVar

from kneecase.record.problems import ProblemList
from kneecase.record.rows import Reading, Side, Visit, other_side

__all__ = ["note_repeated_ids", "note_repeated_readings", "note_repeated_visits", "note_unlikely_sides"]

_Dated = TypeVar("_Dated", Reading, Visit)

EARLY_DAYS = 42
"""How long after surgery the operated knee is expected to move clearly less than the other [days]."""

SWAP_DEG = 20.0
"""How much better the operated knee moves early on before swapped sides are suspected [deg]; our choice."""

HYPEREXTENSION_DEG = 5.0
"""How much more the operated knee hyperextends early on before its sign is doubted [deg]; our choice."""


def note_repeated_ids(problems: ProblemList, rows: Iterable[tuple[str, Reading | Visit]]) -> None:
    """Every id that stands in more than one row, with both rows; ``rows`` pairs a file with its row."""
    first: dict[str, tuple[str, int | None]] = {}
    for file, row in rows:
        if row.id in first:
            other_file, number = first[row.id]
            where = f"row {number}" if other_file == file else f"{other_file}, row {number}"
            what = f"this id stands already in {where}"
            mend = "Give one of them another id, or delete it; a blank id is filled in on reading."
            problems.add("error", file, what, mend, row=row.row, column="id", value=row.id)
        else:
            first[row.id] = (file, row.row)


def note_repeated_readings(
    problems: ProblemList, file: str, readings: Sequence[Reading], own_ids: set[str]
) -> None:
    """Rows that hold the same reading twice (doubted), or two values for one reading (a fault).

    ``own_ids`` are the ids that were typed. Two different values without a trial number are two
    readings where both rows carry an id of their own, and then only doubted.
    """

    def weigh(earlier: Reading, reading: Reading) -> None:
        both = earlier.id in own_ids and reading.id in own_ids
        if earlier.value == reading.value and earlier.missing == reading.missing:
            if not both:
                _note(problems, file, reading, f"this row says the same as row {earlier.row}", "warning")
            return
        severity: Literal["error", "warning"] = "warning" if both and reading.trial is None else "error"
        _note(
            problems,
            file,
            reading,
            f"this row and row {earlier.row} give two values for one reading",
            severity,
        )

    def key(reading: Reading) -> Hashable:
        taken = (reading.date, reading.measure, reading.side, reading.item, reading.trial, reading.status)
        return (*taken, reading.tester, reading.device, reading.condition)

    _compare(readings, key, weigh)


def note_repeated_visits(
    problems: ProblemList, file: str, visits: Sequence[Visit], own_ids: set[str]
) -> None:
    """Visits of one day by one clinician that cannot be told apart."""

    def weigh(earlier: Visit, visit: Visit) -> None:
        both = earlier.id in own_ids and visit.id in own_ids
        what = f"this row and row {earlier.row} are visits of one day by the same clinician"
        mend = "Were there two? Tell them apart in setting or activity. Otherwise keep one."
        severity: Literal["error", "warning"] = "warning" if both or _same(earlier, visit) else "error"
        value = visit.date.isoformat()
        problems.add(severity, file, what, mend, row=visit.row, column="date", value=value)

    _compare(visits, lambda v: (v.date, v.clinician, v.setting, v.activity, v.override_of), weigh)


def note_unlikely_sides(
    problems: ProblemList, file: str, readings: Sequence[Reading], surgery: dt.date, involved: Side
) -> None:
    """Early motion in which the operated knee is clearly the better one: were the sides swapped?"""
    best: dict[tuple[Hashable, ...], dict[Side, Reading]] = {}
    for reading in readings:
        if (
            reading.measure in ("knee_flexion", "knee_extension")
            and reading.value is not None
            and reading.side is not None
            and 0 <= (reading.date - surgery).days < EARLY_DAYS
        ):
            key = (reading.date, reading.measure, reading.condition.motion, reading.condition.timing)
            best.setdefault(key, {}).setdefault(reading.side, reading)
    for pair in best.values():
        ours, other = pair.get(involved), pair.get(other_side(involved))
        if ours is not None and other is not None:
            _weigh_sides(problems, file, ours, other)


def _weigh_sides(problems: ProblemList, file: str, ours: Reading, other: Reading) -> None:
    if ours.value is None or other.value is None:
        return
    better = ours.value - other.value if ours.measure == "knee_flexion" else other.value - ours.value
    if better > SWAP_DEG:
        what = f"the operated {ours.side} knee moves {better:.0f}° further than the other (row {other.row})"
        mend = "Were left and right swapped? It is kept as it is."
    elif ours.measure == "knee_extension" and ours.value < 0 and better > HYPEREXTENSION_DEG:
        what = (
            f"the operated {ours.side} knee hyperextends {better:.0f}° more than the other (row {other.row})"
        )
        mend = "Negative means hyperextends here; write 'lacks 5' if the knee lacks extension."
    else:
        return
    problems.add("warning", file, what, mend, row=ours.row, column="value", value=ours.raw_value)


def _compare(
    rows: Sequence[_Dated], key: Callable[[_Dated], Hashable], weigh: Callable[[_Dated, _Dated], None]
) -> None:
    """Every row against the first with the same key."""
    first: dict[Hashable, _Dated] = {}
    for row in rows:
        earlier = first.setdefault(key(row), row)
        if earlier is not row:
            weigh(earlier, row)


def _note(
    problems: ProblemList, file: str, reading: Reading, what: str, severity: Literal["error", "warning"]
) -> None:
    mend = "If both were measured, number them in trial; otherwise delete one."
    problems.add(severity, file, what, mend, row=reading.row, column="value", value=reading.raw_value)


def _same(one: Visit, other: Visit) -> bool:
    return replace(one, id="", row=None) == replace(other, id="", row=None)
