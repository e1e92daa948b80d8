"""What the project says, and what it must not say."""

from __future__ import annotations

import ast
import json
import re
from pathlib import Path

import pytest

from project_tree import NOTEBOOKS, ROOT, Source, sources, texts, written_files

HERE = Path(__file__).resolve()
FILES = [path for path in written_files() if path != HERE]
MACHINE_PATHS = re.compile(r"(?<![\w.])/(?:root|home|work|tmp|opt|Users|mnt|srv|private)/|[A-Z]:\\\\?Users")
PROCESS_WORDS = re.compile(
    r"\bissues? #?\d|\bpull request|\bseed document|\bTO"
    r"DO\b|\bFIX"
    r"ME\b|\bXX"
    r"X\b|\blorem ipsum",
    re.IGNORECASE,
)
NOT_SAID_OF_AN_ATHLETE = re.compile(r"\bcleared\b", re.IGNORECASE)
NOT_CALM = re.compile(r"\w!(?=\s|$|<)")
ADDRESS = re.compile(r"https?://[^\s\"'<>)]+")
NAMESPACES = ("http://www.w3.org/", "https://vega.github.io/schema/")
"""Addresses that name a vocabulary and are never fetched."""


@pytest.mark.parametrize("path", FILES, ids=lambda p: p.relative_to(ROOT).as_posix())
def test_speaks_of_itself_alone(path: Path) -> None:
    """No file names a place on somebody's machine, a work list or an unfinished end."""
    text = path.read_text("utf-8", errors="replace")

    assert MACHINE_PATHS.findall(text) == []
    assert PROCESS_WORDS.findall(text) == []


def shown_texts() -> list[tuple[str, str]]:
    """Everything a person may come to read, with its place: sentences in code, notebooks, cases, README."""
    found = [(f"{s.place}:{n}", t) for s in sources() for n, t in texts(s.tree, docstrings=True)]
    for path in FILES:
        place = path.relative_to(ROOT).as_posix()
        if path.suffix == ".ipynb":
            cells = json.loads(path.read_text("utf-8"))["cells"]
            found += [(place, "".join(cell["source"])) for cell in cells]
            found += [(place, json.dumps(cell.get("outputs", []), ensure_ascii=False)) for cell in cells]
        elif place.startswith("sample_data/") or place == "README.md":
            found.append((place, path.read_text("utf-8", errors="replace")))
    return found


def test_nobody_is_said_to_be_through() -> None:
    """The toolkit gives numbers; the word for an athlete's release is the clinician's and surgeon's alone."""
    said = [f"{place}: {text[:80]!r}" for place, text in shown_texts() if NOT_SAID_OF_AN_ATHLETE.search(text)]

    assert said == []


@pytest.mark.parametrize("source", sources(), ids=lambda s: s.module)
def test_sentences_are_calm(source: Source) -> None:
    """No exclamation mark in anything shown."""
    assert [t for _, t in texts(source.tree, docstrings=True) if NOT_CALM.search(t)] == []


@pytest.mark.parametrize("source", sources(), ids=lambda s: s.module)
def test_code_names_no_address(source: Source) -> None:
    """Nothing in the package points at the network; sources are named by DOI."""
    found = [a for _, t in texts(source.tree, docstrings=True) for a in ADDRESS.findall(t)]

    assert [a for a in found if not a.startswith(NAMESPACES)] == []


@pytest.mark.parametrize(
    "path",
    [p for p in FILES if p.suffix in (".css", ".js", ".html", ".j2")],
    ids=lambda p: p.relative_to(ROOT).as_posix(),
)
def test_page_parts_name_no_address(path: Path) -> None:
    """Style sheets, scripts and templates load nothing from elsewhere."""
    text = path.read_text("utf-8")

    assert [a for a in ADDRESS.findall(text) if not a.startswith(NAMESPACES)] == []
    assert "@import" not in text
    assert not re.search(r"url\(\s*['\"]?//", text)


def test_no_code_reaches_out() -> None:
    """The package imports nothing that opens a connection."""
    clients = {"requests", "httpx", "urllib3", "aiohttp", "ftplib", "smtplib", "telnetlib", "http"}
    calls = {"create_connection", "connect_ex", "urlopen", "getaddrinfo"}
    found = []
    for source in sources():
        for node in ast.walk(source.tree):
            names = [a.name for a in node.names] if isinstance(node, ast.Import) else []
            names += [node.module or ""] if isinstance(node, ast.ImportFrom) else []
            used = node.attr if isinstance(node, ast.Attribute) else ""
            if any(n.split(".")[0] in clients or n == "urllib.request" for n in names) or used in calls:
                found.append(f"{source.place}:{node.lineno}")

    assert found == []


@pytest.mark.parametrize("path", NOTEBOOKS, ids=lambda p: p.stem)
def test_notebook_outputs_fetch_nothing(path: Path) -> None:
    """A committed output opens without a network: no source, link or style from elsewhere."""
    outputs = json.dumps([c.get("outputs", []) for c in json.loads(path.read_text("utf-8"))["cells"]])

    assert re.findall(r"""(?:src|href|xlink:href)\s*=\s*\\?["']?\s*(?:https?:)?//[^\s"'\\]+""", outputs) == []
    assert not re.search(r"url\(\s*\\?['\"]?https?:|@import|<script|<link|<iframe", outputs)
