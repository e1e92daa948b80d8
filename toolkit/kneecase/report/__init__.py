"""A case reviewed: every answer its record supports, as objects, as text and as one page."""

from __future__ import annotations

from kneecase.report.catalogue_text import catalogue_text
from kneecase.report.contents import contents_text
from kneecase.report.page import review_page, write_page
from kneecase.report.red_flags import RedFlag, RedFlags, red_flags
from kneecase.report.review import Review, Section, review, reviewed
from kneecase.report.text import review_text

__all__ = [
    "RedFlag",
    "RedFlags",
    "Review",
    "Section",
    "catalogue_text",
    "contents_text",
    "red_flags",
    "review",
    "review_page",
    "review_text",
    "reviewed",
    "write_page",
]
