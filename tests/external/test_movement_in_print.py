"""Printed errors of the frontal plane projection, and exact geometry of angles.

Munro, Herrington and Carolan 2012 (abstract) print a standard error of 2.72 to 3.01 degrees and a smallest
detectable difference of 7.54 to 8.93.  The lower pair agrees; the upper does not: 3.01 gives 8.34, and 8.93
would need 3.22.  The check holds the print against the arithmetic and keeps the contradiction in view.

The geometry rows are theorems, not our output: a 3-4-5 triangle has 90, 53.130102 and 36.869898 degrees, an
equilateral one 60, a straight limb 180.
"""

from __future__ import annotations

import math

import numpy as np
import pytest

from kneecase.measures import joint_angle_deg, minimal_detectable_change

HALF_DIGIT = 0.005


def test_lower_printed_pair_agrees() -> None:
    """2.72 gives 7.54, to half the last printed digit."""
    assert minimal_detectable_change(2.72) == pytest.approx(7.54, abs=HALF_DIGIT)


def test_upper_printed_pair_contradicts_itself() -> None:
    """3.01 cannot give 8.93, however it was rounded; 3.22 could."""
    assert minimal_detectable_change(3.01 + HALF_DIGIT) < 8.93 - HALF_DIGIT
    assert minimal_detectable_change(3.01) == pytest.approx(8.34, abs=HALF_DIGIT)
    assert minimal_detectable_change(3.22) == pytest.approx(8.93, abs=HALF_DIGIT)


A, B, C = (0.0, 0.0), (4.0, 0.0), (0.0, 3.0)

TRIANGLES = [
    ("3-4-5, right corner", (B, A, C), 90.0),
    ("3-4-5, opposite the 4", (A, C, B), 53.13010235415598),
    ("3-4-5, opposite the 3", (A, B, C), 36.86989764584402),
    ("equilateral", ((0.0, 0.0), (1.0, 0.0), (0.5, math.sqrt(3) / 2)), 60.0),
    ("straight limb", ((0.0, 1.0), (0.0, 0.0), (0.0, -2.0)), 180.0),
    ("folded", ((0.0, 1.0), (0.0, 0.0), (0.0, 2.0)), 0.0),
    (
        "in space: diagonals of a cube",
        ((1.0, 1.0, 1.0), (0.0, 0.0, 0.0), (1.0, 1.0, -1.0)),
        70.52877936550931,
    ),
]


@pytest.mark.parametrize(("name", "points", "degrees"), TRIANGLES)
def test_known_angles(name: str, points: tuple[tuple[float, ...], ...], degrees: float) -> None:
    """Angles that geometry knows exactly, to 1e-12 degrees relative to 180."""
    assert joint_angle_deg(*points) == pytest.approx(degrees, abs=2e-12 * 90)


@pytest.mark.parametrize("bend_deg", [1e-6, 1e-9, 1e-12])
def test_smallest_bends_survive(bend_deg: float) -> None:
    """A bend of a millionth of a degree keeps its size; the arc cosine would lose it."""
    ankle = (math.sin(math.radians(bend_deg)), math.cos(math.radians(bend_deg)))
    angle = joint_angle_deg((0.0, 1.0), (0.0, 0.0), ankle)

    assert angle == pytest.approx(bend_deg, rel=1e-9)
    lost = math.degrees(float(np.arccos(np.clip(ankle[1], -1, 1))))
    assert abs(lost - bend_deg) > 0.01 * bend_deg
