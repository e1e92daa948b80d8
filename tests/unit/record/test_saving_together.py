"""Two programs with the same case: the second is told, and neither loses anything."""

from __future__ import annotations

import datetime as dt
import os
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

from kneecase.errors import CaseChangedError, CaseLockedError
from kneecase.record import Reading, new_case, read_case
from kneecase.record import folder as folder_module
from kneecase.record.folder import locked, read_folder
from kneecase.record.journal import JOURNAL

HOLD = """
import sys, time
from pathlib import Path
from kneecase.record.folder import locked
with locked(Path(sys.argv[1])):
    print("held", flush=True)
    sys.stdin.readline()
"""

ADD = """
import sys, datetime as dt
from kneecase.errors import SaveError
from kneecase.record import Reading, read_case
folder, name = sys.argv[1:3]
case = read_case(folder)
print("read", flush=True)
sys.stdin.readline()
new = Reading(id=name, date=dt.date(2026, 4, 1), measure="knee_flexion", side="left", value=70, unit="deg")
try:
    case.with_readings(new).save()
    print("saved")
except SaveError as error:
    print(type(error).__name__, len(case.with_readings(new).readings), error)
"""

SAVE_ON_AND_ON = """
import sys, datetime as dt
from kneecase.record import Reading, read_case
case = read_case(sys.argv[1])
for number in range(100_000):
    day = dt.date(2026, 4, 1) + dt.timedelta(days=number)
    name = f"n{len(case.readings)}"
    new = Reading(id=name, date=day, measure="knee_girth", side="left", value=40, unit="cm")
    case = case.with_readings(new).save()
    print(len(case.readings), flush=True)
"""


def started(code: str, *args: object) -> subprocess.Popen[str]:
    return subprocess.Popen(
        [sys.executable, "-c", code, *map(str, args)],
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        text=True,
    )


def said(process: subprocess.Popen[str]) -> str:
    assert process.stdout is not None
    return process.stdout.readline().strip()


@pytest.fixture
def folder(tmp_path) -> Path:
    """A new case."""
    new_case(tmp_path / "wren", pseudonym="Wren", surgery_date="2026-03-02", side="left")
    return tmp_path / "wren"


def flexion(name: str = "mine") -> Reading:
    return Reading(
        id=name, date=dt.date(2026, 4, 1), measure="knee_flexion", side="left", value=75, unit="deg"
    )


def test_while_another_process_saves_the_second_is_told_and_keeps_everything(folder, monkeypatch):
    """The lock of a living process is respected; later the same case goes through."""
    monkeypatch.setattr(folder_module, "LOCK_WAIT_S", 0.2)
    case = read_case(folder).with_readings(flexion())
    with started(HOLD, folder) as holder:
        assert said(holder) == "held"
        with pytest.raises(
            CaseLockedError, match=r"Another program is saving .*nothing is lost.*case\.save\(path\)"
        ):
            case.save()
        assert [r.id for r in case.readings] == ["mine"]
        assert read_case(folder).readings == ()
        holder.communicate("go\n")
    assert [r.id for r in case.save().readings] == ["mine"]


def test_the_lock_of_a_killed_process_does_not_stay(folder):
    """A lock dies with its process."""
    with started(HOLD, folder) as holder:
        assert said(holder) == "held"
        holder.send_signal(signal.SIGKILL)
        holder.wait()
        assert holder.stdin is not None
    assert len(read_case(folder).with_readings(flexion()).save().readings) == 1


def test_two_processes_saving_one_after_the_other_lose_nothing(folder):
    """Both read the same case; the one that comes second is refused, still holds its row, and can add it."""
    with started(ADD, folder, "one") as one, started(ADD, folder, "two") as two:
        assert (said(one), said(two)) == ("read", "read")
        outcomes = [process.communicate("go\n")[0] for process in (one, two)]
    assert outcomes[0].strip() == "saved"
    assert outcomes[1].startswith("CaseChangedError 1 measurements.csv in ")
    assert "read the case again" in outcomes[1]
    assert [r.id for r in read_case(folder).readings] == ["one"]


