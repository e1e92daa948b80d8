"""Published values: other screens of landing for ACL injury, which disagree with each other."""

from __future__ import annotations

from functools import partial

from kneecase.evidence.provenance import PublishedValue, Source

HEWETT_2005 = Source(
    key="hewett-2005",
    authors="Hewett TE and others",
    year=2005,
    title="Biomechanical measures of neuromuscular control and valgus loading of the knee predict "
    "anterior cruciate ligament injury risk in female athletes",
    venue="Am J Sports Med 33:492-501",
    kind="cohort",
    known="abstract",
    note="design read in the abstract; its numbers are second-hand or from memory",
)
KROSSHAUG_2016 = Source(
    key="krosshaug-2016",
    authors="Krosshaug T and others",
    year=2016,
    title="The vertical drop jump is a poor screening test for ACL injuries in female elite soccer "
    "and handball players",
    venue="Am J Sports Med 44:874-883",
    kind="cohort",
    known="abstract",
    doi="10.1177/0363546515625048",
)

_hewett = partial(
    PublishedValue,
    source=HEWETT_2005,
    population="female athletes, 9 ACL injuries; the test is the knee abduction moment",
    n=205,
    unit="fraction",
)
LANDING_MOMENT_CASES_HEWETT2005 = _hewett(
    name="LANDING_MOMENT_CASES_HEWETT2005",
    value=9.0,
    definition="athletes with an ACL injury",
    known="abstract",
)
LANDING_MOMENT_ATHLETES_HEWETT2005 = _hewett(
    name="LANDING_MOMENT_ATHLETES_HEWETT2005",
    value=205.0,
    definition="athletes tested",
    known="abstract",
)
LANDING_MOMENT_SENSITIVITY_HEWETT2005 = _hewett(
    name="LANDING_MOMENT_SENSITIVITY_HEWETT2005",
    value=0.78,
    definition="sensitivity of the knee abduction moment for ACL injury",
    known="from memory",
)
LANDING_MOMENT_SPECIFICITY_HEWETT2005 = _hewett(
    name="LANDING_MOMENT_SPECIFICITY_HEWETT2005",
    value=0.73,
    definition="specificity of the knee abduction moment for ACL injury",
    known="from memory",
)
_krosshaug = partial(
    PublishedValue,
    source=KROSSHAUG_2016,
    known="abstract",
    unit="fraction",
    population="elite female football and handball players, 42 new ACL injuries",
    n=710,
    spread_is="interval as printed",
)
LANDING_MEDIAL_KNEE_ODDS_KROSSHAUG2016 = _krosshaug(
    name="LANDING_MEDIAL_KNEE_ODDS_KROSSHAUG2016",
    value=1.40,
    low=1.12,
    high=1.74,
    definition="odds ratio of a new ACL injury for each standard deviation of medial knee displacement",
    caution="The authors judged the drop jump a poor screening test.",
)
LANDING_PREVIOUS_INJURY_RISK_KROSSHAUG2016 = _krosshaug(
    name="LANDING_PREVIOUS_INJURY_RISK_KROSSHAUG2016",
    value=3.8,
    low=2.1,
    high=7.1,
    definition="relative risk of a new ACL injury after an earlier one",
)
