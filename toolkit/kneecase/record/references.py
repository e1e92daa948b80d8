"""Readings that stand in ``case.toml`` as ``[[reference]]`` blocks, and their keys there."""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Any

from kneecase.record.columns import REFERENCE_PREFIX
from kneecase.record.rows import Reading
from kneecase.record.table_changes import motion_pairs, new_row

__all__ = ["in_table", "is_reference", "reference_blocks"]

_WHOLE = ("item", "trial")
_NUMBERS = ("value", "angle_deg", "speed_deg_per_s", "lever_arm_m")
_PLAIN = re.compile(r"-?[0-9]+(?:\.[0-9]+)?")


def is_reference(reading: Reading) -> bool:
    """Whether a reading stands in ``case.toml``, not in the table.

    In the table ``id`` is a column like any other; only a block keeps an id of its own as an extra key.
    """
    return reading.id.startswith(REFERENCE_PREFIX) or "id" in reading.extra


def in_table(readings: Sequence[Reading]) -> list[Reading]:
    """The readings that stand in ``measurements.csv``."""
    return [reading for reading in readings if not is_reference(reading)]


def reference_blocks(readings: Sequence[Reading]) -> list[dict[str, Any]]:
    """The keys and values of every ``[[reference]]`` block of a case in its order, new ones last."""
    found = [reading for reading in readings if is_reference(reading)]
    found.sort(key=lambda reading: (reading.row is None, reading.row or 0))
    return [_values(group) for group in motion_pairs(found)]


def _values(group: Sequence[Reading]) -> dict[str, Any]:
    """One block's values; blank ones and what is understood anyway are left out."""
    values: dict[str, Any] = {name: cell for name, cell in new_row(group, ".", "as typed").items() if cell}
    values["date"] = group[0].date
    for name in _WHOLE:
        if name in values:
            values[name] = int(values[name])
    for name in _NUMBERS:
        if _PLAIN.fullmatch(values.get(name, "")):
            values[name] = float(values[name])
    if "id" not in group[0].extra:
        del values["id"]
    if values.get("status") == "scored":
        del values["status"]
    return values
