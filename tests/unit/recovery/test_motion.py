"""Motion gain: the whole answer for a recorded case."""

from __future__ import annotations

import dataclasses
import datetime as dt
from collections.abc import Callable
from typing import Any

import pytest

from kneecase.errors import InputError
from kneecase.record import Case, Event, Limit, Reading
from kneecase.recovery import MotionGain, gain_rate, motion_gain

Knee = Callable[..., Case]
Taken = Callable[..., Reading]
After = Callable[[float], dt.date]

RISING = {1: 62, 2: 71, 3: 80, 4: 88, 5: 95, 6: 103}
STUCK = {1: 62, 2: 75, 3: 88, 4: 92, 5: 92, 6: 93, 7: 92, 8: 93}


def labels(answer: MotionGain) -> list[str]:
    """The labels of the findings."""
    return [finding.label for finding in answer.findings]


def finding(answer: MotionGain, start: str) -> Any:
    """The finding whose label starts so."""
    return next(f for f in answer.findings if f.label.startswith(start))


def caution(answer: MotionGain, start: str) -> str:
    """The caution that starts so, or nothing."""
    return next((text for text in answer.cautions if text.startswith(start)), "")


def test_a_rising_knee(knee: Knee) -> None:
    """The robust line leads with its interval, least squares stands beside it, both as the kernel gives."""
    answer = motion_gain(knee(RISING))
    sem = answer.precision.sem
    robust = gain_rate(list(RISING), list(RISING.values()), error_sd=sem)

    assert answer.rate == answer.robust
    assert answer.rate.deg_per_week == robust.deg_per_week
    assert (answer.rate.low, answer.rate.high) == (robust.low, robust.high)
    assert labels(answer)[:2] == ["gain rate, robust line", "gain rate, least squares"]
    assert answer.findings[0].value == answer.rate.deg_per_week
    assert answer.findings[0].evidence[0].name == "MOTION_FLEXION_SAME_TESTER_MDC95_COMMON_PRACTICE"
    assert "gains 8° a week: 7.5° to 9° a week" in answer.summary
    assert "standstill" not in answer.summary
    assert "straight line would promise too early a day" in answer.why_no_date


def test_a_stuck_knee_is_said_first(knee: Knee, taken: Taken) -> None:
    """A knee that rose and stopped: the latest weeks say 'no gain shown', the test says plateau."""
    rows = [taken(w, v) for w, v in STUCK.items()]
    answer = motion_gain(knee([*rows, taken(8, 142, side="right")]))

    assert answer.rate.shown == "gain"
    assert answer.recent.shown == "no gain"
    assert "no gain shown, at most" in answer.summary
    assert answer.held.verdict == "plateau"
    assert finding(answer, "plateau test").verdict == ""
    assert "49° short of the target" in finding(answer, "plateau test").words
    assert "No date for a target is given: a standstill is not excluded." in answer.summary
    assert answer.cautions[0].startswith("No gain shown is a finding")
    assert "1.45%" in answer.cautions[0]
    assert "With a hamstring tendon graft 1.9% were stiff" in answer.cautions[0]
    assert "added 1° (95 % interval 0 to 2)" in answer.cautions[1]


def test_the_cautions_have_their_sources(knee: Knee) -> None:
    """Every number of the stuck-knee cautions can be asked for its source."""
    names = {value.name for value in motion_gain(knee(STUCK)).evidence}

    assert {
        "COURSE_STIFFNESS_PROCEDURE_HOPPER2024",
        "COURSE_STIFFNESS_HAMSTRING_OUWELEEN2021",
        "COURSE_STRETCH_GAIN_COCHRANE2017",
    } <= names


def test_a_knee_from_85_to_135_in_two_weeks(knee: Knee) -> None:
    """25° a week is a gain, and position, warm-up and manipulation are asked."""
    answer = motion_gain(knee({3: 85, 5: 135}))
    text = caution(answer, "Fast:")

    assert answer.rate.deg_per_week == 25.0
    assert answer.rate.shown == "gain"
    assert answer.since_last.verdict == "real change"
    assert "not measurement noise" in text
    assert "position (supine)" in text
    assert "warm-up done: no visit recorded on these days" in text
    assert "manipulation (none recorded in this window)" in text
    assert "COURSE_FLEXION_FAST_PRACTICE" in {v.name for v in answer.evidence}


def test_a_fast_gain_after_a_manipulation_names_it(knee: Knee, after: After) -> None:
    """A recorded manipulation stands in the question."""
    push = Event(date=after(2.5), kind="manipulation")
    answer = motion_gain(knee({3: 85, 5: 135}, events=[push]))

    assert "manipulation (recorded on 2026-01-23)" in caution(answer, "Fast:")


