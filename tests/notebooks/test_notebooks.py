"""Every notebook reads well, is committed as it ran, and still runs."""

from __future__ import annotations

import base64
import json
import os
import re
import subprocess
import sys
from pathlib import Path
from typing import Any

import nbformat
import pytest
from nbclient import NotebookClient

from kneecase.shipped import working_copy
from project_tree import NOTEBOOKS, PACKAGE, ROOT

START = ROOT / "notebooks" / "00-start-here.ipynb"
CELL_LINES = 10
CHECKED = "nbval-check-output"
REVEAL = "reveal"
ANSWER = "answer-"


@pytest.fixture(params=NOTEBOOKS, ids=lambda p: p.stem)
def path(request: pytest.FixtureRequest) -> Path:
    """Each notebook in turn."""
    return Path(request.param)


@pytest.fixture
def notebook(path: Path) -> Any:
    """The notebook as committed."""
    return nbformat.read(path, as_version=4)


def code_cells(notebook: Any) -> list[Any]:
    """The code cells of a notebook in order."""
    return [cell for cell in notebook.cells if cell.cell_type == "code"]


def pages(cell: Any) -> list[str]:
    """The HTML outputs of a code cell."""
    data = [output.get("data", {}) for output in cell.outputs]
    return ["".join(d["text/html"]) for d in data if "text/html" in d]


def test_there_are_notebooks_to_read() -> None:
    """The start notebook, and at least two cases to follow it."""
    assert START in NOTEBOOKS
    assert len(NOTEBOOKS) >= 3
    assert all(re.fullmatch(r"\d\d-[a-z0-9-]+", path.stem) for path in NOTEBOOKS)


def test_a_working_copy_still_runs(tmp_path: Path) -> None:
    """In the folder a user gets, every cell runs, and cells marked for it show what is committed."""
    copy = working_copy(tmp_path / "copy", package=PACKAGE)
    command = [
        *(sys.executable, "-m", "pytest", "-o", "addopts=", "-p", "no:cacheprovider", "-q", "--nbval-lax"),
        *("--nbval-current-env", "--nbval-cell-timeout=120", "--nbval-kernel-startup-timeout=120"),
        *(f"--rootdir={copy.folder}", "-c", str(copy.folder / "pytest.ini"), "notebooks"),
    ]
    (copy.folder / "pytest.ini").write_text("[pytest]\n", "utf-8")
    quiet = {**os.environ, "PYDEVD_DISABLE_FILE_VALIDATION": "1"}
    done = subprocess.run(command, cwd=copy.folder, env=quiet, capture_output=True, text=True, check=False)

    assert done.returncode == 0, done.stdout[-6000:] + done.stderr[-2000:]
    passed = re.search(r"(\d+) passed", done.stdout)
    cells = sum(len(code_cells(nbformat.read(path, as_version=4))) for path in NOTEBOOKS)
    assert passed is not None, done.stdout[-2000:]
    assert int(passed[1]) == cells


def test_ran_from_top_to_bottom(notebook: Any) -> None:
    """Cells are numbered 1..n without a gap, and none ended in an error or a warning.

    A cell that reveals an answer is committed unrun: the reader answers first.
    """
    hidden = [cell for cell in code_cells(notebook) if REVEAL in cell.metadata.get("tags", ())]
    cells = [cell for cell in code_cells(notebook) if cell not in hidden]
    outputs = [output for cell in cells for output in cell.outputs]

    assert [cell.execution_count for cell in cells] == list(range(1, len(cells) + 1))
    assert [output for output in outputs if output.output_type == "error"] == []
    assert [output for output in outputs if output.get("name") == "stderr"] == []


def test_what_is_to_be_revealed_waits_for_an_answer(path: Path, notebook: Any, tmp_path: Path) -> None:
    """Without an answer a reveal cell gives nothing away; with the scripted one it shows more."""
    hidden = [cell for cell in code_cells(notebook) if REVEAL in cell.metadata.get("tags", ())]
    copy = working_copy(tmp_path / "copy", package=PACKAGE)

    for cell in hidden:
        assert (cell.execution_count, cell.outputs) == (None, [])
        (answer,) = (tag.removeprefix(ANSWER) for tag in cell.metadata.tags if tag.startswith(ANSWER))
        silent = said(copy.folder / "notebooks" / path.name, cell.id, "")
        spoken = said(copy.folder / "notebooks" / path.name, cell.id, answer)
        assert "first" in silent
        assert answer in spoken
        assert len(spoken) > len(silent)


