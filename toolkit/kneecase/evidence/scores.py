"""Published values: how outcome scores are put together, which missing items are allowed, bands, norms."""

from __future__ import annotations

from functools import partial

from kneecase.evidence.provenance import PublishedValue, Source

IKDC_FORM_2000 = Source(
    key="ikdc-subjective-form-2000",
    authors="International Knee Documentation Committee",
    year=2000,
    title="IKDC subjective knee form, scoring",
    venue="",
    kind="form",
    known="full text",
    note="rule read in a public scored example of 199 people; which item has which number is from memory",
)
KOOS_GUIDE_2012 = Source(
    key="koos-guide-2012",
    authors="Roos E",
    year=2012,
    title="KOOS scoring guide, August 2012",
    venue="",
    kind="scoring guide",
    known="full text",
)
WEBSTER_2008 = Source(
    key="webster-2008",
    authors="Webster KE, Feller JA, Lambros C",
    year=2008,
    title="Development and preliminary validation of a scale to measure the psychological impact of "
    "returning to sport following anterior cruciate ligament reconstruction surgery",
    venue="Phys Ther Sport",
    kind="development study",
    known="from memory",
)
TEGNER_LYSHOLM_1985 = Source(
    key="tegner-lysholm-1985",
    authors="Tegner Y, Lysholm J",
    year=1985,
    title="Rating systems in the evaluation of knee ligament injuries",
    venue="Clin Orthop Relat Res",
    kind="development study",
    known="from memory",
)
FILBAY_2023 = Source(
    key="filbay-2023",
    authors="Filbay SR and others",
    year=2023,
    title="Healing of ACL rupture after bracing, with the Lysholm scale as outcome (title in our words)",
    venue="Br J Sports Med, PMC10715498",
    kind="case series",
    known="full text",
    note="its table of outcome measures was read",
)
ANDERSON_2006 = Source(
    key="anderson-2006",
    authors="Anderson AF and others",
    year=2006,
    title="The IKDC subjective knee evaluation form: normative data",
    venue="Am J Sports Med",
    kind="norms",
    known="abstract",
    note="design read in the abstract; the cells are from memory",
)

SCORES_IKDC_MIN_ANSWERED_IKDC2000 = PublishedValue(
    name="SCORES_IKDC_MIN_ANSWERED_IKDC2000",
    value=16.0,
    unit="fraction",
    operator="≥",
    definition="items of 18 that must be answered for an IKDC subjective score",
    population="IKDC subjective form, 14 items of 0-4, 3 of 0-10, 1 of 0-1",
    source=IKDC_FORM_2000,
    known="full text",
    place="scored example, 199 rows",
    caution="An older manual took the sum less 18 over 87 with items that begin at 1: not to be mixed "
    "(unverified, from memory).",
)

_koos = partial(
    PublishedValue,
    source=KOOS_GUIDE_2012,
    known="full text",
    unit="fraction",
    operator="≥",
    population="each subscale for itself; the guide of 2012 gives its own rule and that of 1998",
)
SCORES_KOOS_PAIN_MIN_ANSWERED_KOOS2012 = _koos(
    name="SCORES_KOOS_PAIN_MIN_ANSWERED_KOOS2012",
    value=5.0,
    definition="items of 9 that must be answered for KOOS pain, rule of 2012",
)
SCORES_KOOS_SYMPTOMS_MIN_ANSWERED_KOOS2012 = _koos(
    name="SCORES_KOOS_SYMPTOMS_MIN_ANSWERED_KOOS2012",
    value=4.0,
    definition="items of 7 that must be answered for KOOS symptoms, rule of 2012",
)
SCORES_KOOS_ADL_MIN_ANSWERED_KOOS2012 = _koos(
    name="SCORES_KOOS_ADL_MIN_ANSWERED_KOOS2012",
    value=9.0,
    definition="items of 17 that must be answered for KOOS daily living, rule of 2012",
)
SCORES_KOOS_SPORT_MIN_ANSWERED_KOOS2012 = _koos(
    name="SCORES_KOOS_SPORT_MIN_ANSWERED_KOOS2012",
    value=3.0,
    definition="items of 5 that must be answered for KOOS sport and recreation, rule of 2012",
)
SCORES_KOOS_QOL_MIN_ANSWERED_KOOS2012 = _koos(
    name="SCORES_KOOS_QOL_MIN_ANSWERED_KOOS2012",
    value=2.0,
    definition="items of 4 that must be answered for KOOS quality of life, rule of 2012",
)
SCORES_KOOS_PAIN_MIN_ANSWERED_OLDER_KOOS2012 = _koos(
    name="SCORES_KOOS_PAIN_MIN_ANSWERED_OLDER_KOOS2012",
    value=7.0,
    definition="items of 9 that must be answered for KOOS pain, rule of 1998",
)
SCORES_KOOS_SYMPTOMS_MIN_ANSWERED_OLDER_KOOS2012 = _koos(
    name="SCORES_KOOS_SYMPTOMS_MIN_ANSWERED_OLDER_KOOS2012",
    value=5.0,
    definition="items of 7 that must be answered for KOOS symptoms, rule of 1998",
)
SCORES_KOOS_ADL_MIN_ANSWERED_OLDER_KOOS2012 = _koos(
    name="SCORES_KOOS_ADL_MIN_ANSWERED_OLDER_KOOS2012",
    value=15.0,
    definition="items of 17 that must be answered for KOOS daily living, rule of 1998",
)
SCORES_KOOS_SPORT_MIN_ANSWERED_OLDER_KOOS2012 = _koos(
    name="SCORES_KOOS_SPORT_MIN_ANSWERED_OLDER_KOOS2012",
    value=3.0,
    definition="items of 5 that must be answered for KOOS sport, rule of 1998",
)
SCORES_KOOS_QOL_MIN_ANSWERED_OLDER_KOOS2012 = _koos(
    name="SCORES_KOOS_QOL_MIN_ANSWERED_OLDER_KOOS2012",
    value=2.0,
    definition="items of 4 that must be answered for KOOS quality of life, rule of 1998",
)
SCORES_ACLRSI_MIN_ANSWERED_WEBSTER2008 = PublishedValue(
    name="SCORES_ACLRSI_MIN_ANSWERED_WEBSTER2008",
    value=10.0,
    unit="fraction",
    operator="≥",
    definition="items of 12 that must be answered for an ACL-RSI score, as commonly allowed",
    population="ACL-RSI, mean of the answered items",
    source=WEBSTER_2008,
    known="from memory",
)

