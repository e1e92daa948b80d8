"""Least squares gain rate against certified results of the NIST Statistical Reference Datasets.

Norris: data and certified values are read from the file ``Norris.dat`` that scipy carries for its own
tests (US Government work). NoInt1: data and certified values from memory.
"""

from __future__ import annotations

import math
import re
from pathlib import Path

import numpy as np
import pytest
import scipy.stats

from kneecase.recovery import gain_rate, least_squares_line

NORRIS = Path(scipy.stats.__file__).parent / "tests" / "data" / "nist_linregress" / "Norris.dat"


@pytest.fixture(scope="module")
def norris() -> dict[str, np.ndarray | float]:
    """Data and certified values as the file prints them."""
    text = NORRIS.read_text("ascii", errors="replace")
    b0 = re.search(r"^\s+B0\s+(-?\d\S*)\s+(\d\S*)", text, re.MULTILINE)
    b1 = re.search(r"^\s+B1\s+(-?\d\S*)\s+(\d\S*)", text, re.MULTILINE)
    residual = re.search(r"Standard Deviation\s+(\S+)\s*\n", text)
    rows = np.loadtxt(text.splitlines()[60:], dtype=float)
    assert b0 is not None
    assert b1 is not None
    assert residual is not None
    return {
        "weeks": rows[:, 1],
        "degrees": rows[:, 0],
        "intercept": float(b0[1]),
        "slope": float(b1[1]),
        "slope_se": float(b1[2]),
        "scatter": float(residual[1]),
    }


def test_norris_file_is_the_one_meant(norris: dict[str, np.ndarray | float]) -> None:
    """36 observations, and the certified slope that the file is known for."""
    assert np.size(norris["weeks"]) == 36
    assert norris["slope"] == 1.00211681802045


def test_norris_slope_start_and_scatter(norris: dict[str, np.ndarray | float]) -> None:
    """Slope, line at week 0 and scatter agree with the certified values to nine digits."""
    line = least_squares_line(norris["weeks"], norris["degrees"])

    assert line.deg_per_week == pytest.approx(norris["slope"], rel=1e-9)
    assert line.start_deg == pytest.approx(norris["intercept"], rel=1e-9)
    assert line.scatter_deg == pytest.approx(norris["scatter"], rel=1e-9)


def test_norris_interval(norris: dict[str, np.ndarray | float]) -> None:
    """The interval is the certified standard error times t of 34 degrees of freedom (2.0322, tables)."""
    rate = gain_rate(norris["weeks"], norris["degrees"], method="least squares")

    assert rate.low is not None
    assert rate.high is not None
    half = (rate.high - rate.low) / 2
    assert half / norris["slope_se"] == pytest.approx(2.0322, abs=5e-5)


def test_noint1_by_mirroring() -> None:
    """A line through the origin is our line through the readings and their mirror images.

    The mirrored data have mean 0, so slope and scatter are those of the regression without intercept, and
    the standard error is smaller by sqrt(2) with twice the readings. NIST NoInt1, certified slope
    2.07438016528926, standard error 0.0165289256198347, residual standard deviation 3.56753034006338.
    """
    x, y = np.arange(60.0, 71.0), np.arange(130.0, 141.0)
    line = least_squares_line(np.r_[x, -x], np.r_[y, -y])
    t20 = 2.0859634472658364  # t of 20 degrees of freedom at 95 %, tables: 2.086
    standard_error = (line.high - line.low) / (2 * t20) * math.sqrt(2)

    assert line.deg_per_week == pytest.approx(2.07438016528926, rel=1e-12)
    assert line.scatter_deg == pytest.approx(3.56753034006338, rel=1e-12)
    assert standard_error == pytest.approx(0.0165289256198347, rel=1e-9)
