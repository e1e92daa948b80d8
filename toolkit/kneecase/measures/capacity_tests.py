"""One test of the operated limb now held against the other limb before surgery."""

from __future__ import annotations

import datetime as dt
from collections.abc import Sequence
from dataclasses import dataclass, replace

from kneecase.answers import Finding
from kneecase.evidence import PublishedValue
from kneecase.evidence.other_limb import (
    OTHER_LIMB_CAPACITY_PASS_WELLSANDT2017,
    OTHER_LIMB_CAPACITY_SENSITIVITY_WELLSANDT2017,
    OTHER_LIMB_LSI_ONLY_WELLSANDT2017,
    OTHER_LIMB_LSI_PASS_WELLSANDT2017,
)
from kneecase.measures.accepted import Quantity
from kneecase.measures.comparable import (
    ConditionKey,
    DayScore,
    Statistic,
    by_condition,
    condition_words,
    day_scores,
)
from kneecase.measures.hop_administration import DEFAULT_ADMINISTRATION, HOP_ADMINISTRATIONS
from kneecase.measures.hop_trials import Better, better_way
from kneecase.measures.index_error import SymmetryError, index_error
from kneecase.measures.reference_limb import ReferenceLimb, reference_limb
from kneecase.measures.symmetry import limb_symmetry_index
from kneecase.measures.symmetry_verdict import SymmetryThreshold, SymmetryVerdict, symmetry_verdict
from kneecase.measures.torque_pairs import condition_of
from kneecase.record import Case, Measure, Reading
from kneecase.units import number_text

__all__ = ["CapacityTest", "capacity_test", "preoperative_capacity_pct"]

_PUBLISHED: tuple[PublishedValue, ...] = (
    OTHER_LIMB_LSI_PASS_WELLSANDT2017,
    OTHER_LIMB_CAPACITY_PASS_WELLSANDT2017,
    OTHER_LIMB_LSI_ONLY_WELLSANDT2017,
    OTHER_LIMB_CAPACITY_SENSITIVITY_WELLSANDT2017,
)

_FORMULA = {
    "higher": "100 × involved now ÷ uninvolved before surgery",
    "lower": "100 × uninvolved before surgery ÷ involved now: less time is better",
}


def preoperative_capacity_pct(
    involved_now: Quantity, uninvolved_before: Quantity, better: Better = "higher"
) -> Quantity:
    """Operated limb now in percent of the other limb before surgery [%].

    Looked at beside the plain index, because the other limb weakens too and flatters the index.

    Formula: ``100 * involved_now / uninvolved_before``, turned over where less is better (time).

    Parameters
    ----------
    involved_now : float or array of float
        Score of the operated limb today [any one unit].
    uninvolved_before : float or array of float
        Score of the other limb before surgery, tested the same way [the same unit].
    better : {"higher", "lower"}
        Which way is better.

    Returns
    -------
    float or array of float
        Capacity regained [%], unrounded.

    Raises
    ------
    InputError
        If a score is missing or negative, or the divisor is zero.

    References
    ----------
    wellsandt-2017

    Examples
    --------
    >>> preoperative_capacity_pct(144.0, 180.0)
    80.0
    """
    return limb_symmetry_index(involved_now, uninvolved_before, better)


@dataclass(frozen=True, kw_only=True)
class CapacityTest(Finding):
    """One test under one condition; ``value`` is the capacity regained [%], ``lsi_pct`` the plain index."""

    measure: str
    condition: str
    involved_now: DayScore
    uninvolved_before: DayScore | None
    uninvolved_now: DayScore | None
    lsi_pct: float | None
    threshold_pct: float
    operator: str
    sem_points: float | None = None
    chance: float | None = None
    passes_as_observed: bool | None = None


def capacity_test(
    case: Case,
    measure: Measure,
    key: ConditionKey,
    rows: Sequence[Reading],
    threshold: SymmetryThreshold,
    level: float,
) -> CapacityTest:
    """The row of one test and condition; ``rows`` are the operated limb's scored readings since surgery."""
    statistic = _statistic(measure, key)
    now = day_scores(rows, statistic)[-1]
    other = by_condition(case.readings_of(measure.id, side=case.uninvolved)).get(key, ())
    before = day_scores([r for r in other if r.date < case.surgery.date], statistic)
    today = day_scores([r for r in other if r.date == now.date], statistic)
    scores = _Scores(now=now, before=before[-1] if before else None, today=today[-1] if today else None)
    return _row(case, measure, condition_words(measure.id, key), scores, threshold, level)


