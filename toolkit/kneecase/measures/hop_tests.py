"""One hop test as a row: both limbs' trials, the symmetry index, its error and its verdict."""

from __future__ import annotations

import datetime as dt
from collections.abc import Sequence
from dataclasses import dataclass, field

from kneecase.answers import Finding
from kneecase.evidence import PublishedValue
from kneecase.evidence.hops import HOPS_TOO_CLOSE_OURS, HOPS_UNINVOLVED_FLAG_OURS
from kneecase.measures.comparable import Statistic, is_scored
from kneecase.measures.hop_administration import DEFAULT_ADMINISTRATION, HOP_ADMINISTRATIONS
from kneecase.measures.hop_trials import LimbTrials, better_way, limb_trials
from kneecase.measures.hop_warnings import trial_cautions
from kneecase.measures.index_error import ErrorFrom, SymmetryError, index_error
from kneecase.measures.reference_limb import ReferenceLimb
from kneecase.measures.symmetry import limb_symmetry_index
from kneecase.measures.symmetry_verdict import SymmetryThreshold, SymmetryVerdict, symmetry_verdict
from kneecase.record import Case, Measure, Reading, measure_named

__all__ = ["HopSettings", "HopTest", "hop_test"]


@dataclass(frozen=True, kw_only=True)
class HopSettings:
    """How the tests are worked out: way of giving them, score, threshold with its operator, level, error.

    ``administration`` holds where the record does not say; ``statistic`` overrules what the way of giving
    the test says.
    """

    administration: str = DEFAULT_ADMINISTRATION
    statistic: Statistic | None = None
    threshold: SymmetryThreshold = field(default_factory=SymmetryThreshold)
    level: float = 0.90
    error_from: ErrorFrom = "default"


@dataclass(frozen=True, kw_only=True)
class HopTest(Finding):
    """One hop test of one day; ``value`` is its limb symmetry index [%], unrounded.

    ``low`` and ``high`` are the band at ``level`` from the measurement error ``sem_points``; ``chance`` is
    the chance [fraction] that the true index passes; all of these are ``None`` where no error is published.
    ``passes_as_observed`` is the bare decision on the unrounded index; ``verdict`` also weighs error and
    reference limb, so that an index near the line is 'too close to call' and one against a limb that is not
    a trustworthy reference is never 'met'.
    """

    measure: str
    date: dt.date
    involved: LimbTrials
    uninvolved: LimbTrials
    statistic: Statistic
    administration: str
    threshold_pct: float
    operator: str
    reference: ReferenceLimb
    sem_points: float | None = None
    chance: float | None = None
    passes_as_observed: bool | None = None
    too_close: bool = False
    flags_uninvolved: bool = False

    @property
    def lsi_pct(self) -> float | None:
        """The limb symmetry index [%], unrounded; ``None`` when it cannot be known."""
        return self.value

    @property
    def error_known(self) -> bool:
        """Whether an error is published for this index or its score."""
        return self.sem_points is not None


def hop_test(
    case: Case,
    measure: str,
    readings: Sequence[Reading],
    *,
    reference: ReferenceLimb,
    settings: HopSettings,
) -> HopTest:
    """The row of one test from all its readings of one day: scored, lost, practice, reasons for none."""
    about = measure_named(measure)
    ways = sorted({r.condition.administration.strip().lower() for r in readings if is_scored(r)})
    way = ways[0] if ways else ""
    statistic, how = _statistic(way, settings)
    involved, uninvolved = _both_limbs(case, about, readings, statistic)
    unknown = _why_unknown(involved, uninvolved, about, ways)
    error = None if unknown else _error(measure, involved, uninvolved, settings.error_from)
    lsi_pct = None if unknown else _index(about, involved, uninvolved)
    judged = None if lsi_pct is None else _judged(lsi_pct, error, reference, settings)
    return HopTest(
        label=about.label,
        value=lsi_pct,
        unit="pct",
        low=judged.low if judged else None,
        high=judged.high if judged else None,
        level=settings.level,
        words=judged.words if judged else unknown,
        verdict=judged.verdict if judged else "unknown",
        inputs=(involved.words(), uninvolved.words(), *_ways_words(ways, settings), how),
        formula=_formula(about),
        error=error.words if error else "none published for this test",
        evidence=_evidence(error, settings, way, judged),
        cautions=(*trial_cautions(about, way, involved, uninvolved), *(judged.cautions if judged else ())),
        measure=measure,
        date=readings[0].date,
        involved=involved,
        uninvolved=uninvolved,
        statistic=statistic,
        administration=way or settings.administration,
        threshold_pct=settings.threshold.pct,
        operator=settings.threshold.operator,
        reference=reference,
        sem_points=error.sem_points if error else None,
        chance=judged.chance if judged else None,
        passes_as_observed=judged.passes_as_observed if judged else None,
        too_close=judged.too_close if judged else False,
        flags_uninvolved=judged.flags_uninvolved if judged else False,
    )


