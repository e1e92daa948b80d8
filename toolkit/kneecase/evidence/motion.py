"""Published values: goniometer error, normal motion, passive motion grades, effusion, lag, girth."""

from __future__ import annotations

from kneecase.evidence.provenance import Source

COMMON_PRACTICE = Source(
    key="common-practice",
    authors="Rule of the trade",
    year=None,
    title="Common practice in knee rehabilitation, without a source",
    venue="",
    kind="convention",
    known="common practice",
)
