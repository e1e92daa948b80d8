"""Fit of a recovery course to readings: where the knee is heading, when, and with what chance."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import Any

import numpy as np
from numpy.typing import ArrayLike, NDArray

from kneecase.errors import InputError
from kneecase.measures.accepted import accepted
from kneecase.measures.reliability import normal_quantile
from kneecase.recovery.course import STIFF, Course
from kneecase.recovery.gain import Better
from kneecase.recovery.lines import Numbers
from kneecase.recovery.mixture import chance_at, curve_moments, first_weeks, mixture_quantiles
from kneecase.recovery.posterior import FINE, LEAN, Components, posterior
from kneecase.recovery.readings import courses_of, table_of

__all__ = ["CurveBand", "RecoveryFit", "fit_recovery"]

_MANY = 100


@dataclass(frozen=True, kw_only=True)
class CurveBand:
    """The curve at some weeks: median and the ends of the interval at ``level``, in the measure's unit."""

    weeks: NDArray[np.float64]
    middle: NDArray[np.float64]
    low: NDArray[np.float64]
    high: NDArray[np.float64]
    level: float


@dataclass(frozen=True, kw_only=True)
class RecoveryFit:
    """What the readings and the prior say of one knee's course, or of each of many.

    ``courses`` are the courses it was made with; ``log_evidence`` is the logarithm of the chance the prior
    gave to the readings, by which whole models are compared.
    """

    courses: tuple[Course, ...]
    better: Better
    is_one: bool
    components: Components = field(repr=False)

    @property
    def log_evidence(self) -> Numbers:
        """Logarithm of the chance of these readings before they were taken."""
        return self._numbers(self.components.log_evidence)

    @property
    def chance_stiff(self) -> Numbers:
        """Chance that the knee is on the stiff course [fraction]; not a number where there is none."""
        return self.chance_of(STIFF)

    def chance_of(self, name: str) -> Numbers:
        """Chance that the knee is on the course of this name [fraction]; not a number where there is none."""
        places = [i for i, course in enumerate(self.courses) if course.name == name]
        parts = self.components
        if not places:
            return self._numbers(np.full(parts.starts.size, np.nan))
        on = parts.weight * np.isin(parts.course, places)
        return self._numbers(np.minimum(np.add.reduceat(on, parts.starts), 1.0))

    def at(self, weeks: ArrayLike, *, level: float = 0.8, reading: bool = False) -> CurveBand:
        """The curve at any week with its interval; infinity is the plateau.

        Parameters
        ----------
        weeks : float or array of float, shape (m,)
            Time from the same start as the readings [weeks].
        level : float
            Of the interval [fraction].
        reading : bool
            The interval of a reading taken then, its error included, instead of that of the curve.

        Returns
        -------
        CurveBand
            Arrays of shape (m,), or (cases, m) for many cases.

        Raises
        ------
        InputError
            If a week lies before week 0 or the level is not between 0 and 1.
        """
        normal_quantile(level)
        asked = np.atleast_1d(np.asarray(weeks, dtype=np.float64))
        if np.isnan(asked).any() or (asked < 0).any():
            raise InputError(f"weeks must be 0 weeks or later, got {weeks!r}.")
        parts = self.components
        mean, spread = curve_moments(parts, asked[None, :])
        if reading:
            spread = np.sqrt(spread**2 + parts.error_sd[:, None] ** 2)
        ends = mixture_quantiles(parts, mean, spread, ((1 - level) / 2, 0.5, (1 + level) / 2))
        low, middle, high = (self._out(x) for x in ends)
        if self.better == "lower":
            low, middle, high = -high, -middle, -low
        return CurveBand(weeks=asked, middle=middle, low=low, high=high, level=level)

    def week_of(self, target: ArrayLike, *, chances: Sequence[float] = (0.1, 0.5, 0.9)) -> Any:
        """Week in which the curve stands at the target with each chance [weeks]; infinite where never.

        Parameters
        ----------
        target : float or array of float, shape (cases,)
            What is to be reached [unit of the measure].
        chances : sequence of float
            Chances between 0 and 1 [fraction].

        Returns
        -------
        array of float
            One week a chance, shape (chances,) or (cases, chances) [weeks]; 0 where the curve starts past
            the target.

        Raises
        ------
        InputError
            If the target is not a number or a chance is not between 0 and 1.
        """
        for chance in chances:
            normal_quantile(chance)
        weeks = first_weeks(self.components, self._turned(target), tuple(chances))
        return self._out(np.stack(weeks, axis=-1))

    def chance_by(self, target: ArrayLike, week: ArrayLike) -> Numbers:
        """Chance that the curve stands at or past the target in a week [fraction].

        Parameters
        ----------
        target : float or array of float, shape (cases,)
            What is to be reached [unit of the measure].
        week : float or array of float, shape (cases,)
            From the same start as the readings [weeks]; infinity is the plateau.

        Returns
        -------
        float or array of float, shape (cases,)
            Chance [fraction].

        Raises
        ------
        InputError
            If the target is not a number or the week lies before week 0.
        """
        at = np.asarray(week, dtype=np.float64)
        if np.isnan(at).any() or (at < 0).any():
            raise InputError(f"week must be 0 weeks or later, got {week!r}.")
        at = np.broadcast_to(at, self.components.starts.shape)
        return self._numbers(chance_at(self.components, self._turned(target), at))

    def chance_never(self, target: ArrayLike) -> Numbers:
        """Chance that the plateau stays short of the target: it is never reached on this course [fraction].

        Parameters
        ----------
        target : float or array of float, shape (cases,)
            What is to be reached [unit of the measure].

        Returns
        -------
        float or array of float, shape (cases,)
            Chance [fraction].
        """
        reached = np.asarray(self.chance_by(target, np.inf))
        return float(1 - reached) if self.is_one else 1 - reached

    def _turned(self, target: ArrayLike) -> NDArray[np.float64]:
        value = np.asarray(accepted("target", np.asarray(target, dtype=np.float64)))
        value = -value if self.better == "lower" else value
        return np.broadcast_to(value, self.components.starts.shape)

    def _numbers(self, values: NDArray[np.float64]) -> Numbers:
        """One number for one case, one a case for many."""
        return float(values[0]) if self.is_one else values

    def _out(self, values: NDArray[np.float64]) -> Any:
        """One row for one case, one a case for many."""
        return values[0] if self.is_one else values


