"""From a row to a visit: what was asked and answered, and what was not asked."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from kneecase.errors import Problem
from kneecase.record import Case

Read = Callable[..., Case]
Error = Callable[..., Problem]


def one(**cells: str) -> str:
    """A table with one visit."""
    cells = {"date": "2026-03-16", **cells}
    return ",".join(cells) + "\n" + ",".join(f'"{cell}"' for cell in cells.values()) + "\n"


def test_everything_asked_arrives(read: Read) -> None:
    """Answers, pain, soreness, what was done and the decision."""
    case = read(
        None,
        one(
            id="a",
            clinician="AB",
            pain_rest="2",
            pain_activity="3,5",
            pain_next_morning="4/10",
            giving_way="N",
            locking="Yes",
            fever="not asked",
            gait_normal="TRUE",
            soreness="After",
            aids="two crutches",
            setting="pool",
            activity="walking",
            dose="20 min",
            response_next_day="no worse",
            action="hold",
            agreement="overrides",
            reason=" swelling ",
            decided_by="AB",
            surgeon_told="yes",
            override_of="hop go-ahead",
            note="=1+1",
            room="7",
        ),
    )
    visit = case.visits[0]
    assert (visit.id, visit.clinician, visit.row) == ("a", "AB", 2)
    assert visit.pain == {"rest": 2, "activity": 3.5, "next morning": 4}
    assert visit.answers == {"giving_way": "no", "locking": "yes", "fever": "not asked", "gait_normal": "yes"}
    assert [visit.answer(q) for q in ("locking", "fever", "chest_pain")] == ["yes", "not asked", "not asked"]
    assert (visit.soreness, visit.aids, visit.setting) == ("after", "two crutches", "pool")
    assert (visit.activity, visit.dose, visit.response_next_day) == ("walking", "20 min", "no worse")
    assert (visit.action, visit.agreement, visit.reason) == ("hold", "overrides", " swelling ")
    assert (visit.decided_by, visit.surgeon_told, visit.override_of) == ("AB", "yes", "hop go-ahead")
    assert (visit.note, dict(visit.extra)) == ("=1+1", {"room": "7"})
    assert case.warnings == ()


def test_blank_and_not_asked_pain_is_no_pain_number(read: Read) -> None:
    """Missing stays missing; zero is a zero."""
    visit = read(None, one(pain_rest="0", pain_activity="", pain_next_morning="Not asked")).visits[0]
    assert visit.pain == {"rest": 0}


def test_ids_and_order(read: Read) -> None:
    """Made around those typed; in order of date."""
    visits = read(None, "date,id\n2026-03-18,\n2026-03-16,v0002\n2026-03-20,\n").visits
    assert [(v.id, v.date.day) for v in visits] == [("v0002", 16), ("v0001", 18), ("v0003", 20)]


@pytest.mark.parametrize(
    ("cells", "column", "what", "mend"),
    [
        ({"date": ""}, "date", "missing", "year-month-day"),
        ({"locking": "na"}, "locking", "yes or no", "not asked"),
        ({"fever": "39"}, "fever", "yes or no", "not asked"),
        ({"pain_rest": "11"}, "pain_rest", "0 to 10", "out of 100"),
        ({"pain_rest": "-1"}, "pain_rest", "0 to 10", "out of 100"),
        ({"pain_rest": "30/100"}, "pain_rest", "must be a number", "blank"),
        ({"pain_activity": "bad"}, "pain_activity", "must be a number", "blank"),
        ({"pain_activity": "nan"}, "pain_activity", "must be a number", "blank"),
        ({"soreness": "aftr"}, "soreness", "closed list", "'after'"),
        ({"action": "proceed"}, "action", "closed list", "'progress'"),
        ({"agreement": "agree"}, "agreement", "closed list", "'agrees'"),
    ],
)
def test_a_fault_is_named_with_its_place_and_remedy(
    error: Error, cells: dict[str, str], column: str, what: str, mend: str
) -> None:
    """File, row, column, and how to mend it."""
    found = error(None, one(**cells) if "date" not in cells else "date,clinician\n,AB\n")
    assert (found.file, found.row, found.column) == ("visits.csv", 2, column)
    assert what in found.what
    assert mend in found.mend


def test_an_override_without_a_reason_is_doubted(read: Read) -> None:
    """It is recorded all the same."""
    case = read(None, one(agreement="overrides"))
    assert case.visits[0].agreement == "overrides"
    assert "gives no reason" in case.warnings[0].what


def test_two_clinicians_or_two_settings_are_two_visits(read: Read) -> None:
    """So are several overrides of one day."""
    case = read(
        None,
        "date,clinician,setting,override_of\n2026-03-16,AB,land,\n2026-03-16,CD,land,\n"
        "2026-03-16,AB,pool,\n2026-03-16,AB,pool,effusion\n",
    )
    assert len(case.visits) == 4
    assert case.warnings == ()


def test_the_same_visit_twice_is_doubted_and_two_accounts_of_it_refused(read: Read, error: Error) -> None:
    """Both rows are named."""
    case = read(None, "date,clinician,note\n2026-03-16,AB,x\n2026-03-16,AB,x\n")
    assert (len(case.visits), case.warnings[0].row) == (2, 3)
    found = error(None, "date,clinician,note\n2026-03-16,AB,x\n2026-03-16,AB,y\n")
    assert (found.row, "row 2" in found.what) == (3, True)


def test_visits_with_ids_of_their_own_are_two_and_doubted(read: Read) -> None:
    """Somebody meant both."""
    case = read(None, "id,date,note\na,2026-03-16,x\nb,2026-03-16,y\n")
    assert (len(case.visits), len(case.warnings)) == (2, 1)


def test_an_id_twice_is_refused(errors: Callable[..., list[Problem]]) -> None:
    """Whatever else differs."""
    found = errors(None, "id,date\na,2026-03-16\na,2026-03-17\n")
    assert [(p.row, p.column, p.value) for p in found] == [(3, "id", "a")]
    assert "row 2" in found[0].what
