"""Pain and soreness: what was told last, and which way it went."""

from __future__ import annotations

import dataclasses
import datetime as dt
from typing import Any

import pytest

from kneecase.measures import pain_and_soreness
from kneecase.record import SORENESS, Visit


def visit(case: Any, day: int, pain: dict[str, float] | None = None, soreness: str = "") -> Visit:
    """What was told so many days after surgery."""
    date = case().surgery.date + dt.timedelta(days=day)
    return Visit(id=f"v{day}", date=date, pain=pain or {}, soreness=soreness)


def told(case: Any, *visits: Visit) -> dict[str, Any]:
    """The findings by label."""
    return {f.label: f for f in pain_and_soreness(dataclasses.replace(case(), visits=visits)).findings}


def test_nothing_asked_is_unknown(case: Any) -> None:
    """No visit and a visit without an answer are both unknown, never zero."""
    for found in (told(case), told(case, visit(case, 5))):
        assert [f.value for f in found.values()] == [None] * 4
        assert all("not asked" in f.words for f in found.values())


def test_each_is_taken_from_the_visit_that_last_asked_it(case: Any) -> None:
    """A visit that asks less leaves the earlier answer standing, with its date."""
    found = told(
        case,
        visit(case, -3, {"rest": 9}),
        visit(case, 5, {"rest": 3, "activity": 6}, "warm-up, continues"),
        visit(case, 12, {"rest": 1}, "none"),
    )

    assert (found["pain at rest"].value, found["pain in activity"].value) == (1, 6)
    assert "2 points less than on" in found["pain at rest"].words
    assert "at least the 2 points that" in found["pain at rest"].words
    assert "asked once" in found["pain in activity"].words
    assert found["pain next morning"].value is None
    assert found["joint soreness"].quantity() == "none"
    assert found["joint soreness"].words.startswith("no joint soreness, on ")
    assert "Course: warm-up, continues; none" in found["joint soreness"].words


@pytest.mark.parametrize(
    ("now", "words"), [(4, "the same as"), (5, "1 point more"), (3, "1 point less"), (2, "2 points less")]
)
def test_change_in_words(case: Any, now: float, words: str) -> None:
    """Direction and size are said; only a fall is held against the published line."""
    found = told(case, visit(case, 5, {"rest": 4}), visit(case, 12, {"rest": now}))["pain at rest"]

    assert words in found.words
    assert ("under the 2 points" in found.words) is (now == 3)
    assert ("at least the 2 points" in found.words) is (now == 2)


def test_soreness_is_a_word_in_order(case: Any) -> None:
    """Its place in the list is the value; the word is what is shown."""
    for place, word in enumerate(SORENESS):
        found = told(case, visit(case, 5, soreness=word))["joint soreness"]
        assert (found.value, found.quantity()) == (place, word)


def test_a_word_outside_the_list_is_unknown(case: Any) -> None:
    """It is shown as it stands and counted as nothing."""
    found = told(case, visit(case, 5, soreness="achy"))["joint soreness"]

    assert found.value is None
    assert "'achy'" in found.words


def test_nothing_later_is_looked_at(case: Any) -> None:
    """On a day, only what was told by then."""
    whole = dataclasses.replace(case(), visits=(visit(case, 5, {"rest": 4}), visit(case, 12, {"rest": 1})))
    early = pain_and_soreness(whole, whole.surgery.date + dt.timedelta(days=6))

    assert early.findings[0].value == 4
    assert "Pain at rest: 4 points" in early.summary
