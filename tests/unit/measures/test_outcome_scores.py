"""The outcome-score answer: from items or totals, never chosen between, and change held against error."""

from __future__ import annotations

import datetime as dt

import pytest

from kneecase.errors import InputError
from kneecase.evidence.questionnaires import QUESTIONNAIRES
from kneecase.measures import outcome_scores

IKDC = [4, 5, 5, 2, 3, 1, 3, 3, 3, 3, 3, 3, 3, 3, 3, 3, 3, 9]


def sheet(reading, measure, items, day=42, **more):
    """One filled-in form by item number; None leaves the item out."""
    return [
        reading(measure, None, float(points), day, item=number, **more)
        for number, points in enumerate(items, start=1)
        if points is not None
    ]


def finding(answer, start):
    """The finding whose label starts so."""
    return next(f for f in answer.findings if f.label.startswith(start))


def test_every_instrument_from_its_items(case, reading) -> None:
    """Each form gives its score from item numbers, with the number of items and the rule named."""
    rows = [
        *sheet(reading, "ikdc_subjective", IKDC),
        *sheet(reading, "koos_pain", [1] * 9),
        *sheet(reading, "koos_symptoms", [1, 0, 2, 1]),
        *sheet(reading, "koos_adl", [0] * 17),
        *sheet(reading, "koos_sport", [4] * 5),
        *sheet(reading, "koos_qol", [1, 2]),
        *sheet(reading, "acl_rsi", [55] * 12),
        *sheet(reading, "kos_adl", [5] * 6 + [4] * 5 + [3] * 3),
        *sheet(reading, "tsk_11", [2] * 11),
        reading("lysholm", None, 88.0),
        reading("tegner", None, 6.0),
        reading("global_rating", None, 82.0),
    ]
    answer = outcome_scores(case(*rows))
    values = {f.label: f.value for f in answer.findings}

    assert values == {
        "IKDC subjective knee score": pytest.approx(100 * 62 / 87),
        "KOOS pain": 75.0,
        "KOOS symptoms": 75.0,
        "KOOS daily living": 100.0,
        "KOOS sport and recreation": 0.0,
        "KOOS quality of life": 62.5,
        "ACL-RSI readiness": 55.0,
        "Lysholm total": 88.0,
        "Tegner activity level": 6.0,
        "KOS activities of daily living": pytest.approx(84.2857, abs=1e-4),
        "TSK-11 fear of movement": 22.0,
        "global rating of the knee": 82.0,
    }
    symptoms = finding(answer, "KOOS symptoms")
    assert "from 4 of 7 items" in symptoms.words
    assert "missing-item rule: rule of 2012: at least 4 items answered" in symptoms.inputs
    assert len(answer.used) == len(rows)
    assert answer.problems == ()


def test_koos_rule_of_1998(case, reading) -> None:
    """The stricter rule is selectable and kept; what is too little is said with the missing numbers."""
    made = case(*sheet(reading, "koos_pain", [1] * 5))

    assert outcome_scores(made).findings[0].value == 75
    old = outcome_scores(made, koos_rule="1998")
    assert old.koos_rule == "1998"
    assert old.findings[0].value is None
    assert (
        "5 answered, rule of 1998: at least 7 items answered; missing items 6, 7, 8, 9"
        in old.findings[0].words
    )
    with pytest.raises(InputError, match="koos_rule must be '2012' or '1998', got '2003'"):
        outcome_scores(made, koos_rule="2003")


def test_items_and_total_that_disagree(case, reading) -> None:
    """Neither is taken: the value is unknown, and the problem stands in answer, summary and cautions."""
    rows = [*sheet(reading, "koos_pain", [1] * 9), reading("koos_pain", None, 80.0)]
    answer = outcome_scores(case(*rows))

    assert answer.findings[0].value is None
    assert answer.problems == (
        "KOOS pain, 2026-04-13: the items give 75 points and the recorded total is 80 points; "
        "neither is taken until one is mended",
    )
    assert "1 to mend" in answer.summary
    assert answer.cautions[0].startswith("The record contradicts itself. KOOS pain")


@pytest.mark.parametrize(
    ("total", "typed", "agrees"),
    [
        (71.3, "71.3", True),
        (71.0, "71", True),
        (71.26, "71,26", True),
        (71.2, "71.2", False),
        (71.3, "", True),
        (72.0, "72", False),
    ],
)
def test_a_rounded_total_agrees(case, reading, total: float, typed: str, agrees: bool) -> None:
    """A total that is the rounded score (62 of 87 is 71.264) agrees; its digits say how far."""
    rows = [
        *sheet(reading, "ikdc_subjective", IKDC),
        reading("ikdc_subjective", None, total, raw_value=typed),
    ]
    answer = outcome_scores(case(*rows))

    assert (answer.findings[0].value is not None) == agrees
    assert (answer.problems == ()) == agrees


