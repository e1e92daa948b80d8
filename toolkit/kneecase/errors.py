"""The few exceptions of kneecase and how their sentences are worded.

A sentence names the thing, states the rule with its unit, shows what came,
and says how to mend it. The same sentence stands in Python, on the command
line and on a page, so nobody ever has to read a traceback.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Literal

__all__ = [
    "CaseChangedError",
    "CaseError",
    "CaseLockedError",
    "InputError",
    "KneecaseError",
    "NewerFormatError",
    "Problem",
    "SaveError",
]

_SHOWN = 50


class KneecaseError(Exception):
    """Anything kneecase refuses, in a sentence a clinician can act on."""


class InputError(KneecaseError, ValueError):
    """A value given to a calculator breaks a rule that the sentence names."""


@dataclass(frozen=True, kw_only=True)
class Problem:
    """One fault or doubt found in a case: where, what came, what is allowed, how to mend it."""

    severity: Literal["error", "warning"]
    file: str
    what: str
    mend: str
    row: int | None = None
    column: str = ""
    value: str | None = None
    allowed: str = ""

    def sentence(self) -> str:
        """Where, what, what is allowed and how to mend it, as plain text on one line."""
        where = self.file
        if self.row is not None:
            where += f", row {self.row}"
        if self.column:
            where += f", column {self.column}"
        came = "" if self.value is None else f", got {_shortened(self.value)!r}"
        allowed = f" Allowed: {_stopped(self.allowed)}" if self.allowed else ""
        return f"{where}: {self.what}{came}.{allowed} {_stopped(self.mend)}"

    def __str__(self) -> str:
        return self.sentence()


class CaseError(KneecaseError):
    """A case cannot be read as it stands; ``problems`` holds every fault found, not just the first.

    The message shows the first fifty.
    """

    def __init__(self, problems: Iterable[Problem]) -> None:
        self.problems = tuple(problems)
        errors = [p for p in self.problems if p.severity == "error"]
        head = f"{len(errors)} problem{'' if len(errors) == 1 else 's'} to mend in this case:"
        lines = [f"- {p.sentence()}" for p in errors[:_SHOWN]]
        if len(errors) > _SHOWN:
            lines.append(f"- and {len(errors) - _SHOWN} more")
        super().__init__("\n".join([head, *lines]))


class NewerFormatError(KneecaseError):
    """The case was written by a later kneecase than this one."""


class SaveError(KneecaseError):
    """The case could not be saved; what is on disk is as it was."""


class CaseLockedError(SaveError):
    """Another program is saving this case at this moment."""


class CaseChangedError(SaveError):
    """The files changed on disk since this case was read, so saving would lose somebody's work."""


def _shortened(text: str, limit: int = 80) -> str:
    return text if len(text) <= limit else text[: limit - 1] + "…"


def _stopped(text: str) -> str:
    return text if text.endswith((".", "?", "!")) else text + "."
