"""Unit conversions against the exact definitions.

Source: NIST Special Publication 811 (2008), appendix B.8: 1 in = 2.54 cm, 1 ft = 0.3048 m,
1 lb = 0.453 592 37 kg, 1 lbf = 4.448 222 N, 1 lbf·ft = 1.355 818 N·m, °C = (°F − 32)/1.8
(values from memory), and the same constants in scipy.constants.
"""

from __future__ import annotations

import math

import pytest
from scipy import constants

from kneecase.units import converted


@pytest.mark.parametrize(
    ("typed", "unit", "expected", "half_digit"),
    [
        ("in", "cm", 2.54, 0),
        ("ft", "m", 0.3048, 0),
        ("lb", "kg", 0.45359237, 0),
        ("lbf", "n", 4.448222, 5e-7),
        ("ft-lb", "n_m", 1.355818, 5e-7),
        ("in-lb", "n_m", 0.1129848, 5e-8),
    ],
)
def test_printed_factor(typed, unit, expected, half_digit):
    """One of the typed unit is the printed factor, to half its last digit."""
    assert converted(1.0, typed, unit) == pytest.approx(expected, abs=half_digit or 1e-15)


@pytest.mark.parametrize(
    ("typed", "unit", "si"),
    [
        ("in", "cm", constants.inch * 100),
        ("ft", "cm", constants.foot * 100),
        ("lb", "kg", constants.lb),
        ("lbf", "n", constants.lbf),
        ("kgf", "n", constants.kgf),
        ("ft-lb", "n_m", constants.lbf * constants.foot),
        ("rad", "deg", math.degrees(1)),
    ],
)
def test_same_as_scipy_constants(typed, unit, si):
    """The factor equals the one in scipy.constants."""
    assert converted(1.0, typed, unit) == pytest.approx(si, rel=1e-12)


@pytest.mark.parametrize(("fahrenheit", "celsius"), [(32, 0), (98.6, 37), (104, 40), (212, 100)])
def test_fahrenheit(fahrenheit, celsius):
    """Fixed points of the scale."""
    assert converted(fahrenheit, "F", "celsius") == pytest.approx(celsius, abs=1e-12)
