"""Answers as HTML fragments that look the same in a notebook, in a page and in print.

All text is escaped here: whatever stands in a case is shown as text.  Colours come from
variables with a light and a dark value, so a fragment is readable on either ground; a
verdict is always a word, never a colour alone.
"""

from __future__ import annotations

import html
from importlib import resources
from typing import TYPE_CHECKING

from kneecase.answers.finding import Finding, reading_words

if TYPE_CHECKING:
    from kneecase.answers.answer import Answer

__all__ = ["STYLE", "answer_html", "escaped", "explanation_html"]

STYLE = f"<style>\n{resources.files(__package__).joinpath('answer.css').read_text('utf-8')}</style>"


def escaped(text: object) -> str:
    """``text`` with every HTML meaning taken out."""
    return html.escape(str(text), quote=True)


def answer_html(answer: Answer) -> str:
    """The short form: banner, summary, one row a finding, cautions, and the basis folded away."""
    head = (
        f'{STYLE}<section class="kc" aria-label="{escaped(answer.heading)}">'
        f"<h3>{escaped(answer.heading)}</h3>"
        f'<p class="kc-banner">{escaped(answer.banner.line())}</p>'
        f"<p><strong>{escaped(answer.summary)}</strong></p>"
    )
    basis = f"<details><summary>Why these numbers</summary>{_basis(answer)}</details>"
    return f"{head}{_table(answer.findings)}{_cautions(answer.cautions)}{basis}</section>"


def explanation_html(answer: Answer) -> str:
    """The long form: every finding with inputs, formula, error, sources and cautions."""
    return (
        f'{STYLE}<section class="kc" aria-label="How this was worked out"><h3>{escaped(answer.heading)}: '
        f'how this was worked out</h3><p class="kc-banner">{escaped(answer.banner.line())}</p>'
        f"{_basis(answer)}{_cautions(answer.cautions)}</section>"
    )


def _table(findings: tuple[Finding, ...]) -> str:
    if not findings:
        return ""
    rows = "".join(
        f"<tr><th scope='row'>{escaped(f.label)}</th><td class='kc-n'>{escaped(f.quantity())}</td>"
        f"<td>{escaped(f.interval())}</td><td>{escaped(f.verdict)}</td><td>{escaped(f.words)}</td></tr>"
        for f in findings
    )
    heads = "".join(f"<th scope='col'>{h}</th>" for h in ("What", "Value", "Interval", "Verdict", "In words"))
    return f"<table><thead><tr>{heads}</tr></thead><tbody>{rows}</tbody></table>"


def _basis(answer: Answer) -> str:
    blocks = [
        f"<h4>{escaped(f.label)}: {escaped(f.quantity())}</h4>{_items(_basis_lines(f))}"
        for f in answer.findings
    ]
    if answer.used:
        used = [f"{r.measure}: {reading_words(r)}" for r in answer.used]
        blocks.append(f"<h4>Readings used</h4>{_items(used)}")
    if answer.left_out:
        out = [f"{x.reading.measure}: {reading_words(x.reading)}: {x.reason}" for x in answer.left_out]
        blocks.append(f"<h4>Readings left out</h4>{_items(out)}")
    return "".join(blocks)


def _basis_lines(finding: Finding) -> list[str]:
    lines = [f"Input: {text}" for text in finding.inputs]
    lines += [f"Formula: {finding.formula}"] if finding.formula else []
    lines += [f"Interval: {finding.interval()}"] if finding.interval() else []
    lines += [f"Measurement error: {finding.error}"] if finding.error else []
    lines += [f"Source: {value.line()}" for value in finding.evidence]
    return lines + [f"Caution: {text}" for text in finding.cautions]


def _items(lines: list[str]) -> str:
    return "<ul>" + "".join(f"<li>{escaped(line)}</li>" for line in lines) + "</ul>"


def _cautions(cautions: tuple[str, ...]) -> str:
    return "".join(f'<p class="kc-caution">Caution: {escaped(text)}</p>' for text in cautions)
