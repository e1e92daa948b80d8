"""Whether the other limb may serve as the reference for the operated one."""

from __future__ import annotations

import datetime as dt
import re
from dataclasses import dataclass

from kneecase.errors import InputError
from kneecase.evidence import PublishedValue
from kneecase.evidence.reference_limb import REFERENCE_CHILD_AGE_COMMON_PRACTICE
from kneecase.measures.comparable import by_condition, condition_words, day_scores
from kneecase.measures.reliability import minimal_detectable_change
from kneecase.record import Case, measure_named, precision_of
from kneecase.units import number_text, quantity_text

__all__ = ["ReferenceLimb", "reference_limb", "youngest_age_years"]

_Words = list[str]


@dataclass(frozen=True, kw_only=True)
class ReferenceLimb:
    """Whether the other limb is a trustworthy reference, and if not, why.

    A symmetry taken against a limb that is not ``trustworthy`` is shown but can meet no criterion.
    ``reasons`` speak against it; ``unchecked`` is what the record does not allow to be judged;
    ``evidence`` are the published values used.
    """

    trustworthy: bool
    reasons: tuple[str, ...]
    unchecked: tuple[str, ...] = ()
    evidence: tuple[PublishedValue, ...] = ()

    def words(self) -> str:
        """The finding in one sentence."""
        if self.trustworthy:
            return "nothing recorded speaks against the other limb as reference"
        return f"the other limb is not a trustworthy reference: {'; '.join(self.reasons)}"


def reference_limb(case: Case, measure: str, on: dt.date | None = None) -> ReferenceLimb:
    """Whether the other limb may serve as reference for ``measure`` on the day ``on``.

    Looked at before any side-to-side percentage is believed: an operated limb looks well beside a weak one.

    Speaks against it: a graft taken from the other limb; a previous injury or operation of it; surgery on
    both knees; a child, or growth not finished; and a loss of its own, larger than its measurement error,
    against any earlier value of the same limb under the same condition.

    Parameters
    ----------
    case : Case
        The recorded case.
    measure : str
        Id of a measure taken on both limbs.
    on : datetime.date, optional
        The day looked at; default the last recorded date.

    Returns
    -------
    ReferenceLimb
        Verdict, reasons in words, and what could not be checked.

    Raises
    ------
    InputError
        If the measure is unknown or not one taken on each limb.

    Notes
    -----
    What is not recorded is named in ``unchecked``; it is never taken as harmless or as harmful. A loss is
    called one when it exceeds the minimal detectable change at 95 % for the testers and devices used.
    """
    if not measure_named(measure).per_limb:
        raise InputError(f"measure must be one taken on each limb, got {measure!r}. It has no other limb.")
    day = on or case.last_date
    known = case.as_of(day)
    reasons: _Words = []
    unchecked: _Words = []
    evidence: list[PublishedValue] = []
    _check_surgery(known, reasons, unchecked)
    _check_growth(known, day, reasons, unchecked, evidence)
    _check_own_course(known, measure, reasons, unchecked, evidence)
    return ReferenceLimb(
        trustworthy=not reasons,
        reasons=tuple(reasons),
        unchecked=tuple(unchecked),
        evidence=tuple(dict.fromkeys(evidence)),
    )


def _check_surgery(case: Case, reasons: _Words, unchecked: _Words) -> None:
    side, surgery = case.uninvolved, case.surgery
    if surgery.harvest_side == side:
        reasons.append(f"the graft was taken from the {side} limb")
    elif surgery.harvest_side is None and surgery.allograft is not True:
        unchecked.append("which limb the graft was taken from is not recorded")
    earlier = surgery.earlier.get(side)
    if earlier:
        reasons.append(f"previous injury or surgery of the {side} limb ({', '.join(earlier)})")
    elif earlier is None:
        unchecked.append(f"previous injury or surgery of the {side} limb is not recorded")
    if any(re.search(r"\b(bilateral|both)\b", text, re.I) for text in surgery.concomitant):
        reasons.append("both knees were operated on")
    mentioned = re.compile(rf"\b({side}|other (knee|limb|leg|side)|both|bilateral|contralateral)\b", re.I)
    for event in case.events:
        if event.kind in ("re-injury", "second surgery") and mentioned.search(event.note):
            reasons.append(f"{event.kind} on {event.date.isoformat()} names the {side} limb ({event.note})")


def _check_growth(
    case: Case, day: dt.date, reasons: _Words, unchecked: _Words, evidence: list[PublishedValue]
) -> None:
    mature, age = case.athlete.skeletally_mature, youngest_age_years(case, day)
    limit = REFERENCE_CHILD_AGE_COMMON_PRACTICE
    if mature is False:
        reasons.append("growth is not finished (recorded as skeletally immature)")
    if age is not None and age < limit.number:
        years = f"{number_text(age)} years old, or may be, on this day"
        reasons.append(f"a child ({years}; below {number_text(limit.number)})")
        evidence.append(limit)
    elif age is None and mature is None:
        unchecked.append("neither age nor skeletal maturity is recorded")


def youngest_age_years(case: Case, day: dt.date) -> float | None:
    """The lowest age [years] the record allows on this day."""
    athlete = case.athlete
    if athlete.year_of_birth is not None:
        return float(day.year - athlete.year_of_birth - 1)
    if athlete.age_years is None:
        return None
    operated = case.surgery.date
    return (
        athlete.age_years + day.year - operated.year - ((day.month, day.day) < (operated.month, operated.day))
    )


def _check_own_course(
    case: Case, measure: str, reasons: _Words, unchecked: _Words, evidence: list[PublishedValue]
) -> None:
    better = measure_named(measure).better
    compared = False
    for key, rows in by_condition(case.readings_of(measure, side=case.uninvolved)).items():
        *earlier, now = day_scores(rows)
        for before in earlier:
            error = precision_of(measure, [*before.readings, *now.readings])
            if error is None or better == "neither":
                continue
            compared = True
            loss = before.value - now.value if better == "higher" else now.value - before.value
            change = minimal_detectable_change(error.sem)
            if loss > change:
                condition = condition_words(measure, key)
                under = f" ({condition})" if condition else ""
                reasons.append(
                    f"its own {measure_named(measure).label}{under} went from {before.words()} to "
                    f"{now.words()}, a loss beyond {quantity_text(change, now.unit, 2)} of error"
                )
                evidence.append(error.published)
                break
    if not compared:
        unchecked.append(
            f"a loss of the {case.uninvolved} limb's own {measure_named(measure).label} could not be looked "
            "for: no earlier value of it, or no published error, to compare with"
        )
