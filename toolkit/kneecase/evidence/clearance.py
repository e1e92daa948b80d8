"""Published values: clearance."""

from __future__ import annotations
