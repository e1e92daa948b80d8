"""What only shows when rows are seen together: repeated readings, swapped sides."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from kneecase.errors import Problem
from kneecase.record import Case

Read = Callable[..., Case]
Error = Callable[..., Problem]
HEAD = "id,date,measure,side,trial,value,tester,timing,device\n"


def rows(*lines: str) -> str:
    """A table of these lines."""
    return HEAD + "".join(line + "\n" for line in lines)


def test_the_same_row_twice_without_ids_is_doubted_and_both_are_kept(read: Read) -> None:
    """Perhaps it was pasted twice."""
    case = read(rows(*[",2026-03-16,knee_flexion,left,,85,AB,,"] * 2))
    assert len(case.readings) == 2
    assert [(w.row, w.what) for w in case.warnings] == [(3, "this row says the same as row 2")]


def test_the_same_reading_with_ids_of_their_own_is_no_matter(read: Read) -> None:
    """Two readings can agree."""
    case = read(rows("a,2026-03-16,knee_flexion,left,,85,AB,,", "b,2026-03-16,knee_flexion,left,,85,AB,,"))
    assert case.warnings == ()


@pytest.mark.parametrize(
    "lines",
    [
        (",2026-03-16,knee_flexion,left,,85,AB,,", ",2026-03-16,knee_flexion,left,,95,AB,,"),
        (",2026-03-16,knee_flexion,left,1,85,AB,,", ",2026-03-16,knee_flexion,L,1,95,AB,,"),
        ("a,2026-03-16,knee_flexion,left,1,85,AB,,", "b,2026-03-16,knee_flexion,left,1,95,AB,,"),
    ],
)
def test_two_values_for_one_reading_are_refused(error: Error, lines: tuple[str, str]) -> None:
    """Both rows are named, and the remedy is to number trials or delete one."""
    found = error(rows(*lines))
    assert (found.row, "row 2" in found.what, "trial" in found.mend) == (3, True, True)


def test_two_values_without_trial_but_with_ids_are_doubted(read: Read) -> None:
    """They were entered as two readings."""
    case = read(rows("a,2026-03-16,knee_flexion,left,,85,AB,,", "b,2026-03-16,knee_flexion,left,,95,AB,,"))
    assert (len(case.readings), len(case.warnings)) == (2, 1)


def test_readings_that_differ_in_how_they_were_taken_are_two(read: Read) -> None:
    """Another tester, timing, device or trial, or a lost trial beside a scored one."""
    case = read(
        "date,measure,side,trial,value,tester,timing,device,status\n"
        "2026-03-16,knee_flexion,left,,85,AB,before,goniometer,\n"
        "2026-03-16,knee_flexion,left,,95,AB,after,goniometer,\n"
        "2026-03-16,knee_flexion,left,,90,CD,before,goniometer,\n"
        "2026-03-16,knee_flexion,left,,88,AB,before,inclinometer,\n"
        "2026-03-16,knee_flexion,left,2,89,AB,before,goniometer,\n"
        "2026-03-16,knee_flexion,left,2,70,AB,before,goniometer,lost\n"
    )
    assert (len(case.readings), case.warnings) == (6, ())


def test_an_id_twice_is_refused_wherever_it_stands(errors: Callable[..., list[Problem]]) -> None:
    """Also where neutral-zero motion or a reference makes it."""
    found = errors(
        rows(
            "a,2026-03-16,knee_flexion,left,,85,AB,,",
            "a,2026-03-17,knee_flexion,left,,86,AB,,",
            "m,2026-03-18,knee_motion,left,,0-5-90,AB,,",
            "m.flexion,2026-03-19,knee_flexion,left,,91,AB,,",
            "ref-1,2026-03-20,knee_flexion,left,,92,AB,,",
        ),
        toml='[athlete]\npseudonym = "W"\n[surgery]\ndate = 2026-03-02\nside = "left"\n'
        '[[reference]]\ndate = 2026-02-01\nmeasure = "knee_flexion"\nside = "left"\nvalue = 140\n',
    )
    assert [(p.row, p.value) for p in found] == [(3, "a"), (5, "m.flexion"), (6, "ref-1")]
    assert "case.toml, row 6" in found[2].what


@pytest.mark.parametrize(
    ("measure", "involved", "other", "days", "doubt"),
    [
        ("knee_flexion", "130", "85", "2026-03-16", "45° further"),
        ("knee_flexion", "130", "110", "2026-03-16", ""),
        ("knee_flexion", "85", "140", "2026-03-16", ""),
        ("knee_flexion", "130", "85", "2026-04-13", ""),
        ("knee_flexion", "130", "85", "2026-02-16", ""),
        ("knee_extension", "0", "25", "2026-03-16", "25° further"),
        ("knee_extension", "10", "-5", "2026-03-16", ""),
        ("knee_extension", "-8", "0", "2026-03-16", "hyperextends 8° more"),
        ("knee_extension", "-8", "-5", "2026-03-16", ""),
        ("quadriceps_torque", "200", "100", "2026-03-16", ""),
    ],
)
def test_an_operated_knee_that_moves_better_early_on_is_doubted(
    read: Read, measure: str, involved: str, other: str, days: str, doubt: str
) -> None:
    """Within six weeks, both sides measured on one day; the values are kept."""
    case = read(rows(f",{days},{measure},left,,{involved},AB,,", f",{days},{measure},right,,{other},AB,,"))
    assert [r.value for r in case.readings] == [float(involved), float(other)]
    if doubt:
        assert doubt in case.warnings[0].what
        assert case.warnings[0].row == 2
    else:
        assert case.warnings == ()


def test_sides_are_only_compared_where_motion_and_timing_agree(read: Read) -> None:
    """Passive against active says nothing about swapped sides."""
    case = read(
        "date,measure,side,value,motion\n2026-03-16,knee_flexion,left,130,passive\n"
        "2026-03-16,knee_flexion,right,85,active\n2026-03-17,knee_flexion,right,,active\n".replace(
            "right,,", "right,85,"
        )
    )
    assert case.warnings == ()
