"""Landing, step-down and stance kernels: sums, rules, bands, and what is refused."""

from __future__ import annotations

import math
from typing import Any

import numpy as np
import pytest

from kneecase.errors import InputError
from kneecase.evidence.observation_sheets import LANDING_ITEMS, STEP_DOWN_ITEMS
from kneecase.measures import (
    involved_load_pct,
    landing_band,
    landing_error_points,
    landing_score_points,
    positive_predictive_fraction,
    step_down_band,
    step_down_points,
)


def test_sheets_have_their_published_size() -> None:
    """17 items make 19 points, 5 items make 6; numbers run from 1; unread items say so."""
    assert [item.number for item in LANDING_ITEMS] == list(range(1, 18))
    assert sum(item.highest for item in LANDING_ITEMS) == 19
    assert [item.number for item in STEP_DOWN_ITEMS] == list(range(1, 6))
    assert sum(item.highest for item in STEP_DOWN_ITEMS) == 6
    assert {item.number for item in LANDING_ITEMS if not item.verified} == {9, 10, 12, 13, 14, 15, 16, 17}


def test_landing_total() -> None:
    """The total is the sum; a missing item leaves none; several landings are summed one by one."""
    one = [0] * 15 + [2, 1]

    assert landing_error_points(one) == 3.0
    assert math.isnan(landing_error_points([None, *one[1:]]))
    np.testing.assert_array_equal(landing_error_points([one, [1] * 17]), [3.0, 17.0])


@pytest.mark.parametrize(
    ("items", "said"),
    [
        ([0] * 16, "17 items"),
        ([0] * 14 + [2, 0, 0], "item 15 must be a whole number between 0 and 1"),
        ([0] * 15 + [0.5, 0], "item 16 must be a whole number between 0 and 2"),
        ([0] * 16 + [math.inf], "item 17"),
        (["0"] * 17, "17 items"),
        ([True] * 17, "17 items"),
        ([[0] * 17, [0] * 3], "17 items"),
    ],
)
def test_refused_items(items: list, said: str) -> None:
    """A sentence names the item, its range and what came."""
    with pytest.raises(InputError, match=said):
        landing_error_points(items)


@pytest.mark.parametrize("points", [["six", 5], [6, None], [6, -1], {}])
def test_landings_are_numbers(points: Any) -> None:
    """What is no number of points is refused by name, whatever kind it is."""
    with pytest.raises(InputError, match="trial_points must"):
        landing_score_points(points)


def test_one_score_from_several_landings() -> None:
    """Mean, best of exactly three, worst, or the only one."""
    assert landing_score_points([6, 5, 5]) == pytest.approx(16 / 3)
    assert landing_score_points([6, 5, 5], rule="best of three") == 5
    assert landing_score_points([6, 5, 5], rule="worst") == 6
    assert landing_score_points([6], rule="single") == 6


@pytest.mark.parametrize(
    ("scores", "rule", "said"),
    [
        ([6, 5], "best of three", "needs 3 landings, got 2"),
        ([6, 5], "single", "needs 1 landing, got 2"),
        ([], "mean", "needs 1 landing, got 0"),
        ([6], "median", "rule must be one of"),
        ([6, math.nan], "mean", "trial_points"),
        ([-1], "mean", "trial_points"),
    ],
)
def test_refused_rules(scores: list, rule: str, said: str) -> None:
    """A rule that does not fit the landings, or a missing score, is refused."""
    with pytest.raises(InputError, match=said):
        landing_score_points(scores, rule=rule)


def test_bands_on_the_unrounded_score() -> None:
    """A band ends exactly on its line."""
    ends = {"excellent_at_most_points": 4, "good_at_most_points": 5, "moderate_at_most_points": 6}
    words = {4: "excellent", 4.01: "good", 5: "good", 5.33: "moderate", 6: "moderate", 6.001: "poor"}

    assert {points: landing_band(points, **ends) for points in words} == words
    with pytest.raises(InputError, match="must rise"):
        landing_band(4, excellent_at_most_points=5, good_at_most_points=5, moderate_at_most_points=6)


def test_step_down() -> None:
    """The knee counts twice at most; bands end on their lines."""
    ends = {"good_at_most_points": 1, "medium_at_most_points": 3}

    assert step_down_points([1, 1, 1, 2, 1]) == 6
    assert math.isnan(step_down_points([1, 1, None, 2, 1]))
    assert [step_down_band(p, **ends) for p in (0, 1, 2, 3, 4)] == [
        "good",
        "good",
        "medium",
        "medium",
        "poor",
    ]
    with pytest.raises(InputError, match="item 4"):
        step_down_points([0, 0, 0, 3, 0])
    with pytest.raises(InputError, match="must rise"):
        step_down_band(1, good_at_most_points=3, medium_at_most_points=1)


def test_share_of_the_load() -> None:
    """Even is 50 %; nothing on the scales or a negative load is refused."""
    assert involved_load_pct(involved_kg=30.0, uninvolved_kg=30.0) == 50
    np.testing.assert_allclose(
        involved_load_pct(involved_kg=np.array([25.5, 0.0]), uninvolved_kg=33.0), [43.59, 0], atol=0.005
    )
    with pytest.raises(InputError, match="Was nobody on the scales"):
        involved_load_pct(involved_kg=0.0, uninvolved_kg=0.0)
    with pytest.raises(InputError, match="involved_kg"):
        involved_load_pct(involved_kg=-1.0, uninvolved_kg=3.0)


def test_base_rates() -> None:
    """Our own sums from published numbers: 2.0 % of positive landings, 11.7 % of positive knee moments."""
    padua = positive_predictive_fraction(
        sensitivity_fraction=0.86, specificity_fraction=0.64, prevalence_fraction=7 / 829
    )
    hewett = positive_predictive_fraction(
        sensitivity_fraction=0.78, specificity_fraction=0.73, prevalence_fraction=9 / 205
    )

    assert 100 * padua == pytest.approx(2.0, abs=0.05)
    assert 100 * hewett == pytest.approx(11.7, abs=0.05)
    with pytest.raises(InputError, match="sensitivity_fraction"):
        positive_predictive_fraction(
            sensitivity_fraction=86.0, specificity_fraction=0.64, prevalence_fraction=0.1
        )
    with pytest.raises(InputError, match="Nobody would screen positive"):
        positive_predictive_fraction(
            sensitivity_fraction=0.0, specificity_fraction=1.0, prevalence_fraction=0.1
        )
