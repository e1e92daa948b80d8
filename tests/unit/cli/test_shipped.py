"""Notebooks and sample cases are found in both kinds of install, and a copy overwrites nothing."""

from __future__ import annotations

import errno
import os
from pathlib import Path

import pytest

from kneecase.errors import KneecaseError
from kneecase.shipped import SHIPPED, shipped_folder, working_copy


@pytest.fixture(params=["wheel", "project tree"])
def package(request, tmp_path):
    """A package folder with its shipped files where this kind of install has them."""
    package = tmp_path / "tree" / "toolkit" / "kneecase"
    root = package / "_shipped" if request.param == "wheel" else tmp_path / "tree"
    for name, file in (
        ("notebooks", "00-start-here.ipynb"),
        ("notebooks", ".ipynb_checkpoints/00-start-here-checkpoint.ipynb"),
        ("sample_data", "stiff-knee/case.toml"),
    ):
        place = root / name / file
        place.parent.mkdir(parents=True, exist_ok=True)
        place.write_text(f"{name}/{file}", "utf-8")
    package.mkdir(parents=True, exist_ok=True)
    return package


def names(paths, folder):
    """Paths relative to the folder, as text."""
    return [path.relative_to(folder).as_posix() for path in paths]


def test_both_layouts_are_copied_alike(package, tmp_path):
    """The working folder holds the shipped folders side by side; leftovers of an editor are not copied."""
    copy = working_copy(tmp_path / "work", package)

    assert names(copy.new, copy.folder) == [
        "notebooks/00-start-here.ipynb",
        "sample_data/stiff-knee/case.toml",
    ]
    assert copy.start.read_text("utf-8") == "notebooks/00-start-here.ipynb"
    assert "Copied 2 files there." in copy.words()


def test_own_work_is_kept_and_named(package, tmp_path):
    """A file that was changed stays as it is and is named; the others are told apart from it."""
    first = working_copy(tmp_path / "work", package)
    first.start.write_text("my own notes", "utf-8")
    (first.folder / "sample_data" / "mine.txt").write_text("mine", "utf-8")

    second = working_copy(tmp_path / "work", package)

    assert second.new == ()
    assert names(second.kept, second.folder) == ["notebooks/00-start-here.ipynb"]
    assert names(second.same, second.folder) == ["sample_data/stiff-knee/case.toml"]
    assert first.start.read_text("utf-8") == "my own notes"
    assert "  notebooks/00-start-here.ipynb" in second.words()
    assert "1 already there, unchanged." in second.words()


def test_a_link_in_the_way_is_not_followed(package, tmp_path):
    """A link that stands where a file would go is kept, and what it points at is not written."""
    (tmp_path / "work" / "notebooks").mkdir(parents=True)
    (tmp_path / "work" / "notebooks" / "00-start-here.ipynb").symlink_to(tmp_path / "elsewhere")
    copy = working_copy(tmp_path / "work", package)

    assert len(copy.kept) == 1
    assert not (tmp_path / "elsewhere").exists()


def test_a_folder_that_cannot_be_is_refused(package, tmp_path):
    """Where a file stands in place of the folder, the sentence names it and the cure."""
    (tmp_path / "work").write_text("a file", "utf-8")

    with pytest.raises(KneecaseError, match=r"could not be written: .*kneecase start FOLDER"):
        working_copy(tmp_path / "work", package)


def test_copying_into_the_originals_is_refused(package):
    """The shipped folders themselves are no working folder."""
    with pytest.raises(KneecaseError, match="where kneecase keeps its own notebooks"):
        working_copy(shipped_folder("notebooks", package) / "inside", package)


def test_missing_parts_are_said(tmp_path):
    """An installation without the files says so; so does a name that is none."""
    (tmp_path / "a" / "b").mkdir(parents=True)

    for name in (*SHIPPED, "secrets"):
        with pytest.raises(KneecaseError, match="not part of this installation"):
            shipped_folder(name, tmp_path / "a" / "b")


def test_this_installation_holds_them():
    """The running installation finds its own sample cases."""
    assert (shipped_folder("sample_data") / "stiff-knee" / "case.toml").is_file()


def test_a_read_only_place_is_refused(package, tmp_path, monkeypatch):
    """A place without permission to write is refused in a sentence, whoever runs this."""

    def refuses(self, mode="r", *args, **kwargs):
        raise PermissionError(errno.EACCES, os.strerror(errno.EACCES), str(self))

    monkeypatch.setattr(Path, "open", refuses)

    with pytest.raises(KneecaseError, match=r"could not be written: Permission denied\. Choose another"):
        working_copy(tmp_path / "work", package)
