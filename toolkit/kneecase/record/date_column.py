"""The dates of one table: their order settled once, then each read and weighed against the case."""

from __future__ import annotations

import datetime as dt
from collections.abc import Sequence
from dataclasses import dataclass

from kneecase.record.dates import (
    AmbiguousDateError,
    DateEvidence,
    DateOrder,
    both_dates,
    calendar_date,
    date_evidence,
)
from kneecase.record.problems import CellError, Row

__all__ = ["DateBounds", "DateColumn"]

_MEND_ORDER = (
    'Write dates as year-month-day, or set date_order = "day first" or "month first" at the top of case.toml.'
)
_YEARS_BEFORE, _YEARS_AFTER = 5, 10


@dataclass(frozen=True)
class DateBounds:
    """What is known of the case that a date can be weighed against; ``None`` where it is not known."""

    surgery: dt.date | None = None
    birth_year: int | None = None

    def weigh(self, row: Row, column: str, date: dt.date) -> None:
        """Note a date before birth as impossible, one many years from surgery as unlikely."""
        if self.birth_year is not None and date.year < self.birth_year:
            row.error(column, f"this date lies before the birth year {self.birth_year}", "Is the year right?")
        elif self.surgery is not None:
            years = (date - self.surgery).days / 365.25
            if years < -_YEARS_BEFORE or years > _YEARS_AFTER:
                side = "before" if years < 0 else "after"
                what = (
                    f"this date lies {abs(years):.0f} years {side} the surgery ({self.surgery.isoformat()})"
                )
                row.warning(column, what, "Is the year right? It is kept as it is.")


class DateColumn:
    """Reads the cells of the column ``date`` of one table.

    What the order of day and month is comes from ``setting``, else from the dates themselves;
    where neither settles it, or the dates contradict each other, that is one fault of the file.
    """

    def __init__(self, rows: Sequence[Row], setting: DateOrder | None, bounds: DateBounds) -> None:
        self._bounds = bounds
        self._known: dict[str, dt.date] = {}
        evidence = date_evidence((row.number or 0, row.cell("date")) for row in rows)
        self._order = setting or evidence.order
        if self._order is None and rows:
            _note_unsettled(rows[0], evidence)

    def date(self, row: Row) -> dt.date | None:
        """The date of a row, or ``None`` with the fault noted."""
        text = row.cell("date")
        date = self._known.get(text)
        if date is None:
            date = self._read(row, text)
            if date is None:
                return None
            self._known[text] = date
        self._bounds.weigh(row, "date", date)
        return date

    def _read(self, row: Row, text: str) -> dt.date | None:
        if not text:
            row.error("date", "the date is missing", "Write it as year-month-day, for example 2026-03-02.")
            return None
        try:
            return calendar_date(text, self._order)
        except AmbiguousDateError:
            return None  # one fault of the file, noted when the column was opened
        except CellError as error:
            row.refuse("date", error)
            return None


def _note_unsettled(row: Row, evidence: DateEvidence) -> None:
    file, problems = row.file, row.problems
    if evidence.day_first and evidence.month_first:
        (day_row, day), (month_row, month) = evidence.day_first, evidence.month_first
        what = (
            f"the dates contradict each other: {day!r} in row {day_row} has the day first, {month!r} does not"
        )
        problems.add("error", file, what, _MEND_ORDER, row=month_row, column="date", value=month)
    elif evidence.ambiguous:
        number, text = evidence.ambiguous[0]
        more = len(evidence.ambiguous) - 1
        what = f"this date can be read in two ways: {both_dates(text)}"
        if more:
            what += f"; so can {more} more in this file"
        problems.add("error", file, what, _MEND_ORDER, row=number, column="date", value=text)
