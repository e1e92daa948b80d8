"""Every published value is complete, named, used, and shown with how it is known."""

from __future__ import annotations

import ast
import importlib
import math
import re
from collections import Counter
from typing import Any

import nbformat
import pytest

from kneecase.evidence import TOPICS, PublishedValue, Source, published_values, sources
from project_tree import NOTEBOOKS, SAMPLE_CASES, sources_of
from project_tree import sources as source_files

VALUES = published_values()
DOI = re.compile(r"10\.\d{4,9}/[^\s\"<>]+[^\s\"<>.,;]")
NAME = re.compile(r"[A-Z][A-Z0-9]*(_[A-Z0-9]+)+")


def constants(kind: type) -> dict[str, dict[str, Any]]:
    """The constants of one kind, by topic, as the topic's own file assigns them."""
    found: dict[str, dict[str, Any]] = {}
    for source in sources_of("evidence"):
        module = importlib.import_module(source.module)
        names = [
            target.id
            for node in source.tree.body
            for target in (node.targets if isinstance(node, ast.Assign) else [getattr(node, "target", None)])
            if isinstance(target, ast.Name)
        ]
        held = {name: getattr(module, name) for name in names}
        found[source.module.split(".")[-1]] = {n: v for n, v in held.items() if isinstance(v, kind)}
    return found


@pytest.mark.parametrize("topic", TOPICS)
def test_a_value_is_called_what_its_constant_is(topic: str) -> None:
    """``name`` equals the constant's own name, in the form TOPIC_WHAT_AUTHORYEAR."""
    values = constants(PublishedValue)[topic]

    assert {n: v.name for n, v in values.items() if n != v.name} == {}
    assert [n for n in values if not NAME.fullmatch(n)] == []


@pytest.mark.parametrize("topic", TOPICS)
def test_a_value_says_who_published_it(topic: str) -> None:
    """The last word of the name is an author and year, or says that it is common practice or ours."""
    allowed = re.compile(r"[A-Z]+\d{4}[A-Z]?|PRACTICE|DERIVED|OURS")
    odd = [name for name in constants(PublishedValue)[topic] if not allowed.fullmatch(name.split("_")[-1])]

    assert odd == []


@pytest.mark.parametrize("topic", TOPICS)
def test_the_year_in_the_name_is_the_sources(topic: str) -> None:
    """A value named for 1994 rests on a source of 1994."""
    wrong = [
        f"{name}: {value.source.year}"
        for name, value in constants(PublishedValue)[topic].items()
        if (year := re.search(r"(\d{4})[A-Z]?$", name)) and str(value.source.year) != year[1]
    ]

    assert wrong == []


def test_every_file_of_values_is_a_topic() -> None:
    """A file of the room that holds a published value is in the registry."""
    assert {topic for topic, values in constants(PublishedValue).items() if values} == set(TOPICS)


def test_names_are_unique_over_topics() -> None:
    """No two topics hold a value of the same name, and the registry finds every one."""
    names = Counter(name for topic in constants(PublishedValue).values() for name in topic)

    assert [name for name, times in names.items() if times > 1] == []
    assert set(names) == set(VALUES)


def test_sources_stand_once() -> None:
    """Each source is defined once: one key, one DOI, one constant."""
    defined = [source for topic in constants(Source).values() for source in topic.values()]
    keys = Counter(source.key for source in defined)
    dois = Counter(source.doi.lower() for source in defined if source.doi)

    assert [key for key, times in keys.items() if times > 1] == []
    assert [doi for doi, times in dois.items() if times > 1] == []


def test_every_source_is_used() -> None:
    """A source that no value rests on is dead weight."""
    defined = {source.key for topic in constants(Source).values() for source in topic.values()}

    assert defined - set(sources()) == set()
    assert set(sources()) - defined == set()


@pytest.mark.parametrize("key", sources())
def test_a_source_can_be_found(key: str) -> None:
    """Authors, title and year are there; a DOI has the shape of one; only practice has no year."""
    source = sources()[key]

    assert source.authors
    assert source.title
    assert not source.doi or DOI.fullmatch(source.doi)
    assert source.year is None or 1850 < source.year < 2100
    assert source.year or source.known == "common practice"


@pytest.mark.parametrize("name", VALUES)
def test_a_value_is_complete(name: str) -> None:
    """Definition, population and order of the ends; an interval says what it is."""
    value = VALUES[name]
    ends = [x for x in (value.low, value.value, value.high) if x is not None]

    assert value.definition
    assert value.population or value.known == "common practice"
    assert ends == sorted(ends)
    assert all(math.isfinite(x) for x in ends)
    assert value.value is None or (value.low is None and value.high is None) or value.spread_is


@pytest.mark.parametrize("name", [n for n, v in VALUES.items() if v.known not in ("full text", "abstract")])
def test_what_was_not_read_is_shown_as_such(name: str) -> None:
    """A number that was not read at first hand says so in its own line."""
    line = VALUES[name].line()

    assert any(words in line for words in ("unverified", "derived here", "common practice, no source"))
    assert not VALUES[name].verified


def test_practice_has_no_author() -> None:
    """Common practice rests on the one source that says so, and on no paper."""
    practice = {v.source.key for v in VALUES.values() if v.known == "common practice"}

    assert practice <= {"common-practice"}


