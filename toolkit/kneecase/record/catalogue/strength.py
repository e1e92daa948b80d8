"""Strength: torque from a dynamometer, force from a hand-held device."""

from __future__ import annotations

from kneecase.record.catalogue.measure import Measure

__all__ = ["STRENGTH_MEASURES"]

_MATCH = ("mode", "angle_deg", "speed_deg_per_s")

STRENGTH_MEASURES = (
    Measure(
        id="quadriceps_torque",
        label="quadriceps peak torque",
        unit="n_m",
        group="strength",
        hard=(0, 1000),
        plausible=(5, 450),
        better="higher",
        must_match=_MATCH,
    ),
    Measure(
        id="hamstring_torque",
        label="hamstring peak torque",
        unit="n_m",
        group="strength",
        hard=(0, 700),
        plausible=(5, 300),
        better="higher",
        must_match=_MATCH,
    ),
    Measure(
        id="quadriceps_force",
        label="quadriceps force (hand-held)",
        unit="n",
        group="strength",
        hard=(0, 2500),
        plausible=(20, 1300),
        better="higher",
        must_match=(*_MATCH, "lever_arm_m"),
        note="needs the lever arm to become torque",
    ),
    Measure(
        id="hamstring_force",
        label="hamstring force (hand-held)",
        unit="n",
        group="strength",
        hard=(0, 2500),
        plausible=(20, 800),
        better="higher",
        must_match=(*_MATCH, "lever_arm_m"),
        note="needs the lever arm to become torque",
    ),
)
