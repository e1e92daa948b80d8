"""The files of a new case, with every key explained where it is filled in."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping
from dataclasses import dataclass
from numbers import Real

from kneecase.errors import InputError
from kneecase.record.columns import MEASUREMENT_COLUMNS, VISIT_COLUMNS
from kneecase.record.terms import EVENT_KINDS, GRAFTS, LIMIT_KINDS, OUTSIDE_SCOPE

__all__ = ["TEMPLATE_KEYS", "TemplateKey", "template_texts", "texts_of_new_case", "toml_value"]

TomlValue = str | int | float | bool | dt.date | tuple[str, ...]


@dataclass(frozen=True)
class TemplateKey:
    """One key of ``case.toml``: its table, name, an invented example, and what it is for."""

    table: str
    name: str
    example: TomlValue
    about: str
    needed: bool = False


TEMPLATE_KEYS = (
    TemplateKey("athlete", "pseudonym", "Wren", "a name that is not the athlete's own", needed=True),
    TemplateKey("athlete", "year_of_birth", 2004, "or age_years, the age at surgery"),
    TemplateKey("athlete", "age_years", 22, "age at surgery [years]; instead of year_of_birth"),
    TemplateKey("athlete", "sex", "female", "female, male or other"),
    TemplateKey("athlete", "mass_kg", 66, 'or mass = "146 lb"'),
    TemplateKey("athlete", "height_cm", 171, 'or height = "67 in"'),
    TemplateKey("athlete", "limb_length_left_cm", 88, 'or limb_length_left = "34.5 in"'),
    TemplateKey("athlete", "limb_length_right_cm", 88, "the same on the right"),
    TemplateKey("athlete", "shank_length_left_cm", 44, "knee axis to heel, for heel-height difference"),
    TemplateKey("athlete", "shank_length_right_cm", 44, "the same on the right"),
    TemplateKey("athlete", "dominant_side", "right", "the leg that kicks or jumps: left or right"),
    TemplateKey("athlete", "sport", "handball", "in your own words"),
    TemplateKey("athlete", "position", "wing", "in your own words"),
    TemplateKey("athlete", "skeletally_mature", True, "false while the growth plates are open"),
    TemplateKey("surgery", "date", dt.date(2026, 3, 2), "year-month-day; weeks count from here", needed=True),
    TemplateKey("surgery", "side", "left", "the operated knee: left or right", needed=True),
    TemplateKey("surgery", "graft", "hamstring tendon", f"one of: {', '.join(GRAFTS)}"),
    TemplateKey("surgery", "harvest_side", "left", "where the graft was taken: left or right"),
    TemplateKey("surgery", "allograft", False, "true for donor tissue"),
    TemplateKey("surgery", "revision", False, "true if this ligament was reconstructed before"),
    TemplateKey(
        "surgery",
        "concomitant",
        ("medial meniscus repair",),
        f"what else was done; {', '.join(OUTSIDE_SCOPE)}: recorded, red flags only",
    ),
    TemplateKey("surgery.earlier", "left", (), "previous injury or surgery of the left limb"),
    TemplateKey("surgery.earlier", "right", ("ankle sprain 2022",), "the same of the right limb"),
)
"""Every single key of ``case.toml``, in order."""

_HEAD = """\
# One case: one athlete, one operated knee. Plain text: change it in any editor.
# A line that starts with # is not read. Take the # away to use a line.
# Use a pseudonym: no name, no address, no number from a hospital.
format = 1
# date_order = "day first"   # how 03/04/2026 in the tables is read: day first, month first, year first
"""

_REPEATED = f"""
# The surgeon's written limits, one block each. Without until it is in force until lifted.
# kind: {", ".join(LIMIT_KINDS)}
# [[limit]]
# kind = "flexion"
# value = 90
# unit = "deg"               # deg for flexion and extension, pct for weight bearing, none for the others
# start = 2026-03-02
# until = 2026-04-13         # the last day on which it binds
# lifted = 2026-04-10        # the day it was lifted, if it was
# ordered_by = "surgeon"
# note = ""

# What restarts the clock or bends the course, one block each.
# kind: {", ".join(EVENT_KINDS)}
# [[event]]
# date = 2026-05-01
# kind = "manipulation"
# note = ""

# Readings from before the injury or the operation, one block each.
# [[reference]]
# date = 2026-02-10
# measure = "quadriceps_torque"
# side = "right"
# value = 198
# unit = "n_m"
# mode = "isometric"
# angle_deg = 90
"""

_REPLACE = "INVENTED, REPLACE: "


def template_texts() -> dict[str, str]:
    """The files of a blank case to fill in by hand: name to text.

    What must be filled in carries an invented value that says so; the rest is commented out.

    Returns
    -------
    dict of str to str
        The text of each file by its name.

    Examples
    --------
    >>> sorted(template_texts())
    ['case.toml', 'measurements.csv', 'visits.csv']
    """
    return _texts({}, _REPLACE)


def texts_of_new_case(values: Mapping[tuple[str, str], TomlValue]) -> dict[str, str]:
    """The files of a new case with ``values`` filled in, keyed by table and key of ``case.toml``."""
    return _texts(values, "")


def _texts(values: Mapping[tuple[str, str], TomlValue], flag: str) -> dict[str, str]:
    parts = [_HEAD]
    table = ""
    for key in TEMPLATE_KEYS:
        if key.table != table:
            table = key.table
            parts.append(f"\n[{table}]\n")
        parts.append(_key_line(key, values, flag))
    return {
        "case.toml": "".join(parts) + _REPEATED,
        "measurements.csv": ",".join(MEASUREMENT_COLUMNS) + "\n",
        "visits.csv": ",".join(VISIT_COLUMNS) + "\n",
    }


def _key_line(key: TemplateKey, values: Mapping[tuple[str, str], TomlValue], flag: str) -> str:
    value = values.get((key.table, key.name))
    if value is not None:
        return f"{_setting(key.name, value)}  # {key.about}\n"
    setting = _setting(key.name, key.example)
    return f"{setting}  # {flag}{key.about}\n" if key.needed else f"# {setting}  # {key.about}\n"


def toml_value(name: str, value: object) -> TomlValue:
    """``value`` as the plain kind that TOML has: text, a number, true or false, a date, a list of texts.

    Raises
    ------
    InputError
        If it is none of these.

    Examples
    --------
    >>> toml_value("mass_kg", 66.0), toml_value("sport", "handball")
    (66, 'handball')
    """
    if isinstance(value, bool | str):
        return value
    if isinstance(value, dt.date) and not isinstance(value, dt.datetime):
        return value
    if isinstance(value, Real):
        number = float(value)
        return int(number) if number.is_integer() and abs(number) < 1e15 else number
    if isinstance(value, tuple | list) and all(isinstance(entry, str) for entry in value):
        return tuple(value)
    raise InputError(f"{name} must be text, a number, true or false, or a calendar date, got {value!r}.")


def _setting(name: str, value: TomlValue) -> str:
    import tomlkit

    literal = list(value) if isinstance(value, tuple) else value
    return f"{name} = {tomlkit.item(literal).as_string()}"
