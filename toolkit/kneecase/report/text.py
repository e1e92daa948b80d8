"""A review as text, for the terminal."""

from __future__ import annotations

import datetime as dt

from kneecase.plain import on_one_line
from kneecase.record import Case
from kneecase.report.contents import is_invented, measured_lines
from kneecase.report.red_flags import DEFERENCE
from kneecase.report.review import Review, reviewed
from kneecase.report.words import INVENTED, OUTSIDE, WHAT_IT_IS

__all__ = ["review_text"]

_RULE = "-" * 72


def review_text(case: Case, on: dt.date | None = None) -> str:
    """The review in words: banner, red flags, every answer, what was not measured, warnings.

    Parameters
    ----------
    case : Case
        The case.
    on : datetime.date, optional
        As known on this day; the last recorded date by default.

    Returns
    -------
    str
        Plain text, several lines.
    """
    found = reviewed(case, on)
    blocks = [_head(found), _flags(found)]
    if found.in_scope:
        blocks += [_without_banner(str(section.answer), found) for section in found.sections]
    else:
        blocks.append("\n".join([OUTSIDE, "Recorded:", *measured_lines(case.as_of(found.banner.date))]))
    blocks += [block for block in (_gaps(found), _warnings(found)) if block]
    blocks.append(f"{found.banner.line()}\n{WHAT_IT_IS}")
    return f"\n{_RULE}\n".join(blocks)


def _head(found: Review) -> str:
    lines = [f"Review on {found.banner.date.isoformat()}", found.banner.line()]
    return "\n".join([*lines, *([INVENTED] if is_invented(found.case) else [])])


def _flags(found: Review) -> str:
    return "\n".join([_flags_title(found), *(f"- {line}" for line in found.flags.lines()), DEFERENCE])


def _flags_title(found: Review) -> str:
    if found.flags.yes:
        return "RED FLAGS RECORDED"
    if found.flags.asked_on is None:
        return "Red flags: not asked"
    return "Red flags: none answered yes" + (", some not asked" if found.flags.not_asked else "")


def _without_banner(text: str, found: Review) -> str:
    """The banner stands at the top and the end; once an answer would be noise."""
    return "\n".join(line for line in text.splitlines() if line != found.banner.line())


def _gaps(found: Review) -> str:
    lines = [f"Not measured: {', '.join(found.not_measured)}."] if found.not_measured else []
    lines += [f"Not worked out, {words}: {why}" for words, why in found.not_worked_out]
    return "\n".join(map(on_one_line, lines))


def _warnings(found: Review) -> str:
    if not found.case.warnings:
        return ""
    head = "Unlikely but possible when the case was read; kept as it is:"
    return "\n".join([head, *(f"- {warning.sentence()}" for warning in found.case.warnings)])
