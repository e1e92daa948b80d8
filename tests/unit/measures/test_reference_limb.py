"""Whether the other limb may serve as reference: each reason against it, and what was not recorded."""

from __future__ import annotations

import datetime as dt

import pytest

from kneecase.errors import InputError
from kneecase.measures import reference_limb
from kneecase.record import Event

TAPE = {"tester": "KB", "device": "long-arm goniometer", "motion": "passive"}


def test_nothing_against_it(case, reading):
    """A grown athlete with a healthy other limb: trustworthy, and the own course could not be checked."""
    found = reference_limb(case(reading("knee_flexion", "right", 142, **TAPE)), "knee_flexion")

    assert found.trustworthy
    assert found.reasons == ()
    assert any("could not be looked for" in text for text in found.unchecked)
    assert found.words() == "nothing recorded speaks against the other limb as reference"


@pytest.mark.parametrize(
    ("athlete", "surgery", "word"),
    [
        ({}, {"harvest_side": "right"}, "graft was taken from the right limb"),
        ({}, {"earlier": {"right": ("ankle sprain 2022",)}}, "ankle sprain 2022"),
        ({}, {"concomitant": ("Bilateral reconstruction",)}, "both knees"),
        ({"skeletally_mature": False}, {}, "growth is not finished"),
        ({"age_years": 15.0}, {}, "a child (15 years"),
        ({"age_years": None, "year_of_birth": 2010}, {}, "a child (15 years old, or may be"),
    ],
)
def test_reasons(case, athlete, surgery, word):
    """Each recorded reason alone takes the trust away, in words."""
    found = reference_limb(case(athlete=athlete, surgery=surgery), "single_hop")

    assert not found.trustworthy
    assert word in "; ".join(found.reasons)
    assert "not a trustworthy reference" in found.words()


def test_age_on_the_day_counts(case):
    """Fifteen at surgery, sixteen a year later: the day looked at decides, by completed years."""
    young = case(athlete={"age_years": 15.0})

    assert not reference_limb(young, "single_hop", dt.date(2027, 3, 1)).trustworthy
    assert reference_limb(young, "single_hop", dt.date(2027, 3, 2)).trustworthy


def test_the_childs_age_names_its_rule(case):
    """The age limit comes with its source."""
    found = reference_limb(case(athlete={"age_years": 12.0}), "single_hop")

    assert [value.name for value in found.evidence] == ["REFERENCE_CHILD_AGE_COMMON_PRACTICE"]


def test_not_recorded_is_named(case):
    """What nobody wrote down is neither harmless nor harmful: it is listed."""
    found = reference_limb(
        case(
            athlete={"age_years": None, "skeletally_mature": None},
            surgery={"harvest_side": None, "earlier": {}},
        ),
        "single_hop",
    )

    assert found.trustworthy
    told = "; ".join(found.unchecked)
    for word in ("graft was taken", "previous injury", "neither age nor skeletal maturity"):
        assert word in told


def test_an_allograft_has_no_donor_limb(case):
    """With an allograft the donor limb is not asked about."""
    found = reference_limb(case(surgery={"harvest_side": None, "allograft": True}), "single_hop")

    assert not any("graft" in text for text in found.unchecked)


@pytest.mark.parametrize(
    ("note", "trusted"), [("fell on the right knee", False), ("left knee twisted", True)]
)
def test_a_later_injury_of_the_other_limb(case, note, trusted):
    """A re-injury whose note names the other side counts; one of the operated side does not."""
    event = Event(date=dt.date(2026, 4, 1), kind="re-injury", note=note)

    assert reference_limb(case(events=(event,)), "single_hop", dt.date(2026, 4, 20)).trustworthy is trusted
    assert reference_limb(case(events=(event,)), "single_hop", dt.date(2026, 3, 20)).trustworthy


@pytest.mark.parametrize(
    ("measure", "before", "now", "trusted"),
    [
        ("knee_flexion", 142.0, 138.0, True),
        ("knee_flexion", 142.0, 136.0, False),
        ("knee_flexion", 142.0, 150.0, True),
        ("knee_extension", 0.0, 3.0, True),
        ("knee_extension", 0.0, 4.0, False),
        ("knee_extension", 0.0, -8.0, True),
    ],
)
def test_a_loss_of_its_own(case, reading, measure, before, now, trusted):
    """Down by more than the error of its own earlier value, in the measure's own direction."""
    found = reference_limb(
        case(reading(measure, "right", before, -10, **TAPE), reading(measure, "right", now, **TAPE)), measure
    )

    assert found.trustworthy is trusted
    assert not any("could not be looked for" in text for text in found.unchecked)
    if not trusted:
        assert "beyond" in found.reasons[0]
        assert found.evidence


def test_a_loss_is_seen_against_any_earlier_day(case, reading):
    """A limb that rose and then fell has lost, though it is above where it began."""
    rows = [reading("knee_flexion", "right", v, d, **TAPE) for v, d in ((130, 0), (145, 20), (135, 40))]

    assert not reference_limb(case(*rows), "knee_flexion").trustworthy
    assert reference_limb(case(*rows), "knee_flexion", dt.date(2026, 3, 22)).trustworthy


def test_another_tester_needs_a_larger_loss(case, reading):
    """The same loss between two testers is within error."""
    rows = [
        reading("knee_flexion", "right", 142, 0, **TAPE),
        reading("knee_flexion", "right", 132, 40, **(TAPE | {"tester": "MO"})),
    ]

    assert reference_limb(case(*rows), "knee_flexion").trustworthy


def test_conditions_are_not_mixed(case, reading):
    """Active motion now is not a loss against passive motion earlier."""
    rows = [
        reading("knee_flexion", "right", 142, 0, **TAPE),
        reading("knee_flexion", "right", 120, 40, **(TAPE | {"motion": "active"})),
    ]

    assert reference_limb(case(*rows), "knee_flexion").trustworthy


def test_needs_a_measure_of_each_limb(case):
    """A score of the whole person has no other limb."""
    with pytest.raises(InputError, match="has no other limb"):
        reference_limb(case(), "heel_height_difference")
    with pytest.raises(InputError, match="Did you mean"):
        reference_limb(case(), "knee_flexoin")
