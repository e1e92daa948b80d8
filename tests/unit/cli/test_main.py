"""The command line: the same sentences as Python, the right exit code, never a traceback."""

from __future__ import annotations

import io
import re
import shutil
import subprocess
import sys

import pytest

import kneecase.lab
from kneecase.cli import main
from kneecase.record import read_case
from project_tree import ROOT, SAMPLE_CASES

STIFF = ROOT / "sample_data" / "stiff-knee"
LAST = read_case(STIFF).last_date.isoformat()


@pytest.fixture(autouse=True)
def own_folder(tmp_path, monkeypatch):
    """Every command runs in a folder of its own."""
    monkeypatch.chdir(tmp_path)
    return tmp_path


@pytest.fixture
def broken(tmp_path):
    """A case with two faults."""
    folder = tmp_path / "broken"
    shutil.copytree(STIFF, folder)
    table = folder / "measurements.csv"
    faults = iter(("1350", "seventy"))
    text = re.sub(
        r"knee_flexion,right,(\d+)",
        lambda found: f"knee_flexion,right,{next(faults, found[1])}",
        table.read_text("utf-8"),
    )
    table.write_text(text, "utf-8")
    return folder


# -- check ----------------------------------------------------------------------------


@pytest.mark.parametrize("folder", SAMPLE_CASES, ids=lambda path: path.name)
def test_check_sums_up(folder, capsys):
    """A sound case is fine: banner, counts, measures."""
    assert main(["check", str(folder)]) == 0
    printed = capsys.readouterr().out

    assert "No problems found" in printed
    assert "operated knee:" in printed
    assert f"{len(read_case(folder).readings)} measurement rows" in printed
    assert "This case is invented" in printed


def test_check_names_every_fault(broken, capsys):
    """All faults are named at once with row, column and value; the exit code is 1; no traceback."""
    assert main(["check", str(broken)]) == 1
    said = capsys.readouterr().err

    assert "2 problems to mend" in said
    assert "column value" in said
    assert "1350" in said
    assert "seventy" in said
    assert "Traceback" not in said


def test_check_lists_warnings(tmp_path, capsys):
    """An unlikely value is fine, kept, and listed."""
    shutil.copytree(STIFF, tmp_path / "odd")
    table = tmp_path / "odd" / "measurements.csv"
    text = re.sub(r"knee_flexion,left,\d+,", "knee_flexion,left,165,", table.read_text("utf-8"), count=1)
    table.write_text(text, "utf-8")

    assert main(["check", str(tmp_path / "odd")]) == 0
    assert "1 warning; the values are kept as they are:" in capsys.readouterr().out


@pytest.mark.parametrize("command", ["check", "review"])
def test_a_wrong_path_is_wrong_usage(command, capsys):
    """A path where there is nothing is wrong usage."""
    assert main([command, "nowhere"]) == 2
    assert "There is no case folder 'nowhere'" in capsys.readouterr().err


def test_a_newer_format_is_a_problem_of_the_case(tmp_path, capsys):
    """A case of a later kneecase is refused with code 1 and a sentence."""
    shutil.copytree(STIFF, tmp_path / "later")
    file = tmp_path / "later" / "case.toml"
    file.write_text(file.read_text("utf-8").replace("format = 1", "format = 99"), "utf-8")

    assert main(["check", str(tmp_path / "later")]) == 1
    assert "99" in capsys.readouterr().err


# -- review ---------------------------------------------------------------------------


def test_review_prints_and_writes_a_page(own_folder, capsys):
    """The review is printed, and its page lies in the current folder under the case's name and day."""
    assert main(["review", str(STIFF)]) == 0
    printed = capsys.readouterr().out
    page = own_folder / f"review-stiff-knee-{LAST}.html"

    assert "Gain of knee flexion" in printed
    assert str(page) in printed
    assert page.read_text("utf-8").startswith("<!doctype html>")


def test_review_as_of_a_day(own_folder, capsys):
    """With --on nothing recorded later is in the review."""
    assert main(["review", str(STIFF), "--on", "2026-02-09"]) == 0

    assert "Review on 2026-02-09" in capsys.readouterr().out
    assert LAST not in (own_folder / "review-stiff-knee-2026-02-09.html").read_text("utf-8")


def test_review_again_replaces_its_own_page(own_folder):
    """A page that kneecase wrote for the same case is replaced."""
    for _ in range(2):
        assert main(["review", str(STIFF), "--html", "page.html"]) == 0
    assert len(list(own_folder.iterdir())) == 1


def test_review_leaves_other_files_alone(own_folder, capsys):
    """A file of somebody else's, or the review of another case, is not replaced unless forced."""
    (own_folder / "mine.html").write_text("<p>mine</p>", "utf-8")

    assert main(["review", str(STIFF), "--html", "mine.html"]) == 2
    assert "kneecase did not write it" in capsys.readouterr().err
    assert (own_folder / "mine.html").read_text("utf-8") == "<p>mine</p>"

    other = ROOT / "sample_data" / "on-course"
    assert main(["review", str(other), "--html", "page.html"]) == 0
    assert main(["review", str(STIFF), "--html", "page.html"]) == 2
    assert "review of another case" in capsys.readouterr().err
    assert main(["review", str(STIFF), "--html", "page.html", "--force"]) == 0
    assert "Alder" in (own_folder / "page.html").read_text("utf-8")


