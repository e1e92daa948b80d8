"""A public function's docstring is its contract: it matches the signature and says the units."""

from __future__ import annotations

import ast
import inspect
import re
import textwrap
from collections.abc import Callable
from typing import Any

import pytest

import kneecase.errors
from project_tree import public_classes, public_functions

Function = Callable[..., Any]
CONTRACT_ROOMS = ("charts", "evidence", "measures", "record", "recovery", "report")
FUNCTIONS = dict(public_functions(*CONTRACT_ROOMS))
METHODS = {
    f"{name}.{method}": thing
    for name, made in public_classes(*CONTRACT_ROOMS)
    for method, thing in vars(made).items()
    if inspect.isfunction(thing) and not method.startswith("_")
}
EVERY = FUNCTIONS | METHODS
KERNELS = {
    name: thing
    for name, thing in FUNCTIONS.items()
    if name.split(".")[0] in ("measures", "recovery") and "case" not in inspect.signature(thing).parameters
}
NUMERIC = re.compile(r"\b(float|int|NDArray|ArrayLike|ndarray|Values|Number\w*)\b")
SECTION = re.compile(r"^(?P<name>[A-Z][A-Za-z ]+)\n-{3,}$", re.MULTILINE)


def sections(thing: Function) -> dict[str, str]:
    """The parts of a numpydoc docstring by heading; the opening under ``""``."""
    text = inspect.getdoc(thing) or ""
    marks = list(SECTION.finditer(text))
    starts = [("", 0), *((m["name"], m.end()) for m in marks)]
    ends = [*(m.start() for m in marks), len(text)]
    return {name: text[start:end].strip("\n") for (name, start), end in zip(starts, ends, strict=True)}


def entries(section: str) -> dict[str, str]:
    """The entries of a Parameters section: name to the whole entry; ``a, b : float`` counts for both."""
    blocks = re.split(r"\n(?=\S)", section) if section else []
    found: dict[str, str] = {}
    for block in blocks:
        names = block.split("\n", 1)[0].split(" : ", 1)[0]
        found |= {name.strip().lstrip("*"): block for name in names.split(",")}
    return found


def arguments(thing: Function) -> list[inspect.Parameter]:
    """The arguments a caller gives."""
    return [p for p in inspect.signature(thing).parameters.values() if p.name not in ("self", "cls")]


def raised(thing: Function) -> set[str]:
    """The names of kneecase's exceptions that the body itself raises."""
    tree = ast.parse(textwrap.dedent(inspect.getsource(thing)))
    names = set()
    for node in ast.walk(tree):
        if isinstance(node, ast.Raise) and node.exc is not None:
            called = node.exc.func if isinstance(node.exc, ast.Call) else node.exc
            names.add(getattr(called, "id", getattr(called, "attr", "")))
    return {name for name in names if name in kneecase.errors.__all__}


@pytest.mark.parametrize("name", EVERY)
def test_opens_with_one_sentence(name: str) -> None:
    """The first line is a whole sentence on one line, with a blank line after it."""
    lines = (inspect.getdoc(EVERY[name]) or "").split("\n")

    assert lines[0].rstrip().endswith((".", "?")), lines[0]
    assert len(lines) == 1 or not lines[1].strip()


@pytest.mark.parametrize("name", FUNCTIONS)
def test_parameters_are_the_signature(name: str) -> None:
    """Every argument has its entry, in the order of the signature, and nothing else has one."""
    thing = FUNCTIONS[name]

    assert list(entries(sections(thing).get("Parameters", ""))) == [p.name for p in arguments(thing)]


@pytest.mark.parametrize("name", METHODS)
def test_a_methods_parameters_are_its_signature(name: str) -> None:
    """A method that lists its arguments lists them all, in order; one with numbers must."""
    thing = METHODS[name]
    documented = list(entries(sections(thing).get("Parameters", "")))
    numbers = [p.name for p in arguments(thing) if NUMERIC.search(str(p.annotation))]

    assert documented == [p.name for p in arguments(thing)] or not (documented or numbers)


@pytest.mark.parametrize("name", EVERY)
def test_numbers_carry_their_unit(name: str) -> None:
    """The entry of an argument that takes numbers says the unit in square brackets."""
    thing = EVERY[name]
    documented = entries(sections(thing).get("Parameters", ""))
    numbers = [p.name for p in arguments(thing) if NUMERIC.search(str(p.annotation))]

    assert [n for n in numbers if n in documented and not re.search(r"\[[^\]]+\]", documented[n])] == []


@pytest.mark.parametrize("name", FUNCTIONS)
def test_returns_are_told(name: str) -> None:
    """What comes back is said, with its unit where it is a bare number."""
    returned = str(inspect.signature(FUNCTIONS[name]).return_annotation)
    told = sections(FUNCTIONS[name]).get("Returns", "")

    assert told or returned == "None"
    if re.fullmatch(r"float|float \| NDArray.*|T|Values|Number\w*", returned):
        assert re.search(r"\[[^\]]+\]", told), told


@pytest.mark.parametrize("name", EVERY)
def test_refusals_are_told(name: str) -> None:
    """A function that refuses something says so under Raises, and names only exceptions that exist."""
    told = sections(EVERY[name]).get("Raises", "")
    named = set(re.findall(r"^(\w+)", told, re.MULTILINE))

    assert raised(EVERY[name]) <= named
    assert {n for n in named if not hasattr(kneecase.errors, n)} <= BUILTIN


BUILTIN = {"OSError", "FileNotFoundError", "TypeError", "ValueError", "PermissionError"}


@pytest.mark.parametrize("name", KERNELS)
def test_kernels_show_an_example(name: str) -> None:
    """A calculator shows an example, which the suite runs as a doctest."""
    assert ">>> " in sections(KERNELS[name]).get("Examples", "")
