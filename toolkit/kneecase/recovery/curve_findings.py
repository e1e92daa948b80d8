"""A recovery curve in findings and a summary: each number with its inputs, formula, error and source."""

from __future__ import annotations

import math

from kneecase.answers import Finding
from kneecase.evidence.provenance import PublishedValue
from kneecase.evidence.recovery_prior import RECOVERY_CHANGE_BEFOREHAND_OURS, RECOVERY_CHANGE_ODDS_OURS
from kneecase.recovery.course import STIFF
from kneecase.recovery.curve_answer import RecoveryCurve
from kneecase.recovery.curve_words import (
    aim_words,
    capital,
    chance_words,
    change_words,
    course_lines,
    forecast_line,
    has_changed,
    odds_words,
    reading_lines,
    target_words,
    value_words,
)
from kneecase.units import number_text

__all__ = ["curve_findings", "curve_summary"]

_FORMULA = (
    "A − (A − B)·exp(−k·t): plateau A and start B in closed form, rate k and size of the error summed over a "
    "grid, courses mixed by their chances"
)


def curve_findings(curve: RecoveryCurve) -> tuple[Finding, ...]:
    """Level, plateau, date of the target, chances, change of course and track record."""
    found = [_level(curve), _plateau(curve)]
    if curve.target is not None:
        found += [_target(curve), _by(curve), _never(curve)]
    found.append(_stiff(curve))
    found += [_change(curve), _record(curve)]
    return tuple(found)


def curve_summary(curve: RecoveryCurve) -> str:
    """The whole answer in a few sentences; a change of course first."""
    series = curve.series
    if series is None or curve.fit is None:
        return ""
    now = series.values[-1]
    label = capital(series.label)
    sentences = [f"{label}: {value_words(curve, now)} on {series.dates[-1].isoformat()}."]
    if has_changed(curve):
        sentences.insert(0, f"{change_words(curve)}.")
    if curve.target is None:
        sentences.append(f"No target: {curve.target_from}.")
    else:
        sentences.append(f"{target_words(curve)}.")
    if curve.chance_stiff is not None:
        sentences.append(f"Chance of the stiff course: {chance_words(curve.chance_stiff)}.")
    if curve.prior is None:
        sentences.append("No prior: nothing but these values is behind it.")
    return " ".join(sentences)


def _level(curve: RecoveryCurve) -> Finding:
    series, fit = curve.series, curve.fit
    if series is None or fit is None:
        return Finding(label="level of the course", value=None, unit="deg", words=curve.why_not)
    day = series.dates[-1]
    band = fit.at(series.week(day), level=_level_of(curve))
    return Finding(
        label=f"the course on {day.isoformat()}",
        value=float(band.middle[0]),
        unit=series.unit,
        low=float(band.low[0]),
        high=float(band.high[0]),
        level=band.level,
        words="what the readings together say, not the last one alone",
        inputs=(
            *reading_lines(curve),
            f"readings: {series.words}",
            *course_lines(curve),
            *_beside(curve),
        ),
        formula=_FORMULA,
        error=f"{series.error}; day-to-day variation is estimated on top",
        evidence=(*series.evidence, *_prior_evidence(curve)),
    )


def _plateau(curve: RecoveryCurve) -> Finding:
    series, fit = curve.series, curve.fit
    if series is None or fit is None:
        return Finding(label="plateau", value=None, unit="deg", words=curve.why_not)
    band = fit.at(math.inf, level=_level_of(curve))
    return Finding(
        label="plateau of the course",
        value=float(band.middle[0]),
        unit=series.unit,
        low=float(band.low[0]),
        high=float(band.high[0]),
        level=band.level,
        words="where the course levels out, no surgeon's limit reckoned with",
        inputs=course_lines(curve),
        formula=_FORMULA,
        evidence=_prior_evidence(curve),
    )


def _target(curve: RecoveryCurve) -> Finding:
    weeks = curve.target_weeks or (math.inf,) * 3
    ends = [week if math.isfinite(week) else None for week in weeks]
    whole = all(end is not None for end in ends)
    return Finding(
        label=f"week in which {aim_words(curve)} is reached, from the start of the curve",
        value=ends[1],
        unit="weeks",
        low=ends[0] if whole else None,
        high=ends[2] if whole else None,
        level=0.8 if whole else None,
        words=target_words(curve),
        inputs=(f"target: {curve.target_from}", f"week 0 is {_origin(curve)}"),
        formula="first week in which the chance that the course stands at the target is 10, 50 and 90 %",
        evidence=(*curve.target_evidence, *_prior_evidence(curve)),
    )


