"""A part of an answer: findings with the readings and cautions that belong to them, to be put together."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from kneecase.answers import Finding, LeftOut
from kneecase.record import Reading

__all__ = ["Part", "joined"]


@dataclass(frozen=True, kw_only=True)
class Part:
    """Findings of one kind, the readings they use and leave out, and what must be said beside them."""

    findings: tuple[Finding, ...] = ()
    used: tuple[Reading, ...] = ()
    left_out: tuple[LeftOut, ...] = ()
    cautions: tuple[str, ...] = ()
    says: str = ""


def joined(parts: Iterable[Part]) -> Part:
    """Several parts as one, in order; a caution that stands twice is said once."""
    every = tuple(parts)
    return Part(
        findings=tuple(f for part in every for f in part.findings),
        used=tuple(r for part in every for r in part.used),
        left_out=tuple(x for part in every for x in part.left_out),
        cautions=tuple(dict.fromkeys(text for part in every for text in part.cautions)),
        says=" ".join(part.says for part in every if part.says),
    )
