"""Angles from landmarks do not depend on where the camera stood, how near, or how the picture was turned."""

from __future__ import annotations

import itertools
import math

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from kneecase.measures import frontal_plane_projection_deg, joint_angle_deg, pelvic_drop_deg, trunk_lean_deg

COORDINATE = st.floats(-1000, 1000, allow_nan=False)
POINT = st.tuples(COORDINATE, COORDINATE)
SIDE = st.sampled_from(["left", "right"])
VIEW = st.sampled_from(["front", "rear"])
CLOSE = {"abs": 1e-6}


def far_apart(*points: tuple[float, float]) -> bool:
    """Whether neighbours are far enough apart for a direction to mean something."""
    return all(math.dist(p, q) > 1 for p, q in itertools.pairwise(points))


def turned(
    point: tuple[float, float], degrees: float, scale: float, shift: tuple[float, float]
) -> np.ndarray:
    """The point after a turn, a zoom and a move of the picture."""
    angle = math.radians(degrees)
    turn = np.array([[math.cos(angle), -math.sin(angle)], [math.sin(angle), math.cos(angle)]])
    return scale * (turn @ np.asarray(point)) + np.asarray(shift)


@given(POINT, POINT, POINT, st.floats(-180, 180), st.floats(0.01, 100), POINT)
def test_joint_angle_is_the_bodys_own(a, b, c, degrees, scale, shift) -> None:
    """Turning, zooming and moving the picture leaves a joint angle alone; so does swapping its ends."""
    assume(far_apart(a, b, c))
    angle = joint_angle_deg(a, b, c)
    moved = joint_angle_deg(*(turned(p, degrees, scale, shift) for p in (a, b, c)))

    assert moved == pytest.approx(angle, **CLOSE)
    assert joint_angle_deg(c, b, a) == pytest.approx(angle, **CLOSE)
    assert 0 <= angle <= 180


@given(POINT, POINT, POINT)
def test_the_plane_is_no_different_in_space(a, b, c) -> None:
    """Points in a picture and the same points lying in space have the same angle."""
    assume(far_apart(a, b, c))
    lifted = ((*a, 7.0), (*b, 7.0), (*c, 7.0))

    assert joint_angle_deg(*lifted) == pytest.approx(joint_angle_deg(a, b, c), **CLOSE)


@given(POINT, POINT, POINT, SIDE, VIEW, st.booleans(), st.floats(0.01, 100), POINT)
def test_projection_survives_zoom_and_move(hip, knee, ankle, side, view, mirrored, scale, shift) -> None:
    """Zooming and moving leaves the projection angle alone."""
    assume(far_apart(hip, knee, ankle))
    how = {"side": side, "view": view, "mirrored": mirrored}
    moved = [turned(p, 0, scale, shift) for p in (hip, knee, ankle)]
    first = frontal_plane_projection_deg(hip, knee, ankle, **how)
    second = frontal_plane_projection_deg(*moved, **how)

    assert abs(first - second) % 360 == pytest.approx(0, abs=1e-6) or abs(first - second) > 359


@given(POINT, POINT, POINT, SIDE, VIEW, st.booleans())
def test_a_mirror_turns_the_sign(hip, knee, ankle, side, view, mirrored) -> None:
    """For one side a mirrored picture turns the sign, and saying that it is mirrored turns it back."""
    assume(far_apart(hip, knee, ankle))
    mirror = [(-x, y) for x, y in (hip, knee, ankle)]
    seen = frontal_plane_projection_deg(hip, knee, ankle, side=side, view=view, mirrored=mirrored)
    assume(abs(seen) < 179.9)
    untold = frontal_plane_projection_deg(*mirror, side=side, view=view, mirrored=mirrored)
    told = frontal_plane_projection_deg(*mirror, side=side, view=view, mirrored=not mirrored)

    assert untold == pytest.approx(-seen, **CLOSE)
    assert told == pytest.approx(seen, **CLOSE)


@given(POINT, POINT, POINT, VIEW)
def test_the_other_side_has_the_other_sign(hip, knee, ankle, view) -> None:
    """The same picture read as the other limb, or from the other end, has the other sign."""
    assume(far_apart(hip, knee, ankle))
    right = frontal_plane_projection_deg(hip, knee, ankle, side="right", view=view)
    left = frontal_plane_projection_deg(hip, knee, ankle, side="left", view=view)
    behind = "rear" if view == "front" else "front"

    assert left == -right
    assert frontal_plane_projection_deg(hip, knee, ankle, side="left", view=behind) == right


@given(POINT, POINT)
def test_pelvic_drop_is_the_same_from_behind(stance, free) -> None:
    """Mirroring the picture leaves pelvic drop alone; swapping the sides turns its sign."""
    assume(far_apart(stance, free))
    drop = pelvic_drop_deg(stance_side=stance, free_side=free)

    mirrored = pelvic_drop_deg(stance_side=(-stance[0], stance[1]), free_side=(-free[0], free[1]))
    assert mirrored == pytest.approx(drop, **CLOSE)
    assert pelvic_drop_deg(stance_side=free, free_side=stance) == pytest.approx(-drop, **CLOSE)
    assert -90 <= drop <= 90


@given(POINT, POINT, SIDE, VIEW)
def test_trunk_lean_turns_with_side_and_mirror(shoulder, pelvis, side, view) -> None:
    """The other stance limb has the other sign; a mirrored picture told as such has the same."""
    assume(far_apart(shoulder, pelvis))
    lean = trunk_lean_deg(mid_shoulder=shoulder, mid_pelvis=pelvis, side=side, view=view)
    assume(abs(lean) < 179.9)
    other = "left" if side == "right" else "right"
    flipped = {"mid_shoulder": (-shoulder[0], shoulder[1]), "mid_pelvis": (-pelvis[0], pelvis[1])}

    assert trunk_lean_deg(mid_shoulder=shoulder, mid_pelvis=pelvis, side=other, view=view) == -lean
    assert trunk_lean_deg(**flipped, side=side, view=view, mirrored=True) == pytest.approx(lean, **CLOSE)


@given(st.lists(st.tuples(POINT, POINT, POINT), min_size=1, max_size=6))
def test_frames_are_read_one_by_one(frames) -> None:
    """An array of frames gives what each frame gives by itself."""
    assume(all(far_apart(*frame) for frame in frames))
    a, b, c = (np.array(points) for points in zip(*frames, strict=True))

    singly = [joint_angle_deg(*frame) for frame in frames]
    assert joint_angle_deg(a, b, c) == pytest.approx(singly, abs=1e-12)
