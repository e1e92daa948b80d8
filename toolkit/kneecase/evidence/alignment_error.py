"""Published values: how well one camera sees an angle: error, agreement, what it says of load."""

from __future__ import annotations

from functools import partial

from kneecase.evidence.provenance import PublishedValue, Source

MUNRO_2012 = Source(
    key="munro-2012",
    authors="Munro A, Herrington L, Carolan M",
    year=2012,
    title="Reliability of 2-dimensional video assessment of frontal-plane dynamic knee valgus "
    "during common athletic screening tasks",
    venue="J Sport Rehabil 21:7-11",
    kind="reliability study",
    known="abstract",
)
GWYNNE_CURRAN_2014 = Source(
    key="gwynne-curran-2014",
    authors="Gwynne CR, Curran SA",
    year=2014,
    title="Two-dimensional frontal plane projection angle in the single-leg squat (title in our words)",
    venue="Int J Sports Phys Ther",
    kind="reliability study",
    known="abstract",
)
SCHURR_2017 = Source(
    key="schurr-2017",
    authors="Schurr SA and others",
    year=2017,
    title="Two-dimensional video against three-dimensional motion analysis of the single-leg squat "
    "(title in our words)",
    venue="Int J Sports Phys Ther 12:163-172, PMC5380858",
    kind="validity study",
    known="abstract",
)
STRAUB_POWERS_2022 = Source(
    key="straub-powers-2022",
    authors="Straub RK, Powers CM",
    year=2022,
    title="Frontal plane projection angle and the frontal knee moment over six tasks (title in our words)",
    venue="Int J Sports Phys Ther 17:1259-1270",
    kind="validity study",
    known="abstract",
    doi="10.26603/001c.39612",
)
DINGENEN_2014 = Source(
    key="dingenen-2014",
    authors="Dingenen B and others",
    year=2014,
    title="Two-dimensional knee valgus and lateral trunk motion against the knee abduction moment "
    "(title in our words)",
    venue="PubMed 23891143",
    kind="validity study",
    known="abstract",
)

_video = partial(
    PublishedValue,
    source=MUNRO_2012,
    known="abstract",
    population="10 women and 10 men; single-leg squat, drop jump, single-leg landing from 28 cm",
    n=20,
)
ALIGNMENT_FPPA_WITHIN_DAY_ICC_MUNRO2012 = _video(
    name="ALIGNMENT_FPPA_WITHIN_DAY_ICC_MUNRO2012",
    value=None,
    low=0.59,
    high=0.88,
    spread_is="range over tasks",
    unit="fraction",
    definition="within-day ICC of the frontal plane projection angle",
)
ALIGNMENT_FPPA_BETWEEN_DAY_ICC_MUNRO2012 = _video(
    name="ALIGNMENT_FPPA_BETWEEN_DAY_ICC_MUNRO2012",
    value=None,
    low=0.72,
    high=0.91,
    spread_is="range over tasks",
    unit="fraction",
    definition="between-day ICC of the frontal plane projection angle",
)
ALIGNMENT_FPPA_SEM_MIN_MUNRO2012 = _video(
    name="ALIGNMENT_FPPA_SEM_MIN_MUNRO2012",
    value=2.72,
    unit="deg",
    definition="standard error of measurement of the angle, smallest of the tasks",
)
ALIGNMENT_FPPA_SEM_MAX_MUNRO2012 = _video(
    name="ALIGNMENT_FPPA_SEM_MAX_MUNRO2012",
    value=3.01,
    unit="deg",
    definition="standard error of measurement of the angle, largest of the tasks",
    caution="1.96 √2 times 3.01° is 8.34°, not the 8.93° printed beside it: the abstract contradicts itself.",
)
ALIGNMENT_FPPA_SDD_MIN_MUNRO2012 = _video(
    name="ALIGNMENT_FPPA_SDD_MIN_MUNRO2012",
    value=7.54,
    unit="deg",
    definition="smallest detectable difference of the angle, smallest of the tasks",
)
ALIGNMENT_FPPA_SDD_MAX_MUNRO2012 = _video(
    name="ALIGNMENT_FPPA_SDD_MAX_MUNRO2012",
    value=8.93,
    unit="deg",
    definition="smallest detectable difference of the angle, largest of the tasks",
    caution="Does not follow from the largest standard error printed beside it (8.34° would); "
    "the larger number is the careful one.",
)

_gwynne = partial(
    PublishedValue,
    source=GWYNNE_CURRAN_2014,
    known="abstract",
    population="9 women and 9 men, single-leg squat",
    n=18,
)
ALIGNMENT_FPPA_SQUAT_SEM_GWYNNE2014 = _gwynne(
    name="ALIGNMENT_FPPA_SQUAT_SEM_GWYNNE2014",
    value=None,
    low=2.0,
    high=4.0,
    spread_is="range",
    unit="deg",
    definition="standard error of measurement of the angle (ICC within 0.86, between 0.74)",
)
ALIGNMENT_FPPA_SQUAT_VALIDITY_GWYNNE2014 = _gwynne(
    name="ALIGNMENT_FPPA_SQUAT_VALIDITY_GWYNNE2014",
    value=None,
    low=0.64,
    high=0.78,
    spread_is="range",
    unit="fraction",
    definition="correlation of the angle with three-dimensional motion analysis",
)
ALIGNMENT_FPPA_SQUAT_VALIDITY_SCHURR2017 = PublishedValue(
    name="ALIGNMENT_FPPA_SQUAT_VALIDITY_SCHURR2017",
    value=0.308,
    unit="fraction",
    definition="correlation of the knee angle in the frontal plane, video against three-dimensional analysis",
    population="single-leg squat",
    n=26,
    source=SCHURR_2017,
    known="abstract",
)
ALIGNMENT_FPPA_MOMENT_SHARE_STRAUB2022 = PublishedValue(
    name="ALIGNMENT_FPPA_MOMENT_SHARE_STRAUB2022",
    value=None,
    low=12.0,
    high=25.0,
    spread_is="range over the 2 of 6 tasks where it was related at all",
    unit="pct",
    definition="share of the peak frontal knee moment that the angle accounts for",
    population="six tasks",
    n=39,
    source=STRAUB_POWERS_2022,
    known="abstract",
)

_trunk = partial(
    PublishedValue,
    source=DINGENEN_2014,
    known="abstract",
    value=None,
    unit="fraction",
    population="female athletes",
    n=43,
)
ALIGNMENT_TRUNK_WITHIN_RATER_ICC_DINGENEN2014 = _trunk(
    name="ALIGNMENT_TRUNK_WITHIN_RATER_ICC_DINGENEN2014",
    low=0.99,
    high=1.00,
    spread_is="range",
    definition="within-rater ICC of lateral trunk motion read from one video",
)
ALIGNMENT_TRUNK_BETWEEN_RATERS_ICC_DINGENEN2014 = _trunk(
    name="ALIGNMENT_TRUNK_BETWEEN_RATERS_ICC_DINGENEN2014",
    low=0.98,
    high=0.99,
    spread_is="range",
    definition="between-rater ICC of lateral trunk motion read from one video",
)
ALIGNMENT_TRUNK_KNEE_MOMENT_R_DINGENEN2014 = _trunk(
    name="ALIGNMENT_TRUNK_KNEE_MOMENT_R_DINGENEN2014",
    low=-0.36,
    high=-0.32,
    spread_is="dominant and other limb",
    definition="correlation of valgus plus trunk lean with the knee abduction moment; neither alone was",
)
