"""The tables of a case as sheets of a spreadsheet workbook (``measurements.xlsx``).

Cells become text, so that a sheet is read by the same rules as a CSV file; date cells become
calendar dates. Of a formula its stored result counts.
"""

from __future__ import annotations

import datetime as dt
import io
import math
from collections.abc import Iterable, Mapping, Sequence
from typing import Any

from kneecase.record.columns import MEASUREMENT_COLUMNS, VISIT_COLUMNS
from kneecase.record.headers import Headers
from kneecase.record.problems import ProblemList, Row

__all__ = ["SHEETS", "WORKBOOK", "Workbook"]

WORKBOOK = "measurements.xlsx"
SHEETS: Mapping[str, Sequence[str]] = {"measurements": MEASUREMENT_COLUMNS, "visits": VISIT_COLUMNS}
_LARGEST_SERIAL = 120_000


class Workbook:
    """An opened workbook; one that cannot be opened has no sheets and the fault is noted."""

    def __init__(self, content: bytes, problems: ProblemList) -> None:
        self._problems = problems
        self._values: Any = None
        self._formulas: Any = None
        try:
            self._values, self._formulas = _opened(content, stored=True), _opened(content, stored=False)
        except Exception as error:  # a damaged archive or sheet fails in many ways
            self._unreadable(error)
        self._names = {} if self._values is None else {n.strip().lower(): n for n in self._values.sheetnames}

    def has(self, name: str) -> bool:
        """Whether there is a sheet of this name."""
        return name in self._names

    def table(self, name: str) -> tuple[Headers, list[Row]]:
        """The rows of a sheet by column name, numbered as the spreadsheet shows them."""
        file = f"{WORKBOOK}, sheet {name}"
        known = SHEETS[name]
        records: list[tuple[int, list[str]]] = []
        missing: list[tuple[int, int]] = []
        try:
            records, missing = self._records(self._names[name])
        except Exception as error:
            self._unreadable(error)
        if not records:
            self._problems.add(
                "warning", file, "this sheet is empty", "Write at least the row of column names."
            )
            return Headers(file, known, [], self._problems), []
        headers = Headers(file, known, records[0][1], self._problems, records[0][0])
        rows = [headers.row(number, record) for number, record in records[1:]]
        self._note_formulas(file, headers, missing)
        for row in rows:
            _read_day_number(row, self._values.epoch)
        return headers, rows

    def warn_without_tables(self) -> None:
        """Warn of a workbook none of whose sheets has the name of a table."""
        if self._values is not None and not any(self.has(name) for name in SHEETS):
            what = f"no sheet is named {' or '.join(SHEETS)}, so nothing was read from this workbook"
            self._problems.add(
                "warning", WORKBOOK, what, f"The sheets are: {', '.join(self._values.sheetnames)}."
            )

    def _records(self, sheet: str) -> tuple[list[tuple[int, list[str]]], list[tuple[int, int]]]:
        """The rows that hold anything, as text; and the cells whose formula has no stored result."""
        records: list[tuple[int, list[str]]] = []
        missing: list[tuple[int, int]] = []
        values_of, cells_of = (
            self._values[sheet].iter_rows(values_only=True),
            self._formulas[sheet].iter_rows(),
        )
        pairs = zip(values_of, cells_of, strict=False)
        for number, (values, cells) in enumerate(pairs, start=1):
            unstored = [
                place for place, cell in enumerate(cells) if cell.data_type == "f" and values[place] is None
            ]
            missing += [(number, place) for place in unstored]
            record = [_cell_text(value) for value in values]
            if any(cell.strip() for cell in record) or unstored:
                records.append((number, record))
        return records, missing

    def _note_formulas(self, file: str, headers: Headers, missing: Iterable[tuple[int, int]]) -> None:
        for number, place in missing:
            column = headers.names[place] if place < len(headers.names) else ""
            what = "this cell holds a formula whose result is not stored in the workbook"
            mend = "Open the workbook in a spreadsheet program and save it, or write the number itself."
            self._problems.add("error", file, what, mend, row=number, column=column)

    def _unreadable(self, error: Exception) -> None:
        mend = "Open it in a spreadsheet program and save it as .xlsx, or save its sheets as CSV."
        self._problems.add("error", WORKBOOK, f"this workbook cannot be read ({error})", mend)


def _opened(content: bytes, *, stored: bool) -> Any:
    from openpyxl import load_workbook

    return load_workbook(io.BytesIO(content), read_only=True, data_only=stored)


def _cell_text(value: object) -> str:
    """The text of a cell: a date without time as year-month-day, a whole number without decimals."""
    if value is None:
        return ""
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, float) and value.is_integer() and math.fabs(value) < 1e15:
        return str(int(value))
    if isinstance(value, dt.datetime):
        return value.date().isoformat() if value.time() == dt.time() else value.isoformat(" ")
    return value.isoformat() if isinstance(value, dt.date | dt.time) else str(value)


def _read_day_number(row: Row, epoch: dt.datetime) -> None:
    """Where the date is a bare day number, put the date it stands for, with a warning."""
    typed = row.cell("date")
    if typed.isdigit() and len(typed) <= 6 and 1 <= int(typed) <= _LARGEST_SERIAL:
        meant = (epoch + dt.timedelta(days=int(typed))).date().isoformat()
        mend = "Give the column a date format in the spreadsheet program."
        row.warning("date", f"this cell holds a day number, read as {meant}", mend)
        row.cells = {**row.cells, "date": meant}
