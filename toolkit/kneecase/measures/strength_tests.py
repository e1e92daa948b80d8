"""One strength test as a row: both torques, the index, its error and its verdict."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass

from kneecase.answers import Finding
from kneecase.evidence import PublishedValue
from kneecase.evidence.strength_error import (
    STRENGTH_HAND_HELD_KAPPA90_SINACORE2017,
    STRENGTH_HAND_HELD_SENSITIVITY_HANDHELD2018,
    STRENGTH_HAND_HELD_SPECIFICITY_HANDHELD2018,
)
from kneecase.measures.index_error import SymmetryError, index_error
from kneecase.measures.reference_limb import ReferenceLimb
from kneecase.measures.strength import quadriceps_index_pct
from kneecase.measures.symmetry_verdict import SymmetryThreshold, SymmetryVerdict, symmetry_verdict
from kneecase.measures.torque_pairs import TorquePair
from kneecase.units import number_text

__all__ = ["StrengthTest", "strength_test"]

_HAND_HELD = (
    STRENGTH_HAND_HELD_SENSITIVITY_HANDHELD2018,
    STRENGTH_HAND_HELD_SPECIFICITY_HANDHELD2018,
    STRENGTH_HAND_HELD_KAPPA90_SINACORE2017,
)


@dataclass(frozen=True, kw_only=True)
class StrengthTest(Finding):
    """One muscle under one condition of one day; ``value`` is the index of the peaks [%], unrounded.

    Error, chance, observed decision and verdict as in a hop test.  ``hand_held`` says that the torque was
    made from a force: such a pass is weak evidence, such a fail is strong.
    """

    measure: str
    muscle: str
    condition: str
    date: dt.date
    involved_n_m: float | None
    uninvolved_n_m: float | None
    hand_held: bool
    threshold_pct: float
    operator: str
    reference: ReferenceLimb
    sem_points: float | None = None
    chance: float | None = None
    passes_as_observed: bool | None = None
    too_close: bool = False

    @property
    def lsi_pct(self) -> float | None:
        """The index [%], unrounded; ``None`` when it cannot be known."""
        return self.value


def strength_test(
    pair: TorquePair, *, reference: ReferenceLimb, threshold: SymmetryThreshold, level: float
) -> StrengthTest:
    """The row of one pair of torques."""
    muscle = pair.measure.split("_")[0]
    index, unknown = _index(pair)
    error = _error(pair) if index is not None else None
    judged = None if index is None else _judged(index, error, threshold, reference, level)
    how = "hand-held, " if pair.hand_held else ""
    return StrengthTest(
        label=f"{muscle} index, {how}{pair.condition.words()}",
        value=index,
        unit="pct",
        low=judged.low if judged else None,
        high=judged.high if judged else None,
        level=level,
        words=_words(judged, pair) if judged else unknown,
        verdict=judged.verdict if judged else "unknown",
        inputs=(f"date {pair.date.isoformat()}", *_limb_words(pair)),
        formula="100 × peak torque involved ÷ peak torque uninvolved, same mode, angle and speed",
        error=error.words if error else "none published that fits these readings",
        evidence=_evidence(pair, error, threshold) if judged else (),
        cautions=(*judged.cautions, *_line_cautions(muscle, threshold)) if judged else (),
        measure=pair.measure,
        muscle=muscle,
        condition=pair.condition.words(),
        date=pair.date,
        involved_n_m=pair.involved.peak_n_m if pair.involved else None,
        uninvolved_n_m=pair.uninvolved.peak_n_m if pair.uninvolved else None,
        hand_held=pair.hand_held,
        threshold_pct=threshold.pct,
        operator=threshold.operator,
        reference=reference,
        sem_points=error.sem_points if error else None,
        chance=judged.chance if judged else None,
        passes_as_observed=judged.passes_as_observed if judged else None,
        too_close=judged.too_close if judged else False,
    )


def _line_cautions(muscle: str, threshold: SymmetryThreshold) -> tuple[str, ...]:
    if muscle == "quadriceps" or threshold.published is None:
        return ()
    return ("the line was published for the quadriceps and for hops; holding the hamstrings to it is ours",)


def _index(pair: TorquePair) -> tuple[float | None, str]:
    """The index, or why there is none."""
    involved, uninvolved = pair.involved, pair.uninvolved
    if involved is None or uninvolved is None:
        limb = "involved" if involved is None else "uninvolved"
        return None, f"no index: the {limb} limb was not tested so on {pair.date.isoformat()}"
    if pair.condition.lacking:
        return None, (
            f"no index: the {pair.condition.lacking} is not recorded, and torques of another "
            f"{pair.condition.lacking} are not comparable"
        )
    if uninvolved.peak_n_m == 0:
        return None, "no index: the uninvolved limb gave no torque, and nothing can be held against zero"
    return quadriceps_index_pct(involved.peak_n_m, uninvolved.peak_n_m), ""


def _error(pair: TorquePair) -> SymmetryError | None:
    if pair.involved is None or pair.uninvolved is None:
        return None
    return index_error(pair.measure, pair.involved.peak_n_m, pair.uninvolved.peak_n_m, pair.readings)


def _judged(
    index: float,
    error: SymmetryError | None,
    threshold: SymmetryThreshold,
    reference: ReferenceLimb,
    level: float,
) -> SymmetryVerdict:
    sem = error.sem_points if error else None
    return symmetry_verdict(index, sem_points=sem, threshold=threshold, reference=reference, level=level)


def _words(judged: SymmetryVerdict, pair: TorquePair) -> str:
    if not pair.hand_held:
        return judged.words
    if not judged.passes_as_observed:
        return f"{judged.words}; a hand-held fail is strong evidence of a deficit"
    found = STRENGTH_HAND_HELD_SENSITIVITY_HANDHELD2018
    missed = number_text(100 - found.number, 0)
    return (
        f"{judged.words}; a hand-held pass is weak evidence: the device misses {missed} % of deficits above "
        "10 %"
    )


def _limb_words(pair: TorquePair) -> tuple[str, ...]:
    return tuple(limb.words() for limb in (pair.involved, pair.uninvolved) if limb is not None)


def _evidence(
    pair: TorquePair, error: SymmetryError | None, threshold: SymmetryThreshold
) -> tuple[PublishedValue, ...]:
    found: tuple[PublishedValue, ...] = (error.published,) if error else ()
    found += (threshold.published,) if threshold.published else ()
    return found + (_HAND_HELD if pair.hand_held else ())
