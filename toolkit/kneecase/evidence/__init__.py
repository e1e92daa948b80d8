"""What is published: sources and the values taken from them, each with how it is known."""

from __future__ import annotations

from kneecase.evidence.provenance import HowKnown, PublishedValue, Source
from kneecase.evidence.registry import TOPICS, published_value, published_values, sources

__all__ = ["TOPICS", "HowKnown", "PublishedValue", "Source", "published_value", "published_values", "sources"]
