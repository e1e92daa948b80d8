"""Published values: how much an outcome score must change to matter to people."""

from __future__ import annotations

from functools import partial

from kneecase.evidence.provenance import PublishedValue, Source
from kneecase.evidence.score_errors import PIVA_2009, WOBY_2005

ORTHOPEDICS_2021 = Source(
    key="orthopedics-2021",
    authors="Authors not read",
    year=2021,
    title="The minimally clinically important difference and substantial clinical benefit in anterior "
    "cruciate ligament reconstruction: a time-to-achievement analysis",
    venue="Orthopedics 44:299-305",
    kind="registry study",
    known="abstract",
    doi="10.3928/01477447-20210819-03",
)
IRRGANG_2006 = Source(
    key="irrgang-2006",
    authors="Irrgang JJ and others",
    year=2006,
    title="Responsiveness of the IKDC subjective knee form",
    venue="Am J Sports Med",
    kind="responsiveness study",
    known="secondary",
)
ROOS_LOHMANDER_2003 = Source(
    key="roos-lohmander-2003",
    authors="Roos EM, Lohmander LS",
    year=2003,
    title="The Knee injury and Osteoarthritis Outcome Score (KOOS): from joint injury to osteoarthritis",
    venue="Health Qual Life Outcomes",
    kind="review",
    known="from memory",
)
LYSHOLM_MCID_2023 = Source(
    key="lysholm-mcid-2023",
    authors="Authors not read",
    year=2023,
    title="Calculation of the minimal important clinical difference of the Lysholm and IKDC scores after "
    "anterior cruciate ligament reconstruction",
    venue="Rev Bras Ortop 58:079-084",
    kind="responsiveness study",
    known="abstract",
    doi="10.1055/s-0042-1756330",
)
PIUSSI_2025 = Source(
    key="piussi-2025",
    authors="Piussi R and others",
    year=2025,
    title="Important change of the ACL-RSI over the time after reconstruction (title in our words)",
    venue="Knee Surg Sports Traumatol Arthrosc",
    kind="responsiveness study",
    known="abstract",
    doi="10.1002/ksa.70044",
)

