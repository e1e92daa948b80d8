"""The posterior of a recovery course, exactly, on a grid of rates and error sizes.

Given the rate and the size of the error, ``y = A - (A - B) exp(-k t)`` is linear in plateau A and start B,
so these two are normal and known in closed form; rate, error and course are summed over. There is no
sampling: the same readings give the same answer each time.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from kneecase.recovery.course import Course, course_column

__all__ = ["FINE", "LEAN", "Components", "Grid", "Table", "posterior"]

Array = NDArray[np.float64]
_LOWEST = -(10.0**4)
"""Stands for the logarithm of a weight of nothing."""


@dataclass(frozen=True, kw_only=True)
class Grid:
    """How finely the posterior is computed: rates, sizes of the error, rounds of narrowing, cases at once.

    Each round lays the rates over the range that the round before left with weight above ``drop``; what
    is below it at the end is left out and the rest made whole again.
    """

    rates: int
    errors: int
    rounds: int
    drop: float
    at_once: int


FINE = Grid(rates=32, errors=9, rounds=3, drop=10.0**-6, at_once=100)
"""For one case, or the few of an answer."""
LEAN = Grid(rates=16, errors=6, rounds=2, drop=10.0**-3, at_once=400)
"""For cohorts of thousands; within 0.01 of :data:`FINE` in probability."""
_REACH_SD = 4.0


@dataclass(frozen=True, kw_only=True)
class Table:
    """Readings of many cases, shape (cases, n), more being better; ``held`` marks those that exist.

    ``sem`` is the standard error of one reading of each case, ``None`` where it is not known; ``testers``
    numbers the tester of each reading and ``tester_sd`` is the spread of their offsets.
    """

    weeks: Array
    values: Array
    held: NDArray[np.bool_]
    sem: Array | None
    testers: NDArray[np.int64] | None = None
    tester_sd: float = 0.0

    def part(self, rows: slice) -> Table:
        """Some of the cases."""
        return Table(
            weeks=self.weeks[rows],
            values=self.values[rows],
            held=self.held[rows],
            sem=None if self.sem is None else self.sem[rows],
            testers=None if self.testers is None else self.testers[rows],
            tester_sd=self.tester_sd,
        )


@dataclass(frozen=True, kw_only=True)
class Components:
    """The posterior as weighted normals, those of one case in a run; ``starts`` is where each run begins.

    ``log_evidence`` is the logarithm of the chance of the readings before they were taken, by case.
    """

    case: NDArray[np.int64]
    starts: NDArray[np.int64]
    weight: Array
    course: NDArray[np.int64]
    rate: Array
    error_sd: Array
    plateau: Array
    start: Array
    plateau_var: Array
    start_var: Array
    covariance: Array
    log_evidence: Array


def posterior(table: Table, courses: Sequence[Course], grid: Grid) -> Components:
    """The posterior of every case of ``table``."""
    cases = table.weeks.shape[0]
    prior = {
        name: np.stack([course_column(course, name, cases) for course in courses], axis=-1)
        for name in (
            "chance",
            "plateau",
            "plateau_sd",
            "start",
            "start_sd",
            "half_time_weeks",
            "half_time_log_sd",
        )
    }
    parts = []
    for first in range(0, cases, grid.at_once):
        rows = slice(first, first + grid.at_once)
        parts.append(_part(table.part(rows), {k: v[rows] for k, v in prior.items()}, grid, first))
    return _joined(parts)


def _part(table: Table, prior: dict[str, Array], grid: Grid, first: int) -> Components:
    log_rate = np.log(np.log(2) / prior["half_time_weeks"])
    reach = _REACH_SD * prior["half_time_log_sd"]
    low, high = (log_rate - reach).min(axis=-1), (log_rate + reach).max(axis=-1)
    for turn in range(grid.rounds):
        last = turn == grid.rounds - 1
        errors = grid.errors if last else 3
        steps = np.linspace(0, 1, grid.rates)
        rates = low[:, None] + (high - low)[:, None] * steps
        found = _normals(table, prior, rates, log_rate, errors)
        if not last:
            low, high = _narrowed(rates, found["log_weight"], grid.drop)
    return _flat(found, rates, grid, first)


def _narrowed(rates: Array, log_weight: Array, drop: float) -> tuple[Array, Array]:
    """The range of rates that holds weight, one step wider on each side."""
    best = log_weight.max(axis=(2, 3))
    heavy = best > best.max(axis=-1, keepdims=True) + np.log(drop)
    count = rates.shape[-1]
    first = np.maximum(heavy.argmax(axis=-1) - 1, 0)
    last = np.minimum(count - heavy[:, ::-1].argmax(axis=-1), count - 1)
    rows = np.arange(rates.shape[0])
    return rates[rows, first], rates[rows, last]


def _normals(table: Table, prior: dict[str, Array], rates: Array, log_rate: Array, errors: int) -> Any:
    """Weight, mean and covariance of plateau and start; axes: case, rate, error, course."""
    error_sd, log_error = _errors(table, errors)
    sums, log_spread = _sums(table, rates, error_sd)
    mean_a, mean_b = (prior[name][:, None, None, :] for name in ("plateau", "start"))
    own_a, own_b = (prior[name][:, None, None, :] ** -2.0 for name in ("plateau_sd", "start_sd"))
    aa, ab, bb, ay, by, yy = (x[..., None] for x in sums)
    aa, bb, ay, by = aa + own_a, bb + own_b, ay + own_a * mean_a, by + own_b * mean_b
    area = aa * bb - ab * ab
    plateau, start = (bb * ay - ab * by) / area, (aa * by - ab * ay) / area
    misfit = yy + own_a * mean_a**2 + own_b * mean_b**2 - ay * plateau - by * start
    step = (rates[:, 1] - rates[:, 0])[:, None, None]
    spread = prior["half_time_log_sd"][:, None, :]
    away = (rates[:, :, None] - log_rate[:, None, :]) / spread
    with np.errstate(divide="ignore"):
        chance = np.maximum(np.log(prior["chance"]), _LOWEST)[:, None, :]
    log_prior = chance + np.log(step / spread) - away**2 / 2 - np.log(2 * np.pi) / 2
    readings = table.held.sum(axis=-1)[:, None, None, None]
    log_weight = (
        log_prior[:, :, None, :]
        + (log_error + log_spread)[..., None]
        + (np.log(own_a * own_b) - np.log(area) - misfit - readings * np.log(2 * np.pi)) / 2
    )
    return {
        "log_weight": log_weight,
        "error_sd": error_sd,
        "plateau": plateau,
        "start": start,
        "plateau_var": bb / area,
        "start_var": aa / area,
        "covariance": -ab / area,
    }


def _errors(table: Table, count: int) -> tuple[Array, Array]:
    """Sizes of the error of one reading and the logarithms of their chances; axes: case, rate (1), error.

    Where the error of measuring is known, day-to-day variation comes on top, its size up to three times
    the error, half-normal about nothing. Where it is not, every size from a hundredth of the range of the
    readings to all of it is as likely, by its logarithm.
    """
    if table.sem is not None:
        more = np.linspace(0, 3, count)
        log_chance = -(more**2) / 2
        log_chance[0] -= np.log(2)
        sizes = table.sem[:, None] * np.sqrt(1 + more**2)
    else:
        held = np.where(table.held, table.values, np.nan)
        scale = np.nanmax(held, axis=-1) - np.nanmin(held, axis=-1)
        log_chance = np.zeros(count)
        log_chance[[0, -1]] -= np.log(2)
        sizes = scale[:, None] * 10.0 ** np.linspace(-2, 0, count)
    log_chance = log_chance - np.log(np.exp(log_chance).sum())
    return sizes[:, None, :], log_chance


def _sums(table: Table, rates: Array, error_sd: Array) -> tuple[tuple[Array, ...], Array]:
    """Weighted sums of products of the two parts of the curve and the readings; axes: case, rate, error."""
    held = table.held
    y = np.where(held, table.values, 0.0)
    with np.errstate(invalid="ignore"):
        left = np.exp(-np.exp(rates)[:, :, None] * np.where(held, table.weeks, 0.0)[:, None, :])
    left = left * held[:, None, :]
    made = held[:, None, :] - left
    variance = error_sd**2
    raw = (
        (made * made).sum(axis=-1),
        (made * left).sum(axis=-1),
        (left * left).sum(axis=-1),
        (made * y[:, None, :]).sum(axis=-1),
        (left * y[:, None, :]).sum(axis=-1),
        np.broadcast_to((y * y).sum(axis=-1)[:, None], made.shape[:2]),
    )
    sums = [x[:, :, None] / variance for x in raw]
    log_spread = -held.sum(axis=-1)[:, None, None] * np.log(variance) / 2
    if table.testers is None or table.tester_sd == 0:
        return tuple(sums), log_spread
    for tester in range(int(table.testers.max()) + 1):
        own = held & (table.testers == tester)
        count = own.sum(axis=-1)[:, None, None]
        size = count * table.tester_sd**2 / variance
        shared = table.tester_sd**2 / (variance * variance * (1 + size))
        a, b = ((x * own[:, None, :]).sum(axis=-1)[:, :, None] for x in (made, left))
        total = (y * own).sum(axis=-1)[:, None, None]
        for place, product in enumerate((a * a, a * b, b * b, a * total, b * total, total * total)):
            sums[place] = sums[place] - shared * product
        log_spread = log_spread - np.log1p(size) / 2
    return tuple(sums), log_spread


def _flat(found: dict[str, Array], rates: Array, grid: Grid, first: int) -> Components:
    """Components that carry weight, in one list, case after case."""
    log_weight = found["log_weight"]
    top = log_weight.max(axis=(1, 2, 3), keepdims=True)
    weight = np.exp(log_weight - top)
    total = weight.sum(axis=(1, 2, 3), keepdims=True)
    weight /= total
    kept = np.nonzero(weight > grid.drop * weight.max(axis=(1, 2, 3), keepdims=True))
    case, rate, error, course = kept
    starts = np.searchsorted(case, np.arange(weight.shape[0]))
    heavy = weight[kept]
    heavy = heavy / np.add.reduceat(heavy, starts)[case]
    return Components(
        case=case + first,
        starts=starts,
        weight=heavy,
        course=course,
        rate=np.exp(rates)[case, rate],
        error_sd=found["error_sd"][case, 0, error],
        log_evidence=(top + np.log(total))[:, 0, 0, 0],
        **{
            name: found[name][kept] for name in ("plateau", "start", "plateau_var", "start_var", "covariance")
        },
    )


def _joined(parts: Sequence[Components]) -> Components:
    shift = np.cumsum([0, *(part.case.size for part in parts[:-1])])
    names = [name for name in Components.__dataclass_fields__ if name != "starts"]
    whole = {name: np.concatenate([getattr(part, name) for part in parts]) for name in names}
    starts = np.concatenate([part.starts + by for part, by in zip(parts, shift, strict=True)])
    return Components(starts=starts, **whole)
