"""An answer as HTML: escaped, complete, and a verdict always a word."""

from __future__ import annotations

import datetime as dt
import re

import pytest

from kneecase.answers import CSS, STYLE, Answer, Finding, LeftOut, answer_body, escaped, reading_words
from kneecase.evidence import PublishedValue, Source
from kneecase.record import Banner, Condition, Reading

BANNER = Banner(
    pseudonym="<i>Bryony</i>",
    side="left",
    graft="hamstring tendon",
    date=dt.date(2026, 3, 2),
    week=8.0,
    limits=("flexion up to 90°",),
    outside_scope=(),
)
SOURCE = Source(
    key="someone-2001", authors="Someone", year=2001, title="T", venue="V", kind="x", known="abstract"
)
PUBLISHED = PublishedValue(
    name="X",
    value=5.0,
    unit="deg",
    definition="error of a reading",
    population="adults",
    source=SOURCE,
    known="secondary",
)
READING = Reading(
    id="r1",
    date=dt.date(2026, 3, 2),
    measure="knee_flexion",
    side="left",
    value=121.92,
    unit="deg",
    trial=2,
    status="practice",
    tester="AB",
    device="inclinometer",
    condition=Condition(motion="passive"),
    raw_value="48",
    raw_unit="in",
)


def finding(**more):
    """A finding with everything filled in."""
    given = {
        "label": "flexion <deficit>",
        "value": 12.3,
        "unit": "deg",
        "low": 8.0,
        "high": 16.5,
        "level": 0.95,
        "words": "bends & stops",
        "verdict": "too close to call",
        "inputs": ("left 120°",),
        "formula": "other − operated",
        "error": "SEM 1.8°",
        "evidence": (PUBLISHED,),
        "cautions": ("two testers",),
    }
    return Finding(**{**given, **more})


def answer(*findings, **more):
    """An answer that holds these findings."""
    given = {
        "heading": "Motion <b>",
        "banner": BANNER,
        "summary": "Lacks 12° & more.",
        "findings": findings,
        "used": (READING,),
        "left_out": (LeftOut(reading=READING, reason="practice"),),
        "cautions": ("Ask the <surgeon>.",),
    }
    return Answer(**{**given, **more})


def test_everything_is_escaped():
    """Text of a case or an answer never becomes markup."""
    page = answer(finding())._repr_html_() + answer(finding()).explain()._repr_html_()

    for tag in ("<i>Bryony", "<b>\n", "Motion <b>", "<deficit>", "<surgeon>"):
        assert tag not in page.replace(STYLE, "")
    assert "&lt;i&gt;Bryony&lt;/i&gt;" in page
    assert escaped("<a href='x'>\"&") == "&lt;a href=&#x27;x&#x27;&gt;&quot;&amp;"


def test_short_form_holds_every_part():
    """Banner, summary, number, interval, verdict, words, caution and the folded basis are all there."""
    page = answer(finding())._repr_html_()

    for text in (
        "operated knee: LEFT",
        "flexion up to 90°",
        "Lacks 12° &amp; more.",
        "<b>12.3°</b>",
        "8 to 16.5°<br>(95 % interval)",
        "too close to call",
        "bends &amp; stops",
        "Caution: Ask the",
        "<details><summary>Why these numbers</summary>",
        "Formula: other − operated",
        "Measurement error: SEM 1.8°",
        "unverified: read second-hand",
        "Readings left out",
    ):
        assert text in page


@pytest.mark.parametrize("verdict", ["met", "not met", "too close to call", "unknown"])
def test_verdict_is_a_word_with_a_mark(verdict):
    """The word is read; the mark beside it is hidden from a reader's voice."""
    page = answer_body(answer(finding(verdict=verdict)))
    chip = re.search(r'<span class="kc-verdict"><span aria-hidden="true">(.) </span>([^<]+)</span>', page)

    assert chip[2] == verdict
    assert chip[1] in "●○≈?"


def test_columns_that_say_nothing_are_left_out():
    """Without words and verdicts there is no column for them; without findings there is no table."""
    plain = finding(words="", verdict="", low=None, high=None, cautions=())

    assert "In words" not in answer_body(answer(plain))
    assert "kc-band" not in answer_body(answer(plain))
    assert "<table" not in answer_body(answer())


def test_a_caution_of_one_number_stands_beside_it():
    """It is not folded away: in the table and in the text, escaped."""
    shown = answer(finding(cautions=("a <lost> landing",), words=""))

    assert "Caution: a &lt;lost&gt; landing" in answer_body(shown).split("<details>")[0]
    assert "Caution: a <lost> landing" in str(shown)


def test_unknown_says_so():
    """A value that cannot be known stands as 'unknown', never as a blank or a zero."""
    assert "<b>unknown</b>" in answer_body(answer(finding(value=None, low=None, high=None)))


def test_picture_stands_before_the_table():
    """A chart is set between summary and findings."""
    page = answer_body(answer(finding()), "<figure>x</figure>")

    assert page.index("Lacks") < page.index("<figure>") < page.index("<table")


def test_explanation_goes_from_inputs_to_caution():
    """The long form tells inputs, formula, interval, error, source and caution, in that order."""
    page = answer(finding()).explain()._repr_html_()
    order = [
        page.index(word) for word in ("Input:", "Formula:", "Interval:", "Measurement error:", "Source:")
    ]

    assert order == sorted(order)
    assert order[-1] < page.index("Caution: two testers")


def test_text_forms_say_the_same():
    """Printing an answer or its explanation shows the same numbers and words as the page."""
    whole = answer(finding(), finding(label="bare", words="", verdict="", formula="", error="", low=None))
    short, long = str(whole), str(whole.explain())

    assert "flexion <deficit>: 12.3°  [8 to 16.5° (95 % interval)]  too close to call" in short
    assert "Caution: Ask the <surgeon>." in short
    assert "Source: error of a reading: 5°; adults." in long
    assert "Readings left out:" in long
    assert [value.name for value in whole.evidence] == ["X"]
    assert "Caution" not in str(answer(cautions=(), used=(), left_out=()))
    assert "Readings" not in str(answer(cautions=(), used=(), left_out=()).explain())


def test_reading_in_words():
    """A reading is told with date, side, value as typed, trial, status, tester, device, condition."""
    assert reading_words(READING) == (
        "2026-03-02, left, 121.92° (typed 48 in), trial 2, practice, AB, inclinometer, passive"
    )


def test_same_look_on_light_dark_and_paper():
    """The style sheet has values for a light and a dark ground, for the notebook's own themes and print."""
    for rule in (
        "prefers-color-scheme: dark",
        'data-jp-theme-light="true"',
        'data-jp-theme-light="false"',
        "@media print",
    ):
        assert rule in CSS
    grounds = re.findall(r"--kc-\w+:", CSS)

    assert len({grounds.count(name) for name in set(grounds)}) == 1


def test_a_notebook_keeps_the_words_beside_the_page():
    """As plain text an answer is what ``print`` shows, also where a subclass has fields of its own."""
    bundle = answer(finding())._repr_mimebundle_(include=None, exclude=None)

    assert bundle == {"text/html": answer(finding())._repr_html_(), "text/plain": str(answer(finding()))}
