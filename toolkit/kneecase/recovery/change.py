"""Real change: is a change larger than what the testers and devices could make by error alone?"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import ArrayLike

from kneecase.errors import InputError
from kneecase.measures import chance_true_value_passes, minimal_detectable_change
from kneecase.measures.accepted import accepted, plain
from kneecase.recovery.gain import Better
from kneecase.recovery.lines import Numbers
from kneecase.units import number_text, quantity_text

__all__ = ["RealChange", "real_change"]


@dataclass(frozen=True, kw_only=True)
class RealChange:
    """A change held against its measurement error, or one for each of many pairs.

    ``change`` is positive when the measure improves, ``mdc`` the minimal detectable change at ``level``,
    both in ``unit``; ``chance`` is the chance that the true value improved at all. ``pair`` says whose
    error it is. A change inside the error is 'cannot tell': it is never 'no change'.
    """

    change: Numbers
    mdc: Numbers
    sem: Numbers
    level: float
    chance: Numbers
    unit: str = "deg"
    pair: str = ""

    @property
    def is_real(self) -> Any:
        """Whether the change exceeds the minimal detectable change; one truth value a pair."""
        real = np.abs(self.change) > self.mdc
        return bool(real) if np.ndim(real) == 0 else real

    @property
    def verdict(self) -> str:
        """``"real change"`` or ``"cannot tell"``, for a single pair."""
        return "real change" if self._single().is_real else "cannot tell"

    def words(self) -> str:
        """The change, its error and what they show, in one sentence."""
        one = self._single()
        change, mdc = float(one.change), float(one.mdc)
        size = quantity_text(abs(change), one.unit)
        did = f"gained {size}" if change > 0 else f"lost {size}" if change < 0 else f"{size} of change"
        whose = f"the error of this pair of readings alone can make ({one.pair})" if one.pair else ""
        error = f"the {quantity_text(mdc, one.unit)} that {whose or 'error alone can make'}"
        if one.is_real:
            return f"{did}, more than {error}: a real change"
        chance = number_text(100 * float(one.chance), 0)
        return f"{did}, inside {error}: cannot tell; chance of a true gain {chance} %"

    def _single(self) -> RealChange:
        if np.ndim(self.change):
            raise InputError(
                f"words stand for one change, got {np.size(self.change)}. Use is_real for many at once."
            )
        return self


def real_change(
    before: ArrayLike,
    after: ArrayLike,
    *,
    sem: ArrayLike,
    level: float = 0.95,
    better: Better = "higher",
    unit: str = "deg",
    pair: str = "",
) -> RealChange:
    """Change between two readings [``unit``], against the minimal detectable change.

    Looked at before a change since the last visit is believed: two testers can differ by more than a knee
    gains in weeks.

    Formula: ``change = after - before`` (``before - after`` where less is better); real when
    ``abs(change) > z * sqrt(2) * sem``; ``chance`` is the share of a normal distribution with mean
    ``change`` and standard deviation ``sqrt(2) * sem`` that lies above 0.

    Parameters
    ----------
    before, after : float or array of float
        The two readings, taken in one way [unit].
    sem : float or array of float
        Standard error of measurement of one reading by this pair of testers and devices [unit].
    level : float
        Of the minimal detectable change [fraction].
    better : {"higher", "lower"}
        Which way is better: ``"lower"`` for an extension deficit.
    unit : str
        Unit of the readings.
    pair : str
        Whose error it is, in words.

    Returns
    -------
    RealChange
        Positive when the measure improves [unit].

    Raises
    ------
    InputError
        If a reading is missing or not finite, the error not above 0, or the direction unknown.

    Notes
    -----
    The chance takes every true change as equally likely beforehand. A change that just reaches the minimal
    detectable change does not exceed it.

    Examples
    --------
    >>> real_change(104, 118, sem=1.8).words()
    'gained 14°, more than the 5° that error alone can make: a real change'
    >>> real_change(104, 108, sem=3.39, pair="two testers").verdict
    'cannot tell'
    """
    if better not in ("higher", "lower"):
        raise InputError(f"better must be 'higher' or 'lower', got {better!r}.")
    quantity_text(0.0, unit)  # refuses a unit that is none
    cure = "A missing reading has no change."
    first = np.asarray(accepted("before", np.asarray(before), unit, cure=cure))
    then = np.asarray(accepted("after", np.asarray(after), unit, cure=cure))
    error = np.asarray(accepted("sem", np.asarray(sem), unit, above=0.0))
    change = then - first if better == "higher" else first - then
    return RealChange(
        change=plain(change, 0.0),
        mdc=plain(minimal_detectable_change(error, level), 0.0),
        sem=plain(error, 0.0),
        level=level,
        chance=plain(chance_true_value_passes(change, math.sqrt(2) * error, 0.0, ">"), 0.0),
        unit=unit,
        pair=pair,
    )
