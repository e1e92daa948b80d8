"""What a published value must carry before kneecase may show it.

A value without a source cannot exist: leaving the source out is a
``TypeError`` when the module is loaded. How the source is known travels with
the value, and everything that was not read at first hand is shown as
unverified wherever it is shown.
"""

from __future__ import annotations

import math
import re
from dataclasses import dataclass
from typing import Literal, get_args

from kneecase.errors import InputError
from kneecase.units import SUFFIXES, number_text, quantity_text

__all__ = ["HowKnown", "PublishedValue", "Source"]

HowKnown = Literal["full text", "abstract", "secondary", "from memory", "derived", "common practice"]
_HOW_KNOWN = get_args(HowKnown)
_READ = ("full text", "abstract")
_KEY = re.compile(r"[a-z][a-z0-9-]*")
_DOI = re.compile(r"10\.\d{4,9}/\S+")


@dataclass(frozen=True, kw_only=True)
class Source:
    """Where a value was published, and how its authors and text are known to kneecase.

    ``known`` says how the source as a whole was read; a single value may be
    known less well than its source and then says so itself.
    """

    key: str
    authors: str
    year: int | None
    title: str
    venue: str
    kind: str
    known: HowKnown
    doi: str = ""
    note: str = ""

    def __post_init__(self) -> None:
        if not _KEY.fullmatch(self.key):
            raise InputError(f"key must be lower-case words joined by hyphens, got {self.key!r}.")
        if self.known not in _HOW_KNOWN:
            raise InputError(f"known must be one of {', '.join(_HOW_KNOWN)}, got {self.known!r}.")
        if self.doi and not _DOI.fullmatch(self.doi):
            raise InputError(f"doi must look like 10.1234/abc, got {self.doi!r}.")

    def citation(self) -> str:
        """Authors, year, title and venue on one line."""
        year = f" {self.year}." if self.year is not None else ""
        parts = [f"{self.authors.rstrip('.')}.{year}", f"{self.title.rstrip('.')}."]
        if self.venue:
            parts.append(f"{self.venue.rstrip('.')}.")
        if self.doi:
            parts.append(f"doi:{self.doi}")
        return " ".join(part for part in parts if part.strip("."))


@dataclass(frozen=True, kw_only=True)
class PublishedValue:
    """One number from print: what it is exactly, for whom, and how it is known.

    ``low`` and ``high`` hold an interval or range and ``spread_is`` says which
    ('95 % interval', 'range', 'standard deviation of 8.1').  A value known only
    as a range has ``value=None``.
    """

    name: str
    value: float | None
    unit: str
    definition: str
    population: str
    source: Source
    known: HowKnown
    place: str = ""
    low: float | None = None
    high: float | None = None
    spread_is: str = ""
    n: int | None = None
    operator: str = ""
    caution: str = ""

    def __post_init__(self) -> None:
        if self.unit not in SUFFIXES:
            raise InputError(f"{self.name}: unit must be one of {', '.join(SUFFIXES)}, got {self.unit!r}.")
        if self.known not in _HOW_KNOWN:
            raise InputError(
                f"{self.name}: known must be one of {', '.join(_HOW_KNOWN)}, got {self.known!r}."
            )
        if self.operator not in ("", "≥", ">", "≤", "<"):
            raise InputError(f"{self.name}: operator must be ≥, >, ≤ or <, got {self.operator!r}.")
        ends = [x for x in (self.low, self.value, self.high) if x is not None]
        if not ends or any(math.isnan(x) for x in ends) or ends != sorted(ends):
            raise InputError(
                f"{self.name}: low ≤ value ≤ high must hold, got {self.low}, {self.value}, {self.high}."
            )

    @property
    def number(self) -> float:
        """The value itself, for arithmetic.

        Raises
        ------
        InputError
            If only a range was published.
        """
        if self.value is None:
            raise InputError(
                f"{self.name} was published as a range ({self.low} to {self.high}); name which end to use."
            )
        return self.value

    @property
    def verified(self) -> bool:
        """Whether the number was read at first hand, in the paper's text or its abstract."""
        return self.known in _READ

    def quantity(self) -> str:
        """The value and its range with the unit, for people."""
        digits = 4 if self.unit == "fraction" else 2
        low = "?" if self.low is None else number_text(self.low, digits)
        if self.value is None:
            high = "?" if self.high is None else quantity_text(self.high, self.unit, digits)
            text = f"{low} to {high}"
        else:
            text = quantity_text(self.value, self.unit, digits)
            if self.low is not None and self.high is not None:
                text += f" ({self.spread_is or 'range'} {low} to {number_text(self.high, digits)})"
        return f"{self.operator} {text}" if self.operator else text

    def how_known(self) -> str:
        """How the number is known, with a plain warning where it was not read at first hand."""
        words = {
            "full text": "read in the full text",
            "abstract": "read in the abstract",
            "secondary": "unverified: read second-hand",
            "from memory": "unverified: from memory",
            "derived": "derived here, not published as such",
            "common practice": "common practice, no source",
        }
        return words[self.known]

    def line(self) -> str:
        """Definition, value, population, source and how known, on one line."""
        who = f"; {self.population}" if self.population else ""
        n = f", n = {self.n:,}" if self.n is not None else ""
        where = f", {self.place}" if self.place else ""
        what = f"{self.definition}: {self.quantity()}{who}{n}."
        return f"{what} {self.source.citation()}{where} [{self.how_known()}]"
