"""Track record: what was forecast at each earlier visit, beside what then came."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike

from kneecase.errors import InputError
from kneecase.recovery.course import Course
from kneecase.recovery.fit import fit_recovery
from kneecase.recovery.gain import Better

__all__ = ["Forecast", "track_record"]


@dataclass(frozen=True, kw_only=True)
class Forecast:
    """A forecast of the next reading made from the readings before it, in the measure's unit.

    ``place`` is the number of the reading that was forecast, counted from 0; ``low`` and ``high`` are the
    interval of a reading at ``level``; ``value`` is what came.
    """

    place: int
    week: float
    low: float
    middle: float
    high: float
    value: float
    level: float

    @property
    def is_inside(self) -> bool:
        """Whether what came lies in the interval."""
        return self.low <= self.value <= self.high


def track_record(
    weeks: ArrayLike,
    values: ArrayLike,
    *,
    sem: float,
    courses: Sequence[Course],
    better: Better = "higher",
    level: float = 0.8,
) -> tuple[Forecast, ...]:
    """Forecast of each reading from those before it, beside the reading.

    Looked at before a new forecast is believed: how did the earlier ones fare on this knee?

    Formula: interval of a reading from :meth:`~kneecase.recovery.RecoveryFit.at` with the readings before.

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
    level : float
        Of the interval of a reading [fraction].

    Returns
    -------
    tuple of Forecast
        One for each reading but the first.

    Raises
    ------
    InputError
        If the readings are not in order of time.

    Notes
    -----
    The forecasts know the prior of today; what a later visit added to it (the other knee, a graft) was
    perhaps not known then.

    Examples
    --------
    >>> from kneecase.recovery import recovery_prior
    >>> courses = recovery_prior("knee_flexion", other_side=140).courses
    >>> record = track_record([1, 2, 3], [75, 88, 98], sem=1.8, courses=courses)
    >>> [(f.place, f.is_inside) for f in record]
    [(1, True), (2, True)]
    """
    x, y = np.asarray(weeks, dtype=np.float64), np.asarray(values, dtype=np.float64)
    if x.ndim != 1 or (np.diff(x) < 0).any():
        raise InputError(f"weeks must be those of one case, in order of time, got {x.tolist()}.")
    if x.size < 2:
        return ()
    rows = np.arange(1, x.size)
    known = np.arange(x.size) < rows[:, None]
    fit = fit_recovery(
        np.where(known, x, np.nan), np.where(known, y, np.nan), sem=sem, courses=courses, better=better
    )
    band = fit.at(x[1:], level=level, reading=True)
    return tuple(
        Forecast(
            place=int(row),
            week=float(x[row]),
            low=float(band.low[row - 1, row - 1]),
            middle=float(band.middle[row - 1, row - 1]),
            high=float(band.high[row - 1, row - 1]),
            value=float(y[row]),
            level=level,
        )
        for row in rows
    )
