"""Published values: what is expected of a recovery course before a reading is taken.

No published series gives a knee's motion week by week, so nearly all of this is derived or chosen, and is
shown so. Where it is ours, the caution says what it was made from.
"""

from __future__ import annotations

from kneecase.evidence.course import OUWELEEN_2021
from kneecase.evidence.course_targets import WILK_ARRIGO_2018
from kneecase.evidence.motion import COMMON_PRACTICE
from kneecase.evidence.provenance import PublishedValue, Source

UDALL_2025 = Source(
    key="udall-2025",
    authors="Udall and others",
    year=2025,
    title="Arthrofibrosis after quadriceps tendon grafts with bone block in adolescents (title in our words)",
    venue="Orthopaedic Journal of Sports Medicine",
    kind="cohort",
    known="abstract",
)
SSMR_2011 = Source(
    key="bmc-ssmr-2011",
    authors="Authors not recorded",
    year=2011,
    title="Late motion deficits in three groups after ACL reconstruction (title in our words)",
    venue="BMC Sports Science, Medicine and Rehabilitation 3:15",
    kind="cohort",
    known="full text",
)

_ADOLESCENTS = "adolescents after ACL reconstruction, mean age 15.9 years"
_CHOICE = "a choice of kneecase, not published; another can be given"
_ANY = "knees after ACL reconstruction"


def _late(name: str, value: float, sd: float, n: int) -> PublishedValue:
    motion = "flexion" if "_FLEXION_" in name else "extension"
    return PublishedValue(
        name=name,
        value=value,
        low=value - sd,
        high=value + sd,
        spread_is="one standard deviation either side",
        unit="deg",
        definition=f"late shortfall of {motion} against the other knee, mean",
        population=f"one of three groups after ACL reconstruction, n = {n}",
        n=n,
        source=SSMR_2011,
        known="full text",
        place="table 3",
    )


RECOVERY_FLEXION_LATE_A_SSMR2011 = _late("RECOVERY_FLEXION_LATE_A_SSMR2011", 1.4, 2.8, 59)
RECOVERY_FLEXION_LATE_B_SSMR2011 = _late("RECOVERY_FLEXION_LATE_B_SSMR2011", 1.1, 2.5, 53)
RECOVERY_FLEXION_LATE_C_SSMR2011 = _late("RECOVERY_FLEXION_LATE_C_SSMR2011", 0.9, 1.8, 39)
RECOVERY_EXTENSION_LATE_A_SSMR2011 = _late("RECOVERY_EXTENSION_LATE_A_SSMR2011", 1.7, 1.5, 59)
RECOVERY_EXTENSION_LATE_B_SSMR2011 = _late("RECOVERY_EXTENSION_LATE_B_SSMR2011", 1.1, 1.3, 53)
RECOVERY_EXTENSION_LATE_C_SSMR2011 = _late("RECOVERY_EXTENSION_LATE_C_SSMR2011", 1.2, 1.3, 39)

# -- the course of flexion: three derived curves, and what is made of them --------------

RECOVERY_FLEXION_HALF_TIME_FAST_WILK2018 = PublishedValue(
    name="RECOVERY_FLEXION_HALF_TIME_FAST_WILK2018",
    value=1.62,
    low=1.35,
    high=1.92,
    spread_is="for plateaus of 140° and 150°",
    unit="weeks",
    definition="half-time of a curve through the target line of 90°, 105°, 127.5° and 137.5° of weeks 1 to "
    "5.5, plateau 145°",
    population="programme milestones, not an observation",
    source=WILK_ARRIGO_2018,
    known="derived",
)
RECOVERY_FLEXION_START_FAST_WILK2018 = PublishedValue(
    name="RECOVERY_FLEXION_START_FAST_WILK2018",
    value=58.6,
    low=53.7,
    high=62.5,
    spread_is="for plateaus of 140° and 150°",
    unit="deg",
    definition="level at week 0 of a curve through the target line, plateau 145°",
    population="programme milestones, not an observation",
    source=WILK_ARRIGO_2018,
    known="derived",
)
RECOVERY_FLEXION_HALF_TIME_REPLACEMENT_DERIVED = PublishedValue(
    name="RECOVERY_FLEXION_HALF_TIME_REPLACEMENT_DERIVED",
    value=2.9,
    unit="weeks",
    definition="half-time of a curve through 80° at week 1 and 110° at week 8, plateau 117°",
    population="the shape reported after knee replacement: most gain in 12 weeks, plateau by 26",
    source=COMMON_PRACTICE,
    known="derived",
)
RECOVERY_FLEXION_HALF_TIME_SLOW_OUWELEEN2021 = PublishedValue(
    name="RECOVERY_FLEXION_HALF_TIME_SLOW_OUWELEEN2021",
    value=4.2,
    unit="weeks",
    definition="half-time of a curve from 60° through the median of 110° at week 6, plateau 140°",
    population=_ADOLESCENTS,
    n=378,
    source=OUWELEEN_2021,
    known="derived",
)
RECOVERY_FLEXION_START_SLOW_OUWELEEN2021 = PublishedValue(
    name="RECOVERY_FLEXION_START_SLOW_OUWELEEN2021",
    value=60,
    unit="deg",
    definition="level at week 0 taken for a curve through the median of 110° at week 6",
    population=_ADOLESCENTS,
    n=378,
    source=OUWELEEN_2021,
    known="derived",
)
RECOVERY_HALF_TIME_LOG_SD_OURS = PublishedValue(
    name="RECOVERY_HALF_TIME_LOG_SD_OURS",
    value=0.5,
    unit="fraction",
    definition="standard deviation of the logarithm of the half-time: two of three knees lie within a factor "
    "of 1.6 of the middle",
    population=_ANY,
    source=COMMON_PRACTICE,
    known="derived",
    caution=f"so wide that the curve through the target line lies within two of it; {_CHOICE}",
)
RECOVERY_FLEXION_START_SD_OURS = PublishedValue(
    name="RECOVERY_FLEXION_START_SD_OURS",
    value=15,
    unit="deg",
    definition="standard deviation of the level of flexion at week 0",
    population=_ANY,
    source=COMMON_PRACTICE,
    known="derived",
    caution=_CHOICE,
)
RECOVERY_FLEXION_STIFF_SHORTFALL_OURS = PublishedValue(
    name="RECOVERY_FLEXION_STIFF_SHORTFALL_OURS",
    value=30,
    low=20,
    high=40,
    spread_is="one standard deviation either side",
    unit="deg",
    definition="shortfall of the plateau of flexion on the stiff course against the other knee",
    population=_ANY,
    source=COMMON_PRACTICE,
    known="derived",
    caution=f"set so that five of six stiff knees lack the 20° of the cohort's definition; {_CHOICE}",
)

