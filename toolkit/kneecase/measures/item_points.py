"""The items of a form or sheet, accepted by number: whole points within each item's own range."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

import numpy as np
from numpy.typing import NDArray

from kneecase.errors import InputError
from kneecase.units import number_text

__all__ = ["item_points", "mean_of_answered", "plain_score"]


def item_points(
    name: str, items: Any, ranges: Sequence[tuple[float, float]], *, whole: bool = True
) -> NDArray[np.float64]:
    """The items as an array of floats, a missing one as NaN, once each is known to lie in its range.

    Parameters
    ----------
    name : str
        The argument, as the caller wrote it.
    items : array of float, shape (k,) or (n, k)
        Points by item number; None or NaN is a missing item [points].
    ranges : sequence of (float, float)
        Least and most points of each of the k items [points].
    whole : bool
        Whether only whole numbers exist.

    Returns
    -------
    array of float
        The same points [points].

    Raises
    ------
    InputError
        If the number of items is wrong or a point lies outside its item's range.

    Examples
    --------
    >>> item_points("items", [0, None, 4], [(0, 4)] * 3)
    array([ 0., nan,  4.])
    """
    array = _numbers(name, items, len(ranges))
    low, high = np.asarray(ranges, dtype=np.float64).T
    bad = np.isinf(array) | (array < low) | (array > high)
    if whole:
        bad |= np.isfinite(array) & (array != np.floor(array))
    if bad.any():
        place = np.unravel_index(int(np.argmax(bad)), array.shape)
        least, most = ranges[int(place[-1])]
        kind = "a whole number" if whole else "a number"
        raise InputError(
            f"{name}: item {int(place[-1]) + 1} must be {kind} between {number_text(least)} and "
            f"{number_text(most)} points, got {float(array[place])!r}. Is it another form or another item?"
        )
    return array


def mean_of_answered(points: NDArray[np.float64], min_answered: float) -> NDArray[np.float64]:
    """Mean over the items that were answered; NaN where fewer than needed are."""
    answered = (~np.isnan(points)).sum(axis=-1)
    mean = np.nansum(points, axis=-1) / np.maximum(answered, 1)
    return np.where((answered >= min_answered) & (answered > 0), mean, np.nan)


def plain_score(result: NDArray[np.float64]) -> float | NDArray[np.float64]:
    """A plain float for one form, an array for several."""
    return float(result) if np.ndim(result) == 0 else np.asarray(result, dtype=np.float64)


def _numbers(name: str, items: Any, count: int) -> NDArray[np.float64]:
    rule = f"{name} must be {count} items in the order of their numbers, a missing one as None"
    try:
        raw = np.asarray(items)
        unsuitable = raw.dtype.kind not in "iuf" and (
            raw.dtype.kind != "O" or any(isinstance(x, str | bool) for x in raw.flat)
        )
        array = raw.astype(np.float64) if not unsuitable else None
    except (TypeError, ValueError) as error:
        raise InputError(f"{rule}, got {items!r}.") from error
    if array is None or array.ndim not in (1, 2) or array.shape[-1] != count:
        raise InputError(f"{rule}, got {items!r}.")
    return array
