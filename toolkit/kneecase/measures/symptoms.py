"""Pain and joint soreness as told at the visits: where they stand and which way they went."""

from __future__ import annotations

import datetime as dt
from collections.abc import Sequence

from kneecase.answers import Answer, Finding
from kneecase.evidence.symptoms import PAIN_MUCH_BETTER_SALAFFI2004, PAIN_SLIGHTLY_BETTER_SALAFFI2004
from kneecase.record import SORENESS, Case, Visit, banner_of
from kneecase.units import number_text, quantity_text

__all__ = ["pain_and_soreness"]

_WHEN = {"rest": "at rest", "activity": "in activity", "next morning": "next morning"}
_LINE = PAIN_MUCH_BETTER_SALAFFI2004


def pain_and_soreness(case: Case, on: dt.date | None = None) -> Answer:
    """Pain, 0 to 10, and joint soreness at the last visit, and their change since the visit before.

    Looked at every visit, before the dose goes up. Soreness is a word in an order, never a number.

    Parameters
    ----------
    case : Case
        The recorded case.
    on : datetime.date, optional
        The day looked at; default the last recorded date.

    Returns
    -------
    Answer
        One finding a kind of pain, and one for soreness; unknown where nobody asked.

    Notes
    -----
    Each is taken from the latest visit at which it was asked; visits before surgery do not count.

    References
    ----------
    salaffi-2004
    """
    day = on or case.last_date
    visits = [v for v in case.as_of(day).visits if v.date >= case.surgery.date]
    findings = (*(_pain(visits, when) for when in _WHEN), _soreness(visits))
    return Answer(
        heading="Pain and soreness",
        banner=banner_of(case, day),
        summary=f"P{'; '.join(f'{f.label}: {f.quantity()}' for f in findings)[1:]}.",
        findings=findings,
        cautions=(
            "Pain that grows, wakes at night, or is out of proportion to the findings is for the surgeon to "
            "hear about, whatever the number.",
        ),
    )


def _pain(visits: Sequence[Visit], when: str) -> Finding:
    asked = [v for v in visits if when in v.pain]
    label = f"pain {_WHEN[when]}"
    if not asked:
        return Finding(label=label, value=None, unit="points", words="not asked: ask, from 0 to 10")
    return Finding(
        label=label,
        value=asked[-1].pain[when],
        unit="points",
        words=_change_words(asked, when),
        inputs=tuple(f"{v.date.isoformat()}: {number_text(v.pain[when])} of 10" for v in asked),
        formula="as told; change is later minus earlier",
        error="no measurement error after ACL reconstruction was found",
        evidence=(PAIN_SLIGHTLY_BETTER_SALAFFI2004, _LINE),
    )


def _change_words(asked: Sequence[Visit], when: str) -> str:
    now = asked[-1]
    if len(asked) == 1:
        return f"on {now.date.isoformat()}; asked once, so nothing can be said about its course"
    before = asked[-2]
    step = now.pain[when] - before.pain[when]
    if step == 0:
        return f"on {now.date.isoformat()}; the same as on {before.date.isoformat()}"
    told = f"on {now.date.isoformat()}; {quantity_text(abs(step), 'points')} "
    if step > 0:
        return f"{told}more than on {before.date.isoformat()}"
    held = "at least" if -step >= _LINE.number else "under"
    return (
        f"{told}less than on {before.date.isoformat()}, {held} the "
        f"{quantity_text(_LINE.number, 'points')} that people with chronic pain call much better"
    )


def _soreness(visits: Sequence[Visit]) -> Finding:
    asked = [v for v in visits if v.soreness]
    if not asked:
        words = "not asked: joint soreness around the last session, not muscle soreness"
        return Finding(label="joint soreness", value=None, unit="grade", words=words)
    now, order = asked[-1], tuple(SORENESS)
    if now.soreness not in order:
        words = f"recorded as {now.soreness!r}, which is none of: {', '.join(order)}"
        return Finding(label="joint soreness", value=None, unit="grade", words=words)
    course = "; ".join(v.soreness for v in asked)
    return Finding(
        label="joint soreness",
        value=float(order.index(now.soreness)),
        unit="grade",
        digits=0,
        shown=now.soreness,
        words=f"{SORENESS[now.soreness]}, on {now.date.isoformat()}"
        + (f". Course: {course}" if len(asked) > 1 else "; asked once"),
        inputs=tuple(f"{v.date.isoformat()}: {SORENESS.get(v.soreness, v.soreness)}" for v in asked),
        formula="the word as recorded; the words are in order and the steps between them are not equal",
        error="none published",
    )
