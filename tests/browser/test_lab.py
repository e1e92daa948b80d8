"""The notebooks in a real JupyterLab, offline: as they were committed, in both themes and widths, and run."""

from __future__ import annotations

import json
import os
import subprocess
import sys
import time
from pathlib import Path
from typing import Any

import nbformat
import pytest
from playwright.sync_api import Page

from project_tree import NOTEBOOKS

THEMES = {"light": "JupyterLab Light", "dark": "JupyterLab Dark"}
WIDTHS = (1280, 800)
OURS = (".jp-OutputArea .kc", ".jp-OutputArea figure")
NAMES = [path.name for path in NOTEBOOKS]
PATIENCE_MS = 60_000


def opened(page: Page, address: str) -> None:
    """A notebook on its page, drawn, with its kernel ready."""
    page.goto(address, timeout=PATIENCE_MS)
    page.wait_for_selector(".jp-Notebook .jp-Cell", timeout=PATIENCE_MS)
    page.wait_for_function(
        "() => window.jupyterapp?.shell?.currentWidget?.context?.sessionContext?.isReady", timeout=PATIENCE_MS
    )
    page.wait_for_function("() => [...document.images].every(image => image.complete)", timeout=PATIENCE_MS)


def command(page: Page, name: str, **arguments: str) -> None:
    """One of JupyterLab's own commands."""
    page.evaluate("([name, args]) => window.jupyterapp.commands.execute(name, args)", [name, arguments])


def dressed(page: Page, theme: str) -> None:
    """The page in one of JupyterLab's themes."""
    command(page, "apputils:change-theme", theme=THEMES[theme])
    is_light = "true" if theme == "light" else "false"
    page.wait_for_selector(f'body[data-jp-theme-light="{is_light}"]', state="attached", timeout=PATIENCE_MS)


def photographed(page: Page, width: int, path: Path) -> None:
    """A picture of the whole notebook at one width."""
    page.set_viewport_size({"width": width, "height": 900})
    page.wait_for_timeout(200)
    height = page.evaluate(
        "() => Math.max(...Array.from("
        "document.querySelectorAll('.jp-WindowedPanel-outer'), panel => panel.scrollHeight))"
    )
    page.set_viewport_size({"width": width, "height": min(int(height) + 160, 16_000)})
    page.wait_for_timeout(300)
    page.screenshot(path=path)
    page.set_viewport_size({"width": width, "height": 900})


def pictures(page: Page) -> list[dict[str, Any]]:
    """Each picture in the outputs: its natural width, the width it is drawn at, and its words."""
    found: list[dict[str, Any]] = page.evaluate(
        """() => [...document.querySelectorAll('.jp-OutputArea img')].map(image => ({
            natural: image.naturalWidth, drawn: image.getBoundingClientRect().width,
            room: image.closest('.jp-OutputArea').getBoundingClientRect().width, words: image.alt }))"""
    )
    return found


def committed_pictures(name: str) -> int:
    """How many pictures the committed outputs of a notebook hold."""
    path = next(p for p in NOTEBOOKS if p.name == name)
    cells = nbformat.read(path, as_version=4).cells
    return json.dumps([cell.get("outputs", []) for cell in cells]).count("<img ")


def assert_pictures_show(page: Page, name: str) -> None:
    """Every committed picture is drawn, inside the page, with its words."""
    shown = pictures(page)

    assert len(shown) == committed_pictures(name)
    assert [picture for picture in shown if picture["natural"] <= 0 or picture["drawn"] <= 50] == []
    assert [picture for picture in shown if picture["drawn"] > picture["room"] + 1] == []
    assert [picture for picture in shown if not picture["words"]] == []


def test_the_start_notebook_is_what_opens(page: Page, lab: Any, artefacts: Path) -> None:
    """The address that the command prints leads to the start notebook in JupyterLab, asking nothing."""
    page.goto(lab.address, timeout=PATIENCE_MS)
    page.wait_for_selector(".jp-Notebook .jp-Cell h1", timeout=PATIENCE_MS)
    page.wait_for_timeout(2000)

    page.screenshot(path=artefacts / "start.png")
    assert page.locator(".lm-DockPanel-tabBar .lm-mod-current, .jp-mod-current").first.is_visible()
    assert page.title().startswith("00-start")
    assert page.url.split("?")[0].endswith("/notebooks/00-start-here.ipynb")
    assert page.locator(".jp-Dialog").count() == 0
    assert page.locator(".Toastify__toast").count() == 0


@pytest.mark.parametrize("name", NAMES)
def test_a_committed_notebook_shows_everything(
    page: Page, lab: Any, artefacts: Path, serious: Any, name: str
) -> None:
    """Opened and not run, in both themes and widths: every picture shows, and our parts are accessible."""
    opened(page, lab.page_of(name))

    for theme in THEMES:
        dressed(page, theme)
        for width in WIDTHS:
            photographed(page, width, artefacts / f"{Path(name).stem}-{theme}-{width}.png")
            assert_pictures_show(page, name)
        assert serious(page, *OURS) == [], theme


@pytest.mark.parametrize("name", NAMES)
def test_a_notebook_runs_from_top_to_bottom(
    page: Page, lab: Any, serious: Any, artefacts: Path, name: str
) -> None:
    """Run All Cells ends with every cell numbered, none in error, and the pictures as committed."""
    path = next(p for p in NOTEBOOKS if p.name == name)
    cells = sum(cell.cell_type == "code" for cell in nbformat.read(path, as_version=4).cells)
    opened(page, lab.page_of(name))
    command(page, "notebook:run-all-cells")
    end = time.monotonic() + PATIENCE_MS / 1000
    wanted = [f"[{n}]:" for n in range(1, cells + 1)]
    prompts: list[str] = []
    while prompts != wanted and time.monotonic() < end:
        page.wait_for_timeout(200)
        prompts = page.locator(".jp-CodeCell .jp-InputPrompt").all_inner_texts()
    page.wait_for_function("() => [...document.images].every(image => image.complete)", timeout=PATIENCE_MS)

    for theme in THEMES:
        dressed(page, theme)
        photographed(page, WIDTHS[0], artefacts / f"{path.stem}-run-{theme}.png")
        assert serious(page, *OURS) == [], theme
    assert prompts == wanted
    assert page.locator('.jp-OutputArea [data-mime-type*="error"], .jp-mod-error').count() == 0
    assert_pictures_show(page, name)


def test_the_listener_hears(lab: Any, tmp_path: Path) -> None:
    """The listener that JupyterLab and its kernels run under notes a foreign host (a number: no look-up)."""
    listener = lab.contacts_file.with_name("listener")
    ask = "import socket; socket.getaddrinfo('192.0.2.1', 80, flags=socket.AI_NUMERICHOST)"
    env = {**os.environ, "PYTHONPATH": str(listener), "KNEECASE_TEST_CONTACTS": str(tmp_path / "noted")}
    subprocess.run([sys.executable, "-c", ask], env=env, check=True)

    assert (tmp_path / "noted").read_text("utf-8").split() == ["192.0.2.1"]


def test_nothing_left_the_machine(lab: Any) -> None:
    """Neither JupyterLab nor a kernel looked up or reached another host in all of the above."""
    assert lab.contacts == []
