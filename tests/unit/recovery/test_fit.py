"""The exact fit of a recovery course: what it must do whatever the readings."""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
import pytest

from kneecase.errors import InputError
from kneecase.recovery import NO_PRIOR, Course, fit_recovery, recovery_prior

COURSES = recovery_prior("knee_flexion", other_side=140, graft="patellar tendon").courses
WEEKS, FLEXION = [1, 2, 3, 4, 6], [75, 88, 98, 106, 117]


def test_many_cases_are_each_alone() -> None:
    """A table gives every case what it gets by itself, rows of different length filled up with nan."""
    weeks = np.array([[1, 2, 3, 4, 6], [2, 4, np.nan, np.nan, np.nan]])
    values = np.array([[75, 88, 98, 106, 117], [82, 96, np.nan, np.nan, np.nan]])
    many = fit_recovery(weeks, values, sem=[1.8, 3.0], courses=COURSES)
    each = [
        fit_recovery(WEEKS, FLEXION, sem=1.8, courses=COURSES),
        fit_recovery([2, 4], [82, 96], sem=3.0, courses=COURSES),
    ]

    assert many.chance_stiff == pytest.approx([f.chance_stiff for f in each])
    assert many.chance_by(130, 10) == pytest.approx([f.chance_by(130, 10) for f in each])
    assert many.week_of(130) == pytest.approx(np.array([f.week_of(130) for f in each]), rel=1e-6)
    assert many.at([4, 12]).high == pytest.approx(np.array([f.at([4, 12]).high for f in each]), rel=1e-4)


def test_a_cohort_agrees_with_single_cases() -> None:
    """The leaner grid of a large table stays within 0.01 in probability of the fine one."""
    random = np.random.default_rng(3)
    weeks = np.sort(random.uniform(0.5, 12, (150, 6)), axis=1)
    values = 139 - 79 * np.exp(-0.24 * weeks) + random.normal(0, 3, weeks.shape)
    lean = fit_recovery(weeks, values, sem=1.8, courses=COURSES)
    fine = fit_recovery(weeks[:50], values[:50], sem=1.8, courses=COURSES)

    for week in (5.0, 10.0, math.inf):
        assert np.asarray(lean.chance_by(130, week))[:50] == pytest.approx(
            fine.chance_by(130, week), abs=0.01
        )


def test_a_falling_measure_is_the_mirror_of_a_rising_one() -> None:
    """With every sign turned, chances stay and values turn."""
    turned = [replace(c, plateau=-c.plateau, start=-c.start) for c in COURSES]
    up = fit_recovery(WEEKS, FLEXION, sem=1.8, courses=COURSES)
    down = fit_recovery(WEEKS, [-v for v in FLEXION], sem=1.8, courses=turned, better="lower")

    assert down.chance_by(-130, 10) == pytest.approx(up.chance_by(130, 10))
    assert down.at([10]).low == pytest.approx(-up.at([10]).high)
    assert down.courses == tuple(turned)


def test_the_week_of_a_target_has_its_chance() -> None:
    """The chance of standing at the target in the week given for a chance is that chance."""
    fit = fit_recovery(WEEKS, FLEXION, sem=1.8, courses=COURSES)
    for chance in (0.1, 0.5, 0.9):
        week = float(fit.week_of(130, chances=[chance])[0])
        assert fit.chance_by(130, week) == pytest.approx(chance, abs=1e-3)


def test_what_is_never_reached_has_no_week() -> None:
    """A target beyond every plateau has an infinite week and a chance of never near one."""
    fit = fit_recovery(WEEKS, FLEXION, sem=1.8, courses=COURSES)

    assert all(math.isinf(week) for week in fit.week_of(165))
    assert fit.chance_never(165) == pytest.approx(1, abs=1e-6)
    assert fit.week_of(0)[0] == 0


def test_a_stuck_knee_is_called_stiff() -> None:
    """Readings that level out at 98° put the knee on the stiff course."""
    fit = fit_recovery([2, 3, 5, 7, 9, 12], [80, 88, 95, 97, 98, 98], sem=1.8, courses=COURSES)

    assert fit.chance_stiff > 0.95
    assert fit.chance_of("ordinary") == pytest.approx(1 - fit.chance_stiff)


def test_without_a_prior_one_weak_course_stands_in() -> None:
    """It is named so, has no stiff course, and follows a change of unit of value and time exactly."""
    fit = fit_recovery(WEEKS, FLEXION, sem=1.8)
    other = fit_recovery([7 * w for w in WEEKS], [10 * v + 3 for v in FLEXION], sem=18.0)

    assert [c.name for c in fit.courses] == [NO_PRIOR]
    assert math.isnan(fit.chance_stiff)
    assert other.chance_by(1303, 70) == pytest.approx(fit.chance_by(130, 10), abs=1e-6)


def test_an_unknown_error_is_estimated() -> None:
    """Without an error the band is that of the scatter: wide for rough readings, narrow for smooth ones."""
    smooth = fit_recovery(WEEKS, FLEXION, courses=COURSES).at([5])
    rough = fit_recovery(WEEKS, [70, 95, 92, 110, 113], courses=COURSES).at([5])

    assert rough.high[0] - rough.low[0] > 1.5 * (smooth.high[0] - smooth.low[0])


