"""What the readings of one series give: rates, changes, plateau, and what caps or bounds the motion."""

from __future__ import annotations

import datetime as dt
import math
from dataclasses import dataclass

from kneecase.evidence.course_targets import (
    COURSE_EXTENSION_USEFUL_GAIN_OURS,
    COURSE_FLEXION_USEFUL_GAIN_OURS,
    COURSE_PLATEAU_SPAN_OURS,
)
from kneecase.evidence.provenance import PublishedValue
from kneecase.measures import ReferenceLimb, minimal_detectable_change, reference_limb
from kneecase.measures.comparable import DayScore
from kneecase.measures.motion_grade import FULL_MOTION, full_within_deg
from kneecase.record import Case, Limit, Precision, Reading, precision_of
from kneecase.recovery.change import RealChange, real_change
from kneecase.recovery.flat import Plateau, plateau
from kneecase.recovery.gain import Better, gain_rate
from kneecase.recovery.rate import GainRate, Method
from kneecase.recovery.series import Series, other_knee

__all__ = ["BETTER", "Progress", "progress_of"]

BETTER: dict[str, Better] = {"knee_flexion": "higher", "knee_extension": "lower"}
_USEFUL = {
    "knee_flexion": COURSE_FLEXION_USEFUL_GAIN_OURS,
    "knee_extension": COURSE_EXTENSION_USEFUL_GAIN_OURS,
}
_LIMIT = {"knee_flexion": "flexion", "knee_extension": "extension"}
Days = tuple[DayScore, ...]


@dataclass(frozen=True, kw_only=True)
class Progress:
    """Everything a gain answer says, before it is put in words; rates and changes are positive when better.

    ``recent_days`` are the latest days that span the time a plateau needs. ``cap`` is a surgeon's limit of
    this motion that was in force on a day used, or is in force on the last, and ``is_capped_now`` whether
    one was in force on a recent day: no plateau is tested then. ``other`` is the other knee's latest value
    taken in the same way, ``reference`` whether it may be trusted, and ``full`` the published shortfall to
    it that still counts as full motion.
    """

    series: Series
    better: Better
    level: float
    precision: Precision | None
    rate: GainRate
    robust: GainRate
    least_squares: GainRate
    recent_days: Days
    recent: GainRate | None
    since_last: RealChange | None
    since_first: RealChange | None
    held: Plateau | None
    cap: Limit | None
    is_capped_now: bool
    other: DayScore | None
    reference: ReferenceLimb
    full: PublishedValue | None
    useful: PublishedValue | None
    target_deg: float | None

    @property
    def now(self) -> GainRate:
        """The rate that speaks of the last weeks: the recent one, or that of the whole window."""
        return self.rate if self.recent is None else self.recent


def progress_of(
    case: Case,
    series: Series,
    *,
    level: float,
    useful_deg_per_week: float | None = None,
    target_deg: float | None = None,
) -> Progress:
    """Rates, changes and the plateau test of ``series``."""
    days, recent_days = series.days, _recent_days(series.days)
    capped_now = _cap(case, series, recent_days) is not None
    aim = _aim(case, series, target_deg, level)
    useful = _USEFUL[series.measure].number if useful_deg_per_week is None else useful_deg_per_week
    return Progress(
        series=series,
        better=BETTER[series.measure],
        level=level,
        precision=_precision(series.measure, days),
        rate=_rate(series, days, level),
        robust=_rate(series, days, level, "robust"),
        least_squares=_rate(series, days, level, "least squares"),
        recent_days=recent_days,
        recent=_rate(series, recent_days, level) if 1 < len(recent_days) < len(days) else None,
        since_last=_change(series, days[-2:], level),
        since_first=_change(series, (*days[:1], *days[-1:]), level) if len(days) > 2 else None,
        held=None if capped_now else _held(series, recent_days, level, useful, aim),
        cap=_cap(case, series, days),
        is_capped_now=capped_now,
        other=aim.other,
        reference=aim.reference,
        full=aim.full,
        useful=_USEFUL[series.measure] if useful_deg_per_week is None else None,
        target_deg=aim.target_deg,
    )