def said(path: Path, cell_id: str, answer: str) -> str:
    """What a reveal cell prints when the reader has written ``answer``."""
    notebook = nbformat.read(path, as_version=4)
    cell = next(cell for cell in notebook.cells if cell.id == cell_id)
    assert cell.source.count(' = ""') == 1, "a reveal cell begins with one empty answer"
    cell.source = cell.source.replace(' = ""', f" = {answer!r}")
    NotebookClient(notebook, timeout=120, resources={"metadata": {"path": str(path.parent)}}).execute()
    return "".join(output.text for output in cell.outputs if output.output_type == "stream")


def test_carries_nothing_of_a_machine(path: Path, notebook: Any) -> None:
    """Kernel python3, steady ids, no widget state, no timings, no place on a disk."""
    text = path.read_text("utf-8")

    assert notebook.metadata == {
        "kernelspec": {"display_name": "Python 3", "language": "python", "name": "python3"},
        "language_info": {"name": "python"},
    }
    assert [cell.id for cell in notebook.cells] == [f"cell-{n:02d}" for n in range(len(notebook.cells))]
    assert all(set(cell.metadata) <= {"tags"} for cell in notebook.cells)
    assert "widget-view" not in text
    assert not re.search(r"(?<![\w.])/(?:root|home|work|tmp|opt|Users)/|0x[0-9a-f]{8,}", text)


def test_cells_are_short(notebook: Any) -> None:
    """One idea a cell: no code cell over ten lines."""
    lines = {cell.id: len(cell.source.splitlines()) for cell in code_cells(notebook)}

    assert {cell: n for cell, n in lines.items() if n > CELL_LINES} == {}


def test_says_whom_it_is_for(notebook: Any) -> None:
    """It opens with a title, who it is for, what the reader will be able to do, the time, the cautions."""
    first = notebook.cells[0]
    opening = "\n".join(c.source for c in notebook.cells[:4] if c.cell_type == "markdown").lower()

    assert first.cell_type == "markdown"
    assert first.source.startswith("# ")
    for words in (r"\bfor\b", r"able to", r"\bminutes?\b", r"caution", r"surgeon"):
        assert re.search(words, opening), words


def test_ends_with_something_to_take_away(path: Path, notebook: Any) -> None:
    """A case ends with a summary and a question."""
    ending = "\n".join(c.source for c in notebook.cells[-3:] if c.cell_type == "markdown").lower()

    assert path == START or "summary" in ending
    assert path == START or "?" in ending


def test_is_listed_where_people_look(path: Path) -> None:
    """The README and the start notebook name it."""
    start = nbformat.read(START, as_version=4)
    listed = "\n".join(cell.source for cell in start.cells)

    assert path.name in (ROOT / "README.md").read_text("utf-8")
    assert path == START or path.name in listed


def test_its_links_lead_somewhere(path: Path, notebook: Any) -> None:
    """A link to a file leads to one that is there."""
    targets = re.findall(r"\]\(([^)#\s]+)", "\n".join(c.source for c in notebook.cells))
    local = [t for t in targets if not t.startswith(("http", "attachment:"))]

    assert [t for t in local if not (path.parent / t).exists()] == []


def test_marked_cells_show_something_that_keeps(path: Path, notebook: Any) -> None:
    """A case has cells whose committed output is compared; each shows something, and no picture.

    How a picture is laid out depends on the fonts of the machine; the numbers do not.
    """
    marked = [cell for cell in code_cells(notebook) if CHECKED in cell.metadata.get("tags", ())]

    assert path == START or marked
    assert [cell.id for cell in marked if not cell.outputs] == []
    assert [cell.id for cell in marked if "data:image" in json.dumps(cell.outputs)] == []


def test_pictures_speak(path: Path, notebook: Any) -> None:
    """Every picture is a figure in the page itself, with words for those who do not see it."""
    whole = "\n".join(page for cell in code_cells(notebook) for page in pages(cell))
    images = re.findall(r"<img\b[^>]*>", whole)

    assert path == START or images
    for image in images:
        words = re.search(r'\balt="([^"]+)"', image)
        source = re.search(r'\bsrc="data:image/svg\+xml;base64,([^"]+)"', image)
        assert words is not None, image[:200]
        assert len(words[1]) > 20, words[1]
        assert source is not None, image[:200]
        assert base64.b64decode(source[1], validate=True).lstrip().startswith(b"<svg")


def test_a_reader_meets_no_bare_object(notebook: Any) -> None:
    """What a cell shows is a sentence, a table or a figure, never the inside of Python."""
    shown = [
        "".join(output.data.get("text/plain", ""))
        for cell in code_cells(notebook)
        for output in cell.outputs
        if "data" in output and set(output.data) == {"text/plain"}
    ]

    assert [text for text in shown if re.search(r"<[\w.]+ object|<function|Traceback", text)] == []
