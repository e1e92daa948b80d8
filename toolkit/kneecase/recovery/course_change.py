"""Does a knee still follow its course? Odds that the later readings belong to another one."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

from kneecase.errors import InputError
from kneecase.evidence.recovery_prior import RECOVERY_CHANGE_BEFOREHAND_OURS
from kneecase.measures.accepted import accepted
from kneecase.recovery.course import Course, restarted
from kneecase.recovery.fit import fit_recovery
from kneecase.recovery.gain import Better

__all__ = ["CourseChange", "course_change"]


@dataclass(frozen=True, kw_only=True)
class CourseChange:
    """Odds of one course against a change, and where the change most likely lies.

    ``odds`` are those of a change anywhere against none; ``place`` is the number of the first reading on
    the other course where a change most likely lies, counted from 0, and ``chance`` how likely that place
    is, given a change. ``later`` is how many readings lie on the other course.
    """

    odds: float
    place: int
    chance: float
    later: int


def course_change(
    weeks: ArrayLike,
    values: ArrayLike,
    *,
    sem: float,
    courses: Sequence[Course],
    better: Better = "higher",
    beforehand: float = RECOVERY_CHANGE_BEFOREHAND_OURS.number,
) -> CourseChange | None:
    """Odds that the readings leave their course, against one course for all of them.

    Looked at when a reading lies off the curve: after a setback, a forecast from all readings is wrong.

    Formula: ``odds = beforehand / (1 - beforehand) * mean over places of P(earlier) P(later anew) / P(all)``,
    each P the chance of the readings under the courses; the later ones start anew at the reading before.

    Parameters
    ----------
    weeks, values : array of float, shape (n,)
        Time [weeks] and reading [unit of the measure], in order of time.
    sem : float
        Standard error of measurement of one reading [unit of the measure].
    courses : sequence of Course
        What was expected at the start.
    better : {"higher", "lower"}
        Direction of the measure.
    beforehand : float
        Chance of a change before the readings were taken, spread evenly over the places [fraction].

    Returns
    -------
    CourseChange or None
        ``None`` with fewer than three readings.

    Raises
    ------
    InputError
        If the readings are not in order of time, or the chance is not between 0 and 1.

    Notes
    -----
    One odd last reading can look like a change: it is to be taken again first. The odds rest on the
    prior, the error and the size of day-to-day variation the model allows. A jump is seen; a small setback
    or a gradual slowing mostly is not (the calibration table of the tests says how often), so odds for one
    course are no proof of it.

    Examples
    --------
    >>> from kneecase.recovery import recovery_prior
    >>> courses = recovery_prior("knee_flexion", other_side=140).courses
    >>> change = course_change([1, 2, 3, 4, 5, 6], [75, 88, 98, 90, 88, 91], sem=1.8, courses=courses)
    >>> change.odds > 10, change.place
    (True, 3)
    """
    x, y = np.asarray(weeks, dtype=np.float64), np.asarray(values, dtype=np.float64)
    accepted("beforehand", beforehand, "fraction", low=0.0, high=1.0)
    if not 0 < beforehand < 1:
        raise InputError(f"beforehand must lie between 0 and 1, neither included, got {beforehand!r}.")
    if x.ndim != 1 or (np.diff(x) < 0).any():
        raise InputError(f"weeks must be those of one case, in order of time, got {x.tolist()}.")
    if x.size < 3:
        return None
    whole = fit_recovery(x, y, sem=sem, courses=courses, better=better).log_evidence
    places = np.arange(1, x.size)
    earlier = fit_recovery(*_rows(x, y, places, later=False), sem=sem, courses=courses, better=better)
    later = fit_recovery(
        *_rows(x, y, places, later=True), sem=sem, courses=restarted(courses, y[places - 1]), better=better
    )
    gain = np.asarray(earlier.log_evidence) + np.asarray(later.log_evidence) - whole
    best = int(gain.argmax())
    ratio = np.exp(gain - gain[best])
    with np.errstate(over="ignore"):
        odds = beforehand / (1 - beforehand) * np.exp(gain[best]) * ratio.mean()
    return CourseChange(
        odds=float(odds),
        place=int(places[best]),
        chance=float(1 / ratio.sum()),
        later=int(x.size - places[best]),
    )


def _rows(
    x: NDArray[np.float64], y: NDArray[np.float64], places: NDArray[np.int64], *, later: bool
) -> tuple[NDArray[np.float64], NDArray[np.float64]]:
    """One row a place: the readings before it, or those from it on with weeks from the reading before."""
    number = np.arange(x.size)
    mine = (number >= places[:, None]) if later else (number < places[:, None])
    since = x[places - 1][:, None] if later else 0.0
    return np.where(mine, x - since, np.nan), np.where(mine, y, np.nan)
