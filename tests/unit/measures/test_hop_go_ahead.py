"""Before maximal hopping: every condition met, not met or unknown; unknown never passes."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable
from typing import Any

import pytest

from kneecase.measures import STOP_RULES, HopGoAhead, hop_go_ahead
from kneecase.record import QUESTIONS, Case, Limit, Reading, Visit

Read = Callable[..., Reading]
Build = Callable[..., Case]
DAY = dt.date(2026, 3, 2) + dt.timedelta(days=200)
NO = dict.fromkeys(QUESTIONS, "no") | {"gait_normal": "yes", "warm_up_done": "yes"}
PAIN = {"rest": 0.0, "activity": 2.0, "next morning": 1.0}


def visit(**changes: Any) -> Visit:
    """A visit of the day: nothing wrong, warmed up."""
    return Visit(**({"id": "v1", "date": DAY, "answers": NO, "pain": PAIN} | changes))


@pytest.fixture
def ready(reading: Read, case: Build) -> Callable[..., Case]:
    """A case that meets every condition, with some readings or parts replaced."""

    def build(
        *,
        effusion: float = 1,
        flexion: float = 138,
        extension: float = 0,
        quadriceps: float = 180,
        without: tuple[str, ...] = (),
        **more: Any,
    ) -> Case:
        torque = {"day": 200, "mode": "isometric", "angle_deg": 90.0}
        passive = {"day": 200, "motion": "passive", "position": "supine"}
        rows = [
            reading("effusion", "left", effusion, day=200),
            reading("knee_extension", "left", extension, **passive),
            reading("knee_extension", "right", -2, **passive),
            reading("knee_flexion", "left", flexion, **passive),
            reading("knee_flexion", "right", 140, **passive),
            reading("quadriceps_torque", "left", quadriceps, **torque),
            reading("quadriceps_torque", "right", 200, **torque),
        ]
        rows = [r for r in rows if r.measure not in without]
        return case(*rows, **({"visits": (visit(),)} | more))

    return build


def item(answer: HopGoAhead, key: str) -> tuple[str, str]:
    """Verdict and words of one condition."""
    (found,) = (i for i in answer.items if i.key == key)
    return found.verdict, found.words


def test_all_met(ready: Any) -> None:
    """Every condition met makes the whole met, and still nothing is permitted by it."""
    answer = hop_go_ahead(ready())

    assert {i.verdict for i in answer.items} == {"met"}
    assert answer.verdict == "met"
    assert set(STOP_RULES) <= set(answer.cautions)
    assert any("not permission" in text for text in answer.cautions)
    assert "cleared" not in str(answer.explain()).lower()
    assert "unknown" not in str(answer)


@pytest.mark.parametrize(
    ("changes", "key"),
    [
        ({"effusion": 2}, "effusion"),
        ({"flexion": 134}, "flexion"),
        ({"extension": 1}, "extension"),
        ({"quadriceps": 159}, "quadriceps"),
        ({"visits": (visit(pain=PAIN | {"next morning": 3.0}),)}, "pain"),
        ({"visits": (visit(answers=NO | {"giving_way": "yes"}),)}, "signs"),
        ({"visits": (visit(answers=NO | {"warm_up_done": "no"}),)}, "warm-up"),
        ({"surgery": {"concomitant": ("multiligament",)}}, "scope"),
        ({"limits": (Limit(kind="jumping and hopping", start=DAY),)}, "limit"),
        ({"limits": (Limit(kind="weight bearing", start=DAY, value=50, unit="pct"),)}, "limit"),
    ],
)
def test_one_failing_condition_holds_everything(changes: dict[str, Any], key: str, ready: Any) -> None:
    """A single condition not met makes the whole not met, and the summary names it."""
    answer = hop_go_ahead(ready(**changes))

    assert item(answer, key)[0] == "not met"
    assert answer.verdict == "not met"
    assert "not met:" in answer.summary


@pytest.mark.parametrize(
    ("changes", "key"),
    [
        ({"without": ("effusion",)}, "effusion"),
        ({"without": ("knee_extension",)}, "extension"),
        ({"without": ("knee_flexion",)}, "flexion"),
        ({"without": ("quadriceps_torque",)}, "quadriceps"),
        ({"surgery": {"harvest_side": "right"}}, "quadriceps"),
        ({"visits": ()}, "pain"),
        ({"visits": ()}, "signs"),
        ({"visits": ()}, "warm-up"),
        ({"visits": (visit(pain={"rest": 0.0}),)}, "pain"),
        ({"visits": (visit(answers=NO | {"fever": "not asked"}),)}, "signs"),
        ({"visits": (visit(answers={k: v for k, v in NO.items() if k != "warm_up_done"}),)}, "warm-up"),
    ],
)
def test_unknown_never_passes(changes: dict[str, Any], key: str, ready: Any) -> None:
    """What is not recorded, or cannot be trusted, is unknown; the whole is then unknown and warns."""
    answer = hop_go_ahead(ready(**changes), DAY)

    assert item(answer, key)[0] == "unknown"
    assert answer.verdict == "unknown"
    assert any("does not count as met" in text for text in answer.cautions)


def test_the_line_itself(ready: Any) -> None:
    """Trace, exactly 80 % and pain of 2 pass; full motion is grade A: flexion ≤ 5°, extension < 3°."""
    assert hop_go_ahead(ready(effusion=1, quadriceps=160, flexion=135, extension=0.9)).verdict == "met"
    assert item(hop_go_ahead(ready(flexion=134.9)), "flexion")[0] == "not met"
    assert item(hop_go_ahead(ready(extension=1)), "extension")[0] == "not met"


def test_an_old_finding_is_unknown(ready: Any) -> None:
    """Eight days later effusion, motion and pain no longer speak; strength of four weeks still does."""
    later = DAY + dt.timedelta(days=8)
    answer = hop_go_ahead(ready(), later)

    assert item(answer, "effusion")[0] == "unknown"
    assert "8 days ago" in item(answer, "effusion")[1]
    assert item(answer, "pain")[0] == "unknown"
    assert item(answer, "signs")[0] == "unknown"
    assert item(answer, "flexion")[0] == "unknown"
    assert item(answer, "quadriceps")[0] == "met"
    assert item(hop_go_ahead(ready(), DAY + dt.timedelta(days=7)), "effusion")[0] == "met"
    assert item(hop_go_ahead(ready(), DAY + dt.timedelta(days=29)), "quadriceps")[0] == "unknown"


def test_the_worst_of_a_day_counts(ready: Any, reading: Read) -> None:
    """Two grades, two visits or two tests of one day: the worse one decides."""
    hopper = ready()
    swollen = hopper.with_readings(reading("effusion", "left", 3, day=200, id="worse"))
    twice = ready(visits=(visit(), visit(id="v2", pain={"activity": 5.0}, answers=NO | {"locking": "yes"})))

    assert item(hop_go_ahead(swollen), "effusion")[0] == "not met"
    assert item(hop_go_ahead(twice), "pain")[0] == "not met"
    assert item(hop_go_ahead(twice), "signs")[0] == "not met"


def test_an_unknown_quadriceps_test_of_the_day(ready: Any, reading: Read) -> None:
    """One comparable pair does not hide another test of the same day that gives no index."""
    odd = reading(
        "quadriceps_torque", "left", 150, day=200, mode="concentric", speed_deg_per_s=60.0, id="odd"
    )

    assert item(hop_go_ahead(ready().with_readings(odd)), "quadriceps")[0] == "unknown"


def test_a_lifted_limit_does_not_bind(ready: Any) -> None:
    """A limit lifted before the day is not in force; one lifted later still is."""
    start = DAY - dt.timedelta(days=100)
    lifted = Limit(kind="jumping and hopping", start=start, lifted=DAY)
    later = Limit(kind="jumping and hopping", start=start, lifted=DAY + dt.timedelta(days=1))

    assert item(hop_go_ahead(ready(limits=(lifted,))), "limit")[0] == "met"
    assert item(hop_go_ahead(ready(limits=(later,))), "limit")[0] == "not met"


def test_an_override_is_shown_and_changes_nothing(ready: Any) -> None:
    """What a clinician recorded against a condition stands in the answer; the condition stays as it is."""
    decided = visit(
        override_of="effusion at most trace", reason="chronic, unchanged", decided_by="MO", surgeon_told="yes"
    )
    answer = hop_go_ahead(ready(effusion=2, visits=(decided,)))

    assert answer.verdict == "not met"
    assert "an override is recorded" in answer.summary
    assert "effusion at most trace; reason: chronic, unchanged; decided by: MO" in answer.overrides[0]
    bare = hop_go_ahead(ready(effusion=2, visits=(visit(override_of="effusion"),)))
    assert "reason: not given" in bare.overrides[0]
