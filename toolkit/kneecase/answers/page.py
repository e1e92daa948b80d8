"""Answers as HTML fragments that look the same in a notebook, in a page and in print.

All text is escaped here: whatever stands in a case is shown as text.  Colours come from
variables with a light and a dark value, so a fragment is readable on either ground; a
verdict is always a word with a mark, never a colour alone.  A notebook that is not trusted
loses its style sheet: line breaks and alignment therefore stand in the markup itself.
"""

from __future__ import annotations

import html
from collections.abc import Iterable
from importlib import resources
from typing import TYPE_CHECKING

from kneecase.answers.finding import Finding, reading_words
from kneecase.plain import shown_plainly

if TYPE_CHECKING:
    from kneecase.answers.answer import Answer

__all__ = [
    "CSS",
    "LEFT",
    "STYLE",
    "answer_body",
    "answer_html",
    "basis_lines",
    "escaped",
    "explanation_html",
    "left_out_lines",
    "listed",
    "used_lines",
]

CSS = resources.files(__package__).joinpath("answer.css").read_text("utf-8")
"""The style sheet of every fragment."""

STYLE = f"<style>\n{CSS}</style>"
"""The style sheet as an element, for a fragment that stands by itself."""

LEFT = "style='text-align:left'"
"""Alignment of a cell that survives where a notebook is not trusted."""

# No tick and no cross: a criterion may be met that nobody hoped for, such as a plateau.
_MARKS = {"met": "●", "not met": "○", "too close to call": "≈", "unknown": "?"}


def escaped(text: object) -> str:
    """``text`` with every HTML meaning taken out, and no character left that could steer how it reads."""
    return html.escape(shown_plainly(str(text)), quote=True)


def answer_html(answer: Answer) -> str:
    """The short form: banner, summary, one row a finding, cautions, and the basis folded away."""
    return (
        f'{STYLE}<section class="kc" aria-label="{escaped(answer.heading)}">'
        f"<h3>{escaped(answer.heading)}</h3>{_banner(answer)}{answer_body(answer)}</section>"
    )


def answer_body(answer: Answer, picture: str = "") -> str:
    """Everything below the banner; ``picture`` is a chart's HTML, set before the findings."""
    basis = f"<details><summary>Why these numbers</summary>{_basis(answer)}</details>"
    return (
        f'<p class="kc-summary">{escaped(answer.summary)}</p>'
        f"{picture}{_table(answer.findings)}{_cautions(answer.cautions)}{basis}"
    )


def explanation_html(answer: Answer) -> str:
    """The long form: every finding with inputs, formula, error, sources and cautions."""
    return (
        f'{STYLE}<section class="kc" aria-label="{escaped(answer.heading)}: how this was worked out">'
        f"<h3>{escaped(answer.heading)}: how this was worked out</h3>{_banner(answer)}"
        f"{_basis(answer)}{_cautions(answer.cautions)}</section>"
    )


def listed(lines: Iterable[str]) -> str:
    """Lines of plain text as a list, escaped."""
    return "<ul>" + "".join(f"<li>{escaped(line)}</li>" for line in lines) + "</ul>"


def _banner(answer: Answer) -> str:
    return f'<p class="kc-banner">{escaped(answer.banner.line())}</p>'


def _table(findings: tuple[Finding, ...]) -> str:
    if not findings:
        return ""
    worded = any(f.words or f.verdict or f.cautions for f in findings)
    heads = ["What", "Value", *(["In words"] if worded else [])]
    head = "".join(f"<th scope='col' {LEFT}>{name}</th>" for name in heads)
    rows = "".join(_row(f, worded) for f in findings)
    return f"<table><thead><tr>{head}</tr></thead><tbody>{rows}</tbody></table>"


def _row(finding: Finding, worded: bool) -> str:
    band = "<br>(".join(escaped(part) for part in finding.interval().split(" (", 1))
    band = f'<br><span class="kc-band">{band}</span>' if band else ""
    cells = [
        f"<th scope='row' {LEFT}>{escaped(finding.label)}</th>",
        f"<td class='kc-n' {LEFT}><b>{escaped(finding.quantity())}</b>{band}</td>",
    ]
    if worded:
        said = "<br>".join(
            part for part in (escaped(finding.words), *map(_row_caution, finding.cautions)) if part
        )
        cells.append(f"<td {LEFT}>{_verdict(finding)}{said}</td>")
    return f"<tr>{''.join(cells)}</tr>"


def _row_caution(text: str) -> str:
    return f'<span class="kc-row-caution">Caution: {escaped(text)}</span>'


def _verdict(finding: Finding) -> str:
    if not finding.verdict:
        return ""
    mark = f'<span aria-hidden="true">{_MARKS[finding.verdict]} </span>'
    return f'<span class="kc-verdict">{mark}{escaped(finding.verdict)}</span><br>'


def _basis(answer: Answer) -> str:
    blocks = [
        f"<h4>{escaped(f.label)}: {escaped(f.quantity())}</h4>{listed(basis_lines(f))}"
        for f in answer.findings
    ]
    if answer.used:
        blocks.append(f"<h4>Readings used</h4>{listed(used_lines(answer))}")
    if answer.left_out:
        blocks.append(f"<h4>Readings left out</h4>{listed(left_out_lines(answer))}")
    return "".join(blocks)


def used_lines(answer: Answer) -> list[str]:
    """The readings an answer rests on, one a line."""
    return [f"{r.measure}: {reading_words(r)}" for r in answer.used]


def left_out_lines(answer: Answer) -> list[str]:
    """The readings left out, each with the reason, one a line."""
    return [f"{x.reading.measure}: {reading_words(x.reading)}: {x.reason}" for x in answer.left_out]


def basis_lines(finding: Finding) -> list[str]:
    """What one number rests on, one a line: inputs, formula, interval, error, sources, cautions."""
    lines = [f"Input: {text}" for text in finding.inputs]
    lines += [f"Formula: {finding.formula}"] if finding.formula else []
    lines += [f"Interval: {finding.interval()}"] if finding.interval() else []
    lines += [f"Measurement error: {finding.error}"] if finding.error else []
    lines += [f"Source: {value.line()}" for value in finding.evidence]
    return lines + [f"Caution: {text}" for text in finding.cautions]


def _cautions(cautions: tuple[str, ...]) -> str:
    return "".join(f'<p class="kc-caution">Caution: {escaped(text)}</p>' for text in cautions)