# -- the course of extension ------------------------------------------------------------

RECOVERY_EXTENSION_START_LACK_OURS = PublishedValue(
    name="RECOVERY_EXTENSION_START_LACK_OURS",
    value=10,
    low=4,
    high=16,
    spread_is="one standard deviation either side",
    unit="deg",
    definition="lack of extension at week 0 against the other knee",
    population=_ANY,
    source=COMMON_PRACTICE,
    known="derived",
    caution=f"no observed course of extension was found; {_CHOICE}",
)
RECOVERY_EXTENSION_HALF_TIME_OURS = PublishedValue(
    name="RECOVERY_EXTENSION_HALF_TIME_OURS",
    value=2,
    unit="weeks",
    definition="half-time of the lack of extension",
    population=_ANY,
    source=COMMON_PRACTICE,
    known="derived",
    caution=f"set so that about a quarter lack 5° or more at week 4, as one cohort reports; {_CHOICE}",
)
RECOVERY_EXTENSION_STIFF_LACK_OURS = PublishedValue(
    name="RECOVERY_EXTENSION_STIFF_LACK_OURS",
    value=12,
    low=8,
    high=16,
    spread_is="one standard deviation either side",
    unit="deg",
    definition="lack of extension that stays on the stiff course, against the other knee",
    population=_ANY,
    source=COMMON_PRACTICE,
    known="derived",
    caution=f"set about the 10° of the cohort's definition; {_CHOICE}",
)
RECOVERY_EXTENSION_NORM_SD_OURS = PublishedValue(
    name="RECOVERY_EXTENSION_NORM_SD_OURS",
    value=4,
    unit="deg",
    definition="spread of healthy knees' end of extension, where the other knee is not known",
    population="healthy knees",
    source=COMMON_PRACTICE,
    known="derived",
    caution=_CHOICE,
)

# -- the share on the stiff course ------------------------------------------------------

RECOVERY_STIFF_SHARE_POOLED_OUWELEEN2021 = PublishedValue(
    name="RECOVERY_STIFF_SHARE_POOLED_OUWELEEN2021",
    value=6.9,
    unit="pct",
    definition="share lacking extension 10° and/or flexion 20° at 3 months, any graft, pooled from the "
    "shares by graft",
    population=_ADOLESCENTS,
    n=378,
    source=OUWELEEN_2021,
    known="derived",
)
RECOVERY_STIFF_SHARE_UDALL2025 = PublishedValue(
    name="RECOVERY_STIFF_SHARE_UDALL2025",
    value=27.5,
    unit="pct",
    definition="share lacking extension 10° and/or flexion 20° at 3 months, quadriceps tendon with bone "
    "block (22 of 80)",
    population="age 17 or younger",
    n=80,
    source=UDALL_2025,
    known="abstract",
)

# -- when a course has changed ----------------------------------------------------------

RECOVERY_CHANGE_BEFOREHAND_OURS = PublishedValue(
    name="RECOVERY_CHANGE_BEFOREHAND_OURS",
    value=0.1,
    unit="fraction",
    definition="chance beforehand that a knee leaves its course somewhere among the readings",
    population=_ANY,
    source=COMMON_PRACTICE,
    known="derived",
    caution=_CHOICE,
)
RECOVERY_CHANGE_ODDS_OURS = PublishedValue(
    name="RECOVERY_CHANGE_ODDS_OURS",
    value=10,
    unit="fraction",
    operator="≥",
    definition="odds from which a change of course is reported",
    population=_ANY,
    source=COMMON_PRACTICE,
    known="derived",
    caution=_CHOICE,
)
