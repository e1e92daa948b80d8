"""Labels are moved apart as little as can be."""

from __future__ import annotations

import itertools
import math

from hypothesis import given
from hypothesis import strategies as st

from kneecase.charts.labels import spread

PLACES = st.lists(st.floats(-1e4, 1e4), max_size=12)


def test_labels_with_room_stay():
    """What has room is not moved."""
    assert spread([1.0, 9.0, 4.0], gap=2.0) == [1.0, 9.0, 4.0]
    assert spread([], gap=2.0) == []


@given(PLACES, st.floats(0.01, 100))
def test_gap_is_kept(places, gap):
    """Neighbours end up at least a gap apart."""
    moved = sorted(spread(places, gap))

    assert all(b - a >= gap - 1e-6 for a, b in itertools.pairwise(moved))


@given(PLACES, st.floats(0.01, 100))
def test_order_and_middle_are_kept(places, gap):
    """Labels keep their order, and together they stay where they were."""
    moved = spread(places, gap)

    for i, a in enumerate(places):
        for j, b in enumerate(places):
            if a < b:
                assert moved[i] < moved[j]
    assert math.isclose(sum(moved), sum(places), abs_tol=1e-5 * (1 + len(places)))
