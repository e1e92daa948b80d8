"""What is unlikely or uneven about the trials of a hop test: kept, counted, and said aloud."""

from __future__ import annotations

from kneecase.measures.hop_administration import HOP_ADMINISTRATIONS
from kneecase.measures.hop_trials import LimbTrials
from kneecase.record import Measure
from kneecase.units import number_text, quantity_text

__all__ = ["trial_cautions"]


def trial_cautions(about: Measure, way: str, involved: LimbTrials, uninvolved: LimbTrials) -> tuple[str, ...]:
    """Cautions about the trials: unlikely values, wide spread, lost landings, counts that do not fit."""
    limbs = (involved, uninvolved)
    found = [text for limb in limbs for text in (*_unlikely(about, limb), *_wide(limb))]
    found += _counts(way, involved, uninvolved)
    lost = sum(limb.lost for limb in limbs)
    if lost:
        found.append(
            f"{lost} lost landing{'' if lost == 1 else 's'} (involved {involved.lost}, uninvolved "
            f"{uninvolved.lost}): not scored, and itself a sign of landing control."
        )
    if "stopwatch" in " ".join(r.device.lower() for limb in limbs for r in limb.scored_readings):
        found.append("Timed by stopwatch: differences between sides are often inside the error of timing.")
    if about.id == "vertical_hop":
        found.append("A height from flight time grows when the athlete lands with bent knees.")
    if about.id == "side_hop_10_timed":
        found.append("This test is learned over several sessions: an early result is not yet stable.")
    return tuple(found)


def _unlikely(about: Measure, limb: LimbTrials) -> list[str]:
    low, high = about.plausible
    return [
        f"{quantity_text(value, limb.unit, 2)} on the {limb.side} limb is unlikely (usual "
        f"{number_text(low)} to {quantity_text(high, limb.unit)}): was another unit meant?"
        for value in limb.scored
        if not low <= value <= high
    ]


def _wide(limb: LimbTrials) -> list[str]:
    if limb.spread is None or not limb.value or 10 * limb.spread <= limb.value:
        return []
    return [
        f"The {limb.side} limb's trials lie {quantity_text(limb.spread, limb.unit, 2)} apart, more than a "
        "tenth of the score: still learning, tired or uneven; more trials would settle it."
    ]


def _counts(way: str, involved: LimbTrials, uninvolved: LimbTrials) -> list[str]:
    here, there = len(involved.scored), len(uninvolved.scored)
    found = []
    if here != there and here and there:
        found.append(
            f"{here} scored trials on the involved and {there} on the uninvolved limb: the limb with more "
            "trials has more chances of a best one."
        )
    named = HOP_ADMINISTRATIONS.get(way)
    if named is not None and named.scored is not None:
        wanted = named.scored.number
        if any(count and count != wanted for count in (here, there)):
            found.append(
                f"{named.id} scores {number_text(wanted)} trials on each limb; here {here} and {there} were."
            )
    return found
