"""The review page as people see it: offline, in both themes and widths, on paper, and with hostile text."""

from __future__ import annotations

import csv
import io
import shutil
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Page

from kneecase import read_case
from kneecase.plain import shown_plainly
from kneecase.report import review_page
from project_tree import SAMPLE_CASES

THEMES = ("light", "dark")
WIDTHS = (1280, 800)

HOSTILE = (
    "<script>window.struck = 1</script>",
    '"><img src=x onerror="window.struck = 1">',
    "'-->]]><svg onload=window.struck=1>",
    '=HYPERLINK("x","y")',
    "</style></section></body><h1>Ended early</h1>",
    "{{ 7 * 7 }} {% raw %} ${1+1}",
    "ركبة يمنى ‮gnort‬ שלום",
    "🦵🏽👩‍⚕️ knee ﷽",
    "W" * 600,
)
"""What a page must show and not obey: script, markup, formula, template, right-to-left, emoji, very long."""


def shown(page: Page, case: Path, folder: Path) -> None:
    """The review page of a case, opened from the disk."""
    file = folder / f"{case.name}.html"
    file.write_text(review_page(read_case(case)), "utf-8")
    page.goto(file.as_uri())


def wider_than_the_window(page: Page) -> list[str]:
    """The parts that reach out of the window to the right."""
    found: list[str] = page.evaluate(
        """() => document.documentElement.scrollWidth <= window.innerWidth ? [] :
            [document.documentElement, ...document.querySelectorAll('body *')]
                .filter(e => e.scrollWidth > e.clientWidth + 1
                    || e.getBoundingClientRect().right > window.innerWidth + 1)
                .slice(-5).map(e => e.outerHTML.slice(0, 160))"""
    )
    return found


@pytest.mark.parametrize("width", WIDTHS)
@pytest.mark.parametrize("theme", THEMES)
def test_a_page_is_whole(
    page: Page, sample_case: Path, serious: Any, artefacts: Path, tmp_path: Path, theme: Any, width: int
) -> None:
    """Nothing reaches out of the window, every picture shows, and it is accessible in either theme."""
    page.emulate_media(color_scheme=theme)
    page.set_viewport_size({"width": width, "height": 900})
    shown(page, sample_case, tmp_path)
    page.screenshot(path=artefacts / f"review-{sample_case.name}-{theme}-{width}.png", full_page=True)

    assert wider_than_the_window(page) == []
    assert page.evaluate("() => [...document.images].filter(i => !i.naturalWidth || !i.alt).length") == 0
    assert serious(page) == []
    assert page.locator("html[lang]").count() == 1
    assert page.title().strip()
    assert page.locator("h1").count() == 1


def test_the_banner_says_whose_knee(page: Page, sample_case: Path, tmp_path: Path) -> None:
    """Pseudonym, operated side and week stand at the top of the page."""
    case = read_case(sample_case)
    shown(page, sample_case, tmp_path)
    top = page.locator("body").inner_text()[:900]

    assert case.athlete.pseudonym in top
    assert case.involved.upper() in top.upper()
    assert "week" in top.lower()


def test_it_prints(page: Page, sample_case: Path, artefacts: Path, tmp_path: Path) -> None:
    """On paper it is black on white, has pages, and nothing is folded away from the reader."""
    page.emulate_media(color_scheme="dark", media="print")
    shown(page, sample_case, tmp_path)
    page.pdf(path=artefacts / f"review-{sample_case.name}.pdf", format="A4")
    ground = page.evaluate("() => getComputedStyle(document.body).backgroundColor")
    ink = page.evaluate("() => getComputedStyle(document.querySelector('.kc') ?? document.body).color")

    assert ground in ("rgba(0, 0, 0, 0)", "rgb(255, 255, 255)")
    assert ink == "rgb(0, 0, 0)"
    assert (artefacts / f"review-{sample_case.name}.pdf").stat().st_size > 5000


@pytest.fixture(
    params=[p for p in SAMPLE_CASES if p.name in ("stiff-knee", "hop-battery")], ids=lambda p: p.name
)
def hostile_case(request: pytest.FixtureRequest, tmp_path: Path) -> Path:
    """A case whose every free text is hostile."""
    folder = tmp_path / "hostile"
    shutil.copytree(request.param, folder)
    for name, columns in (
        ("measurements.csv", ("tester", "device", "position", "note")),
        ("visits.csv", ("clinician", "activity", "dose", "note", "reason", "decided_by")),
    ):
        _spoil(folder / name, columns)
    lines = (folder / "case.toml").read_text("utf-8").splitlines()
    for n, line in enumerate(lines):
        if line.startswith("pseudonym"):
            lines[n] = f"pseudonym = '''{HOSTILE[0]}'''"
        if line.startswith(("sport", "note", "ordered_by")):
            lines[n] = f"{line.split('=')[0]}= '''{HOSTILE[1]}'''"
    (folder / "case.toml").write_text("\n".join(lines) + "\n", "utf-8")
    return folder


def _spoil(file: Path, columns: tuple[str, ...]) -> None:
    """Fill the free columns of a table with hostile text, each row with the next."""
    text = file.read_text("utf-8-sig")
    dialect = csv.Sniffer().sniff(text.splitlines()[0], delimiters=",;\t")
    rows = list(csv.DictReader(io.StringIO(text), delimiter=dialect.delimiter))
    names = list(rows[0])
    for n, row in enumerate(rows):
        row |= {c: HOSTILE[(n + k) % len(HOSTILE)] for k, c in enumerate(columns) if c in names}
    with file.open("w", encoding="utf-8", newline="") as out:
        writer = csv.DictWriter(out, names)
        writer.writeheader()
        writer.writerows(rows)


@pytest.mark.parametrize("width", WIDTHS)
def test_hostile_text_is_shown_as_text(
    page: Page, hostile_case: Path, serious: Any, artefacts: Path, tmp_path: Path, width: int
) -> None:
    """Nothing in a case runs, marks up or turns a line round; the page keeps its shape."""
    page.set_viewport_size({"width": width, "height": 900})
    shown(page, hostile_case, tmp_path)
    page.locator("details").evaluate_all("all => all.forEach(one => { one.open = true })")
    page.screenshot(path=artefacts / f"review-hostile-{width}.png", full_page=True)
    text = page.locator("body").inner_text()

    assert page.evaluate("() => window.struck") is None
    assert page.locator("img[src='x'], svg[onload], [onerror]").count() == 0
    assert page.get_by_role("heading", name="Ended early").count() == 0
    assert page.locator("script").count() == 0
    assert [words for words in HOSTILE if shown_plainly(words) not in text] == []
    assert wider_than_the_window(page) == []
    assert serious(page) == []


def test_hostile_text_in_a_notebook_is_shown_as_text(page: Page, hostile_case: Path, tmp_path: Path) -> None:
    """The short and long forms of every answer, as a notebook shows them, run nothing either."""
    from kneecase.report import review

    answers = review(read_case(hostile_case))
    file = tmp_path / "answers.html"
    parts = "".join(a._repr_html_() + a.explain()._repr_html_() for a in answers)
    file.write_text(f"<!doctype html><meta charset='utf-8'><title>answers</title>{parts}", "utf-8")
    page.goto(file.as_uri())

    assert answers
    assert page.evaluate("() => window.struck") is None
    assert page.locator("script, img[src='x'], [onerror], svg[onload]").count() == 0
    assert HOSTILE[0] in page.locator("body").inner_text()
