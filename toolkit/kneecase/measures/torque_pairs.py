"""Peak torque of both limbs under one condition of one day, measured or made from a hand-held force."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable
from dataclasses import dataclass

from kneecase.measures.comparable import is_scored
from kneecase.measures.strength import torque_n_m
from kneecase.record import Case, Reading, Side
from kneecase.units import number_text, quantity_text

__all__ = [
    "LimbTorque",
    "TorqueCondition",
    "TorquePair",
    "condition_of",
    "limb_torque",
    "torque_pairs",
]


@dataclass(frozen=True, kw_only=True, order=True)
class TorqueCondition:
    """What has to agree before two torques are compared: mode, angle, speed; blank is unsaid."""

    mode: str = ""
    angle_deg: float | None = None
    speed_deg_per_s: float | None = None

    def words(self) -> str:
        """The condition in words; what was not recorded is named so."""
        parts = [self.mode or "mode not recorded"]
        if self.angle_deg is not None:
            parts.append(f"at {number_text(self.angle_deg)}°")
        if self.speed_deg_per_s is not None:
            parts.append(f"at {number_text(self.speed_deg_per_s)}°/s")
        return ", ".join(parts)

    @property
    def lacking(self) -> str:
        """What is not recorded and would be needed to compare, in words; empty when nothing is."""
        if not self.mode:
            return "mode"
        if self.mode == "isometric":
            return "angle" if self.angle_deg is None else ""
        return "speed" if self.speed_deg_per_s is None else ""


@dataclass(frozen=True, kw_only=True)
class LimbTorque:
    """One limb's peak torque [N·m] on one day and every scored reading behind it."""

    limb: str
    side: Side
    peak_n_m: float
    readings: tuple[Reading, ...]
    trials_n_m: tuple[float, ...]

    def words(self) -> str:
        """The peak with its trials and, for a hand-held device, the force and lever arm."""
        trials = ", ".join(number_text(x) for x in self.trials_n_m)
        text = f"{self.limb} limb ({self.side}): {quantity_text(self.peak_n_m, 'n_m')}"
        text += f" (best of {trials})" if len(self.trials_n_m) > 1 else " (one trial)"
        held = [r for r in self.readings if r.unit == "n" and r.value is not None]
        if held:
            arms = ", ".join(
                f"{quantity_text(r.value or 0.0, 'n')} × {r.condition.lever_arm_m:g} m" for r in held
            )
            text += f" from {arms}"
        return text


@dataclass(frozen=True, kw_only=True)
class TorquePair:
    """Both limbs under one condition on the latest day the operated limb was tested so."""

    measure: str
    condition: TorqueCondition
    date: dt.date
    involved: LimbTorque | None
    uninvolved: LimbTorque | None

    @property
    def hand_held(self) -> bool:
        """Whether the torque was made from a force."""
        return self.measure.endswith("_force")

    @property
    def readings(self) -> tuple[Reading, ...]:
        """The readings of both limbs."""
        return tuple(r for limb in (self.involved, self.uninvolved) if limb for r in limb.readings)


def torque_pairs(case: Case, measure: str) -> tuple[TorquePair, ...]:
    """One pair for each condition under which either limb was tested since surgery, earliest condition first.

    Both limbs are of one day: the latest day on which either was tested under the condition.
    """
    groups: dict[TorqueCondition, list[Reading]] = {}
    for reading in case.readings_of(measure):
        if reading.date >= case.surgery.date and is_scored(reading) and _torque(reading) is not None:
            groups.setdefault(condition_of(reading), []).append(reading)
    return tuple(_pair(case, measure, condition, rows) for condition, rows in groups.items())


def condition_of(reading: Reading) -> TorqueCondition:
    """The condition of one reading; capitals and spaces do not matter."""
    condition = reading.condition
    return TorqueCondition(
        mode=condition.mode.strip().lower(),
        angle_deg=condition.angle_deg,
        speed_deg_per_s=condition.speed_deg_per_s,
    )


def limb_torque(case: Case, side: Side, rows: Iterable[Reading]) -> LimbTorque | None:
    """One limb's peak out of scored readings of one day, or ``None`` without any."""
    own = tuple(r for r in rows if r.side == side)
    trials = tuple(t for t in map(_torque, own) if t is not None)
    if not trials:
        return None
    return LimbTorque(limb=case.limb(side), side=side, peak_n_m=max(trials), readings=own, trials_n_m=trials)


def _pair(case: Case, measure: str, condition: TorqueCondition, rows: list[Reading]) -> TorquePair:
    day = max(r.date for r in rows)
    today = [r for r in rows if r.date == day]
    return TorquePair(
        measure=measure,
        condition=condition,
        date=day,
        involved=limb_torque(case, case.involved, today),
        uninvolved=limb_torque(case, case.uninvolved, today),
    )


def _torque(reading: Reading) -> float | None:
    """The torque of a reading [N·m]; ``None`` for a force whose lever arm is not recorded."""
    if reading.value is None or reading.unit != "n":
        return reading.value
    arm = reading.condition.lever_arm_m
    return None if arm is None else torque_n_m(reading.value, arm)
