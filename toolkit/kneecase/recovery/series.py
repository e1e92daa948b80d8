"""The series of day values behind a gain rate: one motion, taken in one way, on the operated side."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Any

from kneecase.answers import LeftOut
from kneecase.errors import InputError
from kneecase.measures.comparable import DayScore, day_scores, is_scored, not_scored
from kneecase.record import Case, Reading
from kneecase.recovery.window import Window

__all__ = ["Series", "other_knee", "series_of", "way_words"]

_FIELDS: dict[str, tuple[str, ...]] = {
    "motion": ("passive", "active", ""),
    "timing": ("before", "", "after"),
}
_UNSAID = {
    "motion": "active or passive not said",
    "timing": "before or after treatment not said",
    "position": "position not said",
}
Readings = list[Reading]


@dataclass(frozen=True, kw_only=True)
class Series:
    """Day values of one motion of the operated knee, taken in one way, in order of date.

    ``weeks`` run from ``window.origin``; ``degrees`` are the angles as recorded, the mean of a day's trials.
    ``other_ways`` are the ways the left out readings of the window were taken, in words.
    """

    measure: str
    window: Window
    motion: str
    timing: str
    position: str
    days: tuple[DayScore, ...]
    left_out: tuple[LeftOut, ...]
    other_ways: tuple[str, ...] = ()

    @property
    def weeks(self) -> tuple[float, ...]:
        """Time of each day [weeks] from the start of the window."""
        return tuple((day.date - self.window.origin).days / 7 for day in self.days)

    @property
    def degrees(self) -> tuple[float, ...]:
        """Angle of each day [deg] as recorded."""
        return tuple(day.value for day in self.days)

    @property
    def dates(self) -> tuple[dt.date, ...]:
        """Date of each day."""
        return tuple(day.date for day in self.days)

    @property
    def readings(self) -> tuple[Reading, ...]:
        """Every reading used, in order of date."""
        return tuple(reading for day in self.days for reading in day.readings)

    def words(self) -> str:
        """How the readings were taken, in words."""
        return way_words(self.motion, self.timing, self.position)


def way_words(motion: str, timing: str, position: str) -> str:
    """A way of taking a reading in words; what was not recorded is named so."""
    return ", ".join(
        (
            motion or _UNSAID["motion"],
            position or _UNSAID["position"],
            f"{timing} treatment" if timing else _UNSAID["timing"],
        )
    )


def series_of(
    case: Case,
    measure: str,
    window: Window,
    *,
    motion: str | None = None,
    timing: str | None = None,
    position: str | None = None,
) -> Series:
    """The series of ``measure`` in ``window``; what is not asked for is chosen by a stated rule.

    Passive before active before unsaid, the first that has two days; before treatment or timing unsaid,
    whichever has more days, and after treatment only where there is nothing else; the position with
    most days, the latest of equals.
    """
    asked = {"motion": motion, "timing": timing}
    for name, value in asked.items():
        if value is not None and value not in _FIELDS[name]:
            words = ", ".join(repr(x) for x in _FIELDS[name])
            raise InputError(f"{name} must be one of {words} ('' is not said), got {value!r}.")
    rows = list(case.readings_of(measure, side=case.involved))
    out = [*not_scored(rows)]
    inside: Readings = []
    for reading in filter(is_scored, rows):
        if reason := window.reason_outside(reading.date):
            out.append(LeftOut(reading=reading, reason=reason))
        else:
            inside.append(reading)
    ways: list[str] = []
    chosen: dict[str, str] = {}
    for name, wanted in (*asked.items(), ("position", position)):
        chosen[name] = _chosen(name, inside) if wanted is None else _cleaned(wanted)
        inside, dropped = _parted(name, chosen[name], inside)
        out += [LeftOut(reading=r, reason=_reason(name, r, chosen[name])) for r in dropped]
        ways += [_way(r) for r in dropped]
    return Series(
        measure=measure,
        window=window,
        days=day_scores(inside),
        left_out=tuple(sorted(out, key=lambda x: x.reading.date)),
        other_ways=tuple(dict.fromkeys(ways)),
        **chosen,
    )


def other_knee(case: Case, measure: str, *, motion: str, position: str) -> DayScore | None:
    """The other knee's latest value of ``measure`` taken in the same way, whatever the timing."""
    rows = [
        r
        for r in case.readings_of(measure, side=case.uninvolved)
        if is_scored(r) and _field("motion", r) == motion and _field("position", r) == position
    ]
    days = day_scores(rows)
    return days[-1] if days else None


def _chosen(name: str, rows: Readings) -> str:
    days = _days_by(name, rows)
    if name == "motion":
        present = [m for m in _FIELDS["motion"] if m in days]
        return next((m for m in present if len(days[m]) > 1), present[0] if present else "")
    if name == "timing":
        before, unsaid = len(days.get("before", ())), len(days.get("", ()))
        if before or unsaid or "after" not in days:
            return "before" if before and before >= unsaid else ""
        return "after"
    rank: Callable[[str], Any] = lambda place: (len(days[place]), max(days[place]))  # noqa: E731
    return max(days, key=rank, default="")


def _days_by(name: str, rows: Sequence[Reading]) -> dict[str, set[dt.date]]:
    days: dict[str, set[dt.date]] = {}
    for reading in rows:
        days.setdefault(_field(name, reading), set()).add(reading.date)
    return days


def _parted(name: str, value: str, rows: Readings) -> tuple[Readings, Readings]:
    kept = [r for r in rows if _field(name, r) == value]
    return kept, [r for r in rows if _field(name, r) != value]


def _reason(name: str, reading: Reading, value: str) -> str:
    words = {"motion": "{}", "timing": "{} treatment", "position": "{}"}[name]
    of = _field(name, reading)
    own = words.format(of) if of else _UNSAID[name]
    series = words.format(value) if value else _UNSAID[name]
    return f"{own}; this series is {series}"


def _way(reading: Reading) -> str:
    return way_words(*(_field(name, reading) for name in ("motion", "timing", "position")))


def _field(name: str, reading: Reading) -> str:
    return _cleaned(getattr(reading.condition, name))


def _cleaned(value: str) -> str:
    return value.strip().lower()
