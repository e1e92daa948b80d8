"""Real change: beyond the error of the pair, or 'cannot tell'."""

from __future__ import annotations

import math

import numpy as np
import pytest

from kneecase.errors import InputError
from kneecase.recovery import real_change


def test_beyond_the_error_is_real() -> None:
    """14° against an error of 5° is a real change."""
    change = real_change(104, 118, sem=1.8)

    assert change.is_real is True
    assert change.verdict == "real change"
    assert change.change == 14.0
    assert change.mdc == pytest.approx(4.9893, abs=1e-4)


def test_inside_the_error_is_cannot_tell_and_never_no_change() -> None:
    """Two testers who differ by less than their error: cannot tell, with the chance of a true gain."""
    change = real_change(104, 108, sem=3.39, pair="different testers, same device")

    assert change.verdict == "cannot tell"
    assert "no change" not in change.words()
    assert change.words() == (
        "gained 4°, inside the 9.4° that the error of this pair of readings alone can make "
        "(different testers, same device): cannot tell; chance of a true gain 80 %"
    )


def test_the_chance_by_hand() -> None:
    """A change of one standard error of the difference upward has a chance of 84.13 % (normal table)."""
    change = real_change(100, 100 + math.sqrt(2) * 3, sem=3)

    assert change.chance == pytest.approx(0.8413, abs=5e-5)


def test_the_border_belongs_to_cannot_tell() -> None:
    """A change equal to the minimal detectable change does not exceed it."""
    mdc = real_change(0, 0, sem=2.0).mdc

    assert not real_change(0, mdc, sem=2.0).is_real
    assert real_change(0, mdc * (1 + 1e-12), sem=2.0).is_real


def test_less_may_be_better() -> None:
    """A fall of the deficit is a gain, a rise a loss."""
    assert real_change(12, 4, sem=1.26, better="lower").words().startswith("gained 8°, more than")
    assert real_change(4, 12, sem=1.26, better="lower").words().startswith("lost 8°, more than")
    assert real_change(4, 4, sem=1.26, better="lower").words().startswith("0° of change, inside")


def test_another_unit() -> None:
    """The unit goes into the words."""
    assert real_change(37.0, 40.0, sem=0.5, unit="cm").words().startswith("gained 3 cm, more than the 1.4 cm")


def test_many_pairs_at_once() -> None:
    """Arrays give an entry a pair, equal to what each gives alone, and no words for all of them."""
    before, after, sem = np.array([100.0, 100.0]), np.array([104.0, 112.0]), np.array([3.39, 1.8])
    many = real_change(before, after, sem=sem)

    assert many.is_real.tolist() == [False, True]
    for place in (0, 1):
        alone = real_change(before[place], after[place], sem=sem[place])
        assert (many.change[place], many.mdc[place], many.chance[place]) == (
            alone.change,
            alone.mdc,
            alone.chance,
        )
    with pytest.raises(InputError, match="one change, got 2"):
        many.words()


@pytest.mark.parametrize(
    ("before", "after", "given", "named"),
    [
        (100, math.nan, {"sem": 1.8}, "after must be a finite number in deg, got nan"),
        (100, None, {"sem": 1.8}, "after"),
        (100, 110, {"sem": 0.0}, "sem must be above 0"),
        (100, 110, {"sem": 1.8, "better": "more"}, "better must be"),
        (100, 110, {"sem": 1.8, "unit": "degrees"}, "unit must be one of"),
        (100, 110, {"sem": 1.8, "level": 95}, "level"),
    ],
)
def test_refusals(before, after, given, named) -> None:  # type: ignore[no-untyped-def]
    """What cannot be is named."""
    with pytest.raises(InputError, match=named):
        real_change(before, after, **given)
