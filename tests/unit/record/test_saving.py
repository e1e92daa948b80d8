"""Saving a case: what comes back, where it goes, and when it is refused."""

from __future__ import annotations

import datetime as dt
import errno
import os
from dataclasses import replace

import pytest

from kneecase.errors import CaseChangedError, CaseError, SaveError
from kneecase.record import Limit, read_case, save_case, undo
from saved_case import MEASUREMENTS, REFERENCES, case_in, files, flexion


def test_an_unchanged_case_writes_nothing(tmp_path):
    """Not a byte, not a journal, not a lock; the case itself comes back."""
    case = case_in(tmp_path / "a")
    assert case.save() is case
    assert sorted(os.listdir(tmp_path / "a")) == ["case.toml", "measurements.csv", "visits.csv"]


def test_the_case_that_comes_back_can_be_saved_again(tmp_path):
    """The fingerprint is that of the disk, so a second change goes through, and equals a fresh reading."""
    case = case_in(tmp_path / "a").with_readings(flexion()).save()
    again = case.with_readings(flexion("newer", 80.0)).save()
    fresh = read_case(tmp_path / "a")
    assert again == fresh
    assert dict(again.fingerprint) == dict(fresh.fingerprint)
    assert dict(again.texts) == dict(fresh.texts)


def test_a_case_is_saved_to_a_new_folder_whole(tmp_path):
    """Everything it holds, comments too; the first folder is not touched."""
    case = case_in(tmp_path / "a")
    before = files(tmp_path / "a")
    there = case.with_readings(flexion()).save(tmp_path / "new" / "b")
    assert there.path == tmp_path / "new" / "b"
    assert there == read_case(there.path)
    assert files(there.path)["case.toml"] == before["case.toml"]
    assert files(tmp_path / "a") == before
    assert save_case(there, str(there.path)) is there


def test_a_folder_that_holds_another_case_is_never_written_over(tmp_path):
    """Refused by name; saving the very same case there again is fine."""
    case = case_in(tmp_path / "a")
    other = case_in(tmp_path / "b", MEASUREMENTS.replace("60 deg", "61 deg"))
    before = files(tmp_path / "b")
    with pytest.raises(SaveError, match=r"already holds a case .*case\.toml"):
        case.save(tmp_path / "b")
    assert files(tmp_path / "b") == before
    assert replace(other, path=None).save(tmp_path / "b").readings == other.readings


def test_a_case_made_in_code_is_saved_whole(tmp_path):
    """Without a text to start from, the explained template is; nothing is lost."""
    case = case_in(tmp_path / "a", toml=REFERENCES)
    made = replace(case, texts={}, fingerprint={}, path=None)
    with pytest.raises(SaveError, match="no folder yet"):
        made.save()
    saved = made.save(tmp_path / "b")
    assert {(r.id, r.value, r.note) for r in saved.readings} >= {
        (r.id, r.value, r.note) for r in case.readings if not r.id.startswith("ref-")
    }
    assert len(saved.readings) == len(case.readings)
    assert (saved.athlete, saved.surgery, saved.limits) == (case.athlete, case.surgery, case.limits)
    assert "5-0-140" in files(tmp_path / "b")["case.toml"].decode()


def test_part_of_a_case_is_not_saved_over_the_whole(tmp_path):
    """A case as of an earlier day lacks what came later, so its own folder refuses it."""
    case = case_in(tmp_path / "a")
    part = case.as_of(dt.date(2026, 3, 11))
    with pytest.raises(SaveError, match="only a part of the case"):
        part.save()
    assert len(part.save(tmp_path / "b").readings) == 2
    assert len(read_case(tmp_path / "a").readings) == 3


@pytest.mark.parametrize("name", ["case.toml", "measurements.csv", "visits.csv"])
def test_a_file_changed_since_is_not_written_over(tmp_path, name):
    """The sentence names the file and both ways out, and both ways work."""
    case = case_in(tmp_path / "a").with_readings(flexion())
    path = tmp_path / "a" / name
    path.write_bytes(path.read_bytes() + b"\n")
    before = files(tmp_path / "a")
    with pytest.raises(CaseChangedError, match=rf"{name} .*read_case .*case\.save\(path\)"):
        case.save()
    with pytest.raises(CaseChangedError):
        replace(case, readings=case.readings[:-1]).save()
    assert files(tmp_path / "a") == before
    assert len(read_case(tmp_path / "a").with_readings(case.readings[-1]).save().readings) == 4
    assert len(case.save(tmp_path / "b").readings) == 4


def test_a_file_that_came_or_went_counts_as_changed(tmp_path):
    """A table that somebody added or took away since is a change too."""
    case = case_in(tmp_path / "a").with_readings(flexion())
    (tmp_path / "a" / "visits.csv").unlink()
    with pytest.raises(CaseChangedError, match=r"visits\.csv"):
        case.save()


