"""Eliasziw, Young, Woodbury, Fryday-Field, Phys Ther 1994;74:777-788: the knee goniometer table.

29 subjects, one therapist, two goniometers, three readings each.  The readings are the file ``gonio.csv`` of
the PyPI package pyirr (used in tests only; neither its code nor its data is copied here).  The expected
numbers were recomputed from the readings with the algorithm of the R package irr and by an independent
analysis of variance; the article's own printed decimals could not be read (.945 for the reliability between
instruments is remembered, not read).
"""

from __future__ import annotations

import csv
import importlib.util
from pathlib import Path

import numpy as np
import pytest
from numpy.typing import NDArray

from kneecase.measures import (
    instrument_reliability,
    intraclass_correlation,
    minimal_detectable_change,
    within_subject_sd,
)

# name of the field, expected, decimals given
SINGLE = [
    ("sem_within", 0.925377, 6),
    ("sem_between_random", 1.728175, 6),
    ("sem_between_fixed", 1.439151, 6),
    ("variance_subjects", 51.379995, 6),
    ("variance_instruments", 0.915435, 6),
    ("variance_interaction", 1.214833, 6),
    ("variance_error", 0.856322, 6),
    ("reliability_between_random", 0.945066, 6),
    ("reliability_between_fixed", 0.961251, 6),
    ("reliability_within_random", 0.984249, 6),
    ("reliability_within_fixed", 0.983979, 6),
]
PAIRS = [
    ("instrument_means", (1.43678, 0.04598), 5),
    ("sem_within_each", (0.857690, 0.988439), 6),
    ("reliability_within_each", (0.986439, 0.982069), 6),
]
# instrument, form, expected to six decimals: one instrument's three readings as an n x 3 table
ICCS = [
    (0, "1,1", 0.986502),
    (0, "2,1", 0.986502),
    (0, "3,1", 0.986614),
    (1, "1,1", 0.981356),
    (1, "2,1", 0.981352),
    (1, "3,1", 0.980753),
]
# level, standard error field, expected to three decimals (recomputed with z rounded to 1.96 and 1.645, which
# moves only the fifth digit)
CHANGES = [
    (0.95, "sem_within", 2.565),
    (0.95, "sem_between_random", 4.790),
    (0.95, "sem_between_fixed", 3.989),
    (0.90, "sem_within", 2.153),
    (0.90, "sem_between_random", 4.020),
]


@pytest.fixture(scope="module")
def readings() -> NDArray[np.float64]:
    """The table as subjects x instruments x repeats [deg]."""
    found = importlib.util.find_spec("pyirr")
    assert found is not None
    assert found.submodule_search_locations is not None
    path = Path(found.submodule_search_locations[0], "data", "gonio.csv")
    with path.open(newline="", encoding="utf-8") as file:
        rows = list(csv.reader(file))[1:]
    return np.array([[float(cell) for cell in row[-6:]] for row in rows]).reshape(29, 2, 3)


@pytest.mark.parametrize(("field", "expected", "decimals"), SINGLE)
def test_components_and_errors(
    readings: NDArray[np.float64], field: str, expected: float, decimals: int
) -> None:
    """Variance components, standard errors and reliability come out as recomputed elsewhere."""
    found = getattr(instrument_reliability(readings), field)

    assert found == pytest.approx(expected, abs=0.5 * 10**-decimals)


@pytest.mark.parametrize(("field", "expected", "decimals"), PAIRS)
def test_each_instrument(
    readings: NDArray[np.float64], field: str, expected: tuple[float, float], decimals: int
) -> None:
    """Each instrument's own mean, error and reliability; the means differ by 1.39 degrees."""
    found = getattr(instrument_reliability(readings), field)

    assert found == pytest.approx(expected, abs=0.5 * 10**-decimals)


def test_mean_squares(readings: NDArray[np.float64]) -> None:
    """The analysis of variance itself: subjects, instruments, interaction, repeats."""
    expected = (312.780788, 84.143678, 4.500821, 0.856322)

    assert instrument_reliability(readings).mean_squares == pytest.approx(expected, abs=0.5e-6)


@pytest.mark.parametrize(("instrument", "form", "expected"), ICCS)
def test_intraclass_of_one_instrument(
    readings: NDArray[np.float64], instrument: int, form: str, expected: float
) -> None:
    """The usual single-reading forms on one instrument's three readings."""
    found = intraclass_correlation(readings[:, instrument, :], form)  # type: ignore[arg-type]

    assert found.value == pytest.approx(expected, abs=0.5e-6)


@pytest.mark.parametrize(("level", "field", "expected"), CHANGES)
def test_detectable_change(readings: NDArray[np.float64], level: float, field: str, expected: float) -> None:
    """The change beyond error within one instrument and between two."""
    sem = getattr(instrument_reliability(readings), field)

    assert minimal_detectable_change(sem, level) == pytest.approx(expected, abs=0.0005)


def test_one_instrument_is_the_one_way_error(readings: NDArray[np.float64]) -> None:
    """The within-subject standard deviation of one instrument equals its error in the whole table."""
    assert within_subject_sd(readings[:, 0, :]) == pytest.approx(0.857690, abs=0.5e-6)
