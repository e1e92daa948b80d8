"""One outcome score on one day, from items or total; where the two differ, neither is taken."""

from __future__ import annotations

import datetime as dt
import math
import re
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from kneecase.evidence import PublishedValue
from kneecase.evidence.questionnaires import QUESTIONNAIRES
from kneecase.evidence.scores import (
    SCORES_ACLRSI_MIN_ANSWERED_WEBSTER2008,
    SCORES_IKDC_MIN_ANSWERED_IKDC2000,
)
from kneecase.measures.koos_rule import KoosRule, koos_min_answered
from kneecase.measures.readiness import acl_rsi_points, tsk_11_points
from kneecase.measures.recorded_items import RecordedItems, recorded_items
from kneecase.measures.scores import ikdc_subjective_points, koos_points, kos_adl_points
from kneecase.record import Reading
from kneecase.units import number_text, quantity_text

__all__ = ["ScoreOnDay", "score_on_day"]


@dataclass(frozen=True, kw_only=True)
class ScoreOnDay:
    """One score, or why there is none: ``how`` says where it comes from, ``problem`` what contradicts."""

    measure: str
    date: dt.date
    value_points: float | None
    how: str
    rule: str = ""
    problem: str = ""
    readings: tuple[Reading, ...] = ()
    evidence: tuple[PublishedValue, ...] = ()

    @property
    def version(self) -> str:
        """The version of the form as recorded, empty where none is."""
        return ", ".join(
            dict.fromkeys(r.condition.administration for r in self.readings if r.condition.administration)
        )


@dataclass(frozen=True, kw_only=True)
class _FromItems:
    """What the items give: points, or None with the reason; the missing-item rule and its source."""

    points: float | None
    why_not: str
    rule: str
    evidence: tuple[PublishedValue, ...] = ()


def score_on_day(measure: str, rows: Sequence[Reading], koos_rule: KoosRule = "2012") -> ScoreOnDay:
    """The score that the scored ``rows`` of one measure and one day hold."""
    form = QUESTIONNAIRES[measure]
    found = recorded_items(rows, form.item_count)
    if found.problem:
        return _made(measure, rows, None, f"cannot be used: {found.problem}", problem=found.problem)
    if not found.answered:
        return _made(measure, rows, found.total, "total as recorded")
    items = _from_items(measure, found, koos_rule)
    count = f"{found.answered} of {form.item_count} items"
    if items.points is None:
        return _without_items(measure, rows, found, items)
    if found.disagrees_with(items.points):
        problem = (
            f"the items give {_points(items.points)} and the recorded total is {_points(found.total)}; "
            "neither is taken until one is mended"
        )
        return _made(measure, rows, None, problem, rule=items.rule, problem=problem, evidence=items.evidence)
    return _made(measure, rows, items.points, f"from {count}", rule=items.rule, evidence=items.evidence)


def _without_items(
    measure: str, rows: Sequence[Reading], found: RecordedItems, items: _FromItems
) -> ScoreOnDay:
    if found.total is not None:
        how = f"total as recorded; the items alone give none: {items.why_not}"
        return _made(measure, rows, found.total, how, rule=items.rule, evidence=items.evidence)
    return _made(measure, rows, None, f"no score: {items.why_not}", rule=items.rule, evidence=items.evidence)


def _made(
    measure: str,
    rows: Sequence[Reading],
    value: float | None,
    how: str,
    *,
    rule: str = "",
    problem: str = "",
    evidence: tuple[PublishedValue, ...] = (),
) -> ScoreOnDay:
    return ScoreOnDay(
        measure=measure,
        date=rows[0].date,
        value_points=value,
        how=how,
        rule=rule,
        problem=problem,
        readings=tuple(rows),
        evidence=evidence,
    )


def _from_items(measure: str, found: RecordedItems, koos_rule: KoosRule) -> _FromItems:
    if measure == "ikdc_subjective":
        least = SCORES_IKDC_MIN_ANSWERED_IKDC2000
        return _given(found, ikdc_subjective_points(found.items, min_answered=least.number), least, "")
    if measure.startswith("koos_"):
        least = koos_min_answered(measure, koos_rule)
        named = f"rule of {koos_rule}: "
        return _given(found, koos_points(found.items, min_answered=least.number), least, named)
    if measure == "acl_rsi":
        return _acl_rsi(found)
    points = kos_adl_points(found.items) if measure == "kos_adl" else tsk_11_points(found.items)
    return _complete(found, float(points))


def _given(found: RecordedItems, points: object, least: PublishedValue, named: str) -> _FromItems:
    """A score under a rule that allows some missing items."""
    value = float(points)  # type: ignore[arg-type]
    rule = f"{named}at least {number_text(least.number)} items answered"
    if not least.verified:
        rule += " (unverified)"
    if math.isnan(value):
        why = f"{found.answered} answered, {rule}; missing {_numbers(found.missing)}"
        return _FromItems(points=None, why_not=why, rule=rule, evidence=(least,))
    return _FromItems(points=value, why_not="", rule=rule, evidence=(least,))


def _complete(found: RecordedItems, points: float) -> _FromItems:
    """A score for which no missing-item rule is known."""
    rule = "every item answered, because no missing-item rule is known"
    if found.missing:
        return _FromItems(points=None, why_not=f"{rule}; missing {_numbers(found.missing)}", rule=rule)
    return _FromItems(points=points, why_not="", rule=rule)


def _acl_rsi(found: RecordedItems) -> _FromItems:
    least = SCORES_ACLRSI_MIN_ANSWERED_WEBSTER2008
    written = {_scale_written(r.condition.administration) for r in found.readings if r.item is not None} - {
        ""
    }
    highest = max(x for x in found.items if not math.isnan(x))
    if len(written) > 1 or ("0-10" in written and highest > 10):
        why = "the items do not fit one scale: some are 0-10, some 0-100"
        return _FromItems(points=None, why_not=why, rule="", evidence=(least,))
    if not written and highest <= 10:
        why = (
            "items of 0-10 and of 0-100 cannot be told apart; write 'items 0-10' or 'items 0-100' in "
            "administration"
        )
        return _FromItems(points=None, why_not=why, rule="", evidence=(least,))
    scale: Literal["0-100", "0-10"] = "0-10" if "0-10" in written else "0-100"
    points = acl_rsi_points(found.items, item_scale=scale, min_answered=least.number)
    return _given(found, points, least, f"items {scale}, ")


def _scale_written(administration: str) -> str:
    scale = re.search(r"\b0\s*(?:-|–|to)\s*(100|10)\b", administration)
    return f"0-{scale[1]}" if scale else ""


def _points(value: float | None) -> str:
    return "unknown" if value is None else quantity_text(value, "points", 2)


def _numbers(items: Sequence[int]) -> str:
    return ("item " if len(items) == 1 else "items ") + ", ".join(map(str, items))
