"""The line that stands on every page, print and screen, so nobody acts on the wrong knee."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass

from kneecase.plain import on_one_line
from kneecase.record.case import Case
from kneecase.record.rows import Limit
from kneecase.units import number_text, quantity_text

__all__ = ["Banner", "banner_of", "limit_words"]


@dataclass(frozen=True, kw_only=True)
class Banner:
    """Pseudonym, operated side, graft, week since surgery, limits in force [words]."""

    pseudonym: str
    side: str
    graft: str
    date: dt.date
    week: float
    limits: tuple[str, ...]
    outside_scope: tuple[str, ...]

    def line(self) -> str:
        """The banner as one line of text, without any character that could turn it round."""
        limits = "; ".join(self.limits) if self.limits else "none recorded"
        parts = [
            self.pseudonym,
            f"operated knee: {self.side.upper()}",
            f"graft: {self.graft}",
            f"week {number_text(self.week)} ({self.date.isoformat()})",
            f"surgeon's limits in force: {limits}",
        ]
        if self.outside_scope:
            parts.append(f"outside the scope of kneecase: {', '.join(self.outside_scope)}")
        return on_one_line(" · ".join(parts))


def banner_of(case: Case, on: dt.date | None = None) -> Banner:
    """The banner of a case on one day.

    Parameters
    ----------
    case : Case
        The case.
    on : datetime.date, optional
        The day; the last recorded date by default.

    Returns
    -------
    Banner
        Pseudonym, operated side, graft, week and limits in force on that day.
    """
    day = on or case.last_date
    graft = case.surgery.graft or "not recorded"
    if case.surgery.allograft:
        graft += " (allograft)"
    if case.surgery.harvest_side is not None and case.surgery.harvest_side != case.involved:
        graft += f", harvested on the {case.surgery.harvest_side}"
    if case.surgery.revision:
        graft += ", revision"
    return Banner(
        pseudonym=case.athlete.pseudonym,
        side=case.involved,
        graft=graft,
        date=day,
        week=case.weeks(day),
        limits=tuple(limit_words(limit) for limit in case.limits_in_force(day)),
        outside_scope=case.outside_scope,
    )


def limit_words(limit: Limit) -> str:
    """A surgeon's limit in words.

    Parameters
    ----------
    limit : Limit
        The limit.

    Returns
    -------
    str
        For example ``"flexion up to 90° until 2026-04-13"``.
    """
    if limit.value is None:
        text = f"{limit.kind}: {limit.note}" if limit.kind in ("brace", "other") else f"no {limit.kind}"
    elif limit.kind == "extension":
        text = f"extension not past {quantity_text(limit.value, limit.unit)} short of straight"
    else:
        text = f"{limit.kind} up to {quantity_text(limit.value, limit.unit)}"
    return text + (f" until {limit.until.isoformat()}" if limit.until else "")
