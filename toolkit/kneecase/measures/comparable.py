"""Which readings may be compared: one measure, one limb, one condition, one day."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Any, Literal

from kneecase.answers import LeftOut
from kneecase.record import Reading, measure_named
from kneecase.units import quantity_text

__all__ = [
    "ConditionKey",
    "DayScore",
    "Statistic",
    "by_condition",
    "condition_key",
    "condition_words",
    "day_scores",
    "is_scored",
    "left_out_because",
    "not_scored",
]

Statistic = Literal["mean", "best"]
ConditionKey = tuple[Any, ...]


@dataclass(frozen=True, kw_only=True)
class DayScore:
    """One limb's score on one day under one condition, and the readings behind it [unit of the measure]."""

    value: float
    unit: str
    date: dt.date
    statistic: Statistic
    readings: tuple[Reading, ...]

    def words(self) -> str:
        """The score with its day and how it was made, for people."""
        count = len(self.readings)
        how = f", {self.statistic} of {count} scored trials" if count > 1 else ""
        return f"{quantity_text(self.value, self.unit, 2)} on {self.date.isoformat()}{how}"


def is_scored(reading: Reading) -> bool:
    """Whether a reading counts: it has a number and was neither lost nor practice."""
    return reading.value is not None and reading.status == "scored"


def condition_key(reading: Reading) -> ConditionKey:
    """What has to agree before two readings of a measure are compared; blank counts as a value of its own."""
    fields = measure_named(reading.measure).must_match
    return tuple(_cleaned(getattr(reading.condition, name)) for name in fields)


def condition_words(measure: str, key: ConditionKey) -> str:
    """A condition key in words; what was not recorded is named so."""
    parts = []
    for name, value in zip(measure_named(measure).must_match, key, strict=True):
        if name == "timing" and value:
            parts.append(f"{value} treatment")
        elif name == "angle_deg" and value is not None:
            parts.append(f"at {value:g}°")
        elif name == "speed_deg_per_s" and value is not None:
            parts.append(f"at {value:g}°/s")
        elif name == "lever_arm_m" and value is not None:
            parts.append(f"lever arm {value:g} m")
        elif value:
            parts.append(str(value))
    return ", ".join(parts)


def by_condition(readings: Iterable[Reading]) -> dict[ConditionKey, tuple[Reading, ...]]:
    """Scored readings sorted into the conditions that may be compared, in order of first appearance."""
    groups: dict[ConditionKey, list[Reading]] = {}
    for reading in readings:
        if is_scored(reading):
            groups.setdefault(condition_key(reading), []).append(reading)
    return {key: tuple(rows) for key, rows in groups.items()}


def day_scores(readings: Sequence[Reading], statistic: Statistic = "mean") -> tuple[DayScore, ...]:
    """One score a day from scored readings of one measure, limb and condition, earliest first.

    ``"best"`` follows the measure's own direction: the shortest time, the longest distance.
    """
    days: dict[dt.date, list[Reading]] = {}
    for reading in readings:
        if is_scored(reading):
            days.setdefault(reading.date, []).append(reading)
    return tuple(_score(days[day], statistic) for day in sorted(days))


def not_scored(readings: Iterable[Reading]) -> tuple[LeftOut, ...]:
    """Readings that do not count, each with the reason: lost, practice, or why there is no number."""
    found = []
    for reading in readings:
        if reading.value is None:
            found.append(LeftOut(reading=reading, reason=f"no number: {reading.missing or 'not recorded'}"))
        elif reading.status == "lost":
            found.append(LeftOut(reading=reading, reason="lost trial: kept, not scored"))
        elif reading.status == "practice":
            found.append(LeftOut(reading=reading, reason="practice trial: kept, not scored"))
    return tuple(found)


def left_out_because(
    readings: Iterable[Reading], used: Iterable[Reading], reason: str
) -> tuple[LeftOut, ...]:
    """Scored readings that are not among ``used``, each with the same reason."""
    taken = {r.id for r in used}
    return tuple(LeftOut(reading=r, reason=reason) for r in readings if is_scored(r) and r.id not in taken)


def _score(rows: list[Reading], statistic: Statistic) -> DayScore:
    values = [r.value for r in rows if r.value is not None]
    if statistic == "best":
        value = min(values) if measure_named(rows[0].measure).better == "lower" else max(values)
    else:
        value = sum(values) / len(values)
    return DayScore(
        value=value, unit=rows[0].unit, date=rows[0].date, statistic=statistic, readings=tuple(rows)
    )


def _cleaned(value: Any) -> Any:
    return value.strip().lower() if isinstance(value, str) else value
