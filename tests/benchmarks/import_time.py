"""How long ``import kneecase`` takes beside ``import numpy``, each in fresh processes.

    python tests/benchmarks/import_time.py

Prints a table.  Times depend on the machine, so they are reported and not judged.
"""

from __future__ import annotations

import statistics
import subprocess
import sys
import time

__all__ = ["import_seconds", "main", "table"]

STATEMENTS = {
    "nothing": "pass",
    "numpy": "import numpy",
    "kneecase": "import kneecase",
    "kneecase.measures": "import kneecase.measures",
    "kneecase.record": "import kneecase.record",
    "kneecase.recovery": "import kneecase.recovery",
    "kneecase.report": "import kneecase.report",
}
REPEATS = 7


def import_seconds(statement: str, repeats: int = REPEATS) -> float:
    """The median wall time of a fresh interpreter that runs one statement [s]."""
    times = []
    for _ in range(repeats):
        start = time.perf_counter()
        subprocess.run([sys.executable, "-c", statement], check=True)
        times.append(time.perf_counter() - start)
    return statistics.median(times)


def table(repeats: int = REPEATS) -> str:
    """The times and their ratio to NumPy's, without the start of the interpreter itself."""
    seconds = {name: import_seconds(statement, repeats) for name, statement in STATEMENTS.items()}
    own = {name: seconds[name] - seconds["nothing"] for name in seconds}
    lines = [
        f"median of {repeats} fresh processes; interpreter alone {1000 * seconds['nothing']:.0f} ms",
        f"{'import':<20}{'ms':>8}{'ratio to numpy':>18}",
    ]
    lines += [
        f"{name:<20}{1000 * own[name]:>8.1f}{own[name] / own['numpy']:>18.2f}"
        for name in own
        if name != "nothing"
    ]
    return "\n".join(lines)


def main() -> int:
    """Print the table."""
    print(table())
    return 0


if __name__ == "__main__":
    sys.exit(main())
