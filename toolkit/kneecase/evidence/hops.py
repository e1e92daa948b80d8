"""Published values: measurement error of hop tests, and the ways the tests are given.

Two kinds of error stand side by side and are never averaged: the error of a limb symmetry
index after ACL reconstruction (Reid 2007, in index points), and the error of the distance or
time itself in uninjured people (Bolgla & Keskula 1997 and others), from which the error of an
index follows by propagation. Norms and targets are in :mod:`kneecase.evidence.hop_norms`.
"""

from __future__ import annotations

from kneecase.evidence.motion import COMMON_PRACTICE
from kneecase.evidence.provenance import HowKnown, PublishedValue, Source

# -- sources -------------------------------------------------------------------------

REID_2007 = Source(
    key="reid-2007",
    authors="Reid A, Birmingham TB, Stratford PW, et al.",
    year=2007,
    title=(
        "Hop testing provides a reliable and valid outcome measure during rehabilitation after "
        "anterior cruciate ligament reconstruction"
    ),
    venue="Phys Ther 87:337-349",
    doi="10.2522/ptj.20060143",
    kind="reliability study",
    known="abstract",
    note="the table of errors by test was not read; the abstract prints ranges",
)
BOLGLA_1997 = Source(
    key="bolgla-1997",
    authors="Bolgla LA, Keskula DR",
    year=1997,
    title="Reliability of lower extremity functional performance tests",
    venue="J Orthop Sports Phys Ther 26:138-142",
    doi="10.2519/jospt.1997.26.3.138",
    kind="reliability study",
    known="abstract",
)
ROSS_2002 = Source(
    key="ross-2002",
    authors="Ross MD, et al.",
    year=2002,
    title="Test-retest reliability of 4 single-leg horizontal hop tests",
    venue="J Strength Cond Res 16:617-622",
    kind="reliability study",
    known="abstract",
)
GUIDELINE_2010 = Source(
    key="guideline-2010",
    authors="Logerstedt DS, Snyder-Mackler L, et al.",
    year=2010,
    title="Knee stability and movement coordination impairments: knee ligament sprain",
    venue="J Orthop Sports Phys Ther 40:A1-A37",
    doi="10.2519/jospt.2010.0303",
    kind="clinical guideline",
    known="full text",
)
DINGENEN_2019 = Source(
    key="dingenen-2019",
    authors="Dingenen B, et al.",
    year=2019,
    title="Test-retest reliability and discriminative ability of forward, medial and rotational "
    "single-leg hop tests",
    venue="Knee (PMID 31431339)",
    kind="reliability study",
    known="abstract",
)
KIVLAN_2013 = Source(
    key="kivlan-2013",
    authors="Kivlan BR, et al.",
    year=2013,
    title="Reliability and validity of functional performance tests in dancers with hip dysfunction",
    venue="Int J Sports Phys Ther",
    kind="reliability study",
    known="secondary",
)
MIRKOVIC_2022 = Source(
    key="mirkovic-2022",
    authors="Mirkovic, et al.",
    year=2022,
    title="Reliability and learning of a timed side hop test (title described, not copied)",
    venue="Front Physiol",
    doi="10.3389/fphys.2022.874632",
    kind="reliability study",
    known="abstract",
)

# -- error of the limb symmetry index, in index points -------------------------------


def _reid(name: str, value: float, test: str, known: HowKnown, place: str = "") -> PublishedValue:
    """The error of one limb symmetry index from Reid 2007."""
    return PublishedValue(
        name=name,
        value=value,
        unit="points",
        definition=f"standard error of measurement of the limb symmetry index, {test}",
        population="patients aged 15 to 45, three sessions in week 16 after ACL reconstruction",
        n=42,
        source=REID_2007,
        known=known,
        place=place,
    )


HOPS_TIMED_6M_LSI_SEM_REID2007 = _reid(
    "HOPS_TIMED_6M_LSI_SEM_REID2007", 5.59, "6-m timed hop", "abstract", "abstract, largest of the range"
)
HOPS_COMBINED_LSI_SEM_REID2007 = _reid(
    "HOPS_COMBINED_LSI_SEM_REID2007",
    3.04,
    "mean of the four hop tests",
    "abstract",
    "abstract, smallest of the range",
)
HOPS_SINGLE_LSI_SEM_REID2007 = _reid(
    "HOPS_SINGLE_LSI_SEM_REID2007", 3.49, "single hop for distance", "from memory"
)
HOPS_TRIPLE_LSI_SEM_REID2007 = _reid(
    "HOPS_TRIPLE_LSI_SEM_REID2007", 4.32, "triple hop for distance", "from memory"
)
HOPS_CROSSOVER_LSI_SEM_REID2007 = _reid(
    "HOPS_CROSSOVER_LSI_SEM_REID2007", 5.28, "crossover hop for distance", "from memory"
)

# -- error of the distance or time itself --------------------------------------------


