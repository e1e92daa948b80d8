"""Neutral-zero notation and words for extension, as two angles with one sign rule.

The notation writes hyperextension, zero and flexion (``5-0-140``), or zero, what extension
lacks and flexion (``0-5-120``); some write flexion first.  Kneecase keeps 0 straight,
positive = lacks extension, negative = hyperextends.  Where an entry can be read in two ways
it is refused and both ways are shown, because the two differ in the sign that matters most.
"""

from __future__ import annotations

import re

from kneecase.record.catalogue import measure_named
from kneecase.record.problems import CellError
from kneecase.units import number_text

__all__ = ["extension_deg", "extension_words", "is_neutral_zero", "neutral_zero"]

_NUMBER = r"[0-9]+(?:[.,][0-9]+)?"
_GAP = r"\s*(?:°|deg)?\s*[-–—−/:\s]\s*"
_TWO_OR_THREE = re.compile(rf"\s*({_NUMBER}){_GAP}({_NUMBER})(?:{_GAP}({_NUMBER}))?\s*(?:°|deg)?\s*", re.I)
_WORDS = re.compile(
    rf"\s*(?:(lacks?|lacking)|(hyperextends?|hyperextension))\s*({_NUMBER})\s*(?:°|deg|degrees?)?\s*", re.I
)
_LARGEST_LIKELY_HYPEREXTENSION = -measure_named("knee_extension").plausible[0]
_LARGEST_HYPEREXTENSION = -measure_named("knee_extension").hard[0]
_LARGEST_FLEXION = measure_named("knee_flexion").hard[1]
_RULE = (
    f"must have a zero, hyperextension of at most {_LARGEST_HYPEREXTENSION:g}°, flexion of at most "
    f"{_LARGEST_FLEXION:g}°, and flexion not below extension"
)
_MEND = "Write all three numbers: 5-0-140 hyperextends 5°, 0-5-120 lacks 5°."
_TWO_ROWS = "Or write two rows: knee_extension and knee_flexion."

_Motion = tuple[float, float]


def is_neutral_zero(text: str) -> bool:
    """Whether ``text`` has the shape of neutral-zero motion: two or three numbers with dashes between."""
    return _TWO_OR_THREE.fullmatch(text) is not None


def neutral_zero(text: str) -> tuple[float, float]:
    """Extension and flexion [deg] of an entry in neutral-zero notation.

    Parameters
    ----------
    text : str
        ``"5-0-140"`` (hyperextends 5), ``"0-5-120"`` (lacks 5), or with flexion first
        (``"140-0-5"``, ``"120-5-0"``); dashes, slashes or spaces between the numbers.

    Returns
    -------
    tuple of float
        Extension [deg] (0 straight, positive lacks extension, negative hyperextends) and
        flexion [deg].

    Raises
    ------
    InputError
        If the entry is no such notation, is impossible, or can be read in two ways.

    Examples
    --------
    >>> neutral_zero("5-0-140"), neutral_zero("0-5-120")
    ((-5.0, 140.0), (5.0, 120.0))
    >>> neutral_zero("140/0/5"), neutral_zero("120 – 5 – 0")
    ((-5.0, 140.0), (5.0, 120.0))
    """
    found = _TWO_OR_THREE.fullmatch(text) if isinstance(text, str) else None
    if found is None:
        rule = "must be three numbers in neutral-zero notation, such as 5-0-140"
        raise CellError("motion", rule, str(text), _TWO_ROWS)
    numbers = [float(part.replace(",", ".")) for part in found.groups() if part is not None]
    readings = _readings(*numbers)
    if len(readings) == 1:
        return readings[0]
    if not readings:
        raise CellError("motion", _RULE, text, _MEND)
    shown = " or ".join(f"{extension_words(low)} and flexes to {high:g}°" for low, high in readings)
    raise CellError("motion", f"can be read in two ways: {shown}", text, f"{_MEND} {_TWO_ROWS}")


def extension_deg(text: str) -> float | None:
    """Extension [deg] from words: ``"lacks 5"`` is 5, ``"hyperextends 3"`` is -3, ``"straight"`` is 0.

    ``None`` where the text is none of these.

    Examples
    --------
    >>> extension_deg("lacks 5°"), extension_deg("Hyperextends 3"), extension_deg("straight")
    (5.0, -3.0, 0.0)
    """
    if text.strip().lower() == "straight":
        return 0.0
    found = _WORDS.fullmatch(text)
    if found is None:
        return None
    angle = float(found[3].replace(",", "."))
    return angle if found[1] or angle == 0 else -angle


def extension_words(angle_deg: float) -> str:
    """An extension angle [deg] in words, without its sign; straight where it would be shown as 0.

    Examples
    --------
    >>> extension_words(5), extension_words(-3), extension_words(0.04)
    ('lacks 5°', 'hyperextends 3°', 'straight')
    """
    size = number_text(abs(angle_deg))
    if size == "0":
        return "straight"
    return f"{'lacks' if angle_deg > 0 else 'hyperextends'} {size}°"


def _readings(*numbers: float) -> list[_Motion]:
    """Every way the numbers can be read; one is an answer, none is impossible, two are ambiguous."""
    if len(numbers) == 2:
        first, last = numbers
        if 0 in numbers:
            return _around_zero(first, last)
        low, high = sorted(numbers)
        return _without_zero((-low, high), (low, high))
    first, middle, last = numbers
    if middle == 0:
        return _around_zero(first, last)
    if first == 0 or last == 0:
        flexion = max(first, last)
        return [(middle, flexion)] if _is_possible((middle, flexion)) else []
    low, high = sorted((first, last))
    return _without_zero((-low, high), (middle, high))


def _without_zero(*pairs: _Motion) -> list[_Motion]:
    """Both ways to read an entry that has no zero; never one alone, for its form is broken already."""
    possible = [pair for pair in pairs if _is_possible(pair)]
    return possible if len(possible) > 1 else []


def _around_zero(first: float, last: float) -> list[_Motion]:
    """Hyperextension and flexion on either side of a zero, whichever was written first."""
    pairs = dict.fromkeys([(-first, last), (-last, first)])
    possible = [
        (extension + 0.0, flexion) for extension, flexion in pairs if _is_possible((extension, flexion))
    ]
    if len(possible) == 2 and 0 in (first, last):
        return [pair for pair in possible if -pair[0] <= _LARGEST_LIKELY_HYPEREXTENSION]
    return possible


def _is_possible(motion: _Motion) -> bool:
    extension, flexion = motion
    return -_LARGEST_HYPEREXTENSION <= extension <= flexion <= _LARGEST_FLEXION
