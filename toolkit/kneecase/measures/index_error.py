"""How large the error of a symmetry index is, and where that comes from."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from types import MappingProxyType
from typing import Literal

from kneecase.errors import InputError
from kneecase.evidence import PublishedValue
from kneecase.evidence.hops import (
    HOPS_COMBINED_LSI_SEM_REID2007,
    HOPS_CROSSOVER_LSI_SEM_REID2007,
    HOPS_DISTANCE_SEM_ROSS2002,
    HOPS_MEDIAL_TRIPLE_SEM_KIVLAN2013,
    HOPS_SIDE_HOP_10_LSI_MIRKOVIC2022,
    HOPS_SINGLE_LSI_SEM_REID2007,
    HOPS_TIMED_6M_LSI_SEM_REID2007,
    HOPS_TIMED_6M_SEM_GUIDELINE2010,
    HOPS_TIMED_6M_SEM_ROSS2002,
    HOPS_TRIPLE_LSI_SEM_REID2007,
)
from kneecase.measures.hop_trials import better_way
from kneecase.measures.symmetry import symmetry_sem_points
from kneecase.record import Reading, measure_named, precision_of
from kneecase.units import number_text

__all__ = [
    "COMBINED_SEM",
    "OTHER_HOP_ERRORS",
    "ErrorFrom",
    "SymmetryError",
    "index_error",
]

ErrorFrom = Literal["default", "index", "score"]
"""Published for the index, propagated from the error of the score, or the better known of the two."""

_OF_INDEX: Mapping[str, PublishedValue] = MappingProxyType(
    {
        "single_hop": HOPS_SINGLE_LSI_SEM_REID2007,
        "triple_hop": HOPS_TRIPLE_LSI_SEM_REID2007,
        "crossover_hop": HOPS_CROSSOVER_LSI_SEM_REID2007,
        "timed_hop_6m": HOPS_TIMED_6M_LSI_SEM_REID2007,
    }
)

COMBINED_SEM = HOPS_COMBINED_LSI_SEM_REID2007
"""The error of the mean of the four hop indices [points]."""

OTHER_HOP_ERRORS: Mapping[str, tuple[PublishedValue, ...]] = MappingProxyType(
    {
        "single_hop": (HOPS_DISTANCE_SEM_ROSS2002,),
        "triple_hop": (HOPS_DISTANCE_SEM_ROSS2002,),
        "crossover_hop": (HOPS_DISTANCE_SEM_ROSS2002,),
        "timed_hop_6m": (HOPS_TIMED_6M_SEM_ROSS2002, HOPS_TIMED_6M_SEM_GUIDELINE2010),
        "medial_triple_hop": (HOPS_MEDIAL_TRIPLE_SEM_KIVLAN2013,),
        "side_hop_10_timed": (HOPS_SIDE_HOP_10_LSI_MIRKOVIC2022,),
    }
)
"""What else is published about a test's error: shown beside the value used, never averaged with it."""


@dataclass(frozen=True, kw_only=True)
class SymmetryError:
    """The standard error of one symmetry index [points], the value it rests on, and the words for it."""

    sem_points: float
    published: PublishedValue
    words: str


def index_error(
    measure: str,
    involved: float,
    uninvolved: float,
    readings: Sequence[Reading],
    error_from: ErrorFrom = "default",
) -> SymmetryError | None:
    """Standard error of one symmetry index [points], or ``None`` where nothing is published.

    By default an error published for the index itself is taken where it was read at first hand, else the
    error of the score is propagated to the index; so no band rests on a number known from memory.
    ``involved`` and ``uninvolved`` are the two scores, ``readings`` the scored readings behind them.
    """
    if error_from not in ("default", "index", "score"):
        raise InputError(f"error_from must be 'default', 'index' or 'score', got {error_from!r}.")
    of_index = _OF_INDEX.get(measure)
    if of_index is not None and (error_from == "index" or (error_from == "default" and of_index.verified)):
        return _published(of_index)
    return None if error_from == "index" else _propagated(measure, involved, uninvolved, readings)


def _published(of_index: PublishedValue) -> SymmetryError:
    words = (
        f"standard error of the index {of_index.quantity()}, {of_index.population} ({of_index.how_known()})"
    )
    return SymmetryError(sem_points=of_index.number, published=of_index, words=words)


def _propagated(
    measure: str, involved: float, uninvolved: float, readings: Sequence[Reading]
) -> SymmetryError | None:
    precision = precision_of(measure, readings)
    if precision is None or not involved or not uninvolved:
        return None
    sem = symmetry_sem_points(
        involved,
        uninvolved,
        involved_sem=precision.sem_at(involved),
        uninvolved_sem=precision.sem_at(uninvolved),
        better=better_way(measure_named(measure)),
    )
    words = (
        f"standard error of the index {number_text(sem, 2)} points, the two limbs' errors taken as "
        f"independent and propagated; {precision.words()}, {precision.published.population}{_beside(measure)}"
    )
    return SymmetryError(sem_points=sem, published=precision.published, words=words)


def _beside(measure: str) -> str:
    of_index = _OF_INDEX.get(measure)
    if of_index is None or of_index.verified:
        return ""
    return (
        f"; {of_index.source.key} gives {of_index.quantity()} for the index itself "
        f"({of_index.how_known()}), so it is not the default"
    )
