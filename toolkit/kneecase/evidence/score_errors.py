"""Published values: how far an outcome score wobbles by itself in one person."""

from __future__ import annotations

from functools import partial

from kneecase.evidence.provenance import PublishedValue, Source

COLLINS_2011 = Source(
    key="collins-2011",
    authors="Collins NJ, Misra D, Felson DT, Crossley KM, Roos EM",
    year=2011,
    title="Measures of knee function",
    venue="Arthritis Care Res",
    kind="review",
    known="from memory",
)
PARADOWSKI_2013 = Source(
    key="paradowski-2013",
    authors="Paradowski PT and others",
    year=2013,
    title="Cross-cultural translation and measurement properties of the Polish version of the KOOS following "
    "anterior cruciate ligament reconstruction (title shortened)",
    venue="Health Qual Life Outcomes 11:107",
    kind="reliability study",
    known="abstract",
    doi="10.1186/1477-7525-11-107",
)
BRIGGS_2009 = Source(
    key="briggs-2009",
    authors="Briggs KK, Lysholm J, Tegner Y, Rodkey WG, Kocher MS, Steadman JR",
    year=2009,
    title="The reliability, validity, and responsiveness of the Lysholm score and Tegner activity scale "
    "for anterior cruciate ligament injuries of the knee: 25 years later",
    venue="Am J Sports Med 37:890-897",
    kind="reliability study",
    known="abstract",
    doi="10.1177/0363546508330143",
)
FALEIDE_2020 = Source(
    key="faleide-2020",
    authors="Faleide AGH and others",
    year=2020,
    title="Anterior cruciate ligament-return to sport after injury scale: validation of the Norwegian "
    "language version",
    venue="Knee Surg Sports Traumatol Arthrosc 28:2634-2643",
    kind="reliability study",
    known="abstract",
    doi="10.1007/s00167-020-05901-0",
)
PIVA_2009 = Source(
    key="piva-2009",
    authors="Piva SR, Gil AB, Moore CG, Fitzgerald GK",
    year=2009,
    title="Responsiveness of the activities of daily living scale of the knee outcome survey (title in part)",
    venue="J Rehabil Med",
    kind="responsiveness study",
    known="from memory",
)
WOBY_2005 = Source(
    key="woby-2005",
    authors="Woby SR and others",
    year=2005,
    title="The shortened scale for fear of movement, TSK-11 (title in our words)",
    venue="Pain",
    kind="development study",
    known="from memory",
)
JOHNSON_2020 = Source(
    key="johnson-2020",
    authors="Johnson JL, Irrgang JJ, Risberg MA, Snyder-Mackler L",
    year=2020,
    title="Comparing the responsiveness of the global rating scale with legacy knee outcome scores: "
    "a Delaware-Oslo cohort study",
    venue="PMC7448061",
    kind="responsiveness study",
    known="abstract",
)

_points = partial(PublishedValue, unit="points")
_collins = partial(
    _points, source=COLLINS_2011, known="from memory", population="people with knee injuries, several studies"
)
SCORES_IKDC_SEM_MIN_COLLINS2011 = _collins(
    name="SCORES_IKDC_SEM_MIN_COLLINS2011",
    value=3.2,
    definition="standard error of measurement of the IKDC subjective score, smallest of the studies",
)
SCORES_IKDC_SEM_MAX_COLLINS2011 = _collins(
    name="SCORES_IKDC_SEM_MAX_COLLINS2011",
    value=5.6,
    definition="standard error of measurement of the IKDC subjective score, largest of the studies",
)
SCORES_IKDC_MDC_COLLINS2011 = _collins(
    name="SCORES_IKDC_MDC_COLLINS2011",
    value=None,
    low=8.8,
    high=15.6,
    spread_is="range over studies",
    definition="minimal detectable change of the IKDC subjective score",
)
SCORES_KOOS_MDC_MIN_PARADOWSKI2013 = _points(
    name="SCORES_KOOS_MDC_MIN_PARADOWSKI2013",
    value=10.9,
    definition="minimal detectable change of a KOOS subscale in one person, smallest of the subscales",
    population="people a year after ACL reconstruction, Polish version",
    n=72,
    source=PARADOWSKI_2013,
    known="abstract",
)
SCORES_KOOS_MDC_MAX_PARADOWSKI2013 = _points(
    name="SCORES_KOOS_MDC_MAX_PARADOWSKI2013",
    value=20.2,
    definition="minimal detectable change of a KOOS subscale in one person, largest of the subscales",
    population="people a year after ACL reconstruction, Polish version",
    n=72,
    source=PARADOWSKI_2013,
    known="abstract",
    caution="Which subscale has which was not read, so the largest is used for all; "
    "the level was not read and is taken as 95 %.",
)
_briggs = partial(
    _points,
    source=BRIGGS_2009,
    known="abstract",
    population="people with ACL injuries, asked twice within four weeks at two years",
    n=50,
)
SCORES_LYSHOLM_MDC_BRIGGS2009 = _briggs(
    name="SCORES_LYSHOLM_MDC_BRIGGS2009",
    value=8.9,
    definition="minimal detectable change of the Lysholm total (ICC 0.9)",
    caution="The level was not read and is taken as 95 %.",
)
SCORES_TEGNER_MDC_BRIGGS2009 = _briggs(
    name="SCORES_TEGNER_MDC_BRIGGS2009",
    value=1.0,
    definition="minimal detectable change of the Tegner level (ICC 0.8)",
    caution="The level was not read and is taken as 95 %.",
)
_norwegian = partial(
    _points,
    source=FALEIDE_2020,
    known="abstract",
    population="people nine months after ACL reconstruction, Norwegian version",
    n=197,
)
SCORES_ACLRSI_SEM_FALEIDE2020 = _norwegian(
    name="SCORES_ACLRSI_SEM_FALEIDE2020",
    value=5.7,
    definition="standard error of measurement of the ACL-RSI (ICC 0.94)",
)
SCORES_ACLRSI_SDC_FALEIDE2020 = _norwegian(
    name="SCORES_ACLRSI_SDC_FALEIDE2020",
    value=15.8,
    definition="smallest detectable change of the ACL-RSI in one person",
)
SCORES_KOSADL_MDC_PIVA2009 = _points(
    name="SCORES_KOSADL_MDC_PIVA2009",
    value=11.4,
    definition="minimal detectable change of the KOS daily-living score",
    population="people with patellofemoral pain",
    source=PIVA_2009,
    known="from memory",
    caution="The level was not read and is taken as 95 %.",
)
SCORES_TSK11_MDC_WOBY2005 = _points(
    name="SCORES_TSK11_MDC_WOBY2005",
    value=5.6,
    definition="minimal detectable change of the TSK-11, about",
    population="people with long-standing pain",
    source=WOBY_2005,
    known="from memory",
    caution="The level was not read and is taken as 95 %.",
)
_global = partial(
    _points,
    source=JOHNSON_2020,
    known="abstract",
    population="people after ACL reconstruction, followed for five years",
    n=218,
)
SCORES_GLOBAL_MDC_MIN_JOHNSON2020 = _global(
    name="SCORES_GLOBAL_MDC_MIN_JOHNSON2020",
    value=2.9,
    definition="minimal detectable change of the global rating, by one of two methods",
)
SCORES_GLOBAL_MDC_MAX_JOHNSON2020 = _global(
    name="SCORES_GLOBAL_MDC_MAX_JOHNSON2020",
    value=4.8,
    definition="minimal detectable change of the global rating, by the other of two methods",
    caution="The level was not read and is taken as 95 %.",
)
