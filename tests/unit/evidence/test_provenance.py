"""A value without a source cannot exist, and one that was not read says so."""

from __future__ import annotations

import pytest

from kneecase.errors import InputError
from kneecase.evidence import PublishedValue, Source, published_value, published_values, sources

SOURCE = Source(
    key="somebody-2020",
    authors="Somebody A",
    year=2020,
    title="On knees",
    venue="Journal",
    kind="cohort",
    known="abstract",
    doi="10.1000/abc",
)


def value(**changes):
    """A published value, changed as asked."""
    given = {
        "name": "MOTION_X_SOMEBODY2020",
        "value": 5.0,
        "unit": "deg",
        "definition": "a thing",
        "population": "knees",
        "source": SOURCE,
        "known": "abstract",
    }
    return PublishedValue(**{**given, **changes})


def test_no_source_no_value():
    """Leaving the source out is an error when it is written, not when it is shown."""
    with pytest.raises(TypeError, match="source"):
        PublishedValue(name="X", value=1.0, unit="deg", definition="d", population="p", known="abstract")


@pytest.mark.parametrize(
    "changes",
    [
        {"unit": "furlong"},
        {"known": "hearsay"},
        {"operator": "=>"},
        {"value": None},
        {"value": 5.0, "low": 6.0, "high": 7.0},
        {"value": float("nan")},
    ],
)
def test_a_malformed_value_is_refused_by_name(changes):
    """Unit, how known, operator and order of low, value, high are checked."""
    with pytest.raises(InputError, match="MOTION_X_SOMEBODY2020"):
        value(**changes)


@pytest.mark.parametrize("changes", [{"key": "Some Body"}, {"known": "hearsay"}, {"doi": "doi:10/x"}])
def test_a_malformed_source_is_refused(changes):
    """Key, how known and DOI have a shape."""
    given = {
        "key": "k",
        "authors": "A",
        "year": 2020,
        "title": "T",
        "venue": "V",
        "kind": "k",
        "known": "abstract",
    }
    with pytest.raises(InputError):
        Source(**{**given, **changes})


def test_what_was_not_read_is_shown_as_unverified():
    """Only full text and abstract pass without a flag."""
    assert value().verified
    for known in ("secondary", "from memory"):
        assert not value(known=known).verified
        assert "unverified" in value(known=known).line()
    assert "derived here" in value(known="derived").line()
    assert "no source" in value(known="common practice").line()


def test_a_range_without_a_centre_has_no_number():
    """The caller has to name which end."""
    span = value(value=None, low=2.0, high=3.5, operator="≥")

    assert span.quantity() == "≥ 2 to 3.5°"
    with pytest.raises(InputError, match="name which end"):
        _ = span.number
    assert value(value=None, low=2.0).quantity() == "2 to ?"


def test_the_line_holds_everything():
    """Definition, value with its spread, population, n, citation, place and how known."""
    line = value(low=4.0, high=6.0, spread_is="95 % interval", n=1200, place="table 2").line()

    for text in (
        "a thing: 5° (95 % interval 4 to 6)",
        "knees",
        "n = 1,200",
        "Somebody A. 2020.",
        "doi:10.1000/abc",
        "table 2",
        "read in the abstract",
    ):
        assert text in line


def test_values_are_found_by_name_and_topic():
    """The registry gathers each topic; names it does not know are refused."""
    everything = published_values()

    assert len(everything) > 50
    assert set(published_values("hops")) < set(everything)
    name = next(iter(everything))
    assert published_value(name).name == name
    assert {v.source.key for v in everything.values()} == set(sources())
    with pytest.raises(InputError, match="topic"):
        published_values("weather")
    with pytest.raises(InputError, match="NO_SUCH"):
        published_value("NO_SUCH")
