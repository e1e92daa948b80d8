"""Passive motion grades A to D of the IKDC knee form, from the deficits against the other knee."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Literal

from kneecase.evidence.motion_grades import (
    MOTION_GRADE_EXTENSION_A_IKDC2000,
    MOTION_GRADE_EXTENSION_B_IKDC2000,
    MOTION_GRADE_EXTENSION_C_IKDC2000,
    MOTION_GRADE_EXTENSION_D_IKDC2000,
    MOTION_GRADE_FLEXION_A_IKDC2000,
    MOTION_GRADE_FLEXION_B_IKDC2000,
    MOTION_GRADE_FLEXION_C_IKDC2000,
    MOTION_GRADE_FLEXION_D_IKDC2000,
)
from kneecase.evidence.provenance import PublishedValue
from kneecase.measures.accepted import accepted

__all__ = [
    "DECIMAL_RULE",
    "EXTENSION_GRADES",
    "FLEXION_GRADES",
    "FULL_MOTION",
    "GRADE_WORDS",
    "MotionGrade",
    "extension_grade",
    "flexion_grade",
    "full_within_deg",
    "passive_motion_grade",
]

MotionGrade = Literal["A", "B", "C", "D"]

GRADE_WORDS = {"A": "normal", "B": "nearly normal", "C": "abnormal", "D": "severely abnormal"}
"""What the form calls each grade."""

DECIMAL_RULE = (
    "the form prints whole degrees; between them kneecase's own rule is: extension below 3 is A, below 6 B, "
    "up to 10 C; flexion up to 5 is A, up to 15 B, up to 25 C; above that D"
)
"""The rule for decimals, which is ours and not the form's."""

EXTENSION_GRADES = (
    MOTION_GRADE_EXTENSION_A_IKDC2000,
    MOTION_GRADE_EXTENSION_B_IKDC2000,
    MOTION_GRADE_EXTENSION_C_IKDC2000,
    MOTION_GRADE_EXTENSION_D_IKDC2000,
)
FLEXION_GRADES = (
    MOTION_GRADE_FLEXION_A_IKDC2000,
    MOTION_GRADE_FLEXION_B_IKDC2000,
    MOTION_GRADE_FLEXION_C_IKDC2000,
    MOTION_GRADE_FLEXION_D_IKDC2000,
)

FULL_MOTION: Mapping[str, PublishedValue] = MappingProxyType(
    {
        "knee_flexion": MOTION_GRADE_FLEXION_A_IKDC2000,
        "knee_extension": MOTION_GRADE_EXTENSION_A_IKDC2000,
    }
)
"""The shortfall to the other knee that still counts as full motion: grade A; that it serves so is ours."""


def full_within_deg(full: PublishedValue) -> float:
    """The end of the shortfall that counts as full motion [deg]."""
    return full.number if full.high is None else full.high


def extension_grade(lack_deg: float) -> MotionGrade:
    """Passive motion grade of a lack of extension [deg] against the other knee.

    Formula: below 3 A, below 6 B, up to 10 C, above D. For whole degrees this is the form's table; between
    5 and 6 the rule is kneecase's own.

    Parameters
    ----------
    lack_deg : float
        Passive extension deficit; more extension than the other knee is negative [deg].

    Returns
    -------
    {"A", "B", "C", "D"}
        Grade, A normal.

    Raises
    ------
    InputError
        If the deficit is missing.

    References
    ----------
    ikdc-knee-form-2000

    Examples
    --------
    >>> [extension_grade(lack) for lack in (2.0, 3.0, 5.5, 6.0, 10.0, 10.5)]
    ['A', 'B', 'B', 'C', 'C', 'D']
    """
    lack = accepted("lack_deg", lack_deg, "deg")
    normal, _, abnormal, severe = EXTENSION_GRADES
    if lack < normal.number:
        return "A"
    if abnormal.low is not None and lack < abnormal.low:
        return "B"
    return "D" if lack > severe.number else "C"


def flexion_grade(lack_deg: float) -> MotionGrade:
    """Passive motion grade of a lack of flexion [deg] against the other knee.

    Formula: up to 5 A, up to 15 B, up to 25 C, above D. For whole degrees this is the form's table;
    between them the rule is kneecase's own.

    Parameters
    ----------
    lack_deg : float
        Passive flexion deficit; more flexion than the other knee is negative [deg].

    Returns
    -------
    {"A", "B", "C", "D"}
        Grade, A normal.

    Raises
    ------
    InputError
        If the deficit is missing.

    References
    ----------
    ikdc-knee-form-2000

    Examples
    --------
    >>> [flexion_grade(lack) for lack in (5.0, 5.5, 15.0, 16.0, 25.0, 26.0)]
    ['A', 'B', 'B', 'C', 'C', 'D']
    """
    lack = accepted("lack_deg", lack_deg, "deg")
    normal, nearly, _, severe = FLEXION_GRADES
    if normal.high is not None and lack <= normal.high:
        return "A"
    if nearly.high is not None and lack <= nearly.high:
        return "B"
    return "D" if lack > severe.number else "C"


def passive_motion_grade(*, extension_lack_deg: float, flexion_lack_deg: float) -> MotionGrade:
    """Passive motion grade of a knee: the worse of its extension and its flexion grade.

    Looked at to name the state of a knee in the form's words.

    Parameters
    ----------
    extension_lack_deg, flexion_lack_deg : float
        Passive deficits against the other knee [deg].

    Returns
    -------
    {"A", "B", "C", "D"}
        Grade, A normal.

    Raises
    ------
    InputError
        If a deficit is missing.

    References
    ----------
    ikdc-knee-form-2000

    Examples
    --------
    >>> passive_motion_grade(extension_lack_deg=2.0, flexion_lack_deg=18.0)
    'C'
    """
    return max(extension_grade(extension_lack_deg), flexion_grade(flexion_lack_deg))
