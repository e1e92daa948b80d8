"""A symmetry chart shows each index with its band and says the verdict in words."""

from __future__ import annotations

import altair as alt
import pytest

from kneecase.answers import Finding
from kneecase.charts import symmetry_chart
from kneecase.charts.symmetry import symmetry_panel
from kneecase.errors import InputError

ROWS = (
    Finding(label="single hop", value=93.2, unit="pct", low=86.7, high=99.8, level=0.9, verdict="met"),
    Finding(label="vertical hop", value=80.4, unit="pct", verdict="not met"),
    Finding(label="triple hop", value=None, unit="pct", verdict="unknown"),
    Finding(label="distance", value=150.0, unit="cm"),
)
LINES = ((90.0, "threshold ≥ 90%"),)


def test_panel_is_valid_and_complete():
    """The panel passes Altair's schema and holds each known index once."""
    panel = symmetry_panel(ROWS[:3], LINES)
    points = next(layer for layer in panel["layer"] if layer["mark"]["type"] == "point")

    assert alt.Chart.from_dict(panel).to_dict()["height"] == panel["height"]
    assert [row["pct"] for row in points["data"]["values"]] == [93.2, 80.4]


def test_verdict_stands_in_words():
    """Every row says its number and verdict; an unknown one says unknown."""
    figure = symmetry_chart(ROWS, title="Hops", thresholds=LINES)

    for text in ("93.2%: met", "80.4%: not met", ">unknown<", "threshold ≥ 90%", "limbs equal"):
        assert text in figure.svg
    assert "single hop: 93.2%: met, 86.7 to 99.8% (90 % interval)" in figure.alt
    assert "triple hop: unknown" in figure.alt


def test_shapes_differ_by_verdict():
    """A verdict has its own shape, so that colour is never needed."""
    panel = symmetry_panel(ROWS[:2], LINES)
    scale = next(x["encoding"]["shape"]["scale"] for x in panel["layer"] if x["mark"]["type"] == "point")
    shapes = dict(zip(scale["domain"], scale["range"], strict=True))

    assert len({shapes[v] for v in ("met", "not met", "too close to call", "unknown")}) == 4


def test_caption_names_what_has_no_band():
    """The caption says the level, and which index has no published error."""
    assert "90 % interval" in symmetry_chart(ROWS, title="Hops").caption
    assert "without a band: vertical hop." in symmetry_chart(ROWS, title="Hops").caption
    assert symmetry_chart(ROWS[1:2], title="Hops").caption.startswith("No published error")


def test_nothing_in_percent_is_refused():
    """A chart of no index is refused."""
    with pytest.raises(InputError, match="at least one in percent"):
        symmetry_chart(ROWS[3:], title="Hops")
