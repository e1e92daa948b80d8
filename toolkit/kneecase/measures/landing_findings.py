"""Landing errors of a case: each landing's total, one score by a named rule, and the base-rate lesson."""

from __future__ import annotations

import datetime as dt
import math
from collections.abc import Sequence
from dataclasses import dataclass

from kneecase.answers import Finding, LeftOut, reading_words
from kneecase.evidence.landing import (
    LANDING_AFTER_ACLR_BELL2014,
    LANDING_BAND_EXCELLENT_PADUA2009,
    LANDING_BAND_GOOD_PADUA2009,
    LANDING_BAND_MODERATE_PADUA2009,
    LANDING_CONTROLS_BELL2014,
    LANDING_CUT_PADUA2015,
    LANDING_RATERS_ICC_ONATE2010,
    LANDING_RULE_CLASS_HANZLIKOVA2020,
    LANDING_RULE_SHIFT_HANZLIKOVA2020,
    LANDING_SEM_BETWEEN_RATERS_PADUA2009,
    LANDING_SEM_TWO_RATERS_EVERARD2020,
    LANDING_SEM_WITHIN_RATER_PADUA2009,
)
from kneecase.evidence.observation_sheets import LANDING_ITEMS
from kneecase.measures.base_rate import base_rate_finding
from kneecase.measures.comparable import is_scored, not_scored
from kneecase.measures.landing import TrialRule, landing_band, landing_error_points, landing_score_points
from kneecase.measures.parts import Part
from kneecase.measures.recorded_items import RecordedItems, recorded_items
from kneecase.measures.reliability import normal_quantile
from kneecase.record import Case, Reading, precision_of
from kneecase.units import quantity_text

__all__ = ["landing_part"]

_LEVEL = 0.95
_BAND = (
    LANDING_BAND_EXCELLENT_PADUA2009,
    LANDING_BAND_GOOD_PADUA2009,
    LANDING_BAND_MODERATE_PADUA2009,
)
_BESIDE = (
    LANDING_SEM_TWO_RATERS_EVERARD2020,
    LANDING_SEM_WITHIN_RATER_PADUA2009,
    LANDING_SEM_BETWEEN_RATERS_PADUA2009,
    LANDING_RATERS_ICC_ONATE2010,
    *_BAND,
    LANDING_CUT_PADUA2015,
    LANDING_AFTER_ACLR_BELL2014,
    LANDING_CONTROLS_BELL2014,
    LANDING_RULE_SHIFT_HANZLIKOVA2020,
    LANDING_RULE_CLASS_HANZLIKOVA2020,
)


@dataclass(frozen=True, kw_only=True)
class _Landing:
    """One landing: its total [points] or the reason there is none."""

    name: str
    points: float | None
    words: str


def landing_part(case: Case, day: dt.date, rule: TrialRule) -> Part:
    """The landing error score of the last day it was observed, up to ``day``."""
    rows = case.readings_of("landing_errors", until=day)
    tested = max((r.date for r in rows if is_scored(r)), default=None)
    if tested is None:
        return Part(left_out=not_scored(rows))
    today = [r for r in rows if r.date == tested]
    scored = [r for r in today if is_scored(r)]
    landings = [_landing(name, group) for name, group in _by_trial(scored).items()]
    finding = _score(landings, scored, rule)
    return Part(
        findings=(finding, *_shown_items(scored), base_rate_finding()),
        used=tuple(scored),
        left_out=_left_out(rows, tested),
        cautions=(
            "Landing errors are for teaching and for change; they do not tell who will be injured.",
            *([_memory_caution()] if any(r.item is not None for r in scored) else []),
        ),
        says=f"Landing errors on {tested.isoformat()}: {finding.quantity()}"
        + (f" ({finding.words})." if finding.value is None else "."),
    )


def _left_out(rows: Sequence[Reading], tested: dt.date) -> tuple[LeftOut, ...]:
    return not_scored(r for r in rows if r.date >= tested)


def _by_trial(rows: Sequence[Reading]) -> dict[str, list[Reading]]:
    groups: dict[str, list[Reading]] = {}
    for row in rows:
        name = "landing" if row.trial is None else f"landing {row.trial}"
        groups.setdefault(name, []).append(row)
    return groups


