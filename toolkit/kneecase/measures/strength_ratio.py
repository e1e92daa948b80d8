"""Hamstring-to-quadriceps ratio of each limb: only with both torques and the graft, and never scored."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from kneecase.answers import Finding
from kneecase.evidence.strength import STRENGTH_HQ_CONVENTION_COOMBS2002, STRENGTH_HQ_HANDBALL_RISBERG2018
from kneecase.evidence.strength_error import STRENGTH_HQ_ERROR_SOLE2007
from kneecase.measures.strength import hamstring_quadriceps_fraction
from kneecase.measures.torque_pairs import LimbTorque, TorquePair
from kneecase.record import Case
from kneecase.units import number_text

__all__ = ["StrengthRatio", "strength_ratios"]


@dataclass(frozen=True, kw_only=True)
class StrengthRatio(Finding):
    """One limb's ratio [fraction] with both torques; it has no verdict."""

    limb: str
    hamstring_n_m: float
    quadriceps_n_m: float


def strength_ratios(
    case: Case, quadriceps: Sequence[TorquePair], hamstring: Sequence[TorquePair]
) -> tuple[Finding, ...]:
    """The ratio of every limb whose two muscles were tested on one day in one mode at one speed."""
    return tuple(
        _ratio(case, limb, front, back, pairs)
        for pairs in ((q, h) for q in quadriceps for h in hamstring if _is_alike(q, h))
        for limb, front, back in (
            ("involved", pairs[0].involved, pairs[1].involved),
            ("uninvolved", pairs[0].uninvolved, pairs[1].uninvolved),
        )
        if front is not None and back is not None
    )


def _is_alike(quadriceps: TorquePair, hamstring: TorquePair) -> bool:
    front, back = quadriceps.condition, hamstring.condition
    return (
        quadriceps.date == hamstring.date
        and quadriceps.hand_held == hamstring.hand_held
        and bool(front.mode)
        and (front.mode, front.speed_deg_per_s) == (back.mode, back.speed_deg_per_s)
    )


def _ratio(
    case: Case, limb: str, front: LimbTorque, back: LimbTorque, pairs: tuple[TorquePair, TorquePair]
) -> Finding:
    label = f"hamstring-to-quadriceps ratio, {limb} limb, {pairs[0].condition.words()}"
    inputs = (f"quadriceps, {front.words()}", f"hamstring, {back.words()}")
    graft = case.surgery.graft
    if not graft or front.peak_n_m == 0:
        why = "the graft is not recorded" if not graft else "the quadriceps gave no torque"
        return Finding(label=label, value=None, unit="fraction", words=f"not shown: {why}", inputs=inputs)
    return StrengthRatio(
        label=label,
        value=hamstring_quadriceps_fraction(back.peak_n_m, front.peak_n_m),
        unit="fraction",
        digits=2,
        words=f"hamstring {number_text(back.peak_n_m)} against quadriceps {number_text(front.peak_n_m)} N·m, "
        f"graft: {graft}; not scored",
        inputs=(*inputs, f"graft: {graft}"),
        formula="peak hamstring torque ÷ peak quadriceps torque of the same limb, mode and speed",
        error=f"a change below {STRENGTH_HQ_ERROR_SOLE2007.quantity()} of the ratio is inside its error",
        evidence=(
            STRENGTH_HQ_ERROR_SOLE2007,
            STRENGTH_HQ_CONVENTION_COOMBS2002,
            STRENGTH_HQ_HANDBALL_RISBERG2018,
        ),
        cautions=_cautions(graft, pairs),
        limb=limb,
        hamstring_n_m=back.peak_n_m,
        quadriceps_n_m=front.peak_n_m,
    )


def _cautions(graft: str, pairs: tuple[TorquePair, TorquePair]) -> tuple[str, ...]:
    found = [
        "A high ratio after surgery is usually a weak quadriceps, not a strong hamstring; a low one after a "
        f"hamstring graft a weak hamstring (graft here: {graft})."
    ]
    front, back = (pair.condition.angle_deg for pair in pairs)
    if front != back:
        found.append("The two muscles were tested at different angles: the ratio changes with the angle.")
    return tuple(found)
