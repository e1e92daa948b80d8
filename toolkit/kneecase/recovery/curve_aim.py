"""What a curve is held against: the other knee, a published line, a given target, a surgeon's limit."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass, replace

from kneecase.evidence.clearance import CLEARANCE_LSI_GRINDEM2020
from kneecase.evidence.provenance import PublishedValue
from kneecase.measures.motion_grade import FULL_MOTION, full_within_deg
from kneecase.record import Case, Limit
from kneecase.recovery.curve_series import CurveSeries
from kneecase.recovery.series import other_knee

__all__ = ["Aim", "aim_of", "limit_now"]


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
    full = FULL_MOTION.get(series.measure)
    if full is not None:
        other = other_knee(case, series.measure, motion=series.motion, position=series.position)
        if other is None:
            return Aim(value=None, words="the other knee was not measured in the same way")
        short = full_within_deg(full)
        value = other.value - short if series.better == "higher" else other.value + short
        words = f"the other knee on {other.date.isoformat()} less {full.quantity()}, which counts as full"
        return Aim(value=value, words=words, evidence=(full,))
    if series.unit == "pct":
        value_90 = CLEARANCE_LSI_GRINDEM2020
        return Aim(value=value_90.number, words="published symmetry line", evidence=(value_90,))
    return Aim(value=None, words="no target was given")


def limit_now(case: Case, series: CurveSeries, day: dt.date) -> Limit | None:
    """The surgeon's limit of this motion in force on the day."""
    limit = case.limit(series.measure.removeprefix("knee_"), day) if series.unit == "deg" else None
    return limit if limit is not None and limit.value is not None else None
