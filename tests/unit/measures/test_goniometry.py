"""Angles, arcs, notation, heel height, passive grades and normal motion."""

from __future__ import annotations

import numpy as np
import pytest

from kneecase.errors import InputError
from kneecase.measures import (
    allowed_arc_pct,
    difference_sem,
    extension_deficit_deg,
    extension_grade,
    flexion_deficit_deg,
    flexion_grade,
    heel_height_cm,
    motion_arc_deg,
    neutral_zero_text,
    normal_motion,
    passive_motion_grade,
    shank_angle_deg,
    thumb_rule_angle_deg,
)

# ours: worked by hand. operated extension, other extension, deficit
EXTENSION = [(5.0, 0.0, 5.0), (0.0, -5.0, 5.0), (2.0, -3.0, 5.0), (-5.0, 0.0, -5.0), (-3.0, -3.0, 0.0)]

# ours: asin(height / shank length), to two decimals; rows are shank lengths, columns 1, 2, 3, 5, 8 cm
HEEL_HEIGHT = {
    40.0: (1.43, 2.87, 4.30, 7.18, 11.54),
    45.0: (1.27, 2.55, 3.82, 6.38, 10.24),
    48.0: (1.19, 2.39, 3.58, 5.98, 9.59),
}


@pytest.mark.parametrize(("own", "other", "deficit"), EXTENSION)
def test_extension_deficit(own: float, other: float, deficit: float) -> None:
    """A straight knee beside one that hyperextends 5° lacks 5°: the sign never flips."""
    assert extension_deficit_deg(involved_extension_deg=own, uninvolved_extension_deg=other) == deficit


def test_flexion_deficit_and_arrays() -> None:
    """The other knee minus the operated one, for one knee or a series."""
    assert flexion_deficit_deg(involved_flexion_deg=118.0, uninvolved_flexion_deg=142.0) == 24.0
    many = flexion_deficit_deg(
        involved_flexion_deg=np.array([90.0, 145.0]), uninvolved_flexion_deg=np.array([142.0, 142.0])
    )
    assert list(many) == [52.0, -3.0]


@pytest.mark.parametrize("angle", [float("nan"), 1350.0, -45.0])
def test_impossible_angles(angle: float) -> None:
    """An impossible angle is refused with its rule and a likely cure."""
    with pytest.raises(InputError, match="Is a point missing"):
        flexion_deficit_deg(involved_flexion_deg=angle, uninvolved_flexion_deg=140.0)
    with pytest.raises(InputError, match="0 straight, positive when it lacks"):
        extension_deficit_deg(involved_extension_deg=angle, uninvolved_extension_deg=0.0)


def test_difference_of_two_errors() -> None:
    """Independent errors add in squares."""
    assert difference_sem(3.0, 4.0) == 5.0
    with pytest.raises(InputError, match="uninvolved_sem"):
        difference_sem(3.0, -4.0)


def test_arc() -> None:
    """From extension to flexion; a swapped pair is refused."""
    assert motion_arc_deg(extension_deg=10.0, flexion_deg=95.0) == 85.0
    assert motion_arc_deg(extension_deg=-5.0, flexion_deg=140.0) == 145.0
    with pytest.raises(InputError, match="Were the two swapped"):
        motion_arc_deg(extension_deg=95.0, flexion_deg=10.0)


def test_allowed_arc() -> None:
    """Share of what the surgeon allows; beyond it the share is above 100 and stays so."""
    limits = {"extension_limit_deg": 0.0, "flexion_limit_deg": 90.0}

    assert allowed_arc_pct(extension_deg=5.0, flexion_deg=77.0, **limits) == 80.0
    assert allowed_arc_pct(extension_deg=0.0, flexion_deg=99.0, **limits) == pytest.approx(110.0)
    with pytest.raises(InputError, match="No motion is allowed"):
        allowed_arc_pct(extension_deg=0.0, flexion_deg=0.0, extension_limit_deg=0.0, flexion_limit_deg=0.0)


