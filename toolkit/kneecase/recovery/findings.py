"""The findings of a gain answer: each number with its inputs, formula, error, source and words."""

from __future__ import annotations

from kneecase.answers import Finding, Verdict
from kneecase.evidence.course_targets import COURSE_PLATEAU_SPAN_OURS
from kneecase.evidence.provenance import PublishedValue
from kneecase.measures.comparable import DayScore
from kneecase.record import Precision, precision_of
from kneecase.record.neutral_zero import extension_words
from kneecase.recovery.change import RealChange
from kneecase.recovery.flat import Plateau
from kneecase.recovery.progress import Progress
from kneecase.recovery.rate import GainRate
from kneecase.units import number_text, quantity_text

__all__ = ["angle_words", "findings_of"]

_FORMULAS = {
    "robust": "median of the slopes between all pairs of days; the interval lies between two of the ordered "
    "slopes, their ranks from the variance of Kendall's statistic (Sen 1968)",
    "least squares": "sum(dx·dy) / sum(dx²) with distances from the means; interval: slope ± t(n − 2) × "
    "scatter about the line / √sum(dx²)",
    "known error": "least squares slope; interval: slope ± z × error / √sum(dx²), error being the larger of "
    "the known error of one reading and the scatter about the line",
}
# A plateau is no criterion that anyone wants met: its own words say it, and only doubt gets a verdict.
_PLATEAU_VERDICTS: dict[str, Verdict] = {
    "plateau": "",
    "no plateau": "",
    "target reached": "",
    "cannot tell": "too close to call",
    "near the target": "too close to call",
}


def findings_of(progress: Progress) -> tuple[Finding, ...]:
    """Gain rates, changes and the plateau test of ``progress``."""
    days = progress.series.days
    found = [_rate_finding("gain rate", progress.rate, progress, days)]
    if len(days) > 2:
        beside = [r for r in (progress.robust, progress.least_squares) if r.method != progress.rate.method]
        found += [_rate_finding("gain rate", rate, progress, days) for rate in beside]
    if progress.recent is not None:
        first = progress.recent_days[0].date.isoformat()
        found.append(
            _rate_finding(f"gain rate since {first}", progress.recent, progress, progress.recent_days)
        )
    found += _changes(progress)
    if progress.held is not None and progress.rate.deg_per_week is not None:
        found.append(_plateau_finding(progress.held, progress))
    return tuple(found)


def angle_words(measure: str, angle_deg: float) -> str:
    """An angle for people; extension in words, so that nobody has to guess its sign."""
    return extension_words(angle_deg) if measure == "knee_extension" else quantity_text(angle_deg, "deg")


def _rate_finding(label: str, rate: GainRate, progress: Progress, days: tuple[DayScore, ...]) -> Finding:
    error = _error(progress, days)
    direction = (
        "A gain of extension is a fall of the recorded angle; a gain is positive."
        if progress.better == "lower"
        else ""
    )
    return Finding(
        label=f"{label}, {_method_words(rate)}",
        value=rate.deg_per_week,
        unit="deg_per_week",
        low=rate.low,
        high=rate.high,
        level=rate.level,
        words=rate.words(),
        inputs=(*_day_words(progress, days), f"taken: {progress.series.words()}"),
        formula=_FORMULAS[rate.method],
        error=_error_words(error) + _use_words(rate, error),
        evidence=_published(error),
        cautions=(direction,) if direction else (),
    )


def _use_words(rate: GainRate, error: Precision | None) -> str:
    """Whether the known error made the interval, where there is one."""
    if error is None or rate.method == "known error" or rate.why or rate.low is None:
        return ""
    return "; known, but the interval comes from the scatter of the readings themselves"


def _method_words(rate: GainRate) -> str:
    if rate.method == "robust":
        return "robust line"
    return "least squares" if rate.method == "least squares" else "least squares with the known error"


def _changes(progress: Progress) -> list[Finding]:
    days = progress.series.days
    if len(days) < 2:
        return []
    found = [_change_finding("change since the last visit", progress, days[-2:], progress.since_last)]
    if len(days) > 2:
        pair = (days[0], days[-1])
        found.append(_change_finding("change since the first reading", progress, pair, progress.since_first))
    return found


def _change_finding(
    label: str, progress: Progress, pair: tuple[DayScore, ...], change: RealChange | None
) -> Finding:
    label = f"{label} ({pair[0].date.isoformat()})"
    inputs = _day_words(progress, pair)
    if change is None:
        return Finding(
            label=label,
            value=None,
            unit="deg",
            words="no measurement error is published for this pair: real change cannot be told from error",
            inputs=inputs,
        )
    error = _error(progress, pair)
    gain, reach = float(change.change), float(change.mdc)
    return Finding(
        label=label,
        value=gain,
        unit="deg",
        low=gain - reach,
        high=gain + reach,
        level=change.level,
        words=change.words(),
        verdict="" if change.is_real else "too close to call",
        inputs=inputs,
        formula="later minus earlier"
        + (", turned so that a fall of the angle is a gain" if progress.better == "lower" else "")
        + "; real when beyond z × √2 × error of one reading",
        error=_error_words(error),
        evidence=_published(error),
    )


def _plateau_finding(held: Plateau, progress: Progress) -> Finding:
    rate, span = held.rate, COURSE_PLATEAU_SPAN_OURS
    measure = progress.series.measure
    target = "none known" if progress.target_deg is None else angle_words(measure, progress.target_deg)
    if progress.full is not None and progress.other is not None:
        target += (
            f", the other knee on {progress.other.date.isoformat()}; {progress.full.quantity()} short of it "
            "counts as full"
        )
    return Finding(
        label="plateau test",
        value=rate.high,
        unit="deg_per_week",
        words=held.words(),
        verdict=_PLATEAU_VERDICTS.get(held.verdict, "unknown"),
        inputs=(
            *_day_words(progress, progress.recent_days),
            f"useful gain: {number_text(held.useful_deg_per_week, 2)}° a week",
            f"target: {target}",
        ),
        formula=f"plateau when the upper end of the gain rate (shown as the value) is below the useful gain, "
        f"over at least two intervals between days and {quantity_text(span.number, 'weeks')}, and the last "
        "day is short of the target by more than measurement error and more than counts as full",
        error=_error_words(_error(progress, progress.recent_days)),
        evidence=(
            *((progress.useful,) if progress.useful else ()),
            span,
            *((progress.full,) if progress.full and progress.other else ()),
            *_published(_error(progress, progress.recent_days)),
        ),
    )


def _day_words(progress: Progress, days: tuple[DayScore, ...]) -> tuple[str, ...]:
    series = progress.series
    return tuple(
        f"{day.date.isoformat()}, week {number_text((day.date - series.window.origin).days / 7)} of the "
        f"window: {angle_words(series.measure, day.value)}"
        + (f" (mean of {len(day.readings)} trials)" if len(day.readings) > 1 else "")
        for day in days
    )


def _error(progress: Progress, days: tuple[DayScore, ...]) -> Precision | None:
    readings = [reading for day in days for reading in day.readings]
    return precision_of(progress.series.measure, readings) if readings else None


def _error_words(error: Precision | None) -> str:
    if error is None:
        return "none published for these readings"
    reason = f"; {error.rule.reason}" if error.rule.reason else ""
    return f"{quantity_text(error.sem, 'deg', 2)} standard error of one reading ({error.pair}{reason})"


def _published(error: Precision | None) -> tuple[PublishedValue, ...]:
    return () if error is None else (error.published,)
