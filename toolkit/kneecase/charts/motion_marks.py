"""The layers of a motion chart: readings, limits, events, and what is usual."""

from __future__ import annotations

import datetime as dt
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from kneecase.charts.motion_frame import Frame
from kneecase.charts.motion_series import Series
from kneecase.charts.theme import INK, PANEL
from kneecase.evidence.course import COURSE_FLEXION_WEEK6_WELL_OUWELEEN2021, COURSE_OBSERVED_WEEKS
from kneecase.evidence.course_targets import COURSE_FLEXION_TARGET_WEEK5_PRACTICE, COURSE_TARGET_WEEKS
from kneecase.record import Case, Limit, Reading, limit_words

__all__ = [
    "Usual",
    "event_layers",
    "limit_layers",
    "marks_of",
    "reading_layers",
    "usual_layers",
    "usual_values",
]

_ASIDE_PX = 4  # active motion stands this far aside, so that its bars do not hide those of passive motion
_USUAL_WORD_PX = 130
_SHAPES = ("circle", "square", "triangle-up", "diamond", "triangle-down", "cross")


@dataclass(frozen=True, kw_only=True)
class Usual:
    """A published or customary number at its week."""

    week: float
    deg: float
    text: str
    ink: str
    shape: str


def usual_values() -> tuple[Usual, ...]:
    """What is aimed at and what was observed: two kinds of number, kept apart."""
    target, median = COURSE_FLEXION_TARGET_WEEK5_PRACTICE, COURSE_FLEXION_WEEK6_WELL_OUWELEEN2021
    aimed, observed = COURSE_TARGET_WEEKS[target.name][0], COURSE_OBSERVED_WEEKS[median.name][0]
    return (
        Usual(week=aimed, deg=target.number, text="common target", ink="target", shape="triangle-down"),
        Usual(week=observed, deg=median.number, text="observed median", ink="expected", shape="diamond"),
    )


def marks_of(series: Sequence[Series]) -> dict[str, str]:
    """The shape of each tester and device, by their words; in order of first use."""
    who = dict.fromkeys(_taken_by(r) for s in series for r in sorted(s.readings, key=lambda r: r.date))
    return {name: _SHAPES[i % len(_SHAPES)] for i, name in enumerate(who)}


def reading_layers(frame: Frame, case: Case, series: Sequence[Series]) -> list[dict[str, Any]]:
    """Line, error bars and marks of every series; a hollow mark is active motion."""
    shapes = marks_of(series)
    layers: list[dict[str, Any]] = []
    for s in series:
        rows = [_row(case, s, reading) for reading in s.readings]
        dash = [1, 0] if s.motion != "active" else [5, 3]
        quiet = 1.0 if s.timing != "after" else 0.45
        aside = {"xOffset": _ASIDE_PX if s.motion == "active" else 0}
        line = {"type": "line", "color": INK["involved"], "strokeWidth": 1.4, "strokeDash": dash}
        line |= {"opacity": quiet, **aside}
        layers.append({"data": {"values": rows}, "mark": line, "encoding": {"x": frame.x(), "y": frame.y()}})
        if s.half_bar is not None:
            bar = {"x": frame.x(), "y": frame.y("low"), "y2": {"field": "high"}}
            mark = {"type": "rule", "color": INK["involved"], "strokeWidth": 1.1, "opacity": 0.55, **aside}
            layers.append({"data": {"values": rows}, "mark": mark, "encoding": bar})
        fill = PANEL if s.motion == "active" else INK["involved"]
        point = {"type": "point", "filled": True, "fill": fill, "stroke": INK["involved"], "opacity": 1}
        point |= aside
        layers.append({"data": {"values": rows}, "mark": point, "encoding": _point(frame, shapes)})
    return layers