def test_total_stands_in_for_missing_items(case, reading) -> None:
    """Where the items give no score the recorded total does, and it is said."""
    rows = [*sheet(reading, "tsk_11", [2] * 10), reading("tsk_11", None, 23.0)]
    answer = outcome_scores(case(*rows))

    assert answer.findings[0].value == 23
    assert "total as recorded; the items alone give none: every item answered" in answer.findings[0].words
    alone = outcome_scores(case(*sheet(reading, "tsk_11", [2] * 10)))
    assert alone.findings[0].value is None
    assert "missing item 11" in alone.findings[0].words


def test_contradicting_rows(case, reading) -> None:
    """One item with two values is a problem; the same value twice is not."""
    twice = [*sheet(reading, "koos_qol", [1, 2, 1, 2]), reading("koos_qol", None, 3.0, item=2)]
    assert "item 2 is recorded twice, as 2 and as 3" in outcome_scores(case(*twice)).problems[0]
    same = [*sheet(reading, "koos_qol", [1, 2, 1, 2]), reading("koos_qol", None, 2.0, item=2)]
    assert outcome_scores(case(*same)).problems == ()
    with pytest.raises(InputError, match="item 2 must be a whole number between 0 and 4"):
        outcome_scores(case(*sheet(reading, "koos_qol", [1, 7, 1, 2])))


@pytest.mark.parametrize(
    ("items", "written", "value", "said"),
    [
        ([5.0] * 12, "items 0-10", 50.0, "items 0-10, at least 10 items answered (unverified)"),
        ([5.0] * 12, "items 0 to 100", 5.0, "items 0-100"),
        ([55.0] * 12, "", 55.0, "items 0-100"),
        ([5.0] * 12, "", None, "cannot be told apart"),
        ([5.0] * 11 + [55.0], "items 0-10", None, "do not fit one scale"),
        ([55.0] * 9, "", None, "9 answered"),
    ],
)
def test_scale_of_the_readiness_items(case, reading, items, written, value, said) -> None:
    """The scale of the items is taken from the record or from a value that leaves no doubt, never guessed."""
    rows = sheet(reading, "acl_rsi", items, administration=written)
    found = outcome_scores(case(*rows)).findings[0]

    assert found.value == value
    assert said in found.words + " ".join(found.inputs)


def test_two_scales_on_one_day(case, reading) -> None:
    """Items on two scales make no score."""
    rows = [*sheet(reading, "acl_rsi", [5.0] * 6, administration="items 0-10")]
    rows += [reading("acl_rsi", None, 50.0, item=n, administration="items 0-100") for n in range(7, 13)]

    assert "do not fit one scale" in outcome_scores(case(*rows)).findings[0].words


def test_readiness_is_no_sign_of_safety(case, reading) -> None:
    """Whatever the score, the answer says so and shows the studies that contradict each other."""
    answer = outcome_scores(case(reading("acl_rsi", None, 95.0)))
    names = {v.name for v in answer.evidence}

    assert any("never of safety" in text for text in answer.cautions)
    assert {f.verdict for f in answer.findings} == {""}
    assert {"READINESS_EARLY_HIGH_UEDA2024", "READINESS_YOUNG_LINE_MCPHERSON2019"} <= names


def test_change_beyond_error(case, reading) -> None:
    """Above the detectable change it is called better or worse by the measure's own direction."""
    better = [reading("lysholm", None, 70.0, 20), reading("lysholm", None, 82.0, 42)]
    change = finding(outcome_scores(case(*better)), "Lysholm total, change since 2026-03-22")
    assert change.value == 12
    assert (change.low, change.high) == (pytest.approx(3.1), pytest.approx(20.9))
    assert change.words.startswith("better, by more than error alone can produce (8.9 points)")
    assert "published as mattering: 5.5 points (Rev Bras Ortop 2023)" in change.words

    fear = [reading("tsk_11", None, 20.0, 20), reading("tsk_11", None, 30.0, 42)]
    assert finding(outcome_scores(case(*fear)), "TSK-11 fear of movement, change").words.startswith("worse")


def test_change_inside_error(case, reading) -> None:
    """At or below the detectable change it cannot be told from error, not called no change."""
    small = [reading("lysholm", None, 70.0, 20), reading("lysholm", None, 76.0, 42)]
    assert finding(outcome_scores(case(*small)), "Lysholm total, change").words.startswith(
        "cannot be told from error (up to 8.9 points)"
    )
    one_level = [reading("tegner", None, 5.0, 20), reading("tegner", None, 6.0, 42)]
    assert (
        "cannot be told" in finding(outcome_scores(case(*one_level)), "Tegner activity level, change").words
    )


def test_only_the_last_two_days(case, reading) -> None:
    """The change is between the last two days up to ``on``."""
    rows = [reading("ikdc_subjective", None, v, d) for v, d in ((40.0, 10), (50.0, 20), (75.0, 40))]
    made = case(*rows)

    assert finding(outcome_scores(made), "IKDC subjective knee score, change").value == 25
    assert (
        finding(outcome_scores(made, dt.date(2026, 3, 25)), "IKDC subjective knee score, change").value == 10
    )
    assert len(outcome_scores(made, dt.date(2026, 3, 12)).findings) == 1


