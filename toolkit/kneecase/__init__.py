"""kneecase: calculators for knee rehabilitation after ACL reconstruction, each with its measurement error.

The public face is light: rooms load on first use.
"""

from __future__ import annotations

import importlib
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from kneecase import answers, charts, evidence, measures, record, recovery, report
    from kneecase.record import Case, new_case, read_case

__all__ = [
    "Case",
    "__version__",
    "answers",
    "charts",
    "evidence",
    "measures",
    "new_case",
    "read_case",
    "record",
    "recovery",
    "report",
]

__version__ = "0.1.0"

_ROOMS = ("answers", "charts", "evidence", "measures", "record", "recovery", "report")
_FROM_RECORD = ("Case", "new_case", "read_case")


def __getattr__(name: str) -> Any:
    if name in _ROOMS:
        return importlib.import_module(f"kneecase.{name}")
    if name in _FROM_RECORD:
        return getattr(importlib.import_module("kneecase.record"), name)
    raise AttributeError(f"module 'kneecase' has no attribute {name!r}")


def __dir__() -> list[str]:
    return sorted(__all__)