_points = partial(PublishedValue, unit="points")
SCORES_IKDC_MCID_IRRGANG2006 = _points(
    name="SCORES_IKDC_MCID_IRRGANG2006",
    value=11.5,
    definition="smallest change of the IKDC subjective score that people notice",
    population="people treated for knee injuries",
    source=IRRGANG_2006,
    known="secondary",
)
_before_after = partial(
    _points,
    source=ORTHOPEDICS_2021,
    known="abstract",
    population="people after ACL reconstruction against before it, 30.9 years on average",
    n=143,
    caution="Change from before the operation; another anchor or start gives another number.",
)
SCORES_IKDC_MCID_ORTHOPEDICS2021 = _before_after(
    name="SCORES_IKDC_MCID_ORTHOPEDICS2021",
    value=18.9,
    definition="smallest change that matters, IKDC subjective score",
)
SCORES_IKDC_SCB_ORTHOPEDICS2021 = _before_after(
    name="SCORES_IKDC_SCB_ORTHOPEDICS2021",
    value=29.6,
    definition="change that is a substantial benefit, IKDC subjective score",
)
SCORES_KOOS_SYMPTOMS_MCID_ORTHOPEDICS2021 = _before_after(
    name="SCORES_KOOS_SYMPTOMS_MCID_ORTHOPEDICS2021",
    value=15.7,
    definition="smallest change that matters, KOOS symptoms",
)
SCORES_KOOS_SYMPTOMS_SCB_ORTHOPEDICS2021 = _before_after(
    name="SCORES_KOOS_SYMPTOMS_SCB_ORTHOPEDICS2021",
    value=25.3,
    definition="change that is a substantial benefit, KOOS symptoms",
)
SCORES_KOOS_PAIN_MCID_ORTHOPEDICS2021 = _before_after(
    name="SCORES_KOOS_PAIN_MCID_ORTHOPEDICS2021",
    value=11.9,
    definition="smallest change that matters, KOOS pain",
)
SCORES_KOOS_PAIN_SCB_ORTHOPEDICS2021 = _before_after(
    name="SCORES_KOOS_PAIN_SCB_ORTHOPEDICS2021",
    value=15.5,
    definition="change that is a substantial benefit, KOOS pain",
)
SCORES_KOOS_ADL_MCID_ORTHOPEDICS2021 = _before_after(
    name="SCORES_KOOS_ADL_MCID_ORTHOPEDICS2021",
    value=13.3,
    definition="smallest change that matters, KOOS daily living",
)
SCORES_KOOS_ADL_SCB_ORTHOPEDICS2021 = _before_after(
    name="SCORES_KOOS_ADL_SCB_ORTHOPEDICS2021",
    value=20.0,
    definition="change that is a substantial benefit, KOOS daily living",
)
SCORES_KOOS_QOL_MCID_ORTHOPEDICS2021 = _before_after(
    name="SCORES_KOOS_QOL_MCID_ORTHOPEDICS2021",
    value=25.9,
    definition="smallest change that matters, KOOS quality of life",
)
SCORES_KOOS_QOL_SCB_ORTHOPEDICS2021 = _before_after(
    name="SCORES_KOOS_QOL_SCB_ORTHOPEDICS2021",
    value=35.8,
    definition="change that is a substantial benefit, KOOS quality of life",
)
SCORES_KOOS_SPORT_MCID_ORTHOPEDICS2021 = _before_after(
    name="SCORES_KOOS_SPORT_MCID_ORTHOPEDICS2021",
    value=27.0,
    definition="smallest change that matters, KOOS sport",
)
SCORES_KOOS_SPORT_SCB_ORTHOPEDICS2021 = _before_after(
    name="SCORES_KOOS_SPORT_SCB_ORTHOPEDICS2021",
    value=43.0,
    definition="change that is a substantial benefit, KOOS sport",
)
SCORES_KOOS_RULE_OF_THUMB_ROOS2003 = _points(
    name="SCORES_KOOS_RULE_OF_THUMB_ROOS2003",
    value=None,
    low=8.0,
    high=10.0,
    spread_is="older rule of thumb",
    definition="change of a KOOS subscale that matters",
    population="people with knee injuries",
    source=ROOS_LOHMANDER_2003,
    known="from memory",
)
SCORES_LYSHOLM_MCID_BRASORTOP2023 = _points(
    name="SCORES_LYSHOLM_MCID_BRASORTOP2023",
    value=5.5,
    definition="smallest change of the Lysholm total that matters",
    population="people after ACL reconstruction, 27.1 years on average",
    n=59,
    source=LYSHOLM_MCID_2023,
    known="abstract",
    caution="Smaller than the detectable change of 8.9: below that, one person's change may be error.",
)
SCORES_ACLRSI_MCID_PIUSSI2025 = _points(
    name="SCORES_ACLRSI_MCID_PIUSSI2025",
    value=None,
    low=13.6,
    high=30.4,
    spread_is="range over 8 to 18 months",
    definition="smallest change of the ACL-RSI that matters",
    population="people after ACL reconstruction",
    n=704,
    source=PIUSSI_2025,
    known="abstract",
    caution="Unstable over time; some estimates of important change were zero or below.",
)
SCORES_KOSADL_MCID_PIVA2009 = _points(
    name="SCORES_KOSADL_MCID_PIVA2009",
    value=7.1,
    definition="smallest change of the KOS daily-living score that matters",
    population="people with patellofemoral pain",
    source=PIVA_2009,
    known="from memory",
)
SCORES_TSK11_MCID_WOBY2005 = _points(
    name="SCORES_TSK11_MCID_WOBY2005",
    value=4.0,
    definition="smallest change of the TSK-11 that matters",
    population="people with long-standing pain",
    source=WOBY_2005,
    known="from memory",
)
