"""Plateau: has a knee that is short of its target stopped gaining at a useful rate?"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

import numpy as np
from numpy.typing import ArrayLike

from kneecase.measures import is_met
from kneecase.measures.accepted import accepted
from kneecase.recovery.gain import Better, gain_rate
from kneecase.recovery.rate import GainRate, rate_text
from kneecase.units import number_text, quantity_text

__all__ = ["Plateau", "PlateauVerdict", "plateau"]

PlateauVerdict = Literal[
    "plateau",
    "no plateau",
    "cannot tell",
    "too early",
    "target reached",
    "near the target",
    "no target",
    "no rate",
]


@dataclass(frozen=True, kw_only=True)
class Plateau:
    """Whether a knee gains less than a useful rate and is still short of its target.

    ``rate`` is the gain rate looked at, ``useful_deg_per_week`` what it is held against, ``short_deg`` how
    far the last day is from the target (``None`` without one) and ``margin_deg`` what measurement error
    can make of that, ``span_weeks`` the time looked at and ``least_weeks`` the time needed.
    """

    verdict: PlateauVerdict
    rate: GainRate
    useful_deg_per_week: float
    span_weeks: float
    least_weeks: float
    short_deg: float | None
    margin_deg: float

    def words(self) -> str:
        """The verdict and its reason, in one sentence."""
        useful = f"{number_text(self.useful_deg_per_week, 2)}° a week"
        high = "" if self.rate.high is None else rate_text(self.rate.high)
        short = "" if self.short_deg is None else quantity_text(self.short_deg, "deg")
        sentences: dict[str, str] = {
            "plateau": f"plateau: gains at most {high}° a week, less than {useful}, and {short} short of "
            "the target",
            "no plateau": f"no plateau: gains {useful} or more",
            "cannot tell": f"cannot tell: the interval spans the useful rate of {useful}",
            "too early": f"too early to tell: {number_text(self.span_weeks)} weeks looked at, "
            f"{number_text(self.least_weeks)} weeks and three days of readings are needed",
            "target reached": "the target is reached, or as near as counts as reached",
            "near the target": f"cannot tell: {short} short of the target, inside the "
            f"{quantity_text(self.margin_deg, 'deg')} that error alone can make",
            "no target": f"gains at most {high}° a week, less than {useful}; no target to be short of is "
            "known, so this may be all the motion the knee has",
            "no rate": f"cannot tell: {self.rate.words()}",
        }
        return sentences[self.verdict]


def plateau(
    weeks: ArrayLike,
    degrees: ArrayLike,
    *,
    useful_deg_per_week: float,
    least_weeks: float,
    target_deg: float | None = None,
    within_deg: float = 0.0,
    within_operator: str = "≤",
    margin_deg: float = 0.0,
    error_sd: float | None = None,
    level: float = 0.95,
    better: Better = "higher",
) -> Plateau:
    """Plateau test of one series of readings: gain rate [deg per week] against a useful rate.

    Looked at when a knee is short of the other knee and the last weeks brought little.

    Formula: a plateau when the upper end of the gain rate's interval is below ``useful_deg_per_week``, over
    at least two intervals between days and ``least_weeks``, and the last day is short of ``target_deg`` by
    more than ``margin_deg``; no plateau when the lower end is at or above the useful rate. The target counts
    as reached when the shortfall is ``within_operator`` ``within_deg``.

    Parameters
    ----------
    weeks : array of float, shape (n,)
        Time of each reading [weeks].
    degrees : array of float, shape (n,)
        Readings, all taken in one way [deg].
    useful_deg_per_week : float
        Smallest gain that counts [deg per week].
    least_weeks : float
        Shortest time that can show a plateau [weeks].
    target_deg : float, optional
        What the knee is to reach: the other knee's angle [deg].
    within_deg : float
        Shortfall that still counts as reached [deg].
    within_operator : {"≤", "<"}
        Whether exactly ``within_deg`` counts.
    margin_deg : float
        What measurement error can make of the shortfall [deg].
    error_sd : float, optional
        Standard error of measurement of one reading [deg].
    level : float
        Of the interval [fraction].
    better : {"higher", "lower"}
        ``"lower"`` for an extension deficit.

    Returns
    -------
    Plateau
        Verdict, rate and how far short.

    Raises
    ------
    InputError
        As :func:`gain_rate`, or if the useful rate or the time is not above 0.

    Notes
    -----
    The test is one-sided on purpose: a wide interval is 'cannot tell', never a plateau. Without a target
    there is no plateau verdict.

    Examples
    --------
    >>> held = plateau([4, 5, 6, 7, 8], [96, 97, 96, 97, 97], useful_deg_per_week=2.5, least_weeks=4,
    ...                target_deg=140, error_sd=1.8)
    >>> held.words()
    'plateau: gains at most 1° a week, less than 2.5° a week, and 43° short of the target'
    """
    useful = accepted("useful_deg_per_week", useful_deg_per_week, "deg per week", above=0.0)
    least = accepted("least_weeks", least_weeks, "weeks", above=0.0)
    rate = gain_rate(weeks, degrees, error_sd=error_sd, level=level, better=better)
    x, y = np.atleast_1d(np.asarray(weeks, float)), np.atleast_1d(np.asarray(degrees, float))
    span = float(np.ptp(x)) if x.size else 0.0
    short = None if target_deg is None or not x.size else _short_deg(x, y, target_deg, better)
    margin = accepted("margin_deg", margin_deg, "deg", low=0.0)
    reached = short is not None and is_met(short, within_deg, within_operator)
    return Plateau(
        verdict=_verdict(rate, useful, np.unique(x).size > 2 and span >= least, reached, short, margin),
        rate=rate,
        useful_deg_per_week=useful,
        span_weeks=span,
        least_weeks=least,
        short_deg=short,
        margin_deg=margin,
    )


def _short_deg(x: np.ndarray, y: np.ndarray, target_deg: float, better: Better) -> float:
    """How far the mean of the last day is from the target [deg], positive when short of it."""
    target = accepted("target_deg", target_deg, "deg")
    last = float(y[x == x.max()].mean())
    return target - last if better == "higher" else last - target


def _verdict(
    rate: GainRate, useful: float, is_long: bool, reached: bool, short: float | None, margin: float
) -> PlateauVerdict:
    if rate.low is None or rate.high is None:
        return "no rate"
    if reached:
        return "target reached"
    if not is_long:
        return "too early"
    if rate.low >= useful:
        return "no plateau"
    if rate.high >= useful:
        return "cannot tell"
    if short is None:
        return "no target"
    return "plateau" if short > margin else "near the target"
