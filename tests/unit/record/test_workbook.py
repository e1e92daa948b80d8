"""The tables as sheets of a workbook: the same rules, real dates, formulas and their results."""

from __future__ import annotations

import datetime as dt
import io
import re
import zipfile
from collections.abc import Callable, Sequence
from typing import Any

import pytest
from openpyxl import Workbook, load_workbook
from openpyxl.utils.datetime import MAC_EPOCH

from kneecase.errors import Problem
from kneecase.record import Case

Read = Callable[..., Case]
Error = Callable[..., Problem]
HEAD = ["Date", "Measure", "Side", "Trial", "Value", "Note"]
DAY = dt.date(2026, 3, 16)


def book(
    rows: Sequence[Sequence[object]], *, sheet: str = "measurements", mac: bool = False, **more: Any
) -> bytes:
    """A workbook with these rows under the usual header, and further sheets by name."""
    made = Workbook()
    if mac:
        made.epoch = MAC_EPOCH
    tables = {sheet: [HEAD, *rows], **more}
    made.remove(made.active)
    for name, table in tables.items():
        page = made.create_sheet(name)
        for row in table:
            page.append(row)
    stream = io.BytesIO()
    made.save(stream)
    return stream.getvalue()


def test_cells_of_every_kind_arrive(read: Read) -> None:
    """Dates with and without midnight, whole and decimal numbers, text."""
    rows = [
        [DAY, "knee_flexion", "left", 1, 85, None],
        [dt.datetime(2026, 3, 17), "knee flexion", "L", 1.0, 86.5, '<b>=1+1</b> "x"'],
        ["2026-03-18", "knee_motion", "left", "1", "0-5-90", None],
        [None, None, None, None, None, None],
        [dt.date(2026, 3, 19), "effusion", "left", None, "1+", 7],
    ]
    case = read(workbook=book(rows))
    found = [(r.date.day, r.value, r.trial, r.row) for r in case.readings]
    assert found == [(16, 85, 1, 2), (17, 86.5, 1, 3), (18, 5, 1, 4), (18, 90, 1, 4), (19, 2, None, 6)]
    assert [r.note for r in case.readings] == ["", '<b>=1+1</b> "x"', "", "", "7"]
    assert case.readings[0].raw_value == "85"
    assert case.warnings == ()
    assert list(case.texts) == ["case.toml"]


def test_sheet_names_may_have_capitals_and_visits_are_read(read: Read) -> None:
    """Yes and no may be the spreadsheet's own true and false."""
    visits = [["date", "locking", "fever"], [DAY, True, False]]
    case = read(workbook=book([], sheet=" Measurements", Visits=visits))
    assert case.visits[0].answers == {"locking": "yes", "fever": "no"}


def test_a_whole_number_stored_with_a_decimal_is_whole(read: Read) -> None:
    """Some programs store 85.0; a trial number stays one."""
    content = book([[DAY, "knee_flexion", "left", 7, 85, None]])
    stored = with_sheet(content, lambda sheet: sheet.replace(b"<v>7</v>", b"<v>7.0</v>"))
    assert stored != content
    assert read(workbook=stored).readings[0].trial == 7


def with_sheet(content: bytes, changed: Callable[[bytes], bytes]) -> bytes:
    """The workbook with the stored form of its first sheet changed."""
    source, target = zipfile.ZipFile(io.BytesIO(content)), io.BytesIO()
    with zipfile.ZipFile(target, "w") as made:
        for name in source.namelist():
            text = source.read(name)
            made.writestr(name, changed(text) if name.endswith("sheet1.xml") else text)
    return target.getvalue()


@pytest.mark.parametrize("mac", [False, True])
def test_a_day_number_is_read_by_the_workbooks_own_calendar(read: Read, mac: bool) -> None:
    """With a warning that shows the date; two calendars are in use, 1462 days apart."""
    number = 46097 - (1462 if mac else 0)
    case = read(workbook=book([[number, "knee_flexion", "left", 1, 85, None]], mac=mac))
    assert case.readings[0].date == DAY
    assert [(w.row, "2026-03-16" in w.what) for w in case.warnings] == [(2, True)]


