"""What the record must show before maximal hopping: orders, warning signs, pain, warm-up."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable

from kneecase.evidence.clearance import CLEARANCE_HOP_PAIN_PRACTICE
from kneecase.measures.go_ahead_item import GoAheadItem, dated_item, go_ahead_item
from kneecase.measures.go_ahead_knee import effusion_item, motion_item, quadriceps_item
from kneecase.measures.threshold import is_met
from kneecase.record import QUESTIONS, Case, Visit, limit_words
from kneecase.units import number_text

__all__ = ["go_ahead_items"]

_LIMITS = ("jumping and hopping", "running", "strength testing", "weight bearing")
_NOT_SIGNS = ("gait_normal", "straight_leg_raise", "lag", "warm_up_done")
_SIGNS = tuple(key for key in QUESTIONS if key not in _NOT_SIGNS)


def go_ahead_items(case: Case, day: dt.date) -> tuple[GoAheadItem, ...]:
    """Every condition as it stands on the day, in the order they are checked."""
    scope = (_scope(case),) if case.outside_scope else ()
    return (
        *scope,
        _limit(case, day),
        _signs(case, day),
        effusion_item(case, day),
        motion_item(case, day, "knee_extension"),
        motion_item(case, day, "knee_flexion"),
        _pain(case, day),
        quadriceps_item(case, day),
        _warm_up(case, day),
    )


def _scope(case: Case) -> GoAheadItem:
    words = (
        f"outside the scope of kneecase ({', '.join(case.outside_scope)}): the surgeon's programme decides"
    )
    return go_ahead_item("scope", "a knee these conditions are meant for", "not met", words)


def _limit(case: Case, day: dt.date) -> GoAheadItem:
    label = "no surgeon's limit against it"
    binding = [limit for limit in case.limits_in_force(day) if limit.kind in _LIMITS]
    if binding:
        words = f"in force: {'; '.join(limit_words(limit) for limit in binding)}"
        return go_ahead_item("limit", label, "not met", words, date=day, shown="in force")
    words = f"none in force in this record on {', '.join(_LIMITS)}"
    return go_ahead_item("limit", label, "met", words, date=day, shown="none in force")


def _signs(case: Case, day: dt.date) -> GoAheadItem:
    label = "no warning sign at intake"
    visits = _last_day(case, lambda v: any(v.answer(key) != "not asked" for key in _SIGNS))
    if not visits:
        return go_ahead_item("signs", label, "unknown", "no intake questions are recorded")
    date = visits[0].date
    answers = {key: {visit.answer(key) for visit in visits} for key in _SIGNS}
    yes = [QUESTIONS[key] for key in _SIGNS if "yes" in answers[key]]
    unasked = [QUESTIONS[key] for key in _SIGNS if answers[key] == {"not asked"}]
    if yes:
        words = f"answered yes on {date.isoformat()}: {'; '.join(yes)}"
        return go_ahead_item("signs", label, "not met", words, date=date, shown="yes")
    if unasked:
        return go_ahead_item("signs", label, "unknown", f"not asked: {'; '.join(unasked)}", date=date)
    words = f"all asked on {date.isoformat()}, all answered no"
    return dated_item("signs", label, True, words, date=date, day=day, shown="none")


def _pain(case: Case, day: dt.date) -> GoAheadItem:
    line = CLEARANCE_HOP_PAIN_PRACTICE
    label = f"pain {line.operator} {number_text(line.number)} of 10"
    visits = _last_day(case, lambda v: bool(v.pain))
    if not visits:
        return go_ahead_item("pain", label, "unknown", "pain was not asked", unit="points", evidence=(line,))
    date = visits[0].date
    pains = [(when, level) for visit in visits for when, level in visit.pain.items()]
    worst = max(level for _, level in pains)
    told = ", ".join(f"{when} {number_text(level)}" for when, level in pains)
    met = is_met(worst, line.number, line.operator)
    if met and "activity" not in {when for when, _ in pains}:
        words = f"{told}; in activity not asked"
        return go_ahead_item("pain", label, "unknown", words, date=date, unit="points", evidence=(line,))
    return dated_item(
        "pain",
        label,
        met,
        told,
        date=date,
        day=day,
        value=worst,
        unit="points",
        inputs=(f"asked on {date.isoformat()}: {told}",),
        evidence=(line,),
    )


def _last_day(case: Case, counts: Callable[[Visit], bool]) -> tuple[Visit, ...]:
    """The visits that count, of the latest day on which any does."""
    asked = [visit for visit in case.visits if counts(visit)]
    last = max((visit.date for visit in asked), default=None)
    return tuple(visit for visit in asked if visit.date == last)


def _warm_up(case: Case, day: dt.date) -> GoAheadItem:
    label = "warmed up on the day"
    answers = {v.answer("warm_up_done") for v in case.visits if v.date == day}
    if "no" in answers:
        return go_ahead_item("warm-up", label, "not met", "answered no", date=day, shown="no")
    if "yes" in answers:
        return go_ahead_item("warm-up", label, "met", "answered yes", date=day, shown="yes")
    return go_ahead_item("warm-up", label, "unknown", f"not asked on {day.isoformat()}")
