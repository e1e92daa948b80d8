"""Numbers and units as typed: read one way, or refused with the ways shown."""

from __future__ import annotations

import pytest

from kneecase.errors import InputError
from kneecase.record.numbers import Quantity, decimal_mark, number, quantity


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("34.5", 34.5),
        ("34,5", 34.5),
        ("+5", 5),
        ("-3", -3),
        ("−3", -3),
        ("–3,25", -3.25),
        ("5.", 5),
        (".5", 0.5),
        (",5", 0.5),
        ("0,325", 0.325),
        ("1.234", 1.234),
        ("1234,567", 1234.567),
        ("1e3", 1000),
        ("1.5E-1", 0.15),
        ("007", 7),
    ],
)
def test_a_number_that_reads_one_way_is_read(text: str, value: float) -> None:
    """Point or comma, true minus or dash."""
    assert number(text) == value


@pytest.mark.parametrize(
    ("text", "mark", "one", "other"),
    [
        ("1,234", "", "1.234", "1234"),
        ("1,234", ".", "1.234", "1234"),
        ("1.234", ",", "1.234", "1234"),
        ("1.234,5", "", "1234.5", "1.2345"),
        ("1,234.5", "", "1234.5", "1.2345"),
    ],
)
def test_a_number_with_two_readings_is_refused_and_both_are_shown(
    text: str, mark: str, one: str, other: str
) -> None:
    """A comma or a point before three digits may separate thousands."""
    with pytest.raises(InputError, match="two ways") as caught:
        number(text, mark)  # type: ignore[arg-type]
    assert one in str(caught.value)
    assert other in str(caught.value)


def test_the_file_settles_what_a_comma_means() -> None:
    """One number with other than three decimals decides; two marks decide nothing."""
    assert decimal_mark(["2,31", "1,234", "120"]) == ","
    assert decimal_mark(["2.31 s", "1.234"]) == "."
    assert decimal_mark(["0,325"]) == ","
    assert decimal_mark(["2,31", "2.31"]) == decimal_mark(["1,234", "abc", "1,2,3", ""]) == ""
    assert number("1,234", ",") == 1.234
    assert number("1.234", ".") == 1.234


@pytest.mark.parametrize(
    ("text", "rule"),
    [
        ("nan", "finite"),
        ("NaN", "finite"),
        ("inf", "finite"),
        ("-Infinity", "finite"),
        ("#N/A", "finite"),
        ("#DIV/0!", "finite"),
        ("1e999", "finite"),
        ("", "must be a number"),
        ("about 5", "must be a number"),
        (">120", "must be a number"),
        ("110-115", "must be a number"),
        ("12 5", "must be a number"),
        ("１２", "must be a number"),
        ("1_000", "must be a number"),
        ("1.2.3", "must be a number"),
        ("9" * 100_000, "must be a number"),
        ("1 234", "thousands"),
        ("1\u00a0234,5", "thousands"),
        ("1'234", "thousands"),
        ("1,234,567", "thousands"),
        ("1.234.567,8", "thousands"),
    ],
)
def test_what_is_no_number_is_refused_by_its_rule(text: str, rule: str) -> None:
    """The sentence shows what came, shortened."""
    with pytest.raises(InputError, match=rule) as caught:
        number(text)
    assert len(str(caught.value)) < 300


@pytest.mark.parametrize(
    ("text", "typed_unit", "unit", "expected"),
    [
        ("34.5 in", "", "cm", Quantity(34.5 * 2.54, "34.5", "in")),
        ("34.5in", "in", "cm", Quantity(34.5 * 2.54, "34.5", "in")),
        ('14"', "", "cm", Quantity(14 * 2.54, "14", '"')),
        ("110°", "", "deg", Quantity(110, "110", "°")),
        ("120 deg", "degrees", "deg", Quantity(120, "120", "degrees")),
        ("34,5", "", "cm", Quantity(34.5, "34,5", "")),
        ("90 %", "", "pct", Quantity(90, "90", "%")),
        ("1,52 m", "", "cm", Quantity(152, "1,52", "m")),
        ("5 ft 8 in", "", "cm", Quantity(68 * 2.54, "5 ft 8 in", "")),
        ("5'8.5\"", "", "cm", Quantity(68.5 * 2.54, "5'8.5\"", "")),
        ("1 ft 2 in", "", "m", Quantity(14 * 0.0254, "1 ft 2 in", "")),
        ("92 °F", "", "celsius", Quantity((92 - 32) / 1.8, "92", "°F")),
    ],
)
def test_a_unit_glued_on_or_beside_is_converted(
    text: str, typed_unit: str, unit: str, expected: Quantity
) -> None:
    """What was typed is kept beside the converted number."""
    found = quantity(text, typed_unit, unit)
    assert found.value == pytest.approx(expected.value, rel=1e-14)
    assert (found.raw_value, found.raw_unit) == (expected.raw_value, expected.raw_unit)


def test_foot_pounds_become_newton_metres() -> None:
    """98 ft-lb by the exact definitions of foot, pound and standard gravity."""
    exact = 98 * 0.3048 * 0.45359237 * 9.80665
    assert quantity("98 ft-lb", "", "n_m").value == pytest.approx(exact, rel=1e-14)
    assert quantity("98", "ft-lb", "n_m").value == pytest.approx(exact, rel=1e-14)


@pytest.mark.parametrize(
    ("text", "typed_unit", "rule"),
    [
        ("34.5 in", "cm", "must have one unit"),
        ("34.5 in", "lb", "converts to cm"),
        ("12 lb", "", "converts to cm"),
        ("12", "lb", "converts to cm"),
        ("5 ft 13 in", "", "fewer than 12 inches"),
        ("34.5 in or so", "", "converts to cm"),
        ("x" * 100_000, "", "must be a number"),
    ],
)
def test_a_unit_that_does_not_fit_is_refused(text: str, typed_unit: str, rule: str) -> None:
    """Another kind of unit, or two of them."""
    with pytest.raises(InputError, match=rule):
        quantity(text, typed_unit, "cm")
