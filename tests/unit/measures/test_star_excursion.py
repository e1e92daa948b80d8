"""The star excursion answer: each limb by its own length, the anterior difference, nothing silently left."""

from __future__ import annotations

import datetime as dt

import pytest

from kneecase.errors import InputError
from kneecase.measures import star_excursion

LENGTHS = {"limb_length_cm": {"left": 88.0, "right": 90.0}}
REACHES = {
    "star_anterior": (62.0, 66.0),
    "star_posteromedial": (100.0, 104.0),
    "star_posterolateral": (96.0, 99.0),
}


def battery(reading, day=42, **more):
    """All three directions standing on each limb, one trial."""
    return [
        reading(name, side, value, day, **more)
        for name, pair in REACHES.items()
        for side, value in zip(("left", "right"), pair, strict=True)
    ]


def finding(answer, start):
    """The finding whose label starts so."""
    return next(f for f in answer.findings if f.label.startswith(start))


def test_each_limb_has_its_own_length(case, reading) -> None:
    """Percent by each limb's own length, composite of three directions, the difference both ways."""
    answer = star_excursion(case(*battery(reading), athlete=LENGTHS))

    left = finding(answer, "star excursion reach, anterior, involved limb standing (left)")
    assert left.value == pytest.approx(100 * 62 / 88)
    assert (left.low, left.high) == (
        pytest.approx(left.value - 5.762, abs=0.001),
        pytest.approx(left.value + 5.762, abs=0.001),
    )
    assert finding(answer, "composite reach, involved").value == pytest.approx(100 * 258 / 264)
    assert finding(answer, "composite reach, uninvolved").value == pytest.approx(100 * 269 / 270)
    assert finding(answer, "anterior difference").value == 4
    by_length = finding(answer, "anterior difference, each")
    assert by_length.value == pytest.approx(100 * (66 / 90 - 62 / 88))
    assert "inside what error" in by_length.words
    assert "4 cm" in answer.summary


def test_lines_from_school_athletes_decide_nothing(case, reading) -> None:
    """No verdict anywhere, and the caution stands at the answer and at the numbers."""
    answer = star_excursion(case(*battery(reading), athlete=LENGTHS))

    assert {f.verdict for f in answer.findings} == {""}
    assert "criterion for return" in answer.cautions[0]
    assert "not a criterion" in finding(answer, "anterior difference").cautions[0]
    assert "BALANCE_COMPOSITE_GIRLS_PLISKY2006" in {v.name for v in answer.evidence}


def test_a_large_difference_is_larger_than_error(case, reading) -> None:
    """Beyond 8.15 points the difference is more than error alone produces."""
    rows = [reading("star_anterior", "left", 55.0), reading("star_anterior", "right", 66.0)]
    answer = star_excursion(case(*rows, athlete=LENGTHS))

    assert "larger than what error" in finding(answer, "anterior difference, each").words
    assert "not recorded: star excursion reach, posteromedial" in finding(answer, "composite").words


def test_statistic_is_kept(case, reading) -> None:
    """Mean or farthest of the scored trials; practice and lost trials are kept and not scored."""
    rows = [
        reading("star_anterior", "left", 60.0, trial=1),
        reading("star_anterior", "left", 64.0, trial=2),
        reading("star_anterior", "left", 80.0, trial=3, status="lost"),
        reading("star_anterior", "left", 70.0, status="practice"),
    ]
    made = case(*rows, athlete=LENGTHS)

    mean, best = star_excursion(made), star_excursion(made, statistic="best")
    assert (mean.statistic, best.statistic) == ("mean", "best")
    assert mean.findings[0].value == pytest.approx(100 * 62 / 88)
    assert best.findings[0].value == pytest.approx(100 * 64 / 88)
    assert [x.reading.value for x in mean.left_out] == [80.0, 70.0]
    assert any("Fewer than 4 practice trials" in text for text in mean.cautions)
    with pytest.raises(InputError, match="statistic must be 'mean' or 'best', got 'median'"):
        star_excursion(made, statistic="median")


def test_enough_practice_is_not_complained_about(case, reading) -> None:
    """Four practice trials a direction and limb are enough."""
    rows = [reading("star_anterior", "left", 60.0)]
    rows += [reading("star_anterior", "left", 58.0, status="practice") for _ in range(4)]

    assert not any("practice" in text for text in star_excursion(case(*rows, athlete=LENGTHS)).cautions)


def test_without_limb_length_there_is_no_percent(case, reading) -> None:
    """Missing limb length is named; the difference in cm stays."""
    answer = star_excursion(case(*battery(reading)))

    assert finding(answer, "star excursion reach, anterior").value is None
    assert "limb length of the left limb is not recorded" in answer.findings[0].words
    assert "limb length of the left limb" in finding(answer, "composite").words
    assert finding(answer, "anterior difference").value == 4
    assert finding(answer, "anterior difference, each").value is None


def test_the_last_day_up_to_on(case, reading) -> None:
    """The answer is of the last tested day up to ``on``; later readings do not exist yet."""
    rows = [*battery(reading, day=42), *battery(reading, day=84)]
    made = case(*rows, athlete=LENGTHS)

    assert star_excursion(made).tested_on == dt.date(2026, 5, 25)
    early = star_excursion(made, dt.date(2026, 5, 1))
    assert early.tested_on == dt.date(2026, 4, 13)
    assert len(early.used) == 6


def test_nothing_recorded(case, reading) -> None:
    """No reach is said so; a declined one is left out with its reason."""
    made = case(reading("star_anterior", "left", None, missing="declined"))
    answer = star_excursion(made)

    assert answer.findings == ()
    assert "No star excursion reach" in answer.summary
    assert [x.reason for x in answer.left_out] == ["no number: declined"]
    assert "No star excursion reach" in str(answer)


def test_other_cautions(case, reading) -> None:
    """Two devices and a doubtful other limb are said; equal and farther reaches have their words."""
    rows = [
        reading("star_anterior", "left", 66.0, device="tape"),
        reading("star_anterior", "right", 66.0, device="platform"),
    ]
    made = case(*rows, athlete=LENGTHS, surgery={"harvest_side": "right"})
    answer = star_excursion(made)

    assert any("same device" in text for text in answer.cautions)
    assert any(text.startswith("The other limb is not a trustworthy") for text in answer.cautions)
    assert "both limbs reach the same" in finding(answer, "anterior difference").words
    rows[0] = reading("star_anterior", "left", 70.0)
    farther = star_excursion(case(*rows, athlete=LENGTHS))
    assert "reaches farther, by 4 cm" in finding(farther, "anterior difference").words


def test_everything_can_be_asked_why(case, reading) -> None:
    """Inputs, formula, error, source and how known stand in the explanation."""
    text = str(star_excursion(case(*battery(reading), athlete=LENGTHS)).explain())

    for part in (
        "limb length left 88 cm",
        "100 × reach ÷ length",
        "2.94%",
        "Munro AG",
        "read in the abstract",
    ):
        assert part in text