@dataclass(frozen=True, kw_only=True)
class _Aim:
    """What the motion is held against: a given angle, or the other knee's."""

    target_deg: float | None
    margin_deg: float
    full: PublishedValue | None
    other: DayScore | None
    reference: ReferenceLimb


def _aim(case: Case, series: Series, given_deg: float | None, level: float) -> _Aim:
    other = other_knee(case, series.measure, motion=series.motion, position=series.position)
    reference = reference_limb(case, series.measure, series.window.until)
    last = series.days[-1:]
    if given_deg is not None:
        error, factor = _precision(series.measure, last), 1 / math.sqrt(2)  # only one side is read
    else:
        error, factor = _precision(series.measure, (*last, other) if other else last), 1.0
    return _Aim(
        target_deg=given_deg if given_deg is not None or other is None else other.value,
        margin_deg=0.0 if error is None else factor * minimal_detectable_change(error.sem, level),
        full=FULL_MOTION[series.measure] if given_deg is None else None,
        other=other,
        reference=reference,
    )


def _recent_days(days: Days) -> Days:
    """The latest days that span the time a plateau needs, or up to half as long again; else what there is."""
    if not days:
        return ()
    weeks = COURSE_PLATEAU_SPAN_OURS.number
    last = days[-1].date
    start = last - dt.timedelta(weeks=weeks)
    before = [d.date for d in days if last - dt.timedelta(weeks=weeks * 3 / 2) <= d.date <= start]
    first = max(before, default=start)
    return tuple(d for d in days if d.date >= first)


def _precision(measure: str, days: Days) -> Precision | None:
    readings: list[Reading] = [reading for day in days for reading in day.readings]
    return precision_of(measure, readings) if readings else None


def _rate(series: Series, days: Days, level: float, method: Method | None = None) -> GainRate:
    error = _precision(series.measure, days)
    return gain_rate(
        *_columns(series, days),
        error_sd=None if error is None else error.sem,
        level=level,
        method=method,
        better=BETTER[series.measure],
    )


def _columns(series: Series, days: Days) -> tuple[list[float], list[float]]:
    return [(d.date - series.window.origin).days / 7 for d in days], [d.value for d in days]


def _change(series: Series, pair: Days, level: float) -> RealChange | None:
    error = _precision(series.measure, pair)
    if len(pair) < 2 or error is None:
        return None
    return real_change(
        pair[0].value,
        pair[-1].value,
        sem=error.sem,
        level=level,
        better=BETTER[series.measure],
        pair=f"{error.pair}; {error.flag}" if error.flag else error.pair,
    )


def _held(series: Series, days: Days, level: float, useful: float, aim: _Aim) -> Plateau:
    """The plateau test; another knee that may not be trusted cannot end it by being reached."""
    error = _precision(series.measure, days)

    def tested(target_deg: float | None) -> Plateau:
        return plateau(
            *_columns(series, days),
            useful_deg_per_week=useful,
            least_weeks=COURSE_PLATEAU_SPAN_OURS.number,
            target_deg=target_deg,
            within_deg=0.0 if aim.full is None else full_within_deg(aim.full),
            within_operator=aim.full.operator or "≤" if aim.full else "≤",
            margin_deg=aim.margin_deg,
            error_sd=None if error is None else error.sem,
            level=level,
            better=BETTER[series.measure],
        )

    held = tested(aim.target_deg)
    untrusted = aim.full is not None and not aim.reference.trustworthy
    return tested(None) if held.verdict == "target reached" and untrusted else held


def _cap(case: Case, series: Series, days: Days) -> Limit | None:
    dates = [series.window.until, *reversed([day.date for day in days])]
    limits = [limit for limit in case.limits if limit.kind == _LIMIT[series.measure]]
    return next((limit for date in dates for limit in limits if limit.in_force(date)), None)
