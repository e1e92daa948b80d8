"""Linter, formatter and type checker find nothing."""

from __future__ import annotations

import subprocess
import sys

import pytest

from project_tree import ROOT

CHECKS = {
    "ruff check": ["ruff", "check", "--no-cache", "--quiet", "--output-format=concise", "."],
    "ruff format": ["ruff", "format", "--no-cache", "--check", "."],
    "mypy": ["mypy"],
}


@pytest.mark.parametrize("name", CHECKS)
def test_nothing_found(name: str) -> None:
    """The tool, with the settings in pyproject.toml, is content with the whole tree."""
    command = [sys.executable, "-m", *CHECKS[name]]
    done = subprocess.run(command, cwd=ROOT, capture_output=True, text=True, check=False)

    assert done.returncode == 0, done.stdout + done.stderr
