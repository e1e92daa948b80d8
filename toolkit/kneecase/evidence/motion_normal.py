"""Published values: normal knee motion, by age and sex; used only where the other knee cannot serve."""

from __future__ import annotations

from kneecase.evidence.provenance import HowKnown, PublishedValue, Source

SOUCIE_2011 = Source(
    key="soucie-2011",
    authors="Soucie JM, Wang C, Forsyth A, et al.",
    year=2011,
    title="Range of motion measurements: reference values and a database for comparison studies",
    venue="Haemophilia 17:500-507",
    kind="reference values",
    known="full text",
    note="674 people of 2 to 69 years in all; ages 2 to 8 were read, the older bands are from memory",
)
ROACH_MILES_1991 = Source(
    key="roach-miles-1991",
    authors="Roach KE, Miles TP",
    year=1991,
    title="Normal hip and knee active range of motion: the relationship to age",
    venue="Phys Ther 71:656",
    kind="reference values",
    known="from memory",
)


def _normal(
    name: str,
    value: float,
    who: str,
    known: HowKnown,
    low: float | None = None,
    high: float | None = None,
) -> PublishedValue:
    movement = "flexion" if "_FLEXION_" in name else "hyperextension"
    return PublishedValue(
        name=name,
        value=value,
        low=low,
        high=high,
        spread_is="" if low is None else "95 % interval of the mean",
        unit="deg",
        definition=f"normal passive knee {movement}, mean, goniometer",
        population=f"healthy {who}",
        source=SOUCIE_2011,
        known=known,
        caution="a group mean: single healthy knees lie well to either side",
    )


MOTION_FLEXION_FEMALE_2_8_SOUCIE2011 = _normal(
    "MOTION_FLEXION_FEMALE_2_8_SOUCIE2011", 152.6, "girls and women, 2 to 8 years", "full text", 151.2, 154.0
)
MOTION_FLEXION_MALE_2_8_SOUCIE2011 = _normal(
    "MOTION_FLEXION_MALE_2_8_SOUCIE2011", 147.8, "boys and men, 2 to 8 years", "full text", 146.6, 149.0
)
MOTION_HYPEREXTENSION_FEMALE_2_8_SOUCIE2011 = _normal(
    "MOTION_HYPEREXTENSION_FEMALE_2_8_SOUCIE2011", 5.4, "girls and women, 2 to 8 years", "full text", 3.9, 6.9
)
MOTION_HYPEREXTENSION_MALE_2_8_SOUCIE2011 = _normal(
    "MOTION_HYPEREXTENSION_MALE_2_8_SOUCIE2011", 1.6, "boys and men, 2 to 8 years", "full text", 0.9, 2.3
)
MOTION_FLEXION_FEMALE_9_19_SOUCIE2011 = _normal(
    "MOTION_FLEXION_FEMALE_9_19_SOUCIE2011", 142.3, "girls and women, 9 to 19 years", "from memory"
)
MOTION_FLEXION_MALE_9_19_SOUCIE2011 = _normal(
    "MOTION_FLEXION_MALE_9_19_SOUCIE2011", 142.2, "boys and men, 9 to 19 years", "from memory"
)
MOTION_HYPEREXTENSION_FEMALE_9_19_SOUCIE2011 = _normal(
    "MOTION_HYPEREXTENSION_FEMALE_9_19_SOUCIE2011", 2.4, "girls and women, 9 to 19 years", "from memory"
)
MOTION_HYPEREXTENSION_MALE_9_19_SOUCIE2011 = _normal(
    "MOTION_HYPEREXTENSION_MALE_9_19_SOUCIE2011", 1.8, "boys and men, 9 to 19 years", "from memory"
)
MOTION_FLEXION_FEMALE_20_44_SOUCIE2011 = _normal(
    "MOTION_FLEXION_FEMALE_20_44_SOUCIE2011",
    141.9,
    "girls and women, 20 to 44 years",
    "from memory",
    140.9,
    142.9,
)
MOTION_FLEXION_MALE_20_44_SOUCIE2011 = _normal(
    "MOTION_FLEXION_MALE_20_44_SOUCIE2011", 137.7, "boys and men, 20 to 44 years", "from memory", 136.5, 138.9
)
MOTION_HYPEREXTENSION_FEMALE_20_44_SOUCIE2011 = _normal(
    "MOTION_HYPEREXTENSION_FEMALE_20_44_SOUCIE2011", 1.6, "girls and women, 20 to 44 years", "from memory"
)
MOTION_HYPEREXTENSION_MALE_20_44_SOUCIE2011 = _normal(
    "MOTION_HYPEREXTENSION_MALE_20_44_SOUCIE2011", 1.0, "boys and men, 20 to 44 years", "from memory"
)
MOTION_FLEXION_FEMALE_45_69_SOUCIE2011 = _normal(
    "MOTION_FLEXION_FEMALE_45_69_SOUCIE2011", 137.8, "girls and women, 45 to 69 years", "from memory"
)
MOTION_FLEXION_MALE_45_69_SOUCIE2011 = _normal(
    "MOTION_FLEXION_MALE_45_69_SOUCIE2011", 132.9, "boys and men, 45 to 69 years", "from memory"
)
MOTION_HYPEREXTENSION_FEMALE_45_69_SOUCIE2011 = _normal(
    "MOTION_HYPEREXTENSION_FEMALE_45_69_SOUCIE2011", 1.2, "girls and women, 45 to 69 years", "from memory"
)
MOTION_HYPEREXTENSION_MALE_45_69_SOUCIE2011 = _normal(
    "MOTION_HYPEREXTENSION_MALE_45_69_SOUCIE2011", 0.5, "boys and men, 45 to 69 years", "from memory"
)
MOTION_ACTIVE_FLEXION_ROACHMILES1991 = PublishedValue(
    name="MOTION_ACTIVE_FLEXION_ROACHMILES1991",
    value=132.0,
    low=122.0,
    high=142.0,
    spread_is="one standard deviation of 10°",
    unit="deg",
    definition="normal active knee flexion, mean",
    population="adults of 25 to 74 years in a national survey",
    source=ROACH_MILES_1991,
    known="from memory",
)
