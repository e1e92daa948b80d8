"""case.toml: every field, every kind of fault with its line, versions of the format."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable

import pytest

from kneecase.errors import CaseError, NewerFormatError, Problem
from kneecase.record import Case, Limit, case_from_texts

Read = Callable[..., Case]
Errors = Callable[..., list[Problem]]
Error = Callable[..., Problem]

WHOLE = """
format = 1
date_order = "day first"
[athlete]
pseudonym = "Wren"
year_of_birth = 2004
age_years = 22
sex = "Female"
mass = "146 lb"
height = "5 ft 8 in"
limb_length_left = "34.5 in"
limb_length_right_cm = 88
shank_length_left_cm = 44.5
dominant_side = "R"
sport = "handball"
position = "wing"
skeletally_mature = true
[surgery]
date = "02.03.2026"
side = "left"
graft = "hamstring tendon"
harvest_side = "right"
allograft = false
revision = true
concomitant = ["medial meniscus repair", "Fracture"]
[surgery.earlier]
right = ["ankle sprain 2022"]
[[limit]]
kind = "flexion"
value = "90°"
start = 2026-03-02
until = "13.04.2026"
lifted = 2026-04-10
ordered_by = "surgeon"
note = "after repair"
[[limit]]
kind = "weight bearing"
value = 50
unit = "%"
start = 2026-03-02
[[limit]]
kind = "running"
start = 2026-03-02
[[event]]
date = 2026-05-01
kind = "manipulation"
note = "under anaesthesia"
[[reference]]
date = 2026-02-10
measure = "quadriceps_torque"
side = "uninvolved"
value = 146
unit = "ft-lb"
mode = "isometric"
angle_deg = 90
room = "7"
[[reference]]
date = 2026-02-11
measure = "knee_motion"
side = "left"
value = "5-0-140"
"""


def case_toml(athlete: str = "", surgery: str = "", rest: str = "") -> str:
    """A small case.toml with lines added to its parts."""
    return (
        f'format = 1\n[athlete]\npseudonym = "Wren"\n{athlete}\n'
        f'[surgery]\ndate = 2026-03-02\nside = "left"\n{surgery}\n{rest}\n'
    )


def test_the_whole_file_arrives(read: Read) -> None:
    """Athlete and operation in canonical units and words."""
    case = read(toml=WHOLE)
    athlete, surgery = case.athlete, case.surgery
    assert (athlete.pseudonym, athlete.year_of_birth, athlete.age_years, athlete.sex) == (
        "Wren",
        2004,
        22,
        "female",
    )
    assert athlete.mass_kg == pytest.approx(146 * 0.45359237)
    assert athlete.height_cm == pytest.approx(68 * 2.54)
    assert athlete.limb_length_cm == {"left": pytest.approx(34.5 * 2.54), "right": 88}
    assert (athlete.shank_length_cm, athlete.dominant_side) == ({"left": 44.5}, "right")
    assert (athlete.sport, athlete.position, athlete.skeletally_mature) == ("handball", "wing", True)
    assert (surgery.date, surgery.side, surgery.graft) == (dt.date(2026, 3, 2), "left", "hamstring tendon")
    assert (surgery.harvest_side, surgery.allograft, surgery.revision) == ("right", False, True)
    assert surgery.concomitant == ("medial meniscus repair", "fracture")
    assert case.outside_scope == ("fracture",)
    assert surgery.earlier == {"right": ("ankle sprain 2022",)}
    assert case.warnings == ()


def test_limits_and_events_arrive(read: Read) -> None:
    """Numbers in the unit of their kind, days as days."""
    case = read(toml=WHOLE)
    assert case.limits[0] == Limit(
        kind="flexion",
        start=dt.date(2026, 3, 2),
        value=90,
        unit="deg",
        until=dt.date(2026, 4, 13),
        lifted=dt.date(2026, 4, 10),
        ordered_by="surgeon",
        note="after repair",
    )
    assert (case.limits[1].value, case.limits[1].unit) == (50, "pct")
    assert (case.limits[2].kind, case.limits[2].value, case.limits[2].unit) == ("running", None, "")
    assert (case.events[0].date, case.events[0].kind) == (dt.date(2026, 5, 1), "manipulation")


def test_references_become_readings_dated_before_surgery(read: Read) -> None:
    """They carry ids of their own and the line they stand on."""
    torque, extension, flexion = read(toml=WHOLE).readings
    assert (torque.id, torque.side, torque.raw_unit) == ("ref-1", "right", "ft-lb")
    assert torque.value == pytest.approx(146 * 0.3048 * 0.45359237 * 9.80665)
    assert (torque.condition.mode, torque.condition.angle_deg) == ("isometric", 90)
    assert dict(torque.extra) == {"room": "7"}
    assert (extension.id, extension.value, flexion.id, flexion.value) == (
        "ref-2.extension",
        -5,
        "ref-2.flexion",
        140,
    )
    assert WHOLE.splitlines()[(torque.row or 0) - 1] == "[[reference]]"


def test_a_bare_case_is_a_case(read: Read) -> None:
    """Only pseudonym, date and side are needed; all else stays unknown."""
    case = read(toml=case_toml())
    assert (case.athlete.mass_kg, case.athlete.dominant_side, case.surgery.graft) == (None, None, "")
    assert (case.surgery.allograft, case.limits, case.readings) == (None, (), ())


@pytest.mark.parametrize(("line", "version"), [("", 0), ("format = 0\n", 0), ("format = 1\n", 1)])
def test_an_older_format_is_read(read: Read, line: str, version: int) -> None:
    """The version is kept as read; a case without one is version 0."""
    assert read(toml=line + case_toml().removeprefix("format = 1\n")).format_version == version


def test_a_newer_format_is_refused_before_anything_else(read: Read) -> None:
    """Its rows may mean something else, so nothing else is said."""
    with pytest.raises(NewerFormatError, match=r"format = 2.*up to 1.*update kneecase"):
        read("nonsense", toml="format = 2\nnothing = 'else'\n")


@pytest.mark.parametrize("value", ["'1'", "true", "1.0", "-1"])
def test_a_format_that_is_no_version_is_refused(errors: Errors, value: str) -> None:
    """Not a number, or a negative one."""
    assert errors(toml=case_toml().replace("format = 1", f"format = {value}"))[0].column == "format"


@pytest.mark.parametrize(
    ("text", "row", "what"),
    [
        ("format = 1\n[athlete\n", 2, "at character"),
        ("format = 1\npseudonym = Wren\n", 2, "at character 13"),
        ('format = 1\n[athlete]\nsex = "female\n', 3, "at character"),
        ("format = 1\nformat = 1\n", 2, "at character"),
        ("format = 1\n[athlete]\nmass_kg = 66,5\n", 3, "at character"),
        ("format = 1\n[athlete", 2, "at the end"),
    ],
)
def test_broken_toml_is_refused_with_its_line(error: Error, text: str, row: int, what: str) -> None:
    """And with what usually mends it."""
    found = error(toml=text)
    assert (found.file, found.row) == ("case.toml", row)
    assert what in found.what
    assert "quotation marks" in found.mend


def test_tables_are_looked_through_even_where_case_toml_is_broken(errors: Errors) -> None:
    """All problems at once."""
    found = errors("date,measure,side,value\n2026-03-16,knee_flexion,left,many\n", toml="[athlete")
    assert [p.file for p in found] == ["case.toml", "measurements.csv"]


def test_what_is_required_is_named(errors: Errors) -> None:
    """Pseudonym, date and side of the surgery."""
    assert [p.column for p in errors(toml="")] == ["surgery.date", "surgery.side", "athlete.pseudonym"]
    assert errors(toml="[athlete]\n[surgery]\n")[0].row == 2


def test_a_missing_case_toml_is_refused() -> None:
    """A case cannot be without it."""
    with pytest.raises(CaseError, match=r"case\.toml: this file is missing"):
        case_from_texts({"visits.csv": "date\n"}, path=None, fingerprint={})


@pytest.mark.parametrize(
    ("parts", "column", "what"),
    [
        ({"athlete": "sex = 'femal'"}, "athlete.sex", "closed list"),
        ({"athlete": "mass = 66"}, "athlete.mass", "needs a unit"),
        ({"athlete": "mass = '66'"}, "athlete.mass", "needs a unit"),
        ({"athlete": "mass = '66 cm'"}, "athlete.mass", "converts to kg"),
        ({"athlete": "mass = 'heavy'"}, "athlete.mass", "must be a number"),
        ({"athlete": "mass_kg = '66'"}, "athlete.mass_kg", "must be a number"),
        ({"athlete": "mass_kg = true"}, "athlete.mass_kg", "must be a number"),
        ({"athlete": "mass_kg = nan"}, "athlete.mass_kg", "must be a number"),
        ({"athlete": "mass_kg = 660"}, "athlete.mass_kg", "impossible"),
        ({"athlete": "mass_kg = 66\nmass = '146 lb'"}, "athlete.mass", "twice"),
        ({"athlete": "height = '171 m'"}, "athlete.height", "impossible"),
        ({"athlete": "limb_length_left_cm = 8"}, "athlete.limb_length_left_cm", "impossible"),
        ({"athlete": "dominant_side = 'both'"}, "athlete.dominant_side", "left or right"),
        ({"athlete": "sport = 7"}, "athlete.sport", "must be text"),
        ({"athlete": "skeletally_mature = 'yes'"}, "athlete.skeletally_mature", "true or false"),
        ({"athlete": "age_years = 220"}, "athlete.age_years", "impossible"),
        ({"athlete": "age_years = 30\nyear_of_birth = 2004"}, "athlete.age_years", "21 or 22"),
        ({"athlete": "year_of_birth = 04"}, "", "cannot be understood"),
        ({"athlete": "year_of_birth = 4"}, "athlete.year_of_birth", "four digits"),
        ({"athlete": "year_of_birth = true"}, "athlete.year_of_birth", "four digits"),
        ({"athlete": "year_of_birth = 2026"}, "athlete.year_of_birth", "does not fit"),
        ({"surgery": "graft = 'hamstring'"}, "surgery.graft", "closed list"),
        ({"surgery": "harvest_side = 'front'"}, "surgery.harvest_side", "left or right"),
        ({"surgery": "allograft = 'no'"}, "surgery.allograft", "true or false"),
        ({"surgery": "concomitant = 'meniscus'"}, "surgery.concomitant", "list of texts"),
        ({"surgery": "earlier = 'none'"}, "surgery.earlier", "part of its own"),
        ({"rest": "[surgery.earlier]\nknee = ['x']"}, "surgery.earlier.knee", "left or right"),
        ({"rest": "[surgery.earlier]\nleft = 'x'"}, "surgery.earlier.left", "list of texts"),
        ({"rest": "[limit]\nkind = 'running'\nstart = 2026-03-02"}, "limit", "list of parts"),
        ({"rest": "[[limit]]\nstart = 2026-03-02"}, "limit.kind", "needs a kind"),
        ({"rest": "[[limit]]\nkind = 'flexon'\nstart = 2026-03-02"}, "limit.kind", "closed list"),
        ({"rest": "[[limit]]\nkind = 'running'"}, "limit.start", "needs the day"),
        ({"rest": "[[limit]]\nkind = 'running'\nstart = 2026-03-02\nvalue = 3"}, "limit.value", "no number"),
        (
            {"rest": "[[limit]]\nkind = 'flexion'\nstart = 2026-03-02\nvalue = 900"},
            "limit.value",
            "impossible",
        ),
        ({"rest": "[[limit]]\nkind = 'flexion'\nstart = 2026-03-02\nvalue = 'x'"}, "limit.value", "number"),
        (
            {"rest": "[[limit]]\nkind = 'flexion'\nstart = 2026-03-02\nvalue = 9\nunit = 'kg'"},
            "limit.value",
            "converts to deg",
        ),
        (
            {"rest": "[[limit]]\nkind = 'running'\nstart = 2026-03-02\nuntil = 2026-03-01"},
            "limit.until",
            "before the limit starts",
        ),
        (
            {"rest": "[[limit]]\nkind = 'running'\nstart = 2026-03-02\nlifted = 2026-03-01"},
            "limit.lifted",
            "before the limit starts",
        ),
        ({"rest": "[[event]]\nkind = 'manipulation'"}, "event.date", "needs its day"),
        ({"rest": "[[event]]\ndate = 2026-05-01"}, "event.kind", "needs a kind"),
        ({"rest": "[[event]]\ndate = 2026-05-01\nkind = 'surgery'"}, "event.kind", "closed list"),
        ({"rest": "[[event]]\ndate = 2026-05-01T10:00:00Z\nkind = 'other'"}, "event.date", "without a time"),
        ({"rest": "[[event]]\ndate = 5\nkind = 'other'"}, "event.date", "calendar date"),
        ({"rest": "[[event]]\ndate = '03/04/2026'\nkind = 'other'"}, "event.date", "two ways"),
    ],
)
def test_a_fault_is_named_with_its_key_and_line(
    errors: Errors, parts: dict[str, str], column: str, what: str
) -> None:
    """The first error stands where the fault is."""
    toml = case_toml(**parts)
    found = errors(toml=toml)[0]
    assert (found.file, found.column) == ("case.toml", column)
    assert what in found.what
    key = column.rsplit(".", 1)[-1]
    line = toml.splitlines()[(found.row or 1) - 1]
    assert key in line or found.what.startswith(("a limit needs", "an event needs"))


@pytest.mark.parametrize("order", ['"days first"', "1"])
def test_a_date_order_that_is_none_is_refused(errors: Errors, order: str) -> None:
    """Only three are known."""
    found = errors(toml=f"date_order = {order}\n" + case_toml())[0]
    assert (found.column, found.row) == ("date_order", 1)


def test_a_reference_has_to_be_dated_before_the_surgery(error: Error) -> None:
    """The day of the surgery is too late."""
    rest = "[[reference]]\ndate = 2026-03-02\nmeasure = 'knee_flexion'\nside = 'left'\nvalue = 140"
    found = error(toml=case_toml(rest=rest))
    assert (found.column, "before the surgery" in found.what) == ("reference.date", True)


def test_a_fault_in_a_reference_stands_on_its_line(error: Error) -> None:
    """The rules are those of the table."""
    rest = "[[reference]]\ndate = 2026-02-02\nmeasure = 'knee_flexion'\nside = 'left'\nvalue = nan"
    toml = case_toml(rest=rest)
    found = error(toml=toml)
    assert (found.column, "finite" in found.what) == ("reference.value", True)
    assert toml.splitlines()[(found.row or 0) - 1] == "value = nan"


@pytest.mark.parametrize(
    ("parts", "column", "what"),
    [
        ({"athlete": "mass_kg = 20"}, "athlete.mass_kg", "unlikely"),
        ({"athlete": "age_years = 75"}, "athlete.age_years", "unlikely"),
        ({"athlete": "pseudonim = 'x'\nsprt = 'x'\ncolour = 'red'"}, "athlete.sprt", "not known"),
        ({"surgery": "allograft = true\nharvest_side = 'left'"}, "surgery.harvest_side", "allograft"),
        (
            {"surgery": "concomitant = ['tibial plateau fracture']"},
            "surgery.concomitant",
            "outside the scope",
        ),
        ({"rest": "[[limits]]\nkind = 'running'"}, "limits", "not known"),
        ({"rest": "[[event]]\ndate = 2046-05-01\nkind = 'other'"}, "event.date", "20 years after"),
        ({"rest": "[[limit]]\nkind = 'running'\nstart = 2046-05-01"}, "limit.start", "20 years after"),
    ],
)
def test_what_is_unlikely_is_doubted_and_kept(
    read: Read, parts: dict[str, str], column: str, what: str
) -> None:
    """The case is read, with one warning."""
    case = read(toml=case_toml(**parts))
    assert [(w.column, what in w.what) for w in case.warnings] == [(column, True)]


def test_birth_is_known_from_age_as_well(errors: Errors) -> None:
    """A reading dated before it is impossible."""
    table = "date,measure,side,value\n2002-12-31,knee_flexion,left,140\n"
    assert "before the birth year 2003" in errors(table, toml=case_toml("age_years = 22"))[0].what


def test_a_long_line_of_blanks_is_no_trouble(read: Read) -> None:
    """A hundred thousand blanks after a bracket, where searching back and forth would take for ever."""
    blanks = "[" + " " * 100_000 + "x"
    case = read(toml=case_toml(athlete=f"sport = '''\n{blanks}\n'''"))
    assert case.athlete.sport == blanks
