"""Published values: how far uninjured people hop, how symmetric they are, and size-related targets."""

from __future__ import annotations

from kneecase.evidence.provenance import PublishedValue, Source

BARBER_1990 = Source(
    key="barber-1990",
    authors="Barber SD, Noyes FR, et al.",
    year=1990,
    title="Quantitative assessment of functional limitations in normal and anterior cruciate "
    "ligament-deficient knees",
    venue="Clin Orthop Relat Res 255:204-214",
    kind="cross-sectional study",
    known="abstract",
)
NOYES_1991 = Source(
    key="noyes-1991",
    authors="Noyes FR, Barber SD, Mangine RE",
    year=1991,
    title="Abnormal lower limb symmetry determined by function hop tests after anterior cruciate "
    "ligament rupture",
    venue="Am J Sports Med 19:513-518",
    doi="10.1177/036354659101900518",
    kind="cross-sectional study",
    known="abstract",
)
MUNRO_2011 = Source(
    key="munro-2011",
    authors="Munro AG, Herrington LC",
    year=2011,
    title="Between-session reliability of four hop tests and the agility T-test",
    venue="J Strength Cond Res 25:1470-1477",
    doi="10.1519/JSC.0b013e3181d83335",
    kind="reliability study",
    known="secondary",
)
HIGH_SCHOOL_2018 = Source(
    key="high-school-hop-2018",
    authors="Authors not recorded",
    year=2018,
    title="Single-leg hop of high-school athletes (title described, not copied)",
    venue="J Athl Train 53:35-42",
    kind="normative study",
    known="abstract",
)
HEIGHT_CRITERIA_2021 = Source(
    key="five-criteria-2021",
    authors="Authors not recorded",
    year=2021,
    title="Five return-to-sport criteria after ACL reconstruction (title described, not copied)",
    venue="PMC7872464",
    kind="cross-sectional study",
    known="abstract",
)
HEIGHT_RETURN_2021 = Source(
    key="height-return-2021",
    authors="Authors not recorded",
    year=2021,
    title="Single-leg hop relative to height and return to sport (title described, not copied)",
    venue="J Exp Orthop",
    doi="10.1186/s40634-021-00344-z",
    kind="cohort",
    known="abstract",
)
WARMING_2021 = Source(
    key="warming-2021",
    authors="Warming S, et al.",
    year=2021,
    title="Hop symmetry of healthy children (title described, not copied)",
    venue="Scand J Med Sci Sports 31:1832-1839",
    kind="normative study",
    known="abstract",
)
MARKSTROM_2022 = Source(
    key="markstrom-2022",
    authors="Markström JL, et al.",
    year=2022,
    title="Limb symmetry batteries after ACL reconstruction and in uninjured athletes (title described)",
    venue="Sports Health",
    doi="10.1177/19417381221097949",
    kind="cross-sectional study",
    known="abstract",
)
VERTICAL_2021 = Source(
    key="vertical-horizontal-2021",
    authors="Authors not recorded",
    year=2021,
    title="Vertical and horizontal hops after ACL reconstruction (title described, not copied)",
    venue="PMC8637251",
    kind="cross-sectional study",
    known="abstract",
)

# -- how far: relative to limb length and to height ----------------------------------

_SCHOOL = "US high-school athletes, 3,951 in all"

HOPS_SINGLE_PCT_LIMB_MALE_HIGHSCHOOL2018 = PublishedValue(
    name="HOPS_SINGLE_PCT_LIMB_MALE_HIGHSCHOOL2018",
    value=187.8,
    low=154.7,
    high=220.9,
    spread_is="one standard deviation, 33.1, either side:",
    unit="pct",
    definition="single hop for distance in percent of limb length, male",
    population=_SCHOOL,
    source=HIGH_SCHOOL_2018,
    known="abstract",
    place="abstract",
)
HOPS_SINGLE_PCT_LIMB_FEMALE_HIGHSCHOOL2018 = PublishedValue(
    name="HOPS_SINGLE_PCT_LIMB_FEMALE_HIGHSCHOOL2018",
    value=157.5,
    low=129.7,
    high=185.3,
    spread_is="one standard deviation, 27.8, either side:",
    unit="pct",
    definition="single hop for distance in percent of limb length, female",
    population=_SCHOOL,
    source=HIGH_SCHOOL_2018,
    known="abstract",
    place="abstract",
)
_HEIGHT = "single hop for distance in percent of height"
HOPS_SINGLE_PCT_HEIGHT_MALE_FIVECRITERIA2021 = PublishedValue(
    name="HOPS_SINGLE_PCT_HEIGHT_MALE_FIVECRITERIA2021",
    value=90.0,
    unit="pct",
    definition=f"{_HEIGHT}, target for males",
    population="used in 48 people after ACL reconstruction; the target itself is a convention",
    source=HEIGHT_CRITERIA_2021,
    known="abstract",
    place="abstract",
    caution="far above what children of 9 to 15 years reach",
)
HOPS_SINGLE_PCT_HEIGHT_FEMALE_FIVECRITERIA2021 = PublishedValue(
    name="HOPS_SINGLE_PCT_HEIGHT_FEMALE_FIVECRITERIA2021",
    value=80.0,
    unit="pct",
    definition=f"{_HEIGHT}, target for females",
    population="used in 48 people after ACL reconstruction; the target itself is a convention",
    source=HEIGHT_CRITERIA_2021,
    known="abstract",
    place="abstract",
    caution="far above what children of 9 to 15 years reach",
)
HOPS_SINGLE_PCT_HEIGHT_HEIGHTRETURN2021 = PublishedValue(
    name="HOPS_SINGLE_PCT_HEIGHT_HEIGHTRETURN2021",
    value=70.0,
    unit="pct",
    definition=f"{_HEIGHT}, operated limb, best cut for having returned to sport",
    population="after ACL reconstruction, median 13.5 months; the symmetry index was not associated",
    n=73,
    source=HEIGHT_RETURN_2021,
    known="abstract",
    place="abstract",
)

