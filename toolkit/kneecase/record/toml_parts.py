"""The parts of ``case.toml``: each key read by its kind, each fault with the line it stands on."""

from __future__ import annotations

import datetime as dt
import math
import re
from collections.abc import Collection, Mapping
from typing import Any

from kneecase.errors import InputError
from kneecase.record.dates import DateOrder, calendar_date
from kneecase.record.headers import warn_of_misspelling
from kneecase.record.numbers import quantity
from kneecase.record.problems import CellError, ProblemList, Row
from kneecase.units import number_text, quantity_text

__all__ = ["CASE_FILE", "Part", "key_lines"]

CASE_FILE = "case.toml"
_SECTION = re.compile(r"\s*(\[\[?)([^\[\]]+)\]\]?\s*(?:#.*)?")
_KEY = re.compile(r"\s*[\"']?([\w-]+)[\"']?\s*=")


def key_lines(text: str) -> dict[str, int]:
    """The line of every key and section of a TOML text, by names such as ``limit[0].value``."""
    lines: dict[str, int] = {}
    counts: dict[str, int] = {}
    section = ""
    for number, line in enumerate(text.splitlines(), start=1):
        found = _SECTION.fullmatch(line)
        if found:
            section = found[2].strip()
            if found[1] == "[[":
                counts[section] = counts.get(section, -1) + 1
                section = f"{section}[{counts[section]}]"
            lines.setdefault(section, number)
        elif key := _KEY.match(line):
            lines.setdefault(f"{section}.{key[1]}" if section else key[1], number)
    return lines


class Part(Row):
    """One table of ``case.toml``, with a method for each kind of value; ``None`` or empty where absent."""

    __slots__ = ("_name", "_order", "lines", "values")

    def __init__(
        self,
        problems: ProblemList,
        name: str,
        values: Mapping[str, Any],
        lines: Mapping[str, int],
        order: DateOrder | None = None,
    ) -> None:
        super().__init__(problems, CASE_FILE, lines.get(name), {key: _text(x) for key, x in values.items()})
        self.values = values
        self._name, self.lines, self._order = name, lines, order

    def place(self, column: str) -> tuple[int | None, str]:
        """The line of a key, and its name with the part it stands in."""
        name = f"{self._name}.{column}" if self._name and column else self._name or column
        return self.lines.get(name, self.number), re.sub(r"\[\d+\]", "", name)

    def part(self, key: str) -> Part:
        """The table under ``key``; an empty one where it is absent or no table."""
        name = f"{self._name}.{key}" if self._name else key
        values = self.values.get(key, {})
        if not isinstance(values, Mapping):
            self.error(key, f"{key} must be a part of its own", f"Write it as [{name}] with its keys below.")
            values = {}
        return Part(self.problems, name, values, self.lines, self._order)

    def parts(self, key: str) -> list[Part]:
        """Every table of the list under ``key``."""
        found = self.values.get(key, [])
        if not isinstance(found, list) or not all(isinstance(values, Mapping) for values in found):
            mend = f"Begin each with a line [[{key}]] in double square brackets."
            self.error(key, f"{key} must be a list of parts", mend)
            return []
        return [
            Part(self.problems, f"{key}[{number}]", values, self.lines, self._order)
            for number, values in enumerate(found)
        ]

    def warn_of_unknown(self, known: Collection[str]) -> None:
        """Warn of keys that are probably misspelt; unknown keys are kept either way."""
        absent = [key for key in known if key not in self.values]
        for key in self.values:
            if key not in known:
                warn_of_misspelling(self, key, absent)

    def text(self, key: str) -> str:
        """Text in quotation marks."""
        value = self.values.get(key, "")
        if isinstance(value, str):
            return value.strip()
        self.error(key, f"{key} must be text", f'Put it in quotation marks: {key} = "{_text(value)[:40]}".')
        return ""

    def texts(self, key: str) -> tuple[str, ...]:
        """A list of texts."""
        value = self.values.get(key, [])
        if isinstance(value, list) and all(isinstance(entry, str) for entry in value):
            return tuple(entry.strip() for entry in value if entry.strip())
        self.error(
            key, f"{key} must be a list of texts", f'Write it in square brackets: {key} = ["one", "two"].'
        )
        return ()

    def truth(self, key: str) -> bool | None:
        """True or false."""
        value = self.values.get(key)
        if value is None or isinstance(value, bool):
            return value
        self.error(
            key,
            f"{key} must be true or false",
            "Write true or false in small letters without quotation marks.",
        )
        return None

    def date(self, key: str) -> dt.date | None:
        """A calendar date, bare or in quotation marks."""
        value = self.values.get(key)
        if value is None or value == "":
            return None
        try:
            if isinstance(value, dt.date) and not isinstance(value, dt.datetime):
                return calendar_date(value.isoformat())
            return calendar_date(_text(value), self._order)
        except CellError as error:
            self.refuse(key, error)
            return None

    def bare_number(
        self, key: str, hard: tuple[float, float], plausible: tuple[float, float], unit: str
    ) -> float | None:
        """A bare number [unit] within ``hard``; outside ``plausible`` it is doubted and kept."""
        value = self.values.get(key)
        if value is None:
            return None
        if isinstance(value, bool) or not isinstance(value, int | float) or not math.isfinite(value):
            self.error(key, f"{key} must be a number", "Write it without quotation marks and without a unit.")
            return None
        return float(value) if self._within(key, float(value), hard, plausible, unit) else None

    def measured(
        self, key: str, unit: str, hard: tuple[float, float], plausible: tuple[float, float]
    ) -> float | None:
        """A quantity given as ``mass_kg = 66`` or with its unit as ``mass = "146 lb"`` [unit]."""
        with_unit = f"{key}_{unit}"
        if key not in self.values:
            return self.bare_number(with_unit, hard, plausible, unit)
        if with_unit in self.values:
            self.error(key, f"{key} and {with_unit} say the same thing twice", "Keep one of the two.")
            return None
        typed = self.values[key]
        try:
            found = quantity(_text(typed), "", unit, name=key)
        except InputError as error:
            rule = error.rule if isinstance(error, CellError) else str(error)
            self.error(key, rule, f'Write the number and the unit: {key} = "66 {unit}".')
            return None
        if not isinstance(typed, str) or not (found.raw_unit or re.search(r"[^0-9.,+-]", typed)):
            mend = f'Write {with_unit} = {_text(typed)}, or the unit too: {key} = "{_text(typed)} {unit}".'
            self.error(key, f"{key} needs a unit", mend)
            return None
        return found.value if self._within(key, found.value, hard, plausible, unit) else None

    def _within(
        self, key: str, value: float, hard: tuple[float, float], plausible: tuple[float, float], unit: str
    ) -> bool:
        shown = quantity_text(value, unit, 2)
        if not hard[0] <= value <= hard[1]:
            allowed = f"{number_text(hard[0])} to {quantity_text(hard[1], unit)}"
            self.error(key, f"{shown} is impossible here", "Is it in another unit?", allowed=allowed)
            return False
        if not plausible[0] <= value <= plausible[1]:
            allowed = f"{number_text(plausible[0])} to {quantity_text(plausible[1], unit)} is usual"
            self.warning(
                key, f"{shown} is unlikely; it is kept as it is", "Look at it again.", allowed=allowed
            )
        return True


def _text(value: object) -> str:
    """A TOML value as the text of a cell."""
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, dt.date):
        return value.isoformat()
    return value if isinstance(value, str) else str(value)
