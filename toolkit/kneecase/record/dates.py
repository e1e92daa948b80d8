"""Calendar dates as people type them, and which order of day and month a file uses.

``03/04/2026`` is the 3rd of April in one country and the 4th of March in another.  One date of
the file that can only be read one way (a day above 12) decides for all of it; otherwise
``date_order`` in ``case.toml`` does; otherwise the file is refused and both dates are shown.
"""

from __future__ import annotations

import datetime as dt
import re
from collections.abc import Iterable
from dataclasses import dataclass
from typing import Literal

from kneecase.record.problems import CellError

__all__ = [
    "DATE_ORDERS",
    "AmbiguousDateError",
    "DateEvidence",
    "DateOrder",
    "both_dates",
    "calendar_date",
    "date_evidence",
]

DateOrder = Literal["day first", "month first", "year first"]
DATE_ORDERS: tuple[DateOrder, ...] = ("day first", "month first", "year first")

_YEAR_FIRST = re.compile(r"([0-9]{4})([-/.])([0-9]{1,2})\2([0-9]{1,2})\.?")
_COMPACT = re.compile(r"((?:19|20|21)[0-9]{2})([0-9]{2})([0-9]{2})")
_YEAR_LAST = re.compile(r"([0-9]{1,2})([-/.])\s?([0-9]{1,2})\2\s?([0-9]{4})")
_SHORT_YEAR = re.compile(r"[0-9]{1,2}([-/.])\s?[0-9]{1,2}\1\s?'?[0-9]{2}")
_DAY_MONTH_NAME = re.compile(r"([0-9]{1,2})(?:st|nd|rd|th)?[-.\s]+([a-z]{3,9})\.?,?[-\s]+([0-9]{4})", re.I)
_MONTH_NAME_DAY = re.compile(r"([a-z]{3,9})\.?[-\s]+([0-9]{1,2})(?:st|nd|rd|th)?,?[-\s]+([0-9]{4})", re.I)
_SERIAL = re.compile(r"[0-9]{5}(?:\.0*)?")
_MIDNIGHT = re.compile(r"(?<=[0-9])[T\s]+0?0:00(?::00(?:\.0+)?)?$")
_TIME = re.compile(r".+[T\s][0-9]{1,2}:[0-9]{2}.*")
_NAMES = (
    *("january", "february", "march", "april", "may", "june", "july", "august"),
    *("september", "october", "november", "december"),
)
_SERIAL_START = dt.date(1899, 12, 30)
_EARLIEST_YEAR, _LATEST_YEAR = 1900, 2199
_MEND = "Write it as year-month-day, for example 2026-03-02."


class AmbiguousDateError(CellError):
    """A date that can be read in two ways and nothing says which."""


@dataclass(frozen=True)
class DateEvidence:
    """What the dates of one table say about their order: the first row for each way, and what is open."""

    day_first: tuple[int, str] | None = None
    month_first: tuple[int, str] | None = None
    ambiguous: tuple[tuple[int, str], ...] = ()

    @property
    def order(self) -> DateOrder | None:
        """The order the dates themselves settle, if they do."""
        if (self.day_first is None) == (self.month_first is None):
            return None
        return "day first" if self.day_first else "month first"


def date_evidence(dates: Iterable[tuple[int, str]]) -> DateEvidence:
    """What pairs of row number and date text say about the order of day and month."""
    day_first = month_first = None
    ambiguous: list[tuple[int, str]] = []
    settled: dict[str, str] = {}
    for row, text in dates:
        kind = settled.get(text)
        if kind is None:
            kind = settled[text] = _kind(text)
        if kind == "day first":
            day_first = day_first or (row, text)
        elif kind == "month first":
            month_first = month_first or (row, text)
        elif kind == "ambiguous":
            ambiguous.append((row, text))
    return DateEvidence(day_first, month_first, tuple(ambiguous))


