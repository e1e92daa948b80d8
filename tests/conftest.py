"""What holds for every test: seeded Hypothesis, and nothing leaves the machine."""

from __future__ import annotations

import ipaddress
import sys
from pathlib import Path
from typing import Any

import pytest
from hypothesis import settings

from project_tree import ROOT, SAMPLE_CASES

settings.register_profile("kneecase", derandomize=True, deadline=None, print_blob=True)
settings.load_profile("kneecase")


def _refuse_network(event: str, args: tuple[Any, ...]) -> None:
    if event == "socket.connect" and isinstance(args[1], tuple) and not _is_local(str(args[1][0])):
        raise RuntimeError(f"A test tried to reach {args[1][0]!r}: kneecase uses no network.")
    if event == "socket.getaddrinfo" and args[0] and not _is_local(str(args[0])):
        raise RuntimeError(f"A test tried to look up {args[0]!r}: kneecase uses no network.")


def _is_local(host: str) -> bool:
    try:
        return ipaddress.ip_address(host).is_loopback or ipaddress.ip_address(host).is_unspecified
    except ValueError:
        return host in ("localhost", "")


sys.addaudithook(_refuse_network)


@pytest.fixture(scope="session")
def artefacts() -> Path:
    """A folder, not committed, for pictures and pages that a person may want to look at."""
    folder = ROOT / "artefacts"
    folder.mkdir(exist_ok=True)
    return folder


@pytest.fixture(scope="session", params=SAMPLE_CASES, ids=lambda path: path.name)
def sample_case(request: pytest.FixtureRequest) -> Path:
    """Each sample case's folder in turn."""
    return Path(request.param)
