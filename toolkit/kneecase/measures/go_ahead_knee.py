"""What the knee itself must show before maximal hopping: effusion, motion, quadriceps."""

from __future__ import annotations

import datetime as dt

from kneecase.answers import reading_words
from kneecase.evidence.clearance import (
    CLEARANCE_HOP_EFFUSION_ADAMS2012,
    CLEARANCE_HOP_QUADRICEPS_INDEX_ADAMS2012,
    CLEARANCE_HOP_STRENGTH_FRESHNESS_OURS,
)
from kneecase.measures.go_ahead_item import GoAheadItem, dated_item, go_ahead_item
from kneecase.measures.limb_pair import LimbPair, limb_pairs
from kneecase.measures.motion_findings import deficit_deg
from kneecase.measures.motion_grade import FULL_MOTION, full_within_deg
from kneecase.measures.strength_symmetry import strength_symmetry
from kneecase.measures.strength_tests import StrengthTest
from kneecase.measures.threshold import is_met
from kneecase.record import EFFUSION_GRADES, Case
from kneecase.units import number_text, quantity_text

__all__ = ["effusion_item", "motion_item", "quadriceps_item"]


def effusion_item(case: Case, day: dt.date) -> GoAheadItem:
    """Effusion of the operated knee, the worst grade of its latest day."""
    line = CLEARANCE_HOP_EFFUSION_ADAMS2012
    label = f"effusion at most {EFFUSION_GRADES[int(line.number)]}"
    rows = case.readings_of("effusion", side=case.involved, until=day)
    graded = [(r.date, r.value, r) for r in rows if r.value is not None]
    if not graded:
        return go_ahead_item("effusion", label, "unknown", "no effusion grade is recorded", evidence=(line,))
    last = max(date for date, _, _ in graded)
    grade, worst = max(((value, r) for date, value, r in graded if date == last), key=lambda x: x[0])
    return dated_item(
        "effusion",
        label,
        is_met(grade, line.number, line.operator),
        f"graded on {last.isoformat()}",
        date=last,
        day=day,
        value=grade,
        shown=EFFUSION_GRADES[int(grade)],
        inputs=(reading_words(worst),),
        evidence=(line,),
    )


def motion_item(case: Case, day: dt.date, measure: str) -> GoAheadItem:
    """Extension or flexion against the other knee, the largest deficit of the latest day."""
    line = FULL_MOTION[measure]
    name = measure.removeprefix("knee_")
    label = f"full {name} against the other knee"
    pairs = [(deficit_deg(pair), pair) for pair in limb_pairs(case, measure, same_day=False)]
    known = [(deficit, pair) for deficit, pair in pairs if deficit is not None]
    if not known:
        words = f"{name} of both knees is not recorded"
        return go_ahead_item(name, label, "unknown", words, unit="deg", evidence=(line,))
    last = max(pair.involved.date for _, pair in known)
    latest = [found for found in known if found[1].involved.date == last]
    deficit, pair = max(latest, key=lambda found: found[0])
    return dated_item(
        name,
        label,
        _is_full(deficit, measure),
        _deficit_words(deficit, pair),
        date=last,
        day=day,
        value=deficit,
        unit="deg",
        inputs=_knees(pair),
        evidence=(line,),
    )


def _is_full(deficit_deg: float, measure: str) -> bool:
    """Whether a deficit against the other knee still counts as full motion."""
    line = FULL_MOTION[measure]
    return is_met(deficit_deg, full_within_deg(line), line.operator or "≤")


def _deficit_words(deficit: float, pair: LimbPair) -> str:
    short = f"{quantity_text(deficit, 'deg')} short of" if deficit > 0 else "not short of"
    parts = [f"{short} the other knee", pair.condition, pair.note]
    return ", ".join(part for part in parts if part)


def _knees(pair: LimbPair) -> tuple[str, ...]:
    other = () if pair.uninvolved is None else (f"other knee: {pair.uninvolved.words()}",)
    return (f"operated knee: {pair.involved.words()}", *other)


def quadriceps_item(case: Case, day: dt.date) -> GoAheadItem:
    """The lowest quadriceps index of its latest day of testing."""
    line = CLEARANCE_HOP_QUADRICEPS_INDEX_ADAMS2012
    label = f"quadriceps index {line.quantity()}"
    answer = strength_symmetry(case, day, threshold_pct=line.number, operator=line.operator)
    tests = [test for test in answer.tests if test.muscle == "quadriceps"]
    if not tests:
        words = "no quadriceps test since surgery is recorded"
        return go_ahead_item("quadriceps", label, "unknown", words, unit="pct", evidence=(line,))
    last = max(test.date for test in tests)
    latest = [test for test in tests if test.date == last]
    known = [(test.value, test) for test in latest if test.value is not None]
    if len(known) < len(latest):
        words = "; ".join(test.words for test in latest if test.value is None)
        return go_ahead_item("quadriceps", label, "unknown", words, date=last, unit="pct", evidence=(line,))
    index, test = min(known, key=lambda found: found[0])
    return _held(test, index, label, day)


def _held(test: StrengthTest, index: float, label: str, day: dt.date) -> GoAheadItem:
    line = CLEARANCE_HOP_QUADRICEPS_INDEX_ADAMS2012
    met = is_met(index, line.number, line.operator)
    evidence = (line, *(value for value in test.evidence if value is not line))
    words = f"{number_text(index)} % ({test.condition}); {test.words}"
    if met and not test.reference.trustworthy:
        return go_ahead_item(
            "quadriceps",
            label,
            "unknown",
            words,
            date=test.date,
            value=index,
            unit="pct",
            inputs=test.inputs,
            evidence=(line,),
            cautions=test.cautions,
        )
    return dated_item(
        "quadriceps",
        label,
        met,
        words,
        date=test.date,
        day=day,
        freshness=CLEARANCE_HOP_STRENGTH_FRESHNESS_OURS,
        value=index,
        unit="pct",
        inputs=test.inputs,
        evidence=evidence,
        cautions=test.cautions,
    )
