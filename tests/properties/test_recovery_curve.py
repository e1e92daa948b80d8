"""What must hold of recovery curves whatever the readings."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from kneecase.recovery import fit_recovery, recovery_prior

COURSES = recovery_prior("knee_flexion", other_side=140, graft="patellar tendon").courses
READINGS = st.lists(
    st.tuples(st.integers(1, 150), st.integers(30, 150)), min_size=1, max_size=8, unique_by=lambda r: r[0]
)
TARGET = st.integers(60, 150)


def fitted(readings: list[tuple[int, int]]):  # type: ignore[no-untyped-def]
    """The fit of readings given by day and degree."""
    days, values = zip(*sorted(readings), strict=True)
    return fit_recovery(np.array(days) / 7, values, sem=2.0, courses=COURSES)


@settings(derandomize=True, max_examples=60, deadline=None)
@given(READINGS, TARGET)
def test_chances_are_chances_and_hang_together(readings: list[tuple[int, int]], target: int) -> None:
    """Between 0 and 1; a higher target is never likelier; never is the rest of ever."""
    fit = fitted(readings)
    by = fit.chance_by(target, 10)

    assert 0 <= by <= 1
    assert fit.chance_by(target + 5, 10) <= by + 1e-12
    assert fit.chance_never(target) == pytest.approx(1 - fit.chance_by(target, math.inf))
    assert 0 <= fit.chance_stiff <= 1


@settings(derandomize=True, max_examples=60, deadline=None)
@given(READINGS, TARGET)
def test_weeks_are_in_order(readings: list[tuple[int, int]], target: int) -> None:
    """A larger chance takes at least as long, and a higher target too."""
    fit = fitted(readings)
    weeks, higher = fit.week_of(target), fit.week_of(target + 10)

    assert weeks[0] <= weeks[1] <= weeks[2]
    assert all(a <= b + 1e-2 for a, b in zip(weeks, higher, strict=True) if math.isfinite(a))


@settings(derandomize=True, max_examples=40, deadline=None)
@given(READINGS)
def test_bands_are_nested(readings: list[tuple[int, int]]) -> None:
    """A higher level gives a wider band, and a reading scatters more than the curve."""
    fit = fitted(readings)
    inner, outer = fit.at([2, 8, 30], level=0.5), fit.at([2, 8, 30], level=0.95)
    reading = fit.at([2, 8, 30], level=0.95, reading=True)

    assert (outer.low <= inner.low + 1e-6).all()
    assert (outer.high >= inner.high - 1e-6).all()
    assert (reading.high - reading.low >= outer.high - outer.low).all()


@settings(derandomize=True, max_examples=40, deadline=None)
@given(READINGS)
def test_the_order_of_readings_does_not_matter(readings: list[tuple[int, int]]) -> None:
    """The same readings in another order give the same answer."""
    days, values = zip(*sorted(readings, reverse=True), strict=True)
    other = fit_recovery(np.array(days) / 7, values, sem=2.0, courses=COURSES)

    assert other.chance_by(125, 9) == pytest.approx(fitted(readings).chance_by(125, 9), abs=1e-9)
