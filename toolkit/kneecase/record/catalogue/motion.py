"""Motion, effusion and girth: what the goniometer, the tape and the hands measure."""

from __future__ import annotations

from kneecase.record.catalogue.measure import Measure

__all__ = ["MOTION_MEASURES"]

_MATCH = ("motion", "timing", "position")

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
