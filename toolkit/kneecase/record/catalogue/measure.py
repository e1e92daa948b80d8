"""What kneecase knows about one measure: unit, limits, direction, error."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from kneecase.evidence.provenance import PublishedValue

__all__ = ["ErrorRule", "ItemRange", "Measure"]

ItemRange = tuple[float, float]
"""The least and the most points one item may get, in the item's own points."""


@dataclass(frozen=True, kw_only=True)
class ErrorRule:
    """A published measurement error and the pairs of readings it holds for.

    ``published`` is a standard error of measurement (``is_a="sem"``) or a minimal
    detectable change at 95 or 90 % (``"mdc95"``, ``"mdc90"``), in the measure's unit, or
    in percent of the reading where ``relative`` is true.  ``same_tester``,
    ``same_device``, ``device``, ``motion``, ``position`` and ``mode`` say when it applies;
    ``None`` or ``""`` means it does not matter.
    """

    published: PublishedValue
    is_a: Literal["sem", "mdc95", "mdc90"]
    relative: bool = False
    same_tester: bool | None = None
    same_device: bool | None = None
    device: str = ""
    motion: str = ""
    position: str = ""
    mode: str = ""
    reason: str = ""


@dataclass(frozen=True, kw_only=True)
class Measure:
    """One measure of the catalogue.

    ``hard`` are limits outside which a value is impossible (an error); ``plausible`` limits
    outside which it is unlikely (a warning, and kept).  ``better`` belongs to the measure,
    never to the caller.  ``per_limb`` measures need a side, the others must have none.
    ``items`` is the number of items of a questionnaire or observation sheet, ``item_range`` the
    points any of them may get, and ``item_ranges`` those of each by number where they differ.
    ``must_match`` names the fields of :class:`~kneecase.record.Condition` that have to agree
    before two readings are compared.
    """

    id: str
    label: str
    unit: str
    group: Literal["motion", "effusion", "girth", "strength", "hop", "balance", "movement", "score", "body"]
    hard: tuple[float, float]
    plausible: tuple[float, float]
    better: Literal["higher", "lower", "neither"]
    per_limb: bool = True
    items: int | None = None
    item_range: tuple[float, float] | None = None
    item_ranges: tuple[ItemRange, ...] = ()
    must_match: tuple[str, ...] = ()
    errors: tuple[ErrorRule, ...] = ()
    note: str = ""

    def range_of_item(self, item: int) -> ItemRange | None:
        """The points item number ``item`` may get [points]; ``None`` where there is no such item.

        Parameters
        ----------
        item : int
            Number of the item on its form, from 1 [count].

        Returns
        -------
        tuple of float or None
            Least and most points [points].

        Examples
        --------
        >>> from kneecase.record import measure_named
        >>> measure_named("ikdc_subjective").range_of_item(6)
        (0, 1)
        >>> measure_named("koos_qol").range_of_item(5) is None
        True
        """
        if self.items is None or not 1 <= item <= self.items:
            return None
        return self.item_ranges[item - 1] if self.item_ranges else self.item_range