def test_an_ordinary_gain_asks_nothing(knee: Knee) -> None:
    """8° a week is not fast, and 40° a week of extension is not flexion."""
    assert caution(motion_gain(knee(RISING)), "Fast:") == ""
    quick = knee({1: 40, 2: 5}, measure="knee_extension")
    assert caution(motion_gain(quick, "knee_extension"), "Fast:") == ""


def test_two_testers_inside_their_error_cannot_tell(knee: Knee, taken: Taken) -> None:
    """A 9° change between two testers is 'cannot tell', never 'no change'; one tester's 9° is real."""
    rows = [taken(1, 70), taken(2, 79)]
    other = dataclasses.replace(rows[1], tester="ZW", id="other")
    alone, pair = motion_gain(knee(rows)), motion_gain(knee([rows[0], other]))

    assert alone.since_last.verdict == "real change"
    assert pair.since_last.verdict == "cannot tell"
    assert "the error of this pair of readings alone can make" in pair.since_last.words()
    assert "no change" not in str(pair)
    assert finding(pair, "change since the last visit").verdict == "too close to call"
    assert caution(pair, "Readings by different or unnamed testers")


def test_an_unnamed_tester_counts_as_another(knee: Knee, taken: Taken) -> None:
    """What is not recorded is taken as the worse case."""
    answer = motion_gain(knee([taken(1, 70, tester=""), taken(2, 79, tester="")]))

    assert answer.since_last.mdc == pytest.approx(17.6)


def test_extension_gains_by_losing_its_deficit(knee: Knee) -> None:
    """The deficit falls, the gain is positive, and angles are in words."""
    answer = motion_gain(knee({1: 12, 2: 9, 3: 7, 4: 5, 5: 2}, measure="knee_extension"), "knee_extension")

    assert answer.rate.deg_per_week == pytest.approx(2.375, abs=0.2)
    assert answer.since_first.words().startswith("gained 10°")
    assert "lacks 12°" in answer.findings[0].inputs[0]
    assert "a gain is positive" in answer.findings[0].cautions[0]


@pytest.mark.parametrize("rows", [{}, {2: 90}])
def test_no_rate(rows: dict[float, float], knee: Knee) -> None:
    """Nothing or one reading: no rate, said in words, no change, no plateau."""
    answer = motion_gain(knee(rows))

    assert answer.rate.deg_per_week is None
    assert answer.findings[0].value is None
    assert answer.findings[0].words.startswith("no rate: ")
    assert answer.since_last is None
    assert "There is no rate".lower() in answer.why_no_date.lower()
    assert "no date" not in answer.summary.lower()


def test_two_trials_of_one_day_have_no_rate(knee: Knee, taken: Taken) -> None:
    """All on one day: no rate, and the day's mean is said."""
    answer = motion_gain(knee([taken(2, 90, trial=1), taken(2, 94, trial=2)]))

    assert answer.rate.words() == "no rate: one day only"
    assert caution(answer, "1 day with several readings")
    assert answer.series.degrees == (92.0,)


def test_three_days_show_every_line(knee: Knee) -> None:
    """The known error leads, the robust line stands without an interval, least squares with its own."""
    answer = motion_gain(knee({1: 80, 2: 91, 3: 98}))

    assert labels(answer)[:3] == [
        "gain rate, least squares with the known error",
        "gain rate, robust line",
        "gain rate, least squares",
    ]
    assert answer.robust.low is None
    assert answer.findings[0].low is not None


def test_after_a_manipulation_only_later_days_count(knee: Knee, after: After) -> None:
    """The window opens with the latest break; earlier readings are left out; since= overrides."""
    push = Event(date=after(6), kind="manipulation")
    case = knee({**STUCK, 6.5: 118, 7: 119, 8: 122}, events=[push])
    answer, whole = motion_gain(case), motion_gain(case, since="surgery")

    assert answer.series.window.opened_by == "manipulation"
    assert len(answer.series.days) == 3
    assert any("on the day of the manipulation" in x.reason for x in answer.left_out)
    assert any(x.reason.startswith("before the manipulation") for x in answer.left_out)
    assert len(whole.series.days) == 9
    assert caution(whole, "The window spans the manipulation of 2026-02-16")


def test_any_window(knee: Knee, after: After) -> None:
    """A first and a last day cut the window, and later readings are not known yet."""
    answer = motion_gain(knee(STUCK), since=after(2), on=after(5))

    assert answer.series.dates == tuple(after(w) for w in (2, 3, 4, 5))
    assert answer.banner.date == after(5)
    assert {x.reason for x in answer.left_out} == {"before 2026-01-19"}


