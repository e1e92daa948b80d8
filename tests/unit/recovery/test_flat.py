"""Plateau test: each verdict and its words."""

from __future__ import annotations

from typing import Any

import pytest

from kneecase.errors import InputError
from kneecase.recovery import Plateau, plateau

FLAT = ([4, 5, 6, 7, 8], [96, 97, 96, 97, 97])
RISING = ([4, 5, 6, 7, 8], [80, 88, 95, 104, 112])


def held_of(series: tuple[list[int], list[int]], **given: Any) -> Plateau:
    """The test with a useful rate of 2.5° a week and four weeks."""
    settings: dict[str, Any] = {
        "useful_deg_per_week": 2.5,
        "least_weeks": 4,
        "target_deg": 140,
        "error_sd": 1.8,
        **given,
    }
    return plateau(*series, **settings)


def test_a_flat_knee_short_of_its_target() -> None:
    """The upper end of the gain below the useful rate, long enough, and short: a plateau."""
    held = held_of(FLAT)

    assert held.verdict == "plateau"
    assert held.short_deg == 43.0
    assert held.words() == (
        "plateau: gains at most 1° a week, less than 2.5° a week, and 43° short of the target"
    )


def test_a_rising_knee() -> None:
    """The lower end at the useful rate or above: no plateau."""
    held = held_of(RISING)

    assert held.verdict == "no plateau"
    assert held.words() == "no plateau: gains 2.5° a week or more"


def test_a_wide_interval_cannot_tell() -> None:
    """An interval across the useful rate is never a plateau."""
    held = held_of(([4, 6, 8], [96, 99, 101]), error_sd=6.35)

    assert held.verdict == "cannot tell"
    assert "spans the useful rate of 2.5° a week" in held.words()


@pytest.mark.parametrize("series", [([4, 8], [96, 97]), ([5, 6, 7], [96, 97, 96])])
def test_too_early(series: tuple[list[int], list[int]]) -> None:
    """Two days, or a span shorter than asked for, are too early."""
    held = held_of(series)

    assert held.verdict == "too early"
    assert "4 weeks and three days of readings are needed" in held.words()


def test_target_reached() -> None:
    """At the target, or within what counts as reached, there is no plateau to speak of."""
    assert held_of(FLAT, target_deg=97).verdict == "target reached"
    assert held_of(FLAT, target_deg=102, within_deg=5).verdict == "target reached"
    assert held_of(FLAT, target_deg=102, within_deg=5, within_operator="<").verdict == "plateau"
    assert "as near as counts as reached" in held_of(FLAT, target_deg=97).words()


def test_near_the_target_cannot_tell() -> None:
    """A shortfall inside the error is neither reached nor a plateau."""
    held = held_of(FLAT, target_deg=104, margin_deg=9.4)

    assert held.verdict == "near the target"
    assert held.words() == ("cannot tell: 7° short of the target, inside the 9.4° that error alone can make")


def test_without_a_target_there_is_no_plateau() -> None:
    """A flat knee with nothing to be short of may be all the motion it has."""
    held = held_of(FLAT, target_deg=None)

    assert held.verdict == "no target"
    assert "no target to be short of is known" in held.words()


@pytest.mark.parametrize("series", [([], []), ([4], [96]), ([4, 4], [96, 97])])
def test_no_rate(series: tuple[list[int], list[int]]) -> None:
    """Without a rate there is no verdict."""
    held = held_of(series)

    assert held.verdict == "no rate"
    assert held.words().startswith("cannot tell: no rate: ")


def test_extension_is_short_when_it_lacks_more() -> None:
    """With better='lower' the shortfall is the angle above the target."""
    held = held_of(
        ([4, 5, 6, 7, 8], [9, 8, 9, 8, 9]),
        better="lower",
        target_deg=-3,
        useful_deg_per_week=1.75,
        error_sd=1.26,
    )

    assert held.verdict == "plateau"
    assert held.short_deg == 12.0


@pytest.mark.parametrize(
    ("given", "named"),
    [
        ({"useful_deg_per_week": 0}, "useful_deg_per_week must be above 0"),
        ({"least_weeks": 0}, "least_weeks must be above 0"),
        ({"margin_deg": -1}, "margin_deg must be at least 0"),
        ({"target_deg": float("nan")}, "target_deg must be a finite number"),
    ],
)
def test_refusals(given: dict[str, Any], named: str) -> None:
    """What cannot be is named."""
    with pytest.raises(InputError, match=named):
        held_of(FLAT, **given)
