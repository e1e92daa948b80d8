"""The last visits in a few words each: how it felt, what was done, what was decided and by whom."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass

from kneecase.record import SORENESS, Case, Visit
from kneecase.units import number_text

__all__ = ["VisitRow", "visit_rows"]

_SHOWN = 3


@dataclass(frozen=True, kw_only=True)
class VisitRow:
    """One visit for the page, every cell in words."""

    when: str
    felt: str
    done: str
    decided: str


def visit_rows(case: Case, on: dt.date) -> tuple[VisitRow, ...]:
    """The last three visits up to the day ``on``, the latest first."""
    visits = case.as_of(on).visits
    latest = sorted(visits, key=lambda visit: visit.date, reverse=True)[:_SHOWN]
    return tuple(_row(case, visit) for visit in latest)


def _row(case: Case, visit: Visit) -> VisitRow:
    return VisitRow(
        when=f"{visit.date.isoformat()}, week {number_text(case.weeks(visit.date))}",
        felt=_felt(visit),
        done=_sentence(visit.setting, visit.activity, visit.dose, _after(visit)) or "not recorded",
        decided=_decided(visit),
    )


def _felt(visit: Visit) -> str:
    pains = [f"{when} {number_text(value)}" for when, value in visit.pain.items()]
    pain = f"pain 0–10: {', '.join(pains)}" if pains else "pain not asked"
    soreness = SORENESS.get(visit.soreness, visit.soreness)
    return _sentence(pain, soreness, visit.aids and f"aids: {visit.aids}")


def _after(visit: Visit) -> str:
    return f"next day: {visit.response_next_day}" if visit.response_next_day else ""


def _decided(visit: Visit) -> str:
    action = visit.action or "no decision recorded"
    return _sentence(
        action,
        visit.agreement,
        visit.reason,
        visit.decided_by and f"by {visit.decided_by}",
        visit.surgeon_told and f"surgeon told: {visit.surgeon_told}",
        visit.override_of and f"override of: {visit.override_of}",
    )


def _sentence(*parts: str) -> str:
    return "; ".join(part for part in parts if part)
