"""Small cases to draw."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable

import pytest

from kneecase.record import Athlete, Case, Condition, Limit, Reading, Surgery

SURGERY = dt.date(2026, 1, 5)


def day(n: int) -> dt.date:
    """The n-th day after surgery."""
    return SURGERY + dt.timedelta(days=n)


def motion_reading(n: int, value: float | None, *, measure: str = "knee_flexion", **more: object) -> Reading:
    """One passive reading before treatment on day n, of the left knee unless told otherwise."""
    how = {"motion": "passive", "timing": "before", "position": "supine"}
    how |= {key: more.pop(key) for key in tuple(how) if key in more}
    given = {"side": "left", "tester": "AB", "device": "long-arm goniometer", **more}
    name = f"{measure}-{n}-{value}-{given['side']}-{how['motion']}-{how['timing']}-{given['tester']}"
    return Reading(
        id=name,
        date=day(n),
        measure=measure,
        value=value,
        unit="deg",
        condition=Condition(**how),
        **given,
    )


@pytest.fixture
def reading() -> Callable[..., Reading]:
    """A maker of motion readings."""
    return motion_reading


@pytest.fixture
def make_case() -> Callable[..., Case]:
    """A maker of cases with a left operated knee."""

    def made(*readings: Reading, **more: object) -> Case:
        given = {
            "athlete": Athlete(pseudonym="Bryony"),
            "surgery": Surgery(date=SURGERY, side="left"),
            "readings": tuple(sorted(readings, key=lambda r: r.date)),
            **more,
        }
        return Case(**given)

    return made


@pytest.fixture
def rising(make_case: Callable[..., Case]) -> Case:
    """Flexion and extension over nine weeks: two testers, active and passive, a limit, the other knee."""
    weeks = ((7, 62, 12), (15, 74, 9), (26, 88, 6), (40, 101, 4), (61, 118, 2))
    rows = [motion_reading(n, flexion) for n, flexion, _ in weeks]
    rows += [motion_reading(n, ext, measure="knee_extension") for n, _, ext in weeks]
    rows += [
        motion_reading(40, 95, motion="active"),
        motion_reading(61, 112, motion="active", tester="CD"),
        motion_reading(61, 124, timing="after"),
        motion_reading(15, 141, side="right"),
        motion_reading(15, -3, side="right", measure="knee_extension"),
        motion_reading(-10, 139),
    ]
    limit = Limit(kind="flexion", start=SURGERY, value=90, unit="deg", until=day(28))
    return make_case(*rows, limits=(limit,))