def calendar_date(text: str, order: DateOrder | None = None) -> dt.date:
    """The calendar date a person typed.

    Parameters
    ----------
    text : str
        ``"2026-03-02"``, ``"2.3.2026"``, ``"03/02/2026"``, ``"2 Mar 2026"``.
    order : {"day first", "month first", "year first"}, optional
        How a date with the year last is read; it settles nothing else.

    Raises
    ------
    AmbiguousDateError
        If it can be read in two ways and ``order`` is not given; both are in the sentence.
    InputError
        If it is no date, an impossible one, or its year has two digits.

    Examples
    --------
    >>> calendar_date("2.3.2026", "day first")
    datetime.date(2026, 3, 2)
    >>> calendar_date("2 March 2026")
    datetime.date(2026, 3, 2)
    """
    typed = _MIDNIGHT.sub("", text.strip())
    found = _YEAR_FIRST.fullmatch(typed)
    if found:
        return _date(typed, found[1], found[3], found[4])
    found = _YEAR_LAST.fullmatch(typed)
    if found:
        return _year_last(typed, found[1], found[3], found[4], order)
    found = _COMPACT.fullmatch(typed)
    if found:
        return _date(typed, found[1], found[2], found[3])
    return _with_month_name(typed)


def _with_month_name(typed: str) -> dt.date:
    found = _DAY_MONTH_NAME.fullmatch(typed)
    if found:
        return _date(typed, found[3], _month_number(typed, found[2]), found[1])
    found = _MONTH_NAME_DAY.fullmatch(typed)
    if found:
        return _date(typed, found[3], _month_number(typed, found[1]), found[2])
    raise CellError("date", _rule_broken(typed), typed, _MEND)


def _rule_broken(typed: str) -> str:
    if _SHORT_YEAR.fullmatch(typed):
        return "must have a year of four digits"
    if _SERIAL.fullmatch(typed):
        meant = _SERIAL_START + dt.timedelta(days=int(typed[:5]))
        return f"must be a calendar date; as a spreadsheet's day number this would be {meant.isoformat()}"
    if _TIME.fullmatch(typed):
        return "must be a calendar date without a time of day"
    return "must be a calendar date"


def _year_last(typed: str, first: str, second: str, year: str, order: DateOrder | None) -> dt.date:
    if order == "year first":
        raise CellError("date", "must begin with the year, as date_order says", typed, _MEND)
    kind = _kind(typed)
    if order is None and kind == "ambiguous":
        raise AmbiguousDateError("date", f"can be read in two ways: {both_dates(typed)}", typed, _MEND)
    if order is not None and kind in DATE_ORDERS and kind != order:
        raise CellError("date", f"must be {order}, as in the rest of this case", typed, _MEND)
    if (order or kind) == "month first":
        return _date(typed, year, first, second)
    return _date(typed, year, second, first)


def both_dates(text: str) -> str:
    """The two dates an ambiguous date can be read as, in words."""
    found = _YEAR_LAST.fullmatch(_MIDNIGHT.sub("", text.strip()))
    if found is None:
        raise CellError("date", "must have its year last", text, _MEND)
    day_first = _date(text, found[4], found[3], found[1])
    month_first = _date(text, found[4], found[1], found[3])
    return f"{_in_words(day_first)} (day first) or {_in_words(month_first)} (month first)"


def _kind(text: str) -> str:
    """``day first``, ``month first``, ``ambiguous``, or empty where the order does not matter."""
    found = _YEAR_LAST.fullmatch(_MIDNIGHT.sub("", text.strip()))
    if found is None:
        return ""
    first, second = int(found[1]), int(found[3])
    if first > 12 >= second:
        return "day first"
    if second > 12 >= first:
        return "month first"
    return "ambiguous" if first != second and max(first, second) <= 12 and min(first, second) > 0 else ""


def _month_number(typed: str, name: str) -> str:
    found = [number for number, month in enumerate(_NAMES, 1) if month.startswith(name.lower())]
    if name.lower() == "sept":
        found = [9]
    if len(found) != 1:
        raise CellError("date", "must name a month in English", typed, _MEND)
    return str(found[0])


def _date(typed: str, year: str, month: str, day: str) -> dt.date:
    if not _EARLIEST_YEAR <= int(year) <= _LATEST_YEAR:
        rule = f"must lie in the years {_EARLIEST_YEAR} to {_LATEST_YEAR}"
        raise CellError("date", rule, typed, "Is a digit wrong?")
    try:
        return dt.date(int(year), int(month), int(day))
    except ValueError:
        raise CellError("date", "must exist in the calendar", typed, _MEND) from None


def _in_words(date: dt.date) -> str:
    return f"{date.day} {_NAMES[date.month - 1].capitalize()} {date.year}"
