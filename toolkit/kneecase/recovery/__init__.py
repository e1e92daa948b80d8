"""Over time: gain rate, real change, plateau and recovery curve of a knee."""

from __future__ import annotations

from kneecase.recovery.change import RealChange, real_change
from kneecase.recovery.classical import SaturatingCurve, saturating_curve
from kneecase.recovery.cohort import CohortGain, cohort_gain
from kneecase.recovery.course import STIFF, Course
from kneecase.recovery.course_change import CourseChange, course_change
from kneecase.recovery.curve import recovery_curve
from kneecase.recovery.curve_answer import RecoveryCurve
from kneecase.recovery.curve_series import CurveSeries
from kneecase.recovery.fit import CurveBand, RecoveryFit, fit_recovery
from kneecase.recovery.flat import Plateau, plateau
from kneecase.recovery.gain import gain_rate
from kneecase.recovery.inverse import TargetWeek, target_week
from kneecase.recovery.lines import Line, known_error_line, least_squares_line, theil_sen_line
from kneecase.recovery.motion import MotionGain, motion_gain
from kneecase.recovery.prior import INCIDENCES, ORDINARY, RecoveryPrior, recovery_prior
from kneecase.recovery.rate import GainRate
from kneecase.recovery.readings import NO_PRIOR
from kneecase.recovery.series import Series
from kneecase.recovery.track_record import Forecast, track_record
from kneecase.recovery.window import Window

__all__ = [
    "INCIDENCES",
    "NO_PRIOR",
    "ORDINARY",
    "STIFF",
    "CohortGain",
    "Course",
    "CourseChange",
    "CurveBand",
    "CurveSeries",
    "Forecast",
    "GainRate",
    "Line",
    "MotionGain",
    "Plateau",
    "RealChange",
    "RecoveryCurve",
    "RecoveryFit",
    "RecoveryPrior",
    "SaturatingCurve",
    "Series",
    "TargetWeek",
    "Window",
    "cohort_gain",
    "course_change",
    "fit_recovery",
    "gain_rate",
    "known_error_line",
    "least_squares_line",
    "motion_gain",
    "plateau",
    "real_change",
    "recovery_curve",
    "recovery_prior",
    "saturating_curve",
    "target_week",
    "theil_sen_line",
    "track_record",
]
