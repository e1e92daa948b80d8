"""A name that holds a number ends in its unit, from the closed list and no other."""

from __future__ import annotations

import ast
import dataclasses
import re

import pytest

from kneecase.units import SUFFIXES
from project_tree import ROOMS, Source, public_classes, sources

UNIT_WORDS = """
mm inch inches ft feet lb lbs oz degree degrees rad radian radians newton newtons nm kgf lbf
sec secs seconds ms msec minute minutes mins hour hours hr month months percent percentage pc
metre metres meter meters centimetre centimetres kilo kilos grams fahrenheit kelvin bpm hz
"""
FOREIGN = frozenset(UNIT_WORDS.split())
"""Endings that are units and are not in the closed list."""

FIXED_NAMES = {
    "degrees": "the stable argument of gain_rate(weeks, degrees): the plain word of the trade",
}
"""Whole names that look like a foreign unit and are none, with the reason."""

UNITLESS = {
    "value": "its unit stands beside it in the field `unit`",
    "low": "an end of an interval around `value`, same unit",
    "high": "an end of an interval around `value`, same unit",
    "level": "the level of an interval, a fraction of 1",
    "chance": "a probability, a fraction of 1",
    "sem": "the unit is the measure's own, kept with the published value",
    "mdc": "the unit is the measure's own",
    "week": "a point in time: the week after surgery",
    "hard": "two ends in the measure's own unit",
    "plausible": "two ends in the measure's own unit",
    "item_range": "points of one item of an instrument",
    "pain": "points from 0 to 10, by occasion",
    "odds": "a ratio of two chances",
    "values": "readings of any measure, whose unit stands beside them",
    "middle": "the median between `low` and `high`, same unit",
    "target": "of any measure, in the unit of its series",
    "tester_sd": "the unit is the measure's own",
    "chance_by_date": "a probability, a fraction of 1",
    "chance_never": "a probability, a fraction of 1",
    "chance_stiff": "a probability, a fraction of 1",
    "plateau": "of a curve through readings of any measure, in their unit",
    "start": "of a curve through readings of any measure, in their unit",
    "rate": "of a curve, one by whatever the time is in",
    "plateau_se": "in the unit of the readings",
    "start_se": "in the unit of the readings",
    "rate_se": "one by whatever the time is in",
    "plateau_ends": "in the unit of the readings",
    "rate_ends": "one by whatever the time is in",
    "sum_of_squares": "in the unit of the readings, squared",
    "scatter": "in the unit of the readings",
}
"""Fields of public types that hold a number without a unit in the name, with the reason."""

NUMERIC = re.compile(r"\bfloat\b")
NUMBERS = re.compile(r"\b(float|int|NDArray|ArrayLike|ndarray|Values|Sequence|[A-Z])\b")


def names_of(tree: ast.AST) -> set[tuple[int, str]]:
    """Every argument and field of a parsed file that holds numbers, with its line."""
    found = set()
    for node in ast.walk(tree):
        kind = ast.unparse(node.annotation) if getattr(node, "annotation", None) else "float"
        if isinstance(node, ast.arg) and NUMBERS.search(kind):
            found.add((node.lineno, node.arg))
        if isinstance(node, ast.AnnAssign) and isinstance(node.target, ast.Name) and NUMBERS.search(kind):
            found.add((node.lineno, node.target.id))
    return found


def ending(name: str) -> str:
    """The longest known unit a name ends in, or ``""``."""
    words = name.lower().strip("_").split("_")
    tails = ("_".join(words[i:]) for i in range(len(words)))
    return next((tail for tail in tails if tail in SUFFIXES), "")


@pytest.mark.parametrize("source", sources(), ids=lambda s: s.module)
def test_no_foreign_unit_ends_a_name(source: Source) -> None:
    """An argument or field is never named in a unit outside the closed list."""
    foreign = [
        f"{source.place}:{line} {name}"
        for line, name in sorted(names_of(source.tree))
        if not ending(name) and name.lower().split("_")[-1] in FOREIGN and name not in FIXED_NAMES
    ]

    assert foreign == []


@pytest.mark.parametrize("pair", sorted(public_classes(*ROOMS)), ids=lambda pair: pair[0])
def test_number_fields_end_in_their_unit(pair: tuple[str, type]) -> None:
    """A field of a public type that holds a float ends in a known unit, or is on the short list."""
    name, made = pair
    if not dataclasses.is_dataclass(made):
        return
    hints = {field.name: str(field.type) for field in dataclasses.fields(made)}
    bare = [n for n, kind in hints.items() if NUMERIC.search(kind) and not ending(n) and n not in UNITLESS]

    assert bare == [], f"{name}: {bare}"


def test_the_lists_are_not_longer_than_needed() -> None:
    """Every exception is in use: a name that is gone leaves the list."""
    used = {name for source in sources() for _, name in names_of(source.tree)}

    assert set(FIXED_NAMES) - used == set()
    assert set(UNITLESS) - used == set()


def test_suffixes_are_read_longest_first() -> None:
    """The reading of names itself: ``n_m`` is not metres, ``deg_per_week`` is not a foreign week."""
    assert ending("peak_n_m") == "n_m"
    assert ending("gain_deg_per_week") == "deg_per_week"
    assert ending("level") == ""
