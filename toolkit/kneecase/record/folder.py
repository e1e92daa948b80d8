"""The case folder on disk: its files as one consistent whole, whatever was interrupted.

Reading waits for nobody. It takes a lock only to finish a save that a killed process left
half done, and where the folder cannot be written it finishes that save in memory.
"""

from __future__ import annotations

import contextlib
import errno
import os
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from kneecase.errors import CaseError, CaseLockedError, Problem
from kneecase.record import disk
from kneecase.record.edits import CASE_FILES, FileEdit, content_hash
from kneecase.record.journal import JOURNAL, Journal, JournalEntry, journal_from

__all__ = [
    "CASE_FILES",
    "FolderContents",
    "content_of",
    "journal_of",
    "locked",
    "read_folder",
    "real_place",
    "recover",
]

LOCK_FILE = ".lock"
LOCK_WAIT_S = 2.0
_TRIES = 20


@dataclass(frozen=True)
class FolderContents:
    """The bytes of each file of a case and their SHA-256, all of one moment.

    ``problems`` are warnings about the folder itself: a save that could only be finished in
    memory, lines of the journal that are damaged.
    """

    contents: dict[str, bytes]
    fingerprint: dict[str, str]
    problems: tuple[Problem, ...] = ()


def read_folder(path: str | Path) -> FolderContents:
    """Every file of the case in the folder ``path``, as after the last save that was begun.

    A save that was cut off is finished first; where a file is a link to a place outside the folder,
    in memory only, so that reading a folder writes nowhere else. The folder may hold no case at all:
    then ``contents`` is empty.

    Raises
    ------
    CaseError
        If there is no such folder, a file cannot be read, or a file was changed by hand
        while a save of it was unfinished.
    CaseLockedError
        If another program keeps saving so often that no consistent moment is found.
    """
    folder = Path(path)
    _check_is_folder(folder)
    pending = journal_of(folder).pending
    if pending is not None and not _leads_out(folder, pending):
        with contextlib.suppress(CaseLockedError, OSError), locked(folder):
            recover(folder)
    for _ in range(_TRIES):
        before = _bytes_of(folder / JOURNAL)
        contents = {name: content_of(folder, name) for name in CASE_FILES}
        if _bytes_of(folder / JOURNAL) == before:
            return _settled(contents, journal_from(before or b""))
    raise CaseLockedError(f"{folder} is being saved by another program all the time. Try again in a moment.")


@contextlib.contextmanager
def locked(folder: Path) -> Iterator[None]:
    """Hold the case's lock, so that one program at a time changes the folder.

    Raises
    ------
    CaseLockedError
        If another program holds the lock for longer than two seconds.
    OSError
        If the folder cannot be written.
    """
    from filelock import FileLock, Timeout

    if (folder / LOCK_FILE).is_symlink():  # locking empties the file that the link leads to
        raise OSError(errno.ELOOP, f"{LOCK_FILE} is a link: delete it", str(folder / LOCK_FILE))
    lock = FileLock(str(folder / LOCK_FILE), timeout=LOCK_WAIT_S)
    try:
        lock.acquire()
    except Timeout:
        raise CaseLockedError(
            f"Another program is saving the case in {folder} at this moment, so nothing was written and "
            "nothing is lost. Try again in a moment, or save to another folder: case.save(path)."
        ) from None
    try:
        yield
    finally:
        lock.release()


def recover(folder: Path) -> Journal:
    """Under the lock: cut off a torn end of the journal and finish a save that was begun.

    Raises
    ------
    CaseError
        If a file is neither as before nor as after the unfinished save.
    OSError
        If the folder cannot be written.
    """
    journal = journal_of(folder)
    place = folder / JOURNAL
    if place.exists() and place.stat().st_size > journal.sound_size:
        disk.cut_back(place, journal.sound_size)
    if journal.pending is not None:
        _finish(folder, journal.pending)
        disk.append_durably(place, journal.pending.done_line())
    for name in CASE_FILES:
        for leftover in disk.leftovers(real_place(folder, name)):
            disk.take_away(leftover)
    return journal_of(folder)


