"""What has to be said beside a gain rate: what bends it, what was not recorded, and when to ask."""

from __future__ import annotations

from collections.abc import Iterator

from kneecase.evidence.course import COURSE_STRETCH_GAIN_COCHRANE2017
from kneecase.evidence.course_targets import (
    COURSE_FLEXION_FAST_PRACTICE,
    COURSE_FLEXION_STEEPEST_TARGET_WILK2018,
)
from kneecase.evidence.provenance import PublishedValue
from kneecase.evidence.stiffness import (
    COURSE_STIFFNESS_PROCEDURE_HOPPER2024,
    COURSE_STIFFNESS_PROCEDURE_HULEATT2018,
    COURSE_STIFFNESS_PROCEDURE_NWACHUKWU2011,
)
from kneecase.record import Case, limit_words
from kneecase.recovery.prior import STIFF_BY_GRAFT
from kneecase.recovery.progress import Progress
from kneecase.recovery.series import Series
from kneecase.recovery.window import BREAKS
from kneecase.units import number_text, quantity_text

__all__ = ["asked_evidence", "cautions_of", "is_fast", "is_stuck"]

_PROCEDURES = (
    COURSE_STIFFNESS_PROCEDURE_HOPPER2024,
    COURSE_STIFFNESS_PROCEDURE_HULEATT2018,
    COURSE_STIFFNESS_PROCEDURE_NWACHUKWU2011,
)


def cautions_of(case: Case, progress: Progress) -> tuple[str, ...]:
    """Every caution that applies, the weightiest first."""
    return (
        *_cap(progress),
        *_fast(case, progress),
        *_stuck(case, progress),
        *_bent(progress),
        *_taken(progress),
        *_left(progress),
        *_course(progress),
    )


def is_fast(progress: Progress) -> bool:
    """Whether flexion gains faster than the steepest stretch of a published target line."""
    if progress.series.measure != "knee_flexion":
        return False
    steepest = COURSE_FLEXION_STEEPEST_TARGET_WILK2018.number
    rates = [
        rate.deg_per_week
        for rate in (progress.rate, progress.recent)
        if rate is not None and rate.deg_per_week is not None and rate.shown in ("gain", "uneven gain")
    ]
    change, dates = progress.since_last, progress.series.dates
    if change is not None and change.is_real:
        rates.append(float(change.change) * 7 / (dates[-1] - dates[-2]).days)
    return any(rate > steepest for rate in rates)


def is_stuck(progress: Progress) -> bool:
    """Whether the last weeks show no gain, or a plateau, with no surgeon's limit to explain it."""
    if progress.is_capped_now:
        return False
    held = progress.held is not None and progress.held.verdict == "plateau"
    reached = progress.held is not None and progress.held.verdict == "target reached"
    return held or (progress.now.shown in ("no gain", "loss", "uneven loss") and not reached)


def asked_evidence(case: Case, progress: Progress) -> tuple[PublishedValue, ...]:
    """The published values that the cautions about a fast or a stuck knee rest on."""
    found: list[PublishedValue] = []
    if is_fast(progress):
        found += [COURSE_FLEXION_STEEPEST_TARGET_WILK2018, COURSE_FLEXION_FAST_PRACTICE]
    if is_stuck(progress):
        graft = STIFF_BY_GRAFT.get(case.surgery.graft)
        found += [*_PROCEDURES, *([graft] if graft else []), COURSE_STRETCH_GAIN_COCHRANE2017]
    return tuple(found)


def _cap(progress: Progress) -> Iterator[str]:
    limit = progress.cap
    if limit is None:
        return
    motion, until = limit.kind, progress.series.window.until
    if limit.in_force(until):
        yield (
            f"Surgeon's limit in force: {limit_words(limit)}. {motion.capitalize()} is capped, so stiffness "
            f"is not to be read from {motion} while it lasts, and no plateau is tested."
        )
        return
    tested = (
        "so no plateau is tested" if progress.is_capped_now else "and the whole window includes those weeks"
    )
    yield (
        f"A surgeon's limit held during part of these readings: {limit_words(limit)}, from "
        f"{limit.start.isoformat()}. {motion.capitalize()} was capped then, {tested}; since= looks at the "
        "days after it alone."
    )


