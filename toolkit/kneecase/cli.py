"""The command line: ``kneecase start``, ``check``, ``review``, ``new`` and ``measures``.

It shows the same sentences as Python and never a traceback for what a user did.
Exit codes: 0 fine, 1 problems in the case, 2 wrong usage.
"""

from __future__ import annotations

import argparse
import datetime as dt
import io
import shutil
import sys
import textwrap
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from kneecase import __version__
from kneecase.errors import CaseError, KneecaseError, NewerFormatError
from kneecase.plain import shown_plainly

if TYPE_CHECKING:
    from kneecase.record import Case

__all__ = ["main"]

_FINE, _PROBLEMS, _USAGE = 0, 1, 2
_INTERRUPTED = 130
_WIDEST = 100


def main(arguments: Sequence[str] | None = None) -> int:
    """Run one command and return its exit code."""
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper):
            stream.reconfigure(errors="replace")
    try:
        chosen = _parser().parse_args(arguments)
        return int(chosen.run(chosen))
    except SystemExit as end:  # argparse has already said what is wrong
        return end.code if isinstance(end.code, int) else _USAGE
    except (CaseError, NewerFormatError) as error:
        print(shown_plainly(str(error)), file=sys.stderr)
        return _PROBLEMS
    except KneecaseError as error:
        print(shown_plainly(f"kneecase: {error}"), file=sys.stderr)
        return _USAGE
    except KeyboardInterrupt:
        return _INTERRUPTED


# -- what can be typed ----------------------------------------------------------------


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(
        prog="kneecase",
        description="Record, calculators and notebooks for knee rehabilitation after ACL reconstruction.",
        epilog="Exit codes: 0 fine, 1 problems in the case, 2 wrong usage.",
    )
    parser.add_argument("--version", action="version", version=f"kneecase {__version__}")
    commands = parser.add_subparsers(title="commands", required=True, metavar="COMMAND")
    _start_command(commands.add_parser("start", help="copy the notebooks to a folder and open JupyterLab"))
    _check_command(commands.add_parser("check", help="check a case folder and say what is in it"))
    _review_command(commands.add_parser("review", help="work out every answer the record supports"))
    _new_command(commands.add_parser("new", help="begin a case folder to fill in"))
    _measures_command(commands.add_parser("measures", help="list what can be recorded, with its units"))
    return parser


def _start_command(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("folder", nargs="?", default="kneecase-notebooks", metavar="FOLDER", type=Path)
    parser.add_argument("--no-launch", action="store_true", help="copy the files and stop there")
    parser.add_argument("--no-browser", action="store_true", help="print the address, open no window")
    parser.add_argument("--port", type=_port, help="the port to use (default: a free one from 8888)")
    parser.set_defaults(run=_start)


def _check_command(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("case", metavar="CASE", type=Path, help="the case folder")
    parser.set_defaults(run=_check)


def _review_command(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("case", metavar="CASE", type=Path, help="the case folder")
    parser.add_argument("--on", metavar="DATE", type=_date, help="as known on this day (default: the last)")
    parser.add_argument("--html", metavar="FILE", type=Path, help="where the page goes (default: here)")
    parser.add_argument("--no-page", action="store_true", help="only print; write no page")
    parser.add_argument("--force", action="store_true", help="replace FILE whoever wrote it")
    parser.set_defaults(run=_review)


def _new_command(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("case", metavar="CASE", type=Path, help="the folder to make")
    parser.add_argument("--pseudonym", required=True, help="a made-up name, never the athlete's own")
    parser.add_argument("--surgery-date", required=True, type=_date, metavar="DATE")
    parser.add_argument("--side", required=True, choices=("left", "right"), help="the operated side")
    parser.set_defaults(run=_new)


def _measures_command(parser: argparse.ArgumentParser) -> None:
    parser.set_defaults(run=_measures)


def _date(text: str) -> dt.date:
    try:
        return dt.date.fromisoformat(text)
    except ValueError:
        raise argparse.ArgumentTypeError(
            f"must be a date written year-month-day, such as 2026-03-02, got {text!r}"
        ) from None


def _port(text: str) -> int:
    if text.isascii() and text.isdigit() and 1 <= int(text) <= 65535:
        return int(text)
    raise argparse.ArgumentTypeError(f"must be a whole number from 1 to 65535, got {text!r}")


# -- what they do ---------------------------------------------------------------------


def _start(chosen: argparse.Namespace) -> int:
    from kneecase.lab import has_browser, lab_run, started
    from kneecase.shipped import working_copy
    from kneecase.trust import trusted

    copy = working_copy(chosen.folder)
    print(copy.words())
    if chosen.no_launch:
        print(f"Open {copy.start.relative_to(copy.folder)} first.")
        return _FINE
    trusted(copy)
    run = lab_run(copy, browser=has_browser() and not chosen.no_browser, port=chosen.port)
    print("JupyterLab is starting. End it with Ctrl-C in this window.")
    print("It opens in your browser; if it does not, go to:" if run.opens_browser else "Open this address:")
    print(f"  {run.address}")
    return started(run)


def _check(chosen: argparse.Namespace) -> int:
    from kneecase.report import contents_text

    case = _case(chosen.case)
    print(f"No problems found in {chosen.case}.")
    print(_fitted(shown_plainly(contents_text(case))))
    return _FINE


def _review(chosen: argparse.Namespace) -> int:
    from kneecase.report import review_page, review_text, write_page

    case = _case(chosen.case)
    print(_fitted(shown_plainly(review_text(case, chosen.on))))
    if chosen.no_page:
        return _FINE
    file = chosen.html or Path(
        f"review-{_stem(chosen.case)}-{(chosen.on or case.last_date).isoformat()}.html"
    )
    written = write_page(review_page(case, chosen.on), file, force=chosen.force)
    print(f"\nThe page to read, print or hand over: {written}")
    return _FINE


def _new(chosen: argparse.Namespace) -> int:
    from kneecase.record import new_case

    new_case(chosen.case, pseudonym=chosen.pseudonym, surgery_date=chosen.surgery_date, side=chosen.side)
    print(f"A new case is in {chosen.case}: fill in case.toml, measurements.csv and visits.csv,")
    print(f"then run: kneecase check {chosen.case}")
    print("What can be recorded, and the words for it: kneecase measures")
    return _FINE


def _measures(_: argparse.Namespace) -> int:
    from kneecase.report import catalogue_text

    print(_fitted(catalogue_text()))
    return _FINE


def _case(path: Path) -> Case:
    from kneecase.record import read_case

    if not path.exists():
        raise KneecaseError(f"There is no case folder {str(path)!r}. Is the path right?")
    return read_case(path)


def _fitted(text: str) -> str:
    """Lines broken between words where they are read in a window; left whole in a file or a pipe."""
    if not sys.stdout.isatty():
        return text
    width = min(shutil.get_terminal_size().columns, _WIDEST)
    return "\n".join(_broken(line, width) for line in text.splitlines())


def _broken(line: str, width: int) -> str:
    margin = " " * (len(line) - len(line.lstrip()) + 2)
    return textwrap.fill(line, width, subsequent_indent=margin, break_on_hyphens=False)


def _stem(path: Path) -> str:
    return path.resolve().name or "case"
