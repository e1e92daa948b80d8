"""Gain rates of many cases at once, from one long table."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

from kneecase.errors import InputError
from kneecase.measures.accepted import accepted
from kneecase.recovery.gain import LEAST_FOR_RANKS
from kneecase.recovery.lines import least_squares_line, theil_sen_line

__all__ = ["CohortGain", "cohort_gain"]

Array = NDArray[np.float64]


@dataclass(frozen=True, kw_only=True)
class CohortGain:
    """Robust and least squares gain rates of many cases, one entry a case in the order of ``case_ids``.

    Rates and ends of intervals are in degrees a week, as measured: where less is better, a gain is
    negative. What a case's readings cannot give is not a number (nan).
    """

    case_ids: NDArray[np.generic]
    n: NDArray[np.int64]
    robust_deg_per_week: Array
    robust_low_deg_per_week: Array
    robust_high_deg_per_week: Array
    least_squares_deg_per_week: Array
    least_squares_low_deg_per_week: Array
    least_squares_high_deg_per_week: Array
    level: float


def cohort_gain(
    case_ids: ArrayLike, weeks: ArrayLike, degrees: ArrayLike, *, level: float = 0.95
) -> CohortGain:
    """Gain rates [deg per week] of many cases, robust and by least squares, with their intervals.

    Looked at by whoever follows a clinic rather than one knee.

    Formula: that of :func:`theil_sen_line` and :func:`least_squares_line`, run over all cases with the same
    number of readings together.

    Parameters
    ----------
    case_ids : array, shape (n,)
        Whose reading it is, in any order [name of the case].
    weeks : array of float, shape (n,)
        Time of each reading [weeks].
    degrees : array of float, shape (n,)
        Readings, all taken in one way [deg].
    level : float
        Of the intervals [fraction].

    Returns
    -------
    CohortGain
        One entry a case, cases in sorted order [deg per week].

    Raises
    ------
    InputError
        If a reading is missing or not finite, or the three are not of one length.

    Notes
    -----
    A case with one reading, or all on one day, has no rate; the robust interval needs five days, least
    squares three readings.

    Examples
    --------
    >>> found = cohort_gain(["a", "a", "b", "a"], [1, 2, 1, 3], [90, 98, 70, 104])
    >>> found.case_ids.tolist(), found.n.tolist(), found.least_squares_deg_per_week.round(1).tolist()
    (['a', 'b'], [3, 1], [7.0, nan])
    """
    cure = "A missing reading is left out, never filled in."
    x = np.atleast_1d(accepted("weeks", np.asarray(weeks), "weeks"))
    y = np.atleast_1d(accepted("degrees", np.asarray(degrees), "deg", cure=cure))
    names = np.atleast_1d(np.asarray(case_ids))
    if not x.shape == y.shape == names.shape or x.ndim != 1:
        raise InputError(
            "case_ids, weeks and degrees must be columns of one length, "
            f"got shapes {names.shape}, {x.shape} and {y.shape}."
        )
    ids, case, counts = np.unique(names, return_inverse=True, return_counts=True)
    order, starts = np.lexsort((x, case)), np.cumsum(counts) - counts
    table = np.full((2 * 3, ids.size), np.nan)
    for count in np.unique(counts[counts > 1]):
        which = np.flatnonzero(counts == count)
        rows = order[starts[which][:, None] + np.arange(count)]
        table[:, which] = _lines(x[rows], y[rows], level)
    robust, robust_low, robust_high, squares, squares_low, squares_high = table
    return CohortGain(
        case_ids=ids,
        n=counts.astype(np.int64),
        robust_deg_per_week=robust,
        robust_low_deg_per_week=robust_low,
        robust_high_deg_per_week=robust_high,
        least_squares_deg_per_week=squares,
        least_squares_low_deg_per_week=squares_low,
        least_squares_high_deg_per_week=squares_high,
        level=level,
    )


def _lines(x: Array, y: Array, level: float) -> Array:
    """Robust slope and ends, least squares slope and ends of cases with weeks in order [deg per week]."""
    robust, squares = theil_sen_line(x, y, level=level), least_squares_line(x, y, level=level)
    days = 1 + np.count_nonzero(np.diff(x, axis=-1), axis=-1)
    low, high = (np.where(days >= LEAST_FOR_RANKS, end, np.nan) for end in (robust.low, robust.high))
    columns = (robust.deg_per_week, low, high, squares.deg_per_week, squares.low, squares.high)
    return np.stack([np.asarray(column, float) for column in columns])
