"""Gathering every fault and doubt of a case before anything is refused."""

from __future__ import annotations

import difflib
from collections.abc import Iterable, Mapping
from functools import lru_cache
from typing import Literal

from kneecase.errors import InputError, Problem

__all__ = ["CellError", "ProblemList", "Row", "close_matches", "nearest_words"]

Severity = Literal["error", "warning"]


class CellError(InputError):
    """A typed entry breaks a rule; the parts of the sentence are kept for the place it stands in."""

    def __init__(self, name: str, rule: str, came: str, mend: str) -> None:
        self.name, self.rule, self.came, self.mend = name, rule, came, mend
        shown = came if len(came) <= 60 else came[:59] + "…"
        super().__init__(f"{name} {rule}, got {shown!r}. {mend}")


class ProblemList:
    """The faults (errors) and doubts (warnings) found so far, in the order they were met."""

    def __init__(self, problems: Iterable[Problem] = ()) -> None:
        self._problems: list[Problem] = list(problems)
        self.error_count = sum(problem.severity == "error" for problem in self._problems)

    def add(
        self,
        severity: Severity,
        file: str,
        what: str,
        mend: str,
        *,
        row: int | None = None,
        column: str = "",
        value: str | None = None,
        allowed: str = "",
    ) -> None:
        """Note one fault or doubt and go on."""
        self.error_count += severity == "error"
        self._problems.append(
            Problem(
                severity=severity,
                file=file,
                what=what,
                mend=mend,
                row=row,
                column=column,
                value=value,
                allowed=allowed,
            )
        )

    @property
    def all(self) -> tuple[Problem, ...]:
        """Everything found."""
        return tuple(self._problems)

    @property
    def warnings(self) -> tuple[Problem, ...]:
        """The doubts alone."""
        return tuple(problem for problem in self._problems if problem.severity == "warning")


class Row:
    """One row of a table, or one part of ``case.toml``: its cells as text, and where it stands."""

    __slots__ = ("cells", "file", "number", "problems")

    def __init__(
        self, problems: ProblemList, file: str, number: int | None, cells: Mapping[str, str]
    ) -> None:
        self.problems = problems
        self.file = file
        self.number = number
        self.cells = cells

    def cell(self, column: str) -> str:
        """The text of a cell without the white space around it; empty where there is none."""
        return self.cells.get(column, "").strip()

    def error(self, column: str, what: str, mend: str, *, allowed: str = "") -> None:
        """Something impossible in this row."""
        self._add("error", column, what, mend, allowed)

    def warning(self, column: str, what: str, mend: str, *, allowed: str = "") -> None:
        """Something unlikely in this row; it is kept."""
        self._add("warning", column, what, mend, allowed)

    def refuse(self, column: str, error: CellError) -> None:
        """The entry in ``column`` broke a rule."""
        self.error(column, error.rule, error.mend)

    def place(self, column: str) -> tuple[int | None, str]:
        """Row number and column name to show for a cell."""
        return self.number, column

    def _add(self, severity: Severity, column: str, what: str, mend: str, allowed: str) -> None:
        number, shown = self.place(column)
        value = self.cells.get(column)
        self.problems.add(
            severity, self.file, what, mend, row=number, column=shown, value=value, allowed=allowed
        )


def nearest_words(word: str, allowed: Iterable[str]) -> str:
    """A question that offers the nearest allowed words, or a plain request where none is near.

    Examples
    --------
    >>> nearest_words("hamstring", ("patellar tendon", "hamstring tendon"))
    "Did you mean 'hamstring tendon'?"
    """
    near = close_matches(word.strip().lower()[:80], tuple(allowed))[:2]
    if near:
        return f"Did you mean {' or '.join(repr(word) for word in near)}?"
    return "Write one of the allowed words."


@lru_cache(maxsize=1000)
def close_matches(word: str, allowed: tuple[str, ...]) -> tuple[str, ...]:
    """Up to three allowed words near ``word``, nearest first; the same fault is often in many rows."""
    return tuple(difflib.get_close_matches(word, allowed, n=3, cutoff=0.5))
