"""Shipped notebooks are signed for this user; anything changed is left alone."""

from __future__ import annotations

import json

import nbformat
import pytest
from nbformat.sign import NotebookNotary

from kneecase.shipped import WorkingCopy
from kneecase.trust import trusted


@pytest.fixture(autouse=True)
def data_dir(tmp_path, monkeypatch):
    """A key store of its own, so that no test signs anything for the person who runs it."""
    monkeypatch.setenv("JUPYTER_DATA_DIR", str(tmp_path / "jupyter"))


def notebook(path):
    """A small notebook with an output."""
    book = nbformat.v4.new_notebook()
    output = nbformat.v4.new_output("display_data", {"text/html": "<b>shown</b>"})
    book.cells.append(nbformat.v4.new_code_cell("1", outputs=[output]))
    nbformat.write(book, path)
    return path


def is_trusted(path):
    """Whether JupyterLab would show this notebook as it is."""
    return NotebookNotary().check_signature(nbformat.read(path, as_version=4))


def test_only_shipped_bytes_are_signed(tmp_path):
    """New and unchanged notebooks are trusted; a changed one and a table are not touched."""
    new, same, kept = (notebook(tmp_path / f"{name}.ipynb") for name in ("new", "same", "kept"))
    for path, text in ((same, "2"), (kept, "3")):
        book = json.loads(path.read_text("utf-8"))
        book["cells"][0]["source"] = text
        path.write_text(json.dumps(book), "utf-8")
    table = tmp_path / "table.csv"
    table.write_text("a,b\n")
    copy = WorkingCopy(folder=tmp_path, new=(new, table), same=(same,), kept=(kept,))

    assert trusted(copy) == (new, same)
    assert [is_trusted(path) for path in (new, same, kept)] == [True, True, False]


def test_a_store_that_cannot_be_written_signs_nothing_and_says_nothing_false(tmp_path, monkeypatch):
    """No key, no signature, no traceback."""
    (tmp_path / "file").write_text("")
    monkeypatch.setenv("JUPYTER_DATA_DIR", str(tmp_path / "file" / "below"))
    copy = WorkingCopy(folder=tmp_path, new=(notebook(tmp_path / "new.ipynb"),), same=(), kept=())

    assert trusted(copy) == ()
