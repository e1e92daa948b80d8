"""The values a recovery curve is fitted to, with their dates and their error."""

from __future__ import annotations

import datetime as dt
import math
from dataclasses import dataclass, field

from kneecase.answers import LeftOut
from kneecase.evidence.provenance import PublishedValue
from kneecase.record import Reading
from kneecase.recovery.gain import Better

__all__ = ["CurveSeries"]


@dataclass(frozen=True, kw_only=True)
class CurveSeries:
    """Day values of one measure in the order of their dates, and their error.

    ``origin`` is week 0: surgery, the named start, or the first test where a measure starts there. ``sem``
    is the error of one value in ``unit``, ``None`` where none is published; ``testers`` numbers who took
    it, and ``tester_sd`` is how far testers differ.
    """

    measure: str
    label: str
    unit: str
    better: Better
    origin: dt.date
    opened_by: str
    words: str
    dates: tuple[dt.date, ...] = ()
    values: tuple[float, ...] = ()
    readings: tuple[Reading, ...] = ()
    left_out: tuple[LeftOut, ...] = ()
    sem: float | None = None
    tester_sd: float = 0.0
    testers: tuple[int, ...] = ()
    error: str = "no error is published for these values; it is estimated from them"
    evidence: tuple[PublishedValue, ...] = ()
    position: str = ""
    motion: str = ""
    notes: tuple[str, ...] = field(default=())

    @property
    def weeks(self) -> tuple[float, ...]:
        """Time of each value from the start of the curve [weeks]."""
        return tuple(self.week(date) for date in self.dates)

    def week(self, date: dt.date) -> float:
        """A date as weeks from the start of the curve [weeks]."""
        return (date - self.origin).days / 7

    def date(self, week: float) -> dt.date:
        """The date of a week from the start of the curve, rounded up to the whole day.

        Parameters
        ----------
        week : float
            From the start of the curve [weeks].

        Returns
        -------
        datetime.date
            The day.
        """
        return self.origin + dt.timedelta(days=math.ceil(7 * week - 10**-7))
