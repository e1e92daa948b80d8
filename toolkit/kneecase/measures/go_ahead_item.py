"""One condition for maximal hopping: how it is written down, and when a finding is too old to count."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass

from kneecase.answers import Finding, Verdict
from kneecase.evidence import PublishedValue
from kneecase.evidence.clearance import CLEARANCE_HOP_FRESHNESS_OURS
from kneecase.measures.threshold import is_met

__all__ = ["GoAheadItem", "dated_item", "go_ahead_item", "is_fresh"]


@dataclass(frozen=True, kw_only=True)
class GoAheadItem(Finding):
    """One condition for maximal hopping; ``verdict`` is met, not met or unknown.

    ``key`` names it; ``date`` is the day of the finding it rests on, ``None`` where nothing is recorded.
    ``value`` is the number that was held against the line, where there is one.
    """

    key: str
    date: dt.date | None

    def quantity(self) -> str:
        """The number held against the line, or the word that stands for it."""
        return self.shown or super().quantity()


def go_ahead_item(
    key: str,
    label: str,
    verdict: Verdict,
    words: str,
    *,
    date: dt.date | None = None,
    value: float | None = None,
    unit: str = "grade",
    shown: str = "",
    inputs: tuple[str, ...] = (),
    evidence: tuple[PublishedValue, ...] = (),
    cautions: tuple[str, ...] = (),
) -> GoAheadItem:
    """One condition as a finding."""
    lines = " and ".join(f"{line.definition}: {line.quantity()}" for line in evidence)
    if evidence and not evidence[0].verified:
        words = f"{words}; the line is {_known(evidence[0])}"
    return GoAheadItem(
        label=label,
        value=value,
        unit=unit,
        shown=shown,
        words=words,
        verdict=verdict,
        inputs=inputs,
        formula=f"held against {lines}" if lines else "as recorded",
        evidence=evidence,
        cautions=cautions,
        key=key,
        date=date,
    )


def _known(line: PublishedValue) -> str:
    """How a line is known that was not read in print."""
    return "a convention, no source" if line.known == "common practice" else line.how_known()


def is_fresh(date: dt.date, day: dt.date, limit: PublishedValue = CLEARANCE_HOP_FRESHNESS_OURS) -> bool:
    """Whether a finding of ``date`` still speaks for ``day``."""
    return is_met((day - date).days, limit.number, limit.operator)


def dated_item(
    key: str,
    label: str,
    met: bool,
    words: str,
    *,
    date: dt.date,
    day: dt.date,
    freshness: PublishedValue = CLEARANCE_HOP_FRESHNESS_OURS,
    value: float | None = None,
    unit: str = "grade",
    shown: str = "",
    inputs: tuple[str, ...] = (),
    evidence: tuple[PublishedValue, ...] = (),
    cautions: tuple[str, ...] = (),
) -> GoAheadItem:
    """A condition that rests on a dated finding: too old a finding makes it unknown."""
    verdict: Verdict = "met" if met else "not met"
    if not is_fresh(date, day, freshness):
        age = (day - date).days
        verdict = "unknown"
        words = f"{words}, but that was {age} days ago ({date.isoformat()}): look again"
        evidence = (*evidence, freshness)
    return go_ahead_item(
        key,
        label,
        verdict,
        words,
        date=date,
        value=value,
        unit=unit,
        shown=shown,
        inputs=inputs,
        evidence=evidence,
        cautions=cautions,
    )
