"""Published values: readiness and fear of movement: lines that were drawn, and how they contradict."""

from __future__ import annotations

from functools import partial

from kneecase.evidence.clearance import GOKELER_2016
from kneecase.evidence.provenance import PublishedValue, Source

SADEQI_2018 = Source(
    key="sadeqi-2018",
    authors="Sadeqi M and others",
    year=2018,
    title="Progression of the psychological ACL-RSI score and return to sport after ACL reconstruction",
    venue="Orthop J Sports Med",
    kind="cohort",
    known="secondary",
)
UEDA_2024 = Source(
    key="ueda-2024",
    authors="Ueda Y and others",
    year=2024,
    title="Association between psychological readiness to return to sports at 3 months postoperatively "
    "and risk of second ACL injury",
    venue="Orthop J Sports Med 12(4)",
    kind="propensity-matched cohort",
    known="abstract",
    doi="10.1177/23259671241239325",
)
MCPHERSON_2019 = Source(
    key="mcpherson-2019",
    authors="McPherson AL and others",
    year=2019,
    title="Psychological readiness to return to sport is associated with second anterior cruciate ligament "
    "injuries",
    venue="Am J Sports Med",
    kind="cohort",
    known="abstract",
)
SELL_2024 = Source(
    key="sell-2024",
    authors="Sell TC and others",
    year=2024,
    title="Anterior cruciate ligament return to sport after injury scale (ACL-RSI) scores over time after "
    "anterior cruciate ligament reconstruction",
    venue="Sports Med Open 10:49",
    kind="meta-analysis",
    known="abstract",
    doi="10.1186/s40798-024-00712-w",
)
PATERNO_2018 = Source(
    key="paterno-2018",
    authors="Paterno MV and others",
    year=2018,
    title="Fear of movement, activity and second ACL injury: pilot (title in our words)",
    venue="Sports Health 10:228-233",
    kind="pilot cohort",
    known="from memory",
)

_NEVER_SAFETY = "A signal of returning to sport, never of safety."

_readiness = partial(PublishedValue, unit="points", caution=_NEVER_SAFETY)
READINESS_BATTERY_LINE_GOKELER2016 = _readiness(
    name="READINESS_BATTERY_LINE_GOKELER2016",
    value=56.0,
    operator=">",
    definition="ACL-RSI line used in test batteries",
    population="people after ACL reconstruction, 6.5 months",
    n=28,
    source=GOKELER_2016,
    known="abstract",
    caution=_NEVER_SAFETY + " Drawn from early scores and return at 12 months (Ardern 2013, from memory).",
)
READINESS_RETURN_SADEQI2018 = _readiness(
    name="READINESS_RETURN_SADEQI2018",
    value=65.0,
    operator="≥",
    definition="ACL-RSI at 6 months that goes with return to sport",
    population="people after ACL reconstruction",
    source=SADEQI_2018,
    known="secondary",
)
READINESS_EARLY_HIGH_UEDA2024 = _readiness(
    name="READINESS_EARLY_HIGH_UEDA2024",
    value=17.6,
    unit="pct",
    definition="second ACL injury within 24 months, ACL-RSI 65 or more at 3 months: more than with less",
    population="people after ACL reconstruction with hamstring tendon, matched pairs",
    n=169,
    source=UEDA_2024,
    known="abstract",
)
_young = partial(
    _readiness,
    source=MCPHERSON_2019,
    known="abstract",
    population="people of 20 years or less who had returned to sport, 12 months after ACL reconstruction",
)
READINESS_YOUNG_LINE_MCPHERSON2019 = _young(
    name="READINESS_YOUNG_LINE_MCPHERSON2019",
    value=76.7,
    definition="ACL-RSI line with 90 % sensitivity for a second injury in the young",
    caution=_NEVER_SAFETY + " No difference in older people; 52 of 329 of all ages were injured again.",
)
READINESS_YOUNG_INJURED_MCPHERSON2019 = _young(
    name="READINESS_YOUNG_INJURED_MCPHERSON2019",
    value=60.8,
    definition="mean ACL-RSI of the young who were injured again",
)
READINESS_YOUNG_UNINJURED_MCPHERSON2019 = _young(
    name="READINESS_YOUNG_UNINJURED_MCPHERSON2019",
    value=71.5,
    definition="mean ACL-RSI of the young who were not injured again",
)
_pooled = partial(
    _readiness, source=SELL_2024, known="abstract", population="83 studies pooled, evidence weak or limited"
)
READINESS_BEFORE_SELL2024 = _pooled(
    name="READINESS_BEFORE_SELL2024", value=44.4, definition="mean ACL-RSI before the operation"
)
READINESS_EARLY_SELL2024 = _pooled(
    name="READINESS_EARLY_SELL2024",
    value=61.5,
    low=58.6,
    high=64.4,
    spread_is="95 % interval",
    definition="mean ACL-RSI 3 to 6 months after ACL reconstruction",
)
_fear = partial(
    PublishedValue,
    source=PATERNO_2018,
    known="from memory",
    population="people returning to sport after ACL reconstruction, pilot",
    unit="points",
    operator="≥",
    caution="A pilot: a signal to talk about, not a risk for one person.",
)
READINESS_FEAR_ACTIVITY_PATERNO2018 = _fear(
    name="READINESS_FEAR_ACTIVITY_PATERNO2018",
    value=17.0,
    definition="TSK-11 that went with little activity",
)
READINESS_FEAR_INJURY_PATERNO2018 = _fear(
    name="READINESS_FEAR_INJURY_PATERNO2018",
    value=19.0,
    definition="TSK-11 that went with more second injury of the same knee (about 13 times)",
)
