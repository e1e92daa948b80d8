"""What a recovery curve answers with."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass

from kneecase.answers import Answer
from kneecase.evidence.provenance import PublishedValue
from kneecase.record import Limit
from kneecase.recovery.course_change import CourseChange
from kneecase.recovery.curve_series import CurveSeries
from kneecase.recovery.fit import CurveBand, RecoveryFit
from kneecase.recovery.prior import RecoveryPrior
from kneecase.recovery.track_record import Forecast

__all__ = ["RecoveryCurve"]


@dataclass(frozen=True, kw_only=True)
class RecoveryCurve(Answer):
    """One knee's course: curve with band, week of a target, chances, change of course, track record.

    ``fit`` is the whole posterior, for any other week or target; it knows no surgeon's limit, while ``band``
    and ``target`` are capped by one in force (``limit``). ``target_weeks`` are the weeks, from the start of
    the curve, by which the target is reached with chance 10, 50 and 90 % [weeks], infinite where never.
    ``chance_by_date`` is the chance that the curve stands at the target on the day ``by``. Where the curve
    cannot be known all of these are ``None`` and ``why_not`` says why.
    """

    measure: str
    series: CurveSeries | None = None
    prior: RecoveryPrior | None = None
    fit: RecoveryFit | None = None
    band: CurveBand | None = None
    target: float | None = None
    target_from: str = ""
    target_evidence: tuple[PublishedValue, ...] = ()
    target_weeks: tuple[float, float, float] | None = None
    by: dt.date | None = None
    chance_by_date: float | None = None
    chance_never: float | None = None
    chance_stiff: float | None = None
    limit: Limit | None = None
    change: CourseChange | None = None
    record: tuple[Forecast, ...] = ()
    why_not: str = ""
