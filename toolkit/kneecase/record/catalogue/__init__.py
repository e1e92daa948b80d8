"""The catalogue of measures: everything a record may hold a number for."""

from __future__ import annotations

import difflib
from collections.abc import Mapping
from types import MappingProxyType

from kneecase.errors import InputError
from kneecase.record.catalogue.body import BODY_MEASURES
from kneecase.record.catalogue.hops import HOP_MEASURES
from kneecase.record.catalogue.measure import ErrorRule, Measure
from kneecase.record.catalogue.motion import MOTION_MEASURES
from kneecase.record.catalogue.movement import MOVEMENT_MEASURES
from kneecase.record.catalogue.scores import SCORE_MEASURES
from kneecase.record.catalogue.strength import STRENGTH_MEASURES

__all__ = ["MEASURES", "ErrorRule", "Measure", "measure_named"]

MEASURES: Mapping[str, Measure] = MappingProxyType(
    {
        measure.id: measure
        for measure in (
            *MOTION_MEASURES,
            *STRENGTH_MEASURES,
            *HOP_MEASURES,
            *MOVEMENT_MEASURES,
            *SCORE_MEASURES,
            *BODY_MEASURES,
        )
    }
)
"""Every measure by its id."""


def measure_named(id: str) -> Measure:
    """The measure with this id.

    Parameters
    ----------
    id : str
        For example ``"knee_flexion"``.

    Returns
    -------
    Measure
        Unit, limits, direction and errors.

    Raises
    ------
    InputError
        If there is none; the nearest ids are named.
    """
    found = MEASURES.get(id)
    if found is None:
        near = difflib.get_close_matches(str(id), MEASURES, n=3, cutoff=0.4) or list(MEASURES)[:3]
        raise InputError(
            f"measure must be one of the catalogue, got {id!r}. Did you mean {' or '.join(near)}?"
        )
    return found
