"""Published values: how far a goniometer or an inclinometer is off at the knee."""

from __future__ import annotations

from kneecase.evidence.provenance import PublishedValue, Source

COMMON_PRACTICE = Source(
    key="common-practice",
    authors="Rule of the trade",
    year=None,
    title="Common practice in knee rehabilitation, without a source",
    venue="",
    kind="convention",
    known="common practice",
)
"""The source that is none: rules of the trade, shown as such and never as published."""
PANTOUVERIS_2024 = Source(
    key="pantouveris-2024",
    authors="Pantouveris M, Kotsifaki R, Whiteley R",
    year=2024,
    title="Inclinometers and apps are better than goniometers, measuring knee extension range of motion "
    "in anterior cruciate ligament patients",
    venue="J Knee Surg 37(12):821-827",
    doi="10.1055/a-2321-0516",
    kind="reliability study",
    known="abstract",
)
LENSSEN_2007 = Source(
    key="lenssen-2007",
    authors="Lenssen AF, van Dam EM, Crijns YH, et al.",
    year=2007,
    title="Reproducibility of goniometric measurement of the knee in the in-hospital phase following total "
    "knee arthroplasty",
    venue="BMC Musculoskelet Disord 8:83",
    doi="10.1186/1471-2474-8-83",
    kind="reliability study",
    known="abstract",
)
HANCOCK_2018 = Source(
    key="hancock-2018",
    authors="Hancock GE, Hepworth T, Wembridge K",
    year=2018,
    title="Accuracy and reliability of knee goniometry methods",
    venue="J Exp Orthop 5:46",
    doi="10.1186/s40634-018-0161-5",
    kind="reliability study",
    known="abstract",
)

_ACL = "ACL-injured or -reconstructed patients, both knees, two blinded testers"
_TKA = "patients three days after total knee replacement, two physical therapists, 50-cm goniometer"

