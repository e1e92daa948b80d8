"""Worked examples of hop and strength arithmetic: OURS, worked by hand from invented trials.

No journal prints raw trials with the indices that follow, so none of these validates anything against a
published case; the one printed example is P1, a sports clinic's hand-out (second-hand).
"""

from __future__ import annotations

import math

import pytest

from kneecase.errors import InputError
from kneecase.evidence import published_value
from kneecase.measures import (
    hamstring_quadriceps_fraction,
    hop_score,
    is_met,
    jump_height_cm,
    limb_symmetry_index,
    minimal_detectable_change,
    quadriceps_index_pct,
    symmetry_band,
    torque_n_m,
    torque_per_mass_n_m_per_kg,
)

FOUR_DIGITS = 5e-5


def index(involved: list[float], uninvolved: list[float], statistic: str = "mean") -> float:
    """Symmetry of two limbs' trials by one statistic."""
    return float(
        limb_symmetry_index(
            hop_score(involved, statistic=statistic),  # type: ignore[arg-type]
            hop_score(uninvolved, statistic=statistic),  # type: ignore[arg-type]
        )
    )


def test_p1_printed_triple_hop() -> None:
    """A sports clinic's hand-out (second-hand): triple hop 392 against 400 cm prints as 98 %."""
    assert limb_symmetry_index(392.0, 400.0) == pytest.approx(98, abs=0.5)


def test_g1_mean_and_best_decide_differently() -> None:
    """Ours: the same four trials fail ≥ 90 by their mean and meet it by their best, and > 90 by neither."""
    mean = index([132, 135], [150, 148])
    best = index([132, 135], [150, 148], "best")

    assert mean == pytest.approx(89.5973, abs=FOUR_DIGITS)
    assert best == pytest.approx(90.0, abs=FOUR_DIGITS)
    assert not is_met(mean, 90.0, "≥")
    assert is_met(best, 90.0, "≥")
    assert not is_met(best, 90.0, ">")


def test_g1_mean_of_ratios_is_another_number() -> None:
    """Ours: the mean of the trials' own indices is 89.6081, which is not used."""
    of_ratios = (100 * 132 / 150 + 100 * 135 / 148) / 2

    assert of_ratios == pytest.approx(89.6081, abs=FOUR_DIGITS)
    assert index([132, 135], [150, 148]) != pytest.approx(of_ratios, abs=0.005)


@pytest.mark.parametrize(
    ("involved", "uninvolved", "expected"),
    [
        pytest.param([402, 410], [455, 461], 88.6463, id="G3 triple"),
        pytest.param([371, 365], [420, 412], 88.4615, id="G4 crossover"),
        pytest.param([45], [52], 86.5385, id="G7 side hop count"),
    ],
)
def test_g3_g4_g7_indices(involved: list[float], uninvolved: list[float], expected: float) -> None:
    """Ours: index of mean distances, and of counts, to four digits."""
    assert index(involved, uninvolved) == pytest.approx(expected, abs=FOUR_DIGITS)


def test_g8_quadriceps() -> None:
    """Ours: 171 against 198 N·m at 72 kg."""
    assert quadriceps_index_pct(171.0, 198.0) == pytest.approx(86.3636, abs=FOUR_DIGITS)
    assert torque_per_mass_n_m_per_kg(171.0, 72.0) == pytest.approx(2.3750, abs=FOUR_DIGITS)


def test_g9_ratio_of_the_muscles() -> None:
    """Ours: hamstring 102 to quadriceps 171 N·m."""
    assert hamstring_quadriceps_fraction(102.0, 171.0) == pytest.approx(0.5965, abs=FOUR_DIGITS)


def test_g10_hand_held_torque() -> None:
    """Ours: 430 N at 0.32 m is 137.6 N·m, and 1.9111 N·m/kg at 72 kg."""
    torque = torque_n_m(430.0, 0.32)

    assert torque == pytest.approx(137.6, abs=0.05)
    assert torque_per_mass_n_m_per_kg(torque, 72.0) == pytest.approx(1.9111, abs=FOUR_DIGITS)


@pytest.mark.parametrize(("sem", "half"), [(3.49, 5.74), (5.59, 9.20)])
def test_g14_band_round_ninety(sem: float, half: float) -> None:
    """Ours: the 90 % band round 90 is 1.645 standard errors either way.

    Worked with z rounded to 1.645; the exact z of kneecase gives one part in 11,000 less.
    """
    low, high = symmetry_band(90.0, sem, level=0.90)

    assert (high - low) / 2 * 1.645 / 1.6448536269514722 == pytest.approx(half, abs=0.005)
    assert (high + low) / 2 == pytest.approx(90.0)


def test_g12_change_against_its_error() -> None:
    """Ours: a single-hop index from 82 to 90 is inside its 90 % change, from 82 to 91 beyond it.

    Standard error 3.49 and printed change 8.09 points are both from memory; the print used z = 1.64.
    """
    change = minimal_detectable_change(published_value("HOPS_SINGLE_LSI_SEM_REID2007").number, 0.90)

    assert change * 1.64 / 1.6448536269514722 == pytest.approx(8.09, abs=0.005)
    assert 90 - 82 < change < 91 - 82


def test_jump_height_from_flight_time() -> None:
    """Ours: 0.400 s in the air is 19.62 cm with g = 9.81; kneecase takes standard gravity, 9.80665.

    The two differ by one part in three thousand, 0.007 cm here.
    """
    assert jump_height_cm(0.4) == pytest.approx(19.62 * 9.80665 / 9.81, abs=1e-9)
    assert jump_height_cm(0.4) == pytest.approx(19.62, abs=0.01)


@pytest.mark.parametrize(
    ("involved", "uninvolved"),
    [(135.0, 0.0), (-1.0, 150.0), (135.0, -150.0), (math.nan, 150.0), (135.0, math.inf)],
)
def test_g15_bad_input_gives_no_number(involved: float, uninvolved: float) -> None:
    """Ours: zero, negative, missing or infinite scores are refused, never turned into a number."""
    with pytest.raises(InputError):
        limb_symmetry_index(involved, uninvolved)


@pytest.mark.parametrize("trials", [[], [math.nan], [-5.0], None, ["135"], [None]])
def test_g15_bad_trials_give_no_score(trials: object) -> None:
    """Ours: no trial, a missing or negative one, or text is refused."""
    with pytest.raises(InputError):
        hop_score(trials)  # type: ignore[arg-type]
