"""How a reading was taken: the condition columns of a row."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from kneecase.record.numbers import DecimalMark, quantity
from kneecase.record.problems import CellError, Row
from kneecase.record.rows import Condition
from kneecase.record.words import closed_word
from kneecase.units import quantity_text

__all__ = ["CONDITION_COLUMNS", "CONDITION_WORDS", "Conditions"]

CONDITION_WORDS: Mapping[str, tuple[str, ...]] = MappingProxyType(
    {
        "motion": ("active", "passive"),
        "timing": ("before", "after"),
        "mode": ("isometric", "concentric", "eccentric"),
    }
)
"""Condition columns that take one word of a closed list."""

_NUMBERS = {
    "angle_deg": ("deg", -30.0, 170.0),
    "speed_deg_per_s": ("deg_per_s", 0.0, 1000.0),
    "lever_arm_m": ("m", 0.01, 1.0),
}
CONDITION_COLUMNS = ("position", "motion", "timing", "mode", *_NUMBERS, "administration")


class Conditions:
    """Reads conditions; one that was met before without a fault is not read again."""

    def __init__(self, mark: DecimalMark) -> None:
        self._mark = mark
        self._known: dict[tuple[str | None, ...], Condition] = {}

    def of(self, row: Row) -> Condition:
        """The condition of a row; a cell at fault is noted and left out."""
        cells = tuple(map(row.cells.get, CONDITION_COLUMNS))
        found = self._known.get(cells)
        if found is None:
            before = row.problems.error_count
            found = self._read(row)
            if row.problems.error_count == before:
                self._known[cells] = found
        return found

    def _read(self, row: Row) -> Condition:
        words = {name: closed_word(row, name, allowed) for name, allowed in CONDITION_WORDS.items()}
        return Condition(
            position=row.cell("position"),
            motion=words["motion"],
            timing=words["timing"],
            mode=words["mode"],
            angle_deg=self._number(row, "angle_deg"),
            speed_deg_per_s=self._number(row, "speed_deg_per_s"),
            lever_arm_m=self._number(row, "lever_arm_m"),
            administration=row.cell("administration"),
        )

    def _number(self, row: Row, column: str) -> float | None:
        typed = row.cell(column)
        if not typed:
            return None
        unit, low, high = _NUMBERS[column]
        try:
            value = quantity(typed, "", unit, self._mark, column).value
        except CellError as error:
            row.refuse(column, error)
            return None
        if not low <= value <= high:
            allowed = f"{low:g} to {quantity_text(high, unit)}"
            mend = (
                "Is it in cm? Then write cm after the number."
                if unit == "m"
                else "Is a decimal point missing?"
            )
            row.error(column, f"{quantity_text(value, unit, 3)} is impossible here", mend, allowed=allowed)
            return None
        return value
