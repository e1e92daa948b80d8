"""The base of every answer about a case: findings, what they rest on, and how to show them."""

from __future__ import annotations

from dataclasses import dataclass

from kneecase.answers.finding import Finding, LeftOut
from kneecase.answers.page import answer_html, basis_lines, explanation_html, left_out_lines, used_lines
from kneecase.evidence.provenance import PublishedValue
from kneecase.plain import on_one_line
from kneecase.record import Banner, Reading

__all__ = ["Answer", "Explanation"]


@dataclass(frozen=True, kw_only=True)
class Answer:
    """What kneecase found, shown short by itself and in full by :meth:`explain`.

    ``findings`` holds one entry a number; ``summary`` is the whole answer in one or two
    sentences; ``used`` and ``left_out`` are the readings; ``cautions`` apply to all of it.
    """

    heading: str
    banner: Banner
    summary: str
    findings: tuple[Finding, ...] = ()
    used: tuple[Reading, ...] = ()
    left_out: tuple[LeftOut, ...] = ()
    cautions: tuple[str, ...] = ()

    @property
    def evidence(self) -> tuple[PublishedValue, ...]:
        """Every published value the answer rests on, once each, in order of use."""
        seen: dict[str, PublishedValue] = {}
        for finding in self.findings:
            for value in finding.evidence:
                seen.setdefault(value.name, value)
        return tuple(seen.values())

    def explain(self) -> Explanation:
        """The whole basis: inputs, formula, number, error, source and how known, caution."""
        return Explanation(self)

    def __str__(self) -> str:
        lines = [self.heading, self.banner.line(), "", self.summary, ""]
        for finding in self.findings:
            band = f"  [{finding.interval()}]" if finding.interval() else ""
            verdict = f"  {finding.verdict}" if finding.verdict else ""
            lines.append(f"  {finding.label}: {finding.quantity()}{band}{verdict}")
            if finding.words:
                lines.append(f"      {finding.words}")
            lines += [f"      Caution: {text}" for text in finding.cautions]
        if self.cautions:
            lines += ["", *(f"  Caution: {text}" for text in self.cautions)]
        return "\n".join(map(on_one_line, lines))

    def _repr_html_(self) -> str:
        return answer_html(self)

    def _repr_mimebundle_(self, **_: object) -> dict[str, str]:
        """What a notebook keeps: the page, and as plain text the words instead of the fields."""
        return {"text/html": self._repr_html_(), "text/plain": str(self)}


@dataclass(frozen=True)
class Explanation:
    """How an answer came about, as text (``str``) or as a page section."""

    answer: Answer

    def __str__(self) -> str:
        answer = self.answer
        lines = [f"{answer.heading}: how this was worked out", answer.banner.line()]
        for finding in answer.findings:
            lines += ["", *_finding_lines(finding)]
        if answer.used:
            lines += ["", "Readings used:", *(f"  - {text}" for text in used_lines(answer))]
        if answer.left_out:
            lines += ["", "Readings left out:", *(f"  - {text}" for text in left_out_lines(answer))]
        if answer.cautions:
            lines += ["", "Cautions:", *(f"  - {text}" for text in answer.cautions)]
        return "\n".join(map(on_one_line, lines))

    def _repr_html_(self) -> str:
        return explanation_html(self.answer)

    def _repr_mimebundle_(self, **_: object) -> dict[str, str]:
        """What a notebook keeps: the page, and as plain text the words instead of the fields."""
        return {"text/html": self._repr_html_(), "text/plain": str(self)}


def _finding_lines(finding: Finding) -> list[str]:
    lines = [f"{finding.label}: {finding.quantity()} {finding.verdict}".rstrip()]
    if finding.words:
        lines.append(f"  In words: {finding.words}")
    return lines + [f"  {text}" for text in basis_lines(finding)]
