"""A figure carries its picture, its words and its own ground, and is the same bytes each time."""

from __future__ import annotations

import base64
import html
import re

import altair as alt
import pytest

from kneecase.charts import INK, PANEL, Figure, figure_of, theme
from kneecase.errors import InputError, SaveError

SPEC = {
    "data": {"values": [{"week": 1, "deg": 60}, {"week": 2, "deg": 72}]},
    "mark": "point",
    "encoding": {
        "x": {"field": "week", "type": "quantitative"},
        "y": {"field": "deg", "type": "quantitative"},
    },
}


def contrast(ink, ground):
    """Contrast of two colours as accessibility rules reckon it."""

    def light(colour):
        parts = [int(colour[i : i + 2], 16) / 255 for i in (1, 3, 5)]
        linear = [p / 12.92 if p <= 0.04045 else ((p + 0.055) / 1.055) ** 2.4 for p in parts]
        return sum(w * p for w, p in zip((0.2126, 0.7152, 0.0722), linear, strict=True))

    high, low = sorted((light(ink), light(ground)), reverse=True)
    return (high + 0.05) / (low + 0.05)


def test_same_bytes_each_time():
    """Drawing the same chart twice gives the same picture, byte for byte."""
    assert figure_of(SPEC, alt="two readings").svg == figure_of(SPEC, alt="two readings").svg


def test_same_bytes_with_inner_names():
    """A chart with clipped marks, drawn again after others, is still the same, and its clips still exist."""
    spec = {**SPEC, "mark": {"type": "line", "clip": True}}
    first = figure_of(spec, alt="x").svg
    figure_of({"hconcat": [spec, spec]}, alt="x")

    assert figure_of(spec, alt="x").svg == first
    used, defined = (
        set(re.findall(r"url\(#([^)]+)\)", first)),
        set(re.findall(r'<clipPath id="([^"]+)"', first)),
    )
    assert used == defined != set()


def test_html_holds_picture_words_and_caption():
    """The fragment embeds exactly the picture and escapes its words."""
    figure = figure_of(SPEC, alt='a "quoted" <b>', caption="under & over")
    page = figure._repr_html_()
    address = re.search(r'src="data:image/svg\+xml;base64,([^"]+)"', page)

    assert base64.b64decode(address[1]).decode() == figure.svg
    assert html.unescape(re.search(r'alt="([^"]*)"', page)[1]) == 'a "quoted" <b>'
    assert "<b>" not in page
    assert "under &amp; over</figcaption>" in page


def test_no_caption_no_element():
    """Without a caption there is no empty one."""
    assert "figcaption" not in figure_of(SPEC, alt="x")._repr_html_()


def test_an_altair_chart_is_drawn_alike():
    """A chart made with Altair comes out in the house theme: same ground, same picture as its own spec."""
    chart = alt.Chart(alt.Data(values=SPEC["data"]["values"])).mark_point().encode(x="week:Q", y="deg:Q")
    figure = figure_of(chart, alt="two readings")

    assert PANEL in figure.svg
    assert figure.svg == figure_of(chart.to_dict(), alt="two readings").svg


def test_words_are_required():
    """A picture without words is refused."""
    with pytest.raises(InputError, match="alt must say in words"):
        figure_of(SPEC, alt="  ")


def test_what_cannot_be_drawn_is_refused():
    """A broken specification is refused in a sentence, not with the drawing library's own error."""
    with pytest.raises(InputError, match="chart must be a Vega-Lite specification"):
        figure_of({"mark": {"type": "no such mark"}, "layer": 3}, alt="x")


def test_saving(tmp_path):
    """A picture is saved as it is; another ending or an impossible place is refused."""
    figure = Figure(svg="<svg/>", alt="x")

    assert figure.save(tmp_path / "a.svg").read_text("utf-8") == "<svg/>"
    with pytest.raises(InputError, match=r"must end in \.svg"):
        figure.save(tmp_path / "a.png")
    with pytest.raises(SaveError, match="could not be written"):
        figure.save(tmp_path / "no" / "a.svg")


@pytest.mark.parametrize("name", [n for n in INK if n not in ("grid", "band")])
def test_every_writing_ink_can_be_read(name):
    """Every ink that writes words has a contrast of at least 4.5 to 1 against the panel."""
    assert contrast(INK[name], PANEL) >= 4.5


def test_theme_is_fresh_each_time():
    """Changing what ``theme`` gave changes nobody else's charts."""
    theme()["axis"]["labelFontSize"] = 99

    assert theme()["axis"]["labelFontSize"] != 99
