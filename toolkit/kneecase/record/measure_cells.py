"""The cells that say which measure a row holds, of which item, and whether there is a value at all."""

from __future__ import annotations

from kneecase.record.catalogue import MEASURES, Measure
from kneecase.record.columns import KNEE_MOTION, column_name
from kneecase.record.problems import Row, close_matches
from kneecase.record.terms import MISSING_REASONS

__all__ = ["has_no_value", "is_knee_motion", "is_value_wanted", "item_number", "measure_of", "whole_number"]

_NAMES = {
    **{name: name for name in (*MEASURES, KNEE_MOTION)},
    **{measure.label.lower(): measure.id for measure in MEASURES.values()},
}


def measure_of(row: Row) -> Measure | None:
    """The measure of a row, however it is capitalised or spaced; ``None`` with the fault noted."""
    typed = row.cell("measure")
    measure = MEASURES.get(typed) or MEASURES.get(column_name(typed))
    if measure is None and not typed:
        row.error("measure", "the measure is missing", "Write one of the catalogue, such as knee_flexion.")
    elif measure is None:
        near = close_matches(typed.lower()[:80], tuple(_NAMES))
        found = list(dict.fromkeys(_NAMES[name] for name in near))
        mend = (
            f"Did you mean {' or '.join(found)}?"
            if found
            else "See kneecase.record.MEASURES for all of them."
        )
        row.error("measure", "this measure is not in the catalogue", mend)
    return measure


def is_knee_motion(row: Row) -> bool:
    """Whether the row holds neutral-zero motion, which is two readings."""
    typed = row.cell("measure")
    return typed not in MEASURES and column_name(typed) == KNEE_MOTION


def item_number(row: Row, measure: Measure, label: str) -> int | None:
    """The item of a questionnaire or observation sheet, from 1; ``None`` for a total."""
    if not row.cell("item"):
        return None
    if measure.items is None:
        row.error("item", f"{label} has no items", "Leave item blank.")
        return None
    item = whole_number(row, "item")
    if item is not None and item > measure.items:
        row.error("item", f"{label} has {measure.items} items", "Is it a total? Then leave item blank.")
        return None
    return item


def whole_number(row: Row, column: str) -> int | None:
    """A whole number from 1 up, or ``None`` where the cell is blank or at fault."""
    typed = row.cell(column)
    if not typed:
        return None
    whole = typed.removesuffix(".0")
    if len(whole) < 7 and whole.isascii() and whole.isdigit() and int(whole) > 0:
        return int(whole)
    row.error(column, f"{column} must be a whole number from 1 up", "Number them 1, 2, 3.")
    return None


def has_no_value(row: Row) -> bool:
    """Whether the row says why there is no value, and gives none."""
    return bool(row.cell("missing")) and not row.cell("value")


def is_value_wanted(row: Row) -> bool:
    """Whether there is a value and no reason for having none; otherwise the fault is noted."""
    value, missing = row.cell("value"), row.cell("missing")
    if value and missing:
        mend = "Empty one of the two; a lost trial that was measured has its value and status lost."
        row.error("missing", f"there is a value ({value[:40]}) and a reason for having none", mend)
    elif not value:
        reasons = ", ".join(MISSING_REASONS)
        mend = "Write the value, or in missing the reason why there is none."
        row.error("value", "there is neither a value nor a reason for having none", mend, allowed=reasons)
    return bool(value) and not missing
