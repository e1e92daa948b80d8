"""The hop battery of a case: each test decided unrounded, with its error, and safely unknown otherwise."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable, Sequence
from typing import Any

import pytest

from kneecase.errors import InputError
from kneecase.evidence import published_value
from kneecase.measures import HopSymmetry, HopTest, hop_symmetry, symmetry_band
from kneecase.record import Case, Reading

Read = Callable[..., Reading]
Build = Callable[..., Case]


@pytest.fixture
def pair(reading: Read) -> Callable[..., list[Reading]]:
    """Trials of both limbs of one test: involved (left) first."""

    def build(
        measure: str, involved: Sequence[float], uninvolved: Sequence[float], **more: Any
    ) -> list[Reading]:
        more = {"day": 200, "administration": "reid-2007"} | more
        return [
            reading(measure, side, value, trial=i + 1, **more)
            for side, values in (("left", involved), ("right", uninvolved))
            for i, value in enumerate(values)
        ]

    return build


def only(answer: HopSymmetry) -> HopTest:
    """The single test of an answer."""
    (test,) = answer.tests
    return test


def test_an_index_is_decided_unrounded(pair: Any, case: Build) -> None:
    """89.597 prints as 90 % to no decimals and is short of 90; exactly 90 meets ≥ and not >."""
    mean = case(*pair("single_hop", [132, 135], [150, 148]))
    exact = case(*pair("single_hop", [135], [150]))

    assert only(hop_symmetry(mean)).passes_as_observed is False
    assert only(hop_symmetry(mean, statistic="best")).passes_as_observed is True
    assert only(hop_symmetry(exact)).passes_as_observed is True
    assert only(hop_symmetry(exact, operator=">")).passes_as_observed is False
    assert only(hop_symmetry(exact, operator=">")).operator == ">"
    assert only(hop_symmetry(exact, operator=">=")).operator == "≥"


def test_a_time_is_turned_over_and_a_count_is_not(pair: Any, case: Build) -> None:
    """Slower is worse in the 6-m hop and in ten side hops; fewer is worse in 30 s of them."""
    answer = hop_symmetry(
        case(
            *pair("timed_hop_6m", [2.0], [1.8]),
            *pair("side_hop_10_timed", [8.0], [6.0]),
            *pair("side_hop_30s", [45], [52]),
        )
    )
    indices = {test.measure: test.lsi_pct for test in answer.tests}

    assert indices["timed_hop_6m"] == pytest.approx(90.0)
    assert indices["side_hop_10_timed"] == pytest.approx(75.0)
    assert indices["side_hop_30s"] == pytest.approx(86.5385, abs=5e-5)


def test_near_the_line_is_too_close_to_call(pair: Any, case: Build) -> None:
    """A chance between 10 and 90 % calls nothing; far enough away a verdict stands."""
    near = only(hop_symmetry(case(*pair("single_hop", [137], [150]))))
    above = only(hop_symmetry(case(*pair("single_hop", [148], [150]))))
    below = only(hop_symmetry(case(*pair("single_hop", [120], [150]))))

    assert (near.verdict, near.too_close) == ("too close to call", True)
    assert (above.verdict, above.too_close) == ("met", False)
    assert (below.verdict, below.too_close) == ("not met", False)
    assert near.chance is not None
    assert 0.1 < near.chance < 0.9
    assert near.passes_as_observed is True


def test_the_band_comes_from_the_error_named(pair: Any, case: Build) -> None:
    """Default: read errors only; the index's own from memory only when asked, and shown unverified."""
    hopper = case(*pair("single_hop", [133.5], [149.0]))
    default, index = only(hop_symmetry(hopper)), only(hop_symmetry(hopper, error_from="index"))
    timed = only(hop_symmetry(case(*pair("timed_hop_6m", [2.0], [1.8]))))
    timed_score = only(hop_symmetry(case(*pair("timed_hop_6m", [2.0], [1.8])), error_from="score"))

    assert default.sem_points == pytest.approx(4.11, abs=0.005)
    assert all(v.verified or v.known == "common practice" for v in default.evidence)
    assert (default.low, default.high) == symmetry_band(default.lsi_pct, default.sem_points, 0.90)
    assert "3.49 points" in default.error
    assert index.sem_points == 3.49
    assert "unverified: from memory" in index.error
    assert timed.sem_points == 5.59
    assert timed_score.sem_points == pytest.approx(8.75, abs=0.02)


def test_a_test_without_published_error_says_so(pair: Any, case: Build) -> None:
    """Vertical and side hop: no band, verdict as observed, 'error unknown' in the words."""
    test = only(hop_symmetry(case(*pair("vertical_hop", [15.5], [19.2]))))

    assert not test.error_known
    assert (test.low, test.high, test.chance, test.sem_points) == (None, None, None, None)
    assert test.verdict == "not met"
    assert "error unknown" in test.words
    assert only(hop_symmetry(case(*pair("vertical_hop", [15], [19])), error_from="index")).sem_points is None


