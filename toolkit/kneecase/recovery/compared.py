"""The last reading beside what was observed and, apart from it, beside what programmes aim at."""

from __future__ import annotations

from kneecase.answers import Finding
from kneecase.evidence.course import (
    COURSE_EXTENSION_DEFICIT_WEEK3_GUERRAPINTO2017,
    COURSE_EXTENSION_DEFICIT_WEEK6_GUERRAPINTO2017,
    COURSE_EXTENSION_NORMAL_WEEK1_SHELBOURNE2022,
    COURSE_EXTENSION_WEEK4_TRACKS_NOLL2015,
    COURSE_EXTENSION_WEEK6_LACK_OUWELEEN2021,
    COURSE_EXTENSION_WEEK6_ODDS_OUWELEEN2021,
    COURSE_FLEXION_NORMAL_MONTH3_SHELBOURNE2022,
    COURSE_FLEXION_WEEK6_LOW_OUWELEEN2021,
    COURSE_FLEXION_WEEK6_ODDS_OUWELEEN2021,
    COURSE_FLEXION_WEEK6_STIFF_OUWELEEN2021,
    COURSE_FLEXION_WEEK6_WELL_OUWELEEN2021,
    COURSE_OBSERVED_WEEKS,
)
from kneecase.evidence.course_targets import (
    COURSE_FLEXION_TARGET_WEEK1_WILK2018,
    COURSE_FLEXION_TARGET_WEEK2_WILK2018,
    COURSE_FLEXION_TARGET_WEEK3_WILK2018,
    COURSE_FLEXION_TARGET_WEEK5_PRACTICE,
    COURSE_FLEXION_TARGET_WEEK5_WILK2018,
    COURSE_FLEXION_TARGET_WITHIN_ADAMS2012,
    COURSE_TARGET_WEEKS,
)
from kneecase.evidence.provenance import PublishedValue
from kneecase.measures import is_met
from kneecase.record import Case
from kneecase.recovery.findings import angle_words
from kneecase.recovery.progress import Progress
from kneecase.recovery.window import restarted_by
from kneecase.units import number_text, quantity_text

__all__ = ["comparisons"]

_OBSERVED = {
    "knee_flexion": (
        COURSE_FLEXION_WEEK6_WELL_OUWELEEN2021,
        COURSE_FLEXION_WEEK6_STIFF_OUWELEEN2021,
        COURSE_FLEXION_NORMAL_MONTH3_SHELBOURNE2022,
    ),
    "knee_extension": (
        COURSE_EXTENSION_NORMAL_WEEK1_SHELBOURNE2022,
        COURSE_EXTENSION_DEFICIT_WEEK3_GUERRAPINTO2017,
        COURSE_EXTENSION_WEEK4_TRACKS_NOLL2015,
        COURSE_EXTENSION_DEFICIT_WEEK6_GUERRAPINTO2017,
    ),
}
_GATES = {
    "knee_flexion": (COURSE_FLEXION_WEEK6_LOW_OUWELEEN2021, COURSE_FLEXION_WEEK6_ODDS_OUWELEEN2021),
    "knee_extension": (COURSE_EXTENSION_WEEK6_LACK_OUWELEEN2021, COURSE_EXTENSION_WEEK6_ODDS_OUWELEEN2021),
}
_TARGETS = (
    COURSE_FLEXION_TARGET_WEEK1_WILK2018,
    COURSE_FLEXION_TARGET_WEEK2_WILK2018,
    COURSE_FLEXION_TARGET_WEEK3_WILK2018,
    COURSE_FLEXION_TARGET_WEEK5_PRACTICE,
    COURSE_FLEXION_TARGET_WEEK5_WILK2018,
)


def comparisons(case: Case, progress: Progress) -> tuple[Finding, ...]:
    """Published values of about the week of the last reading; none where another event restarted the course.

    An observed value counts within a week of its own week, a target line within half a week.
    """
    series = progress.series
    if not series.days or restarted_by(case, series.window.until) is not None:
        return ()
    week, value = case.weeks(series.days[-1].date), series.days[-1].value
    found = [
        _observed(published, series.measure, week, value)
        for published in _OBSERVED[series.measure]
        if _is_near(week, COURSE_OBSERVED_WEEKS[published.name], 1)
    ]
    found += _gate(case, progress)
    if series.measure == "knee_flexion":
        found += [
            _target(published, week, value)
            for published in _TARGETS
            if _is_near(week, COURSE_TARGET_WEEKS[published.name], 0.5)
        ]
        found += _within_other(progress, week, value)
    return tuple(found)


