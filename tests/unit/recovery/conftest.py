"""Invented knees for the tests of this room."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable, Iterable
from typing import Any

import pytest

from kneecase.record import Athlete, Case, Condition, Event, Limit, Reading, Surgery, Visit

SURGERY = dt.date(2026, 1, 5)


def day(week: float) -> dt.date:
    """The date so many weeks after surgery."""
    return SURGERY + dt.timedelta(days=round(week * 7))


def reading(week: float, value: float | None, **given: Any) -> Reading:
    """One passive reading of knee flexion, supine, before treatment, by one tester, unless told otherwise."""
    condition = {"motion": "passive", "timing": "before", "position": "supine"}
    condition |= {k: given.pop(k) for k in ("motion", "timing", "position") if k in given}
    values: dict[str, Any] = {
        "measure": "knee_flexion",
        "side": "left",
        "unit": "deg",
        "tester": "KM",
        "device": "long-arm goniometer",
        "date": day(week),
        "value": value,
        **given,
    }
    trial = values.get("trial", "")
    values.setdefault(
        "id",
        "-".join(
            str(x)
            for x in (
                values["measure"],
                values["side"],
                values["date"],
                trial,
                values["tester"],
                *condition.values(),
            )
        ),
    )
    return Reading(condition=Condition(**condition), **values)


@pytest.fixture
def taken() -> Callable[..., Reading]:
    """Makes one reading: ``taken(week, degrees, tester=..., motion=...)``."""
    return reading


@pytest.fixture
def after() -> Callable[[float], dt.date]:
    """The date so many weeks after surgery."""
    return day


@pytest.fixture
def knee() -> Callable[..., Case]:
    """Makes a case with a left operated knee: ``knee({1: 80, 2: 90})`` or ``knee([reading, ...])``."""

    def made(
        rows: dict[float, float] | Iterable[Reading],
        *,
        measure: str = "knee_flexion",
        events: Iterable[Event] = (),
        limits: Iterable[Limit] = (),
        visits: Iterable[Visit] = (),
        **surgery: Any,
    ) -> Case:
        if isinstance(rows, dict):
            rows = [reading(week, value, measure=measure) for week, value in rows.items()]
        settings: dict[str, Any] = {
            "graft": "hamstring tendon",
            "harvest_side": "left",
            "earlier": {"right": ()},
            **surgery,
        }
        return Case(
            athlete=Athlete(pseudonym="Plover (invented)", year_of_birth=1999, skeletally_mature=True),
            surgery=Surgery(date=SURGERY, side="left", **settings),
            readings=tuple(sorted(rows, key=lambda r: r.date)),
            events=tuple(events),
            limits=tuple(limits),
            visits=tuple(visits),
        )

    return made
