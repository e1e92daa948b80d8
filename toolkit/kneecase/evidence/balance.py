"""Published values: balance."""

from __future__ import annotations
