"""Execute the notebooks and write them back as they are committed.

    python tests/notebooks/execute.py             every notebook
    python tests/notebooks/execute.py NAME ...    these only

Each runs from top to bottom in a fresh kernel, beside the sample cases, and is
written with cells numbered 1..n, steady cell ids, no timings, no widget state
and nothing that names this machine.  Running it twice gives the same bytes.

A cell tagged ``reveal`` holds an answer that the reader commits to first: it is run
here too, and written without number and output.
"""

from __future__ import annotations

import argparse
import sys
from pathlib import Path
from typing import Any

import nbformat
from nbclient import NotebookClient

__all__ = ["REVEAL", "committed_form", "executed", "main"]

NOTEBOOKS = Path(__file__).resolve().parents[2] / "notebooks"
REVEAL = "reveal"
KERNEL = {"display_name": "Python 3", "language": "python", "name": "python3"}


def executed(path: Path, timeout_s: float = 120.0) -> Any:
    """The notebook run from top to bottom in its own folder; an error in a cell is an error here."""
    notebook = nbformat.read(path, as_version=4)
    client = NotebookClient(
        notebook,
        timeout=int(timeout_s),
        kernel_name="python3",
        resources={"metadata": {"path": str(path.parent)}},
        record_timing=False,
        store_widget_state=False,
    )
    client.execute()
    return notebook


def committed_form(notebook: Any) -> str:
    """The text of a notebook as it is committed: only what a reader needs, the same each time."""
    notebook.metadata = {"kernelspec": KERNEL, "language_info": {"name": "python"}}
    notebook.nbformat, notebook.nbformat_minor = 4, 5
    shown = 0
    for number, cell in enumerate(notebook.cells):
        cell.id = f"cell-{number:02d}"
        cell.metadata = {"tags": list(cell.metadata.tags)} if cell.metadata.get("tags") else {}
        if cell.cell_type == "code" and REVEAL in cell.metadata.get("tags", ()):
            cell.outputs, cell.execution_count = [], None
        elif cell.cell_type == "code":
            shown += 1
            cell.outputs, cell.execution_count = [_numbered(o, shown) for o in _joined(cell.outputs)], shown
    nbformat.validate(notebook)
    return str(nbformat.writes(notebook)).rstrip("\n") + "\n"


def _numbered(output: Any, count: int) -> Any:
    """An output that carries the number of its cell."""
    if "execution_count" in output:
        output.execution_count = count
    return output


def _joined(outputs: list[Any]) -> list[Any]:
    """Outputs with neighbouring pieces of one stream joined: how they are cut differs from run to run."""
    whole: list[Any] = []
    for output in outputs:
        before = whole[-1] if whole else None
        if before is not None and output.output_type == "stream" and before.get("name") == output.name:
            before["text"] += output.text
        else:
            whole.append(output)
    return whole


def main(arguments: list[str] | None = None) -> int:
    """Execute the notebooks named, or all."""
    parser = argparse.ArgumentParser(description=str(__doc__).split("\n", 1)[0])
    parser.add_argument("notebooks", nargs="*", type=Path, help="default: every notebook of the project")
    for path in parser.parse_args(arguments).notebooks or sorted(NOTEBOOKS.glob("*.ipynb")):
        text = committed_form(executed(path))
        changed = text != path.read_text("utf-8")
        path.write_text(text, "utf-8")
        print(f"{path.name}: {'written' if changed else 'as it was'}")
    return 0


if __name__ == "__main__":
    sys.exit(main())