# -- how symmetric: uninjured people, and the same athletes in different tests -------

HOPS_HEALTHY_SHARE_LSI_BARBER1990 = PublishedValue(
    name="HOPS_HEALTHY_SHARE_LSI_BARBER1990",
    value=90.0,
    operator=">",
    unit="pct",
    definition="share of healthy people with an index of 85 % or more on single and 6-m timed hop",
    population="healthy adults",
    n=93,
    source=BARBER_1990,
    known="abstract",
    place="abstract",
)
HOPS_ABNORMAL_ONE_TEST_NOYES1991 = PublishedValue(
    name="HOPS_ABNORMAL_ONE_TEST_NOYES1991",
    value=50.0,
    unit="pct",
    definition="share of ACL-deficient patients abnormal on a single hop test (62 % on two)",
    population="ACL-deficient patients",
    n=67,
    source=NOYES_1991,
    known="abstract",
    place="abstract",
)
HOPS_HEALTHY_MEAN_LSI_MUNRO2011 = PublishedValue(
    name="HOPS_HEALTHY_MEAN_LSI_MUNRO2011",
    value=None,
    low=98.4,
    high=101.6,
    spread_is="range of group means over four hop tests",
    unit="pct",
    definition="limb symmetry index, four hop tests; every one of the athletes reached 90 %",
    population="healthy recreational athletes, 11 women and 11 men",
    n=22,
    source=MUNRO_2011,
    known="secondary",
)
HOPS_CHILDREN_SHARE_90_WARMING2021 = PublishedValue(
    name="HOPS_CHILDREN_SHARE_90_WARMING2021",
    value=None,
    low=50.0,
    high=65.0,
    spread_is="range over four hop tests",
    unit="pct",
    definition="share of healthy children with an index of 90 % or more on a hop test",
    population="healthy children of 9 to 15 years",
    n=531,
    source=WARMING_2021,
    known="abstract",
)
HOPS_UNINJURED_PASS_ALL_MARKSTROM2022 = PublishedValue(
    name="HOPS_UNINJURED_PASS_ALL_MARKSTROM2022",
    value=24.0,
    unit="pct",
    definition="share of uninjured athletes symmetric (worse ÷ better limb ≥ 90 %) on every test",
    population="athletes who were never injured",
    n=46,
    source=MARKSTROM_2022,
    known="abstract",
    place="abstract",
)
HOPS_ACLR_PASS_ALL_MARKSTROM2022 = PublishedValue(
    name="HOPS_ACLR_PASS_ALL_MARKSTROM2022",
    value=17.0,
    unit="pct",
    definition="share of athletes symmetric (worse ÷ better limb ≥ 90 %) on every test",
    population="after ACL reconstruction with a hamstring graft, returned to sport",
    n=47,
    source=MARKSTROM_2022,
    known="abstract",
    place="abstract",
)
_SAME = "college athletes 7.3 months after ACL reconstruction, the same in each test"
HOPS_VERTICAL_MEAN_LSI_COLLEGE2021 = PublishedValue(
    name="HOPS_VERTICAL_MEAN_LSI_COLLEGE2021",
    value=84.48,
    low=73.07,
    high=95.89,
    spread_is="one standard deviation, 11.41, either side:",
    unit="pct",
    definition="limb symmetry index, vertical hop",
    population=_SAME,
    n=18,
    source=VERTICAL_2021,
    known="abstract",
    place="abstract",
)
HOPS_SINGLE_MEAN_LSI_COLLEGE2021 = PublishedValue(
    name="HOPS_SINGLE_MEAN_LSI_COLLEGE2021",
    value=95.48,
    low=87.46,
    high=103.50,
    spread_is="one standard deviation, 8.02, either side:",
    unit="pct",
    definition="limb symmetry index, single hop for distance",
    population=_SAME,
    n=18,
    source=VERTICAL_2021,
    known="abstract",
    place="abstract",
)
