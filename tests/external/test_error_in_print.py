"""Printed standard errors and the printed changes beyond error that belong to them, and one printed index.

Each row is (source, standard error, level, printed change, last printed digit).  Where a print used z = 1.64,
or rounded its input, the exact z of kneecase lands outside half a digit; the row says so and the check then
is that the discrepancy is exactly that.
"""

from __future__ import annotations

import math

import pytest

from kneecase.measures import minimal_detectable_change

PRINTED = [
    ("guideline 2010, 6-m timed hop, MDC95 (read)", 0.06, 0.95, 0.17, 0.01),
    ("Kivlan 2013, medial triple hop, MDC (read second-hand)", 7.51, 0.95, 20.8, 0.1),
    ("Munro & Herrington 2010, balance reach, SDD (abstract)", 2.21, 0.95, 6.13, 0.01),
    ("Munro & Herrington 2010, balance reach, SDD (abstract)", 2.94, 0.95, 8.15, 0.01),
    ("PLoS One 2020, isokinetic torque, SRD% (abstract)", 2.54, 0.95, 7.04, 0.01),
    ("Dingenen 2019, hops, SDD% (abstract)", 2.6, 0.95, 7.2, 0.1),
]

# source, standard error, level, printed, last digit, why the exact z does not reach it, z or input that does
OFF = [
    ("Reid 2007, MDC90 (abstract)", 3.04, 0.90, 7.05, 0.01, "print used z = 1.64", 1.64),
    ("Reid 2007, MDC90 (abstract)", 5.59, 0.90, 12.96, 0.01, "print used z = 1.64", 1.64),
]
ROUNDED_INPUT = [
    ("PLoS One 2020, isokinetic torque, SRD% (abstract)", 6.93, 19.22, 0.01, 0.005),
    ("Dingenen 2019, hops, SDD% (abstract)", 4.1, 11.3, 0.1, 0.05),
]


@pytest.mark.parametrize(("source", "sem", "level", "printed", "digit"), PRINTED)
def test_printed_change(source: str, sem: float, level: float, printed: float, digit: float) -> None:
    """The change beyond error, to half the last printed digit."""
    assert minimal_detectable_change(sem, level) == pytest.approx(printed, abs=digit / 2)


@pytest.mark.parametrize(("source", "sem", "level", "printed", "digit", "why", "z"), OFF)
def test_printed_with_another_z(
    source: str, sem: float, level: float, printed: float, digit: float, why: str, z: float
) -> None:
    """A print with a rounded z: that z gives the print; the exact one differs by the ratio of the two."""
    exact = minimal_detectable_change(sem, level)

    assert z * math.sqrt(2) * sem == pytest.approx(printed, abs=digit / 2 + 1e-9)
    assert abs(exact - printed) > digit / 2
    assert exact * z / 1.6448536269514722 == pytest.approx(printed, abs=digit / 2 + 1e-9)


@pytest.mark.parametrize(("source", "sem", "printed", "digit", "input_half_digit"), ROUNDED_INPUT)
def test_printed_from_an_unrounded_input(
    source: str, sem: float, printed: float, digit: float, input_half_digit: float
) -> None:
    """A print made from an error with more digits than it shows: the print lies within what they allow."""
    low = minimal_detectable_change(sem - input_half_digit) - digit / 2
    high = minimal_detectable_change(sem + input_half_digit) + digit / 2

    assert low <= printed <= high
    assert minimal_detectable_change(sem) != pytest.approx(printed, abs=digit / 2)
