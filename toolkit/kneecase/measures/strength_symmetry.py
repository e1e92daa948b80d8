"""Strength: index of each muscle and condition, torque for body mass, and the ratio of the two muscles."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass

from kneecase.answers import Answer, Finding, LeftOut
from kneecase.measures.comparable import is_scored, not_scored
from kneecase.measures.reference_limb import reference_limb
from kneecase.measures.reliability import normal_quantile
from kneecase.measures.strength_norms import TorquePerMass, body_mass, torque_per_mass
from kneecase.measures.strength_ratio import strength_ratios
from kneecase.measures.strength_tests import StrengthTest, strength_test
from kneecase.measures.symmetry_verdict import SymmetryThreshold, chosen_threshold
from kneecase.measures.torque_pairs import TorquePair, torque_pairs
from kneecase.record import MEASURES, Case, Reading, banner_of

__all__ = ["StrengthSymmetry", "strength_symmetry"]

_MEASURES = tuple(measure.id for measure in MEASURES.values() if measure.group == "strength")


@dataclass(frozen=True, kw_only=True)
class StrengthSymmetry(Answer):
    """Every strength test on record up to the day, one row a muscle and condition.

    ``tests`` are the indices, ``per_mass`` each limb's torque for body mass, ``ratios`` the
    hamstring-to-quadriceps ratios, which are never scored.
    """

    tests: tuple[StrengthTest, ...]
    per_mass: tuple[TorquePerMass, ...]
    ratios: tuple[Finding, ...]


def strength_symmetry(
    case: Case,
    on: dt.date | None = None,
    *,
    threshold_pct: float | None = None,
    operator: str | None = None,
    level: float = 0.90,
) -> StrengthSymmetry:
    """Strength of both limbs: quadriceps and hamstring index [%], torque for body mass, ratio.

    Looked at before running, hopping and sport: the quadriceps usually lags behind every hop.

    Formula: ``100 * peak involved / peak uninvolved`` under one mode, angle and speed of one day; a
    hand-held force becomes a torque by its lever arm first.

    Parameters
    ----------
    case : Case
        The recorded case.
    on : datetime.date, optional
        The day looked at; default the last recorded date.
    threshold_pct : float, optional
        Index to reach [%]; default that of Grindem 2020.
    operator : {"≥", ">"}, optional
        Whether the line itself passes; default ≥ as in Grindem 2020.
    level : float
        Level of the bands [fraction].

    Returns
    -------
    StrengthSymmetry
        One row for each muscle and condition, torques for body mass, and ratios.

    Raises
    ------
    InputError
        If an argument is not one of its choices.

    Notes
    -----
    The peak is the best scored trial. Torques of another mode, angle or speed are never compared; where
    one of these is not recorded there is no index. Body mass is the latest weighed, else the athlete's.

    References
    ----------
    grindem-2020, sarabon-2021
    """
    normal_quantile(level)  # refuses a level outside 0 to 1
    day = on or case.last_date
    known = case.as_of(day)
    threshold = chosen_threshold(threshold_pct, operator)
    pairs = {name: torque_pairs(known, name) for name in _MEASURES}
    every = [pair for name in _MEASURES for pair in pairs[name]]
    tests = tuple(
        strength_test(
            pair,
            reference=reference_limb(known, pair.measure, pair.date),
            threshold=threshold,
            level=level,
        )
        for pair in every
    )
    mass = body_mass(known, day)
    per_mass = tuple(row for pair in every if mass for row in torque_per_mass(known, pair, mass, level))
    ratios = (
        *strength_ratios(known, pairs["quadriceps_torque"], pairs["hamstring_torque"]),
        *strength_ratios(known, pairs["quadriceps_force"], pairs["hamstring_force"]),
    )
    return StrengthSymmetry(
        heading="Strength of both limbs",
        banner=banner_of(case, day),
        summary=_summary(tests, threshold),
        findings=(*tests, *per_mass, *ratios),
        used=tuple(dict.fromkeys(r for pair in every for r in pair.readings)),
        left_out=_left_out(known, every),
        cautions=_cautions(known, tests, weighed=mass is not None),
        tests=tests,
        per_mass=per_mass,
        ratios=ratios,
    )


def _left_out(case: Case, pairs: list[TorquePair]) -> tuple[LeftOut, ...]:
    used = {reading.id for pair in pairs for reading in pair.readings}
    out: list[LeftOut] = []
    for name in _MEASURES:
        readings = case.readings_of(name)
        out += not_scored(readings)
        out += [
            LeftOut(reading=r, reason=_why_out(case, r))
            for r in readings
            if is_scored(r) and r.id not in used
        ]
    return tuple(out)


def _why_out(case: Case, reading: Reading) -> str:
    if reading.date < case.surgery.date:
        return "before surgery: a reference for later, not part of today's index"
    if reading.unit == "n" and reading.condition.lever_arm_m is None:
        return "the lever arm is not recorded, so the force cannot become a torque"
    return "another day than the latest under this mode, angle and speed: days are not mixed"


def _summary(tests: tuple[StrengthTest, ...], threshold: SymmetryThreshold) -> str:
    if not tests:
        return "No strength test since surgery is recorded."
    told = "; ".join(f"{t.label}: {t.quantity()}, {t.verdict}" for t in tests)
    return f"Held against {threshold.words()}: {told}."


def _cautions(case: Case, tests: tuple[StrengthTest, ...], *, weighed: bool) -> tuple[str, ...]:
    found: list[str] = []
    if not tests:
        found.append("Nothing is known about strength; nothing recorded never passes.")
    if tests and not weighed:
        found.append("No body mass is recorded, so no torque is shown for body mass.")
    if tests and case.athlete.sex not in ("male", "female"):
        found.append("Sex is not recorded as male or female, so no interval by sex is chosen.")
    found += [
        f"{words[:1].upper()}{words[1:]}."
        for words in dict.fromkeys(t.reference.words() for t in tests if not t.reference.trustworthy)
    ]
    found += [
        "Isometric and isokinetic results are not interchangeable. Pain at the graft's site or the front of "
        "the knee, and effusion, hold torque back: note them.",
        "How early and how hard open-chain strength may be tested after this graft is the surgeon's order.",
        "Enough strength is one of several things that are needed, and is not permission to return: the "
        "treating team decides.",
    ]
    return tuple(found)
