"""The operated limb now against the other before surgery, beside the plain index."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from kneecase.errors import InputError
from kneecase.measures import preoperative_capacity, preoperative_capacity_pct
from kneecase.record import Case, Reading

Read = Callable[..., Reading]
Build = Callable[..., Case]
WAY = {"administration": "reid-2007"}


def rows(
    reading: Read, measure: str, now: float, today: float, before: float, **more: object
) -> list[Reading]:
    """Operated limb now, other limb today, other limb three weeks before surgery."""
    more = more or WAY
    return [
        reading(measure, "left", now, day=200, **more),
        reading(measure, "right", today, day=200, **more),
        reading(measure, "right", before, day=-21, **more),
    ]


def test_the_kernel_turns_a_time_over() -> None:
    """Less time is better: the ratio is the other way round; zero divides nothing."""
    assert preoperative_capacity_pct(144.0, 180.0) == 80.0
    assert preoperative_capacity_pct(2.0, 1.8, "lower") == pytest.approx(90.0)
    with pytest.raises(InputError):
        preoperative_capacity_pct(144.0, 0.0)


def test_a_weakened_other_limb_flatters_the_index(reading: Read, case: Build) -> None:
    """140 against 145 today is 97 %, against 172 before surgery 81 %: both are shown."""
    (test,) = preoperative_capacity(case(*rows(reading, "single_hop", 140, 145, 172))).tests

    assert test.value == pytest.approx(100 * 140 / 172)
    assert test.lsi_pct == pytest.approx(100 * 140 / 145)
    assert test.verdict == "not met"
    assert "plain index of the day 96.6 %" in test.words
    assert "a floor" in test.error


def test_a_time_and_a_peak(reading: Read, case: Build) -> None:
    """The 6-m hop is turned over; a torque takes the best trial under the same mode and angle."""
    torque = {"mode": "isometric", "angle_deg": 90.0}
    answer = preoperative_capacity(
        case(
            *rows(reading, "timed_hop_6m", 2.0, 1.9, 1.7),
            *rows(reading, "quadriceps_torque", 170, 190, 220, **torque),
            reading("quadriceps_torque", "left", 176, day=200, **torque),
        )
    )
    by_measure = {test.measure: test for test in answer.tests}

    assert by_measure["timed_hop_6m"].value == pytest.approx(85.0)
    assert by_measure["quadriceps_torque"].value == pytest.approx(80.0)
    assert by_measure["timed_hop_6m"].sem_points == 5.59


def test_without_a_value_from_before_it_is_unknown(reading: Read, case: Build) -> None:
    """No earlier value, one given another way, or a mode not recorded: unknown, never a number."""
    alone = preoperative_capacity(case(*rows(reading, "single_hop", 140, 145, 172)[:2]))
    other_way = case(
        *rows(reading, "single_hop", 140, 145, 172)[:2],
        reading("single_hop", "right", 172, day=-21, administration="myers-2014"),
    )
    blank = case(*rows(reading, "quadriceps_torque", 170, 190, 220, mode=""))

    for answer in (alone, preoperative_capacity(other_way), preoperative_capacity(blank)):
        assert answer.tests[0].value is None
        assert answer.tests[0].verdict == "unknown"
    assert any("stays unanswered" in text for text in alone.cautions)
    assert "mode is not recorded" in preoperative_capacity(blank).tests[0].words


def test_zero_is_held_against_nothing(reading: Read, case: Build) -> None:
    """A zero from before surgery gives no number, and a zero today no plain index."""
    (test,) = preoperative_capacity(case(*rows(reading, "side_hop_30s", 40, 0, 0))).tests

    assert test.value is None
    assert "against zero" in test.words
    assert test.lsi_pct is None


def test_a_limb_hurt_before_is_no_yardstick(reading: Read, case: Build) -> None:
    """Earlier injury of the other limb: unknown. A graft taken later does not spoil the value before."""
    hops = rows(reading, "single_hop", 170, 171, 172)
    hurt = preoperative_capacity(case(*hops, surgery={"earlier": {"right": ("meniscus repair 2019",)}}))
    harvested = preoperative_capacity(case(*hops, surgery={"harvest_side": "right"}))

    assert hurt.tests[0].verdict == "unknown"
    assert harvested.tests[0].verdict == "met"


def test_nothing_recorded(reading: Read, case: Build) -> None:
    """An empty case has no test; readings that could not be paired are left out with the reason."""
    answer = preoperative_capacity(case(reading("single_hop", "right", 150, day=200)))

    assert answer.tests == ()
    assert answer.summary.startswith("No hop test and no torque")
    assert len(answer.left_out) == 1
    assert any("not a measure of the risk" in text for text in answer.cautions)


def test_an_unnamed_way_takes_the_mean(reading: Read, case: Build) -> None:
    """A way without a stated score is averaged, as in the index."""
    own = {"administration": "guideline-2010"}
    hops = [
        *rows(reading, "single_hop", 140, 145, 170, **own),
        reading("single_hop", "left", 150, day=200, **own),
    ]

    assert preoperative_capacity(case(*hops)).tests[0].value == pytest.approx(100 * 145 / 170)
