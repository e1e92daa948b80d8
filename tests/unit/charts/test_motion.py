"""A motion chart draws every reading since surgery once, apart by the way it was taken."""

from __future__ import annotations

import itertools

import altair as alt
import pytest

from kneecase.charts import motion_chart
from kneecase.charts.motion import motion_board, motion_spec
from kneecase.charts.motion_frame import EndLabel, framed
from kneecase.charts.motion_marks import marks_of
from kneecase.charts.motion_series import motion_series, other_knee
from kneecase.errors import InputError
from kneecase.record import Event, Surgery, precision_of
from kneecase.recovery import motion_gain


def spec_of(case, measure="knee_flexion", *, usual=True):
    """The specification behind a motion chart."""
    series = motion_series(case, measure, case.last_date)
    return motion_spec(motion_board(case, measure, case.last_date, series, motion_gain(case, measure), usual))


def layers_of(spec, mark):
    """Rows of every layer with this mark, inner layers included."""
    found = []
    for layer in spec["layer"]:
        if layer.get("mark", {}).get("type") == mark:
            found.append(layer)
        found += [
            {**inner, "data": layer["data"]}
            for inner in layer.get("layer", ())
            if inner["mark"]["type"] == mark
        ]
    return found


@pytest.mark.parametrize("measure", ["knee_flexion", "knee_extension"])
def test_the_specification_is_valid(rising, measure):
    """Altair's schema accepts what is drawn."""
    spec = spec_of(rising, measure)

    assert len(alt.Chart.from_dict(spec).to_dict()["layer"]) == len(spec["layer"])


def test_every_reading_is_drawn_once(rising):
    """Each scored reading of the operated knee since surgery stands once among the marks."""
    drawn = sorted(
        row["deg"]
        for layer in layers_of(spec_of(rising, usual=False), "point")
        for row in layer["data"]["values"]
    )
    held = sorted(
        r.value for r in rising.readings_of("knee_flexion", side="left") if r.date >= rising.surgery.date
    )

    assert drawn == held


def test_ways_are_kept_apart(rising):
    """Active, passive, before and after treatment are never joined by one line."""
    series = motion_series(rising, "knee_flexion", rising.last_date)

    assert [(s.motion, s.timing, len(s.readings)) for s in series] == [
        ("passive", "before", 5),
        ("active", "before", 2),
        ("passive", "after", 1),
    ]


def test_positions_are_kept_apart_and_named(make_case, reading):
    """Two positions are two series, and each says which."""
    case = make_case(reading(7, 60), reading(14, 70), reading(14, 64, position="prone"))
    labels = [s.label for s in motion_series(case, "knee_flexion", case.last_date)]

    assert labels == ["passive, supine, before treatment", "passive, prone, before treatment"]


def test_bars_are_the_published_error(rising):
    """An error bar reaches 1.96 published standard errors to either side."""
    series = motion_series(rising, "knee_flexion", rising.last_date)[0]
    sem = precision_of("knee_flexion", series.readings).sem

    assert series.half_bar == pytest.approx(1.959963984540054 * sem)


def test_a_shape_for_each_tester_and_device(rising):
    """Tester and device are told apart by shape, and a legend says which."""
    series = motion_series(rising, "knee_flexion", rising.last_date)
    shapes = marks_of(series)

    assert list(shapes) == ["tester AB, long-arm goniometer", "tester CD, long-arm goniometer"]
    assert len(set(shapes.values())) == 2
    assert "tester CD" in motion_chart(rising).svg


def test_unnamed_testers_and_devices_are_said(make_case, reading):
    """A reading without tester or device says so; without a published error it carries no bar."""
    case = make_case(reading(7, 60, tester="", device="", motion="", timing=""))

    assert "tester not named, device not named" in motion_chart(case).caption
    assert "active or passive not said: 60°" in motion_chart(case).svg


def test_other_knee_is_taken_alike_where_it_can_be(make_case, reading):
    """The other knee's line is its latest reading taken in the same way, else the latest of any way."""
    rows = [reading(7, 60), reading(8, 140, side="right"), reading(9, 133, side="right", motion="active")]
    case = make_case(*rows)
    like = motion_series(case, "knee_flexion", case.last_date)[0]

    assert other_knee(case, "knee_flexion", case.last_date, like).value == 140
    only_active = make_case(rows[0], rows[2])
    assert other_knee(only_active, "knee_flexion", case.last_date, like).value == 133
    assert other_knee(make_case(rows[0]), "knee_flexion", case.last_date, like) is None


def test_limit_is_a_labelled_line_while_in_force(rising):
    """The surgeon's limit runs from its first to its last day and is named."""
    lines = [
        row
        for layer in layers_of(spec_of(rising), "rule")
        for row in layer["data"]["values"]
        if "surgeon" in str(row.get("text", ""))
    ]

    assert [(row["week"], row["end"], row["deg"]) for row in lines] == [(0.0, 4.0, 90)]
    assert "surgeon: flexion up to 90°" in motion_chart(rising).svg


def test_target_and_observed_are_apart(rising):
    """What is aimed at and what was seen are two marks with two words; neither is for extension."""
    assert "common target 120°" in motion_chart(rising).svg
    assert "observed median 110°" in motion_chart(rising).svg
    assert "common target" not in motion_chart(rising, usual=False).svg
    assert "common target" not in motion_chart(rising, "knee_extension").svg


def test_words_beside_the_usual_marks_stay_inside(make_case, reading):
    """On a long course the words stand right of the marks, so that they do not cover the axis."""
    case = make_case(reading(200, 130), reading(240, 133))
    aligned = {
        layer["mark"]["align"] for layer in layers_of(spec_of(case), "text") if "color" in layer["mark"]
    }

    assert "right" not in aligned