def uses() -> Counter[str]:
    """How often each constant is named outside the evidence, in the package and in the notebooks."""
    named: Counter[str] = Counter()
    for source in source_files():
        if source.module.startswith("kneecase.evidence"):
            continue
        for node in ast.walk(source.tree):
            named[getattr(node, "id", getattr(node, "attr", ""))] += isinstance(
                node, ast.Name | ast.Attribute
            )
            if isinstance(node, ast.Constant) and isinstance(node.value, str):
                named[node.value] += 1
    for path in NOTEBOOKS:
        code = "\n".join(c.source for c in nbformat.read(path, as_version=4).cells)
        named.update(NAME.findall(code) and [m.group() for m in NAME.finditer(code)])
    return named


IN_TABLES: dict[str, str] = {}
"""Values that are shown only in tables made from a whole topic, with the reason each stays."""


def test_every_value_is_used() -> None:
    """Evidence that nothing computes with or shows is dead weight."""
    used = uses()

    assert [name for name in VALUES if not used[name] and name not in IN_TABLES] == []
    assert [name for name in IN_TABLES if used[name] or name not in VALUES] == []


@pytest.mark.parametrize("path", SAMPLE_CASES, ids=lambda p: p.name)
def test_pages_show_what_is_unverified(path: Any) -> None:
    """Wherever an answer of a sample case rests on an unverified value, the flag is on the screen."""
    from html import escape

    from kneecase.record import read_case
    from kneecase.report import review, review_page

    case = read_case(path)
    page = review_page(case)
    for answer in review(case):
        for value in answer.evidence:
            if not value.verified:
                assert value.how_known() in str(answer.explain())
                assert escape(value.how_known()) in page


@pytest.mark.parametrize(
    ("folder", "line", "flag"),
    [
        ("stiff-knee", "change since the first reading", "same device; a convention)"),
        ("stiff-knee", "flexion deficit, passive", "5° (a convention) that error explains"),
        ("stiff-knee", "knee girth difference", "1 cm (unverified) that error explains"),
        ("hop-battery", "effusion at most trace", "the line is unverified: from memory"),
        ("hop-battery", "quadriceps index ≥ 80%", "the line is unverified: from memory"),
        ("hop-battery", "pain ≤ 2 of 10", "the line is a convention, no source"),
        ("hop-battery", "base-rate lesson", "unverified: from memory"),
        ("hop-battery", "IKDC subjective knee score", "an error that is unverified"),
    ],
)
def test_short_answers_flag_what_was_not_read(folder: str, line: str, flag: str) -> None:
    """A verdict or band that rests on a number not read in print says so without being asked why."""
    from kneecase.record import read_case
    from kneecase.report import review_text

    path = next(p for p in SAMPLE_CASES if p.name == folder)
    rows = review_text(read_case(path)).splitlines()
    place = next(i for i, row in enumerate(rows) if row.startswith(f"  {line}"))

    assert flag in rows[place + 1]


ALLOWED_NUMBERS = {0, 1, 2, 3, 4, -1, 0.5, 7, 10, 100}
"""Counting, halving, weeks, percent, rounding: arithmetic, not medicine."""

LEVELS = {0.8, 0.9, 0.95, 0.025, 0.05, 0.975}
"""Levels of intervals and tests; they may stand only as the default of an argument or beside ``level``."""

FILE_NUMBERS: dict[str, dict[float, str]] = {
    "kneecase.recovery.classical": {
        400: "rates and plateaus tried before the search narrows",
        60: "steps of a search that narrows its range each time",
    },
    "kneecase.recovery.fit": {0.1: "one of the three chances shown by default"},
    "kneecase.recovery.mixture": {12: "rungs of the first look for a crossing"},
    "kneecase.recovery.posterior": {
        32: "rates of the grid",
        16: "rates of the lean grid",
        9: "error sizes of the grid",
        6: "error sizes of the lean grid, and the power of ten below which weight is dropped",
        400: "cases worked on at once",
    },
    "kneecase.recovery.gain": {5: "readings that a rank interval needs, below which it is all pairs"},
    "kneecase.recovery.lines": {
        5: "variance of Kendall's statistic: n (n - 1) (2 n + 5) / 18",
        18: "variance of Kendall's statistic: n (n - 1) (2 n + 5) / 18",
    },
}
"""Numbers a file may hold besides, each with the reason it is not a clinical value."""


@pytest.mark.parametrize("source", sources_of("measures", "recovery"), ids=lambda s: s.module)
def test_no_clinical_number_without_evidence(source: Any) -> None:
    """A number in a calculator comes in as an argument or from a published value, never from the code."""
    allowed = FILE_NUMBERS.get(source.module, {})
    found = [
        f"{source.place}:{node.lineno} {node.value}"
        for node in ast.walk(source.tree)
        if isinstance(node, ast.Constant)
        and isinstance(node.value, int | float)
        and not isinstance(node.value, bool)
        and node.value not in ALLOWED_NUMBERS | LEVELS
        and node.value not in allowed
        and not _is_digits(source.tree, node)
    ]

    assert found == []


def _is_digits(tree: ast.AST, constant: ast.Constant) -> bool:
    """Whether the number only says how many digits to show."""
    return any(
        isinstance(node, ast.keyword)
        and node.arg in ("digits", "ndigits", "decimals")
        and node.value is constant
        for node in ast.walk(tree)
    )


def test_the_list_of_numbers_is_not_longer_than_needed() -> None:
    """Every exception is in use and has a reason."""
    for module, numbers in FILE_NUMBERS.items():
        tree = next(s.tree for s in source_files() if s.module == module)
        held = {
            n.value for n in ast.walk(tree) if isinstance(n, ast.Constant) and not isinstance(n.value, str)
        }
        assert set(numbers) <= held, module
        assert all(numbers.values()), module