def _by(curve: RecoveryCurve) -> Finding:
    by = "" if curve.by is None else curve.by.isoformat()
    return Finding(
        label=f"chance that {aim_words(curve)} is reached by {by}",
        value=None if curve.chance_by_date is None else 100 * curve.chance_by_date,
        unit="pct",
        digits=0,
        words="of the course, not of a single reading",
        inputs=(f"target: {curve.target_from}",),
        formula="posterior chance that the curve stands at or past the target on that day",
        evidence=(*curve.target_evidence, *_prior_evidence(curve)),
        shown="" if curve.chance_by_date is None else chance_words(curve.chance_by_date),
    )


def _never(curve: RecoveryCurve) -> Finding:
    return Finding(
        label=f"chance that {aim_words(curve)} is never reached on this course",
        value=None if curve.chance_never is None else 100 * curve.chance_never,
        unit="pct",
        digits=0,
        words="if nothing changes: a course can be changed, and this says nothing about what would change it",
        formula="posterior chance that the plateau stays short of the target",
        evidence=_prior_evidence(curve),
        shown="" if curve.chance_never is None else chance_words(curve.chance_never),
    )


def _stiff(curve: RecoveryCurve) -> Finding:
    label = "chance of the stiff course"
    if curve.chance_stiff is None:
        why = (
            "not read while a surgeon's limit caps the motion"
            if curve.limit is not None
            else "no cohort says how often to expect it here"
        )
        return Finding(label=label, value=None, unit="pct", words=why)
    prior = next((c for c in (curve.prior.courses if curve.prior else ()) if c.name == STIFF), None)
    before = "" if prior is None else f"{chance_words(float(prior.chance))} before any reading"
    share = curve.prior.evidence[:1] if curve.prior else ()
    return Finding(
        label=label,
        value=100 * curve.chance_stiff,
        unit="pct",
        digits=0,
        words=f"{before}; a course whose plateau stays well short, not a diagnosis",
        inputs=course_lines(curve),
        formula="chance beforehand times how well each course explains the readings",
        evidence=share,
        shown=chance_words(curve.chance_stiff),
    )


def _change(curve: RecoveryCurve) -> Finding:
    change = curve.change
    if change is None:
        few = curve.prior is not None and curve.series is not None and curve.series.sem is not None
        why = (
            "fewer than three values" if few else "no prior or no known error: one odd value explains as much"
        )
        return Finding(label="change of course", value=None, unit="fraction", words=why)
    return Finding(
        label="odds of a change of course",
        value=change.odds,
        unit="fraction",
        words=change_words(curve),
        inputs=reading_lines(curve),
        formula="odds beforehand × (chance of the earlier readings × chance of the later ones anew) ÷ chance "
        "of all on one course, averaged over the places a change may lie",
        evidence=(RECOVERY_CHANGE_BEFOREHAND_OURS, RECOVERY_CHANGE_ODDS_OURS),
        shown=odds_words(change.odds),
    )


def _record(curve: RecoveryCurve) -> Finding:
    record = curve.record
    if not record:
        return Finding(
            label="track record of earlier forecasts",
            value=None,
            unit="pct",
            words="no earlier forecast to look back on",
        )
    inside = sum(f.is_inside for f in record)
    return Finding(
        label="track record: share of readings inside the interval forecast for them",
        value=100 * inside / len(record),
        unit="pct",
        digits=0,
        words=f"{inside} of {len(record)}; {number_text(100 * record[0].level)} % expected in the long run",
        inputs=tuple(forecast_line(curve, i) for i in range(len(record))),
        formula="each reading forecast from those before it alone",
        shown=f"{inside} of {len(record)}",
    )


def _beside(curve: RecoveryCurve) -> tuple[str, ...]:
    if curve.prior is None:
        return ()
    return tuple(f"beside the prior, not used: {value.line()}" for value in curve.prior.beside)


def _prior_evidence(curve: RecoveryCurve) -> tuple[PublishedValue, ...]:
    return () if curve.prior is None else curve.prior.evidence


def _level_of(curve: RecoveryCurve) -> float:
    return 0.8 if curve.band is None else curve.band.level


def _origin(curve: RecoveryCurve) -> str:
    series = curve.series
    if series is None:
        return "not known"
    return series.origin.isoformat() + (f", the {series.opened_by}" if series.opened_by else "")
