"""Limb symmetry of any paired test in a case, with its error, and only against a limb that may serve."""

from __future__ import annotations

import datetime as dt
from typing import Literal

from kneecase.answers import Answer, Finding, LeftOut, reading_words
from kneecase.errors import InputError
from kneecase.measures.comparable import Statistic, left_out_because, not_scored
from kneecase.measures.limb_pair import LimbPair, limb_pairs
from kneecase.measures.reference_limb import ReferenceLimb, reference_limb
from kneecase.measures.symmetry import limb_symmetry_index, symmetry_band, symmetry_sem_points
from kneecase.measures.symmetry_verdict import SymmetryThreshold, symmetry_verdict
from kneecase.record import Case, Measure, Precision, Reading, banner_of, measure_named, precision_of
from kneecase.units import quantity_text

__all__ = ["limb_symmetry"]

_RATIO_UNITS = ("cm", "m", "s", "reps", "n", "n_m", "n_m_per_kg", "kg")


def limb_symmetry(
    case: Case,
    measure: str,
    on: dt.date | None = None,
    *,
    statistic: Statistic = "mean",
    threshold: SymmetryThreshold | None = None,
    level: float = 0.90,
) -> Answer:
    """Limb symmetry of one paired test: index, both absolute scores, error band, and verdict if asked.

    Looked at when both limbs were tested alike on one day. Each condition (mode, angle, speed, way of
    testing) has its own index; they are never mixed.

    Parameters
    ----------
    case : Case
        The recorded case.
    measure : str
        Id of a measure taken on each limb that has a true zero: distance, time, count, force, torque, girth.
    on : datetime.date, optional
        The day looked at; default the last recorded date.
    statistic : {"mean", "best"}
        What stands for a limb's scored trials; lost and practice trials never count.
    threshold : SymmetryThreshold, optional
        A line with its operator to hold the index against; without it there is no verdict.
    level : float
        Level of the band [fraction].

    Returns
    -------
    Answer
        One finding for each condition; without the other limb of the same day its number is unknown.

    Raises
    ------
    InputError
        If the measure has no meaningful ratio between limbs, the statistic is unknown, or the level is not
        between 0 and 1.

    Notes
    -----
    The index is decided unrounded. Against a limb that is not a trustworthy reference it is shown but meets
    no criterion. The error is that of a limb's score, propagated; it does not shrink with more trials.
    """
    info, better = _ratio_measure(measure)
    if statistic not in ("mean", "best"):
        raise InputError(f"statistic must be 'mean' or 'best', got {statistic!r}.")
    day = on or case.last_date
    known = case.as_of(day)
    reference = reference_limb(case, measure, day)
    pairs = limb_pairs(known, measure, statistic=statistic)
    findings = tuple(_finding(pair, info, better, reference, threshold, level) for pair in pairs)
    used = tuple(r for pair in pairs for r in pair.readings)
    return Answer(
        heading=f"Limb symmetry: {info.label}",
        banner=banner_of(case, day),
        summary=_summary(findings, info),
        findings=findings or (_unknown(info),),
        used=used,
        left_out=_left_out(known.readings_of(measure), used),
        cautions=(
            *(() if reference.trustworthy else (f"{_capital(reference.words())}.",)),
            *(f"Not checked: {text}." for text in reference.unchecked),
            "The other limb changes too: look at both absolute scores, not at the percentage alone.",
        ),
    )


def _ratio_measure(measure: str) -> tuple[Measure, Literal["higher", "lower"]]:
    info = measure_named(measure)
    if not info.per_limb or info.unit not in _RATIO_UNITS or info.better == "neither":
        raise InputError(
            "measure must be one taken on each limb, with a true zero and a better direction, for a ratio "
            f"between limbs to mean something, got {measure!r}. Angles go to motion_deficits, grades to "
            "effusion_course."
        )
    return info, info.better


def _finding(
    pair: LimbPair,
    info: Measure,
    better: Literal["higher", "lower"],
    reference: ReferenceLimb,
    threshold: SymmetryThreshold | None,
    level: float,
) -> Finding:
    label = info.label + (f", {pair.condition}" if pair.condition else "")
    inputs = (f"operated limb: {pair.involved.words()}", *(reading_words(r) for r in pair.involved.readings))
    other = pair.uninvolved
    if other is None:
        words = "the other limb was not tested alike on that day: no index without it"
        return Finding(label=label, value=None, unit="pct", words=words, inputs=inputs)
    if 0 in ((other.value,) if better == "higher" else (other.value, pair.involved.value)):
        words = "a score of 0 gives no index: look at the two scores themselves"
        return Finding(label=label, value=None, unit="pct", words=words, inputs=inputs)
    index = limb_symmetry_index(pair.involved.value, other.value, better)
    error = precision_of(pair.measure, pair.readings)
    sem = _sem_points(pair.involved.value, other.value, error, better)
    low, high = (None, None) if sem is None else symmetry_band(index, sem, level)
    held = (
        None
        if threshold is None
        else symmetry_verdict(index, sem_points=sem, threshold=threshold, reference=reference, level=level)
    )
    scores = (
        f"operated {quantity_text(pair.involved.value, info.unit)}, "
        f"other {quantity_text(other.value, info.unit)}"
    )
    published = None if threshold is None else threshold.published
    return Finding(
        label=label,
        value=index,
        unit="pct",
        low=low,
        high=high,
        level=None if sem is None else level,
        words=scores if held is None else f"{scores}; {held.words}",
        verdict="" if held is None else held.verdict,
        inputs=(
            *inputs,
            f"other limb: {other.words()}",
            *(reading_words(r) for r in other.readings),
        ),
        formula="100 x operated / other" if better == "higher" else "100 x other / operated (less is better)",
        error=_error_words(info, error, sem),
        evidence=(*reference.evidence, *(() if error is None else (error.published,)))
        + (() if published is None else (published,)),
        cautions=() if held is None else held.cautions,
    )


def _sem_points(
    involved: float, uninvolved: float, error: Precision | None, better: Literal["higher", "lower"]
) -> float | None:
    if error is None or involved == 0:
        return None
    return symmetry_sem_points(
        involved,
        uninvolved,
        involved_sem=error.sem_at(involved),
        uninvolved_sem=error.sem_at(uninvolved),
        better=better,
    )


def _error_words(info: Measure, error: Precision | None, sem_points: float | None) -> str:
    if error is None or sem_points is None:
        return f"no published error of {info.label} fits these readings, so there is no band"
    return f"{error.words()}; propagated to the index: {quantity_text(sem_points, 'points', 2)}"


def _unknown(info: Measure) -> Finding:
    return Finding(
        label=info.label,
        value=None,
        unit="pct",
        words="no scored trial of the operated limb is recorded since surgery",
    )


def _summary(findings: tuple[Finding, ...], info: Measure) -> str:
    if not findings:
        return f"{_capital(info.label)}: unknown, the operated limb was not tested since surgery."
    told = (f"{f.label}: {f.quantity()}{f' ({f.verdict})' if f.verdict else ''}" for f in findings)
    return f"{_capital('; '.join(told))}."


def _capital(text: str) -> str:
    return text[0].upper() + text[1:]


def _left_out(rows: tuple[Reading, ...], used: tuple[Reading, ...]) -> tuple[LeftOut, ...]:
    reason = "not of the latest day on which the operated limb was tested this way"
    return not_scored(rows) + left_out_because(rows, used, reason)
