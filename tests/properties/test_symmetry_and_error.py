"""What must hold for any numbers: symmetry, measurement error, grades and notation."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from kneecase.measures import (
    chance_true_value_passes,
    extension_deficit_deg,
    extension_grade,
    flexion_deficit_deg,
    flexion_grade,
    heel_height_cm,
    instrument_reliability,
    intraclass_correlation,
    is_met,
    limb_symmetry_index,
    limits_of_agreement,
    minimal_detectable_change,
    motion_arc_deg,
    neutral_zero_text,
    sem_from_detectable_change,
    shank_angle_deg,
    standard_error_of_measurement,
    symmetry_band,
    symmetry_sem_points,
    within_subject_sd,
)
from kneecase.record.neutral_zero import neutral_zero

SCORES = st.floats(0.01, 1e4)
ERRORS = st.floats(0.001, 100)
BETTER = st.sampled_from(["higher", "lower"])
OPERATORS = st.sampled_from(["≥", ">", "≤", "<"])
LEVELS = st.floats(0.01, 0.99)
WHOLE = st.integers(-10_000, 10_000)


def tables(rows: int = 5, columns: int = 3) -> st.SearchStrategy[np.ndarray]:
    """Tables of whole readings, so that shifts and scales are exact enough to compare."""
    row = st.lists(st.integers(-200, 200), min_size=columns, max_size=columns)
    return st.lists(row, min_size=rows, max_size=rows).map(lambda cells: np.array(cells, dtype=float))


@given(SCORES, SCORES, BETTER)
def test_swapping_limbs_inverts_the_index(a: float, b: float, better: str) -> None:
    """The index one way times the index the other way is 100 % squared."""
    assert limb_symmetry_index(a, b, better) * limb_symmetry_index(b, a, better) == pytest.approx(1e4)


@given(SCORES, SCORES, BETTER, st.floats(0.01, 100))
def test_the_unit_does_not_matter(a: float, b: float, better: str, factor: float) -> None:
    """Centimetres or inches, the index is the same, and so is its error when that is scaled too."""
    sems = {"involved_sem": 0.1 * a, "uninvolved_sem": 0.05 * b}
    scaled = {name: factor * sem for name, sem in sems.items()}

    assert limb_symmetry_index(a * factor, b * factor, better) == pytest.approx(
        limb_symmetry_index(a, b, better)
    )
    assert symmetry_sem_points(a * factor, b * factor, better=better, **scaled) == pytest.approx(
        symmetry_sem_points(a, b, better=better, **sems)
    )


@given(SCORES, SCORES)
def test_direction_is_the_inverse(a: float, b: float) -> None:
    """Less-is-better is more-is-better with the limbs swapped."""
    assert limb_symmetry_index(a, b, "lower") == limb_symmetry_index(b, a, "higher")


@given(st.lists(st.tuples(SCORES, SCORES), min_size=1, max_size=20), BETTER)
def test_arrays_and_floats_agree(pairs: list[tuple[float, float]], better: str) -> None:
    """The same lines serve one pair and many."""
    a, b = (np.array(column) for column in zip(*pairs, strict=True))
    many = limb_symmetry_index(a, b, better)
    band = symmetry_band(many, np.full_like(many, 3.0))
    chances = chance_true_value_passes(many, np.full_like(many, 3.0), 90.0, "≥")

    assert list(many) == [limb_symmetry_index(x, y, better) for x, y in pairs]
    assert list(band[0]) == [symmetry_band(x, 3.0)[0] for x in many.tolist()]
    assert list(chances) == [chance_true_value_passes(x, 3.0, 90.0, "≥") for x in many.tolist()]


@given(SCORES, SCORES, ERRORS, ERRORS, st.floats(-1, 1))
def test_shared_error_cancels(a: float, b: float, first: float, second: float, rho: float) -> None:
    """An error that both limbs share makes the index surer, never less sure, than independent errors."""
    alone = symmetry_sem_points(a, b, involved_sem=first, uninvolved_sem=second)
    shared = symmetry_sem_points(a, b, involved_sem=first, uninvolved_sem=second, error_correlation=rho)

    assert shared >= 0
    assert (shared - alone) * rho <= 1e-6 * alone


@given(st.floats(-500, 500), ERRORS, LEVELS, LEVELS)
def test_a_surer_band_is_wider(value: float, sem: float, one: float, two: float) -> None:
    """The band holds the value, and the higher level holds the lower."""
    low, high = symmetry_band(value, sem, min(one, two))
    outer_low, outer_high = symmetry_band(value, sem, max(one, two))

    assert outer_low <= low <= value <= high <= outer_high


@given(st.floats(-500, 500), st.floats(0, 100), st.floats(-500, 500), OPERATORS)
def test_chance_follows_the_decision(value: float, sem: float, threshold: float, operator: str) -> None:
    """A value that meets its threshold has at least an even chance; one that does not, at most."""
    chance = chance_true_value_passes(value, sem, threshold, operator)

    assert 0 <= chance <= 1
    if value != threshold:
        assert (chance >= 0.5) == is_met(value, threshold, operator) or chance == pytest.approx(0.5)
    elif sem == 0:
        assert chance == is_met(value, threshold, operator)
    else:
        assert chance == pytest.approx(0.5)


@given(st.floats(-500, 500), ERRORS, st.floats(-500, 500))
def test_chances_of_both_sides_fill_up(value: float, sem: float, threshold: float) -> None:
    """Passing at least and staying below share all the chance between them."""
    above = chance_true_value_passes(value, sem, threshold, "≥")

    assert above + chance_true_value_passes(value, sem, threshold, "<") == pytest.approx(1)


@given(st.floats(0, 1e4), st.floats(0.001, 100), LEVELS)
def test_detectable_change_scales(sem: float, factor: float, level: float) -> None:
    """Twice the error needs twice the change, and the error can be had back."""
    change = minimal_detectable_change(sem, level)

    assert minimal_detectable_change(sem * factor, level) == pytest.approx(change * factor)
    assert sem_from_detectable_change(change, level) == pytest.approx(sem)


@given(st.floats(0, 1e4), st.floats(0, 1), st.floats(0, 1))
def test_better_reliability_less_error(sd: float, one: float, two: float) -> None:
    """At the same spread, the higher correlation has the smaller error, and never above the spread."""
    worse, better = (standard_error_of_measurement(sd, icc) for icc in sorted((one, two)))

    assert better <= worse <= sd


@given(tables(), WHOLE, st.integers(1, 50))
def test_error_ignores_shift_and_follows_scale(table: np.ndarray, shift: int, scale: int) -> None:
    """A goniometer that reads 3 too much has the same error; another unit has it in that unit."""
    assert within_subject_sd(table + shift) == pytest.approx(within_subject_sd(table), abs=1e-6)
    assert within_subject_sd(table * scale) == pytest.approx(scale * within_subject_sd(table), abs=1e-6)


@given(tables(), st.sampled_from(["1,1", "2,1", "3,1", "1,k", "2,k", "3,k"]), WHOLE, st.integers(1, 50))
def test_icc_ignores_shift_and_scale(table: np.ndarray, form: str, shift: int, scale: int) -> None:
    """An intraclass correlation does not depend on unit or zero, lies in its interval, and is at most 1."""
    assume(np.ptp(table.mean(axis=1)) > 0.5)
    assume(np.std(table - table.mean(axis=1, keepdims=True)) > 0.5)
    found = intraclass_correlation(table, form)
    moved = intraclass_correlation(table * scale + shift, form)

    assert moved.value == pytest.approx(found.value, rel=1e-6, abs=1e-6)
    assert found.value <= 1
    if form[0] != "2":  # the interval of the two-way random model is an approximation and may miss
        assert found.low <= found.value <= found.high


@given(tables(rows=6, columns=4), WHOLE)
def test_instruments_ignore_shift(table: np.ndarray, shift: int) -> None:
    """Errors between and within instruments do not move with the zero; between is never below within."""
    cube = table.reshape(6, 2, 2)
    assume(np.ptp(cube) > 0)
    found, moved = instrument_reliability(cube), instrument_reliability(cube + shift)

    assert moved.sem_within == pytest.approx(found.sem_within, abs=1e-6)
    assert moved.sem_between_random == pytest.approx(found.sem_between_random, abs=1e-5)
    assert found.sem_within <= found.sem_between_fixed <= found.sem_between_random


@given(st.lists(st.tuples(WHOLE, WHOLE), min_size=3, max_size=30))
def test_limits_of_agreement_mirror(pairs: list[tuple[int, int]]) -> None:
    """Second minus first is the mirror of first minus second; the limits lie around the bias."""
    a, b = (np.array(column, dtype=float) for column in zip(*pairs, strict=True))
    forth, back = limits_of_agreement(a, b), limits_of_agreement(b, a)

    assert back.bias == pytest.approx(-forth.bias)
    assert back.low == pytest.approx(-forth.high)
    assert forth.low_outer <= forth.low <= forth.low_inner
    assert forth.high_inner <= forth.high <= forth.high_outer
    assert forth.low <= forth.bias <= forth.high


@given(st.floats(-30, 120), st.floats(-30, 120))
def test_grades_never_improve_with_loss(one: float, two: float) -> None:
    """A larger lack never has a better grade."""
    small, large = sorted((one, two))

    assert extension_grade(small) <= extension_grade(large)
    assert flexion_grade(small) <= flexion_grade(large)


@given(st.floats(-30, 30), st.floats(-30, 30), st.floats(90, 170), st.floats(90, 170))
def test_deficits_swap_sign_with_the_knees(e1: float, e2: float, f1: float, f2: float) -> None:
    """Swapping the knees turns the deficits round; the arcs differ by their sum."""
    lack = extension_deficit_deg(involved_extension_deg=e1, uninvolved_extension_deg=e2)
    loss = flexion_deficit_deg(involved_flexion_deg=f1, uninvolved_flexion_deg=f2)
    arcs = [motion_arc_deg(extension_deg=e, flexion_deg=f) for e, f in ((e1, f1), (e2, f2))]

    assert extension_deficit_deg(involved_extension_deg=e2, uninvolved_extension_deg=e1) == -lack
    assert flexion_deficit_deg(involved_flexion_deg=f2, uninvolved_flexion_deg=f1) == -loss
    assert arcs[1] - arcs[0] == pytest.approx(lack + loss)


@given(st.integers(-150, 300), st.integers(400, 1700))
def test_neutral_zero_round_trip(extension_tenths: int, flexion_tenths: int) -> None:
    """What is written in neutral-zero notation is read back as the same two angles."""
    extension, flexion = extension_tenths / 10, flexion_tenths / 10

    assert neutral_zero(neutral_zero_text(extension, flexion)) == (extension, flexion)


@given(st.floats(20, 60), st.floats(-0.9, 0.9))
def test_heel_height_round_trip(shank_cm: float, share: float) -> None:
    """Angle from height and height from angle are inverse, and a higher heel is a larger angle."""
    height = share * shank_cm
    angle = shank_angle_deg(height, shank_cm)

    assert heel_height_cm(angle, shank_cm) == pytest.approx(height)
    assert shank_angle_deg(height + 0.01, shank_cm) > angle
