"""Dates as typed: one way to read them, or a refusal that shows both."""

from __future__ import annotations

import datetime as dt

import pytest

from kneecase.errors import InputError
from kneecase.record.dates import AmbiguousDateError, both_dates, calendar_date, date_evidence

SECOND_OF_MARCH = dt.date(2026, 3, 2)


@pytest.mark.parametrize(
    "text",
    [
        "2026-03-02",
        "2026/3/2",
        "2026.03.02",
        "2026.03.02.",
        "20260302",
        "2 March 2026",
        "2 Mar 2026",
        "02-Mar-2026",
        "2nd March, 2026",
        "March 2, 2026",
        "Mar 2 2026",
        " 2026-03-02 ",
        "2026-03-02 00:00:00",
        "2026-03-02T00:00",
    ],
)
@pytest.mark.parametrize("order", [None, "day first", "month first", "year first"])
def test_a_date_that_reads_one_way_needs_no_order(text: str, order: object) -> None:
    """Year first and named months mean the same everywhere."""
    assert calendar_date(text, order) == SECOND_OF_MARCH  # type: ignore[arg-type]


def test_the_order_settles_a_date_with_the_year_last() -> None:
    """The same digits are two dates."""
    assert calendar_date("2.3.2026", "day first") == SECOND_OF_MARCH
    assert calendar_date("03/02/2026", "month first") == SECOND_OF_MARCH
    assert calendar_date("5 Sept 2026") == dt.date(2026, 9, 5)


def test_a_day_above_twelve_settles_itself() -> None:
    """16.03. and 03/16 can only be read one way, as can 04/04."""
    assert calendar_date("16.03.2026") == calendar_date("03/16/2026") == dt.date(2026, 3, 16)
    assert calendar_date("04/04/2026") == dt.date(2026, 4, 4)


def test_both_readings_of_an_ambiguous_date_are_shown() -> None:
    """Neither is picked."""
    with pytest.raises(
        AmbiguousDateError, match=r"3 April 2026 \(day first\) or 4 March 2026 \(month first\)"
    ):
        calendar_date("03/04/2026")
    assert both_dates("03/04/2026 00:00") == "3 April 2026 (day first) or 4 March 2026 (month first)"
    with pytest.raises(InputError, match="year last"):
        both_dates("2026-03-04")


@pytest.mark.parametrize(
    ("text", "order", "rule"),
    [
        ("02.03.26", None, "four digits"),
        ("3/2/'26", "month first", "four digits"),
        ("46083", None, "day number this would be 2026-03-02"),
        ("2026-03-02 14:30", None, "without a time"),
        ("2026-03-02T14:30:00+01:00", None, "without a time"),
        ("2026-02-30", None, "exist in the calendar"),
        ("31.04.2026", "day first", "exist in the calendar"),
        ("0.3.2026", "day first", "exist in the calendar"),
        ("13.13.2026", None, "exist in the calendar"),
        ("1826-03-02", None, "1900 to 2199"),
        ("16.03.2026", "month first", "must be month first"),
        ("03/16/2026", "day first", "must be day first"),
        ("16.03.2026", "year first", "begin with the year"),
        ("2 Ma 2026", None, "must be a calendar date"),
        ("2 Juj 2026", None, "name a month"),
        ("yesterday", None, "must be a calendar date"),
        ("", None, "must be a calendar date"),
        ("9" * 5000, None, "must be a calendar date"),
    ],
)
def test_what_is_no_date_is_refused_by_its_rule(text: str, order: object, rule: str) -> None:
    """Each sentence names the rule and how to write the date."""
    with pytest.raises(InputError, match=rule) as caught:
        calendar_date(text, order)  # type: ignore[arg-type]
    assert len(str(caught.value)) < 300


def test_one_date_decides_for_a_file() -> None:
    """The first row for each way and every open row are kept."""
    found = date_evidence([(2, "01/02/2026"), (3, "13/02/2026"), (4, "2026-01-01"), (5, "05/05/2026")])
    assert found.order == "day first"
    assert found.day_first == (3, "13/02/2026")
    assert found.ambiguous == ((2, "01/02/2026"),)
    assert date_evidence([(2, "02/13/2026")]).order == "month first"
    assert date_evidence([(2, "01/02/2026"), (3, "13/02/2026"), (4, "02/13/2026")]).order is None
    assert date_evidence([(2, "01/02/2026")]).order is None