def _bolgla(name: str, value: float, unit: str, test: str, caution: str = "") -> PublishedValue:
    """The error of one score from Bolgla & Keskula 1997."""
    return PublishedValue(
        name=name,
        value=value,
        unit=unit,
        definition=f"standard error of measurement, {test}",
        population="uninjured adults, 5 men and 15 women, two sessions 48 hours apart",
        n=20,
        source=BOLGLA_1997,
        known="abstract",
        place="abstract",
        caution=caution,
    )


HOPS_SINGLE_SEM_BOLGLA1997 = _bolgla("HOPS_SINGLE_SEM_BOLGLA1997", 4.56, "cm", "single hop for distance")
HOPS_TRIPLE_SEM_BOLGLA1997 = _bolgla("HOPS_TRIPLE_SEM_BOLGLA1997", 15.44, "cm", "triple hop for distance")
HOPS_CROSSOVER_SEM_BOLGLA1997 = _bolgla(
    "HOPS_CROSSOVER_SEM_BOLGLA1997", 15.95, "cm", "crossover hop for distance"
)
HOPS_TIMED_6M_SEM_BOLGLA1997 = _bolgla(
    "HOPS_TIMED_6M_SEM_BOLGLA1997",
    0.13,
    "s",
    "6-m timed hop",
    "by stopwatch, side differences in this test are often inside the error of timing",
)
_SEM = "standard error of measurement"
HOPS_TIMED_6M_SEM_ROSS2002 = PublishedValue(
    name="HOPS_TIMED_6M_SEM_ROSS2002",
    value=0.06,
    unit="s",
    definition=f"{_SEM}, 6-m timed hop",
    population="male cadets, sessions about 31 days apart",
    n=18,
    source=ROSS_2002,
    known="abstract",
    place="abstract",
)
HOPS_DISTANCE_SEM_ROSS2002 = PublishedValue(
    name="HOPS_DISTANCE_SEM_ROSS2002",
    value=None,
    low=4.61,
    high=17.74,
    unit="cm",
    definition=f"{_SEM}, three hops for distance, from the least to the largest",
    population="male cadets, sessions about 31 days apart",
    n=18,
    source=ROSS_2002,
    known="abstract",
    place="abstract",
    spread_is="range over the tests",
)
HOPS_TIMED_6M_SEM_GUIDELINE2010 = PublishedValue(
    name="HOPS_TIMED_6M_SEM_GUIDELINE2010",
    value=0.06,
    unit="s",
    definition=f"{_SEM}, 6-m timed hop",
    population="healthy adults",
    source=GUIDELINE_2010,
    known="full text",
    place="table on the 6-m timed hop",
)
HOPS_MEDIAL_TRIPLE_SEM_DINGENEN2019 = PublishedValue(
    name="HOPS_MEDIAL_TRIPLE_SEM_DINGENEN2019",
    value=4.1,
    low=2.6,
    high=4.1,
    spread_is="range over single, triple, medial triple and rotational hop",
    unit="pct",
    definition=f"{_SEM} in percent of the mean, largest of four single-leg hop tests",
    population="healthy adults",
    n=16,
    source=DINGENEN_2019,
    known="abstract",
    place="abstract",
)
HOPS_MEDIAL_TRIPLE_SEM_KIVLAN2013 = PublishedValue(
    name="HOPS_MEDIAL_TRIPLE_SEM_KIVLAN2013",
    value=7.51,
    unit="cm",
    definition=f"{_SEM}, medial triple hop",
    population="dancers",
    source=KIVLAN_2013,
    known="secondary",
)
HOPS_SIDE_HOP_10_LSI_MIRKOVIC2022 = PublishedValue(
    name="HOPS_SIDE_HOP_10_LSI_MIRKOVIC2022",
    value=None,
    low=99.9,
    high=105.5,
    unit="pct",
    definition="limb symmetry index, side hop timed for ten, session means with strong learning",
    population="healthy men over seven sessions",
    n=15,
    source=MIRKOVIC_2022,
    known="abstract",
    place="abstract, printed as 0.999 to 1.055",
    spread_is="range over sessions",
    caution="several practice sessions are needed before the result is stable",
)

# -- our own conventions, said to be so ----------------------------------------------

HOPS_UNINVOLVED_FLAG_OURS = PublishedValue(
    name="HOPS_UNINVOLVED_FLAG_OURS",
    value=110.0,
    unit="pct",
    operator=">",
    definition="index above which the other limb is looked at (kneecase's own convention)",
    population="",
    source=COMMON_PRACTICE,
    known="common practice",
)
HOPS_TOO_CLOSE_OURS = PublishedValue(
    name="HOPS_TOO_CLOSE_OURS",
    value=None,
    low=10.0,
    high=90.0,
    unit="pct",
    definition="chance that the true value passes, inside which a result is too close to call "
    "(kneecase's own convention)",
    population="",
    source=COMMON_PRACTICE,
    known="common practice",
    spread_is="both ends included",
)
