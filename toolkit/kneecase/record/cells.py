"""A reading or a visit as the cells of its row, as they are typed."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from kneecase.record.columns import PAIN_COLUMNS
from kneecase.record.rows import Reading, Visit
from kneecase.record.terms import EFFUSION_GRADES, QUESTIONS

__all__ = ["number_as_typed", "reading_cells", "typed_value", "visit_cells"]

_READING_TEXT = ("tester", "device", "note")
_CONDITION_TEXT = ("position", "motion", "timing", "mode", "administration")
_CONDITION_NUMBERS = ("angle_deg", "speed_deg_per_s", "lever_arm_m")
_VISIT_TEXT = (
    *("id", "clinician", "soreness", "aids", "setting", "activity", "dose", "response_next_day"),
    *("action", "agreement", "reason", "decided_by", "surgeon_told", "override_of", "note"),
)


def number_as_typed(value: float | int | None, mark: str = ".") -> str:
    """A number in the fewest digits that read back the same; blank for none.

    Examples
    --------
    >>> number_as_typed(120.0), number_as_typed(0.31, ","), number_as_typed(None)
    ('120', '0,31', '')
    """
    if value is None:
        return ""
    return repr(float(value)).removesuffix(".0").replace(".", mark)


def typed_value(reading: Reading, mark: str, *, as_typed: bool) -> tuple[str, str]:
    """The cells ``value`` and ``unit``: as they were typed, or the number in the measure's own unit."""
    if reading.value is None:
        return "", reading.raw_unit
    if as_typed and reading.raw_value:
        return reading.raw_value, reading.raw_unit
    if reading.unit == "grade":
        place = int(reading.value)
        known = place == reading.value and 0 <= place < len(EFFUSION_GRADES)
        return (EFFUSION_GRADES[place] if known else number_as_typed(reading.value)), ""
    return number_as_typed(reading.value, mark), reading.unit


def reading_cells(reading: Reading, mark: str = ".", *, as_typed: bool) -> dict[str, str]:
    """Every cell of the row of one reading, blank ones too."""
    value, unit = typed_value(reading, mark, as_typed=as_typed)
    condition = reading.condition
    return {
        **reading.extra,
        "id": reading.id,
        "date": reading.date.isoformat(),
        "measure": reading.measure,
        "item": number_as_typed(reading.item),
        "side": reading.side or "",
        "trial": number_as_typed(reading.trial),
        "value": value,
        "unit": unit,
        "status": reading.status,
        "missing": reading.missing,
        **_texts(reading, _READING_TEXT),
        **_texts(condition, _CONDITION_TEXT),
        **{name: number_as_typed(getattr(condition, name), mark) for name in _CONDITION_NUMBERS},
    }


def visit_cells(visit: Visit, mark: str = ".") -> dict[str, str]:
    """Every cell of the row of one visit, blank ones too."""
    return {
        **visit.extra,
        "date": visit.date.isoformat(),
        **{column: number_as_typed(visit.pain.get(key), mark) for column, key in PAIN_COLUMNS.items()},
        **{question: visit.answers.get(question, "") for question in QUESTIONS},
        **_texts(visit, _VISIT_TEXT),
    }


def _texts(row: Any, names: tuple[str, ...]) -> Mapping[str, str]:
    return {name: getattr(row, name) for name in names}
