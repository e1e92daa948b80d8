"""Printed counts and percentages of batteries and cohorts: data checks.

Each tests only that a printed percentage follows from its counts by division, so it guards the copying of
numbers and proves nothing of a calculator.  Counts marked 'worked back' are not printed: they are the only
whole numbers that give the print.  In P16 one print was cut off, not rounded.
"""

from __future__ import annotations

import math

import pytest

from kneecase.evidence import published_value

# id, source, numerator, denominator, printed percentage, last printed digit, how the counts are known
PRINTED = [
    ("P8", "Wellsandt 2017", 40, 70, 57.1, 0.1, "abstract"),
    ("P8", "Wellsandt 2017", 20, 70, 28.6, 0.1, "abstract"),
    ("P8", "Wellsandt 2017", 24, 70, 34.3, 0.1, "abstract"),
    ("P9", "Wellsandt 2017", 3, 11, 27.3, 0.1, "worked back"),
    ("P9", "Wellsandt 2017", 9, 11, 81.8, 0.1, "worked back"),
    ("P10", "Kyritsis 2016", 26, 158, 16.5, 0.1, "second-hand"),
    ("P10", "Kyritsis 2016", 12, 116, 10, 1, "second-hand"),
    ("P10", "Kyritsis 2016", 14, 42, 33, 1, "second-hand"),
    ("P11", "Nawasreh 2017", 31, 42, 73.8, 0.1, "denominator worked back"),
    ("P11", "Nawasreh 2017", 15, 38, 39.5, 0.1, "denominator worked back"),
    ("P11", "Nawasreh 2017", 25, 33, 75.8, 0.1, "denominator worked back"),
    ("P11", "Nawasreh 2017", 14, 27, 51.9, 0.1, "denominator worked back"),
    ("P12", "Cristiani 2019", 693, 3541, 19.6, 0.1, "abstract"),
    ("P13", "contralateral strength 2022", 35, 144, 24.3, 0.1, "abstract"),
    ("P13", "contralateral strength 2022", 55, 144, 38.2, 0.1, "abstract"),
    ("P14", "Dingenen 2019", 20, 32, 62.5, 0.1, "worked back"),
    ("P14", "Dingenen 2019", 19, 32, 59.4, 0.1, "worked back"),
    ("P14", "Dingenen 2019", 13, 32, 40.6, 0.1, "worked back"),
    ("P14", "Dingenen 2019", 15, 32, 46.9, 0.1, "worked back"),
    ("P15", "Welling 2018", 2, 62, 3.2, 0.1, "abstract"),
    ("P15", "Welling 2018", 7, 62, 11.3, 0.1, "abstract"),
    ("P15", "Welling 2018", 29, 62, 46.8, 0.1, "abstract"),
    ("P16", "Gokeler 2016", 24, 28, 85.7, 0.1, "abstract"),
    ("P16", "Gokeler 2016", 11, 28, 39.3, 0.1, "abstract"),
    ("P16", "Gokeler 2016", 13, 28, 46.4, 0.1, "abstract"),
    ("P16", "Gokeler 2016", 12, 28, 42.9, 0.1, "abstract"),
    ("P16", "Gokeler 2016", 10, 28, 35.7, 0.1, "abstract"),
    ("P16", "Gokeler 2016", 19, 28, 67.9, 0.1, "abstract"),
    ("P17", "Grindem 2016", 1, 18, 5.6, 0.1, "worked back"),
    ("P17", "Grindem 2016", 21, 55, 38.2, 0.1, "worked back"),
]


@pytest.mark.parametrize(("check", "source", "part", "whole", "printed", "digit", "known"), PRINTED)
def test_percentage_follows_from_counts(
    check: str, source: str, part: int, whole: int, printed: float, digit: float, known: str
) -> None:
    """Data check: the printed percentage is the counts' own, to half the last printed digit."""
    assert 100 * part / whole == pytest.approx(printed, abs=digit / 2)


def test_p16_one_print_is_cut_off_not_rounded() -> None:
    """Data check, Gokeler 2016: 22 of 28 is 78.57 %; the print says 78.5, which only cutting off gives."""
    exact = 100 * 22 / 28

    assert abs(exact - 78.5) > 0.05
    assert math.floor(exact * 10) / 10 == 78.5


def test_p10_relative_risk() -> None:
    """Data check, Kyritsis 2016, counts second-hand: the two shares stand 3.22 to 1 (ours)."""
    assert pytest.approx(3.22, abs=0.005) == (14 / 42) / (12 / 116)


@pytest.mark.parametrize(
    ("name", "part", "whole"),
    [
        ("OTHER_LIMB_LSI_PASS_WELLSANDT2017", 40, 70),
        ("OTHER_LIMB_CAPACITY_PASS_WELLSANDT2017", 20, 70),
        ("OTHER_LIMB_LSI_ONLY_WELLSANDT2017", 24, 70),
        ("OTHER_LIMB_GAIN_ASMR2022", 35, 144),
        ("SECOND_INJURY_PASS_ALL_CRISTIANI2019", 693, 3541),
        ("SECOND_INJURY_PASS_ALL_WELLING2018", 7, 62),
        ("SECOND_INJURY_PASS_ALL_GOKELER2016", 2, 28),
    ],
)
def test_shipped_percentages_were_copied_right(name: str, part: int, whole: int) -> None:
    """Data check: the value that is shown is the printed one, and the counts give it."""
    assert published_value(name).number == pytest.approx(100 * part / whole, abs=0.05)