def _fast(case: Case, progress: Progress) -> Iterator[str]:
    if not is_fast(progress):
        return
    series = progress.series
    steepest, fast = COURSE_FLEXION_STEEPEST_TARGET_WILK2018, COURSE_FLEXION_FAST_PRACTICE
    yield (
        f"Fast: more than {steepest.quantity()}, the steepest stretch of a published target line. A gain of "
        f"this size is not measurement noise (nor is {fast.quantity()}). Ask: was every reading in the same "
        f"position ({series.position or 'not recorded'})? Warm, or after treatment "
        f"({series.timing or 'timing not recorded'}; warm-up done: {_warm_up(case, series)})? Was there a "
        f"manipulation ({_manipulations(case, series)})?"
    )


def _warm_up(case: Case, series: Series) -> str:
    answers = {visit.answer("warm_up_done") for visit in case.visits if visit.date in series.dates}
    return " and ".join(sorted(answers)) or "no visit recorded on these days"


def _manipulations(case: Case, series: Series) -> str:
    window = series.window
    days = [
        e.date.isoformat()
        for e in case.events
        if e.kind == "manipulation" and window.origin <= e.date <= window.until
    ]
    return f"recorded on {', '.join(days)}" if days else "none recorded in this window"


def _stuck(case: Case, progress: Progress) -> Iterator[str]:
    if not is_stuck(progress):
        return
    shares = ", ".join(
        f"{quantity_text(v.number, v.unit, 2)} ({v.source.authors.split(' and ')[0]} {v.source.year}: "
        f"{v.population})"
        for v in _PROCEDURES
    )
    graft = STIFF_BY_GRAFT.get(case.surgery.graft)
    own = (
        f" With a {case.surgery.graft} graft {quantity_text(graft.number, graft.unit)} were stiff at three "
        f"months ({graft.population})."
        if graft
        else ""
    )
    yield (
        "No gain shown is a finding, not a failure of measuring: tell the surgeon, and look at extension, "
        f"effusion and pain beside it. Procedures for stiffness after reconstruction: {shares}.{own}"
    )
    stretch = COURSE_STRETCH_GAIN_COCHRANE2017
    yield (
        f"No amount of stretching can be promised a gain: over control it added {stretch.quantity()} in "
        f"{stretch.population}. Go by what this knee does."
    )


def _bent(progress: Progress) -> Iterator[str]:
    for event in progress.series.window.bent_by:
        day = event.date.isoformat()
        if event.kind in (*BREAKS, "surgery"):
            yield (
                f"The window spans the {event.kind} of {day}: this rate mixes the course before and after "
                "it. Leave since= out to look at the days after it."
            )
        elif event.kind == "change of programme":
            yield f"The programme changed on {day}; since='change of programme' looks at the days after it."
    later = [e for e in progress.series.window.bent_by if e.kind == "other"]
    yield from (f"Recorded on {e.date.isoformat()}: {e.note or 'an event'}." for e in later)


def _taken(progress: Progress) -> Iterator[str]:
    series = progress.series
    if not series.days:
        return
    unsaid = [
        words
        for value, words in (
            (series.motion, "whether active or passive"),
            (series.position, "the position"),
            (series.timing, "whether before or after treatment"),
        )
        if not value
    ]
    if unsaid:
        yield f"Not recorded: {', '.join(unsaid)}. Readings taken in different ways may be mixed here."
    several = [day for day in series.days if len(day.readings) > 1]
    if several:
        yield (
            f"{len(several)} day{'s' if len(several) > 1 else ''} with several readings: the mean of the day "
            "is used as one."
        )
    who = {r.tester.strip() for r in series.readings}
    what = {r.device.strip() for r in series.readings}
    if len(who) > 1 or "" in who or len(what) > 1 or "" in what:
        error = "" if progress.precision is None else f" ({progress.precision.pair})"
        yield (
            f"Readings by different or unnamed testers or devices{error}: part of any change may be who "
            "measured with what."
        )
    if progress.precision is None:
        yield "No measurement error is published for readings taken like this."


def _left(progress: Progress) -> Iterator[str]:
    ways = progress.series.other_ways
    if ways:
        yield (
            f"Also recorded in this window and not mixed in: {'; '.join(ways)}. Ask for them with motion=, "
            "position= or timing=."
        )
    if progress.other is not None and not progress.reference.trustworthy:
        yield f"As to the target: {progress.reference.words()}."


def _course(progress: Progress) -> Iterator[str]:
    rate = progress.rate.deg_per_week
    if rate is not None and rate > 0:
        weeks = progress.series.weeks
        yield (
            f"A rate holds for its own {number_text(weeks[-1] - weeks[0])} weeks: motion comes back fast at "
            "first and slower later."
        )
