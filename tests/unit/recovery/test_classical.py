"""The classical fits beside the exact one."""

from __future__ import annotations

import math

import numpy as np
import pytest
from scipy.optimize import curve_fit

from kneecase.errors import InputError
from kneecase.recovery import saturating_curve, target_week

WEEKS = np.array([1, 2, 3, 5, 8, 12])
FLEXION = np.array([80, 96, 108, 121, 130, 133])


def model(week: np.ndarray, plateau: float, start: float, rate: float) -> np.ndarray:
    """The curve as another program is given it."""
    return plateau - (plateau - start) * np.exp(-rate * week)


def test_it_is_the_least_squares_fit() -> None:
    """Estimates and standard errors of a general optimiser."""
    fit = saturating_curve(WEEKS, FLEXION)
    best, spread = curve_fit(model, WEEKS, FLEXION, p0=(135, 60, 0.3))

    assert [fit.plateau, fit.start, fit.rate] == pytest.approx(best, rel=1e-5)
    assert [fit.plateau_se, fit.start_se, fit.rate_se] == pytest.approx(np.sqrt(np.diag(spread)), rel=1e-3)


def test_profile_ends_lie_where_the_sum_of_squares_says() -> None:
    """At each end the best fit with that plateau or rate held leaves exactly the bound."""
    fit = saturating_curve(WEEKS, FLEXION)
    bound = fit.sum_of_squares * (1 + 3.182446305284263**2 / 3)  # Student's t at 0.975 with 3 to spare

    for end in fit.plateau_ends:
        best, _ = curve_fit(lambda x, b, k, a=end: model(x, a, b, k), WEEKS, FLEXION, p0=(60, 0.3))
        assert ((FLEXION - model(WEEKS, end, *best)) ** 2).sum() == pytest.approx(bound, rel=1e-4)
    for end in fit.rate_ends:
        best, _ = curve_fit(lambda x, a, b, k=end: model(x, a, b, k), WEEKS, FLEXION, p0=(135, 60))
        assert ((FLEXION - model(WEEKS, *best, end)) ** 2).sum() == pytest.approx(bound, rel=1e-4)


def test_a_plateau_that_cannot_be_known_has_no_end() -> None:
    """Early readings that hardly bend leave the plateau open above."""
    fit = saturating_curve([1, 2, 3, 4, 5], [70, 79, 86, 94, 100])

    assert math.isinf(fit.plateau_ends[1])


def test_refusals() -> None:
    """Too few readings and readings that do not bend have no curve."""
    with pytest.raises(InputError, match="more readings"):
        saturating_curve([1, 2, 3], [80, 90, 95])
    with pytest.raises(InputError, match="do not bend"):
        saturating_curve([1, 2, 3, 4, 5], [70, 71, 74, 80, 92])
    with pytest.raises(InputError, match="one entry a reading"):
        saturating_curve([1, 2, 3, 4], [80, 90, 95])
    with pytest.raises(InputError, match="three readings"):
        target_week([1, 2], [80, 90], 120)
    with pytest.raises(InputError, match="slope"):
        target_week([1, 2, 3], [80, 80, 80], 120)


def test_an_excluded_gap_is_named() -> None:
    """Where only weeks in between are excluded, they are told and the interval stays unbounded."""
    found = target_week([1, 2, 3, 4], [100, 103, 99, 104], 160, level=0.95)

    assert not found.is_bounded
    assert found.gap_weeks is None or found.gap_weeks[0] < found.gap_weeks[1]