def test_a_folder_that_is_gone_is_refused(tmp_path):
    """Nothing is made anew in its place without being asked."""
    case = case_in(tmp_path / "a").with_readings(flexion())
    (tmp_path / "a").rename(tmp_path / "moved")
    with pytest.raises(SaveError, match="not there any more"):
        case.save()
    assert not (tmp_path / "a").exists()


@pytest.mark.parametrize(
    ("reading", "sentence"),
    [
        (flexion(value=1350.0), "impossible"),
        (flexion(value=float("nan")), "finite number"),
        (flexion(measure="wrist_angle"), "not in the catalogue"),
        (flexion(value=None), "neither a value nor a reason"),
        (flexion(text="felt stiff"), "no column holds its text 'felt stiff'"),
        (flexion(trial=0), "whole number from 1 up"),
        (flexion(measure="effusion", unit="grade", value=7.0), "grade"),
        (flexion("ref-9"), "reference is taken before the surgery"),
        (flexion(id_="a\0b"), "NUL"),
    ],
)
def test_what_would_not_read_back_is_refused_before_anything_is_written(tmp_path, reading, sentence):
    """The reader's own sentence says why; the files stay."""
    case = case_in(tmp_path / "a").with_readings(reading)
    before = files(tmp_path / "a")
    with pytest.raises(SaveError, match="would not read back") as refused:
        case.save()
    assert sentence in str(refused.value)
    assert files(tmp_path / "a") == before
    assert not (tmp_path / "a" / "journal.jsonl").exists()


def test_many_faults_are_not_all_listed(tmp_path):
    """The sentence stays readable."""
    many = [flexion(f"n{n}", 60.0 + n, text="words", trial=n + 1) for n in range(9)]
    with pytest.raises(SaveError, match="and more"):
        case_in(tmp_path / "a").with_readings(*many).save()


def test_a_full_disk_while_saving_leaves_the_case_and_another_folder_takes_it(tmp_path, monkeypatch):
    """Typed content is not lost: it is still in hand and goes to another disk."""
    case = case_in(tmp_path / "a").with_readings(flexion())
    before = files(tmp_path / "a")
    with pytest.MonkeyPatch.context() as patch:

        def full(*_):
            raise OSError(errno.ENOSPC, "No space left on device")

        patch.setattr(os, "write", full)
        with pytest.raises(SaveError, match="the disk is full"):
            case.save()
    assert files(tmp_path / "a") == before
    assert len(case.save(tmp_path / "b").readings) == 4
    assert len(case.save().readings) == 4


def test_a_place_where_no_folder_can_be_made_is_refused(tmp_path):
    """A file in the way is named."""
    (tmp_path / "file").write_text("x")
    with pytest.raises(SaveError, match="could not be made"):
        case_in(tmp_path / "a").save(tmp_path / "file" / "b")


def test_a_very_long_note_is_refused_in_words(tmp_path):
    """Longer than any reader of tables takes: said before saving, not found out after."""
    with pytest.raises(SaveError, match="characters"):
        case_in(tmp_path / "a").with_readings(flexion(note="x" * 140_000)).save()


def test_a_case_that_cannot_be_read_names_its_faults_on_the_way_back(tmp_path):
    """After an undo by hand-made faults the reading says what is wrong."""
    case_in(tmp_path / "a").with_readings(flexion()).save()
    (tmp_path / "a" / "case.toml").write_text("format = 1\n", encoding="utf-8")
    with pytest.raises(CaseError, match="surgery"):
        undo(tmp_path / "a")


def test_a_limit_that_no_text_can_say_is_refused_by_name(tmp_path):
    """A number on a limit that has none is refused with the reader's sentence."""
    limit = Limit(kind="running", start=dt.date(2026, 3, 2), value=5.0)
    with pytest.raises(SaveError, match="a limit on running has no number"):
        case_in(tmp_path / "a").with_limits(limit).save()


def test_words_that_read_back_as_others_are_refused_by_name(tmp_path):
    """A procedure is spelt as the scope spells it; a case that insists otherwise is told so."""
    case = case_in(tmp_path / "a")
    odd = replace(case, surgery=replace(case.surgery, concomitant=("FRACTURE",)))
    with pytest.raises(SaveError, match=r"concomitant \('FRACTURE',\) would read back as \('fracture',\)"):
        odd.save()
    odd_limit = replace(case.limits[0], kind="Flexion")
    with pytest.raises(SaveError, match=r"limit .*'Flexion'.* would not read back; limit .*would come back"):
        replace(case, limits=(odd_limit,)).save()
