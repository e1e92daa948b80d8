"""Intraclass correlation: how well readings tell people apart, in the six usual forms."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Any, Literal, get_args

import numpy as np
from numpy.typing import NDArray

from kneecase.errors import InputError
from kneecase.measures.accepted import accepted
from kneecase.measures.reliability import normal_quantile

__all__ = ["IccForm", "IntraclassCorrelation", "MeanSquares", "intraclass_correlation", "mean_squares"]

IccForm = Literal["1,1", "2,1", "3,1", "1,k", "2,k", "3,k"]


@dataclass(frozen=True, kw_only=True)
class MeanSquares:
    """Mean squares of a table of n subjects by k readings [unit of the readings, squared]."""

    subjects: float
    raters: float
    error: float
    within: float
    n_subjects: int
    k_readings: int


@dataclass(frozen=True, kw_only=True)
class IntraclassCorrelation:
    """One intraclass correlation with its interval [fraction]; ``form`` is (model, number of readings)."""

    form: IccForm
    value: float
    low: float
    high: float
    level: float
    n_subjects: int
    k_readings: int


def mean_squares(readings: Any) -> MeanSquares:
    """Mean squares of a complete table of readings [unit squared].

    Formula: the two-way analysis of variance without replication, and the one-way mean square within
    subjects, which pools raters and error.

    Parameters
    ----------
    readings : array of float, shape (n_subjects, k_readings)
        At least 2 by 2, none missing [any unit].

    Returns
    -------
    MeanSquares
        Between subjects, between raters, error (interaction), and within subjects.

    Raises
    ------
    InputError
        If the table is not two-dimensional, too small, or has a missing number.

    Examples
    --------
    >>> mean_squares([[1.0, 2.0], [3.0, 4.0], [5.0, 6.0]]).subjects
    8.0
    """
    table = _table(readings)
    n, k = table.shape
    grand = table.mean()
    by_subject = table.mean(axis=1)
    by_rater = table.mean(axis=0)
    residual = table - by_subject[:, None] - by_rater[None, :] + grand
    return MeanSquares(
        subjects=float(k * ((by_subject - grand) ** 2).sum() / (n - 1)),
        raters=float(n * ((by_rater - grand) ** 2).sum() / (k - 1)),
        error=float((residual**2).sum() / ((n - 1) * (k - 1))),
        within=float(((table - by_subject[:, None]) ** 2).sum() / (n * (k - 1))),
        n_subjects=n,
        k_readings=k,
    )


def intraclass_correlation(
    readings: Any, form: IccForm = "2,1", level: float = 0.95
) -> IntraclassCorrelation:
    """Intraclass correlation [fraction] of a table of readings, with its F-based interval.

    Looked at to see whether a test tells people apart; for one person's change look at the standard error
    instead, because a high correlation may only mean that the people differed a lot.

    Formula: with mean squares between subjects ``B``, raters ``R``, error ``E``, within ``W``:
    (1,1) ``(B - W) / (B + (k-1) W)``; (2,1) ``(B - E) / (B + (k-1) E + k (R - E) / n)``;
    (3,1) ``(B - E) / (B + (k-1) E)``; (1,k) ``(B - W) / B``; (2,k) ``(B - E) / (B + (R - E) / n)``;
    (3,k) ``(B - E) / B``.

    Parameters
    ----------
    readings : array of float, shape (n_subjects, k_readings)
        One column a rater, tester or repeat, none missing [any unit].
    form : {"1,1", "2,1", "3,1", "1,k", "2,k", "3,k"}
        1: raters not matched; 2: raters a sample of all raters (agreement); 3: these raters only
        (consistency). The second place is 1 for a single reading, k for the mean of the k.
    level : float
        Level of the interval [fraction].

    Returns
    -------
    IntraclassCorrelation
        Value and interval [fraction]; a negative value stays negative.

    Raises
    ------
    InputError
        If the table is unusable, the form unknown, or the subjects do not differ at all.

    Notes
    -----
    Assumes normal errors of the same size for everybody. Where repeats agree perfectly the interval
    shrinks to the value.

    References
    ----------
    shrout-fleiss-1979, mcgraw-wong-1996

    Examples
    --------
    >>> table = [[9, 2, 5, 8], [6, 1, 3, 2], [8, 4, 6, 8], [7, 1, 2, 6], [10, 5, 6, 9], [6, 2, 4, 7]]
    >>> round(intraclass_correlation(table, "2,1").value, 2)
    0.29
    """
    if form not in get_args(IccForm):
        raise InputError(f"form must be one of {', '.join(get_args(IccForm))}, got {form!r}.")
    normal_quantile(level)  # refuses a level that is no fraction
    ms = mean_squares(readings)
    means = _table(readings).mean(axis=1)
    if np.ptp(means) <= 100 * np.finfo(np.float64).eps * np.abs(means).max():
        raise InputError(
            "readings must differ between subjects, got subjects that all have the same mean. "
            "An intraclass correlation says nothing then; use within_subject_sd."
        )
    single: IccForm = "1,1" if form[0] == "1" else "2,1" if form[0] == "2" else "3,1"
    value = _single(ms, single)
    ends = _two_way_interval(ms, value, level) if single == "2,1" else _f_interval(ms, single, level)
    low, value, high = (
        _stepped_up(x, ms.k_readings) if form[2] == "k" else x for x in (ends[0], value, ends[1])
    )
    return IntraclassCorrelation(
        form=form,
        value=value,
        low=low,
        high=high,
        level=level,
        n_subjects=ms.n_subjects,
        k_readings=ms.k_readings,
    )


def _single(ms: MeanSquares, form: IccForm) -> float:
    n, k = ms.n_subjects, ms.k_readings
    if form == "1,1":
        return (ms.subjects - ms.within) / (ms.subjects + (k - 1) * ms.within)
    extra = k * (ms.raters - ms.error) / n if form == "2,1" else 0.0
    return (ms.subjects - ms.error) / (ms.subjects + (k - 1) * ms.error + extra)


def _stepped_up(single: float, k: int) -> float:
    """Reliability of the mean of k readings from that of one (Spearman-Brown)."""
    divisor = 1.0 + (k - 1) * single
    return k * single / divisor if divisor != 0.0 else -math.inf


def _f_interval(ms: MeanSquares, form: IccForm, level: float) -> tuple[float, float]:
    from scipy.special import fdtri

    n, k = ms.n_subjects, ms.k_readings
    error, df = (ms.within, n * (k - 1)) if form == "1,1" else (ms.error, (n - 1) * (k - 1))
    if error == 0.0:
        return 1.0, 1.0
    tail = (1.0 + level) / 2.0
    ratio = ms.subjects / error
    low, high = ratio / fdtri(n - 1, df, tail), ratio * fdtri(df, n - 1, tail)
    return float((low - 1) / (low + k - 1)), float((high - 1) / (high + k - 1))


def _two_way_interval(ms: MeanSquares, value: float, level: float) -> tuple[float, float]:
    from scipy.special import fdtri

    n, k, error = ms.n_subjects, ms.k_readings, ms.error
    if error == 0.0:
        return value, value
    tail = (1.0 + level) / 2.0
    raters = k * value * ms.raters / error
    rest = n * (1 + (k - 1) * value) - k * value
    df = (k - 1) * (n - 1) * (raters + rest) ** 2 / ((n - 1) * raters**2 + rest**2)
    low_f, high_f = float(fdtri(n - 1, df, tail)), float(fdtri(df, n - 1, tail))
    spread = k * ms.raters + (k * n - k - n) * error
    low = n * (ms.subjects - low_f * error) / (low_f * spread + n * ms.subjects)
    high = n * (high_f * ms.subjects - error) / (spread + n * high_f * ms.subjects)
    return low, high


def _table(readings: Any) -> NDArray[np.float64]:
    table: NDArray[np.float64] = np.asarray(accepted("readings", readings, cure="Leave that subject out."))
    if table.ndim != 2 or table.shape[0] < 2 or table.shape[1] < 2:
        raise InputError(
            "readings must be a table of at least 2 subjects (rows) by 2 readings (columns), "
            f"got shape {table.shape}."
        )
    return table
