"""Files as other programs write them: encodings, delimiters, quotation marks, empty and broken ones."""

from __future__ import annotations

import codecs
from collections.abc import Callable

import pytest

from kneecase.errors import Problem
from kneecase.record import Case

TABLE = "date,measure,side,value,note\n2026-03-16,knee_flexion,left,85,müde – 90°?\n"
Read = Callable[..., Case]
Error = Callable[..., Problem]


@pytest.mark.parametrize(
    "content",
    [
        TABLE,
        "\ufeff" + TABLE,
        TABLE.encode(),
        TABLE.encode("utf-8-sig"),
        codecs.BOM_UTF16_LE + TABLE.encode("utf-16-le"),
        codecs.BOM_UTF16_BE + TABLE.encode("utf-16-be"),
        TABLE.encode("utf-16-le"),
        TABLE.encode("utf-16-be"),
        codecs.BOM_UTF32_LE + TABLE.encode("utf-32-le"),
        codecs.BOM_UTF32_BE + TABLE.encode("utf-32-be"),
    ],
    ids=["text", "text-mark", "utf8", "utf8-mark", "16le", "16be", "16le-bare", "16be-bare", "32le", "32be"],
)
def test_unicode_is_read_with_and_without_a_mark(read: Read, content: str | bytes) -> None:
    """The note arrives letter by letter, and the text is kept as read."""
    case = read(content)
    assert case.readings[0].note == "müde – 90°?"
    assert case.texts["measurements.csv"] == TABLE
    assert case.warnings == ()


def test_case_toml_is_read_in_any_encoding(read: Read) -> None:
    """A text editor may have written it as UTF-16."""
    toml = '[athlete]\npseudonym = "Zoë"\n[surgery]\ndate = 2026-03-02\nside = "left"\n'
    assert read(toml=toml.encode("utf-16")).athlete.pseudonym == "Zoë"
    assert read(toml=toml.encode("cp1252")).athlete.pseudonym == "Zoë"


def test_windows_1252_is_read_and_doubted(read: Read) -> None:
    """Any byte is a letter there, so a person should look."""
    case = read(TABLE.encode("cp1252"))
    assert case.readings[0].note == "müde – 90°?"
    assert "Windows-1252" in case.warnings[0].what


def test_bytes_that_are_no_text_are_refused_with_their_line(error: Error) -> None:
    """0x81 means nothing in Windows-1252, and the line above is UTF-8-broken."""
    found = error(TABLE.encode("cp1252") + b"2026-03-17,knee_flexion,left,86,\x81\n")
    assert found.row == 3
    assert "no readable text" in found.what


def test_broken_utf_16_is_refused(error: Error) -> None:
    """A mark promises UTF-16 and the last letter is half there."""
    assert "UTF-16-LE" in error(codecs.BOM_UTF16_LE + TABLE.encode("utf-16-le")[:-1]).what


def test_nul_bytes_are_refused(error: Error) -> None:
    """A damaged file does not become a table of blanks."""
    found = error(TABLE + "2026-03-17,knee_flexion,left,8\x006,\n")
    assert found.row == 3
    assert "NUL" in found.what


@pytest.mark.parametrize("delimiter", [",", ";", "\t"])
@pytest.mark.parametrize("ending", ["\n", "\r\n", "\r"])
def test_delimiters_and_line_ends(read: Read, delimiter: str, ending: str) -> None:
    """Whatever separates cells and rows, it is one table."""
    text = "date,measure,side,value\n2026-03-16,knee_flexion,left,85\n2026-03-17,knee_flexion,left,86\n"
    case = read(text.replace(",", delimiter).replace("\n", ending))
    assert [reading.value for reading in case.readings] == [85, 86]
    assert [reading.row for reading in case.readings] == [2, 3]


def test_an_announced_delimiter_is_not_a_row(read: Read) -> None:
    """Some spreadsheets write a first line that only names the delimiter and is not shown."""
    case = read("sep=;\ndate;measure;side;value\n2026-03-16;knee_flexion;left;85,5\n")
    assert (case.readings[0].value, case.readings[0].row) == (85.5, 2)
    assert read("sep=\t\ndate\tmeasure\tside\tvalue\n2026-03-16\tknee_flexion\tleft\t85\n").readings


def test_rows_are_numbered_as_a_spreadsheet_shows_them(read: Read) -> None:
    """Blank lines count; a note over two lines is one row."""
    case = read(
        "date,measure,side,value,note\n\n"
        '2026-03-16,knee_flexion,left,85,"two\nlines"\n,,,,\n'
        "2026-03-17,knee_flexion,left,86,\n"
    )
    assert [(reading.row, reading.note) for reading in case.readings] == [(3, "two\nlines"), (5, "")]


