"""The window a gain rate looks at, and the events that bend the course inside it."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass

from kneecase.errors import InputError
from kneecase.record import EVENT_KINDS, Case, Event

__all__ = ["BREAKS", "Window", "restarted_by", "window_of"]

BREAKS = ("manipulation", "re-injury", "second surgery")
"""Events after which an earlier trend does not carry on."""


@dataclass(frozen=True, kw_only=True)
class Window:
    """Which days count, from where the weeks run, and why.

    ``origin`` is week 0. Where the window opens with an event (``opened_by``), the day of the event itself
    is outside, because the record does not say whether a reading came before or after it. ``bent_by`` are
    events inside the window.
    """

    origin: dt.date
    until: dt.date
    opened_by: str
    includes_origin: bool
    has_start: bool = True
    bent_by: tuple[Event, ...] = ()

    def reason_outside(self, date: dt.date) -> str:
        """Why a reading of this date is outside; empty when it is inside."""
        if not self.has_start or date > self.origin:
            return ""
        if date == self.origin:
            if self.includes_origin:
                return ""
            return f"on the day of the {self.opened_by}: before or after it is not recorded"
        if self.opened_by == "surgery":
            return "before the surgery: pre-operative reference"
        return f"before {self._start_words()}"

    def words(self) -> str:
        """The window in words."""
        if not self.has_start:
            return f"before surgery, up to {self.until.isoformat()}"
        return f"from {self._start_words()} to {self.until.isoformat()}"

    def _start_words(self) -> str:
        day = self.origin.isoformat()
        return f"the {self.opened_by} on {day}" if self.opened_by else day


def window_of(case: Case, until: dt.date, since: dt.date | str | None) -> Window:
    """The window up to ``until``: from a date, from the latest event of a kind, or from the latest break."""
    happened = [e for e in case.events if e.date <= until]
    if since is None:
        return _from_latest_break(case, until, happened)
    if isinstance(since, str):
        kind, day = since, _latest(case, until, since, happened)
    elif isinstance(since, dt.date) and not isinstance(since, dt.datetime):
        if since > until:
            raise InputError(
                f"since must not lie after {until.isoformat()}, the last day looked at, got {since!r}."
            )
        kind, day = "", since
    else:
        raise InputError(f"since must be a date or the kind of an event, got {since!r}.")
    return Window(
        origin=day,
        until=until,
        opened_by=kind,
        includes_origin=not kind,
        bent_by=tuple(e for e in _with_surgery(case, until, happened) if e.date > day),
    )


def restarted_by(case: Case, until: dt.date) -> Event | None:
    """The latest manipulation, re-injury or second surgery after the operation and up to ``until``."""
    found = [e for e in case.events if e.kind in BREAKS and case.surgery.date < e.date <= until]
    return max(found, key=lambda e: e.date, default=None)


def _from_latest_break(case: Case, until: dt.date, happened: list[Event]) -> Window:
    breaks = [e for e in _with_surgery(case, until, happened) if e.kind in (*BREAKS, "surgery")]
    if not breaks:
        return Window(
            origin=case.surgery.date, until=until, opened_by="", includes_origin=True, has_start=False
        )
    last = max(breaks, key=lambda e: e.date)
    later = tuple(e for e in happened if e.date > last.date)
    return Window(origin=last.date, until=until, opened_by=last.kind, includes_origin=False, bent_by=later)


def _with_surgery(case: Case, until: dt.date, happened: list[Event]) -> list[Event]:
    surgery = [Event(date=case.surgery.date, kind="surgery")] if case.surgery.date <= until else []
    return [*surgery, *happened]


def _latest(case: Case, until: dt.date, kind: str, happened: list[Event]) -> dt.date:
    if kind not in ("surgery", *EVENT_KINDS):
        raise InputError(
            f"since must be a date or one of surgery, {', '.join(EVENT_KINDS)}, got {kind!r}. "
            "Write a date as datetime.date(2026, 5, 1)."
        )
    days = [e.date for e in _with_surgery(case, until, happened) if e.kind == kind]
    if not days:
        recorded = ", ".join(f"{e.kind} on {e.date.isoformat()}" for e in case.events) or "none"
        raise InputError(
            f"since names an event that must be recorded up to {until.isoformat()}, got {kind!r}. "
            f"Events recorded: {recorded}."
        )
    return max(days)
