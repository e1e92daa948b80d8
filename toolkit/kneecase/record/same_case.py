"""Whether a case reads back as it was: what is compared, and what may differ."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import fields, is_dataclass, replace
from numbers import Real
from typing import TYPE_CHECKING, Any

from kneecase.record.neutral_zero import extension_deg, is_neutral_zero
from kneecase.record.references import in_table, is_reference
from kneecase.record.rows import Reading, Visit

if TYPE_CHECKING:
    from kneecase.record.case import Case

__all__ = ["differences"]

_MAY_DIFFER = ("row", "text", "raw_value", "raw_unit", "unit")
"""Where a row stands and how a value was spelt; the value is compared, and its unit is its measure's."""


def differences(wanted: Case, found: Case) -> list[str]:
    """What differs between the case that was to be saved and the one read back, in words.

    White space around text, the order of rows on one day and the spelling of a value may differ;
    a question that is not there is the same as one not asked.
    """
    said = [
        *_row_difference("athlete", wanted.athlete, found.athlete),
        *_row_difference("surgery", wanted.surgery, found.surgery),
        *_list_differences("limit", wanted.limits, found.limits),
        *_list_differences("event", wanted.events, found.events),
        *_list_differences(
            "reference",
            [replace(r, id="") for r in wanted.readings if is_reference(r)],
            [replace(r, id="") for r in found.readings if is_reference(r)],
        ),
        *_rows_by_id("reading", in_table(wanted.readings), in_table(found.readings)),
        *_rows_by_id("visit", wanted.visits, found.visits),
    ]
    said += [_lost_text(r) for r in wanted.readings if _is_text_lost(r)]
    return said


def _rows_by_id(
    kind: str, wanted: Sequence[Reading] | Sequence[Visit], found: Sequence[Reading] | Sequence[Visit]
) -> Iterable[str]:
    by_id = {row.id: row for row in found}
    for row in wanted:
        other = by_id.pop(row.id.strip(), None)
        if other is None:
            yield f"{kind} {row.id!r} would be missing"
        elif other != row and other != replace(row, row=other.row):
            yield from _row_difference(f"{kind} {row.id!r}", row, other)
    yield from (f"{kind} {name!r} would come back" for name in by_id)


def _row_difference(name: str, wanted: Any, found: Any) -> Iterable[str]:
    one, other = _bare(wanted), _bare(found)
    for key in {**one, **other}:
        if one.get(key) != other.get(key):
            yield f"{name}: {key} {one.get(key)!r} would read back as {other.get(key)!r}"


def _list_differences(kind: str, wanted: Sequence[Any], found: Sequence[Any]) -> Iterable[str]:
    left = [_bare(row) for row in found]
    for row in wanted:
        bare = _bare(row)
        if bare in left:
            left.remove(bare)
        else:
            yield f"{kind} {bare!r} would not read back"
    yield from (f"{kind} {bare!r} would come back" for bare in left)


def _bare(value: Any) -> Any:
    """A value without what may differ: blanks, white space, the kind of number."""
    if is_dataclass(value):
        parts = {f.name: getattr(value, f.name) for f in fields(value) if f.name not in _MAY_DIFFER}
        return _bare(parts)
    if isinstance(value, Mapping):
        bare = {key: _bare(part) for key, part in value.items() if part != "not asked"}
        return {key: part for key, part in bare.items() if part not in (None, "", (), {})}
    if isinstance(value, str):
        return value.strip()
    if isinstance(value, (tuple, list)):
        return tuple(_bare(part) for part in value)
    if isinstance(value, Real) and not isinstance(value, (bool, dt.date)):
        return float(value)
    return value


def _is_text_lost(reading: Reading) -> bool:
    """Whether a reading carries words that no column holds: not a grade, not motion, not what was typed."""
    text = reading.text.strip()
    if not text or reading.unit == "grade" or text == reading.raw_value.strip():
        return False
    return not is_neutral_zero(text) and extension_deg(text) is None


def _lost_text(reading: Reading) -> str:
    return f"reading {reading.id!r}: no column holds its text {reading.text!r}; put that in its note"
