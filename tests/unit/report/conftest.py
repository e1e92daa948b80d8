"""Cases to review."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable

import pytest

from kneecase.record import Athlete, Case, Condition, Reading, Surgery, Visit

SURGERY = dt.date(2026, 1, 5)


@pytest.fixture
def day() -> Callable[[int], dt.date]:
    """The n-th day after surgery."""
    return lambda n: SURGERY + dt.timedelta(days=n)


@pytest.fixture
def make_case() -> Callable[..., Case]:
    """A maker of cases with a left operated knee."""

    def made(**more: object) -> Case:
        given = {
            "athlete": Athlete(pseudonym="Bryony"),
            "surgery": Surgery(date=SURGERY, side="left", graft="hamstring tendon"),
            **more,
        }
        return Case(**given)

    return made


@pytest.fixture
def flexion() -> Callable[..., Reading]:
    """A maker of flexion readings, by day after surgery."""

    def made(n: int, value: float | None, **more: object) -> Reading:
        given = {
            "id": f"f{n}-{value}",
            "date": SURGERY + dt.timedelta(days=n),
            "measure": "knee_flexion",
            "side": "left",
            "value": value,
            "unit": "deg",
            "tester": "AB",
            "device": "long-arm goniometer",
            "condition": Condition(motion="passive", timing="before", position="supine"),
            **more,
        }
        return Reading(**given)

    return made


@pytest.fixture
def visit() -> Callable[..., Visit]:
    """A maker of visits, by day after surgery, with answers as keywords."""

    def made(n: int, about: dict[str, object] | None = None, **answers: str) -> Visit:
        return Visit(
            id=f"v{n}-{len(answers)}",
            date=SURGERY + dt.timedelta(days=n),
            answers=answers,
            **(about or {}),
        )

    return made
