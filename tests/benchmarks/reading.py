"""Print how long reading a case of 100,000 rows takes, sound and with a fault in every row.

Run by hand; times are reported and never asserted.
"""

from __future__ import annotations

import datetime as dt
import tempfile
import time
from pathlib import Path

from kneecase.errors import CaseError
from kneecase.record import read_case

TOML = 'format = 1\n[athlete]\npseudonym = "Wren"\n[surgery]\ndate = 2026-03-02\nside = "left"\n'
ROWS = 100_000


def table(measure: str) -> str:
    """A table of hops on every day of 400, with every column a hop has."""
    lines = ["id,date,measure,side,trial,value,unit,status,tester,device,administration,note"]
    for number in range(ROWS):
        day = dt.date(2026, 3, 2) + dt.timedelta(days=number % 400)
        value = 100 + number % 900 / 10
        lines.append(
            f"m{number},{day},{measure},left,{number // 400 + 1},{value},cm,scored,AB,tape,arms free,{number}"
        )
    return "\n".join(lines)


def seconds_to_read(folder: Path, measure: str) -> tuple[float, int]:
    """Seconds a reading takes, and how many readings or problems it gives."""
    (folder / "measurements.csv").write_text(table(measure), "utf-8")
    start = time.perf_counter()
    try:
        count = len(read_case(folder).readings)
    except CaseError as refusal:
        count = len(refusal.problems)
    return time.perf_counter() - start, count


def main() -> None:
    """Print both times."""
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        (folder / "case.toml").write_text(TOML, "utf-8")
        for measure, what in (("single_hop", "readings"), ("singel_hop", "problems")):
            seconds, count = seconds_to_read(folder, measure)
            print(f"{count} {what} in {seconds:.2f} s")


if __name__ == "__main__":
    main()
