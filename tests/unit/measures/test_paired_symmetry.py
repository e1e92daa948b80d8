"""Limb symmetry of a case: which trials count, the band, the verdict, and the other limb's part in it."""

from __future__ import annotations

import datetime as dt

import pytest

from kneecase.errors import InputError
from kneecase.measures import limb_symmetry
from kneecase.measures.comparable import condition_words
from kneecase.measures.symmetry_verdict import SymmetryThreshold

HOP = {"administration": "reid-2007", "tester": "MO", "device": "tape"}
NINETY = SymmetryThreshold(pct=90.0, operator="≥", published=None)


def hops(reading, involved, uninvolved, day=200, measure="single_hop", **more):
    """Trials of both limbs on one day."""
    how = HOP | more
    return [
        *(reading(measure, "left", v, day, trial=i, **how) for i, v in enumerate(involved, 1)),
        *(reading(measure, "right", v, day, trial=i, **how) for i, v in enumerate(uninvolved, 1)),
    ]


def test_mean_and_best_are_two_numbers(case, reading):
    """132 and 135 against 150 and 148: the mean fails at 90 and the best passes (ours)."""
    athlete = case(*hops(reading, (132, 135), (150, 148)))
    mean = limb_symmetry(athlete, "single_hop", threshold=NINETY).findings[0]
    best = limb_symmetry(athlete, "single_hop", statistic="best", threshold=NINETY).findings[0]

    assert mean.value == pytest.approx(89.5973, abs=5e-5)
    assert best.value == pytest.approx(90.0)
    assert "short of ≥ 90 %" in mean.words
    assert "on the passing side of ≥ 90 %" in best.words
    assert "mean of 2 scored trials" in mean.inputs[0]
    assert mean.words.startswith("operated 133.5 cm, other 149 cm")


def test_best_of_a_time_is_the_shortest(case, reading):
    """Less is better for a time: the shortest counts and the ratio turns round."""
    rows = hops(reading, (2.1, 2.0), (1.8, 1.9), measure="timed_hop_6m")
    finding = limb_symmetry(case(*rows), "timed_hop_6m", statistic="best").findings[0]

    assert finding.value == pytest.approx(90.0)
    assert "less is better" in finding.formula


def test_lost_and_practice_trials_do_not_count(case, reading):
    """A lost landing is kept and not scored, however far it went."""
    rows = [
        *hops(reading, (132,), (150,)),
        reading("single_hop", "left", 160, 200, status="lost", **HOP),
        reading("single_hop", "left", 90, 200, status="practice", **HOP),
    ]
    answer = limb_symmetry(case(*rows), "single_hop")

    assert answer.findings[0].value == pytest.approx(88.0)
    assert sorted(x.reason[:4] for x in answer.left_out) == ["lost", "prac"]


def test_verdict_against_a_limb_not_to_be_trusted(case, reading):
    """The index is shown, but it meets no criterion, and the reason is said first."""
    rows = hops(reading, (160, 160), (150, 150))
    sure = limb_symmetry(case(*rows), "single_hop", threshold=NINETY)
    unsure = limb_symmetry(case(*rows, surgery={"harvest_side": "right"}), "single_hop", threshold=NINETY)

    assert sure.findings[0].verdict == "met"
    assert unsure.findings[0].value == sure.findings[0].value
    assert unsure.findings[0].verdict == "unknown"
    assert "graft was taken from the right limb" in unsure.cautions[0]


def test_without_threshold_no_verdict(case, reading):
    """Nothing is held against a line nobody named."""
    finding = limb_symmetry(case(*hops(reading, (132,), (150,))), "single_hop").findings[0]

    assert finding.verdict == ""
    assert finding.words == "operated 132 cm, other 150 cm"


def test_other_limb_missing_that_day(case, reading):
    """Without the other limb of the same day the index is unknown, even if it was tested before."""
    rows = [*hops(reading, (132,), ()), *hops(reading, (), (150,), day=150)]
    answer = limb_symmetry(case(*rows), "single_hop", threshold=NINETY)

    assert answer.findings[0].value is None
    assert answer.findings[0].verdict == ""
    assert "no index without it" in answer.findings[0].words
    assert len(answer.left_out) == 1


