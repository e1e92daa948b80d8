"""Lines through readings: shapes, ties, days without a slope, refusals."""

from __future__ import annotations

import math

import numpy as np
import pytest

from kneecase.errors import InputError
from kneecase.recovery import known_error_line, least_squares_line, theil_sen_line

WEEKS = [1.0, 2.0, 3.0, 4.0, 6.0]
FLEXION = [88.0, 102.0, 110.0, 118.0, 126.0]


def test_our_own_worked_series() -> None:
    """Golden of ours, worked by hand from the definitions: 8° a week (4 to 14), least squares 7.378378."""
    robust, squares = theil_sen_line(WEEKS, FLEXION), least_squares_line(WEEKS, FLEXION)

    assert (robust.deg_per_week, robust.start_deg) == (8.0, 86.0)
    assert (robust.low, robust.high) == (4.0, 14.0)
    assert squares.deg_per_week == pytest.approx(7.378378, abs=5e-7)


def test_many_cases_are_the_same_lines_of_code() -> None:
    """Each row of a (cases, n) table gives what it gives alone, for all three lines."""
    weeks = np.array([WEEKS, [0, 1, 2, 5, 9]])
    degrees = np.array([FLEXION, [70, 70, 75, 75, 90]])
    for line in (
        theil_sen_line,
        least_squares_line,
        lambda x, y: known_error_line(x, y, error_sd=np.array([1.8, 3.4])),
    ):
        many = line(weeks, degrees)
        assert np.shape(many.deg_per_week) == (2,)
    for place in (0, 1):
        for line in (theil_sen_line, least_squares_line):
            alone, many = line(weeks[place], degrees[place]), line(weeks, degrees)
            for name in ("deg_per_week", "start_deg", "low", "high", "scatter_deg"):
                assert getattr(many, name)[place] == pytest.approx(getattr(alone, name), rel=1e-13)


def test_one_case_gives_plain_numbers() -> None:
    """A single case gives single numbers, not arrays."""
    for line in (theil_sen_line(WEEKS, FLEXION), least_squares_line(WEEKS, FLEXION)):
        assert [np.ndim(x) for x in (line.deg_per_week, line.start_deg, line.low, line.high)] == [0] * 4


def test_known_error_interval_by_hand() -> None:
    """Two readings two weeks apart with an error of 2°: half width z * 2 / sqrt(2) = 2.7718."""
    line = known_error_line([0, 2], [100, 110], error_sd=2.0)

    assert line.deg_per_week == 5.0
    assert (line.high - line.low) / 2 == pytest.approx(1.959964 * 2 / math.sqrt(2), abs=1e-6)
    assert math.isnan(line.scatter_deg)


def test_two_readings_have_no_scatter() -> None:
    """Least squares through two readings has a slope and no interval."""
    line = least_squares_line([1, 3], [90, 100])

    assert line.deg_per_week == 5.0
    assert math.isnan(line.low)
    assert math.isnan(line.high)


@pytest.mark.parametrize("line", [theil_sen_line, least_squares_line])
def test_one_day_has_no_slope(line) -> None:  # type: ignore[no-untyped-def]
    """Readings of one day give no number, in a table too, and no warning."""
    week = 0.1 + 0.2
    table = line([[week] * 3, [1.0, 2.0, 3.0]], [[80, 85, 90], [80, 85, 90]])

    assert math.isnan(table.deg_per_week[0])
    assert table.deg_per_week[1] == pytest.approx(5.0)
    assert math.isnan(line([week] * 3, [80, 85, 90]).deg_per_week)


def test_ties_beyond_the_variance_have_no_interval() -> None:
    """Two days with two equal readings each leave no variance: no interval rather than a made-up one."""
    line = theil_sen_line([1, 1, 1, 2, 2, 2], [80, 80, 80, 80, 80, 80])

    assert line.deg_per_week == 0.0
    assert math.isnan(line.low)


@pytest.mark.parametrize(
    ("weeks", "degrees", "named"),
    [
        ([1, 2], [80], "one entry a reading"),
        ([1], [80], "2 to 2000 readings"),
        (range(2001), range(2001), "2 to 2000 readings"),
        ([1, math.nan], [80, 90], "weeks must be a finite number"),
        ([1, 2], [80, math.inf], "degrees must be a finite number in deg, got inf"),
        ([1, 2], [80, None], "degrees must be a finite number"),
        ([1, 2], ["80", "90"], "never filled in"),
    ],
)
def test_refusals(weeks, degrees, named) -> None:  # type: ignore[no-untyped-def]
    """A missing or odd reading is refused by name, with what came."""
    with pytest.raises(InputError, match=named):
        least_squares_line(weeks, degrees)


@pytest.mark.parametrize("level", [0.0, 1.0, 95, -0.1, math.nan])
def test_a_level_is_a_fraction(level: float) -> None:
    """A level outside 0 to 1 is refused by every line, for two readings too."""
    for line in (theil_sen_line, least_squares_line):
        with pytest.raises(InputError, match="level"):
            line([1, 2], [80, 90], level=level)
    with pytest.raises(InputError, match="level"):
        known_error_line([1, 2], [80, 90], error_sd=1.0, level=level)


def test_error_must_be_above_zero() -> None:
    """An error of nothing is refused."""
    with pytest.raises(InputError, match="error_sd must be above 0"):
        known_error_line([1, 2], [80, 90], error_sd=0.0)
