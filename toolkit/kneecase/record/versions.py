"""Earlier versions of a case: the list of its saves, and stepping back and forth through them."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Literal

from kneecase.errors import CaseChangedError, SaveError
from kneecase.record.commit import changing, commit
from kneecase.record.edits import FileEdit, content_hash
from kneecase.record.folder import content_of, journal_of
from kneecase.record.journal import JournalEntry

if TYPE_CHECKING:
    from kneecase.record.case import Case

__all__ = ["Version", "redo", "undo", "versions"]


@dataclass(frozen=True, kw_only=True)
class Version:
    """One entry of a case's journal: when [UTC], what kind, which files; ``stands`` unless taken back."""

    number: int
    time: str
    kind: str
    files: tuple[str, ...]
    stands: bool


def versions(path: str | Path) -> tuple[Version, ...]:
    """Every creation, save, undo and redo of the case in ``path``, oldest first.

    Parameters
    ----------
    path : str or Path
        The case folder.

    Returns
    -------
    tuple of Version
        Empty where nothing was saved with kneecase yet.

    Examples
    --------
    >>> versions("no-such-folder")
    ()
    """
    journal = journal_of(Path(path))
    away = {entry.number for entry in journal.taken_back()}
    return tuple(
        Version(
            number=entry.number,
            time=entry.time,
            kind=entry.kind,
            files=tuple(edit.name for edit in entry.edits),
            stands=entry.number not in away,
        )
        for entry in journal.entries
    )


def undo(path: str | Path) -> Case:
    """The case in ``path`` as it was before its last save, on disk and returned.

    Taking back is itself an entry of the journal, so nothing is lost: :func:`redo` does the save
    again. Undoing twice goes two saves back.

    Parameters
    ----------
    path : str or Path
        The case folder.

    Returns
    -------
    Case
        The case as it now stands on disk.

    Raises
    ------
    CaseChangedError
        If a file was changed outside kneecase since that save.
    CaseLockedError
        If another program is saving the case at this moment.
    SaveError
        If there is no save to take back, or the folder cannot be written.
    """
    return _stepped(Path(path), "undo")


def redo(path: str | Path) -> Case:
    """The case in ``path`` with the save that was last undone done again, on disk and returned.

    Parameters
    ----------
    path : str or Path
        The case folder.

    Returns
    -------
    Case
        The case as it now stands on disk.

    Raises
    ------
    CaseChangedError
        If a file was changed outside kneecase since the undo.
    CaseLockedError
        If another program is saving the case at this moment.
    SaveError
        If nothing was undone since the last save, or the folder cannot be written.
    """
    return _stepped(Path(path), "redo")


def _stepped(folder: Path, kind: Literal["undo", "redo"]) -> Case:
    from kneecase.record.reading import read_case

    if not folder.is_dir():
        raise SaveError(f"There is no case folder {folder}.")
    with changing(folder) as journal:
        entry = _to_step(journal.standing() if kind == "undo" else journal.taken_back(), kind, folder)
        edits = tuple(edit.reversed() if kind == "undo" else edit for edit in entry.edits)
        before = {edit.name: content_of(folder, edit.name) for edit in edits}
        after = {edit.name: _stepped_content(edit, before[edit.name], entry, kind) for edit in edits}
        commit(folder, journal, kind=kind, before=before, after=after, of=entry.number)
    return read_case(folder)


def _to_step(entries: tuple[JournalEntry, ...], kind: Literal["undo", "redo"], folder: Path) -> JournalEntry:
    if kind == "redo" and not entries:
        raise SaveError(f"There is nothing to redo: no save of {folder} was undone since the last one.")
    if not entries or entries[-1].kind == "create":
        raise SaveError(f"The case in {folder} has no earlier version: nothing was saved over it.")
    return entries[-1]


def _stepped_content(edit: FileEdit, content: bytes | None, entry: JournalEntry, kind: str) -> bytes | None:
    """The file with ``edit`` made, refused where it is not as kneecase left it."""
    if content_hash(content) != edit.before:
        raise CaseChangedError(
            f"{edit.name} was changed outside kneecase since it was last saved, so the {kind} of the save of "
            f"{entry.time} would lose that change and nothing was done. Read the case, look at what changed, "
            "and correct it by hand or save again."
        )
    try:
        return edit.applied(content)
    except ValueError as error:
        raise SaveError(f"The {kind} cannot be made: {error} Nothing was changed.") from None
