"""A review answers what the record supports, names what it does not, and nothing else."""

from __future__ import annotations

import dataclasses

import pytest

from kneecase.errors import InputError, Problem
from kneecase.record import Surgery, read_case
from kneecase.report import contents_text, review, review_text, reviewed
from kneecase.report.red_flags import ACTS
from kneecase.report.review import QUESTIONS

FEW = {
    "hop-battery": {"hops", "strength", "go_ahead", "scores"},
    "stiff-knee": {"flexion_gain", "extension_gain"},
}


def test_every_sample_case_is_reviewed(sample_case):
    """Each sample case gives answers with its own banner; the one outside the scope gives none."""
    case = read_case(sample_case)
    found = reviewed(case)
    keys = {section.key for section in found.sections}

    assert tuple(section.answer for section in found.sections) == review(case)
    assert bool(keys) is found.in_scope
    assert FEW.get(sample_case.name, set()) <= keys
    assert all(answer.banner == found.banner for answer in review(case))
    assert len(keys) + len(found.not_measured) + len(found.not_worked_out) in (0, len(QUESTIONS))


def test_an_empty_record_is_all_gaps(make_case):
    """A record without a reading has no answer and names every question as not measured."""
    found = reviewed(make_case())

    assert found.sections == ()
    assert len(found.not_measured) == len(QUESTIONS)
    assert "Not measured: gain of flexion" in review_text(make_case())


def test_one_day_is_no_course(make_case, flexion):
    """A gain takes two days; with one the review says so instead of showing an empty answer."""
    one = reviewed(make_case(readings=(flexion(7, 60),)))
    two = reviewed(make_case(readings=(flexion(7, 60), flexion(14, 70))))

    assert dict(one.not_worked_out)["gain of flexion"].startswith("the operated knee was read on 1 day")
    assert "flexion_gain" not in {section.key for section in one.sections}
    assert "flexion_gain" in {section.key for section in two.sections}


def test_reasons_for_no_reading_are_told(make_case, flexion):
    """'Not measured' carries the recorded reason and its day."""
    unsafe = flexion(7, None, measure="quadriceps_torque", unit="n_m", missing="unsafe")
    found = reviewed(make_case(readings=(unsafe,)))

    assert "strength (unsafe on 2026-01-12)" in found.not_measured


def test_before_surgery_does_not_count(make_case, flexion):
    """A reading from before surgery or of the other knee is a reference, not an answer of today."""
    rows = (flexion(-9, 139), flexion(7, 140, side="right"))

    assert "gain of flexion" in reviewed(make_case(readings=rows)).not_measured


def test_a_refusal_is_shown_not_raised(make_case, flexion, monkeypatch):
    """A calculator's refusal stands in the review in its own words."""

    def refuses(*_, **__):
        raise InputError("flexion_deg must lie between -20 and 170, got 1350.0.")

    monkeypatch.setattr("kneecase.measures.motion_deficits", refuses)
    case = make_case(readings=(flexion(7, 60),))

    assert ("motion against the other knee", "flexion_deg must lie between -20 and 170, got 1350.0.") in (
        reviewed(case).not_worked_out
    )
    assert "Not worked out, motion against the other knee: flexion_deg" in review_text(case)


def test_outside_the_scope_only_flags(make_case, flexion, visit):
    """A knee outside the scope shows its banner, its flags and what is recorded, and no number of ours."""
    surgery = Surgery(date=make_case().surgery.date, side="left", concomitant=("osteotomy",))
    case = make_case(
        surgery=surgery,
        readings=(flexion(7, 60), flexion(14, 70)),
        visits=(visit(7, foot_numb_or_cold="yes"),),
    )
    text = review_text(case)

    assert review(case) == ()
    assert "outside the scope of kneecase: osteotomy" in text
    assert "foot numb, cold or weak: yes" in text
    assert "knee flexion: 2 readings" in text
    assert "a week" not in text


def test_text_shows_the_banner_twice_and_flags_first(make_case, flexion, visit):
    """The banner opens and closes the text; red flags come before any answer."""
    case = make_case(readings=(flexion(7, 60), flexion(14, 70)), visits=(visit(14, fever="yes"),))
    text = review_text(case)
    banner = reviewed(case).banner.line()

    assert text.count(banner) == 2
    assert text.index("RED FLAGS RECORDED") < text.index("Gain of knee flexion")
    assert "The surgeon's orders and local protocol come first." in text


def test_not_asked_is_never_none(make_case, visit):
    """The heading over the red flags tells apart what was answered no and what nobody asked."""
    every = dict.fromkeys(ACTS, "no")

    assert "Red flags: not asked" in review_text(make_case())
    assert "none answered yes, some not asked" in review_text(make_case(visits=(visit(7, fever="no"),)))
    assert "none answered yes\n" in review_text(make_case(visits=(visit(7, **every),)))


def test_warnings_are_listed(make_case, flexion):
    """What was unlikely when the case was read is named in the review and in the summary."""
    doubt = Problem(
        severity="warning", file="measurements.csv", what="165 is unlikely", mend="Check it.", row=4
    )
    case = make_case(readings=(flexion(7, 60),), warnings=(doubt,))

    assert "measurements.csv, row 4: 165 is unlikely. Check it." in review_text(case)
    assert "1 warning; the values are kept as they are:" in contents_text(case)


def test_invented_cases_say_so(make_case):
    """The notice stands exactly where the case itself says that it is invented."""
    made_up = make_case(athlete=dataclasses.replace(make_case().athlete, pseudonym="Rush (Invented)"))

    assert "invented, for teaching" in review_text(made_up)
    assert "invented, for teaching" in contents_text(made_up)
    assert "invented" not in review_text(make_case())


def test_contents_count_what_is_there(make_case, flexion, visit):
    """The summary counts rows, days and reasons."""
    rows = (flexion(7, 60), flexion(14, 70), flexion(21, None, missing="declined"))
    text = contents_text(make_case(readings=rows, visits=(visit(7),)))

    assert "3 measurement rows, 1 visit, 0 surgeon's limits, 0 events:" in text
    assert "knee flexion: 2 readings, 2026-01-12 to 2026-01-19; 1 declined" in text
    only = contents_text(make_case(readings=(flexion(7, 60),)))
    assert "knee flexion: 1 reading, 2026-01-12\n" in only + "\n"
    none = contents_text(make_case(readings=(flexion(7, None, missing="unsafe"),)))
    assert "knee flexion: 0 readings; 1 unsafe" in none


@pytest.mark.parametrize("n", [7, 14])
def test_as_of_a_day(make_case, flexion, day, n):
    """Nothing recorded later is in a review."""
    case = make_case(readings=(flexion(7, 60), flexion(14, 71)))

    assert ("71" in review_text(case, day(n))) is (n == 14)
