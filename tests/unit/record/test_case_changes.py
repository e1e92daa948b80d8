"""A case with something added or taken out is a new case, and nothing is saved."""

from __future__ import annotations

import datetime as dt

import pytest

from kneecase.errors import InputError
from kneecase.record import Athlete, Case, Event, Limit, Reading, Surgery, Visit

DAY = dt.date(2026, 3, 10)


def case() -> Case:
    return Case(
        athlete=Athlete(pseudonym="Wren"),
        surgery=Surgery(date=dt.date(2026, 3, 2), side="left"),
        readings=(
            Reading(id="a", date=DAY, measure="knee_flexion", side="left", value=60.0, unit="deg"),
            Reading(id="b", date=DAY, measure="knee_extension", side="left", value=5.0, unit="deg"),
        ),
        visits=(Visit(id="v1", date=DAY),),
    )


def test_readings_are_taken_out_by_id():
    """The others stay in order; the first case is as it was."""
    first = case()
    assert [r.id for r in first.without_readings("a").readings] == ["b"]
    assert first.without_readings("a", "b").readings == ()
    assert len(first.readings) == 2


def test_a_reading_that_is_not_there_cannot_be_taken_out():
    """A mistyped id is said, not passed over."""
    with pytest.raises(InputError, match="got 'c'"):
        case().without_readings("a", "c")


def test_visits_are_added_in_order_of_date():
    """An earlier visit comes before a later one."""
    earlier = Visit(id="v0", date=dt.date(2026, 3, 5))
    assert [v.id for v in case().with_visits(earlier).visits] == ["v0", "v1"]


def test_a_visit_with_an_id_that_is_there_is_refused():
    """Neither of the two is lost."""
    with pytest.raises(InputError, match="'v1' again"):
        case().with_visits(Visit(id="v1", date=DAY))
    with pytest.raises(InputError, match="'v2' again"):
        case().with_visits(Visit(id="v2", date=DAY), Visit(id="v2", date=DAY))


def test_limits_and_events_come_after_the_others():
    """In the order they are given."""
    first = Limit(kind="running", start=DAY)
    second = Limit(kind="brace", start=DAY)
    event = Event(date=DAY, kind="manipulation")
    changed = case().with_limits(first).with_limits(second).with_events(event)
    assert changed.limits == (first, second)
    assert changed.events == (event,)