def test_conditions_stay_apart(case, reading):
    """Two ways of testing are two findings; each needs both limbs alike."""
    slow = {"mode": "concentric", "speed_deg_per_s": 60.0}
    fast = {"mode": "concentric", "speed_deg_per_s": 180.0}
    rows = [
        reading("quadriceps_torque", "left", 150, 200, **slow),
        reading("quadriceps_torque", "right", 200, 200, **slow),
        reading("quadriceps_torque", "left", 120, 200, **fast),
    ]
    first, second = limb_symmetry(case(*rows), "quadriceps_torque").findings

    assert first.label == "quadriceps peak torque, concentric, at 60°/s"
    assert first.value == pytest.approx(75.0)
    assert second.value is None


def test_band_is_that_of_the_readings(case, reading):
    """A published error of the score is propagated to the index; the formula and the error are named."""
    rows = [reading("knee_girth", side, v, tester="A") for side, v in (("left", 40.0), ("right", 38.0))]
    finding = limb_symmetry(case(*rows), "knee_girth").findings[0]

    assert finding.value == pytest.approx(95.0)
    assert finding.low < 95.0 < finding.high
    assert "propagated to the index" in finding.error
    assert finding.level == 0.90


def test_no_published_error_no_band(case, reading):
    """Where no error is published there is no band, and the words say so."""
    rows = [
        reading("thigh_girth", side, v, position="15 cm") for side, v in (("left", 48.0), ("right", 50.0))
    ]
    finding = limb_symmetry(case(*rows), "thigh_girth").findings[0]

    assert finding.value == pytest.approx(96.0)
    assert finding.low is None
    assert "no published error of thigh girth" in finding.error


def test_zero_gives_no_index(case, reading):
    """A zero where it would be divided by is told, not computed; a zero of the operated limb is an index."""
    rows = hops(reading, (10,), (0,), measure="side_hop_30s")
    none = limb_symmetry(case(*rows), "side_hop_30s").findings[0]
    nothing = limb_symmetry(case(*hops(reading, (0,), (40,), measure="side_hop_30s")), "side_hop_30s")

    assert none.value is None
    assert "a score of 0" in none.words
    assert nothing.findings[0].value == 0.0
    assert nothing.findings[0].low is None


def test_nothing_recorded(case):
    """No trial is unknown."""
    answer = limb_symmetry(case(), "single_hop")

    assert answer.findings[0].value is None
    assert answer.summary.startswith("Single hop for distance: unknown")
    assert any("Not checked" in text for text in answer.cautions)


def test_on_looks_back(case, reading):
    """On an earlier day a later test is not known."""
    rows = [*hops(reading, (100,), (150,), day=150), *hops(reading, (132,), (150,), day=200)]
    answer = limb_symmetry(case(*rows), "single_hop", on=dt.date(2026, 8, 1))

    assert answer.findings[0].value == pytest.approx(100 * 100 / 150)


@pytest.mark.parametrize(
    "measure", ["knee_flexion", "effusion", "calf_girth", "ikdc_subjective", "landing_errors"]
)
def test_no_ratio_of_angles_and_grades(case, measure):
    """Angles, grades, scores and measures without a better direction have no ratio between limbs."""
    with pytest.raises(InputError, match="true zero"):
        limb_symmetry(case(), measure)


def test_statistic_is_named(case):
    """A statistic that is neither is refused."""
    with pytest.raises(InputError, match="'mean' or 'best'"):
        limb_symmetry(case(), "single_hop", statistic="median")


def test_conditions_in_words():
    """A condition key in words names what was recorded and nothing else."""
    assert condition_words("quadriceps_force", ("isometric", 90.0, None, 0.32)) == (
        "isometric, at 90°, lever arm 0.32 m"
    )
    assert condition_words("knee_flexion", ("", "", "")) == ""
