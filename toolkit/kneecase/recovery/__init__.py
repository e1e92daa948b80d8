"""Over time: gain rate, real change and plateau of a recovering knee."""

from __future__ import annotations

from kneecase.recovery.change import RealChange, real_change
from kneecase.recovery.cohort import CohortGain, cohort_gain
from kneecase.recovery.flat import Plateau, plateau
from kneecase.recovery.gain import gain_rate
from kneecase.recovery.lines import Line, known_error_line, least_squares_line, theil_sen_line
from kneecase.recovery.motion import MotionGain, motion_gain
from kneecase.recovery.rate import GainRate
from kneecase.recovery.series import Series
from kneecase.recovery.window import Window

__all__ = [
    "CohortGain",
    "GainRate",
    "Line",
    "MotionGain",
    "Plateau",
    "RealChange",
    "Series",
    "Window",
    "cohort_gain",
    "gain_rate",
    "known_error_line",
    "least_squares_line",
    "motion_gain",
    "plateau",
    "real_change",
    "theil_sen_line",
]
