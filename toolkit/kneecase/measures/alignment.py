"""Angles from points marked in a picture: joint angle, frontal plane projection, pelvic drop, trunk lean.

Image axes: x to the right, y **down**, as every picture program counts them; any unit of length, the same for
both axes.  For education and description: one camera sees a projection, not the joint.
"""

from __future__ import annotations

from typing import Any, Literal, get_args

import numpy as np
from numpy.typing import ArrayLike, NDArray

from kneecase.errors import InputError
from kneecase.measures.picture_points import (
    cross_product,
    dot_product,
    picture_line,
    picture_points,
    plain_angle,
    same_frames,
    turn_size,
)
from kneecase.record import Side

__all__ = ["View", "frontal_plane_projection_deg", "joint_angle_deg", "pelvic_drop_deg", "trunk_lean_deg"]

View = Literal["front", "rear"]
"""Where the camera stands."""


def joint_angle_deg(a: ArrayLike, b: ArrayLike, c: ArrayLike) -> float | NDArray[np.float64]:
    """Angle at ``b`` between the lines to ``a`` and to ``c`` [deg], from 0 to 180.

    Looked at when hip, knee and ankle are marked in a picture: 180 is a straight limb.

    Formula: ``atan2(|u × v|, u · v)`` with ``u = a - b`` and ``v = c - b``; this form keeps bends of a
    millionth of a degree, which the arc cosine loses.

    Parameters
    ----------
    a, b, c : array of float, shape (2,), (3,), (n, 2) or (n, 3)
        Points, or one point a frame; the joint is ``b`` [any one unit of length].

    Returns
    -------
    float or array of float, shape () or (n,)
        Angle [deg]; a frame with a missing (NaN) coordinate stays missing.

    Raises
    ------
    InputError
        If a point is not two or three finite numbers, or two points that make a line are the same.

    Notes
    -----
    Not to be mixed with a goniometer angle without a check of the landmarks: skin marks move over bone.

    References
    ----------
    common-practice

    Examples
    --------
    >>> joint_angle_deg((0, 4), (0, 0), (3, 0))
    90.0
    >>> joint_angle_deg((0, 1), (0, 0), (0, -1))
    180.0
    """
    first, corner, last = picture_points("a", a), picture_points("b", b), picture_points("c", c)
    same_frames(a=first, b=corner, c=last)
    u, v = picture_line(first, corner, "a and b"), picture_line(last, corner, "c and b")
    return plain_angle(np.degrees(np.arctan2(turn_size(u, v), dot_product(u, v))))


def frontal_plane_projection_deg(
    hip: ArrayLike,
    knee: ArrayLike,
    ankle: ArrayLike,
    *,
    side: Side,
    view: View = "front",
    mirrored: bool = False,
) -> float | NDArray[np.float64]:
    """Frontal plane projection angle [deg]: positive when the knee lies inward (valgus).

    Looked at in the frame of deepest knee bend of a squat, step-down or landing; usually the mean of three.

    Formula: with ``u = knee - hip`` and ``v = ankle - knee`` in image axes (x right, y down),
    ``theta = atan2(ux * vy - uy * vx, ux * vx + uy * vy)``; seen from the front it is ``+theta`` for the
    right limb and ``-theta`` for the left; a view from behind, or a mirrored picture, turns the sign.

    Parameters
    ----------
    hip, knee, ankle : array of float, shape (2,) or (n, 2)
        Thigh or pelvis mark, knee centre, ankle centre [any one unit of length]; one row a frame.
    side : {"left", "right"}
        The athlete's own side.
    view : {"front", "rear"}
        Where the camera stands.
    mirrored : bool
        Whether the picture is mirrored, as selfie cameras do.

    Returns
    -------
    float or array of float, shape () or (n,)
        0 straight, positive inward (valgus), negative outward (varus) [deg].

    Raises
    ------
    InputError
        If a point is not two finite numbers, two neighbours are the same, or side or view is unknown.

    Notes
    -----
    A projection: hip rotation, knee bend and camera position are all in it; agreement with
    three-dimensional analysis is between poor and fair. Papers differ in the upper and middle landmark
    (mid-thigh or pelvis, knee or patella); angles from different landmarks must not be compared.
    Not for predicting injury.

    References
    ----------
    munro-2012, schurr-2017

    Examples
    --------
    A right limb seen from the front, its knee to the right of the line in the picture, so inward:

    >>> round(frontal_plane_projection_deg((100, 100), (115, 250), (100, 400), side="right"), 2)
    11.42
    >>> round(frontal_plane_projection_deg((100, 100), (115, 250), (100, 400), side="left"), 2)
    -11.42
    """
    upper, middle, lower = _flat("hip", hip), _flat("knee", knee), _flat("ankle", ankle)
    same_frames(hip=upper, knee=middle, ankle=lower)
    u, v = picture_line(middle, upper, "knee and hip"), picture_line(lower, middle, "ankle and knee")
    theta = np.degrees(np.arctan2(cross_product(u, v), dot_product(u, v)))
    return plain_angle(_inward(side, view, mirrored) * theta)


