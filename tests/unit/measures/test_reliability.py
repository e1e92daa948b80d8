"""Measurement error kernels: worked numbers of ours, and what they refuse."""

from __future__ import annotations

from typing import Any

import numpy as np
import pytest

from kneecase.errors import InputError
from kneecase.measures import (
    instrument_reliability,
    intraclass_correlation,
    limits_of_agreement,
    minimal_detectable_change,
    normal_quantile,
    repeatability_coefficient,
    sem_from_detectable_change,
    sem_from_limits_of_agreement,
    standard_error_of_measurement,
    within_subject_sd,
)
from kneecase.measures.intraclass import mean_squares

# ours: sd, icc, standard error, change at 95 % and 90 % (z rounded to 1.96 and 1.645, hence the tolerance)
OURS = [(10.0, 0.90, 3.162278, 8.765386, 7.356664), (8.0, 0.95, 1.788854, 4.958451, 4.161557)]


@pytest.mark.parametrize(("sd", "icc", "sem", "mdc95", "mdc90"), OURS)
def test_error_from_icc(sd: float, icc: float, sem: float, mdc95: float, mdc90: float) -> None:
    """Standard error from an ICC, and the change it takes; the rounded z moves the fourth decimal."""
    found = standard_error_of_measurement(sd, icc)

    assert found == pytest.approx(sem, abs=5e-7)
    assert minimal_detectable_change(found) == pytest.approx(mdc95, abs=1.7e-4)
    assert minimal_detectable_change(found, 0.90) == pytest.approx(mdc90, abs=7e-4)
    assert sem_from_detectable_change(minimal_detectable_change(found)) == pytest.approx(sem, abs=5e-7)


def test_arrays() -> None:
    """The same lines serve arrays."""
    found = standard_error_of_measurement(np.array([10.0, 8.0]), np.array([0.90, 0.95]))

    assert list(found) == pytest.approx([3.162278, 1.788854], abs=5e-7)


@pytest.mark.parametrize("icc", [-0.1, 1.1, 92.0])
def test_icc_is_a_fraction(icc: float) -> None:
    """An ICC outside 0 to 1 is refused, and percent is suspected."""
    with pytest.raises(InputError, match=r"icc must lie between 0 and 1, got .* Is it in percent"):
        standard_error_of_measurement(10.0, icc)


@pytest.mark.parametrize("level", [0.0, 1.0, 95.0, -0.5, float("nan"), [0.8, 0.95]])
def test_level_is_a_fraction(level: Any) -> None:
    """A level is a fraction between 0 and 1 wherever one is taken."""
    table = [[1.0, 2.0], [3.0, 5.0], [6.0, 6.0]]
    for call in (
        lambda: normal_quantile(level),
        lambda: minimal_detectable_change(1.0, level),
        lambda: intraclass_correlation(table, "2,1", level),
        lambda: limits_of_agreement([1.0, 2.0, 3.0], [1.0, 2.0, 4.0], level=level),
        lambda: limits_of_agreement([1.0, 2.0, 3.0], [1.0, 2.0, 4.0], coverage=level),
    ):
        with pytest.raises(InputError, match="level must"):
            call()


def test_swapped_limits() -> None:
    """Limits of agreement the wrong way round are refused."""
    with pytest.raises(InputError, match="Are they swapped"):
        sem_from_limits_of_agreement(12.1, -6.7)


def test_repeatability() -> None:
    """Within-subject SD by hand: squares 2, 0, 2 over three pairs; repeatability is 2.77 times it (ours)."""
    table = [[10.0, 12.0], [30.0, 30.0], [22.0, 20.0]]

    assert within_subject_sd(table) == pytest.approx((4 / 3) ** 0.5)
    assert repeatability_coefficient(table) == pytest.approx(2.771808 * (4 / 3) ** 0.5, abs=1e-5)


def test_mean_squares_by_hand() -> None:
    """A table where the second rater always reads one more: no error, all of it between raters (ours)."""
    found = mean_squares([[1.0, 2.0], [3.0, 4.0], [5.0, 6.0]])

    assert (found.subjects, found.raters, found.error) == pytest.approx((8.0, 1.5, 0.0))
    assert found.within == pytest.approx(0.5)
    assert (found.n_subjects, found.k_readings) == (3, 2)


