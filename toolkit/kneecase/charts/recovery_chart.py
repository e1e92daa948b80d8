"""The recovery curve: readings, the course with its band, the target, and a surgeon's limit."""

from __future__ import annotations

import math
from typing import Any

from kneecase.charts.figure import Figure, figure_of
from kneecase.charts.motion_frame import HEIGHT_PX, WIDTH_PX, EndLabel, Frame, framed
from kneecase.charts.theme import INK
from kneecase.errors import InputError
from kneecase.record import limit_words
from kneecase.recovery import CurveBand, CurveSeries, RecoveryCurve
from kneecase.units import number_text, quantity_text, unit_sign

__all__ = ["recovery_chart", "recovery_spec"]


def recovery_chart(curve: RecoveryCurve) -> Figure:
    """The course of one knee with its band, the readings it rests on, and the target.

    Looked at when the question is where this knee is heading: the band is the answer, not the line.

    Parameters
    ----------
    curve : RecoveryCurve
        The answer of :func:`kneecase.recovery.recovery_curve`; nothing is worked out here.

    Returns
    -------
    Figure
        Weeks since surgery [weeks] against the measure in its unit.

    Raises
    ------
    InputError
        If the curve is not known; the answer says why.
    """
    if curve.series is None or curve.band is None:
        raise InputError(f"curve must be known to be drawn, got none: {curve.why_not}.")
    return figure_of(recovery_spec(curve), alt=_alt(curve), caption=_caption(curve))


def recovery_spec(curve: RecoveryCurve) -> dict[str, Any]:
    """The Vega-Lite specification of a recovery chart."""
    series, band = _known(curve)
    shift = _shift(curve, series)
    frame = _frame(curve, series, band, shift)
    layers = [*_band_layers(frame, band, shift), *_reading_layers(frame, series, shift)]
    layers += _target_layers(frame, curve)
    layers += frame.end_labels(_labels(frame, curve, band, series, shift))
    return {
        "width": WIDTH_PX,
        "height": HEIGHT_PX,
        "title": {
            "text": f"{series.label[:1].upper()}{series.label[1:]}, {curve.banner.side} (operated) knee",
            "subtitle": f"{curve.banner.pseudonym}, {curve.banner.date.isoformat()}; forecast, never tested "
            "on real patients' courses",
        },
        "layer": layers,
    }


def _known(curve: RecoveryCurve) -> tuple[CurveSeries, CurveBand]:
    if curve.series is None or curve.band is None:
        raise InputError(f"curve must be known to be drawn, got none: {curve.why_not}.")
    return curve.series, curve.band


def _shift(curve: RecoveryCurve, series: CurveSeries) -> float:
    """Weeks from surgery to the start of the curve."""
    return curve.banner.week - series.week(curve.banner.date)


def _frame(curve: RecoveryCurve, series: CurveSeries, band: CurveBand, shift: float) -> Frame:
    values = [*series.values, *band.low.tolist(), *band.high.tolist()]
    values += [] if curve.target is None else [curve.target]
    weeks = [shift + week for week in band.weeks.tolist()]
    sign = unit_sign(series.unit)
    axis = series.label.split(":")[0]
    return framed(weeks, values, f"{axis[:1].upper()}{axis[1:]} [{sign}]" if sign else axis)


def _band_layers(frame: Frame, band: CurveBand, shift: float) -> list[dict[str, Any]]:
    rows = [
        {"week": shift + week, "deg": middle, "low": low, "high": high}
        for week, middle, low, high in zip(
            band.weeks.tolist(), band.middle.tolist(), band.low.tolist(), band.high.tolist(), strict=True
        )
    ]
    area = {"type": "area", "color": INK["band"], "opacity": 0.45, "clip": True}
    line = {"type": "line", "color": INK["involved"], "strokeWidth": 1.6, "strokeDash": [6, 3], "clip": True}
    return [
        {
            "data": {"values": rows},
            "mark": area,
            "encoding": {"x": frame.x(), "y": frame.y("low"), "y2": {"field": "high"}},
        },
        {"data": {"values": rows}, "mark": line, "encoding": {"x": frame.x(), "y": frame.y()}},
    ]


def _reading_layers(frame: Frame, series: CurveSeries, shift: float) -> list[dict[str, Any]]:
    rows = [
        {"week": shift + week, "deg": value} for week, value in zip(series.weeks, series.values, strict=True)
    ]
    mark = {"type": "point", "filled": True, "fill": INK["involved"], "stroke": INK["involved"], "opacity": 1}
    return [{"data": {"values": rows}, "mark": mark, "encoding": {"x": frame.x(), "y": frame.y()}}]


def _target_layers(frame: Frame, curve: RecoveryCurve) -> list[dict[str, Any]]:
    if curve.target is None:
        return []
    capped = curve.limit is not None and curve.limit.value == curve.target
    ink, dash = ("limit", [8, 3]) if capped else ("target", [4, 3])
    rule = {"type": "rule", "color": INK[ink], "strokeWidth": 1.6, "strokeDash": dash}
    return [{"data": {"values": [{"deg": curve.target}]}, "mark": rule, "encoding": {"y": frame.y()}}]


def _labels(
    frame: Frame, curve: RecoveryCurve, band: CurveBand, series: CurveSeries, shift: float
) -> list[EndLabel]:
    level = number_text(100 * band.level)
    end = shift + float(band.weeks[-1])
    unit = series.unit
    labels = [
        EndLabel(
            text=f"course: {quantity_text(float(band.middle[-1]), unit, 0)} ({level} %: "
            f"{number_text(float(band.low[-1]), 0)} to {number_text(float(band.high[-1]), 0)})",
            week=end,
            deg=float(band.middle[-1]),
            ink="involved",
        )
    ]
    if curve.target is not None:
        capped = curve.limit is not None and curve.limit.value == curve.target
        what, ink = ("surgeon's limit", "limit") if capped else ("target", "target")
        text = f"{what}: {quantity_text(curve.target, unit, 0)}"
        labels.append(EndLabel(text=text, week=frame.weeks[1], deg=curve.target, ink=ink))
    return labels


def _alt(curve: RecoveryCurve) -> str:
    series, band = _known(curve)
    level = number_text(100 * band.level)
    end = series.date(float(band.weeks[-1])).isoformat()
    low, high = (quantity_text(float(x[-1]), series.unit, 0) for x in (band.low, band.high))
    first, last = (quantity_text(series.values[i], series.unit, 0) for i in (0, -1))
    return (
        f"{len(series.values)} values of {series.label}, from {first} "
        f"on {series.dates[0].isoformat()} to {last} on "
        f"{series.dates[-1].isoformat()}, with a {level} % band of the course that ends between {low} and "
        f"{high} on {end}. {curve.summary}"
    )


def _caption(curve: RecoveryCurve) -> str:
    """The summary, what the band is, and what was expected."""
    _, band = _known(curve)
    level = number_text(100 * band.level)
    limit = "" if curve.limit is None else f" Surgeon's limit in force: {limit_words(curve.limit)}."
    stiff = "" if curve.chance_stiff is None or math.isnan(curve.chance_stiff) else " Both courses are in it."
    return f"{curve.summary} The band holds the course with {level} % chance.{stiff}{limit}"