def test_change_from_an_unknown_score(case, reading) -> None:
    """A day without a score gives no change, and the reason."""
    rows = [*sheet(reading, "tsk_11", [2] * 10, 20), reading("tsk_11", None, 23.0, 42)]
    change = finding(outcome_scores(case(*rows)), "TSK-11 fear of movement, change")

    assert change.value is None
    assert "no change can be given: 2026-03-22: no score" in change.words


def test_another_version_or_rule_is_said(case, reading) -> None:
    """Two versions of a form, or two rules, are said beside the change."""
    rows = [
        reading("acl_rsi", None, 50.0, 20, administration="short version"),
        reading("acl_rsi", None, 70.0, 42),
    ]
    change = finding(outcome_scores(case(*rows)), "ACL-RSI readiness, change")
    assert "short version, then not recorded" in " ".join(change.cautions)

    rules = [
        *sheet(reading, "acl_rsi", [5.0] * 12, 20, administration="items 0-10"),
        *sheet(reading, "acl_rsi", [60.0] * 12, 42, administration="items 0-100"),
    ]
    change = finding(outcome_scores(case(*rules)), "ACL-RSI readiness, change")
    assert "The two days were scored by different missing-item rules." in change.cautions


def test_tegner_against_before_the_injury(case, reading) -> None:
    """Current less the earliest level before surgery; another level before surgery is named."""
    rows = [
        reading("tegner", None, 9.0, -60),
        reading("tegner", None, 3.0, -5),
        reading("tegner", None, 6.0, 42),
    ]
    answer = outcome_scores(case(*rows))
    less = finding(answer, "Tegner activity level, current less pre-injury")

    assert less.value == -3
    assert less.words == "below the level before"
    assert "earliest level recorded before surgery (2026-01-01)" in less.cautions[0]
    assert "Another level is recorded before surgery: 3 points on 2026-02-25" in less.cautions[1]
    assert [f.label for f in answer.findings if "change since" in f.label] == []


@pytest.mark.parametrize(
    ("now", "words"), [(9.0, "back at the level before"), (10.0, "above the level before")]
)
def test_tegner_words(case, reading, now: float, words: str) -> None:
    """Equal and higher levels have their words, and a later change since surgery is shown as well."""
    rows = [
        reading("tegner", None, 9.0, -60),
        reading("tegner", None, 4.0, 20),
        reading("tegner", None, now, 42),
    ]
    answer = outcome_scores(case(*rows))

    assert finding(answer, "Tegner activity level, current less").words == words
    assert finding(answer, "Tegner activity level, change since 2026-03-22").value == now - 4


def test_tegner_with_an_unknown_level(case, reading) -> None:
    """Two levels on one day are a problem, and then there is no difference either."""
    rows = [
        reading("tegner", None, 9.0, -60),
        reading("tegner", None, 8.0, -60),
        reading("tegner", None, 6.0, 42),
    ]
    assert finding(outcome_scores(case(*rows)), "Tegner activity level, current").value is None


def test_acceptable_states_stand_together(case, reading) -> None:
    """Two published lines side by side, the unverified one flagged, and where the score lies."""
    words = {
        value: finding(outcome_scores(case(reading("koos_symptoms", None, value))), "KOOS symptoms").words
        for value in (50.0, 60.0, 80.0)
    }

    assert "76.5 points (95 % interval 67.8 to 84.7) (Urhausen 2024)" in words[50.0]
    assert "57.1 points (Muller 2016, unverified)" in words[50.0]
    assert "below both" in words[50.0]
    assert "between them" in words[60.0]
    assert "at or above both" in words[80.0]


def test_norms_of_the_own_sex_only(case, reading) -> None:
    """Means of the general population by the athlete's sex, flagged as recalled."""
    answer = outcome_scores(case(reading("ikdc_subjective", None, 80.0)))
    norms = [v for v in answer.evidence if "NORM" in v.name]

    assert {v.name.split("_")[3] for v in norms} == {"WOMEN"}
    assert not any(v.verified for v in norms)
    nobody = outcome_scores(case(reading("ikdc_subjective", None, 80.0), athlete={"sex": "other"}))
    assert [v for v in nobody.evidence if "NORM" in v.name] == []


def test_declined_and_nothing(case, reading) -> None:
    """A declined form is left out with its reason; a case without scores says so."""
    answer = outcome_scores(case(reading("lysholm", None, None, missing="declined")))

    assert [x.reason for x in answer.left_out] == ["no number: declined"]
    assert answer.findings == ()
    assert "No outcome score is recorded up to 2026-04-13" in answer.summary
    assert answer.cautions == ()


def test_everything_can_be_asked_why(case, reading) -> None:
    """Inputs, version, entry, owner, formula, error and sources stand in the explanation of every form."""
    rows = [reading(name, None, 20.0 if name == "tsk_11" else 7.0, 42) for name in QUESTIONNAIRES]
    rows += [reading(name, None, 15.0 if name == "tsk_11" else 3.0, 20) for name in QUESTIONNAIRES]
    text = str(outcome_scores(case(*rows)).explain())

    for part in (
        "how numbers are entered",
        "the form belongs to",
        "unverified",
        "Formula",
        "Measurement error",
    ):
        assert part in text
    for form in QUESTIONNAIRES.values():
        assert form.label in text
