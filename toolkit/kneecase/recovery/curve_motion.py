"""Motion as a recovery curve takes it: free of a surgeon's limit, with the error of its testers."""

from __future__ import annotations

import datetime as dt
import math
from collections.abc import Sequence
from dataclasses import replace

from kneecase.answers import LeftOut
from kneecase.measures import normal_quantile
from kneecase.measures.comparable import DayScore
from kneecase.record import Case, Limit, Precision, Reading, precision_of
from kneecase.record.catalogue import Measure
from kneecase.recovery.curve_series import CurveSeries
from kneecase.recovery.gain import Better
from kneecase.recovery.series import series_of
from kneecase.recovery.window import Window

__all__ = ["motion_values"]


def motion_values(case: Case, info: Measure, window: Window, **asked: str | None) -> CurveSeries:
    """Day means of one motion taken in one way; what a surgeon's limit held is left out."""
    found = series_of(case, info.id, window, **asked)
    better: Better = "higher" if info.better == "higher" else "lower"
    precision = precision_of(info.id, found.readings) if found.readings else None
    kept: list[DayScore] = []
    held: list[DayScore] = []
    for day in found.days:
        limit = _limit_on(case, info.id, day.date)
        room = 0.0 if precision is None else normal_quantile(0.95) * precision.sem
        (held if limit is not None and _is_at(limit, day.value, room, better) else kept).append(day)
    rows = tuple(r for day in kept for r in day.readings)
    reason = "held by the surgeon's limit of that day: it shows the limit, not the knee"
    series = CurveSeries(
        measure=info.id,
        label=info.label,
        unit=info.unit,
        better=better,
        origin=window.origin,
        opened_by=window.opened_by,
        words=f"{found.words()}, {window.words()}",
        dates=tuple(day.date for day in kept),
        values=tuple(day.value for day in kept),
        readings=rows,
        left_out=(
            *found.left_out,
            *(LeftOut(reading=r, reason=reason) for day in held for r in day.readings),
        ),
        position=found.position,
        motion=found.motion,
    )
    return _with_error(series, precision, [day.readings for day in kept])


def _with_error(
    series: CurveSeries, precision: Precision | None, days: Sequence[Sequence[Reading]]
) -> CurveSeries:
    """The error of one reading; with several named testers, that of one tester and how far they differ."""
    if precision is None:
        return series
    whole = replace(
        series,
        sem=precision.sem,
        error=precision.words(),
        evidence=(precision.published,),
        testers=(0,) * len(days),
    )
    names = [{r.tester.strip().lower() for r in rows} for rows in days]
    who = sorted({name for day in names for name in day})
    if len(who) < 2 or "" in who or any(len(day) > 1 for day in names):
        return whole
    own = [
        precision_of(series.measure, [r for rows in days for r in rows if r.tester.strip().lower() == name])
        for name in who
    ]
    best = max((p for p in own if p is not None), key=lambda p: p.sem, default=None)
    if best is None or best.sem >= precision.sem:
        return whole
    return replace(
        whole,
        sem=best.sem,
        tester_sd=math.sqrt(precision.sem**2 - best.sem**2),
        testers=tuple(who.index(next(iter(day))) for day in names),
        error=f"{best.words()}; between testers on top, so that together: {precision.words()}",
        evidence=(best.published, precision.published),
    )


def _limit_on(case: Case, measure: str, day: dt.date) -> Limit | None:
    limit = case.limit(measure.removeprefix("knee_"), day)
    return limit if limit is not None and limit.value is not None else None


def _is_at(limit: Limit, value: float, room: float, better: Better) -> bool:
    end = float(limit.value or 0.0)
    return value >= end - room if better == "higher" else value <= end + room
