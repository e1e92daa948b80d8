"""Angles from landmarks: signs in words a clinician would use, and what is refused."""

from __future__ import annotations

import math

import numpy as np
import pytest

from kneecase.errors import InputError
from kneecase.measures import frontal_plane_projection_deg, joint_angle_deg, pelvic_drop_deg, trunk_lean_deg

HIP, KNEE, ANKLE = (100, 100), (115, 250), (100, 400)


@pytest.mark.parametrize(
    ("side", "view", "mirrored", "expected"),
    [
        ("right", "front", False, 11.42),
        ("left", "front", False, -11.42),
        ("right", "rear", False, -11.42),
        ("left", "rear", False, 11.42),
        ("right", "front", True, -11.42),
        ("left", "rear", True, -11.42),
    ],
)
def test_projection_sign(side: str, view: str, mirrored: bool, expected: float) -> None:
    """Our own golden: from the front a right knee to the right of its line is inward, +11.42 degrees."""
    angle = frontal_plane_projection_deg(HIP, KNEE, ANKLE, side=side, view=view, mirrored=mirrored)

    assert angle == pytest.approx(expected, abs=0.005)


def test_straight_limb_has_no_projection() -> None:
    """Hip, knee and ankle on one line give 0."""
    assert frontal_plane_projection_deg((10, 0), (20, 50), (30, 100), side="left") == 0


def test_pelvic_drop_sign() -> None:
    """A free side lower in the picture (larger y) is a drop, whichever way it lies."""
    assert pelvic_drop_deg(stance_side=(0, 0), free_side=(100, 10)) == pytest.approx(5.7106, abs=1e-4)
    assert pelvic_drop_deg(stance_side=(100, 0), free_side=(0, 10)) == pytest.approx(5.7106, abs=1e-4)
    assert pelvic_drop_deg(stance_side=(0, 10), free_side=(100, 0)) < 0


def test_trunk_lean_sign() -> None:
    """From the front the right limb stands at the left of the picture: leaning there is towards it."""
    upright, over_left = (100, 0), (90, 0)

    assert trunk_lean_deg(mid_shoulder=upright, mid_pelvis=(100, 100), side="right") == 0
    assert trunk_lean_deg(mid_shoulder=over_left, mid_pelvis=(100, 100), side="right") > 0
    assert trunk_lean_deg(mid_shoulder=over_left, mid_pelvis=(100, 100), side="left") < 0
    assert trunk_lean_deg(mid_shoulder=over_left, mid_pelvis=(100, 100), side="right", view="rear") < 0


def test_a_missing_frame_stays_missing() -> None:
    """A landmark that was not seen gives NaN in its frame and leaves the others alone."""
    knees = np.array([[115.0, 250.0], [np.nan, 250.0]])
    angles = frontal_plane_projection_deg(HIP, knees, ANKLE, side="right")

    assert angles[0] == pytest.approx(11.42, abs=0.005)
    assert math.isnan(angles[1])


def test_tiny_and_huge_pictures() -> None:
    """Very small and very large units neither vanish nor run over."""
    for scale in (1e-200, 1e200):
        points = [tuple(scale * x for x in p) for p in ((0, 4), (0, 0), (3, 0))]
        assert joint_angle_deg(*points) == 90.0


@pytest.mark.parametrize(
    ("points", "said"),
    [
        (((0, 1), (0, 0), (0, 0)), "two different points"),
        (((0, 1), (0, 0), (0, math.inf)), "finite"),
        (((0, 1), (0, 0), 3), "two or three numbers"),
        (((0, 1), (0, 0), (1, 2, 3, 4)), "two or three numbers"),
        (((0, 1), (0, 0), ("x", "y")), "two or three numbers"),
        (((0, 1), (0, 0), [(1, 2), (3,)]), "two or three numbers"),
        (((0, 1), (0, 0), (1, 2, 3)), "same number of coordinates"),
        (([(0, 1), (1, 2)], (0, 0), [(5, 6), (7, 8), (9, 1)]), "same number of coordinates and of frames"),
    ],
)
def test_refused_points(points: tuple, said: str) -> None:
    """A sentence names the point, the rule and what came."""
    with pytest.raises(InputError, match=said):
        joint_angle_deg(*points)


def test_refused_settings() -> None:
    """Side and view come from a short list; a projection has no depth."""
    with pytest.raises(InputError, match="side must be 'left' or 'right', got 'involved'"):
        frontal_plane_projection_deg(HIP, KNEE, ANKLE, side="involved")
    with pytest.raises(InputError, match="view must be 'front' or 'rear', got 'top'"):
        trunk_lean_deg(mid_shoulder=(0, 0), mid_pelvis=(0, 1), side="left", view="top")
    with pytest.raises(InputError, match="points \\(x, y\\) in the picture"):
        pelvic_drop_deg(stance_side=(0, 0, 0), free_side=(1, 0, 0))
