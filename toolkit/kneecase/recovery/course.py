"""A course: one way a knee may come back, as what is expected of it before a reading is taken."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, fields, replace
from typing import Any

import numpy as np
from numpy.typing import NDArray

from kneecase.errors import InputError
from kneecase.measures.accepted import accepted
from kneecase.recovery.lines import Numbers

__all__ = ["STIFF", "Course", "course_column", "restarted"]

STIFF = "stiff"
"""The name of the course whose plateau stays well short."""


@dataclass(frozen=True, kw_only=True)
class Course:
    """One expected course ``A - (A - B) exp(-k t)``: where it starts, where it levels out, how fast.

    ``plateau`` (A) and ``start`` (B) are normal with their standard deviations, in the unit of the measure;
    ``start`` is the level at week 0. ``half_time_weeks`` is the median of the time in which half of the
    remaining way is made (``ln 2 / k``), and ``half_time_log_sd`` the standard deviation of its logarithm.
    ``chance`` is the share of knees on this course. Any field may hold one number for each of many cases.
    """

    name: str
    chance: Numbers
    plateau: Numbers
    plateau_sd: Numbers
    start: Numbers
    start_sd: Numbers
    half_time_weeks: Numbers
    half_time_log_sd: Numbers

    def __post_init__(self) -> None:
        if not self.name.strip():
            raise InputError(f"name must say which course it is, got {self.name!r}.")
        for field in fields(self)[1:]:
            value, what = getattr(self, field.name), f"{field.name} of the {self.name} course"
            if field.name == "chance":
                accepted(what, value, "fraction", low=0.0, high=1.0)
            elif field.name in ("plateau", "start"):
                accepted(what, value)
            else:
                accepted(what, value, above=0.0)

    def turned(self) -> Course:
        """The same course of the measure with its sign turned, so that more is better."""
        return replace(self, plateau=-self.plateau, start=-self.start)


def course_column(course: Course, name: str, cases: int) -> NDArray[np.float64]:
    """One field of a course as one number a case [unit of the field]."""
    value = np.asarray(getattr(course, name), dtype=np.float64)
    if value.ndim > 1 or (value.ndim == 1 and value.size != cases):
        raise InputError(
            f"{name} of the {course.name} course must be one number, or one for each of {cases} cases, got "
            f"an array of shape {value.shape}."
        )
    return np.broadcast_to(value, (cases,))


def restarted(courses: Sequence[Course], level: Numbers | None = None) -> tuple[Course, ...]:
    """The same courses for a knee that starts anew, each course as likely as another.

    With ``level``, the reading before, the new start lies about it, as wide as a start is known. Without
    it the start lies anywhere between the first course's start and plateau, or beyond: normal about the
    middle, half the way and its own spread its standard deviation. A cohort's incidence says nothing about
    such a knee, so it is not used.
    """
    first = courses[0]
    begin, end, spread = (np.asarray(x) for x in (first.start, first.plateau, first.start_sd))
    start: Any = (end + begin) / 2 if level is None else level
    start_sd: Any = np.abs(end - begin) / 2 + spread if level is None else spread
    chance = 1 / len(courses)
    return tuple(
        replace(course, chance=chance, start=np.asarray(start)[()], start_sd=np.asarray(start_sd)[()])
        for course in courses
    )
