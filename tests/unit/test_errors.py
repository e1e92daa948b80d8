"""Sentences of refusal say where, what, what is allowed and how to mend it."""

from __future__ import annotations

from kneecase.errors import CaseError, KneecaseError, Problem


def _problem(**changes):
    given = {
        "severity": "error",
        "file": "measurements.csv",
        "what": "the value is impossible",
        "mend": "Check it",
    }
    return Problem(**{**given, **changes})


def test_a_full_sentence_has_every_part():
    """File, row, column, what came, what is allowed, and the cure."""
    text = _problem(row=7, column="value", value="1350", allowed="-20 to 170 deg").sentence()

    assert text == (
        "measurements.csv, row 7, column value: the value is impossible, got '1350'. "
        "Allowed: -20 to 170 deg. Check it."
    )
    assert str(_problem()) == _problem().sentence()


def test_a_very_long_value_is_shortened_in_the_sentence_and_kept_whole():
    """A page of text in a cell must not become a page of message."""
    problem = _problem(value="x" * 10_000)

    assert len(problem.sentence()) < 250
    assert len(problem.value) == 10_000


def test_every_error_is_listed_and_warnings_are_not_counted():
    """All faults at once; doubts are no reason to refuse."""
    error = CaseError([_problem(row=2), _problem(row=3), _problem(severity="warning", row=4)])

    assert "2 problems" in str(error)
    assert "row 3" in str(error)
    assert "row 4" not in str(error)
    assert len(error.problems) == 3
    assert isinstance(error, KneecaseError)
