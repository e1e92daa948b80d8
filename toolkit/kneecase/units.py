"""The closed list of units, and the one door where typed units are converted.

Inside kneecase every number is a plain float in the unit its name ends in.
People type inches, pounds, foot-pounds and degrees Fahrenheit: those are
converted once, on reading, by :func:`converted`.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from types import MappingProxyType

from kneecase.errors import InputError

__all__ = ["SUFFIXES", "converted", "number_text", "quantity_text", "typed_units", "unit_sign"]

SUFFIXES: Mapping[str, str] = MappingProxyType(
    {
        "deg": "°",
        "deg_per_s": "°/s",
        "deg_per_week": "° a week",
        "cm": "cm",
        "m": "m",
        "kg": "kg",
        "n": "N",
        "n_m": "N·m",
        "n_m_per_kg": "N·m/kg",
        "s": "s",
        "min": "min",
        "days": "days",
        "weeks": "weeks",
        "years": "years",
        "pct": "%",
        "fraction": "",
        "points": "points",
        "reps": "reps",
        "grade": "",
        "celsius": "°C",
    }
)
"""Every unit kneecase knows, as the suffix of a name, and the sign shown after a number."""

# Exact definitions: inch 25.4 mm, pound 0.45359237 kg, standard gravity 9.80665 m/s2
# (NIST Special Publication 811, appendix B).
_INCH_CM = 2.54
_POUND_KG = 0.45359237
_GRAVITY = 9.80665
_POUND_FORCE_N = _POUND_KG * _GRAVITY

_TYPED: dict[str, dict[str, float]] = {
    "deg": {"deg": 1, "degree": 1, "degrees": 1, "°": 1, "rad": math.degrees(1)},
    "deg_per_s": {"deg_per_s": 1, "°/s": 1, "deg/s": 1},
    "cm": {
        "cm": 1,
        "mm": 0.1,
        "m": 100,
        "in": _INCH_CM,
        "inch": _INCH_CM,
        "inches": _INCH_CM,
        '"': _INCH_CM,
        "″": _INCH_CM,
        "ft": 12 * _INCH_CM,
        "feet": 12 * _INCH_CM,
        "foot": 12 * _INCH_CM,
    },
    "m": {"m": 1, "cm": 0.01, "mm": 0.001, "in": _INCH_CM / 100, "ft": 0.12 * _INCH_CM},
    "kg": {"kg": 1, "g": 0.001, "lb": _POUND_KG, "lbs": _POUND_KG, "pounds": _POUND_KG},
    "n": {"n": 1, "kgf": _GRAVITY, "lbf": _POUND_FORCE_N, "lb": _POUND_FORCE_N, "lbs": _POUND_FORCE_N},
    "n_m": {
        "n_m": 1,
        "nm": 1,
        "n·m": 1,
        "n.m": 1,
        "n*m": 1,
        "n-m": 1,
        "n m": 1,
        **dict.fromkeys(
            ("ft-lb", "ft-lbs", "ft·lb", "ft lb", "ft.lb", "lb-ft", "lbf-ft", "ft-lbf", "ftlb"),
            _POUND_FORCE_N * _INCH_CM * 12 / 100,
        ),
        **dict.fromkeys(("in-lb", "in-lbs", "in·lb", "in-lbf"), _POUND_FORCE_N * _INCH_CM / 100),
    },
    "n_m_per_kg": {"n_m_per_kg": 1, "nm/kg": 1, "n·m/kg": 1, "n.m/kg": 1},
    "s": {"s": 1, "sec": 1, "seconds": 1, "ms": 0.001, "min": 60},
    "min": {"min": 1, "minutes": 1, "s": 1 / 60, "h": 60},
    "days": {"days": 1, "d": 1, "day": 1, "weeks": 7},
    "weeks": {"weeks": 1, "wk": 1, "week": 1, "days": 1 / 7},
    "pct": {"pct": 1, "%": 1, "percent": 1},
    "fraction": {"fraction": 1},
    "points": {"points": 1, "point": 1, "pts": 1, "score": 1},
    "reps": {"reps": 1, "rep": 1, "count": 1, "hops": 1},
    "grade": {"grade": 1},
    "celsius": {"celsius": 1, "c": 1, "°c": 1},
}
_COUNTED = ("days", "weeks", "years", "points", "reps")
_FAHRENHEIT = ("f", "°f", "fahrenheit", "degf")


def typed_units(unit: str) -> tuple[str, ...]:
    """Spellings a person may type for ``unit``, the canonical one first.

    Raises
    ------
    InputError
        If ``unit`` is not one of :data:`SUFFIXES`.
    """
    if unit not in SUFFIXES:
        raise InputError(f"unit must be one of {', '.join(SUFFIXES)}, got {unit!r}.")
    spellings = tuple(_TYPED.get(unit, {unit: 1}))
    return (*spellings, "°F") if unit == "celsius" else spellings


def converted(value: float, typed_unit: str, unit: str) -> float:
    """The number ``value`` in ``unit``, when it was typed in ``typed_unit``.

    Parameters
    ----------
    value : float
        The number as typed [typed_unit].
    typed_unit : str
        The unit as typed: ``"in"``, ``"lb"``, ``"ft-lb"``, ``"°F"``; capitals do not matter.
    unit : str
        The unit wanted, one of :data:`SUFFIXES`.

    Returns
    -------
    float
        The same quantity [unit].

    Raises
    ------
    InputError
        If the typed unit is unknown or measures something else.

    Examples
    --------
    >>> converted(10.0, "in", "cm")
    25.4
    >>> round(converted(92.0, "°F", "celsius"), 4)
    33.3333
    """
    spelling = typed_unit.strip().lower()
    if unit == "celsius" and spelling in _FAHRENHEIT:
        return (value - 32.0) / 1.8
    allowed = ", ".join(typed_units(unit))
    factor = _TYPED.get(unit, {unit: 1}).get(spelling)
    if factor is None:
        raise InputError(
            f"unit must be one that converts to {unit} ({allowed}), got {typed_unit!r}. "
            "Is it in the wrong row?"
        )
    return value if factor == 1 else value * factor


def unit_sign(unit: str) -> str:
    """The sign shown after a number in ``unit``, for people."""
    if unit not in SUFFIXES:
        raise InputError(f"unit must be one of {', '.join(SUFFIXES)}, got {unit!r}.")
    return SUFFIXES[unit]


def number_text(value: float, digits: int = 1) -> str:
    """``value`` for people: at most ``digits`` decimals, no trailing zeros, a true minus sign.

    Examples
    --------
    >>> number_text(-3.04), number_text(120.0), number_text(0.004)
    ('−3', '120', '0')
    """
    text = f"{value:.{digits}f}"
    if "." in text:
        text = text.rstrip("0").rstrip(".")
    if text == "-0":
        text = "0"
    return text.replace("-", "−")


def quantity_text(value: float, unit: str, digits: int = 1) -> str:
    """``value`` with the sign of its unit, for people.

    Examples
    --------
    >>> quantity_text(118.25, "deg"), quantity_text(7.4, "deg_per_week"), quantity_text(1, "weeks")
    ('118.2°', '7.4° a week', '1 week')
    """
    sign = unit_sign(unit)
    number = number_text(value, digits)
    if number in ("1", "−1") and unit in _COUNTED:
        sign = sign.removesuffix("s")
    gap = "" if sign.startswith(("°", "%")) or not sign else " "
    if unit == "celsius":
        gap = " "
    return f"{number}{gap}{sign}"
