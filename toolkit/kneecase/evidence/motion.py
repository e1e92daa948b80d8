"""Published values: motion."""

from __future__ import annotations
