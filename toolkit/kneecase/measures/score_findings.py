"""The findings on one outcome score: the score with what stands beside it, and its change against error."""

from __future__ import annotations

import math
from collections.abc import Sequence

from kneecase.answers import Finding, reading_words
from kneecase.evidence import PublishedValue
from kneecase.evidence.questionnaires import QUESTIONNAIRES
from kneecase.measures.readiness import tegner_change_points
from kneecase.measures.reliability import minimal_detectable_change, normal_quantile
from kneecase.measures.score_beside import BESIDE, IKDC_NORMS
from kneecase.measures.score_on_day import ScoreOnDay
from kneecase.measures.threshold import is_met
from kneecase.record import Case, Precision, measure_named, precision_of
from kneecase.units import quantity_text

__all__ = ["change_finding", "score_finding", "tegner_finding"]

_LEVEL = 0.95


def score_finding(case: Case, score: ScoreOnDay) -> Finding:
    """The score of the latest day, its error, and what is published beside it."""
    form, beside = QUESTIONNAIRES[score.measure], BESIDE[score.measure]
    error = precision_of(score.measure, score.readings)
    value = score.value_points
    half = None if error is None or value is None else normal_quantile(_LEVEL) * error.sem
    norms = IKDC_NORMS.get(case.athlete.sex, ()) if score.measure == "ikdc_subjective" else ()
    own = () if error is None else (error.published,)
    return Finding(
        label=form.label,
        value=value,
        unit="points",
        low=None if half is None or value is None else value - half,
        high=None if half is None or value is None else value + half,
        level=None if half is None else _LEVEL,
        words=_words(score, beside.acceptable) + _flagged(error, "; the interval rests on an error that is "),
        inputs=_inputs(score),
        formula=_FORMULAS.get(score.measure, "as recorded"),
        error="none published" if error is None else error.words(),
        evidence=tuple(dict.fromkeys((*score.evidence, *own, *beside.acceptable, *beside.lines, *norms))),
        cautions=beside.cautions,
    )


def _flagged(error: Precision | None, before: str) -> str:
    """The flag of an error that was not read in print, after some words, or nothing."""
    return f"{before}{error.flag}" if error is not None and error.flag else ""


_FORMULAS = {
    "ikdc_subjective": "100 × sum of answered items ÷ most points they can give",
    "koos_pain": "100 − 100 × mean of answered items ÷ 4",
    "koos_symptoms": "100 − 100 × mean of answered items ÷ 4",
    "koos_adl": "100 − 100 × mean of answered items ÷ 4",
    "koos_sport": "100 − 100 × mean of answered items ÷ 4",
    "koos_qol": "100 − 100 × mean of answered items ÷ 4",
    "acl_rsi": "mean of answered items, times 10 where asked on 0-10",
    "kos_adl": "100 × sum ÷ most possible",
    "tsk_11": "sum of the items",
}


def _inputs(score: ScoreOnDay) -> tuple[str, ...]:
    form = QUESTIONNAIRES[score.measure]
    lines = [f"{score.date.isoformat()}: {score.how}"]
    lines += [f"missing-item rule: {score.rule}"] if score.rule else []
    lines += [f"version as recorded: {score.version}"] if score.version else []
    lines += [f"how numbers are entered: {form.entry}", f"the form belongs to: {form.ownership} (unverified)"]
    return (*lines, *(reading_words(r) for r in score.readings if r.item is None))


def _words(score: ScoreOnDay, acceptable: Sequence[PublishedValue]) -> str:
    value = score.value_points
    if value is None:
        return score.how
    said = [f"on {score.date.isoformat()}, {score.how}"]
    if acceptable:
        reached = [is_met(value, line.number, "≥") for line in acceptable]
        lines = " and ".join(_line(line) for line in acceptable)
        where = "at or above both" if all(reached) else "below both" if not any(reached) else "between them"
        said.append(f"people call it acceptable from {lines}: this is {where}")
    return "; ".join(said)


def _line(value: PublishedValue) -> str:
    """A published number with its author and year, and a flag where it is unverified."""
    source = value.source
    who = source.authors.split()[0].rstrip(",")
    if source.authors == "Authors not read":
        who = source.venue.rstrip("0123456789:-, ")
    named = f"{who} {source.year}"
    return f"{value.quantity()} ({named}{'' if value.verified else ', unverified'})"


