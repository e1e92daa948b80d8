"""The recovery chart: drawn from the answer, with words for who cannot see it."""

from __future__ import annotations

import datetime as dt

import pytest

from kneecase.charts import recovery_chart
from kneecase.charts.recovery_chart import recovery_spec
from kneecase.errors import InputError
from kneecase.record import Athlete, Case, Condition, Limit, Reading, Surgery
from kneecase.recovery import recovery_curve

SURGERY = dt.date(2026, 1, 5)


def case(*limits: Limit, rows: tuple[tuple[int, float], ...] = ((1, 60), (2, 70), (4, 84))) -> Case:
    """A left knee with three readings; the other one flexes to 140°."""

    def taken(week: int, value: float, side: str) -> Reading:
        return Reading(
            id=f"{side}-{week}",
            date=SURGERY + dt.timedelta(weeks=week),
            measure="knee_flexion",
            side=side,  # type: ignore[arg-type]
            value=value,
            unit="deg",
            tester="KM",
            device="long-arm goniometer",
            condition=Condition(motion="passive", position="supine", timing="before"),
        )

    return Case(
        athlete=Athlete(pseudonym="Plover (invented)"),
        surgery=Surgery(date=SURGERY, side="left", graft="hamstring tendon"),
        readings=(taken(0, 140, "right"), *(taken(w, v, "left") for w, v in rows)),
        limits=limits,
    )


def test_the_band_is_that_of_the_answer() -> None:
    """The drawn ends are the answer's own, and the readings are its values."""
    curve = recovery_curve(case())
    layers = recovery_spec(curve)["layer"]
    band, points = layers[0]["data"]["values"], layers[2]["data"]["values"]

    assert curve.band is not None
    assert [row["low"] for row in band] == curve.band.low.tolist()
    assert [row["deg"] for row in points] == [60, 70, 84]
    assert [row["week"] for row in points] == [1, 2, 4]


def test_words_stand_for_the_picture() -> None:
    """Alt text and caption tell readings, band, target and chances."""
    figure = recovery_chart(recovery_curve(case()))

    assert "3 values of knee flexion, from 60°" in figure.alt
    assert "135°" in figure.alt
    assert "80 % chance" in figure.caption
    assert figure.svg.startswith("<svg")
    assert figure.svg == recovery_chart(recovery_curve(case())).svg


def test_a_limit_is_named_as_the_surgeons() -> None:
    """The capped target is labelled as the surgeon's limit."""
    limit = Limit(kind="flexion", start=SURGERY, value=90, unit="deg")
    figure = recovery_chart(recovery_curve(case(limit, rows=((1, 60), (2, 70)))))

    assert "surgeon's limit: 90°" in figure.svg.replace("&#39;", "'").replace("&apos;", "'")
    assert "Surgeon's limit in force" in figure.caption


def test_what_is_not_known_is_not_drawn() -> None:
    """Without a curve the chart is refused with the reason of the answer."""
    unknown = recovery_curve(case(rows=()))
    for draw in (recovery_chart, recovery_spec):
        with pytest.raises(InputError, match="can be used"):
            draw(unknown)
