"""Strength of both limbs: index, torque for body mass, ratio, and what is never compared."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import numpy as np
import pytest

from kneecase.errors import InputError
from kneecase.evidence import published_value
from kneecase.measures import (
    hamstring_quadriceps_fraction,
    jump_height_cm,
    strength_symmetry,
    torque_n_m,
    torque_per_mass_n_m_per_kg,
)
from kneecase.record import Case, Reading

Read = Callable[..., Reading]
Build = Callable[..., Case]
AT_90 = {"day": 200, "mode": "isometric", "angle_deg": 90.0}
AT_60_S = {"day": 200, "mode": "concentric", "speed_deg_per_s": 60.0}


def test_kernels_take_arrays_and_refuse_nonsense() -> None:
    """The same lines for rows of numbers; a zero divisor, a negative or a wrong unit is named."""
    assert torque_n_m(np.array([430.0, 0.0]), 0.32).tolist() == pytest.approx([137.6, 0.0])
    assert jump_height_cm(np.array([0.0, 0.4])).tolist() == pytest.approx([0.0, 19.613], abs=5e-4)
    for call, named in (
        (lambda: torque_n_m(430.0, 32.0), "centimetres"),
        (lambda: torque_n_m(-1.0, 0.3), "force_n"),
        (lambda: torque_per_mass_n_m_per_kg(171.0, 0.0), "mass_kg"),
        (lambda: hamstring_quadriceps_fraction(102.0, 0.0), "quadriceps_n_m"),
        (lambda: jump_height_cm(400.0), "milliseconds"),
    ):
        with pytest.raises(InputError, match=named):
            call()


def test_the_peak_is_held_against_the_peak(reading: Read, case: Build) -> None:
    """Best trial of each limb of one day; lost and practice trials do not count."""
    rows = [
        reading("quadriceps_torque", "left", 165, **AT_90),
        reading("quadriceps_torque", "left", 171, **AT_90),
        reading("quadriceps_torque", "left", 200, status="practice", **AT_90),
        reading("quadriceps_torque", "right", 198, **AT_90),
    ]
    answer = strength_symmetry(case(*rows, athlete={"mass_kg": 72.0}))
    (test,) = answer.tests

    assert test.lsi_pct == pytest.approx(86.3636, abs=5e-5)
    assert (test.involved_n_m, test.uninvolved_n_m) == (171, 198)
    assert test.verdict == "too close to call"
    assert answer.per_mass[0].value == pytest.approx(2.375)
    assert [x.reason for x in answer.left_out] == ["practice trial: kept, not scored"]


def test_modes_angles_and_speeds_stay_apart(reading: Read, case: Build) -> None:
    """A limb tested otherwise is no partner: no index, and the words say which limb is lacking."""
    rows = [
        reading("quadriceps_torque", "left", 171, **AT_90),
        reading("quadriceps_torque", "right", 198, **AT_60_S),
        reading("quadriceps_torque", "left", 160, **AT_60_S),
    ]
    by_condition = {t.condition: t for t in strength_symmetry(case(*rows)).tests}

    assert by_condition["isometric, at 90°"].verdict == "unknown"
    assert "uninvolved limb was not tested so" in by_condition["isometric, at 90°"].words
    assert by_condition["concentric, at 60°/s"].value == pytest.approx(100 * 160 / 198)


@pytest.mark.parametrize(
    ("given", "lacking"),
    [
        ({}, "mode"),
        ({"mode": "isometric"}, "angle"),
        ({"mode": "concentric"}, "speed"),
        ({"mode": "eccentric", "angle_deg": 60.0}, "speed"),
    ],
)
def test_what_was_not_recorded_is_not_compared(
    given: dict[str, Any], lacking: str, reading: Read, case: Build
) -> None:
    """Without mode, and angle or speed, two torques have no index."""
    rows = [reading("quadriceps_torque", side, 180, **given) for side in ("left", "right")]
    (test,) = strength_symmetry(case(*rows)).tests

    assert test.verdict == "unknown"
    assert f"the {lacking} is not recorded" in test.words


def test_days_are_not_mixed_and_zero_divides_nothing(reading: Read, case: Build) -> None:
    """The latest day stands; before surgery and older days are left out; zero gives no index."""
    rows = [
        reading("quadriceps_torque", "right", 210, **(AT_90 | {"day": -10})),
        reading("quadriceps_torque", "right", 205, **(AT_90 | {"day": 100})),
        reading("quadriceps_torque", "left", 100, **(AT_90 | {"day": 100})),
        reading("quadriceps_torque", "left", 150, **AT_90),
        reading("quadriceps_torque", "right", 0, **AT_90),
    ]
    answer = strength_symmetry(case(*rows))

    assert "against zero" in answer.tests[0].words
    reasons = {x.reading.value: x.reason for x in answer.left_out}
    assert "before surgery" in reasons[210]
    assert "days are not mixed" in reasons[205]
    assert "days are not mixed" in reasons[100]


def test_hand_held_force_becomes_torque(reading: Read, case: Build) -> None:
    """Each limb by its own lever arm; a pass is weak evidence, a fail strong; no arm, no torque."""
    arm = AT_90 | {"lever_arm_m": 0.32}
    weak = [
        reading("quadriceps_force", "left", 430, **arm),
        reading("quadriceps_force", "right", 400, **(arm | {"lever_arm_m": 0.36})),
    ]
    (test,) = strength_symmetry(case(*weak)).tests
    assert test.value == pytest.approx(100 * 430 * 0.32 / (400 * 0.36))
    assert test.hand_held
    assert "misses 37 % of deficits" in test.words
    assert published_value("STRENGTH_HAND_HELD_SENSITIVITY_HANDHELD2018") in test.evidence

    failed = [
        reading("quadriceps_force", "left", 200, **arm),
        reading("quadriceps_force", "right", 430, **arm),
    ]
    (test,) = strength_symmetry(case(*failed)).tests
    assert test.verdict == "not met"
    assert "strong evidence" in test.words

    bare = [reading("quadriceps_force", "left", 430, **AT_90)]
    answer = strength_symmetry(case(*bare))
    assert answer.tests == ()
    assert "lever arm is not recorded" in answer.left_out[0].reason
    assert answer.summary == "No strength test since surgery is recorded."


def test_two_testers_widen_the_hand_held_error(reading: Read, case: Build) -> None:
    """The same tester and device have the smaller error; a second tester, or none named, the larger."""
    arm = AT_90 | {"lever_arm_m": 0.32, "device": "hand-held"}

    def sem(testers: tuple[str, str]) -> float | None:
        sides = zip(("left", "right"), testers, strict=True)
        rows = [reading("quadriceps_force", side, 430, tester=who, **arm) for side, who in sides]
        return strength_symmetry(case(*rows)).tests[0].sem_points

    one, two, unnamed = sem(("AB", "AB")), sem(("AB", "CD")), sem(("", ""))
    assert one is not None
    assert two is not None
    assert one < two == unnamed


@pytest.mark.parametrize(
    ("sex", "condition", "name"),
    [
        ("female", AT_90, "STRENGTH_EXTENSION_FLEXED_FEMALE_SARABON2021"),
        ("male", AT_90, "STRENGTH_EXTENSION_FLEXED_MALE_SARABON2021"),
        ("female", AT_90 | {"angle_deg": 60.0}, "STRENGTH_EXTENSION_MID_FEMALE_SARABON2021"),
        ("male", AT_90 | {"angle_deg": 40.0}, "STRENGTH_EXTENSION_MID_MALE_SARABON2021"),
        ("male", AT_60_S, "STRENGTH_EXTENSION_TARGET_GOKELER2016"),
        ("female", AT_90, "STRENGTH_EXTENSION_TARGET_PIETROSIMONE2016"),
    ],
)
def test_references_fit_sex_and_mode(
    sex: str, condition: dict[str, Any], name: str, reading: Read, case: Build
) -> None:
    """Each torque for body mass stands beside what is published for its sex, mode and angle or speed."""
    rows = [reading("quadriceps_torque", side, 170, **condition) for side in ("left", "right")]
    row = strength_symmetry(case(*rows, athlete={"sex": sex, "mass_kg": 70.0})).per_mass[0]

    assert published_value(name) in row.evidence
    other = {"male": "FEMALE", "female": "_MALE"}[sex]
    assert not any(other in value.name for value in row.evidence)


@pytest.mark.parametrize(
    "condition",
    [
        AT_90 | {"angle_deg": 30.0},
        AT_60_S | {"speed_deg_per_s": 180.0},
        {"day": 200, "mode": "eccentric", "speed_deg_per_s": 60.0},
    ],
)
def test_no_reference_is_borrowed(condition: dict[str, Any], reading: Read, case: Build) -> None:
    """Another angle, speed or mode has no published value here, and none is taken from elsewhere."""
    rows = [reading("quadriceps_torque", side, 170, **condition) for side in ("left", "right")]
    row = strength_symmetry(case(*rows, athlete={"mass_kg": 70.0})).per_mass[0]

    assert row.words == "no published value for this muscle, mode, angle or speed"


@pytest.mark.parametrize(
    ("torque", "words"), [(130, "below"), (160, "inside"), (200, "above"), (220, "reaches")]
)
def test_where_a_torque_lies(torque: float, words: str, reading: Read, case: Build) -> None:
    """Below, inside or above the interval, reaching or short of the cut."""
    rows = [reading("quadriceps_torque", side, torque, **AT_90) for side in ("left", "right")]
    row = strength_symmetry(case(*rows, athlete={"mass_kg": 70.0})).per_mass[0]

    assert words in row.words


def test_body_mass_is_the_latest_weighed(reading: Read, case: Build) -> None:
    """The latest weighed mass wins over the athlete's; without any no torque by mass is shown."""
    rows = [reading("quadriceps_torque", side, 140, **AT_90) for side in ("left", "right")]
    masses = [reading("body_mass", None, 80, day=10), reading("body_mass", None, 70, day=150)]
    weighed = strength_symmetry(case(*rows, *masses, athlete={"mass_kg": 60.0})).per_mass[0]
    given = strength_symmetry(case(*rows, athlete={"mass_kg": 60.0})).per_mass[0]
    none = strength_symmetry(case(*rows, athlete={"sex": "other"}))

    assert weighed.value == pytest.approx(2.0)
    assert "weighed on" in weighed.inputs[1]
    assert given.value == pytest.approx(140 / 60)
    assert "as given" in given.inputs[1]
    assert none.per_mass == ()
    assert any("No body mass" in text for text in none.cautions)
    assert any("Sex is not recorded" in text for text in none.cautions)


