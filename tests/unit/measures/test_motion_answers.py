"""Motion, effusion and girth of a case: pairs, words, error, what is missing and what is left out."""

from __future__ import annotations

import datetime as dt

import pytest

from kneecase.errors import InputError
from kneecase.evidence import PublishedValue
from kneecase.measures import effusion_course, effusion_word, girth_differences, motion_deficits
from kneecase.record import Limit

KB = {"tester": "KB", "device": "inclinometer", "motion": "passive", "timing": "before", "position": "supine"}


def found(answer, label):
    """The one finding of this label."""
    (finding,) = [f for f in answer.findings if f.label == label]
    return finding


def both_knees(reading, extension=(4, -3), flexion=(112, 144), day=42, **more):
    """Extension and flexion of the operated and the other knee on one day."""
    how = KB | more
    return [
        reading("knee_extension", "left", extension[0], day, **how),
        reading("knee_extension", "right", extension[1], day, **how),
        reading("knee_flexion", "left", flexion[0], day, **how),
        reading("knee_flexion", "right", flexion[1], day, **how),
    ]


def test_deficits_with_error(case, reading):
    """Both deficits against the other knee's own motion, with the band of the same tester and device."""
    answer = motion_deficits(case(*both_knees(reading)))
    extension = found(answer, "extension deficit, passive, before treatment, supine")
    flexion = found(answer, "flexion deficit, passive, before treatment, supine")

    assert (extension.value, flexion.value) == (7, 32)
    assert extension.high - extension.value == pytest.approx(1.6448536 * 3.5 / 1.959964, abs=1e-5)
    assert flexion.value - flexion.low == pytest.approx(1.6448536 * 5.0 / 1.959964, abs=1e-5)
    assert extension.words.startswith("operated knee lacks 4°, other hyperextends 3°: 7° less extension")
    assert "same tester, same device" in extension.error
    assert answer.left_out == ()
    assert len(answer.used) == 4


def test_arc_grade_and_notation(case, reading):
    """Arc, both knees in neutral-zero notation, and the grade with its rule."""
    answer = motion_deficits(case(*both_knees(reading)))
    arc = found(answer, "arc of motion, passive, before treatment, supine")
    grade = found(answer, "passive motion grade, passive, before treatment, supine")

    assert arc.value == 108
    assert arc.words == "0-4-112 (lacks 4°); other knee 3-0-144"
    assert grade.quantity() == "D"
    assert "extension C, flexion D" in grade.words
    assert "own rule" in grade.formula


def test_within_error_is_cannot_tell(case, reading):
    """A small deficit is not called none: it cannot be told from none."""
    answer = motion_deficits(case(*both_knees(reading, extension=(0, -3), flexion=(141, 144))))

    assert "cannot be told from none" in answer.findings[0].words
    assert "cannot be told from none" in answer.findings[1].words


def test_more_motion_and_no_difference(case, reading):
    """More motion than the other knee is said so; equal readings are no difference read."""
    answer = motion_deficits(case(*both_knees(reading, extension=(-8, 0), flexion=(144, 144))))

    assert "hyperextends 8°, other is straight: 8° more extension" in answer.findings[0].words
    assert answer.findings[1].words.endswith("no difference read")


def test_two_testers_need_more(case, reading):
    """Another tester for the other knee takes the widest published error."""
    rows = both_knees(reading)
    rows[1] = reading(
        "knee_extension", "right", -3, **(KB | {"tester": "MO", "device": "long-arm goniometer"})
    )
    finding = motion_deficits(case(*rows)).findings[0]

    assert "different or unnamed testers" in finding.error
    assert "10.4°" in finding.words


def test_only_the_operated_knee(case, reading):
    """Without the other knee the deficit is unknown, asks for it, and norms stand beside."""
    answer = motion_deficits(case(reading("knee_flexion", "left", 112, **KB)))
    finding = answer.findings[0]

    assert finding.value is None
    assert finding.quantity() == "unknown"
    assert "measure it too" in finding.words
    labels = [f.label for f in answer.findings]
    assert "extension deficit" in labels
    assert any(label.startswith("for comparison, normal passive knee flexion") for label in labels)
    assert not any("grade" in label for label in labels)


