"""Rules for taking the other limb as a reference; conventions, shown as such."""

from __future__ import annotations

from kneecase.evidence.motion import COMMON_PRACTICE
from kneecase.evidence.provenance import PublishedValue

REFERENCE_CHILD_AGE_COMMON_PRACTICE = PublishedValue(
    name="REFERENCE_CHILD_AGE_COMMON_PRACTICE",
    value=16.0,
    unit="years",
    operator="<",
    definition="age below which side-to-side percentages do not count as a criterion: many healthy children "
    "differ between sides by more than a tenth",
    population="children",
    source=COMMON_PRACTICE,
    known="common practice",
)
