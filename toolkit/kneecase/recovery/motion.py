"""Motion gain: the answer to 'does this knee still gain, and is the change real?'"""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass, replace

from kneecase.answers import Answer, Finding
from kneecase.errors import InputError
from kneecase.measures.accepted import accepted
from kneecase.record import Case, Precision, banner_of, measure_named
from kneecase.recovery.cautions import asked_evidence, cautions_of
from kneecase.recovery.change import RealChange
from kneecase.recovery.compared import comparisons
from kneecase.recovery.findings import findings_of
from kneecase.recovery.flat import Plateau
from kneecase.recovery.progress import BETTER, Progress, progress_of
from kneecase.recovery.rate import GainRate
from kneecase.recovery.series import Series, series_of
from kneecase.recovery.summary import summary_of, why_no_date
from kneecase.recovery.window import window_of

__all__ = ["MotionGain", "motion_gain"]


@dataclass(frozen=True, kw_only=True)
class MotionGain(Answer):
    """Gain of one motion over a window, with its error; every rate and change is positive when it improves.

    ``rate`` leads: the robust line from five days on, else least squares with the known error. ``robust``
    and ``least_squares`` stand beside it. ``recent`` is the rate over the latest weeks that a plateau needs
    (``None`` where that is the whole window). ``since_last`` and ``since_first`` hold a change against the
    error of that pair of testers and devices (``None`` where there is no such pair or no published error).
    ``held`` is the plateau test, ``None`` where a surgeon's limit caps the motion. ``why_no_date`` says
    why no date for a target is given. ``series`` holds the days used, for a chart. For a knee outside the
    scope of kneecase all of these are ``None``.
    """

    measure: str
    series: Series | None = None
    rate: GainRate | None = None
    robust: GainRate | None = None
    least_squares: GainRate | None = None
    recent: GainRate | None = None
    since_last: RealChange | None = None
    since_first: RealChange | None = None
    held: Plateau | None = None
    precision: Precision | None = None
    why_no_date: str = ""


def motion_gain(
    case: Case,
    measure: str = "knee_flexion",
    *,
    motion: str | None = None,
    on: dt.date | None = None,
    since: dt.date | str | None = None,
    timing: str | None = None,
    position: str | None = None,
    level: float = 0.95,
    useful_deg_per_week: float | None = None,
    target_deg: float | None = None,
) -> MotionGain:
    """Gain of knee flexion or extension [deg per week] over a window, and whether the changes are real.

    Looked at on every visit while motion is not full: does this knee still gain, how fast, and could the
    change since the last visit be nothing but the error of measuring it?

    Parameters
    ----------
    case : Case
        The recorded case.
    measure : {"knee_flexion", "knee_extension"}
        Which motion; a fall of the extension angle is the gain.
    motion : {"passive", "active", ""}, optional
        Passive by default where it was taken on two days, else active, else not said; never mixed.
    on : datetime.date, optional
        As known at the end of this day; the last recorded date by default.
    since : datetime.date or str, optional
        First day of the window, or the kind of an event ("manipulation", "surgery"): its latest one opens
        the window and weeks count from there. By default the latest of surgery, manipulation, re-injury
        and second surgery.
    timing : {"before", "", "after"}, optional
        Before treatment or not said by default, whichever has more days; never mixed.
    position : str, optional
        The position with most days by default; never mixed.
    level : float
        Of every interval [fraction].
    useful_deg_per_week : float, optional
        Smallest gain that counts in the plateau test [deg per week].
    target_deg : float, optional
        What the knee is to reach [deg]; the other knee's latest reading taken in the same way by default.

    Returns
    -------
    MotionGain
        One finding a number; nothing is worked out for a knee outside the scope of kneecase.

    Raises
    ------
    InputError
        If the measure is another, the window holds no such event or ends before it begins, or a choice is
        none of the listed.

    Notes
    -----
    Several trials of a day count as one, their mean. The error of a mean is taken as that of one reading,
    because published errors hold more than the wobble within a visit. A straight line holds for its own
    weeks only.
    """
    if measure not in BETTER:
        raise InputError(f"measure must be 'knee_flexion' or 'knee_extension', got {measure!r}.")
    if useful_deg_per_week is not None:
        accepted("useful_deg_per_week", useful_deg_per_week, "deg per week", above=0.0)
    day = case.last_date if on is None else on
    known = case.as_of(day)
    if known.outside_scope:
        return _outside(known, measure, day)
    window = window_of(known, day, since)
    series = series_of(known, measure, window, motion=motion, timing=timing, position=position)
    return _answer(
        known,
        progress_of(
            known, series, level=level, useful_deg_per_week=useful_deg_per_week, target_deg=target_deg
        ),
    )


def _outside(case: Case, measure: str, day: dt.date) -> MotionGain:
    procedures = ", ".join(case.outside_scope)
    return MotionGain(
        heading=_heading(measure),
        banner=banner_of(case, day),
        summary=f"Outside the scope of kneecase ({procedures}): no gain rate is worked out for this knee.",
        measure=measure,
        why_no_date=f"No date for a target is given: outside the scope of kneecase ({procedures})",
    )


def _answer(case: Case, progress: Progress) -> MotionGain:
    series = progress.series
    return MotionGain(
        heading=_heading(series.measure),
        banner=banner_of(case, series.window.until),
        summary=summary_of(progress),
        findings=(*_leading(case, progress), *comparisons(case, progress)),
        used=series.readings,
        left_out=series.left_out,
        cautions=cautions_of(case, progress),
        measure=series.measure,
        series=series,
        rate=progress.rate,
        robust=progress.robust,
        least_squares=progress.least_squares,
        recent=progress.recent,
        since_last=progress.since_last,
        since_first=progress.since_first,
        held=progress.held,
        precision=progress.precision,
        why_no_date=why_no_date(progress),
    )


def _leading(case: Case, progress: Progress) -> tuple[Finding, ...]:
    """Rates, changes and plateau; the first carries the sources of the cautions too."""
    first, *others = findings_of(progress)
    asked = asked_evidence(case, progress)
    return (replace(first, evidence=(*first.evidence, *asked)), *others)


def _heading(measure: str) -> str:
    return f"Gain of {measure_named(measure).label}"
