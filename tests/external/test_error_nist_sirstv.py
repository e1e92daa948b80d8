"""NIST StRD one-way analysis of variance, data set SiRstv: resistivity, 5 instruments by 5 readings.

The file with its certified values ships inside the scipy wheel (public domain).  The residual standard
deviation is the standard error of one reading; the ICC is the arithmetic of the certified mean squares.
"""

from __future__ import annotations

from importlib import resources

import numpy as np
import pytest
from numpy.typing import NDArray

from kneecase.measures import intraclass_correlation, within_subject_sd

CERTIFIED_RESIDUAL_SD = 1.04076068334656e-01
CERTIFIED_BETWEEN = 5.11462616000000e-02 / 4
CERTIFIED_WITHIN = 2.16636560000000e-01 / 20


@pytest.fixture(scope="module")
def table() -> NDArray[np.float64]:
    """Instruments by readings [ohm cm]."""
    path = resources.files("scipy.stats") / "tests" / "data" / "nist_anova" / "SiRstv.dat"
    rows = [line.split() for line in path.read_text("utf-8").splitlines()[60:] if line.strip()]
    pairs = [(int(group), float(value)) for group, value in rows]
    return np.array([[value for group, value in pairs if group == g] for g in range(1, 6)])


def test_residual_sd(table: NDArray[np.float64]) -> None:
    """Our within-subject standard deviation is the certified residual standard deviation."""
    assert table.shape == (5, 5)
    assert within_subject_sd(table) == pytest.approx(CERTIFIED_RESIDUAL_SD, rel=1e-8)


def test_one_way_icc(table: NDArray[np.float64]) -> None:
    """ICC(1,1) is what the certified mean squares give."""
    expected = (CERTIFIED_BETWEEN - CERTIFIED_WITHIN) / (CERTIFIED_BETWEEN + 4 * CERTIFIED_WITHIN)

    assert intraclass_correlation(table, "1,1").value == pytest.approx(expected, rel=1e-8)
    assert expected == pytest.approx(0.0348352, abs=0.5e-7)
