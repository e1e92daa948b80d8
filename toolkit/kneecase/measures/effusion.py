"""Effusion of the operated knee as an ordinal grade: where it stands and which way it went."""

from __future__ import annotations

import datetime as dt
from collections.abc import Sequence

from kneecase.answers import Answer, Finding, LeftOut, reading_words
from kneecase.errors import InputError
from kneecase.evidence.swelling import (
    EFFUSION_AGREEMENT_STURGILL2009,
    EFFUSION_KAPPA_STURGILL2009,
    EFFUSION_TESTER_STEP_STURGILL2009,
    EFFUSION_TWO_GRADES_APART_STURGILL2009,
)
from kneecase.measures.accepted import accepted
from kneecase.measures.comparable import by_condition, condition_words, not_scored
from kneecase.record import EFFUSION_GRADES, Case, Reading, banner_of

__all__ = ["effusion_course", "effusion_word", "is_beyond_tester_difference"]

_TESTERS = (
    EFFUSION_TESTER_STEP_STURGILL2009,
    EFFUSION_AGREEMENT_STURGILL2009,
    EFFUSION_TWO_GRADES_APART_STURGILL2009,
    EFFUSION_KAPPA_STURGILL2009,
)


def effusion_word(grade: float) -> str:
    """The word for an effusion grade given as its place in the scale: 0 zero, 1 trace, 2 is 1+.

    Parameters
    ----------
    grade : float
        Place in the scale, a whole number from 0 to 4 [grade].

    Returns
    -------
    str
        ``"zero"``, ``"trace"``, ``"1+"``, ``"2+"`` or ``"3+"``.

    Raises
    ------
    InputError
        If it is no place in the scale: grades are never averaged.

    Examples
    --------
    >>> effusion_word(1), effusion_word(3)
    ('trace', '2+')
    """
    place = accepted("grade", grade, low=0.0, high=len(EFFUSION_GRADES) - 1.0)
    if place != int(place):
        raise InputError(f"grade must be a whole place in the scale, got {grade!r}. Was it averaged?")
    return EFFUSION_GRADES[int(place)]


def is_beyond_tester_difference(step_grade: float, tester_step_grade: float) -> bool:
    """Whether a change of effusion is larger than two testers differ by on an unchanged knee.

    Parameters
    ----------
    step_grade : float
        Later grade minus earlier grade [grade].
    tester_step_grade : float
        Difference that two testers make without any change [grade].

    Returns
    -------
    bool
        True when the change is larger.

    Raises
    ------
    InputError
        If a number is missing.

    Examples
    --------
    >>> is_beyond_tester_difference(-1.0, 1.0), is_beyond_tester_difference(2.0, 1.0)
    (False, True)
    """
    return abs(accepted("step_grade", step_grade)) > accepted("tester_step_grade", tester_step_grade, low=0.0)


def effusion_course(case: Case, on: dt.date | None = None) -> Answer:
    """Effusion of the operated knee: the grade now, and its change since the last reading and the first.

    Looked at every visit, before loading goes up. Readings before and after treatment are kept apart.

    Parameters
    ----------
    case : Case
        The recorded case.
    on : datetime.date, optional
        The day looked at; default the last recorded date.

    Returns
    -------
    Answer
        Grade now and its changes, one set for readings before treatment and one for readings after.

    Notes
    -----
    The grades are ordinal: they are compared, never averaged. Of several readings on one day the largest
    counts. A change of one grade between two testers is within their ordinary difference.
    """
    day = on or case.last_date
    known = case.as_of(day)
    rows = known.readings_of("effusion", side=case.involved)
    after = [r for r in rows if r.date >= case.surgery.date]
    findings: list[Finding] = []
    used: list[Reading] = []
    for key, group in by_condition(after).items():
        course = _worst_of_each_day(group)
        used += course
        findings += _findings(course, condition_words("effusion", key), day)
    return Answer(
        heading="Effusion",
        banner=banner_of(case, day),
        summary=_summary(findings),
        findings=tuple(findings) or (_unknown(),),
        used=tuple(used),
        left_out=_left_out(known, rows, used),
        cautions=(
            "Effusion is graded by hand with the stroke test; a rise after a session, or fluid with fever, "
            "heat or pain at rest, is for the surgeon to hear about the same day.",
        ),
    )


