"""The package as people install it: a wheel built from the source archive, tested away from its sources."""

from __future__ import annotations

import os
import shutil
import site
import subprocess
import sys
import tarfile
import zipfile
from pathlib import Path

import pytest

from project_tree import NOTEBOOKS, PACKAGE, ROOT, SAMPLE_CASES

pytestmark = pytest.mark.wheel


def run(command: list[str | Path], folder: Path) -> subprocess.CompletedProcess[str]:
    """A command in a folder, with nothing of this process's Python settings; its output is kept."""
    quiet = {k: v for k, v in os.environ.items() if not k.startswith(("PYTHON", "COV_", "COVERAGE"))}
    return subprocess.run(
        [str(part) for part in command],
        cwd=folder,
        env=quiet,
        stdin=subprocess.DEVNULL,
        capture_output=True,
        text=True,
        check=False,
    )


@pytest.fixture(scope="module")
def built(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, Path]:
    """The source archive, and the wheel built from it."""
    folder = tmp_path_factory.mktemp("dist")
    done = run([sys.executable, "-m", "build", "--no-isolation", "--outdir", folder, ROOT], folder)
    assert done.returncode == 0, done.stdout[-3000:] + done.stderr[-3000:]
    return next(folder.glob("*.tar.gz")), next(folder.glob("*.whl"))


@pytest.fixture(scope="module")
def python(built: tuple[Path, Path], tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The Python of a fresh environment that holds the wheel.

    Its other libraries are those of this environment, lent by a path file: a path file adds
    the folder and does not follow the link to the sources that an editable install leaves there.
    """
    home = tmp_path_factory.mktemp("fresh") / "venv"
    assert run([sys.executable, "-m", "venv", "--without-pip", home], home.parent).returncode == 0
    fresh = home / ("Scripts" if os.name == "nt" else "bin") / "python"
    install = [sys.executable, "-m", "pip", "--python", fresh, "install", "--no-deps", "--no-index", built[1]]
    done = run(install, home.parent)
    assert done.returncode == 0, done.stdout + done.stderr
    where = run([fresh, "-c", "import sysconfig; print(sysconfig.get_path('purelib'))"], home.parent)
    Path(where.stdout.strip(), "lent.pth").write_text("\n".join(site.getsitepackages()) + "\n", "utf-8")
    return fresh


@pytest.fixture
def kneecase(python: Path) -> Path:
    """The command that the wheel installs."""
    return python.with_name("kneecase.exe" if os.name == "nt" else "kneecase")


def names_in(archive: Path) -> set[str]:
    """The files of an archive; those of a source archive without its top folder."""
    if archive.suffix == ".whl":
        return set(zipfile.ZipFile(archive).namelist())
    with tarfile.open(archive) as opened:
        return {name.split("/", 1)[1] for name in opened.getnames() if "/" in name}


def test_the_source_archive_is_whole(built: tuple[Path, Path]) -> None:
    """It holds what a person needs to read, build and test, and nothing that is made."""
    names = names_in(built[0])

    assert {
        "README.md",
        "DEVELOPERS.md",
        "LICENSE",
        "pyproject.toml",
        "tests/run",
        "tests/conftest.py",
    } <= names
    assert {path.relative_to(ROOT).as_posix() for path in PACKAGE.rglob("*.py")} <= names
    assert [name for name in names if "__pycache__" in name or name.startswith((".venv", "artefacts"))] == []


def test_the_wheel_holds_what_is_used(built: tuple[Path, Path]) -> None:
    """Code, typing mark, style sheets, notebooks and sample cases; no tests, nothing that is made."""
    names = names_in(built[1])
    package = {
        path.relative_to(PACKAGE.parent).as_posix()
        for path in PACKAGE.rglob("*")
        if path.is_file() and "__pycache__" not in path.parts
    }
    shipped = {f"kneecase/_shipped/notebooks/{path.name}" for path in NOTEBOOKS}
    cases = {f"kneecase/_shipped/sample_data/{path.name}/case.toml" for path in SAMPLE_CASES}
    tops = {name.split("/")[0] for name in names}

    assert package <= names
    assert "kneecase/py.typed" in names
    assert shipped
    assert cases
    assert shipped | cases <= names
    assert {top for top in tops if not top.startswith("kneecase-")} == {"kneecase"}
    assert [n for n in names if "checkpoint" in n or "__pycache__" in n or n.endswith(".pyc")] == []
    assert any(name.endswith("licenses/LICENSE") for name in names)


def test_it_is_the_wheel_that_is_imported(python: Path, tmp_path: Path) -> None:
    """In the fresh environment ``kneecase`` comes from the wheel and not from these sources."""
    done = run([python, "-c", "import kneecase; print(kneecase.__file__)"], tmp_path)

    assert Path(done.stdout.strip()).is_relative_to(python.parents[1])
    assert not Path(done.stdout.strip()).is_relative_to(ROOT / "toolkit")


def test_unit_and_external_tests_pass_on_it(python: Path, tmp_path: Path) -> None:
    """The tests of behaviour hold for the installed wheel, with the sources out of the way."""
    for name in ("pyproject.toml", "tests/conftest.py", "tests/project_tree.py", "tests/saved_case.py"):
        (tmp_path / name).parent.mkdir(parents=True, exist_ok=True)
        shutil.copy(ROOT / name, tmp_path / name)
    for name in ("tests/unit", "tests/external", "notebooks", "sample_data"):
        shutil.copytree(ROOT / name, tmp_path / name, ignore=shutil.ignore_patterns("__pycache__"))
    done = run(
        [python, "-m", "pytest", "-q", "-p", "no:cacheprovider", "tests/unit", "tests/external"], tmp_path
    )

    assert done.returncode == 0, done.stdout[-5000:] + done.stderr[-2000:]
    assert " passed" in done.stdout


def test_start_check_and_review_work_from_it(kneecase: Path, tmp_path: Path) -> None:
    """The command copies the notebooks and cases, checks each case and writes its page."""
    copied = run([kneecase, "start", "--no-launch", tmp_path / "mine"], tmp_path)
    assert copied.returncode == 0, copied.stderr
    assert {p.name for p in (tmp_path / "mine" / "notebooks").glob("*.ipynb")} == {p.name for p in NOTEBOOKS}

    for sample in SAMPLE_CASES:
        case = tmp_path / "mine" / "sample_data" / sample.name
        checked = run([kneecase, "check", case], tmp_path)
        reviewed = run([kneecase, "review", case, "--html", tmp_path / f"{sample.name}.html"], tmp_path)
        assert checked.returncode == 0, checked.stdout + checked.stderr
        assert reviewed.returncode == 0, reviewed.stdout + reviewed.stderr
        assert "<html" in (tmp_path / f"{sample.name}.html").read_text("utf-8")
