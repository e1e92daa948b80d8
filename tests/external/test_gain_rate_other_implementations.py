"""Gain rates against two independent implementations on the same invented readings.

``scipy.stats.theilslopes`` (slope, start and rank interval, with ties) and ``statsmodels`` ordinary least
squares (slope, interval, scatter). Nothing here is an expected number of ours.
"""

from __future__ import annotations

import numpy as np
import pytest
import statsmodels.api as sm
from scipy import stats

from kneecase.recovery import cohort_gain, least_squares_line, theil_sen_line

SEEDS = range(60)


def readings(seed: int) -> tuple[np.ndarray, np.ndarray]:
    """Invented readings: 5 to 20, rounded so that degrees tie; in every third series days tie too."""
    random = np.random.default_rng(seed)
    n = int(random.integers(5, 21))
    days = random.integers(0, 60, n) if seed % 3 == 0 else random.choice(90, n, replace=False)
    degrees = np.rint((60 + random.normal(0.5, 1) * days + random.normal(0, 8, n)) / 5) * 5
    return days / 7, degrees


@pytest.mark.parametrize("seed", SEEDS)
@pytest.mark.parametrize("level", [0.80, 0.95])
def test_robust_line_and_interval(seed: int, level: float) -> None:
    """Slope, start and both ends are those of scipy, ties included: the limits to the last bit."""
    weeks, degrees = readings(seed)
    line = theil_sen_line(weeks, degrees, level=level)
    other = stats.theilslopes(degrees, weeks, level)

    assert line.deg_per_week == pytest.approx(other.slope, rel=1e-13, abs=1e-13)
    assert line.start_deg == pytest.approx(other.intercept, rel=1e-12)
    assert (line.low, line.high) == (other.low_slope, other.high_slope)


@pytest.mark.parametrize("seed", SEEDS)
def test_least_squares_and_interval(seed: int) -> None:
    """Slope, start, both ends and the scatter are those of statsmodels."""
    weeks, degrees = readings(seed)
    line = least_squares_line(weeks, degrees, level=0.90)
    fit = sm.OLS(degrees, sm.add_constant(weeks)).fit()
    low, high = fit.conf_int(alpha=0.10)[1]

    assert line.start_deg == pytest.approx(fit.params[0], rel=1e-9)
    assert line.deg_per_week == pytest.approx(fit.params[1], rel=1e-9, abs=1e-9)
    assert line.low == pytest.approx(low, rel=1e-9, abs=1e-9)
    assert line.high == pytest.approx(high, rel=1e-9, abs=1e-9)
    assert line.scatter_deg == pytest.approx(np.sqrt(fit.scale), rel=1e-9)


def test_many_cases_at_once() -> None:
    """The long table gives every case what scipy gives it alone, whatever the order of the rows."""
    series = {seed: readings(seed) for seed in SEEDS if seed % 3}
    ids = np.concatenate([np.full(x.size, seed) for seed, (x, _) in series.items()])
    weeks = np.concatenate([x for x, _ in series.values()])
    degrees = np.concatenate([y for _, y in series.values()])
    shuffled = np.random.default_rng(0).permutation(ids.size)
    found = cohort_gain(ids[shuffled], weeks[shuffled], degrees[shuffled])

    assert found.case_ids.tolist() == list(series)
    for place, (x, y) in enumerate(series.values()):
        other, squares = stats.theilslopes(y, x), stats.linregress(x, y)
        assert found.robust_low_deg_per_week[place] == other.low_slope
        assert found.robust_high_deg_per_week[place] == other.high_slope
        assert found.robust_deg_per_week[place] == pytest.approx(other.slope, rel=1e-13, abs=1e-13)
        assert found.least_squares_deg_per_week[place] == pytest.approx(squares.slope, rel=1e-9, abs=1e-9)
