"""Which rows of the two tables change, so that they read back as the readings and visits of a case.

How far a row is rewritten goes by degrees (``Thoroughness``).  ``"as typed"`` touches only the cells
that differ.  Where that does not read back the same (a row that settled the order of the dates was
removed, say) every row gets its id, side and an ISO date: ``"settled"``; and where even that does
not do, its numbers in the measure's own unit: ``"plain"``.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Literal

from kneecase.errors import InputError
from kneecase.record.cells import reading_cells, visit_cells
from kneecase.record.columns import EXTENSION_SUFFIX, FLEXION_SUFFIX, KNEE_MOTION
from kneecase.record.neutral_zero import extension_deg, neutral_zero
from kneecase.record.numbers import quantity
from kneecase.record.rows import Reading, Visit
from kneecase.record.table_text import Cells

__all__ = ["RowChanges", "Thoroughness", "motion_pairs", "new_row", "reading_changes", "visit_changes"]

Thoroughness = Literal["as typed", "settled", "plain"]

_SETTLED = ("id", "date", "side")


@dataclass(frozen=True)
class RowChanges:
    """Rows that take the place of a row, by its number, and rows to add at the end."""

    changed: Mapping[int, Sequence[Cells]]
    added: Sequence[Cells]


def reading_changes(
    before: Sequence[Reading], after: Sequence[Reading], mark: str, how: Thoroughness
) -> RowChanges:
    """What takes the rows of ``measurements.csv`` from ``before`` to ``after``."""
    wanted = {reading.id: reading for reading in after}
    known = {reading.id for reading in before}
    rows: dict[int, list[Reading]] = {}
    for reading in before:
        rows.setdefault(reading.row or 0, []).append(reading)
    changed: dict[int, Sequence[Cells]] = {}
    for number, old in rows.items():
        new = [wanted.get(reading.id) for reading in old]
        if how != "as typed" or any(not _same(x, y) for x, y in zip(old, new, strict=True)):
            cells = _pair_rows(old, new, mark, how) if len(old) == 2 else _rows(old, new, mark, how)
            if cells != [{}]:
                changed[number] = cells
    added = [reading for reading in after if reading.id not in known]
    return RowChanges(changed, [new_row(group, mark, how) for group in motion_pairs(added)])


def visit_changes(
    before: Sequence[Visit], after: Sequence[Visit], mark: str, how: Thoroughness
) -> RowChanges:
    """What takes the rows of ``visits.csv`` from ``before`` to ``after``."""
    wanted = {visit.id: visit for visit in after}
    known = {visit.id for visit in before}
    changed: dict[int, Sequence[Cells]] = {}
    for old in before:
        new = wanted.get(old.id)
        if new is None:
            changed[old.row or 0] = ()
        elif how == "plain":
            changed[old.row or 0] = (visit_cells(new),)
        elif how == "settled" or not _same(old, new):
            cells = _differing(visit_cells(old, mark), visit_cells(new, mark))
            changed[old.row or 0] = (cells | _settled(visit_cells(new), how),)
    mark = "." if how == "plain" else mark
    return RowChanges(changed, [visit_cells(visit, mark) for visit in after if visit.id not in known])


def motion_pairs(readings: Sequence[Reading]) -> list[tuple[Reading, ...]]:
    """The readings in order, extension and flexion that were typed as one neutral-zero entry together."""
    by_id = {reading.id: reading for reading in readings}
    groups: list[tuple[Reading, ...]] = []
    paired: set[str] = set()
    for reading in readings:
        if reading.id in paired:
            continue
        stem = reading.id.removesuffix(EXTENSION_SUFFIX)
        flexion = by_id.get(stem + FLEXION_SUFFIX) if stem != reading.id else None
        if flexion is not None and _is_one_entry(reading, flexion):
            paired.add(flexion.id)
            groups.append((reading, flexion))
        else:
            groups.append((reading,))
    # A flexion that came before its extension stands alone in the list as well.
    return [group for group in groups if len(group) == 2 or group[0].id not in paired]


def new_row(group: Sequence[Reading], mark: str, how: Thoroughness) -> dict[str, str]:
    """The cells of a row that is not in the table yet, for one reading or a pair."""
    first = group[0]
    mark = "." if how == "plain" else mark
    if len(group) == 2:
        cells = reading_cells(first, mark, as_typed=True)
        stem = first.id.removesuffix(EXTENSION_SUFFIX)
        return {**cells, "id": stem, "measure": KNEE_MOTION, "value": first.text}
    return reading_cells(first, mark, as_typed=how != "plain" and _reproduces(first, mark))


def _rows(
    old: Sequence[Reading], new: Sequence[Reading | None], mark: str, how: Thoroughness
) -> Sequence[Cells]:
    return [_changed_cells(x, y, mark, how) for x, y in zip(old, new, strict=True) if y is not None]


def _pair_rows(
    old: Sequence[Reading], new: Sequence[Reading | None], mark: str, how: Thoroughness
) -> Sequence[Cells]:
    """One row of neutral-zero text as it becomes: still one, where both angles stay, else a row for each."""
    kept = [reading for reading in new if reading is not None]
    if len(kept) == 2 and all(_is_value_kept(x, y) for x, y in zip(old, kept, strict=True)):
        stem = {"id": old[0].id.removesuffix(EXTENSION_SUFFIX)}
        cells = [_changed_cells(x, y, mark, how) | stem for x, y in zip(old, kept, strict=True)]
        if cells[0] == cells[1]:
            return [cells[0] if how != "as typed" else {k: v for k, v in cells[0].items() if k != "id"}]
    return [reading_cells(reading, mark, as_typed=False) for reading in kept]


def _changed_cells(old: Reading, new: Reading, mark: str, how: Thoroughness) -> dict[str, str]:
    """The cells of a row that differ between ``old`` and ``new``; value and unit go together."""
    if how == "plain" and not _is_motion_entry(old, new):
        return reading_cells(new, as_typed=False)
    kept = _is_value_kept(old, new)
    as_typed = kept or _reproduces(new, mark)
    now = reading_cells(new, mark, as_typed=as_typed)
    cells = _differing(reading_cells(old, mark, as_typed=True), now)
    if not kept:
        cells |= {"value": now["value"], "unit": now["unit"]}
    return cells | _settled(now, how)


def _differing(old: Cells, new: Cells) -> dict[str, str]:
    gone = dict.fromkeys((name for name in old if name not in new), "")
    return gone | {name: cell for name, cell in new.items() if cell != old.get(name, "")}


def _settled(cells: Cells, how: Thoroughness) -> dict[str, str]:
    return {} if how == "as typed" else {name: cells[name] for name in _SETTLED if name in cells}


def _same(old: Reading | Visit, new: Reading | Visit | None) -> bool:
    return new is not None and (old == new or old == replace(new, row=old.row))


def _is_value_kept(old: Reading, new: Reading) -> bool:
    typed = (old.raw_value, old.raw_unit) == (new.raw_value, new.raw_unit)
    return typed and (old.value, old.unit, old.measure) == (new.value, new.unit, new.measure)


def _is_motion_entry(old: Reading, new: Reading) -> bool:
    return old.id.endswith((EXTENSION_SUFFIX, FLEXION_SUFFIX)) and old.text != "" and _is_value_kept(old, new)


def _is_one_entry(extension: Reading, flexion: Reading) -> bool:
    """Whether the two say what one neutral-zero text says, and agree in all else."""
    is_missing = extension.value is None and flexion.value is None
    try:
        if not is_missing and neutral_zero(extension.text) != (extension.value, flexion.value):
            return False
    except InputError:
        return False
    same = replace(flexion, id=extension.id, measure=extension.measure, value=extension.value)
    measures = (extension.measure, flexion.measure)
    return measures == ("knee_extension", "knee_flexion") and extension == replace(same, row=extension.row)


def _reproduces(reading: Reading, mark: str) -> bool:
    """Whether what was typed gives the reading's value."""
    if not reading.raw_value or reading.unit == "grade":
        return False
    try:
        if reading.measure == "knee_extension" and extension_deg(reading.raw_value) == reading.value:
            return True
        found = quantity(reading.raw_value, reading.raw_unit, reading.unit, "," if mark == "," else "")
    except InputError:
        return False
    return found.value == reading.value
