"""The report on import time can be had, and is printed; nobody is failed for a slow machine."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest


def test_import_time_is_reported(capsys: pytest.CaptureFixture[str]) -> None:
    """The script prints a row for kneecase and one for NumPy, which is the unit."""
    script = Path(__file__).with_name("import_time.py")
    done = subprocess.run([sys.executable, str(script)], capture_output=True, text=True, check=True)
    rows = {line.split()[0]: line.split() for line in done.stdout.splitlines() if line}

    with capsys.disabled():
        print("\n" + done.stdout.rstrip())
    assert rows["numpy"][-1] == "1.00"
    assert len(rows["kneecase"]) == 3
