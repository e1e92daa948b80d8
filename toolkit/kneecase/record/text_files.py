"""The text of a file from its bytes, and a table from its text, whatever program wrote it.

Encodings: UTF-8 with or without a mark, UTF-16 with or without one, else Windows-1252 (said
as a warning, since any byte is a letter there).  Delimiters: comma, semicolon or tab,
whichever makes the header understood.
"""

from __future__ import annotations

import codecs
import csv
import io
from collections.abc import Sequence

from kneecase.record.columns import column_name
from kneecase.record.headers import Headers
from kneecase.record.problems import ProblemList, Row

__all__ = ["decoded", "table_rows", "table_shape"]

_MARKS = (
    (codecs.BOM_UTF8, "utf-8"),
    (codecs.BOM_UTF32_LE, "utf-32-le"),
    (codecs.BOM_UTF32_BE, "utf-32-be"),
    (codecs.BOM_UTF16_LE, "utf-16-le"),
    (codecs.BOM_UTF16_BE, "utf-16-be"),
)
_DELIMITERS = (",", ";", "\t")
_SAMPLE = 4000


def decoded(content: str | bytes, file: str, problems: ProblemList) -> str:
    """The text of a file; empty, with an error noted, where its bytes are no text."""
    if isinstance(content, str):
        return _sound(content.removeprefix("\ufeff"), file, problems)
    for mark, encoding in _MARKS:
        if content.startswith(mark):
            return _text(content[len(mark) :], encoding, file, problems)
    encoding = _encoding_without_mark(content)
    text = _text(content, encoding, file, problems)
    if encoding == "cp1252" and text:
        problems.add(
            "warning",
            file,
            "this file is not UTF-8 and was read as Windows-1252",
            "Look at letters with accents and signs such as °; saving the case writes UTF-8.",
        )
    return text


def _encoding_without_mark(content: bytes) -> str:
    """UTF-16 where every other byte is mostly zero, else UTF-8 where it decodes, else Windows-1252."""
    sample = content[:_SAMPLE]
    half = len(sample) // 2
    if half and len(content) % 2 == 0:
        if sample[1::2].count(0) > 0.4 * half > sample[0::2].count(0):
            return "utf-16-le"
        if sample[0::2].count(0) > 0.4 * half > sample[1::2].count(0):
            return "utf-16-be"
    try:
        content.decode("utf-8")
    except UnicodeDecodeError:
        return "cp1252"
    return "utf-8"


def _text(content: bytes, encoding: str, file: str, problems: ProblemList) -> str:
    try:
        text = content.decode(encoding)
    except UnicodeDecodeError as error:
        line = content[: error.start].count(b"\n") + 1
        problems.add(
            "error",
            file,
            f"this file is no readable text (byte {error.start + 1} is not {encoding.upper()})",
            "Open it in the program that wrote it and save it as CSV in UTF-8.",
            row=line,
        )
        return ""
    return _sound(text, file, problems)


def _sound(text: str, file: str, problems: ProblemList) -> str:
    """The text, or nothing with an error noted where it holds NUL bytes."""
    if "\0" in text:
        problems.add(
            "error",
            file,
            "this file holds NUL bytes, so it is damaged or no text",
            "Open it in the program that wrote it and save it again as text in UTF-8.",
            row=text[: text.index("\0")].count("\n") + 1,
        )
        return ""
    return text


def table_rows(
    text: str, file: str, known: Sequence[str], problems: ProblemList
) -> tuple[Headers, list[Row]]:
    """The rows of a delimited text, by column name; rows are numbered as a spreadsheet shows them."""
    text, announced = _without_announcement(text)
    if not text.strip():
        problems.add("warning", file, "this file is empty", "Write at least the row of column names.")
        return Headers(file, known, [], problems), []
    reader = csv.reader(
        io.StringIO(text, newline=""), delimiter=announced or _delimiter(text, known), strict=True
    )
    headers: Headers | None = None
    rows: list[Row] = []
    number = 0
    try:
        for number, record in enumerate(reader, start=1):
            if headers is None:
                if any(cell.strip() for cell in record):
                    headers = Headers(file, known, record, problems, number)
            elif "".join(record).strip():
                rows.append(headers.row(number, record))
    except csv.Error as error:
        _unreadable(file, number + 1, error, problems)
    return headers or Headers(file, known, [], problems), rows


def table_shape(text: str, known: Sequence[str]) -> tuple[str, str]:
    """The first line ``sep=;`` of a delimited text, empty where there is none, and its delimiter."""
    rest, announced = _without_announcement(text)
    return text.removesuffix(rest), announced or _delimiter(rest, known)


def _without_announcement(text: str) -> tuple[str, str]:
    """The text without a first line ``sep=;``, and the delimiter that line announces."""
    first, end, rest = text.partition("\n")
    if first.strip().lower().startswith("sep=") and end:
        return rest, first.strip("\r\n ")[4:5] or "\t"
    return text, ""


def _delimiter(text: str, known: Sequence[str]) -> str:
    """The delimiter under which the most known columns appear in the header."""
    first = next(line for line in text.splitlines() if line.strip())[:_SAMPLE]

    def understood(delimiter: str) -> int:
        return sum(column_name(cell.strip('"')) in known for cell in first.split(delimiter))

    return max(_DELIMITERS, key=understood)


def _unreadable(file: str, row: int, error: csv.Error, problems: ProblemList) -> None:
    if "field larger" in str(error):
        what = f"a cell has more than {csv.field_size_limit()} characters, so the rest was not read"
    else:
        what = f"the quotation marks do not pair up ({error}), so the rest was not read"
    mend = "Is a closing quotation mark missing? Inside a quoted cell, a quotation mark is written twice."
    problems.add("error", file, what, mend, row=row)
