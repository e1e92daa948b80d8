"""Quantiles of a mixture of normals, and of the week a mixture of courses stands at a target."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import numpy as np
from numpy.typing import NDArray

from kneecase.recovery.posterior import Components

__all__ = ["chance_at", "curve_moments", "first_weeks", "mixture_quantiles"]

Array = NDArray[np.float64]
_TURNS_VALUE, _TURNS_WEEK = 12, 7
_LADDER = 12
_FEW = 100


def curve_moments(parts: Components, weeks: Array) -> tuple[Array, Array]:
    """Mean and standard deviation of the curve in each component, at its case's week or at several weeks.

    ``weeks`` has one week a case, shape (cases,), or several for all, shape (1, m); a week may be infinite.
    """
    at = weeks if weeks.ndim > 1 else weeks[parts.case]
    rate, plateau, start, plateau_var, start_var, covariance = (
        x[:, None] if weeks.ndim > 1 else x
        for x in (
            parts.rate,
            parts.plateau,
            parts.start,
            parts.plateau_var,
            parts.start_var,
            parts.covariance,
        )
    )
    with np.errstate(invalid="ignore"):
        left = np.where(np.isinf(at), 0.0, np.exp(-rate * at))
    made = 1 - left
    mean = plateau * made + start * left
    variance = made * made * plateau_var + 2 * made * left * covariance + left * left * start_var
    return mean, np.sqrt(np.maximum(variance, np.finfo(float).tiny))


def chance_at(parts: Components, target: Array, weeks: Array) -> Array:
    """Chance that the curve stands at or past the target in a week [fraction], one a case."""
    from scipy.special import ndtr

    mean, spread = curve_moments(parts, weeks)
    past = parts.weight * ndtr((mean - target[parts.case]) / spread)
    return np.minimum(np.add.reduceat(past, parts.starts), 1.0)


def mixture_quantiles(
    parts: Components, mean: Array, spread: Array, chances: tuple[float, ...]
) -> tuple[Array, ...]:
    """Quantiles of the mixture of each case at each of several weeks, shape (cases, m), by chance."""
    from scipy.special import ndtr, ndtri

    weight = parts.weight[:, None]
    low = np.minimum.reduceat(mean - 7 * spread, parts.starts, axis=0)
    high = np.maximum.reduceat(mean + 7 * spread, parts.starts, axis=0)
    run = np.repeat(np.arange(parts.starts.size), np.diff([*parts.starts, parts.case.size]))

    def below(value: Array) -> Array:
        return _deviate(np.add.reduceat(weight * ndtr((value[run] - mean) / spread), parts.starts, axis=0))

    far = float(_deviate(np.array(1.0)))
    return tuple(
        _crossing(below, low, high, float(ndtri(chance)), _TURNS_VALUE, at_low=-far, at_high=far)
        for chance in chances
    )


def first_weeks(parts: Components, target: Array, chances: tuple[float, ...]) -> tuple[Array, ...]:
    """First week in which the chance of standing at the target reaches each chance; infinite where never.

    The weeks between nothing and infinity are searched as ``s / (1 - s)`` typical times, so that near and
    far weeks are found alike.
    """
    from scipy.special import ndtri

    typical = 1 / np.exp(np.add.reduceat(parts.weight * np.log(parts.rate), parts.starts))

    def there(place: Array) -> Array:
        with np.errstate(divide="ignore"):
            return _deviate(chance_at(parts, target, typical * place / (1 - place)))

    ladder = np.linspace(0, 1, _LADDER + 1)
    seen = np.stack([there(np.full(typical.shape, step)) for step in ladder], axis=-1)
    rows = np.arange(typical.size)
    turns = _TURNS_WEEK if typical.size > _FEW else 2 * _TURNS_WEEK
    found = []
    for chance in chances:
        level = float(ndtri(chance))
        enough = seen >= level
        rung = enough.argmax(axis=-1)
        before = np.maximum(rung - 1, 0)
        place = _crossing(
            there,
            ladder[before],
            ladder[rung],
            level,
            turns,
            at_low=seen[rows, before],
            at_high=seen[rows, rung],
        )
        with np.errstate(divide="ignore", invalid="ignore"):
            weeks = typical * place / (1 - place)
        weeks = np.where(rung == 0, 0.0, weeks)
        found.append(np.where(enough.any(axis=-1), weeks, np.inf))
    return tuple(found)


def _deviate(chance: Array) -> Array:
    """A chance as a normal deviate: nearly straight where the chance itself bends, so soon searched."""
    from scipy.special import ndtri

    least = np.finfo(float).eps
    return np.asarray(ndtri(np.clip(chance, least, 1 - least)))


def _crossing(
    rising: Callable[[Array], Array],
    low: Array,
    high: Array,
    level: float,
    turns: int,
    *,
    at_low: Any = 0.0,
    at_high: Any = 1.0,
) -> Array:
    """Where a rising function crosses a level, by false position that halves the end that stays."""
    below, above = at_low - level + 0 * low, at_high - level + 0 * high
    place = high
    for _ in range(turns):
        gap = above - below
        with np.errstate(invalid="ignore", divide="ignore"):
            share = np.where(gap > 0, -below / gap, 0.5)
        place = low + (high - low) * np.clip(share, 0.0, 1.0)
        value = rising(place) - level
        over = value >= 0
        stays_low, stays_high = over & (above != 0), ~over
        below = np.where(over, np.where(stays_low, below / 2, below), value)
        above = np.where(over, value, np.where(stays_high, above / 2, above))
        low, high = np.where(over, low, place), np.where(over, place, high)
    return place
