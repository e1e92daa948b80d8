"""One number a user sees, with everything needed to ask it 'why'."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from kneecase.evidence.provenance import PublishedValue
from kneecase.record import Reading
from kneecase.record.neutral_zero import extension_words
from kneecase.units import number_text, quantity_text

__all__ = ["Finding", "LeftOut", "Verdict", "reading_words"]

Verdict = Literal["met", "not met", "too close to call", "unknown", ""]


@dataclass(frozen=True, kw_only=True)
class LeftOut:
    """A reading that was not used, and why."""

    reading: Reading
    reason: str


@dataclass(frozen=True, kw_only=True)
class Finding:
    """One number: what it is, its interval, how it came about and what it rests on.

    ``value`` is ``None`` when it cannot be known; ``words`` then says why.  ``low`` and
    ``high`` are the ends of the interval at ``level`` (0.90 is 90 %).  ``inputs`` are the
    readings and settings as text, ``formula`` the arithmetic in words and symbols, ``error``
    the measurement error used.  ``shown`` stands for the number where people use a word for it, such
    as an effusion grade.  Text is plain: escaping is the page's work.
    """

    label: str
    value: float | None
    unit: str
    low: float | None = None
    high: float | None = None
    level: float | None = None
    digits: int = 1
    words: str = ""
    verdict: Verdict = ""
    inputs: tuple[str, ...] = ()
    formula: str = ""
    error: str = ""
    evidence: tuple[PublishedValue, ...] = ()
    cautions: tuple[str, ...] = ()
    shown: str = ""

    def quantity(self) -> str:
        """The value with its unit, the word used for it, or 'unknown'."""
        if self.value is not None and self.shown:
            return self.shown
        return "unknown" if self.value is None else quantity_text(self.value, self.unit, self.digits)

    def interval(self) -> str:
        """The interval in words, for example '84.1 to 95.1 % (90 % band)'; empty where there is none."""
        if self.low is None or self.high is None:
            return ""
        level = "" if self.level is None else f" ({number_text(100 * self.level)} % interval)"
        high = quantity_text(self.high, self.unit, self.digits)
        return f"{number_text(self.low, self.digits)} to {high}{level}"


def reading_words(reading: Reading) -> str:
    """One reading in words: date, side, trial, value as typed, tester, device, condition."""
    value: str
    if reading.missing:
        value = str(reading.missing)
    elif reading.text:
        value = reading.text
    elif reading.value is None:
        value = "no value"
    else:
        value = _value_words(reading.measure, reading.value, reading.unit)
        if reading.raw_unit and reading.raw_unit != reading.unit and reading.raw_value:
            value += f" (typed {reading.raw_value} {reading.raw_unit})"
    parts = [reading.date.isoformat(), reading.side or "", value]
    if reading.trial is not None:
        parts.append(f"trial {reading.trial}")
    if reading.status != "scored":
        parts.append(reading.status)
    parts += [reading.tester, reading.device, reading.condition.words()]
    return ", ".join(part for part in parts if part)


def _value_words(measure: str, value: float, unit: str) -> str:
    """The value with its unit; extension in words, so that nobody has to guess its sign."""
    return extension_words(value) if measure == "knee_extension" else quantity_text(value, unit, 2)
