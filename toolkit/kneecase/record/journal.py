"""The journal of a case: every save, one line when it begins and one when it is done, never rewritten.

Each line of ``journal.jsonl`` is one JSON object. A save is written down whole, with what it takes
out of each file and what it puts in, before any file is touched; so a save that was cut off can be
finished later, and one that is done can be taken back.
"""

from __future__ import annotations

import datetime as dt
import json
from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from typing import Any

from kneecase.errors import NewerFormatError
from kneecase.record.edits import FileEdit

__all__ = ["JOURNAL", "JOURNAL_FORMAT", "Journal", "JournalEntry", "journal_from", "utc_now"]

JOURNAL = "journal.jsonl"
JOURNAL_FORMAT = 1


@dataclass(frozen=True, kw_only=True)
class JournalEntry:
    """One entry: its number, kind, time, and the changes of files it makes.

    ``kind`` is ``"create"``, ``"save"``, ``"undo"`` or ``"redo"``; ``of`` is the number of the entry that
    an undo or redo takes back or does again. Other kinds may stand in a journal and are kept.
    """

    number: int
    kind: str
    time: str
    edits: tuple[FileEdit, ...] = ()
    of: int | None = None
    done: bool = False
    extra: Mapping[str, Any] = field(default_factory=dict, hash=False)

    def begin_line(self) -> bytes:
        """The line that stands in the journal before any file is touched."""
        values: dict[str, Any] = {
            "journal": JOURNAL_FORMAT,
            "entry": self.number,
            "stage": "begin",
            "kind": self.kind,
            "time": self.time,
            "files": [edit.as_json() for edit in self.edits],
        }
        if self.of is not None:
            values["of"] = self.of
        return _line({**values, **self.extra})

    def done_line(self) -> bytes:
        """The line that stands in the journal once every file is in place."""
        return _line({"journal": JOURNAL_FORMAT, "entry": self.number, "stage": "done", "time": utc_now()})


@dataclass(frozen=True, kw_only=True)
class Journal:
    """What the journal says: its entries, how many of its bytes are sound, and lines that are damaged."""

    entries: tuple[JournalEntry, ...] = ()
    sound_size: int = 0
    damaged_lines: tuple[int, ...] = ()

    @property
    def pending(self) -> JournalEntry | None:
        """The last entry, where it was begun and not done."""
        return self.entries[-1] if self.entries and not self.entries[-1].done else None

    @property
    def next_number(self) -> int:
        """The number the next entry gets."""
        return 1 + max((entry.number for entry in self.entries), default=0)

    def standing(self) -> tuple[JournalEntry, ...]:
        """Creations and saves that still stand, oldest first: those taken back by an undo are left out."""
        return self._stacks()[0]

    def taken_back(self) -> tuple[JournalEntry, ...]:
        """Saves taken back since the last save, in the order they can be done again, last first."""
        return self._stacks()[1]

    def _stacks(self) -> tuple[tuple[JournalEntry, ...], tuple[JournalEntry, ...]]:
        standing: list[JournalEntry] = []
        taken: list[JournalEntry] = []
        for entry in self.entries:
            if entry.kind == "undo" and standing:
                taken.append(standing.pop())
            elif entry.kind == "redo" and taken:
                standing.append(taken.pop())
            elif entry.kind in ("create", "save"):
                standing.append(entry)
                taken.clear()
        return tuple(standing), tuple(taken)


def journal_from(content: bytes) -> Journal:
    """The journal in ``content``; an end that was cut off in the middle of writing is left out.

    Raises
    ------
    NewerFormatError
        If a later kneecase wrote it.
    """
    lines = content.split(b"\n")[:-1]  # what follows the last newline was never finished
    read = [_read(line) for line in lines]
    while read and read[-1] is None:
        read.pop()
    sound = sum(len(line) + 1 for line in lines[: len(read)])
    damaged = tuple(number for number, values in enumerate(read, start=1) if values is None)
    entries: dict[int, JournalEntry] = {}
    for number, values in enumerate(read, start=1):
        if values is None:
            continue
        if not _take(entries, values):
            damaged = (*damaged, number)
    # A later entry is only begun once the one before is settled, so only the last can be pending.
    settled = [replace(entry, done=True) for entry in list(entries.values())[:-1]]
    return Journal(
        entries=(*settled, *list(entries.values())[-1:]),
        sound_size=sound,
        damaged_lines=tuple(sorted(damaged)),
    )


def utc_now() -> str:
    """The time now in UTC to the second, as ISO 8601 text."""
    return dt.datetime.now(dt.UTC).isoformat(timespec="seconds")


def _line(values: Mapping[str, Any]) -> bytes:
    return json.dumps(values, ensure_ascii=False, separators=(",", ":")).encode("utf-8") + b"\n"


def _read(line: bytes) -> dict[str, Any] | None:
    try:
        values = json.loads(line)
    except (ValueError, RecursionError):
        return None
    if not isinstance(values, dict):
        return None
    if isinstance(values.get("journal"), int) and values["journal"] > JOURNAL_FORMAT:
        raise NewerFormatError(
            f"{JOURNAL} was written by a later kneecase (journal format {values['journal']}; this one knows "
            f"{JOURNAL_FORMAT}). Update kneecase, then read the case again."
        )
    return values


def _take(entries: dict[int, JournalEntry], values: Mapping[str, Any]) -> bool:
    """Add one line to the entries; false if it should be an entry and is not a whole one."""
    try:
        if values.get("stage") == "begin":
            entry = _entry(values)
            entries[entry.number] = entry
        elif values.get("stage") == "done":
            number = int(values["entry"])
            entries[number] = replace(entries[number], done=True)
    except (KeyError, TypeError, ValueError, OverflowError):
        return False
    return True


_KNOWN = ("journal", "entry", "stage", "kind", "time", "files", "of")


def _entry(values: Mapping[str, Any]) -> JournalEntry:
    return JournalEntry(
        number=int(values["entry"]),
        kind=str(values["kind"]),
        time=str(values["time"]),
        edits=tuple(FileEdit.from_json(edit) for edit in values["files"]),
        of=None if values.get("of") is None else int(values["of"]),
        extra={key: value for key, value in values.items() if key not in _KNOWN},
    )
