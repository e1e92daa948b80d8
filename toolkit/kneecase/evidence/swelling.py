"""Published values: effusion grades and knee girth, and how far testers differ on them."""

from __future__ import annotations

from kneecase.evidence.provenance import PublishedValue, Source

STURGILL_2009 = Source(
    key="sturgill-2009",
    authors="Sturgill LP, et al.",
    year=2009,
    title="Interrater reliability of a clinical scale to assess knee joint effusion",
    venue="J Orthop Sports Phys Ther 39:845-849",
    kind="reliability study",
    known="abstract",
)
JAKOBSEN_2010 = Source(
    key="jakobsen-2010",
    authors="Jakobsen TL, et al.",
    year=2010,
    title="Reliability of knee joint range of motion and circumference measurements after total knee "
    "arthroplasty",
    venue="",
    kind="reliability study",
    known="from memory",
)

EFFUSION_KAPPA_STURGILL2009 = PublishedValue(
    name="EFFUSION_KAPPA_STURGILL2009",
    value=0.75,
    unit="fraction",
    definition="agreement of two testers on the effusion grade, kappa as share of the largest possible kappa",
    population="knees with possible effusion, two testers, stroke test of five grades",
    source=STURGILL_2009,
    known="abstract",
    n=75,
    place="abstract",
)
EFFUSION_AGREEMENT_STURGILL2009 = PublishedValue(
    name="EFFUSION_AGREEMENT_STURGILL2009",
    value=73.0,
    unit="pct",
    definition="share of knees given the same effusion grade by two testers, as printed",
    population="knees with possible effusion, two testers, stroke test of five grades",
    source=STURGILL_2009,
    known="abstract",
    n=75,
    place="abstract",
    caution="54 of 75 is 72.0 %: the abstract does not agree with itself",
)
EFFUSION_TWO_GRADES_APART_STURGILL2009 = PublishedValue(
    name="EFFUSION_TWO_GRADES_APART_STURGILL2009",
    value=6.7,
    unit="pct",
    definition="share of knees on which two testers differed by two grades (5 of 75); none by more",
    population="knees with possible effusion, two testers, stroke test of five grades",
    source=STURGILL_2009,
    known="derived",
    n=75,
    place="from the counts in the abstract",
)
EFFUSION_TESTER_STEP_STURGILL2009 = PublishedValue(
    name="EFFUSION_TESTER_STEP_STURGILL2009",
    value=1.0,
    unit="grade",
    definition="difference of effusion grade that two testers make on the same knee without any change",
    population="knees with possible effusion, two testers, stroke test of five grades",
    source=STURGILL_2009,
    known="derived",
    n=75,
    place="from the counts in the abstract",
)
GIRTH_KNEE_SAME_TESTER_MDC95_JAKOBSEN2010 = PublishedValue(
    name="GIRTH_KNEE_SAME_TESTER_MDC95_JAKOBSEN2010",
    value=1.0,
    unit="cm",
    definition="knee girth, smallest real difference, same tester, about",
    population="patients after total knee replacement",
    source=JAKOBSEN_2010,
    known="from memory",
)
GIRTH_KNEE_TWO_TESTERS_MDC95_JAKOBSEN2010 = PublishedValue(
    name="GIRTH_KNEE_TWO_TESTERS_MDC95_JAKOBSEN2010",
    value=1.6,
    unit="cm",
    definition="knee girth, smallest real difference, two testers, about",
    population="patients after total knee replacement",
    source=JAKOBSEN_2010,
    known="from memory",
)
