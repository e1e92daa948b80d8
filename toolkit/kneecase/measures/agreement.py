"""Limits of agreement: how far two testers or two devices differ on the same knee."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Any

import numpy as np

from kneecase.errors import InputError
from kneecase.measures.accepted import accepted
from kneecase.measures.reliability import normal_quantile, sem_from_limits_of_agreement

__all__ = ["LimitsOfAgreement", "limits_of_agreement"]


@dataclass(frozen=True, kw_only=True)
class LimitsOfAgreement:
    """Bias and limits of agreement of first minus second, each with its interval [unit of the readings].

    ``bias_low`` to ``bias_high`` is the interval of the bias; ``low_outer``/``low_inner`` and
    ``high_inner``/``high_outer`` are the intervals of the lower and the upper limit.
    """

    n: int
    bias: float
    sd: float
    low: float
    high: float
    bias_low: float
    bias_high: float
    low_outer: float
    low_inner: float
    high_inner: float
    high_outer: float
    coverage: float
    level: float

    @property
    def sem(self) -> float:
        """Standard error of one reading [unit of the readings], the bias left out."""
        return sem_from_limits_of_agreement(self.low, self.high, self.coverage)


def limits_of_agreement(
    first: Any, second: Any, coverage: float = 0.95, level: float = 0.95
) -> LimitsOfAgreement:
    """Limits of agreement [unit of the readings] between two paired series, with intervals.

    Looked at before mixing two testers, two goniometers or a picture and a goniometer in one course.

    Formula: ``bias ± z * sd`` of the differences; the interval of the bias is ``bias ± t * sd / sqrt(n)``,
    that of each limit ``limit ± t * sd * sqrt(1 / n + z**2 / (2 * (n - 1)))``.

    Parameters
    ----------
    first, second : array of float, shape (n,)
        The same subjects in the same order, none missing [any one unit].
    coverage : float
        Share of differences that the limits should hold [fraction].
    level : float
        Level of the intervals [fraction].

    Returns
    -------
    LimitsOfAgreement
        Bias, limits and their intervals [the same unit].

    Raises
    ------
    InputError
        If the series differ in length, are shorter than 3, or hold a missing number.

    Notes
    -----
    Assumes that the differences are about normal and do not grow with the size of the reading. The
    intervals of the limits are the usual large-sample approximation.

    References
    ----------
    bland-altman-1999

    Examples
    --------
    >>> found = limits_of_agreement([120.0, 118.0, 131.0, 125.0], [118.0, 119.0, 127.0, 122.0])
    >>> found.bias, round(found.low, 2), round(found.high, 2)
    (2.0, -2.23, 6.23)
    """
    from scipy.special import stdtrit

    a, b = np.atleast_1d(accepted("first", first)), np.atleast_1d(accepted("second", second))
    if a.ndim != 1 or a.shape != b.shape or a.size < 3:
        raise InputError(
            "first and second must be series of the same length with at least 3 pairs, "
            f"got shapes {a.shape} and {b.shape}."
        )
    difference = a - b
    n, bias, sd = a.size, float(difference.mean()), float(difference.std(ddof=1))
    z, t = normal_quantile(coverage), float(stdtrit(n - 1, _upper_tail(level)))
    half_bias = t * sd / math.sqrt(n)
    half_limit = t * sd * math.sqrt(1.0 / n + z**2 / (2.0 * (n - 1)))
    low, high = bias - z * sd, bias + z * sd
    return LimitsOfAgreement(
        n=n,
        bias=bias,
        sd=sd,
        low=low,
        high=high,
        bias_low=bias - half_bias,
        bias_high=bias + half_bias,
        low_outer=low - half_limit,
        low_inner=low + half_limit,
        high_inner=high - half_limit,
        high_outer=high + half_limit,
        coverage=coverage,
        level=level,
    )


def _upper_tail(level: float) -> float:
    normal_quantile(level)  # refuses a level that is no fraction
    return (1.0 + level) / 2.0
