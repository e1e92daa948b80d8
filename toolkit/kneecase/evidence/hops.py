"""Published values: hops."""

from __future__ import annotations
