"""The case folder as a whole: what is read from it, and what is refused by name."""

from __future__ import annotations

import pytest

from kneecase.errors import CaseError, SaveError
from kneecase.record import read_case
from kneecase.record.edits import edit_between
from kneecase.record.folder import LOCK_FILE, read_folder
from kneecase.record.journal import JOURNAL, JournalEntry
from saved_case import case_in, flexion


def test_the_files_of_a_case_are_read_and_others_left(tmp_path):
    """Bytes and fingerprint of each, nothing of what else lies there."""
    (tmp_path / "case.toml").write_bytes(b"x")
    (tmp_path / "letter.txt").write_bytes(b"y")
    found = read_folder(tmp_path)
    assert found.contents == {"case.toml": b"x"}
    assert found.fingerprint == {
        "case.toml": "2d711642b726b04401627ca9fbac32f5c8530fb1903cc4db02258717921a4881"  # SHA-256 of "x"
    }
    assert sorted(p.name for p in tmp_path.iterdir()) == ["case.toml", "letter.txt"]


def test_a_folder_that_is_not_there_is_named(tmp_path):
    """The sentence says how to begin a case."""
    with pytest.raises(CaseError, match=r"nowhere: there is no such folder.*new_case"):
        read_folder(tmp_path / "nowhere")


def test_a_file_in_place_of_a_folder_is_named(tmp_path):
    """A path to some file is no case."""
    (tmp_path / "f").write_text("x")
    with pytest.raises(CaseError, match="a file, not a case folder"):
        read_folder(tmp_path / "f")


def test_a_folder_in_place_of_a_file_is_named(tmp_path):
    """What cannot be read as a file is a fault with the file's name."""
    (tmp_path / "visits.csv").mkdir()
    with pytest.raises(CaseError, match=r"visits\.csv: the file cannot be read"):
        read_folder(tmp_path)


def test_reading_writes_through_no_link_that_leads_out(tmp_path):
    """A save cut off is counted in, and a file elsewhere that the folder links to stays as it is."""
    case_in(tmp_path / "a")
    outside, made = tmp_path / "elsewhere.csv", b"id,date\nv9,2026-03-11\n"
    outside.write_bytes((tmp_path / "a" / "visits.csv").read_bytes())
    (tmp_path / "a" / "visits.csv").unlink()
    (tmp_path / "a" / "visits.csv").symlink_to(outside)
    (tmp_path / "a" / "measurements.xlsx").symlink_to(tmp_path / "absent.xlsx")
    edits = (
        edit_between("visits.csv", outside.read_bytes(), made),
        edit_between("measurements.xlsx", None, b"x"),
    )
    entry = JournalEntry(number=1, kind="save", time="2026-03-11T10:00:00+00:00", edits=edits)
    (tmp_path / "a" / JOURNAL).write_bytes(entry.begin_line())
    found = read_folder(tmp_path / "a")
    assert found.contents["visits.csv"] == made
    assert "whole in the journal and not yet in" in found.problems[0].what
    assert outside.read_bytes() != made
    assert not (tmp_path / "absent.xlsx").exists()


def test_a_lock_that_is_a_link_is_refused(tmp_path):
    """Locking would empty the file behind it."""
    case = case_in(tmp_path / "a")
    (tmp_path / "kept.txt").write_text("kept")
    (tmp_path / "a" / LOCK_FILE).unlink(missing_ok=True)
    (tmp_path / "a" / LOCK_FILE).symlink_to(tmp_path / "kept.txt")
    with pytest.raises(SaveError, match="is a link: delete it"):
        case.with_readings(flexion()).save()
    assert (tmp_path / "kept.txt").read_text() == "kept"
    assert len(read_case(tmp_path / "a").readings) == len(case.readings)