def limit_layers(frame: Frame, case: Case, limits: Sequence[Limit], day: dt.date) -> list[dict[str, Any]]:
    """Each surgeon's limit as a labelled line over the weeks it was in force."""
    rows = []
    for limit in limits:
        ends = [x for x in (limit.until, limit.lifted, day) if x is not None]
        start, end = max(0.0, case.weeks(limit.start)), case.weeks(min(ends))
        if end > start and limit.value is not None:
            rows.append(
                {"week": start, "end": end, "deg": limit.value, "text": f"surgeon: {limit_words(limit)}"}
            )
    line = {"x": frame.x(), "x2": {"field": "end"}, "y": frame.y()}
    word = {"x": frame.x(), "y": frame.y(), "text": {"field": "text"}}
    return (
        [
            {
                "data": {"values": rows},
                "mark": {"type": "rule", "color": INK["limit"], "strokeWidth": 2.2, "strokeDash": [8, 3]},
                "encoding": line,
            },
            _written(rows, word, INK["limit"], align="left", dx=4, dy=-9),
        ]
        if rows
        else []
    )


def event_layers(frame: Frame, case: Case, day: dt.date) -> list[dict[str, Any]]:
    """Dated events since surgery as labelled upright lines."""
    rows = [
        {"week": case.weeks(event.date), "deg": frame.degrees[1], "text": event.kind}
        for event in case.as_of(day).events
        if event.date >= case.surgery.date
    ]
    if not rows:
        return []
    rule = {"type": "rule", "color": INK["soft"], "strokeDash": [4, 3], "strokeWidth": 1.2}
    word = {"x": frame.x(), "y": frame.y(), "text": {"field": "text"}}
    return [
        {"data": {"values": rows}, "mark": rule, "encoding": {"x": frame.x()}},
        _written(rows, word, INK["soft"], align="left", dx=4, dy=8),
    ]


def usual_layers(frame: Frame) -> list[dict[str, Any]]:
    """The common target and an observed median, each with its own mark and word."""
    layers: list[dict[str, Any]] = []
    for point in usual_values():
        row = {"week": point.week, "deg": point.deg, "text": f"{point.text} {point.deg:g}°"}
        mark = {
            "type": "point",
            "shape": point.shape,
            "size": 130,
            "filled": True,
            "fill": PANEL,
            "stroke": INK[point.ink],
            "strokeWidth": 1.8,
            "opacity": 1,
        }
        word = {"x": frame.x(), "y": frame.y(), "text": {"field": "text"}}
        roomy = frame.px(point.week) > _USUAL_WORD_PX  # left of a rising course there is room
        align, dx, dy = ("right", -9, -3) if roomy else ("left", 9, -3)
        layers.append({"data": {"values": [row]}, "mark": mark, "encoding": {"x": frame.x(), "y": frame.y()}})
        layers.append(_written([row], word, INK[point.ink], align=align, dx=dx, dy=dy))
    return layers


def _written(
    rows: list[dict[str, Any]], encoding: dict[str, Any], ink: str, *, align: str, dx: int, dy: int
) -> dict[str, Any]:
    """Words with a halo of the panel's colour, so that they can be read across a line."""
    mark = {"type": "text", "align": align, "baseline": "middle", "dx": dx, "dy": dy}
    halo = {**mark, "stroke": PANEL, "strokeWidth": 4, "color": PANEL}
    return {
        "data": {"values": rows},
        "encoding": encoding,
        "layer": [{"mark": halo}, {"mark": {**mark, "color": ink}}],
    }


def _row(case: Case, series: Series, reading: Reading) -> dict[str, Any]:
    half = series.half_bar or 0.0
    value = reading.value or 0.0
    return {
        "week": case.weeks(reading.date),
        "deg": reading.value,
        "low": value - half,
        "high": value + half,
        "taken": _taken_by(reading),
    }


def _point(frame: Frame, shapes: dict[str, str]) -> dict[str, Any]:
    scale = {"domain": list(shapes), "range": list(shapes.values())}
    legend: dict[str, Any] | None = {"title": None} if len(shapes) > 1 else None
    shape = {"field": "taken", "type": "nominal", "scale": scale, "legend": legend}
    return {"x": frame.x(), "y": frame.y(), "shape": shape}


def _taken_by(reading: Reading) -> str:
    who = f"tester {reading.tester}" if reading.tester else "tester not named"
    return f"{who}, {reading.device or 'device not named'}"