def test_without_a_sex_no_interval_is_chosen(reading: Read, case: Build) -> None:
    """Neither interval is taken for an athlete whose sex is not recorded as one of the two."""
    rows = [
        reading("quadriceps_torque", side, 140, **(AT_90 | {"angle_deg": 60.0})) for side in ("left", "right")
    ]
    row = strength_symmetry(case(*rows, athlete={"mass_kg": 60.0, "sex": ""})).per_mass[0]

    assert "sex not recorded" in row.words


def test_the_ratio_needs_both_torques_and_the_graft(reading: Read, case: Build) -> None:
    """Both muscles of one limb, day, mode and speed, with the graft named; never a verdict."""
    rows = [
        reading("quadriceps_torque", "left", 171, **AT_60_S),
        reading("hamstring_torque", "left", 102, **AT_60_S),
        reading("quadriceps_torque", "right", 0, **AT_60_S),
        reading("hamstring_torque", "right", 110, **AT_60_S),
    ]
    own, other = strength_symmetry(case(*rows)).ratios
    assert own.value == pytest.approx(0.5965, abs=5e-5)
    assert own.verdict == ""
    assert "graft: hamstring tendon" in own.words
    assert "no torque" in other.words

    ungrafted = strength_symmetry(case(*rows, surgery={"graft": ""})).ratios[0]
    assert ungrafted.value is None
    assert "graft is not recorded" in ungrafted.words
    assert strength_symmetry(case(*rows[:1])).ratios == ()

    angles = [
        reading("quadriceps_torque", "left", 171, **AT_90),
        reading("hamstring_torque", "left", 102, **(AT_90 | {"angle_deg": 30.0})),
        reading("hamstring_torque", "left", 102, day=200, mode="concentric", speed_deg_per_s=180.0),
    ]
    (ratio,) = strength_symmetry(case(*angles)).ratios
    assert any("different angles" in text for text in ratio.cautions)


