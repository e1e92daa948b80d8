"""Red flags as they were recorded: shown first, with who to turn to, and never as a diagnosis."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from kneecase.record import QUESTIONS, Case, Visit

__all__ = ["ACTS", "DEFERENCE", "RedFlag", "RedFlags", "red_flags"]

_NOW = "Act now: emergency help by the local pathway; end the session."
_AT_ONCE = "Act now: have it examined at once, by the local emergency pathway."
_TODAY = "Act today: medical assessment by the local pathway."
_SURGEON_TODAY = "Act today: tell the surgeon the same day."
_POP = "Ask the surgeon before the knee is loaded further; today if the straight leg cannot be raised."
_ASK = "Ask the surgeon before progressing."

ACTS: Mapping[str, str] = MappingProxyType(
    {
        "chest_pain": _NOW,
        "breathlessness": _NOW,
        "foot_numb_or_cold": _AT_ONCE,
        "pain_out_of_proportion": _AT_ONCE,
        "calf_pain_or_swelling": _TODAY,
        "fever": _SURGEON_TODAY,
        "wound_problem": _SURGEON_TODAY,
        "pop_or_fall": _POP,
        "locking": _ASK,
        "giving_way": _ASK,
        "painful_clunk": _ASK,
    }
)
"""Who to turn to when a question is answered yes, most urgent first (common practice, no source)."""

DEFERENCE = (
    "A yes is a recorded finding, not a diagnosis. What to do is common practice, without a source; "
    "local practice and the surgeon's orders come first."
)


@dataclass(frozen=True, kw_only=True)
class RedFlag:
    """One question answered yes: what was asked, on which day, and who to turn to."""

    question: str
    label: str
    date: dt.date
    act: str
    latest: bool

    def sentence(self) -> str:
        """The flag in words."""
        when = f"yes on {self.date.isoformat()}"
        return f"{self.label}: {when}{'' if self.latest else ', not asked since'}. {self.act}"


@dataclass(frozen=True, kw_only=True)
class RedFlags:
    """The red-flag questions as they stand on a day.

    ``asked_on`` is the day of the latest visit (``None`` when there is no visit), ``yes`` the
    flags that stand, ``no`` and ``not_asked`` the other questions by their label.
    """

    asked_on: dt.date | None
    yes: tuple[RedFlag, ...]
    no: tuple[str, ...]
    not_asked: tuple[str, ...]

    def lines(self) -> list[str]:
        """Everything in words, the flags first."""
        if self.asked_on is None:
            return ["No visit is recorded, so no red flag was asked about."]
        lines = [flag.sentence() for flag in self.yes]
        day = self.asked_on.isoformat()
        if self.no:
            lines.append(f"Answered no on {day}: {', '.join(self.no)}.")
        if self.not_asked:
            lines.append(f"Not asked on {day}: {', '.join(self.not_asked)}.")
        return lines


def red_flags(case: Case, on: dt.date | None = None) -> RedFlags:
    """The red flags that stand on the day ``on`` (default the last recorded date).

    A question counts as it was last answered: a yes of an earlier visit stands until the
    question is asked again.  Where a day has several visits, one yes among them is a yes.

    Parameters
    ----------
    case : Case
        The case.
    on : datetime.date, optional
        As known on this day; the last recorded date by default.

    Returns
    -------
    RedFlags
        Flags that stand, and what was answered no or not asked.
    """
    visits = case.as_of(on or case.last_date).visits
    if not visits:
        return RedFlags(asked_on=None, yes=(), no=(), not_asked=tuple(QUESTIONS[q] for q in ACTS))
    latest = max(visit.date for visit in visits)
    standing = {question: _last_yes(question, visits, latest) for question in ACTS}
    today = {question: _on_day(question, visits, latest) for question in ACTS}
    return RedFlags(
        asked_on=latest,
        yes=tuple(flag for flag in standing.values() if flag is not None),
        no=tuple(QUESTIONS[q] for q in ACTS if today[q] == "no"),
        not_asked=tuple(QUESTIONS[q] for q in ACTS if today[q] == "not asked" and standing[q] is None),
    )


def _on_day(question: str, visits: tuple[Visit, ...], day: dt.date) -> str:
    given = {visit.answer(question) for visit in visits if visit.date == day}
    return next((word for word in ("yes", "no") if word in given), "not asked")


def _last_yes(question: str, visits: tuple[Visit, ...], latest: dt.date) -> RedFlag | None:
    for day in sorted({visit.date for visit in visits}, reverse=True):
        word = _on_day(question, visits, day)
        if word == "no":
            return None
        if word == "yes":
            return RedFlag(
                question=question,
                label=QUESTIONS[question],
                date=day,
                act=ACTS[question],
                latest=day == latest,
            )
    return None
