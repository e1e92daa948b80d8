"""The outcome-score answer: every score of the last day it was asked, and its change since the day before."""

from __future__ import annotations

import datetime as dt
from collections.abc import Collection, Sequence
from dataclasses import dataclass
from typing import get_args

from kneecase.answers import Answer, Finding, LeftOut
from kneecase.errors import InputError
from kneecase.evidence.questionnaires import QUESTIONNAIRES
from kneecase.measures.comparable import is_scored, not_scored
from kneecase.measures.koos_rule import KoosRule
from kneecase.measures.score_beside import BESIDE
from kneecase.measures.score_findings import change_finding, score_finding, tegner_finding
from kneecase.measures.score_on_day import ScoreOnDay, score_on_day
from kneecase.record import Case, banner_of

__all__ = ["OutcomeScores", "outcome_scores"]

_SAID_ALOUD = ("acl_rsi",)
"""Scores whose cautions stand at the answer itself, because they are mistaken for a measure of safety."""


@dataclass(frozen=True, kw_only=True)
class OutcomeScores(Answer):
    """Outcome scores; ``problems`` are contradictions in the record, ``koos_rule`` the missing-item rule."""

    problems: tuple[str, ...] = ()
    koos_rule: KoosRule = "2012"


def outcome_scores(case: Case, on: dt.date | None = None, *, koos_rule: KoosRule = "2012") -> OutcomeScores:
    """What the athlete reports: each outcome score's latest value up to ``on`` and its change since the last.

    Looked at beside every number measured from outside. A change is held against what error alone can
    produce; what is published as mattering or acceptable stands beside it, disagreeing values together, and
    decides nothing.

    Parameters
    ----------
    case : Case
        The recorded case; scores as totals or by item number.
    on : datetime.date, optional
        The day looked at; default the last recorded date.
    koos_rule : {"2012", "1998"}
        The missing-item rule of the KOOS; kept in the answer.

    Returns
    -------
    OutcomeScores
        One finding a score, one a change; where items and total disagree neither is taken, and ``problems``
        says so.

    Raises
    ------
    InputError
        If the rule is unknown, or an item lies outside its range.
    """
    if koos_rule not in get_args(KoosRule):
        raise InputError(f"koos_rule must be '2012' or '1998', got {koos_rule!r}.")
    day = on or case.last_date
    courses = {name: _course(case, name, day, koos_rule) for name in QUESTIONNAIRES}
    shown = {name: course for name, course in courses.items() if course}
    findings = tuple(f for course in shown.values() for f in _findings(case, course))
    problems = tuple(
        f"{QUESTIONNAIRES[s.measure].label}, {s.date.isoformat()}: {s.problem}"
        for course in shown.values()
        for s in course[-2:]
        if s.problem
    )
    used = tuple(r for course in shown.values() for s in course[-2:] for r in s.readings)
    return OutcomeScores(
        heading="Outcome scores",
        banner=banner_of(case, day),
        summary=_summary(shown, day, problems),
        findings=findings,
        used=used,
        left_out=_left_out(case, day),
        cautions=_cautions(problems, shown) if shown else (),
        problems=problems,
        koos_rule=koos_rule,
    )


def _course(case: Case, measure: str, day: dt.date, koos_rule: KoosRule) -> list[ScoreOnDay]:
    """The score of every day it was asked, earliest first."""
    rows = [r for r in case.readings_of(measure, until=day) if is_scored(r)]
    days = sorted({r.date for r in rows})
    return [score_on_day(measure, [r for r in rows if r.date == d], koos_rule) for d in days]


def _findings(case: Case, course: Sequence[ScoreOnDay]) -> tuple[Finding, ...]:
    now = course[-1]
    found = [score_finding(case, now)]
    earlier = course[:-1]
    before_surgery = [s for s in earlier if s.date < case.surgery.date]
    if now.measure == "tegner" and before_surgery:
        found.append(tegner_finding(now, before_surgery))
        earlier = [s for s in earlier if s.date >= case.surgery.date]
    if earlier:
        found.append(change_finding(now, earlier[-1]))
    return tuple(found)


def _left_out(case: Case, day: dt.date) -> tuple[LeftOut, ...]:
    return not_scored(r for name in QUESTIONNAIRES for r in case.readings_of(name, until=day))


def _cautions(problems: Sequence[str], shown: Collection[str]) -> tuple[str, ...]:
    return (
        *(f"The record contradicts itself. {text}." for text in problems),
        *(
            f"{QUESTIONNAIRES[name].label}: {text}"
            for name in _SAID_ALOUD
            if name in shown
            for text in BESIDE[name].cautions
        ),
        "Scores of different forms cannot be compared with each other.",
        "A detectable change belongs to one person and two days; a change that matters was found in groups, "
        "mostly against the score before surgery.",
        "An interval is the error of a score and is not cut off at the end of the scale.",
    )


def _summary(shown: dict[str, list[ScoreOnDay]], day: dt.date, problems: Sequence[str]) -> str:
    if not shown:
        return f"No outcome score is recorded up to {day.isoformat()}."
    parts = []
    for name, course in shown.items():
        value = course[-1].value_points
        parts.append(f"{QUESTIONNAIRES[name].label} {'unknown' if value is None else format(value, '.1f')}")
    text = "; ".join(parts) + "."
    return f"{text} {len(problems)} to mend: see the cautions." if problems else text
