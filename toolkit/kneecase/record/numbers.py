"""Numbers as people type them: decimal points and commas, a unit glued on, feet and inches.

Nothing is guessed.  ``1,234`` is a thousand in one country and a bit over one in another: it
is refused with both readings, unless the other numbers of the same file settle what a comma
means there.
"""

from __future__ import annotations

import math
import re
from collections.abc import Iterable
from dataclasses import dataclass
from functools import lru_cache
from typing import Literal

from kneecase.errors import InputError
from kneecase.record.problems import CellError
from kneecase.units import converted, typed_units

__all__ = ["DecimalMark", "Quantity", "decimal_mark", "number", "quantity"]

DecimalMark = Literal[".", ",", ""]
"""What the numbers of a file use: a point, a comma, or nothing settled (both, or neither)."""

_NUMBER = re.compile(
    r"([+\-−–]?)\s?((?:[0-9][0-9.,'’ \u00a0\u202f]*)?[0-9]|[0-9]*[.,][0-9]+)([.,]?)(e[+-]?[0-9]+)?", re.I
)
_WITH_UNIT = re.compile(rf"({_NUMBER.pattern})\s*([^0-9\s+\-−.,'’].*|['\"’]|)", re.I | re.S)
_PLAIN = re.compile(r"[+-]?[0-9]+(?:\.[0-9]+)?")
_FEET_INCHES = re.compile(
    r"([0-9]+)\s*(?:ft|foot|feet|'|′|’)[\s,-]*([0-9]+(?:[.,][0-9]+)?)\s*(?:in|inch|inches|\"|″|”|'')\.?", re.I
)
_GROUPED = re.compile(
    r"[0-9]{1,3}(?:(?:[ '’\u00a0\u202f][0-9]{3})+(?:[.,][0-9]+)?|(?:,[0-9]{3}){2,}(?:\.[0-9]+)?"
    r"|(?:\.[0-9]{3}){2,}(?:,[0-9]+)?)"
)
_LONGEST = 60
_THREE_DECIMALS = re.compile(r"([1-9][0-9]{0,2})([.,])([0-9]{3})")
_NO_NUMBER = frozenset(
    ("nan", "inf", "+inf", "-inf", "infinity", "-infinity", "na", "n/a", "null", "none", "-", "?")
)
_FOOT_CM, _INCH_CM = converted(1, "ft", "cm"), converted(1, "in", "cm")


@dataclass(frozen=True)
class Quantity:
    """A number in the unit wanted, with what was typed: the number's text and the unit's."""

    value: float
    raw_value: str
    raw_unit: str


def decimal_mark(texts: Iterable[str]) -> DecimalMark:
    """The decimal mark that the numbers of a file settle: those with other than three decimals.

    Examples
    --------
    >>> decimal_mark(["34,5", "1,234"]), decimal_mark(["34.5", "34,5"]), decimal_mark(["1,234"])
    (',', '', '')
    """
    marks: set[DecimalMark] = set()
    for text in set(texts):
        if "," in text or "." in text:
            found = re.match(r"\s*[+\-−–]?([0-9]*)([.,])([0-9]+)(?![0-9.,])", text)
            if found and (len(found[3]) != 3 or found[1] in ("", "0")):
                marks.add("." if found[2] == "." else ",")
    return marks.pop() if len(marks) == 1 else ""


@lru_cache(maxsize=20_000)
def number(text: str, mark: DecimalMark = "", name: str = "value") -> float:
    """The number a person typed, without a unit.

    Parameters
    ----------
    text : str
        ``"34.5"``, ``"34,5"``, ``"-3"``; a true minus sign counts as minus.
    mark : {".", ",", ""}
        The decimal mark of the file, where it is settled (:func:`decimal_mark`).
    name : str
        What the number is, for the sentence that refuses it.

    Raises
    ------
    InputError
        If it is no number, is not finite, has thousands separators, or can be read in two ways.

    Examples
    --------
    >>> number("34,5"), number("−3"), number("1.234")
    (34.5, -3.0, 1.234)
    """
    typed = text.strip()
    if len(typed) > _LONGEST:
        raise _no_number(typed, name)
    if _PLAIN.fullmatch(typed) and not (mark == "," and "." in typed):
        return _finite(float(typed), typed, name)
    found = _NUMBER.fullmatch(typed)
    if found is None:
        raise _no_number(typed, name)
    sign = "-" if found[1] in ("-", "−", "–") else ""
    digits = _decimal(found[2] + found[3], typed, mark, name)
    return _finite(float(f"{sign}{digits}{found[4] or ''}"), typed, name)


