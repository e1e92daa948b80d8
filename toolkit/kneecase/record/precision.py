"""Which published measurement error holds for a pair of readings.

The error of a change depends on who measured with what: the same tester with
the same device is the best case, two testers the worst.  When the record does
not say, the worse case is taken.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from kneecase.evidence.provenance import PublishedValue
from kneecase.record.catalogue import ErrorRule, measure_named
from kneecase.record.rows import Reading
from kneecase.units import number_text, quantity_text

__all__ = ["Precision", "precision_of"]

_Z95 = 1.959963984540054
_Z90 = 1.6448536269514722


@dataclass(frozen=True, kw_only=True)
class Precision:
    """The standard error of measurement of one reading, and where it comes from.

    ``sem`` is in the measure's unit for a reading of the size given; ``published`` is the
    value it comes from; ``pair`` says in words which pair of readings it holds for;
    ``relative_pct`` is the error in percent of the reading where that is how it was published.
    """

    sem: float
    published: PublishedValue
    pair: str
    rule: ErrorRule
    relative_pct: float | None = None

    def sem_at(self, value: float) -> float:
        """The standard error of a reading of this size [unit of the measure].

        Parameters
        ----------
        value : float
            The reading [unit of the measure].

        Returns
        -------
        float
            Its standard error of measurement [unit of the measure].
        """
        return self.sem if self.relative_pct is None else self.relative_pct * abs(value) / 100

    @property
    def flag(self) -> str:
        """In a word or two why the error is not one read in print, or empty where it is."""
        flags = {"derived": "derived here", "common practice": "a convention"}
        return "" if self.published.verified else flags.get(self.published.known, "unverified")

    def words(self) -> str:
        """Size, pair, reason and source of the error, for people."""
        size = quantity_text(self.sem, self.published.unit, 2)
        if self.relative_pct is not None:
            size = f"{number_text(self.relative_pct, 2)} % of the reading"
        reason = f" ({self.rule.reason})" if self.rule.reason else ""
        return f"standard error of one reading {size}: {self.pair}{reason}; {self.published.how_known()}"


def precision_of(measure: str, readings: Sequence[Reading]) -> Precision | None:
    """The error of ``readings`` of one measure, taken together; ``None`` where none is published.

    Parameters
    ----------
    measure : str
        Id of the measure.
    readings : sequence of Reading
        The readings that are compared; whether they share tester and device decides.
        A blank tester or device counts as different.

    Returns
    -------
    Precision or None
        The standard error of one reading [unit of the measure].
    """
    same_tester = _shared([r.tester for r in readings])
    same_device = _shared([r.device for r in readings])
    devices = {r.device.strip().lower() for r in readings}
    for rule in measure_named(measure).errors:
        if rule.same_tester is not None and rule.same_tester != same_tester:
            continue
        if rule.same_device is not None and rule.same_device != same_device:
            continue
        if rule.device and not all(rule.device in device for device in devices):
            continue
        if not all(_fits(rule, reading) for reading in readings):
            continue
        values = [abs(r.value) for r in readings if r.value is not None]
        size = sum(values) / len(values) if values else math.nan
        sem = _sem(rule)
        return Precision(
            sem=sem * size / 100 if rule.relative else sem,
            published=rule.published,
            pair=_pair(same_tester, same_device),
            rule=rule,
            relative_pct=sem if rule.relative else None,
        )
    return None


def _fits(rule: ErrorRule, reading: Reading) -> bool:
    """Whether the rule's motion, position and mode, where it names them, are those of the reading."""
    return all(
        getattr(rule, name) in getattr(reading.condition, name).lower()
        for name in ("motion", "position", "mode")
    )


def _sem(rule: ErrorRule) -> float:
    value = rule.published.number
    if rule.is_a == "sem":
        return value
    return value / (math.sqrt(2) * (_Z95 if rule.is_a == "mdc95" else _Z90))


def _shared(names: Sequence[str]) -> bool:
    cleaned = {name.strip().lower() for name in names}
    return len(cleaned) == 1 and "" not in cleaned


def _pair(same_tester: bool, same_device: bool) -> str:
    who = "same tester" if same_tester else "different or unnamed testers"
    what = "same device" if same_device else "different or unnamed devices"
    return f"{who}, {what}"
