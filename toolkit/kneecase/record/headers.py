"""The header of a table: which columns it has, which are unknown, which are probably misspelt."""

from __future__ import annotations

import difflib
from collections.abc import Sequence

from kneecase.record.columns import column_name
from kneecase.record.problems import ProblemList, Row

__all__ = ["Headers", "warn_of_misspelling"]


class Headers:
    """The columns of one table, and how a record becomes a row."""

    def __init__(
        self,
        file: str,
        known: Sequence[str],
        cells: Sequence[str],
        problems: ProblemList,
        number: int = 1,
    ) -> None:
        self.file = file
        self.number = number
        self.problems = problems
        self.names = [name if (name := column_name(cell)) in known else cell.strip() for cell in cells]
        self.extra = tuple(name for name in self.names if name and name not in known)
        self._look_for_faults(known)

    def row(self, number: int, record: Sequence[str]) -> Row:
        """A record as a row; a cell beyond the header or under a blank header is a fault."""
        row = Row(self.problems, self.file, number, dict(zip(self.names, record, strict=False)))
        if len(record) > len(self.names) and any(cell.strip() for cell in record[len(self.names) :]):
            row.error(
                "",
                f"this row has {len(record)} cells and the header has {len(self.names)}",
                "Does a cell hold the sign that separates the columns, such as a decimal comma in a table "
                "separated by commas? Put that cell in quotation marks.",
            )
        if "" in row.cells:
            if row.cells[""].strip():
                row.error(
                    "", "a cell stands in a column without a name", "Name the column or empty the cell."
                )
            row.cells = {name: cell for name, cell in row.cells.items() if name}
        return row

    def demand(self, *columns: str) -> None:
        """Note every required column that is missing; nothing is demanded of an empty table."""
        if not self.names:
            return
        for column in columns:
            if column not in self.names:
                near = difflib.get_close_matches(
                    column, [column_name(name) for name in self.extra], n=1, cutoff=0.6
                )
                mend = f"Is it the column {near[0]!r}, misspelt?" if near else "Add it to the column names."
                what = f"the column {column} is missing"
                self.problems.add("error", self.file, what, mend, row=self.number, allowed=", ".join(columns))

    def demand_one_of(self, *columns: str) -> None:
        """Note where none of these columns is there; nothing is demanded of an empty table."""
        if self.names and not self.has_any(*columns):
            self.demand(columns[0])

    def has(self, *columns: str) -> bool:
        """Whether all of these columns are there."""
        return all(column in self.names for column in columns)

    def has_any(self, *columns: str) -> bool:
        """Whether one of these columns is there."""
        return any(column in self.names for column in columns)

    def _look_for_faults(self, known: Sequence[str]) -> None:
        for name in sorted({name for name in self.names if name and self.names.count(name) > 1}):
            what, mend = (
                f"the column {name} appears more than once",
                "Keep one and rename or delete the other.",
            )
            self.problems.add("error", self.file, what, mend, row=self.number, column=name)
        for name in self.extra:
            missing = [column for column in known if column not in self.names]
            warn_of_misspelling(Row(self.problems, self.file, self.number, {}), name, missing)


def warn_of_misspelling(row: Row, name: str, known: Sequence[str]) -> None:
    """Warn where an unknown name is close to a known one that is absent; it is kept either way."""
    near = difflib.get_close_matches(column_name(name), known, n=1, cutoff=0.8)
    if near:
        mend = f"Did you mean {near[0]!r}? It is kept as it is and not used."
        row.warning(name, f"{name!r} is not known to kneecase", mend)