def test_a_limit_in_force_suspends_the_plateau(knee: Knee, taken: Taken, after: After) -> None:
    """Flexion capped by the surgeon is not read as stiffness; extension is not touched by it."""
    limit = Limit(kind="flexion", start=after(0), value=95, unit="deg")
    rows = [taken(w, v) for w, v in STUCK.items()]
    stiff = [taken(w, 9, measure="knee_extension") for w in STUCK]
    case = knee([*rows, *stiff, taken(8, 142, side="right")], limits=[limit])
    answer = motion_gain(case)

    assert answer.held is None
    assert answer.cautions[0].startswith("Surgeon's limit in force: flexion up to 95°")
    assert caution(answer, "No gain shown") == ""
    assert "no gain shown" in answer.summary
    assert caution(motion_gain(case, "knee_extension"), "No gain shown")


def test_a_lifted_limit_is_still_said(knee: Knee, after: After) -> None:
    """A limit that held during the first readings is named; the latest weeks are tested."""
    early = Limit(kind="flexion", start=after(0), value=90, unit="deg", until=after(2))
    late = Limit(kind="flexion", start=after(0), value=90, unit="deg", until=after(6.5))
    answer, held = motion_gain(knee(STUCK, limits=[early])), motion_gain(knee(STUCK, limits=[late]))

    assert answer.held is not None
    assert "whole window includes those weeks" in caution(answer, "A surgeon's limit held during part")
    assert held.held is None
    assert "no plateau is tested" in caution(held, "A surgeon's limit held during part")


def test_observed_and_target_are_apart(knee: Knee) -> None:
    """At week 6 the observed medians and the target lines stand under different labels."""
    answer = motion_gain(knee({**RISING, 6: 110}))
    observed = [f for f in answer.findings if f.label.startswith("observed: ")]
    targets = [f for f in answer.findings if f.label.startswith("target, not expectation: ")]

    assert [f.value for f in observed] == [110, 88]
    assert "0° above this median; half of those knees lay below it" in observed[0].words
    assert [(f.value, f.low, f.high) for f in targets] == [(135, 135, 140)]
    assert "that alone is not abnormal" in targets[0].words
    assert "unverified: read second-hand" in str(answer.explain())


def test_110_at_week_6_is_not_flagged(knee: Knee) -> None:
    """110° at six weeks meets no gate, and nothing calls it abnormal but to deny it."""
    answer = motion_gain(knee({1: 60, 2: 75, 3: 88, 4: 97, 5: 104, 6: 110}))
    text = str(answer)

    assert not any(label.startswith("odds ratio") for label in labels(answer))
    assert "abnormal" not in text.replace("that alone is not abnormal", "")
    assert all(f.verdict in ("", "not met", "unknown", "too close to call") for f in answer.findings)


@pytest.mark.parametrize(("flexion", "flagged"), [(89, True), (90, False)])
def test_under_90_at_week_6(flexion: float, flagged: bool, knee: Knee) -> None:
    """Below 90° at six weeks the published odds are shown and the surgeon is to be told; at 90° not."""
    answer = motion_gain(knee({4: 80, 5: 85, 6: flexion}))
    odds = [f for f in answer.findings if f.label.startswith("odds ratio")]

    assert bool(odds) is flagged
    if odds:
        assert (odds[0].value, odds[0].low, odds[0].high) == (14.7, 5.4, 39.8)
        assert "tell the surgeon" in odds[0].words


def test_extension_at_weeks_3_and_6(knee: Knee) -> None:
    """The shares of ordinary knees with a deficit, and the gate of 5° at six weeks."""
    early = motion_gain(knee({1: 12, 2: 9, 3: 6}, measure="knee_extension"), "knee_extension")
    late = motion_gain(knee({4: 9, 5: 7, 6: 5}, measure="knee_extension"), "knee_extension")

    assert [f.value for f in early.findings if f.label.startswith("observed")] == [22, 0.639]
    assert [f.value for f in late.findings if f.label.startswith("observed")] == [7]
    assert finding(late, "odds ratio").value == 4.7
    assert "this knee: lacks 5°" in finding(late, "odds ratio").words


@pytest.mark.parametrize(("week", "flagged"), [(5, False), (6, True), (9, True), (20, True)])
def test_the_line_of_six_weeks_holds_from_day_42_on(week: float, flagged: bool, knee: Knee) -> None:
    """82° is told to the surgeon at six weeks and at any time after, however fast it rises; not before."""
    answer = motion_gain(knee({week - 2: 66, week - 1: 74, week: 82}))
    odds = [f for f in answer.findings if f.label.startswith("odds ratio")]

    assert bool(odds) is flagged
    assert all("was published for six weeks" in f.words for f in odds)


