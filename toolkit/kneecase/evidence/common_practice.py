"""The source that is none: rules of the trade, always shown as such."""

from __future__ import annotations

from kneecase.evidence.provenance import Source

__all__ = ["COMMON_PRACTICE"]

COMMON_PRACTICE = Source(
    key="common-practice",
    authors="Rule of the trade",
    year=None,
    title="Common practice in knee rehabilitation, without a source",
    venue="",
    kind="convention",
    known="common practice",
)
