"""Recovery curve: the answer to 'which course is this knee on, and when will it be there?'"""

from __future__ import annotations

import datetime as dt
import math
from dataclasses import replace
from typing import Any

import numpy as np

from kneecase.measures import reference_limb
from kneecase.measures.accepted import accepted
from kneecase.record import Case, Limit, banner_of, measure_named, precision_of
from kneecase.recovery.course import restarted
from kneecase.recovery.course_change import CourseChange, course_change
from kneecase.recovery.curve_aim import aim_of, limit_now
from kneecase.recovery.curve_answer import RecoveryCurve
from kneecase.recovery.curve_cautions import NEVER_TESTED, curve_cautions
from kneecase.recovery.curve_findings import curve_findings, curve_summary
from kneecase.recovery.curve_series import CurveSeries
from kneecase.recovery.curve_values import curve_series
from kneecase.recovery.fit import CurveBand, RecoveryFit, fit_recovery
from kneecase.recovery.prior import RecoveryPrior, recovery_prior
from kneecase.recovery.series import other_knee
from kneecase.recovery.track_record import Forecast, track_record
from kneecase.recovery.window import BREAKS, Window, window_of

__all__ = ["recovery_curve"]

_LEAST_WITHOUT_PRIOR = 4
_FURTHEST_WEEKS = 100


def recovery_curve(
    case: Case,
    measure: str = "knee_flexion",
    on: dt.date | None = None,
    since: dt.date | str | None = None,
    *,
    target: float | None = None,
    by: dt.date | None = None,
    level: float = 0.8,
    prior: RecoveryPrior | None = None,
    motion: str | None = None,
    timing: str | None = None,
    position: str | None = None,
) -> RecoveryCurve:
    """Recovery curve of one measure with its band, the week of a target, and the chances around it.

    Looked at when someone asks 'when?': the answer is a span of dates with chances, and the chance that it
    does not come on this course at all.

    Parameters
    ----------
    case : Case
        The recorded case.
    measure : str
        A motion, a hop or strength test (as limb symmetry), knee or thigh girth (as the difference between
        limbs), or an outcome score. Effusion is a grade and gets no curve.
    on : datetime.date, optional
        As known at the end of this day; the last recorded date by default.
    since : datetime.date or str, optional
        Start of the curve: a date, or the kind of an event; by default the latest of surgery, manipulation,
        re-injury and second surgery. Strength, hops, girth and scores start at their first value after it.
    target : float, optional
        What is to be reached [unit of the curve]; by default the other knee less what counts as full, or 90 %
        symmetry.
    by : datetime.date, optional
        The day the chance is asked for; four weeks on by default.
    level : float
        Of the band [fraction].
    prior : RecoveryPrior, optional
        What is expected instead of :func:`recovery_prior` of this knee.
    motion, timing, position : str, optional
        Which readings of a motion; chosen as in :func:`motion_gain` by default.

    Returns
    -------
    RecoveryCurve
        Curve, dates, chances, change of course, track record; or why it cannot be known.

    Raises
    ------
    InputError
        If the measure has no curve, or a choice is none of the listed.

    Notes
    -----
    After a manipulation, re-injury or second surgery, and for every measure but motion, no cohort says what
    to expect: one weak course labelled 'no prior' is used, and four values are needed. A reading held by a
    surgeon's limit is left out: it shows the limit. No forecast of kneecase was tested on real patients'
    individual courses.
    """
    day = case.last_date if on is None else on
    known = case.as_of(day)
    if target is not None:
        accepted("target", target)
    info = measure_named(measure)
    if known.outside_scope:
        return _unknown(
            known, day, measure, f"outside the scope of kneecase ({', '.join(known.outside_scope)})"
        )
    window = window_of(known, day, since)
    series = curve_series(known, measure, window, motion=motion, timing=timing, position=position)
    if prior is None and info.group == "motion" and window.opened_by not in BREAKS:
        prior = _prior(known, series, is_restart=since is not None and window.opened_by != "surgery")
    if why := _why_not(series, window, prior):
        return _unknown(known, day, measure, why, series)
    return _answer(known, series, prior, day, target=target, by=by, level=level)


def _prior(case: Case, series: CurveSeries, *, is_restart: bool) -> RecoveryPrior:
    """The prior of this knee; from a later start its level is open and the rest stands."""
    other = other_knee(case, series.measure, motion=series.motion, position=series.position)
    error = None if other is None else precision_of(series.measure, other.readings[:1])
    prior = recovery_prior(
        series.measure,
        other_side=None if other is None else other.value,
        other_side_sem=0.0 if error is None else error.sem,
        graft=case.surgery.graft,
    )
    if not is_restart:
        return prior
    courses = tuple(
        replace(new, chance=old.chance)
        for new, old in zip(restarted(prior.courses), prior.courses, strict=True)
    )
    note = "the curve starts later than surgery: its level at the start is left open"
    return replace(prior, courses=courses, notes=(*prior.notes, note))