def test_a_steady_bias_hurts_agreement_not_consistency() -> None:
    """With a constant difference between raters consistency is 1 and agreement is less."""
    table = np.array([[1.0, 2.0], [3.0, 4.0], [5.0, 6.0]])
    consistency = intraclass_correlation(table, "3,1")
    agreement = intraclass_correlation(table, "2,1")

    assert consistency.value == pytest.approx(1.0)
    assert consistency.low == pytest.approx(1.0)
    assert agreement.value == pytest.approx(8 / 9)


def test_perfect_repeats() -> None:
    """Repeats that agree exactly give 1 with no interval to speak of, in every form."""
    table = np.array([[1.0, 1.0], [2.0, 2.0], [4.0, 4.0]])
    for form in ("1,1", "2,1", "3,1", "1,k", "2,k", "3,k"):
        found = intraclass_correlation(table, form)
        assert (found.low, found.value, found.high) == (1.0, 1.0, 1.0)


def test_contradicting_raters() -> None:
    """Raters who contradict each other give a reliability of the mean without a lower end."""
    found = intraclass_correlation([[1e6, -1e6], [-1e6, 1e6 + 0.001], [1e6, -1e6]], "3,k")

    assert found.value < -1e6
    assert found.low == -np.inf


@pytest.mark.parametrize(
    ("readings", "match"),
    [
        ([1.0, 2.0], "got shape"),
        ([[1.0, 2.0]], "got shape"),
        ([[1.0], [2.0]], "got shape"),
        ([[1.0, np.nan], [2.0, 3.0]], "Leave that subject out"),
        ([[1.0, 2.0], [2.0]], "readings must"),
        ("gonio.csv", "readings must"),
    ],
)
def test_tables_are_checked(readings: object, match: str) -> None:
    """A table that is no complete table is refused."""
    for call in (within_subject_sd, repeatability_coefficient, intraclass_correlation):
        with pytest.raises(InputError, match=match):
            call(readings)


def test_icc_needs_different_people() -> None:
    """People who are all alike give no intraclass correlation, whatever the rounding."""
    with pytest.raises(InputError, match="must differ between subjects"):
        intraclass_correlation([[0.1, 0.3], [0.3, 0.1], [0.2, 0.2]])
    with pytest.raises(InputError, match="form must be one of"):
        intraclass_correlation([[1.0, 2.0], [3.0, 4.0]], "4,1")


@pytest.mark.parametrize(
    ("first", "second"),
    [([1.0, 2.0], [1.0, 2.0]), ([1.0, 2.0, 3.0], [1.0, 2.0]), ([[1.0, 2.0, 3.0]], [[1.0, 2.0, 3.0]])],
)
def test_agreement_needs_pairs(first: object, second: object) -> None:
    """Series of unequal length, or fewer than three pairs, are refused."""
    with pytest.raises(InputError, match="same length with at least 3 pairs"):
        limits_of_agreement(first, second)


def test_agreement_error_leaves_bias_out() -> None:
    """A constant difference is bias, not error."""
    found = limits_of_agreement([1.0, 2.0, 3.0, 4.0], [3.0, 4.0, 5.0, 6.0])

    assert (found.bias, found.sd, found.sem) == (-2.0, 0.0, 0.0)


def test_instruments_without_difference() -> None:
    """A component estimated below zero is kept, named, and counted as zero."""
    cube = [[[10, 14], [13, 11]], [[20, 16], [17, 19]], [[30, 34], [33, 31]]]
    found = instrument_reliability(cube)

    assert found.variance_interaction < 0
    assert "interaction" in found.counted_as_zero
    assert found.sem_between_random == pytest.approx(found.sem_within)


def test_instruments_without_variance() -> None:
    """A reliability that is no share of anything is unknown; a table that never varies is refused."""
    same_people = [[[1.0, 1.0], [2.0, 2.0]], [[1.0, 1.0], [2.0, 2.0]]]
    found = instrument_reliability(same_people)

    assert found.reliability_between_fixed is None
    assert found.reliability_between_random == 0.0
    still = np.zeros((6, 2, 2))
    still[5, 1, 1] = 39.0
    assert instrument_reliability(still).reliability_within_each == (None, 0.0)
    with pytest.raises(InputError, match="Was one reading copied"):
        instrument_reliability(np.full((3, 2, 2), 0.1))
    with pytest.raises(InputError, match="three axes"):
        instrument_reliability([[1.0, 2.0], [3.0, 4.0]])
