"""What is published: sources and the values taken from them, each with how it is known."""

from __future__ import annotations

from kneecase.evidence.provenance import HowKnown, PublishedValue, Source

__all__ = ["HowKnown", "PublishedValue", "Source"]
