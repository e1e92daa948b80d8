"""One reversible change of one file."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from kneecase.record.edits import FileEdit, content_hash, edit_between

CONTENTS = st.one_of(st.none(), st.binary(max_size=60), st.text(max_size=40).map(lambda t: t.encode("utf-8")))


@settings(derandomize=True, max_examples=400)
@given(CONTENTS, CONTENTS)
def test_every_change_can_be_made_and_taken_back_and_survives_json(before, after):
    """Applied gives the file after, reversed the file before, through the journal's plain values too."""
    edit = FileEdit.from_json(edit_between("visits.csv", before, after).as_json())
    assert edit.applied(before) == after
    assert edit.reversed().applied(after) == before


@settings(derandomize=True, max_examples=200)
@given(st.text(max_size=30), st.text(max_size=10), st.text(max_size=30))
def test_an_insertion_into_text_is_small_and_whole_characters(start, inserted, end):
    """What stays at both ends is not written down again, and no character is cut in two."""
    edit = edit_between("f", (start + end).encode(), (start + inserted + end).encode())
    assert len(edit.inserted.decode("utf-8")) <= len(inserted) + 1
    edit.removed.decode("utf-8")


def test_bytes_of_another_encoding_come_back_exactly():
    """A Windows-1252 file that became UTF-8 is had back to the byte."""
    before, after = "Knie 5°".encode("cp1252"), "Knie 5°, müde".encode()
    edit = FileEdit.from_json(edit_between("visits.csv", before, after).as_json())
    assert edit.reversed().applied(after) == before
    assert "removed_base64" in edit.as_json()


def test_a_change_refuses_another_file_than_it_was_made_from():
    """A change is never made to a file that is not the one it was written for."""
    with pytest.raises(ValueError, match="not the file"):
        edit_between("f", b"one", b"two").applied(b"three")


def test_a_damaged_change_is_found_out():
    """A change whose text was altered in the journal does not give the file it promised."""
    values = {**edit_between("visits.csv", b"one", b"two").as_json(), "inserted": "twx"}
    with pytest.raises(ValueError, match="damaged"):
        FileEdit.from_json(values).applied(b"one")


@pytest.mark.parametrize("name", ["../case.toml", "a/b", "a\\b", "", ".lock", "letter.txt"])
def test_a_journal_can_only_name_a_file_of_a_case(name):
    """Nothing else in the folder, and nothing outside it, is taken from a journal."""
    values = {**edit_between("visits.csv", b"one", b"two").as_json(), "name": name}
    with pytest.raises(ValueError, match="file of a case"):
        FileEdit.from_json(values)


def test_a_file_that_is_not_there_has_no_hash():
    """No file and an empty file are told apart."""
    assert content_hash(None) == ""
    assert content_hash(b"") != ""
