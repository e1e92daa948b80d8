"""Published values: strength relative to body mass, ratios, and the error of dynamometers."""

from __future__ import annotations

from kneecase.evidence.clearance import GOKELER_2016
from kneecase.evidence.motion import COMMON_PRACTICE
from kneecase.evidence.provenance import PublishedValue, Source

SARABON_2021 = Source(
    key="sarabon-2021",
    authors="Šarabon N, et al.",
    year=2021,
    title="Reference values of isometric knee strength in healthy people: systematic review (described)",
    venue="Front Physiol",
    doi="10.3389/fphys.2021.767941",
    kind="systematic review",
    known="abstract",
)
PIETROSIMONE_2016 = Source(
    key="pietrosimone-2016",
    authors="Pietrosimone B, et al.",
    year=2016,
    title="Quadriceps strength predicts self-reported function post-ACL reconstruction",
    venue="Med Sci Sports Exerc 48:1671-1677",
    kind="cross-sectional study",
    known="abstract",
)
COOMBS_2002 = Source(
    key="coombs-2002",
    authors="Coombs R, Garbutt G",
    year=2002,
    title="Developments in the use of the hamstring/quadriceps ratio for the assessment of muscle balance",
    venue="J Sports Sci Med 1:56-62",
    kind="review",
    known="abstract",
)
RISBERG_2018 = Source(
    key="risberg-2018",
    authors="Risberg MA, et al.",
    year=2018,
    title="Normative quadriceps and hamstring muscle strength values for female, healthy, elite handball "
    "and football players",
    venue="PMC6092090",
    kind="normative study",
    known="abstract",
)

# -- extension torque for body mass, by sex and mode ---------------------------------


def _sarabon(name: str, low: float, high: float, definition: str) -> PublishedValue:
    """A 95 % interval of the mean of healthy adults."""
    return PublishedValue(
        name=name,
        value=None,
        low=low,
        high=high,
        spread_is="95 % interval of the mean",
        unit="n_m_per_kg",
        definition=definition,
        population="healthy adults, 411 studies of 13,893 people in all",
        source=SARABON_2021,
        known="abstract",
        place="abstract",
        caution="an interval of the mean is narrower than the spread of people",
    )


STRENGTH_EXTENSION_MID_MALE_SARABON2021 = _sarabon(
    "STRENGTH_EXTENSION_MID_MALE_SARABON2021",
    2.92,
    3.45,
    "isometric knee extension torque at a mid-range angle, men",
)
STRENGTH_EXTENSION_MID_FEMALE_SARABON2021 = _sarabon(
    "STRENGTH_EXTENSION_MID_FEMALE_SARABON2021",
    2.08,
    2.74,
    "isometric knee extension torque at a mid-range angle, women",
)
STRENGTH_EXTENSION_FLEXED_MALE_SARABON2021 = _sarabon(
    "STRENGTH_EXTENSION_FLEXED_MALE_SARABON2021",
    2.50,
    3.06,
    "isometric knee extension torque with the knee flexed, men",
)
STRENGTH_EXTENSION_FLEXED_FEMALE_SARABON2021 = _sarabon(
    "STRENGTH_EXTENSION_FLEXED_FEMALE_SARABON2021",
    2.04,
    2.71,
    "isometric knee extension torque with the knee flexed, women",
)
STRENGTH_FLEXION_MID_MALE_SARABON2021 = _sarabon(
    "STRENGTH_FLEXION_MID_MALE_SARABON2021",
    1.15,
    1.62,
    "isometric knee flexion torque at a mid-range angle, men",
)
STRENGTH_MID_RANGE_OURS = PublishedValue(
    name="STRENGTH_MID_RANGE_OURS",
    value=None,
    low=40.0,
    high=80.0,
    spread_is="from, included, to, excluded",
    unit="deg",
    definition="knee angles read here as mid-range; from the upper end on, flexed (kneecase's own "
    "convention, the review's own angles were not read)",
    population="",
    source=COMMON_PRACTICE,
    known="common practice",
)
STRENGTH_EXTENSION_TARGET_PIETROSIMONE2016 = PublishedValue(
    name="STRENGTH_EXTENSION_TARGET_PIETROSIMONE2016",
    value=3.10,
    unit="n_m_per_kg",
    definition="isometric extension torque at 90°, best cut for an IKDC subjective score of 90 or more "
    "(sensitivity .61, specificity .84, odds ratio 8.15)",
    population="after ACL reconstruction, women and men together",
    n=96,
    source=PIETROSIMONE_2016,
    known="abstract",
    place="abstract",
    caution="one cut for both sexes, above the interval of healthy women's mean (our comparison with "
    "Šarabon 2021)",
)
STRENGTH_EXTENSION_TARGET_GOKELER2016 = PublishedValue(
    name="STRENGTH_EXTENSION_TARGET_GOKELER2016",
    value=3.0,
    operator=">",
    unit="n_m_per_kg",
    definition="concentric extension torque at 60°/s, a criterion and not derived (35.7 % passed)",
    population="patients 6.5 months after ACL reconstruction, women and men together",
    n=28,
    source=GOKELER_2016,
    known="abstract",
    place="abstract",
    caution="one cut for both sexes, which most women will not reach (our judgement)",
)

STRENGTH_TARGET_ANGLE_PIETROSIMONE2016 = PublishedValue(
    name="STRENGTH_TARGET_ANGLE_PIETROSIMONE2016",
    value=90.0,
    unit="deg",
    definition="knee angle at which the isometric cut was found",
    population="after ACL reconstruction",
    source=PIETROSIMONE_2016,
    known="abstract",
    place="abstract",
)
STRENGTH_TARGET_SPEED_GOKELER2016 = PublishedValue(
    name="STRENGTH_TARGET_SPEED_GOKELER2016",
    value=60.0,
    unit="deg_per_s",
    definition="speed at which the concentric criterion is set",
    population="after ACL reconstruction",
    source=GOKELER_2016,
    known="abstract",
    place="abstract",
)

# -- hamstring-to-quadriceps ratio ---------------------------------------------------

STRENGTH_HQ_CONVENTION_COOMBS2002 = PublishedValue(
    name="STRENGTH_HQ_CONVENTION_COOMBS2002",
    value=0.6,
    unit="fraction",
    definition="conventional concentric hamstring-to-quadriceps ratio; ignores angle and muscle action",
    population="review",
    source=COOMBS_2002,
    known="abstract",
    place="abstract",
)
STRENGTH_HQ_HANDBALL_RISBERG2018 = PublishedValue(
    name="STRENGTH_HQ_HANDBALL_RISBERG2018",
    value=0.58,
    unit="fraction",
    definition="hamstring-to-quadriceps ratio at 60°/s, handball (football .60)",
    population="elite women, handball and football, 350 in all",
    source=RISBERG_2018,
    known="abstract",
    place="abstract",
)
