"""Measures whose curve starts at their first value: limb symmetry, girth difference, outcome score."""

from __future__ import annotations

import datetime as dt
from collections.abc import Sequence
from dataclasses import replace
from typing import Any

from kneecase.evidence.provenance import PublishedValue
from kneecase.measures import difference_sem, girth_difference_cm, hop_symmetry, strength_symmetry
from kneecase.measures.comparable import is_scored
from kneecase.measures.limb_pair import limb_pairs
from kneecase.measures.score_on_day import score_on_day
from kneecase.record import Case, precision_of
from kneecase.record.catalogue import Measure
from kneecase.recovery.curve_series import CurveSeries
from kneecase.recovery.window import Window

__all__ = ["GIRTHS", "girth_values", "score_values", "symmetry_values"]

GIRTHS = {"knee_girth": 1.0, "thigh_girth": -1.0}
"""Girths that get a curve, and the sign that makes a lasting difference positive."""


def symmetry_values(case: Case, info: Measure, window: Window) -> CurveSeries:
    """Limb symmetry of a hop or strength test [pct], under the condition with most days."""
    groups: dict[str, list[Any]] = {}
    for day in _days(case, info.id, window):
        answer: Any = (hop_symmetry if info.group == "hop" else strength_symmetry)(case.as_of(day), day)
        for test in answer.tests:
            if test.measure == info.id and test.date == day and test.value is not None:
                groups.setdefault(test.label, []).append(test)
    label, tests = max(groups.items(), key=lambda pair: len(pair[1]), default=(info.label, []))
    errors = [test.sem_points for test in tests]
    days = {test.date for test in tests}
    used = tuple(r for r in case.readings_of(info.id) if r.date in days and is_scored(r))
    known = bool(errors) and all(error is not None for error in errors)
    others = [name for name in groups if name != label]
    return _from_first(
        info,
        window,
        label=f"limb symmetry: {label}",
        unit="pct",
        better="higher",
        dates=[test.date for test in tests],
        values=[float(test.value) for test in tests],
        readings=used,
        sem=max(errors) if known else None,
        error=f"{tests[-1].error} (the largest of all days is used)" if known else "",
        evidence=_published([v for test in tests for v in test.evidence if "_SEM_" in v.name]),
        notes=tuple(f"Also tested and not mixed in: {name}." for name in others),
    )


def girth_values(case: Case, info: Measure, window: Window) -> CurveSeries:
    """Difference in girth between limbs [cm]: how much thicker the knee, or thinner the thigh."""
    groups: dict[str, list[Any]] = {}
    for day in _days(case, info.id, window):
        for pair in limb_pairs(case.as_of(day), info.id):
            if pair.involved.date == day and pair.uninvolved is not None:
                groups.setdefault(pair.condition, []).append(pair)
    where, pairs = max(groups.items(), key=lambda item: len(item[1]), default=("", []))
    rows = tuple(r for pair in pairs for r in pair.readings)
    precision = precision_of(info.id, rows) if rows else None
    values = [
        GIRTHS[info.id]
        * girth_difference_cm(
            involved_girth_cm=pair.involved.value, uninvolved_girth_cm=pair.uninvolved.value
        )
        for pair in pairs
    ]
    which = "thicker" if GIRTHS[info.id] > 0 else "thinner"
    return _from_first(
        info,
        window,
        label=f"{info.label} difference (operated limb {which}){f', {where}' if where else ''}",
        unit="cm",
        better="lower",
        dates=[pair.involved.date for pair in pairs],
        values=values,
        readings=rows,
        sem=None if precision is None else difference_sem(precision.sem, precision.sem),
        error="" if precision is None else f"{precision.words()}; of a difference √2 times that",
        evidence=() if precision is None else (precision.published,),
    )


def score_values(case: Case, info: Measure, window: Window) -> CurveSeries:
    """An outcome score [points], as total or from its items."""
    scores = []
    for day in _days(case, info.id, window, side=False):
        rows = [r for r in case.readings_of(info.id, on=day) if is_scored(r)]
        score = score_on_day(info.id, rows)
        if score.value_points is not None:
            scores.append(score)
    rows = [r for score in scores for r in score.readings]
    precision = precision_of(info.id, rows) if rows else None
    return _from_first(
        info,
        window,
        label=info.label,
        unit="points",
        better="lower" if info.better == "lower" else "higher",
        dates=[score.date for score in scores],
        values=[float(score.value_points or 0.0) for score in scores],
        readings=tuple(rows),
        sem=None if precision is None else precision.sem,
        error="" if precision is None else precision.words(),
        evidence=() if precision is None else (precision.published,),
    )


def _days(case: Case, measure: str, window: Window, *, side: bool = True) -> list[dt.date]:
    rows = case.readings_of(measure, side=case.involved if side else None)
    return sorted(
        {r.date for r in rows if is_scored(r) and not window.reason_outside(r.date)}
        if window.has_start
        else set()
    )


def _published(values: Sequence[PublishedValue]) -> tuple[PublishedValue, ...]:
    return tuple({value.name: value for value in values}.values())


def _from_first(info: Measure, window: Window, *, error: str, **given: Any) -> CurveSeries:
    """A series whose weeks run from its first value."""
    dates = tuple(given.pop("dates"))
    first = dates[0] if dates else window.origin
    text = f"{window.words()}; weeks run from the first value on {first.isoformat()}"
    values = tuple(given.pop("values"))
    made = CurveSeries(
        measure=info.id,
        origin=first,
        opened_by=window.opened_by,
        words=text,
        dates=dates,
        values=values,
        testers=(0,) * len(dates),
        **given,
    )
    return replace(made, error=error) if error else made
