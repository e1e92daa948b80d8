"""The base-rate lesson: how few positive landing screens are followed by the injury they screen for."""

from __future__ import annotations

from kneecase.answers import Finding
from kneecase.evidence.landing import (
    LANDING_CASES_PADUA2015,
    LANDING_INJURED_PADUA2015,
    LANDING_PLAYERS_PADUA2015,
    LANDING_SENSITIVITY_PADUA2015,
    LANDING_SPECIFICITY_PADUA2015,
    LANDING_UNINJURED_PADUA2015,
)
from kneecase.evidence.landing_screens import (
    LANDING_MEDIAL_KNEE_ODDS_KROSSHAUG2016,
    LANDING_MOMENT_ATHLETES_HEWETT2005,
    LANDING_MOMENT_CASES_HEWETT2005,
    LANDING_MOMENT_SENSITIVITY_HEWETT2005,
    LANDING_MOMENT_SPECIFICITY_HEWETT2005,
    LANDING_PREVIOUS_INJURY_RISK_KROSSHAUG2016,
)
from kneecase.evidence.provenance import PublishedValue
from kneecase.measures.screening import positive_predictive_fraction
from kneecase.units import number_text, quantity_text

__all__ = ["base_rate_finding"]


def base_rate_finding() -> Finding:
    """What a positive landing screen is worth, in numbers of our own from published ones."""
    padua = (
        LANDING_SENSITIVITY_PADUA2015,
        LANDING_SPECIFICITY_PADUA2015,
        LANDING_CASES_PADUA2015,
        LANDING_PLAYERS_PADUA2015,
    )
    hewett = (
        LANDING_MOMENT_SENSITIVITY_HEWETT2005,
        LANDING_MOMENT_SPECIFICITY_HEWETT2005,
        LANDING_MOMENT_CASES_HEWETT2005,
        LANDING_MOMENT_ATHLETES_HEWETT2005,
    )
    value, other = _predictive_pct(*padua), _predictive_pct(*hewett)
    return Finding(
        label="base-rate lesson: positive landing screens followed by an ACL injury",
        value=value,
        unit="pct",
        words=f"{number_text(100 - value)} of 100 positive screens were false alarms; with the knee moment "
        f"of another study {quantity_text(other, 'pct')} were right. These sums are ours, from "
        "sensitivities and specificities that are unverified: from memory",
        inputs=tuple(v.line() for v in padua[2:]),
        formula="sens × prev ÷ (sens × prev + (1 − spec) × (1 − prev))",
        evidence=(
            *padua,
            *hewett,
            LANDING_INJURED_PADUA2015,
            LANDING_UNINJURED_PADUA2015,
            LANDING_MEDIAL_KNEE_ODDS_KROSSHAUG2016,
            LANDING_PREVIOUS_INJURY_RISK_KROSSHAUG2016,
        ),
        cautions=("Says nothing about this athlete: it is what a positive screen was worth in a group.",),
    )


def _predictive_pct(
    sensitivity: PublishedValue, specificity: PublishedValue, cases: PublishedValue, people: PublishedValue
) -> float:
    return 100 * positive_predictive_fraction(
        sensitivity_fraction=sensitivity.number,
        specificity_fraction=specificity.number,
        prevalence_fraction=cases.number / people.number,
    )