def pelvic_drop_deg(*, stance_side: ArrayLike, free_side: ArrayLike) -> float | NDArray[np.float64]:
    """Angle of the pelvis to the horizontal [deg]: positive when the free side is low.

    Looked at in single-leg stance, squat or step-down.

    Formula: ``atan2(free_y - stance_y, |free_x - stance_x|)`` in image axes (y down); the same from the front
    and from behind.

    Parameters
    ----------
    stance_side, free_side : array of float, shape (2,) or (n, 2)
        The front (or back) corner of the pelvis on either side [any one unit of length].

    Returns
    -------
    float or array of float, shape () or (n,)
        Pelvic drop [deg].

    Raises
    ------
    InputError
        If a point is not two finite numbers or both are the same.

    Notes
    -----
    No norm was found that could be verified; there is no cut-off here. The camera must stand level.

    References
    ----------
    common-practice

    Examples
    --------
    >>> pelvic_drop_deg(stance_side=(100, 200), free_side=(130, 200))
    0.0
    >>> round(pelvic_drop_deg(stance_side=(100, 200), free_side=(130, 203)), 2)
    5.71
    """
    stance, free = _flat("stance_side", stance_side), _flat("free_side", free_side)
    same_frames(stance_side=stance, free_side=free)
    line = picture_line(free, stance, "free_side and stance_side")
    return plain_angle(np.degrees(np.arctan2(line[..., 1], np.abs(line[..., 0]))))


def trunk_lean_deg(
    *,
    mid_shoulder: ArrayLike,
    mid_pelvis: ArrayLike,
    side: Side,
    view: View = "front",
    mirrored: bool = False,
) -> float | NDArray[np.float64]:
    """Sideways lean of the trunk from the vertical [deg]: positive towards the limb that stands.

    Looked at beside the frontal plane projection: the two together said more of knee load than either alone.

    Formula: ``atan2(dx, -dy)`` of the line from ``mid_pelvis`` to ``mid_shoulder`` in image axes, signed so
    that towards the stance limb is positive.

    Parameters
    ----------
    mid_shoulder, mid_pelvis : array of float, shape (2,) or (n, 2)
        Middle of the shoulders and of the pelvis [any one unit of length].
    side : {"left", "right"}
        The limb that stands.
    view : {"front", "rear"}
        Where the camera stands.
    mirrored : bool
        Whether the picture is mirrored.

    Returns
    -------
    float or array of float, shape () or (n,)
        Trunk lean [deg].

    Raises
    ------
    InputError
        If a point is not two finite numbers, both are the same, or side or view is unknown.

    Notes
    -----
    No norm was found that could be verified; there is no cut-off here. The camera must stand level.

    References
    ----------
    dingenen-2014

    Examples
    --------
    >>> round(trunk_lean_deg(mid_shoulder=(90, 100), mid_pelvis=(100, 200), side="right"), 2)
    5.71
    """
    top, bottom = _flat("mid_shoulder", mid_shoulder), _flat("mid_pelvis", mid_pelvis)
    same_frames(mid_shoulder=top, mid_pelvis=bottom)
    line = picture_line(top, bottom, "mid_shoulder and mid_pelvis")
    to_the_right = np.degrees(np.arctan2(line[..., 0], -line[..., 1]))
    return plain_angle(-_inward(side, view, mirrored) * to_the_right)


def _inward(side: Side, view: View, mirrored: bool) -> float:
    """+1 where inward of this limb is to the right of the picture, else -1."""
    if side not in get_args(Side):
        raise InputError(f"side must be 'left' or 'right', got {side!r}. It is the athlete's own side.")
    if view not in get_args(View):
        raise InputError(f"view must be 'front' or 'rear', got {view!r}. It is where the camera stands.")
    turns = (side == "left") + (view == "rear") + bool(mirrored)
    return 1.0 if turns % 2 == 0 else -1.0


def _flat(name: str, value: Any) -> NDArray[np.float64]:
    array = picture_points(name, value)
    if array.shape[-1] != 2:
        raise InputError(f"{name} must be points (x, y) in the picture, got {value!r}.")
    return array