def test_pre_operative_reference(case, reading):
    """A bare pre-operative reference of the other knee may serve, and what it does not say is said."""
    answer = motion_deficits(
        case(
            *both_knees(reading)[:3],
            reading("knee_flexion", "right", 144, -20),
        )
    )
    flexion = found(answer, "flexion deficit, passive, before treatment, supine")
    grade = found(answer, "passive motion grade, passive, before treatment, supine")

    assert flexion.value == 32
    assert "pre-operative reference of 2026-02-10" in flexion.cautions[0]
    assert "does not say whether the reading was active or passive" in flexion.cautions[0]
    assert flexion.cautions[0] in grade.cautions


def test_a_bare_reading_after_surgery_does_not_serve(case, reading):
    """After surgery a reading of the other knee that does not say active or passive is not paired."""
    answer = motion_deficits(
        case(reading("knee_flexion", "left", 112, **KB), reading("knee_flexion", "right", 144, 42))
    )

    assert answer.findings[0].value is None


def test_pre_operative_reference_of_the_same_kind(case, reading):
    """A passive pre-operative reference of the other knee gives a deficit, with its date in the caution."""
    answer = motion_deficits(
        case(
            reading("knee_flexion", "left", 112, **KB),
            reading("knee_flexion", "right", 144, -20, motion="passive"),
        )
    )
    finding = answer.findings[0]

    assert finding.value == 32
    assert "pre-operative reference of 2026-02-10" in finding.cautions[0]
    assert "position of one of the two was not recorded" in finding.cautions[0]
    assert "17.6°" in finding.words


def test_other_knee_of_another_day(case, reading):
    """The other knee of the nearest day serves and its date is said; the rest is left out."""
    rows = [
        reading("knee_flexion", "left", 112, 42, **KB),
        reading("knee_flexion", "right", 144, 10, **KB),
        reading("knee_flexion", "right", 146, 38, **KB),
    ]
    answer = motion_deficits(case(*rows))

    assert answer.findings[0].value == 34
    assert "2026-04-09, not on the same day" in answer.findings[0].cautions[0]
    assert [x.reading.value for x in answer.left_out] == [144]
    assert "nearer in time" in answer.left_out[0].reason


def test_before_and_after_are_not_mixed(case, reading):
    """Readings before and after treatment make two findings, each with its own other knee."""
    rows = [
        reading("knee_flexion", "left", 112, **KB),
        reading("knee_flexion", "left", 120, **(KB | {"timing": "after"})),
        reading("knee_flexion", "right", 144, **KB),
    ]
    answer = motion_deficits(case(*rows))

    assert found(answer, "flexion deficit, passive, before treatment, supine").value == 32
    assert found(answer, "flexion deficit, passive, after treatment, supine").value is None


def test_active_and_passive_are_not_mixed(case, reading):
    """Active motion is compared with active motion only, and has no passive grade."""
    rows = both_knees(reading) + both_knees(reading, extension=(9, -1), flexion=(104, 140), motion="active")
    answer = motion_deficits(case(*rows))

    assert found(answer, "flexion deficit, active, before treatment, supine").value == 36
    assert found(answer, "extension deficit, active, before treatment, supine").value == 10
    assert len([f for f in answer.findings if "grade" in f.label]) == 1


def test_latest_day_counts(case, reading):
    """The latest day of each kind is used; older readings are left out, and an old one is said to be old."""
    rows = both_knees(reading, day=14) + both_knees(reading, flexion=(118, 144), day=42)
    answer = motion_deficits(case(*rows))
    later = motion_deficits(case(*rows, reading("effusion", "left", 1, 50)))

    assert found(answer, "flexion deficit, passive, before treatment, supine").value == 26
    assert {x.reason for x in answer.left_out} == {
        "older than the latest reading of its kind",
        "the other knee: another reading of it is nearer in time and condition",
    }
    assert answer.cautions == ()
    assert "Readings of 2026-04-13 are used" in later.cautions[-1]


