"""The recovery curve of a case: target, limit, change of course, and what cannot be known."""

from __future__ import annotations

import datetime as dt
import math
from collections.abc import Callable
from dataclasses import replace
from typing import Any

import pytest

from kneecase.errors import InputError
from kneecase.record import Case, Event, Limit, Reading
from kneecase.recovery import recovery_curve, recovery_prior

COURSE = {1: 75, 2: 88, 3: 98, 4: 106, 6: 117}
Knee = Callable[..., Case]
Taken = Callable[..., Reading]


@pytest.fixture
def both(knee: Knee, taken: Taken) -> Callable[..., Case]:
    """A knee whose other side flexes to 140°."""

    def made(rows: dict[float, float] = COURSE, **given: Any) -> Case:
        return knee([taken(0.1, 140, side="right"), *(taken(w, v) for w, v in rows.items())], **given)

    return made


def test_it_forecasts_towards_the_other_knee(both: Callable[..., Case]) -> None:
    """The target is the other knee less what counts as full; dates and chances hang together."""
    curve = recovery_curve(both())

    assert curve.target == 135
    assert curve.target_weeks is not None
    early, middle, late = curve.target_weeks
    assert 6 < early < middle <= late
    assert curve.chance_never is not None
    assert 0 < curve.chance_never < 0.5
    assert "135° is reached by" in curve.summary
    assert "never tested on real patients' individual courses" in " ".join(curve.cautions)


def test_every_finding_can_be_asked_why(both: Callable[..., Case]) -> None:
    """The explanation names readings, formula, error, prior and how each value is known."""
    text = str(recovery_curve(both()).explain())

    for word in ("2026-01-12", "A − (A − B)·exp(−k·t)", "ordinary course", "derived here", "hamstring"):
        assert word in text


def test_a_limit_in_force_caps_curve_and_target(both: Callable[..., Case], after: Any) -> None:
    """With flexion limited to 90° neither curve nor target lies beyond it, and stiffness is not read."""
    limit = Limit(kind="flexion", start=after(0), value=90, unit="deg")
    curve = recovery_curve(both({1: 62, 2: 72, 3: 80}, limits=[limit]))

    assert curve.target == 90
    assert curve.band is not None
    assert curve.band.high.max() <= 90
    assert curve.chance_stiff is None
    assert any("Surgeon's limit in force" in text for text in curve.cautions)


def test_a_reading_held_by_a_limit_is_no_plateau(both: Callable[..., Case], after: Any) -> None:
    """Readings at the limit are left out with their reason; the knee is not called stiff for obeying."""
    limit = Limit(kind="flexion", start=after(0), value=90, unit="deg", until=after(6))
    rows = {1: 70, 2: 82, 3: 90, 4: 90, 5: 90, 7: 112}
    curve = recovery_curve(both(rows, limits=[limit]))

    assert len([x for x in curve.left_out if "surgeon's limit" in x.reason]) == 3
    assert curve.chance_stiff is not None
    assert curve.chance_stiff < 0.1


def test_a_change_of_course_is_told_first(both: Callable[..., Case]) -> None:
    """The summary opens with the date and the odds, and the first caution says what to do."""
    curve = recovery_curve(both({1: 75, 2: 88, 3: 98, 4: 90, 5: 88, 6: 91}))

    assert curve.summary.startswith("Since 2026-02-02 this knee follows another course, odds ")
    assert "ask for the new course with since=" in curve.cautions[0]


def test_since_looks_at_the_new_course_alone(both: Callable[..., Case], after: Any) -> None:
    """From a date on, the level is open and the earlier readings are left out."""
    curve = recovery_curve(both({1: 75, 2: 88, 3: 98, 4: 90, 5: 95, 6: 101}), since=after(4))

    assert curve.series is not None
    assert curve.series.values == (90, 95, 101)
    assert curve.prior is not None
    assert any("level at the start is left open" in note for note in curve.prior.notes)


