"""Balance, landing and alignment: reach distances, observed errors, angles from a picture."""

from __future__ import annotations

from kneecase.evidence.alignment_error import ALIGNMENT_FPPA_SDD_MAX_MUNRO2012
from kneecase.evidence.landing import LANDING_SEM_ONE_RATER_EVERARD2020
from kneecase.evidence.observation_sheets import LANDING_ITEMS, STEP_DOWN_ITEMS
from kneecase.record.catalogue.measure import ErrorRule, Measure

__all__ = ["MOVEMENT_MEASURES"]

_REACH_NOTE = "side is the stance limb; its error is published in percent of limb length, not in cm"

MOVEMENT_MEASURES = (
    Measure(
        id="star_anterior",
        label="star excursion reach, anterior",
        unit="cm",
        group="balance",
        hard=(1, 200),
        plausible=(20, 110),
        better="higher",
        note=_REACH_NOTE,
    ),
    Measure(
        id="star_posteromedial",
        label="star excursion reach, posteromedial",
        unit="cm",
        group="balance",
        hard=(1, 220),
        plausible=(30, 150),
        better="higher",
        note=_REACH_NOTE,
    ),
    Measure(
        id="star_posterolateral",
        label="star excursion reach, posterolateral",
        unit="cm",
        group="balance",
        hard=(1, 220),
        plausible=(30, 150),
        better="higher",
        note=_REACH_NOTE,
    ),
    Measure(
        id="step_down_errors",
        label="lateral step-down quality score",
        unit="points",
        group="movement",
        hard=(0, 6),
        plausible=(0, 6),
        better="lower",
        items=len(STEP_DOWN_ITEMS),
        item_range=(0, 2),
        item_ranges=tuple((0, item.highest) for item in STEP_DOWN_ITEMS),
        note="total, or items 1 to 5: arms, trunk, pelvis, knee (0-2), steadiness",
    ),
    Measure(
        id="landing_errors",
        label="landing error score",
        unit="points",
        group="movement",
        hard=(0, 19),
        plausible=(0, 19),
        better="lower",
        per_limb=False,
        items=len(LANDING_ITEMS),
        item_range=(0, 2),
        item_ranges=tuple((0, item.highest) for item in LANDING_ITEMS),
        must_match=("administration",),
        errors=(
            ErrorRule(
                published=LANDING_SEM_ONE_RATER_EVERARD2020,
                is_a="sem",
                reason="the larger of two nearly equal errors of the rater; landings vary besides",
            ),
        ),
        note="total of a trial, or items 1 to 17 (16, 17 take 0-2); write the trial rule in administration",
    ),
    Measure(
        id="stance_load",
        label="load under one limb, two scales",
        unit="kg",
        group="movement",
        hard=(0, 400),
        plausible=(5, 150),
        better="neither",
        must_match=("position",),
        note="write the task in position, for example 'squat' or 'two-leg landing'",
    ),
    Measure(
        id="frontal_plane_projection",
        label="frontal plane projection angle",
        unit="deg",
        group="movement",
        hard=(-90, 90),
        plausible=(-25, 40),
        better="neither",
        must_match=("position",),
        errors=(
            ErrorRule(
                published=ALIGNMENT_FPPA_SDD_MAX_MUNRO2012,
                is_a="mdc95",
                reason="the largest of three tasks, because it was not read which task has which",
            ),
        ),
        note="positive when the knee lies inward of the hip-ankle line; write the task in position",
    ),
    Measure(
        id="trunk_lean",
        label="trunk lean",
        unit="deg",
        group="movement",
        hard=(-90, 90),
        plausible=(-30, 30),
        better="neither",
        must_match=("position",),
        note="positive towards the stance limb; write the task in position",
    ),
    Measure(
        id="pelvic_drop",
        label="pelvic drop",
        unit="deg",
        group="movement",
        hard=(-90, 90),
        plausible=(-20, 25),
        better="lower",
        must_match=("position",),
        note="positive when the free side is low; write the task in position",
    ),
)
