"""A review as one HTML page that opens offline, prints well, and asks nothing of the network."""

from __future__ import annotations

import contextlib
import datetime as dt
import os
import re
import tempfile
from collections.abc import Callable, Mapping
from functools import lru_cache
from importlib import resources
from pathlib import Path
from types import MappingProxyType
from typing import TYPE_CHECKING, Any

from kneecase import __version__
from kneecase.answers import CSS, answer_body
from kneecase.charts import Figure, effusion_chart, hop_chart, motion_chart
from kneecase.errors import InputError, SaveError
from kneecase.plain import shown_plainly
from kneecase.record import Case
from kneecase.report.contents import is_invented, measured_lines
from kneecase.report.red_flags import DEFERENCE
from kneecase.report.review import Review, Section, reviewed
from kneecase.report.visits import visit_rows
from kneecase.report.words import INVENTED, OUTSIDE, WHAT_IT_IS

if TYPE_CHECKING:
    from jinja2 import Template

__all__ = ["review_page", "write_page"]

_MARK = '<meta name="generator" content="kneecase'
_OF = re.compile(r'<meta name="kneecase-case" content="([^"]*)">')
_HEAD_LENGTH = 2000


def review_page(case: Case, on: dt.date | None = None) -> str:
    """The review as one self-contained page: no script, no address to fetch.

    It follows the light or dark setting of the reader and has a print style; all text of the case is
    escaped.

    Parameters
    ----------
    case : Case
        The case.
    on : datetime.date, optional
        As known on this day; the last recorded date by default.

    Returns
    -------
    str
        A whole HTML document.
    """
    from markupsafe import Markup

    found = reviewed(case, on)
    sections = [
        {
            "id": section.key,
            "heading": section.answer.heading,
            "body": Markup(answer_body(section.answer, _picture(found, section))),
        }
        for section in found.sections
    ]
    return _template().render(
        version=__version__,
        case_key=_case_key(case),
        banner=found.banner,
        style=Markup(CSS + _text("review.css")),
        flags=found.flags,
        deference=DEFERENCE,
        invented=INVENTED if is_invented(case) else "",
        outside="" if found.in_scope else OUTSIDE,
        recorded=() if found.in_scope else measured_lines(case.as_of(found.banner.date)),
        sections=sections,
        visits=visit_rows(case, found.banner.date),
        not_measured=found.not_measured,
        not_worked_out=found.not_worked_out,
        warnings=[warning.sentence() for warning in case.warnings],
        what_it_is=WHAT_IT_IS,
    )


def write_page(page: str, file: str | Path, *, force: bool = False) -> Path:
    """Write a review page in one step and return where it is.

    A file that kneecase did not write, or that is the review of another case, is left alone
    unless ``force`` is true.

    Parameters
    ----------
    page : str
        What :func:`review_page` gave.
    file : str or Path
        Where it goes.
    force : bool
        Whether to replace whatever is there.

    Returns
    -------
    Path
        The file, as a whole path.

    Raises
    ------
    SaveError
        If such a file is in the way, or the place cannot be written.
    """
    target = Path(file).expanduser().resolve()
    try:
        if not force:
            _check_place(target, page)
        _put(target, page)
    except OSError as error:
        raise SaveError(f"{target} could not be written: {error.strerror}. Choose another place.") from error
    return target


def _check_place(target: Path, page: str) -> None:
    if not target.exists():
        return
    head = target.read_bytes()[:_HEAD_LENGTH].decode("utf-8", errors="replace")
    if _MARK not in head:
        raise SaveError(
            f"{target} exists and kneecase did not write it, so it is left as it is. Choose another name."
        )
    if _OF.findall(head) != _OF.findall(page[:_HEAD_LENGTH]):
        raise SaveError(
            f"{target} is the review of another case, so it is left as it is. Choose another name."
        )


def _put(target: Path, page: str) -> None:
    handle, name = tempfile.mkstemp(prefix=".kneecase-", suffix=".html", dir=target.parent)
    try:
        with os.fdopen(handle, "w", encoding="utf-8", newline="\n") as file:
            file.write(page)
        umask = os.umask(0)
        os.umask(umask)
        os.chmod(name, 0o666 & ~umask)
        os.replace(name, target)
    except BaseException:
        with contextlib.suppress(OSError):
            os.unlink(name)
        raise


def _picture(found: Review, section: Section) -> str:
    draw = _PICTURES.get(section.key)
    if draw is None or (section.key in _COURSES and len({r.date for r in section.answer.used}) < 2):
        return ""  # a course of one day is told faster than it is drawn
    try:
        return draw(found, section.answer)._repr_html_()
    except InputError:  # nothing to draw; the findings above say why
        return ""


_PICTURES: Mapping[str, Callable[[Review, Any], Figure]] = MappingProxyType(
    {
        "flexion_gain": lambda found, gain: _motion(found, "knee_flexion", gain),
        "extension_gain": lambda found, gain: _motion(found, "knee_extension", gain),
        "effusion": lambda found, _: effusion_chart(found.case, found.banner.date),
        "hops": lambda _, answer: hop_chart(answer),
    }
)


_COURSES = ("flexion_gain", "extension_gain", "effusion")


def _motion(found: Review, measure: str, gain: Any) -> Figure:
    return motion_chart(found.case, measure, found.banner.date, gain=gain)


def _case_key(case: Case) -> str:
    return f"{case.athlete.pseudonym}, {case.surgery.date.isoformat()}, {case.involved}"


def _text(name: str) -> str:
    return resources.files(__package__).joinpath(name).read_text("utf-8")


def _plain(value: object) -> object:
    """Text without steering characters; what is markup already was made so."""
    return shown_plainly(value) if type(value) is str else value


@lru_cache(maxsize=1)
def _template() -> Template:
    from jinja2 import Environment, StrictUndefined

    # The page is short on purpose: no loader, so no template can pull in another file.
    made = Environment(
        autoescape=True,
        finalize=_plain,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
    )
    return made.from_string(_text("review.html.j2"))
