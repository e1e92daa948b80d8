"""Published values: landing error score, its bands and error, and what screening landings showed."""

from __future__ import annotations

from functools import partial

from kneecase.evidence.provenance import PublishedValue, Source

PADUA_2009 = Source(
    key="padua-2009",
    authors="Padua DA and others",
    year=2009,
    title="The landing error scoring system is a valid and reliable clinical assessment tool "
    "of jump-landing biomechanics",
    venue="Am J Sports Med 37:1996-2002",
    kind="validity study",
    known="abstract",
    doi="10.1177/0363546509343200",
    note="the bands and part of the item list are from memory",
)
PADUA_2015 = Source(
    key="padua-2015",
    authors="Padua DA and others",
    year=2015,
    title="The landing error scoring system as a screening tool for an anterior cruciate ligament "
    "injury-prevention program in elite-youth soccer athletes",
    venue="J Athl Train 50:589-595",
    kind="cohort",
    known="abstract",
    doi="10.4085/1062-6050-50.1.10",
)
ONATE_2010 = Source(
    key="onate-2010",
    authors="Onate J and others",
    year=2010,
    title="Expert versus novice interrater reliability and criterion validity of the landing error scoring "
    "system",
    venue="J Sport Rehabil 19:41-56",
    kind="reliability study",
    known="abstract",
    doi="10.1123/jsr.19.1.41",
)
EVERARD_2020 = Source(
    key="everard-2020",
    authors="Everard EM, Lyons M, Harrison AJ",
    year=2020,
    title="Examining the reliability of the landing error scoring system with raters using the "
    "standardized instructions and scoring sheet",
    venue="J Sport Rehabil",
    kind="reliability study",
    known="abstract",
)
BELL_2014 = Source(
    key="bell-2014",
    authors="Bell DR, Smith MD, Pennuto AP, Stiffler MR, Olson ME",
    year=2014,
    title="Jump-landing mechanics after anterior cruciate ligament reconstruction: a landing error "
    "scoring system study",
    venue="J Athl Train 49:435-441",
    kind="comparison",
    known="abstract",
    doi="10.4085/1062-6050-49.3.21",
)
HANZLIKOVA_2020 = Source(
    key="hanzlikova-2020",
    authors="Hanzlikova I and others",
    year=2020,
    title="How the landing error score is calculated changes the score and the class (title in our words)",
    venue="Phys Ther Sport",
    kind="method study",
    known="abstract",
    doi="10.1016/j.ptsp.2020.04.035",
)

_band = partial(
    PublishedValue,
    source=PADUA_2009,
    known="from memory",
    unit="points",
    operator="≤",
    population="quartiles of one large group",
    n=2691,
    caution="Quartiles of one group, not steps of risk.",
)
LANDING_BAND_EXCELLENT_PADUA2009 = _band(
    name="LANDING_BAND_EXCELLENT_PADUA2009",
    value=4.0,
    definition="landing errors that still count as excellent",
)
LANDING_BAND_GOOD_PADUA2009 = _band(
    name="LANDING_BAND_GOOD_PADUA2009",
    value=5.0,
    definition="landing errors that still count as good",
)
LANDING_BAND_MODERATE_PADUA2009 = _band(
    name="LANDING_BAND_MODERATE_PADUA2009",
    value=6.0,
    definition="landing errors that still count as moderate; more is poor",
)
_memory = partial(
    PublishedValue, source=PADUA_2009, known="from memory", unit="points", population="not read"
)
LANDING_SEM_WITHIN_RATER_PADUA2009 = _memory(
    name="LANDING_SEM_WITHIN_RATER_PADUA2009",
    value=0.42,
    definition="standard error of measurement of the landing error score, one rater",
)
LANDING_SEM_BETWEEN_RATERS_PADUA2009 = _memory(
    name="LANDING_SEM_BETWEEN_RATERS_PADUA2009",
    value=0.71,
    definition="standard error of measurement of the landing error score, different raters",
)
_sheet = partial(
    PublishedValue,
    source=EVERARD_2020,
    known="abstract",
    unit="points",
    population="men in college sports, rated from the scoring sheet alone",
    n=30,
    caution="Error of the rater on one film, not of the landing from day to day; later work read "
    "second-hand gives up to 1.11 points.",
)
LANDING_SEM_ONE_RATER_EVERARD2020 = _sheet(
    name="LANDING_SEM_ONE_RATER_EVERARD2020",
    value=1.02,
    definition="standard error of measurement of the landing error score, one rater (ICC 0.96)",
)
LANDING_SEM_TWO_RATERS_EVERARD2020 = _sheet(
    name="LANDING_SEM_TWO_RATERS_EVERARD2020",
    value=1.01,
    definition="standard error of measurement of the landing error score, two raters (ICC 0.95)",
)
LANDING_RATERS_ICC_ONATE2010 = PublishedValue(
    name="LANDING_RATERS_ICC_ONATE2010",
    value=0.835,
    unit="fraction",
    definition="ICC(2,1) of the landing error score, an expert against a novice rater",
    population="women in college soccer",
    n=19,
    source=ONATE_2010,
    known="abstract",
)

