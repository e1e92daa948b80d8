"""A still chart as an HTML figure: the picture embedded, with words for who cannot see it."""

from __future__ import annotations

import base64
import html
import re
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Protocol

from kneecase.charts.theme import INK, PANEL, theme
from kneecase.errors import InputError, SaveError
from kneecase.plain import shown_plainly

__all__ = ["AltairChart", "Figure", "figure_of"]

_VEGA_LITE = "5.20"
"""The Vega-Lite the charts are written for; fixed, so that a picture is the same bytes each time."""


_INNER_NAME = re.compile(r"(?<=id=\")(?:clip|gradient_)\d+(?=\")|(?<=url\(#)(?:clip|gradient_)\d+(?=\))")


class AltairChart(Protocol):
    """Anything that can give its Vega-Lite specification, such as an Altair chart."""

    def to_dict(self) -> dict[str, Any]:
        """The specification."""
        ...


@dataclass(frozen=True)
class Figure:
    """A picture (SVG text), the words that stand for it, and its caption.

    In a notebook or a page it is a ``<figure>`` with the picture embedded: it needs no
    network, no script and no trust, and it carries its own light panel.
    """

    svg: str
    alt: str
    caption: str = ""

    @property
    def address(self) -> str:
        """The picture as a data address, for ``<img src>``."""
        return "data:image/svg+xml;base64," + base64.b64encode(self.svg.encode("utf-8")).decode("ascii")

    def save(self, path: str | Path) -> Path:
        """Write the picture as an ``.svg`` file and return where it is.

        Raises
        ------
        InputError
            If the name does not end in ``.svg``.
        SaveError
            If the file cannot be written.
        """
        file = Path(path)
        if file.suffix.lower() != ".svg":
            raise InputError(f"path must end in .svg, got {str(path)!r}.")
        try:
            file.write_text(self.svg, encoding="utf-8")
        except OSError as error:
            raise SaveError(f"{file} could not be written: {error.strerror}.") from error
        return file

    def _repr_html_(self) -> str:
        caption = f'<figcaption style="{_CAPTION}">{html.escape(shown_plainly(self.caption))}</figcaption>'
        alt = html.escape(shown_plainly(self.alt), quote=True)
        return (
            f'<figure class="kc-figure" style="{_CARD}">'
            f'<img alt="{alt}" src="{self.address}" style="{_PICTURE}">'
            f"{caption if self.caption else ''}</figure>"
        )

    def _repr_mimebundle_(self, **_: object) -> dict[str, str]:
        """What a notebook keeps: the page, and as plain text the words instead of the fields."""
        words = "\n".join(text for text in (self.alt, self.caption) if text)
        return {"text/html": self._repr_html_(), "text/plain": words}


_CARD = (
    f"margin:8px 0;padding:8px;background-color:{PANEL};color:{INK['text']};"
    "border:1px solid #c9d3d6;border-radius:6px;max-width:800px;overflow-wrap:break-word"
)
_PICTURE = "display:block;max-width:100%;height:auto"
_CAPTION = f"color:{INK['text']};font-size:14px;line-height:1.45;padding:4px 8px 2px"


def figure_of(chart: Mapping[str, Any] | AltairChart, *, alt: str, caption: str = "") -> Figure:
    """A chart of your own as a still figure in the house theme.

    Parameters
    ----------
    chart : mapping or Altair chart
        A Vega-Lite specification, or anything with ``to_dict()``.
    alt : str
        What the picture shows, in words; read aloud instead of it.
    caption : str
        A sentence under the picture.

    Returns
    -------
    Figure
        The same bytes each time for the same chart.

    Raises
    ------
    InputError
        If the words are missing, or the chart cannot be drawn.
    """
    if not alt.strip():
        raise InputError(f"alt must say in words what the picture shows, got {alt!r}.")
    spec = dict(chart) if isinstance(chart, Mapping) else chart.to_dict()
    return Figure(svg=_svg(spec), alt=alt, caption=caption)


def _numbered_afresh(svg: str) -> str:
    """The picture with its inner names counted from 1: the renderer counts on from chart to chart."""
    names = {name: str(n) for n, name in enumerate(dict.fromkeys(_INNER_NAME.findall(svg)), start=1)}
    return _INNER_NAME.sub(lambda found: f"part{names[found[0]]}", svg)


def _plain(part: Any) -> Any:
    """A specification whose texts hold no character that a picture cannot: one would spoil all of it."""
    if isinstance(part, str):
        return shown_plainly(part)
    if isinstance(part, Mapping):
        return {key: _plain(value) for key, value in part.items()}
    return [_plain(value) for value in part] if isinstance(part, list | tuple) else part


def _svg(spec: dict[str, Any]) -> str:
    import vl_convert

    # One schema for all: what charts here use is the same in the versions Altair writes.
    whole = {
        **_plain(spec),
        "config": theme(),
        "$schema": f"https://vega.github.io/schema/vega-lite/v{_VEGA_LITE}.json",
    }
    try:
        return _numbered_afresh(str(vl_convert.vegalite_to_svg(whole, vl_version=_VEGA_LITE)))
    except ValueError as error:
        first = str(error).strip().splitlines()[0]
        raise InputError(f"chart must be a Vega-Lite specification that can be drawn: {first}") from error
