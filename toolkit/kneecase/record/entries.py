"""The value cell of a measurement: a number with its unit, an effusion grade, words for extension."""

from __future__ import annotations

from dataclasses import dataclass

from kneecase.record.catalogue import Measure
from kneecase.record.neutral_zero import extension_deg, is_neutral_zero
from kneecase.record.numbers import DecimalMark, quantity
from kneecase.record.problems import CellError, Row, nearest_words
from kneecase.record.terms import EFFUSION_GRADES, MISSING_REASONS
from kneecase.units import converted, number_text, quantity_text, typed_units

__all__ = ["Entry", "measured", "weigh"]


@dataclass(frozen=True)
class Entry:
    """What a value cell says: the number in the measure's unit, the words, and what was typed."""

    value: float
    raw_value: str
    raw_unit: str = ""
    text: str = ""


def measured(row: Row, measure: Measure, mark: DecimalMark) -> Entry | None:
    """The entry of a row, or ``None`` with the fault noted."""
    typed = row.cell("value")
    try:
        if measure.unit == "grade":
            return _grade(row, typed)
        if measure.id == "knee_extension":
            angle = extension_deg(typed)
            if angle is not None:
                return Entry(angle, typed, text=typed)
        found = quantity(typed, row.cell("unit"), measure.unit, mark)
    except CellError as error:
        _refuse(row, measure, typed, error)
        return None
    return Entry(found.value, found.raw_value, found.raw_unit)


def weigh(row: Row, measure: Measure, entry: Entry, item: int | None) -> bool:
    """Whether the value is possible; an unlikely one is noted and kept."""
    hard, plausible = measure.hard, measure.plausible
    if item is not None and (allowed := measure.range_of_item(item)) is not None:
        hard = plausible = allowed
    label = measure.label if item is None else f"{measure.label}, item {item},"
    if not hard[0] <= entry.value <= hard[1]:
        what = f"{label} of {_shown(entry, measure)} is impossible"
        mend = _other_unit(measure, entry, hard) or "Is a decimal point missing, or the unit?"
        row.error("value", what, mend, allowed=_range(hard, measure))
        return False
    if not plausible[0] <= entry.value <= plausible[1]:
        what = f"{label} of {_shown(entry, measure)} is unlikely; it is kept as it is"
        mend = _other_unit(measure, entry, plausible) or "Look at it again."
        row.warning("value", what, mend, allowed=f"{_range(plausible, measure)} is usual")
    return True


def _grade(row: Row, typed: str) -> Entry | None:
    unit = row.cell("unit").lower()
    if unit not in ("", "grade"):
        row.error("unit", "an effusion grade has no unit", "Leave unit blank.")
        return None
    word = typed.lower().replace(" ", "")
    word = "zero" if word == "0" else word
    if word not in EFFUSION_GRADES:
        mend = f"Is it {typed}+ ?" if f"{word}+" in EFFUSION_GRADES else nearest_words(word, EFFUSION_GRADES)
        row.error("value", "effusion must be a grade word", mend, allowed=", ".join(EFFUSION_GRADES))
        return None
    return Entry(float(EFFUSION_GRADES.index(word)), typed, text=word)


def _refuse(row: Row, measure: Measure, typed: str, error: CellError) -> None:
    """Note why a cell was refused, in the column that is at fault."""
    if error.came != typed and error.came == row.cell("unit"):
        row.refuse("unit", error)
    elif typed.lower() in MISSING_REASONS:
        row.error(
            "value", f"{measure.label} must be a number", "Write the reason in missing and leave value blank."
        )
    elif measure.group == "motion" and measure.unit == "deg" and is_neutral_zero(typed):
        mend = "For neutral-zero notation write knee_motion in measure; otherwise write one number."
        row.error("value", f"{measure.label} must be one number", mend)
    elif measure.id == "knee_extension":
        row.error("value", error.rule, f"{error.mend} Words allowed here: lacks 5, hyperextends 3, straight.")
    else:
        row.refuse("value", error)


def _other_unit(measure: Measure, entry: Entry, wanted: tuple[float, float]) -> str:
    """A question about the unit, where the number would be fine in another one."""
    if entry.raw_unit or entry.text:
        return ""
    for unit in typed_units(measure.unit)[1:]:
        value = converted(entry.value, unit, measure.unit)
        if value != entry.value and wanted[0] <= value <= wanted[1]:
            return f"Was it measured in {unit}? Then write {unit} in unit. Or is a decimal point missing?"
    return ""


def _shown(entry: Entry, measure: Measure) -> str:
    return quantity_text(entry.value, measure.unit, 3)


def _range(limits: tuple[float, float], measure: Measure) -> str:
    return f"{number_text(limits[0])} to {quantity_text(limits[1], measure.unit)}"
