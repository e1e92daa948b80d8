"""Points marked in a picture, accepted and turned into lines; used by every angle from landmarks."""

from __future__ import annotations

from typing import Any

import numpy as np
from numpy.typing import NDArray

from kneecase.errors import InputError

__all__ = [
    "cross_product",
    "dot_product",
    "picture_line",
    "picture_points",
    "plain_angle",
    "same_frames",
    "turn_size",
]


def picture_points(name: str, value: Any) -> NDArray[np.float64]:
    """The points as an array of x and y, or x, y and z; a missing coordinate (NaN) stays missing."""
    rule = f"{name} must be points of two or three numbers (x, y) or (x, y, z), one row a frame"
    try:
        array = np.asarray(value)
    except ValueError as error:
        raise InputError(f"{rule}, got {value!r}.") from error
    if array.dtype.kind not in "iuf" or array.ndim == 0 or array.shape[-1] not in (2, 3):
        raise InputError(f"{rule}, got {value!r}.")
    if np.isinf(array).any():
        raise InputError(f"{name} must hold finite numbers, got {value!r}. Leave an unseen point as NaN.")
    return array.astype(np.float64)


def same_frames(**points: NDArray[np.float64]) -> None:
    """Refuse points that do not share their frames and dimensions: one point, or one a frame."""
    shapes = {name: array.shape for name, array in points.items()}
    sizes = {shape[-1] for shape in shapes.values()}
    try:
        np.broadcast_shapes(*shapes.values())
    except ValueError:
        sizes = set()
    if len(sizes) != 1:
        raise InputError(
            f"points must have the same number of coordinates and of frames, got shapes {shapes}. "
            "Was one of them marked in fewer pictures?"
        )


def picture_line(end: NDArray[np.float64], start: NDArray[np.float64], names: str) -> NDArray[np.float64]:
    """The line from ``start`` to ``end``, scaled to about 1 so that no product runs over or under."""
    line = end - start
    size = np.max(np.abs(line), axis=-1, keepdims=True)
    if (size == 0).any():
        raise InputError(f"{names} must be two different points to make a line, got the same point twice.")
    return np.asarray(line / size, dtype=np.float64)


def cross_product(u: NDArray[np.float64], v: NDArray[np.float64]) -> NDArray[np.float64]:
    """Signed turn from ``u`` to ``v`` in the picture."""
    return np.asarray(u[..., 0] * v[..., 1] - u[..., 1] * v[..., 0], dtype=np.float64)


def turn_size(u: NDArray[np.float64], v: NDArray[np.float64]) -> NDArray[np.float64]:
    """Size of the turn from ``u`` to ``v``, in the plane or in space."""
    if u.shape[-1] == 2:
        return np.abs(cross_product(u, v))
    return np.asarray(np.linalg.norm(np.cross(u, v), axis=-1), dtype=np.float64)


def dot_product(u: NDArray[np.float64], v: NDArray[np.float64]) -> NDArray[np.float64]:
    """How far ``u`` and ``v`` point the same way."""
    return np.asarray(np.sum(u * v, axis=-1), dtype=np.float64)


def plain_angle(result: NDArray[np.float64]) -> float | NDArray[np.float64]:
    """A plain float for one frame, an array for several."""
    return float(result) if np.ndim(result) == 0 else np.asarray(result, dtype=np.float64)