def test_a_surgeons_limit_of_flexion_silences_the_line_of_flexion(knee: Knee) -> None:
    """While flexion is capped, 85° says nothing about stiffness."""
    case = knee({5: 80, 6: 84, 7: 85})
    limit = Limit(kind="flexion", start=case.surgery.date, value=90, unit="deg")

    assert any(f.label.startswith("odds ratio") for f in motion_gain(case).findings)
    capped = motion_gain(dataclasses.replace(case, limits=(limit,)))
    assert not any(f.label.startswith("odds ratio") for f in capped.findings)


@pytest.mark.parametrize(("other", "flagged"), [(-6, True), (-1, False)])
def test_extension_is_also_held_against_the_other_knee(
    other: float, flagged: bool, knee: Knee, taken: Taken
) -> None:
    """Lacking 3° beside a knee that hyperextends 6° is 9° short, though 3° is under the line."""
    extension = {"measure": "knee_extension"}
    rows = [taken(w, v, **extension) for w, v in {5: 5, 6: 4, 7: 3}.items()]
    answer = motion_gain(knee([*rows, taken(7, other, side="right", **extension)]), "knee_extension")
    odds = [f for f in answer.findings if f.label.startswith("odds ratio")]

    assert bool(odds) is flagged
    assert all("9° short of the other knee" in f.words for f in odds)
    assert all("our own reading" in f.cautions[1] for f in odds)


def test_the_common_target_at_five_weeks(knee: Knee, taken: Taken) -> None:
    """About 120° at five weeks is a target of common practice, and the other knee gives another."""
    rows = [taken(w, v) for w, v in {3: 90, 4: 105, 5: 118}.items()]
    answer = motion_gain(knee([*rows, taken(5, 141, side="right")]))
    common = finding(answer, "target, not expectation: common target")

    assert common.value == 120
    assert "2° short of this target" in common.words
    assert "common practice, no source" in str(answer.explain())
    assert finding(answer, "target, not expectation: difference").value == 23


def test_no_comparison_after_a_second_start(knee: Knee, after: After) -> None:
    """Weeks after surgery say little once a manipulation restarted the course."""
    push = Event(date=after(4), kind="manipulation")
    answer = motion_gain(knee(RISING, events=[push]))

    assert not [x for x in labels(answer) if x.startswith(("observed", "target"))]


def test_three_months(knee: Knee) -> None:
    """The share with normal flexion by three months, at week 12."""
    answer = motion_gain(knee({10: 120, 11: 124, 12: 126}))

    assert [f.value for f in answer.findings if f.label.startswith("observed")] == [77]


def test_a_target_may_be_given(knee: Knee, taken: Taken) -> None:
    """A given target replaces the other knee; one that is reached ends the stuck caution."""
    rows = [taken(w, v) for w, v in STUCK.items()]
    case = knee([*rows, taken(8, 142, side="right")])
    answer = motion_gain(case, target_deg=93)

    assert answer.held.verdict == "target reached"
    assert caution(answer, "No gain shown") == ""
    assert "Plateau test: the target is reached" in answer.summary


def test_full_motion_is_the_published_grade(knee: Knee, taken: Taken) -> None:
    """Flexion 5° short of the other knee counts as full, 6° does not."""
    rows = [taken(w, v) for w, v in {1: 60, 4: 120, 6: 135, 8: 136, 9: 135, 10: 136}.items()]

    assert motion_gain(knee([*rows, taken(10, 141, side="right")])).held.verdict == "target reached"
    near = motion_gain(knee([*rows, taken(10, 142, side="right", tester="ZW")]))
    assert near.held.verdict == "near the target"


def test_an_untrusted_other_knee_cannot_end_the_test(knee: Knee, taken: Taken) -> None:
    """A knee as stiff as a previously injured one has not for that reached its target."""
    rows = [taken(w, v) for w, v in STUCK.items()]
    answer = motion_gain(knee([*rows, taken(8, 95, side="right")], earlier={"right": ("meniscus 2021",)}))

    assert answer.held.verdict == "no target"
    assert "not a trustworthy reference" in caution(answer, "As to the target")
    assert caution(answer, "No gain shown")


