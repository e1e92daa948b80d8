"""Printed intervals and odds that follow from counts, recomputed with statsmodels as the reference.

Data checks: kneecase computes no interval of a proportion itself, it shows these as printed.  Where a print
cannot be right (P9) or came from unrounded inputs (P18) the check says exactly that.
"""

from __future__ import annotations

import pytest
from statsmodels.stats.proportion import proportion_confint

from kneecase.evidence import published_value


def test_p9_wilson_interval_of_the_stricter_rule() -> None:
    """Wellsandt 2017 (abstract), 9 of 11: printed .818 (.523 to .949) is the Wilson interval."""
    low, high = proportion_confint(9, 11, method="wilson")
    shown = published_value("OTHER_LIMB_CAPACITY_SENSITIVITY_WELLSANDT2017")

    assert (shown.value, shown.low, shown.high) == (0.818, 0.523, 0.949)
    assert shown.value == pytest.approx(9 / 11, abs=0.0005)
    assert shown.low == pytest.approx(low, abs=0.0005)
    assert shown.high == pytest.approx(high, abs=0.0005)


def test_p9_printed_lower_end_of_the_plain_index_is_a_misprint() -> None:
    """Wellsandt 2017 (abstract), 3 of 11: Wilson gives .0975 to .5656; print .010 to .566, so .010 for .097.

    The print is kept as printed, and says that it looks wrong.
    """
    low, high = proportion_confint(3, 11, method="wilson")
    shown = published_value("OTHER_LIMB_LSI_SENSITIVITY_WELLSANDT2017")

    assert (low, high) == (pytest.approx(0.0975, abs=5e-5), pytest.approx(0.5656, abs=5e-5))
    assert shown.high == pytest.approx(high, abs=0.0005)
    assert shown.low == 0.010
    assert abs(0.010 - low) > 0.08
    assert "misprint" in shown.spread_is


def test_p18_odds_ratio_from_sensitivity_and_specificity() -> None:
    """Pietrosimone 2016 (abstract): sensitivity .61, specificity .84, odds ratio 8.15.

    The rounded inputs give 8.21; 8.15 lies within what their rounding allows.
    """

    def odds_ratio(sensitivity: float, specificity: float) -> float:
        return sensitivity * specificity / ((1 - sensitivity) * (1 - specificity))

    assert odds_ratio(0.61, 0.84) == pytest.approx(8.21, abs=0.005)
    assert odds_ratio(0.605, 0.835) <= 8.15 <= odds_ratio(0.615, 0.845)
    assert "8.15" in published_value("STRENGTH_EXTENSION_TARGET_PIETROSIMONE2016").definition


def test_p18_likelihood_ratios() -> None:
    """Pietrosimone 2016 (abstract), same inputs: likelihood ratios 3.81 and .464 (ours, not printed)."""
    assert pytest.approx(3.81, abs=0.005) == 0.61 / (1 - 0.84)
    assert pytest.approx(0.464, abs=0.0005) == (1 - 0.61) / 0.84