def _finish(folder: Path, entry: JournalEntry) -> None:
    """Under the lock: bring every file of ``entry`` to its state after, from wherever it stands."""
    now = {edit.name: content_of(folder, edit.name) for edit in entry.edits}
    after = {edit.name: _rolled(edit, entry, now[edit.name]) for edit in entry.edits}
    for name, content in after.items():
        target = real_place(folder, name)
        if content == now[name]:
            continue
        if content is None:
            disk.take_away(target)
        else:
            disk.put_in_place(disk.staged(target, content), target)
    for parent in {real_place(folder, name).parent for name in after}:
        disk.flush_folder(parent)


def journal_of(folder: Path) -> Journal:
    """The journal of the case in ``folder``; an empty one where there is none."""
    return journal_from(_bytes_of(folder / JOURNAL) or b"")


def content_of(folder: Path, name: str) -> bytes | None:
    """The bytes of one file of the case, ``None`` where it is not there.

    Raises
    ------
    CaseError
        If it is there and cannot be read.
    """
    return _bytes_of(folder / name)


def real_place(folder: Path, name: str) -> Path:
    """Where the file really lies, behind any link, so that a link stays one."""
    return Path(os.path.realpath(folder / name))


def _leads_out(folder: Path, entry: JournalEntry) -> bool:
    """Whether a file of ``entry`` is a link to a place outside the folder, or the journal is a link."""
    home = Path(os.path.realpath(folder))
    names = [JOURNAL, *(edit.name for edit in entry.edits)]
    return any(real_place(folder, name).parent != home for name in names)


def _settled(contents: dict[str, bytes | None], journal: Journal) -> FolderContents:
    """The files as they stand once a pending save is counted in."""
    problems = [_damaged(line) for line in journal.damaged_lines]
    if journal.pending is not None:
        problems.append(_unfinished(journal.pending))
        for edit in journal.pending.edits:
            contents[edit.name] = _rolled(edit, journal.pending, contents.get(edit.name))
    found = {name: content for name, content in contents.items() if content is not None}
    hashes = {name: content_hash(content) for name, content in found.items()}
    return FolderContents(found, hashes, tuple(problems))


def _rolled(edit: FileEdit, entry: JournalEntry, content: bytes | None) -> bytes | None:
    """The file after ``edit``, from before or from after it; anything else is refused by name."""
    if content_hash(content) == edit.after:
        return content
    try:
        return edit.applied(content)
    except ValueError:
        raise CaseError([_neither(edit, entry)]) from None


def _bytes_of(place: Path) -> bytes | None:
    try:
        return place.read_bytes()
    except FileNotFoundError:
        return None
    except OSError as error:
        problem = Problem(
            severity="error",
            file=place.name,
            what=f"the file cannot be read ({error.strerror})",
            mend="See that it is a file and that you may read it.",
        )
        raise CaseError([problem]) from error


def _check_is_folder(folder: Path) -> None:
    if folder.is_dir():
        return
    what = "this is a file, not a case folder" if folder.exists() else "there is no such folder"
    mend = "Give the folder that holds case.toml, or make a new case with kneecase.new_case(path, ...)."
    raise CaseError([Problem(severity="error", file=str(folder), what=what, mend=mend)])


def _neither(edit: FileEdit, entry: JournalEntry) -> Problem:
    return Problem(
        severity="error",
        file=edit.name,
        what=f"a {entry.kind} begun at {entry.time} was cut off, and the file was changed by hand since",
        mend=f"Nothing is lost: the text of that {entry.kind} stands in {JOURNAL}, entry {entry.number}. "
        f"Put {edit.name} back as it was; or, to keep the files as they are now, rename {JOURNAL} "
        "and copy what is wanted out of it.",
    )


def _unfinished(entry: JournalEntry) -> Problem:
    names = ", ".join(edit.name for edit in entry.edits)
    return Problem(
        severity="warning",
        file=JOURNAL,
        what=f"the {entry.kind} of {entry.time} is whole in the journal and not yet in {names}",
        mend="It is counted in here; reading the case where its folder can be written finishes it.",
    )


def _damaged(line: int) -> Problem:
    return Problem(
        severity="warning",
        file=JOURNAL,
        row=line,
        what="this line is damaged and was passed over; the case itself is whole",
        mend="Earlier versions may not be had back past this line.",
    )