MOTION_EXTENSION_SAME_TESTER_MDC95_PANTOUVERIS2024 = PublishedValue(
    name="MOTION_EXTENSION_SAME_TESTER_MDC95_PANTOUVERIS2024",
    value=3.5,
    low=2.0,
    high=3.5,
    spread_is="range over goniometer, inclinometer and phone",
    unit="deg",
    definition="knee extension, minimal detectable change at 95 %, same tester",
    population=_ACL,
    n=92,
    source=PANTOUVERIS_2024,
    known="abstract",
    place="abstract; which device has which end is not printed there",
)
MOTION_EXTENSION_TWO_TESTERS_MDC95_PANTOUVERIS2024 = PublishedValue(
    name="MOTION_EXTENSION_TWO_TESTERS_MDC95_PANTOUVERIS2024",
    value=10.4,
    low=3.7,
    high=10.4,
    spread_is="range over goniometer, inclinometer and phone",
    unit="deg",
    definition="knee extension, minimal detectable change at 95 %, two testers",
    population=_ACL,
    n=92,
    source=PANTOUVERIS_2024,
    known="abstract",
    place="abstract; the goniometer was the least reliable",
)
MOTION_EXTENSION_RETEST_MDC95_PANTOUVERIS2024 = PublishedValue(
    name="MOTION_EXTENSION_RETEST_MDC95_PANTOUVERIS2024",
    value=5.4,
    low=2.6,
    high=5.4,
    spread_is="range over goniometer, inclinometer and phone",
    unit="deg",
    definition="knee extension, minimal detectable change at 95 %, test and retest within one visit",
    population=_ACL,
    n=92,
    source=PANTOUVERIS_2024,
    known="abstract",
    place="abstract",
)
MOTION_EXTENSION_TWO_TESTERS_INCLINOMETER_MDC95_PANTOUVERIS2024 = PublishedValue(
    name="MOTION_EXTENSION_TWO_TESTERS_INCLINOMETER_MDC95_PANTOUVERIS2024",
    value=4.0,
    unit="deg",
    definition="knee extension, minimal detectable change at 95 %, two testers with the same inclinometer, "
    "rounded up from 3.7, the lowest of the printed range",
    population=_ACL,
    n=92,
    source=PANTOUVERIS_2024,
    known="derived",
    place="abstract names the inclinometer as the most reliable device; a page read second-hand gives it "
    "3.7 and the phone 4.0",
)
MOTION_EXTENSION_TWO_TESTERS_ICC_GONIOMETER_PANTOUVERIS2024 = PublishedValue(
    name="MOTION_EXTENSION_TWO_TESTERS_ICC_GONIOMETER_PANTOUVERIS2024",
    value=0.36,
    low=0.17,
    high=0.53,
    spread_is="95 % interval",
    unit="fraction",
    definition="knee extension, ICC(2,1) between two testers, goniometer",
    population=_ACL,
    n=92,
    source=PANTOUVERIS_2024,
    known="abstract",
    place="abstract",
)
MOTION_EXTENSION_TWO_TESTERS_ICC_INCLINOMETER_PANTOUVERIS2024 = PublishedValue(
    name="MOTION_EXTENSION_TWO_TESTERS_ICC_INCLINOMETER_PANTOUVERIS2024",
    value=0.80,
    low=0.71,
    high=0.86,
    spread_is="95 % interval",
    unit="fraction",
    definition="knee extension, ICC(2,1) between two testers, inclinometer",
    population=_ACL,
    n=92,
    source=PANTOUVERIS_2024,
    known="abstract",
    place="abstract",
)
MOTION_FLEXION_SAME_TESTER_MDC95_COMMON_PRACTICE = PublishedValue(
    name="MOTION_FLEXION_SAME_TESTER_MDC95_COMMON_PRACTICE",
    value=5.0,
    unit="deg",
    definition="knee flexion, change taken as more than error, same tester and device",
    population="knees in rehabilitation",
    source=COMMON_PRACTICE,
    known="common practice",
    caution="no minimal detectable change of knee flexion after ACL reconstruction was found",
)
MOTION_FLEXION_SITTING_TWO_TESTERS_LIMITS_LENSSEN2007 = PublishedValue(
    name="MOTION_FLEXION_SITTING_TWO_TESTERS_LIMITS_LENSSEN2007",
    value=2.7,
    low=-6.7,
    high=12.1,
    spread_is="limits of agreement",
    unit="deg",
    definition="passive knee flexion sitting, difference between two testers",
    population=_TKA,
    n=30,
    source=LENSSEN_2007,
    known="abstract",
    place="abstract",
)
MOTION_FLEXION_SUPINE_TWO_TESTERS_LIMITS_LENSSEN2007 = PublishedValue(
    name="MOTION_FLEXION_SUPINE_TWO_TESTERS_LIMITS_LENSSEN2007",
    value=1.4,
    low=-16.2,
    high=19.0,
    spread_is="limits of agreement",
    unit="deg",
    definition="passive knee flexion lying on the back, difference between two testers",
    population=_TKA,
    n=30,
    source=LENSSEN_2007,
    known="abstract",
    place="abstract; the minus sign of the lower limit is lost in print and follows from the mean",
)
MOTION_EXTENSION_TWO_TESTERS_LIMITS_LENSSEN2007 = PublishedValue(
    name="MOTION_EXTENSION_TWO_TESTERS_LIMITS_LENSSEN2007",
    value=2.2,
    low=-6.2,
    high=10.6,
    spread_is="limits of agreement",
    unit="deg",
    definition="passive knee extension, difference between two testers",
    population=_TKA,
    n=30,
    source=LENSSEN_2007,
    known="abstract",
    place="abstract",
)
MOTION_FLEXION_SITTING_TWO_TESTERS_MDC95_LENSSEN2007 = PublishedValue(
    name="MOTION_FLEXION_SITTING_TWO_TESTERS_MDC95_LENSSEN2007",
    value=9.4,
    unit="deg",
    definition="knee flexion sitting, smallest detectable change at 95 %, two testers: half the width of "
    "the limits of agreement",
    population=_TKA,
    n=30,
    source=LENSSEN_2007,
    known="derived",
    place="from the limits in the abstract",
    caution="knee replacement, third day; no value after ACL reconstruction was found",
)
MOTION_FLEXION_SUPINE_TWO_TESTERS_MDC95_LENSSEN2007 = PublishedValue(
    name="MOTION_FLEXION_SUPINE_TWO_TESTERS_MDC95_LENSSEN2007",
    value=17.6,
    unit="deg",
    definition="knee flexion lying on the back, smallest detectable change at 95 %, two testers: half the "
    "width of the limits of agreement",
    population=_TKA,
    n=30,
    source=LENSSEN_2007,
    known="derived",
    place="from the limits in the abstract",
    caution="knee replacement, third day, so likely too wide for a calm knee; no value after ACL "
    "reconstruction was found",
)
MOTION_EXTENSION_TWO_TESTERS_MDC95_LENSSEN2007 = PublishedValue(
    name="MOTION_EXTENSION_TWO_TESTERS_MDC95_LENSSEN2007",
    value=8.4,
    unit="deg",
    definition="knee extension, smallest detectable change at 95 %, two testers: half the width of the "
    "limits of agreement",
    population=_TKA,
    n=30,
    source=LENSSEN_2007,
    known="derived",
    place="from the limits in the abstract",
)
MOTION_MINIMUM_DIFFERENCE_INCLINOMETER_HANCOCK2018 = PublishedValue(
    name="MOTION_MINIMUM_DIFFERENCE_INCLINOMETER_HANCOCK2018",
    value=6.0,
    unit="deg",
    definition="knee angle, 'minimum significant difference', digital inclinometer",
    population="six knees held at fixed angles by supports, three assessors, 300 readings",
    source=HANCOCK_2018,
    known="abstract",
    place="abstract",
    caution="fixed angles hide the error of finding the end of motion",
)
MOTION_MINIMUM_DIFFERENCE_LONG_ARM_HANCOCK2018 = PublishedValue(
    name="MOTION_MINIMUM_DIFFERENCE_LONG_ARM_HANCOCK2018",
    value=10.0,
    unit="deg",
    definition="knee angle, 'minimum significant difference', long-arm goniometer",
    population="six knees held at fixed angles by supports, three assessors, 300 readings",
    source=HANCOCK_2018,
    known="abstract",
    place="abstract",
    caution="fixed angles hide the error of finding the end of motion",
)
MOTION_MINIMUM_DIFFERENCE_PHONE_HANCOCK2018 = PublishedValue(
    name="MOTION_MINIMUM_DIFFERENCE_PHONE_HANCOCK2018",
    value=12.0,
    unit="deg",
    definition="knee angle, 'minimum significant difference', phone application",
    population="six knees held at fixed angles by supports, three assessors, 300 readings",
    source=HANCOCK_2018,
    known="abstract",
    place="abstract",
    caution="fixed angles hide the error of finding the end of motion",
)
MOTION_MINIMUM_DIFFERENCE_SHORT_ARM_HANCOCK2018 = PublishedValue(
    name="MOTION_MINIMUM_DIFFERENCE_SHORT_ARM_HANCOCK2018",
    value=14.0,
    unit="deg",
    definition="knee angle, 'minimum significant difference', short-arm goniometer, and by eye",
    population="six knees held at fixed angles by supports, three assessors, 300 readings",
    source=HANCOCK_2018,
    known="abstract",
    place="abstract",
    caution="fixed angles hide the error of finding the end of motion",
)
