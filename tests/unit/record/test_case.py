"""A case is read-only, knows its sides and weeks, and never looks into the future."""

from __future__ import annotations

import datetime as dt

import pytest

from kneecase.errors import InputError
from kneecase.record import (
    Athlete,
    Case,
    Event,
    Limit,
    Reading,
    Surgery,
    Visit,
    banner_of,
    limit_words,
    other_side,
)

SURGERY = dt.date(2026, 1, 5)


def day(n):
    """The n-th day after surgery."""
    return SURGERY + dt.timedelta(days=n)


def reading(id, n, value=90.0, side="left", measure="knee_flexion", **more):
    """One reading on day n."""
    return Reading(id=id, date=day(n), measure=measure, side=side, value=value, unit="deg", **more)


def case(**more):
    """A small case, left knee."""
    given = {"athlete": Athlete(pseudonym="Bryony"), "surgery": Surgery(date=SURGERY, side="left")}
    return Case(**{**given, **more})


def test_sides_and_limbs():
    """Left and right become involved and uninvolved."""
    c = case()

    assert (c.involved, c.uninvolved, other_side("right")) == ("left", "right", "left")
    assert (c.limb("left"), c.limb("right"), c.limb(None)) == ("involved", "uninvolved", "")


def test_the_last_date_is_the_last_recorded_one():
    """Without rows it is the surgery; a visit counts as much as a reading."""
    assert case().last_date == SURGERY
    assert case(readings=(reading("a", 9),), visits=(Visit(id="v", date=day(11)),)).last_date == day(11)


def test_weeks_count_days_by_seven_also_before_surgery_and_from_an_event():
    """Week = days ÷ 7."""
    c = case()

    assert c.weeks(day(10)) == pytest.approx(10 / 7)
    assert c.weeks(day(-14)) == -2
    assert c.weeks(day(21), since=day(7)) == 2


def test_as_of_hides_everything_later():
    """Readings, visits, events, limits and even the lifting of a limit that came later are unknown."""
    c = case(
        readings=(reading("a", 3), reading("b", 9)),
        visits=(Visit(id="v", date=day(8)),),
        events=(Event(date=day(9), kind="manipulation"),),
        limits=(
            Limit(kind="flexion", start=day(0), value=90, unit="deg", lifted=day(9)),
            Limit(kind="running", start=day(9)),
        ),
    )

    early = c.as_of(day(5))

    assert [r.id for r in early.readings] == ["a"]
    assert early.visits == ()
    assert early.events == ()
    assert [limit.kind for limit in early.limits] == ["flexion"]
    assert early.limits[0].lifted is None
    assert early.limit("flexion", day(30)) is not None
    assert len(c.readings) == 2


@pytest.mark.parametrize("bad", ["2026-01-06", dt.datetime(2026, 1, 6), None])
def test_as_of_wants_a_calendar_date(bad):
    """A text or a time of day is refused."""
    with pytest.raises(InputError, match="calendar date"):
        case().as_of(bad)


def test_readings_are_chosen_by_measure_side_day_and_motion():
    """Filters narrow; an unknown measure is refused with a near one."""
    passive = reading("p", 4)
    c = case(readings=(passive, reading("r", 4, side="right"), reading("later", 8)))

    assert [r.id for r in c.readings_of("knee_flexion", side="left")] == ["p", "later"]
    assert [r.id for r in c.readings_of("knee_flexion", on=day(4))] == ["p", "r"]
    assert [r.id for r in c.readings_of("knee_flexion", until=day(4), side="left", motion="")] == ["p"]
    assert c.readings_of("knee_flexion", motion="active") == ()
    with pytest.raises(InputError, match="Did you mean knee_flexion"):
        c.readings_of("knee_flexon")


def test_a_limit_binds_until_its_last_day_or_until_lifted():
    """The last day still counts; the day of lifting no longer does; no end means until lifted."""
    until = Limit(kind="flexion", start=day(1), until=day(5), value=90, unit="deg")
    lifted = Limit(kind="running", start=day(1), lifted=day(5))
    open_ended = Limit(kind="brace", start=day(1))

    assert [until.in_force(day(n)) for n in (0, 1, 5, 6)] == [False, True, True, False]
    assert [lifted.in_force(day(n)) for n in (4, 5)] == [True, False]
    assert open_ended.in_force(day(4000))


def test_the_tighter_of_two_limits_wins():
    """Less flexion, more extension kept back; one without a number allows nothing."""
    c = case(
        limits=(
            Limit(kind="flexion", start=day(0), value=90, unit="deg"),
            Limit(kind="flexion", start=day(0), value=60, unit="deg"),
            Limit(kind="extension", start=day(0), value=5, unit="deg"),
            Limit(kind="extension", start=day(0), value=10, unit="deg"),
            Limit(kind="weight bearing", start=day(0), value=50, unit="pct"),
            Limit(kind="weight bearing", start=day(0)),
        )
    )

    assert c.limit("flexion", day(2)).value == 60
    assert c.limit("extension", day(2)).value == 10
    assert c.limit("weight bearing", day(2)).value is None
    assert c.limit("running", day(2)) is None
    assert c.limit("flexion", day(-1)) is None


def test_adding_readings_makes_a_new_case_in_order_of_date():
    """The old case stays as it was; an id is used once."""
    c = case(readings=(reading("a", 9),))

    more = c.with_readings(reading("b", 3))

    assert [r.id for r in more.readings] == ["b", "a"]
    assert [r.id for r in c.readings] == ["a"]
    with pytest.raises(InputError, match="'a'"):
        c.with_readings(reading("a", 12))


def test_a_question_nobody_asked_is_not_answered_no():
    """Silence is 'not asked'."""
    visit = Visit(id="v", date=day(1), answers={"fever": "no"})

    assert visit.answer("fever") == "no"
    assert visit.answer("chest_pain") == "not asked"


def test_the_banner_names_side_graft_week_and_limits():
    """What stands on every page, so that nobody acts on the wrong knee."""
    c = case(
        surgery=Surgery(
            date=SURGERY,
            side="left",
            graft="patellar tendon",
            harvest_side="right",
            allograft=True,
            revision=True,
            concomitant=("osteotomy",),
        ),
        limits=(
            Limit(kind="flexion", start=day(0), value=90, unit="deg", until=day(30)),
            Limit(kind="extension", start=day(0), value=10, unit="deg"),
            Limit(kind="running", start=day(0)),
            Limit(kind="brace", start=day(0), note="locked for walking"),
        ),
    )

    line = banner_of(c, day(14)).line()

    for text in (
        "Bryony",
        "LEFT",
        "patellar tendon (allograft), harvested on the right, revision",
        "week 2 (2026-01-19)",
        "flexion up to 90° until 2026-02-04",
        "extension not past 10° short of straight",
        "no running",
        "brace: locked for walking",
        "outside the scope of kneecase: osteotomy",
    ):
        assert text in line
    assert "none recorded" in banner_of(case()).line()
    assert (
        limit_words(Limit(kind="weight bearing", start=day(0), value=50, unit="pct"))
        == "weight bearing up to 50%"
    )