def test_two_processes_saving_at_the_same_moment_lose_nothing(folder):
    """However they interleave, what is said to be saved is there, and nothing else is."""
    for turn in range(4):
        names = (f"a{turn}", f"b{turn}")
        with started(ADD, folder, names[0]) as one, started(ADD, folder, names[1]) as two:
            assert (said(one), said(two)) == ("read", "read")
            for process in (one, two):
                assert process.stdin is not None
                process.stdin.write("go\n")
                process.stdin.flush()
            told = {name: said(process) for name, process in zip(names, (one, two), strict=True)}
        found = {r.id for r in read_case(folder).readings}
        saved = {name for name, words in told.items() if words == "saved"}
        assert saved
        assert found & set(names) == saved
        refused = [words for words in told.values() if words != "saved"]
        assert all(words.startswith(("CaseChangedError", "CaseLockedError")) for words in refused)


@pytest.mark.parametrize("wait_ms", [3, 11, 17, 23, 31, 42, 57, 70])
def test_a_process_killed_while_saving_loses_nothing_it_had_said_was_saved(folder, wait_ms):
    """Killed for real, at whatever instant: the case reads, and every save that was said to be stands."""
    with started(SAVE_ON_AND_ON, folder) as process:
        count = int(said(process))
        time.sleep(wait_ms / 1000)
        process.send_signal(signal.SIGKILL)
        rest = process.communicate()[0].split()
    last = int(rest[-1]) if rest else count
    case = read_case(folder)
    assert len(case.readings) in (last, last + 1)
    assert [r.id for r in case.readings] == [f"n{n}" for n in range(len(case.readings))]
    assert len(case.with_readings(flexion()).save().readings) == len(case.readings) + 1


def test_reading_while_another_process_saves_gives_one_moment(folder):
    """A reader without a lock never sees half a save, and never waits for the writer."""
    with started(SAVE_ON_AND_ON, folder) as process:
        said(process)
        counts = [len(read_case(folder).readings) for _ in range(30)]
        process.send_signal(signal.SIGKILL)
        process.communicate()
    assert counts == sorted(counts)
    assert counts[-1] > counts[0] > 0


def test_a_save_begun_by_a_living_process_is_counted_in(folder, monkeypatch):
    """Its line is in the journal and its lock is held: the new case is read, without touching a file."""
    monkeypatch.setattr(folder_module, "LOCK_WAIT_S", 0.1)
    read_case(folder).with_readings(flexion()).save()
    old, new = _last_save_half_done(folder)
    with locked(folder):
        found = read_folder(folder)
        assert found.contents["measurements.csv"] == new
        assert (folder / "measurements.csv").read_bytes() == old
        assert "not yet in measurements.csv" in found.problems[0].sentence()


def _last_save_half_done(folder: Path) -> tuple[bytes, bytes]:
    """Take the last save back to the moment after its line was written; the table before and after."""
    lines = (folder / JOURNAL).read_bytes().splitlines(keepends=True)
    (folder / JOURNAL).write_bytes(b"".join(lines[:-1]))
    new = (folder / "measurements.csv").read_bytes()
    old = b"".join(new.splitlines(keepends=True)[:1])
    (folder / "measurements.csv").write_bytes(old)
    return old, new


def test_a_folder_that_never_rests_is_not_read_as_a_mixture(folder, monkeypatch):
    """If the journal moves between every two looks, reading gives up in words."""
    real, turn = folder_module._bytes_of, iter(range(1000))

    def moving(place: Path) -> bytes | None:
        return b"%d\n" % next(turn) if place.name == JOURNAL else real(place)

    monkeypatch.setattr(folder_module, "_bytes_of", moving)
    with pytest.raises(CaseLockedError, match="all the time"):
        read_folder(folder)


def test_a_changed_case_names_the_way_out(folder):
    """The sentence of the second save says to read again, or where else to save."""
    first, second = read_case(folder), read_case(folder)
    first.with_readings(flexion("one")).save()
    with pytest.raises(CaseChangedError, match=r"read the case again with read_case and add it there"):
        second.with_readings(flexion("two")).save()
    assert os.path.exists(folder / "measurements.csv")