def test_trend_is_the_answers(rising):
    """The line and its band end where the answer's slope and its interval put them."""
    gain = motion_gain(rising)
    area = layers_of(spec_of(rising), "area")[0]["data"]["values"]
    first, middle, last = area
    weeks = last["week"] - first["week"]

    assert (last["deg"] - first["deg"]) / weeks == pytest.approx(gain.rate.deg_per_week)
    assert middle["low"] == pytest.approx(middle["high"])
    assert (last["low"] - middle["low"]) / (weeks / 2) == pytest.approx(gain.rate.low)
    assert (last["high"] - middle["high"]) / (weeks / 2) == pytest.approx(gain.rate.high)


def test_extension_trend_falls_when_it_gains(rising):
    """A gain of extension is a falling angle, in the picture too."""
    gain = motion_gain(rising, "knee_extension")
    first, _, last = layers_of(spec_of(rising, "knee_extension"), "area")[0]["data"]["values"]

    assert gain.rate.deg_per_week > 0
    assert last["deg"] < first["deg"]


def test_one_reading_has_no_trend(make_case, reading):
    """A single reading is drawn without a line of its own making."""
    case = make_case(reading(7, 60))

    assert layers_of(spec_of(case), "area") == []
    assert "no rate" in motion_chart(case).caption


def test_weeks_count_from_the_event_the_answer_counts_from(make_case, reading):
    """After a manipulation the trend stands over the weeks after it, not over the first ones."""
    rows = [reading(n, v) for n, v in ((10, 60), (30, 70), (50, 80), (57, 95), (64, 108), (71, 115))]
    case = make_case(*rows, events=(Event(date=rows[2].date, kind="manipulation"),))
    area = layers_of(spec_of(case), "area")[0]["data"]["values"]

    assert area[0]["week"] == pytest.approx(57 / 7)
    assert "manipulation" in motion_chart(case).svg


def test_no_trend_outside_the_scope(make_case, reading):
    """A knee outside the scope is drawn without rate, target or median."""
    surgery = Surgery(date=make_case().surgery.date, side="left", concomitant=("multiligament",))
    figure = motion_chart(make_case(reading(7, 60), reading(14, 70), reading(21, 72), surgery=surgery))

    assert "common target" not in figure.svg
    assert "a week" not in figure.caption


def test_words_tell_every_reading(rising):
    """The alt text holds every reading, the other knee and the limit."""
    words = motion_chart(rising).alt

    for text in ("week 1: 62°", "week 8.7: 118°", "Other knee 141°", "flexion up to 90° until 2026-02-02"):
        assert text in words


def test_caption_says_what_is_not_drawn(rising):
    """Readings before surgery are counted in the caption."""
    assert "before surgery, not drawn: 1." in motion_chart(rising).caption
    assert "not drawn" not in motion_chart(rising, "knee_extension").caption


def test_extension_speaks_words(rising):
    """People see 'lacks' and 'hyperextends', never a bare sign."""
    figure = motion_chart(rising, "knee_extension")

    assert "lacks 2°" in figure.svg
    assert "other knee: hyperextends 3°" in figure.svg


def test_as_of_a_day(rising, reading):
    """Nothing recorded after the day asked for is drawn."""
    day = reading(26, 0).date

    assert "118°" not in motion_chart(rising, on=day).alt
    assert "88°" in motion_chart(rising, on=day).alt


@pytest.mark.parametrize("name", ["knee_girth", "", "flexion"])
def test_other_measures_are_refused(rising, name):
    """Only the two motions are drawn."""
    with pytest.raises(InputError, match="measure must be 'knee_flexion' or 'knee_extension'"):
        motion_chart(rising, name)


def test_nothing_to_draw_is_said(make_case, reading):
    """Without a reading since surgery the chart is refused in a sentence; a lost one does not count."""
    with pytest.raises(InputError, match="must hold a reading of knee flexion"):
        motion_chart(make_case(reading(-5, 140), reading(9, None, missing="declined")))


def test_end_labels_do_not_overlap():
    """Labels that would lie on each other are moved apart, each in its own row."""
    frame = framed([0, 9], [40, 150], "Knee flexion [°]")
    labels = [EndLabel(text=f"label {n}", week=9, deg=deg) for n, deg in enumerate((95.0, 95.0, 96.0, 140.0))]
    places = sorted(row["at"] for row in frame.end_labels(labels)[1]["data"]["values"])
    px_per_deg = 330 / (frame.degrees[1] - frame.degrees[0])

    assert min(b - a for a, b in itertools.pairwise(places)) * px_per_deg >= 16.9
    assert frame.end_labels([]) == []


@pytest.mark.parametrize(("weeks", "step"), [(9, 1), (20, 2), (50, 4), (200, 26)])
def test_weeks_are_whole_and_few(weeks, step):
    """The axis marks whole weeks, at most about a dozen."""
    ticks = framed([0, weeks], [0, 10], "t").ticks()

    assert ticks[1] - ticks[0] == step
    assert len(ticks) <= 14


def test_without_a_trend_nothing_is_given_away(rising):
    """Readings alone: no line, no band, no rate in words; otherwise the same picture."""
    plain, full = motion_chart(rising, trend=False), motion_chart(rising)

    assert "a week" in full.caption
    assert "a week" not in plain.caption
    assert full.caption.endswith(plain.caption)
    assert plain.svg.count("<path") < full.svg.count("<path")
