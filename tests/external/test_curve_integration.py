"""The exact posterior against brute-force integration and against a general sampler.

Neither shares a line with the kernel: the integration sums the joint density over plateau, start, rate and
error in plain loops of broadcasting with scipy's densities; the sampler (emcee, test only) walks over the
same density in all four unknowns. Both are computed here, and nothing of ours is the expected value.
"""

from __future__ import annotations

import numpy as np
import pytest
from scipy import stats

from kneecase.recovery import Course, fit_recovery, recovery_prior

CASES = {
    "five early readings": ([1, 2, 3, 4, 6], [75, 88, 98, 106, 117], 1.8),
    "two readings": ([2, 4], [82, 96], 1.8),
    "stuck": ([2, 3, 5, 7, 9], [80, 88, 95, 97, 98], 1.8),
    "large error": ([1, 3, 5], [70, 95, 112], 6.0),
    "late and near": ([4, 8, 12, 16], [118, 131, 135, 137], 2.0),
}
TARGET = 130.0
WEEKS = (4.0, 8.0, 16.0, 60.0)
COURSES = recovery_prior("knee_flexion", other_side=140, graft="patellar tendon").courses


def joint_log_density(course: Course, x: np.ndarray, y: np.ndarray, sem: float, a, b, log_k, more):
    """Logarithm of prior times likelihood; ``more`` is the day-to-day part in units of the error."""
    rate = np.exp(log_k)
    sd = sem * np.sqrt(1 + more**2)
    density = stats.norm.logpdf(a, course.plateau, course.plateau_sd)
    density = density + stats.norm.logpdf(b, course.start, course.start_sd)
    median = np.log(np.log(2) / course.half_time_weeks)
    density = density + stats.norm.logpdf(log_k, median, course.half_time_log_sd)
    density = density + stats.halfnorm.logpdf(more)
    for week, value in zip(x, y, strict=True):
        density = density + stats.norm.logpdf(value, a - (a - b) * np.exp(-rate * week), sd)
    return density


def integrated(x: np.ndarray, y: np.ndarray, sem: float) -> dict[str, float]:
    """Chances of a dense four-fold sum, the two courses one after the other."""
    mass = {"all": 0.0, "stiff": 0.0} | {f"by {w:g}": 0.0 for w in WEEKS}
    for course in COURSES:
        centre = np.log(np.log(2) / course.half_time_weeks)
        a = np.linspace(
            course.plateau - 4.5 * course.plateau_sd, course.plateau + 4.5 * course.plateau_sd, 81
        )
        b = np.linspace(0.0, 120.0, 81)
        log_k = np.linspace(centre - 2.0, centre + 2.0, 91)
        more = np.linspace(0.0, 3.4, 18)
        cell = np.prod([v[1] - v[0] for v in (a, b, log_k, more)])
        for extra, edge in zip(more, [0.5, *[1.0] * 17], strict=True):
            grid = a[:, None, None], b[None, :, None], log_k[None, None, :]
            weight = np.exp(joint_log_density(course, x, y, sem, *grid, extra) + 40) * cell * edge
            weight *= float(course.chance)
            mass["all"] += weight.sum()
            mass["stiff"] += weight.sum() if course.name == "stiff" else 0.0
            for week in WEEKS:
                curve = grid[0] - (grid[0] - grid[1]) * np.exp(-np.exp(grid[2]) * week)
                mass[f"by {week:g}"] += weight[curve >= TARGET].sum()
    return {name: value / mass["all"] for name, value in mass.items()}


@pytest.mark.parametrize("name", CASES)
def test_brute_force_integration(name: str) -> None:
    """Chance of the stiff course and of the target by four weeks agree within 0.01."""
    x, y, sem = CASES[name]
    expected = integrated(np.array(x), np.array(y), sem)
    fit = fit_recovery(x, y, sem=sem, courses=COURSES)

    assert fit.chance_stiff == pytest.approx(expected["stiff"], abs=0.01)
    for week in WEEKS:
        assert fit.chance_by(TARGET, week) == pytest.approx(expected[f"by {week:g}"], abs=0.01)


@pytest.mark.parametrize("name", ["five early readings", "large error"])
def test_general_sampler(name: str) -> None:
    """A sampler over all four unknowns of one course agrees within its own error, four standard errors."""
    emcee = pytest.importorskip("emcee")
    x, y, sem = (np.array(v) for v in CASES[name])
    from dataclasses import replace

    course = replace(COURSES[0], chance=1.0)

    def log_density(place: np.ndarray) -> float:
        if place[3] < 0:
            return -np.inf
        return float(joint_log_density(course, x, y, float(sem), *place))

    random = np.random.default_rng(7)
    start = np.array([course.plateau, course.start, np.log(np.log(2) / course.half_time_weeks), 0.5])
    walkers = start + random.normal(0, [1.0, 2.0, 0.1, 0.1], (24, 4))
    walkers[:, 3] = np.abs(walkers[:, 3])
    np.random.seed(7)
    sampler = emcee.EnsembleSampler(24, 4, log_density)
    sampler.run_mcmc(walkers, 1000)
    chain = sampler.get_chain(discard=200)
    fit = fit_recovery(x, y, sem=float(sem), courses=[course])
    for week in (8.0, 10.0, 16.0):
        curve = chain[..., 0] - (chain[..., 0] - chain[..., 1]) * np.exp(-np.exp(chain[..., 2]) * week)
        past = (curve >= TARGET).mean(axis=1)
        with np.errstate(invalid="ignore"):
            length = max(1.0, np.nan_to_num(float(emcee.autocorr.integrated_time(past, quiet=True)[0])))
        error = past.std() / np.sqrt(past.size / length)
        assert fit.chance_by(TARGET, week) == pytest.approx(past.mean(), abs=4 * error + 1e-3)
