"""What was measured: the case, its rows, the catalogue of measures, reading and saving."""

from __future__ import annotations

from kneecase.record.banner import Banner, banner_of, limit_words
from kneecase.record.case import Case
from kneecase.record.catalogue import MEASURES, ErrorRule, Measure, measure_named
from kneecase.record.neutral_zero import neutral_zero
from kneecase.record.new_case import new_case
from kneecase.record.precision import Precision, precision_of
from kneecase.record.reading import case_from_texts, read_case
from kneecase.record.rows import Athlete, Condition, Event, Limit, Reading, Side, Surgery, Visit, other_side
from kneecase.record.saving import save_case
from kneecase.record.tables import measurements_table
from kneecase.record.template import template_texts
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
from kneecase.record.versions import Version, redo, undo, versions

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
    "Version",
    "Visit",
    "banner_of",
    "case_from_texts",
    "limit_words",
    "measure_named",
    "measurements_table",
    "neutral_zero",
    "new_case",
    "other_side",
    "precision_of",
    "read_case",
    "redo",
    "save_case",
    "template_texts",
    "undo",
    "versions",
]
