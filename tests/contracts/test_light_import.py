"""Heavy parts load on first use, not on import."""

from __future__ import annotations

import subprocess
import sys

import pytest

HEAVY = ("IPython", "altair", "ipywidgets", "jinja2", "openpyxl", "pandas", "scipy", "statsmodels", "tomlkit")


def loaded_by(statement: str) -> set[str]:
    """The modules that a fresh interpreter holds after one statement."""
    script = f"{statement}; import sys; print(*sys.modules)"
    done = subprocess.run([sys.executable, "-c", script], capture_output=True, text=True, check=True)
    return set(done.stdout.split())


@pytest.mark.parametrize(
    "module",
    [
        "kneecase",
        "kneecase.answers",
        "kneecase.charts",
        "kneecase.cli",
        "kneecase.evidence",
        "kneecase.measures",
        "kneecase.record",
        "kneecase.recovery",
        "kneecase.report",
    ],
)
def test_nothing_heavy_is_loaded(module: str) -> None:
    """Importing a room loads none of the heavy libraries."""
    loaded = loaded_by(f"import {module}")

    assert module in loaded
    assert sorted(loaded & {*HEAVY, "vl_convert"}) == []


def test_the_face_loads_nothing_but_itself() -> None:
    """``import kneecase`` opens no room and needs no NumPy."""
    loaded = loaded_by("import kneecase")

    assert "numpy" not in loaded
    assert [name for name in loaded if name.startswith("kneecase.")] == []


def test_rooms_open_on_first_use() -> None:
    """A room named on the package is loaded when it is asked for."""
    loaded = loaded_by("import kneecase; kneecase.measures.limb_symmetry_index")

    assert "kneecase.measures" in loaded