def test_offsets_of_testers_are_reckoned_with() -> None:
    """A second tester who reads 10° more pulls the curve less when testers are named."""
    weeks, testers = [1, 2, 3, 4, 5, 6, 7, 8], [0, 1] * 4
    truth = [139 - 79 * math.exp(-0.24 * w) for w in weeks]
    read = [v + 10 * t for v, t in zip(truth, testers, strict=True)]
    named = fit_recovery(weeks, read, sem=1.8, courses=COURSES, testers=testers, tester_sd=6.0).at([8])
    unnamed = fit_recovery(weeks, read, sem=1.8, courses=COURSES).at([8])

    assert named.low[0] < truth[-1] < named.high[0]
    assert named.high[0] - named.low[0] > unnamed.high[0] - unnamed.low[0]


def test_testers_who_do_not_differ_change_nothing() -> None:
    """Naming testers with no spread between them gives the same answer."""
    named = fit_recovery(WEEKS, FLEXION, sem=1.8, courses=COURSES, testers=[0, 1, 0, 1, 0])
    assert named.log_evidence == fit_recovery(WEEKS, FLEXION, sem=1.8, courses=COURSES).log_evidence


def test_each_case_may_have_its_own_other_knee() -> None:
    """Courses with one number a case are the courses of each case alone."""
    prior = recovery_prior("knee_flexion", other_side=np.array([140.0, 150.0]))
    both = fit_recovery([WEEKS, WEEKS], [FLEXION, FLEXION], sem=1.8, courses=prior.courses)
    alone = recovery_prior("knee_flexion", other_side=150.0)

    expected = fit_recovery(WEEKS, FLEXION, sem=1.8, courses=alone.courses).chance_by(140, 20)
    assert np.asarray(both.chance_by(140, 20))[1] == pytest.approx(expected)


@pytest.mark.parametrize(
    ("given", "words"),
    [
        ({"weeks": [1, 2], "values": [80]}, "one entry a reading"),
        ({"weeks": [1, math.nan], "values": [80, 90]}, "finite numbers"),
        ({"weeks": [[1, math.nan]], "values": [[80, 90]]}, "both nan"),
        (
            {"weeks": [[math.nan, math.nan]], "values": [[math.nan, math.nan]]},
            "each case must have a reading",
        ),
        ({"weeks": [-1, 2], "values": [80, 90]}, "0 weeks or later"),
        ({"weeks": ["a"], "values": [80]}, "must be numbers"),
        ({"weeks": [[1], [1, 2]], "values": [80]}, "rows of one length"),
        ({"weeks": [1, 2], "values": [80, 90], "sem": 0.0}, "above 0"),
        ({"weeks": [1, 2], "values": [80, 90], "sem": [1.0, 2.0]}, "one for each of 1 cases"),
        ({"weeks": [1, 2], "values": [80, 80], "sem": None}, "two different readings"),
        ({"weeks": [1, 1], "values": [80, 82], "courses": None}, "readings of one day"),
        ({"weeks": [1, 2], "values": [80, 90], "courses": []}, "one or more Course"),
        ({"weeks": [1, 2], "values": [80, 90], "courses": COURSES[:1]}, "must sum to 1"),
        ({"weeks": [1, 2], "values": [80, 90], "better": "more"}, "'higher' or 'lower'"),
        ({"weeks": [1, 2], "values": [80, 90], "testers": [0.5, 1]}, "whole numbers"),
    ],
)
def test_refusals_name_the_thing(given: dict[str, object], words: str) -> None:
    """Bad input is refused in a sentence that names it."""
    with pytest.raises(InputError, match=words):
        fit_recovery(**{"sem": 1.8, "courses": COURSES, **given})  # type: ignore[arg-type]


def test_weeks_and_levels_asked_for_are_checked() -> None:
    """A week before the start, a level or chance outside 0 to 1 and a target that is none are refused."""
    fit = fit_recovery(WEEKS, FLEXION, sem=1.8, courses=COURSES)
    with pytest.raises(InputError, match="0 weeks or later"):
        fit.at([-1])
    with pytest.raises(InputError, match="0 weeks or later"):
        fit.chance_by(130, -1)
    with pytest.raises(InputError, match="level"):
        fit.at([1], level=80)
    with pytest.raises(InputError, match="target"):
        fit.chance_never(math.nan)


def test_a_course_is_checked_when_it_is_made() -> None:
    """A spread of nothing, a chance above one and a field of the wrong length are refused."""
    with pytest.raises(InputError, match="plateau_sd of the stiff course"):
        replace(COURSES[1], plateau_sd=0.0)
    with pytest.raises(InputError, match="chance of the ordinary course"):
        replace(COURSES[0], chance=1.2)
    with pytest.raises(InputError, match="name must say"):
        replace(COURSES[0], name=" ")
    long = [replace(c, plateau=np.array([130.0, 131.0, 132.0])) for c in COURSES]
    with pytest.raises(InputError, match="one for each of 1 cases"):
        fit_recovery(WEEKS, FLEXION, sem=1.8, courses=long)
    assert isinstance(COURSES[0], Course)
