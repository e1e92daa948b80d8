"""Published values: what a programme aims at, and what kneecase counts as fast, useful and flat.

Targets are kept apart from what was observed: a knee below a target line is not by that abnormal.
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from kneecase.evidence.motion import COMMON_PRACTICE
from kneecase.evidence.provenance import PublishedValue, Source

WILK_ARRIGO_2018 = Source(
    key="wilk-arrigo-2018",
    authors="Wilk KE, Arrigo CA",
    year=2018,
    title="Rehabilitation phases after ACL reconstruction, with motion milestones (title in our words)",
    venue="Clinics in Sports Medicine 37:363-374",
    kind="protocol",
    known="secondary",
    note="milestones read in a page that reproduces them",
)
ADAMS_2012 = Source(
    key="adams-2012",
    authors="Adams D and others",
    year=2012,
    title="Criterion-based progression after ACL reconstruction (title in our words)",
    venue="Journal of Orthopaedic and Sports Physical Therapy 42:601",
    kind="protocol",
    known="secondary",
    note="as reproduced in a trial's page",
)

_AIM = "programme milestone, not an observation"

COURSE_FLEXION_TARGET_WEEK1_WILK2018 = PublishedValue(
    name="COURSE_FLEXION_TARGET_WEEK1_WILK2018",
    value=90,
    unit="deg",
    definition="target knee flexion in week 1",
    population=_AIM,
    source=WILK_ARRIGO_2018,
    known="secondary",
)
COURSE_FLEXION_TARGET_WEEK2_WILK2018 = PublishedValue(
    name="COURSE_FLEXION_TARGET_WEEK2_WILK2018",
    value=105,
    unit="deg",
    definition="target knee flexion in week 2",
    population=_AIM,
    source=WILK_ARRIGO_2018,
    known="secondary",
)
COURSE_FLEXION_TARGET_WEEK3_WILK2018 = PublishedValue(
    name="COURSE_FLEXION_TARGET_WEEK3_WILK2018",
    value=None,
    low=125,
    high=130,
    unit="deg",
    definition="target knee flexion in weeks 3 to 4",
    population=_AIM,
    source=WILK_ARRIGO_2018,
    known="secondary",
)
COURSE_FLEXION_TARGET_WEEK5_WILK2018 = PublishedValue(
    name="COURSE_FLEXION_TARGET_WEEK5_WILK2018",
    value=None,
    low=135,
    high=140,
    unit="deg",
    definition="target knee flexion in weeks 5 to 6",
    population=_AIM,
    source=WILK_ARRIGO_2018,
    known="secondary",
)
COURSE_FLEXION_TARGET_WEEK5_PRACTICE = PublishedValue(
    name="COURSE_FLEXION_TARGET_WEEK5_PRACTICE",
    value=120,
    unit="deg",
    definition="common target of knee flexion at about five weeks",
    population=_AIM,
    source=COMMON_PRACTICE,
    known="common practice",
    caution="the observed median at six weeks is lower",
)
COURSE_FLEXION_TARGET_WITHIN_ADAMS2012 = PublishedValue(
    name="COURSE_FLEXION_TARGET_WITHIN_ADAMS2012",
    value=10,
    unit="deg",
    operator="≤",
    definition="target difference in flexion to the other knee in weeks 3 to 5",
    population=_AIM,
    source=ADAMS_2012,
    known="secondary",
)

COURSE_TARGET_WEEKS: Mapping[str, tuple[float, float]] = MappingProxyType(
    {
        "COURSE_FLEXION_TARGET_WEEK1_WILK2018": (1, 1),
        "COURSE_FLEXION_TARGET_WEEK2_WILK2018": (2, 2),
        "COURSE_FLEXION_TARGET_WEEK3_WILK2018": (3, 4),
        "COURSE_FLEXION_TARGET_WEEK5_WILK2018": (5, 6),
        "COURSE_FLEXION_TARGET_WEEK5_PRACTICE": (5, 5),
        "COURSE_FLEXION_TARGET_WITHIN_ADAMS2012": (3, 5),
    }
)
"""The weeks after surgery that a target line speaks of, first and last [weeks]."""

COURSE_FLEXION_STEEPEST_TARGET_WILK2018 = PublishedValue(
    name="COURSE_FLEXION_STEEPEST_TARGET_WILK2018",
    value=15,
    unit="deg_per_week",
    definition="steepest stretch of a published target line: 90° in week 1 to 105° in week 2",
    population=_AIM,
    source=WILK_ARRIGO_2018,
    known="derived",
)
COURSE_FLEXION_FAST_PRACTICE = PublishedValue(
    name="COURSE_FLEXION_FAST_PRACTICE",
    value=25,
    unit="deg_per_week",
    definition="gain of a knee that goes from 85° to 135° in two weeks, which no measurement error explains",
    population="",
    source=COMMON_PRACTICE,
    known="common practice",
    caution="position, warm-up and any manipulation are asked",
)
COURSE_FLEXION_USEFUL_GAIN_OURS = PublishedValue(
    name="COURSE_FLEXION_USEFUL_GAIN_OURS",
    value=2.5,
    unit="deg_per_week",
    definition="smallest useful gain of flexion: the 5° one tester can tell from error, in two weeks",
    population="any knee measured by one tester with one device",
    source=COMMON_PRACTICE,
    known="derived",
    caution="a choice of kneecase, not a published limit; another rate can be given",
)
COURSE_EXTENSION_USEFUL_GAIN_OURS = PublishedValue(
    name="COURSE_EXTENSION_USEFUL_GAIN_OURS",
    value=1.75,
    unit="deg_per_week",
    definition="smallest useful gain of extension: the 3.5° one tester can tell from error, in two weeks",
    population="any knee measured by one tester with one device",
    source=COMMON_PRACTICE,
    known="derived",
    caution="a choice of kneecase, not a published limit; another rate can be given",
)
COURSE_PLATEAU_SPAN_OURS = PublishedValue(
    name="COURSE_PLATEAU_SPAN_OURS",
    value=4,
    unit="weeks",
    definition="shortest time that can show a plateau: two intervals of two weeks",
    population="any knee",
    source=COMMON_PRACTICE,
    known="derived",
    caution="a choice of kneecase, not a published limit",
)
