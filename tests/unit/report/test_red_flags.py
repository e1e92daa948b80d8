"""A red flag stands until the question is asked again, and nothing is assumed."""

from __future__ import annotations

import pytest

from kneecase.record import QUESTIONS
from kneecase.report import red_flags
from kneecase.report.red_flags import ACTS, DEFERENCE


def test_no_visit_nothing_asked(make_case):
    """Without a visit nothing was asked, and that is said."""
    flags = red_flags(make_case())

    assert flags.yes == ()
    assert len(flags.not_asked) == len(ACTS)
    assert flags.lines() == ["No visit is recorded, so no red flag was asked about."]


def test_yes_comes_first_with_who_to_turn_to(make_case, visit):
    """A yes is told first, with its day and who to turn to; the most urgent leads."""
    flags = red_flags(make_case(visits=(visit(10, locking="yes", chest_pain="yes", fever="no"),)))

    assert [flag.question for flag in flags.yes] == ["chest_pain", "locking"]
    assert flags.lines()[0] == (
        "chest pain: yes on 2026-01-15. Act now: emergency help by the local pathway; end the session."
    )
    assert flags.no == (QUESTIONS["fever"],)
    assert len(flags.not_asked) == len(ACTS) - 3


def test_a_yes_stands_until_asked_again(make_case, visit):
    """A yes of an earlier visit stands while nobody asked again, and says so; a later no ends it."""
    visits = (visit(10, calf_pain_or_swelling="yes"), visit(17, fever="no"))
    standing = red_flags(make_case(visits=visits))

    assert standing.lines()[0].startswith("new calf pain or swelling: yes on 2026-01-15, not asked since.")
    assert QUESTIONS["calf_pain_or_swelling"] not in standing.not_asked
    ended = red_flags(make_case(visits=(*visits, visit(24, calf_pain_or_swelling="no"))))
    assert ended.yes == ()


def test_one_yes_of_a_day_is_a_yes(make_case, visit):
    """Where a day has two visits, a yes of either counts, whatever the order."""
    for answers in (("yes", "no"), ("no", "yes")):
        visits = tuple(visit(10, {"note": answer}, fever=answer) for answer in answers)
        assert [flag.question for flag in red_flags(make_case(visits=visits)).yes] == ["fever"]


def test_as_of_a_day(make_case, visit, day):
    """What was asked later is not known yet."""
    case = make_case(visits=(visit(10, fever="no"), visit(17, fever="yes")))

    assert red_flags(case, day(12)).yes == ()
    assert red_flags(case).yes != ()


@pytest.mark.parametrize("question", ACTS)
def test_every_flag_is_a_question_and_defers(question):
    """Each flag is a question of the record, and its act names who decides, not a diagnosis."""
    assert question in QUESTIONS
    assert any(word in ACTS[question] for word in ("local", "surgeon"))
    assert "local practice and the surgeon's orders come first" in DEFERENCE
