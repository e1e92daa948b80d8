"""The gain rate as a line with a band: drawn from the answer, never worked out here."""

from __future__ import annotations

from typing import Any

from kneecase.charts.motion_frame import Frame
from kneecase.charts.theme import INK
from kneecase.record import Case
from kneecase.recovery import GainRate, MotionGain

__all__ = ["trend_layers", "trend_words"]

_WHOLE = {"opacity": 0.28, "dash": [6, 4], "width": 1.2}
_RECENT = {"opacity": 0.55, "dash": [1, 0], "width": 1.8}


def trend_layers(frame: Frame, case: Case, gain: MotionGain) -> list[dict[str, Any]]:
    """The rate over the whole window, and over the latest weeks where the answer has one.

    Each band opens from the middle of its readings: between the lines of the lowest and of the
    highest rate of the interval.
    """
    layers: list[dict[str, Any]] = []
    for rate, look in ((gain.rate, _WHOLE), (gain.recent, _RECENT)):
        rows = _rows(case, gain, rate)
        if not rows:
            continue
        band = {"x": frame.x(), "y": frame.y("low"), "y2": {"field": "high"}}
        area = {"type": "area", "color": INK["band"], "opacity": look["opacity"], "clip": True}
        layers.append({"data": {"values": rows}, "mark": area, "encoding": band})
        line = {"type": "line", "color": INK["involved"], "strokeWidth": look["width"], "opacity": 0.7}
        line |= {"strokeDash": look["dash"], "clip": True}
        middle = {"x": frame.x(), "y": frame.y("deg")}
        layers.append({"data": {"values": rows}, "mark": line, "encoding": middle})
    return layers


def trend_words(gain: MotionGain) -> str:
    """What the bands stand for, in the words of the answer."""
    if gain.rate is None or gain.series is None:
        return ""
    text = f"Rate, {gain.series.words()}: {gain.rate.words()}"
    if gain.recent is not None:
        text += f" (wide band); over the latest weeks: {gain.recent.words()} (short band)"
    return f"{text}."


def _rows(case: Case, gain: MotionGain, rate: GainRate | None) -> list[dict[str, Any]]:
    if rate is None or gain.series is None or rate.deg_per_week is None or rate.start_deg is None:
        return []
    if rate.low is None or rate.high is None:
        return []
    way = -1.0 if gain.measure == "knee_extension" else 1.0
    days = gain.series.weeks[-rate.n :]
    zero = case.weeks(gain.series.window.origin)
    middle = (days[0] + days[-1]) / 2
    rows = []
    for week in (days[0], middle, days[-1]):
        at = rate.start_deg + way * rate.deg_per_week * week
        ends = [at + way * (end - rate.deg_per_week) * (week - middle) for end in (rate.low, rate.high)]
        rows.append({"week": zero + week, "deg": at, "low": min(ends), "high": max(ends)})
    return rows
