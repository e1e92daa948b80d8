"""What must hold for any hop trials: swapping limbs, lost landings, order of rows, worse and better."""

from __future__ import annotations

import datetime as dt
from collections.abc import Sequence
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from kneecase.measures import (
    HOP_TESTS,
    HopTest,
    hop_distance_pct,
    hop_score,
    hop_symmetry,
    preoperative_capacity_pct,
    quadriceps_index_pct,
    share_passing_all_pct,
    torque_n_m,
    torque_per_mass_n_m_per_kg,
)
from kneecase.record import Athlete, Case, Condition, Reading, Surgery, measure_named

SURGERY = dt.date(2026, 3, 2)
DAY = SURGERY + dt.timedelta(days=200)
MEASURES = st.sampled_from(HOP_TESTS)
TRIALS = st.lists(st.floats(1.5, 60.0), min_size=1, max_size=5)
STATISTIC = st.sampled_from(["mean", "best"])
EXTRA = st.lists(st.tuples(st.sampled_from(["left", "right"]), st.floats(1.5, 60.0)), max_size=4)
SCORES = st.floats(0.01, 1e4)


def rows(measure: str, left: Sequence[float], right: Sequence[float]) -> list[Reading]:
    """Scored trials of both sides."""
    return [
        row(measure, side, value, f"{side}{i}")
        for side, values in (("left", left), ("right", right))
        for i, value in enumerate(values)
    ]


def row(measure: str, side: str, value: float, id: str, status: str = "scored") -> Reading:
    """One trial of the day."""
    return Reading(
        id=id,
        date=DAY,
        measure=measure,
        side=side,  # type: ignore[arg-type]
        value=value,
        unit=measure_named(measure).unit,
        status=status,  # type: ignore[arg-type]
        condition=Condition(administration="reid-2007"),
    )


def result_of(readings: Sequence[Reading], side: str = "left", **choices: Any) -> HopTest:
    """The one row of a case whose operated side is ``side``."""
    case = Case(
        athlete=Athlete(pseudonym="Wren", age_years=24.0, skeletally_mature=True),
        surgery=Surgery(
            date=SURGERY,
            side=side,  # type: ignore[arg-type]
            harvest_side=side,  # type: ignore[arg-type]
            earlier={"left": (), "right": ()},
        ),
        readings=tuple(readings),
    )
    (test,) = hop_symmetry(case, **choices).tests
    return test


def index(test: HopTest) -> float:
    """The index of a row that has one."""
    assert test.lsi_pct is not None
    return test.lsi_pct


@given(MEASURES, TRIALS, TRIALS, STATISTIC)
def test_swapping_limbs_inverts_the_index(
    measure: str, left: list[float], right: list[float], statistic: str
) -> None:
    """Operated left or operated right, the two indices multiply to 100 × 100."""
    readings = rows(measure, left, right)
    one = index(result_of(readings, "left", statistic=statistic))
    other = index(result_of(readings, "right", statistic=statistic))

    assert one * other == pytest.approx(1e4, rel=1e-9)


@given(MEASURES, TRIALS, TRIALS, EXTRA, st.sampled_from(["lost", "practice"]))
def test_what_is_not_scored_changes_nothing(
    measure: str, left: list[float], right: list[float], extra: list[tuple[str, float]], status: str
) -> None:
    """Any lost landings or practice trials leave index, chance and verdict as they were."""
    readings = rows(measure, left, right)
    more = [row(measure, side, value, f"x{i}", status) for i, (side, value) in enumerate(extra)]
    plain, with_more = result_of(readings), result_of([*readings, *more])

    assert with_more.lsi_pct == plain.lsi_pct
    assert (with_more.chance, with_more.verdict) == (plain.chance, plain.verdict)
    assert with_more.involved.lost + with_more.uninvolved.lost == (len(more) if status == "lost" else 0)


@given(MEASURES, TRIALS, TRIALS, STATISTIC, st.floats(0.01, 1.0), st.integers(0, 4))
def test_a_worse_involved_trial_never_raises_the_index(
    measure: str, left: list[float], right: list[float], statistic: str, change: float, place: int
) -> None:
    """Make one trial of the operated limb shorter, or slower: the index does not rise."""
    slower = measure_named(measure).better == "lower"
    worse = list(left)
    worse[place % len(worse)] += change if slower else -change
    before = index(result_of(rows(measure, left, right), statistic=statistic))
    after = index(result_of(rows(measure, worse, right), statistic=statistic))

    assert after <= before * (1 + 1e-12)


