"""Published values: thresholds that batteries hold results against, and the conditions for hopping.

Thresholds differ between sources, also in whether the line itself passes (≥ 90 or > 90); all are kept,
each with its operator.  What happened to athletes who passed or failed is in
:mod:`kneecase.evidence.second_injury`.
"""

from __future__ import annotations

from kneecase.evidence.course_targets import ADAMS_2012
from kneecase.evidence.motion import COMMON_PRACTICE
from kneecase.evidence.provenance import PublishedValue, Source

GRINDEM_2020 = Source(
    key="grindem-2020",
    authors="Grindem H, et al.",
    year=2020,
    title="Return to sport, its timing and second ACL injury in an athlete cohort (title described)",
    venue="Br J Sports Med 54:1099-1102",
    doi="10.1136/bjsports-2019-100623",
    kind="cohort",
    known="abstract",
)
GRINDEM_2016 = Source(
    key="grindem-2016",
    authors="Grindem H, Snyder-Mackler L, et al.",
    year=2016,
    title="Simple decision rules can reduce reinjury risk by 84% after ACL reconstruction",
    venue="Br J Sports Med 50:804-808",
    doi="10.1136/bjsports-2016-096031",
    kind="cohort",
    known="abstract",
)
KYRITSIS_2016 = Source(
    key="kyritsis-2016",
    authors="Kyritsis P, et al.",
    year=2016,
    title="Likelihood of ACL graft rupture: not meeting six clinical discharge criteria before return "
    "to sport is associated with a four times greater risk of rupture",
    venue="Br J Sports Med 50:946-951",
    doi="10.1136/bjsports-2015-095908",
    kind="cohort",
    known="abstract",
)
GOKELER_2016 = Source(
    key="gokeler-2016",
    authors="Gokeler A, et al.",
    year=2016,
    title="Development of a test battery to enhance safe return to sports after anterior cruciate "
    "ligament reconstruction",
    venue="Knee Surg Sports Traumatol Arthrosc 25:192-199",
    doi="10.1007/s00167-016-4246-3",
    kind="cross-sectional study",
    known="abstract",
)
RAMBAUD_2018 = Source(
    key="rambaud-2018",
    authors="Rambaud AJM, et al.",
    year=2018,
    title="Criteria for return to running after anterior cruciate ligament reconstruction: a scoping review",
    venue="Br J Sports Med 52:1437-1444",
    doi="10.1136/bjsports-2017-098602",
    kind="scoping review",
    known="secondary",
)
THOMEE_2011 = Source(
    key="thomee-2011",
    authors="Thomeé R, et al.",
    year=2011,
    title="Muscle strength and hop performance criteria prior to return to sports after ACL reconstruction",
    venue="Knee Surg Sports Traumatol Arthrosc 19:1798-1805",
    kind="consensus",
    known="from memory",
)
KOTSIFAKI_2023 = Source(
    key="kotsifaki-2023",
    authors="Kotsifaki R, et al.",
    year=2023,
    title="Clinical practice guideline for rehabilitation after ACL reconstruction (title described)",
    venue="Br J Sports Med 57:500-514",
    doi="10.1136/bjsports-2022-106158",
    kind="clinical guideline",
    known="secondary",
)

# -- symmetry thresholds for sport ---------------------------------------------------

