"""The parts ``[[limit]]`` and ``[[event]]`` of ``case.toml``: what was ordered and what happened."""

from __future__ import annotations

from kneecase.errors import InputError
from kneecase.record.date_column import DateBounds
from kneecase.record.numbers import quantity
from kneecase.record.problems import CellError
from kneecase.record.rows import Event, Limit
from kneecase.record.terms import EVENT_KINDS, LIMIT_KINDS
from kneecase.record.toml_parts import Part
from kneecase.record.words import closed_word
from kneecase.units import quantity_text

__all__ = ["event_from", "limit_from"]

_LIMIT_KEYS = ("kind", "value", "unit", "start", "until", "lifted", "ordered_by", "note")
_EVENT_KEYS = ("date", "kind", "note")
_RANGES = {"flexion": (0.0, 170.0), "extension": (-30.0, 120.0), "weight bearing": (0.0, 100.0)}


def limit_from(part: Part, bounds: DateBounds) -> Limit | None:
    """A surgeon's limit; ``None`` with the faults noted."""
    part.warn_of_unknown(_LIMIT_KEYS)
    before = part.problems.error_count
    kind = closed_word(part, "kind", LIMIT_KINDS)
    if not part.cell("kind"):
        allowed = ", ".join(LIMIT_KINDS)
        part.error("kind", "a limit needs a kind", "Write what is limited.", allowed=allowed)
    start, until, lifted = part.date("start"), part.date("until"), part.date("lifted")
    if not part.values.get("start"):
        part.error("start", "a limit needs the day it starts", "Write start = 2026-03-02.")
    for key, date in (("until", until), ("lifted", lifted)):
        if start is not None and date is not None and date < start:
            what = f"this day lies before the limit starts ({start.isoformat()})"
            part.error(key, what, "Is a year or a month wrong?")
    value = _limit_value(part, kind) if kind else None
    ordered_by, note = part.text("ordered_by"), part.text("note")
    if start is not None:
        bounds.weigh(part, "start", start)
    if start is None or part.problems.error_count > before:
        return None
    unit = LIMIT_KINDS[kind] if value is not None else ""
    return Limit(
        kind=kind,
        start=start,
        value=value,
        unit=unit,
        until=until,
        lifted=lifted,
        ordered_by=ordered_by,
        note=note,
    )


def _limit_value(part: Part, kind: str) -> float | None:
    """The number of a limit in the unit of its kind; ``None`` where it has none."""
    typed, unit = part.cell("value"), LIMIT_KINDS[kind]
    if not typed:
        return None
    if not unit:
        part.error("value", f"a limit on {kind} has no number", "Leave value and unit out; say more in note.")
        return None
    try:
        value = quantity(typed, part.cell("unit"), unit).value
    except InputError as error:
        rule = error.rule if isinstance(error, CellError) else str(error)
        part.error("value", rule, f'Write value = 90 and unit = "{unit}".')
        return None
    low, high = _RANGES[kind]
    if not low <= value <= high:
        allowed = f"{low:g} to {quantity_text(high, unit)}"
        part.error(
            "value", f"{quantity_text(value, unit)} is impossible here", "Is a digit wrong?", allowed=allowed
        )
    return value


def event_from(part: Part, bounds: DateBounds) -> Event | None:
    """A dated event; ``None`` with the faults noted."""
    part.warn_of_unknown(_EVENT_KEYS)
    before = part.problems.error_count
    date, kind = part.date("date"), closed_word(part, "kind", EVENT_KINDS)
    if not part.values.get("date"):
        part.error("date", "an event needs its day", "Write date = 2026-05-01.")
    if not part.cell("kind"):
        part.error("kind", "an event needs a kind", "Write what happened.", allowed=", ".join(EVENT_KINDS))
    note = part.text("note")
    if date is not None:
        bounds.weigh(part, "date", date)
    if date is None or part.problems.error_count > before:
        return None
    return Event(date=date, kind=kind, note=note)
