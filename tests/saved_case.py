"""A small case with comments, unknown keys and awkward rows, to save into a folder and change."""

from __future__ import annotations

import datetime as dt
from pathlib import Path

from kneecase.record import Case, Reading, read_case

TOML = """\
# who and what
format = 1
shoe_size = 42            # a key that kneecase does not know

[athlete]
pseudonym = "Wren"        # not a real name
mass = "146 lb"

[surgery]
date = 2026-03-02
side = "left"
surgeon_code = "K7"

# the surgeon's orders
[[limit]]
kind = "flexion"          # after a meniscus repair
value = 90
unit = "deg"
start = 2026-03-02
clinic = "north"
"""
MEASUREMENTS = """\
date,measure,side,value,unit,tester,mood,note
2026-03-10,knee_flexion,left,60 deg,,AB,fine,"a, b"
 2026-03-10 ,knee_extension,left,lacks 5,,AB,,
2026-03-24,single_hop,right,48,in,AB,"so ""so\"""
"""
VISITS = "id,date,pain_rest,giving_way\nv1,2026-03-10,2,no\n"
REFERENCES = (
    TOML
    + """
[[reference]]
date = 2026-02-20
measure = "knee_motion"
side = "right"
value = "5-0-140"

[[reference]]
date = 2026-02-10   # the earlier one stands second
measure = "quadriceps_torque"
side = "uninvolved"
value = "146 ft-lb"
mode = "isometric"
angle_deg = 90
chair = "B"

[[reference]]
id = "mine"
date = 2026-02-11
measure = "knee_girth"
side = "right"
value = 41.5
"""
)


def case_in(folder: Path, measurements: str | bytes = MEASUREMENTS, toml: str = TOML) -> Case:
    """The small case, in a new folder."""
    folder.mkdir()
    (folder / "case.toml").write_text(toml, encoding="utf-8", newline="")
    data = measurements if isinstance(measurements, bytes) else measurements.encode()
    (folder / "measurements.csv").write_bytes(data)
    (folder / "visits.csv").write_text(VISITS, encoding="utf-8")
    return read_case(folder)


def flexion(id_: str = "new", value: float | None = 75.0, **rest: object) -> Reading:
    """A reading of flexion on the left, or another one by its fields."""
    values: dict[str, object] = {
        "id": id_,
        "date": dt.date(2026, 4, 1),
        "measure": "knee_flexion",
        "side": "left",
        "value": value,
        "unit": "deg",
        **rest,
    }
    return Reading(**values)  # type: ignore[arg-type]


def files(folder: Path) -> dict[str, bytes]:
    """The files of a case, without journal and lock."""
    return {p.name: p.read_bytes() for p in folder.iterdir() if not p.name.startswith(("journal", "."))}