def fit_recovery(
    weeks: ArrayLike,
    values: ArrayLike,
    *,
    sem: ArrayLike | None = None,
    courses: Sequence[Course] | None = None,
    better: Better = "higher",
    testers: ArrayLike | None = None,
    tester_sd: float = 0.0,
) -> RecoveryFit:
    """Fit of ``A - (A - B) exp(-k t)`` to readings of one knee, or of each of many, exactly.

    Looked at when the question is when a target will be reached, and whether it will be at all.

    Formula: given rate k and error size, plateau A and start B are normal in closed form; k and the
    error size are summed over a grid laid where the weight is, and the courses by their chances.

    Parameters
    ----------
    weeks : array of float, shape (n,) or (cases, n)
        Time of each reading [weeks]; rows of different length are filled up with nan.
    values : array of float, shape (n,) or (cases, n)
        Readings, nan where ``weeks`` is nan [unit of the measure].
    sem : float or array of float, shape (cases,), optional
        Standard error of measurement of one reading [unit of the measure]; day-to-day variation is
        estimated on top. Without it the whole error is estimated from the readings.
    courses : sequence of Course, optional
        What is expected, such as ``recovery_prior(...).courses``; without it one weak course named 'no
        prior', as wide as the readings themselves three times over.
    better : {"higher", "lower"}
        Direction of the measure.
    testers : array of int, same shape as ``values``, optional
        Number of the tester of each reading [count]; anything below 0 where there is none.
    tester_sd : float
        Spread of the offsets of testers [unit of the measure].

    Returns
    -------
    RecoveryFit
        Curve, week of a target, chances.

    Raises
    ------
    InputError
        If shapes differ, a number is missing on one side only, a week lies before week 0, a case has no
        reading, or there is too little to know the error or a course from.

    Notes
    -----
    Readings scatter about one curve independently. A setback, a manipulation or a change of programme
    breaks that; :func:`kneecase.recovery.course_change` looks for it. Cohorts of more than a hundred cases
    use a leaner grid. None of this was tested on real patients' individual courses.

    Examples
    --------
    >>> from kneecase.recovery import recovery_prior
    >>> prior = recovery_prior("knee_flexion", other_side=140, graft="hamstring tendon")
    >>> fit = fit_recovery([1, 2, 3, 4, 6], [75, 88, 98, 106, 117], sem=1.8, courses=prior.courses)
    >>> [round(float(w), 1) for w in fit.week_of(130)]
    [9.2, 10.2, 11.7]
    >>> round(fit.chance_by(130, 12), 2), round(fit.chance_stiff, 2)
    (0.93, 0.0)
    """
    if better not in ("higher", "lower"):
        raise InputError(f"better must be 'higher' or 'lower', got {better!r}.")
    table, is_one = table_of(weeks, values, sem, testers=testers, tester_sd=tester_sd, better=better)
    chosen = courses_of(table, courses, better)
    parts = posterior(table, chosen, FINE if table.weeks.shape[0] <= _MANY else LEAN)
    shown = tuple(course.turned() if better == "lower" else course for course in chosen)
    return RecoveryFit(courses=shown, better=better, is_one=is_one, components=parts)
