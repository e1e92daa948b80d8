"""Bounds and directions of outcome scores, landing errors and star excursion reach."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from kneecase.evidence.questionnaires import QUESTIONNAIRES
from kneecase.measures import (
    acl_rsi_points,
    composite_reach_pct,
    ikdc_subjective_points,
    involved_load_pct,
    koos_points,
    kos_adl_points,
    landing_error_points,
    landing_score_points,
    normalised_reach_pct,
    positive_predictive_fraction,
    reach_deficit_pct,
    tsk_11_points,
)
from kneecase.record import measure_named


def items_of(measure: str, missing: bool = True) -> st.SearchStrategy[list[float | None]]:
    """Every possible answer sheet of a form, with or without missing items."""
    form = measure_named(measure)
    each = []
    for number in range(1, (form.items or 0) + 1):
        low, high = form.range_of_item(number) or (0, 0)
        answer = st.integers(int(low), int(high))
        each.append(st.one_of(st.none(), answer) if missing else answer)
    return st.tuples(*each).map(list)


@given(items_of("ikdc_subjective"))
def test_ikdc_stays_on_its_scale(items) -> None:
    """A score lies between 0 and 100, and there is one exactly when 16 of 18 are answered."""
    score = ikdc_subjective_points(items)
    answered = sum(x is not None for x in items)

    assert math.isnan(score) == (answered < 16)
    assert math.isnan(score) or 0 <= score <= 100


@given(items_of("ikdc_subjective", missing=False), st.integers(0, 17))
def test_ikdc_rises_with_every_item(items, place) -> None:
    """One more point in any item raises the score by the same 100 / 87."""
    high = QUESTIONNAIRES["ikdc_subjective"].item_ranges[place][1]
    if items[place] < high:
        more = [x + (i == place) for i, x in enumerate(items)]
        assert ikdc_subjective_points(more) - ikdc_subjective_points(items) == pytest.approx(100 / 87)


KOOS = [name for name in QUESTIONNAIRES if name.startswith("koos")]


@pytest.mark.parametrize("name", KOOS)
@given(data=st.data())
def test_koos_stays_on_its_scale(name, data) -> None:
    """A subscale lies between 0 and 100; no trouble is 100, the worst 0; order does not matter."""
    items = data.draw(items_of(name))
    score = koos_points(items, min_answered=2)
    count = len(items)

    assert math.isnan(score) == (sum(x is not None for x in items) < 2)
    assert math.isnan(score) or 0 <= score <= 100
    assert koos_points(items[::-1], min_answered=2) == pytest.approx(score, nan_ok=True)
    assert koos_points([0] * count, min_answered=2) == 100
    assert koos_points([4] * count, min_answered=2) == 0


@given(items_of("tsk_11", missing=False), items_of("kos_adl", missing=False))
def test_sums_stay_on_their_scale(fear, daily) -> None:
    """TSK-11 lies between 11 and 44, KOS daily living between 0 and 100."""
    assert 11 <= tsk_11_points(fear) <= 44
    assert 0 <= kos_adl_points(daily) <= 100


@given(st.lists(st.integers(0, 10), min_size=12, max_size=12))
def test_readiness_scales_agree(items) -> None:
    """Items of 0-10 give what the same items times ten give on 0-100."""
    tens = [10 * x for x in items]

    assert acl_rsi_points(items, item_scale="0-10") == pytest.approx(acl_rsi_points(tens))


@given(items_of("landing_errors", missing=False), st.lists(st.integers(0, 19), min_size=3, max_size=3))
def test_landing_errors_stay_on_their_scale(items, trials) -> None:
    """A landing lies between 0 and 19; best, mean and worst of three stand in this order."""
    assert 0 <= landing_error_points(items) <= 19
    best, mean, worst = (landing_score_points(trials, rule=r) for r in ("best of three", "mean", "worst"))
    assert best <= mean <= worst


LENGTH = st.floats(10, 200)


@given(LENGTH, LENGTH, LENGTH, LENGTH, st.floats(0.1, 10))
def test_reach_does_not_depend_on_the_unit(anterior, medial, lateral, limb, scale) -> None:
    """Reach and limb length in another unit give the same percent."""
    reach = {"anterior_cm": anterior, "posteromedial_cm": medial, "posterolateral_cm": lateral}
    scaled = {name: scale * value for name, value in reach.items()}
    composite = composite_reach_pct(**reach, limb_length_cm=limb)

    assert composite_reach_pct(**scaled, limb_length_cm=scale * limb) == pytest.approx(composite)
    assert composite == pytest.approx(np.mean([normalised_reach_pct(x, limb) for x in reach.values()]))


@given(LENGTH, LENGTH, LENGTH, LENGTH)
def test_deficit_turns_with_the_limbs(own, other, own_limb, other_limb) -> None:
    """Swapping the limbs turns the sign of the deficit."""
    deficit = reach_deficit_pct(
        involved_cm=own,
        uninvolved_cm=other,
        involved_limb_length_cm=own_limb,
        uninvolved_limb_length_cm=other_limb,
    )
    swapped = reach_deficit_pct(
        involved_cm=other,
        uninvolved_cm=own,
        involved_limb_length_cm=other_limb,
        uninvolved_limb_length_cm=own_limb,
    )

    assert swapped == pytest.approx(-deficit)


@given(st.floats(0, 400), st.floats(0.1, 400))
def test_shares_of_the_load_add_up(own, other) -> None:
    """The two shares make 100 %."""
    one = involved_load_pct(involved_kg=own, uninvolved_kg=other)

    assert one + involved_load_pct(involved_kg=other, uninvolved_kg=own) == pytest.approx(100)


SHARE = st.floats(0.01, 0.99)


@given(SHARE, SHARE, SHARE)
def test_predictive_value_is_bayes(sensitivity, specificity, prevalence) -> None:
    """Odds after a positive screen are odds before it times the likelihood ratio."""
    value = positive_predictive_fraction(
        sensitivity_fraction=sensitivity, specificity_fraction=specificity, prevalence_fraction=prevalence
    )

    odds = prevalence / (1 - prevalence) * sensitivity / (1 - specificity)
    assert value / (1 - value) == pytest.approx(odds, rel=1e-9)
