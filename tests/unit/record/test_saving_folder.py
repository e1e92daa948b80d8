"""The case folder as a whole: what is read from it, and what is refused by name."""

from __future__ import annotations

import pytest

from kneecase.errors import CaseError
from kneecase.record.folder import read_folder


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
