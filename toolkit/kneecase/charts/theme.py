"""One look for every chart: calm, colour-blind safe, nothing told by colour alone.

The inks differ in lightness as well as in hue, so they stay apart in grey print
and for every kind of colour blindness; beside each of them stands a shape or a
word.  The picture brings its own light panel, because it has to be read on a
light page, on a dark one and on paper.
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Any

__all__ = ["FONT", "INK", "LABEL_PX", "PANEL", "theme"]

PANEL = "#fbfcfb"
"""The ground every chart brings along."""

INK: Mapping[str, str] = MappingProxyType(
    {
        "text": "#1d2a30",
        "soft": "#52636b",
        "grid": "#e3e9e9",
        "involved": "#0f6a73",
        "uninvolved": "#6b7077",
        "band": "#8fc1c4",
        "limit": "#8f3d0e",
        "target": "#4a3f8f",
        "expected": "#7d5a00",
    }
)
"""The inks by what they stand for; each is at least 4.5 : 1 against the panel where it writes text."""

FONT = "Arial, Helvetica, Liberation Sans, sans-serif"
"""The fonts asked for, in order."""

LABEL_PX = 12
"""The size of labels [px]."""


def theme() -> dict[str, Any]:
    """The Vega-Lite ``config`` of every kneecase chart, as a fresh dictionary.

    Returns
    -------
    dict
        For the key ``config`` of a Vega-Lite specification.
    """
    axis = {
        "labelColor": INK["text"],
        "titleColor": INK["text"],
        "labelFontSize": LABEL_PX,
        "titleFontSize": LABEL_PX + 1,
        "titleFontWeight": "normal",
        "titlePadding": 10,
        "domainColor": INK["soft"],
        "tickColor": INK["soft"],
        "gridColor": INK["grid"],
    }
    return {
        "aria": False,
        "background": PANEL,
        "font": FONT,
        "padding": {"left": 10, "right": 18, "top": 10, "bottom": 10},
        "view": {"stroke": None},
        "axis": axis,
        "axisX": {"grid": False},
        "text": {"font": FONT, "fontSize": LABEL_PX, "color": INK["text"]},
        "title": {
            "font": FONT,
            "fontSize": 15,
            "fontWeight": 600,
            "color": INK["text"],
            "subtitleFont": FONT,
            "subtitleFontSize": LABEL_PX,
            "subtitleColor": INK["soft"],
            "anchor": "start",
            "frame": "bounds",
            "offset": 14,
        },
        "legend": {
            "orient": "bottom",
            "direction": "horizontal",
            "columns": 2,
            "title": None,
            "labelFont": FONT,
            "labelFontSize": LABEL_PX,
            "labelColor": INK["text"],
            "labelLimit": 420,
            "symbolFillColor": PANEL,
            "symbolStrokeColor": INK["text"],
            "symbolSize": 80,
            "columnPadding": 24,
            "offset": 10,
        },
        "concat": {"spacing": 22},
        "point": {"size": 80, "strokeWidth": 1.6},
    }
