"""Classical fit beside the exact one: nonlinear least squares with profile intervals."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import ArrayLike, NDArray

from kneecase.errors import InputError
from kneecase.measures.accepted import accepted
from kneecase.measures.reliability import normal_quantile

__all__ = ["SaturatingCurve", "saturating_curve"]

Array = NDArray[np.float64]
_LADDER, _TURNS = 400, 60
_SLOWEST, _FASTEST = 10.0**-4, 10.0**3


@dataclass(frozen=True, kw_only=True)
class SaturatingCurve:
    """``plateau - (plateau - start) exp(-rate t)`` by least squares, with standard and profile errors.

    ``*_se`` are standard errors of the linearised fit; ``*_ends`` the profile interval at ``level``, an end
    infinite where the readings do not bound it. ``sum_of_squares`` is what is left over, ``scatter`` its
    standard deviation with ``spare`` degrees of freedom.
    """

    plateau: float
    start: float
    rate: float
    plateau_se: float
    start_se: float
    rate_se: float
    rate_ends: tuple[float, float]
    plateau_ends: tuple[float, float]
    sum_of_squares: float
    scatter: float
    spare: int
    level: float
    start_is_fixed: bool

    def at(self, weeks: ArrayLike) -> Any:
        """The curve in these weeks.

        Parameters
        ----------
        weeks : float or array of float
            Time [weeks].

        Returns
        -------
        float or array of float
            In the unit of the readings.
        """
        left = np.exp(-self.rate * np.asarray(weeks, dtype=np.float64))
        return (self.plateau * (1 - left) + self.start * left)[()]


def saturating_curve(
    weeks: ArrayLike, values: ArrayLike, *, start: float | None = None, level: float = 0.95
) -> SaturatingCurve:
    """Least squares fit of ``A - (A - B) exp(-k t)`` with profile intervals.

    Looked at for teaching and checking: it knows no prior, and with few readings it often cannot say where
    the plateau lies. That is its honest answer, not a fault.

    Formula: plateau and start by linear least squares for each rate; the rate of the smallest sum of
    squares S. Profile interval: rates (or plateaus) with ``S <= S_min (1 + t**2 / spare)``.

    Parameters
    ----------
    weeks, values : array of float, shape (n,)
        Time [weeks] and readings [unit of the measure].
    start : float, optional
        The level at week 0 where it is known [unit of the measure].
    level : float
        Of the intervals [fraction].

    Returns
    -------
    SaturatingCurve
        Fit, standard errors, profile intervals.

    Raises
    ------
    InputError
        If there are too few readings, or none of the rates looked at is a least: the readings do not bend.

    References
    ----------
    Bates DM, Watts DG. Nonlinear regression analysis and its applications. Wiley 1988, chapter 6.

    Examples
    --------
    >>> fit = saturating_curve([1, 2, 3, 5, 8], [80, 96, 108, 121, 130])
    >>> round(fit.plateau, 1), round(fit.rate, 2), math.isinf(fit.plateau_ends[1])
    (134.5, 0.35, False)
    """
    from scipy.special import stdtrit

    normal_quantile(level)
    x, y = _columns(weeks, values)
    spare = x.size - (3 if start is None else 2)
    if spare < 1 or np.unique(x).size < (3 if start is None else 2):
        raise InputError(f"a curve needs more readings than it has numbers to fit, got {x.size} readings.")
    span = float(x.max() - x.min()) or float(x.max())

    def squares(log_rate: float) -> float:
        return _linear(x, y, math.exp(log_rate), start)[2]

    low, high = math.log(_SLOWEST / span), math.log(_FASTEST / span)
    ladder = np.linspace(low, high, _LADDER)
    seen = np.array([squares(step) for step in ladder])
    best = int(seen.argmin())
    if best in (0, _LADDER - 1) or not seen[best] < min(seen[0], seen[-1]):
        raise InputError("the readings do not bend: no rate fits them best, so there is no curve to show.")
    log_rate = _least(squares, float(ladder[best - 1]), float(ladder[best + 1]))
    rate = math.exp(log_rate)
    plateau, begin, left = _linear(x, y, rate, start)
    scatter = math.sqrt(left / spare)
    bound = left * (1 + float(stdtrit(spare, (1 + level) / 2)) ** 2 / spare)
    ends = tuple(
        math.exp(end) if math.isfinite(end) else (0.0 if end < 0 else math.inf)
        for end in _ends(squares, log_rate, low, high, bound)
    )
    errors = _standard_errors(x, rate, plateau, begin, scatter, start is not None)
    return SaturatingCurve(
        plateau=plateau,
        start=begin,
        rate=rate,
        plateau_se=errors[0],
        start_se=errors[1],
        rate_se=errors[2],
        rate_ends=(ends[0], ends[1]),
        plateau_ends=_plateau_ends(x, y, plateau, start, bound, span),
        sum_of_squares=left,
        scatter=scatter,
        spare=spare,
        level=level,
        start_is_fixed=start is not None,
    )


def _columns(weeks: Any, values: Any) -> tuple[Array, Array]:
    x = np.atleast_1d(accepted("weeks", np.asarray(weeks), "weeks"))
    y = np.atleast_1d(accepted("values", np.asarray(values)))
    if x.shape != y.shape or x.ndim != 1:
        raise InputError(f"weeks and values must have one entry a reading, got {x.shape} and {y.shape}.")
    return x, y


def _linear(x: Array, y: Array, rate: float, start: float | None) -> tuple[float, float, float]:
    """Best plateau and start for a rate, and the sum of squares they leave."""
    made, left = -np.expm1(-rate * x), np.exp(-rate * x)
    if start is not None:
        rest = y - start * left
        plateau = float(made @ rest / (made @ made))
        return plateau, start, float(((rest - plateau * made) ** 2).sum())
    about = made - made.mean()
    if not about @ about > 0:  # so fast that all readings lie on the plateau
        return float(y.mean()), float(y.mean()), float(((y - y.mean()) ** 2).sum())
    way = float(about @ y / (about @ about))
    begin = float(y.mean() - way * made.mean())
    return begin + way, begin, float(((y - begin - way * made) ** 2).sum())


def _least(function: Callable[[float], float], low: float, high: float) -> float:
    """The place of the least by golden section."""
    golden = (math.sqrt(4 + 1) - 1) / 2
    inner = [high - golden * (high - low), low + golden * (high - low)]
    seen = [function(place) for place in inner]
    for _ in range(_TURNS):
        if seen[0] < seen[1]:
            high, inner = inner[1], [inner[1] - golden * (inner[1] - low), inner[0]]
            seen = [function(inner[0]), seen[0]]
        else:
            low, inner = inner[0], [inner[1], inner[0] + golden * (high - inner[0])]
            seen = [seen[1], function(inner[1])]
    return (low + high) / 2


def _ends(
    function: Callable[[float], float], best: float, low: float, high: float, bound: float
) -> tuple[float, float]:
    """Where a profile passes the bound on each side; infinite where it does not."""
    found = []
    for edge in (low, high):
        steps = np.linspace(best, edge, _LADDER)
        beyond = next((i for i, step in enumerate(steps) if function(float(step)) > bound), None)
        if beyond is None:
            found.append(math.copysign(math.inf, edge - best))
            continue
        inside, outside = float(steps[max(beyond - 1, 0)]), float(steps[beyond])
        for _ in range(_TURNS):
            middle = (inside + outside) / 2
            inside, outside = (middle, outside) if function(middle) <= bound else (inside, middle)
        found.append((inside + outside) / 2)
    return found[0], found[1]


def _plateau_ends(
    x: Array, y: Array, plateau: float, start: float | None, bound: float, span: float
) -> tuple[float, float]:
    """Profile interval of the plateau: at each plateau the best rate and start."""
    rates = np.geomspace(_SLOWEST / span, _FASTEST / span, _LADDER)

    def squares(value: float) -> float:
        def at(log_rate: float) -> float:
            left = np.exp(-math.exp(log_rate) * x)
            rest = y - value * -np.expm1(-math.exp(log_rate) * x)
            size = float(left @ left)
            begin = start if start is not None else float(left @ rest / size) if size > 0 else value
            return float(((rest - begin * left) ** 2).sum())

        seen = np.array([at(math.log(rate)) for rate in rates])
        best = int(seen.argmin())
        around = [math.log(rates[max(best - 1, 0)]), math.log(rates[min(best + 1, _LADDER - 1)])]
        return min(float(seen[best]), at(_least(at, *around)))

    size = float(np.ptp(y)) or 1.0
    found = []
    for way in (-1.0, 1.0):
        inside, step = plateau, size / 100
        while step < 10.0**4 * size and squares(plateau + way * step) <= bound:
            inside, step = plateau + way * step, 2 * step
        outside = plateau + way * step
        if squares(outside) <= bound:
            found.append(way * math.inf)
            continue
        while abs(outside - inside) > 10.0**-7 * size:
            middle = (inside + outside) / 2
            inside, outside = (middle, outside) if squares(middle) <= bound else (inside, middle)
        found.append((inside + outside) / 2)
    return found[0], found[1]


def _standard_errors(
    x: Array, rate: float, plateau: float, start: float, scatter: float, is_fixed: bool
) -> tuple[float, float, float]:
    """Standard errors of plateau, start and rate from the slopes of the curve; nothing for a fixed start."""
    left = np.exp(-rate * x)
    columns = [-np.expm1(-rate * x), (plateau - start) * x * left]
    if not is_fixed:
        columns.insert(1, left)
    slopes = np.stack(columns, axis=-1)
    _, upper = np.linalg.qr(slopes)
    inverse = np.linalg.inv(upper)
    errors = scatter * np.sqrt((inverse * inverse).sum(axis=-1))
    if is_fixed:
        return float(errors[0]), 0.0, float(errors[1])
    return float(errors[0]), float(errors[1]), float(errors[2])
