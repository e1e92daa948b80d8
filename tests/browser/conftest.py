"""A real Chromium and a real JupyterLab, as ``kneecase start`` starts it, with the network shut."""

from __future__ import annotations

import json
import os
import re
import shutil
import subprocess
import sys
import textwrap
import time
from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any
from urllib.parse import urlsplit

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser, ConsoleMessage, Error, Page, Route, WebSocket, sync_playwright

COMMAND = Path(sys.executable).with_name("kneecase")
BROWSERS = ("chromium", "chromium-browser", "google-chrome-stable", "google-chrome")
SWITCHES = [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
]
FOUND = next((path for name in BROWSERS if (path := shutil.which(name))), None)

LISTENER = """
import os, socket, sys

HERE = ("::1", "localhost", "0.0.0.0", socket.gethostname())

def _noted(event, args):
    host = None
    if event == "socket.connect" and isinstance(args[1], tuple):
        host = str(args[1][0])
    if event == "socket.getaddrinfo" and args[0]:
        host = args[0].decode() if isinstance(args[0], bytes) else str(args[0])
    if host and not host.startswith("127.") and host not in HERE:
        with open(os.environ["KNEECASE_TEST_CONTACTS"], "a") as file:
            file.write(host + "\\n")

sys.addaudithook(_noted)
"""


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Everything in this folder needs Chromium."""
    here = Path(__file__).parent
    for item in items:
        if here in item.path.parents:
            item.add_marker("browser")


@dataclass
class Lab:
    """A running JupyterLab: where it is, and which hosts it or its kernels tried to reach."""

    address: str
    folder: Path
    contacts_file: Path

    @property
    def contacts(self) -> list[str]:
        """Hosts other than this machine that were looked up or connected to."""
        return self.contacts_file.read_text("utf-8").split() if self.contacts_file.exists() else []

    def page_of(self, notebook: str) -> str:
        """The address of one notebook on a page of its own."""
        parts = urlsplit(self.address)
        return f"{parts.scheme}://{parts.netloc}/doc/tree/notebooks/{notebook}?{parts.query}&reset"


@dataclass
class Watch:
    """What a page did that it should not have done."""

    abroad: list[str] = field(default_factory=list)
    errors: list[str] = field(default_factory=list)


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    """The one Chromium of the run."""
    assert FOUND, f"none of {', '.join(BROWSERS)} is installed; leave these tests out with -m 'not browser'"
    with sync_playwright() as playwright:
        started = playwright.chromium.launch(executable_path=FOUND, args=SWITCHES)
        yield started
        started.close()


@pytest.fixture
def watch() -> Watch:
    """Filled by :func:`page`."""
    return Watch()


@pytest.fixture
def page(browser: Browser, watch: Watch) -> Iterator[Page]:
    """A fresh page; a request to anywhere but this machine is stopped, and fails the test at its end."""
    context = browser.new_context(viewport={"width": 1280, "height": 900})
    made = context.new_page()

    def routed(route: Route) -> None:
        if _is_here(route.request.url):
            route.continue_()
        else:
            watch.abroad.append(route.request.url)
            route.abort()

    def connected(socket: WebSocket) -> None:
        if not _is_here(socket.url):
            watch.abroad.append(socket.url)

    def failed(error: Error) -> None:
        watch.errors.append(f"{error.message}\n{error.stack}")

    def said(message: ConsoleMessage) -> None:
        if message.type == "error" and "kneecase" in message.text.lower():
            watch.errors.append(message.text)

    context.route("**/*", routed)
    made.on("websocket", connected)
    made.on("pageerror", failed)
    made.on("console", said)
    yield made
    context.close()
    assert watch.abroad == []
    assert watch.errors == []


def _is_here(address: str) -> bool:
    parts = urlsplit(address)
    return parts.scheme in ("file", "data", "blob", "about") or parts.hostname in ("127.0.0.1", "localhost")


@pytest.fixture(scope="session")
def lab(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Lab]:
    """JupyterLab on a working copy, started by the command a user types, at home nowhere else."""
    home = tmp_path_factory.mktemp("home")
    folder = tmp_path_factory.mktemp("lab") / "my-cases"
    log = home / "lab.log"
    process = subprocess.Popen(
        [str(COMMAND), "start", str(folder), "--no-browser"],
        env=_environment(home),
        stdin=subprocess.DEVNULL,
        stdout=log.open("w"),
        stderr=subprocess.STDOUT,
        start_new_session=True,
    )
    try:
        yield Lab(_answering(process, log), folder, home / "contacts")
    finally:
        process.terminate()
        try:
            process.wait(20)
        except subprocess.TimeoutExpired:
            process.kill()
            process.wait(10)


def _environment(home: Path) -> dict[str, str]:
    """An environment in which JupyterLab meets no settings of this machine and is listened to."""
    (home / "listener").mkdir()
    (home / "listener" / "sitecustomize.py").write_text(textwrap.dedent(LISTENER), "utf-8")
    config = home / "config"
    shown = config / "lab" / "user-settings" / "@jupyterlab" / "notebook-extension"
    shown.mkdir(parents=True)
    # Every cell is drawn, also those out of sight, so that one picture shows the whole notebook.
    (shown / "tracker.jupyterlab-settings").write_text('{"windowingMode": "none"}', "utf-8")
    (config / "jupyter_lab_config.json").write_text(json.dumps({"LabApp": {"expose_app_in_browser": True}}))
    kept = {
        k: v for k, v in os.environ.items() if not k.startswith(("JUPYTER", "COV_", "COVERAGE", "PYTEST"))
    }
    return kept | {
        "HOME": str(home),
        "IPYTHONDIR": str(home / "ipython"),
        "JUPYTER_CONFIG_DIR": str(config),
        "JUPYTER_DATA_DIR": str(home / "data"),
        "JUPYTER_RUNTIME_DIR": str(home / "runtime"),
        "KNEECASE_TEST_CONTACTS": str(home / "contacts"),
        "PYTHONPATH": str(home / "listener"),
        "PYTHONUNBUFFERED": "1",
    }


def _answering(process: subprocess.Popen[bytes], log: Path, patience_s: float = 90.0) -> str:
    """The address that the command printed, once something answers there."""
    import urllib.error
    import urllib.request

    end = time.monotonic() + patience_s
    while time.monotonic() < end and process.poll() is None:
        found = re.search(r"http://127\.0\.0\.1:\d+/\S*token=\S+", log.read_text("utf-8", errors="replace"))
        if found:
            try:
                with urllib.request.urlopen(found[0], timeout=5):
                    return found[0]
            except (urllib.error.URLError, ConnectionError, TimeoutError):
                pass
        time.sleep(0.2)
    raise AssertionError(
        f"JupyterLab did not answer within {patience_s:.0f} s:\n{log.read_text('utf-8')[-4000:]}"
    )


@pytest.fixture(scope="session")
def serious() -> Any:
    """A function: the serious and critical accessibility faults inside some parts of a page."""

    def faults(page: Page, *parts: str) -> list[str]:
        present = [part for part in parts if page.locator(part).count()]
        if parts and not present:
            return []
        context = {"include": [[part] for part in present]} if parts else None
        options = {"resultTypes": ["violations"]}
        found = Axe().run(page, context=context, options=options).response["violations"]
        return [
            f"{fault['id']} ({fault['impact']}): {fault['nodes'][0]['html'][:200]}"
            for fault in found
            if fault["impact"] in ("serious", "critical")
        ]

    return faults