def _why_not(series: CurveSeries, window: Window, prior: RecoveryPrior | None) -> str:
    if not window.has_start:
        return "there is no reading since surgery"
    if not series.values:
        return f"no value of {series.label} can be used, {series.words}"
    if prior is not None:
        if series.sem is None and len(set(series.values)) < 2:
            return "neither is the error of measuring published, nor are there two different readings"
        return ""
    days = len(series.dates)
    if days < _LEAST_WITHOUT_PRIOR or len(set(series.values)) < 2:
        return (
            f"no cohort says what to expect here, and {days} value{'' if days == 1 else 's'} "
            f"{'is' if days == 1 else 'are'} too few to show a course by themselves: "
            f"{_LEAST_WITHOUT_PRIOR} different ones are needed"
        )
    return ""


def _unknown(
    case: Case, day: dt.date, measure: str, why: str, series: CurveSeries | None = None
) -> RecoveryCurve:
    label = measure_named(measure).label
    return RecoveryCurve(
        heading=f"Recovery curve: {label}",
        banner=banner_of(case, day),
        summary=f"{label[0].upper()}{label[1:]}: not known, {why}.",
        left_out=() if series is None else series.left_out,
        cautions=(NEVER_TESTED,),
        measure=measure,
        series=series,
        why_not=why,
    )


def _answer(
    case: Case,
    series: CurveSeries,
    prior: RecoveryPrior | None,
    day: dt.date,
    *,
    target: float | None,
    by: dt.date | None,
    level: float,
) -> RecoveryCurve:
    limit = limit_now(case, series, day)
    aim = aim_of(case, series, target, limit)
    fit = fit_recovery(
        series.weeks,
        series.values,
        sem=series.sem,
        courses=None if prior is None else prior.courses,
        better=series.better,
        testers=series.testers or None,
        tester_sd=series.tester_sd,
    )
    date = by or day + dt.timedelta(weeks=4)
    curve = RecoveryCurve(
        heading=f"Recovery curve: {series.label}",
        banner=banner_of(case, day),
        summary="",
        used=series.readings,
        left_out=series.left_out,
        measure=series.measure,
        series=series,
        prior=prior,
        fit=fit,
        band=_band(fit, series, day, level, limit),
        target=aim.value,
        target_from=aim.words,
        target_evidence=aim.evidence,
        by=date,
        limit=limit,
        change=_change(series, prior),
        record=_record(series, prior, level),
        **_chances(fit, series, aim.value, date),
    )
    # While a limit holds, stiffness is not to be read from what it caps.
    curve = replace(curve, chance_stiff=None) if limit is not None else curve
    notes = () if prior is None else _other_knee_caution(case, series.measure, day)
    return replace(
        curve,
        findings=curve_findings(curve),
        summary=curve_summary(curve),
        cautions=(*curve_cautions(curve), *notes),
    )


def _other_knee_caution(case: Case, measure: str, day: dt.date) -> tuple[str, ...]:
    """What speaks against the other knee that a prior is measured by; nothing for what has no side."""
    if not measure_named(measure).per_limb:
        return ()
    reference = reference_limb(case, measure, day)
    return () if reference.trustworthy else (f"As to the other knee: {reference.words()}.",)


def _chances(fit: RecoveryFit, series: CurveSeries, target: float | None, by: dt.date) -> dict[str, Any]:
    stiff = float(fit.chance_stiff)
    found: dict[str, Any] = {"chance_stiff": None if math.isnan(stiff) else stiff}
    if target is None:
        return found
    weeks = tuple(float(week) for week in fit.week_of(target))
    at = max(series.week(by), 0.0)
    return found | {
        "target_weeks": weeks,
        "chance_by_date": float(fit.chance_by(target, at)),
        "chance_never": float(fit.chance_never(target)),
    }


def _band(
    fit: RecoveryFit, series: CurveSeries, day: dt.date, level: float, limit: Limit | None
) -> CurveBand:
    """The curve week by week to twice the time known, at least ten weeks on; capped while a limit holds."""
    now = series.week(day)
    end = min(max(2 * now, now + 10), max(now + 10, _FURTHEST_WEEKS))
    band = fit.at(np.arange(0, math.ceil(end) + 1), level=level)
    if limit is None or limit.value is None:
        return band
    last = math.inf if limit.until is None else series.week(limit.until)
    from_week = series.week(limit.start)
    inside = (band.weeks >= from_week) & (band.weeks <= last)
    cut = np.minimum if series.better == "higher" else np.maximum
    ends = {
        name: np.where(inside, cut(getattr(band, name), limit.value), getattr(band, name))
        for name in ("low", "middle", "high")
    }
    return replace(band, **ends)


def _change(series: CurveSeries, prior: RecoveryPrior | None) -> CourseChange | None:
    if series.sem is None or prior is None:
        return None
    sem = math.hypot(series.sem, series.tester_sd)
    return course_change(series.weeks, series.values, sem=sem, courses=prior.courses, better=series.better)


def _record(series: CurveSeries, prior: RecoveryPrior | None, level: float) -> tuple[Forecast, ...]:
    if series.sem is None or prior is None:
        return ()
    sem = math.hypot(series.sem, series.tester_sd)
    return track_record(
        series.weeks, series.values, sem=sem, courses=prior.courses, better=series.better, level=level
    )
