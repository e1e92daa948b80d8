"""A hop chart shows every index with its band and every trial of both limbs."""

from __future__ import annotations

import dataclasses
import datetime as dt

import altair as alt
import pytest

from kneecase.charts import hop_chart
from kneecase.charts.hops import trial_panel
from kneecase.errors import InputError
from kneecase.measures import hop_symmetry
from kneecase.record import Athlete, Case, Condition, Reading, Surgery

DAY = dt.date(2026, 4, 6)


def hops(measure, unit, *trials):
    """Trials of one test: (side, value, status)."""
    return [
        Reading(
            id=f"{measure}-{n}",
            date=DAY,
            measure=measure,
            side=side,
            value=value,
            unit=unit,
            trial=n,
            status=status,
            missing="" if value is not None else "declined",
            condition=Condition(administration="reid-2007"),
        )
        for n, (side, value, status) in enumerate(trials)
    ]


@pytest.fixture
def battery():
    """A single hop with a lost landing and practice, and a timed hop that one limb declined."""
    rows = hops(
        "single_hop",
        "cm",
        ("left", 120, "practice"),
        ("left", 141, "scored"),
        ("left", 155, "lost"),
        ("left", 143, "scored"),
        ("right", 152, "scored"),
        ("right", 150, "scored"),
    )
    rows += hops("timed_hop_6m", "s", ("left", None, "scored"), ("right", 2.05, "scored"))
    case = Case(
        athlete=Athlete(pseudonym="Bryony", year_of_birth=2000),
        surgery=Surgery(date=dt.date(2025, 8, 4), side="left"),
        readings=tuple(rows),
    )
    return hop_symmetry(case)


def test_every_trial_stands_once(battery):
    """Scored, lost and practice trials are all drawn, each with the mark of its kind."""
    panel = trial_panel(battery.tests[0])
    kinds = {
        row["status"]: sorted(r["value"] for r in layer["data"]["values"])
        for layer in panel["layer"]
        if layer["mark"]["type"] == "point"
        for row in layer["data"]["values"]
    }

    assert alt.Chart.from_dict(panel).to_dict()["height"] == panel["height"]
    assert kinds == {"scored": [141, 143, 150, 152], "lost": [155], "practice": [120]}


def test_words_tell_lost_landings(battery):
    """The alt text names lost landings, practice and reasons for no number."""
    words = hop_chart(battery).alt

    for text in ("155 cm (lost landing, not scored)", "120 cm (practice, not scored)", "declined"):
        assert text in words


def test_numbers_are_the_answers(battery):
    """What is written beside a row is the answer's own index and verdict."""
    test = battery.tests[0]
    figure = hop_chart(battery)

    assert f"{test.quantity()}: {test.verdict}" in figure.svg
    assert "no score" in figure.svg
    assert "threshold ≥ 90%" in figure.svg


def test_doubtful_reference_is_named(battery):
    """A test whose other limb is no trustworthy reference is named under the picture."""
    first, *others = battery.tests
    doubtful = dataclasses.replace(
        first, reference=dataclasses.replace(first.reference, trustworthy=False, reasons=("donor",))
    )
    answer = dataclasses.replace(battery, tests=(doubtful, *others))

    assert "not a trustworthy reference in: single hop" in hop_chart(answer).caption


def test_without_error_no_band(battery):
    """A test without a published error is drawn without a band, and the caption says so."""
    bare = dataclasses.replace(battery.tests[0], low=None, high=None)
    figure = hop_chart(dataclasses.replace(battery, tests=(bare,)))

    assert "without a band: single hop" in figure.caption


def test_no_test_is_refused(battery):
    """A chart of no hop test is refused."""
    with pytest.raises(InputError, match="at least one hop test"):
        hop_chart(dataclasses.replace(battery, tests=()))
