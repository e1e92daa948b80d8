"""When does a straight line reach a target? Fieller's interval, unbounded where it is unbounded."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike

from kneecase.errors import InputError
from kneecase.measures.accepted import accepted
from kneecase.measures.reliability import normal_quantile

__all__ = ["TargetWeek", "target_week"]


@dataclass(frozen=True, kw_only=True)
class TargetWeek:
    """The week a straight line stands at a target, with its interval [weeks].

    ``is_bounded`` says whether the readings bound it at all. Where they do not, ``low`` and ``high`` are
    infinite, and ``gap_weeks`` holds the weeks in between that are excluded, if any are.
    ``slope_error_fraction`` is Fieller's g: 1 or more says that a slope of nothing is not excluded.
    """

    week: float
    low: float
    high: float
    level: float
    slope_error_fraction: float
    is_bounded: bool
    gap_weeks: tuple[float, float] | None
    of_reading: bool


def target_week(
    weeks: ArrayLike, values: ArrayLike, target: float, *, level: float = 0.95, of_reading: bool = False
) -> TargetWeek:
    """Week in which the straight line through readings stands at a target [weeks], with Fieller's interval.

    Looked at for teaching: recovery is no straight line, and early readings put the week too early.

    Formula: ``g = t**2 s**2 / (b**2 Sxx)``, ``D = target - mean(values)``; centre
    ``mean(weeks) + (D / b) / (1 - g)``, half width
    ``t s / (b (1 - g)) * sqrt((m + 1/n) (1 - g) + D**2 / (b**2 Sxx))`` with m = 0 for the line, 1 for a
    reading.

    Parameters
    ----------
    weeks, values : array of float, shape (n,)
        Time [weeks] and readings [unit of the measure].
    target : float
        What is to be reached [unit of the measure].
    level : float
        Of the interval [fraction].
    of_reading : bool
        The week in which a single reading stands at the target, instead of the line.

    Returns
    -------
    TargetWeek
        The week and its interval; infinite ends where the readings do not bound it [weeks].

    Raises
    ------
    InputError
        If there are fewer than three readings, all are of one day, or the line has no slope at all.

    References
    ----------
    Fieller EC. Some problems in interval estimation. J R Stat Soc B 1954;16:175-185.
    Greenwell BM, Schubert Kabban CM. R Journal 2014;6(1):90-100.

    Examples
    --------
    >>> found = target_week([1, 2, 3, 4, 6], [88, 102, 110, 118, 126], 135)
    >>> round(found.week, 3), round(found.low, 3), round(found.high, 3)
    (6.751, 5.407, 10.226)
    >>> target_week([1, 2, 3, 4, 5], [100, 101, 100, 102, 101], 120).is_bounded
    False
    """
    from scipy.special import stdtrit

    normal_quantile(level)
    x = np.atleast_1d(accepted("weeks", np.asarray(weeks), "weeks"))
    y = np.atleast_1d(accepted("values", np.asarray(values)))
    aim = float(accepted("target", target))
    if x.shape != y.shape or x.ndim != 1 or x.size < 3 or np.ptp(x) == 0:
        raise InputError(
            "weeks and values must hold three readings or more, on more than one day, got "
            f"{x.size} weeks and {y.size} values."
        )
    about = x - x.mean()
    squares = float(about @ about)
    slope = float(about @ y) / squares
    if slope == 0:
        raise InputError("the line must have a slope to reach a target, got a slope of exactly 0.")
    rest = y - y.mean() - slope * about
    variance = float(rest @ rest) / (x.size - 2)
    quantile = float(stdtrit(x.size - 2, (1 + level) / 2))
    share = quantile**2 * variance / (slope**2 * squares)
    away = (aim - float(y.mean())) / slope
    extra = (1.0 if of_reading else 0.0) + 1 / x.size
    inner = extra * (1 - share) + away**2 / squares
    low, high, gap = -math.inf, math.inf, None
    if inner >= 0 and share != 1:
        centre = float(x.mean()) + away / (1 - share)
        half = quantile * math.sqrt(variance * inner) / abs(slope * (1 - share))
        if share < 1:
            low, high = centre - half, centre + half
        else:
            gap = (centre - half, centre + half)
    return TargetWeek(
        week=float(x.mean()) + away,
        low=low,
        high=high,
        level=level,
        slope_error_fraction=share,
        is_bounded=share < 1,
        gap_weeks=gap,
        of_reading=of_reading,
    )