def _is_near(week: float, weeks: tuple[float, float], by: float) -> bool:
    return weeks[0] - by <= week <= weeks[1] + by


def _observed(published: PublishedValue, measure: str, week: float, value: float) -> Finding:
    own = f"this knee: {angle_words(measure, value)} at week {number_text(week)}"
    if published.unit == "deg":
        away = value - published.number
        side = "above" if away >= 0 else "below"
        own += f", {quantity_text(abs(away), 'deg')} {side} this median; half of those knees lay below it"
    return Finding(
        label=f"observed: {published.definition.removeprefix('observed ')}",
        value=published.value,
        unit=published.unit,
        digits=3 if published.unit == "fraction" else 1,
        words=own,
        inputs=(own,),
        evidence=(published,),
        cautions=(f"seen in: {published.population}; other knees may differ",),
    )


def _gate(case: Case, progress: Progress) -> list[Finding]:
    """The line published for six weeks, from day 42 on; nothing where the surgeon caps this motion now.

    Extension is also held against the other knee's own, where that knee may be trusted: half of what is
    lost is hidden when the other one hyperextends.
    """
    series = progress.series
    gate, odds = _GATES[series.measure]
    line_weeks, last = COURSE_OBSERVED_WEEKS[gate.name][0], series.days[-1]
    days = (last.date - case.surgery.date).days
    short = _short_of_other(progress)
    own = is_met(last.value, gate.number, gate.operator)
    side = short is not None and is_met(short, gate.number, gate.operator)
    if progress.is_capped_now or days < line_weeks * 7 or not (own or side):
        return []
    against = "" if own or short is None else f", {quantity_text(short, 'deg')} short of the other knee"
    words = (
        f"this knee: {angle_words(series.measure, last.value)}{against} at week {number_text(days / 7)}; the "
        f"line of {gate.quantity()} was published for six weeks: arthrofibrosis at three months was more "
        "frequent beyond it, in adolescents; tell the surgeon"
    )
    return [
        Finding(
            label=odds.definition,
            value=odds.value,
            unit=odds.unit,
            low=odds.low,
            high=odds.high,
            words=words,
            inputs=() if progress.other is None else (f"other knee: {progress.other.words()}",),
            evidence=(gate, odds),
            cautions=(
                "an odds ratio of a group, not this knee's risk",
                *(() if own else ("holding the line against the other knee is our own reading of it",)),
            ),
        )
    ]


def _short_of_other(progress: Progress) -> float | None:
    """Extension short of a trustworthy other knee [deg]; nothing for flexion or without one."""
    if progress.series.measure != "knee_extension" or progress.other is None:
        return None
    if not progress.reference.trustworthy:
        return None
    return progress.series.days[-1].value - progress.other.value


def _target(published: PublishedValue, week: float, value: float) -> Finding:
    aim = published.low if published.value is None else published.value
    words = f"this knee: {quantity_text(value, 'deg')} at week {number_text(week)}"
    if aim is not None and value < aim:
        words += f", {quantity_text(aim - value, 'deg')} short of this target; that alone is not abnormal"
    return Finding(
        label=f"target, not expectation: {published.definition.removeprefix('target ')}",
        value=aim,
        unit="deg",
        low=published.low,
        high=published.high,
        words=words,
        evidence=(published,),
        cautions=("a target of a programme; the observed course is slower",),
    )


def _within_other(progress: Progress, week: float, value: float) -> list[Finding]:
    published = COURSE_FLEXION_TARGET_WITHIN_ADAMS2012
    if progress.other is None or not _is_near(week, COURSE_TARGET_WEEKS[published.name], 0.5):
        return []
    return [
        Finding(
            label="target, not expectation: difference in flexion to the other knee",
            value=progress.other.value - value,
            unit="deg",
            words=f"target in weeks 3 to 5: {published.quantity()}",
            inputs=(f"other knee: {progress.other.words()}", f"this knee: {quantity_text(value, 'deg')}"),
            formula="other knee minus this knee",
            evidence=(published,),
            cautions=("a target of a programme; the observed course is slower",),
        )
    ]
