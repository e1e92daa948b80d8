"""Neutral-zero notation: one sign rule, and a refusal wherever an entry can be read in two ways."""

from __future__ import annotations

import pytest

from kneecase.errors import InputError
from kneecase.record import neutral_zero
from kneecase.record.neutral_zero import extension_deg, extension_words, is_neutral_zero


@pytest.mark.parametrize(
    ("text", "extension", "flexion"),
    [
        ("5-0-140", -5, 140),
        ("0-5-120", 5, 120),
        ("140-0-5", -5, 140),
        ("120-5-0", 5, 120),
        ("0-0-135", 0, 135),
        ("135-0-0", 0, 135),
        ("5/0/140", -5, 140),
        ("5°-0°-140°", -5, 140),
        ("5–0–140", -5, 140),
        ("5 — 0 − 140 deg", -5, 140),
        (" 0 / 10 / 85 ", 10, 85),
        ("5 0 140", -5, 140),
        ("2.5-0-137,5", -2.5, 137.5),
        ("0-140", 0, 140),
        ("140-0", 0, 140),
        ("0-0-25", 0, 25),
        ("10-0-10", -10, 10),
        ("0-40-40", 40, 40),
        ("20-0-90", -20, 90),
    ],
)
def test_an_entry_with_one_reading_is_read(text: str, extension: float, flexion: float) -> None:
    """Hyperextension is negative, lacking extension positive, whichever end was written first."""
    assert neutral_zero(text) == (extension, flexion)


@pytest.mark.parametrize(
    ("text", "one", "other"),
    [
        ("5-140", "hyperextends 5° and flexes to 140°", "lacks 5° and flexes to 140°"),
        ("5-0-4", "hyperextends 5° and flexes to 4°", "hyperextends 4° and flexes to 5°"),
        ("5-10-120", "hyperextends 5° and flexes to 120°", "lacks 10° and flexes to 120°"),
        ("0-0-5", "straight and flexes to 5°", "hyperextends 5° and flexes to 0°"),
        ("20-0-10", "hyperextends 20° and flexes to 10°", "hyperextends 10° and flexes to 20°"),
    ],
)
def test_an_entry_with_two_readings_is_refused_and_both_are_shown(text: str, one: str, other: str) -> None:
    """The sign of extension is never guessed."""
    with pytest.raises(InputError, match="two ways") as caught:
        neutral_zero(text)
    assert one in str(caught.value)
    assert other in str(caught.value)


@pytest.mark.parametrize(
    "text", ["0-120-5", "5-120-0", "0-5-0", "60-0-50", "0-0-200", "40-0-100", "90-80-100"]
)
def test_an_impossible_entry_is_refused(text: str) -> None:
    """Flexion below extension, or an end beyond what a knee can do."""
    with pytest.raises(InputError, match="must have a zero"):
        neutral_zero(text)


@pytest.mark.parametrize("text", ["140", "-5-0-140", "a-b-c", "", "5-0-140-3", "5--0--140", None, 140])
def test_what_is_no_such_notation_is_refused(text: object) -> None:
    """A sign, a single number or words are not neutral-zero notation."""
    with pytest.raises(InputError, match="neutral-zero"):
        neutral_zero(text)  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("text", "angle"),
    [
        ("lacks 5", 5),
        ("Lacking 2,5°", 2.5),
        ("lack 5 deg", 5),
        ("hyperextends 3", -3),
        ("Hyperextension 3 degrees", -3),
        ("hyperextends 0", 0),
        ("straight", 0),
        ("lacks -5", None),
        ("5", None),
        ("flexes 5", None),
    ],
)
def test_extension_in_words(text: str, angle: float | None) -> None:
    """Words carry the sign; anything else is not words."""
    assert extension_deg(text) == angle


def test_extension_words_and_back() -> None:
    """What people see can be typed again."""
    assert [extension_words(angle) for angle in (5, -3, 0)] == ["lacks 5°", "hyperextends 3°", "straight"]
    assert [extension_words(angle) for angle in (0.02, -0.02)] == ["straight", "straight"]
    assert [extension_deg(extension_words(angle)) for angle in (5.0, -3.0, 0.0)] == [5, -3, 0]


def test_the_shape_alone_is_recognised() -> None:
    """A range typed as one value has the shape, a negative number has not."""
    assert is_neutral_zero("110-115")
    assert not is_neutral_zero("-5")
    assert not is_neutral_zero("110")
