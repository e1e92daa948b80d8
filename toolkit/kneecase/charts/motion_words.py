"""What a motion chart says in words, for who cannot see it and under the picture."""

from __future__ import annotations

import datetime as dt
from collections.abc import Sequence

from kneecase.charts.motion_marks import marks_of
from kneecase.charts.motion_series import Series, before_surgery
from kneecase.evidence.course import COURSE_FLEXION_WEEK6_WELL_OUWELEEN2021
from kneecase.record import Case, Limit, Reading, limit_words, measure_named
from kneecase.recovery.findings import angle_words
from kneecase.units import number_text

__all__ = ["motion_alt", "motion_caption"]


def motion_alt(
    case: Case, measure: str, series: Sequence[Series], other: Reading | None, limits: Sequence[Limit]
) -> str:
    """Every reading of the picture, in words."""
    parts = [f"{measure_named(measure).label.capitalize()} of the operated {case.involved} knee by week."]
    for s in series:
        points = "; ".join(
            f"week {number_text(case.weeks(r.date))}: {angle_words(measure, r.value)}"
            for r in s.readings
            if r.value is not None
        )
        parts.append(f"{s.label.capitalize()}: {points}.")
    if other is not None and other.value is not None:
        parts.append(f"Other knee {angle_words(measure, other.value)} on {other.date.isoformat()}.")
    parts += [f"Surgeon's limit: {limit_words(limit)}." for limit in limits]
    return " ".join(parts)


def motion_caption(case: Case, measure: str, day: dt.date, series: Sequence[Series], *, usual: bool) -> str:
    """What the bars and marks mean, and what is not drawn."""
    sentences = [_bars(series), _marks(series)]
    if usual:
        median = COURSE_FLEXION_WEEK6_WELL_OUWELEEN2021
        sentences.append(
            "The target is common practice without a source; the observed median "
            f"({median.population}, n = {median.n}; {median.source.authors} {median.source.year}) "
            "means that half of the knees that did well were lower."
        )
    left = before_surgery(case, measure, day)
    if left:
        sentences.append(f"Readings of this knee before surgery, not drawn: {left}.")
    return " ".join(sentence for sentence in sentences if sentence)


def _bars(series: Sequence[Series]) -> str:
    known = {s.precision.pair: s for s in series if s.precision is not None}
    if not known:
        return "No published error fits these readings, so they carry no bars."
    texts = [f"±{number_text(s.half_bar or 0.0)}° ({pair})" for pair, s in known.items()]
    return f"Bars: 95 % of the measurement error of one reading, {' and '.join(texts)}."


def _marks(series: Sequence[Series]) -> str:
    taken = list(marks_of(series))
    text = f"All taken by {taken[0]}." if len(taken) == 1 else "The shape tells tester and device."
    if any(s.motion == "active" for s in series):
        text += " Filled: passive; hollow, broken line: active."
    if any(s.timing == "after" for s in series):
        text += " Readings after treatment stand by themselves, paler."
    return text
