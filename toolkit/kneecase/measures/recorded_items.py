"""What a record holds of one form on one occasion: items by number, a total, and whether they agree."""

from __future__ import annotations

import math
import re
from collections.abc import Sequence
from dataclasses import dataclass

from kneecase.record import Reading
from kneecase.units import number_text

__all__ = ["RecordedItems", "recorded_items"]


@dataclass(frozen=True, kw_only=True)
class RecordedItems:
    """Items in the order of their numbers (NaN where missing), and the total if one was written.

    ``problem`` says in words what makes the occasion unusable: two different entries for one thing, or an
    item that the form does not have.
    """

    items: tuple[float, ...]
    total: float | None
    total_decimals: int
    readings: tuple[Reading, ...]
    problem: str = ""

    @property
    def answered(self) -> int:
        """How many items were answered."""
        return sum(not math.isnan(x) for x in self.items)

    @property
    def missing(self) -> tuple[int, ...]:
        """Numbers of the items that were not answered."""
        return tuple(number for number, x in enumerate(self.items, start=1) if math.isnan(x))

    def disagrees_with(self, computed_points: float) -> bool:
        """Whether the written total is another number than the items give, beyond its own rounding.

        Parameters
        ----------
        computed_points : float
            The score the items give [points].
        """
        if self.total is None:
            return False
        half = 0.5 / 10**self.total_decimals
        gap = abs(self.total - computed_points)
        return gap > half and not math.isclose(gap, half)


def recorded_items(rows: Sequence[Reading], count: int) -> RecordedItems:
    """The items and the total that scored ``rows`` of one occasion hold, for a form of ``count`` items."""
    entries: dict[int | None, float] = {}
    problems: list[str] = []
    decimals = 0
    for row in rows:
        if row.value is None:
            continue
        if row.item is not None and not 1 <= row.item <= count:
            problems.append(f"item {row.item} does not exist on this form of {count} items")
        elif row.item in entries and entries[row.item] != row.value:
            what = "the total" if row.item is None else f"item {row.item}"
            first, second = number_text(entries[row.item], 2), number_text(row.value, 2)
            problems.append(f"{what} is recorded twice, as {first} and as {second}")
        else:
            entries[row.item] = row.value
            decimals = _decimals(row) if row.item is None else decimals
    return RecordedItems(
        items=tuple(entries.get(number, math.nan) for number in range(1, count + 1)),
        total=entries.get(None),
        total_decimals=decimals,
        readings=tuple(rows),
        problem="; ".join(problems),
    )


def _decimals(row: Reading) -> int:
    """How many decimals the total was typed with."""
    typed = re.search(r"[.,](\d+)", row.raw_value)
    if typed:
        return len(typed[1])
    return 0 if row.raw_value else len(repr(row.value).partition(".")[2].rstrip("0"))
