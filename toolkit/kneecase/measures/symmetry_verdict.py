"""A symmetry index held against a threshold: observed decision, error, chance, reference limb, verdict."""

from __future__ import annotations

from dataclasses import dataclass

from kneecase.answers import Verdict
from kneecase.errors import InputError
from kneecase.evidence import PublishedValue
from kneecase.evidence.clearance import CLEARANCE_LSI_GRINDEM2020
from kneecase.evidence.hops import HOPS_TOO_CLOSE_OURS, HOPS_UNINVOLVED_FLAG_OURS
from kneecase.measures.accepted import accepted
from kneecase.measures.reference_limb import ReferenceLimb
from kneecase.measures.symmetry import symmetry_band
from kneecase.measures.threshold import chance_true_value_passes, is_met
from kneecase.units import number_text

__all__ = ["SymmetryThreshold", "SymmetryVerdict", "chosen_threshold", "symmetry_verdict"]


@dataclass(frozen=True, kw_only=True)
class SymmetryThreshold:
    """The line an index is held against, with its operator; the published one, or the caller's own.

    Default: ≥ 90 % from Grindem 2020, the largest cohort of athletes followed to a second injury whose
    operator was read at first hand. Others print > 90 % (Kyritsis 2016, Gokeler 2016): exactly 90 differs.
    """

    pct: float = CLEARANCE_LSI_GRINDEM2020.number
    operator: str = CLEARANCE_LSI_GRINDEM2020.operator
    published: PublishedValue | None = CLEARANCE_LSI_GRINDEM2020

    def words(self) -> str:
        """The threshold with its operator, for people."""
        return f"{self.operator} {number_text(self.pct, 2)} %"


def chosen_threshold(threshold_pct: float | None, operator: str | None) -> SymmetryThreshold:
    """The published threshold, or the caller's own line and operator where either is given."""
    default = SymmetryThreshold()
    if threshold_pct is None and operator is None:
        return default
    pct = default.pct if threshold_pct is None else accepted("threshold_pct", threshold_pct, "%", above=0.0)
    sign = operator or default.operator
    is_met(pct, pct, sign)  # refuses an unknown operator
    if sign in ("≤", "<=", "<"):
        raise InputError(f"operator must be ≥ or > for an index to be reached, got {operator!r}.")
    sign = "≥" if sign in ("≥", ">=") else ">"
    published = default.published if (pct, sign) == (default.pct, default.operator) else None
    return SymmetryThreshold(pct=pct, operator=sign, published=published)


@dataclass(frozen=True, kw_only=True)
class SymmetryVerdict:
    """What an index comes to; everything about error is ``None`` where none is published."""

    verdict: Verdict
    words: str
    passes_as_observed: bool
    low: float | None
    high: float | None
    chance: float | None
    too_close: bool
    flags_uninvolved: bool
    cautions: tuple[str, ...]


def symmetry_verdict(
    lsi_pct: float,
    *,
    sem_points: float | None,
    threshold: SymmetryThreshold,
    reference: ReferenceLimb,
    level: float = 0.90,
) -> SymmetryVerdict:
    """The verdict on one index, decided on the unrounded number.

    'Met' and 'not met' need a chance of at least 90 % that the true index lies on that side; between, it is
    too close to call. Without a published error the observed side decides and the words say that the error
    is unknown. Against a limb that is not a trustworthy reference nothing is ever met.
    """
    observed = is_met(lsi_pct, threshold.pct, threshold.operator)
    chance = low = high = None
    if sem_points is not None:
        low, high = symmetry_band(lsi_pct, sem_points, level)
        chance = chance_true_value_passes(lsi_pct, sem_points, threshold.pct, threshold.operator)
    too_close = chance is not None and _is_too_close(chance)
    verdict: Verdict = "too close to call" if too_close else ("met" if observed else "not met")
    if not reference.trustworthy and verdict != "not met":
        verdict = "unknown"
    flags = is_met(lsi_pct, HOPS_UNINVOLVED_FLAG_OURS.number, HOPS_UNINVOLVED_FLAG_OURS.operator)
    return SymmetryVerdict(
        verdict=verdict,
        words=_words(observed, chance, threshold, reference),
        passes_as_observed=observed,
        low=low,
        high=high,
        chance=chance,
        too_close=too_close,
        flags_uninvolved=flags,
        cautions=_cautions(reference, flags),
    )


def _is_too_close(chance: float) -> bool:
    zone = HOPS_TOO_CLOSE_OURS
    if zone.low is None or zone.high is None:
        return False
    return zone.low <= 100 * chance <= zone.high


def _words(
    observed: bool, chance: float | None, threshold: SymmetryThreshold, reference: ReferenceLimb
) -> str:
    side = "on the passing side" if observed else "short"
    text = f"as observed {side} of {threshold.words()}"
    if chance is None:
        text += "; error unknown: nothing published says how far the true index may be"
    else:
        text += f"; chance that the true index passes {_chance_words(chance)}"
    if not reference.trustworthy:
        text += "; meets no criterion, because the other limb is not a trustworthy reference"
    return text


def _chance_words(chance: float) -> str:
    percent = 100 * chance
    text = number_text(percent, 0)
    if text == "0":
        return "below 1 %"
    return "above 99 %" if text == "100" else f"{text} %"


def _cautions(reference: ReferenceLimb, flags: bool) -> tuple[str, ...]:
    found = [] if reference.trustworthy else [f"Against this limb: {reason}." for reason in reference.reasons]
    if flags:
        line = number_text(HOPS_UNINVOLVED_FLAG_OURS.number)
        found.append(
            f"Above {line} % the question is what ails the other limb (our convention, no source): look at "
            "it, and check that the sides were not swapped when this was written down."
        )
    return tuple(found)
