"""Who may import whom."""

from __future__ import annotations

import ast
import subprocess
import sys
import tomllib
from pathlib import Path

import nbformat
import pytest

from project_tree import NOTEBOOKS, PACKAGE, ROOT

TESTS = sorted((ROOT / "tests").rglob("*.py"))


def test_rooms_import_downward_only() -> None:
    """The import rule in pyproject.toml holds for every module."""
    run = "import sys; from importlinter.cli import lint_imports; sys.exit(lint_imports(no_cache=True))"
    done = subprocess.run([sys.executable, "-c", run], cwd=ROOT, capture_output=True, text=True, check=False)

    assert done.returncode == 0, done.stdout + done.stderr
    assert "1 kept" in done.stdout


def test_every_room_has_its_layer() -> None:
    """A room or single file that is added must be given its place in the import rule."""
    settings = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))
    layers = settings["tool"]["importlinter"]["contracts"][0]["layers"]
    ruled = {part.strip() for layer in layers for part in layer.split("|")}
    rooms = {p.parent.name for p in PACKAGE.glob("*/__init__.py")} | {p.stem for p in PACKAGE.glob("*.py")}

    assert ruled == {f"kneecase.{room}" for room in rooms if not room.startswith("__")}


def kneecase_imports(tree: ast.AST) -> set[tuple[str, str]]:
    """(module, name) of everything imported from kneecase."""
    found = {
        (node.module or "", alias.name)
        for node in ast.walk(tree)
        if isinstance(node, ast.ImportFrom) and (node.module or "").split(".")[0] == "kneecase"
        for alias in node.names
    }
    return found | {
        (alias.name, "")
        for node in ast.walk(tree)
        if isinstance(node, ast.Import)
        for alias in node.names
        if alias.name.split(".")[0] == "kneecase"
    }


@pytest.mark.parametrize("path", TESTS, ids=lambda p: p.relative_to(ROOT).as_posix())
def test_tests_import_public_names_only(path: Path) -> None:
    """A test asks for what a user may ask for: no underscored module or name."""
    imported = kneecase_imports(ast.parse(path.read_text("utf-8")))

    assert [
        pair for pair in sorted(imported) if any(p.startswith("_") for p in ".".join(pair).split("."))
    ] == []


@pytest.mark.parametrize("path", NOTEBOOKS, ids=lambda p: p.stem)
def test_notebooks_import_from_the_doors(path: Path) -> None:
    """A notebook uses ``kneecase`` and its rooms, nothing inside a room."""
    cells = nbformat.read(path, as_version=4).cells
    code = "\n".join(cell.source for cell in cells if cell.cell_type == "code")
    imported = kneecase_imports(ast.parse(code))

    assert [pair for pair in sorted(imported) if pair[0].count(".") > 1] == []
