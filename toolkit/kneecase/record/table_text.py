"""A table's text with some rows changed: every other row stays as it was typed, to the byte."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from kneecase.record.columns import column_name
from kneecase.record.numbers import decimal_mark
from kneecase.record.text_files import table_shape

__all__ = ["Cells", "TableText"]

Cells = Mapping[str, str]
"""Cells of one row by column name."""

_UNDERSTOOD = {("status", "scored")}
"""What a table says without a column for it."""


@dataclass(frozen=True)
class _Record:
    """One record as it stands in the text, and its cells."""

    raw: str
    cells: Sequence[str]


class TableText:
    """The text of one table, taken apart into records that can be put together again."""

    def __init__(self, text: str, known: Sequence[str]) -> None:
        if not text.strip():
            text = ",".join(known) + "\n"
        announcement, self.delimiter = table_shape(text, known)
        records = list(_records(text[len(announcement) :], self.delimiter))
        place = next(n for n, record in enumerate(records) if any(cell.strip() for cell in record.cells))
        self._before_header = announcement + "".join(record.raw for record in records[:place])
        self._header = records[place]
        self.names = [
            name if (name := column_name(cell)) in known else cell.strip() for cell in self._header.cells
        ]
        self._rows = {number: records[number - 1] for number in range(place + 2, len(records) + 1)}
        self._line_end = _line_end(self._header.raw)

    def decimal_mark_of(self, columns: Sequence[str]) -> str:
        """The decimal mark that the numbers in ``columns`` are written with; a point where none says."""
        places = [place for place, name in enumerate(self.names) if name in columns]
        cells = (
            row.cells[place] for row in self._rows.values() for place in places if place < len(row.cells)
        )
        return decimal_mark(cell.strip() for cell in cells) or "."

    def rewritten(self, changed: Mapping[int, Sequence[Cells]], added: Sequence[Cells]) -> str:
        """The text with rows replaced and added.

        Parameters
        ----------
        changed : mapping of int to sequence of cells
            For a row's number, the rows that take its place: none removes it. Cells not named stay
            as they are in that row.
        added : sequence of cells
            Rows to add at the end.
        """
        columns = self._columns_for([*(cells for rows in changed.values() for cells in rows), *added])
        parts = [self._before_header, self._header_text(columns)]
        for number, record in self._rows.items():
            if number not in changed:
                parts.append(record.raw)
                continue
            old = list(record.cells)
            parts.extend(self._row_text(old, columns, cells) for cells in changed[number])
        new = [self._row_text([], columns, cells) for cells in added]
        if new and not parts[-1].endswith(("\n", "\r")):
            parts.append(self._line_end)
        return "".join([*parts, *new])

    def _columns_for(self, rows: Iterable[Cells]) -> list[str]:
        """The columns of the table with those that the rows need besides, in the order they come."""
        said = (item for cells in rows for item in cells.items() if all(item) and item not in _UNDERSTOOD)
        columns = dict.fromkeys(name for name, _ in said)
        return [*self.names, *(name for name in columns if name not in self.names)]

    def _header_text(self, columns: Sequence[str]) -> str:
        new = columns[len(self.names) :]
        if not new:
            return self._header.raw
        return self._header.raw.rstrip("\r\n") + self.delimiter + self._text(new) + self._line_end

    def _row_text(self, old: Sequence[str], columns: Sequence[str], cells: Cells) -> str:
        row = [*old, *[""] * (len(columns) - len(old))]
        for place, name in enumerate(columns):
            if name and name in cells:
                row[place] = cells[name]
        return self._text(row) + self._line_end

    def _text(self, row: Sequence[str]) -> str:
        out = io.StringIO()
        csv.writer(out, delimiter=self.delimiter, lineterminator="\r\n").writerow(row)
        return out.getvalue().removesuffix("\r\n")


def _records(text: str, delimiter: str) -> Iterable[_Record]:
    """Each record with the very text it was read from, line ends and all."""
    lines = list(io.StringIO(text, newline=""))
    reader = csv.reader(lines, delimiter=delimiter, strict=True)
    start = 0
    for cells in reader:
        yield _Record("".join(lines[start : reader.line_num]), cells)
        start = reader.line_num


def _line_end(raw: str) -> str:
    for end in ("\r\n", "\n", "\r"):
        if raw.endswith(end):
            return end
    return "\n"