@lru_cache(maxsize=20_000)
def quantity(text: str, typed_unit: str, unit: str, mark: DecimalMark = "", name: str = "value") -> Quantity:
    """The number a person typed, in ``unit``; the unit may be glued to it or stand beside it.

    Parameters
    ----------
    text : str
        ``"34.5"``, ``"34.5 in"``, ``"110°"``, ``"98 ft-lb"``, ``"5 ft 8 in"``.
    typed_unit : str
        The unit typed in a cell of its own; blank means ``unit``, unless one is glued on.
    unit : str
        The unit wanted, one of :data:`kneecase.units.SUFFIXES`.

    Raises
    ------
    InputError
        If the number or the unit cannot be understood, or two units disagree.

    Examples
    --------
    >>> quantity("34.5 in", "", "cm").value, quantity("98", "ft-lb", "n_m").raw_unit
    (87.63, 'ft-lb')
    """
    typed = text.strip()
    if len(typed) > _LONGEST:
        raise _no_number(typed, name)
    feet = _FEET_INCHES.fullmatch(typed)
    if feet and unit in ("cm", "m"):
        return Quantity(_feet_and_inches(feet[1], feet[2], unit, name, typed), typed, "")
    raw_value, glued = _parts(typed)
    if glued and typed_unit and converted(1, glued, unit) != converted(1, typed_unit, unit):
        rule = f"must have one unit, and unit says {typed_unit!r}"
        raise CellError(name, rule, typed, "Leave one of the two out.")
    value = number(raw_value, mark, name)
    raw_unit = typed_unit or glued
    return Quantity(_converted(value, raw_unit, unit, name) if raw_unit else value, raw_value, raw_unit)


def _converted(value: float, raw_unit: str, unit: str, name: str) -> float:
    try:
        return converted(value, raw_unit, unit)
    except InputError:
        rule = f"must be in a unit that converts to {unit} ({', '.join(typed_units(unit))})"
        raise CellError(name, rule, raw_unit, "Is it in the wrong row?") from None


def _parts(typed: str) -> tuple[str, str]:
    """The number and the unit glued to it; the whole text where they cannot be told apart."""
    found = _WITH_UNIT.fullmatch(typed)
    return (found[1].strip(), found[6].strip()) if found else (typed, "")


def _decimal(digits: str, typed: str, mark: DecimalMark, name: str) -> str:
    """Digits with a decimal point, from digits with either mark; refused where they can mean two things."""
    if _GROUPED.fullmatch(digits):
        raise CellError(name, "must be written without thousands separators", typed, "Write plain digits.")
    marks = "".join(sign for sign in digits if sign in ",.")
    if len(marks) == 2 and marks[0] != marks[1]:
        raise _two_ways(_with_mark(digits, marks[1]), _with_mark(digits, marks[0]), typed, name)
    three = _THREE_DECIMALS.fullmatch(digits)
    if three and three[2] != mark and (three[2] == "," or mark == ","):
        raise _two_ways(f"{three[1]}.{three[3]}", three[1] + three[3], typed, name)
    if not re.fullmatch(r"[0-9]*[.,]?[0-9]*", digits):
        raise _no_number(typed, name)
    return digits.replace(",", ".")


def _with_mark(digits: str, mark: str) -> str:
    return "".join("." if sign == mark else sign for sign in digits if sign.isdigit() or sign == mark)


def _two_ways(one: str, other: str, typed: str, name: str) -> CellError:
    mend = "Write it with a decimal point and without thousands separators."
    return CellError(name, f"can be read in two ways: {one} or {other}", typed, mend)


def _no_number(typed: str, name: str) -> CellError:
    if typed.lower() in _NO_NUMBER or typed.startswith("#"):
        mend = (
            "If there is none, leave it blank and give the reason in missing (declined, unsafe or not done)."
        )
        return CellError(name, "must be a finite number", typed, mend)
    return CellError(name, "must be a number", typed, "Write the number alone and put words in note.")


def _finite(value: float, typed: str, name: str) -> float:
    if not math.isfinite(value):
        raise CellError(name, "must be a finite number", typed, "Is a digit too many?")
    return value


def _feet_and_inches(feet: str, inches: str, unit: str, name: str, typed: str) -> float:
    over = number(inches)
    if over >= 12:
        raise InputError(
            f"{name} must have fewer than 12 inches beside the feet, got {typed!r}. Write inches alone."
        )
    length_cm = int(feet) * _FOOT_CM + over * _INCH_CM
    return length_cm if unit == "cm" else length_cm / 100
