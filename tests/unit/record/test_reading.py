"""Reading a case folder: what is given, what is in it, what only looks as if."""

from __future__ import annotations

import datetime as dt
import hashlib
import os
from pathlib import Path

import pytest

from kneecase.errors import CaseError, NewerFormatError
from kneecase.record import read_case

TOML = '[athlete]\npseudonym = "Wren"\n[surgery]\ndate = 2026-03-02\nside = "left"\n'
TABLE = "date,measure,side,value\n2026-03-16,knee_flexion,left,85\n"


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """A small case folder."""
    (tmp_path / "case.toml").write_text("# kept\n" + TOML, "utf-8")
    (tmp_path / "measurements.csv").write_text(TABLE, "utf-8")
    (tmp_path / "visits.csv").write_text("date\n2026-03-16\n", "utf-8")
    return tmp_path


def test_a_folder_its_text_and_its_case_file_are_the_same_case(folder: Path) -> None:
    """Given as text, as path, or as the case.toml in it."""
    case = read_case(folder)
    assert case == read_case(str(folder)) == read_case(folder / "case.toml")
    assert (len(case.readings), len(case.visits), case.path) == (1, 1, folder)


def test_texts_and_fingerprints_are_kept(folder: Path) -> None:
    """So that a save keeps comments, and notices a change on disk."""
    case = read_case(folder)
    assert case.texts["case.toml"] == "# kept\n" + TOML
    assert set(case.texts) == set(case.fingerprint) == {"case.toml", "measurements.csv", "visits.csv"}
    assert case.fingerprint["measurements.csv"] == hashlib.sha256(TABLE.encode()).hexdigest()


def test_a_folder_that_cannot_be_written_is_read(folder: Path) -> None:
    """Nothing is written on reading."""
    before = sorted(os.listdir(folder))
    for place in (*folder.iterdir(), folder):
        place.chmod(0o555 if place.is_dir() else 0o444)
    try:
        assert len(read_case(folder).readings) == 1
        assert sorted(os.listdir(folder)) == before
    finally:
        folder.chmod(0o755)


def test_a_case_needs_only_its_case_file(tmp_path: Path) -> None:
    """Without tables it has no readings, and the last date is the surgery's."""
    (tmp_path / "case.toml").write_text(TOML, "utf-8")
    case = read_case(tmp_path)
    assert (case.readings, case.visits, case.warnings) == ((), (), ())
    assert case.last_date == dt.date(2026, 3, 2)


@pytest.mark.parametrize("name", ["nowhere", "nowhere/case.toml", "measurements.csv"])
def test_what_is_no_case_folder_is_refused(folder: Path, name: str) -> None:
    """In a sentence, with what to give."""
    with pytest.raises(CaseError, match="Give the folder"):
        read_case(folder / name)


def test_an_empty_folder_is_no_case(tmp_path: Path) -> None:
    """case.toml is missing."""
    with pytest.raises(CaseError, match="missing"):
        read_case(tmp_path)


def test_a_newer_format_is_refused(folder: Path) -> None:
    """With its own kind of error."""
    (folder / "case.toml").write_text("format = 99\n", "utf-8")
    with pytest.raises(NewerFormatError):
        read_case(folder)


@pytest.mark.parametrize(
    ("name", "meant"),
    [("measurement.csv", "measurements.csv"), ("Visits.CSV", "visits.csv"), ("other.csv", "")],
)
def test_a_file_under_a_slightly_wrong_name_is_doubted(folder: Path, name: str, meant: str) -> None:
    """It is not read, and that is said."""
    for table in ("measurements.csv", "visits.csv"):
        (folder / table).unlink()
    (folder / name).write_text(TABLE, "utf-8")
    case = read_case(folder)
    assert case.readings == ()
    assert [meant in w.mend for w in case.warnings] == ([True] if meant else [])


def test_a_copy_beside_the_table_is_no_matter(folder: Path) -> None:
    """Where the table itself is there."""
    (folder / "measurements (1).csv").write_text(TABLE, "utf-8")
    assert read_case(folder).warnings == ()


def test_a_hundred_thousand_rows_are_read(folder: Path) -> None:
    """Every one of them, on both sides, and the file is not doubted."""
    start = dt.date(2026, 3, 2)
    lines = ["date,measure,side,trial,value,tester,note"]
    for number in range(100_000):
        day = start + dt.timedelta(days=number % 400)
        side = "left" if number % 800 < 400 else "right"
        lines.append(f"{day},single_hop,{side},{number // 400 + 1},{100 + number % 900 / 10},AB,row {number}")
    (folder / "measurements.csv").write_text("\n".join(lines), "utf-8")
    case = read_case(folder)
    assert len(case.readings) == len({reading.id for reading in case.readings}) == 100_000
    assert sum(reading.side == "left" for reading in case.readings) == 50_000
    assert case.warnings == ()
    last = max(case.readings, key=lambda reading: reading.row or 0)
    assert (last.row, last.note, last.value) == (100_001, "row 99999", pytest.approx(109.9))


def test_a_hundred_thousand_faults_are_all_found(folder: Path) -> None:
    """And the message stays short."""
    rows = "2026-03-16,knee_flexon,left,many\n" * 100_000
    (folder / "measurements.csv").write_text("date,measure,side,value\n" + rows, "utf-8")
    with pytest.raises(CaseError) as caught:
        read_case(folder)
    assert len(caught.value.problems) == 100_000
    assert len(str(caught.value)) < 20_000
