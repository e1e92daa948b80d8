"""Published values: how motion was seen to come back after reconstruction.

Only what was observed stands here. What a programme aims at is another kind of number and has its own
file: a target line is never an expectation.
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from kneecase.evidence.provenance import PublishedValue, Source

OUWELEEN_2021 = Source(
    key="ouweleen-2021",
    authors="Ouweleen and others",
    year=2021,
    title="Arthrofibrosis after ACL reconstruction in adolescents (title in our words)",
    venue="Journal of Pediatric Orthopaedics",
    kind="cohort",
    known="abstract",
    note="PubMed number 33999561 by an index",
)
SHELBOURNE_2022 = Source(
    key="shelbourne-2022",
    authors="Shelbourne and others",
    year=2022,
    title="Motion after ACL reconstruction with a contralateral patellar tendon graft (title in our words)",
    venue="Orthopaedic Journal of Sports Medicine",
    kind="cohort",
    known="abstract",
    doi="10.1177/23259671221138103",
)
GUERRA_PINTO_2017 = Source(
    key="guerra-pinto-2017",
    authors="Guerra-Pinto and others",
    year=2017,
    title="Early extension deficit and cyclops, a case-control study (title in our words)",
    venue="Orthopaedic Journal of Sports Medicine",
    kind="case-control",
    known="abstract",
)
NOLL_2015 = Source(
    key="noll-2015",
    authors="Noll and others",
    year=2015,
    title="Early extension and extension at twelve weeks after ACL reconstruction (title in our words)",
    venue="Sports Health",
    kind="cohort",
    known="abstract",
)
COCHRANE_STRETCH_2017 = Source(
    key="cochrane-stretch-2017",
    authors="Cochrane review CD007455",
    year=2017,
    title="Stretch for the treatment and prevention of contracture",
    venue="Cochrane Library; Journal of Physiotherapy 63:67",
    kind="systematic review",
    known="abstract",
)

_ADOLESCENTS = "adolescents after ACL reconstruction, mean age 15.9 years"

COURSE_FLEXION_WEEK6_WELL_OUWELEEN2021 = PublishedValue(
    name="COURSE_FLEXION_WEEK6_WELL_OUWELEEN2021",
    value=110,
    unit="deg",
    definition="observed median knee flexion at 6 weeks, knees without arthrofibrosis at 3 months",
    population=_ADOLESCENTS,
    n=378,
    source=OUWELEEN_2021,
    known="abstract",
    caution="a median: half of the knees that did well were lower",
)
COURSE_FLEXION_WEEK6_STIFF_OUWELEEN2021 = PublishedValue(
    name="COURSE_FLEXION_WEEK6_STIFF_OUWELEEN2021",
    value=88,
    unit="deg",
    definition="observed median knee flexion at 6 weeks, knees with arthrofibrosis at 3 months",
    population=_ADOLESCENTS,
    n=378,
    source=OUWELEEN_2021,
    known="abstract",
)
COURSE_FLEXION_WEEK6_LOW_OUWELEEN2021 = PublishedValue(
    name="COURSE_FLEXION_WEEK6_LOW_OUWELEEN2021",
    value=90,
    unit="deg",
    operator="<",
    definition="knee flexion at 6 weeks below which arthrofibrosis at 3 months was more frequent",
    population=_ADOLESCENTS,
    n=378,
    source=OUWELEEN_2021,
    known="abstract",
)
COURSE_FLEXION_WEEK6_ODDS_OUWELEEN2021 = PublishedValue(
    name="COURSE_FLEXION_WEEK6_ODDS_OUWELEEN2021",
    value=14.7,
    low=5.4,
    high=39.8,
    spread_is="95 % interval",
    unit="fraction",
    definition="odds ratio of arthrofibrosis at 3 months with flexion < 90° at 6 weeks",
    population=_ADOLESCENTS,
    n=378,
    source=OUWELEEN_2021,
    known="abstract",
)
COURSE_EXTENSION_WEEK6_LACK_OUWELEEN2021 = PublishedValue(
    name="COURSE_EXTENSION_WEEK6_LACK_OUWELEEN2021",
    value=5,
    unit="deg",
    operator="≥",
    definition="extension deficit at 6 weeks from which arthrofibrosis at 3 months was more frequent",
    population=_ADOLESCENTS,
    n=378,
    source=OUWELEEN_2021,
    known="abstract",
)
COURSE_EXTENSION_WEEK6_ODDS_OUWELEEN2021 = PublishedValue(
    name="COURSE_EXTENSION_WEEK6_ODDS_OUWELEEN2021",
    value=4.7,
    low=1.8,
    high=12.2,
    spread_is="95 % interval",
    unit="fraction",
    definition="odds ratio of arthrofibrosis at 3 months with an extension deficit ≥ 5° at 6 weeks",
    population=_ADOLESCENTS,
    n=378,
    source=OUWELEEN_2021,
    known="abstract",
)
COURSE_FLEXION_NORMAL_MONTH3_SHELBOURNE2022 = PublishedValue(
    name="COURSE_FLEXION_NORMAL_MONTH3_SHELBOURNE2022",
    value=77,
    unit="pct",
    definition="observed share of knees with normal flexion by 3 months",
    population="contralateral patellar tendon grafts in a fast programme",
    n=2148,
    source=SHELBOURNE_2022,
    known="abstract",
)
COURSE_EXTENSION_NORMAL_WEEK1_SHELBOURNE2022 = PublishedValue(
    name="COURSE_EXTENSION_NORMAL_WEEK1_SHELBOURNE2022",
    value=95,
    unit="pct",
    definition="observed share of knees with normal extension at 1 week",
    population="contralateral patellar tendon grafts in a fast programme",
    n=2148,
    source=SHELBOURNE_2022,
    known="abstract",
)
COURSE_EXTENSION_DEFICIT_WEEK3_GUERRAPINTO2017 = PublishedValue(
    name="COURSE_EXTENSION_DEFICIT_WEEK3_GUERRAPINTO2017",
    value=22,
    unit="pct",
    definition="observed share of knees with any extension deficit at 3 weeks",
    population="controls of a case-control study of cyclops (of the cases, 71 %)",
    source=GUERRA_PINTO_2017,
    known="abstract",
)
COURSE_EXTENSION_DEFICIT_WEEK6_GUERRAPINTO2017 = PublishedValue(
    name="COURSE_EXTENSION_DEFICIT_WEEK6_GUERRAPINTO2017",
    value=7,
    unit="pct",
    definition="observed share of knees with any extension deficit at 6 weeks",
    population="controls of a case-control study of cyclops (of the cases, 60 %)",
    source=GUERRA_PINTO_2017,
    known="abstract",
)
COURSE_EXTENSION_WEEK4_TRACKS_NOLL2015 = PublishedValue(
    name="COURSE_EXTENSION_WEEK4_TRACKS_NOLL2015",
    value=0.639,
    unit="fraction",
    definition="observed correlation of the extension difference between knees at 4 weeks with that at 12",
    population="patients after ACL reconstruction",
    n=74,
    source=NOLL_2015,
    known="abstract",
)
COURSE_STRETCH_GAIN_COCHRANE2017 = PublishedValue(
    name="COURSE_STRETCH_GAIN_COCHRANE2017",
    value=1,
    low=0,
    high=2,
    spread_is="95 % interval",
    unit="deg",
    definition="joint motion that stretch adds over control",
    population="non-neurological contracture, 18 trials",
    n=865,
    source=COCHRANE_STRETCH_2017,
    known="abstract",
    caution="no dose of stretch can be promised a gain: look at this knee's own rate",
)

COURSE_OBSERVED_WEEKS: Mapping[str, tuple[float, float]] = MappingProxyType(
    {
        "COURSE_FLEXION_WEEK6_WELL_OUWELEEN2021": (6, 6),
        "COURSE_FLEXION_WEEK6_STIFF_OUWELEEN2021": (6, 6),
        "COURSE_FLEXION_WEEK6_LOW_OUWELEEN2021": (6, 6),
        "COURSE_FLEXION_NORMAL_MONTH3_SHELBOURNE2022": (12, 13),
        "COURSE_EXTENSION_NORMAL_WEEK1_SHELBOURNE2022": (1, 1),
        "COURSE_EXTENSION_DEFICIT_WEEK3_GUERRAPINTO2017": (3, 3),
        "COURSE_EXTENSION_DEFICIT_WEEK6_GUERRAPINTO2017": (6, 6),
        "COURSE_EXTENSION_WEEK4_TRACKS_NOLL2015": (4, 4),
        "COURSE_EXTENSION_WEEK6_LACK_OUWELEEN2021": (6, 6),
    }
)
"""The weeks after surgery that an observed value speaks of, first and last [weeks]."""