def test_the_medial_hop_has_a_relative_error(pair: Any, case: Build) -> None:
    """4.1 % on each limb: 5.8 % of the index."""
    test = only(hop_symmetry(case(*pair("medial_triple_hop", [380], [400]))))

    assert test.sem_points == pytest.approx(95.0 * 0.041 * 2**0.5, abs=1e-9)


def test_a_doubtful_reference_meets_nothing(pair: Any, case: Build) -> None:
    """Graft from the other limb, its earlier injury, or a child: shown, never met; a fail stays a fail."""
    rows = pair("single_hop", [149], [150])
    for changes in (
        {"surgery": {"harvest_side": "right"}},
        {"surgery": {"earlier": {"right": ("ankle fracture 2020",)}}},
        {"athlete": {"age_years": 13.0}},
    ):
        test = only(hop_symmetry(case(*rows, **changes)))
        assert test.lsi_pct == pytest.approx(99.3333, abs=5e-5)
        assert test.verdict == "unknown"
        assert "meets no criterion" in test.words
    failed = case(*pair("single_hop", [100], [150]), surgery={"harvest_side": "right"})
    assert only(hop_symmetry(failed)).verdict == "not met"
    near = case(*pair("single_hop", [135], [150]), surgery={"harvest_side": "right"})
    assert only(hop_symmetry(near)).verdict == "unknown"


def test_above_110_the_other_limb_is_asked_about(pair: Any, case: Build) -> None:
    """An index of 120 % flags the other limb, and the swap of sides; 110 itself does not."""
    high = only(hop_symmetry(case(*pair("single_hop", [180], [150]))))
    line = only(hop_symmetry(case(*pair("single_hop", [165], [150]))))

    assert high.flags_uninvolved
    assert any("sides were not swapped" in text for text in high.cautions)
    assert not line.flags_uninvolved


def test_all_landings_lost_is_unknown_not_an_older_pass(pair: Any, reading: Read, case: Build) -> None:
    """The latest day counts even when it gave no score; an older good day does not stand in for it."""
    lost = [
        reading("single_hop", "left", 140, day=230, status="lost", administration="reid-2007"),
        reading("single_hop", "right", 150, day=230, administration="reid-2007"),
    ]
    test = only(hop_symmetry(case(*pair("single_hop", [150], [150]), *lost)))

    assert test.value is None
    assert test.verdict == "unknown"
    assert "no scored trial" in test.words
    assert test.involved.lost == 1


@pytest.mark.parametrize("missing", ["declined", "unsafe", "not done"])
def test_a_reason_for_no_number_is_unknown(missing: str, reading: Read, case: Build) -> None:
    """Declined, unsafe and not done stand in the row; nothing passes."""
    rows = [
        reading("triple_hop", "left", None, missing=missing),
        reading("triple_hop", "right", 450),
    ]
    test = only(hop_symmetry(case(*rows)))

    assert test.verdict == "unknown"
    assert missing in test.words


def test_zero_gives_no_index(pair: Any, case: Build) -> None:
    """No valid hop on the other limb: nothing can be held against zero; on the involved one it is 0 %."""
    assert "against zero" in only(hop_symmetry(case(*pair("side_hop_30s", [40], [0])))).words
    assert only(hop_symmetry(case(*pair("side_hop_30s", [0], [40])))).lsi_pct == 0.0


def test_days_are_not_mixed(pair: Any, reading: Read, case: Build) -> None:
    """The two limbs of different days make no index; readings of another day are left out with the reason."""
    split = [reading("single_hop", "left", 140, day=200), reading("single_hop", "right", 150, day=210)]
    assert only(hop_symmetry(case(*split))).verdict == "unknown"

    older, newer = pair("single_hop", [120], [150], day=150), pair("single_hop", [140], [150])
    answer = hop_symmetry(case(*older, *newer))
    assert only(answer).lsi_pct == pytest.approx(93.3333, abs=5e-5)
    assert {x.reading.id for x in answer.left_out} == {r.id for r in older}
    assert all("days are not mixed" in x.reason for x in answer.left_out)
    assert {r.id for r in answer.used} == {r.id for r in newer}


def test_on_looks_back(pair: Any, case: Build) -> None:
    """Asked for an earlier day, later readings do not exist."""
    rows = [*pair("single_hop", [120], [150], day=150), *pair("single_hop", [140], [150], day=200)]
    hopper = case(*rows)

    assert only(hop_symmetry(hopper, rows[0].date)).lsi_pct == pytest.approx(80.0)
    assert hop_symmetry(hopper, dt.date(2026, 3, 3)).tests == ()


