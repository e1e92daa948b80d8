"""The landing answer: totals only where every item is known, rules kept, angles and loads described."""

from __future__ import annotations

import datetime as dt

import pytest

from kneecase.errors import InputError
from kneecase.measures import landing_quality
from kneecase.record import measure_named

ITEMS = [1, 0, 1, 0, 1, 0, 0, 0, 0, 0, 0, 1, 0, 0, 0, 1, 1]


def landing(reading, items=ITEMS, trial=1, **more):
    """One landing by items; None leaves the item out."""
    return [
        reading("landing_errors", None, float(points), item=number, trial=trial, **more)
        for number, points in enumerate(items, start=1)
        if points is not None
    ]


def finding(answer, start):
    """The finding whose label starts so."""
    return next(f for f in answer.findings if f.label.startswith(start))


def test_one_landing_by_items(case, reading) -> None:
    """The sum, its band flagged unverified, its error, and the errors seen in our own words."""
    answer = landing_quality(case(*landing(reading)))
    score, seen = finding(answer, "landing error score"), finding(answer, "different errors")

    assert score.value == 6
    assert "moderate by bands that are unverified" in score.words
    assert "trial rule: the only landing" in score.words
    assert (score.low, score.high) == (pytest.approx(4.0, abs=0.01), pytest.approx(8.0, abs=0.01))
    assert seen.value == 6
    assert "item 1: at contact the knee is bent less than 30°, in 1 landing" in seen.words
    assert (
        "item 12: the knee bends less than 45° further after contact, in 1 landing (wording unverified"
        in seen.words
    )
    assert any("from memory" in text for text in answer.cautions)


def test_the_trial_rule_is_kept(case, reading) -> None:
    """Mean, best of three and worst of the same landings differ, and each answer says which it used."""
    rows = [
        reading("landing_errors", None, value, trial=n) for n, value in enumerate((6.0, 5.0, 5.0), start=1)
    ]
    made = case(*rows)
    values = {
        rule: finding(landing_quality(made, trial_rule=rule), "landing error score")
        for rule in ("mean", "best of three", "worst")
    }

    assert values["mean"].value == pytest.approx(16 / 3)
    assert values["best of three"].value == 5
    assert values["worst"].value == 6
    assert "the lowest of three landings" in values["best of three"].words
    assert landing_quality(made, trial_rule="worst").trial_rule == "worst"
    with pytest.raises(InputError, match="trial_rule must be one of"):
        landing_quality(made, trial_rule="median")


def test_best_of_three_needs_three(case, reading) -> None:
    """Two landings have no best of three; the answer says so and gives no number."""
    rows = [reading("landing_errors", None, 5.0, trial=n) for n in (1, 2)]
    score = finding(landing_quality(case(*rows), trial_rule="best of three"), "landing error score")

    assert score.value is None
    assert "needs three landings, 2 are recorded" in score.words


def test_a_missing_item_leaves_no_total(case, reading) -> None:
    """Which items are missing is said, and the whole score is unknown, not the mean of the rest."""
    items = [None if n in (2, 16) else p for n, p in enumerate(ITEMS, start=1)]
    rows = [*landing(reading, items, trial=1), reading("landing_errors", None, 4.0, trial=2)]
    answer = landing_quality(case(*rows))
    score = finding(answer, "landing error score")

    assert score.value is None
    assert score.words == "landing 1: no total, items 2, 16 are not recorded"
    assert score.inputs[1] == "landing 2: 4 points as recorded"
    assert "unknown" in answer.summary


def test_items_and_total_that_disagree(case, reading) -> None:
    """Neither is taken; a total that agrees, or stands in for missing items, is said."""
    total = reading("landing_errors", None, 9.0, trial=1)
    score = finding(landing_quality(case(*landing(reading), total)), "landing error score")
    assert score.value is None
    assert "items give 6 points, the total says 9 points; none is taken" in score.words

    agreeing = reading("landing_errors", None, 6.0, trial=1)
    assert finding(landing_quality(case(*landing(reading), agreeing)), "landing error score").value == 6

    partial = landing(reading, [None, *ITEMS[1:]])
    score = finding(landing_quality(case(*partial, agreeing)), "landing error score")
    assert score.value == 6
    assert "6 points as recorded (items 1 not recorded)" in score.inputs[0]


