"""Published values side by side, with whom they hold for, their source and how it is known."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from kneecase.answers.page import LEFT, STYLE, escaped
from kneecase.errors import InputError
from kneecase.evidence import PublishedValue

__all__ = ["EvidenceTable", "evidence_table"]


@dataclass(frozen=True)
class EvidenceTable:
    """Published values in the order given, as text (``str``) or as a table on a page.

    Values that disagree stand beside each other; nothing is averaged.
    """

    values: tuple[PublishedValue, ...]
    heading: str = "What is published"

    def __str__(self) -> str:
        return "\n".join([self.heading, *(f"- {value.line()}" for value in self.values)])

    def _repr_html_(self) -> str:
        heads = ("What", "Value", "In whom", "Source", "How known")
        head = "".join(f"<th scope='col' {LEFT}>{name}</th>" for name in heads)
        rows = "".join(_row(value) for value in self.values)
        return (
            f'{STYLE}<section class="kc" aria-label="{escaped(self.heading)}">'
            f"<h3>{escaped(self.heading)}</h3>"
            f"<table><thead><tr>{head}</tr></thead><tbody>{rows}</tbody></table></section>"
        )

    def _repr_mimebundle_(self, **_: object) -> dict[str, str]:
        """What a notebook keeps: the page, and as plain text the words instead of the fields."""
        return {"text/html": self._repr_html_(), "text/plain": str(self)}


def evidence_table(values: Iterable[PublishedValue], *, heading: str = "What is published") -> EvidenceTable:
    """Published values side by side, each with its source and how it is known.

    Looked at when a threshold is questioned, or when two studies disagree.

    Parameters
    ----------
    values : iterable of PublishedValue
        The values, in the order to show them; see :func:`kneecase.evidence.published_value`.
    heading : str
        What stands above the table.

    Returns
    -------
    EvidenceTable
        Text or HTML.

    Raises
    ------
    InputError
        If there is none, or something is not a published value.

    Examples
    --------
    >>> from kneecase.evidence import published_value
    >>> value = published_value("COURSE_FLEXION_WEEK6_WELL_OUWELEEN2021")
    >>> print(str(evidence_table([value]))[:17])
    What is published
    """
    found = tuple(values)
    if not found:
        raise InputError("values must hold at least one published value, got none.")
    for value in found:
        if not isinstance(value, PublishedValue):
            raise InputError(f"values must be published values of kneecase.evidence, got {value!r}.")
    return EvidenceTable(found, heading)


def _row(value: PublishedValue) -> str:
    who = value.population + (f" (n = {value.n:,})" if value.n is not None else "")
    source = value.source.citation() + (f", {value.place}" if value.place else "")
    caution = f". Caution: {value.caution}" if value.caution else ""
    cells = (who, source, value.how_known() + caution)
    return (
        f"<tr><th scope='row' {LEFT}>{escaped(value.definition)}</th>"
        f"<td class='kc-n' {LEFT}><b>{escaped(value.quantity())}</b></td>"
        + "".join(f"<td {LEFT}>{escaped(cell)}</td>" for cell in cells)
        + "</tr>"
    )
