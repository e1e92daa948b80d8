"""Scores of a day: which readings are behind each, and that a long record stays workable."""

from __future__ import annotations

import datetime as dt

from kneecase.measures.comparable import day_scores
from kneecase.record import Reading

FIRST = dt.date(2000, 1, 1)


def row(number, day, value, status="scored"):
    """One reading of a hop."""
    date = FIRST + dt.timedelta(days=day)
    return Reading(
        id=f"r{number}", date=date, measure="single_hop", side="left", value=value, unit="cm", status=status
    )


def test_each_day_has_its_own_scored_readings_earliest_first():
    """Order in the table does not matter; what is lost or missing is behind no score."""
    rows = [row(1, 9, 120.0), row(2, 2, 100.0), row(3, 9, 130.0), row(4, 5, 90.0, "lost"), row(5, 2, None)]

    first, last = day_scores(rows)

    assert (first.value, [r.id for r in first.readings]) == (100.0, ["r2"])
    assert (last.value, [r.id for r in last.readings]) == (125.0, ["r1", "r3"])
    assert day_scores(rows, "best")[1].value == 130.0
    assert day_scores(rows[3:]) == ()


def test_each_reading_is_looked_at_once_however_many_days(monkeypatch):
    """A record of many days takes no longer a reading than one of few."""
    looked = []
    monkeypatch.setattr(
        "kneecase.measures.comparable.is_scored", lambda reading: looked.append(reading.id) or True
    )

    assert len(day_scores([row(day, day, 100.0) for day in range(300)])) == 300
    assert len(looked) == 300
