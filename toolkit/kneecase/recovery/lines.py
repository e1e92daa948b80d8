"""Straight lines through readings over weeks: the robust one, least squares, and known measurement error.

Each takes one case, shape ``(n,)``, or many with the same number of readings, ``(cases, n)``: the same
lines of code serve both.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, TypeAlias

import numpy as np
from numpy.typing import ArrayLike, NDArray

from kneecase.errors import InputError
from kneecase.measures import normal_quantile
from kneecase.measures.accepted import accepted

__all__ = ["Line", "Numbers", "known_error_line", "least_squares_line", "theil_sen_line"]

Numbers: TypeAlias = float | NDArray[np.float64]
_MOST_READINGS = 2 * 10**3


@dataclass(frozen=True, kw_only=True)
class Line:
    """A straight line through readings, or one for each of many cases.

    ``low`` and ``high`` are the ends of the interval of the slope at ``level`` [deg per week];
    ``start_deg`` is the line at week 0; ``scatter_deg`` is the standard deviation of the readings about
    it. A number that the readings cannot give is not a number (nan): the slope where all readings are of
    one day, the scatter of two readings.
    """

    deg_per_week: Numbers
    start_deg: Numbers
    low: Numbers
    high: Numbers
    scatter_deg: Numbers
    level: float


def theil_sen_line(weeks: ArrayLike, degrees: ArrayLike, *, level: float = 0.95) -> Line:
    """Robust line: the median slope [deg per week] of all pairs of readings, with Sen's rank interval.

    Looked at first, because one odd reading does not tilt it.

    Formula: median of ``(degrees_j - degrees_i) / (weeks_j - weeks_i)`` over all pairs of different weeks;
    ``start_deg = median(degrees) - deg_per_week * median(weeks)``; the interval goes from one ordered slope
    to another, their ranks ``(pairs ± z * sigma) / 2`` from the variance of Kendall's statistic,
    ``sigma**2 = (n (n-1) (2n+5) - ties in weeks - ties in degrees) / 18``.

    Parameters
    ----------
    weeks : array of float, shape (n,) or (cases, n)
        Time of each reading [weeks].
    degrees : array of float, shape (n,) or (cases, n)
        Readings [deg].
    level : float
        Of the interval [fraction].

    Returns
    -------
    Line
        Slope and ends of its interval [deg per week].

    Raises
    ------
    InputError
        If a reading is missing or not finite, the shapes differ, or there are fewer than two readings.

    Notes
    -----
    The ranks are rounded to the nearest whole, so the level is approximate; below five readings the
    interval would be all pairs and is not to be used (:func:`kneecase.recovery.gain_rate` refuses it).

    References
    ----------
    Sen PK. Estimates of the regression coefficient based on Kendall's tau. JASA 1968;63:1379-1389.

    Examples
    --------
    Sen's own example:

    >>> line = theil_sen_line([1, 2, 3, 4, 10, 12, 18], [9, 15, 19, 20, 45, 55, 78], level=0.93)
    >>> float(line.deg_per_week), round(float(line.low), 3), float(line.high)
    (4.0, 3.714, 4.375)
    """
    x, y = _series(weeks, degrees)
    first, second = np.triu_indices(x.shape[-1], k=1)
    run, rise = x[..., second] - x[..., first], y[..., second] - y[..., first]
    with np.errstate(divide="ignore", invalid="ignore"):
        slopes = np.sort(np.where(run != 0, rise / run, np.nan), axis=-1)
    pairs = np.count_nonzero(run != 0, axis=-1)
    slope = (_ranked(slopes, (pairs - 1) // 2) + _ranked(slopes, pairs // 2)) / 2
    reach = normal_quantile(level) * _kendall_sd(x, y)
    upper = np.minimum(np.rint((pairs + reach) / 2), pairs - 1)
    lower = np.maximum(np.rint((pairs - reach) / 2) - 1, 0)
    start = np.median(y, axis=-1) - slope * np.median(x, axis=-1)
    scatter = _scatter(y - (start[..., None] + slope[..., None] * x))
    low, high = _ranked(slopes, lower), _ranked(slopes, upper)
    return Line(deg_per_week=slope, start_deg=start, low=low, high=high, scatter_deg=scatter, level=level)


def least_squares_line(weeks: ArrayLike, degrees: ArrayLike, *, level: float = 0.95) -> Line:
    """Least squares line: slope [deg per week] with the interval that the scatter about it gives.

    Looked at beside the robust line: where the two differ, one reading carries the result.

    Formula: ``deg_per_week = sum(dx * dy) / sum(dx**2)`` with ``dx``, ``dy`` the distances from the means;
    ``scatter_deg = sqrt(sum(residual**2) / (n - 2))``; interval
    ``deg_per_week ± t(n - 2) * scatter_deg / sqrt(sum(dx**2))``.

    Parameters
    ----------
    weeks : array of float, shape (n,) or (cases, n)
        Time of each reading [weeks].
    degrees : array of float, shape (n,) or (cases, n)
        Readings [deg].
    level : float
        Of the interval [fraction].

    Returns
    -------
    Line
        Slope and ends of its interval [deg per week]; two readings have no interval.

    Raises
    ------
    InputError
        If a reading is missing or not finite, the shapes differ, or there are fewer than two readings.

    Notes
    -----
    The interval takes the course as straight and the scatter as alike over time.

    Examples
    --------
    >>> line = least_squares_line([1, 2, 3, 4, 6], [88, 102, 110, 118, 126])
    >>> round(float(line.deg_per_week), 6)
    7.378378
    """
    x, y = _series(weeks, degrees)
    slope, start, squares = _least_squares(x, y)
    scatter = _scatter(y - (start[..., None] + slope[..., None] * x))
    with np.errstate(invalid="ignore"):
        half = _student_quantile(level, x.shape[-1] - 2) * scatter / np.sqrt(squares)
    return Line(
        deg_per_week=slope,
        start_deg=start,
        low=slope - half,
        high=slope + half,
        scatter_deg=scatter,
        level=level,
    )


def known_error_line(
    weeks: ArrayLike, degrees: ArrayLike, *, error_sd: ArrayLike, level: float = 0.95
) -> Line:
    """Least squares line [deg per week] with the interval that a known measurement error gives.

    Looked at where two, three or four readings are too few to show their own scatter.

    Formula: slope as :func:`least_squares_line`; interval
    ``deg_per_week ± z * error_sd / sqrt(sum(dx**2))``.

    Parameters
    ----------
    weeks : array of float, shape (n,) or (cases, n)
        Time of each reading [weeks].
    degrees : array of float, shape (n,) or (cases, n)
        Readings [deg].
    error_sd : float or array of float, shape (cases,)
        Standard error of measurement of one reading [deg].
    level : float
        Of the interval [fraction].

    Returns
    -------
    Line
        Slope and ends of its interval [deg per week].

    Raises
    ------
    InputError
        If a reading is missing or not finite, the shapes differ, there are fewer than two readings, or the
        error is not above 0.

    Notes
    -----
    The only scatter reckoned with is measurement error; that the knee itself has good and bad days is not
    in it.

    Examples
    --------
    >>> line = known_error_line([0, 2], [85, 135], error_sd=1.8)
    >>> float(line.deg_per_week), round(float(line.low), 1), round(float(line.high), 1)
    (25.0, 22.5, 27.5)
    """
    x, y = _series(weeks, degrees)
    error = np.asarray(accepted("error_sd", np.asarray(error_sd), "deg", above=0.0))
    slope, start, squares = _least_squares(x, y)
    scatter = _scatter(y - (start[..., None] + slope[..., None] * x))
    half = normal_quantile(level) * error / np.sqrt(squares)
    return Line(
        deg_per_week=slope,
        start_deg=start,
        low=slope - half,
        high=slope + half,
        scatter_deg=scatter,
        level=level,
    )


def _series(weeks: Any, degrees: Any) -> tuple[NDArray[np.float64], NDArray[np.float64]]:
    x = np.atleast_1d(accepted("weeks", weeks, "weeks", cure="A reading without a date is left out."))
    y = np.atleast_1d(
        accepted("degrees", degrees, "deg", cure="A missing reading is left out, never filled in.")
    )
    if x.shape != y.shape:
        raise InputError(
            f"weeks and degrees must have one entry a reading each, got shapes {x.shape} and {y.shape}."
        )
    if not 2 <= x.shape[-1] <= _MOST_READINGS:
        raise InputError(f"a line needs 2 to {_MOST_READINGS} readings a case, got {x.shape[-1]}.")
    return x, y


def _least_squares(x: NDArray[np.float64], y: NDArray[np.float64]) -> tuple[Any, Any, Any]:
    """Slope [deg per week], line at week 0 [deg] and sum of squared distances in time [weeks squared]."""
    x_mean, y_mean = x.mean(axis=-1, keepdims=True), y.mean(axis=-1, keepdims=True)
    dx, dy = x - x_mean, y - y_mean
    one_day = x.max(axis=-1) == x.min(axis=-1)
    squares = np.where(one_day, np.nan, (dx * dx).sum(axis=-1))
    slope = (dx * dy).sum(axis=-1) / squares
    return slope, y_mean[..., 0] - slope * x_mean[..., 0], squares


def _scatter(residuals: NDArray[np.float64]) -> Any:
    """Standard deviation about the line [deg]; not a number for two readings."""
    spare = residuals.shape[-1] - 2
    return np.sqrt((residuals * residuals).sum(axis=-1) / (spare if spare else np.nan))


def _ranked(ordered: NDArray[np.float64], rank: Any) -> Any:
    """The entry of ``ordered`` at ``rank``, case by case; not a number where the rank is none."""
    place = np.where(np.isfinite(rank), rank, 0).astype(int)
    found = np.take_along_axis(ordered, place[..., None], axis=-1)[..., 0]
    return np.where(np.isfinite(rank), found, np.nan)[()]


def _kendall_sd(x: NDArray[np.float64], y: NDArray[np.float64]) -> Any:
    """Standard deviation of Kendall's statistic with ties in either [pairs]."""
    n = x.shape[-1]
    with np.errstate(invalid="ignore"):
        return np.sqrt((n * (n - 1) * (2 * n + 5) - _ties(x) - _ties(y)) / 18)


def _ties(values: NDArray[np.float64]) -> Any:
    """Sum of k (k - 1) (2k + 5) over groups of k equal values: each of the k members brings a k-th."""
    alike = (values[..., :, None] == values[..., None, :]).sum(axis=-1)
    return ((alike - 1) * (2 * alike + 5)).sum(axis=-1)


def _student_quantile(level: float, spare: int) -> float:
    """Two-sided quantile of Student's t [standard deviations]; not a number without a spare reading."""
    from scipy.special import stdtrit

    normal_quantile(level)  # refuses a level that is none
    return float(stdtrit(spare, (1 + level) / 2)) if spare > 0 else float("nan")
