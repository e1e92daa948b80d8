"""The series: one way of taking a reading, the rest left out with a reason."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable
from typing import Any

import pytest

from kneecase.errors import InputError
from kneecase.record import Case, Reading
from kneecase.recovery.series import Series, series_of
from kneecase.recovery.window import window_of

Knee = Callable[..., Case]
Taken = Callable[..., Reading]
After = Callable[[float], dt.date]


def series(case: Case, **asked: Any) -> Series:
    """The flexion series over the whole time since surgery."""
    return series_of(case, "knee_flexion", window_of(case, case.last_date, None), **asked)


def test_days_weeks_and_degrees(knee: Knee, after: After) -> None:
    """One entry a day in order, weeks from the start of the window."""
    found = series(knee({1: 80, 3: 95, 2: 90}))

    assert found.weeks == (1.0, 2.0, 3.0)
    assert found.degrees == (80.0, 90.0, 95.0)
    assert found.dates == (after(1), after(2), after(3))
    assert found.words() == "passive, supine, before treatment"


def test_trials_of_a_day_count_as_their_mean(knee: Knee, taken: Taken) -> None:
    """Three trials are one day, all three used."""
    found = series(knee([taken(1, 80, trial=1), taken(1, 82, trial=2), taken(1, 87, trial=3)]))

    assert found.degrees == (83.0,)
    assert len(found.readings) == 3


def test_passive_before_active_where_it_has_two_days(knee: Knee, taken: Taken) -> None:
    """Passive leads with two days; with one, active of two days does; asked for, either comes."""
    passive = [taken(w, 90 + w) for w in (1, 2)]
    active = [taken(w, 80 + w, motion="active") for w in (1, 2, 3)]

    assert series(knee([*passive, *active])).motion == "passive"
    assert series(knee([*passive[:1], *active])).motion == "active"
    assert series(knee(passive[:1])).motion == "passive"
    assert series(knee([*passive, *active]), motion="active").degrees == (81.0, 82.0, 83.0)


def test_before_and_after_treatment_are_never_mixed(knee: Knee, taken: Taken) -> None:
    """Before treatment leads, readings after it are left out with the reason, and alone they are a series."""
    before = [taken(w, 90 + w) for w in (1, 2)]
    warm = [taken(w, 99 + w, timing="after") for w in (1, 2, 3)]
    found = series(knee([*before, *warm]))

    assert found.timing == "before"
    assert {x.reason for x in found.left_out} == {"after treatment; this series is before treatment"}
    assert found.other_ways == ("passive, supine, after treatment",)
    assert series(knee(warm)).timing == "after"
    assert series(knee([*before, *warm]), timing="after").degrees == (100.0, 101.0, 102.0)


def test_unsaid_timing_leads_only_with_more_days(knee: Knee, taken: Taken) -> None:
    """Before treatment wins an equal number of days; an unsaid timing with more days leads."""
    before = [taken(w, 90 + w) for w in (1, 2)]
    unsaid = [taken(w, 92 + w, timing="") for w in (3, 4, 5)]

    assert series(knee([*before, *unsaid[:2]])).timing == "before"
    found = series(knee([*before, *unsaid]))
    assert found.timing == ""
    assert found.words() == "passive, supine, before or after treatment not said"
    assert found.left_out[0].reason == "before treatment; this series is before or after treatment not said"


def test_one_position(knee: Knee, taken: Taken) -> None:
    """The position with most days, the latest of equals; spelling and blanks do not split it."""
    prone = [taken(w, 85 + w, position="prone") for w in (4, 5)]
    supine = [taken(1, 80), taken(2, 84, position=" Supine ")]

    assert series(knee([*supine, *prone])).position == "prone"
    assert series(knee([*supine, taken(3, 88), *prone])).degrees == (80.0, 84.0, 88.0)
    assert series(knee([*supine, *prone]), position="Supine").degrees == (80.0, 84.0)
    assert series(knee([*supine, *prone])).left_out[0].reason == "supine; this series is prone"


def test_what_does_not_count_is_named(knee: Knee, taken: Taken) -> None:
    """No number, a lost or a practice trial, and a reading before surgery are left out, each with why."""
    case = knee(
        [
            taken(-1, 140),
            taken(1, None, missing="unsafe"),
            taken(2, 70, status="practice"),
            taken(3, 71, status="lost"),
            taken(4, 90),
        ]
    )
    reasons = [x.reason for x in series(case).left_out]

    assert reasons == [
        "before the surgery: pre-operative reference",
        "no number: unsafe",
        "practice trial: kept, not scored",
        "lost trial: kept, not scored",
    ]
    assert series(case).degrees == (90.0,)


def test_the_other_side_is_not_in_it(knee: Knee, taken: Taken) -> None:
    """Readings of the other knee are neither used nor left out."""
    found = series(knee([taken(1, 80), taken(1, 140, side="right")]))

    assert found.degrees == (80.0,)
    assert found.left_out == ()


def test_nothing_to_use(knee: Knee) -> None:
    """An empty series has no days and nothing chosen."""
    found = series(knee([]))

    assert found.days == ()
    assert (found.motion, found.timing, found.position) == ("", "", "")


def test_choices_are_from_the_list(knee: Knee) -> None:
    """A motion or timing that is none is refused."""
    with pytest.raises(InputError, match="motion must be one of 'passive', 'active', ''"):
        series(knee({1: 80}), motion="assisted")
    with pytest.raises(InputError, match="timing must be one of 'before', '', 'after'"):
        series(knee({1: 80}), timing="during")
