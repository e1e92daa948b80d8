"""The motion answer: what the operated knee lacks against the other, with its error."""

from __future__ import annotations

import datetime as dt
from collections.abc import Sequence

from kneecase.answers import Answer, Finding, LeftOut
from kneecase.evidence import PublishedValue
from kneecase.measures.comparable import not_scored
from kneecase.measures.end_of_extension import heel_height_findings, lag_finding
from kneecase.measures.limb_pair import LimbPair, limb_pairs
from kneecase.measures.motion_findings import (
    allowed_arc_finding,
    arc_finding,
    deficit_finding,
    grade_finding,
)
from kneecase.measures.normal_motion import normal_motion
from kneecase.measures.reference_limb import reference_limb, youngest_age_years
from kneecase.record import Case, Reading, banner_of, limit_words

__all__ = ["motion_deficits"]

_MEASURES = ("knee_extension", "knee_flexion")


def motion_deficits(case: Case, on: dt.date | None = None, level: float = 0.90) -> Answer:
    """Motion of the operated knee against the other: deficits with error, arc, passive grade.

    Looked at every visit. Active and passive motion stay apart, and so do readings before and after
    treatment. Extension is compared with the other knee's own, which may hyperextend.

    Parameters
    ----------
    case : Case
        The recorded case.
    on : datetime.date, optional
        The day looked at; default the last recorded date.
    level : float
        Level of the intervals [fraction].

    Returns
    -------
    Answer
        One finding for each deficit, arc, grade, heel height and lag that the record allows; what is not
        known is a finding without a number that says what to measure.

    Raises
    ------
    InputError
        If the level is not between 0 and 1.

    Notes
    -----
    The other knee of another day, or its pre-operative reference, may serve and is named so. Where the
    other knee cannot be trusted or was not measured, normal values for age and sex are shown beside, never
    used in a difference.
    """
    day = on or case.last_date
    known = case.as_of(day)
    pairs = {measure: _latest(limb_pairs(known, measure, same_day=False)) for measure in _MEASURES}
    lags = limb_pairs(known, "quadriceps_lag")
    heels = heel_height_findings(known)
    findings = [
        *(deficit_finding(p, level, _limit_caution(known, p, day)) for m in _MEASURES for p in pairs[m]),
        *_whole_knee(known, pairs, day),
        *(finding for finding, _ in heels),
        *(lag_finding(pair) for pair in lags),
    ]
    used = [r for group in (*pairs.values(), lags) for pair in group for r in pair.readings]
    used += [r for _, readings in heels for r in readings]
    missing = tuple(_missing(measure) for measure in _MEASURES if not pairs[measure])
    trusted, why = _other_knee(known, day)
    fallback = () if trusted and not _lacks_reference(pairs) else _normal_findings(known, day)
    return Answer(
        heading="Motion against the other knee",
        banner=banner_of(case, day),
        summary=_summary([*findings, *missing]),
        findings=(*findings, *missing, *fallback),
        used=tuple(dict.fromkeys(used)),
        left_out=_left_out(known, used),
        cautions=(*why, *_stale(pairs, day)),
    )


def _latest(pairs: Sequence[LimbPair]) -> tuple[LimbPair, ...]:
    """Of each kind of motion (active, passive, not said) only the pairs of its latest day."""
    last: dict[object, dt.date] = {}
    for pair in pairs:
        motion = pair.key[0]
        last[motion] = max(pair.involved.date, last.get(motion, pair.involved.date))
    return tuple(pair for pair in pairs if pair.involved.date == last[pair.key[0]])


def _whole_knee(case: Case, pairs: dict[str, tuple[LimbPair, ...]], day: dt.date) -> list[Finding]:
    """Arc, share of the allowed arc and grade, where both ends were taken alike on one day."""
    found: list[Finding] = []
    limits = case.limit("flexion", day), case.limit("extension", day)
    for extension in pairs["knee_extension"]:
        for flexion in pairs["knee_flexion"]:
            if extension.key[:2] != flexion.key[:2] or extension.involved.date != flexion.involved.date:
                continue
            found.append(arc_finding(extension, flexion))
            flexion_limit = None if limits[0] is None else limits[0].value
            if flexion_limit is not None:
                end = None if limits[1] is None else limits[1].value
                found.append(
                    allowed_arc_finding(
                        extension, flexion, flexion_limit_deg=flexion_limit, extension_limit_deg=end
                    )
                )
            if extension.key[0] == "passive":
                grade = grade_finding(extension, flexion, _grade_cautions(case, extension, flexion, day))
                found += [] if grade is None else [grade]
    return found


