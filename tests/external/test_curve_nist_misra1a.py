"""Nonlinear least squares against certified results: NIST StRD, Misra1a (public domain).

Misra D. Dental research monomolecular adsorption study. NIST, 1978. Data file Misra1a.dat of the NIST/ITL
Statistical Reference Datasets: 14 observations, certified values in 11 digits. The model
``b1 (1 - exp(-b2 x))`` is ours with the level at nothing known to be 0.
"""

from __future__ import annotations

import numpy as np
import pytest

from kneecase.recovery import saturating_curve

PRESSURE = [77.6, 114.9, 141.1, 190.8, 239.9, 289.0, 332.8, 378.4, 434.8, 477.3, 536.8, 593.1, 689.1, 760.0]
VOLUME = [10.07, 14.73, 17.94, 23.93, 29.61, 35.18, 40.02, 44.82, 50.76, 55.05, 61.01, 66.40, 75.47, 81.78]

CERTIFIED = {
    "plateau": 2.3894212918e02,
    "plateau_se": 2.7070075241e00,
    "rate": 5.5015643181e-04,
    "rate_se": 7.2668688436e-06,
    "sum_of_squares": 1.2455138894e-01,
    "scatter": 1.0187876330e-01,
}


@pytest.mark.parametrize("name", CERTIFIED)
def test_certified_values(name: str) -> None:
    """Estimates, standard errors and residual agree to eight digits.

    Eight of the eleven: the least of a sum of squares is flat, so its place is known to about the square
    root of the precision of a double.
    """
    fit = saturating_curve(PRESSURE, VOLUME, start=0.0)

    assert getattr(fit, name) == pytest.approx(CERTIFIED[name], rel=2e-7)
    assert fit.spare == 12


def test_the_rate_is_found_over_any_scale() -> None:
    """The same curve in another unit of time gives the same numbers, whatever the size of the rate."""
    fit = saturating_curve(np.array(PRESSURE) / 1000, VOLUME, start=0.0)

    assert fit.rate == pytest.approx(1000 * CERTIFIED["rate"], rel=2e-7)
    assert fit.plateau == pytest.approx(CERTIFIED["plateau"], rel=2e-7)
