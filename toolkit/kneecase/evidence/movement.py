"""Published values: step-down quality by eye, and how well people agree on it."""

from __future__ import annotations

from functools import partial

from kneecase.evidence.provenance import PublishedValue, Source

PIVA_2006 = Source(
    key="piva-2006",
    authors="Piva SR and others",
    year=2006,
    title="Reliability of measures of impairments associated with patellofemoral pain syndrome",
    venue="BMC Musculoskelet Disord 7:33",
    kind="reliability study",
    known="full text",
    note="scoring table read in a copy (PMC5095938, table 3)",
)
RABIN_2010 = Source(
    key="rabin-2010",
    authors="Rabin A, Kozol Z",
    year=2010,
    title="Measures of range of motion and strength among healthy women with differing quality of lower "
    "extremity movement during the lateral step-down test",
    venue="J Orthop Sports Phys Ther 40(12)",
    kind="comparison",
    known="secondary",
)
RABIN_2014 = Source(
    key="rabin-2014",
    authors="Rabin A and others",
    year=2014,
    title="Quality of movement in the lateral step-down with patellofemoral pain (title in our words)",
    venue="J Orthop Sports Phys Ther",
    kind="comparison",
    known="secondary",
)
RESSMAN_2021 = Source(
    key="ressman-2021",
    authors="Ressman J, Grooten WJA, Rasmussen-Barr E",
    year=2021,
    title="Visual assessment of movement quality: a study on intra- and interrater reliability of a "
    "multi-segmental single leg squat test",
    venue="BMC Sports Sci Med Rehabil",
    kind="reliability study",
    known="abstract",
    doi="10.1186/s13102-021-00289-x",
)

_step = partial(
    PublishedValue,
    source=PIVA_2006,
    known="full text",
    unit="points",
    population="lateral step-down from 20 cm, five repetitions, hands on the waist",
    place="scoring table",
)
MOVEMENT_STEP_DOWN_GOOD_PIVA2006 = _step(
    name="MOVEMENT_STEP_DOWN_GOOD_PIVA2006",
    value=1.0,
    operator="≤",
    definition="errors of 6 that still count as good quality",
)
MOVEMENT_STEP_DOWN_MEDIUM_PIVA2006 = _step(
    name="MOVEMENT_STEP_DOWN_MEDIUM_PIVA2006",
    value=3.0,
    operator="≤",
    definition="errors of 6 that still count as medium quality; more is poor",
)

_kappa = partial(PublishedValue, known="secondary", unit="fraction")
MOVEMENT_STEP_DOWN_KAPPA_PIVA2006 = _kappa(
    name="MOVEMENT_STEP_DOWN_KAPPA_PIVA2006",
    source=PIVA_2006,
    value=0.67,
    definition="agreement of two raters on the step-down score beyond chance, kappa (80 % agreed)",
    population="people with patellofemoral pain",
)
MOVEMENT_STEP_DOWN_KAPPA_RABIN2010 = _kappa(
    name="MOVEMENT_STEP_DOWN_KAPPA_RABIN2010",
    source=RABIN_2010,
    value=0.59,
    definition="agreement of two raters on the step-down score beyond chance, kappa (83 % agreed)",
    population="healthy women",
)
MOVEMENT_STEP_DOWN_KAPPA_RABIN2014 = _kappa(
    name="MOVEMENT_STEP_DOWN_KAPPA_RABIN2014",
    source=RABIN_2014,
    value=0.81,
    definition="agreement of two raters on the step-down score beyond chance, kappa (91 % agreed)",
    population="people with patellofemoral pain",
)

_segments = partial(
    PublishedValue,
    source=RESSMAN_2021,
    known="abstract",
    unit="fraction",
    population="65 filmed single-leg squats rated by eye, novice and experienced therapists",
    n=34,
)
MOVEMENT_BY_EYE_KAPPA_ALL_RESSMAN2021 = _segments(
    name="MOVEMENT_BY_EYE_KAPPA_ALL_RESSMAN2021",
    value=0.52,
    low=0.43,
    high=0.61,
    spread_is="95 % interval",
    definition="agreement of raters beyond chance over all segments, kappa",
)
MOVEMENT_BY_EYE_KAPPA_KNEE_RESSMAN2021 = _segments(
    name="MOVEMENT_BY_EYE_KAPPA_KNEE_RESSMAN2021",
    value=0.41,
    low=0.10,
    high=0.72,
    spread_is="95 % interval",
    definition="agreement of raters beyond chance on the knee, kappa",
)
MOVEMENT_BY_EYE_KAPPA_PELVIS_RESSMAN2021 = _segments(
    name="MOVEMENT_BY_EYE_KAPPA_PELVIS_RESSMAN2021",
    value=0.17,
    low=-0.22,
    high=0.55,
    spread_is="95 % interval",
    definition="agreement of one rater with the same rater on the pelvis, kappa",
)
