"""How much a reading wobbles by itself: standard error of measurement and minimal detectable change."""

from __future__ import annotations

import math
from statistics import NormalDist
from typing import Any

import numpy as np

from kneecase.errors import InputError
from kneecase.measures.accepted import Quantity, accepted, plain

__all__ = [
    "minimal_detectable_change",
    "normal_quantile",
    "repeatability_coefficient",
    "sem_from_detectable_change",
    "sem_from_limits_of_agreement",
    "standard_error_of_measurement",
    "within_subject_sd",
]


def normal_quantile(level: float) -> float:
    """Two-sided normal quantile [standard deviations] of ``level``: 1.96 at 0.95.

    Parameters
    ----------
    level : float
        Between 0 and 1, both excluded [fraction].

    Returns
    -------
    float
        Half width of the central ``level`` of a normal distribution [standard deviations].

    Raises
    ------
    InputError
        If the level is not between 0 and 1.

    Examples
    --------
    >>> round(normal_quantile(0.95), 6)
    1.959964
    """
    asked = accepted("level", level, above=0.0)
    if np.ndim(asked) or asked >= 1.0:
        raise InputError(f"level must be a fraction between 0 and 1, got {level!r}. Write 0.95 for 95 %.")
    return NormalDist().inv_cdf((1.0 + level) / 2.0)


def standard_error_of_measurement(sd: Quantity, icc: Quantity) -> Quantity:
    """Standard error of measurement [unit of ``sd``] from the spread between people and an ICC.

    Looked at when a paper prints an intraclass correlation but no error: it says how far one reading
    typically lies from the true value.

    Formula: ``sd * sqrt(1 - icc)``.

    Parameters
    ----------
    sd : float or array of float
        Standard deviation of the readings between people [any unit].
    icc : float or array of float
        Intraclass correlation, 0 to 1 [fraction].

    Returns
    -------
    float or array of float
        Standard error of one reading [unit of ``sd``].

    Raises
    ------
    InputError
        If ``sd`` is negative or ``icc`` outside 0 to 1.

    Notes
    -----
    ``sd`` and ``icc`` must come from the same people: a group with a wider spread has a higher ICC at the
    same error.

    Examples
    --------
    >>> round(standard_error_of_measurement(10.0, 0.90), 4)
    3.1623
    """
    share = 1.0 - accepted("icc", icc, low=0.0, high=1.0, cure="Is it in percent?")
    return plain(accepted("sd", sd, low=0.0) * np.sqrt(share), sd)


def minimal_detectable_change(sem: Quantity, level: float = 0.95) -> Quantity:
    """Minimal detectable change [unit of ``sem`` ]: what two readings must differ by to be more than error.

    Looked at before calling any change real.

    Formula: ``z * sqrt(2) * sem`` with ``z`` the two-sided normal quantile of ``level``.

    Parameters
    ----------
    sem : float or array of float
        Standard error of measurement of one reading [any unit].
    level : float
        0.95 for MDC95, 0.90 for MDC90 [fraction].

    Returns
    -------
    float or array of float
        Minimal detectable change [unit of ``sem``].

    Raises
    ------
    InputError
        If ``sem`` is negative or the level not between 0 and 1.

    Notes
    -----
    Some papers print MDC90 with z = 1.64 instead of 1.645, so a printed value may differ in the last digit:
    keep a printed value as it is.

    Examples
    --------
    >>> round(minimal_detectable_change(3.162278), 4), round(minimal_detectable_change(3.162278, 0.90), 4)
    (8.7652, 7.356)
    """
    return normal_quantile(level) * math.sqrt(2.0) * accepted("sem", sem, low=0.0)


def sem_from_detectable_change(mdc: Quantity, level: float = 0.95) -> Quantity:
    """Standard error of measurement [unit of ``mdc``] behind a printed minimal detectable change.

    Formula: ``mdc / (z * sqrt(2))``, the inverse of :func:`minimal_detectable_change`.

    Parameters
    ----------
    mdc : float or array of float
        Minimal detectable change [any unit].
    level : float
        The level it was printed for [fraction].

    Returns
    -------
    float or array of float
        Standard error of one reading [unit of ``mdc``].

    Raises
    ------
    InputError
        If ``mdc`` is negative or the level not between 0 and 1.

    Examples
    --------
    >>> round(sem_from_detectable_change(3.5), 2)
    1.26
    """
    return accepted("mdc", mdc, low=0.0) / (normal_quantile(level) * math.sqrt(2.0))


def sem_from_limits_of_agreement(low: Quantity, high: Quantity, level: float = 0.95) -> Quantity:
    """Standard error of measurement [unit of the limits] of one reading, from limits of agreement.

    Looked at when a paper prints limits of agreement between two testers: their half width is the smallest
    change that two testers can tell from error.

    Formula: ``(high - low) / (2 z) / sqrt(2)`` with ``z`` the normal quantile of ``level``.

    Parameters
    ----------
    low, high : float or array of float
        Printed lower and upper limit [the same unit].
    level : float
        Coverage of the limits, 0.95 unless the paper says otherwise [fraction].

    Returns
    -------
    float or array of float
        Standard error of one reading [the same unit]; the bias between the testers is not in it.

    Raises
    ------
    InputError
        If ``high`` is below ``low`` or the level is not between 0 and 1.

    Examples
    --------
    >>> round(sem_from_limits_of_agreement(-6.7, 12.1), 2)
    3.39
    """
    width = accepted("high", high) - accepted("low", low)
    if np.any(np.asarray(width) < 0):
        raise InputError(f"high must not lie below low, got low {low!r} and high {high!r}. Are they swapped?")
    return width / (2.0 * normal_quantile(level) * math.sqrt(2.0))


def within_subject_sd(readings: Any) -> float:
    """Within-subject standard deviation [unit of the readings]: the error seen in repeated readings.

    Looked at when a tester reads several people a few times each with the same goniometer, to learn their
    own error.

    Formula: square root of the mean square within subjects of a one-way analysis of variance.

    Parameters
    ----------
    readings : array of float, shape (n_subjects, k_readings)
        At least two subjects with at least two readings each, none missing [any unit].

    Returns
    -------
    float
        Standard error of one reading by the same tester and device [the same unit].

    Raises
    ------
    InputError
        If the table is not two-dimensional, too small, or has a missing number.

    Examples
    --------
    >>> round(within_subject_sd([[10.0, 12.0], [30.0, 30.0], [22.0, 20.0]]), 4)
    1.1547
    """
    from kneecase.measures.intraclass import mean_squares

    return math.sqrt(mean_squares(readings).within)


def repeatability_coefficient(readings: Any, level: float = 0.95) -> float:
    """Repeatability coefficient [unit of the readings]: two readings of a knee lie closer than this.

    Formula: ``z * sqrt(2) * within_subject_sd(readings)``; at 95 % about 2.77 times the within-subject
    standard deviation.

    Parameters
    ----------
    readings : array of float, shape (n_subjects, k_readings)
        As for :func:`within_subject_sd` [any unit].
    level : float
        Share of pairs that lie closer [fraction].

    Returns
    -------
    float
        Repeatability coefficient [the same unit].

    Raises
    ------
    InputError
        As :func:`within_subject_sd`, or if the level is not between 0 and 1.

    Examples
    --------
    >>> round(repeatability_coefficient([[10.0, 12.0], [30.0, 30.0], [22.0, 20.0]]), 4)
    3.2006
    """
    return minimal_detectable_change(within_subject_sd(readings), level)