def test_after_a_manipulation_there_is_no_prior(both: Callable[..., Case], after: Any) -> None:
    """Few readings after it: not known, with the reason; four: one weak course that says so."""
    event = Event(date=after(8), kind="manipulation")
    few = recovery_curve(both({6: 88, 9: 100}, events=[event]))
    four = recovery_curve(both({6: 88, 9: 100, 10: 108, 12: 115, 14: 119}, events=[event]))

    assert few.fit is None
    assert "no cohort says what to expect" in few.why_not
    assert four.prior is None
    assert any("No prior: no cohort was found" in text for text in four.cautions)
    assert four.chance_stiff is None


def test_extension_is_put_in_words(knee: Knee, taken: Taken) -> None:
    """A knee that lacked 8° falls towards the other one that hyperextends 4°."""
    rows = [taken(0.1, -4, side="right", measure="knee_extension")]
    rows += [taken(w, v, measure="knee_extension") for w, v in {1: 8, 2: 5, 4: 1, 6: -1}.items()]
    curve = recovery_curve(knee(rows), "knee_extension")

    assert curve.series is not None
    assert curve.series.better == "lower"
    assert curve.target == -1
    assert "hyperextends 1°" in curve.summary


def test_without_the_other_knee_there_is_no_target(knee: Knee) -> None:
    """The curve is shown, no target is made up, and one can be given."""
    case = knee(COURSE)
    curve = recovery_curve(case)

    assert curve.target is None
    assert curve.fit is not None
    assert "No target: the other knee was not measured in the same way" in curve.summary
    assert recovery_curve(case, target=120).target == 120


def test_the_track_record_counts_what_came(both: Callable[..., Case]) -> None:
    """Each reading but the first is held against the forecast made before it."""
    curve = recovery_curve(both())

    assert len(curve.record) == 4
    assert sum(f.is_inside for f in curve.record) >= 3


def test_nothing_later_than_the_day_is_known(both: Callable[..., Case], after: Any) -> None:
    """The answer of an earlier day is the same whether or not later readings exist."""
    early = recovery_curve(both({1: 75, 2: 88, 3: 98}))
    then = recovery_curve(both(), on=after(3))

    assert then.target_weeks == early.target_weeks
    assert then.summary == early.summary


def test_several_testers_are_told_apart(both: Callable[..., Case], knee: Knee, taken: Taken) -> None:
    """Two named testers: the error of one of them, and how far they differ on top."""
    rows = [taken(0.1, 140, side="right")]
    rows += [taken(w, v, tester="KM" if w % 2 else "LS") for w, v in COURSE.items()]
    curve = recovery_curve(knee(rows))

    assert curve.series is not None
    assert curve.series.tester_sd > 0
    assert set(curve.series.testers) == {0, 1}
    assert recovery_curve(both()).series.tester_sd == 0  # type: ignore[union-attr]


def test_a_prior_can_be_given(both: Callable[..., Case]) -> None:
    """Another prior leads to another answer and is the one the answer holds."""
    prior = recovery_prior("knee_flexion", other_side=140, graft="hamstring tendon").with_course(
        "stiff", chance=0.5
    )
    curve = recovery_curve(both({2: 80}), prior=prior)

    assert curve.prior is prior
    assert curve.chance_stiff is not None
    assert recovery_curve(both({2: 80})).chance_stiff < curve.chance_stiff  # type: ignore[operator]
    assert any("mostly what was expected" in text for text in curve.cautions)


def scores(knee: Knee, taken: Taken, values: list[float]) -> Case:
    """A knee with one questionnaire every four weeks."""
    plain = {"motion": "", "timing": "", "position": "", "device": "", "side": None, "unit": "points"}
    return knee([taken(4 * (i + 1), v, measure="ikdc_subjective", **plain) for i, v in enumerate(values)])


def test_scores_start_at_their_first_test(knee: Knee, taken: Taken) -> None:
    """Four totals give a curve without a prior, from the first of them; three are too few."""
    curve = recovery_curve(scores(knee, taken, [45, 58, 66, 71]), "ikdc_subjective")
    few = recovery_curve(scores(knee, taken, [45, 58, 66]), "ikdc_subjective")

    assert curve.series is not None
    assert curve.series.weeks[0] == 0
    assert curve.prior is None
    assert curve.change is None
    assert "4 different ones are needed" in few.why_not


