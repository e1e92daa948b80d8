"""The readings of a case as a pandas table."""

from __future__ import annotations

from dataclasses import fields
from typing import TYPE_CHECKING, Any

from kneecase.record.case import Case
from kneecase.record.rows import Condition

if TYPE_CHECKING:
    import pandas as pd

__all__ = ["MEASUREMENT_TABLE_COLUMNS", "measurements_table"]

MEASUREMENT_TABLE_COLUMNS = (
    *("date", "week", "measure", "side", "limb", "trial", "value", "unit", "tester", "device", "note"),
    *("item", "status", "missing", "position", "motion", "timing", "mode", "angle_deg", "speed_deg_per_s"),
    *("lever_arm_m", "administration", "text", "raw_value", "raw_unit", "id"),
)
"""The columns of :func:`measurements_table`, in order."""

_NUMBERS = ("week", "value", "angle_deg", "speed_deg_per_s", "lever_arm_m")
_COUNTS = ("trial", "item")
_IN_CONDITION = tuple(field.name for field in fields(Condition))


def measurements_table(case: Case) -> pd.DataFrame:
    """One row a reading or trial, in order of date.

    ``date`` is a timestamp, ``week`` counts from surgery [weeks], ``value`` is in ``unit`` and
    missing where ``missing`` says why; ``trial`` and ``item`` are whole numbers or missing;
    all else is text, empty where nothing was said.

    Parameters
    ----------
    case : Case
        The case.

    Returns
    -------
    pandas.DataFrame
        Columns :data:`MEASUREMENT_TABLE_COLUMNS`.
    """
    import pandas as pd

    columns = {name: _column(case, name) for name in MEASUREMENT_TABLE_COLUMNS}
    return pd.DataFrame({name: pd.Series(values, dtype=_dtype(name)) for name, values in columns.items()})


def _column(case: Case, name: str) -> list[Any]:
    readings = case.readings
    if name == "week":
        return [case.weeks(reading.date) for reading in readings]
    if name == "limb":
        return [case.limb(reading.side) for reading in readings]
    if name == "side":
        return [reading.side or "" for reading in readings]
    if name in _IN_CONDITION:
        return [getattr(reading.condition, name) for reading in readings]
    return [getattr(reading, name) for reading in readings]


def _dtype(name: str) -> Any:
    if name == "date":
        return "datetime64[ns]"
    if name in _NUMBERS:
        return "float64"
    return "Int64" if name in _COUNTS else str
