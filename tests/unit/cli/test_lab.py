"""JupyterLab starts on the start notebook, on this machine only, and asks nobody for news."""

from __future__ import annotations

import json
import os
import socket
import subprocess
import sys
from urllib.parse import parse_qs, urlparse

import pytest
from jupyterlab.labapp import LabApp

import kneecase.lab as lab
from kneecase.errors import KneecaseError
from kneecase.shipped import WorkingCopy


@pytest.fixture
def copy(tmp_path):
    """A working folder with a start notebook."""
    folder = tmp_path / "my notes"
    (folder / "notebooks").mkdir(parents=True)
    made = WorkingCopy(folder=folder, new=(), same=(), kept=())
    made.start.write_text('{"cells": [], "metadata": {}, "nbformat": 4, "nbformat_minor": 5}', "utf-8")
    return made


def test_command_stays_on_this_machine(copy):
    """The server listens on the loopback address only, and news, updates and catalogue are off."""
    command = lab.lab_run(copy, browser=True, port=9123).command

    assert command[:4] == (sys.executable, "-m", "jupyterlab", str(copy.start))
    for option in (
        "--ServerApp.ip=127.0.0.1",
        "--ServerApp.port=9123",
        "--LabApp.news_url=None",
        "--LabApp.check_for_updates_class=jupyterlab.NeverCheckForUpdate",
        "--LabApp.extension_manager=readonly",
    ):
        assert option in command
    assert "--no-browser" not in command


def test_settings_turn_the_question_about_news_off():
    """The settings folder given to JupyterLab answers its question about news with never."""
    settings = json.loads((lab._SETTINGS / "overrides.json").read_text("utf-8"))

    assert settings["@jupyterlab/apputils-extension:notification"]["fetchNews"] == "false"


def test_address_carries_the_token_and_the_command_does_not(copy):
    """The address opens the start notebook; the token is in no list of processes."""
    run = lab.lab_run(copy, browser=False, port=9123)
    address = urlparse(run.address)
    token = parse_qs(address.query)["token"][0]

    assert address.netloc == "127.0.0.1:9123"
    assert address.path == "/lab/tree/notebooks/00-start-here.ipynb"
    assert run.environment["JUPYTER_TOKEN"] == token
    assert len(token) >= 32
    assert not any(token in part for part in run.command)
    assert "--no-browser" in run.command


@pytest.mark.parametrize(("user", "expected"), [(0, True), (1000, False)])
def test_root_is_allowed_where_it_is_root(copy, monkeypatch, user, expected):
    """JupyterLab refuses root unless told; it is told exactly then."""
    monkeypatch.setattr(os, "geteuid", lambda: user, raising=False)

    assert ("--allow-root" in lab.lab_run(copy, browser=False, port=9123).command) is expected


@pytest.mark.parametrize(
    ("environment", "platform", "expected"),
    [
        ({}, "linux", False),
        ({"DISPLAY": ":0"}, "linux", True),
        ({"WAYLAND_DISPLAY": "wayland-0"}, "linux", True),
        ({"DISPLAY": ""}, "linux", False),
        ({}, "darwin", True),
        ({}, "win32", True),
    ],
)
def test_where_a_window_can_open(environment, platform, expected):
    """A window opens where there is a display."""
    assert lab.has_browser(environment, platform) is expected


def test_a_busy_port_is_passed_over(copy, monkeypatch):
    """The first free port is taken; where there is none, the sentence says what to do."""
    with socket.socket() as busy:
        busy.bind(("127.0.0.1", 0))
        busy.listen()
        port = busy.getsockname()[1]
        monkeypatch.setattr(lab, "_FIRST_PORT", port)
        monkeypatch.setattr(lab, "_PORTS_TRIED", 1)
        with pytest.raises(KneecaseError, match=r"No free port .*--port"):
            lab.lab_run(copy, browser=False)
        monkeypatch.setattr(lab, "_PORTS_TRIED", 50)
        assert f"--ServerApp.port={port}" not in lab.lab_run(copy, browser=False).command


def test_this_process_becomes_the_server(copy, monkeypatch):
    """Where the system allows, the process is replaced; elsewhere the exit code is handed on."""
    run = lab.lab_run(copy, browser=False, port=9123)
    seen = []
    monkeypatch.setattr(os, "execve", lambda *given: seen.append(given))
    monkeypatch.setattr(subprocess, "call", lambda command, env: (seen.append((command, env)), 3)[1])

    assert lab.started(run) == 3
    assert seen[0] == (sys.executable, list(run.command), dict(run.environment))
    assert seen[1][0] == list(run.command)


def test_jupyterlab_knows_every_option(copy):
    """JupyterLab itself takes the command as it is: no option is unknown to it or malformed."""
    command = lab.lab_run(copy, browser=False, port=9123).command
    done = subprocess.run(
        [*command[:3], *command[4:], "--show-config-json"],
        capture_output=True,
        text=True,
        timeout=120,
        check=True,
    )
    config = json.loads(done.stdout)

    assert LabApp.news_url.from_string(config["LabApp"]["news_url"]) is None
    assert config["ServerApp"]["root_dir"] == str(copy.folder)
