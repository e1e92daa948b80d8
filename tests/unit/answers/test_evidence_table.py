"""Published values stand side by side with source and how known, escaped."""

from __future__ import annotations

import dataclasses

import pytest

from kneecase.answers import evidence_table
from kneecase.errors import InputError
from kneecase.evidence import published_value

VALUE = published_value("COURSE_FLEXION_WEEK6_WELL_OUWELEEN2021")


def test_text_and_page_hold_value_population_source_and_how_known():
    """Both forms carry the same facts."""
    table = evidence_table([VALUE], heading="At six weeks")

    for shown in (str(table), table._repr_html_()):
        assert "At six weeks" in shown
        assert VALUE.quantity() in shown
        assert VALUE.source.authors.split(",")[0] in shown
        assert VALUE.how_known() in shown


def test_disagreeing_values_stay_side_by_side_in_the_order_given():
    """Nothing is merged or sorted."""
    other = published_value("COURSE_FLEXION_WEEK6_STIFF_OUWELEEN2021")

    assert evidence_table([other, VALUE]).values == (other, VALUE)


def test_text_is_escaped():
    """A definition is text, whatever it holds."""
    hostile = dataclasses.replace(VALUE, definition="<script>1</script>", caution="<b>care</b>")

    page = evidence_table([hostile])._repr_html_()

    assert "<script>" not in page
    assert "&lt;b&gt;care" in page


def test_nothing_or_something_else_is_refused():
    """An empty table or a bare number has no source to show."""
    with pytest.raises(InputError, match="at least one"):
        evidence_table([])
    with pytest.raises(InputError, match=r"got 3\.5"):
        evidence_table([3.5])
