"""Hop tests: the symmetry index of each with its band, and every trial of both limbs behind it."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from kneecase.charts.figure import Figure, figure_of
from kneecase.charts.symmetry import SYMMETRY_WIDTH_PX, symmetry_panel, symmetry_words
from kneecase.charts.theme import INK, PANEL
from kneecase.errors import InputError
from kneecase.measures import HopSymmetry, HopTest, LimbTrials
from kneecase.record import Reading, measure_named
from kneecase.units import quantity_text, unit_sign

__all__ = ["hop_chart", "trial_panel"]

_AXIS_PX = 150
_ROW_PX = 22
_STATUS = {"scored": "scored", "lost": "lost landing, not scored", "practice": "practice, not scored"}
_SHAPES = {"scored": "circle", "lost": "M-1,-1L1,1M-1,1L1,-1", "practice": "triangle-up"}


def hop_chart(answer: HopSymmetry) -> Figure:
    """Symmetry index of every hop test with its band [%], and below it every trial of both limbs.

    Looked at before anyone reads a single percentage: the band, the threshold and the lost
    landings stand in one picture.

    Parameters
    ----------
    answer : HopSymmetry
        What :func:`kneecase.measures.hop_symmetry` gave.

    Returns
    -------
    Figure
        Indices [%] and trials in the unit of each test.

    Raises
    ------
    InputError
        If the answer holds no test.
    """
    tests = answer.tests
    if not tests:
        raise InputError("answer must hold at least one hop test, got none.")
    lines = tuple(
        dict.fromkeys(
            (t.threshold_pct, f"threshold {t.operator} {quantity_text(t.threshold_pct, 'pct')}")
            for t in tests
        )
    )
    banner = answer.banner
    title = f"Hop tests, {banner.side} (operated) against the other limb"
    spec = {
        "title": {"text": title, "subtitle": f"{banner.pseudonym}, {banner.date.isoformat()}"},
        "vconcat": [symmetry_panel(tests, lines), *(trial_panel(test) for test in tests)],
        "resolve": {"scale": {"shape": "independent"}},
    }
    alt = f"{title}. {symmetry_words(tests, lines)} {' '.join(_trial_words(test) for test in tests)}"
    return figure_of(spec, alt=alt, caption=_caption(tests))


def trial_panel(test: HopTest) -> dict[str, Any]:
    """The Vega-Lite panel of every trial of one test."""
    limbs = (test.involved, test.uninvolved)
    names = [_limb(limb) for limb in limbs]
    rows = [row for limb in limbs for row in _rows(limb)]
    scores = [{"limb": _limb(x), "value": x.value} for x in limbs if x.value is not None]
    y = {
        "field": "limb",
        "type": "nominal",
        "scale": {"domain": names},
        "axis": {"title": None, "minExtent": _AXIS_PX, "labelLimit": _AXIS_PX, "ticks": False, "grid": True},
    }
    x = {"field": "value", "type": "quantitative", "scale": {"zero": False, "padding": 12}}
    x |= {"axis": {"title": f"{test.label} [{unit_sign(measure_named(test.measure).unit)}]", "tickCount": 6}}
    ink: dict[str, Any] = {"field": "limb", "type": "nominal", "legend": None}
    ink |= {"scale": {"domain": names, "range": [INK["involved"], INK["uninvolved"]]}}
    texts = [{"limb": _limb(limb), "text": _margin(limb)} for limb in limbs]
    margin = {"x": {"value": SYMMETRY_WIDTH_PX + 12}, "y": y, "text": {"field": "text"}}
    layers: list[dict[str, Any]] = [
        {
            "data": {"values": scores},
            "mark": {"type": "tick", "thickness": 3, "size": _ROW_PX - 4},
            "encoding": {"x": x, "y": y, "color": ink},
        },
        *(_status_layer(rows, status, x, y, ink) for status in _SHAPES),
        {
            "data": {"values": texts},
            "mark": {"type": "text", "align": "left", "baseline": "middle"},
            "encoding": margin,
        },
    ]
    return {"width": SYMMETRY_WIDTH_PX, "height": 2 * _ROW_PX, "layer": layers}


def _status_layer(
    rows: list[dict[str, Any]], status: str, x: dict[str, Any], y: dict[str, Any], ink: dict[str, Any]
) -> dict[str, Any]:
    mark = {"type": "point", "shape": _SHAPES[status], "size": 60, "filled": True, "opacity": 1}
    paint = {"color": ink} if status == "scored" else {"stroke": ink}
    mark |= {} if status == "scored" else {"fill": PANEL, "strokeWidth": 2}
    return {
        "data": {"values": [row for row in rows if row["status"] == status]},
        "mark": mark,
        "encoding": {"x": x, "y": y, **paint},
    }


def _rows(limb: LimbTrials) -> list[dict[str, Any]]:
    return [
        {"limb": _limb(limb), "value": r.value, "status": r.status}
        for r in limb.readings
        if r.value is not None
    ]


def _limb(limb: LimbTrials) -> str:
    return f"{'operated' if limb.limb == 'involved' else 'other'} ({limb.side})"


def _margin(limb: LimbTrials) -> str:
    if limb.value is None:
        return "no score"
    return f"{limb.statistic} {quantity_text(limb.value, limb.unit, 2 if limb.unit == 's' else 1)}"


def _trial_words(test: HopTest) -> str:
    return " ".join(
        f"{test.label}, {_limb(limb)}: {', '.join(_trial(r) for r in limb.readings) or 'no trial'}."
        for limb in (test.involved, test.uninvolved)
    )


def _trial(reading: Reading) -> str:
    if reading.value is None:
        return reading.missing or "no value"
    text = quantity_text(reading.value, reading.unit, 2)
    return text if reading.status == "scored" else f"{text} ({_STATUS[reading.status]})"


def _caption(tests: Sequence[HopTest]) -> str:
    parts = ["Band: interval of the index from its measurement error; the verdict is decided unrounded."]
    bare = [t.label for t in tests if t.value is not None and t.low is None]
    if bare:
        parts.append(f"Without a published error, so without a band: {', '.join(bare)}.")
    parts.append(
        "Trials: dot scored, cross lost landing, hollow triangle practice (neither is scored); "
        "upright stroke the score used."
    )
    doubtful = [t.label for t in tests if not t.reference.trustworthy]
    if doubtful:
        parts.append(f"The other limb is not a trustworthy reference in: {', '.join(doubtful)}.")
    return " ".join(parts)