def test_on_looks_back(case, reading):
    """On an earlier day nothing later is known."""
    rows = both_knees(reading, day=14) + both_knees(reading, flexion=(118, 144), day=42)
    answer = motion_deficits(case(*rows), on=dt.date(2026, 3, 20))

    assert found(answer, "flexion deficit, passive, before treatment, supine").value == 32
    assert answer.banner.date == dt.date(2026, 3, 20)


def test_several_readings_of_one_day(case, reading):
    """Readings of one kind on one day are meant, lost ones and reasons for none left out."""
    rows = [
        *both_knees(reading),
        reading("knee_flexion", "left", 116, **KB),
        reading("knee_flexion", "left", 60, status="lost", **KB),
        reading("knee_flexion", "left", None, missing="declined", **KB),
        reading("knee_flexion", "left", 100, status="practice", **KB),
    ]
    answer = motion_deficits(case(*rows))

    assert found(answer, "flexion deficit, passive, before treatment, supine").value == 30
    assert sorted(x.reason for x in answer.left_out) == [
        "lost trial: kept, not scored",
        "no number: declined",
        "practice trial: kept, not scored",
    ]


def test_operated_knee_before_surgery_is_reference_only(case, reading):
    """A pre-operative reading of the operated knee is no present motion."""
    answer = motion_deficits(case(reading("knee_flexion", "left", 120, -20, **KB)))

    assert answer.used == ()
    assert answer.left_out[0].reason == "the operated knee before surgery: reference only"
    assert answer.summary == "Extension deficit: unknown; flexion deficit: unknown."


def test_surgeons_limit(case, reading):
    """While flexion is limited: share of the allowed arc, and no talk of stiffness; beyond it, ask."""
    limit = Limit(kind="flexion", start=dt.date(2026, 3, 2), value=90.0, unit="deg")
    below = motion_deficits(case(*both_knees(reading, flexion=(77, 144)), limits=(limit,)))
    beyond = motion_deficits(case(*both_knees(reading, flexion=(99, 144)), limits=(limit,)))
    label = "share of the allowed arc, passive, before treatment, supine"

    assert found(below, label).value == pytest.approx(100 * 73 / 93)
    assert found(below, label).cautions == ()
    assert "beyond the surgeon's limit of 90°" in found(beyond, label).cautions[0]
    flexion = found(below, "flexion deficit, passive, before treatment, supine")
    grade = found(below, "passive motion grade, passive, before treatment, supine")
    assert "is not stiffness" in flexion.cautions[0]
    assert "is not stiffness" in grade.cautions[0]
    assert found(below, "extension deficit, passive, before treatment, supine").cautions == ()


def test_limit_of_extension_bounds_the_arc(case, reading):
    """With extension limited too, the allowed arc starts there; without the other knee, at straight."""
    limits = (
        Limit(kind="flexion", start=dt.date(2026, 3, 2), value=90.0, unit="deg"),
        Limit(kind="extension", start=dt.date(2026, 3, 2), value=10.0, unit="deg"),
    )
    both = motion_deficits(case(*both_knees(reading, extension=(10, -3), flexion=(70, 144)), limits=limits))
    alone = motion_deficits(
        case(
            reading("knee_extension", "left", 10, **KB),
            reading("knee_flexion", "left", 70, **KB),
            limits=limits[:1],
        )
    )
    label = "share of the allowed arc, passive, before treatment, supine"

    assert found(both, label).value == pytest.approx(75)
    assert found(alone, label).value == pytest.approx(100 * 60 / 90)


def test_other_knee_not_to_be_trusted(case, reading):
    """An injured other knee: deficits are shown, the doubt is said, and norms stand beside."""
    answer = motion_deficits(case(*both_knees(reading), surgery={"earlier": {"right": ("meniscus tear",)}}))

    assert found(answer, "flexion deficit, passive, before treatment, supine").value == 32
    assert "meniscus tear" in answer.cautions[0]
    norms = [f for f in answer.findings if f.label.startswith("for comparison")]
    assert [f.value for f in norms] == [141.9, 132.0, 1.6]
    assert all("unverified" in f.words for f in norms)