def test_before_surgery_is_a_reference(pair: Any, case: Build) -> None:
    """Readings from before surgery are no part of an index after it; asked for then, they are looked at."""
    before = pair("single_hop", [140], [150], day=-20)
    hopper = case(*before, *pair("single_hop", [120], [150], day=200))
    answer = hop_symmetry(hopper)

    assert only(answer).lsi_pct == pytest.approx(80.0)
    assert all("before surgery" in x.reason for x in answer.left_out)
    assert only(hop_symmetry(hopper, before[0].date)).lsi_pct == pytest.approx(93.3333, abs=5e-5)
    alone = hop_symmetry(case(*before), dt.date(2026, 4, 1))
    assert alone.tests == ()
    assert len(alone.left_out) == 2


def test_practice_alone_is_no_test(reading: Read, case: Build) -> None:
    """A day of practice only makes no row."""
    answer = hop_symmetry(case(reading("single_hop", "left", 140, status="practice")))

    assert answer.tests == ()
    assert answer.left_out[0].reason == "practice only: nothing was scored"
    assert answer.summary == "No hop test is recorded."
    assert answer.combined.verdict == "unknown"


def test_two_ways_of_giving_a_test_are_not_compared(pair: Any, reading: Read, case: Build) -> None:
    """One limb by one author's way and the other by another's, or unsaid, make no index."""
    rows = [
        reading("single_hop", "left", 140, administration="reid-2007"),
        reading("single_hop", "right", 150),
    ]
    test = only(hop_symmetry(case(*rows)))

    assert test.verdict == "unknown"
    assert "different ways (not recorded and reid-2007)" in test.words


def test_the_default_way_is_stated(pair: Any, case: Build) -> None:
    """Nothing recorded: worked out by the default, or by what the caller names, and said so."""
    rows = pair("single_hop", [132, 135], [150, 148], administration="")
    default, best = hop_symmetry(case(*rows)), hop_symmetry(case(*rows), administration="football-2023")

    assert only(default).statistic == "mean"
    assert "not recorded, worked out as reid-2007" in " ".join(only(default).inputs)
    assert only(best).statistic == "best"


def test_an_unnamed_way_is_kept(pair: Any, case: Build) -> None:
    """A clinic's own way is stored as written and scored by the mean, with the reason."""
    test = only(hop_symmetry(case(*pair("single_hop", [132, 135], [150, 148], administration="Clinic A"))))

    assert test.administration == "clinic a"
    assert "is not one of the named ways" in " ".join(test.inputs)
    guideline = only(hop_symmetry(case(*pair("single_hop", [140], [150], administration="guideline-2010"))))
    assert "does not say how the score is made" in " ".join(guideline.inputs)


def test_unlikely_and_uneven_trials_are_said_aloud(pair: Any, case: Build) -> None:
    """Metres among centimetres, a wide spread, unequal counts and a stopwatch are cautions, not silence."""
    metres = only(hop_symmetry(case(*pair("single_hop", [1.35], [150]))))
    assert any("was another unit meant" in text for text in metres.cautions)
    wide = only(hop_symmetry(case(*pair("single_hop", [110, 140, 140], [150, 148]))))
    assert any("30 cm apart" in text for text in wide.cautions)
    assert any("more trials" in text for text in wide.cautions)
    assert any("scores 2 trials" in text for text in wide.cautions)
    watch = only(hop_symmetry(case(*pair("timed_hop_6m", [2.0], [1.9], device="Stopwatch"))))
    assert any("stopwatch" in text for text in watch.cautions)
    side = only(hop_symmetry(case(*pair("side_hop_10_timed", [8], [7]))))
    assert any("several sessions" in text for text in side.cautions)
    up = only(hop_symmetry(case(*pair("vertical_hop", [18], [19]))))
    assert any("bent knees" in text for text in up.cautions)


def test_lost_landings_are_counted(pair: Any, reading: Read, case: Build) -> None:
    """A lost landing changes no index and is named with its limb."""
    rows = pair("single_hop", [140], [150])
    lost = reading("single_hop", "left", 190, day=200, status="lost", administration="reid-2007")
    plain, with_lost = only(hop_symmetry(case(*rows))), hop_symmetry(case(*rows, lost))

    assert only(with_lost).lsi_pct == plain.lsi_pct
    assert any("1 lost landing (involved 1, uninvolved 0)" in text for text in only(with_lost).cautions)
    assert [x.reading.id for x in with_lost.left_out] == [lost.id]


def battery(pair: Any, day: int = 200) -> list[Reading]:
    """The four classic tests of one day, near 95 %."""
    return [
        *pair("single_hop", [142], [150], day=day),
        *pair("triple_hop", [430], [450], day=day),
        *pair("crossover_hop", [400], [420], day=day),
        *pair("timed_hop_6m", [2.0], [1.9], day=day),
    ]


