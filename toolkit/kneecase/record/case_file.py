"""From the text of ``case.toml`` to the athlete, the operation, limits, events and references."""

from __future__ import annotations

import re
import tomllib
from dataclasses import dataclass, field
from typing import Any

from kneecase.errors import NewerFormatError
from kneecase.record.athlete_part import athlete_from
from kneecase.record.columns import MEASUREMENT_COLUMNS, REFERENCE_PREFIX
from kneecase.record.date_column import DateBounds
from kneecase.record.dates import DATE_ORDERS, DateOrder
from kneecase.record.measurement_rows import CaseFacts, readings_from
from kneecase.record.order_parts import event_from, limit_from
from kneecase.record.problems import ProblemList, nearest_words
from kneecase.record.rows import Athlete, Event, Limit, Reading, Surgery
from kneecase.record.surgery_part import surgery_from
from kneecase.record.toml_parts import CASE_FILE, Part, key_lines

__all__ = ["FORMAT", "CaseFile", "case_file_from"]

FORMAT = 1
"""The version of the case format this kneecase writes; version 0 is a case that states none."""

_KNOWN = ("format", "date_order", "athlete", "surgery", "limit", "event", "reference")
_REFERENCE_KEYS = tuple(column for column in MEASUREMENT_COLUMNS if column != "id")
_PLACE = re.compile(r"(.*?) \(at (?:line (\d+), column (\d+)|end of document)\)")


@dataclass(frozen=True)
class CaseFile:
    """What ``case.toml`` says; ``None`` where it could not be read, with the faults noted."""

    athlete: Athlete | None = None
    surgery: Surgery | None = None
    limits: tuple[Limit, ...] = ()
    events: tuple[Event, ...] = ()
    references: tuple[Reading, ...] = ()
    format_version: int = 0
    facts: CaseFacts = field(default_factory=CaseFacts)


def case_file_from(text: str, problems: ProblemList) -> CaseFile:
    """Everything in ``case.toml``.

    Raises
    ------
    NewerFormatError
        If it was written in a later format than this kneecase knows.
    """
    values = _toml(text, problems)
    if values is None:
        return CaseFile()
    lines = key_lines(text)
    top = Part(problems, "", values, lines)
    version = _format_version(top)
    order = _date_order(top)
    top = Part(problems, "", values, lines, order)
    top.warn_of_unknown(_KNOWN)
    surgery = surgery_from(top.part("surgery"))
    operation_day = None if surgery is None else surgery.date
    athlete, birth_year = athlete_from(top.part("athlete"), surgery)
    facts = CaseFacts(DateBounds(operation_day, birth_year), surgery.side if surgery else None, order)
    limits = [limit_from(part, facts.bounds) for part in top.parts("limit")]
    events = [event_from(part, facts.bounds) for part in top.parts("event")]
    return CaseFile(
        athlete=athlete,
        surgery=surgery,
        limits=tuple(limit for limit in limits if limit is not None),
        events=tuple(event for event in events if event is not None),
        references=tuple(_references(top.parts("reference"), facts)),
        format_version=version,
        facts=facts,
    )


def _references(parts: list[Part], facts: CaseFacts) -> list[Reading]:
    """Reference readings, each of which has to be dated before the surgery."""
    for part in parts:
        part.warn_of_unknown(_REFERENCE_KEYS)
    extra = list(dict.fromkeys(key for part in parts for key in part.values if key not in _REFERENCE_KEYS))
    readings = readings_from(parts, facts, extra, f"{REFERENCE_PREFIX}{{}}".format)
    for reading in readings:
        if facts.bounds.surgery is not None and reading.date >= facts.bounds.surgery:
            part = next(part for part in parts if part.number == reading.row)
            what = f"a reference is taken before the surgery ({facts.bounds.surgery.isoformat()})"
            part.error("date", what, "Write later readings in measurements.csv.")
    return readings


def _toml(text: str, problems: ProblemList) -> dict[str, Any] | None:
    try:
        return tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        found = _PLACE.match(str(error))
        what = found[1] if found else str(error)
        line = int(found[2]) if found and found[2] else len(text.splitlines())
        column = f" at character {found[3]}" if found and found[3] else " at the end"
        problems.add(
            "error",
            CASE_FILE,
            f"this line cannot be understood{column} ({what[:1].lower()}{what[1:]})",
            'Text stands in quotation marks (side = "left"), a date without (date = 2026-03-02), a decimal '
            "has a point, and each key and [part] stands once.",
            row=line,
        )
        return None


def _format_version(top: Part) -> int:
    version = top.values.get("format", 0)
    if isinstance(version, bool) or not isinstance(version, int) or version < 0:
        top.error("format", "format must be the whole number of the format", f"Write format = {FORMAT}.")
        return FORMAT
    if version > FORMAT:
        raise NewerFormatError(
            f"{CASE_FILE} says format = {version}, and this kneecase reads formats up to {FORMAT}. "
            "The case was written by a later kneecase: update kneecase to read it. Nothing was changed."
        )
    return version


def _date_order(top: Part) -> DateOrder | None:
    typed = " ".join(top.text("date_order").lower().split())
    for order in DATE_ORDERS:
        if typed == order:
            return order
    if typed:
        mend = nearest_words(typed, DATE_ORDERS)
        top.error("date_order", "date_order must be one of three", mend, allowed=", ".join(DATE_ORDERS))
    return None
