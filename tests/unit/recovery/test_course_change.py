"""Change of course and track record."""

from __future__ import annotations

import pytest

from kneecase.errors import InputError
from kneecase.recovery import course_change, recovery_prior, track_record

COURSES = recovery_prior("knee_flexion", other_side=140, graft="patellar tendon").courses
STEADY = [75, 88, 98, 106, 113, 118]
FALLEN = [75, 88, 98, 90, 88, 91]
WEEKS = [1, 2, 3, 4, 5, 6]


def test_a_fall_is_found_where_it_lies() -> None:
    """Odds of ten or more, and the first reading after the fall is named."""
    change = course_change(WEEKS, FALLEN, sem=1.8, courses=COURSES)

    assert change is not None
    assert change.odds > 10
    assert (change.place, change.later) == (3, 3)
    assert 0 < change.chance <= 1


def test_a_steady_course_is_left_alone() -> None:
    """Readings along one course give odds well below one."""
    change = course_change(WEEKS, STEADY, sem=1.8, courses=COURSES)

    assert change is not None
    assert change.odds < 0.5


def test_odds_follow_the_chance_beforehand() -> None:
    """Twice the odds beforehand give twice the odds after."""
    half = course_change(WEEKS, FALLEN, sem=1.8, courses=COURSES, beforehand=0.5)
    third = course_change(WEEKS, FALLEN, sem=1.8, courses=COURSES, beforehand=1 / 3)

    assert half is not None
    assert third is not None
    assert half.odds == pytest.approx(2 * third.odds)


def test_two_readings_cannot_tell() -> None:
    """With fewer than three readings there is nothing to say, and one reading has no track record."""
    assert course_change([1, 2], [80, 90], sem=1.8, courses=COURSES) is None
    assert track_record([1], [80], sem=1.8, courses=COURSES) == ()


def test_a_forecast_knows_only_what_came_before() -> None:
    """Changing the last reading changes no forecast but what came beside it."""
    record = track_record(WEEKS, STEADY, sem=1.8, courses=COURSES)
    other = track_record(WEEKS, [*STEADY[:-1], 60], sem=1.8, courses=COURSES)

    assert [f.low for f in other] == pytest.approx([f.low for f in record])
    assert [f.high for f in other] == pytest.approx([f.high for f in record])
    assert not other[-1].is_inside
    assert [f.place for f in record] == [1, 2, 3, 4, 5]
    assert all(f.low < f.middle < f.high for f in record)


def test_refusals() -> None:
    """Readings out of order and a chance of 0 or 1 beforehand are refused."""
    for function in (course_change, track_record):
        with pytest.raises(InputError, match="order of time"):
            function([2, 1, 3], [80, 90, 95], sem=1.8, courses=COURSES)
    with pytest.raises(InputError, match="neither included"):
        course_change(WEEKS, STEADY, sem=1.8, courses=COURSES, beforehand=1.0)