def test_no_norm_without_age(case, reading):
    """Where the age is not recorded no norm is guessed."""
    answer = motion_deficits(case(reading("knee_flexion", "left", 112, **KB), athlete={"age_years": None}))

    assert not any(f.label.startswith("for comparison") for f in answer.findings)


def test_heel_height(case, reading):
    """Heel height becomes degrees with the athlete's own shank; without it only the rules are told."""
    row = reading("heel_height_difference", None, 3.0)
    known = motion_deficits(case(row, athlete={"shank_length_cm": {"left": 45.0}}))
    other = motion_deficits(case(row, athlete={"shank_length_cm": {"right": 45.0}}))
    unknown = motion_deficits(case(row))
    label = "extension deficit by heel height"

    assert found(known, label).value == pytest.approx(3.82, abs=0.005)
    assert found(other, label).value == found(known, label).value
    assert found(unknown, label).value is None
    assert "3° or 3.6°" in found(unknown, label).words


def test_lag(case, reading):
    """The lag stands beside the other leg's, since healthy knees lag too."""
    own = reading("quadriceps_lag", "left", 6, position="sitting")
    both = motion_deficits(case(own, reading("quadriceps_lag", "right", 2, position="sitting")))
    less = motion_deficits(case(own, reading("quadriceps_lag", "right", 8, position="sitting")))

    assert found(both, "quadriceps lag, sitting").words == "other knee 2°: 4° more than the other"
    assert found(less, "quadriceps lag, sitting").words == "other knee 8°: 2° less than the other"
    assert "read both" in found(motion_deficits(case(own)), "quadriceps lag, sitting").words


def test_explain_carries_sources_and_flags(case, reading):
    """Every number can be asked why: inputs, formula, error, source, and what is unverified."""
    text = str(motion_deficits(case(*both_knees(reading))).explain())

    for words in ("Input: 2026-04-13, left, lacks 4°", "Formula:", "common practice, no source", "Lenssen"):
        assert words in text
    assert "read in the abstract" in text


def test_effusion_course(case, reading):
    """The grade now, its change since last and first; one grade between testers cannot be told."""
    rows = [
        reading("effusion", "left", 3, 20, tester="A"),
        reading("effusion", "left", 2, 30, tester="A"),
        reading("effusion", "left", 1, 42, tester="B"),
        reading("effusion", "right", 0, 42, tester="B"),
    ]
    answer = effusion_course(case(*rows))
    now, last, first = answer.findings

    assert now.quantity() == "trace"
    assert "2+, 1+, trace" in now.words
    assert (last.value, last.quantity()) == (-1, "1 grade less")
    assert "cannot tell" in last.words
    assert (first.value, first.quantity()) == (-2, "2 grades less")
    assert "by more than testers usually differ" in first.words
    assert answer.summary == "Effusion now: trace; change since the last reading: 1 grade less."
    assert [x.reason for x in answer.left_out] == ["the other knee"]


@pytest.mark.parametrize(
    ("grades", "testers", "word"),
    [
        ((1, 2), ("A", "a "), "more fluid by the same tester"),
        ((2, 2), ("A", "B"), "no change of grade"),
        ((1, 3), ("", ""), "more fluid, by more than testers usually differ"),
        ((1, 2), ("", ""), "cannot tell"),
    ],
)
def test_effusion_change_in_words(case, reading, grades, testers, word):
    """Same tester, no change, a large change, and an unnamed tester are told apart."""
    rows = [
        reading("effusion", "left", grade, day, tester=tester)
        for grade, day, tester in zip(grades, (30, 42), testers, strict=True)
    ]

    assert word in effusion_course(case(*rows)).findings[1].words


