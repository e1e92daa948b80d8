"""Girth of knee, thigh and calf: the operated limb beside the other, on one day at one mark."""

from __future__ import annotations

import datetime as dt

from kneecase.answers import Answer, Finding, LeftOut, reading_words
from kneecase.measures.accepted import Quantity, accepted
from kneecase.measures.comparable import left_out_because, not_scored
from kneecase.measures.goniometry import difference_sem
from kneecase.measures.limb_pair import LimbPair, limb_pairs
from kneecase.measures.reliability import minimal_detectable_change, normal_quantile
from kneecase.record import Case, Precision, Reading, banner_of, measure_named, precision_of
from kneecase.units import quantity_text

__all__ = ["girth_difference_cm", "girth_differences"]

_GIRTHS = ("knee_girth", "thigh_girth", "calf_girth")
_CAUTIONS = (
    "Girth alone never explains itself: a calf that is newly thicker, painful or tender is a reason to call "
    "the surgeon today, whatever the tape says.",
)


def girth_difference_cm(*, involved_girth_cm: Quantity, uninvolved_girth_cm: Quantity) -> Quantity:
    """Girth difference [cm]: operated limb minus the other, at the same mark.

    Looked at for swelling (knee thicker) and wasting (thigh thinner); it tells neither fluid from tissue nor
    muscle from fat.

    Formula: ``involved_girth_cm - uninvolved_girth_cm``.

    Parameters
    ----------
    involved_girth_cm, uninvolved_girth_cm : float or array of float
        Girth of each limb [cm].

    Returns
    -------
    float or array of float
        Positive when the operated limb is thicker [cm].

    Raises
    ------
    InputError
        If a girth is missing or not above 0.

    Examples
    --------
    >>> girth_difference_cm(involved_girth_cm=39.5, uninvolved_girth_cm=38.0)
    1.5
    """
    involved = accepted("involved_girth_cm", involved_girth_cm, "cm", above=0.0)
    return involved - accepted("uninvolved_girth_cm", uninvolved_girth_cm, "cm", above=0.0)


def girth_differences(case: Case, on: dt.date | None = None, level: float = 0.90) -> Answer:
    """Girth of knee, thigh and calf, operated limb minus the other, with measurement error.

    Looked at when swelling or wasting is asked about; only tapes laid at the same mark on the same day are
    compared.

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
        One finding for each girth and mark.

    Raises
    ------
    InputError
        If the level is not between 0 and 1.
    """
    day = on or case.last_date
    known = case.as_of(day)
    pairs = [pair for measure in _GIRTHS for pair in limb_pairs(known, measure)]
    findings = tuple(_finding(pair, level) for pair in pairs)
    rows = [r for measure in _GIRTHS for r in known.readings_of(measure)]
    used = tuple(r for pair in pairs for r in pair.readings)
    return Answer(
        heading="Girth, side to side",
        banner=banner_of(case, day),
        summary=_summary(findings),
        findings=findings,
        used=used,
        left_out=_left_out(rows, used),
        cautions=_CAUTIONS if findings else (),
    )


def _finding(pair: LimbPair, level: float) -> Finding:
    info = measure_named(pair.measure)
    label = f"{info.label} difference" + (f" ({pair.condition})" if pair.condition else "")
    inputs = tuple(reading_words(r) for r in pair.readings)
    if pair.uninvolved is None:
        return Finding(
            label=label,
            value=None,
            unit="cm",
            words="the other limb was not measured on that day at that mark: measure it too",
            inputs=inputs,
        )
    difference = girth_difference_cm(
        involved_girth_cm=pair.involved.value, uninvolved_girth_cm=pair.uninvolved.value
    )
    error = precision_of(pair.measure, pair.readings)
    half = None if error is None else normal_quantile(level) * difference_sem(error.sem, error.sem)
    return Finding(
        label=label,
        value=difference,
        unit="cm",
        low=None if half is None else difference - half,
        high=None if half is None else difference + half,
        level=None if half is None else level,
        words=_words(difference, error),
        inputs=inputs,
        formula="girth of the operated limb minus girth of the other, same day, same mark",
        error=f"no published error of {info.label} is known" if error is None else error.words(),
        evidence=() if error is None else (error.published,),
    )


def _words(difference_cm: float, error: Precision | None) -> str:
    size = quantity_text(abs(difference_cm), "cm")
    if difference_cm == 0:
        return "both limbs read the same"
    way = f"the operated limb is {size} {'thicker' if difference_cm > 0 else 'thinner'}"
    if error is None:
        return f"{way}; whether that is more than error is not known"
    change_cm = minimal_detectable_change(error.sem)
    flag = f" ({error.flag})" if error.flag else ""
    if abs(difference_cm) > change_cm:
        return f"{way}, more than the {quantity_text(change_cm, 'cm')}{flag} that error explains"
    return f"{way}, within measurement error{flag}: cannot be told from none"


def _summary(findings: tuple[Finding, ...]) -> str:
    if not findings:
        return "No girth of the operated limb is recorded since surgery."
    sentence = "; ".join(f"{f.label}: {f.words}" for f in findings)
    return f"{sentence[0].upper()}{sentence[1:]}."


def _left_out(rows: list[Reading], used: tuple[Reading, ...]) -> tuple[LeftOut, ...]:
    reason = "earlier, or no reading of the other limb on that day at that mark"
    return not_scored(rows) + left_out_because(rows, used, reason)
