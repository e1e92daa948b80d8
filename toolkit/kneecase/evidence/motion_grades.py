"""Published values: passive motion grades, heel height and quadriceps lag."""

from __future__ import annotations

from kneecase.evidence.motion import COMMON_PRACTICE
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
HEEL_HEIGHT_DEG_PER_CM_COMMON_PRACTICE = PublishedValue(
    name="HEEL_HEIGHT_DEG_PER_CM_COMMON_PRACTICE",
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
