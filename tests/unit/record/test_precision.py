"""Which measurement error holds for a pair of readings: tester, device, position; the worst when unknown."""

from __future__ import annotations

import datetime as dt
import math

import pytest

from kneecase.evidence import PublishedValue
from kneecase.evidence.motion import COMMON_PRACTICE
from kneecase.record import Condition, ErrorRule, Precision, Reading, precision_of


def reading(measure, tester="", device="", value=100.0, **condition):
    """One reading of the operated knee."""
    return Reading(
        id=f"{measure}{tester}{device}{value}",
        date=dt.date(2026, 3, 2),
        measure=measure,
        side="left",
        value=value,
        unit="deg",
        tester=tester,
        device=device,
        condition=Condition(**condition),
    )


def change(measure, *pairs, **condition):
    """The minimal detectable change [deg or cm] at 95 % for readings by these (tester, device) pairs."""
    found = precision_of(measure, [reading(measure, *pair, **condition) for pair in pairs])
    return found.sem * math.sqrt(2) * 1.959963984540054


INCLINOMETER = ("KB", "inclinometer")
GONIOMETER = ("KB", "long-arm goniometer")


@pytest.mark.parametrize(
    ("pairs", "expected"),
    [
        ((INCLINOMETER, INCLINOMETER), 3.5),
        ((GONIOMETER, (" kb ", "Long-Arm Goniometer")), 3.5),
        ((INCLINOMETER, ("MO", "inclinometer")), 4.0),
        ((("", "inclinometer"), ("", "inclinometer")), 4.0),
        ((GONIOMETER, ("MO", "long-arm goniometer")), 10.4),
        ((INCLINOMETER, GONIOMETER), 10.4),
        ((("KB", ""), ("KB", "")), 10.4),
        ((INCLINOMETER, ("MO", "digital inclinometer")), 10.4),
    ],
)
def test_extension(pairs, expected):
    """Best for one tester with one device, worst wherever either differs or is not recorded."""
    assert change("knee_extension", *pairs) == pytest.approx(expected)


@pytest.mark.parametrize(
    ("pairs", "position", "expected"),
    [
        ((GONIOMETER, GONIOMETER), "supine", 5.0),
        ((GONIOMETER, ("MO", "long-arm goniometer")), "sitting", 9.4),
        ((GONIOMETER, ("MO", "long-arm goniometer")), "Sitting, edge of table", 9.4),
        ((GONIOMETER, ("MO", "long-arm goniometer")), "supine", 17.6),
        ((GONIOMETER, ("MO", "long-arm goniometer")), "", 17.6),
        ((GONIOMETER, INCLINOMETER), "sitting", 17.6),
    ],
)
def test_flexion(pairs, position, expected):
    """Between testers the position decides; a position that is not recorded takes the wider error."""
    assert change("knee_flexion", *pairs, position=position) == pytest.approx(expected)


@pytest.mark.parametrize(
    ("pairs", "expected"), [((("A", ""), ("A", "x")), 1.0), ((("A", ""), ("B", "")), 1.6)]
)
def test_girth(pairs, expected):
    """A tape is a tape: only the tester counts."""
    assert change("knee_girth", *pairs) == pytest.approx(expected)


def test_words_say_why():
    """Size, pair, reason and how the value is known, in one line."""
    found = precision_of("knee_girth", [reading("knee_girth", "A")])

    assert "same tester" in found.words()
    assert "unverified: from memory" in found.words()


def test_no_published_error():
    """Where nothing is published there is no error, and none is made up."""
    assert precision_of("thigh_girth", [reading("thigh_girth", "A")]) is None


def test_relative_error_follows_the_size():
    """An error in percent of the reading is scaled to the reading it is asked for."""
    value = PublishedValue(
        name="X_SEM_OURS",
        value=5.0,
        unit="pct",
        definition="standard error in percent of the reading",
        population="nobody",
        source=COMMON_PRACTICE,
        known="common practice",
    )
    rule = ErrorRule(published=value, is_a="sem", relative=True)
    found = Precision(sem=10.0, published=value, pair="same tester", rule=rule, relative_pct=5.0)

    assert found.sem_at(-100.0) == 5.0
    assert "5 % of the reading" in found.words()
    assert Precision(sem=10.0, published=value, pair="", rule=rule).sem_at(3.0) == 10.0
