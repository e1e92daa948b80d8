"""Published values: passive motion grades, heel height, effusion grades and quadriceps lag."""

from __future__ import annotations

from kneecase.evidence.common_practice import COMMON_PRACTICE
from kneecase.evidence.provenance import PublishedValue, Source

IKDC_2000 = Source(
    key="ikdc-knee-form-2000",
    authors="International Knee Documentation Committee",
    year=2000,
    title="IKDC knee examination form 2000",
    venue="",
    kind="form",
    known="full text",
)
SCHLEGEL_2002 = Source(
    key="schlegel-2002",
    authors="Schlegel TF, et al.",
    year=2002,
    title="Prone heel-height difference (title not re-read)",
    venue="Am J Sports Med 30:479",
    kind="reliability study",
    known="from memory",
)
STURGILL_2009 = Source(
    key="sturgill-2009",
    authors="Sturgill LP, et al.",
    year=2009,
    title="Interrater reliability of a clinical scale to assess knee joint effusion",
    venue="J Orthop Sports Phys Ther 39:845-849",
    kind="reliability study",
    known="abstract",
)
STILLMAN_2004 = Source(
    key="stillman-2004",
    authors="Stillman BC",
    year=2004,
    title="Physiological quadriceps lag: its nature and clinical significance",
    venue="Aust J Physiother 50",
    kind="observational study",
    known="abstract",
)
MOTION_GRADE_EXTENSION_A_IKDC2000 = PublishedValue(
    name="MOTION_GRADE_EXTENSION_A_IKDC2000",
    value=3.0,
    unit="deg",
    definition="passive motion grade A, lack of extension against the other knee",
    population="index knee against the opposite knee, whole degrees",
    source=IKDC_2000,
    known="full text",
    operator="<",
    place="passive motion deficit",
)
MOTION_GRADE_EXTENSION_B_IKDC2000 = PublishedValue(
    name="MOTION_GRADE_EXTENSION_B_IKDC2000",
    value=None,
    unit="deg",
    definition="passive motion grade B, lack of extension against the other knee",
    population="index knee against the opposite knee, whole degrees",
    source=IKDC_2000,
    known="full text",
    low=3.0,
    high=5.0,
    place="passive motion deficit",
)
MOTION_GRADE_EXTENSION_C_IKDC2000 = PublishedValue(
    name="MOTION_GRADE_EXTENSION_C_IKDC2000",
    value=None,
    unit="deg",
    definition="passive motion grade C, lack of extension against the other knee",
    population="index knee against the opposite knee, whole degrees",
    source=IKDC_2000,
    known="full text",
    low=6.0,
    high=10.0,
    place="passive motion deficit",
)
MOTION_GRADE_EXTENSION_D_IKDC2000 = PublishedValue(
    name="MOTION_GRADE_EXTENSION_D_IKDC2000",
    value=10.0,
    unit="deg",
    definition="passive motion grade D, lack of extension against the other knee",
    population="index knee against the opposite knee, whole degrees",
    source=IKDC_2000,
    known="full text",
    operator=">",
    place="passive motion deficit",
)
MOTION_GRADE_FLEXION_A_IKDC2000 = PublishedValue(
    name="MOTION_GRADE_FLEXION_A_IKDC2000",
    value=None,
    unit="deg",
    definition="passive motion grade A, lack of flexion against the other knee",
    population="index knee against the opposite knee, whole degrees",
    source=IKDC_2000,
    known="full text",
    low=0.0,
    high=5.0,
    place="passive motion deficit",
)
MOTION_GRADE_FLEXION_B_IKDC2000 = PublishedValue(
    name="MOTION_GRADE_FLEXION_B_IKDC2000",
    value=None,
    unit="deg",
    definition="passive motion grade B, lack of flexion against the other knee",
    population="index knee against the opposite knee, whole degrees",
    source=IKDC_2000,
    known="full text",
    low=6.0,
    high=15.0,
    place="passive motion deficit",
)
MOTION_GRADE_FLEXION_C_IKDC2000 = PublishedValue(
    name="MOTION_GRADE_FLEXION_C_IKDC2000",
    value=None,
    unit="deg",
    definition="passive motion grade C, lack of flexion against the other knee",
    population="index knee against the opposite knee, whole degrees",
    source=IKDC_2000,
    known="full text",
    low=16.0,
    high=25.0,
    place="passive motion deficit",
)
MOTION_GRADE_FLEXION_D_IKDC2000 = PublishedValue(
    name="MOTION_GRADE_FLEXION_D_IKDC2000",
    value=25.0,
    unit="deg",
    definition="passive motion grade D, lack of flexion against the other knee",
    population="index knee against the opposite knee, whole degrees",
    source=IKDC_2000,
    known="full text",
    operator=">",
    place="passive motion deficit",
)
HEEL_HEIGHT_DEG_PER_CM_COMMONPRACTICE = PublishedValue(
    name="HEEL_HEIGHT_DEG_PER_CM_COMMONPRACTICE",
    value=1.0,
    unit="deg",
    definition="extension lost for each centimetre of heel-height difference, rule of thumb",
    population="knees in rehabilitation",
    source=COMMON_PRACTICE,
    known="common practice",
)
HEEL_HEIGHT_DEG_PER_CM_SCHLEGEL2002 = PublishedValue(
    name="HEEL_HEIGHT_DEG_PER_CM_SCHLEGEL2002",
    value=1.2,
    unit="deg",
    definition="extension lost for each centimetre of heel-height difference, about",
    population="adult legs",
    source=SCHLEGEL_2002,
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
    value=5.0,
    unit="reps",
    definition="knees, of 75, on which two testers differed by two grades; none by more",
    population="knees with possible effusion, two testers, stroke test of five grades",
    source=STURGILL_2009,
    known="abstract",
    n=75,
    place="abstract",
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
LAG_AT_ONCE_STILLMAN2004 = PublishedValue(
    name="LAG_AT_ONCE_STILLMAN2004",
    value=2.5,
    unit="deg",
    definition="quadriceps lag of a healthy knee, read at once, mean",
    population="healthy adults",
    source=STILLMAN_2004,
    known="abstract",
    n=64,
    place="abstract",
)
LAG_AFTER_5_S_STILLMAN2004 = PublishedValue(
    name="LAG_AFTER_5_S_STILLMAN2004",
    value=5.0,
    unit="deg",
    definition="quadriceps lag of a healthy knee after 5 s, mean",
    population="healthy adults",
    source=STILLMAN_2004,
    known="abstract",
    n=64,
    place="abstract",
)
LAG_5_DEG_SHARE_AT_ONCE_STILLMAN2004 = PublishedValue(
    name="LAG_5_DEG_SHARE_AT_ONCE_STILLMAN2004",
    value=16.0,
    unit="pct",
    definition="share of healthy knees with a quadriceps lag of 5° or more, read at once",
    population="healthy adults",
    source=STILLMAN_2004,
    known="abstract",
    n=64,
    place="abstract",
)
LAG_5_DEG_SHARE_AFTER_5_S_STILLMAN2004 = PublishedValue(
    name="LAG_5_DEG_SHARE_AFTER_5_S_STILLMAN2004",
    value=41.0,
    unit="pct",
    definition="share of healthy knees with a quadriceps lag of 5° or more after 5 s",
    population="healthy adults",
    source=STILLMAN_2004,
    known="abstract",
    n=64,
    place="abstract",
)
