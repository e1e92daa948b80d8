"""Alignment of a case in pictures: frontal plane projection, trunk lean and pelvic drop of each limb."""

from __future__ import annotations

import datetime as dt

from kneecase.answers import Finding
from kneecase.evidence import PublishedValue
from kneecase.evidence.alignment import (
    ALIGNMENT_FPPA_DROP_JUMP_MEN_HERRINGTON2010,
    ALIGNMENT_FPPA_DROP_JUMP_WOMEN_HERRINGTON2010,
    ALIGNMENT_FPPA_HOP_LANDING_WOMEN_HERRINGTON2014,
    ALIGNMENT_FPPA_HOP_LANDING_WOMEN_PFP_HERRINGTON2014,
    ALIGNMENT_FPPA_PFP_DIFFERENCE_WILLSON2008,
    ALIGNMENT_FPPA_SQUAT_MEN_GHULAM2021,
    ALIGNMENT_FPPA_SQUAT_MEN_PFP_GHULAM2021,
    ALIGNMENT_FPPA_SQUAT_WOMEN_HERRINGTON2014,
    ALIGNMENT_FPPA_SQUAT_WOMEN_PFP_HERRINGTON2014,
    ALIGNMENT_FPPA_STEP_LANDING_MEN_HERRINGTON2010,
    ALIGNMENT_FPPA_STEP_LANDING_WOMEN_HERRINGTON2010,
)
from kneecase.evidence.alignment_error import (
    ALIGNMENT_FPPA_BETWEEN_DAY_ICC_MUNRO2012,
    ALIGNMENT_FPPA_MOMENT_SHARE_STRAUB2022,
    ALIGNMENT_FPPA_SDD_MIN_MUNRO2012,
    ALIGNMENT_FPPA_SEM_MAX_MUNRO2012,
    ALIGNMENT_FPPA_SEM_MIN_MUNRO2012,
    ALIGNMENT_FPPA_SQUAT_SEM_GWYNNE2014,
    ALIGNMENT_FPPA_SQUAT_VALIDITY_GWYNNE2014,
    ALIGNMENT_FPPA_SQUAT_VALIDITY_SCHURR2017,
    ALIGNMENT_FPPA_WITHIN_DAY_ICC_MUNRO2012,
    ALIGNMENT_TRUNK_BETWEEN_RATERS_ICC_DINGENEN2014,
    ALIGNMENT_TRUNK_KNEE_MOMENT_R_DINGENEN2014,
    ALIGNMENT_TRUNK_WITHIN_RATER_ICC_DINGENEN2014,
)
from kneecase.measures.comparable import DayScore, not_scored
from kneecase.measures.limb_pair import LimbPair, limb_pairs
from kneecase.measures.parts import Part
from kneecase.measures.reliability import minimal_detectable_change, normal_quantile
from kneecase.record import Case, Precision, measure_named, precision_of
from kneecase.units import quantity_text

__all__ = ["alignment_part"]

_LEVEL = 0.95
_MEASURES = ("frontal_plane_projection", "trunk_lean", "pelvic_drop")

_WOMEN = (
    ALIGNMENT_FPPA_DROP_JUMP_WOMEN_HERRINGTON2010,
    ALIGNMENT_FPPA_STEP_LANDING_WOMEN_HERRINGTON2010,
    ALIGNMENT_FPPA_SQUAT_WOMEN_HERRINGTON2014,
    ALIGNMENT_FPPA_HOP_LANDING_WOMEN_HERRINGTON2014,
    ALIGNMENT_FPPA_SQUAT_WOMEN_PFP_HERRINGTON2014,
    ALIGNMENT_FPPA_HOP_LANDING_WOMEN_PFP_HERRINGTON2014,
    ALIGNMENT_FPPA_PFP_DIFFERENCE_WILLSON2008,
)
_MEN = (
    ALIGNMENT_FPPA_DROP_JUMP_MEN_HERRINGTON2010,
    ALIGNMENT_FPPA_STEP_LANDING_MEN_HERRINGTON2010,
    ALIGNMENT_FPPA_SQUAT_MEN_GHULAM2021,
    ALIGNMENT_FPPA_SQUAT_MEN_PFP_GHULAM2021,
)
_CAMERA = (
    ALIGNMENT_FPPA_SEM_MIN_MUNRO2012,
    ALIGNMENT_FPPA_SEM_MAX_MUNRO2012,
    ALIGNMENT_FPPA_SDD_MIN_MUNRO2012,
    ALIGNMENT_FPPA_WITHIN_DAY_ICC_MUNRO2012,
    ALIGNMENT_FPPA_BETWEEN_DAY_ICC_MUNRO2012,
    ALIGNMENT_FPPA_SQUAT_SEM_GWYNNE2014,
    ALIGNMENT_FPPA_SQUAT_VALIDITY_GWYNNE2014,
    ALIGNMENT_FPPA_SQUAT_VALIDITY_SCHURR2017,
    ALIGNMENT_FPPA_MOMENT_SHARE_STRAUB2022,
)
_TRUNK = (
    ALIGNMENT_TRUNK_WITHIN_RATER_ICC_DINGENEN2014,
    ALIGNMENT_TRUNK_BETWEEN_RATERS_ICC_DINGENEN2014,
    ALIGNMENT_TRUNK_KNEE_MOMENT_R_DINGENEN2014,
)
_WAYS = {
    "frontal_plane_projection": ("inward (valgus)", "outward (varus)"),
    "trunk_lean": ("towards the standing limb", "away from the standing limb"),
    "pelvic_drop": ("free side low", "free side high"),
}


