"""Published values: what happened to athletes who did and did not meet a battery; sources disagree.

Outcomes differ (any knee reinjury, graft rupture, any second ACL injury) and are never mixed in one
sentence.  Nothing here is a risk score for one athlete.
"""

from __future__ import annotations

from kneecase.evidence.clearance import GOKELER_2016, GRINDEM_2016, GRINDEM_2020, KYRITSIS_2016
from kneecase.evidence.provenance import PublishedValue, Source

NAWASREH_2017 = Source(
    key="nawasreh-2017",
    authors="Nawasreh Z, et al.",
    year=2017,
    title="Functional performance 6 months after ACL reconstruction can predict return to participation "
    "in the same preinjury activity level 12 and 24 months after surgery",
    venue="PMC5376235",
    kind="cohort",
    known="abstract",
)
WELLING_2018 = Source(
    key="welling-2018",
    authors="Welling W, et al.",
    year=2018,
    title="Low rates of patients meeting return to sport criteria 9 months after anterior cruciate "
    "ligament reconstruction: a prospective longitudinal study",
    venue="Knee Surg Sports Traumatol Arthrosc",
    doi="10.1007/s00167-018-4916-4",
    kind="cohort",
    known="abstract",
)
CRISTIANI_2019 = Source(
    key="cristiani-2019",
    authors="Cristiani R, et al.",
    year=2019,
    title="Only one patient out of five achieves symmetrical knee function 6 months after primary "
    "anterior cruciate ligament reconstruction",
    venue="Knee Surg Sports Traumatol Arthrosc",
    doi="10.1007/s00167-019-05396-4",
    kind="registry study",
    known="abstract",
)
WEBSTER_2019 = Source(
    key="webster-2019",
    authors="Webster KE, Hewett TE",
    year=2019,
    title="What is the evidence for and validity of return-to-sport testing after anterior cruciate "
    "ligament reconstruction surgery? A systematic review and meta-analysis",
    venue="Sports Med",
    doi="10.1007/s40279-019-01093-x",
    kind="meta-analysis",
    known="abstract",
)
ZHOU_2024 = Source(
    key="zhou-2024",
    authors="Zhou W, et al.",
    year=2024,
    title="Passing return-to-sport tests and second injury after ACL reconstruction: meta-analysis "
    "(title described)",
    venue="PeerJ",
    doi="10.7717/peerj.17279",
    kind="meta-analysis",
    known="abstract",
)

# -- few pass, also among those who were never injured -------------------------------

SECOND_INJURY_PASS_ALL_CRISTIANI2019 = PublishedValue(
    name="SECOND_INJURY_PASS_ALL_CRISTIANI2019",
    value=19.6,
    unit="pct",
    definition="share with an index ≥ 90 % in quadriceps, hamstrings and single hop, 6 months",
    population="registry of patients after ACL reconstruction",
    n=3541,
    source=CRISTIANI_2019,
    known="abstract",
    place="abstract",
)
SECOND_INJURY_PASS_ALL_GOKELER2016 = PublishedValue(
    name="SECOND_INJURY_PASS_ALL_GOKELER2016",
    value=7.1,
    unit="pct",
    definition="share that passed the whole battery, 6.5 months (2 of 28, percentage worked out here)",
    population="patients after ACL reconstruction",
    n=28,
    source=GOKELER_2016,
    known="abstract",
    place="abstract",
)
SECOND_INJURY_PASS_ALL_WELLING2018 = PublishedValue(
    name="SECOND_INJURY_PASS_ALL_WELLING2018",
    value=11.3,
    unit="pct",
    definition="share that passed the whole battery, 9.5 months (3.2 % of the same at 6.5 months)",
    population="patients after ACL reconstruction",
    n=62,
    source=WELLING_2018,
    known="abstract",
    place="abstract",
)
SECOND_INJURY_PASS_ALL_WEBSTER2019 = PublishedValue(
    name="SECOND_INJURY_PASS_ALL_WEBSTER2019",
    value=23.0,
    unit="pct",
    definition="share that passed a return-to-sport battery, pooled",
    population="18 studies after ACL reconstruction",
    source=WEBSTER_2019,
    known="abstract",
    place="abstract",
)

# -- what passing went with ----------------------------------------------------------


