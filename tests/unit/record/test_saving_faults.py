"""Saving when the machine fails: killed at any instant, full disk, read-only folder, power cut."""

from __future__ import annotations

import errno
import os
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from kneecase.errors import CaseError, SaveError
from kneecase.record import disk
from kneecase.record.commit import changing, commit
from kneecase.record.edits import edit_between
from kneecase.record.folder import journal_of, read_folder
from kneecase.record.journal import JOURNAL, JournalEntry

Contents = dict[str, bytes | None]
At = Callable[[int, str, tuple[Any, ...]], None]

OLD: Contents = {"case.toml": b"old toml\n", "measurements.csv": b"date\none\n", "visits.csv": None}
NEW: Contents = {"case.toml": b"new\n", "measurements.csv": b"date\none\ntwo\n", "visits.csv": b"v\n"}
STEPS = ("open", "write", "fsync", "replace", "unlink", "ftruncate", "fchmod", "fchown", "close")


def on_disk(contents: Contents) -> dict[str, bytes]:
    return {name: content for name, content in contents.items() if content is not None}


def folder_with(path: Path, contents: Contents = OLD) -> Path:
    path.mkdir(parents=True)
    for name, content in on_disk(contents).items():
        (path / name).write_bytes(content)
    return path


def change(folder: Path, before: Contents = OLD, after: Contents = NEW) -> None:
    with changing(folder) as journal:
        commit(folder, journal, kind="save", before=before, after=after)


class Faults:
    """Calls of the operating system counted, and something done at chosen ones."""

    def __init__(self, monkeypatch: pytest.MonkeyPatch, at: At) -> None:
        self.calls: list[tuple[str, tuple[Any, ...]]] = []
        for name in STEPS:
            monkeypatch.setattr(os, name, self._watched(name, getattr(os, name), at))

    def _watched(self, name: str, real: Callable[..., Any], at: Callable[..., None]) -> Callable[..., Any]:
        def call(*args: Any, **kwargs: Any) -> Any:
            self.calls.append((name, args))
            at(len(self.calls), name, args)
            return real(*args, **kwargs)

        return call


def steps_of(tmp_path: Path, action: Callable[[Path], None]) -> list[tuple[str, tuple[Any, ...]]]:
    """The calls that one undisturbed run makes."""
    with pytest.MonkeyPatch.context() as patch:
        faults = Faults(patch, lambda *_: None)
        action(tmp_path)
        return faults.calls