def test_contradicting_rows(case, reading) -> None:
    """One item written twice with two values, or an item that does not exist, makes the landing unusable."""
    twice = [*landing(reading), reading("landing_errors", None, 1.0, item=2, trial=1)]
    score = finding(landing_quality(case(*twice)), "landing error score")
    assert score.value is None
    assert "item 2 is recorded twice, as 0 and as 1" in score.words

    beyond = [*landing(reading), reading("landing_errors", None, 1.0, item=18, trial=1)]
    answer = landing_quality(case(*beyond))
    assert "item 18 does not exist on this form of 17 items" in finding(answer, "landing error score").words

    totals = [reading("landing_errors", None, 5.0), reading("landing_errors", None, 6.0)]
    assert "the total is recorded twice, as 5 and as 6" in landing_quality(case(*totals)).findings[0].words


def test_rule_written_in_the_record_is_shown(case, reading) -> None:
    """A recorded rule of a total is shown beside the rule used here; no errors seen, no list of them."""
    answer = landing_quality(case(reading("landing_errors", None, 5.0, administration="best of three")))

    assert "written in the record: best of three" in answer.findings[0].words
    assert [f.label for f in answer.findings if f.label.startswith("different")] == []
    clean = landing_quality(case(*landing(reading, [0] * 17)))
    assert finding(clean, "landing error score").words.startswith("excellent")


def test_base_rate_lesson_stands_beside(case, reading) -> None:
    """Our sum: 2.0 % of positive screens were right; nothing about this athlete."""
    lesson = finding(landing_quality(case(*landing(reading))), "base-rate lesson")

    assert lesson.value == pytest.approx(2.0, abs=0.05)
    assert "98 of 100" in lesson.words
    assert "11.7%" in lesson.words
    assert "ours" in lesson.words


def test_step_down_of_both_limbs(case, reading) -> None:
    """By items or as a total; the band, what was seen, and how little raters agree."""
    rows = [
        reading("step_down_errors", "left", float(p), item=n) for n, p in enumerate((0, 1, 0, 2, 0), start=1)
    ]
    rows.append(reading("step_down_errors", "right", 1.0))
    answer = landing_quality(case(*rows))
    left, right = (
        finding(answer, "step-down quality, involved"),
        finding(answer, "step-down quality, uninvolved"),
    )

    assert (left.value, right.value) == (3, 1)
    assert (
        left.words
        == "medium quality; seen: the trunk leans; the knee goes inward: 1 past the second toe, 2 past "
        "the inner edge of the foot (2 of 2 points)"
    )
    assert right.words == "good quality; total as recorded"
    assert "kappa 0.59 to 0.81" in left.error
    assert measure_named("step_down_errors").range_of_item(4) == (0, 2)


def test_step_down_that_cannot_be_summed(case, reading) -> None:
    """Missing items, two values, and a total that disagrees give no score, each with its reason."""
    four = [reading("step_down_errors", "left", 0.0, item=n, trial=1) for n in (1, 2, 3, 4)]
    assert "no total: items 5 are not recorded" in landing_quality(case(*four)).findings[0].words
    assert landing_quality(case(*four)).findings[0].label.endswith("trial 1")

    whole = [*four, reading("step_down_errors", "left", 0.0, item=5, trial=1)]
    assert landing_quality(case(*whole)).findings[0].words == "good quality; no error seen"
    total = reading("step_down_errors", "left", 4.0, trial=1)
    assert (
        "items give 0 points, the total says 4 points"
        in landing_quality(case(*whole, total)).findings[0].words
    )
    twice = [*whole, reading("step_down_errors", "left", 1.0, item=5, trial=1)]
    assert "item 5 is recorded twice" in landing_quality(case(*twice)).findings[0].words


