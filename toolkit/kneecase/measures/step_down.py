"""Lateral step-down quality: five things looked for, 0 to 6 points, and the word for the sum."""

from __future__ import annotations

import numpy as np
from numpy.typing import ArrayLike, NDArray

from kneecase.errors import InputError
from kneecase.evidence.observation_sheets import STEP_DOWN_ITEMS
from kneecase.measures.accepted import accepted
from kneecase.measures.item_points import item_points, plain_score

__all__ = ["step_down_band", "step_down_points"]

_RANGES = tuple((0.0, float(item.highest)) for item in STEP_DOWN_ITEMS)


def step_down_points(observed: ArrayLike) -> float | NDArray[np.float64]:
    """Lateral step-down quality score of one limb [points], 0 to 6, more is worse.

    Looked at over five step-downs from 20 cm with hands on the waist.

    Formula: the sum of the 5 items: arms, trunk, pelvis and steadiness 0 or 1, knee 0, 1 or 2.

    Parameters
    ----------
    observed : array of float, shape (5,) or (n, 5)
        Points for arms, trunk, pelvis, knee and steadiness, in this order [points].

    Returns
    -------
    float or array of float, shape () or (n,)
        Step-down score [points]; missing (NaN) wherever any item is missing.

    Raises
    ------
    InputError
        If there are not 5 items, or one is not a whole number within its range.

    Notes
    -----
    Rated by eye: two raters agree moderately, and least on the pelvis.

    References
    ----------
    piva-2006

    Examples
    --------
    >>> step_down_points([0, 1, 0, 2, 0])
    3.0
    """
    total = item_points("observed", observed, _RANGES).sum(axis=-1)
    return plain_score(total)


def step_down_band(points: float, *, good_at_most_points: float, medium_at_most_points: float) -> str:
    """The word for a step-down score: good, medium or poor.

    Looked at beside the score, never instead of it.

    Formula: the first line that ``points`` does not exceed.

    Parameters
    ----------
    points : float
        Step-down score [points].
    good_at_most_points, medium_at_most_points : float
        Upper ends of the bands, rising [points].

    Returns
    -------
    str
        The band.

    Raises
    ------
    InputError
        If the score is negative or the ends do not rise.

    References
    ----------
    piva-2006

    Examples
    --------
    >>> step_down_band(3, good_at_most_points=1, medium_at_most_points=3)
    'medium'
    """
    score = accepted("points", points, "points", low=0.0)
    if not good_at_most_points < medium_at_most_points:
        raise InputError(
            f"ends of the bands must rise, got {good_at_most_points!r} and {medium_at_most_points!r} points."
        )
    return "good" if score <= good_at_most_points else "medium" if score <= medium_at_most_points else "poor"
