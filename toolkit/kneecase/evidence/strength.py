"""Published values: strength."""

from __future__ import annotations
