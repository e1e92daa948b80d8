"""What was measured: the case, its rows, the catalogue of measures, reading and saving."""

from __future__ import annotations

from kneecase.record.banner import Banner, banner_of, limit_words
from kneecase.record.case import Case
from kneecase.record.catalogue import MEASURES, ErrorRule, Measure, measure_named
from kneecase.record.neutral_zero import neutral_zero
from kneecase.record.precision import Precision, precision_of
from kneecase.record.reading import case_from_texts, read_case
from kneecase.record.rows import Athlete, Condition, Event, Limit, Reading, Side, Surgery, Visit, other_side
from kneecase.record.tables import measurements_table
from kneecase.record.terms import (
    ACTIONS,
    EFFUSION_GRADES,
    EVENT_KINDS,
    GRAFTS,
    LIMIT_KINDS,
    MISSING_REASONS,
    OUTSIDE_SCOPE,
    QUESTIONS,
    SORENESS,
    STATUSES,
)

__all__ = [
    "ACTIONS",
    "EFFUSION_GRADES",
    "EVENT_KINDS",
    "GRAFTS",
    "LIMIT_KINDS",
    "MEASURES",
    "MISSING_REASONS",
    "OUTSIDE_SCOPE",
    "QUESTIONS",
    "SORENESS",
    "STATUSES",
    "Athlete",
    "Banner",
    "Case",
    "Condition",
    "ErrorRule",
    "Event",
    "Limit",
    "Measure",
    "Precision",
    "Reading",
    "Side",
    "Surgery",
    "Visit",
    "banner_of",
    "case_from_texts",
    "limit_words",
    "measure_named",
    "measurements_table",
    "neutral_zero",
    "other_side",
    "precision_of",
    "read_case",
]
