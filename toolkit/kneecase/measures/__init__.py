"""One visit: motion, effusion, girth, strength, hops, balance, landing, outcome scores, and their error."""

from __future__ import annotations

from kneecase.measures.agreement import limits_of_agreement
from kneecase.measures.effusion import effusion_course, effusion_word, is_beyond_tester_difference
from kneecase.measures.girth import girth_difference_cm, girth_differences
from kneecase.measures.goniometry import (
    allowed_arc_pct,
    difference_sem,
    extension_deficit_deg,
    flexion_deficit_deg,
    motion_arc_deg,
    neutral_zero_text,
)
from kneecase.measures.heel_height import heel_height_cm, shank_angle_deg, thumb_rule_angle_deg
from kneecase.measures.instruments import instrument_reliability
from kneecase.measures.intraclass import IntraclassCorrelation, intraclass_correlation
from kneecase.measures.motion_deficits import motion_deficits
from kneecase.measures.motion_grade import extension_grade, flexion_grade, passive_motion_grade
from kneecase.measures.normal_motion import normal_motion
from kneecase.measures.reference_limb import ReferenceLimb, reference_limb
from kneecase.measures.reliability import (
    minimal_detectable_change,
    normal_quantile,
    repeatability_coefficient,
    sem_from_detectable_change,
    sem_from_limits_of_agreement,
    standard_error_of_measurement,
    within_subject_sd,
)
from kneecase.measures.symmetry import limb_symmetry_index, symmetry_band, symmetry_sem_points
from kneecase.measures.threshold import chance_true_value_passes, is_met

__all__ = [
    "IntraclassCorrelation",
    "ReferenceLimb",
    "allowed_arc_pct",
    "chance_true_value_passes",
    "difference_sem",
    "effusion_course",
    "effusion_word",
    "extension_deficit_deg",
    "extension_grade",
    "flexion_deficit_deg",
    "flexion_grade",
    "girth_difference_cm",
    "girth_differences",
    "heel_height_cm",
    "instrument_reliability",
    "intraclass_correlation",
    "is_beyond_tester_difference",
    "is_met",
    "limb_symmetry_index",
    "limits_of_agreement",
    "minimal_detectable_change",
    "motion_arc_deg",
    "motion_deficits",
    "neutral_zero_text",
    "normal_motion",
    "normal_quantile",
    "passive_motion_grade",
    "reference_limb",
    "repeatability_coefficient",
    "sem_from_detectable_change",
    "sem_from_limits_of_agreement",
    "shank_angle_deg",
    "standard_error_of_measurement",
    "symmetry_band",
    "symmetry_sem_points",
    "thumb_rule_angle_deg",
    "within_subject_sd",
]