CLEARANCE_LSI_GRINDEM2020 = PublishedValue(
    name="CLEARANCE_LSI_GRINDEM2020",
    value=90.0,
    unit="pct",
    operator="≥",
    definition="limb symmetry index to reach in each hop test and in quadriceps strength",
    population="athletes after ACL reconstruction, followed two years",
    n=213,
    source=GRINDEM_2020,
    known="abstract",
    place="abstract",
)
CLEARANCE_LSI_GRINDEM2016 = PublishedValue(
    name="CLEARANCE_LSI_GRINDEM2016",
    value=90.0,
    unit="pct",
    operator=">",
    definition="limb symmetry index to exceed in the hop tests and in quadriceps strength",
    population="athletes in pivoting sports after ACL reconstruction, followed two years",
    n=106,
    source=GRINDEM_2016,
    known="abstract",
    place="abstract",
)
CLEARANCE_LSI_KYRITSIS2016 = PublishedValue(
    name="CLEARANCE_LSI_KYRITSIS2016",
    value=90.0,
    unit="pct",
    operator=">",
    definition="limb symmetry index to exceed in single, triple and triple crossover hop",
    population="male professional athletes after ACL reconstruction",
    n=158,
    source=KYRITSIS_2016,
    known="full text",
    place="table of discharge criteria",
)
CLEARANCE_LSI_GOKELER2016 = PublishedValue(
    name="CLEARANCE_LSI_GOKELER2016",
    value=90.0,
    unit="pct",
    operator=">",
    definition="limb symmetry index to exceed in isokinetic strength and in three hop tests",
    population="patients 6.5 months after ACL reconstruction",
    n=28,
    source=GOKELER_2016,
    known="abstract",
    place="abstract",
)
CLEARANCE_LSI_PIVOTING_THOMEE2011 = PublishedValue(
    name="CLEARANCE_LSI_PIVOTING_THOMEE2011",
    value=100.0,
    unit="pct",
    operator="≥",
    definition="knee extension and flexion strength, pivoting, contact and competitive sport (hops 90 %)",
    population="consensus of experts",
    source=THOMEE_2011,
    known="from memory",
)
CLEARANCE_STRENGTH_LSI_PIVOTING_KOTSIFAKI2023 = PublishedValue(
    name="CLEARANCE_STRENGTH_LSI_PIVOTING_KOTSIFAKI2023",
    value=100.0,
    unit="pct",
    operator="≥",
    definition="isokinetic quadriceps and hamstring symmetry at 60°/s, pivoting sport",
    population="guideline for return to sport",
    source=KOTSIFAKI_2023,
    known="secondary",
)
CLEARANCE_RUNNING_LSI_RAMBAUD2018 = PublishedValue(
    name="CLEARANCE_RUNNING_LSI_RAMBAUD2018",
    value=70.0,
    unit="pct",
    operator=">",
    definition="strength and hop symmetry index before running",
    population="scoping review of 201 studies",
    source=RAMBAUD_2018,
    known="secondary",
)
CLEARANCE_RUNNING_QUADRICEPS_LSI_KOTSIFAKI2023 = PublishedValue(
    name="CLEARANCE_RUNNING_QUADRICEPS_LSI_KOTSIFAKI2023",
    value=80.0,
    unit="pct",
    operator=">",
    definition="quadriceps symmetry index before running",
    population="guideline for return to running",
    source=KOTSIFAKI_2023,
    known="secondary",
)

# -- before maximal hopping ----------------------------------------------------------

CLEARANCE_HOP_QUADRICEPS_INDEX_ADAMS2012 = PublishedValue(
    name="CLEARANCE_HOP_QUADRICEPS_INDEX_ADAMS2012",
    value=80.0,
    unit="pct",
    operator="≥",
    definition="quadriceps index before hop testing",
    population="after ACL reconstruction, from about week 12",
    source=ADAMS_2012,
    known="from memory",
)
CLEARANCE_HOP_EFFUSION_ADAMS2012 = PublishedValue(
    name="CLEARANCE_HOP_EFFUSION_ADAMS2012",
    value=1.0,
    unit="grade",
    operator="≤",
    definition="effusion grade before hop testing: at most trace (zero is 0, trace is 1)",
    population="after ACL reconstruction, from about week 12",
    source=ADAMS_2012,
    known="from memory",
)
CLEARANCE_HOP_PAIN_PRACTICE = PublishedValue(
    name="CLEARANCE_HOP_PAIN_PRACTICE",
    value=2.0,
    unit="points",
    operator="≤",
    definition="knee pain, 0 to 10, before maximal hopping",
    population="",
    source=COMMON_PRACTICE,
    known="common practice",
)
CLEARANCE_RUNNING_PAIN_RAMBAUD2018 = PublishedValue(
    name="CLEARANCE_RUNNING_PAIN_RAMBAUD2018",
    value=2.0,
    unit="points",
    operator="<",
    definition="knee pain, 0 to 10, before running",
    population="scoping review of 201 studies",
    source=RAMBAUD_2018,
    known="secondary",
)
CLEARANCE_HOP_FRESHNESS_OURS = PublishedValue(
    name="CLEARANCE_HOP_FRESHNESS_OURS",
    value=7.0,
    unit="days",
    operator="≤",
    definition="age of an effusion, motion or pain finding that still speaks for the day of hopping "
    "(kneecase's own convention)",
    population="",
    source=COMMON_PRACTICE,
    known="common practice",
)
CLEARANCE_HOP_STRENGTH_FRESHNESS_OURS = PublishedValue(
    name="CLEARANCE_HOP_STRENGTH_FRESHNESS_OURS",
    value=28.0,
    unit="days",
    operator="≤",
    definition="age of a quadriceps index that still speaks for the day of hopping (kneecase's own "
    "convention)",
    population="",
    source=COMMON_PRACTICE,
    known="common practice",
)
CLEARANCE_TIME_GRINDEM2016 = PublishedValue(
    name="CLEARANCE_TIME_GRINDEM2016",
    value=51.0,
    unit="pct",
    definition="lower reinjury rate for each month return is put off, seen up to month 9 and not beyond",
    population="athletes in pivoting sports, any knee reinjury within two years",
    n=106,
    source=GRINDEM_2016,
    known="abstract",
    place="abstract",
    caution="not to be compounded or carried past nine months",
)
