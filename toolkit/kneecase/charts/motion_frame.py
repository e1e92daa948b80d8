"""The frame of a motion chart: its axes, and the labels that stand in its right margin."""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass
from typing import Any

from kneecase.charts.labels import spread
from kneecase.charts.theme import INK

__all__ = ["HEIGHT_PX", "WIDTH_PX", "EndLabel", "Frame", "framed"]

WIDTH_PX, HEIGHT_PX = 500, 330
_GAP_PX = 17
_STEP, _FINE_STEP, _FINE_SPAN = 10, 5, 40
_WEEK_STEPS = (1, 2, 4, 8, 13, 26, 52)
_MOST_TICKS = 13


@dataclass(frozen=True, kw_only=True)
class EndLabel:
    """A word in the right margin for something that ends at ``week`` and ``deg``."""

    text: str
    week: float
    deg: float
    ink: str = "text"


@dataclass(frozen=True, kw_only=True)
class Frame:
    """The weeks and degrees a chart shows."""

    weeks: tuple[float, float]
    degrees: tuple[float, float]
    title: str

    def x(self, field: str = "week") -> dict[str, Any]:
        """Encoding of a field of weeks."""
        return {
            "field": field,
            "type": "quantitative",
            "scale": {"domain": list(self.weeks), "nice": False},
            "axis": {"title": "Time since surgery [weeks]", "values": self.ticks(), "format": "d"},
        }

    def ticks(self) -> list[int]:
        """Whole weeks to mark, at most about a dozen."""
        first, last = math.ceil(self.weeks[0]), math.floor(self.weeks[1])
        step = next((n for n in _WEEK_STEPS if (last - first) / n <= _MOST_TICKS), _WEEK_STEPS[-1])
        return list(range(first, last + 1, step))

    def px(self, week: float) -> float:
        """How far to the right a week stands [px]."""
        return WIDTH_PX * (week - self.weeks[0]) / (self.weeks[1] - self.weeks[0])

    def y(self, field: str = "deg") -> dict[str, Any]:
        """Encoding of a field of degrees."""
        return {
            "field": field,
            "type": "quantitative",
            "scale": {"domain": list(self.degrees), "nice": False},
            "axis": {"title": self.title, "tickMinStep": 5},
        }

    def end_labels(self, labels: Iterable[EndLabel]) -> list[dict[str, Any]]:
        """Layers that write the labels in the right margin, none on another, each led to its line."""
        wanted = list(labels)
        if not wanted:
            return []
        gap = _GAP_PX * (self.degrees[1] - self.degrees[0]) / HEIGHT_PX
        places = spread([label.deg for label in wanted], gap)
        rows = [
            {"week": x.week, "deg": x.deg, "at": place, "text": x.text, "ink": INK[x.ink]}
            for x, place in zip(wanted, places, strict=True)
        ]
        ink = {"field": "ink", "type": "nominal", "scale": None, "legend": None}
        lead = {"x": self.x(), "x2": {"value": WIDTH_PX + 12}, "y": self.y(), "y2": {"field": "at"}}
        word = {"x": {"value": WIDTH_PX + 16}, "y": self.y("at"), "text": {"field": "text"}, "color": ink}
        return [
            {
                "data": {"values": rows},
                "mark": {"type": "rule", "color": INK["soft"], "strokeWidth": 0.8, "strokeDash": [2, 2]},
                "encoding": lead,
            },
            {
                "data": {"values": rows},
                "mark": {"type": "text", "align": "left", "baseline": "middle"},
                "encoding": word,
            },
        ]


def framed(weeks: Iterable[float], degrees: Iterable[float], title: str) -> Frame:
    """A frame that holds all of these, from week 0 and with whole tens or fives of degrees at its edges."""
    x, y = list(weeks), list(degrees)
    step = _FINE_STEP if max(y) - min(y) < _FINE_SPAN else _STEP
    low, high = step * math.floor((min(y) - 1) / step), step * math.ceil((max(y) + 1) / step)
    return Frame(weeks=(min(0.0, *x), max(1.0, *x)), degrees=(float(low), float(high)), title=title)
