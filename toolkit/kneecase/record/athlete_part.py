"""The part ``[athlete]`` of ``case.toml``."""

from __future__ import annotations

import datetime as dt

from kneecase.record.catalogue import MEASURES
from kneecase.record.rows import Athlete, Side, Surgery
from kneecase.record.toml_parts import Part
from kneecase.record.words import closed_word, side_word

__all__ = ["SEXES", "athlete_from"]

SEXES = ("female", "male", "other")
_SIDES: tuple[Side, Side] = ("left", "right")
_LENGTHS = {"limb_length": ((30, 140), (60, 115)), "shank_length": ((15, 75), (30, 55))}
_KNOWN = (
    *("pseudonym", "year_of_birth", "age_years", "sex", "mass_kg", "mass", "height_cm", "height"),
    *(f"{length}_{side}{unit}" for length in _LENGTHS for side in _SIDES for unit in ("_cm", "")),
    *("dominant_side", "sport", "position", "skeletally_mature"),
)


def athlete_from(part: Part, surgery: Surgery | None) -> tuple[Athlete | None, int | None]:
    """The athlete, ``None`` without a pseudonym; and the earliest year of birth, where it is known."""
    part.warn_of_unknown(_KNOWN)
    pseudonym = part.text("pseudonym")
    if not pseudonym and not part.values.get("pseudonym"):
        part.error(
            "pseudonym", "the pseudonym is missing", 'Write pseudonym = "Wren" under [athlete]; never a name.'
        )
    year, age = _birth(part, None if surgery is None else surgery.date)
    athlete = Athlete(
        pseudonym=pseudonym,
        year_of_birth=year,
        age_years=age,
        sex=closed_word(part, "sex", SEXES),
        mass_kg=part.measured("mass", "kg", MEASURES["body_mass"].hard, MEASURES["body_mass"].plausible),
        height_cm=part.measured("height", "cm", (50, 250), (120, 220)),
        limb_length_cm=_lengths(part, "limb_length"),
        shank_length_cm=_lengths(part, "shank_length"),
        dominant_side=side_word(part, "dominant_side", None if surgery is None else surgery.side),
        sport=part.text("sport"),
        position=part.text("position"),
        skeletally_mature=part.truth("skeletally_mature"),
    )
    if year is None and age is not None and surgery is not None:
        year = int(surgery.date.year - age) - 1
    return (athlete if pseudonym else None), year


def _birth(part: Part, operation_day: dt.date | None) -> tuple[int | None, float | None]:
    """Year of birth and age at surgery [years], weighed against each other and the surgery."""
    age = part.bare_number("age_years", (1, 110), (8, 70), "years")
    year = part.values.get("year_of_birth")
    if year is None:
        return None, age
    if isinstance(year, bool) or not isinstance(year, int) or not 1900 <= year <= 2199:
        part.error(
            "year_of_birth", "the year of birth must be a year of four digits", "Write year_of_birth = 2004."
        )
        return None, age
    if operation_day is not None:
        oldest = operation_day.year - year
        if oldest < 1 or oldest > 110:
            what = f"the surgery of {operation_day.isoformat()} does not fit this year of birth"
            part.error("year_of_birth", what, "Is one of the two years wrong?")
            return None, age
        if age is not None and not oldest - 1 <= age < oldest + 1:
            what = f"born in {year}, the athlete was {oldest - 1} or {oldest} at surgery"
            part.error("age_years", what, "Mend one of year_of_birth and age_years, or leave one out.")
    return year, age


def _lengths(part: Part, length: str) -> dict[Side, float]:
    hard, plausible = _LENGTHS[length]
    found = {side: part.measured(f"{length}_{side}", "cm", hard, plausible) for side in _SIDES}
    return {side: value for side, value in found.items() if value is not None}
