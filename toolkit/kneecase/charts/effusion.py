"""Effusion over the weeks: a strip of grades, which are words in order and never a scale to average."""

from __future__ import annotations

import datetime as dt
from typing import Any

from kneecase.charts.figure import Figure, figure_of
from kneecase.charts.motion_frame import WIDTH_PX, framed
from kneecase.charts.theme import INK, PANEL
from kneecase.errors import InputError
from kneecase.record import EFFUSION_GRADES, Case, Reading, banner_of
from kneecase.units import number_text

__all__ = ["effusion_chart", "effusion_panel"]

_ROW_PX = 30


def effusion_chart(case: Case, on: dt.date | None = None) -> Figure:
    """Grade of effusion of the operated knee at each visit since surgery.

    Looked at before the load of the next session is chosen.

    Parameters
    ----------
    case : Case
        The case.
    on : datetime.date, optional
        As known on this day; the last recorded date by default.

    Returns
    -------
    Figure
        Weeks since surgery [weeks] against the grade.

    Raises
    ------
    InputError
        If the operated knee has no effusion grade since surgery.
    """
    day = on or case.last_date
    readings = [
        r
        for r in case.as_of(day).readings_of("effusion", side=case.involved)
        if r.value is not None and r.status == "scored" and r.date >= case.surgery.date
    ]
    if not readings:
        raise InputError(
            "case must hold an effusion grade of the operated knee since surgery, "
            f"got none up to {day.isoformat()}."
        )
    banner = banner_of(case, day)
    title = f"Effusion by the stroke test, {banner.side} (operated) knee"
    spec = effusion_panel(case, day, readings)
    spec["title"] = {
        "text": title,
        "subtitle": f"{banner.pseudonym}, {banner.date.isoformat()}; lower is better",
    }
    points = "; ".join(f"week {number_text(case.weeks(r.date))}: {_grade(r)}{_when(r)}" for r in readings)
    return figure_of(spec, alt=f"{title}, by week. {points}.", caption=_caption(readings))


def effusion_panel(case: Case, day: dt.date, readings: list[Reading]) -> dict[str, Any]:
    """The Vega-Lite panel of these readings."""
    frame = framed([case.weeks(day), *(case.weeks(r.date) for r in readings)], [0.0], "")
    rows = [
        {"week": case.weeks(r.date), "grade": _grade(r), "when": r.condition.timing or "before"}
        for r in readings
    ]
    y = {
        "field": "grade",
        "type": "ordinal",
        "scale": {"domain": list(reversed(EFFUSION_GRADES))},
        "axis": {"title": "Grade", "grid": True, "ticks": False},
    }
    point = {"type": "point", "filled": True, "stroke": INK["involved"], "opacity": 1, "size": 110}
    layers: list[dict[str, Any]] = [
        {
            "data": {"values": [row for row in rows if row["when"] != "after"]},
            "mark": {"type": "line", "color": INK["involved"], "strokeWidth": 1.2, "strokeDash": [2, 3]},
            "encoding": {"x": frame.x(), "y": y},
        }
    ]
    for when, shape, fill in (("before", "circle", INK["involved"]), ("after", "diamond", PANEL)):
        shown = [row for row in rows if row["when"] == when]
        mark = {**point, "shape": shape, "fill": fill}
        layers.append({"data": {"values": shown}, "mark": mark, "encoding": {"x": frame.x(), "y": y}})
    return {"width": WIDTH_PX, "height": _ROW_PX * len(EFFUSION_GRADES), "layer": layers}


def _grade(reading: Reading) -> str:
    return EFFUSION_GRADES[int(reading.value or 0)]


def _when(reading: Reading) -> str:
    return " (after treatment)" if reading.condition.timing == "after" else ""


def _caption(readings: list[Reading]) -> str:
    text = "Grades are words in order: the steps between them are not equal."
    if any(r.condition.timing == "after" for r in readings):
        text += " Dot: before treatment; hollow diamond: after treatment, not joined to the others."
    return text