def _limit_caution(case: Case, pair: LimbPair, day: dt.date) -> tuple[str, ...]:
    limit = case.limit(pair.measure.removeprefix("knee_"), day)
    if limit is None:
        return ()
    return (f"While the surgeon's limit is in force ({limit_words(limit)}) a deficit is not stiffness.",)


def _grade_cautions(case: Case, extension: LimbPair, flexion: LimbPair, day: dt.date) -> tuple[str, ...]:
    notes = [pair.note for pair in (extension, flexion) if pair.note]
    limits = [text for pair in (extension, flexion) for text in _limit_caution(case, pair, day)]
    return tuple(dict.fromkeys(notes + limits))


def _other_knee(case: Case, day: dt.date) -> tuple[bool, tuple[str, ...]]:
    found = [reference_limb(case, measure, day) for measure in _MEASURES]
    reasons = dict.fromkeys(reason for reference in found for reason in reference.reasons)
    if not reasons:
        return True, ()
    return False, (f"The other knee is not a sure reference: {'; '.join(reasons)}.",)


def _lacks_reference(pairs: dict[str, tuple[LimbPair, ...]]) -> bool:
    return any(group and all(pair.uninvolved is None for pair in group) for group in pairs.values())


def _normal_findings(case: Case, day: dt.date) -> tuple[Finding, ...]:
    age = youngest_age_years(case, day)
    if age is None:
        return ()
    values = [v for m in reversed(_MEASURES) for v in normal_motion(m, sex=case.athlete.sex, age_years=age)]
    return tuple(_normal_finding(value) for value in values)


def _normal_finding(value: PublishedValue) -> Finding:
    return Finding(
        label=f"for comparison, {value.definition}",
        value=value.number,
        unit=value.unit,
        words=f"{value.population}; not this athlete's knee and not used in any difference "
        f"({value.how_known()})",
        evidence=(value,),
        cautions=(value.caution,) if value.caution else (),
    )


def _missing(measure: str) -> Finding:
    what = measure.removeprefix("knee_")
    return Finding(
        label=f"{what} deficit",
        value=None,
        unit="deg",
        words=f"no {what} of the operated knee is recorded since surgery: measure both knees",
    )


def _stale(pairs: dict[str, tuple[LimbPair, ...]], day: dt.date) -> tuple[str, ...]:
    old = {p.involved.date for group in pairs.values() for p in group if p.involved.date != day}
    if not old:
        return ()
    return (f"Readings of {', '.join(d.isoformat() for d in sorted(old))} are used; this is {day}.",)


def _summary(findings: Sequence[Finding]) -> str:
    told = [f for f in findings if "deficit" in f.label or f.label.startswith("passive motion grade")]
    sentence = "; ".join(f"{f.label}: {f.quantity()}" for f in told)
    return f"{sentence[0].upper()}{sentence[1:]}."


def _left_out(case: Case, used: Sequence[Reading]) -> tuple[LeftOut, ...]:
    measures = (*_MEASURES, "quadriceps_lag", "heel_height_difference")
    rows = [r for measure in measures for r in case.readings_of(measure)]
    out = list(not_scored(rows))
    known = {r.id for r in used} | {x.reading.id for x in out}
    out += [LeftOut(reading=r, reason=_reason(case, r)) for r in rows if r.id not in known]
    return tuple(out)


def _reason(case: Case, reading: Reading) -> str:
    if reading.side == case.uninvolved:
        return "the other knee: another reading of it is nearer in time and condition"
    if reading.date < case.surgery.date:
        return "the operated knee before surgery: reference only"
    return "older than the latest reading of its kind"
