"""Numbers in the words people use: extension without its sign, a grade by its name."""

from __future__ import annotations

import datetime as dt

import pytest

from kneecase.answers import Finding, reading_words
from kneecase.record import Reading


@pytest.mark.parametrize(
    ("measure", "value", "words"),
    [
        ("knee_extension", 5.0, "lacks 5°"),
        ("knee_extension", -3.0, "hyperextends 3°"),
        ("knee_extension", 0.0, "straight"),
        ("knee_flexion", 118.0, "118°"),
    ],
)
def test_extension_is_shown_in_words(measure, value, words):
    """Nobody has to know the sign rule to read an extension."""
    row = Reading(
        id="m1", date=dt.date(2026, 4, 13), measure=measure, side="left", value=value, unit="deg", tester="KB"
    )

    assert reading_words(row) == f"2026-04-13, left, {words}, KB"


def test_a_grade_is_shown_by_its_name():
    """The word stands for the number; without a number it is still unknown."""
    assert Finding(label="effusion", value=1.0, unit="grade", shown="trace").quantity() == "trace"
    assert Finding(label="effusion", value=None, unit="grade", shown="trace").quantity() == "unknown"
