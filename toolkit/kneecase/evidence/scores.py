"""Published values: scores."""

from __future__ import annotations
