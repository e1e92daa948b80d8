"""Landing error score: the sum of observed items of one landing, and one score from several landings."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal, get_args

import numpy as np
from numpy.typing import ArrayLike, NDArray

from kneecase.errors import InputError
from kneecase.evidence.observation_sheets import LANDING_ITEMS
from kneecase.measures.accepted import accepted
from kneecase.measures.item_points import item_points, plain_score

__all__ = ["TrialRule", "landing_band", "landing_error_points", "landing_score_points"]

TrialRule = Literal["mean", "best of three", "worst", "single"]
"""How one score is made from several landings; it moves people over a line and is kept with the score."""

_RANGES = tuple((0.0, float(item.highest)) for item in LANDING_ITEMS)


def landing_error_points(observed: ArrayLike) -> float | NDArray[np.float64]:
    """Landing errors of one jump landing [points], 0 to 19, more is worse.

    Looked at for how somebody lands from a 30-cm box; for teaching and for change, not for predicting injury.

    Formula: the sum of the 17 items; items 1 to 15 are 0 or 1, items 16 and 17 are 0, 1 or 2.

    Parameters
    ----------
    observed : array of float, shape (17,) or (n, 17)
        Points of each item in the order of the sheet (:data:`kneecase.evidence.observation_sheets`) [points].

    Returns
    -------
    float or array of float, shape () or (n,)
        Landing error score [points]; missing (NaN) wherever any item is missing.

    Raises
    ------
    InputError
        If there are not 17 items, or one is not a whole number within its range.

    Notes
    -----
    Part of the item list is from memory and is marked so on the sheet.

    References
    ----------
    padua-2009

    Examples
    --------
    >>> landing_error_points([1, 0, 1, 0, 1, 0, 0, 0, 0, 0, 0, 1, 0, 0, 0, 1, 1])
    6.0
    """
    items = item_points("observed", observed, _RANGES)
    total = items.sum(axis=-1)
    return plain_score(total)


def landing_score_points(trial_points: Sequence[float], *, rule: TrialRule = "mean") -> float:
    """One landing error score [points] from the scores of several landings.

    Looked at with its rule: the best of three lies about a point below the mean of the same landings.

    Formula: the mean, the lowest of exactly three, the highest, or the only one.

    Parameters
    ----------
    trial_points : sequence of float
        Landing errors of each landing [points].
    rule : {"mean", "best of three", "worst", "single"}
        How one score is made.

    Returns
    -------
    float
        Landing error score [points].

    Raises
    ------
    InputError
        If the rule is unknown or does not fit the number of landings, or a score is missing.

    References
    ----------
    hanzlikova-2020

    Examples
    --------
    >>> round(landing_score_points([6, 5, 5]), 2), landing_score_points([6, 5, 5], rule="best of three")
    (5.33, 5.0)
    """
    if rule not in get_args(TrialRule):
        raise InputError(f"rule must be one of {', '.join(get_args(TrialRule))}, got {rule!r}.")
    scores = np.atleast_1d(accepted("trial_points", np.asarray(trial_points), "points", low=0.0))
    needed = {"best of three": 3, "single": 1}.get(rule, max(scores.size, 1))
    if scores.ndim != 1 or scores.size != needed:
        raise InputError(
            f"rule {rule!r} needs {needed} landing{'' if needed == 1 else 's'}, got {scores.size}. "
            "Take the mean, or score another landing."
        )
    if rule == "mean":
        return float(scores.mean())
    return float(scores.max() if rule == "worst" else scores.min())


def landing_band(
    points: float,
    *,
    excellent_at_most_points: float,
    good_at_most_points: float,
    moderate_at_most_points: float,
) -> str:
    """The word for a landing error score: excellent, good, moderate or poor.

    Looked at with care: the bands are quarters of one group, not steps of risk.

    Formula: the first line that ``points`` does not exceed, on the unrounded score.

    Parameters
    ----------
    points : float
        Landing error score [points].
    excellent_at_most_points, good_at_most_points, moderate_at_most_points : float
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
    padua-2009

    Examples
    --------
    >>> landing_band(5.33, excellent_at_most_points=4, good_at_most_points=5, moderate_at_most_points=6)
    'moderate'
    """
    score = accepted("points", points, "points", low=0.0)
    ends = (excellent_at_most_points, good_at_most_points, moderate_at_most_points)
    if not ends[0] < ends[1] < ends[2]:
        raise InputError(f"ends of the bands must rise, got {ends!r} points.")
    words = ("excellent", "good", "moderate")
    return next((word for word, end in zip(words, ends, strict=True) if score <= end), "poor")