def _statistic(measure: Measure, key: ConditionKey) -> Statistic:
    """The peak for a torque; for a hop what its way of giving the test says, else the mean."""
    if measure.group != "hop":
        return "best"
    named = HOP_ADMINISTRATIONS.get(str(key[0]) or DEFAULT_ADMINISTRATION)
    return named.statistic if named is not None and named.statistic is not None else "mean"


@dataclass(frozen=True, kw_only=True)
class _Scores:
    now: DayScore
    before: DayScore | None
    today: DayScore | None


def _row(
    case: Case,
    measure: Measure,
    condition: str,
    scores: _Scores,
    threshold: SymmetryThreshold,
    level: float,
) -> CapacityTest:
    better, now, before = better_way(measure), scores.now, scores.before
    unknown = _why_unknown(measure, now, before)
    value, error, judged = None, None, None
    if before is not None and not unknown:
        value = preoperative_capacity_pct(now.value, before.value, better)
        error = index_error(measure.id, now.value, before.value, [*now.readings, *before.readings])
        reference = _limb_before_surgery(case, measure, before.date)
        judged = _judged(value, error, reference, threshold, level)
    lsi_pct = _plain_index(scores, better)
    return CapacityTest(
        label=measure.label + (f", {condition}" if condition else ""),
        value=value,
        unit="pct",
        low=judged.low if judged else None,
        high=judged.high if judged else None,
        level=level,
        words=f"{judged.words if judged else unknown}; {_index_words(lsi_pct)}",
        verdict=judged.verdict if judged else "unknown",
        inputs=_inputs(scores),
        formula=_FORMULA[better],
        error=f"{error.words}; a floor, since no error of this percentage is published"
        if error
        else "unknown",
        evidence=_evidence(error, threshold) if judged else (),
        cautions=judged.cautions if judged else (),
        measure=measure.id,
        condition=condition,
        involved_now=now,
        uninvolved_before=before,
        uninvolved_now=scores.today,
        lsi_pct=lsi_pct,
        threshold_pct=threshold.pct,
        operator=threshold.operator,
        sem_points=error.sem_points if error else None,
        chance=judged.chance if judged else None,
        passes_as_observed=judged.passes_as_observed if judged else None,
    )


def _judged(
    value: float,
    error: SymmetryError | None,
    reference: ReferenceLimb,
    threshold: SymmetryThreshold,
    level: float,
) -> SymmetryVerdict:
    sem = error.sem_points if error else None
    return symmetry_verdict(value, sem_points=sem, threshold=threshold, reference=reference, level=level)


def _why_unknown(measure: Measure, now: DayScore, before: DayScore | None) -> str:
    if before is None:
        return "unknown: no value of the other limb from before surgery, tested the same way, is recorded"
    lacking = condition_of(now.readings[0]).lacking if measure.group == "strength" else ""
    if lacking:
        return f"unknown: the {lacking} is not recorded, and torques of another {lacking} are not comparable"
    divisor = now if measure.better == "lower" else before
    return "unknown: nothing can be held against zero" if divisor.value == 0 else ""


def _limb_before_surgery(case: Case, measure: Measure, day: dt.date) -> ReferenceLimb:
    """Whether the other limb could serve as it was then: a graft had not yet been taken from it."""
    untouched = replace(case.surgery, harvest_side=case.involved)
    return reference_limb(replace(case, surgery=untouched), measure.id, day)


def _plain_index(scores: _Scores, better: Better) -> float | None:
    today = scores.today
    if today is None or 0 in (today.value, scores.now.value):
        return None
    return limb_symmetry_index(scores.now.value, today.value, better)


def _index_words(lsi_pct: float | None) -> str:
    if lsi_pct is None:
        return "plain index of the day unknown"
    return f"plain index of the day {number_text(lsi_pct)} %"


def _inputs(scores: _Scores) -> tuple[str, ...]:
    found = [f"involved limb now: {scores.now.words()}"]
    if scores.before is not None:
        found.append(f"other limb before surgery: {scores.before.words()}")
    if scores.today is not None:
        found.append(f"other limb now: {scores.today.words()}")
    return tuple(found)


def _evidence(error: SymmetryError | None, threshold: SymmetryThreshold) -> tuple[PublishedValue, ...]:
    found = (error.published,) if error else ()
    return (*found, *((threshold.published,) if threshold.published else ()), *_PUBLISHED)