def _both_limbs(
    case: Case, about: Measure, readings: Sequence[Reading], statistic: Statistic
) -> tuple[LimbTrials, LimbTrials]:
    better = better_way(about)
    return (
        limb_trials(
            readings, limb="involved", side=case.involved, unit=about.unit, statistic=statistic, better=better
        ),
        limb_trials(
            readings,
            limb="uninvolved",
            side=case.uninvolved,
            unit=about.unit,
            statistic=statistic,
            better=better,
        ),
    )


def _statistic(way: str, settings: HopSettings) -> tuple[Statistic, str]:
    """The statistic to use and, in words, why."""
    if settings.statistic is not None:
        return settings.statistic, f"score: {settings.statistic} of the scored trials, as asked for"
    named = HOP_ADMINISTRATIONS.get(way or settings.administration)
    if named is not None and named.statistic is not None:
        unverified = "" if named.statistic_known in ("full text", "abstract") else ", unverified"
        unverified += ": from memory" if named.statistic_known == "from memory" else ""
        return named.statistic, f"score: {named.statistic} of the scored trials, as in {named.id}{unverified}"
    why = "does not say how the score is made" if named else "is not one of the named ways"
    return "mean", (
        f"score: mean of the scored trials, because {way or settings.administration} {why}, and a mean does "
        "not grow with the number of trials"
    )


def _ways_words(ways: Sequence[str], settings: HopSettings) -> tuple[str, ...]:
    if not ways:
        return ()
    if ways == [""]:
        assumed = HOP_ADMINISTRATIONS[settings.administration]
        return (f"way of giving the test: not recorded, worked out as {assumed.words()}",)
    return tuple(f"way of giving the test: {_way_words(way)}" for way in ways)


def _way_words(way: str) -> str:
    named = HOP_ADMINISTRATIONS.get(way)
    return named.words() if named is not None else way or "not recorded"


def _why_unknown(involved: LimbTrials, uninvolved: LimbTrials, about: Measure, ways: Sequence[str]) -> str:
    """Why there is no index, or an empty text when there is one."""
    for limb in (involved, uninvolved):
        if limb.value is None:
            return f"no index: {limb.words()}"
    if len(ways) > 1:
        given = " and ".join(way or "not recorded" for way in ways)
        return f"no index: the trials were given in different ways ({given}) and are not compared"
    divisor = involved if about.better == "lower" else uninvolved
    if not divisor.value:
        return f"no index: the {divisor.limb} limb scored zero, and nothing can be held against zero"
    return ""


def _index(about: Measure, involved: LimbTrials, uninvolved: LimbTrials) -> float | None:
    if involved.value is None or uninvolved.value is None:
        return None
    return limb_symmetry_index(involved.value, uninvolved.value, better_way(about))


def _error(
    measure: str, involved: LimbTrials, uninvolved: LimbTrials, error_from: ErrorFrom
) -> SymmetryError | None:
    if involved.value is None or uninvolved.value is None:
        return None
    readings = (*involved.scored_readings, *uninvolved.scored_readings)
    return index_error(measure, involved.value, uninvolved.value, readings, error_from)


def _judged(
    lsi_pct: float, error: SymmetryError | None, reference: ReferenceLimb, settings: HopSettings
) -> SymmetryVerdict:
    return symmetry_verdict(
        lsi_pct,
        sem_points=error.sem_points if error else None,
        threshold=settings.threshold,
        reference=reference,
        level=settings.level,
    )


def _formula(about: Measure) -> str:
    if about.better == "lower":
        return "100 × uninvolved ÷ involved: less time is better, so the ratio is turned over"
    return "100 × involved ÷ uninvolved"


def _evidence(
    error: SymmetryError | None, settings: HopSettings, way: str, judged: SymmetryVerdict | None
) -> tuple[PublishedValue, ...]:
    named = HOP_ADMINISTRATIONS.get(way)
    found = [*(named.evidence if named else ())]
    if judged is None:
        return tuple(found)
    found = [error.published] if error else []
    found += [settings.threshold.published] if settings.threshold.published else []
    found += [HOPS_TOO_CLOSE_OURS] if judged.too_close else []
    found += [HOPS_UNINVOLVED_FLAG_OURS] if judged.flags_uninvolved else []
    found += named.evidence if named else ()
    return tuple(found)
