"""What a calculator accepts: finite numbers within their limits, or one sentence that says why not."""

from __future__ import annotations

import math
from typing import Any, TypeVar, cast

import numpy as np
from numpy.typing import NDArray

from kneecase.errors import InputError
from kneecase.units import number_text

__all__ = ["Quantity", "accepted", "plain"]

Quantity = TypeVar("Quantity", float, NDArray[np.float64])
"""A plain float or an array of floats: kernels run the same lines for both."""


def accepted(
    name: str,
    value: Quantity,
    unit: str = "",
    *,
    low: float = -math.inf,
    high: float = math.inf,
    above: float | None = None,
    cure: str = "",
) -> Quantity:
    """``value`` as a float, or as an array of floats, once it is known to be finite and within its limits.

    Parameters
    ----------
    name : str
        The argument, as the caller wrote it.
    value : float or array of float
        What came [unit].
    unit : str
        Unit named in the sentence.
    low, high : float
        Limits that may be reached [unit].
    above : float, optional
        Limit that must be exceeded [unit].
    cure : str
        The likely way to mend it.

    Returns
    -------
    float or array of float
        The same numbers [unit].

    Raises
    ------
    InputError
        If a number is missing, not finite, or outside the limits; nothing is clipped.

    Examples
    --------
    >>> accepted("girth_cm", 38, "cm", above=0)
    38.0
    """
    rule = _rule(unit, low, high, above)
    array = _numbers(name, value, rule, cure)
    bad = ~np.isfinite(array) | (array < low) | (array > high)
    if above is not None:
        bad |= ~(array > above)
    if bad.any():
        place = np.unravel_index(int(np.argmax(bad)), array.shape)
        where = f" at place {', '.join(str(int(i)) for i in place)}" if array.ndim else ""
        raise InputError(_sentence(name, rule, f"{float(array[place])!r}{where}", cure))
    return cast(Quantity, float(array) if array.ndim == 0 else array)


def plain(result: Any, like: Quantity) -> Quantity:  # noqa: ARG001 - ``like`` carries the type
    """``result`` as a plain float where it is a single number, else as an array of floats.

    Parameters
    ----------
    result : float or array of float
        What the arithmetic gave.
    like : float or array of float
        An argument of the kernel, whose kind the result shares.

    Returns
    -------
    float or array of float
        The same numbers.

    Examples
    --------
    >>> plain(np.sqrt(4.0), 4.0)
    2.0
    """
    array = np.asarray(result, dtype=np.float64)
    return cast(Quantity, float(array) if array.ndim == 0 else array)


def _numbers(name: str, value: Any, rule: str, cure: str) -> NDArray[np.float64]:
    try:
        raw = np.asarray(value)
    except ValueError as error:
        raise InputError(_sentence(name, rule, repr(value), cure)) from error
    if raw.dtype.kind not in "iuf" and not (raw.dtype.kind == "O" and raw.size == 0):
        raise InputError(_sentence(name, rule, repr(value), cure))
    return raw.astype(np.float64)


def _rule(unit: str, low: float, high: float, above: float | None) -> str:
    gap = f" {unit}" if unit else ""
    if above is not None:
        top = f" and at most {number_text(high, 3)}" if math.isfinite(high) else ""
        return f"must be above {number_text(above, 3)}{top}{gap}"
    if math.isfinite(low) and math.isfinite(high):
        return f"must lie between {number_text(low, 3)} and {number_text(high, 3)}{gap}"
    if math.isfinite(low):
        return f"must be at least {number_text(low, 3)}{gap}"
    if math.isfinite(high):
        return f"must be at most {number_text(high, 3)}{gap}"
    return f"must be a finite number{f' in {unit}' if unit else ''}"


def _sentence(name: str, rule: str, came: str, cure: str) -> str:
    return f"{name} {rule}, got {came}.{f' {cure}' if cure else ''}"
