"""Published values: the score from which people call their knee acceptable; two studies, ten years apart."""

from __future__ import annotations

from functools import partial

from kneecase.evidence.provenance import PublishedValue, Source

MULLER_2016 = Source(
    key="muller-2016",
    authors="Muller B and others",
    year=2016,
    title="Defining thresholds for the patient acceptable symptom state for the IKDC subjective knee form "
    "and KOOS for patients who underwent ACL reconstruction",
    venue="Am J Sports Med",
    kind="cross-sectional study",
    known="from memory",
    note="abstracts were read in part, without the thresholds: the paper (n = 251, 223 satisfied) and a "
    "conference version (n = 167, 146 satisfied)",
)
URHAUSEN_2024 = Source(
    key="urhausen-2024",
    authors="Urhausen AP, Grindem H, Ingelsrud LH, Roos EM, Silbernagel KG, Snyder-Mackler L, Risberg MA",
    year=2024,
    title="Patient acceptable symptom state thresholds for IKDC-SKF and KOOS at the 10-year follow-up "
    "after anterior cruciate ligament injury",
    venue="Orthop J Sports Med",
    kind="cohort",
    known="abstract",
    doi="10.1177/23259671241250025",
)

_early = partial(
    PublishedValue,
    source=MULLER_2016,
    known="from memory",
    unit="points",
    population="people 1 to 5 years after ACL reconstruction",
)
_late = partial(
    PublishedValue,
    source=URHAUSEN_2024,
    known="abstract",
    unit="points",
    population="people 10 years after an ACL injury, 78 % satisfied",
    n=163,
    spread_is="95 % interval",
)
SCORES_IKDC_ACCEPTABLE_MULLER2016 = _early(
    name="SCORES_IKDC_ACCEPTABLE_MULLER2016",
    value=75.9,
    definition="IKDC subjective score from which people call their knee acceptable",
)
SCORES_IKDC_ACCEPTABLE_URHAUSEN2024 = _late(
    name="SCORES_IKDC_ACCEPTABLE_URHAUSEN2024",
    value=76.2,
    low=72.1,
    high=79.4,
    definition="IKDC subjective score from which people call their knee acceptable",
)
SCORES_KOOS_PAIN_ACCEPTABLE_MULLER2016 = _early(
    name="SCORES_KOOS_PAIN_ACCEPTABLE_MULLER2016",
    value=88.9,
    definition="KOOS pain from which people call their knee acceptable",
)
SCORES_KOOS_PAIN_ACCEPTABLE_URHAUSEN2024 = _late(
    name="SCORES_KOOS_PAIN_ACCEPTABLE_URHAUSEN2024",
    value=85.4,
    low=80.9,
    high=89.2,
    definition="KOOS pain from which people call their knee acceptable",
)
SCORES_KOOS_SYMPTOMS_ACCEPTABLE_MULLER2016 = _early(
    name="SCORES_KOOS_SYMPTOMS_ACCEPTABLE_MULLER2016",
    value=57.1,
    definition="KOOS symptoms from which people call their knee acceptable",
)
SCORES_KOOS_SYMPTOMS_ACCEPTABLE_URHAUSEN2024 = _late(
    name="SCORES_KOOS_SYMPTOMS_ACCEPTABLE_URHAUSEN2024",
    value=76.5,
    low=67.8,
    high=84.7,
    definition="KOOS symptoms from which people call their knee acceptable",
)
SCORES_KOOS_ADL_ACCEPTABLE_MULLER2016 = _early(
    name="SCORES_KOOS_ADL_ACCEPTABLE_MULLER2016",
    value=100.0,
    definition="KOOS daily living from which people call their knee acceptable",
)
SCORES_KOOS_ADL_ACCEPTABLE_URHAUSEN2024 = _late(
    name="SCORES_KOOS_ADL_ACCEPTABLE_URHAUSEN2024",
    value=93.8,
    low=90.1,
    high=96.9,
    definition="KOOS daily living from which people call their knee acceptable",
)
SCORES_KOOS_SPORT_ACCEPTABLE_MULLER2016 = _early(
    name="SCORES_KOOS_SPORT_ACCEPTABLE_MULLER2016",
    value=75.0,
    definition="KOOS sport and recreation from which people call their knee acceptable",
)
SCORES_KOOS_SPORT_ACCEPTABLE_URHAUSEN2024 = _late(
    name="SCORES_KOOS_SPORT_ACCEPTABLE_URHAUSEN2024",
    value=71.6,
    low=63.4,
    high=77.7,
    definition="KOOS sport and recreation from which people call their knee acceptable",
)
SCORES_KOOS_QOL_ACCEPTABLE_MULLER2016 = _early(
    name="SCORES_KOOS_QOL_ACCEPTABLE_MULLER2016",
    value=62.5,
    definition="KOOS quality of life from which people call their knee acceptable",
)
SCORES_KOOS_QOL_ACCEPTABLE_URHAUSEN2024 = _late(
    name="SCORES_KOOS_QOL_ACCEPTABLE_URHAUSEN2024",
    value=59.0,
    low=53.7,
    high=63.9,
    definition="KOOS quality of life from which people call their knee acceptable",
)
