"""Strength: torque from a dynamometer, force from a hand-held device."""

from __future__ import annotations

from kneecase.evidence.strength_error import (
    STRENGTH_HAND_HELD_MDC_OTHER_TESTER_FRAIL2020,
    STRENGTH_HAND_HELD_MDC_SAME_TESTER_FRAIL2020,
    STRENGTH_ISOKINETIC_SEM_KAMBIC2020,
    STRENGTH_ISOKINETIC_SEM_SOLE2007,
    STRENGTH_ISOMETRIC_SEM_IES2013,
)
from kneecase.record.catalogue.measure import ErrorRule, Measure

__all__ = ["STRENGTH_MEASURES"]

_MATCH = ("mode", "angle_deg", "speed_deg_per_s")

_LARGEST = "the largest of the printed range, because the abstract does not say which test has which"
_TORQUE_ERRORS = (
    ErrorRule(
        published=STRENGTH_ISOMETRIC_SEM_IES2013,
        is_a="sem",
        relative=True,
        mode="isometric",
        reason=f"{_LARGEST}; from knee extensors",
    ),
    ErrorRule(
        published=STRENGTH_ISOKINETIC_SEM_KAMBIC2020,
        is_a="sem",
        relative=True,
        mode="concentric",
        reason=_LARGEST,
    ),
    ErrorRule(
        published=STRENGTH_ISOKINETIC_SEM_SOLE2007,
        is_a="sem",
        relative=True,
        reason=f"{_LARGEST}; taken for eccentric work and wherever the mode is not recorded",
    ),
)
# Where the tester or device differs or is not recorded the last rule holds, the wider error.
_FORCE_ERRORS = (
    ErrorRule(
        published=STRENGTH_HAND_HELD_MDC_SAME_TESTER_FRAIL2020,
        is_a="mdc90",
        relative=True,
        same_tester=True,
        same_device=True,
        reason="the only change beyond error found; its level was not read, so the wider reading is taken",
    ),
    ErrorRule(
        published=STRENGTH_HAND_HELD_MDC_OTHER_TESTER_FRAIL2020,
        is_a="mdc90",
        relative=True,
        reason="the only change beyond error found; its level was not read, so the wider reading is taken",
    ),
)

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
        errors=_TORQUE_ERRORS,
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
        errors=_TORQUE_ERRORS,
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
        errors=_FORCE_ERRORS,
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
        errors=_FORCE_ERRORS,
        note="needs the lever arm to become torque",
    ),
)
