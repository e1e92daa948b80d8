"""One visit: motion, effusion, girth, strength, hops, balance, landing, outcome scores, and their error."""

from __future__ import annotations

from kneecase.evidence.observation_sheets import LANDING_ITEMS, STEP_DOWN_ITEMS
from kneecase.evidence.questionnaires import QUESTIONNAIRES
from kneecase.measures.agreement import limits_of_agreement
from kneecase.measures.alignment import (
    frontal_plane_projection_deg,
    joint_angle_deg,
    pelvic_drop_deg,
    trunk_lean_deg,
)
from kneecase.measures.battery_evidence import BATTERY_EVIDENCE, share_passing_all_pct
from kneecase.measures.capacity_tests import CapacityTest, preoperative_capacity_pct
from kneecase.measures.effusion import effusion_course, effusion_word, is_beyond_tester_difference
from kneecase.measures.girth import girth_difference_cm, girth_differences
from kneecase.measures.go_ahead_item import GoAheadItem
from kneecase.measures.goniometry import (
    allowed_arc_pct,
    difference_sem,
    extension_deficit_deg,
    flexion_deficit_deg,
    motion_arc_deg,
    neutral_zero_text,
)
from kneecase.measures.heel_height import heel_height_cm, shank_angle_deg, thumb_rule_angle_deg
from kneecase.measures.hop_administration import (
    DEFAULT_ADMINISTRATION,
    HOP_ADMINISTRATIONS,
    HopAdministration,
    hop_administration,
)
from kneecase.measures.hop_combined import combined_symmetry_pct
from kneecase.measures.hop_distance import HopDistance, hop_distance_pct
from kneecase.measures.hop_go_ahead import STOP_RULES, HopGoAhead, hop_go_ahead
from kneecase.measures.hop_symmetry import HOP_TESTS, HopSymmetry, hop_symmetry
from kneecase.measures.hop_tests import HopTest
from kneecase.measures.hop_trials import LimbTrials, hop_score
from kneecase.measures.index_error import OTHER_HOP_ERRORS
from kneecase.measures.instruments import instrument_reliability
from kneecase.measures.intraclass import IntraclassCorrelation, intraclass_correlation
from kneecase.measures.jump_height import jump_height_cm
from kneecase.measures.koos_rule import koos_min_answered
from kneecase.measures.landing import landing_band, landing_error_points, landing_score_points
from kneecase.measures.landing_quality import LandingQuality, landing_quality
from kneecase.measures.motion_deficits import motion_deficits
from kneecase.measures.motion_grade import extension_grade, flexion_grade, passive_motion_grade
from kneecase.measures.normal_motion import normal_motion
from kneecase.measures.outcome_scores import OutcomeScores, outcome_scores
from kneecase.measures.paired_symmetry import limb_symmetry
from kneecase.measures.preoperative_capacity import PreoperativeCapacity, preoperative_capacity
from kneecase.measures.reach import (
    composite_reach_pct,
    normalised_reach_pct,
    reach_deficit_cm,
    reach_deficit_pct,
)
from kneecase.measures.readiness import acl_rsi_points, tegner_change_points, tsk_11_points
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
from kneecase.measures.scores import (
    ikdc_subjective_points,
    koos_points,
    kos_adl_points,
    score_from_sum_points,
)
from kneecase.measures.screening import positive_predictive_fraction
from kneecase.measures.stance import involved_load_pct
from kneecase.measures.star_excursion import StarExcursion, star_excursion
from kneecase.measures.step_down import step_down_band, step_down_points
from kneecase.measures.strength import (
    hamstring_quadriceps_fraction,
    quadriceps_index_pct,
    torque_n_m,
    torque_per_mass_n_m_per_kg,
)
from kneecase.measures.strength_symmetry import StrengthSymmetry, strength_symmetry
from kneecase.measures.strength_tests import StrengthTest
from kneecase.measures.symmetry import limb_symmetry_index, symmetry_band, symmetry_sem_points
from kneecase.measures.symmetry_verdict import SymmetryThreshold
from kneecase.measures.symptoms import pain_and_soreness
from kneecase.measures.threshold import chance_true_value_passes, is_met

__all__ = [
    "BATTERY_EVIDENCE",
    "DEFAULT_ADMINISTRATION",
    "HOP_ADMINISTRATIONS",
    "HOP_TESTS",
    "LANDING_ITEMS",
    "OTHER_HOP_ERRORS",
    "QUESTIONNAIRES",
    "STEP_DOWN_ITEMS",
    "STOP_RULES",
    "CapacityTest",
    "GoAheadItem",
    "HopAdministration",
    "HopDistance",
    "HopGoAhead",
    "HopSymmetry",
    "HopTest",
    "IntraclassCorrelation",
    "LandingQuality",
    "LimbTrials",
    "OutcomeScores",
    "PreoperativeCapacity",
    "ReferenceLimb",
    "StarExcursion",
    "StrengthSymmetry",
    "StrengthTest",
    "SymmetryThreshold",
    "acl_rsi_points",
    "allowed_arc_pct",
    "chance_true_value_passes",
    "combined_symmetry_pct",
    "composite_reach_pct",
    "difference_sem",
    "effusion_course",
    "effusion_word",
    "extension_deficit_deg",
    "extension_grade",
    "flexion_deficit_deg",
    "flexion_grade",
    "frontal_plane_projection_deg",
    "girth_difference_cm",
    "girth_differences",
    "hamstring_quadriceps_fraction",
    "heel_height_cm",
    "hop_administration",
    "hop_distance_pct",
    "hop_go_ahead",
    "hop_score",
    "hop_symmetry",
    "ikdc_subjective_points",
    "instrument_reliability",
    "intraclass_correlation",
    "involved_load_pct",
    "is_beyond_tester_difference",
    "is_met",
    "joint_angle_deg",
    "jump_height_cm",
    "koos_min_answered",
    "koos_points",
    "kos_adl_points",
    "landing_band",
    "landing_error_points",
    "landing_quality",
    "landing_score_points",
    "limb_symmetry",
    "limb_symmetry_index",
    "limits_of_agreement",
    "minimal_detectable_change",
    "motion_arc_deg",
    "motion_deficits",
    "neutral_zero_text",
    "normal_motion",
    "normal_quantile",
    "normalised_reach_pct",
    "outcome_scores",
    "pain_and_soreness",
    "passive_motion_grade",
    "pelvic_drop_deg",
    "positive_predictive_fraction",
    "preoperative_capacity",
    "preoperative_capacity_pct",
    "quadriceps_index_pct",
    "reach_deficit_cm",
    "reach_deficit_pct",
    "reference_limb",
    "repeatability_coefficient",
    "score_from_sum_points",
    "sem_from_detectable_change",
    "sem_from_limits_of_agreement",
    "shank_angle_deg",
    "share_passing_all_pct",
    "standard_error_of_measurement",
    "star_excursion",
    "step_down_band",
    "step_down_points",
    "strength_symmetry",
    "symmetry_band",
    "symmetry_sem_points",
    "tegner_change_points",
    "thumb_rule_angle_deg",
    "torque_n_m",
    "torque_per_mass_n_m_per_kg",
    "trunk_lean_deg",
    "tsk_11_points",
    "within_subject_sd",
]
