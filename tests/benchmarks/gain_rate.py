"""Print how much faster many cases at once are than one at a time: gain rates of 10,000 cases.

Run by hand; times are reported and never asserted.
"""

from __future__ import annotations

import time
from collections.abc import Callable

import numpy as np
from scipy import stats

from kneecase.recovery import cohort_gain, gain_rate

CASES = 10_000


def table(seed: int = 20) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    """Invented readings in one long table: case, week [weeks], flexion [deg]; 6 to 14 readings a case."""
    random = np.random.default_rng(seed)
    counts = random.integers(6, 15, CASES)
    case = np.repeat(np.arange(CASES), counts)
    week = np.concatenate([np.sort(random.choice(84, n, replace=False)) / 7 for n in counts])
    flexion = np.rint(140 - 80 * np.exp(-0.25 * week) + random.normal(0, 3, week.size))
    return case, week, flexion


def per_case(one: Callable[[np.ndarray, np.ndarray], object]) -> Callable[..., None]:
    """A loop over cases that calls ``one`` for each."""

    def run(case: np.ndarray, week: np.ndarray, flexion: np.ndarray) -> None:
        ends = np.flatnonzero(np.diff(case)) + 1
        for weeks, degrees in zip(np.split(week, ends), np.split(flexion, ends), strict=True):
            one(weeks, degrees)

    return run


def seconds(run: Callable[..., object], rows: tuple[np.ndarray, ...], times: int) -> float:
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
    base = seconds(per_case(lambda x, y: stats.theilslopes(y, x, 0.95)), rows, 1)
    ways: dict[str, tuple[Callable[..., object], int]] = {
        "scipy.stats.linregress, case by case": (per_case(stats.linregress), 1),
        "gain_rate, case by case": (per_case(lambda x, y: gain_rate(x, y, error_sd=1.8)), 1),
        "cohort_gain, all cases at once": (cohort_gain, 5),
    }
    print(f"{CASES:,} cases, {rows[0].size:,} readings; robust slope with interval")
    print(f"{'way':<42}{'seconds':>9}{'times faster':>14}")
    print(f"{'scipy.stats.theilslopes, case by case':<42}{base:>9.3f}{1:>14.1f}")
    for name, (run, times) in ways.items():
        taken = seconds(run, rows, times)
        print(f"{name:<42}{taken:>9.3f}{base / taken:>14.1f}")


if __name__ == "__main__":
    main()
