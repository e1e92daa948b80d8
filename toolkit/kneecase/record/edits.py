"""One reversible change of one file: what was taken out, what was put in, and where."""

from __future__ import annotations

import base64
import hashlib
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

__all__ = ["CASE_FILES", "FileEdit", "content_hash", "edit_between"]

CASE_FILES = ("case.toml", "measurements.csv", "visits.csv", "measurements.xlsx")
"""The files that make up a case; anything else in a case folder is left alone."""


def content_hash(content: bytes | None) -> str:
    """SHA-256 of a file's bytes in hexadecimal; empty where there is no file."""
    return "" if content is None else hashlib.sha256(content).hexdigest()


@dataclass(frozen=True, kw_only=True)
class FileEdit:
    """The bytes ``removed`` at ``offset`` of the file ``name`` gave way to ``inserted``.

    ``before`` and ``after`` are the SHA-256 of the whole file on either side of the change,
    ``""`` where there was, or is, no such file. Old bytes are kept as they were, whatever
    their encoding, so the change can always be taken back exactly.
    """

    name: str
    before: str
    after: str
    offset: int = 0
    removed: bytes = b""
    inserted: bytes = b""

    def applied(self, content: bytes | None) -> bytes | None:
        """The file after the change, from the file before it.

        Raises
        ------
        ValueError
            If ``content`` is not the file this change was made from, or the change itself is damaged.
        """
        if content_hash(content) != self.before:
            raise ValueError(f"{self.name} is not the file this change was made from.")
        if not self.after:
            return None
        old = content or b""
        new = old[: self.offset] + self.inserted + old[self.offset + len(self.removed) :]
        if content_hash(new) != self.after:
            raise ValueError(f"the recorded change of {self.name} is damaged.")
        return new

    def reversed(self) -> FileEdit:
        """The change that takes this one back."""
        return FileEdit(
            name=self.name,
            before=self.after,
            after=self.before,
            offset=self.offset,
            removed=self.inserted,
            inserted=self.removed,
        )

    def as_json(self) -> dict[str, Any]:
        """Plain values for one line of the journal; bytes that are not UTF-8 go as base64."""
        return {
            "name": self.name,
            "before": self.before,
            "after": self.after,
            "offset": self.offset,
            **_bytes_as_json("removed", self.removed),
            **_bytes_as_json("inserted", self.inserted),
        }

    @classmethod
    def from_json(cls, values: Mapping[str, Any]) -> FileEdit:
        """The change that :meth:`as_json` wrote down.

        Raises
        ------
        KeyError, TypeError, ValueError
            If the values are not a change of one file of a case.
        """
        name = str(values["name"])
        if name not in CASE_FILES:
            raise ValueError(f"a file of a case must be named, got {name!r}.")
        return cls(
            name=name,
            before=str(values["before"]),
            after=str(values["after"]),
            offset=int(values["offset"]),
            removed=_bytes_from_json("removed", values),
            inserted=_bytes_from_json("inserted", values),
        )


def edit_between(name: str, before: bytes | None, after: bytes | None) -> FileEdit:
    """The smallest single change that turns ``before`` into ``after``, never cutting through a character."""
    old, new = before or b"", after or b""
    start = _common_start(old, new)
    while start and (_continues(old, start) or _continues(new, start)):
        start -= 1
    tail = _common_start(old[start:][::-1], new[start:][::-1])
    while tail and (_continues(old, len(old) - tail) or _continues(new, len(new) - tail)):
        tail -= 1
    return FileEdit(
        name=name,
        before=content_hash(before),
        after=content_hash(after),
        offset=start,
        removed=old[start : len(old) - tail],
        inserted=new[start : len(new) - tail],
    )


def _common_start(one: bytes, two: bytes) -> int:
    """How many bytes the two share at their start, by halving."""
    low, high = 0, min(len(one), len(two))
    while low < high:
        middle = (low + high + 1) // 2
        if one[low:middle] == two[low:middle]:
            low = middle
        else:
            high = middle - 1
    return low


def _continues(content: bytes, place: int) -> bool:
    return place < len(content) and 0x80 <= content[place] < 0xC0


def _bytes_as_json(key: str, content: bytes) -> dict[str, str]:
    try:
        return {key: content.decode("utf-8")}
    except UnicodeDecodeError:
        return {f"{key}_base64": base64.b64encode(content).decode("ascii")}


def _bytes_from_json(key: str, values: Mapping[str, Any]) -> bytes:
    if key in values:
        return str(values[key]).encode("utf-8")
    return base64.b64decode(values[f"{key}_base64"], validate=True)
