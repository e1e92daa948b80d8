"""Every published value and source by name, gathered from the topic modules."""

from __future__ import annotations

import importlib
from collections.abc import Mapping
from types import MappingProxyType

from kneecase.errors import InputError
from kneecase.evidence.provenance import PublishedValue, Source

__all__ = ["TOPICS", "published_value", "published_values", "sources"]

TOPICS = (
    "motion",
    "motion_grades",
    "motion_normal",
    "swelling",
    "symptoms",
    "reference_limb",
    "course",
    "course_targets",
    "stiffness",
    "recovery_prior",
    "hops",
    "hop_administration",
    "hop_norms",
    "strength",
    "strength_error",
    "clearance",
    "second_injury",
    "other_limb",
    "balance",
    "alignment",
    "alignment_error",
    "movement",
    "landing",
    "landing_screens",
    "scores",
    "score_errors",
    "score_changes",
    "score_states",
    "readiness",
)
"""The modules of :mod:`kneecase.evidence` that hold values, one a topic."""


def published_values(topic: str | None = None) -> Mapping[str, PublishedValue]:
    """Every published value by its name, or those of one topic.

    Parameters
    ----------
    topic : str, optional
        One of :data:`TOPICS`; all of them by default.

    Returns
    -------
    mapping of str to PublishedValue
        In order of name.

    Raises
    ------
    InputError
        If the topic is unknown.
    """
    if topic is not None and topic not in TOPICS:
        raise InputError(f"topic must be one of {', '.join(TOPICS)}, got {topic!r}.")
    found: dict[str, PublishedValue] = {}
    for name in TOPICS if topic is None else (topic,):
        module = importlib.import_module(f"kneecase.evidence.{name}")
        found |= {v.name: v for v in vars(module).values() if isinstance(v, PublishedValue)}
    return MappingProxyType(dict(sorted(found.items())))


def published_value(name: str) -> PublishedValue:
    """The published value of this name.

    Parameters
    ----------
    name : str
        The constant's own name, for example ``"COURSE_FLEXION_WEEK6_WELL_OUWELEEN2021"``.

    Returns
    -------
    PublishedValue
        The value with its source.

    Raises
    ------
    InputError
        If there is none.
    """
    values = published_values()
    if name not in values:
        raise InputError(f"name must be a published value of kneecase.evidence, got {name!r}.")
    return values[name]


def sources() -> Mapping[str, Source]:
    """Every source that a published value rests on, by key.

    Returns
    -------
    mapping of str to Source
        In order of key.
    """
    found = {v.source.key: v.source for v in published_values().values()}
    return MappingProxyType(dict(sorted(found.items())))
