"""Shift to the good leg in a case: the share of the load under the involved limb, by task."""

from __future__ import annotations

import datetime as dt

from kneecase.answers import Finding
from kneecase.measures.comparable import not_scored
from kneecase.measures.limb_pair import LimbPair, limb_pairs
from kneecase.measures.parts import Part
from kneecase.measures.stance import involved_load_pct
from kneecase.record import Case
from kneecase.units import quantity_text

__all__ = ["stance_part"]


def stance_part(case: Case, day: dt.date) -> Part:
    """The load under the involved limb on the latest day of each task, up to ``day``."""
    known = case.as_of(day)
    pairs = limb_pairs(known, "stance_load")
    findings = tuple(_finding(pair) for pair in pairs)
    latest = max((pair.involved.date for pair in pairs), default=None)
    rows = known.readings_of("stance_load")
    return Part(
        findings=findings,
        used=tuple(r for pair in pairs for r in pair.readings),
        left_out=not_scored(r for r in rows if latest is None or r.date >= latest),
        cautions=("Load under one limb has no published error or norm here: it describes a shift only.",)
        if pairs
        else (),
        says=" ".join(f"{f.label[0].upper()}{f.label[1:]}: {f.quantity()}." for f in findings),
    )


def _finding(pair: LimbPair) -> Finding:
    label = f"load under the involved limb, {pair.condition or 'task not recorded'}"
    own, other = pair.involved, pair.uninvolved
    if other is None:
        words = f"the other limb was not read on {own.date.isoformat()}, so no share can be given"
        return Finding(label=label, value=None, unit="pct", words=words, inputs=(f"involved {own.words()}",))
    inputs = (f"involved {own.words()}", f"uninvolved {other.words()}")
    if own.value + other.value <= 0:
        return Finding(label=label, value=None, unit="pct", words="both scales read nothing", inputs=inputs)
    value = involved_load_pct(involved_kg=own.value, uninvolved_kg=other.value)
    return Finding(
        label=label,
        value=value,
        unit="pct",
        words=_words(own.value - other.value),
        inputs=inputs,
        formula="100 × involved ÷ (involved + uninvolved)",
        error="none published",
    )


def _words(more_kg: float) -> str:
    if more_kg == 0:
        return "even on both limbs"
    limb = "involved limb" if more_kg > 0 else "other limb"
    return f"{quantity_text(abs(more_kg), 'kg')} more on the {limb}"
