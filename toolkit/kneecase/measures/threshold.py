"""A value held against a threshold: met or not on the unrounded number, and how sure that is."""

from __future__ import annotations

import numpy as np

from kneecase.errors import InputError
from kneecase.measures.accepted import Quantity, accepted, plain

__all__ = ["chance_true_value_passes", "is_met"]

_OPERATORS = {"≥": "≥", ">=": "≥", ">": ">", "≤": "≤", "<=": "≤", "<": "<"}


def is_met(value: float, threshold: float, operator: str) -> bool:
    """Whether ``value`` meets ``threshold``, decided on the unrounded value.

    Parameters
    ----------
    value, threshold : float
        The number and the line it is held against [any one unit].
    operator : {"≥", ">", "≤", "<"}
        How the source states it (``">="`` and ``"<="`` are read too): exactly 90 meets ≥ 90 but not > 90.

    Returns
    -------
    bool
        Whether the value lies on the passing side.

    Raises
    ------
    InputError
        If a number is missing or the operator unknown.

    Examples
    --------
    >>> is_met(89.597, 90.0, "≥"), is_met(90.0, 90.0, "≥"), is_met(90.0, 90.0, ">")
    (False, True, False)
    """
    value, threshold = accepted("value", value), accepted("threshold", threshold)
    sign = _operator(operator)
    if sign == "≥":
        return value >= threshold
    if sign == ">":
        return value > threshold
    return value <= threshold if sign == "≤" else value < threshold


def chance_true_value_passes(value: Quantity, sem: Quantity, threshold: float, operator: str) -> Quantity:
    """Chance that the true value passes a threshold [fraction], given one observed value and its error.

    Looked at beside a pass or a fail near the line: it says how much of a verdict is measurement noise.

    Formula: the share of a normal distribution with mean ``value`` and standard deviation ``sem`` that lies
    on the passing side of ``threshold``.

    Parameters
    ----------
    value : float or array of float
        Observed value [any one unit].
    sem : float or array of float
        Its standard error of measurement [the same unit]; with 0 the observed value decides.
    threshold : float
        [the same unit]
    operator : {"≥", ">", "≤", "<"}
        How the source states the threshold.

    Returns
    -------
    float or array of float
        Between 0 and 1 [fraction].

    Raises
    ------
    InputError
        If a number is missing, the error negative or the operator unknown.

    Notes
    -----
    Assumes that before the test every true value was equally likely (a flat prior) and that the error is
    normal with a known size. It is a statement about measurement error only, never about the risk of injury.

    Examples
    --------
    >>> round(chance_true_value_passes(92.0, 3.49, 90.0, "≥"), 3)
    0.717
    >>> chance_true_value_passes(90.0, 0.0, 90.0, ">")
    0.0
    """
    from scipy.special import ndtr

    value, sem = accepted("value", value), accepted("sem", sem, low=0.0)
    threshold = accepted("threshold", threshold)
    sign = _operator(operator)
    above = value - threshold if sign in ("≥", ">") else threshold - value
    exact = np.where(above > 0, 1.0, np.where((above == 0) & (sign in ("≥", "≤")), 1.0, 0.0))
    spread = np.where(sem == 0, 1.0, sem)
    chance = np.where(sem == 0, exact, ndtr(above / spread))
    return plain(chance, value)


def _operator(operator: str) -> str:
    if operator not in _OPERATORS:
        raise InputError(f"operator must be ≥, >, ≤ or <, got {operator!r}. Which one does the source print?")
    return _OPERATORS[operator]
