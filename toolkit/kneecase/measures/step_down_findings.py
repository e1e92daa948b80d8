"""Step-down quality of a case: the score of each limb, its band, and how little raters agree on it."""

from __future__ import annotations

import datetime as dt
from collections.abc import Sequence

from kneecase.answers import Finding
from kneecase.evidence.movement import (
    MOVEMENT_BY_EYE_KAPPA_ALL_RESSMAN2021,
    MOVEMENT_BY_EYE_KAPPA_KNEE_RESSMAN2021,
    MOVEMENT_BY_EYE_KAPPA_PELVIS_RESSMAN2021,
    MOVEMENT_STEP_DOWN_GOOD_PIVA2006,
    MOVEMENT_STEP_DOWN_KAPPA_PIVA2006,
    MOVEMENT_STEP_DOWN_KAPPA_RABIN2010,
    MOVEMENT_STEP_DOWN_KAPPA_RABIN2014,
    MOVEMENT_STEP_DOWN_MEDIUM_PIVA2006,
)
from kneecase.evidence.observation_sheets import STEP_DOWN_ITEMS
from kneecase.measures.comparable import is_scored, not_scored
from kneecase.measures.parts import Part
from kneecase.measures.recorded_items import recorded_items
from kneecase.measures.step_down import step_down_band, step_down_points
from kneecase.record import Case, Reading, Side
from kneecase.units import number_text, quantity_text

__all__ = ["step_down_part"]

_EVIDENCE = (
    MOVEMENT_STEP_DOWN_GOOD_PIVA2006,
    MOVEMENT_STEP_DOWN_MEDIUM_PIVA2006,
    MOVEMENT_STEP_DOWN_KAPPA_PIVA2006,
    MOVEMENT_STEP_DOWN_KAPPA_RABIN2010,
    MOVEMENT_STEP_DOWN_KAPPA_RABIN2014,
    MOVEMENT_BY_EYE_KAPPA_ALL_RESSMAN2021,
    MOVEMENT_BY_EYE_KAPPA_KNEE_RESSMAN2021,
    MOVEMENT_BY_EYE_KAPPA_PELVIS_RESSMAN2021,
)


def step_down_part(case: Case, day: dt.date) -> Part:
    """Step-down quality of both limbs on the last day it was observed, up to ``day``."""
    rows = case.readings_of("step_down_errors", until=day)
    tested = max((r.date for r in rows if is_scored(r)), default=None)
    if tested is None:
        return Part(left_out=not_scored(rows))
    scored = [r for r in rows if r.date == tested and is_scored(r)]
    findings = tuple(
        _finding(case, side, trial, group) for (side, trial), group in _by_limb(case, scored).items()
    )
    said = "; ".join(f"{f.label} {f.quantity()}" for f in findings)
    return Part(
        findings=findings,
        used=tuple(scored),
        left_out=not_scored(r for r in rows if r.date >= tested),
        cautions=(
            "Movement rated by eye: two raters agree moderately in most studies, least on the pelvis.",
        ),
        says=f"On {tested.isoformat()}: {said}.",
    )


def _by_limb(case: Case, rows: Sequence[Reading]) -> dict[tuple[Side, int | None], list[Reading]]:
    groups: dict[tuple[Side, int | None], list[Reading]] = {}
    for side in (case.involved, case.uninvolved):
        for row in rows:
            if row.side == side:
                groups.setdefault((side, row.trial), []).append(row)
    return groups


def _finding(case: Case, side: Side, trial: int | None, rows: Sequence[Reading]) -> Finding:
    label = f"step-down quality, {case.limb(side)} ({side})" + (f", trial {trial}" if trial else "")
    value, how = _points(rows)
    if value is None:
        return Finding(label=label, value=None, unit="points", words=how, evidence=_EVIDENCE)
    band = step_down_band(
        value,
        good_at_most_points=MOVEMENT_STEP_DOWN_GOOD_PIVA2006.number,
        medium_at_most_points=MOVEMENT_STEP_DOWN_MEDIUM_PIVA2006.number,
    )
    low = MOVEMENT_STEP_DOWN_KAPPA_RABIN2010.number
    high = MOVEMENT_STEP_DOWN_KAPPA_RABIN2014.number
    return Finding(
        label=label,
        value=value,
        unit="points",
        words=f"{band} quality; {how}",
        inputs=(how,),
        formula="arms + trunk + pelvis + knee (0-2) + steadiness",
        error=f"agreement of two raters, kappa {number_text(low, 2)} to {number_text(high, 2)}",
        evidence=_EVIDENCE,
    )


def _points(rows: Sequence[Reading]) -> tuple[float | None, str]:
    """The score [points] and how it was made, or ``None`` and why there is none."""
    found = recorded_items(rows, len(STEP_DOWN_ITEMS))
    if found.problem:
        return None, found.problem
    if found.answered and not found.missing:
        value = float(step_down_points(found.items))
        if found.disagrees_with(value):
            total = quantity_text(found.total or 0.0, "points", 2)
            return None, f"items give {quantity_text(value, 'points')}, the total says {total}; none is taken"
        return value, _errors_seen(found.items)
    if found.total is not None:
        return found.total, "total as recorded"
    return None, f"no total: items {', '.join(map(str, found.missing))} are not recorded"


def _errors_seen(items: Sequence[float]) -> str:
    seen = [
        item.words + (f" ({points:g} of {item.highest} points)" if item.highest > 1 else "")
        for item, points in zip(STEP_DOWN_ITEMS, items, strict=True)
        if points
    ]
    return "seen: " + "; ".join(seen) if seen else "no error seen"
