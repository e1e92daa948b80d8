"""Published outcome scores, each with its source beside it; worked KOOS examples in print were not found.

| source | input | printed |
|---|---|---|
| IKDC subjective form, public scored example, 199 rows, its lowest (read) | 20 of 87 points | 22.98851 |
| IKDC form for children, published example (read) | 60 of 92 points | 65.2 |
| Wellsandt 2017 (abstract), shares of 70 | 40, 20, 24 of 70 | 57.1, 28.6, 34.3 |

The last row tests a division only. Predictive values worked out from
published numbers are ours and stand with the unit tests.
"""

from __future__ import annotations

import numpy as np
import pytest

from kneecase.evidence.questionnaires import QUESTIONNAIRES
from kneecase.measures import ikdc_subjective_points, score_from_sum_points

PRINTED = [
    ("IKDC, lowest of the scored example", 20.0, 87.0, 22.98851, 0.00001),
    ("IKDC for children", 60.0, 92.0, 65.2, 0.1),
    ("shares of 70", 40.0, 70.0, 57.1, 0.1),
    ("shares of 70", 20.0, 70.0, 28.6, 0.1),
    ("shares of 70", 24.0, 70.0, 34.3, 0.1),
]


@pytest.mark.parametrize(("name", "got", "possible", "printed", "digit"), PRINTED)
def test_printed_score(name: str, got: float, possible: float, printed: float, digit: float) -> None:
    """The printed score, to half its last digit."""
    assert score_from_sum_points(got, possible_points=possible) == pytest.approx(printed, abs=digit / 2)


def test_form_has_the_printed_possible_points() -> None:
    """14 items of 0-4, 3 of 0-10 and 1 of 0-1 make 18 items and 87 points, as the form says."""
    ranges = QUESTIONNAIRES["ikdc_subjective"].item_ranges
    counts = {high: sum(r == (0, high) for r in ranges) for high in (4, 10, 1)}

    assert counts == {4: 14, 10: 3, 1: 1}
    assert sum(high for _, high in ranges) == 87


def test_items_give_the_printed_lowest_score() -> None:
    """20 points spread over the form's items give the printed score as well."""
    items = np.zeros(18)
    items[[0, 1, 2, 17]] = [4, 5, 6, 5]

    assert items.sum() == 20
    assert ikdc_subjective_points(items) == pytest.approx(22.98851, abs=0.000005)
