"""The readings of one motion, sorted into the series that may share a line, with their error."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass

from kneecase.record import Case, Precision, Reading, precision_of

__all__ = ["Series", "before_surgery", "motion_series", "other_knee"]

_Z95 = 1.959963984540054


@dataclass(frozen=True, kw_only=True)
class Series:
    """Readings taken in one way: they may share a line.

    ``label`` says how in words; ``precision`` is the published error that holds for them
    together, ``None`` where there is none.
    """

    label: str
    motion: str
    timing: str
    readings: tuple[Reading, ...]
    precision: Precision | None

    @property
    def half_bar(self) -> float | None:
        """Half the length of an error bar, 1.96 standard errors [unit of the measure]."""
        return None if self.precision is None else _Z95 * self.precision.sem


def motion_series(case: Case, measure: str, day: dt.date) -> tuple[Series, ...]:
    """Series of the operated knee since surgery, the longest first.

    Readings before and after treatment, active and passive, and of different positions are never in one.
    """
    found: dict[tuple[str, str, str], list[Reading]] = {}
    for reading in _scored(case, measure, day):
        if reading.side == case.involved and reading.date >= case.surgery.date:
            how = reading.condition
            found.setdefault((how.motion, how.timing, how.position), []).append(reading)
    several = len({position for _, _, position in found}) > 1
    series = [
        Series(
            label=_label(motion, timing, position if several else ""),
            motion=motion,
            timing=timing,
            readings=tuple(rows),
            precision=precision_of(measure, rows),
        )
        for (motion, timing, position), rows in found.items()
    ]
    return tuple(sorted(series, key=lambda s: (-len(s.readings), s.label)))


def other_knee(case: Case, measure: str, day: dt.date, like: Series) -> Reading | None:
    """The latest reading of the other knee, taken as ``like`` was where there is one so taken."""
    rows = [r for r in _scored(case, measure, day) if r.side == case.uninvolved]
    alike = [r for r in rows if r.condition.motion == like.motion]
    best = [r for r in alike if r.condition.timing == like.timing] or alike or rows
    return best[-1] if best else None


def before_surgery(case: Case, measure: str, day: dt.date) -> int:
    """How many readings of the operated knee were taken before surgery (they are not drawn)."""
    return sum(
        1 for r in _scored(case, measure, day) if r.side == case.involved and r.date < case.surgery.date
    )


def _scored(case: Case, measure: str, day: dt.date) -> list[Reading]:
    rows = case.as_of(day).readings_of(measure)
    return [r for r in rows if r.value is not None and r.status == "scored"]


def _label(motion: str, timing: str, position: str) -> str:
    parts = [motion or "active or passive not said", position, f"{timing} treatment" if timing else ""]
    return ", ".join(part for part in parts if part)