def test_other_ways_are_offered(knee: Knee, taken: Taken) -> None:
    """Active readings beside passive ones are left out, named, and had by asking."""
    rows = [taken(w, v) for w, v in RISING.items()]
    active = [taken(w, v - 6, motion="active") for w, v in RISING.items()]
    answer = motion_gain(knee([*rows, *active]))

    assert "active, supine, before treatment" in caution(answer, "Also recorded in this window")
    assert motion_gain(knee([*rows, *active]), motion="active").series.degrees[0] == 56.0


def test_what_was_not_recorded_is_said(knee: Knee, taken: Taken) -> None:
    """Blank motion, position and timing are named."""
    answer = motion_gain(knee([taken(w, v, motion="", position="", timing="") for w, v in RISING.items()]))

    assert caution(answer, "Not recorded: whether active or passive, the position, whether before or after")


def test_events_inside_the_window_are_said(knee: Knee, after: After) -> None:
    """A change of programme and another event are named without restarting the course."""
    events = [
        Event(date=after(3), kind="change of programme"),
        Event(date=after(4), kind="other", note="three days of fever"),
    ]
    answer = motion_gain(knee(RISING, events=events))

    assert caution(answer, "The programme changed on 2026-01-26")
    assert caution(answer, "Recorded on 2026-02-02: three days of fever.")


def test_a_gap_before_the_latest_weeks_is_not_bridged(knee: Knee) -> None:
    """Where nothing was read four to six weeks before the last day, the latest weeks are fewer."""
    answer = motion_gain(knee({1: 60, 2: 75, 10: 100, 11: 101, 12: 101}))

    assert answer.recent.n == 3
    assert answer.held.verdict == "too early"


def test_a_useful_rate_may_be_given(knee: Knee, taken: Taken) -> None:
    """Another useful rate moves the plateau verdict and then carries no evidence of ours."""
    rows = [taken(w, v) for w, v in RISING.items()]
    case = knee([*rows, taken(6, 142, side="right")])
    strict = motion_gain(case, useful_deg_per_week=30)

    assert motion_gain(case).held.verdict == "no plateau"
    assert strict.held.verdict == "plateau"
    assert "COURSE_FLEXION_USEFUL_GAIN_OURS" not in {v.name for v in strict.evidence}


def test_no_published_error(knee: Knee, monkeypatch: pytest.MonkeyPatch) -> None:
    """Without a published error a change cannot be told from error, and it is said."""
    from kneecase.recovery import findings, progress

    for module in (findings, progress):
        monkeypatch.setattr(module, "precision_of", lambda *_: None)
    answer = motion_gain(knee({1: 80, 2: 91, 3: 98}))
    change = finding(answer, "change since the last visit")

    assert answer.since_last is None
    assert change.value is None
    assert "cannot be told from error" in change.words
    assert finding(answer, "gain rate").error == "none published for these readings"
    assert caution(answer, "No measurement error is published")


def test_outside_the_scope(knee: Knee) -> None:
    """A knee outside the scope gets a sentence and no number."""
    answer = motion_gain(knee(RISING, concomitant=("osteotomy",)))

    assert answer.findings == ()
    assert answer.rate is None
    assert answer.summary == (
        "Outside the scope of kneecase (osteotomy): no gain rate is worked out for this knee."
    )


def test_before_surgery(knee: Knee, after: After) -> None:
    """On a day before surgery the pre-operative course is looked at."""
    answer = motion_gain(knee({-6: 110, -4: 120, -2: 131, 2: 80}), on=after(-1))

    assert answer.rate.deg_per_week == pytest.approx(5.25)
    assert "before surgery" in answer.summary


@pytest.mark.parametrize(
    ("given", "named"),
    [
        ({"measure": "quadriceps_torque"}, "measure must be 'knee_flexion' or 'knee_extension'"),
        ({"since": "manipulation"}, "must be recorded"),
        ({"on": "2026-02-01"}, "calendar date"),
        ({"level": 95}, "level"),
        ({"useful_deg_per_week": -1}, "useful_deg_per_week must be above 0"),
        ({"target_deg": float("nan")}, "target_deg"),
    ],
)
def test_refusals(given: dict[str, Any], named: str, knee: Knee) -> None:
    """What cannot be is named."""
    with pytest.raises(InputError, match=named):
        motion_gain(knee(RISING), **given)


def test_shown_on_a_page_with_everything_escaped(knee: Knee, taken: Taken) -> None:
    """Text of the case never becomes markup."""
    rows = [taken(w, v, position="<b>supine</b>", tester="<script>") for w, v in RISING.items()]
    page = motion_gain(knee(rows))._repr_html_() + motion_gain(knee(rows)).explain()._repr_html_()

    assert "<script>" not in page
    assert "<b>supine" not in page
    assert "&lt;b&gt;supine&lt;/b&gt;" in page
