"""Sentences that stand on every review."""

from __future__ import annotations

__all__ = ["INVENTED", "OUTSIDE", "WHAT_IT_IS"]

INVENTED = "This case is invented, for teaching: no real person stands behind it."

OUTSIDE = (
    "This knee is outside the scope of kneecase: it is recorded and its red flags are shown, "
    "nothing else is worked out. Its programme is the surgeon's."
)

WHAT_IT_IS = (
    "What this is: numbers with their error and their sources, in support of the judgement of licensed "
    "clinicians. What it is not: a diagnosis, an order, or a decision about sport. The surgeon's orders and "
    "local protocol come first."
)