def test_alignment_is_described(case, reading) -> None:
    """Each limb, the difference against its error, words for the direction, norms of the own sex."""
    rows = [
        reading("frontal_plane_projection", "left", 14.0, position="single-leg squat"),
        reading("frontal_plane_projection", "right", 4.0, position="single-leg squat"),
        reading("trunk_lean", "left", -3.0),
        reading("pelvic_drop", "left", 0.0),
        reading("pelvic_drop", "right", 2.0),
    ]
    answer = landing_quality(case(*rows))
    left = finding(answer, "frontal plane projection angle, single-leg squat, involved (left)")
    between = finding(answer, "frontal plane projection angle, single-leg squat, involved less")

    assert left.words == "inward (valgus)"
    assert between.value == 10
    assert "larger than what error" in between.words
    assert finding(answer, "trunk lean, task not recorded").words == "away from the standing limb"
    assert finding(answer, "pelvic drop, task not recorded, involved (left)").words == "0"
    assert "cannot be judged" in finding(answer, "pelvic drop, task not recorded, involved less").words
    names = {v.name for v in left.evidence}
    assert "ALIGNMENT_FPPA_SQUAT_WOMEN_HERRINGTON2014" in names
    assert "ALIGNMENT_FPPA_SQUAT_MEN_GHULAM2021" not in names
    assert any("education" in text for text in answer.cautions)
    assert answer.summary == "7 angles from pictures; described, not judged."


def test_small_difference_of_alignment(case, reading) -> None:
    """Inside 8.93 degrees the difference is called error; without a sex all norms are shown."""
    rows = [
        reading("frontal_plane_projection", s, v, position="drop jump")
        for s, v in (("left", -9.0), ("right", -4.0))
    ]
    answer = landing_quality(case(*rows, athlete={"sex": ""}))

    assert "inside what error" in answer.findings[2].words
    assert answer.findings[0].words == "outward (varus)"
    assert "ALIGNMENT_FPPA_SQUAT_MEN_GHULAM2021" in {v.name for v in answer.evidence}


def test_load_shift(case, reading) -> None:
    """Share under the involved limb by task; a limb not read, or empty scales, give none."""
    rows = [
        reading("stance_load", "left", 25.5, position="squat"),
        reading("stance_load", "right", 33.0, position="squat"),
        reading("stance_load", "left", 30.0, position="standing"),
    ]
    answer = landing_quality(case(*rows))
    squat = finding(answer, "load under the involved limb, squat")

    assert squat.value == pytest.approx(43.59, abs=0.005)
    assert squat.words == "7.5 kg more on the other limb"
    assert "43.6%" in answer.summary
    standing = finding(answer, "load under the involved limb, standing")
    assert standing.value is None
    assert "the other limb was not read on 2026-04-13" in standing.words
    for own, other, words in (
        (30.0, 30.0, "even on both limbs"),
        (31.0, 30.0, "1 kg more on the involved limb"),
        (0.0, 0.0, "both scales read nothing"),
    ):
        pair = [reading("stance_load", "left", own), reading("stance_load", "right", other)]
        assert landing_quality(case(*pair)).findings[0].words == words


def test_each_part_has_its_own_last_day(case, reading) -> None:
    """Later readings do not exist on an earlier day; missing ones are left out with their reason."""
    rows = [
        reading("step_down_errors", "left", 3.0, day=30),
        reading("step_down_errors", "left", 1.0, day=60),
        reading("landing_errors", None, None, day=60, missing="unsafe"),
    ]
    made = case(*rows)

    assert landing_quality(made).findings[0].value == 1
    assert [x.reason for x in landing_quality(made).left_out] == ["no number: unsafe"]
    assert landing_quality(made, dt.date(2026, 4, 15)).findings[0].value == 3
    empty = landing_quality(case())
    assert empty.findings == ()
    assert "No landing, step-down, angle or load" in empty.summary


def test_everything_can_be_asked_why(case, reading) -> None:
    """The explanation names inputs, formula, error and sources, and flags what is unverified."""
    text = str(landing_quality(case(*landing(reading))).explain())

    for part in ("sum of the items", "Everard", "unverified: from memory", "Hanzlikova", "Krosshaug"):
        assert part in text
