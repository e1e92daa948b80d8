"""Published values: star excursion reach, its error, and signals from uninjured school athletes."""

from __future__ import annotations

from functools import partial

from kneecase.evidence.provenance import PublishedValue, Source

PLISKY_2006 = Source(
    key="plisky-2006",
    authors="Plisky PJ, Rauh MJ, Kaminski TW, Underwood FB",
    year=2006,
    title="Star excursion balance test as a predictor of lower extremity injury in high school basketball "
    "players",
    venue="J Orthop Sports Phys Ther 36:911-919",
    kind="cohort",
    known="abstract",
)
PLISKY_2009 = Source(
    key="plisky-2009",
    authors="Plisky PJ and others",
    year=2009,
    title="Reliability of an instrumented platform for the three reach directions (title in our words)",
    venue="PMC2953327",
    kind="reliability study",
    known="abstract",
)
MUNRO_HERRINGTON_2010 = Source(
    key="munro-herrington-2010",
    authors="Munro AG, Herrington LC",
    year=2010,
    title="Between-session reliability of the star excursion balance test",
    venue="Phys Ther Sport",
    kind="reliability study",
    known="abstract",
    doi="10.1016/j.ptsp.2010.07.002",
)
GRIBBLE_2013 = Source(
    key="gribble-2013",
    authors="Gribble PA and others",
    year=2013,
    title="Interrater reliability of the star excursion balance test",
    venue="J Athl Train",
    kind="reliability study",
    known="abstract",
    doi="10.4085/1062-6050-48.3.03",
)

_NOT_CLEARANCE = (
    "From uninjured school basketball players with any lower-limb injury as the outcome: "
    "not a criterion for return after ACL reconstruction."
)

_plisky = partial(
    PublishedValue,
    source=PLISKY_2006,
    known="abstract",
    population="high-school basketball players without injury, followed for any lower-limb injury",
    n=235,
)
BALANCE_ANTERIOR_DIFFERENCE_PLISKY2006 = _plisky(
    name="BALANCE_ANTERIOR_DIFFERENCE_PLISKY2006",
    value=4.0,
    unit="cm",
    operator=">",
    definition="anterior reach difference between the limbs that went with more lower-limb injury",
    caution=_NOT_CLEARANCE + " Tape and platform versions class people differently at 4 cm (Bulow 2019, "
    "25 girls, 14.0 years). At a limb length of 88 cm, 4 cm is 4.5 % and lies inside the error (our sum).",
)
BALANCE_ANTERIOR_RISK_PLISKY2006 = _plisky(
    name="BALANCE_ANTERIOR_RISK_PLISKY2006",
    value=2.5,
    unit="fraction",
    definition="times as much lower-limb injury with an anterior reach difference above 4 cm",
    caution=_NOT_CLEARANCE,
)
BALANCE_COMPOSITE_GIRLS_PLISKY2006 = _plisky(
    name="BALANCE_COMPOSITE_GIRLS_PLISKY2006",
    value=94.0,
    unit="pct",
    operator="<",
    definition="composite reach, in percent of limb length, that went with more lower-limb injury in girls",
    caution=_NOT_CLEARANCE,
)
BALANCE_COMPOSITE_RISK_GIRLS_PLISKY2006 = _plisky(
    name="BALANCE_COMPOSITE_RISK_GIRLS_PLISKY2006",
    value=6.5,
    unit="fraction",
    definition="times as much lower-limb injury in girls with a composite reach below 94.0 % of limb length",
    caution=_NOT_CLEARANCE,
)
BALANCE_REACH_ICC_PLISKY2006 = _plisky(
    name="BALANCE_REACH_ICC_PLISKY2006",
    value=None,
    low=0.82,
    high=0.87,
    spread_is="range over the reach directions",
    unit="fraction",
    definition="ICC(3,1) of a reach distance",
)
BALANCE_LIMB_LENGTH_ICC_PLISKY2006 = _plisky(
    name="BALANCE_LIMB_LENGTH_ICC_PLISKY2006",
    value=0.99,
    unit="fraction",
    definition="ICC(3,1) of limb length",
)

