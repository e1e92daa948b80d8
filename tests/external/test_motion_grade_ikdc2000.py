"""IKDC knee examination form 2000, passive motion deficit: the printed table, whole degrees.

Lack of extension against the other knee: below 3 A, 3 to 5 B, 6 to 10 C, above 10 D.  Lack of flexion: 0 to 5
A, 6 to 15 B, 16 to 25 C, above 25 D.  Read in the form.  Only whole degrees are print; the rule between them
is kneecase's own and is tested with the unit tests.
"""

from __future__ import annotations

import pytest

from kneecase.measures import extension_grade, flexion_grade, passive_motion_grade

EXTENSION = {"A": range(3), "B": range(3, 6), "C": range(6, 11), "D": range(11, 40)}
FLEXION = {"A": range(6), "B": range(6, 16), "C": range(16, 26), "D": range(26, 120)}


@pytest.mark.parametrize(("grade", "lacks"), EXTENSION.items())
def test_lack_of_extension(grade: str, lacks: range) -> None:
    """Every whole degree of the form has the form's grade."""
    assert {extension_grade(float(lack)) for lack in lacks} == {grade}


@pytest.mark.parametrize(("grade", "lacks"), FLEXION.items())
def test_lack_of_flexion(grade: str, lacks: range) -> None:
    """Every whole degree of the form has the form's grade."""
    assert {flexion_grade(float(lack)) for lack in lacks} == {grade}


def test_the_worst_counts() -> None:
    """The group grade is the lowest grade within the group."""
    assert passive_motion_grade(extension_lack_deg=11, flexion_lack_deg=0) == "D"
    assert passive_motion_grade(extension_lack_deg=0, flexion_lack_deg=16) == "C"
    assert passive_motion_grade(extension_lack_deg=4, flexion_lack_deg=4) == "B"
