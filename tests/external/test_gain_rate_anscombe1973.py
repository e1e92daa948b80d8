"""Least squares against Anscombe's four data sets, which share one line and little else.

Anscombe FJ. Graphs in statistical analysis. The American Statistician 1973;27:17-21,
doi 10.1080/00031305.1973.10478966. Data and printed results (slope 0.5, standard error 0.118, line at zero 3,
residual standard deviation 1.237 of set 1) from memory.
"""

from __future__ import annotations

import pytest

from kneecase.recovery import gain_rate, least_squares_line

X123 = [10, 8, 13, 9, 11, 14, 6, 4, 12, 7, 5]
SETS = {
    "I": (X123, [8.04, 6.95, 7.58, 8.81, 8.33, 9.96, 7.24, 4.26, 10.84, 4.82, 5.68]),
    "II": (X123, [9.14, 8.14, 8.74, 8.77, 9.26, 8.10, 6.13, 3.10, 9.13, 7.26, 4.74]),
    "III": (X123, [7.46, 6.77, 12.74, 7.11, 7.81, 8.84, 6.08, 5.39, 8.15, 6.42, 5.73]),
    "IV": (
        [8, 8, 8, 8, 8, 8, 8, 19, 8, 8, 8],
        [6.58, 5.76, 7.71, 8.84, 8.47, 7.04, 5.25, 12.50, 5.56, 7.91, 6.89],
    ),
}
T9 = 2.262  # t of 9 degrees of freedom at 95 %, tables


@pytest.mark.parametrize("name", SETS)
def test_the_printed_line(name: str) -> None:
    """Slope 0.500, start 3.00 and standard error 0.118 in every set."""
    line = least_squares_line(*SETS[name])

    assert line.deg_per_week == pytest.approx(0.500, abs=0.0005)
    assert line.start_deg == pytest.approx(3.00, abs=0.005)
    assert (line.high - line.low) / (2 * T9) == pytest.approx(0.118, abs=0.0005)


def test_the_first_set_in_more_digits() -> None:
    """Set I: 3.0001 and 0.5001, residual standard deviation 1.237."""
    line = least_squares_line(*SETS["I"])

    assert line.start_deg == pytest.approx(3.0001, abs=5e-5)
    assert line.deg_per_week == pytest.approx(0.5001, abs=5e-5)
    assert line.scatter_deg == pytest.approx(1.237, abs=0.0005)


def test_one_odd_reading_does_not_tilt_the_robust_line() -> None:
    """Set III lies on y = 4.00 + 0.346 x but for one point (printed): the robust slope is 0.346."""
    assert gain_rate(*SETS["III"]).deg_per_week == pytest.approx(0.346, abs=0.0005)


def test_one_far_day_has_no_robust_interval() -> None:
    """Set IV has two different times only: no rank interval is given."""
    rate = gain_rate(*SETS["IV"], method="robust")

    assert rate.low is None
    assert "five days" in rate.why
