"""The columns of the two tables of a case, in the order they are written.

Reading takes them in any order, with capitals and spaces; writing always uses these lists.
A row of ``measurements.csv`` is one :class:`~kneecase.record.Reading`, except that a row of
the measure ``knee_motion`` (neutral-zero text such as ``5-0-140`` in ``value``) is two
readings: their ids are the id of the row followed by ``.extension`` and ``.flexion``, and
both keep what was typed in ``text`` and ``raw_value``.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from types import MappingProxyType

from kneecase.record.terms import QUESTIONS

__all__ = [
    "EXTENSION_SUFFIX",
    "FLEXION_SUFFIX",
    "KNEE_MOTION",
    "MEASUREMENT_COLUMNS",
    "PAIN_COLUMNS",
    "REFERENCE_PREFIX",
    "VISIT_COLUMNS",
    "column_name",
]

MEASUREMENT_COLUMNS = (
    "id",
    "date",
    "measure",
    "item",
    "side",
    "trial",
    "value",
    "unit",
    "status",
    "missing",
    "tester",
    "device",
    "position",
    "motion",
    "timing",
    "mode",
    "angle_deg",
    "speed_deg_per_s",
    "lever_arm_m",
    "administration",
    "note",
)
"""Columns of ``measurements.csv``."""

PAIN_COLUMNS: Mapping[str, str] = MappingProxyType(
    {"pain_rest": "rest", "pain_activity": "activity", "pain_next_morning": "next morning"}
)
"""The pain columns of ``visits.csv`` and the key each has in :attr:`kneecase.record.Visit.pain`."""

VISIT_COLUMNS = (
    "id",
    "date",
    "clinician",
    *PAIN_COLUMNS,
    *QUESTIONS,
    "soreness",
    "aids",
    "setting",
    "activity",
    "dose",
    "response_next_day",
    "action",
    "agreement",
    "reason",
    "decided_by",
    "surgeon_told",
    "override_of",
    "note",
)
"""Columns of ``visits.csv``."""

KNEE_MOTION = "knee_motion"
"""What ``measure`` says in a row of neutral-zero text."""

EXTENSION_SUFFIX = ".extension"
FLEXION_SUFFIX = ".flexion"

REFERENCE_PREFIX = "ref-"
"""Start of the id of a reading that stands in ``case.toml`` as a ``[[reference]]``, not in the table."""


def column_name(header: str) -> str:
    """A header as people type it, as the name of a column: ``"Angle (deg)"`` is ``angle_deg``.

    Examples
    --------
    >>> column_name(" Lever arm [m] "), column_name("SIDE"), column_name("pain next-morning")
    ('lever_arm_m', 'side', 'pain_next_morning')
    """
    return re.sub(r"\W+", "_", header.strip().lower()).strip("_")
