"""Published values: course."""

from __future__ import annotations