def test_effusion_of_one_day_and_before_surgery(case, reading):
    """Of several grades on a day the largest counts; one before surgery is reference only."""
    rows = [
        reading("effusion", "left", 3, -5),
        reading("effusion", "left", 1, 42),
        reading("effusion", "left", 2, 42),
        reading("effusion", "left", None, 42, missing="declined"),
    ]
    answer = effusion_course(case(*rows), on=dt.date(2026, 4, 20))

    assert answer.findings[0].quantity() == "1+"
    assert "graded once" in answer.findings[0].words
    assert "2026-04-13" in answer.findings[0].cautions[0]
    assert sorted(x.reason for x in answer.left_out) == [
        "a larger grade of the same day is used",
        "before surgery: reference only",
        "no number: declined",
    ]


def test_effusion_before_and_after(case, reading):
    """Grades before and after treatment are two courses."""
    rows = [reading("effusion", "left", g, 42, timing=t) for g, t in ((1, "before"), (2, "after"))]
    answer = effusion_course(case(*rows))

    assert [f.label for f in answer.findings] == [
        "effusion now, before treatment",
        "effusion now, after treatment",
    ]


def test_effusion_unknown(case):
    """No grade is unknown, never zero."""
    answer = effusion_course(case())

    assert answer.findings[0].value is None
    assert "unknown" in answer.summary


def test_grades_are_places():
    """An averaged or impossible grade is refused."""
    with pytest.raises(InputError, match="Was it averaged"):
        effusion_word(1.5)
    with pytest.raises(InputError, match="grade must lie"):
        effusion_word(5)


def test_girth(case, reading):
    """Knee girth with its unverified error; thigh without one; another mark is not compared."""
    rows = [
        reading("knee_girth", "left", 39.5, tester="A"),
        reading("knee_girth", "right", 38.0, tester="A"),
        reading("thigh_girth", "left", 50.0, position="15 cm above"),
        reading("thigh_girth", "right", 52.0, position="15 cm above"),
        reading("calf_girth", "left", 36.0, position="10 cm below"),
        reading("calf_girth", "right", 36.0, position="12 cm below"),
        reading("knee_girth", "left", 41.0, 10, tester="A"),
    ]
    answer = girth_differences(case(*rows))
    knee, thigh, calf = answer.findings

    assert knee.value == pytest.approx(1.5)
    assert knee.high - knee.value == pytest.approx(1.6448536 * 1.0 / 1.959964, abs=1e-5)
    assert "more than the 1 cm" in knee.words
    assert "unverified" in knee.error
    assert thigh.value == pytest.approx(-2.0)
    assert thigh.low is None
    assert "2 cm thinner; whether that is more than error is not known" in thigh.words
    assert calf.value is None
    assert len(answer.left_out) == 2


@pytest.mark.parametrize(
    ("own", "word"), [(38.4, "within measurement error"), (38.0, "both limbs read the same")]
)
def test_girth_in_words(case, reading, own, word):
    """A difference inside the error is not called one."""
    rows = [reading("knee_girth", side, v, tester="A") for side, v in (("left", own), ("right", 38.0))]

    assert word in girth_differences(case(*rows)).summary


def test_no_girth(case):
    """Nothing recorded, nothing said."""
    assert girth_differences(case()).summary == "No girth of the operated limb is recorded since surgery."


def test_levels_are_checked(case, reading):
    """A level in percent is refused."""
    for answer in (motion_deficits, girth_differences):
        with pytest.raises(InputError, match="level must"):
            answer(
                case(
                    *both_knees(reading),
                    *(reading("knee_girth", side, 38.0) for side in ("left", "right")),
                ),
                level=90,
            )


def test_pages_escape_what_people_typed(case, reading):
    """Whatever stands in a tester's name is shown as text."""
    page = motion_deficits(case(*both_knees(reading, tester="<b>KB</b>")))._repr_html_()

    assert "<b>KB</b>" not in page
    assert "&lt;b&gt;KB&lt;/b&gt;" in page


def test_evidence_is_published(case, reading):
    """Every value an answer rests on is a published value with its source."""
    for value in motion_deficits(case(*both_knees(reading))).evidence:
        assert isinstance(value, PublishedValue)
        assert value.source.key