@pytest.mark.parametrize(
    ("extension", "flexion", "text"),
    [
        (-5.0, 140.0, "5-0-140"),
        (5.0, 120.0, "0-5-120"),
        (0.0, 135.0, "0-0-135"),
        (-0.0, 135.0, "0-0-135"),
        (-2.5, 137.5, "2.5-0-137.5"),
    ],
)
def test_neutral_zero(extension: float, flexion: float, text: str) -> None:
    """Hyperextension stands first, lacking extension in the middle."""
    assert neutral_zero_text(extension, flexion) == text


@pytest.mark.parametrize("shank_cm", HEEL_HEIGHT)
def test_heel_height_table(shank_cm: float) -> None:
    """Our table of angles for three shank lengths, to its two decimals."""
    found = shank_angle_deg(np.array([1.0, 2.0, 3.0, 5.0, 8.0]), np.full(5, shank_cm))

    assert list(found) == pytest.approx(HEEL_HEIGHT[shank_cm], abs=0.00501)


def test_heel_height_back() -> None:
    """5° is 3.49, 3.92 and 4.18 cm at 40, 45 and 48 cm of shank (ours)."""
    found = [heel_height_cm(5.0, length) for length in (40.0, 45.0, 48.0)]

    assert found == pytest.approx([3.49, 3.92, 4.18], abs=0.005)
    assert thumb_rule_angle_deg(3.0, 1.2) == pytest.approx(3.6)


def test_heel_height_is_checked() -> None:
    """A difference longer than the shank is a slip of the unit; an angle beyond upright is none."""
    with pytest.raises(InputError, match="Was one typed in another unit"):
        shank_angle_deg(50.0, 45.0)
    with pytest.raises(InputError, match="shank_length_cm must be above 0"):
        shank_angle_deg(3.0, 0.0)
    with pytest.raises(InputError, match=r"between .90 and 90"):
        heel_height_cm(120.0, 45.0)
    with pytest.raises(InputError, match="rule_deg"):
        thumb_rule_angle_deg(3.0, 0.0)


@pytest.mark.parametrize(
    ("lack", "extension", "flexion"),
    [
        (-4.0, "A", "A"),
        (2.9, "A", "A"),
        (5.4, "B", "B"),
        (5.9, "B", "B"),
        (10.1, "D", "B"),
        (15.1, "D", "C"),
        (25.1, "D", "D"),
    ],
)
def test_decimals_between_grades(lack: float, extension: str, flexion: str) -> None:
    """Our own rule between the form's whole degrees; more motion than the other knee is A."""
    assert extension_grade(lack) == extension
    assert flexion_grade(lack) == flexion


def test_unknown_has_no_grade() -> None:
    """A missing deficit is refused: unknown never passes as normal."""
    with pytest.raises(InputError, match="lack_deg"):
        passive_motion_grade(extension_lack_deg=float("nan"), flexion_lack_deg=0.0)


@pytest.mark.parametrize(
    ("measure", "sex", "age", "numbers"),
    [
        ("knee_flexion", "female", 2, [152.6]),
        ("knee_flexion", "male", 8.9, [147.8]),
        ("knee_extension", "female", 5, [5.4]),
        ("knee_flexion", "male", 19, [142.2]),
        ("knee_flexion", "female", 22, [141.9, 132.0]),
        ("knee_extension", "male", 50, [0.5]),
        ("knee_extension", "other", 22, []),
        ("knee_flexion", "", 22, [132.0]),
        ("knee_flexion", "female", 1, []),
    ],
)
def test_normal_motion(measure: str, sex: str, age: float, numbers: list[float]) -> None:
    """The band of the age and sex as published; where none was, there is none."""
    assert [value.number for value in normal_motion(measure, sex=sex, age_years=age)] == numbers


def test_normal_motion_is_checked() -> None:
    """Only motion has normal values, and the age must be one."""
    with pytest.raises(InputError, match="knee_flexion or knee_extension"):
        normal_motion("effusion", sex="female", age_years=22)
    with pytest.raises(InputError, match="age_years"):
        normal_motion("knee_flexion", sex="female", age_years=float("nan"))
