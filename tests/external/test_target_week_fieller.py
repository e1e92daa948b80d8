"""Inverse prediction of a straight line against printed results (Fieller's interval).

Expected values are those printed in the text, vignette and tests of the open package ``investr``
(Greenwell BM, Schubert Kabban CM. R Journal 2014;6(1):90-100); the crystal growth data are of Graybill and
Iyer 1994. Tolerance: half the last printed digit.
"""

from __future__ import annotations

import math

import pytest

from kneecase.recovery import target_week

CRYSTAL_X = list(range(2, 30, 2))
CRYSTAL_Y = [0.08, 1.12, 4.43, 4.98, 4.92, 7.18, 5.57, 8.40, 8.81, 10.81, 11.16, 10.12, 13.12, 15.04]
THERMOSTAT_X = list(range(96, 112, 2))
THERMOSTAT_Y = [95.71, 98.16, 99.52, 102.09, 103.79, 106.18, 108.14, 110.21]
CHAMBER_X = list(range(0, 110, 10))
CHAMBER_Y = [206.36, 225.52, 252.18, 289.33, 318.11, 349.49, 383.03, 410.70, 444.40, 469.14, 501.16]

PRINTED = {
    "crystal, mean, 95 %": (CRYSTAL_X, CRYSTAL_Y, 8.0, 0.95, False, (15.8882, 14.6590, 17.1596), 5e-5),
    "crystal, reading, 95 %": (CRYSTAL_X, CRYSTAL_Y, 8.0, 0.95, True, (15.888, 11.095, 20.724), 5e-4),
    "crystal, mean, 90 %": (CRYSTAL_X, CRYSTAL_Y, 5.0, 0.90, False, (9.93, 8.65, 11.05), 5e-3),
    "thermostat, reading, 95 %": (
        THERMOSTAT_X,
        THERMOSTAT_Y,
        104.0,
        0.95,
        True,
        (103.995, 103.4, 104.6),
        5e-2,
    ),
    "thermostat, reading, 90 %": (
        THERMOSTAT_X,
        THERMOSTAT_Y,
        100.0,
        0.90,
        True,
        (100.11, 99.63, 100.59),
        5e-3,
    ),
    "chamber, mean, 99 %": (CHAMBER_X, CHAMBER_Y, 400.0, 0.99, False, (66.5, 65.07, 68.03), 5e-3),
}


@pytest.mark.parametrize("name", PRINTED)
def test_printed_intervals(name: str) -> None:
    """Place and interval as printed, for the line and for a single reading."""
    x, y, target, level, of_reading, expected, tolerance = PRINTED[name]
    found = target_week(x, y, target, level=level, of_reading=of_reading)

    place = 5e-2 if name.startswith("chamber") else max(tolerance, 5e-4) if "thermo" in name else tolerance
    assert found.week == pytest.approx(expected[0], abs=place)
    assert (found.low, found.high) == pytest.approx(expected[1:], abs=tolerance)
    assert found.is_bounded


def test_a_flat_noisy_line_has_no_bounds() -> None:
    """Where a slope of nothing is not excluded the interval has no bounds (Fieller 1954)."""
    found = target_week([1, 2, 3, 4, 5], [100, 101, 100, 102, 101], 120)

    assert found.slope_error_fraction > 1
    assert (found.low, found.high) == (-math.inf, math.inf)
    assert not found.is_bounded