_youth = partial(
    PublishedValue, source=PADUA_2015, population="youth football players, 7 ACL injuries", n=829
)
LANDING_CUT_PADUA2015 = _youth(
    name="LANDING_CUT_PADUA2015",
    value=5.0,
    unit="points",
    definition="landing errors taken as a positive screen",
    known="abstract",
    caution="Whether exactly 5 counts as positive was not read; players without injury averaged 4.43.",
)
LANDING_CASES_PADUA2015 = _youth(
    name="LANDING_CASES_PADUA2015",
    value=7.0,
    unit="fraction",
    definition="players with an ACL injury",
    known="abstract",
)
LANDING_PLAYERS_PADUA2015 = _youth(
    name="LANDING_PLAYERS_PADUA2015",
    value=829.0,
    unit="fraction",
    definition="players screened",
    known="abstract",
)
LANDING_INJURED_PADUA2015 = _youth(
    name="LANDING_INJURED_PADUA2015",
    value=6.24,
    unit="points",
    definition="mean landing errors of players who were injured later (standard deviation 1.75)",
    known="abstract",
)
LANDING_UNINJURED_PADUA2015 = _youth(
    name="LANDING_UNINJURED_PADUA2015",
    value=4.43,
    unit="points",
    definition="mean landing errors of players who were not injured (standard deviation 1.71)",
    known="abstract",
)
LANDING_SENSITIVITY_PADUA2015 = _youth(
    name="LANDING_SENSITIVITY_PADUA2015",
    value=0.86,
    unit="fraction",
    definition="sensitivity of the cut at 5 for ACL injury",
    known="from memory",
)
LANDING_SPECIFICITY_PADUA2015 = _youth(
    name="LANDING_SPECIFICITY_PADUA2015",
    value=0.64,
    unit="fraction",
    definition="specificity of the cut at 5 for ACL injury",
    known="from memory",
)

_after = partial(
    PublishedValue,
    source=BELL_2014,
    known="abstract",
    unit="points",
    n=27,
)
LANDING_AFTER_ACLR_BELL2014 = _after(
    name="LANDING_AFTER_ACLR_BELL2014",
    value=6.7,
    definition="mean landing errors after ACL reconstruction (standard deviation 2.1)",
    population="people after ACL reconstruction; lateral trunk bend was the error that set them apart",
)
LANDING_CONTROLS_BELL2014 = _after(
    name="LANDING_CONTROLS_BELL2014",
    value=5.6,
    definition="mean landing errors of controls (standard deviation 1.5)",
    population="controls",
)

_rule = partial(PublishedValue, source=HANZLIKOVA_2020, known="abstract", population="not read", n=328)
LANDING_RULE_SHIFT_HANZLIKOVA2020 = _rule(
    name="LANDING_RULE_SHIFT_HANZLIKOVA2020",
    value=0.92,
    unit="points",
    definition="how much lower the score is when the best of three trials is taken",
)
LANDING_RULE_CLASS_HANZLIKOVA2020 = _rule(
    name="LANDING_RULE_CLASS_HANZLIKOVA2020",
    value=None,
    low=8.0,
    high=15.0,
    spread_is="range over rules",
    unit="pct",
    definition="people who change side of the 5-error line with the trial rule alone",
)