def test_faults_name_the_sheet_and_the_row(error: Error) -> None:
    """As the spreadsheet shows them."""
    found = error(
        workbook=book([[DAY, "knee_flexion", "left", 1, 85, ""], [DAY, "knee_flexion", "", 2, 85, ""]])
    )
    assert (found.file, found.row, found.column) == ("measurements.xlsx, sheet measurements", 3, "side")


@pytest.mark.parametrize(
    ("value", "what"),
    [(dt.datetime(2026, 1, 2), "number"), ("#DIV/0!", "finite"), (dt.time(1, 2), "number"), (True, "number")],
)
def test_a_value_that_is_no_number_is_refused(error: Error, value: object, what: str) -> None:
    """A date the spreadsheet made of what was typed, an error cell."""
    assert what in error(workbook=book([[DAY, "knee_flexion", "left", 1, value, None]])).what


def test_a_time_of_day_in_the_date_is_refused(error: Error) -> None:
    """Dates are calendar dates."""
    found = error(workbook=book([[dt.datetime(2026, 3, 16, 14, 30), "knee_flexion", "left", 1, 85, None]]))
    assert "without a time" in found.what


def test_a_formula_without_a_stored_result_is_refused(errors: Callable[..., list[Problem]]) -> None:
    """Also where it is the only thing in its row, or outside the table."""
    rows = [[DAY, "knee_flexion", "left", 1, "=80+5", None], [None, None, None, None, "=1+1", None, "=2"]]
    found = [p for p in errors(workbook=book(rows)) if "formula" in p.what]
    assert [(p.row, p.column) for p in found] == [(2, "Value".lower()), (3, "value"), (3, "")]
    assert "save it" in found[0].mend


def test_a_formula_with_a_stored_result_is_read(read: Read) -> None:
    """The result counts."""
    content = book([[DAY, "knee_flexion", "left", 1, "=80+5", None]])
    stored = with_sheet(content, lambda sheet: re.sub(rb"</f><v ?/?>(</v>)?", b"</f><v>85</v>", sheet))
    assert load_workbook(io.BytesIO(stored), data_only=True)["measurements"]["E2"].value == 85
    assert read(workbook=stored).readings[0].value == 85


def test_the_csv_file_wins_and_that_is_said(read: Read) -> None:
    """For each table alone; what only the workbook has is read from it."""
    content = book([[DAY, "knee_flexion", "left", 1, 85, None]], visits=[["date"], [DAY]])
    case = read("date,measure,side,value\n2026-03-17,knee_flexion,left,90\n", workbook=content)
    assert [r.value for r in case.readings] == [90]
    assert len(case.visits) == 1
    assert ["in favour of measurements.csv" in w.what for w in case.warnings] == [True]


def test_with_both_csv_files_the_workbook_is_not_opened(read: Read) -> None:
    """Not even a damaged one is in the way."""
    case = read("date,measure,value\n", "date\n", workbook=b"no workbook")
    assert "in favour of measurements.csv and visits.csv" in case.warnings[0].what


@pytest.mark.parametrize("content", [b"", b"no workbook", b"PK\x03\x04" + bytes(100)])
def test_a_damaged_workbook_is_refused(error: Error, content: bytes) -> None:
    """With what to do."""
    found = error(workbook=content)
    assert (found.file, "cannot be read" in found.what) == ("measurements.xlsx", True)


def test_a_sheet_that_is_damaged_inside_is_refused(error: Error) -> None:
    """The archive opens and its rows do not."""
    content = with_sheet(book([[DAY, "knee_flexion", "left", 1, 85, None]]), lambda sheet: sheet[:-100])
    assert "cannot be read" in error(workbook=content).what


def test_a_workbook_without_the_sheets_is_doubted(read: Read) -> None:
    """Its sheets are named."""
    case = read(workbook=book([], sheet="Sheet1"))
    assert case.readings == ()
    assert "no sheet is named measurements or visits" in case.warnings[0].what
    assert "Sheet1" in case.warnings[0].mend


def test_an_empty_sheet_is_doubted_and_a_header_alone_is_fine(read: Read) -> None:
    """As for a CSV file."""
    case = read(workbook=book([], visits=[]))
    assert [w.file for w in case.warnings] == ["measurements.xlsx, sheet visits"]