def test_html_and_formula_text_is_kept_letter_by_letter(read: Read) -> None:
    """A note is text and stays text."""
    note = '  =HYPERLINK("x") <script>alert(1)</script> & -1+1 @sum '
    quoted = note.replace('"', '""')
    case = read(f'date,measure,side,value,note\n2026-03-16,knee_flexion,left,85,"{quoted}"\n')
    assert case.readings[0].note == note


def test_a_decimal_comma_in_a_comma_table_is_found(error: Error) -> None:
    """It makes a row too long; the sentence says why that may be."""
    found = error("date,measure,side,value\n2026-03-16,knee_flexion,left,85,5\n")
    assert (found.row, "5 cells" in found.what, "decimal comma" in found.mend) == (2, True, True)


def test_blank_cells_beyond_the_header_and_short_rows_are_fine(read: Read) -> None:
    """Spreadsheets add delimiters at the end, editors take them away."""
    case = read(
        "date,measure,side,value,note,\n2026-03-16,knee_flexion,left,85,,,\n2026-03-17,knee_flexion,left,86\n"
    )
    assert [reading.value for reading in case.readings] == [85, 86]


def test_a_cell_without_a_column_name_is_refused(error: Error) -> None:
    """Its meaning cannot be known."""
    found = error("date,measure,side,value,\n2026-03-16,knee_flexion,left,85,7\n")
    assert "without a name" in found.what


def test_a_column_that_appears_twice_is_refused(error: Error) -> None:
    """Which of the two counts cannot be known."""
    found = error("date,measure,side,value,Value\n2026-03-16,knee_flexion,left,85,90\n")
    assert (found.column, "more than once" in found.what) == ("value", True)


@pytest.mark.parametrize("open_cell", ['"never closed', '"closed" then more'])
def test_quotation_marks_that_do_not_pair_up(error: Error, open_cell: str) -> None:
    """The rest of the file is not swallowed as one note."""
    found = error(TABLE + f"2026-03-17,knee_flexion,left,86,{open_cell}\n2026-03-18,knee_flexion,left,87,\n")
    assert "pair up" in found.what


def test_a_huge_cell_is_refused(error: Error) -> None:
    """Usually a quotation mark is missing above it."""
    found = error(TABLE + f'2026-03-17,knee_flexion,left,86,"{"x" * 200_000}"\n')
    assert (found.row, "characters" in found.what) == (3, True)
    assert len(found.sentence()) < 400


@pytest.mark.parametrize("content", [b"", b"\n\n", b"\xef\xbb\xbf", b"sep=;\n"])
def test_an_empty_file_is_doubted(read: Read, content: bytes) -> None:
    """The case has no readings, and that is said."""
    case = read(content)
    assert case.readings == ()
    assert [warning.what for warning in case.warnings] == ["this file is empty"]


def test_a_header_alone_is_a_table_without_rows(read: Read) -> None:
    """A new case starts like this."""
    assert read("date,measure,side,value\n", "date,clinician\n").warnings == ()


def test_missing_columns_are_named(errors: Callable[..., list[Problem]]) -> None:
    """One fault for each, with a misspelt one found."""
    found = errors("dat,measure,vlaue\n2026-03-16,knee_flexion,85\n")
    assert [problem.what for problem in found] == [
        "the column date is missing",
        "the column value is missing",
    ]
    assert "'dat'" in found[0].mend
    assert "'vlaue'" in found[1].mend
    assert "Add it" in errors("x\n1\n")[0].mend
    assert errors("\n\nx\n1\n")[0].row == 3
    assert "date" in errors(None, "clinician\nAB\n")[0].what


def test_a_table_of_reasons_needs_no_value_column(read: Read) -> None:
    """Every row may say why there is none."""
    case = read("date,measure,side,missing\n2026-03-16,single_hop,left,unsafe\n")
    assert case.readings[0].missing == "unsafe"


def test_unknown_columns_are_kept_and_misspelt_ones_doubted(read: Read) -> None:
    """Only a near miss of a column that is absent is worth a word."""
    case = read("date,measure,side,value,tesster,Room 7\n2026-03-16,knee_flexion,left,85,AB, x \n")
    assert dict(case.readings[0].extra) == {"tesster": "AB", "Room 7": " x "}
    assert [(w.column, "'tester'" in w.mend) for w in case.warnings] == [("tesster", True)]


def test_headers_may_have_capitals_spaces_and_units_in_brackets(read: Read) -> None:
    """They are the same columns."""
    case = read(
        "Date , MEASURE,Side,Value,Angle (deg),Lever arm [m]\n2026-03-16,hamstring force,Left,85,90,0.32\n"
    )
    condition = case.readings[0].condition
    assert (condition.angle_deg, condition.lever_arm_m) == (90, 0.32)
