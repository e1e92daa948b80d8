"""Published values: how often a reconstructed knee came to a procedure for stiffness, or was stiff."""

from __future__ import annotations

from kneecase.evidence.course import OUWELEEN_2021
from kneecase.evidence.provenance import PublishedValue, Source

HOPPER_2024 = Source(
    key="hopper-2024",
    authors="Hopper and others",
    year=2024,
    title="Manipulation or lysis of adhesions in a large database (title in our words)",
    venue="Arthroscopy 40:1687",
    kind="registry",
    known="abstract",
)
HULEATT_2018 = Source(
    key="huleatt-2018",
    authors="Huleatt and others",
    year=2018,
    title="Manipulation or lysis of adhesions after ACL reconstruction (title in our words)",
    venue="Orthopaedic Journal of Sports Medicine",
    kind="cohort",
    known="abstract",
    doi="10.1177/2325967118794490",
)
NWACHUKWU_2011 = Source(
    key="nwachukwu-2011",
    authors="Nwachukwu and others",
    year=2011,
    title="Arthrofibrosis after ACL reconstruction in children and adolescents (title in our words)",
    venue="Journal of Pediatric Orthopaedics",
    kind="cohort",
    known="abstract",
)

_ADOLESCENTS = "adolescents after ACL reconstruction, mean age 15.9 years"

COURSE_STIFFNESS_PROCEDURE_HOPPER2024 = PublishedValue(
    name="COURSE_STIFFNESS_PROCEDURE_HOPPER2024",
    value=1.45,
    unit="pct",
    definition="share of reconstructions followed by manipulation or lysis of adhesions",
    population="a large database (4,842 of 333,876)",
    n=333_876,
    source=HOPPER_2024,
    known="abstract",
)
COURSE_STIFFNESS_PROCEDURE_HULEATT2018 = PublishedValue(
    name="COURSE_STIFFNESS_PROCEDURE_HULEATT2018",
    value=4.5,
    unit="pct",
    definition="share of reconstructions followed by a procedure for stiffness",
    population="patients after ACL reconstruction",
    n=2424,
    source=HULEATT_2018,
    known="abstract",
)
COURSE_STIFFNESS_PROCEDURE_NWACHUKWU2011 = PublishedValue(
    name="COURSE_STIFFNESS_PROCEDURE_NWACHUKWU2011",
    value=8.3,
    unit="pct",
    definition="share lacking extension ≥ 5° or flexion ≥ 15° against the other knee and needing a procedure",
    population="age 7 to 18 years (77 of 933)",
    n=933,
    source=NWACHUKWU_2011,
    known="abstract",
)
COURSE_STIFFNESS_HAMSTRING_OUWELEEN2021 = PublishedValue(
    name="COURSE_STIFFNESS_HAMSTRING_OUWELEEN2021",
    value=1.9,
    unit="pct",
    definition="share lacking extension 10° and/or flexion 20° at 3 months, hamstring tendon graft",
    population=_ADOLESCENTS,
    source=OUWELEEN_2021,
    known="abstract",
)
COURSE_STIFFNESS_QUADRICEPS_OUWELEEN2021 = PublishedValue(
    name="COURSE_STIFFNESS_QUADRICEPS_OUWELEEN2021",
    value=6.3,
    unit="pct",
    definition="share lacking extension 10° and/or flexion 20° at 3 months, quadriceps tendon graft",
    population=_ADOLESCENTS,
    source=OUWELEEN_2021,
    known="abstract",
)
COURSE_STIFFNESS_PATELLAR_OUWELEEN2021 = PublishedValue(
    name="COURSE_STIFFNESS_PATELLAR_OUWELEEN2021",
    value=10.0,
    unit="pct",
    definition="share lacking extension 10° and/or flexion 20° at 3 months, patellar tendon graft",
    population=_ADOLESCENTS,
    source=OUWELEEN_2021,
    known="abstract",
)
