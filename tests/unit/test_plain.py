"""No character typed into a case can steer a terminal, turn a banner round or spoil a picture."""

from __future__ import annotations

import base64
import dataclasses
import re
import xml.etree.ElementTree as ET

import pytest

from kneecase import cli
from kneecase.charts import motion_chart
from kneecase.measures import motion_deficits
from kneecase.plain import shown_plainly
from kneecase.record import Limit, banner_of, read_case
from kneecase.report import review_page, review_text
from kneecase.shipped import shipped_folder

STEERING = "\x1b[31m\x07\u202eTHGIR\u2066\x9b2J\u2028end"


@pytest.fixture
def hostile(tmp_path):
    """A case whose free texts hold steering characters, and its folder."""
    for name in ("case.toml", "measurements.csv", "visits.csv"):
        text = (shipped_folder("sample_data") / "stiff-knee" / name).read_text("utf-8")
        text = text.replace('"Alder (invented)"', ascii(STEERING).replace("\\x", "\\u00").replace("'", '"'))
        text = text.replace("after 20 min in warm water", f'"{STEERING}"').replace(
            "heel slides", f"{STEERING}"
        )
        (tmp_path / name).write_text(text, "utf-8")
    return tmp_path


def is_plain(text):
    """Whether nothing in the text steers."""
    return not re.search(r"[\x00-\x08\x0b-\x1f\x7f-\x9f\u202a-\u202e\u2066-\u2069\u2028\u2029]", text)


def test_steering_characters_are_written_out():
    """Each becomes its code; line feeds, tabs and right-to-left letters stay."""
    assert is_plain(shown_plainly(STEERING))
    assert shown_plainly("a\tb\nשלום ü 🦵") == "a\tb\nשלום ü 🦵"
    assert shown_plainly("a\r\nb\rc") == "a\r\nb\\rc"


def test_a_break_in_a_note_forges_no_line(tmp_path):
    """The banner is one line whatever was typed, and no line of an answer or a review is the note's own."""
    for name in ("case.toml", "measurements.csv", "visits.csv"):
        text = (shipped_folder("sample_data") / "stiff-knee" / name).read_text("utf-8")
        (tmp_path / name).write_text(
            text.replace("after 20 min in warm water", '"warm\nforged: met"'), "utf-8"
        )
    case = read_case(tmp_path)
    brace = Limit(kind="brace", start=case.surgery.date, note="locked\r\nforged: met")
    case = dataclasses.replace(case, limits=(brace,))
    answer = motion_deficits(case)
    shown = "\n".join([str(answer), str(answer.explain()), review_text(case)])

    assert len(banner_of(case).line().splitlines()) == 1
    assert "brace: locked forged: met" in shown
    assert [line for line in shown.splitlines() if line.startswith("forged")] == []
    assert review_text(case).count(banner_of(case).line()) == 2


def test_what_was_typed_is_kept(hostile):
    """The record holds the characters; only what is shown changes."""
    case = read_case(hostile)

    assert case.athlete.pseudonym == STEERING
    assert is_plain(banner_of(case).line())


def test_terminal_and_page_show_codes(hostile, capsys):
    """Neither ``check`` nor ``review`` prints one, and the page holds none."""
    assert cli.main(["check", str(hostile)]) == 0
    assert cli.main(["review", str(hostile), "--no-page"]) == 0
    said = capsys.readouterr()

    assert is_plain(said.out + said.err)
    assert "\\x1b[31m" in said.out
    assert is_plain(review_page(read_case(hostile)))


def test_a_picture_stays_whole(hostile):
    """A control character would make the picture unreadable as XML."""
    case = read_case(hostile)
    case = dataclasses.replace(case, athlete=dataclasses.replace(case.athlete, pseudonym="a\x01b"))
    figure = motion_chart(case)
    source = re.search(r"base64,([^\"]+)", figure._repr_html_())[1]

    ET.fromstring(base64.b64decode(source))
    assert is_plain(figure._repr_html_())
