"""Torque for body mass beside published values of the same muscle, sex and mode."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass

from kneecase.answers import Finding
from kneecase.evidence import PublishedValue
from kneecase.evidence.strength import (
    STRENGTH_EXTENSION_FLEXED_FEMALE_SARABON2021,
    STRENGTH_EXTENSION_FLEXED_MALE_SARABON2021,
    STRENGTH_EXTENSION_MID_FEMALE_SARABON2021,
    STRENGTH_EXTENSION_MID_MALE_SARABON2021,
    STRENGTH_EXTENSION_TARGET_GOKELER2016,
    STRENGTH_EXTENSION_TARGET_PIETROSIMONE2016,
    STRENGTH_FLEXION_MID_MALE_SARABON2021,
    STRENGTH_MID_RANGE_OURS,
    STRENGTH_TARGET_ANGLE_PIETROSIMONE2016,
    STRENGTH_TARGET_SPEED_GOKELER2016,
)
from kneecase.measures.reliability import normal_quantile
from kneecase.measures.strength import torque_per_mass_n_m_per_kg
from kneecase.measures.threshold import is_met
from kneecase.measures.torque_pairs import LimbTorque, TorqueCondition, TorquePair
from kneecase.record import Case, precision_of
from kneecase.units import quantity_text

__all__ = ["BodyMass", "TorquePerMass", "body_mass", "torque_per_mass"]

_ISOMETRIC: dict[tuple[str, str, str], PublishedValue] = {
    ("quadriceps", "mid", "male"): STRENGTH_EXTENSION_MID_MALE_SARABON2021,
    ("quadriceps", "mid", "female"): STRENGTH_EXTENSION_MID_FEMALE_SARABON2021,
    ("quadriceps", "flexed", "male"): STRENGTH_EXTENSION_FLEXED_MALE_SARABON2021,
    ("quadriceps", "flexed", "female"): STRENGTH_EXTENSION_FLEXED_FEMALE_SARABON2021,
    ("hamstring", "mid", "male"): STRENGTH_FLEXION_MID_MALE_SARABON2021,
}
_TARGETS = (
    (STRENGTH_TARGET_ANGLE_PIETROSIMONE2016, STRENGTH_EXTENSION_TARGET_PIETROSIMONE2016),
    (STRENGTH_TARGET_SPEED_GOKELER2016, STRENGTH_EXTENSION_TARGET_GOKELER2016),
)


@dataclass(frozen=True, kw_only=True)
class BodyMass:
    """The body mass used [kg], and where in the record it stands."""

    mass_kg: float
    words: str


@dataclass(frozen=True, kw_only=True)
class TorquePerMass(Finding):
    """One limb's peak torque for body mass [N·m/kg], with its error and the references beside it."""

    measure: str
    limb: str
    condition: str
    torque_n_m: float


def body_mass(case: Case, day: dt.date) -> BodyMass | None:
    """The latest weighed mass up to ``day``, else the athlete's; ``None`` where neither is recorded."""
    weighed = [r for r in case.readings_of("body_mass", until=day) if r.value is not None]
    if weighed:
        last = weighed[-1]
        date = last.date.isoformat()
        return BodyMass(mass_kg=last.value or 0.0, words=f"weighed on {date}")
    if case.athlete.mass_kg is not None:
        return BodyMass(mass_kg=case.athlete.mass_kg, words="as given for the athlete, day not recorded")
    return None


def torque_per_mass(case: Case, pair: TorquePair, mass: BodyMass, level: float) -> tuple[TorquePerMass, ...]:
    """Both limbs' torque for body mass under one condition."""
    limbs = (pair.involved, pair.uninvolved)
    return tuple(_row(case, pair, limb, mass, level) for limb in limbs if limb is not None)


def _row(case: Case, pair: TorquePair, limb: LimbTorque, mass: BodyMass, level: float) -> TorquePerMass:
    muscle = pair.measure.split("_")[0]
    value = torque_per_mass_n_m_per_kg(limb.peak_n_m, mass.mass_kg)
    beside = _references(muscle, case.athlete.sex, pair.condition)
    low, high, error, published = _band(pair, limb, mass, level)
    return TorquePerMass(
        label=f"{muscle} torque for body mass, {limb.limb} limb, {pair.condition.words()}",
        value=value,
        unit="n_m_per_kg",
        low=low,
        high=high,
        level=level if low is not None else None,
        digits=2,
        words=_words(value, beside, case.athlete.sex),
        inputs=(limb.words(), f"body mass {quantity_text(mass.mass_kg, 'kg')}, {mass.words}"),
        formula="peak torque ÷ body mass",
        error=error,
        evidence=(*published, *beside),
        cautions=tuple(ref.caution for ref in beside if ref.caution),
        measure=pair.measure,
        limb=limb.limb,
        condition=pair.condition.words(),
        torque_n_m=limb.peak_n_m,
    )


def _band(
    pair: TorquePair, limb: LimbTorque, mass: BodyMass, level: float
) -> tuple[float | None, float | None, str, tuple[PublishedValue, ...]]:
    """The band from the relative error of one torque; body mass is taken as known."""
    precision = precision_of(pair.measure, limb.readings)
    if precision is None:
        return None, None, "none published that fits these readings", ()
    half = normal_quantile(level) * precision.sem_at(limb.peak_n_m)
    low, high = limb.peak_n_m - half, limb.peak_n_m + half
    words = f"{precision.words()}; body mass taken as known"
    return (
        torque_per_mass_n_m_per_kg(low, mass.mass_kg),
        torque_per_mass_n_m_per_kg(high, mass.mass_kg),
        words,
        (precision.published,),
    )


def _references(muscle: str, sex: str, condition: TorqueCondition) -> tuple[PublishedValue, ...]:
    """What is published for this muscle, sex and mode; nothing is borrowed from another mode or sex."""
    found: tuple[PublishedValue, ...] = ()
    if condition.mode == "isometric" and condition.angle_deg is not None:
        interval = _ISOMETRIC.get((muscle, _angle_range(condition.angle_deg), sex))
        found += (interval, STRENGTH_MID_RANGE_OURS) if interval else ()
    for where, target in _TARGETS:
        if muscle == "quadriceps" and _is_at(condition, where):
            found += (target,)
    return found


def _is_at(condition: TorqueCondition, where: PublishedValue) -> bool:
    """Whether a torque was taken at the angle or speed a target was published for."""
    if where.unit == "deg":
        return condition.mode == "isometric" and condition.angle_deg == where.value
    return condition.mode == "concentric" and condition.speed_deg_per_s == where.value


def _angle_range(angle_deg: float) -> str:
    middle = STRENGTH_MID_RANGE_OURS
    if middle.low is None or middle.high is None or angle_deg < middle.low:
        return "extended"
    return "mid" if angle_deg < middle.high else "flexed"


def _words(value: float, beside: tuple[PublishedValue, ...], sex: str) -> str:
    parts = [_place(value, ref) for ref in beside if ref is not STRENGTH_MID_RANGE_OURS]
    if not parts:
        why = "" if sex in ("male", "female") else " (sex not recorded as male or female)"
        return f"no published value for this muscle, mode, angle or speed{why}"
    return "; ".join(parts)


def _place(value: float, ref: PublishedValue) -> str:
    """Where the value lies against one published value, in words."""
    if ref.low is not None and ref.high is not None:
        where = "below" if value < ref.low else "above" if value > ref.high else "inside"
        return f"{where} {ref.quantity()}, {ref.definition}"
    where = "reaches" if is_met(value, ref.number, ref.operator or "≥") else "short of"
    return f"{where} {ref.quantity()}, {ref.definition}"
