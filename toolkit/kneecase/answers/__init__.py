"""Answers: what every case-level function returns, and how it explains itself."""

from __future__ import annotations

from kneecase.answers.answer import Answer, Explanation
from kneecase.answers.evidence_table import EvidenceTable, evidence_table
from kneecase.answers.finding import Finding, LeftOut, Verdict, reading_words
from kneecase.answers.page import CSS, STYLE, answer_body, escaped

__all__ = [
    "CSS",
    "STYLE",
    "Answer",
    "EvidenceTable",
    "Explanation",
    "Finding",
    "LeftOut",
    "Verdict",
    "answer_body",
    "escaped",
    "evidence_table",
    "reading_words",
]
