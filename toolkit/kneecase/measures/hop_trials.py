"""The trials of one limb in one hop test: which count, what they come to, and what is kept beside."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Any, Literal, cast

import numpy as np
from numpy.typing import NDArray

from kneecase.errors import InputError
from kneecase.measures.accepted import accepted
from kneecase.measures.comparable import Statistic, is_scored
from kneecase.record import Measure, Reading, Side
from kneecase.units import number_text, quantity_text

__all__ = ["Better", "LimbTrials", "better_way", "hop_score", "limb_trials"]

Better = Literal["higher", "lower"]
"""Which way is better."""


def better_way(measure: Measure) -> Better:
    """Which way is better in a measure that has a better way."""
    if measure.better == "neither":
        raise InputError(f"measure must have a better way, got {measure.id!r}, which has none.")
    return measure.better


def hop_score(
    trials: NDArray[np.float64] | list[float] | tuple[float, ...],
    *,
    statistic: Statistic = "mean",
    better: Better = "higher",
) -> float | NDArray[np.float64]:
    """Score of one limb in a hop test [unit of the trials], from its scored trials.

    Looked at before any symmetry: mean and best of the same trials can decide differently, so the way of
    scoring is kept with the result.

    Formula: the mean of the trials; or the best, which is the longest distance (``better="higher"``) or the
    shortest time (``better="lower"``).

    Parameters
    ----------
    trials : array of float, shape (..., n)
        Scored trials along the last axis [any one unit]; lost and practice trials are not among them.
    statistic : {"mean", "best"}
        How the score is made.
    better : {"higher", "lower"}
        Which way is better.

    Returns
    -------
    float or array of float
        One score for each row [unit of the trials].

    Raises
    ------
    InputError
        If there is no trial, a trial is missing or negative, or a choice is unknown.

    References
    ----------
    reid-2007, kramer-1992

    Examples
    --------
    >>> hop_score([132.0, 135.0]), hop_score([132.0, 135.0], statistic="best")
    (133.5, 135.0)
    >>> hop_score([2.24, 2.19], statistic="best", better="lower")
    2.19
    """
    if statistic not in ("mean", "best"):
        raise InputError(f"statistic must be 'mean' or 'best', got {statistic!r}.")
    if better not in ("higher", "lower"):
        raise InputError(f"better must be 'higher' or 'lower', got {better!r}. Is it a time? Then 'lower'.")
    cure = "Leave a trial without a number out; a lost landing is not a zero."
    values = accepted("trials", cast(Any, trials), low=0.0, cure=cure)
    if np.ndim(values) == 0 or np.shape(values)[-1] == 0:
        raise InputError(
            f"trials must hold at least one scored trial, got {trials!r}. Were all landings lost?"
        )
    if statistic == "mean":
        score = np.mean(values, axis=-1)
    else:
        score = np.max(values, axis=-1) if better == "higher" else np.min(values, axis=-1)
    return float(score) if np.ndim(score) == 0 else cast("NDArray[np.float64]", score)


@dataclass(frozen=True, kw_only=True)
class LimbTrials:
    """One limb in one hop test on one day: its score and every trial behind and beside it.

    ``value`` [``unit``] is the mean or best of the scored trials, ``None`` when there is none; lost
    landings, practice and reasons for no number stay in ``readings`` and are never scored.
    """

    limb: Literal["involved", "uninvolved"]
    side: Side
    unit: str
    statistic: Statistic
    value: float | None
    readings: tuple[Reading, ...]

    @property
    def scored_readings(self) -> tuple[Reading, ...]:
        """The readings that count, in the order of the trials."""
        return tuple(r for r in self.readings if is_scored(r))

    @property
    def scored(self) -> tuple[float, ...]:
        """The scored trials [``unit``], in the order of the trials."""
        return tuple(r.value for r in self.scored_readings if r.value is not None)

    @property
    def practice(self) -> tuple[float, ...]:
        """The practice trials [``unit``], kept and not scored."""
        return tuple(r.value for r in self.readings if r.value is not None and r.status == "practice")

    @property
    def lost(self) -> int:
        """How many landings were lost: kept and not scored."""
        return sum(r.status == "lost" for r in self.readings)

    @property
    def missing(self) -> tuple[str, ...]:
        """The reasons recorded for having no number."""
        return tuple(r.missing for r in self.readings if r.missing and r.status == "scored")

    @property
    def spread(self) -> float | None:
        """Largest minus smallest scored trial [``unit``]; ``None`` below two trials."""
        return max(self.scored) - min(self.scored) if len(self.scored) > 1 else None

    def words(self) -> str:
        """The score, its trials and what was not scored, for people."""
        if self.value is None:
            why = ", ".join(dict.fromkeys(self.missing)) or "no scored trial"
            text = f"{self.limb} limb ({self.side}): no score, {why}"
        else:
            trials = ", ".join(number_text(x, 2) for x in self.scored)
            how = f"{self.statistic} of {trials}" if len(self.scored) > 1 else "one trial"
            text = f"{self.limb} limb ({self.side}): {quantity_text(self.value, self.unit, 2)} ({how})"
        if self.spread is not None:
            text += f", trials {quantity_text(self.spread, self.unit, 2)} apart"
        if self.lost:
            text += f", {self.lost} lost landing{'' if self.lost == 1 else 's'} not scored"
        if self.practice:
            text += f", {len(self.practice)} practice not scored"
        return text


def limb_trials(
    readings: Iterable[Reading],
    *,
    limb: Literal["involved", "uninvolved"],
    side: Side,
    unit: str,
    statistic: Statistic,
    better: Better,
) -> LimbTrials:
    """One limb's trials of one test and day with their score; no scored trial gives no score."""
    own = tuple(sorted((r for r in readings if r.side == side), key=_in_order))
    scored = [r.value for r in own if r.value is not None and is_scored(r)]
    score = hop_score(scored, statistic=statistic, better=better) if scored else None
    return LimbTrials(
        limb=limb,
        side=side,
        unit=unit,
        statistic=statistic,
        value=cast("float | None", score),
        readings=own,
    )


def _in_order(reading: Reading) -> tuple[int, int, str]:
    trial = reading.trial if reading.trial is not None else 0
    return (trial, reading.row if reading.row is not None else 0, reading.id)
