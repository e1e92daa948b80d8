"""What can be recorded, as a list to keep beside the spreadsheet."""

from __future__ import annotations

from kneecase.measures import HOP_ADMINISTRATIONS
from kneecase.record import MEASURES, Measure
from kneecase.units import typed_units

__all__ = ["catalogue_text"]

_ALSO = ("mm", "m", "in", "ft", "lb", "lbf", "kgf", "ft-lb", "ms", "°F")
"""Units named beside the own one; more spellings are understood."""


def catalogue_text() -> str:
    """Every measure by the word to write in ``measure``, its unit, and whether it needs a side.

    Looked at while filling in ``measurements.csv``.

    Returns
    -------
    str
        Plain text, one line a measure, grouped; then the ways of giving the hop tests.
    """
    lines = ["Write the first word in the column measure. A unit left blank is the one named here."]
    group = ""
    for about in MEASURES.values():
        if about.group != group:
            group = about.group
            lines += ["", f"{group}:"]
        lines.append(_line(about))
        if about.id == "knee_extension":
            lines.append(f"  {'knee_motion':26} both at once, as 5-0-140 or 0-5-120; needs a side")
    lines += ["", "Ways of giving the hop tests, for the column administration:"]
    lines += [f"  {name}" for name in HOP_ADMINISTRATIONS]
    return "\n".join(lines)


def _line(about: Measure) -> str:
    also = [unit for unit in typed_units(about.unit) if unit in _ALSO and unit != about.unit]
    unit = about.unit + (f" (or {', '.join(also)})" if also else "")
    parts = [about.label, unit, "needs a side" if about.per_limb else "no side"]
    if about.items:
        parts.append(f"total, or items 1 to {about.items} in the column item")
    if about.note:
        parts.append(about.note)
    return f"  {about.id:26} {'; '.join(parts)}"