def _landing(name: str, rows: Sequence[Reading]) -> _Landing:
    found = recorded_items(rows, len(LANDING_ITEMS))
    if found.problem:
        return _Landing(name=name, points=None, words=f"{name}: {found.problem}")
    if not found.answered:
        return _Landing(name=name, points=found.total, words=f"{name}: {_points(found.total)} as recorded")
    if found.missing:
        return _with_missing(name, found)
    points = float(landing_error_points(found.items))
    if found.disagrees_with(points):
        words = f"{name}: items give {_points(points)}, the total says {_points(found.total)}; none is taken"
        return _Landing(name=name, points=None, words=words)
    return _Landing(
        name=name, points=points, words=f"{name}: {_points(points)} from {len(LANDING_ITEMS)} items"
    )


def _with_missing(name: str, found: RecordedItems) -> _Landing:
    numbers = ", ".join(map(str, found.missing))
    if found.total is not None:
        words = f"{name}: {_points(found.total)} as recorded (items {numbers} not recorded)"
        return _Landing(name=name, points=found.total, words=words)
    return _Landing(name=name, points=None, words=f"{name}: no total, items {numbers} are not recorded")


def _points(value: float | None) -> str:
    return "unknown" if value is None else quantity_text(value, "points", 2)


def _score(landings: Sequence[_Landing], rows: Sequence[Reading], rule: TrialRule) -> Finding:
    label, inputs = "landing error score", tuple(landing.words for landing in landings)
    known = [landing.points for landing in landings if landing.points is not None]
    used: TrialRule = "single" if len(landings) == 1 else rule
    if len(known) < len(landings):
        words = "; ".join(landing.words for landing in landings if landing.points is None)
        return Finding(label=label, value=None, unit="points", words=words, inputs=inputs)
    if used == "best of three" and len(known) != 3:
        words = f"the rule 'best of three' needs three landings, {len(known)} are recorded"
        return Finding(label=label, value=None, unit="points", words=words, inputs=inputs)
    value = landing_score_points(known, rule=used)
    error = precision_of("landing_errors", rows)
    half = math.nan if error is None else normal_quantile(_LEVEL) * error.sem
    return Finding(
        label=label,
        value=value,
        unit="points",
        low=None if error is None else value - half,
        high=None if error is None else value + half,
        level=None if error is None else _LEVEL,
        words=f"{_band(value)} by bands that are unverified; trial rule: {_rule_words(used, rows)}",
        inputs=inputs,
        formula="sum of the items of a landing; then " + _RULE_WORDS[used],
        error="not known" if error is None else error.words(),
        evidence=(*(() if error is None else (error.published,)), *_BESIDE),
        cautions=(LANDING_BAND_GOOD_PADUA2009.caution, LANDING_CUT_PADUA2015.caution),
    )


_RULE_WORDS = {
    "mean": "the mean of the landings",
    "best of three": "the lowest of three landings",
    "worst": "the highest of the landings",
    "single": "the only landing",
}


def _rule_words(rule: TrialRule, rows: Sequence[Reading]) -> str:
    written = dict.fromkeys(r.condition.administration for r in rows if r.condition.administration)
    return _RULE_WORDS[rule] + (f" (written in the record: {', '.join(written)})" if written else "")


def _band(points: float) -> str:
    excellent, good, moderate = (value.number for value in _BAND)
    return landing_band(
        points,
        excellent_at_most_points=excellent,
        good_at_most_points=good,
        moderate_at_most_points=moderate,
    )


def _shown_items(rows: Sequence[Reading]) -> tuple[Finding, ...]:
    """The errors that were seen, in words, so that they can be taught."""
    seen: dict[int, int] = {}
    for row in rows:
        if row.item is not None and row.value:
            seen[row.item] = seen.get(row.item, 0) + 1
    if not seen:
        return ()
    words = {item.number: item for item in LANDING_ITEMS}
    lines = tuple(
        f"item {number}: {words[number].words}, in {times} landing{'' if times == 1 else 's'}"
        f"{'' if words[number].verified else ' (wording unverified: from memory)'}"
        for number, times in sorted(seen.items())
        if number in words
    )
    return (
        Finding(
            label="different errors seen",
            value=float(len(lines)),
            unit="fraction",
            digits=0,
            words="; ".join(lines),
            inputs=tuple(reading_words(row) for row in rows if row.item is not None and row.value),
            formula="items with at least one point",
        ),
    )


def _memory_caution() -> str:
    numbers = ", ".join(str(item.number) for item in LANDING_ITEMS if not item.verified)
    return f"Items {numbers} of the landing sheet are from memory: check them against the published sheet."