def test_a_day_of_lost_scores_has_no_value(knee: Knee, taken: Taken) -> None:
    """A questionnaire that was given up on its day is passed over; the other days stand."""
    case = scores(knee, taken, [45, 58, 66, 71, 75])
    readings = tuple(
        replace(r, status="lost") if i == 2 else r for i, r in enumerate(case.readings_of("ikdc_subjective"))
    )
    curve = recovery_curve(replace(case, readings=readings), "ikdc_subjective")

    assert curve.series is not None
    assert curve.series.values == (45, 58, 71, 75)


def test_a_prior_can_be_given_for_what_has_no_side(knee: Knee, taken: Taken) -> None:
    """A score belongs to no limb: nothing is said of the other knee, and the prior is used."""
    prior = recovery_prior("knee_flexion", other_side=90)
    curve = recovery_curve(scores(knee, taken, [45, 58]), "ikdc_subjective", prior=prior)

    assert curve.prior is prior
    assert curve.fit is not None
    assert not any("other knee" in text for text in curve.cautions)


def test_symmetry_starts_at_its_first_test(knee: Knee, taken: Taken) -> None:
    """Single hops of both limbs become limb symmetry in percent, aimed at the published line."""
    plain = {
        "motion": "",
        "timing": "",
        "position": "",
        "device": "tape",
        "unit": "cm",
        "measure": "single_hop",
    }
    rows = []
    for week, value in {16: 95, 20: 115, 24: 126, 28: 133}.items():
        for trial in (1, 2):
            rows += [
                taken(week, value, trial=trial, **plain),
                taken(week, 150, trial=trial, side="right", **plain),
            ]
    curve = recovery_curve(knee(rows), "single_hop")

    assert curve.series is not None
    assert curve.series.unit == "pct"
    assert curve.series.weeks == (0, 4, 8, 12)
    assert curve.series.values[0] == pytest.approx(100 * 95 / 150)
    assert curve.target == 90
    assert curve.target_weeks is not None
    assert math.isfinite(curve.target_weeks[0])


def test_girth_is_the_difference_between_limbs(knee: Knee, taken: Taken) -> None:
    """A knee that thins towards the other one falls; a thigh that fills up falls too."""
    plain = {"motion": "", "position": "superior patellar pole", "device": "tape", "unit": "cm"}
    for measure, own in (("knee_girth", [41, 40, 39.4, 39]), ("thigh_girth", [35, 36, 36.6, 37])):
        rows = []
        for week, value in zip((1, 2, 4, 6), own, strict=True):
            rows += [taken(week, value, measure=measure, **plain)]
            rows += [taken(week, 38, measure=measure, side="right", **plain)]
        curve = recovery_curve(knee(rows), measure)
        assert curve.series is not None
        assert curve.series.values == pytest.approx([3, 2, 1.4, 1])
        assert curve.series.better == "lower"


def test_effusion_gets_no_curve(both: Callable[..., Case]) -> None:
    """A grade has no distances: refused with the reason and where to look instead."""
    with pytest.raises(InputError, match="no distances between them"):
        recovery_curve(both(), "effusion")
    with pytest.raises(InputError, match="motion, a hop or strength test"):
        recovery_curve(both(), "calf_girth")
    with pytest.raises(InputError, match="chosen for a motion only"):
        recovery_curve(both(), "single_hop", motion="passive")


def test_what_cannot_be_known_says_why(knee: Knee, taken: Taken) -> None:
    """Outside the scope, before surgery, and without a reading there is no curve but a reason."""
    outside = recovery_curve(knee(COURSE, concomitant=("multiligament",)))
    none = recovery_curve(knee([taken(0.1, 140, side="right")]))
    before = recovery_curve(knee([taken(-2, 130)]), on=dt.date(2025, 12, 30))

    assert "outside the scope" in outside.why_not
    assert "can be used" in none.why_not
    assert "no reading since surgery" in before.why_not
    for curve in (outside, none, before):
        assert curve.fit is None
        assert "not known" in curve.summary
        assert curve.cautions