def killed_at(step: int, action: Callable[[], None]) -> int:
    """Run ``action`` in a process that dies at its ``step``-th call, half-way through a write."""
    child = os.fork()
    if child:
        return os.waitstatus_to_exitcode(os.waitpid(child, 0)[1])
    code = 70
    try:  # pragma: no cover - runs in the child
        real_write = os.write
        with pytest.MonkeyPatch.context() as patch:

            def die(number: int, name: str, args: tuple[Any, ...]) -> None:
                if number == step:
                    if name == "write":
                        real_write(args[0], args[1][: len(args[1]) // 2])
                    os._exit(9)

            Faults(patch, die)
            action()
        code = 0
    finally:
        os._exit(code)


# The sequence of calls has well under this many steps; the last ones run to the end undisturbed.
MANY = 60


def test_many_is_more_than_one_save_takes(tmp_path):
    """The steps tried below cover the whole save."""
    folder = folder_with(tmp_path / "a")
    assert 20 < len(steps_of(folder, change)) < MANY


@pytest.mark.skipif(not hasattr(os, "fork"), reason="needs a system that can fork")
@pytest.mark.parametrize("step", range(1, MANY + 1))
def test_killed_at_any_step_the_case_is_the_old_or_the_new_one(tmp_path, step):
    """Never a mixture of files, never unreadable, and the next save goes through and cleans up."""
    folder = folder_with(tmp_path / "a")
    code = killed_at(step, lambda: change(folder))
    assert code in (0, 9)
    found = read_folder(folder)
    assert found.contents in (on_disk(OLD), on_disk(NEW))
    assert found.problems == ()
    if code == 0:
        assert found.contents == on_disk(NEW)
    third = {**NEW, "visits.csv": b"v\n3\n"}
    change(folder, dict(found.contents), third)
    assert read_folder(folder).contents == on_disk(third)
    assert sorted(p.name for p in folder.iterdir()) == sorted([*third, JOURNAL, ".lock"])
    assert journal_of(folder).damaged_lines == ()


@pytest.mark.skipif(not hasattr(os, "fork"), reason="needs a system that can fork")
@pytest.mark.parametrize("step", range(1, 40))
def test_killed_while_finishing_a_cut_off_save_it_is_finished_the_next_time(tmp_path, step):
    """Finishing may itself be cut off at any step, and again."""
    folder = folder_with(tmp_path / "a")
    begin_only(folder)
    code = killed_at(step, lambda: (read_folder(folder), None)[1])
    assert code in (0, 9)
    found = read_folder(folder)
    assert (found.contents, found.problems) == (on_disk(NEW), ())
    assert journal_of(folder).pending is None


@pytest.mark.skipif(not hasattr(os, "fork"), reason="needs a system that can fork")
@pytest.mark.parametrize("step", range(1, MANY + 1))
def test_killed_while_a_file_is_taken_away_the_case_is_the_old_or_the_new_one(tmp_path, step):
    """Going back to where there was no file is as safe as going forward."""
    folder = folder_with(tmp_path / "a", NEW)
    killed_at(step, lambda: change(folder, NEW, OLD))
    assert read_folder(folder).contents in (on_disk(OLD), on_disk(NEW))


def begin_only(folder: Path) -> None:
    """A save cut off right after its line in the journal, with one file already in place."""
    edits = tuple(edit_between(name, OLD[name], NEW[name]) for name in NEW)
    entry = JournalEntry(number=1, kind="save", time="2026-03-02T10:00:00+00:00", edits=edits)
    (folder / JOURNAL).write_bytes(entry.begin_line())
    (folder / "case.toml").write_bytes(NEW["case.toml"] or b"")


def refused(folder: Path, at: At) -> str:
    """The sentence with which a save is refused; empty where it went through."""
    with pytest.MonkeyPatch.context() as patch:
        Faults(patch, at)
        try:
            change(folder)
        except SaveError as error:
            return str(error)
    return ""


def fails(code: int, when: Callable[[int, str], bool]) -> At:
    """At chosen calls the operating system refuses; opening what is there already does not count as one."""

    def at(number: int, name: str, args: tuple[Any, ...]) -> None:
        is_old = name == "open" and not args[1] & os.O_CREAT
        if when(number, name) and not (is_old and code == errno.ENOSPC):
            raise OSError(code, os.strerror(code), str(args[0]) if args else None)

    return at


@pytest.mark.parametrize("code", [errno.ENOSPC, errno.EIO, errno.EROFS])
@pytest.mark.parametrize("step", range(1, MANY))
def test_one_refused_call_means_all_or_nothing(tmp_path, step, code):
    """Refused: the old files to the byte and no sign of the attempt. Not refused: the new ones."""
    folder = folder_with(tmp_path / "a")
    said = refused(folder, fails(code, lambda number, name: number == step and name != "close"))
    found = read_folder(folder).contents
    assert found == on_disk(OLD if said else NEW)
    if said:
        assert "nothing you entered is lost" in said
        assert {p.name for p in folder.iterdir()} <= {*on_disk(OLD), JOURNAL, ".lock"}
        change(folder)
    assert read_folder(folder).contents == on_disk(NEW)


@pytest.mark.parametrize("step", range(1, MANY))
def test_a_disk_that_stays_full_refuses_and_changes_nothing(tmp_path, step):
    """From some write on every write is refused, as on a full disk; removing files still works."""
    writes = ("write", "fsync", "open")
    folder = folder_with(tmp_path / "a")
    said = refused(folder, fails(errno.ENOSPC, lambda number, name: number >= step and name in writes))
    assert read_folder(folder).contents == on_disk(OLD if said else NEW)
    if said:
        assert "the disk is full" in said
        assert "case.save(path)" in said


@pytest.mark.parametrize("step", range(1, MANY))
def test_a_disk_that_dies_leaves_the_old_or_the_new_case_and_says_so(tmp_path, step):
    """When every call fails from some step on, even taking back, the sentence does not promise too much."""
    folder = folder_with(tmp_path / "a")
    said = refused(folder, fails(errno.EIO, lambda number, name: number >= step and name != "close"))
    found = read_folder(folder).contents
    if "not certain" in said:
        assert found in (on_disk(OLD), on_disk(NEW))
    else:
        assert found == on_disk(OLD if said else NEW)


@pytest.mark.parametrize("code", [errno.EROFS, errno.EACCES])
def test_a_read_only_folder_is_refused_by_name(tmp_path, code):
    """Nothing can be made in it: the sentence says read-only and where else to save."""
    folder = folder_with(tmp_path / "a")
    said = refused(folder, fails(code, lambda _, name: name == "open"))
    assert "read-only" in said
    assert "case.save(path)" in said
    assert sorted(p.name for p in folder.iterdir()) == sorted(on_disk(OLD))


def test_a_file_marked_read_only_is_not_passed_over(tmp_path):
    """Replacing a file would not ask for its permission, so it is asked before."""
    folder = folder_with(tmp_path / "a")
    (folder / "measurements.csv").chmod(0o444)
    with pytest.raises(SaveError, match=r"measurements\.csv may not be written"):
        change(folder)
    assert read_folder(folder).contents == on_disk(OLD)
    assert not (folder / JOURNAL).exists()


def test_a_cut_off_save_is_finished_in_memory_where_the_folder_is_read_only(tmp_path, monkeypatch):
    """The case is the new one, the files are left, and a warning says how to finish it."""
    folder = folder_with(tmp_path / "a")
    begin_only(folder)
    before = {p.name: p.read_bytes() for p in folder.iterdir()}
    with pytest.MonkeyPatch.context() as patch:
        Faults(patch, fails(errno.EROFS, lambda _, name: name in ("open", "replace", "unlink")))
        found = read_folder(folder)
    assert found.contents == on_disk(NEW)
    assert "finishes it" in found.problems[0].sentence()
    assert {p.name: p.read_bytes() for p in folder.iterdir()} == before
    assert read_folder(folder).problems == ()


def test_a_file_changed_by_hand_after_a_cut_off_save_is_named_and_nothing_is_touched(tmp_path):
    """Neither before nor after: the sentence says where the text of the save is kept."""
    folder = folder_with(tmp_path / "a")
    begin_only(folder)
    (folder / "measurements.csv").write_bytes(b"by hand\n")
    before = {p.name: p.read_bytes() for p in folder.iterdir()}
    for _ in range(2):
        with pytest.raises(CaseError, match=r"measurements.csv: .*changed by hand.*journal.jsonl, entry 1"):
            read_folder(folder)
    with pytest.raises(CaseError, match="changed by hand"):
        change(folder)
    assert {p.name: p.read_bytes() for p in folder.iterdir() if p.name != ".lock"} == before


def test_everything_is_flushed_before_what_relies_on_it(tmp_path):
    """New files, then the journal's line, then the new names, then the folder, then the last line."""
    folder = folder_with(tmp_path / "a", NEW)
    opened: dict[int, str] = {}
    order: list[str] = []
    real_open = os.open

    def remember(path: Any, *args: Any, **kwargs: Any) -> int:
        handle = real_open(path, *args, **kwargs)
        opened[handle] = Path(path).name
        return handle

    def note(_: int, name: str, args: tuple[Any, ...]) -> None:
        if name == "fsync":
            order.append(f"flush {opened[args[0]]}")
        elif name == "replace":
            order.append(f"name {Path(args[1]).name}")

    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(os, "open", remember)
        Faults(patch, note)
        change(folder, NEW, {"case.toml": b"3\n", "visits.csv": b"3\n"})
    staged = [".case.toml.kneecase-new", ".visits.csv.kneecase-new"]
    assert order == [
        *(f"flush {name}" for name in staged),
        *(f"flush {JOURNAL}", "flush a"),
        *("name case.toml", "name visits.csv", "flush a", f"flush {JOURNAL}"),
    ]


def test_permissions_and_links_stay(tmp_path):
    """A file keeps its permissions, and a link stays a link to the file that is written."""
    folder = folder_with(tmp_path / "a")
    (folder / "case.toml").chmod(0o640)
    real = tmp_path / "elsewhere.csv"
    (folder / "measurements.csv").rename(real)
    (folder / "measurements.csv").symlink_to(real)
    change(folder)
    assert (folder / "case.toml").stat().st_mode & 0o777 == 0o640
    assert (folder / "measurements.csv").is_symlink()
    assert real.read_bytes() == NEW["measurements.csv"]


def test_a_staged_file_of_a_killed_process_is_cleared_away(tmp_path):
    """What was staged and never put in place does not pile up, and its text is never used."""
    folder = folder_with(tmp_path / "a")
    disk.staged(folder / "visits.csv", b"half a sa")
    change(folder)
    assert read_folder(folder).contents == on_disk(NEW)
    assert disk.leftovers(folder / "visits.csv") == ()