def change_finding(now: ScoreOnDay, before: ScoreOnDay) -> Finding:
    """The change of one score since the day before, against its detectable change and what matters."""
    form, beside = QUESTIONNAIRES[now.measure], BESIDE[now.measure]
    label = f"{form.label}, change since {before.date.isoformat()}"
    if now.value_points is None or before.value_points is None:
        which = now if now.value_points is None else before
        words = f"no change can be given: {which.date.isoformat()}: {which.how}"
        return Finding(label=label, value=None, unit="points", words=words)
    change = now.value_points - before.value_points
    error = precision_of(now.measure, (*before.readings, *now.readings))
    mdc = None if error is None else minimal_detectable_change(error.sem, _LEVEL)
    own = () if error is None else (error.published,)
    return Finding(
        label=label,
        value=change,
        unit="points",
        low=None if mdc is None else change - mdc,
        high=None if mdc is None else change + mdc,
        level=None if mdc is None else _LEVEL,
        words=_change_words(now.measure, change, mdc, beside.matters) + _flagged(error, "; the error is "),
        inputs=tuple(
            f"{s.date.isoformat()}: {quantity_text(s.value_points or 0.0, 'points', 2)}, {s.how}"
            for s in (before, now)
        ),
        formula="latest − the day before it",
        error="none published" if error is None else error.words(),
        evidence=tuple(dict.fromkeys((*own, *beside.errors, *beside.matters))),
        cautions=_change_cautions(now, before, own),
    )


def _change_words(measure: str, change: float, mdc: float | None, matters: Sequence[PublishedValue]) -> str:
    if mdc is None:
        said = "no published error: cannot tell whether it is real"
    elif abs(change) > mdc and not math.isclose(abs(change), mdc):
        better = (change > 0) == (measure_named(measure).better == "higher")
        said = f"{'better' if better else 'worse'}, by more than error alone can produce ({_mdc(mdc)})"
    else:
        said = f"cannot be told from error (up to {_mdc(mdc)})"
    if matters:
        said += "; published as mattering: " + ", ".join(_line(value) for value in matters)
    return said


def _mdc(mdc: float) -> str:
    return quantity_text(mdc, "points", 1)


def _change_cautions(now: ScoreOnDay, before: ScoreOnDay, own: Sequence[PublishedValue]) -> tuple[str, ...]:
    texts = [value.caution for value in own if value.caution]
    if now.rule and now.rule != before.rule and before.rule:
        texts.append("The two days were scored by different missing-item rules.")
    if now.version != before.version:
        texts.append(
            f"The version of the form is not the same: {before.version or 'not recorded'}, then "
            f"{now.version or 'not recorded'}."
        )
    return tuple(texts)


def tegner_finding(now: ScoreOnDay, pre_injury: Sequence[ScoreOnDay]) -> Finding:
    """The activity level now less the earliest level recorded before surgery."""
    first = pre_injury[0]
    label = "Tegner activity level, current less pre-injury"
    if now.value_points is None or first.value_points is None:
        return Finding(label=label, value=None, unit="points", words="one of the two levels is unknown")
    value = tegner_change_points(current_points=now.value_points, pre_injury_points=first.value_points)
    others = [s for s in pre_injury[1:] if s.value_points != first.value_points]
    cautions = [
        f"The earliest level recorded before surgery ({first.date.isoformat()}) is taken as the pre-injury "
        "level; if it was asked after the injury, it is too low.",
    ]
    cautions += [
        f"Another level is recorded before surgery: {quantity_text(s.value_points or 0.0, 'points')} on "
        f"{s.date.isoformat()}."
        for s in others
    ]
    return Finding(
        label=label,
        value=value,
        unit="points",
        words="back at the level before"
        if value == 0
        else f"{'above' if value > 0 else 'below'} the level before",
        inputs=tuple(
            f"{s.date.isoformat()}: level {quantity_text(s.value_points or 0.0, 'points')}"
            for s in (first, now)
        ),
        formula="current − pre-injury",
        cautions=tuple(cautions),
    )
