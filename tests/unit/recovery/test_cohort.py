"""Many cases from one long table."""

from __future__ import annotations

import numpy as np
import pytest

from kneecase.errors import InputError
from kneecase.recovery import cohort_gain, gain_rate


def test_each_case_gets_what_it_gets_alone() -> None:
    """Robust and least squares rates and ends are those of gain_rate, for cases of different length."""
    series = {
        "b": ([1, 2, 3, 4, 6], [88, 102, 110, 118, 126]),
        "a": ([1, 2, 3, 4, 5, 6], [80, 84, 90, 91, 97, 100]),
        "c": ([2, 4, 5], [70, 75, 83]),
    }
    ids = [name for name, (x, _) in series.items() for _ in x]
    found = cohort_gain(
        ids, [w for x, _ in series.values() for w in x], [d for _, y in series.values() for d in y]
    )

    assert found.case_ids.tolist() == ["a", "b", "c"]
    assert found.n.tolist() == [6, 5, 3]
    for place, name in enumerate("abc"):
        robust, squares = (gain_rate(*series[name], method=m) for m in ("robust", "least squares"))
        assert found.robust_deg_per_week[place] == pytest.approx(robust.deg_per_week)
        assert found.least_squares_low_deg_per_week[place] == pytest.approx(squares.low)
        assert found.least_squares_high_deg_per_week[place] == pytest.approx(squares.high)
        if robust.low is None:
            assert np.isnan(found.robust_low_deg_per_week[place])
        else:
            assert found.robust_low_deg_per_week[place] == pytest.approx(robust.low)


def test_no_rank_interval_below_five_days() -> None:
    """Five readings on four days have a robust slope and no interval."""
    found = cohort_gain([1] * 5, [1, 2, 3, 4, 4], [88, 102, 110, 118, 119])

    assert np.isfinite(found.robust_deg_per_week[0])
    assert np.isnan(found.robust_low_deg_per_week[0])


def test_a_single_reading_has_no_rate() -> None:
    """One reading, or all on one day: not a number, and no warning."""
    found = cohort_gain([1, 2, 2], [1, 3, 3], [88, 90, 92])

    assert np.isnan(found.robust_deg_per_week).all()
    assert np.isnan(found.least_squares_deg_per_week).all()


def test_an_empty_table() -> None:
    """No rows, no cases."""
    assert cohort_gain([], [], []).n.size == 0


def test_refusals() -> None:
    """Columns of different length, tables and missing numbers are refused."""
    with pytest.raises(InputError, match="columns of one length"):
        cohort_gain([1, 1], [1, 2], [80])
    with pytest.raises(InputError, match="columns of one length"):
        cohort_gain([[1, 1]], [[1, 2]], [[80, 90]])
    with pytest.raises(InputError, match="degrees must be a finite number"):
        cohort_gain([1, 1], [1, 2], [80, np.nan])
