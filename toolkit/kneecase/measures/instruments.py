"""One tester, several instruments, repeated readings: the error within and between instruments."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from kneecase.errors import InputError
from kneecase.measures.accepted import accepted

__all__ = ["InstrumentReliability", "instrument_reliability"]


@dataclass(frozen=True, kw_only=True)
class InstrumentReliability:
    """Variance components, errors and reliability within and between instruments.

    Variances are in squared units of the readings, ``sem_...`` in their unit, ``reliability_...`` are
    fractions. 'random' treats the instruments as a sample of all instruments, 'fixed' as the only ones of
    interest. A component estimated below zero is kept as estimated in ``variance_...`` and counted as zero
    in the sums; ``counted_as_zero`` names it. A reliability is ``None`` where nothing varies that it could
    be a share of.
    """

    instrument_means: tuple[float, ...]
    mean_squares: tuple[float, float, float, float]
    variance_subjects: float
    variance_instruments: float
    variance_interaction: float
    variance_error: float
    sem_within: float
    sem_within_each: tuple[float, ...]
    sem_between_random: float
    sem_between_fixed: float
    reliability_within_random: float | None
    reliability_within_fixed: float | None
    reliability_within_each: tuple[float | None, ...]
    reliability_between_random: float | None
    reliability_between_fixed: float | None
    counted_as_zero: tuple[str, ...]


def instrument_reliability(readings: Any) -> InstrumentReliability:
    """Error within an instrument and between instruments [unit of the readings], with reliability.

    Looked at before a second goniometer is used on the same athlete: the error between instruments is
    larger than within one, and includes their constant difference.

    Formula: mean squares between subjects ``S``, instruments ``R``, interaction ``I`` and repeats ``E`` of
    n subjects, t instruments, m repeats give the components ``subjects = (S - I) / (t m)``,
    ``instruments = (R - I) / (n m)``, ``interaction = (I - E) / m``, ``error = E``. The standard error
    within an instrument is ``sqrt(error)``; between instruments it is
    ``sqrt(instruments + interaction + error)`` (random) or ``sqrt(interaction + error)`` (fixed).

    Parameters
    ----------
    readings : array of float, shape (n_subjects, t_instruments, m_repeats)
        At least 2 by 2 by 2, none missing [any unit].

    Returns
    -------
    InstrumentReliability
        Components, standard errors and reliability.

    Raises
    ------
    InputError
        If the table does not have three axes of at least 2, holds a missing number, or never varies.

    Notes
    -----
    Written for one tester with several instruments; several testers with one instrument each are the same
    arithmetic. It says nothing about testers who were not in it.

    References
    ----------
    eliasziw-1994

    Examples
    --------
    >>> found = instrument_reliability([[[10, 12], [9, 9]], [[20, 20], [19, 17]], [[31, 29], [30, 28]]])
    >>> round(found.sem_within, 3), round(found.sem_between_random, 3)
    (1.155, 1.633)
    """
    table = _table(readings)
    n, t, m = table.shape
    squares = _mean_squares(table)
    s, r, i, e = squares
    subjects, instruments, interaction = (s - i) / (t * m), (r - i) / (n * m), (i - e) / m
    kept = {"subjects": subjects, "instruments": instruments, "interaction": interaction}
    sub, ins, act = (max(value, 0.0) for value in kept.values())
    fixed = max((s - e) / (t * m), 0.0)
    each = tuple(float(x) for x in table.var(axis=2, ddof=1).mean(axis=0))
    total = sub + ins + act + e
    if np.ptp(table) == 0.0:
        raise InputError("readings must vary, got the same number everywhere. Was one reading copied?")
    share = fixed + (t - 1) * act / t
    return InstrumentReliability(
        instrument_means=tuple(float(x) for x in table.mean(axis=(0, 2))),
        mean_squares=squares,
        variance_subjects=subjects,
        variance_instruments=instruments,
        variance_interaction=interaction,
        variance_error=e,
        sem_within=math.sqrt(e),
        sem_within_each=tuple(math.sqrt(x) for x in each),
        sem_between_random=math.sqrt(ins + act + e),
        sem_between_fixed=math.sqrt(act + e),
        reliability_within_random=_share(sub + ins + act, total),
        reliability_within_fixed=_share(share, share + e),
        reliability_within_each=tuple(_share(sub + ins + act, sub + ins + act + x) for x in each),
        reliability_between_random=_share(sub, total),
        reliability_between_fixed=_share(fixed - act / t, share + e),
        counted_as_zero=tuple(name for name, value in kept.items() if value < 0.0),
    )


def _share(part: float, whole: float) -> float | None:
    return part / whole if whole > 0.0 else None


def _mean_squares(table: NDArray[np.float64]) -> tuple[float, float, float, float]:
    n, t, m = table.shape
    grand = table.mean()
    by_subject, by_instrument, cells = table.mean(axis=(1, 2)), table.mean(axis=(0, 2)), table.mean(axis=2)
    crossed = cells - by_subject[:, None] - by_instrument[None, :] + grand
    return (
        float(t * m * ((by_subject - grand) ** 2).sum() / (n - 1)),
        float(n * m * ((by_instrument - grand) ** 2).sum() / (t - 1)),
        float(m * (crossed**2).sum() / ((n - 1) * (t - 1))),
        float(((table - cells[:, :, None]) ** 2).sum() / (n * t * (m - 1))),
    )


def _table(readings: Any) -> NDArray[np.float64]:
    table: NDArray[np.float64] = np.asarray(accepted("readings", readings, cure="Leave that subject out."))
    if table.ndim != 3 or min(table.shape) < 2:
        raise InputError(
            "readings must have three axes of at least 2 each (subjects, instruments, repeats), "
            f"got shape {table.shape}."
        )
    return table
