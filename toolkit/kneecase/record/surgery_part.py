"""The part ``[surgery]`` of ``case.toml``, with ``[surgery.earlier]``."""

from __future__ import annotations

from kneecase.record.rows import Side, Surgery
from kneecase.record.terms import GRAFTS, OUTSIDE_SCOPE
from kneecase.record.toml_parts import Part
from kneecase.record.words import closed_word, side_word

__all__ = ["surgery_from"]

_KNOWN = ("date", "side", "graft", "harvest_side", "allograft", "revision", "concomitant", "earlier")


def surgery_from(part: Part) -> Surgery | None:
    """The operation; ``None`` where its date or side is missing or at fault."""
    part.warn_of_unknown(_KNOWN)
    date = part.date("date")
    if not part.values.get("date"):
        part.error("date", "the date of the surgery is missing", "Write date = 2026-03-02 under [surgery].")
    side = _operated_side(part)
    harvest_side, allograft = side_word(part, "harvest_side", side), part.truth("allograft")
    if allograft and harvest_side is not None:
        part.warning(
            "harvest_side", "an allograft is not harvested from the athlete", "Take one of the two out."
        )
    graft, revision = closed_word(part, "graft", GRAFTS), part.truth("revision")
    concomitant, earlier = _concomitant(part), _earlier(part, side)
    if date is None or side is None:
        return None
    return Surgery(
        date=date,
        side=side,
        graft=graft,
        harvest_side=harvest_side,
        allograft=allograft,
        revision=revision,
        concomitant=concomitant,
        earlier=earlier,
    )


def _operated_side(part: Part) -> Side | None:
    typed = part.cell("side")
    if typed.lower() in ("", "involved", "uninvolved"):
        what = "the operated side is missing" if not typed else "the operated side must be left or right"
        part.error("side", what, 'Write side = "left" or side = "right" under [surgery].')
        return None
    return side_word(part, "side", None)


def _concomitant(part: Part) -> tuple[str, ...]:
    """Procedures done besides, words that put the knee outside the scope in their exact spelling."""
    found = []
    for name in part.texts("concomitant"):
        words = " ".join(name.lower().split())
        inside = [word for word in OUTSIDE_SCOPE if word in words and word != words]
        for word in inside:
            what = f"{name!r} contains {word!r}, which would put this knee outside the scope of kneecase"
            part.warning("concomitant", what, f"If so, add {word!r} to the list as an entry of its own.")
        found.append(words if words in OUTSIDE_SCOPE else name)
    return tuple(found)


def _earlier(part: Part, operated: Side | None) -> dict[Side, tuple[str, ...]]:
    """Previous injuries or surgery by side."""
    earlier = part.part("earlier")
    found: dict[Side, tuple[str, ...]] = {}
    for key in earlier.values:
        named = Part(part.problems, "surgery.earlier", {key: key}, earlier.lines)
        side = side_word(named, key, operated)
        if side is not None:
            found[side] = found.get(side, ()) + earlier.texts(key)
    return found
