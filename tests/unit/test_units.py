"""Typed units come in once, and numbers go out as people write them."""

from __future__ import annotations

import pytest

from kneecase.errors import InputError
from kneecase.units import SUFFIXES, converted, number_text, quantity_text, typed_units, unit_sign


def test_a_unit_converts_to_itself_unchanged():
    """Typing the canonical unit must not touch the number."""
    for unit in SUFFIXES:
        spelling = typed_units(unit)[0]
        assert converted(12.34, spelling, unit) == 12.34


@pytest.mark.parametrize(
    ("value", "typed", "unit", "expected"),
    [(1, "ft", "cm", 30.48), (0.5, "m", "cm", 50), (250, "ms", "s", 0.25), (7, "days", "weeks", 1)],
)
def test_common_conversions(value, typed, unit, expected):
    """Everyday units come out right."""
    assert converted(value, typed, unit) == pytest.approx(expected, rel=1e-12)


def test_capitals_and_spaces_do_not_matter():
    """People type CM, Ft-Lb and ' in '."""
    assert converted(3, " IN ", "cm") == pytest.approx(7.62)
    assert converted(98.6, "°F", "celsius") == pytest.approx(37)


def test_a_unit_of_another_kind_is_refused_with_what_is_allowed():
    """Kilograms are no distance, and the sentence says what would be."""
    with pytest.raises(InputError, match=r"converts to cm \(cm, mm, m, in.*got 'kg'"):
        converted(3, "kg", "cm")


def test_an_unknown_canonical_unit_is_refused():
    """The list of units is closed."""
    with pytest.raises(InputError, match="unit must be one of"):
        typed_units("furlong")
    with pytest.raises(InputError, match="unit must be one of"):
        unit_sign("furlong")


def test_celsius_also_takes_fahrenheit():
    """The door for temperatures lists both scales."""
    assert "°F" in typed_units("celsius")


def test_numbers_for_people():
    """No trailing zeros, a true minus sign, no minus zero."""
    assert number_text(-0.04) == "0"
    assert number_text(1234.5) == "1234.5"
    assert quantity_text(-3, "deg") == "−3°"
    assert quantity_text(88.25, "pct") == "88.2%"
    assert quantity_text(36.6, "celsius") == "36.6 °C"
    assert quantity_text(0.95, "fraction", 2) == "0.95"


def test_one_is_singular():
    """One point, two points."""
    assert [quantity_text(n, "points") for n in (1, -1, 2, 1.5)] == [
        "1 point",
        "−1 point",
        "2 points",
        "1.5 points",
    ]
    assert quantity_text(1, "s") == "1 s"
