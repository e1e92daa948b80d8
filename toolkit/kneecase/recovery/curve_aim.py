"""What a curve is held against: the other knee, a published line, a given target, a surgeon's limit."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass, replace

from kneecase.evidence.clearance import CLEARANCE_LSI_GRINDEM2020
from kneecase.evidence.motion_grades import (
    MOTION_GRADE_EXTENSION_A_IKDC2000,
    MOTION_GRADE_FLEXION_A_IKDC2000,
)
from kneecase.evidence.provenance import PublishedValue
from kneecase.measures.comparable import DayScore, day_scores, is_scored
from kneecase.record import Case, Limit
from kneecase.recovery.curve_series import CurveSeries

__all__ = ["Aim", "aim_of", "limit_now", "other_knee"]

_FULL = {
    "knee_flexion": MOTION_GRADE_FLEXION_A_IKDC2000,
    "knee_extension": MOTION_GRADE_EXTENSION_A_IKDC2000,
}


@dataclass(frozen=True, kw_only=True)
class Aim:
    """A target, where it comes from, and what that rests on."""

    value: float | None
    words: str = ""
    evidence: tuple[PublishedValue, ...] = ()


def aim_of(case: Case, series: CurveSeries, given: float | None, limit: Limit | None) -> Aim:
    """The target, capped by a surgeon's limit in force."""
    aim = Aim(value=given, words="as asked") if given is not None else _default_aim(case, series)
    if limit is None or limit.value is None or aim.value is None:
        return aim
    capped = min(aim.value, limit.value) if series.better == "higher" else max(aim.value, limit.value)
    if capped == aim.value:
        return aim
    return replace(aim, value=capped, words="the surgeon's limit in force, which caps the target")


def _default_aim(case: Case, series: CurveSeries) -> Aim:
    full = _FULL.get(series.measure)
    if full is not None:
        other = other_knee(case, series)
        if other is None:
            return Aim(value=None, words="the other knee was not measured in the same way")
        short = full.number if full.high is None else full.high
        value = other.value - short if series.better == "higher" else other.value + short
        words = f"the other knee on {other.date.isoformat()} less {full.quantity()}, which counts as full"
        return Aim(value=value, words=words, evidence=(full,))
    if series.unit == "pct":
        value_90 = CLEARANCE_LSI_GRINDEM2020
        return Aim(value=value_90.number, words="published symmetry line", evidence=(value_90,))
    return Aim(value=None, words="no target was given")


def other_knee(case: Case, series: CurveSeries) -> DayScore | None:
    """The other knee's latest value taken in the same way."""
    rows = [r for r in case.readings_of(series.measure, side=case.uninvolved) if is_scored(r)]
    alike = [
        r
        for r in rows
        if r.condition.motion.strip().lower() == series.motion
        and r.condition.position.strip().lower() == series.position
    ]
    days = day_scores(alike)
    return days[-1] if days else None


def limit_now(case: Case, series: CurveSeries, day: dt.date) -> Limit | None:
    """The surgeon's limit of this motion in force on the day."""
    limit = case.limit(series.measure.removeprefix("knee_"), day) if series.unit == "deg" else None
    return limit if limit is not None and limit.value is not None else None
