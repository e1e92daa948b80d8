"""JupyterLab as kneecase starts it: on the start notebook, on this machine only, asking nobody for news."""

from __future__ import annotations

import os
import secrets
import socket
import subprocess
import sys
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from urllib.parse import quote

from kneecase.errors import KneecaseError
from kneecase.shipped import WorkingCopy

__all__ = ["LabRun", "has_browser", "lab_run", "started"]

_HOST = "127.0.0.1"
_FIRST_PORT = 8888
_PORTS_TRIED = 1000
_SETTINGS = Path(__file__).resolve().parent / "lab_settings"


@dataclass(frozen=True, kw_only=True)
class LabRun:
    """One start of JupyterLab: the command, its environment, and the address it will answer at."""

    command: tuple[str, ...]
    environment: Mapping[str, str]
    address: str
    opens_browser: bool


def has_browser(environment: Mapping[str, str] = os.environ, platform: str = sys.platform) -> bool:
    """Whether a window can open here: always on macOS and Windows, elsewhere where there is a display."""
    if platform in ("darwin", "win32"):
        return True
    return bool(environment.get("DISPLAY") or environment.get("WAYLAND_DISPLAY"))


def lab_run(copy: WorkingCopy, *, browser: bool, port: int | None = None) -> LabRun:
    """The command that opens the start notebook of a working copy.

    Nothing leaves the machine: news, update checks and the extension catalogue are off for
    this run.  The token travels in the environment, so it is in no list of processes.

    Raises
    ------
    KneecaseError
        If no free port is found.
    """
    chosen = _free_port() if port is None else port
    token = secrets.token_urlsafe(24)
    command = [
        sys.executable,
        "-m",
        "jupyterlab",
        str(copy.start),
        f"--ServerApp.root_dir={copy.folder}",
        f"--ServerApp.ip={_HOST}",
        f"--ServerApp.port={chosen}",
        "--ServerApp.port_retries=0",
        "--Application.log_level=WARN",
        "--LabApp.news_url=None",
        "--LabApp.check_for_updates_class=jupyterlab.NeverCheckForUpdate",
        "--LabApp.extension_manager=readonly",
        f"--LabApp.app_settings_dir={_SETTINGS}",
        *(() if browser else ("--no-browser",)),
        *(("--allow-root",) if _is_root() else ()),
    ]
    place = quote(copy.start.relative_to(copy.folder).as_posix())
    return LabRun(
        command=tuple(command),
        environment={**os.environ, "JUPYTER_TOKEN": token},
        address=f"http://{_HOST}:{chosen}/lab/tree/{place}?token={token}",
        opens_browser=browser,
    )


def started(run: LabRun) -> int:
    """Start JupyterLab and stay until it ends; its exit code.

    Where the system allows, this process becomes JupyterLab, so that one signal ends it all.
    """
    sys.stdout.flush()
    sys.stderr.flush()
    if os.name == "posix":
        os.execve(run.command[0], list(run.command), dict(run.environment))
    return subprocess.call(list(run.command), env=dict(run.environment))


def _is_root() -> bool:
    return getattr(os, "geteuid", lambda: 1)() == 0


def _free_port() -> int:
    # From a random one on: several people of one class may start at the same moment on one machine,
    # and JupyterLab takes its port only seconds after this look.
    first = secrets.randbelow(_PORTS_TRIED)
    for step in range(_PORTS_TRIED):
        port = _FIRST_PORT + (first + step) % _PORTS_TRIED
        with socket.socket(socket.AF_INET, socket.SOCK_STREAM) as probe:
            if os.name == "posix":
                probe.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
            try:
                probe.bind((_HOST, port))
                probe.listen(1)
            except OSError:
                continue
            return port
    raise KneecaseError(
        f"No free port between {_FIRST_PORT} and {_FIRST_PORT + _PORTS_TRIED - 1}. "
        "Close another JupyterLab, or choose one with --port."
    )
