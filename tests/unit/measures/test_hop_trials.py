"""The score of one limb: mean or best of what counts, and everything else kept beside."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
import pytest

from kneecase.errors import InputError
from kneecase.measures import (
    HOP_ADMINISTRATIONS,
    combined_symmetry_pct,
    hop_administration,
    hop_distance_pct,
    hop_score,
    hop_symmetry,
    share_passing_all_pct,
)
from kneecase.measures.hop_trials import better_way, limb_trials
from kneecase.record import Case, Reading, measure_named

Read = Callable[..., Reading]


def test_arrays_run_the_same_lines() -> None:
    """Rows of trials give one score a row, the same as each row alone."""
    rows = np.array([[132.0, 135.0], [150.0, 148.0]])

    for statistic in ("mean", "best"):
        together = hop_score(rows, statistic=statistic)
        assert np.array_equal(together, [hop_score(list(row), statistic=statistic) for row in rows])
    assert np.array_equal(hop_score(rows, statistic="best", better="lower"), [132.0, 148.0])
    assert np.array_equal(combined_symmetry_pct(np.array([[90.0, 90, 90, 94], [80, 80, 80, 84]])), [91, 81])


def test_choices_are_named_when_unknown() -> None:
    """An unknown statistic or direction is refused with what is allowed."""
    with pytest.raises(InputError, match="'mean' or 'best'"):
        hop_score([1.0], statistic="median")  # type: ignore[arg-type]
    with pytest.raises(InputError, match="'higher' or 'lower'"):
        hop_score([1.0], better="neither")  # type: ignore[arg-type]
    with pytest.raises(InputError, match="better way"):
        better_way(measure_named("body_mass"))
    with pytest.raises(InputError, match="reid-2007"):
        hop_administration("somebody-1999")


@pytest.mark.parametrize("indices", [[90.0, 91.0, 92.0], [], 90.0, [90.0, 91.0, 92.0, -1.0]])
def test_the_mean_of_four_needs_four(indices: object) -> None:
    """Three indices, or a bad one, make no mean of four."""
    with pytest.raises(InputError):
        combined_symmetry_pct(indices)  # type: ignore[arg-type]


def test_metres_among_centimetres_are_refused_where_impossible() -> None:
    """A length of zero, or a missing distance, gives no percentage."""
    assert hop_distance_pct(np.array([85.5, 171.0]), body_length_cm=171.0).tolist() == [50.0, 100.0]
    with pytest.raises(InputError, match="body_length_cm"):
        hop_distance_pct(150.0, body_length_cm=0.0)
    with pytest.raises(InputError, match="distance_cm"):
        hop_distance_pct(float("nan"), body_length_cm=171.0)


def test_a_long_battery_is_rarely_passed_whole() -> None:
    """Five tests that 90 of 100 pass are all passed by 59; one test by the 90; nobody passes zero tests."""
    assert share_passing_all_pct(90.0, tests=5) == pytest.approx(59.049)
    assert share_passing_all_pct(90.0, tests=1) == pytest.approx(90.0)
    assert share_passing_all_pct(np.array([90.0, 100.0]), tests=2).tolist() == pytest.approx([81.0, 100.0])
    with pytest.raises(InputError, match="pass_pct"):
        share_passing_all_pct(101.0, tests=2)
    with pytest.raises(InputError, match="tests"):
        share_passing_all_pct(90.0, tests=0)


def test_lost_practice_and_missing_are_kept_and_not_scored(reading: Read) -> None:
    """Only the scored trials make the score; the rest stays, counted."""
    rows = [
        reading("single_hop", "left", 160, trial=1, status="practice"),
        reading("single_hop", "left", 132, trial=2),
        reading("single_hop", "left", 170, trial=3, status="lost"),
        reading("single_hop", "left", 135, trial=4),
        reading("single_hop", "left", None, trial=5, missing="declined"),
        reading("single_hop", "right", 150, trial=1),
    ]
    limb = limb_trials(rows, limb="involved", side="left", unit="cm", statistic="mean", better="higher")

    assert limb.value == 133.5
    assert limb.scored == (132.0, 135.0)
    assert limb.practice == (160.0,)
    assert limb.lost == 1
    assert limb.missing == ("declined",)
    assert limb.spread == 3.0
    assert len(limb.readings) == 5
    assert limb.words() == (
        "involved limb (left): 133.5 cm (mean of 132, 135), trials 3 cm apart, 1 lost landing not scored, "
        "1 practice not scored"
    )


def test_no_scored_trial_gives_no_score(reading: Read) -> None:
    """Two lost landings are not a zero: there is no score, and the words say why."""
    rows = [reading("single_hop", "left", 140, trial=t, status="lost") for t in (1, 2)]
    limb = limb_trials(rows, limb="involved", side="left", unit="cm", statistic="mean", better="higher")

    assert limb.value is None
    assert limb.spread is None
    assert limb.words() == "involved limb (left): no score, no scored trial, 2 lost landings not scored"


@pytest.mark.parametrize("id", HOP_ADMINISTRATIONS)
def test_each_way_of_giving_the_tests_says_what_it_does_not_say(
    id: str, reading: Read, case: Callable[..., Case]
) -> None:
    """A named way describes itself whole, carries its source, and an answer stores it."""
    way = hop_administration(id)
    rows = [
        reading(way.tests[0], side, value, administration=id)
        for side, value in (("left", 30), ("right", 32), ("left", 31), ("right", 33))
    ]
    test = hop_symmetry(case(*rows)).tests[0]

    assert way.id in way.words()
    assert way.source.key
    assert "not said" in way.words() or id == "gustavsson-2006"
    assert test.administration == id
    assert test.statistic == (way.statistic or "mean")
    assert set(way.evidence) <= set(test.evidence)