@given(MEASURES, TRIALS, TRIALS, st.randoms(use_true_random=False))
def test_the_order_of_rows_does_not_matter(
    measure: str, left: list[float], right: list[float], random: Any
) -> None:
    """Rows in any order give the same row."""
    readings = rows(measure, left, right)
    shuffled = list(readings)
    random.shuffle(shuffled)
    plain, other = result_of(readings), result_of(shuffled)

    assert index(other) == pytest.approx(index(plain), rel=1e-12)
    assert other.verdict == plain.verdict


@given(MEASURES, TRIALS, TRIALS, st.floats(50, 120))
def test_more_than_implies_at_least(measure: str, left: list[float], right: list[float], line: float) -> None:
    """Whatever passes > passes ≥, as observed and as a verdict."""
    readings = rows(measure, left, right)
    strict = result_of(readings, threshold_pct=line, operator=">")
    loose = result_of(readings, threshold_pct=line, operator="≥")

    assert loose.passes_as_observed or not strict.passes_as_observed
    assert loose.verdict == "met" or strict.verdict != "met"


@given(MEASURES, TRIALS, TRIALS)
def test_verdict_and_chance_agree(measure: str, left: list[float], right: list[float]) -> None:
    """Met needs a chance above 90 %, not met one below 10 %; without an error the observed side decides."""
    test = result_of(rows(measure, left, right))

    if test.chance is None:
        assert test.verdict == ("met" if test.passes_as_observed else "not met")
        assert test.low is None
    else:
        expected = "met" if test.chance > 0.9 else "not met" if test.chance < 0.1 else "too close to call"
        assert test.verdict == expected
        assert test.low is not None
        assert test.high is not None
        assert test.low <= index(test) <= test.high


@given(MEASURES, TRIALS, TRIALS, st.sampled_from(["harvest", "injury", "child"]))
def test_a_doubtful_reference_never_meets(
    measure: str, left: list[float], right: list[float], doubt: str
) -> None:
    """Against a limb that cannot be trusted no index meets anything, whatever the trials."""
    case = Case(
        athlete=Athlete(pseudonym="Wren", age_years=12.0 if doubt == "child" else 24.0),
        surgery=Surgery(
            date=SURGERY,
            side="left",
            harvest_side="right" if doubt == "harvest" else "left",
            earlier={"right": ("ankle sprain",) if doubt == "injury" else ()},
        ),
        readings=tuple(rows(measure, left, right)),
    )

    assert hop_symmetry(case).tests[0].verdict in ("unknown", "not met")


@given(TRIALS)
def test_best_is_at_least_the_mean(trials: list[float]) -> None:
    """The longest is no shorter than the mean and the fastest no slower, and both are among the trials."""
    mean = hop_score(trials)

    assert hop_score(trials, statistic="best") >= mean * (1 - 1e-12)
    assert hop_score(trials, statistic="best", better="lower") <= mean * (1 + 1e-12)
    assert hop_score(trials, statistic="best") in trials


@given(SCORES, SCORES, st.floats(0.05, 1.0), st.floats(20, 200), st.floats(0.1, 10))
def test_strength_scales(own: float, other: float, arm_m: float, mass_kg: float, factor: float) -> None:
    """Torque is linear in force and lever arm; an index does not know the unit; mass divides."""
    torque = torque_n_m(own, arm_m)

    assert torque_n_m(own * factor, arm_m) == pytest.approx(torque * factor)
    assert quadriceps_index_pct(own * factor, other * factor) == pytest.approx(
        quadriceps_index_pct(own, other)
    )
    assert torque_per_mass_n_m_per_kg(torque, mass_kg) * mass_kg == pytest.approx(torque)
    assert preoperative_capacity_pct(own, other, "lower") == pytest.approx(
        1e4 / preoperative_capacity_pct(own, other)
    )
    assert hop_distance_pct(own * factor, body_length_cm=other * factor) == pytest.approx(
        hop_distance_pct(own, body_length_cm=other)
    )


@given(st.floats(0, 100), st.integers(1, 12))
def test_a_longer_battery_is_never_easier(share: float, tests: int) -> None:
    """One more test never raises the share that passes all, and the share never exceeds that of one test."""
    here = share_passing_all_pct(share, tests=tests)

    assert share_passing_all_pct(share, tests=tests + 1) <= here <= share + 1e-9
