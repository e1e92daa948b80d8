"""Saving a case: to its own folder, over what was read from there, or to a new one.

What was typed is written as it was typed. A note that begins with ``=`` stays as it is: it is
the text of a record, so open the tables as text in a spreadsheet where notes come from others.
"""

from __future__ import annotations

import codecs
from collections.abc import Mapping
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING

from kneecase.errors import CaseChangedError, SaveError
from kneecase.record.commit import changing, commit, made_folder, refuse_a_case_in
from kneecase.record.folder import FolderContents, read_folder
from kneecase.record.same_case import differences
from kneecase.record.workbook import WORKBOOK
from kneecase.record.writing import Written, written

if TYPE_CHECKING:
    from kneecase.record.case import Case

__all__ = ["save_case"]


def save_case(case: Case, path: str | Path | None = None) -> Case:
    """Write the case to its folder, or to a new folder ``path``, and return it as it stands on disk.

    Only what differs is written: rows and comments that did not change stay as they were typed,
    unknown columns and keys stay, and a case without changes writes nothing. Files become UTF-8.
    A case that was read from ``measurements.xlsx`` is written as ``measurements.csv`` and
    ``visits.csv`` beside it, and from then on those count; the workbook is left as it is.

    The version before is kept in the journal (:func:`kneecase.record.undo`). A process killed at
    any instant leaves either the old case or the new one.

    Parameters
    ----------
    case : Case
        What to save.
    path : str or Path, optional
        A folder that holds no case yet; without it, the folder the case was read from.

    Returns
    -------
    Case
        The case read back, so that it can be changed and saved again.

    Raises
    ------
    CaseChangedError
        If a file changed on disk since this case was read. ``case`` itself still holds everything.
    CaseLockedError
        If another program is saving the case at this moment.
    SaveError
        If the folder cannot be written, already holds another case, or the case holds something
        that would not read back as it is; nothing was changed.
    """
    if path is None and case.path is None:
        raise SaveError("This case has no folder yet. Give one: case.save(path).")
    folder = Path(path) if path is not None else Path(case.path or ".")
    is_own = case.path is not None and folder.resolve() == Path(case.path).resolve()
    if is_own and not case.fingerprint:
        raise SaveError(
            f"This is only a part of the case in {folder}, as it was known on an earlier day or made without "
            "reading it, and saving it there would take the rest away. Save it to another folder: "
            "case.save(path)."
        )
    return _saved_in_place(case, folder) if is_own else _saved_anew(case, folder)


def _saved_in_place(case: Case, folder: Path) -> Case:
    if not folder.is_dir():
        raise SaveError(f"The folder {folder} is not there any more. Save to another: case.save(path).")
    if _is_as_in_workbook(case, folder):
        return case
    new = written(case, folder)
    changed = {name: text for name, text in new.texts.items() if text != case.texts.get(name)}
    if not changed:
        _refuse_changed(case, read_folder(folder), folder)
        return case
    with changing(folder) as journal:
        now = read_folder(folder)
        _refuse_changed(case, now, folder)
        after = {name: _encoded(text, now.contents.get(name)) for name, text in changed.items()}
        commit(folder, journal, kind="save", before=now.contents, after=after)
    return _read_back(new, folder)


def _is_as_in_workbook(case: Case, folder: Path) -> bool:
    """Whether the case was read from a workbook and still says what stands there."""
    from kneecase.record.reading import case_from_texts

    if WORKBOOK not in case.fingerprint or {"measurements.csv", "visits.csv"} <= set(case.texts):
        return False
    now = read_folder(folder)
    _refuse_changed(case, now, folder)
    return not differences(case, case_from_texts(now.contents, path=folder, fingerprint={}))


def _saved_anew(case: Case, folder: Path) -> Case:
    new = written(case, folder)
    after = {name: text.encode("utf-8") for name, text in new.texts.items()}
    if folder.is_dir() and read_folder(folder).contents == after:
        return _read_back(new, folder)
    made_folder(folder)
    with changing(folder) as journal:
        refuse_a_case_in(folder)
        commit(folder, journal, kind="create", before={}, after=after)
    return _read_back(new, folder)


def _read_back(new: Written, folder: Path) -> Case:
    """The case as it stands on disk; the text that was checked before writing is not parsed twice."""
    from kneecase.record.reading import read_case

    found = read_folder(folder)
    expected = {name: text.removeprefix("\ufeff") for name, text in new.texts.items()}
    on_disk = {name: _text(content) for name, content in found.contents.items()}
    if found.problems or on_disk != expected:
        return read_case(folder)
    return replace(new.case, path=folder, fingerprint=found.fingerprint, texts=expected)


def _text(content: bytes) -> str | None:
    try:
        return content.removeprefix(codecs.BOM_UTF8).decode("utf-8")
    except UnicodeDecodeError:
        return None


def _encoded(text: str, before: bytes | None) -> bytes:
    """UTF-8, with the mark at its start where the file had one."""
    mark = codecs.BOM_UTF8 if (before or b"").startswith(codecs.BOM_UTF8) else b""
    return mark + text.removeprefix("\ufeff").encode("utf-8")


def _refuse_changed(case: Case, now: FolderContents, folder: Path) -> None:
    names = _changed_names(case.fingerprint, now.fingerprint)
    if names:
        raise CaseChangedError(
            f"{', '.join(names)} in {folder} changed on disk since this case was read, so nothing was saved. "
            "Nothing you entered is lost: read the case again with read_case and add it there, or save this "
            "one to another folder with case.save(path)."
        )


def _changed_names(read: Mapping[str, str], now: Mapping[str, str]) -> list[str]:
    return sorted(name for name in {*read, *now} if read.get(name) != now.get(name))
