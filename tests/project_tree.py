"""Where things stand in this project, for tests that look at the tree itself."""

from __future__ import annotations

import ast
import importlib
import inspect
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any

ROOT = Path(__file__).resolve().parents[1]
PACKAGE = ROOT / "toolkit" / "kneecase"
NOTEBOOKS = sorted((ROOT / "notebooks").glob("*.ipynb"))
SAMPLE_CASES = sorted(path.parent for path in (ROOT / "sample_data").glob("*/case.toml"))

ROOMS = ("answers", "charts", "evidence", "measures", "record", "recovery", "report")
"""The rooms of the package, each with its door; everything else in it is a single file."""

TEXT_ENDINGS = {".py", ".md", ".toml", ".csv", ".ipynb", ".css", ".js", ".html", ".j2", ".cfg", ".txt", ""}


@dataclass(frozen=True)
class Source:
    """One source file of the package with its parsed text."""

    path: Path
    module: str
    text: str
    tree: ast.Module

    @property
    def place(self) -> str:
        """The path from the top of the project, for messages."""
        return self.path.relative_to(ROOT).as_posix()


@cache
def sources() -> tuple[Source, ...]:
    """Every Python file of the package."""
    return tuple(_source(path) for path in sorted(PACKAGE.rglob("*.py")) if "_shipped" not in path.parts)


def sources_of(*rooms: str) -> list[Source]:
    """The Python files of some rooms (a folder or a single file)."""
    return [s for s in sources() if s.module.split(".")[1:2] and s.module.split(".")[1] in rooms]


def _source(path: Path) -> Source:
    parts = path.relative_to(PACKAGE.parent).with_suffix("").parts
    module = ".".join(parts[:-1] if parts[-1] == "__init__" else parts)
    text = path.read_text("utf-8")
    return Source(path=path, module=module, text=text, tree=ast.parse(text, str(path)))


def public_functions(*rooms: str) -> Iterator[tuple[str, Callable[..., Any]]]:
    """The functions behind the doors of some rooms, with the name they are used by."""
    for room in rooms:
        door = importlib.import_module(f"kneecase.{room}")
        for name in getattr(door, "__all__", ()):
            if inspect.isfunction(thing := getattr(door, name, None)):
                yield f"{room}.{name}", thing


def public_classes(*rooms: str) -> Iterator[tuple[str, type]]:
    """The classes behind the doors of some rooms, with the name they are used by."""
    for room in rooms:
        door = importlib.import_module(f"kneecase.{room}")
        for name in getattr(door, "__all__", ()):
            thing = getattr(door, name, None)
            if inspect.isclass(thing) and thing.__module__.startswith("kneecase"):
                yield f"{room}.{name}", thing


def written_files() -> list[Path]:
    """Every text file people wrote: what a checkout holds, without caches, builds and environments."""
    tops = ("toolkit", "tests", "notebooks", "sample_data", ".ci")
    found = [path for top in tops for path in (ROOT / top).rglob("*")]
    found += [
        ROOT / name for name in ("README.md", "DEVELOPERS.md", "pyproject.toml", "LICENSE", ".gitignore")
    ]
    made = {"__pycache__", ".ipynb_checkpoints", "artefacts"}
    return sorted(p for p in found if p.is_file() and p.suffix in TEXT_ENDINGS and not made & set(p.parts))


def texts(tree: ast.AST, *, docstrings: bool) -> Iterator[tuple[int, str]]:
    """The string literals of a parsed file with their line; docstrings (and doc texts) only when asked."""
    doc = {
        id(n.value) for n in ast.walk(tree) if isinstance(n, ast.Expr) and isinstance(n.value, ast.Constant)
    }
    for node in ast.walk(tree):
        if (
            isinstance(node, ast.Constant)
            and isinstance(node.value, str)
            and (docstrings or id(node) not in doc)
        ):
            yield node.lineno, node.value
