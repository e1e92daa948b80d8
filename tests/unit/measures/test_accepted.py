"""What a calculator accepts, and the sentence when it does not."""

from __future__ import annotations

import numpy as np
import pytest

from kneecase.errors import InputError
from kneecase.measures.accepted import accepted, plain


@pytest.mark.parametrize("came", [None, "12", True, object(), [[1.0], [1.0, 2.0]], complex(1, 1)])
def test_only_numbers(came: object) -> None:
    """Text, truth values and ragged lists are no numbers."""
    with pytest.raises(InputError, match="girth_cm must be a finite number in cm, got"):
        accepted("girth_cm", came, "cm")  # type: ignore[type-var]


@pytest.mark.parametrize("came", [float("nan"), float("inf"), -float("inf")])
def test_only_finite_numbers(came: float) -> None:
    """A missing or infinite number is refused, never passed on."""
    with pytest.raises(InputError, match="must be a finite number"):
        accepted("sem", came)


def test_sentences_state_the_rule() -> None:
    """Each kind of limit has its own wording, with the unit and the cure."""
    with pytest.raises(InputError, match=r"^a must lie between 0 and 1 cm, got 2\.0\. In metres\?$"):
        accepted("a", 2, "cm", low=0, high=1, cure="In metres?")
    with pytest.raises(InputError, match=r"^a must be at least 0, got -1\.0\.$"):
        accepted("a", -1, low=0)
    with pytest.raises(InputError, match=r"^a must be at most 5 kg, got 6\.0\.$"):
        accepted("a", 6, "kg", high=5)
    with pytest.raises(InputError, match=r"^a must be above 0, got 0\.0\.$"):
        accepted("a", 0, above=0)
    with pytest.raises(InputError, match=r"^a must be above 0 and at most 1, got 2\.0\.$"):
        accepted("a", 2, above=0, high=1)


def test_an_array_names_the_place() -> None:
    """In an array the first bad number is shown with where it stands."""
    with pytest.raises(InputError, match=r"got nan at place 1, 0"):
        accepted("readings", np.array([[1.0, 2.0], [np.nan, np.inf]]))


def test_what_comes_back() -> None:
    """A number comes back as a float, an array as an array of floats; nothing is clipped."""
    assert type(accepted("a", np.int64(3))) is float
    found = accepted("a", np.array([1, 2]))
    assert found.dtype == np.float64
    assert type(plain(np.float64(2.0), 1.0)) is float
    assert plain(np.array([2.0]), found).shape == (1,)
