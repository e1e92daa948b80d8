"""Limb symmetry kernels: direction, decision on the unrounded value, error."""

from __future__ import annotations

import math

import numpy as np
import pytest

from kneecase.errors import InputError
from kneecase.measures import (
    chance_true_value_passes,
    is_met,
    limb_symmetry_index,
    symmetry_band,
    symmetry_sem_points,
)

# ours: worked by hand from the definition
OURS = [
    (133.5, 149.0, "higher", 89.5973),
    (135.0, 150.0, "higher", 90.0),
    (45.0, 52.0, "higher", 86.5385),
    (171.0, 198.0, "higher", 86.3636),
    (2.0, 1.8, "lower", 90.0),
    (0.0, 52.0, "higher", 0.0),
]


@pytest.mark.parametrize(("involved", "uninvolved", "better", "expected"), OURS)
def test_index(involved: float, uninvolved: float, better: str, expected: float) -> None:
    """The index in both directions, to four decimals."""
    assert limb_symmetry_index(involved, uninvolved, better) == pytest.approx(expected, abs=5e-5)


def test_decided_unrounded() -> None:
    """89.597 prints as 90 and is still below it; exactly 90 meets 'at least' and not 'above'."""
    index = limb_symmetry_index(133.5, 149.0)

    assert round(index) == 90
    assert not is_met(index, 90.0, "≥")
    assert is_met(90.0, 90.0, ">=")
    assert not is_met(90.0, 90.0, ">")
    assert is_met(3.9, 4.0, "<")
    assert is_met(4.0, 4.0, "<=")
    assert not is_met(4.0, 4.0, "<")


@pytest.mark.parametrize(
    ("involved", "uninvolved", "better"),
    [
        (100.0, 0.0, "higher"),
        (100.0, -5.0, "higher"),
        (-1.0, 100.0, "higher"),
        (0.0, 2.0, "lower"),
        (2.0, 0.0, "lower"),
        (float("nan"), 100.0, "higher"),
        (100.0, float("inf"), "higher"),
        (None, 100.0, "higher"),
    ],
)
def test_no_index_without_two_scores(involved: float, uninvolved: float, better: str) -> None:
    """Zero, missing or negative scores are refused, never turned into a number."""
    with pytest.raises(InputError, match="involved"):
        limb_symmetry_index(involved, uninvolved, better)


def test_direction_is_named() -> None:
    """A direction that is neither is refused with what came."""
    with pytest.raises(InputError, match="got 'less'"):
        limb_symmetry_index(2.0, 1.8, "less")


def test_propagated_error() -> None:
    """Error of the index from the error of a hop: 4.56 cm on each limb is 4.11 points (ours)."""
    sem = symmetry_sem_points(133.5, 149.0, involved_sem=4.56, uninvolved_sem=4.56)

    assert sem == pytest.approx(4.11, abs=0.005)
    assert symmetry_sem_points(
        100.0, 100.0, involved_sem=5.0, uninvolved_sem=5.0, error_correlation=1.0
    ) == pytest.approx(0.0)
    assert symmetry_sem_points(
        100.0, 100.0, involved_sem=5.0, uninvolved_sem=5.0, error_correlation=-1.0
    ) == pytest.approx(10.0)
    assert symmetry_sem_points(
        2.0, 1.8, involved_sem=0.06, uninvolved_sem=0.06, better="lower"
    ) == pytest.approx(90.0 * math.hypot(0.03, 1 / 30))


@pytest.mark.parametrize(
    "wrong",
    [
        {"involved_sem": -1.0, "uninvolved_sem": 1.0},
        {"involved_sem": 1.0, "uninvolved_sem": -1.0},
        {"involved_sem": 1.0, "uninvolved_sem": 1.0, "error_correlation": 1.5},
    ],
)
def test_error_arguments_are_checked(wrong: dict[str, float]) -> None:
    """Negative errors and impossible correlations are refused by name."""
    with pytest.raises(InputError, match=r"_sem must|error_correlation must"):
        symmetry_sem_points(90.0, 100.0, **wrong)


def test_band() -> None:
    """The 90 % band around 90 is 1.645 standard errors either way: 5.74 and 9.20 points (ours)."""
    assert symmetry_band(90.0, 3.49)[1] - 90 == pytest.approx(5.74, abs=0.005)
    assert 90 - symmetry_band(90.0, 5.59)[0] == pytest.approx(9.20, abs=0.006)
    with pytest.raises(InputError, match=r"Write 0\.95 for 95 %"):
        symmetry_band(90.0, 3.49, 95.0)


def test_chance() -> None:
    """A true 88 shows at least 90 in 28 % of tests with an error of 3.49 (ours); even on the line."""
    assert chance_true_value_passes(88.0, 3.49, 90.0, "≥") == pytest.approx(0.28, abs=0.005)
    assert chance_true_value_passes(90.0, 3.49, 90.0, ">") == 0.5
    assert chance_true_value_passes(1.9, 0.06, 2.0, "≤") > 0.9


def test_chance_without_error_is_the_decision() -> None:
    """With an error of 0 the observed value decides, and on the line the operator does."""
    values = np.array([89.0, 90.0, 91.0])

    assert list(chance_true_value_passes(values, np.zeros(3), 90.0, "≥")) == [0.0, 1.0, 1.0]
    assert list(chance_true_value_passes(values, np.zeros(3), 90.0, ">")) == [0.0, 0.0, 1.0]
    assert list(chance_true_value_passes(values, np.zeros(3), 90.0, "<")) == [1.0, 0.0, 0.0]


def test_operator_is_named() -> None:
    """An operator that is none is refused."""
    with pytest.raises(InputError, match="Which one does the source print"):
        is_met(90.0, 90.0, "=")
    with pytest.raises(InputError, match="operator must be"):
        chance_true_value_passes(90.0, 1.0, 90.0, "≈")