def _worst_of_each_day(rows: Sequence[Reading]) -> list[Reading]:
    days = sorted({r.date for r in rows})
    return [max((r for r in rows if r.date == day), key=_grade) for day in days]


def _findings(course: Sequence[Reading], condition: str, day: dt.date) -> list[Finding]:
    now = course[-1]
    where = f", {condition}" if condition else ""
    grades = ", ".join(effusion_word(_grade(r)) for r in course)
    stale = () if now.date == day else (f"The latest grade is of {now.date.isoformat()}.",)
    found = [
        Finding(
            label=f"effusion now{where}",
            value=_grade(now),
            unit="grade",
            digits=0,
            shown=effusion_word(_grade(now)),
            words=f"on {now.date.isoformat()}; course: {grades}" if len(course) > 1 else _once(now),
            inputs=tuple(reading_words(r) for r in course),
            formula="the grade as recorded; of several on one day the largest",
            error="two testers often differ by one grade on the same knee",
            evidence=_TESTERS,
            cautions=stale,
        )
    ]
    if len(course) > 1:
        found.append(_change(course[-2], now, f"change since the last reading{where}"))
    if len(course) > 2:
        found.append(_change(course[0], now, f"change since the first reading{where}"))
    return found


def _change(earlier: Reading, now: Reading, label: str) -> Finding:
    step = _grade(now) - _grade(earlier)
    same_tester = earlier.tester.strip().lower() == now.tester.strip().lower() != ""
    return Finding(
        label=label,
        value=step,
        unit="grade",
        digits=0,
        shown=_step_words(step),
        words=f"from {effusion_word(_grade(earlier))} to {effusion_word(_grade(now))}: "
        + _meaning(step, same_tester),
        inputs=(reading_words(earlier), reading_words(now)),
        formula="place of the later grade in the scale minus place of the earlier",
        error="same tester" if same_tester else "different or unnamed testers",
        evidence=_TESTERS,
    )


def _meaning(step: float, same_tester: bool) -> str:
    if step == 0:
        return "no change of grade"
    way = "more fluid" if step > 0 else "less fluid"
    if is_beyond_tester_difference(step, EFFUSION_TESTER_STEP_STURGILL2009.number):
        return f"{way}, by more than testers usually differ"
    if same_tester:
        return f"{way} by the same tester; how far one tester differs from themselves was not published"
    return "within what two testers differ by: cannot tell whether it changed"


def _step_words(step: float) -> str:
    if step == 0:
        return "no change"
    count = f"{abs(step):.0f} grade{'' if abs(step) == 1 else 's'}"
    return f"{count} {'more' if step > 0 else 'less'}"


def _grade(reading: Reading) -> float:
    if reading.value is None:
        raise InputError(f"an effusion reading in use must have a grade, got {reading_words(reading)!r}.")
    return reading.value


def _once(now: Reading) -> str:
    return f"on {now.date.isoformat()}; graded once, so nothing can be said about its course"


def _unknown() -> Finding:
    return Finding(
        label="effusion now",
        value=None,
        unit="grade",
        words="no effusion grade since surgery is recorded: grade it with the stroke test",
    )


def _summary(findings: Sequence[Finding]) -> str:
    now = [f"{f.label}: {f.shown}" for f in findings if f.label.startswith("effusion now")]
    if not now:
        return "Effusion is unknown: no grade is recorded since surgery."
    changes = [f"{f.label}: {f.shown}" for f in findings if f.label.startswith("change since the last")]
    sentence = "; ".join(now + changes)
    return f"{sentence[0].upper()}{sentence[1:]}."


def _left_out(case: Case, rows: Sequence[Reading], used: Sequence[Reading]) -> tuple[LeftOut, ...]:
    taken = {r.id for r in used}
    out = list(not_scored(rows))
    known = taken | {x.reading.id for x in out}
    for reading in rows:
        if reading.id not in known:
            early = reading.date < case.surgery.date
            reason = "before surgery: reference only" if early else "a larger grade of the same day is used"
            out.append(LeftOut(reading=reading, reason=reason))
    other = case.readings_of("effusion", side=case.uninvolved)
    return tuple(out) + tuple(LeftOut(reading=r, reason="the other knee") for r in other)
