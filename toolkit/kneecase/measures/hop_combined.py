"""The mean of the four classic hop indices, when all four are of one day."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any, cast

import numpy as np
from numpy.typing import NDArray

from kneecase.answers import Finding
from kneecase.errors import InputError
from kneecase.measures.accepted import accepted
from kneecase.measures.hop_tests import HopTest
from kneecase.measures.index_error import COMBINED_SEM
from kneecase.measures.symmetry import symmetry_band
from kneecase.units import number_text

__all__ = ["combined_symmetry", "combined_symmetry_pct"]

_FOUR = ("single_hop", "timed_hop_6m", "triple_hop", "crossover_hop")


def combined_symmetry_pct(
    indices_pct: NDArray[np.float64] | list[float] | tuple[float, ...],
) -> float | NDArray[np.float64]:
    """Mean of the four classic hop indices [%]: single, 6-m timed, triple and crossover.

    Looked at for its smaller error; it hides a weak test behind strong ones, so no line is set on it here.

    Formula: the arithmetic mean of four indices.

    Parameters
    ----------
    indices_pct : array of float, shape (..., 4)
        The four limb symmetry indices along the last axis [%].

    Returns
    -------
    float or array of float
        Their mean [%].

    Raises
    ------
    InputError
        If there are not four, or one is missing or negative.

    Notes
    -----
    That the overall score is the plain mean is known from memory, not read.

    References
    ----------
    reid-2007

    Examples
    --------
    >>> combined_symmetry_pct([90.0, 92.0, 94.0, 96.0])
    93.0
    """
    values = accepted("indices_pct", cast(Any, indices_pct), "%", low=0.0)
    if np.ndim(values) == 0 or np.shape(values)[-1] != len(_FOUR):
        raise InputError(f"indices_pct must hold the four indices, got {indices_pct!r}. Is a test missing?")
    mean = np.mean(values, axis=-1)
    return float(mean) if np.ndim(mean) == 0 else cast("NDArray[np.float64]", mean)


def combined_symmetry(tests: Sequence[HopTest], level: float) -> Finding:
    """The mean of the four with its error band, or unknown with the reason."""
    label = "mean of the four hop tests"
    four = {test.measure: test for test in tests if test.measure in _FOUR}
    indices = [test.value for test in four.values() if test.value is not None]
    why = _why_not(four, len(indices))
    if why:
        return Finding(label=label, value=None, unit="pct", verdict="unknown", words=why)
    value = cast(float, combined_symmetry_pct(indices))
    low, high = symmetry_band(value, COMBINED_SEM.number, level)
    return Finding(
        label=label,
        value=value,
        unit="pct",
        low=low,
        high=high,
        level=level,
        words="no line is set on the mean: a strong test would hide a weak one",
        inputs=tuple(f"{test.label}: {number_text(test.value or 0.0, 2)} %" for test in four.values()),
        formula="arithmetic mean of the four indices (from memory, unverified)",
        error=f"standard error of the mean of four {COMBINED_SEM.quantity()}, {COMBINED_SEM.population}",
        evidence=(COMBINED_SEM,),
    )


def _why_not(four: dict[str, HopTest], known: int) -> str:
    if known < len(_FOUR):
        return f"no mean: {known} of the four indices are known"
    if len({test.date for test in four.values()}) > 1:
        return "no mean: the four tests are of different days"
    return ""
