"""Cases built in memory: left knee operated on 2 March 2026, and readings a number of days after."""

from __future__ import annotations

import datetime as dt
import itertools
from collections.abc import Callable
from typing import Any

import pytest

from kneecase.record import Athlete, Case, Condition, Reading, Surgery, measure_named

SURGERY_DATE = dt.date(2026, 3, 2)
CONDITION = (
    "motion",
    "timing",
    "position",
    "mode",
    "angle_deg",
    "speed_deg_per_s",
    "lever_arm_m",
    "administration",
)


@pytest.fixture
def reading() -> Callable[..., Reading]:
    """Build one reading: measure, side, value, days after surgery, and any field or condition by name."""
    numbers = itertools.count(1)

    def build(measure: str, side: str | None, value: float | None, day: int = 42, **more: Any) -> Reading:
        condition = Condition(**{name: more.pop(name) for name in CONDITION if name in more})
        return Reading(
            **{
                "id": f"m{next(numbers):03d}",
                "date": SURGERY_DATE + dt.timedelta(days=day),
                "measure": measure,
                "side": side,
                "value": value,
                "unit": measure_named(measure).unit,
                "condition": condition,
                **more,
            }
        )

    return build


@pytest.fixture
def case() -> Callable[..., Case]:
    """Build one case from readings; athlete and surgery fields by name, the rest as fields of the case."""

    def build(
        *readings: Reading,
        athlete: dict[str, Any] | None = None,
        surgery: dict[str, Any] | None = None,
        **more: Any,
    ) -> Case:
        who = {"pseudonym": "Wren", "age_years": 24.0, "sex": "female", "skeletally_mature": True}
        what = {
            "date": SURGERY_DATE,
            "side": "left",
            "graft": "hamstring tendon",
            "harvest_side": "left",
            "earlier": {"right": ()},
        }
        return Case(
            athlete=Athlete(**(who | (athlete or {}))),
            surgery=Surgery(**(what | (surgery or {}))),
            readings=tuple(sorted(readings, key=lambda r: r.date)),
            **more,
        )

    return build
