"""Readiness, fear and activity level from items by number: ACL-RSI, TSK-11, Tegner."""

from __future__ import annotations

from typing import Literal

import numpy as np
from numpy.typing import ArrayLike, NDArray

from kneecase.errors import InputError
from kneecase.evidence.questionnaires import QUESTIONNAIRES
from kneecase.evidence.scores import SCORES_ACLRSI_MIN_ANSWERED_WEBSTER2008
from kneecase.measures.accepted import Quantity, accepted
from kneecase.measures.item_points import item_points, mean_of_answered, plain_score

__all__ = ["acl_rsi_points", "tegner_change_points", "tsk_11_points"]

_ACL_RSI_MIN = SCORES_ACLRSI_MIN_ANSWERED_WEBSTER2008.number


def acl_rsi_points(
    items: ArrayLike, *, item_scale: Literal["0-100", "0-10"] = "0-100", min_answered: float = _ACL_RSI_MIN
) -> float | NDArray[np.float64]:
    """ACL-RSI readiness of 0-100 [points], more is readier.

    Looked at as a signal of returning to sport. Never a signal of safety: studies contradict each other.

    Formula: mean of the answered items, times 10 where they were asked on 0-10.

    Parameters
    ----------
    items : array of float, shape (12,) or (n, 12)
        Items by number; None or NaN is missing [points].
    item_scale : {"0-100", "0-10"}
        The scale the items were asked on.
    min_answered : float
        Fewest items that must be answered, as commonly allowed (unverified) [items].

    Returns
    -------
    float or array of float, shape () or (n,)
        Score [points]; missing (NaN) where too few items are answered.

    Raises
    ------
    InputError
        If there are not 12 items, one lies outside the scale, or the scale is unknown.

    References
    ----------
    webster-2008

    Examples
    --------
    >>> acl_rsi_points([55] * 12), acl_rsi_points([5.5] * 12, item_scale="0-10")
    (55.0, 55.0)
    """
    if item_scale not in ("0-100", "0-10"):
        raise InputError(f"item_scale must be '0-100' or '0-10', got {item_scale!r}.")
    highest = 100.0 if item_scale == "0-100" else 10.0
    count = QUESTIONNAIRES["acl_rsi"].item_count
    points = item_points("items", items, ((0.0, highest),) * count, whole=False)
    return plain_score(mean_of_answered(points, min_answered) * (100.0 / highest))


def tsk_11_points(items: ArrayLike) -> float | NDArray[np.float64]:
    """TSK-11 fear of movement, 11 to 44 [points], more is more fear.

    Looked at to open a talk about fear, not to sort people.

    Formula: the sum of the 11 items, none turned round.

    Parameters
    ----------
    items : array of float, shape (11,) or (n, 11)
        Items by number, 1 to 4; None or NaN is missing [points].

    Returns
    -------
    float or array of float, shape () or (n,)
        Score [points]; missing (NaN) where any item is missing, because no rule is known.

    Raises
    ------
    InputError
        If there are not 11 items, or one is not a whole number from 1 to 4.

    References
    ----------
    woby-2005

    Examples
    --------
    >>> tsk_11_points([2] * 11)
    22.0
    """
    return plain_score(item_points("items", items, QUESTIONNAIRES["tsk_11"].item_ranges).sum(axis=-1))


def tegner_change_points(*, current_points: Quantity, pre_injury_points: Quantity) -> Quantity:
    """Tegner level now less the level before the injury [points]: negative is a lower level than before.

    Looked at instead of the level alone, which says as much about the sport as about the knee.

    Formula: ``current_points - pre_injury_points``.

    Parameters
    ----------
    current_points, pre_injury_points : float or array of float
        Levels of 0-10 [points].

    Returns
    -------
    float or array of float
        Change of level [points].

    Raises
    ------
    InputError
        If a level lies outside 0 to 10.

    References
    ----------
    briggs-2009

    Examples
    --------
    >>> tegner_change_points(current_points=6, pre_injury_points=9)
    -3.0
    """
    now = accepted("current_points", current_points, "points", low=0.0, high=10.0)
    return now - accepted("pre_injury_points", pre_injury_points, "points", low=0.0, high=10.0)