_lysholm = partial(PublishedValue, unit="points", operator="≥", population="Lysholm total of 0-100")
SCORES_LYSHOLM_EXCELLENT_LYSHOLM1985 = _lysholm(
    name="SCORES_LYSHOLM_EXCELLENT_LYSHOLM1985",
    value=95.0,
    definition="Lysholm total called excellent",
    source=TEGNER_LYSHOLM_1985,
    known="from memory",
)
SCORES_LYSHOLM_GOOD_LYSHOLM1985 = _lysholm(
    name="SCORES_LYSHOLM_GOOD_LYSHOLM1985",
    value=84.0,
    definition="Lysholm total called good",
    source=TEGNER_LYSHOLM_1985,
    known="from memory",
)
SCORES_LYSHOLM_FAIR_LYSHOLM1985 = _lysholm(
    name="SCORES_LYSHOLM_FAIR_LYSHOLM1985",
    value=65.0,
    definition="Lysholm total called fair; less is poor",
    source=TEGNER_LYSHOLM_1985,
    known="from memory",
)
SCORES_LYSHOLM_EXCELLENT_FILBAY2023 = PublishedValue(
    name="SCORES_LYSHOLM_EXCELLENT_FILBAY2023",
    value=94.0,
    unit="points",
    operator=">",
    definition="Lysholm total called excellent (84 is called good)",
    population="Lysholm total of 0-100",
    source=FILBAY_2023,
    known="full text",
    place="table 1",
    caution="Another page calls 91-100 excellent and 84-90 good (PMC10362729): the bands are not agreed.",
)

_norm = partial(
    PublishedValue,
    source=ANDERSON_2006,
    known="from memory",
    unit="points",
    caution="Recalled, not re-read; 28 % of those asked reported a knee problem.",
)
SCORES_IKDC_NORM_MEN_18_ANDERSON2006 = _norm(
    name="SCORES_IKDC_NORM_MEN_18_ANDERSON2006",
    value=89.0,
    definition="mean IKDC subjective score (standard deviation 18)",
    population="men of 18-24 years in the general population",
)
SCORES_IKDC_NORM_MEN_25_ANDERSON2006 = _norm(
    name="SCORES_IKDC_NORM_MEN_25_ANDERSON2006",
    value=89.0,
    definition="mean IKDC subjective score (standard deviation 16)",
    population="men of 25-34 years in the general population",
)
SCORES_IKDC_NORM_MEN_35_ANDERSON2006 = _norm(
    name="SCORES_IKDC_NORM_MEN_35_ANDERSON2006",
    value=85.0,
    definition="mean IKDC subjective score (standard deviation 19)",
    population="men of 35-50 years in the general population",
)
SCORES_IKDC_NORM_MEN_51_ANDERSON2006 = _norm(
    name="SCORES_IKDC_NORM_MEN_51_ANDERSON2006",
    value=77.0,
    definition="mean IKDC subjective score (standard deviation 23)",
    population="men of 51-65 years in the general population",
)
SCORES_IKDC_NORM_WOMEN_18_ANDERSON2006 = _norm(
    name="SCORES_IKDC_NORM_WOMEN_18_ANDERSON2006",
    value=86.0,
    definition="mean IKDC subjective score (standard deviation 19)",
    population="women of 18-24 years in the general population",
)
SCORES_IKDC_NORM_WOMEN_25_ANDERSON2006 = _norm(
    name="SCORES_IKDC_NORM_WOMEN_25_ANDERSON2006",
    value=86.0,
    definition="mean IKDC subjective score (standard deviation 19)",
    population="women of 25-34 years in the general population",
)
SCORES_IKDC_NORM_WOMEN_35_ANDERSON2006 = _norm(
    name="SCORES_IKDC_NORM_WOMEN_35_ANDERSON2006",
    value=80.0,
    definition="mean IKDC subjective score (standard deviation 23)",
    population="women of 35-50 years in the general population",
)
SCORES_IKDC_NORM_WOMEN_51_ANDERSON2006 = _norm(
    name="SCORES_IKDC_NORM_WOMEN_51_ANDERSON2006",
    value=71.0,
    definition="mean IKDC subjective score (standard deviation 26)",
    population="women of 51-65 years in the general population",
)
