"""Answers: what every case-level function returns, and how it explains itself."""

from __future__ import annotations

from kneecase.answers.answer import Answer, Explanation
from kneecase.answers.finding import Finding, LeftOut, Verdict, reading_words
from kneecase.answers.page import STYLE, escaped

__all__ = ["STYLE", "Answer", "Explanation", "Finding", "LeftOut", "Verdict", "escaped", "reading_words"]
