"""Outcome scores from items: our own worked examples, missing-item rules, and what is refused."""

from __future__ import annotations

import math

import numpy as np
import pytest

from kneecase.errors import InputError
from kneecase.evidence.questionnaires import QUESTIONNAIRES
from kneecase.measures import (
    acl_rsi_points,
    ikdc_subjective_points,
    koos_min_answered,
    koos_points,
    kos_adl_points,
    score_from_sum_points,
    tegner_change_points,
    tsk_11_points,
)

IKDC_60 = [4, 5, 5, None, 3, 1, 3, 3, 3, 3, 3, 3, 3, 3, 3, 3, 3, 9]


def test_ikdc_shrinks_what_is_possible() -> None:
    """Ours: 66 of 87 is 75.86; 60 with one 4-point item blank is 60 of 83, 72.29."""
    assert score_from_sum_points(66.0, possible_points=87.0) == pytest.approx(75.86, abs=0.005)
    assert ikdc_subjective_points(IKDC_60) == pytest.approx(72.29, abs=0.005)


def test_ikdc_missing_rule() -> None:
    """16 of 18 answered give a score, 15 do not; another rule may be named."""
    two_blank = [None, None, *[1] * 16]
    three_blank = [None, None, None, *[1] * 15]

    assert ikdc_subjective_points(two_blank) == pytest.approx(100 * 16 / 73)
    assert math.isnan(ikdc_subjective_points(three_blank))
    assert ikdc_subjective_points(three_blank, min_answered=15) == pytest.approx(100 * 15 / 63)
    assert math.isnan(ikdc_subjective_points([None] * 18, min_answered=0))


def test_many_sheets_at_once() -> None:
    """An array of sheets gives one score each."""
    sheets = np.array([[np.nan if x is None else x for x in IKDC_60], [0] * 18], dtype=float)

    np.testing.assert_allclose(ikdc_subjective_points(sheets), [72.2892, 0.0], atol=1e-4)


def test_koos_worked_examples() -> None:
    """Ours: pain sum 9 gives 75.0; symptoms with 4 of 7 gives 75.0, with 3 none; life 1, 2 gives 62.5."""
    symptoms, qol = koos_min_answered("koos_symptoms").number, koos_min_answered("koos_qol").number

    assert koos_points([1] * 9, min_answered=5) == 75.0
    assert koos_points([1, 0, 2, 1, None, None, None], min_answered=symptoms) == 75.0
    assert math.isnan(koos_points([1, 0, 2, None, None, None, None], min_answered=symptoms))
    assert koos_points([1, 2, None, None], min_answered=qol) == 62.5


def test_koos_rules_by_year() -> None:
    """The rule of 2012 asks for 5, 4, 9, 3, 2 answers, that of 1998 for 7, 5, 15, 3, 2."""
    names = ("koos_pain", "koos_symptoms", "koos_adl", "koos_sport", "koos_qol")

    assert [koos_min_answered(n).number for n in names] == [5, 4, 9, 3, 2]
    assert [koos_min_answered(n, "1998").number for n in names] == [7, 5, 15, 3, 2]
    with pytest.raises(InputError, match="rule must be '2012' or '1998', got '2003'"):
        koos_min_answered("koos_pain", "2003")
    with pytest.raises(InputError, match="subscale must be one of koos_pain"):
        koos_min_answered("koos_total")


def test_readiness() -> None:
    """Ours: a sum of 660 over 12 items is 55.0, below the line of 56; two may be missing, three not."""
    assert acl_rsi_points([55] * 12) == 55.0
    assert acl_rsi_points([60] * 10 + [None] * 2) == 60.0
    assert math.isnan(acl_rsi_points([60] * 9 + [None] * 3))
    assert acl_rsi_points([5.5] * 12, item_scale="0-10") == pytest.approx(55.0)
    with pytest.raises(InputError, match="item 1 must be a number between 0 and 10"):
        acl_rsi_points([55] * 12, item_scale="0-10")
    with pytest.raises(InputError, match="item_scale must be"):
        acl_rsi_points([5] * 12, item_scale="0-5")


def test_sums_without_a_missing_rule() -> None:
    """Ours: 59 of 70 is 84.3; fear sums to 22; one missing item leaves no score."""
    daily = [5] * 6 + [4] * 5 + [3] * 3

    assert kos_adl_points(daily) == pytest.approx(84.3, abs=0.05)
    assert math.isnan(kos_adl_points([None, *daily[1:]]))
    assert tsk_11_points([2] * 11) == 22
    assert math.isnan(tsk_11_points([None] + [2] * 10))


def test_tegner_is_a_difference() -> None:
    """Level 6 after level 9 is 3 lower."""
    assert tegner_change_points(current_points=6.0, pre_injury_points=9.0) == -3
    with pytest.raises(InputError, match="pre_injury_points"):
        tegner_change_points(current_points=6.0, pre_injury_points=11.0)


@pytest.mark.parametrize(
    ("call", "said"),
    [
        (lambda: ikdc_subjective_points([0] * 17), "18 items"),
        (
            lambda: ikdc_subjective_points([0, 11, *[0] * 16]),
            "item 2 must be a whole number between 0 and 10",
        ),
        (lambda: ikdc_subjective_points([0] * 5 + [2] + [0] * 12), "item 6"),
        (lambda: koos_points([0, 5], min_answered=1), "item 2"),
        (lambda: koos_points([], min_answered=1), "one subscale"),
        (lambda: koos_points(3, min_answered=1), "one subscale"),
        (lambda: koos_points([{}, {}], min_answered=1), "2 items"),
        (lambda: tsk_11_points([0] * 11), "between 1 and 4"),
        (lambda: score_from_sum_points(88.0, possible_points=87.0), "Is the sum from this form"),
        (lambda: score_from_sum_points(1.0, possible_points=0.0), "possible_points"),
    ],
)
def test_refused(call, said: str) -> None:
    """A sentence names what is wrong with the sheet."""
    with pytest.raises(InputError, match=said):
        call()


def test_forms_hold_no_wording() -> None:
    """A form is ranges and a name: no question, no option text."""
    for form in QUESTIONNAIRES.values():
        assert "?" not in form.entry + form.label + form.ownership
        assert all(low < high for low, high in form.item_ranges)