def test_the_mean_of_four(pair: Any, case: Build) -> None:
    """Four of one day make a mean with Reid's error and no verdict; three, or two days, make none."""
    whole = hop_symmetry(case(*battery(pair)))
    indices = [test.lsi_pct for test in whole.tests]

    assert whole.combined.value == pytest.approx(sum(x for x in indices if x is not None) / 4)
    assert whole.combined.verdict == ""
    assert published_value("HOPS_COMBINED_LSI_SEM_REID2007") in whole.combined.evidence
    assert "3 of the four" in hop_symmetry(case(*battery(pair)[2:])).combined.words
    two_days = case(*battery(pair)[2:], *pair("single_hop", [142], [150], day=230))
    assert "different days" in hop_symmetry(two_days).combined.words
    assert any("different days" in text for text in hop_symmetry(two_days).cautions)


def test_absolute_distance_by_own_size(pair: Any, case: Build) -> None:
    """Each limb by its own length; references by sex; without height or sex the words say so."""
    sized = {"height_cm": 171.0, "limb_length_cm": {"left": 88.0, "right": 90.0}}
    rows = pair("single_hop", [132], [144])
    own, other = hop_symmetry(case(*rows, athlete=sized)).distances

    assert own.value == pytest.approx(100 * 132 / 171)
    assert (own.limb_length_pct, other.limb_length_pct) == (pytest.approx(150.0), pytest.approx(160.0))
    assert {v.name for v in own.evidence} == {
        "HOPS_SINGLE_PCT_HEIGHT_FEMALE_FIVECRITERIA2021",
        "HOPS_SINGLE_PCT_HEIGHT_HEIGHTRETURN2021",
        "HOPS_SINGLE_PCT_LIMB_FEMALE_HIGHSCHOOL2018",
    }
    bare = hop_symmetry(case(*rows)).distances[0]
    assert (bare.value, bare.unit) == (132, "cm")
    assert "height not recorded" in bare.words
    assert "no reference chosen" in bare.words
    triple = hop_symmetry(case(*pair("triple_hop", [400], [420]), athlete=sized)).distances[0]
    assert "no reference by size was read" in triple.words


def test_what_was_not_tested_is_named(pair: Any, case: Build) -> None:
    """Absent tests are listed as unknown; nothing is called a permission."""
    answer = hop_symmetry(case(*pair("single_hop", [150], [150])))

    assert any("triple hop for distance" in text and "unknown" in text for text in answer.cautions)
    assert any("not permission" in text for text in answer.cautions)
    assert "cleared" not in str(answer.explain()).lower()


def test_every_number_can_be_asked_why(pair: Any, case: Build) -> None:
    """Each test's explanation holds trials, formula, error and source; the answer shows in HTML, escaped."""
    rows = pair("single_hop", [140], [150], administration="<b>ours</b>")
    answer = hop_symmetry(case(*battery(pair)[2:], *rows, athlete={"sex": "male", "height_cm": 180.0}))
    text = str(answer.explain())

    for test in answer.tests:
        assert test.involved.words() in text
        assert test.formula in text
        assert test.error in text
        assert all(value.line() in text for value in test.evidence)
    assert "<b>ours" not in answer._repr_html_()
    assert answer.date == rows[0].date


@pytest.mark.parametrize(
    ("wrong", "named"),
    [
        ({"administration": "nobody"}, "administration"),
        ({"statistic": "median"}, "statistic"),
        ({"operator": "<"}, "operator"),
        ({"operator": "about"}, "operator"),
        ({"threshold_pct": -90.0}, "threshold_pct"),
        ({"threshold_pct": float("nan")}, "threshold_pct"),
        ({"level": 1.5}, "level"),
        ({"error_from": "elsewhere"}, "error_from"),
    ],
)
def test_wrong_choices_are_refused(wrong: dict[str, Any], named: str, pair: Any, case: Build) -> None:
    """Each argument that is not one of its choices is named."""
    with pytest.raises(InputError, match=named):
        hop_symmetry(case(*pair("single_hop", [140], [150])), **wrong)


def test_an_own_threshold_rests_on_no_source(pair: Any, case: Build) -> None:
    """The published line is cited only where it is the one used."""
    rows = pair("single_hop", [140], [150])
    line = published_value("CLEARANCE_LSI_GRINDEM2020")

    assert line in only(hop_symmetry(case(*rows))).evidence
    assert line in only(hop_symmetry(case(*rows), threshold_pct=90.0)).evidence
    assert line not in only(hop_symmetry(case(*rows), threshold_pct=95.0)).evidence
    assert line not in only(hop_symmetry(case(*rows), operator=">")).evidence