_munro = partial(
    PublishedValue,
    source=MUNRO_HERRINGTON_2010,
    known="abstract",
    population="athletes, reach in percent of limb length",
    n=22,
)
BALANCE_PRACTICE_TRIALS_MUNRO2010 = _munro(
    name="BALANCE_PRACTICE_TRIALS_MUNRO2010",
    value=4.0,
    unit="reps",
    definition="practice trials after which reach distances are stable (trials 5 to 7 are then scored)",
)
BALANCE_REACH_ICC_MUNRO2010 = _munro(
    name="BALANCE_REACH_ICC_MUNRO2010",
    value=None,
    low=0.84,
    high=0.92,
    spread_is="range over the reach directions",
    unit="fraction",
    definition="between-session ICC of a normalised reach",
)
BALANCE_REACH_SEM_MIN_MUNRO2010 = _munro(
    name="BALANCE_REACH_SEM_MIN_MUNRO2010",
    value=2.21,
    unit="pct",
    definition="standard error of measurement of a normalised reach, the smallest of the directions",
)
BALANCE_REACH_SEM_MAX_MUNRO2010 = _munro(
    name="BALANCE_REACH_SEM_MAX_MUNRO2010",
    value=2.94,
    unit="pct",
    definition="standard error of measurement of a normalised reach, the largest of the directions",
)
BALANCE_REACH_SDD_MIN_MUNRO2010 = _munro(
    name="BALANCE_REACH_SDD_MIN_MUNRO2010",
    value=6.13,
    unit="pct",
    definition="smallest detectable difference of a normalised reach, the smallest of the directions",
)
BALANCE_REACH_SDD_MAX_MUNRO2010 = _munro(
    name="BALANCE_REACH_SDD_MAX_MUNRO2010",
    value=8.15,
    unit="pct",
    definition="smallest detectable difference of a normalised reach, the largest of the directions",
    caution="Which direction has which error was not read, so the largest is used for all of them.",
)

_gribble = partial(
    PublishedValue,
    source=GRIBBLE_2013,
    known="abstract",
    population="healthy adults, five raters, four practice and three scored trials",
    n=29,
    value=None,
    unit="fraction",
    spread_is="range over the reach directions",
)
BALANCE_NORMALISED_RATERS_ICC_GRIBBLE2013 = _gribble(
    name="BALANCE_NORMALISED_RATERS_ICC_GRIBBLE2013",
    low=0.86,
    high=0.92,
    definition="between-rater ICC(1,1) of a normalised reach",
)
BALANCE_RAW_RATERS_ICC_GRIBBLE2013 = _gribble(
    name="BALANCE_RAW_RATERS_ICC_GRIBBLE2013",
    low=0.89,
    high=0.94,
    definition="between-rater ICC(1,1) of a reach in cm",
)

_platform = partial(
    PublishedValue,
    source=PLISKY_2009,
    known="abstract",
    population="men, instrumented platform, not the tape version",
    n=15,
    unit="fraction",
)
BALANCE_PLATFORM_INTRA_ICC_PLISKY2009 = _platform(
    name="BALANCE_PLATFORM_INTRA_ICC_PLISKY2009",
    value=None,
    low=0.85,
    high=0.91,
    spread_is="range over the reach directions",
    definition="within-rater ICC of a reach on the platform (composite 0.91)",
)
BALANCE_PLATFORM_INTER_ICC_PLISKY2009 = _platform(
    name="BALANCE_PLATFORM_INTER_ICC_PLISKY2009",
    value=None,
    low=0.99,
    high=1.00,
    spread_is="range over the reach directions",
    definition="between-rater ICC of a reach on the platform (composite 0.99)",
)
