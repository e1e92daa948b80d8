"""Gain rate of one series of readings: which line, which interval, and what it shows."""

from __future__ import annotations

import math
from typing import Any, Literal

import numpy as np
from numpy.typing import ArrayLike, NDArray

from kneecase.errors import InputError
from kneecase.measures import minimal_detectable_change, normal_quantile
from kneecase.measures.accepted import accepted
from kneecase.recovery.lines import Line, known_error_line, least_squares_line, theil_sen_line
from kneecase.recovery.rate import GainRate, Method, Shown

__all__ = ["LEAST_FOR_RANKS", "Better", "gain_rate"]

Better = Literal["higher", "lower"]

LEAST_FOR_RANKS = 5
"""Readings on different days that the rank interval of the robust line needs: below, it is all pairs."""
_NUMBER_WORDS = ("no", "one", "two", "three", "four")
_Ends = tuple[float, float]


def gain_rate(
    weeks: ArrayLike,
    degrees: ArrayLike,
    *,
    error_sd: float | None = None,
    level: float = 0.95,
    method: Method | None = None,
    better: Better = "higher",
) -> GainRate:
    """Gain rate [deg per week] of one series of readings, with its interval.

    Looked at when the question is whether a knee still moves on. A stuck knee is the finding that matters
    most, so an interval that includes zero is put in words and never hidden.

    Formula: the slope and interval of a :class:`~kneecase.recovery.Line`. Without ``method``: the robust
    line from five days on; with fewer, least squares with the known error (the larger of ``error_sd`` and
    the scatter about the line); without a known error, least squares with the interval of its own scatter.

    Parameters
    ----------
    weeks : array of float, shape (n,)
        Time of each reading [weeks].
    degrees : array of float, shape (n,)
        Readings, all taken in one way [deg].
    error_sd : float, optional
        Standard error of measurement of one reading [deg].
    level : float
        Of the interval [fraction].
    method : {"robust", "least squares", "known error"}, optional
        To ask for one line.
    better : {"higher", "lower"}
        ``"lower"`` for an extension deficit: a fall is then the gain.

    Returns
    -------
    GainRate
        Positive when the motion improves [deg per week].

    Raises
    ------
    InputError
        If a reading is missing or not finite, the shapes differ, or the error is asked for and not given.

    Notes
    -----
    One reading, or all on one day, has no rate. The robust line has no interval below five days. Readings
    rounded to whole goniometer marks can leave an interval without width; the known error then gives its
    width, and without one there is no interval. Where the interval includes zero, a change that least
    squares or the known error shows (on the line, or from the first to the last day) is called uneven
    rather than none, unless the readings turn back by more than the error. Recovery slows down, so a rate
    holds for its own weeks and is no forecast.

    References
    ----------
    Sen PK. Estimates of the regression coefficient based on Kendall's tau. JASA 1968;63:1379-1389.

    Examples
    --------
    >>> rate = gain_rate([1, 2, 3, 4, 6], [88, 102, 110, 118, 126])
    >>> rate.words()
    'gains 8° a week: 4° to 14° a week'
    >>> gain_rate([0, 2], [98, 99], error_sd=1.8).words()
    '−2° to 3° a week: no gain shown, at most 3° a week'
    >>> gain_rate([3], [90]).words()
    'no rate: one day only'
    """
    x, y = _flat("weeks", weeks, "weeks"), _flat("degrees", degrees, "deg")
    _refuse(x, y, error_sd, level, method, better)
    days = np.unique(x).size
    if days < 2:
        return _no_rate(x.size, level, method or "robust")
    gained = y if better == "higher" else -y
    chosen = method or _default_method(days, error_sd)
    line = _line(x, gained, chosen, error_sd, level)
    ends, why = _ends(line, x, chosen, days, error_sd, level)
    second, second_method = _second(x, gained, chosen, error_sd, level)
    shown = _shown(ends, second, x, gained, error_sd, level)
    if shown == "cannot tell" and not why:
        why = f"{_count(x.size)} readings and no known measurement error"
    speaks = second if shown in ("uneven gain", "uneven loss", "no gain") and _side(second) else None
    start = float(line.start_deg)
    return GainRate(
        deg_per_week=float(line.deg_per_week),
        low=None if ends is None else ends[0],
        high=None if ends is None else ends[1],
        level=level,
        method=chosen,
        n=x.size,
        shown=shown,
        start_deg=start if better == "higher" else -start,
        why=why,
        second_deg_per_week=speaks,
        second_method=second_method if speaks else None,
    )


def _flat(name: str, values: Any, unit: str) -> NDArray[np.float64]:
    cure = "A missing reading is left out, never filled in."
    array = np.atleast_1d(accepted(name, values, unit, cure=cure))
    if array.ndim != 1:
        raise InputError(f"{name} must be the readings of one case, got an array of shape {array.shape}.")
    return array


