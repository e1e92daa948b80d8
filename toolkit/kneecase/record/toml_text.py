"""``case.toml`` with the changes of a case written into it; comments and unknown keys stay."""

from __future__ import annotations

import difflib
from collections.abc import Mapping, Sequence
from dataclasses import fields
from typing import TYPE_CHECKING, Any

from kneecase.record.case import Case
from kneecase.record.case_file import FORMAT
from kneecase.record.rows import Event, Limit, Side
from kneecase.record.template import toml_value

if TYPE_CHECKING:
    from tomlkit import TOMLDocument
    from tomlkit.items import AoT

__all__ = ["case_toml_text"]

Values = dict[str, Any]

_SIDES: tuple[Side, ...] = ("left", "right")
_TYPED_OTHERWISE = {
    "mass_kg": ("mass",),
    "height_cm": ("height",),
    **{
        f"{part}_length_{side}_cm": (f"{part}_length_{side}",)
        for part in ("limb", "shank")
        for side in _SIDES
    },
}
"""Keys that say the same in another unit and must go when the key itself is written."""


def case_toml_text(
    text: str, base: Case, case: Case, references: tuple[Sequence[Values], Sequence[Values]]
) -> str:
    """The text of ``case.toml`` for ``case``, from the text it had for ``base``.

    Only what differs is touched.

    ``references`` are the values of every ``[[reference]]`` before and after, in order.
    """
    import tomlkit

    document = tomlkit.parse(text)
    if "format" not in document:
        document = tomlkit.parse(f"format = {FORMAT}\n{text}")
    elif document["format"] != FORMAT:
        document["format"] = FORMAT
    before = _single_keys(base)
    if base.surgery.side != case.surgery.side:  # what was typed as "involved" would change its meaning
        before = {path: value for path, value in before.items() if not _is_side(path)}
        references = [{k: v for k, v in x.items() if k != "side"} for x in references[0]], references[1]
    _update_tables(document, before, _single_keys(case))
    _update_blocks(document, "limit", [_values(x) for x in base.limits], [_values(x) for x in case.limits])
    _update_blocks(document, "event", [_values(x) for x in base.events], [_values(x) for x in case.events])
    _update_blocks(document, "reference", *references)
    return _line_ends_of(text, tomlkit.dumps(document))


def _is_side(path: tuple[str, ...]) -> bool:
    return path[-1] in ("harvest_side", "dominant_side") or path[:2] == ("surgery", "earlier")


def _line_ends_of(old: str, new: str) -> str:
    """The text ``new`` with the line ends of ``old``, where those are all of Windows."""
    if "\r\n" in old and old.count("\n") == old.count("\r\n"):
        return new.replace("\r\n", "\n").replace("\n", "\r\n")
    return new


def _single_keys(case: Case) -> dict[tuple[str, ...], Any]:
    """Every key of ``case.toml`` that stands once, by its path; ``None`` where there is no value."""
    athlete, surgery = case.athlete, case.surgery
    keys: dict[tuple[str, ...], Any] = {}
    for field in fields(athlete):
        if field.name not in ("limb_length_cm", "shank_length_cm"):
            keys["athlete", field.name] = getattr(athlete, field.name)
    for side in _SIDES:
        keys["athlete", f"limb_length_{side}_cm"] = athlete.limb_length_cm.get(side)
        keys["athlete", f"shank_length_{side}_cm"] = athlete.shank_length_cm.get(side)
    for field in fields(surgery):
        if field.name != "earlier":
            keys["surgery", field.name] = getattr(surgery, field.name)
    for side in _SIDES:
        keys["surgery", "earlier", side] = surgery.earlier.get(side, ())
    return keys


def _update_tables(
    document: TOMLDocument, before: Mapping[tuple[str, ...], Any], after: Mapping[tuple[str, ...], Any]
) -> None:
    for path, value in after.items():
        if path in before and value == before[path]:
            continue
        *above, name = path
        is_blank = value in (None, "", ())
        if is_blank and not _is_there(document, above):
            continue
        table = _table(document, above)
        for key in [key for key in table if key.lower() in _same_key(path, after)]:
            if is_blank or key != name:
                del table[key]
        if not is_blank:
            table[name] = _toml(name, value)


def _same_key(path: tuple[str, ...], after: Mapping[tuple[str, ...], Any]) -> tuple[str, ...]:
    """The key and every other that says the same, so that none is left to contradict it."""
    name = path[-1]
    if path[:2] != ("surgery", "earlier"):
        return (name, *_TYPED_OTHERWISE.get(name, ()))
    is_operated = name == after["surgery", "side"]
    return (name, name[0], "involved" if is_operated else "uninvolved")


def _is_there(document: TOMLDocument, path: Sequence[str]) -> bool:
    found: Any = document
    for name in path:
        if name not in found:
            return False
        found = found[name]
    return True


def _table(document: TOMLDocument, path: Sequence[str]) -> Any:
    import tomlkit

    found: Any = document
    for name in path:
        if name not in found:
            found[name] = tomlkit.table()
        found = found[name]
    return found


def _values(row: Limit | Event) -> Values:
    """The keys of one block in the order of the row's fields, without what is blank."""
    values = {field.name: getattr(row, field.name) for field in fields(row)}
    return {name: value for name, value in values.items() if value not in (None, "")}


def _update_blocks(
    document: TOMLDocument, name: str, before: Sequence[Values], after: Sequence[Values]
) -> None:
    """Bring the ``[[name]]`` blocks from ``before`` to ``after``; blocks that stay are left as they are."""
    if list(before) == list(after):
        return
    blocks = _blocks(document, name)
    if len(blocks) != len(before):
        raise ValueError(f"the [[{name}]] blocks are {len(blocks)} and were read as {len(before)}")
    matcher = difflib.SequenceMatcher(
        None, [_key(x) for x in before], [_key(x) for x in after], autojunk=False
    )
    for tag, start, end, new_start, new_end in reversed(matcher.get_opcodes()):
        if tag == "equal":
            continue
        shared = min(end - start, new_end - new_start)
        for place in range(shared):
            _update_block(blocks[start + place], before[start + place], after[new_start + place])
        for place in reversed(range(start + shared, end)):
            del blocks[place]
        for place in range(new_start + shared, new_end):
            blocks.insert(start + place - new_start, _block(after[place], blocks))
    if not blocks:
        del document[name]


def _blocks(document: TOMLDocument, name: str) -> AoT:
    import tomlkit

    if name not in document:
        document.append(name, tomlkit.aot())
    blocks: Any = document[name]
    return blocks  # type: ignore[no-any-return]


def _block(values: Values, blocks: Any) -> Any:
    """A new block of the kind that ``blocks`` holds: a part of its own, or braces in a list on one line."""
    import tomlkit
    from tomlkit.items import AoT

    table: Any = tomlkit.table() if isinstance(blocks, AoT) else tomlkit.inline_table()
    for name, value in values.items():
        table[name] = _toml(name, value)
    if isinstance(blocks, AoT):
        table.trivia.indent = "\n"  # a blank line above it
    return table


def _update_block(table: Any, before: Values, after: Values) -> None:
    for name in before:
        if name not in after:
            table.pop(name, None)
    for name, value in after.items():
        if before.get(name) != value:
            table[name] = _toml(name, value)


def _key(values: Values) -> tuple[tuple[str, Any], ...]:
    return tuple(sorted(values.items()))


def _toml(name: str, value: Any) -> Any:
    plain = toml_value(name, value)
    return list(plain) if isinstance(plain, tuple) else plain