def _ratio(
    name: str, value: float, low: float, high: float, definition: str, population: str, source: Source
) -> PublishedValue:
    """A ratio with its 95 % interval, read in an abstract."""
    return PublishedValue(
        name=name,
        value=value,
        low=low,
        high=high,
        spread_is="95 % interval",
        unit="fraction",
        definition=definition,
        population=population,
        source=source,
        known="abstract",
        place="abstract",
    )


SECOND_INJURY_HR_PASS_GRINDEM2016 = PublishedValue(
    name="SECOND_INJURY_HR_PASS_GRINDEM2016",
    value=0.16,
    unit="fraction",
    definition="hazard ratio of any knee reinjury, passed against failed (5.6 % against 38.2 %)",
    population="athletes in pivoting sports, two years",
    n=106,
    source=GRINDEM_2016,
    known="abstract",
    place="abstract",
    caution="p = .075: by counts worked back here about 18 athletes passed and one of them was injured "
    "again; the headline of 84 % rests on that one",
)
SECOND_INJURY_HR_PASS_GRINDEM2020 = _ratio(
    "SECOND_INJURY_HR_PASS_GRINDEM2020",
    0.08,
    0.01,
    0.6,
    "hazard ratio of a second ACL injury, passed against failed",
    "213 athletes, two years",
    GRINDEM_2020,
)
SECOND_INJURY_HR_FAIL_KYRITSIS2016 = _ratio(
    "SECOND_INJURY_HR_FAIL_KYRITSIS2016",
    4.1,
    1.9,
    9.2,
    "hazard ratio of graft rupture, not all six criteria against all six",
    "158 male professional athletes",
    KYRITSIS_2016,
)
SECOND_INJURY_RR_GRAFT_WEBSTER2019 = _ratio(
    "SECOND_INJURY_RR_GRAFT_WEBSTER2019",
    0.40,
    0.23,
    0.69,
    "risk ratio of graft rupture, passed against failed",
    "18 studies pooled",
    WEBSTER_2019,
)
SECOND_INJURY_RR_CONTRALATERAL_WEBSTER2019 = _ratio(
    "SECOND_INJURY_RR_CONTRALATERAL_WEBSTER2019",
    3.35,
    1.52,
    7.37,
    "risk ratio of an ACL injury of the other knee, passed against failed",
    "18 studies pooled",
    WEBSTER_2019,
)
SECOND_INJURY_RR_ALL_ACL_WEBSTER2019 = _ratio(
    "SECOND_INJURY_RR_ALL_ACL_WEBSTER2019",
    0.80,
    0.27,
    2.3,
    "risk ratio of any ACL injury, passed against failed",
    "18 studies pooled",
    WEBSTER_2019,
)
SECOND_INJURY_OR_GRAFT_ZHOU2024 = _ratio(
    "SECOND_INJURY_OR_GRAFT_ZHOU2024",
    0.49,
    0.33,
    0.75,
    "odds ratio of graft rupture, passed against failed",
    "9 studies, 1,410 athletes pooled",
    ZHOU_2024,
)
SECOND_INJURY_OR_CONTRALATERAL_ZHOU2024 = _ratio(
    "SECOND_INJURY_OR_CONTRALATERAL_ZHOU2024",
    1.53,
    0.63,
    3.71,
    "odds ratio of an ACL injury of the other knee, passed against failed",
    "9 studies, 1,410 athletes pooled",
    ZHOU_2024,
)
SECOND_INJURY_OR_SECOND_ACL_ZHOU2024 = _ratio(
    "SECOND_INJURY_OR_SECOND_ACL_ZHOU2024",
    0.98,
    0.55,
    1.75,
    "odds ratio of a second ACL injury of either knee, passed against failed",
    "9 studies, 1,410 athletes pooled",
    ZHOU_2024,
)
SECOND_INJURY_SAME_LEVEL_PASSED_NAWASREH2017 = PublishedValue(
    name="SECOND_INJURY_SAME_LEVEL_PASSED_NAWASREH2017",
    value=81.0,
    unit="pct",
    definition="share back at the same level at 12 months, passed at 6 months (44 % of those who failed)",
    population="level 1 and 2 athletes",
    n=108,
    source=NAWASREH_2017,
    known="abstract",
    place="abstract",
)