def _refuse(x: Any, y: Any, error_sd: float | None, level: float, method: str | None, better: str) -> None:
    if x.shape != y.shape:
        raise InputError(
            f"weeks and degrees must have one entry a reading each, got {x.size} weeks and {y.size} degrees."
        )
    if error_sd is not None:
        accepted("error_sd", error_sd, "deg", above=0.0)
    elif method == "known error":
        raise InputError("error_sd must be given [deg] for the known error, got None.")
    if method not in (None, "robust", "least squares", "known error"):
        raise InputError(f"method must be 'robust', 'least squares' or 'known error', got {method!r}.")
    if better not in ("higher", "lower"):
        raise InputError(f"better must be 'higher' or 'lower', got {better!r}.")
    normal_quantile(level)


def _no_rate(n: int, level: float, method: Method) -> GainRate:
    why = {0: "no reading", 1: "one day only"}.get(n, "all readings are of one day")
    return GainRate(
        deg_per_week=None, low=None, high=None, level=level, method=method, n=n, shown="no rate", why=why
    )


def _default_method(days: int, error_sd: float | None) -> Method:
    if days >= LEAST_FOR_RANKS:
        return "robust"
    return "least squares" if error_sd is None else "known error"


def _line(x: Any, gained: Any, method: Method, error_sd: float | None, level: float) -> Line:
    if method == "robust":
        return theil_sen_line(x, gained, level=level)
    line = least_squares_line(x, gained, level=level)
    if method == "least squares" or error_sd is None:
        return line
    scatter = float(line.scatter_deg)  # not a number for two readings
    larger = max(error_sd, scatter) if math.isfinite(scatter) else error_sd
    return known_error_line(x, gained, error_sd=larger, level=level)


def _ends(
    line: Line, x: Any, method: Method, days: int, error_sd: float | None, level: float
) -> tuple[_Ends | None, str]:
    """The interval, or why there is none."""
    if method == "robust" and days < LEAST_FOR_RANKS:
        return None, "the robust line has none below five days of readings"
    low, high = float(line.low), float(line.high)
    if x.size == 2 and method == "least squares":
        return None, "two readings and no known measurement error"
    if math.isfinite(low) and not math.isclose(low, high, rel_tol=0, abs_tol=10**-7):
        return (low, high), ""
    if error_sd is None:
        return None, "the readings lie exactly on a line (rounded?) and no measurement error is known"
    known = known_error_line(x, x, error_sd=error_sd, level=level)
    half = (float(known.high) - float(known.low)) / 2
    middle = float(line.deg_per_week)
    return (middle - half, middle + half), "the readings lie on a line; the known error gives the width"


def _second(
    x: Any, gained: Any, method: Method, error_sd: float | None, level: float
) -> tuple[_Ends | None, Method | None]:
    """The interval that may speak for a change where the first includes zero.

    Least squares beside the robust line; then the known error, on the line and from the first to the last
    day.
    """
    if method == "robust" and x.size > 2:
        line = least_squares_line(x, gained, level=level)
        ends = float(line.low), float(line.high)
        if _side(ends):
            return ends, "least squares"
    if error_sd is None:
        return None, None
    line = known_error_line(x, gained, error_sd=error_sd, level=level)
    ends = float(line.low), float(line.high)
    return (ends if _side(ends) else _first_to_last(x, gained, error_sd, level)), "known error"


def _first_to_last(x: Any, gained: Any, error_sd: float, level: float) -> _Ends:
    """Interval of the change from the first to the last day, by the week, from the error of two readings."""
    days, means = _day_means(x, gained)
    change, reach = means[-1] - means[0], minimal_detectable_change(error_sd, level)
    span = days[-1] - days[0]
    return float((change - reach) / span), float((change + reach) / span)


def _shown(
    ends: _Ends | None, second: _Ends | None, x: Any, gained: Any, error_sd: float | None, level: float
) -> Shown:
    if ends is None:
        return "cannot tell"
    if _side(ends):
        return "gain" if _side(ends) > 0 else "loss"
    side = _side(second)
    if side and (error_sd is None or not _turns_back(x, side * gained, error_sd, level)):
        return "uneven gain" if side > 0 else "uneven loss"
    few = np.unique(x).size < LEAST_FOR_RANKS
    return "cannot tell" if few and error_sd is None else "no gain"


def _turns_back(x: Any, gained: Any, error_sd: float, level: float) -> bool:
    """Whether the day means fall back, from one day to the next, by more than the error of two readings."""
    _, means = _day_means(x, gained)
    return bool((np.diff(means) < -minimal_detectable_change(error_sd, level)).any())


def _day_means(x: Any, gained: Any) -> tuple[Any, Any]:
    """The days in order [weeks] and the mean of each [deg]."""
    days, place = np.unique(x, return_inverse=True)
    return days, np.bincount(place, weights=gained) / np.bincount(place, minlength=days.size)


def _side(ends: _Ends | None) -> int:
    """1 or -1 where the interval lies above or below zero, else 0."""
    if ends is None:
        return 0
    return 1 if ends[0] > 0 else -1 if ends[1] < 0 else 0


def _count(n: int) -> str:
    return _NUMBER_WORDS[n] if n < len(_NUMBER_WORDS) else str(n)
