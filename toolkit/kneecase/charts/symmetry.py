"""Symmetry of the limbs: each index with its band, held against a labelled threshold."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Any

from kneecase.answers import Finding
from kneecase.charts.figure import Figure, figure_of
from kneecase.charts.theme import INK
from kneecase.errors import InputError
from kneecase.units import number_text, quantity_text

__all__ = ["SYMMETRY_WIDTH_PX", "symmetry_chart", "symmetry_panel", "symmetry_words"]

SYMMETRY_WIDTH_PX = 400
_ROW_PX = 34
_EQUAL_PCT = 100.0
_AXIS_PX = 150
_SHAPES = {
    "met": "circle",
    "not met": "triangle-down",
    "too close to call": "diamond",
    "unknown": "square",
    "": "circle",
}


def symmetry_chart(
    findings: Iterable[Finding],
    *,
    title: str,
    subtitle: str = "",
    thresholds: Iterable[tuple[float, str]] = (),
) -> Figure:
    """Symmetry indices [%], one row each, with interval, threshold and verdict in words.

    Looked at beside the findings it draws; it computes nothing of its own.

    Parameters
    ----------
    findings : iterable of Finding
        Those in percent are drawn; those without a value are named as unknown.
    title, subtitle : str
        Above the picture.
    thresholds : iterable of (float, str)
        Each line [%] with its word, for example ``(90.0, "threshold ≥ 90%")``.

    Returns
    -------
    Figure
        The indices [%].

    Raises
    ------
    InputError
        If no finding is in percent.
    """
    rows = [finding for finding in findings if finding.unit == "pct"]
    if not rows:
        raise InputError("findings must hold at least one in percent, got none.")
    lines = tuple(thresholds)
    spec = {"title": {"text": title, "subtitle": subtitle or ""}, **symmetry_panel(rows, lines)}
    return figure_of(spec, alt=f"{title}. {symmetry_words(rows, lines)}", caption=_caption(rows))


def symmetry_words(rows: Sequence[Finding], thresholds: Sequence[tuple[float, str]]) -> str:
    """The rows and lines of the panel, in words."""
    parts = [_row_words(row) for row in rows]
    parts += [f"Line at {quantity_text(at, 'pct')}: {word}" for at, word in thresholds]
    return ". ".join(parts) + "."


def symmetry_panel(rows: Sequence[Finding], thresholds: Sequence[tuple[float, str]]) -> dict[str, Any]:
    """The Vega-Lite panel of the rows."""
    names = [row.label for row in rows]
    known = [_datum(row) for row in rows if row.value is not None]
    words = [{"what": row.label, "text": _margin_words(row)} for row in rows]
    y = {
        "field": "what",
        "type": "nominal",
        "scale": {"domain": names},
        "axis": {"title": None, "labelLimit": _AXIS_PX, "minExtent": _AXIS_PX, "grid": True, "ticks": False},
    }
    x = _x_axis(known, thresholds)
    band = {"x": {**x, "field": "low"}, "x2": {"field": "high"}, "y": y}
    margin = {"x": {"value": SYMMETRY_WIDTH_PX + 12}, "y": y, "text": {"field": "text"}}
    shape: dict[str, Any] = {"field": "verdict", "type": "nominal", "legend": None}
    shape |= {"scale": {"domain": list(_SHAPES), "range": list(_SHAPES.values())}}
    point = {
        "type": "point",
        "filled": True,
        "fill": INK["involved"],
        "stroke": INK["involved"],
        "opacity": 1,
    }
    bands = [row for row in known if row["low"] is not None]
    return {
        "width": SYMMETRY_WIDTH_PX,
        "height": _ROW_PX * len(rows),
        "layer": [
            *_lines(thresholds, x),
            {
                "data": {"values": bands},
                "mark": {"type": "bar", "color": INK["band"], "height": 11, "cornerRadius": 5},
                "encoding": band,
            },
            {"data": {"values": known}, "mark": point, "encoding": {"x": x, "y": y, "shape": shape}},
            {
                "data": {"values": words},
                "mark": {"type": "text", "align": "left", "baseline": "middle"},
                "encoding": margin,
            },
        ],
    }


def _x_axis(known: Sequence[dict[str, Any]], thresholds: Sequence[tuple[float, str]]) -> dict[str, Any]:
    ends = [x for row in known for x in (row["low"], row["pct"], row["high"]) if x is not None]
    ends += [at for at, _ in thresholds] + [_EQUAL_PCT]
    low, high = max(0.0, 5 * (min(ends) // 5) - 5), 5 * (max(ends) // 5) + 5
    return {
        "field": "pct",
        "type": "quantitative",
        "scale": {
            "domain": [low, high],
            "zero": False,
            "nice": False,
        },
        "axis": {"title": "Involved limb in percent of the other [%]", "tickCount": 7},
    }


def _lines(thresholds: Sequence[tuple[float, str]], x: dict[str, Any]) -> list[dict[str, Any]]:
    rows: list[dict[str, Any]] = [
        {"pct": _EQUAL_PCT, "text": "limbs equal", "ink": INK["uninvolved"], "dash": [1, 3], "dy": -8},
        *(
            {"pct": at, "text": word, "ink": INK["limit"], "dash": [8, 3], "dy": -8 - 14 * (i + 1)}
            for i, (at, word) in enumerate(thresholds)
        ),
    ]
    layers: list[dict[str, Any]] = []
    for row in rows:
        data = {"values": [{"pct": row["pct"], "text": row["text"]}]}
        rule = {"type": "rule", "color": row["ink"], "strokeDash": row["dash"], "strokeWidth": 1.8}
        word = {"type": "text", "align": "center", "baseline": "bottom", "color": row["ink"]}
        at = {"x": x, "y": {"value": 0}, "text": {"field": "text"}}
        layers.append({"data": data, "mark": rule, "encoding": {"x": x}})
        layers.append({"data": data, "mark": {**word, "dy": row["dy"] + 4}, "encoding": at})
    return layers


def _datum(row: Finding) -> dict[str, Any]:
    return {"what": row.label, "pct": row.value, "low": row.low, "high": row.high, "verdict": row.verdict}


def _margin_words(row: Finding) -> str:
    if row.value is None:
        return "unknown"
    return f"{row.quantity()}{f': {row.verdict}' if row.verdict else ''}"


def _row_words(row: Finding) -> str:
    band = f", {row.interval()}" if row.interval() else ""
    return f"{row.label}: {_margin_words(row)}{band}"


def _caption(rows: Sequence[Finding]) -> str:
    levels = sorted({row.level for row in rows if row.level is not None and row.low is not None})
    if not levels:
        return "No published error fits, so no band is drawn."
    named = " and ".join(f"{number_text(100 * level)} %" for level in levels)
    bare = [row.label for row in rows if row.value is not None and row.low is None]
    text = f"Band: {named} interval from the measurement error."
    return text + (f" Without a published error, so without a band: {', '.join(bare)}." if bare else "")
