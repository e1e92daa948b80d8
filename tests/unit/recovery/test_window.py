"""The window: where it opens, what is outside and what bends the course."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable

import pytest

from kneecase.errors import InputError
from kneecase.record import Case, Event
from kneecase.recovery.window import restarted_by, window_of

Knee = Callable[..., Case]
After = Callable[[float], dt.date]


def test_opens_with_surgery(knee: Knee, after: After) -> None:
    """Without an event the weeks run from surgery; the day itself is outside, as is what came before."""
    window = window_of(knee({1: 80, 4: 95}), after(4), None)

    assert (window.origin, window.opened_by) == (after(0), "surgery")
    assert window.reason_outside(after(1)) == ""
    assert "on the day of the surgery" in window.reason_outside(after(0))
    assert window.reason_outside(after(-1)) == "before the surgery: pre-operative reference"
    assert window.words() == "from the surgery on 2026-01-05 to 2026-02-02"


@pytest.mark.parametrize("kind", ["manipulation", "re-injury", "second surgery"])
def test_opens_with_the_latest_break(kind: str, knee: Knee, after: After) -> None:
    """An event that restarts the course opens the window, and earlier readings say so."""
    case = knee({1: 80}, events=[Event(date=after(5), kind=kind), Event(date=after(3), kind=kind)])
    window = window_of(case, after(8), None)

    assert (window.origin, window.opened_by) == (after(5), kind)
    assert window.reason_outside(after(4)) == f"before the {kind} on {after(5).isoformat()}"
    assert restarted_by(case, after(8)).date == after(5)
    assert restarted_by(case, after(4)).date == after(3)


def test_other_events_do_not_open_it(knee: Knee, after: After) -> None:
    """A change of programme bends the course without restarting it."""
    change = Event(date=after(3), kind="change of programme")
    window = window_of(knee({1: 80}, events=[change]), after(8), None)

    assert window.opened_by == "surgery"
    assert window.bent_by == (change,)


def test_an_event_later_than_the_day_looked_at_is_not_known(knee: Knee, after: After) -> None:
    """The window on an earlier day does not know the manipulation to come."""
    case = knee({1: 80}, events=[Event(date=after(5), kind="manipulation")])

    assert window_of(case, after(4), None).opened_by == "surgery"


def test_since_a_date(knee: Knee, after: After) -> None:
    """A given date is inside, overrides the events, and what it spans is named."""
    push = Event(date=after(5), kind="manipulation")
    window = window_of(knee({1: 80}, events=[push]), after(8), after(2))

    assert window.reason_outside(after(2)) == ""
    assert window.reason_outside(after(1.5)) == f"before {after(2).isoformat()}"
    assert window.bent_by == (push,)
    assert window.words().startswith("from 2026-01-19 to")


def test_since_before_surgery_spans_it(knee: Knee, after: After) -> None:
    """A date before surgery makes the surgery itself an event inside."""
    window = window_of(knee({1: 80}), after(4), after(-4))

    assert [e.kind for e in window.bent_by] == ["surgery"]
    assert window.reason_outside(after(-2)) == ""


def test_since_an_event(knee: Knee, after: After) -> None:
    """The kind of an event stands for its latest date; weeks count from there."""
    events = [Event(date=after(w), kind="change of programme") for w in (3, 6)]
    window = window_of(knee({1: 80}, events=events), after(8), "change of programme")

    assert window.origin == after(6)
    assert window_of(knee({1: 80}, events=events), after(8), "surgery").origin == after(0)


def test_before_surgery_everything_counts(knee: Knee, after: After) -> None:
    """On a day before surgery the whole time before it is the window, weeks counting down to surgery."""
    window = window_of(knee({-3: 120}), after(-1), None)

    assert window.reason_outside(after(-30)) == ""
    assert window.words() == "before surgery, up to 2025-12-29"


def test_refusals(knee: Knee, after: After) -> None:
    """An unknown event, one that is not recorded, a later date and a time of day are refused."""
    case = knee({1: 80}, events=[Event(date=after(6), kind="other")])

    with pytest.raises(InputError, match=r"a date or one of surgery, manipulation.*'2026-01-19'"):
        window_of(case, after(8), "2026-01-19")
    with pytest.raises(InputError, match=r"must be recorded up to .* Events recorded: other on 2026-02-16"):
        window_of(case, after(8), "manipulation")
    with pytest.raises(InputError, match="Events recorded: none"):
        window_of(knee({1: 80}), after(8), "manipulation")
    with pytest.raises(InputError, match="must not lie after"):
        window_of(case, after(8), after(9))
    with pytest.raises(InputError, match="since must be a date or the kind"):
        window_of(case, after(8), dt.datetime(2026, 1, 19))
