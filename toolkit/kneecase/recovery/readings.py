"""Readings as the posterior takes them: checked, in rows of one length, more being better."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

import numpy as np
from numpy.typing import ArrayLike, NDArray

from kneecase.errors import InputError
from kneecase.measures.accepted import accepted
from kneecase.recovery.course import Course, course_column
from kneecase.recovery.posterior import Table

__all__ = ["NO_PRIOR", "courses_of", "table_of"]

NO_PRIOR = "no prior"
"""The name of the one weak course that stands in where nothing is expected."""
_CURE = "A missing reading is left out; in a table both its week and its value are nan."


def table_of(
    weeks: ArrayLike,
    values: ArrayLike,
    sem: ArrayLike | None,
    *,
    testers: ArrayLike | None,
    tester_sd: float,
    better: str,
) -> tuple[Table, bool]:
    """The readings of one case or of many, and whether it was one."""
    x, y = _numbers("weeks", weeks), _numbers("values", values)
    if x.shape != y.shape or x.ndim not in (1, 2) or x.size == 0:
        raise InputError(
            "weeks and values must have one entry a reading each, shape (n,) or (cases, n) with at least "
            f"one reading, got shapes {x.shape} and {y.shape}."
        )
    is_one = x.ndim == 1
    x, y = np.atleast_2d(x), np.atleast_2d(y)
    held = ~np.isnan(x)
    _refuse(x, y, held, may_be_missing=not is_one)
    table = Table(
        weeks=x,
        values=-y if better == "lower" else y,
        held=held,
        sem=_sem(sem, x.shape[0]),
        testers=_testers(testers, x.shape, is_one),
        tester_sd=float(accepted("tester_sd", tester_sd, low=0.0)),
    )
    if table.sem is None and (_range(table) == 0).any():
        case = int((_range(table) == 0).argmax())
        raise InputError(
            "sem must be given where a case has fewer than two different readings: its error cannot be known "
            f"from them, got {y[case][held[case]].tolist()} in case {case}."
        )
    return table, is_one


def courses_of(table: Table, courses: Sequence[Course] | None, better: str) -> tuple[Course, ...]:
    """The courses asked for, more being better, or one weak course as wide as the readings allow."""
    if courses is None:
        return (_no_prior(table),)
    chosen = tuple(courses)
    if not chosen or not all(isinstance(course, Course) for course in chosen):
        raise InputError(f"courses must be one or more Course, got {courses!r}.")
    total = sum(np.asarray(course.chance) for course in chosen)
    if not np.allclose(total, 1):
        raise InputError(f"the chances of the courses must sum to 1, got {total!r}.")
    for course in chosen:
        for name in Course.__dataclass_fields__:
            if name != "name":
                course_column(course, name, table.weeks.shape[0])
    return tuple(course.turned() for course in chosen) if better == "lower" else chosen


def _no_prior(table: Table) -> Course:
    """Plateau and start about the mean of the readings, three times their range wide; rate by their span."""
    weeks = np.where(table.held, table.weeks, np.nan)
    span = np.nanmax(weeks, axis=-1) - np.nanmin(weeks, axis=-1)
    if (span == 0).any():
        case = int((span == 0).argmax())
        raise InputError(
            "courses must be given where all readings of a case are of one day: nothing else tells its "
            f"course, got {int(table.held[case].sum())} readings of one day in case {case}."
        )
    middle = np.nanmean(np.where(table.held, table.values, np.nan), axis=-1)
    size = _range(table) if table.sem is None else np.maximum(_range(table), table.sem)
    return Course(
        name=NO_PRIOR,
        chance=1.0,
        plateau=middle,
        plateau_sd=3 * size,
        start=middle,
        start_sd=3 * size,
        half_time_weeks=span / 2,
        half_time_log_sd=1.0,
    )


def _range(table: Table) -> NDArray[np.float64]:
    held = np.where(table.held, table.values, np.nan)
    return np.asarray(np.nanmax(held, axis=-1) - np.nanmin(held, axis=-1))


def _numbers(name: str, values: Any) -> NDArray[np.float64]:
    """Numbers of which some may be missing."""
    try:
        array = np.asarray(values)
    except ValueError as error:
        raise InputError(f"{name} must have rows of one length, got {values!r}. {_CURE}") from error
    if array.dtype.kind not in "iuf":
        raise InputError(f"{name} must be numbers, got {values!r}. {_CURE}")
    return array.astype(np.float64)


def _refuse(x: Any, y: Any, held: Any, *, may_be_missing: bool) -> None:
    if not may_be_missing and not held.all():
        raise InputError(f"weeks must be finite numbers [weeks], got {x[0].tolist()}. {_CURE}")
    odd = (held != ~np.isnan(y)) | np.isinf(x) | np.isinf(y)
    if odd.any():
        case, place = (int(i) for i in np.argwhere(odd)[0])
        raise InputError(
            f"weeks and values must both be finite numbers, or both nan in a table, got {x[case, place]!r} "
            f"and {y[case, place]!r} at place {case}, {place}. {_CURE}"
        )
    if (x < 0).any():
        raise InputError(
            f"weeks must be 0 weeks or later, got {float(np.nanmin(x))!r}. Is one from before the start?"
        )
    if not held.any(axis=-1).all():
        raise InputError(
            f"each case must have a reading, got none in case {int((~held).all(axis=-1).argmax())}."
        )


def _sem(sem: ArrayLike | None, cases: int) -> NDArray[np.float64] | None:
    if sem is None:
        return None
    value = np.asarray(accepted("sem", np.asarray(sem), above=0.0))
    if value.shape not in ((), (cases,)):
        raise InputError(
            f"sem must be one number, or one for each of {cases} cases, got shape {value.shape}."
        )
    return np.broadcast_to(value, (cases,))


def _testers(testers: ArrayLike | None, shape: tuple[int, ...], is_one: bool) -> NDArray[np.int64] | None:
    if testers is None:
        return None
    numbers = np.atleast_2d(np.asarray(testers)) if is_one else np.asarray(testers)
    if numbers.shape != shape or numbers.dtype.kind not in "iu":
        raise InputError(
            f"testers must be whole numbers of the same shape as values, got shape {numbers.shape} of "
            f"{numbers.dtype}."
        )
    return numbers.astype(np.int64)
