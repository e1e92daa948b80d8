"""Changing several files of a case in one step that is either whole or not there at all.

The order is what makes it safe. Under the lock: the new files are staged beside the old ones, the
journal gets one line that holds every change, and only then the files take their new names; a last
line says that all is done. Before the journal line is on the disk, the old case stands; from then on
the new one does, and reading finishes whatever is left.
"""

from __future__ import annotations

import contextlib
import errno
from collections.abc import Iterator, Mapping
from pathlib import Path

from kneecase.errors import SaveError
from kneecase.record import disk
from kneecase.record.edits import FileEdit, edit_between
from kneecase.record.folder import CASE_FILES, journal_of, locked, real_place, recover
from kneecase.record.journal import JOURNAL, Journal, JournalEntry, utc_now

__all__ = ["changing", "commit", "made_folder", "refuse_a_case_in"]


@contextlib.contextmanager
def changing(folder: Path) -> Iterator[Journal]:
    """Hold the lock of ``folder`` with every earlier save settled; gives the journal.

    Raises
    ------
    CaseLockedError
        If another program is saving.
    SaveError
        If the disk refuses, in a sentence that says what to do.
    """
    try:
        with locked(folder):
            yield recover(folder)
    except OSError as error:
        raise SaveError(_refusal(folder, error)) from error


def commit(
    folder: Path,
    journal: Journal,
    *,
    kind: str,
    before: Mapping[str, bytes | None],
    after: Mapping[str, bytes | None],
    of: int | None = None,
) -> None:
    """Under the lock: take the files of ``after`` from ``before`` to ``after``, as one journal entry.

    ``None`` stands for a file that is not there. When this returns, the new files stand, if need be
    in the journal alone; when it raises, the old ones do.

    Raises
    ------
    OSError
        If the disk refuses; nothing was changed.
    """
    edits = tuple(edit_between(name, before.get(name), content) for name, content in after.items())
    entry = JournalEntry(number=journal.next_number, kind=kind, time=utc_now(), edits=edits, of=of)
    staged: dict[str, Path] = {}
    try:
        for name, content in after.items():
            if content is not None:
                staged[name] = disk.staged(_writable(real_place(folder, name)), content)
        _begin(folder, entry, journal)
        if _put_in_place(folder, entry, journal, staged):
            with contextlib.suppress(OSError):
                disk.append_durably(folder / JOURNAL, entry.done_line())
    except OSError:
        for place in staged.values():
            with contextlib.suppress(OSError):
                disk.take_away(place)
        raise


def made_folder(folder: Path) -> None:
    """Make the folder ``folder``, and those above it, where they are not there yet.

    Raises
    ------
    SaveError
        If it cannot be made, or a file of that name is in the way.
    """
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise SaveError(
            f"The folder {folder} could not be made: {error.strerror or error}. Nothing was written. "
            "Choose another place."
        ) from error


def refuse_a_case_in(folder: Path) -> None:
    """Refuse a folder that already holds a case or the journal of one.

    Raises
    ------
    SaveError
        If it does; nothing is written.
    """
    found = [name for name in (*CASE_FILES, JOURNAL) if (folder / name).exists()]
    if found:
        raise SaveError(
            f"{folder} already holds a case ({', '.join(found)}), and nothing was written over it. "
            "Choose a folder that does not exist yet or is empty."
        )


def _begin(folder: Path, entry: JournalEntry, journal: Journal) -> None:
    """Write the entry down; from here on the save stands."""
    try:
        disk.append_durably(folder / JOURNAL, entry.begin_line())
        disk.flush_folder(folder)
    except OSError as error:
        if _withdraw(folder, journal):
            raise
        raise SaveError(
            f"The disk failed while the case in {folder} was saved ({error.strerror}), and it is not certain "
            "whether this save stands. Save it to another folder with case.save(path), then read this again."
        ) from error


def _put_in_place(folder: Path, entry: JournalEntry, journal: Journal, staged: Mapping[str, Path]) -> bool:
    """Let every file take its new name; false where the rest is left for reading to finish."""
    moved = 0
    try:
        for edit in entry.edits:
            _move(edit, real_place(folder, edit.name), staged)
            moved += 1
        for parent in {real_place(folder, edit.name).parent for edit in entry.edits}:
            disk.flush_folder(parent)
    except OSError:
        if moved == 0 and _withdraw(folder, journal):
            raise
        return False
    return True


def _move(edit: FileEdit, target: Path, staged: Mapping[str, Path]) -> None:
    if edit.name in staged:
        disk.put_in_place(staged[edit.name], target)
    else:
        disk.take_away(target)


def _withdraw(folder: Path, journal: Journal) -> bool:
    """Cut the entry off the journal again, before any file was touched; whether it is off."""
    with contextlib.suppress(OSError):
        disk.cut_back(folder / JOURNAL, journal.sound_size)
    return journal_of(folder).next_number == journal.next_number


def _writable(target: Path) -> Path:
    """The file itself, refused where it is marked read-only, which replacing it would pass over."""
    if target.exists() and not target.stat().st_mode & 0o222:
        raise PermissionError(errno.EACCES, "the file is marked read-only", str(target))
    return target


def _refusal(folder: Path, error: OSError) -> str:
    what = f"The case in {folder} could not be saved"
    if error.errno in (errno.ENOSPC, errno.EDQUOT):
        why = "the disk is full"
    elif error.errno in (errno.EROFS, errno.EACCES, errno.EPERM):
        why = f"{error.filename or folder} may not be written (read-only)"
    else:
        why = error.strerror or str(error)
    return (
        f"{what}: {why}. What is on the disk is as it was, and nothing you entered is lost: "
        "save it to another folder with case.save(path), or mend this and save again."
    )
