"""From the rows of ``visits.csv`` to visits: what was asked, done and decided on one day."""

from __future__ import annotations

import re
from collections.abc import Sequence

from kneecase.record.columns import PAIN_COLUMNS
from kneecase.record.date_column import DateColumn
from kneecase.record.measurement_rows import CaseFacts
from kneecase.record.numbers import DecimalMark, decimal_mark, number
from kneecase.record.problems import CellError, Row
from kneecase.record.rows import Visit
from kneecase.record.terms import ACTIONS, QUESTIONS, SORENESS
from kneecase.record.words import closed_word, yes_or_no

__all__ = ["AGREEMENTS", "visits_from"]

AGREEMENTS = ("agrees", "overrides")
"""How a clinician's own decision stands to what was computed."""

_PAIN_RANGE = (0.0, 10.0)
_OUT_OF_TEN = re.compile(r"(.+?)\s*/\s*10")


def visits_from(rows: Sequence[Row], facts: CaseFacts, extra: Sequence[str] = ()) -> list[Visit]:
    """The visits of a table, in the order of its rows; a row with a fault gives none."""
    dates = DateColumn(rows, facts.date_order, facts.bounds)
    mark = decimal_mark(row.cell(name) for row in rows for name in PAIN_COLUMNS)
    taken = {row.cell("id") for row in rows}
    visits: list[Visit] = []
    count = 0
    for row in rows:
        name = row.cell("id")
        while not name:
            count += 1
            name = "" if f"v{count:04d}" in taken else f"v{count:04d}"
        visit = _visit(row, name, dates, mark, extra)
        if visit is not None:
            visits.append(visit)
    return visits


def _visit(row: Row, name: str, dates: DateColumn, mark: DecimalMark, extra: Sequence[str]) -> Visit | None:
    before = row.problems.error_count
    date = dates.date(row)
    pain = {key: _pain(row, column, mark) for column, key in PAIN_COLUMNS.items()}
    answers = {question: yes_or_no(row, question) for question in QUESTIONS if row.cell(question)}
    soreness, action = closed_word(row, "soreness", SORENESS), closed_word(row, "action", ACTIONS)
    agreement = closed_word(row, "agreement", AGREEMENTS)
    if agreement == "overrides" and not row.cell("reason"):
        row.warning(
            "reason", "a decision overrides what was computed and gives no reason", "Write the reason."
        )
    if date is None or row.problems.error_count > before:
        return None
    return Visit(
        id=name,
        date=date,
        clinician=row.cell("clinician"),
        pain={key: value for key, value in pain.items() if value is not None},
        answers=answers,
        soreness=soreness,
        aids=row.cell("aids"),
        setting=row.cell("setting"),
        activity=row.cell("activity"),
        dose=row.cell("dose"),
        response_next_day=row.cell("response_next_day"),
        action=action,
        agreement=agreement,
        reason=row.cells.get("reason", ""),
        decided_by=row.cell("decided_by"),
        surgeon_told=row.cell("surgeon_told"),
        override_of=row.cell("override_of"),
        note=row.cells.get("note", ""),
        row=row.number,
        extra={column: row.cells[column] for column in extra if row.cells.get(column)},
    )


def _pain(row: Row, column: str, mark: DecimalMark) -> float | None:
    """Pain 0–10 [points]; ``None`` where it was not asked or the cell is at fault."""
    typed = row.cell(column)
    if not typed or typed.lower() == "not asked":
        return None
    out_of_ten = _OUT_OF_TEN.fullmatch(typed)
    try:
        value = number(out_of_ten[1] if out_of_ten else typed, mark, column)
    except CellError:
        row.error(
            column, "pain must be a number", "Leave it blank where it was not asked.", allowed="0 to 10"
        )
        return None
    if not _PAIN_RANGE[0] <= value <= _PAIN_RANGE[1]:
        row.error(
            column, "pain is counted from 0 to 10", "Is it out of 100? Divide by ten.", allowed="0 to 10"
        )
        return None
    return value
