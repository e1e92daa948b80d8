"""Limb symmetry: the index, its error and its band."""

from __future__ import annotations

from typing import Literal

import numpy as np

from kneecase.errors import InputError
from kneecase.measures.accepted import Quantity, accepted, plain
from kneecase.measures.reliability import normal_quantile
from kneecase.measures.threshold import chance_true_value_passes, is_met

__all__ = [
    "chance_true_value_passes",
    "is_met",
    "limb_symmetry_index",
    "symmetry_band",
    "symmetry_sem_points",
]


def limb_symmetry_index(
    involved: Quantity, uninvolved: Quantity, better: Literal["higher", "lower"] = "higher"
) -> Quantity:
    """Limb symmetry index [%]: what the involved limb does, in percent of the other limb.

    Looked at before running, jumping and sport. 100 % of a weakened other limb is not recovery: look at
    both absolute numbers too, and decide a threshold on the number itself, never on its rounded print.

    Formula: ``100 * involved / uninvolved`` where more is better (distance, height, count, torque);
    ``100 * uninvolved / involved`` where less is better (time), so that above 100 always favours the
    involved limb.

    Parameters
    ----------
    involved, uninvolved : float or array of float
        Score of the operated and of the other limb, in the same unit [any one unit].
    better : {"higher", "lower"}
        Which way is better; it belongs to the test (time: lower), not to the caller's taste.

    Returns
    -------
    float or array of float
        Index [%], unrounded.

    Raises
    ------
    InputError
        If a score is missing, not finite or negative, or the divisor is zero.

    Notes
    -----
    The mean of the indices of single trials is a different number from the index of the mean scores;
    kneecase uses the index of the scores.

    References
    ----------
    common-practice

    Examples
    --------
    A triple hop of 392 cm against 400 cm:

    >>> limb_symmetry_index(392.0, 400.0)
    98.0
    >>> limb_symmetry_index(2.0, 1.8, better="lower")
    90.0
    """
    if better not in ("higher", "lower"):
        raise InputError(f"better must be 'higher' or 'lower', got {better!r}. Is it a time? Then 'lower'.")
    cure = "Was this limb not tested? Then there is no index; leave it out."
    if better == "higher":
        involved = accepted("involved", involved, low=0.0, cure=cure)
        uninvolved = accepted("uninvolved", uninvolved, above=0.0, cure=cure)
        return 100.0 * involved / uninvolved
    involved = accepted("involved", involved, above=0.0, cure=cure)
    uninvolved = accepted("uninvolved", uninvolved, above=0.0, cure=cure)
    return 100.0 * uninvolved / involved


def symmetry_sem_points(
    involved: Quantity,
    uninvolved: Quantity,
    *,
    involved_sem: float,
    uninvolved_sem: float,
    better: Literal["higher", "lower"] = "higher",
    error_correlation: float = 0.0,
) -> Quantity:
    """Standard error of a limb symmetry index [points], from the errors of the two limbs.

    Looked at when no error of the index itself was published, only that of the score.

    Formula: ``lsi * sqrt(a**2 + b**2 - 2 * error_correlation * a * b)`` with
    ``a = involved_sem / involved`` and ``b = uninvolved_sem / uninvolved`` (first-order propagation; the
    same for a time, because an inverted ratio has the same relative error).

    Parameters
    ----------
    involved, uninvolved : float or array of float
        Score of each limb [any one unit].
    involved_sem, uninvolved_sem : float
        Standard error of measurement of each score [the same unit].
    better : {"higher", "lower"}
        Which way is better.
    error_correlation : float
        Correlation of the two errors, between -1 and 1 [fraction]. Errors that both limbs share on a day
        (warm-up, surface) cancel in part, so 0 is the careful choice.

    Returns
    -------
    float or array of float
        Standard error of the index [points of percent].

    Raises
    ------
    InputError
        If a score is not positive, a standard error negative, or the correlation outside -1 to 1.

    Notes
    -----
    Good while each error is small beside its score (below about a tenth); a ratio is skewed beyond that.

    Examples
    --------
    >>> sem = symmetry_sem_points(133.5, 149.0, involved_sem=4.56, uninvolved_sem=4.56)
    >>> round(sem, 2)
    4.11
    """
    index = limb_symmetry_index(
        accepted("involved", involved, above=0.0), accepted("uninvolved", uninvolved, above=0.0), better
    )
    rho = accepted("error_correlation", error_correlation, low=-1.0, high=1.0)
    a = accepted("involved_sem", involved_sem, low=0.0) / involved
    b = accepted("uninvolved_sem", uninvolved_sem, low=0.0) / uninvolved
    return plain(index * np.sqrt((a - b) ** 2 + 2.0 * (1.0 - rho) * a * b), index)


def symmetry_band(lsi_pct: Quantity, sem_points: Quantity, level: float = 0.90) -> tuple[Quantity, Quantity]:
    """Band of a limb symmetry index [%]: where the true value lies, given its standard error.

    Looked at beside every index that is held against a threshold.

    Formula: ``lsi_pct ± z * sem_points`` with ``z`` the normal quantile of ``level``, two-sided (1.645 at
    90 %).

    Parameters
    ----------
    lsi_pct : float or array of float
        Observed index [%].
    sem_points : float or array of float
        Its standard error of measurement [points].
    level : float
        Between 0 and 1, both excluded [fraction].

    Returns
    -------
    tuple of float or of array
        Low and high end [%].

    Raises
    ------
    InputError
        If a number is missing, the error negative, or the level not between 0 and 1.

    Examples
    --------
    >>> low, high = symmetry_band(90.0, 3.49)
    >>> round(low, 2), round(high, 2)
    (84.26, 95.74)
    """
    half = normal_quantile(level) * accepted("sem_points", sem_points, "points", low=0.0)
    centre = accepted("lsi_pct", lsi_pct, "%")
    return centre - half, centre + half
