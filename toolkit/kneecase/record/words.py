"""Cells that hold one word of a closed list: sides, yes or no, terms of the trade."""

from __future__ import annotations

from collections.abc import Collection

from kneecase.record.problems import Row, nearest_words
from kneecase.record.rows import Side, other_side

__all__ = ["closed_word", "side_word", "yes_or_no"]

_LEFT_RIGHT: dict[str, Side] = {"l": "left", "left": "left", "r": "right", "right": "right"}
_YES_NO = {
    **dict.fromkeys(("y", "yes", "true"), "yes"),
    **dict.fromkeys(("n", "no", "false"), "no"),
    "not asked": "not asked",
}


def closed_word(row: Row, column: str, allowed: Collection[str]) -> str:
    """The word of a cell as the list spells it; empty where the cell is blank or the word unknown."""
    typed = row.cell(column)
    if not typed or typed in allowed:
        return typed
    for word in allowed:
        if word.lower() == " ".join(typed.lower().split()):
            return word
    row.error(
        column,
        f"{column} must be one of a closed list",
        nearest_words(typed, allowed),
        allowed=_listed(allowed),
    )
    return ""


def side_word(row: Row, column: str, involved: Side | None) -> Side | None:
    """Left or right from a cell; ``involved`` and ``uninvolved`` are settled by the operated side.

    ``None`` where the cell is blank, is no side, or the operated side is not known.
    """
    typed = row.cell(column).lower()
    if typed in _LEFT_RIGHT:
        return _LEFT_RIGHT[typed]
    if typed in ("involved", "uninvolved"):
        if involved is None:
            return None
        return involved if typed == "involved" else other_side(involved)
    if typed:
        mend = (
            "Write one row for each side." if typed in ("both", "bilateral", "b") else "Write left or right."
        )
        row.error(column, "side must be left or right", mend, allowed="left, right, involved, uninvolved")
    return None


def yes_or_no(row: Row, column: str) -> str:
    """``"yes"``, ``"no"`` or ``"not asked"`` from a cell; empty where it is blank or none of these."""
    typed = row.cell(column)
    answer = _YES_NO.get(typed.lower(), "")
    if typed and not answer:
        mend = "Write yes, no or not asked; a blank cell means not asked."
        row.error(column, f"{column} must be answered yes or no", mend, allowed="yes, no, not asked")
    return answer


def _listed(words: Collection[str]) -> str:
    return "; ".join(words) if any("," in word for word in words) else ", ".join(words)
