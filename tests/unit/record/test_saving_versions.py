"""Earlier versions of a case: undo, redo and the list of saves."""

from __future__ import annotations

import datetime as dt
import os
from dataclasses import replace

import pytest

from kneecase.errors import CaseChangedError, SaveError
from kneecase.record import Reading, new_case, read_case, redo, undo, versions
from kneecase.record.journal import JOURNAL


def reading(number: int) -> Reading:
    return Reading(
        id=f"r{number}",
        date=dt.date(2026, 4, number),
        measure="knee_flexion",
        side="left",
        value=60.0 + number,
        unit="deg",
    )


@pytest.fixture
def folder(tmp_path):
    """A new case saved three times."""
    case = new_case(tmp_path / "wren", pseudonym="Wren", surgery_date="2026-03-02", side="left")
    for number in (1, 2, 3):
        case = case.with_readings(reading(number)).save()
    return tmp_path / "wren"


def ids(case) -> list[str]:
    return [r.id for r in case.readings]


def test_undo_walks_back_save_by_save_and_redo_forward(folder):
    """Each step is on disk and in the case that comes back; the first version is the last step."""
    assert [ids(undo(folder)) for _ in range(3)] == [["r1", "r2"], ["r1"], []]
    with pytest.raises(SaveError, match="no earlier version"):
        undo(folder)
    assert [ids(redo(folder)) for _ in range(3)] == [["r1"], ["r1", "r2"], ["r1", "r2", "r3"]]
    with pytest.raises(SaveError, match="nothing to redo"):
        redo(folder)
    assert ids(read_case(folder)) == ["r1", "r2", "r3"]


def test_a_save_after_an_undo_goes_on_from_there(folder):
    """What was undone is then no longer to be redone, but stays in the journal."""
    case = undo(folder)
    case.with_readings(reading(9)).save()
    with pytest.raises(SaveError, match="nothing to redo"):
        redo(folder)
    assert ids(undo(folder)) == ["r1", "r2"]
    assert ids(undo(folder)) == ["r1"]
    assert b"63" in (folder / JOURNAL).read_bytes()


def test_an_undo_is_written_down_and_never_rewrites(folder):
    """The journal only grows."""
    before = (folder / JOURNAL).read_bytes()
    undo(folder)
    redo(folder)
    assert (folder / JOURNAL).read_bytes().startswith(before)


def test_versions_lists_when_what_and_which_files(folder):
    """Oldest first; what was taken back no longer stands."""
    undo(folder)
    found = versions(folder)
    assert [v.kind for v in found] == ["create", "save", "save", "save", "undo"]
    assert [v.stands for v in found] == [True, True, True, False, True]
    assert set(found[0].files) == {"case.toml", "measurements.csv", "visits.csv"}
    assert found[1].files == ("measurements.csv",)
    assert all(dt.datetime.fromisoformat(v.time).utcoffset() == dt.timedelta(0) for v in found)
    assert [v.number for v in found] == [1, 2, 3, 4, 5]


def test_undo_refuses_where_the_file_was_changed_outside(folder):
    """Somebody's work in a text editor is not taken back unseen."""
    place = folder / "measurements.csv"
    place.write_bytes(place.read_bytes() + b"2026-05-01,knee_flexion,left,90\n")
    before = {p.name: p.read_bytes() for p in folder.iterdir()}
    with pytest.raises(CaseChangedError, match=r"measurements\.csv was changed outside kneecase"):
        undo(folder)
    assert {p.name: p.read_bytes() for p in folder.iterdir()} == before


def test_redo_refuses_where_the_file_was_changed_outside(folder):
    """The same on the way forward."""
    undo(folder)
    place = folder / "measurements.csv"
    place.write_bytes(place.read_bytes() + b"\n")
    with pytest.raises(CaseChangedError, match="redo"):
        redo(folder)


def test_undo_leaves_a_file_that_the_save_did_not_touch(folder):
    """A comment added by hand to case.toml stays when readings are taken back."""
    place = folder / "case.toml"
    place.write_text("# by hand\n" + place.read_text(encoding="utf-8"), encoding="utf-8")
    assert ids(undo(folder)) == ["r1", "r2"]
    assert place.read_text(encoding="utf-8").startswith("# by hand\n")


def test_a_case_without_a_journal_has_nothing_to_undo(tmp_path):
    """A folder made by hand has no earlier version, and a folder that is not there is said so."""
    case = new_case(tmp_path / "a", pseudonym="Wren", surgery_date="2026-03-02", side="left")
    (tmp_path / "a" / JOURNAL).unlink()
    with pytest.raises(SaveError, match="no earlier version"):
        undo(case.path)
    with pytest.raises(SaveError, match="There is no case folder"):
        undo(tmp_path / "nothing")
    assert versions(tmp_path / "a") == ()


def test_a_damaged_journal_still_leaves_the_case_readable(folder):
    """A damaged line is a warning on reading, and so is its end; then undo stops there."""
    lines = (folder / JOURNAL).read_bytes().splitlines(keepends=True)
    lines[4] = b"#" * 30 + b"\n"  # the begin of the second save
    lines[6] = lines[6].replace(b",63,", b",64,", 1)  # what the third save put in
    (folder / JOURNAL).write_bytes(b"".join(lines))
    case = read_case(folder)
    assert ids(case) == ["r1", "r2", "r3"]
    assert [w.row for w in case.warnings if w.file == JOURNAL] == [5, 6]
    assert ids(undo(folder)) == ["r1", "r2"]
    with pytest.raises(CaseChangedError):
        undo(folder)
    with pytest.raises(SaveError, match="damaged"):
        redo(folder)
    assert ids(read_case(folder)) == ["r1", "r2"]


def test_a_torn_end_of_the_journal_is_cut_off_at_the_next_save(folder):
    """The end that a killed process left is not read and does not disturb the next line."""
    whole = (folder / JOURNAL).read_bytes()
    (folder / JOURNAL).write_bytes(whole + b'{"journal":1,"entry":5,"stage":"beg')
    case = read_case(folder)
    assert case.warnings == ()
    replace(case, readings=case.readings[:1]).save()
    assert (folder / JOURNAL).read_bytes().startswith(whole + b'{"journal":1,"entry":5,"stage":"begin"')
    assert ids(undo(folder)) == ["r1", "r2", "r3"]


def test_only_the_files_of_a_case_are_in_its_folder(folder):
    """Nothing staged is left behind."""
    names = {"case.toml", "measurements.csv", "visits.csv", JOURNAL, ".lock"}
    assert set(os.listdir(folder)) == names