def test_review_without_a_page(own_folder):
    """With --no-page nothing is written."""
    assert main(["review", str(STIFF), "--no-page"]) == 0
    assert list(own_folder.iterdir()) == []


def test_review_into_nowhere_is_refused(capsys):
    """A place that cannot be written is said in a sentence."""
    assert main(["review", str(STIFF), "--html", "no/such/folder/page.html"]) == 2
    assert "could not be written" in capsys.readouterr().err


def test_review_of_a_broken_case(broken, capsys):
    """A case with faults has no review, and the same sentences as check."""
    assert main(["review", str(broken)]) == 1
    assert "2 problems to mend" in capsys.readouterr().err


# -- new ------------------------------------------------------------------------------


def test_new_case_can_be_checked(capsys):
    """A new case is sound as it is, and a second one in its place is refused."""
    words = ["new", "tansy", "--pseudonym", "Tansy", "--surgery-date", "2026-03-02", "--side", "right"]

    assert main(words) == 0
    assert main(["check", "tansy"]) == 0
    assert "operated knee: RIGHT" in capsys.readouterr().out
    assert main(words) == 2


# -- start ----------------------------------------------------------------------------


def test_start_copies_and_stops_there(own_folder, capsys):
    """With --no-launch the files are copied and nothing is opened."""
    assert main(["start", "--no-launch"]) == 0
    printed = capsys.readouterr().out

    assert (own_folder / "kneecase-notebooks" / "sample_data" / "stiff-knee" / "case.toml").is_file()
    assert "Copied" in printed
    assert "00-start-here.ipynb" in printed


@pytest.mark.parametrize(
    ("display", "words"), [("", "Open this address:"), (":0", "It opens in your browser")]
)
def test_start_prints_the_address(display, words, monkeypatch, capsys):
    """The address is printed, with the words that fit a machine with or without a window."""
    monkeypatch.setattr(sys, "platform", "linux")
    monkeypatch.setattr(kneecase.lab, "has_browser", lambda: bool(display))
    started = []
    monkeypatch.setattr(kneecase.lab, "started", lambda run: (started.append(run), 0)[1])

    assert main(["start", "folder", "--port", "9123"]) == 0
    printed = capsys.readouterr().out
    assert words in printed
    assert started[0].address in printed
    assert "http://127.0.0.1:9123/lab/tree/notebooks/00-start-here.ipynb?token=" in printed


def test_start_where_it_cannot(own_folder, capsys):
    """A folder that cannot be made is wrong usage."""
    (own_folder / "taken").write_text("a file", "utf-8")

    assert main(["start", "taken"]) == 2
    assert "could not be written" in capsys.readouterr().err


# -- usage ----------------------------------------------------------------------------


@pytest.mark.parametrize(
    "words",
    [
        [],
        ["nonsense"],
        ["check"],
        ["review", "x", "--on", "18.03.2026"],
        ["start", "--port", "0"],
        ["start", "--port", "many"],
        ["new", "x", "--pseudonym", "A", "--surgery-date", "2026-03-02", "--side", "middle"],
    ],
)
def test_wrong_usage_is_two(words, capsys):
    """Wrong usage ends with code 2 and a hint."""
    assert main(words) == 2
    assert "usage: kneecase" in capsys.readouterr().err


def test_help_and_version_are_fine(capsys):
    """Help and version end with code 0."""
    assert main(["--help"]) == 0
    assert main(["--version"]) == 0
    assert "Exit codes" in capsys.readouterr().out


def test_interruption_is_quiet(monkeypatch):
    """Ctrl-C ends without a traceback."""

    def interrupted(*_):
        raise KeyboardInterrupt

    monkeypatch.setattr("kneecase.cli._case", interrupted)

    assert main(["check", "x"]) == 130


def test_a_plain_terminal_is_no_obstacle(monkeypatch):
    """A terminal that knows only ASCII shows a question mark for a degree sign, and does not fail."""
    narrow = io.TextIOWrapper(io.BytesIO(), encoding="ascii")
    monkeypatch.setattr(sys, "stdout", narrow)

    assert main(["review", str(STIFF), "--no-page"]) == 0
    narrow.seek(0)
    assert "95?" in narrow.read()


def test_lines_fit_the_window(monkeypatch, capsys):
    """In a window lines are broken between words; in a pipe they are left whole."""
    assert main(["check", str(STIFF)]) == 0
    whole = capsys.readouterr().out
    monkeypatch.setattr(sys.stdout, "isatty", lambda: True, raising=False)
    monkeypatch.setenv("COLUMNS", "60")
    assert main(["check", str(STIFF)]) == 0
    fitted = capsys.readouterr().out

    assert max(map(len, whole.splitlines())) > 100
    assert max(len(line) for line in fitted.splitlines()[1:]) <= 60
    assert fitted.split() == whole.split()


def test_the_module_is_the_command():
    """The installed command runs; a wrong path ends with code 2 and no traceback."""
    script = "import sys; from kneecase.cli import main; sys.exit(main(['check', 'nowhere']))"
    done = subprocess.run([sys.executable, "-c", script], capture_output=True, text=True, check=False)

    assert done.returncode == 2
    assert "Traceback" not in done.stderr
