"""An effusion chart is a strip of words in order."""

from __future__ import annotations

import dataclasses

import altair as alt
import pytest

from kneecase.charts import effusion_chart
from kneecase.charts.effusion import effusion_panel
from kneecase.errors import InputError
from kneecase.record import EFFUSION_GRADES


@pytest.fixture
def swollen(make_case, reading):
    """Grades over four weeks, one of them after treatment, one of the other knee."""
    rows = [
        dataclasses.replace(
            reading(n, float(EFFUSION_GRADES.index(grade)), measure="effusion", timing=timing, side=side),
            unit="grade",
            text=grade,
        )
        for n, grade, timing, side in (
            (7, "2+", "before", "left"),
            (14, "1+", "before", "left"),
            (14, "2+", "after", "left"),
            (28, "trace", "", "left"),
            (28, "3+", "before", "right"),
        )
    ]
    return make_case(*rows)


def test_grades_are_words(swollen):
    """The picture is told as grades by week, and a reading after treatment says so."""
    figure = effusion_chart(swollen)

    assert "week 1: 2+; week 2: 1+; week 2: 2+ (after treatment); week 4: trace." in figure.alt
    assert "3+" not in figure.alt
    assert "hollow diamond: after treatment" in figure.caption


def test_after_treatment_is_not_joined(swollen):
    """The line joins readings that were not taken after treatment."""
    rows = [r for r in swollen.readings if r.side == "left"]
    spec = effusion_panel(swollen, swollen.last_date, rows)
    line, before, after = spec["layer"]

    assert [row["grade"] for row in line["data"]["values"]] == ["2+", "1+", "trace"]
    assert len(before["data"]["values"]) == 3
    assert len(after["data"]["values"]) == 1
    assert alt.Chart.from_dict(spec).to_dict()["height"] == 150


def test_plain_caption_without_treatment(swollen):
    """Where nothing was read after treatment, the caption does not speak of it."""
    assert "treatment" not in effusion_chart(swollen, swollen.readings[0].date).caption


def test_no_grade_is_refused(make_case, reading):
    """Without a grade since surgery there is nothing to draw, and a sentence says so."""
    with pytest.raises(InputError, match="must hold an effusion grade"):
        effusion_chart(make_case(reading(7, 60)))
