"""Outcome scores from items by number: IKDC subjective, KOOS, KOS daily living.

No wording of any form is kept.  A missing item is NaN or None; each score names how many may be missing, and
gives NaN where too many are.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import ArrayLike, NDArray

from kneecase.errors import InputError
from kneecase.evidence.questionnaires import QUESTIONNAIRES
from kneecase.evidence.scores import SCORES_IKDC_MIN_ANSWERED_IKDC2000
from kneecase.measures.accepted import Quantity, accepted
from kneecase.measures.item_points import item_points, mean_of_answered, plain_score

__all__ = [
    "ikdc_subjective_points",
    "koos_points",
    "kos_adl_points",
    "score_from_sum_points",
]

_IKDC_MIN = SCORES_IKDC_MIN_ANSWERED_IKDC2000.number


def score_from_sum_points(sum_points: Quantity, *, possible_points: Quantity) -> Quantity:
    """Score of 0-100 from the points got and the points possible [points].

    Looked at when a form gives the sum: the IKDC subjective form has 87 possible points, its form
    for children 92.

    Formula: ``100 * sum_points / possible_points``.

    Parameters
    ----------
    sum_points : float or array of float
        Points got [points].
    possible_points : float or array of float
        Most points the answered items can give [points].

    Returns
    -------
    float or array of float
        Score [points].

    Raises
    ------
    InputError
        If nothing is possible, or more was got than is possible.

    References
    ----------
    ikdc-subjective-form-2000

    Examples
    --------
    >>> round(score_from_sum_points(20, possible_points=87), 5)
    22.98851
    """
    possible = accepted("possible_points", possible_points, "points", above=0.0)
    got = accepted("sum_points", sum_points, "points", low=0.0)
    score = 100.0 * got / possible
    return accepted(
        "100 × sum_points ÷ possible_points", score, high=100.0, cure="Is the sum from this form?"
    )


def ikdc_subjective_points(
    items: ArrayLike, *, min_answered: float = _IKDC_MIN
) -> float | NDArray[np.float64]:
    """IKDC subjective knee score of 0-100 [points], more is better.

    Looked at for symptoms, function and sport together.

    Formula: ``100 * sum of answered items / most points the answered items can give``.

    Parameters
    ----------
    items : array of float, shape (18,) or (n, 18)
        Points as scored, 0 the worst, in the form's order, the item on the time before left out;
        reverse-keyed items already turned round; None or NaN is missing [points].
    min_answered : float
        Fewest items that must be answered [items].

    Returns
    -------
    float or array of float, shape () or (n,)
        Score [points]; missing (NaN) where too few items are answered.

    Raises
    ------
    InputError
        If there are not 18 items, or one is not a whole number within its range.

    Notes
    -----
    14 items take 0-4, items 2, 3 and 18 take 0-10, item 6 takes 0-1. An older manual scored otherwise (items
    from 1, 18 subtracted): the two must not be mixed.

    References
    ----------
    ikdc-subjective-form-2000

    Examples
    --------
    One 4-point item blank, 60 points got:

    >>> items = [4, 5, 5, None, 3, 1, 3, 3, 3, 3, 3, 3, 3, 3, 3, 3, 3, 9]
    >>> round(ikdc_subjective_points(items), 2)
    72.29
    """
    ranges = QUESTIONNAIRES["ikdc_subjective"].item_ranges
    points = item_points("items", items, ranges)
    answered = ~np.isnan(points)
    possible = np.where(answered, np.asarray([high for _, high in ranges]), 0.0).sum(axis=-1)
    enough = answered.sum(axis=-1) >= min_answered
    score = 100.0 * np.nansum(points, axis=-1) / np.where(possible > 0, possible, 1.0)
    return plain_score(np.where(enough & (possible > 0), score, np.nan))


def koos_points(items: ArrayLike, *, min_answered: float) -> float | NDArray[np.float64]:
    """One KOOS subscale of 0-100 [points], more is better.

    Looked at subscale by subscale: there is no total.

    Formula: ``100 - 100 * mean of answered items / 4``.

    Parameters
    ----------
    items : array of float, shape (k,) or (n, k)
        Items of one subscale, 0 no problem to 4 the worst; None or NaN is missing [points].
    min_answered : float
        Fewest items that must be answered; it depends on the subscale and the rule's year
        (:func:`kneecase.measures.koos_min_answered`) [items].

    Returns
    -------
    float or array of float, shape () or (n,)
        Subscale score [points]; missing (NaN) where too few items are answered.

    Raises
    ------
    InputError
        If an item is not a whole number from 0 to 4.

    References
    ----------
    koos-guide-2012

    Examples
    --------
    >>> koos_points([1, 0, 2, 1, None, None, None], min_answered=4)
    75.0
    """
    shape = np.shape(np.asarray(items, dtype=object))
    if len(shape) not in (1, 2) or not shape[-1]:
        raise InputError(f"items must be the items of one subscale, got {items!r}.")
    points = item_points("items", items, ((0, 4),) * shape[-1])
    return plain_score(100.0 - 100.0 * mean_of_answered(points, min_answered) / 4.0)


def kos_adl_points(items: ArrayLike) -> float | NDArray[np.float64]:
    """Knee Outcome Survey, daily living, of 0-100 [points], more is better.

    Looked at for daily life; it has a ceiling in athletes.

    Formula: ``100 * sum of the 14 items / 70``.

    Parameters
    ----------
    items : array of float, shape (14,) or (n, 14)
        Items by number, 5 the best; None or NaN is missing [points].

    Returns
    -------
    float or array of float, shape () or (n,)
        Score [points]; missing (NaN) where any item is missing, because no rule is known.

    Raises
    ------
    InputError
        If there are not 14 items, or one is not a whole number from 0 to 5.

    References
    ----------
    piva-2009

    Examples
    --------
    >>> round(kos_adl_points([5] * 6 + [4] * 5 + [3] * 3), 1)
    84.3
    """
    ranges = QUESTIONNAIRES["kos_adl"].item_ranges
    points = item_points("items", items, ranges)
    return plain_score(100.0 * points.sum(axis=-1) / sum(high for _, high in ranges))
