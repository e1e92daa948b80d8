"""How notebooks are executed and written back."""

from __future__ import annotations

import importlib.util
import sys
from pathlib import Path
from typing import Any

import nbformat
import pytest
from nbclient.exceptions import CellExecutionError

SCRIPT = Path(__file__).with_name("execute.py")


@pytest.fixture(scope="module")
def execute() -> Any:
    """The script as a module."""
    spec = importlib.util.spec_from_file_location("notebook_execution", SCRIPT)
    assert spec is not None
    assert spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    sys.modules[spec.name] = module
    spec.loader.exec_module(module)
    return module


def written(path: Path, *cells: str) -> Path:
    """A small notebook on disk, with what editors leave behind in it."""
    notebook = nbformat.v4.new_notebook(
        cells=[nbformat.v4.new_markdown_cell("# Title"), *map(nbformat.v4.new_code_cell, cells)],
        metadata={"widgets": {"state": {}}, "kernelspec": {"name": "other", "display_name": "Other"}},
    )
    notebook.cells[1].metadata = {"tags": ["nbval-check-output"], "collapsed": False}
    nbformat.write(notebook, path)
    return path


def test_the_same_bytes_each_time(execute: Any, tmp_path: Path) -> None:
    """Executing an executed notebook changes nothing, and nothing of the editor is kept."""
    path = written(tmp_path / "one.ipynb", "print('a'); print('b')", "2 + 3")

    assert execute.main([str(path)]) == 0
    first = path.read_bytes()
    assert execute.main([str(path)]) == 0

    kept = nbformat.read(path, as_version=4)
    assert path.read_bytes() == first
    assert [cell.get("execution_count") for cell in kept.cells] == [None, 1, 2]
    assert kept.cells[1].outputs[0].text == "a\nb\n"
    assert kept.cells[1].metadata == {"tags": ["nbval-check-output"]}
    assert kept.metadata.kernelspec.name == "python3"
    assert "widgets" not in kept.metadata


def test_what_is_to_be_revealed_is_not_written(execute: Any, tmp_path: Path) -> None:
    """A cell tagged reveal runs, keeps neither number nor output, and leaves no gap in the numbers."""
    path = written(tmp_path / "one.ipynb", "1 + 1", "answer = 3\nprint(answer)", "answer + 1")
    notebook = nbformat.read(path, as_version=4)
    notebook.cells[2].metadata = {"tags": ["reveal"]}
    nbformat.write(notebook, path)

    assert execute.main([str(path)]) == 0

    kept = nbformat.read(path, as_version=4).cells
    assert [cell.get("execution_count") for cell in kept] == [None, 1, None, 2]
    assert [len(cell.outputs) for cell in kept[1:]] == [1, 0, 1]
    assert kept[3].outputs[0].execution_count == 2
    assert kept[3].outputs[0].data["text/plain"] == "4"


def test_an_error_in_a_cell_stops_it(execute: Any, tmp_path: Path) -> None:
    """A notebook with a failing cell is not written."""
    path = written(tmp_path / "bad.ipynb", "1 / 0")
    before = path.read_bytes()

    with pytest.raises(CellExecutionError):
        execute.main([str(path)])

    assert path.read_bytes() == before