def alignment_part(case: Case, day: dt.date) -> Part:
    """The angles from pictures, the latest of each task, up to ``day``."""
    known = case.as_of(day)
    pairs = [pair for name in _MEASURES for pair in limb_pairs(known, name)]
    rows = [r for name in _MEASURES for r in known.readings_of(name)]
    latest = max((pair.involved.date for pair in pairs), default=None)
    return Part(
        findings=tuple(f for pair in pairs for f in _findings(case, pair)),
        used=tuple(r for pair in pairs for r in pair.readings),
        left_out=not_scored(r for r in rows if latest is None or r.date >= latest),
        cautions=(
            "Angles from one camera are for education and description: landmarks differ between papers and "
            "testers, and agreement with three-dimensional analysis is poor to fair. They decide nothing.",
        )
        if pairs
        else (),
    )


def _findings(case: Case, pair: LimbPair) -> tuple[Finding, ...]:
    both = [(case.involved, pair.involved)]
    if pair.uninvolved is not None:
        both.append((case.uninvolved, pair.uninvolved))
    found = [_angle(case, pair, f"{case.limb(side)} ({side})", score) for side, score in both]
    return (*found, _difference(pair, pair.uninvolved)) if pair.uninvolved is not None else tuple(found)


def _label(pair: LimbPair) -> str:
    task = f", {pair.condition}" if pair.condition else ", task not recorded"
    return measure_named(pair.measure).label + task


def _angle(case: Case, pair: LimbPair, limb: str, score: DayScore) -> Finding:
    error = precision_of(pair.measure, score.readings)
    half = None if error is None else normal_quantile(_LEVEL) * error.sem
    return Finding(
        label=f"{_label(pair)}, {limb}",
        value=score.value,
        unit="deg",
        low=None if half is None else score.value - half,
        high=None if half is None else score.value + half,
        level=None if half is None else _LEVEL,
        words=_way(pair.measure, score.value),
        inputs=(score.words(),),
        formula="mean of the scored trials",
        error="not published in degrees" if error is None else error.words(),
        evidence=_evidence(case, pair.measure, error),
    )


def _way(measure: str, value: float) -> str:
    if value == 0:
        return "0"
    return _WAYS[measure][0 if value > 0 else 1]


def _evidence(case: Case, measure: str, error: Precision | None) -> tuple[PublishedValue, ...]:
    if measure == "trunk_lean":
        return _TRUNK
    if error is None:
        return ()
    norms = {"female": _WOMEN, "male": _MEN}.get(case.athlete.sex, (*_WOMEN, *_MEN))
    return (error.published, *_CAMERA, *norms)


def _difference(pair: LimbPair, other: DayScore) -> Finding:
    value = pair.involved.value - other.value
    error = precision_of(pair.measure, pair.readings)
    change = None if error is None else minimal_detectable_change(error.sem, _LEVEL)
    words = "no published error in degrees: cannot be judged"
    if change is not None:
        inside = abs(value) <= change
        words = (
            "inside what error alone can produce" if inside else "larger than what error alone can produce"
        )
    return Finding(
        label=f"{_label(pair)}, involved less uninvolved",
        value=value,
        unit="deg",
        low=None if change is None else value - change,
        high=None if change is None else value + change,
        level=None if change is None else _LEVEL,
        words=words,
        inputs=(f"involved {pair.involved.words()}", f"uninvolved {other.words()}"),
        formula="involved − uninvolved",
        error="not published in degrees"
        if change is None
        else f"smallest detectable difference {quantity_text(change, 'deg', 2)}",
        evidence=() if error is None else (error.published,),
        cautions=() if error is None else (error.published.caution,),
    )
