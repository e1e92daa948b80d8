"""The star excursion answer: reach of each limb by its own length, composite, and the anterior difference."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass
from typing import get_args

from kneecase.answers import Answer, Finding
from kneecase.errors import InputError
from kneecase.evidence.balance import (
    BALANCE_ANTERIOR_DIFFERENCE_PLISKY2006,
    BALANCE_ANTERIOR_RISK_PLISKY2006,
    BALANCE_COMPOSITE_GIRLS_PLISKY2006,
    BALANCE_COMPOSITE_RISK_GIRLS_PLISKY2006,
    BALANCE_LIMB_LENGTH_ICC_PLISKY2006,
    BALANCE_NORMALISED_RATERS_ICC_GRIBBLE2013,
    BALANCE_PLATFORM_INTER_ICC_PLISKY2009,
    BALANCE_PLATFORM_INTRA_ICC_PLISKY2009,
    BALANCE_PRACTICE_TRIALS_MUNRO2010,
    BALANCE_RAW_RATERS_ICC_GRIBBLE2013,
    BALANCE_REACH_ICC_MUNRO2010,
    BALANCE_REACH_ICC_PLISKY2006,
    BALANCE_REACH_SDD_MAX_MUNRO2010,
    BALANCE_REACH_SDD_MIN_MUNRO2010,
    BALANCE_REACH_SEM_MAX_MUNRO2010,
    BALANCE_REACH_SEM_MIN_MUNRO2010,
)
from kneecase.measures.comparable import DayScore, Statistic, day_scores, is_scored, not_scored
from kneecase.measures.reach import (
    composite_reach_pct,
    normalised_reach_pct,
    reach_deficit_cm,
    reach_deficit_pct,
)
from kneecase.measures.reference_limb import reference_limb
from kneecase.measures.reliability import minimal_detectable_change, normal_quantile
from kneecase.record import Case, Reading, Side, banner_of, measure_named
from kneecase.units import number_text, quantity_text

__all__ = ["StarExcursion", "star_excursion"]

_DIRECTIONS = ("star_anterior", "star_posteromedial", "star_posterolateral")
_LEVEL = 0.95
_Scores = dict[tuple[str, Side], DayScore]


@dataclass(frozen=True, kw_only=True)
class StarExcursion(Answer):
    """Star excursion reach on one day; ``statistic`` is how one score was made from the trials."""

    statistic: Statistic = "mean"
    tested_on: dt.date | None = None


def star_excursion(case: Case, on: dt.date | None = None, *, statistic: Statistic = "mean") -> StarExcursion:
    """Star excursion balance of both limbs on the last day it was tested, up to ``on``.

    Looked at for balance and control of the standing limb; the side is the limb that stands. Each reach is
    taken in percent of that limb's own length. The lines of 4 cm and 94 % come from uninjured school
    basketball players and decide nothing here.

    Parameters
    ----------
    case : Case
        The recorded case.
    on : datetime.date, optional
        The day looked at; default the last recorded date.
    statistic : {"mean", "best"}
        Mean of the scored trials, as in the study the error comes from, or the farthest; kept in the answer.

    Returns
    -------
    StarExcursion
        One finding a reach, a composite a limb, and the anterior difference in cm and in points of %.

    Raises
    ------
    InputError
        If the statistic is unknown.
    """
    if statistic not in get_args(Statistic):
        raise InputError(f"statistic must be 'mean' or 'best', got {statistic!r}.")
    day = on or case.last_date
    rows = [r for name in _DIRECTIONS for r in case.readings_of(name, until=day)]
    tested = max((r.date for r in rows if is_scored(r)), default=None)
    rows = [r for r in rows if tested is None or r.date >= tested]
    scores = _scores(case, rows, statistic)
    findings = (*_reaches(case, scores), *_composites(case, scores), *_anterior(case, scores))
    return StarExcursion(
        heading="Star excursion balance",
        banner=banner_of(case, day),
        summary=_summary(findings, tested, day, statistic),
        findings=findings,
        used=tuple(r for score in scores.values() for r in score.readings),
        left_out=not_scored(rows),
        cautions=_cautions(case, rows, day) if scores else (),
        statistic=statistic,
        tested_on=tested,
    )


def _scores(case: Case, rows: list[Reading], statistic: Statistic) -> _Scores:
    found: _Scores = {}
    for name in _DIRECTIONS:
        for side in (case.involved, case.uninvolved):
            for score in day_scores([r for r in rows if r.measure == name and r.side == side], statistic):
                found[name, side] = score
    return found


def _stands(case: Case, side: Side) -> str:
    return f"{case.limb(side)} limb standing ({side})"


def _reaches(case: Case, scores: _Scores) -> tuple[Finding, ...]:
    return tuple(_reach(case, name, side, score) for (name, side), score in scores.items())


def _reach(case: Case, name: str, side: Side, score: DayScore) -> Finding:
    length = case.athlete.limb_length_cm.get(side)
    label = f"{measure_named(name).label}, {_stands(case, side)}"
    if length is None:
        words = f"{score.words()}; limb length of the {side} limb is not recorded, so no percent can be given"
        return Finding(label=label, value=None, unit="pct", words=words, inputs=(score.words(),))
    value, sem = normalised_reach_pct(score.value, length), BALANCE_REACH_SEM_MAX_MUNRO2010.number
    half = normal_quantile(_LEVEL) * sem
    return Finding(
        label=label,
        value=value,
        unit="pct",
        low=value - half,
        high=value + half,
        level=_LEVEL,
        words=f"{score.words()}, in percent of limb length",
        inputs=(score.words(), f"limb length {side} {quantity_text(length, 'cm')}"),
        formula="100 × reach ÷ length of the limb that stands",
        error=f"standard error of a normalised reach {quantity_text(sem, 'pct', 2)}, the largest direction's",
        evidence=(
            BALANCE_REACH_SEM_MAX_MUNRO2010,
            BALANCE_REACH_SEM_MIN_MUNRO2010,
            BALANCE_REACH_ICC_MUNRO2010,
            BALANCE_REACH_ICC_PLISKY2006,
            BALANCE_LIMB_LENGTH_ICC_PLISKY2006,
            BALANCE_NORMALISED_RATERS_ICC_GRIBBLE2013,
            BALANCE_RAW_RATERS_ICC_GRIBBLE2013,
        ),
    )


def _composites(case: Case, scores: _Scores) -> tuple[Finding, ...]:
    sides = dict.fromkeys(side for _, side in scores)
    return tuple(_composite(case, side, scores) for side in sides)


def _composite(case: Case, side: Side, scores: _Scores) -> Finding:
    label = f"composite reach, {_stands(case, side)}"
    length = case.athlete.limb_length_cm.get(side)
    missing = [measure_named(n).label for n in _DIRECTIONS if (n, side) not in scores]
    missing += [] if length is not None else [f"limb length of the {side} limb"]
    if length is None or missing:
        return Finding(label=label, value=None, unit="pct", words=f"not recorded: {', '.join(missing)}")
    anterior, medial, lateral = (scores[n, side] for n in _DIRECTIONS)
    return Finding(
        label=label,
        value=composite_reach_pct(
            anterior_cm=anterior.value,
            posteromedial_cm=medial.value,
            posterolateral_cm=lateral.value,
            limb_length_cm=length,
        ),
        unit="pct",
        words="mean of three directions in percent of limb length; it hides which direction is short",
        inputs=(
            anterior.words(),
            medial.words(),
            lateral.words(),
            f"limb length {quantity_text(length, 'cm')}",
        ),
        formula="100 × (anterior + posteromedial + posterolateral) ÷ (3 × limb length)",
        error="no error of the composite was read",
        evidence=(BALANCE_COMPOSITE_GIRLS_PLISKY2006, BALANCE_COMPOSITE_RISK_GIRLS_PLISKY2006),
        cautions=(BALANCE_COMPOSITE_GIRLS_PLISKY2006.caution,),
    )


def _anterior(case: Case, scores: _Scores) -> tuple[Finding, ...]:
    own, other = (scores.get(("star_anterior", side)) for side in (case.involved, case.uninvolved))
    if own is None or other is None:
        return ()
    lengths = [case.athlete.limb_length_cm.get(side) for side in (case.involved, case.uninvolved)]
    value = reach_deficit_cm(involved_cm=own.value, uninvolved_cm=other.value)
    in_cm = Finding(
        label="anterior difference",
        value=value,
        unit="cm",
        words=_shorter(value),
        inputs=(f"involved {own.words()}", f"uninvolved {other.words()}"),
        formula="uninvolved − involved",
        error="published in percent of limb length only; see the difference in percent",
        evidence=(BALANCE_ANTERIOR_DIFFERENCE_PLISKY2006, BALANCE_ANTERIOR_RISK_PLISKY2006),
        cautions=(BALANCE_ANTERIOR_DIFFERENCE_PLISKY2006.caution,),
    )
    return (in_cm, _anterior_pct(own, other, lengths[0], lengths[1]))


def _anterior_pct(own: DayScore, other: DayScore, own_cm: float | None, other_cm: float | None) -> Finding:
    label = "anterior difference, each by its own limb length"
    if own_cm is None or other_cm is None:
        return Finding(label=label, value=None, unit="pct", words="limb length of both limbs is not recorded")
    value = reach_deficit_pct(
        involved_cm=own.value,
        uninvolved_cm=other.value,
        involved_limb_length_cm=own_cm,
        uninvolved_limb_length_cm=other_cm,
    )
    change = minimal_detectable_change(BALANCE_REACH_SEM_MAX_MUNRO2010.number, _LEVEL)
    inside = abs(value) <= change
    least, most = BALANCE_REACH_SDD_MIN_MUNRO2010, BALANCE_REACH_SDD_MAX_MUNRO2010
    return Finding(
        label=label,
        value=value,
        unit="pct",
        low=value - change,
        high=value + change,
        level=_LEVEL,
        words="inside what error alone can produce" if inside else "larger than what error alone can produce",
        inputs=(f"limb length involved {own_cm:g} cm, uninvolved {other_cm:g} cm",),
        formula="100 × (uninvolved ÷ its limb length − involved ÷ its limb length)",
        error=f"smallest detectable difference {number_text(least.number, 2)} to {most.quantity()}",
        evidence=(most, least, BALANCE_REACH_SEM_MAX_MUNRO2010),
        cautions=(
            "The error is that of a repeated reach of one limb; that it holds between limbs is assumed.",
            most.caution,
        ),
    )


def _shorter(value: float) -> str:
    if value == 0:
        return "both limbs reach the same"
    who = "the involved limb reaches less" if value > 0 else "the involved limb reaches farther"
    return f"{who}, by {quantity_text(abs(value), 'cm')}"


def _cautions(case: Case, rows: list[Reading], day: dt.date) -> tuple[str, ...]:
    texts = [
        "Neither the 4-cm nor the 94 % line is a criterion for return: both come from uninjured school "
        "basketball players.",
        "Anterior reach depends on ankle bend as well as on the knee.",
        "Best and mean of the trials are both in use and give different numbers: compare like with like. "
        "Tape on the floor and an instrumented platform do not agree on the anterior reach "
        f"(platform ICC within rater {BALANCE_PLATFORM_INTRA_ICC_PLISKY2009.quantity()}, between raters "
        f"{BALANCE_PLATFORM_INTER_ICC_PLISKY2009.quantity()}).",
    ]
    enough = BALANCE_PRACTICE_TRIALS_MUNRO2010
    practised = [r for r in rows if r.status == "practice"]
    groups = {(r.measure, r.side) for r in rows}
    if any(sum((p.measure, p.side) == group for p in practised) < enough.number for group in groups):
        texts.append(
            f"Fewer than {number_text(enough.number)} practice trials a direction are recorded: reach still "
            "grows with learning up to there (Munro and Herrington 2010)."
        )
    if len({r.device.strip().lower() for r in rows}) > 1:
        texts.append("Not all reaches were taken with the same device.")
    reference = reference_limb(case, "star_anterior", day)
    if not reference.trustworthy:
        said = reference.words()
        texts.append(f"{said[0].upper()}{said[1:]}.")
    return tuple(texts)


def _summary(
    findings: tuple[Finding, ...], tested: dt.date | None, day: dt.date, statistic: Statistic
) -> str:
    if tested is None:
        return f"No star excursion reach is recorded up to {day.isoformat()}."
    said = [f"{f.label}: {f.quantity()}" for f in findings if f.label.startswith(("composite", "anterior"))]
    return f"Tested on {tested.isoformat()} ({statistic} of the scored trials). {'; '.join(said)}."
