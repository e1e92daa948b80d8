"""How far each limb hops, relative to the athlete's own size: what a ratio of two limbs cannot show."""

from __future__ import annotations

from dataclasses import dataclass

from kneecase.answers import Finding
from kneecase.evidence import PublishedValue
from kneecase.evidence.hop_norms import (
    HOPS_SINGLE_PCT_HEIGHT_FEMALE_FIVECRITERIA2021,
    HOPS_SINGLE_PCT_HEIGHT_HEIGHTRETURN2021,
    HOPS_SINGLE_PCT_HEIGHT_MALE_FIVECRITERIA2021,
    HOPS_SINGLE_PCT_LIMB_FEMALE_HIGHSCHOOL2018,
    HOPS_SINGLE_PCT_LIMB_MALE_HIGHSCHOOL2018,
)
from kneecase.measures.accepted import Quantity, accepted
from kneecase.measures.hop_tests import HopTest
from kneecase.measures.hop_trials import LimbTrials
from kneecase.record import Case
from kneecase.units import number_text, quantity_text

__all__ = ["HopDistance", "hop_distance_pct", "hop_distances"]

_PREFIX = "single hop for distance in percent of "
_DISTANCE_TESTS = ("single_hop", "triple_hop", "crossover_hop", "medial_triple_hop")
_TARGETS = {
    "male": (HOPS_SINGLE_PCT_HEIGHT_MALE_FIVECRITERIA2021,),
    "female": (HOPS_SINGLE_PCT_HEIGHT_FEMALE_FIVECRITERIA2021,),
}
_NORMS = {
    "male": (HOPS_SINGLE_PCT_LIMB_MALE_HIGHSCHOOL2018,),
    "female": (HOPS_SINGLE_PCT_LIMB_FEMALE_HIGHSCHOOL2018,),
}


def hop_distance_pct(distance_cm: Quantity, *, body_length_cm: Quantity) -> Quantity:
    """Hop distance in percent of the athlete's height or limb length [%].

    Looked at beside the symmetry index, which is also good when both limbs are weak.

    Formula: ``100 * distance_cm / body_length_cm``.

    Parameters
    ----------
    distance_cm : float or array of float
        Distance hopped [cm].
    body_length_cm : float or array of float
        Height, or length of the hopping limb [cm].

    Returns
    -------
    float or array of float
        Distance relative to the length [%].

    Raises
    ------
    InputError
        If the distance is missing or negative, or the length not above zero.

    References
    ----------
    five-criteria-2021, high-school-hop-2018

    Examples
    --------
    >>> round(hop_distance_pct(136.8, body_length_cm=171.0), 1)
    80.0
    """
    cure = "Is it in metres? Write centimetres."
    distance = accepted("distance_cm", distance_cm, "cm", low=0.0, cure=cure)
    return 100.0 * distance / accepted("body_length_cm", body_length_cm, "cm", above=0.0, cure=cure)


@dataclass(frozen=True, kw_only=True)
class HopDistance(Finding):
    """One limb's distance in one test; ``value`` is in percent of height, or in cm without a height.

    ``distance_cm`` is the limb's score; ``limb_length_pct`` is in percent of that limb's own length.
    """

    measure: str
    limb: str
    distance_cm: float
    height_pct: float | None
    limb_length_pct: float | None


def hop_distances(case: Case, tests: tuple[HopTest, ...]) -> tuple[HopDistance, ...]:
    """Both limbs' distances of every distance test that has a score, relative to height and limb length."""
    return tuple(
        _distance(case, test, limb, limb.value)
        for test in tests
        if test.measure in _DISTANCE_TESTS
        for limb in (test.involved, test.uninvolved)
        if limb.value is not None
    )


def _distance(case: Case, test: HopTest, limb: LimbTrials, distance_cm: float) -> HopDistance:
    height_cm, length_cm = case.athlete.height_cm, case.athlete.limb_length_cm.get(limb.side)
    height_pct = None if height_cm is None else hop_distance_pct(distance_cm, body_length_cm=height_cm)
    length_pct = None if length_cm is None else hop_distance_pct(distance_cm, body_length_cm=length_cm)
    norms = _norms(case.athlete.sex, height_pct, length_pct) if test.measure == "single_hop" else ()
    return HopDistance(
        label=f"{test.label}, {limb.limb} limb{'' if height_pct is None else ', of height'}",
        value=distance_cm if height_pct is None else height_pct,
        unit="cm" if height_pct is None else "pct",
        words=_words(distance_cm, height_pct, length_pct, norms, test.measure),
        inputs=(
            limb.words(),
            f"height {'not recorded' if height_cm is None else quantity_text(height_cm, 'cm')}",
            f"length of the {limb.side} limb "
            f"{'not recorded' if length_cm is None else quantity_text(length_cm, 'cm')}",
        ),
        formula="100 × distance ÷ height; 100 × distance ÷ length of the hopping limb",
        error="not propagated here; the symmetry index of this test carries the error of its scores",
        evidence=norms,
        measure=test.measure,
        limb=limb.limb,
        distance_cm=distance_cm,
        height_pct=height_pct,
        limb_length_pct=length_pct,
    )


def _norms(sex: str, height_pct: float | None, length_pct: float | None) -> tuple[PublishedValue, ...]:
    """The published values to hold beside a single hop; without a recorded sex none is chosen."""
    found: tuple[PublishedValue, ...] = ()
    if height_pct is not None:
        found += (*_TARGETS.get(sex, ()), HOPS_SINGLE_PCT_HEIGHT_HEIGHTRETURN2021)
    if length_pct is not None:
        found += _NORMS.get(sex, ())
    return found


def _words(
    distance_cm: float,
    height_pct: float | None,
    length_pct: float | None,
    norms: tuple[PublishedValue, ...],
    measure: str,
) -> str:
    parts = [quantity_text(distance_cm, "cm")]
    if height_pct is None:
        parts.append("height not recorded, so not relative to it")
    if length_pct is not None:
        parts.append(f"{number_text(length_pct)} % of limb length")
    if norms:
        beside = "; ".join(f"{value.definition.removeprefix(_PREFIX)}: {value.quantity()}" for value in norms)
        parts.append(f"beside it, as reference and not as a gate: {beside}")
    elif measure == "single_hop":
        parts.append("no reference chosen: sex or size is not recorded")
    else:
        parts.append("no reference by size was read for this test")
    return "; ".join(parts)
