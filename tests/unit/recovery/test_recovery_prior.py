"""The prior of a recovery course: made of evidence, printable, replaceable."""

from __future__ import annotations

import pytest

from kneecase.errors import InputError
from kneecase.evidence.recovery_prior import RECOVERY_EXTENSION_LATE_A_SSMR2011
from kneecase.recovery import INCIDENCES, recovery_prior


def test_it_prints_every_value_and_how_each_is_known() -> None:
    """All values in it and beside it stand in the print with how they are known."""
    prior = recovery_prior("knee_flexion", other_side=140)
    text = str(prior)

    for value in (*prior.evidence, *prior.beside):
        assert value.line() in text
    assert "derived here, not published as such" in text
    assert "share pooled over grafts" in text


@pytest.mark.parametrize("incidence", INCIDENCES, ids=lambda v: v.name)
def test_any_single_cohort_can_be_chosen(incidence: object) -> None:
    """The chance of the stiff course is the one share that was chosen, whatever the graft."""
    prior = recovery_prior("knee_flexion", other_side=140, graft="patellar tendon", incidence=incidence)  # type: ignore[arg-type]

    assert prior.courses[1].chance == pytest.approx(incidence.number / 100)  # type: ignore[attr-defined]
    assert prior.evidence[0] is incidence


def test_chances_differ_by_graft_within_one_cohort() -> None:
    """Hamstring, quadriceps and patellar tendon have the shares of the one default cohort."""
    shares = {
        graft: recovery_prior(graft=graft).courses[1].chance
        for graft in ("hamstring tendon", "quadriceps tendon", "patellar tendon", "other")
    }

    assert shares == pytest.approx(
        {"hamstring tendon": 0.019, "quadriceps tendon": 0.063, "patellar tendon": 0.10, "other": 0.069}
    )


def test_extension_falls_towards_the_other_knees_own_end() -> None:
    """With the other knee hyperextending 5° the ordinary plateau lies beyond straight."""
    prior = recovery_prior("knee_extension", other_side=-5.0)

    assert prior.better == "lower"
    assert prior.courses[0].plateau == pytest.approx(-5 + RECOVERY_EXTENSION_LATE_A_SSMR2011.number)
    assert prior.courses[1].plateau > 5
    assert prior.courses[0].start > prior.courses[0].plateau


def test_without_the_other_knee_a_norm_stands_in() -> None:
    """The plateau is then wide, the norm is named, and a note says so."""
    for measure in ("knee_flexion", "knee_extension"):
        known = recovery_prior(measure, other_side=140.0 if measure == "knee_flexion" else 0.0)
        prior = recovery_prior(measure)
        assert prior.courses[0].plateau_sd > 1.5 * known.courses[0].plateau_sd
        assert any("a norm stands in" in note for note in prior.notes)
        assert len(prior.evidence) > len(known.evidence)


def test_numbers_can_be_replaced() -> None:
    """A changed chance is made good by the other course, and the prior says what was changed."""
    prior = recovery_prior(other_side=140).with_course("stiff", chance=0.3, plateau=100.0)

    assert sum(c.chance for c in prior.courses) == pytest.approx(1)
    assert prior.courses[1].plateau == 100
    assert "stiff course changed by hand: chance, plateau" in prior.notes


def test_refusals() -> None:
    """Unknown measure, share, course and number are refused by name."""
    with pytest.raises(InputError, match="measure"):
        recovery_prior("effusion")
    with pytest.raises(InputError, match="share in percent"):
        recovery_prior(incidence=RECOVERY_EXTENSION_LATE_A_SSMR2011)
    with pytest.raises(InputError, match="ordinary, stiff"):
        recovery_prior().with_course("fast", plateau=1.0)
    with pytest.raises(InputError, match="number of a course"):
        recovery_prior().with_course("stiff", speed=1.0)