def test_a_doubtful_reference_meets_nothing(reading: Read, case: Build) -> None:
    """A graft from the other limb: the index is shown, and meets no criterion."""
    rows = [reading("quadriceps_torque", side, 180, **AT_90) for side in ("left", "right")]
    answer = strength_symmetry(case(*rows, surgery={"harvest_side": "right"}))

    assert answer.tests[0].value == 100.0
    assert answer.tests[0].verdict == "unknown"
    assert any("graft was taken" in text for text in answer.cautions)


def test_wrong_choices_are_refused(case: Build) -> None:
    """A level, operator or threshold that cannot be is named, also when there is nothing to judge."""
    for wrong in ({"level": 95.0}, {"operator": "<"}, {"threshold_pct": 0.0}):
        with pytest.raises(InputError):
            strength_symmetry(case(), **wrong)  # type: ignore[arg-type]


def test_the_hamstring_index_says_whose_line_it_is_held_to(reading: Any, case: Any) -> None:
    """The published line names quadriceps and hops only; a line of the caller's own needs no such word."""
    how = {"day": 200, "mode": "isometric", "angle_deg": 90.0}
    rows = [
        reading(f"{muscle}_torque", side, value, **how)
        for muscle in ("quadriceps", "hamstring")
        for side, value in (("left", 90), ("right", 100))
    ]
    quadriceps, hamstring = strength_symmetry(case(*rows)).tests

    assert not any("is ours" in text for text in quadriceps.cautions)
    assert any("is ours" in text for text in hamstring.cautions)
    assert not any(
        "is ours" in text for text in strength_symmetry(case(*rows), threshold_pct=85).tests[1].cautions
    )
