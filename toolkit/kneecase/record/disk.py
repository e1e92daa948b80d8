"""Writing that survives a power cut: staged beside the file, flushed, then put in place."""

from __future__ import annotations

import contextlib
import os
from pathlib import Path

__all__ = [
    "append_durably",
    "cut_back",
    "flush_folder",
    "leftovers",
    "put_in_place",
    "staged",
    "take_away",
]

_STAGED = ".kneecase-new"


def staged(target: Path, content: bytes) -> Path:
    """Write ``content`` to a new file beside ``target`` and flush it to the disk; ``target`` is untouched.

    Owner and permissions are those of ``target`` where there is one. On any failure the new
    file is taken away again and the ``OSError`` goes on.
    """
    place = target.parent / f".{target.name}{_STAGED}"
    with contextlib.suppress(FileNotFoundError):
        os.unlink(place)
    try:
        handle = os.open(place, os.O_WRONLY | os.O_CREAT | os.O_EXCL | getattr(os, "O_BINARY", 0), 0o666)
        try:
            _keep_permissions(handle, target)
            _write_all(handle, content)
            os.fsync(handle)
        finally:
            os.close(handle)
    except OSError:
        with contextlib.suppress(OSError):
            os.unlink(place)
        raise
    return place


def put_in_place(place: Path, target: Path) -> None:
    """Let the staged file ``place`` take the name ``target`` in one step."""
    os.replace(place, target)


def take_away(target: Path) -> None:
    """Remove a file; one that is not there is already away."""
    with contextlib.suppress(FileNotFoundError):
        os.unlink(target)


def leftovers(target: Path) -> tuple[Path, ...]:
    """Files that a killed process staged beside ``target`` and never put in place."""
    place = target.parent / f".{target.name}{_STAGED}"
    return (place,) if place.exists() else ()


def append_durably(target: Path, content: bytes) -> None:
    """Add ``content`` at the end of ``target`` and flush it to the disk.

    On failure the new end is cut off again, as far as the disk allows, and the ``OSError`` goes on.
    """
    handle = os.open(target, os.O_RDWR | os.O_CREAT | getattr(os, "O_BINARY", 0), 0o666)
    try:
        size = os.lseek(handle, 0, os.SEEK_END)
        try:
            _write_all(handle, content)
            os.fsync(handle)
        except OSError:
            with contextlib.suppress(OSError):
                os.ftruncate(handle, size)
                os.fsync(handle)
            raise
    finally:
        os.close(handle)


def cut_back(target: Path, size: int) -> None:
    """Keep only the first ``size`` bytes of ``target``, and flush that to the disk."""
    handle = os.open(target, os.O_RDWR | getattr(os, "O_BINARY", 0))
    try:
        os.ftruncate(handle, size)
        os.fsync(handle)
    finally:
        os.close(handle)


def flush_folder(folder: Path) -> None:
    """Flush the names in ``folder`` to the disk, where the system has such a thing."""
    if os.name == "nt":  # pragma: no cover
        return
    handle = os.open(folder, os.O_RDONLY)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)


def _write_all(handle: int, content: bytes) -> None:
    rest = memoryview(content)
    while rest:
        rest = rest[os.write(handle, rest) :]


def _keep_permissions(handle: int, target: Path) -> None:
    """Give the open file the owner and permissions of ``target``; an owner that may not be given is left."""
    try:
        known = os.stat(target)
    except FileNotFoundError:
        return
    if hasattr(os, "fchown"):
        with contextlib.suppress(OSError):
            os.fchown(handle, known.st_uid, known.st_gid)
    if hasattr(os, "fchmod"):
        os.fchmod(handle, known.st_mode & 0o7777)
