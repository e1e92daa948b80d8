"""A recovery curve in words: values, chances, dates, and what they come to."""

from __future__ import annotations

import math

from kneecase.evidence.recovery_prior import RECOVERY_CHANGE_ODDS_OURS
from kneecase.record.neutral_zero import extension_words
from kneecase.recovery.curve_answer import RecoveryCurve
from kneecase.recovery.prior import course_words
from kneecase.units import number_text, quantity_text

__all__ = [
    "aim_words",
    "capital",
    "chance_words",
    "change_words",
    "course_lines",
    "date_words",
    "forecast_line",
    "has_changed",
    "odds_words",
    "reading_lines",
    "target_words",
    "value_words",
]

_FAR_WEEKS = 10**3
_MOST_ODDS = 10**3


def value_words(curve: RecoveryCurve, value: float) -> str:
    """A value for people; extension in words, so that nobody has to guess its sign."""
    if curve.measure == "knee_extension":
        return extension_words(round(value))
    return quantity_text(value, curve.series.unit if curve.series else "deg", digits=0)


def chance_words(chance: float) -> str:
    """A chance in percent; never 0 or 100, because no forecast is certain."""
    pct = 100 * chance
    if pct < 1:
        return "below 1 %"
    return "above 99 %" if 100 - pct < 1 else f"{number_text(pct, 0)} %"


def date_words(curve: RecoveryCurve, week: float) -> str:
    """The date of a week of the curve, or that it does not come."""
    if curve.series is None or math.isinf(week):
        return "never on this course"
    if week > _FAR_WEEKS:
        return "beyond any use of a forecast"
    return curve.series.date(week).isoformat()


def has_changed(curve: RecoveryCurve) -> bool:
    """Whether the odds are large enough for a change of course to be reported."""
    return curve.change is not None and curve.change.odds >= RECOVERY_CHANGE_ODDS_OURS.number


def change_words(curve: RecoveryCurve) -> str:
    """What the odds of a change of course say."""
    change, series = curve.change, curve.series
    if change is None or series is None:
        return ""
    if not has_changed(curve):
        return "no change of course shown; a small or gradual one would not be seen"
    day = series.dates[change.place].isoformat()
    one = "; it rests on one reading, so take it again first" if change.later == 1 else ""
    return f"Since {day} this knee follows another course, odds {odds_words(change.odds)}{one}"


def odds_words(odds: float) -> str:
    """Odds for people."""
    if odds >= _MOST_ODDS:
        return "more than 1000 to 1"
    return f"{number_text(odds, 0)} to 1" if odds >= 1 else f"1 to {number_text(1 / odds, 0)}"


def target_words(curve: RecoveryCurve) -> str:
    """When the target is reached, with its chances."""
    weeks = curve.target_weeks or (math.inf,) * 3
    early, middle, late = (date_words(curve, week) for week in weeks)
    by = "" if curve.by is None else curve.by.isoformat()
    never = curve.chance_never or 0.0
    chances = f"chance by {by} {chance_words(curve.chance_by_date or 0.0)}, never {chance_words(never)}"
    aim = capital(aim_words(curve))
    if math.isinf(weeks[0]):
        return f"{aim} is not reached on this course with even 10 % chance ({chances})"
    if math.isinf(weeks[1]):
        return f"{aim} is reached by {early} with 10 % chance, more likely never on this course ({chances})"
    if math.isinf(weeks[2]):
        return (
            f"{aim} is reached by {early} with 10 % and by {middle} with 50 % chance, and at all with "
            f"{chance_words(1 - never)} on this course ({chances})"
        )
    return (
        f"{aim} is reached by {early} with 10 %, by {middle} with 50 % and by {late} with 90 % chance "
        f"({chances})"
    )


def capital(text: str) -> str:
    """The text with a capital at its start."""
    return text[:1].upper() + text[1:]


def aim_words(curve: RecoveryCurve) -> str:
    """The target for people."""
    return "the target" if curve.target is None else value_words(curve, curve.target)


def reading_lines(curve: RecoveryCurve) -> tuple[str, ...]:
    """The readings with date and week, one a line."""
    series = curve.series
    if series is None:
        return ()
    return tuple(
        f"{date.isoformat()}, week {number_text(series.week(date))}: {value_words(curve, value)}"
        for date, value in zip(series.dates, series.values, strict=True)
    )


def course_lines(curve: RecoveryCurve) -> tuple[str, ...]:
    """What was expected beforehand, one course a line."""
    if curve.fit is None:
        return ()
    label = "expected beforehand: " if curve.prior is not None else "no prior, as wide as the values allow: "
    notes = () if curve.prior is None else tuple(f"note: {note}" for note in curve.prior.notes)
    courses = curve.fit.courses if curve.prior is not None else ()
    lines = tuple(f"{label}{course_words(course)}" for course in courses)
    return (*lines, *notes) if lines else (label.rstrip(": "),)


def forecast_line(curve: RecoveryCurve, i: int) -> str:
    """One earlier forecast beside what came."""
    forecast, series = curve.record[i], curve.series
    made = "" if series is None else series.dates[forecast.place - 1].isoformat()
    day = "" if series is None else series.dates[forecast.place].isoformat()
    low, high, came = (value_words(curve, x) for x in (forecast.low, forecast.high, forecast.value))
    return f"on {made} for {day}: {low} to {high}; came {came}{'' if forecast.is_inside else ', outside'}"
