"""Published values: frontal plane projection angles that people with and without knee pain show."""

from __future__ import annotations

from functools import partial

from kneecase.evidence.provenance import PublishedValue, Source

HERRINGTON_MUNRO_2010 = Source(
    key="herrington-munro-2010",
    authors="Herrington L, Munro A",
    year=2010,
    title="Drop jump landing knee valgus angle; normative data in a physically active population",
    venue="Phys Ther Sport",
    kind="norms",
    known="abstract",
    doi="10.1016/j.ptsp.2009.11.004",
)
HERRINGTON_2014 = Source(
    key="herrington-2014",
    authors="Herrington L",
    year=2014,
    title="Knee valgus in single-leg squat and landing, patellofemoral pain or none (title in our words)",
    venue="The Knee",
    kind="comparison",
    known="abstract",
    note="abstract read in a copy",
)
GHULAM_2021 = Source(
    key="ghulam-2021",
    authors="Ghulam HSH",
    year=2021,
    title="Frontal plane projection angle in men with patellofemoral pain (title in our words)",
    venue="Int J Clin Med 12:261-271",
    kind="comparison",
    known="abstract",
    doi="10.4236/ijcm.2021.126023",
)
WILLSON_DAVIS_2008 = Source(
    key="willson-davis-2008",
    authors="Willson JD, Davis IS",
    year=2008,
    title="Frontal plane projection angle in women with and without patellofemoral pain (title in our words)",
    venue="J Orthop Sports Phys Ther 38:606-615",
    kind="comparison",
    known="abstract",
    doi="10.2519/jospt.2008.2706",
    note="design read in the abstract; its numbers are from memory",
)

_LANDMARKS = (
    "Papers place the upper point at mid-thigh or the front of the pelvis, the middle one at the knee or "
    "the patella: absolute angles from different landmarks are not interchangeable."
)

_norm = partial(
    PublishedValue,
    source=HERRINGTON_MUNRO_2010,
    known="abstract",
    value=None,
    unit="deg",
    spread_is="normal range",
    n=50,
    caution=_LANDMARKS,
)
ALIGNMENT_FPPA_DROP_JUMP_WOMEN_HERRINGTON2010 = _norm(
    name="ALIGNMENT_FPPA_DROP_JUMP_WOMEN_HERRINGTON2010",
    low=7.0,
    high=13.0,
    definition="frontal plane projection angle in a drop jump, taken as normal for women",
    population="physically active women, 18-28 years",
)
ALIGNMENT_FPPA_DROP_JUMP_MEN_HERRINGTON2010 = _norm(
    name="ALIGNMENT_FPPA_DROP_JUMP_MEN_HERRINGTON2010",
    low=3.0,
    high=8.0,
    definition="frontal plane projection angle in a drop jump, taken as normal for men",
    population="physically active men, 18-28 years",
)
ALIGNMENT_FPPA_STEP_LANDING_WOMEN_HERRINGTON2010 = _norm(
    name="ALIGNMENT_FPPA_STEP_LANDING_WOMEN_HERRINGTON2010",
    low=5.0,
    high=12.0,
    definition="frontal plane projection angle in a single-leg step landing, taken as normal for women",
    population="physically active women, 18-28 years",
)
ALIGNMENT_FPPA_STEP_LANDING_MEN_HERRINGTON2010 = _norm(
    name="ALIGNMENT_FPPA_STEP_LANDING_MEN_HERRINGTON2010",
    low=1.0,
    high=9.0,
    definition="frontal plane projection angle in a single-leg step landing, taken as normal for men",
    population="physically active men, 18-28 years",
)

_women = partial(PublishedValue, source=HERRINGTON_2014, known="abstract", unit="deg", caution=_LANDMARKS)
ALIGNMENT_FPPA_SQUAT_WOMEN_HERRINGTON2014 = _women(
    name="ALIGNMENT_FPPA_SQUAT_WOMEN_HERRINGTON2014",
    value=8.4,
    low=3.3,
    high=13.5,
    spread_is="mean and one standard deviation of 5.1",
    definition="frontal plane projection angle in a single-leg squat",
    population="women without symptoms",
    n=30,
)
ALIGNMENT_FPPA_HOP_LANDING_WOMEN_HERRINGTON2014 = _women(
    name="ALIGNMENT_FPPA_HOP_LANDING_WOMEN_HERRINGTON2014",
    value=13.5,
    low=7.8,
    high=19.2,
    spread_is="mean and one standard deviation of 5.7",
    definition="frontal plane projection angle in a single-leg hop landing",
    population="women without symptoms",
    n=30,
)
ALIGNMENT_FPPA_SQUAT_WOMEN_PFP_HERRINGTON2014 = _women(
    name="ALIGNMENT_FPPA_SQUAT_WOMEN_PFP_HERRINGTON2014",
    value=16.8,
    low=11.4,
    high=22.2,
    spread_is="mean and one standard deviation of 5.4",
    definition="frontal plane projection angle in a single-leg squat",
    population="women with patellofemoral pain",
    n=12,
)
ALIGNMENT_FPPA_HOP_LANDING_WOMEN_PFP_HERRINGTON2014 = _women(
    name="ALIGNMENT_FPPA_HOP_LANDING_WOMEN_PFP_HERRINGTON2014",
    value=21.7,
    low=18.1,
    high=25.3,
    spread_is="mean and one standard deviation of 3.6",
    definition="frontal plane projection angle in a single-leg hop landing",
    population="women with patellofemoral pain",
    n=12,
)

_men = partial(PublishedValue, source=GHULAM_2021, known="abstract", unit="deg", caution=_LANDMARKS)
ALIGNMENT_FPPA_SQUAT_MEN_GHULAM2021 = _men(
    name="ALIGNMENT_FPPA_SQUAT_MEN_GHULAM2021",
    value=6.96,
    definition="frontal plane projection angle in a single-leg squat",
    population="men without symptoms",
    n=45,
)
ALIGNMENT_FPPA_SQUAT_MEN_PFP_GHULAM2021 = _men(
    name="ALIGNMENT_FPPA_SQUAT_MEN_PFP_GHULAM2021",
    value=15.04,
    definition="frontal plane projection angle in a single-leg squat, painful limb (free limb 9.80°)",
    population="men with patellofemoral pain",
    n=20,
)
ALIGNMENT_FPPA_PFP_DIFFERENCE_WILLSON2008 = PublishedValue(
    name="ALIGNMENT_FPPA_PFP_DIFFERENCE_WILLSON2008",
    value=4.0,
    unit="deg",
    definition="how much more inward the angle was with patellofemoral pain, single-leg squat, about",
    population="20 women with and 20 without patellofemoral pain",
    n=40,
    source=WILLSON_DAVIS_2008,
    known="from memory",
)
