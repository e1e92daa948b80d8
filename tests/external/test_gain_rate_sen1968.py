"""Robust gain rate against the worked example of Sen (1968).

Sen PK. Estimates of the regression coefficient based on Kendall's tau. Journal of the American Statistical
Association 1968;63:1379-1389, doi 10.1080/01621459.1968.10480934. Data and printed results from memory; the
same example stands in scipy's own tests.
"""

from __future__ import annotations

import pytest

from kneecase.recovery import gain_rate, least_squares_line, theil_sen_line

TIME = [1, 2, 3, 4, 10, 12, 18]
VALUE = [9, 15, 19, 20, 45, 55, 78]


def test_slope_is_four() -> None:
    """The printed estimate is 4."""
    assert theil_sen_line(TIME, VALUE).deg_per_week == pytest.approx(4.0, abs=1e-12)
    assert gain_rate(TIME, VALUE).deg_per_week == pytest.approx(4.0, abs=1e-12)


def test_interval_at_93_percent() -> None:
    """The printed 93 % interval goes from 26/7 to 35/8."""
    line = theil_sen_line(TIME, VALUE, level=0.93)

    assert line.low == pytest.approx(26 / 7, abs=1e-12)
    assert line.high == pytest.approx(35 / 8, abs=1e-12)


def test_least_squares_beside_it() -> None:
    """The least squares slope is printed as 4.02."""
    assert least_squares_line(TIME, VALUE).deg_per_week == pytest.approx(4.02, abs=0.005)
