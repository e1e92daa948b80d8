"""The operated limb beside the other one: two scores of one measure that may be compared."""

from __future__ import annotations

import datetime as dt
from collections.abc import Sequence
from dataclasses import dataclass

from kneecase.measures.comparable import (
    ConditionKey,
    DayScore,
    Statistic,
    by_condition,
    condition_words,
    day_scores,
)
from kneecase.record import Case, Reading, measure_named

__all__ = ["LimbPair", "limb_pairs"]

_GAPS = {
    "motion": "it does not say whether the reading was active or passive",
    "position": "position of one of the two was not recorded",
}


@dataclass(frozen=True, kw_only=True)
class LimbPair:
    """One measure under one condition: the operated limb's latest score and the other limb's beside it.

    ``uninvolved`` is ``None`` where no comparable score of the other limb exists.  ``note`` says in words
    what the reader must know about the comparison, and is empty when both were taken on the same day under
    the same condition.
    """

    measure: str
    key: ConditionKey
    involved: DayScore
    uninvolved: DayScore | None
    note: str = ""

    @property
    def condition(self) -> str:
        """The condition in words; empty where none was recorded."""
        return condition_words(self.measure, self.key)

    @property
    def readings(self) -> tuple[Reading, ...]:
        """The readings of both limbs."""
        return self.involved.readings + (() if self.uninvolved is None else self.uninvolved.readings)


def limb_pairs(
    case: Case, measure: str, *, statistic: Statistic = "mean", same_day: bool = True
) -> tuple[LimbPair, ...]:
    """The latest pair of limb scores of ``measure`` under each condition, in order of first appearance.

    With ``same_day`` both limbs must have been tested on one day under one condition.  Without it, for a
    quantity that does not change from day to day in a healthy limb, such as its motion, another day of the
    other limb may serve, before surgery too, and what it lacks in description is said in ``note``.
    """
    own = by_condition(r for r in case.readings_of(measure, side=case.involved) if _counts(case, r))
    other = case.readings_of(measure, side=case.uninvolved)
    pairs = []
    for key, rows in own.items():
        latest = day_scores(rows, statistic)[-1]
        if same_day:
            matching = by_condition(r for r in other if r.date == latest.date).get(key, ())
            found, note = _first(day_scores(matching, statistic)), ""
        else:
            found, note = _nearest(case, measure, key, latest.date, other)
        pairs.append(LimbPair(measure=measure, key=key, involved=latest, uninvolved=found, note=note))
    return tuple(pairs)


def _counts(case: Case, reading: Reading) -> bool:
    return reading.date >= case.surgery.date


def _first(scores: Sequence[DayScore]) -> DayScore | None:
    return scores[0] if scores else None


def _nearest(
    case: Case, measure: str, key: ConditionKey, day: dt.date, other: Sequence[Reading]
) -> tuple[DayScore | None, str]:
    """The other limb's score nearest in time that may serve, the same condition first."""
    candidates = []
    for other_key, rows in by_condition(other).items():
        for score in day_scores(rows):
            gap = _differs(measure, key, other_key, before_surgery=score.date < case.surgery.date)
            if gap is not None:
                candidates.append((len(gap), abs((score.date - day).days), score.date > day, score, gap))
    if not candidates:
        return None, ""
    *_, score, gap = min(candidates, key=lambda candidate: candidate[:3])
    notes = [_GAPS[name] for name in gap if name in _GAPS]
    if score.date < case.surgery.date:
        notes.insert(0, f"the other knee is the pre-operative reference of {score.date.isoformat()}")
    elif score.date != day:
        notes.insert(0, f"the other knee was measured on {score.date.isoformat()}, not on the same day")
    return score, "; ".join(notes)


def _differs(
    measure: str, key: ConditionKey, other_key: ConditionKey, *, before_surgery: bool
) -> tuple[str, ...] | None:
    """Fields that only one of the two readings describes; ``None`` where the two must not be paired."""
    gap = []
    for name, own, other in zip(measure_named(measure).must_match, key, other_key, strict=True):
        if own == other:
            continue
        one_is_blank = not own or not other
        may = {
            "motion": before_surgery and not other,
            "timing": before_surgery or one_is_blank,
            "position": one_is_blank,
        }
        if may.get(name, False):
            gap.append(name)
        else:
            return None
    return tuple(gap)
