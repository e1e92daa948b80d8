"""Print how much faster the recovery curves of 10,000 cases are than bounded least squares case by case.

Run by hand; times are reported and never asserted. The curve gives the whole posterior of two courses and
three quantiles of the week of a target; the loop gives one fitted curve without any interval.
"""

from __future__ import annotations

import time
import warnings
from collections.abc import Callable

import numpy as np
from scipy.optimize import curve_fit

from kneecase.recovery import course_change, fit_recovery, recovery_prior, track_record

CASES, MOST = 10_000, 14
COURSES = recovery_prior("knee_flexion", other_side=140, graft="patellar tendon").courses
TARGET = 130.0


def table(seed: int = 20) -> tuple[np.ndarray, np.ndarray]:
    """Invented readings, one row a case, filled up with nan: weeks and flexion [deg]; 6 to 14 a case."""
    random = np.random.default_rng(seed)
    weeks, flexion = np.full((CASES, MOST), np.nan), np.full((CASES, MOST), np.nan)
    for case, count in enumerate(random.integers(6, MOST + 1, CASES)):
        week = np.sort(random.choice(84, count, replace=False)) / 7
        plateau, start = random.normal(138, 3), random.normal(60, 15)
        rate = 0.24 * np.exp(random.normal(0, 0.5))
        curve = plateau - (plateau - start) * np.exp(-rate * week)
        weeks[case, :count], flexion[case, :count] = week, np.rint(curve + random.normal(0, 3, count))
    return weeks, flexion


def loop(weeks: np.ndarray, flexion: np.ndarray) -> None:
    """Bounded least squares, case by case."""

    def curve(week: np.ndarray, plateau: float, start: float, rate: float) -> np.ndarray:
        return plateau - (plateau - start) * np.exp(-rate * week)

    for x, y in zip(weeks, flexion, strict=True):
        held = ~np.isnan(x)
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")
            curve_fit(curve, x[held], y[held], p0=(138, 60, 0.24), bounds=([60, -20, 0.01], [170, 160, 3]))


def cohort(weeks: np.ndarray, flexion: np.ndarray) -> None:
    """Posterior and week of the target of every case."""
    fit_recovery(weeks, flexion, sem=1.8, courses=COURSES).week_of(TARGET)


def update(weeks: np.ndarray, flexion: np.ndarray) -> None:
    """What one new reading asks for: fit, band of 30 weeks, week of the target, chances."""
    held = ~np.isnan(weeks[0])
    fit = fit_recovery(weeks[0][held], flexion[0][held], sem=1.8, courses=COURSES)
    fit.at(np.arange(31))
    fit.week_of(TARGET)
    fit.chance_by(TARGET, 10)
    fit.chance_never(TARGET)


def look_back(weeks: np.ndarray, flexion: np.ndarray) -> None:
    """Change of course and track record of one case."""
    held = ~np.isnan(weeks[0])
    course_change(weeks[0][held], flexion[0][held], sem=1.8, courses=COURSES)
    track_record(weeks[0][held], flexion[0][held], sem=1.8, courses=COURSES)


def seconds(run: Callable[..., None], rows: tuple[np.ndarray, ...], times: int) -> float:
    """Shortest of several runs [s]."""
    taken = []
    for _ in range(times):
        start = time.perf_counter()
        run(*rows)
        taken.append(time.perf_counter() - start)
    return min(taken)


def main() -> None:
    """Print the table."""
    rows = table()
    fast = seconds(cohort, rows, 3)
    slow = seconds(loop, rows, 1)
    print(f"{CASES:,} cases of 6 to {MOST} readings")
    print(f"{'way':<58}{'seconds':>9}{'times faster':>14}")
    print(f"{'scipy.optimize.curve_fit with bounds, case by case':<58}{slow:>9.2f}{1:>14.1f}")
    print(f"{'fit_recovery and week_of, all cases at once':<58}{fast:>9.2f}{slow / fast:>14.1f}")
    print(f"one update (fit, band, week, chances): {1000 * seconds(update, rows, 20):.1f} ms")
    print(f"change of course and track record: {1000 * seconds(look_back, rows, 20):.1f} ms")


if __name__ == "__main__":
    main()
