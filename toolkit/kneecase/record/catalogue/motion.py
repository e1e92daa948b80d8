"""Motion, effusion and girth: what the goniometer, the tape and the hands measure."""

from __future__ import annotations

from kneecase.evidence.motion import (
    MOTION_EXTENSION_SAME_TESTER_MDC95_PANTOUVERIS2024,
    MOTION_EXTENSION_TWO_TESTERS_INCLINOMETER_MDC95_PANTOUVERIS2024,
    MOTION_EXTENSION_TWO_TESTERS_MDC95_PANTOUVERIS2024,
    MOTION_FLEXION_SAME_TESTER_MDC95_COMMON_PRACTICE,
    MOTION_FLEXION_SITTING_TWO_TESTERS_MDC95_LENSSEN2007,
    MOTION_FLEXION_SUPINE_TWO_TESTERS_MDC95_LENSSEN2007,
)
from kneecase.evidence.swelling import (
    GIRTH_KNEE_SAME_TESTER_MDC95_JAKOBSEN2010,
    GIRTH_KNEE_TWO_TESTERS_MDC95_JAKOBSEN2010,
)
from kneecase.record.catalogue.measure import ErrorRule, Measure

__all__ = ["MOTION_MEASURES"]

_MATCH = ("motion", "timing", "position")

# The first rule that fits holds. A tester or device that is blank or differs falls through to the last
# rule, the widest error published for that movement.
_EXTENSION_ERRORS = (
    ErrorRule(
        published=MOTION_EXTENSION_SAME_TESTER_MDC95_PANTOUVERIS2024,
        is_a="mdc95",
        same_tester=True,
        same_device=True,
        reason="upper end of the printed range, because the abstract does not say which device has which end",
    ),
    ErrorRule(
        published=MOTION_EXTENSION_TWO_TESTERS_INCLINOMETER_MDC95_PANTOUVERIS2024,
        is_a="mdc95",
        same_tester=False,
        same_device=True,
        device="inclinometer",
        reason="lowest of the printed range, rounded up; the paper calls the inclinometer the most reliable",
    ),
    ErrorRule(
        published=MOTION_EXTENSION_TWO_TESTERS_MDC95_PANTOUVERIS2024,
        is_a="mdc95",
        reason="upper end of the printed range between testers, taken whenever tester or device differ or "
        "are not recorded",
    ),
)
_FLEXION_ERRORS = (
    ErrorRule(
        published=MOTION_FLEXION_SAME_TESTER_MDC95_COMMON_PRACTICE,
        is_a="mdc95",
        same_tester=True,
        same_device=True,
        reason="convention: no minimal detectable change of flexion after ACL reconstruction was found",
    ),
    ErrorRule(
        published=MOTION_FLEXION_SITTING_TWO_TESTERS_MDC95_LENSSEN2007,
        is_a="mdc95",
        same_tester=False,
        same_device=True,
        position="sitting",
        reason="two testers, sitting: from knee replacement, the nearest population with a published value",
    ),
    ErrorRule(
        published=MOTION_FLEXION_SUPINE_TWO_TESTERS_MDC95_LENSSEN2007,
        is_a="mdc95",
        reason="two testers lying on the back, three days after knee replacement: the widest published, "
        "taken whenever tester or device differ or are not recorded",
    ),
)
_GIRTH_ERRORS = (
    ErrorRule(
        published=GIRTH_KNEE_SAME_TESTER_MDC95_JAKOBSEN2010,
        is_a="mdc95",
        same_tester=True,
        reason="the only value known; from memory, so unverified",
    ),
    ErrorRule(
        published=GIRTH_KNEE_TWO_TESTERS_MDC95_JAKOBSEN2010,
        is_a="mdc95",
        reason="two testers, or a tester who is not recorded; from memory, so unverified",
    ),
)

MOTION_MEASURES = (
    Measure(
        id="knee_flexion",
        label="knee flexion",
        unit="deg",
        group="motion",
        hard=(-20, 170),
        plausible=(0, 160),
        better="higher",
        must_match=_MATCH,
        errors=_FLEXION_ERRORS,
    ),
    Measure(
        id="knee_extension",
        label="knee extension",
        unit="deg",
        group="motion",
        hard=(-30, 120),
        plausible=(-15, 45),
        better="lower",
        must_match=_MATCH,
        errors=_EXTENSION_ERRORS,
        note="0 is straight, positive lacks extension, negative hyperextends",
    ),
    Measure(
        id="quadriceps_lag",
        label="quadriceps lag",
        unit="deg",
        group="motion",
        hard=(-10, 90),
        plausible=(0, 30),
        better="lower",
        must_match=("position",),
        note="passive extension reached minus active extension reached, read within one second",
    ),
    Measure(
        id="heel_height_difference",
        label="prone heel-height difference",
        unit="cm",
        group="motion",
        hard=(-40, 40),
        plausible=(-5, 15),
        better="lower",
        per_limb=False,
        must_match=("timing",),
        note="positive when the heel of the operated side hangs higher",
    ),
    Measure(
        id="effusion",
        label="effusion (stroke test)",
        unit="grade",
        group="effusion",
        hard=(0, 4),
        plausible=(0, 4),
        better="lower",
        must_match=("timing",),
        note="zero, trace, 1+, 2+, 3+; an ordinal grade, never averaged",
    ),
    Measure(
        id="knee_girth",
        label="knee girth",
        unit="cm",
        group="girth",
        hard=(15, 90),
        plausible=(25, 60),
        better="lower",
        must_match=("position", "timing"),
        errors=_GIRTH_ERRORS,
        note="write where the tape lies in position, for example 'superior patellar pole'",
    ),
    Measure(
        id="thigh_girth",
        label="thigh girth",
        unit="cm",
        group="girth",
        hard=(15, 120),
        plausible=(30, 85),
        better="higher",
        must_match=("position",),
        note="write the distance above the patella in position",
    ),
    Measure(
        id="calf_girth",
        label="calf girth",
        unit="cm",
        group="girth",
        hard=(10, 90),
        plausible=(22, 60),
        better="neither",
        must_match=("position",),
        note="write the distance below the tibial tubercle in position",
    ),
)
