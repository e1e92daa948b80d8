"""Published values: movement."""

from __future__ import annotations
