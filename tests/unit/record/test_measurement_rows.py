"""From a row to a reading: what is read, what is refused with place and remedy, what is doubted."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable
from typing import Any

import pytest

from kneecase.errors import CaseError, Problem
from kneecase.record import Case, Reading

Read = Callable[..., Case]
Error = Callable[..., Problem]
COLUMNS = [
    "id",
    "date",
    "measure",
    "item",
    "side",
    "trial",
    "value",
    "unit",
    "status",
    "missing",
    "tester",
    "device",
    "position",
    "motion",
    "timing",
    "mode",
    "angle_deg",
    "speed_deg_per_s",
    "lever_arm_m",
    "administration",
    "note",
]
PLAIN = {"date": "2026-03-16", "measure": "knee_flexion", "side": "left", "value": "85"}


def table(*rows: dict[str, str]) -> str:
    """A table of these rows, in quotation marks throughout."""
    cells = [COLUMNS, *([row.get(name, "") for name in COLUMNS] for row in rows)]
    return "".join(",".join('"' + cell.replace('"', '""') + '"' for cell in line) + "\n" for line in cells)


def one(**cells: str) -> str:
    """A table of one plain row with some cells changed."""
    return table({**PLAIN, **cells})


@pytest.fixture
def reading(read: Read) -> Callable[..., Reading]:
    """The one reading of a plain row with some cells changed."""

    def reader(**cells: str) -> Reading:
        case = read(one(**cells))
        assert case.warnings == ()
        return case.readings[0]

    return reader


def test_every_column_arrives(read: Read) -> None:
    """One row with everything in it."""
    cells = {
        "id": "m7",
        "measure": "quadriceps_torque",
        "trial": "2",
        "value": "98",
        "unit": "ft-lb",
        "status": "practice",
        "tester": "AB",
        "device": "dynamometer",
        "position": "seated",
        "motion": "Active",
        "timing": "before",
        "mode": "concentric",
        "angle_deg": "90°",
        "speed_deg_per_s": "60",
        "lever_arm_m": "32 cm",
        "administration": "best of three",
        "note": " ok ",
    }
    found = read(one(**cells)).readings[0]
    assert (found.id, found.measure, found.side, found.trial, found.unit) == (
        "m7",
        "quadriceps_torque",
        "left",
        2,
        "n_m",
    )
    assert found.value == pytest.approx(132.870158936)
    assert (found.raw_value, found.raw_unit, found.status, found.row) == ("98", "ft-lb", "practice", 2)
    assert (found.tester, found.device, found.note) == ("AB", "dynamometer", " ok ")
    condition = found.condition
    assert (condition.position, condition.motion, condition.timing) == ("seated", "active", "before")
    assert (condition.mode, condition.angle_deg, condition.speed_deg_per_s) == ("concentric", 90, 60)
    assert (condition.lever_arm_m, condition.administration) == (pytest.approx(0.32), "best of three")


@pytest.mark.parametrize(
    ("typed", "side"),
    [
        ("L", "left"),
        ("l", "left"),
        ("LEFT", "left"),
        ("r", "right"),
        ("Right", "right"),
        ("involved", "left"),
        ("Uninvolved", "right"),
    ],
)
def test_sides_as_typed(reading: Callable[..., Reading], typed: str, side: str) -> None:
    """The operated side of the case settles involved and uninvolved."""
    assert reading(side=typed).side == side


@pytest.mark.parametrize(
    ("measure", "value", "expected"),
    [
        ("effusion", "zero", (0, "zero")),
        ("effusion", "0", (0, "zero")),
        ("effusion", "Trace", (1, "trace")),
        ("effusion", "1 +", (2, "1+")),
        ("effusion", "3+", (4, "3+")),
        ("knee_extension", "lacks 5", (5, "lacks 5")),
        ("knee_extension", "Hyperextends 3°", (-3, "Hyperextends 3°")),
        ("knee_extension", "-3", (-3, "")),
        ("Knee Flexion", "110°", (110, "")),
    ],
)
def test_values_in_words(
    reading: Callable[..., Reading], measure: str, value: str, expected: tuple[float, str]
) -> None:
    """A grade becomes its place in the list, words for extension an angle; the words are kept."""
    found = reading(measure=measure, value=value)
    assert (found.value, found.text) == expected


def test_a_blank_unit_is_the_unit_of_the_measure(reading: Callable[..., Reading]) -> None:
    """Nothing is said about it."""
    found = reading(measure="single_hop", value="152")
    assert (found.value, found.unit, found.raw_unit) == (152, "cm", "")


def test_neutral_zero_motion_is_two_readings(read: Read) -> None:
    """Both know their row, what was typed and whose row they come from."""
    cells = {
        "id": "a",
        "measure": "knee_motion",
        "value": "0-10-85",
        "trial": "1",
        "tester": "AB",
        "motion": "passive",
    }
    extension, flexion = read(table({**PLAIN, **cells})).readings
    assert (extension.id, extension.measure, extension.value) == ("a.extension", "knee_extension", 10)
    assert (flexion.id, flexion.measure, flexion.value) == ("a.flexion", "knee_flexion", 85)
    assert extension.text == flexion.text == extension.raw_value == "0-10-85"
    assert (extension.row, extension.trial, extension.condition.motion) == (2, 1, "passive")


def test_motion_that_was_not_taken_is_two_missing_readings(read: Read) -> None:
    """The reason stands for both."""
    found = read(one(measure="Knee motion", value="", missing="declined")).readings
    assert [(r.measure, r.value, r.missing) for r in found] == [
        ("knee_extension", None, "declined"),
        ("knee_flexion", None, "declined"),
    ]


def test_missing_stays_missing(reading: Callable[..., Reading]) -> None:
    """A reason and no value; the unit typed is kept."""
    found = reading(measure="single_hop", value="", missing="Not done", unit="in")
    assert (found.value, found.missing, found.raw_unit) == (None, "not done", "in")


def test_items_and_totals(read: Read) -> None:
    """An item has its number and its own range; a total has none."""
    rows = [
        {"date": "2026-06-01", "measure": "koos_pain", "item": "9", "value": "4"},
        {"date": "2026-06-01", "measure": "koos_pain", "value": "88.9"},
    ]
    assert [(r.item, r.value, r.side) for r in read(table(*rows)).readings] == [
        (9, 4, None),
        (None, 88.9, None),
    ]


def test_ids_are_made_where_there_is_none(read: Read) -> None:
    """In the order of the rows, around ids that were typed."""
    rows = [{**PLAIN, "trial": str(n), "id": name} for n, name in enumerate(["", "r0002", "", "x"], start=1)]
    assert [r.id for r in read(table(*rows)).readings] == ["r0001", "r0002", "r0003", "x"]


def test_readings_are_in_order_of_date_then_row(read: Read) -> None:
    """Whatever the order of the file."""
    days = ["2026-03-18", "2026-03-16", "2026-03-18"]
    found = read(table(*({**PLAIN, "date": day, "trial": str(n)} for n, day in enumerate(days, 1)))).readings
    assert [(r.date.day, r.row) for r in found] == [(16, 3), (18, 2), (18, 4)]


def test_a_reading_before_surgery_is_a_reading(read: Read) -> None:
    """It is the pre-operative reference."""
    case = read(one(date="2026-02-01"))
    assert case.readings[0].date == dt.date(2026, 2, 1)
    assert case.warnings == ()


@pytest.mark.parametrize(
    ("cells", "column", "what", "mend"),
    [
        ({"date": ""}, "date", "missing", "year-month-day"),
        ({"date": "2026-02-30"}, "date", "exist in the calendar", "year-month-day"),
        ({"date": "16.03.26"}, "date", "four digits", "year-month-day"),
        ({"date": "1990-03-16"}, "date", "before the birth year 2004", "year right"),
        ({"measure": ""}, "measure", "missing", "knee_flexion"),
        ({"measure": "knee_flexon"}, "measure", "not in the catalogue", "knee_flexion"),
        ({"measure": "single hop for dist"}, "measure", "not in the catalogue", "single_hop"),
        ({"measure": "zzzzzz"}, "measure", "not in the catalogue", "MEASURES"),
        ({"side": ""}, "side", "needs a side", "left or right"),
        ({"side": "both"}, "side", "left or right", "one row for each"),
        ({"side": "lft"}, "side", "left or right", "left or right"),
        ({"measure": "body_mass", "value": "66"}, "side", "belongs to no side", "blank"),
        ({"measure": "knee_motion", "value": "5-0-140", "side": ""}, "side", "needs a side", "left or right"),
        ({"value": ""}, "value", "neither a value nor a reason", "in missing"),
        ({"missing": "declined"}, "missing", "a value (85) and a reason", "Empty one"),
        (
            {"measure": "knee_motion", "missing": "unsafe", "value": "5-0-140"},
            "missing",
            "a value",
            "Empty one",
        ),
        ({"value": "", "missing": "refused"}, "missing", "closed list", "allowed words"),
        ({"value": "", "missing": "not don"}, "missing", "closed list", "'not done'"),
        ({"value": "declined"}, "value", "must be a number", "in missing"),
        ({"value": "NaN"}, "value", "finite", "missing"),
        ({"value": "inf"}, "value", "finite", "missing"),
        ({"value": "good"}, "value", "must be a number", "note"),
        ({"value": "110-115"}, "value", "must be one number", "knee_motion"),
        ({"value": "1,234"}, "value", "1.234 or 1234", "thousands"),
        ({"value": "1350"}, "value", "impossible", "decimal point"),
        ({"value": "-21"}, "value", "impossible", "decimal point"),
        ({"unit": "cm"}, "unit", "converts to deg", "wrong row"),
        ({"value": "85 cm"}, "value", "converts to deg", "wrong row"),
        ({"value": "85 deg", "unit": "rad"}, "value", "one unit", "Leave one"),
        ({"measure": "knee_extension", "value": "5 lacks"}, "value", "converts to deg", "lacks 5"),
        ({"measure": "knee_motion", "value": "5-140"}, "value", "two ways", "two rows"),
        ({"measure": "knee_motion", "value": "85"}, "value", "neutral-zero", "two rows"),
        ({"measure": "knee_motion", "value": ""}, "value", "neither", "in missing"),
        ({"measure": "knee_motion", "value": "5-0-140", "unit": "cm"}, "unit", "in degrees", "blank"),
        ({"measure": "knee_motion", "value": "5-0-140", "item": "1"}, "item", "no items", "blank"),
        ({"measure": "effusion", "value": "1"}, "value", "grade word", "1+"),
        ({"measure": "effusion", "value": "traces"}, "value", "grade word", "trace"),
        ({"measure": "effusion", "value": "1+", "unit": "cm"}, "unit", "no unit", "blank"),
        ({"trial": "0"}, "trial", "whole number from 1", "1, 2, 3"),
        ({"trial": "1.5"}, "trial", "whole number from 1", "1, 2, 3"),
        ({"trial": "-1"}, "trial", "whole number from 1", "1, 2, 3"),
        ({"trial": "first"}, "trial", "whole number from 1", "1, 2, 3"),
        ({"trial": "٣"}, "trial", "whole number from 1", "1, 2, 3"),
        ({"item": "1"}, "item", "no items", "blank"),
        ({"measure": "koos_sport", "side": "", "item": "7", "value": "2"}, "item", "5 items", "total"),
        ({"measure": "koos_sport", "side": "", "item": "x", "value": "2"}, "item", "whole number", "1, 2, 3"),
        (
            {"measure": "koos_sport", "side": "", "item": "2", "value": "5"},
            "value",
            "item 2, of 5",
            "decimal",
        ),
        ({"status": "scord"}, "status", "closed list", "'scored'"),
        ({"motion": "pasive"}, "motion", "closed list", "'passive'"),
        ({"timing": "afterwards"}, "timing", "closed list", "'after'"),
        ({"mode": "isokinetic"}, "mode", "closed list", "'isometric'"),
        ({"angle_deg": "900"}, "angle_deg", "impossible", "decimal point"),
        ({"angle_deg": "ninety"}, "angle_deg", "must be a number", "note"),
        ({"speed_deg_per_s": "-60"}, "speed_deg_per_s", "impossible", "decimal point"),
        ({"lever_arm_m": "32"}, "lever_arm_m", "impossible", "cm"),
    ],
)
def test_a_fault_is_named_with_its_place_and_remedy(
    error: Error, cells: dict[str, str], column: str, what: str, mend: str
) -> None:
    """File, row, column, what came, and how to mend it."""
    found = error(one(**cells))
    assert (found.file, found.row, found.column) == ("measurements.csv", 2, column)
    assert what in found.what
    assert mend in found.mend
    if column in cells:
        assert found.value == cells[column]
    assert found.sentence().startswith(f"measurements.csv, row 2, column {column}: ")


@pytest.mark.parametrize(
    ("cells", "what", "mend"),
    [
        ({"value": "165"}, "165° is unlikely", "again"),
        ({"measure": "single_hop", "value": "1.52"}, "1.52 cm is unlikely", "measured in m?"),
        ({"measure": "single_hop", "value": "12 ft"}, "365.76 cm is unlikely", "again"),
        ({"date": "2046-03-16"}, "20 years after the surgery", "year right"),
        ({"date": "2015-03-16"}, "11 years before the surgery", "year right"),
    ],
)
def test_what_is_unlikely_is_doubted_and_kept(
    read: Read, cells: dict[str, str], what: str, mend: str
) -> None:
    """The reading is there, with the warning."""
    case = read(one(**cells))
    assert len(case.readings) == 1
    assert what in case.warnings[0].what
    assert mend in case.warnings[0].mend


def test_all_faults_come_at_once(errors: Callable[..., list[Problem]]) -> None:
    """Every fault of every row, and the readable rows do not hide them."""
    found = errors(
        table(
            {**PLAIN, "date": "soon", "side": "x", "value": "many", "trial": "0", "status": "?"},
            PLAIN,
            {"measure": "knee_flexon", "motion": "?"},
        )
    )
    assert {(p.row, p.column) for p in found} == {
        *((2, name) for name in ("date", "side", "value", "trial", "status")),
        *((4, name) for name in ("date", "measure", "motion")),
    }


def test_a_hundred_thousand_faults_make_a_short_message() -> None:
    """All are kept, fifty are shown, and how many more there are."""
    problems = [
        Problem(severity="error", file="measurements.csv", what="wrong", mend="Mend it.", row=row)
        for row in range(100_000)
    ]
    refusal = CaseError(problems)
    assert len(refusal.problems) == 100_000
    assert len(str(refusal).splitlines()) == 52
    assert "99950 more" in str(refusal)


@pytest.mark.parametrize(
    ("days", "read_as"),
    [
        (("03/04/2026", "16/04/2026"), dt.date(2026, 4, 3)),
        (("03/04/2026", "04/16/2026"), dt.date(2026, 3, 4)),
    ],
)
def test_one_date_of_the_file_settles_the_order(read: Read, days: tuple[str, str], read_as: dt.date) -> None:
    """A day above twelve decides for all."""
    found = read(table(*({**PLAIN, "date": day} for day in days))).readings
    assert read_as in [reading.date for reading in found]


def test_a_file_of_ambiguous_dates_is_refused_once_with_both_readings(error: Error) -> None:
    """One fault for the file, however many rows it has."""
    found = error(table(*({**PLAIN, "date": day} for day in ("03/04/2026", "05/04/2026", "04/04/2026"))))
    assert (found.row, found.value) == (2, "03/04/2026")
    assert "3 April 2026 (day first) or 4 March 2026 (month first); so can 1 more" in found.what
    assert 'date_order = "day first"' in found.mend


def test_dates_that_contradict_each_other_are_refused(error: Error) -> None:
    """Both rows are named."""
    days = ("03/04/2026", "16/04/2026", "04/16/2026")
    found = error(table(*({**PLAIN, "date": day} for day in days)))
    assert "'16/04/2026' in row 3" in found.what
    assert (found.row, found.value) == (4, "04/16/2026")


@pytest.mark.parametrize(
    ("order", "day"), [("day first", dt.date(2026, 4, 3)), ("Month  First", dt.date(2026, 3, 4))]
)
def test_the_case_may_settle_the_order(read: Read, order: str, day: dt.date) -> None:
    """date_order in case.toml holds for every table."""
    toml = (
        f'date_order = "{order}"\n[athlete]\npseudonym = "W"\n[surgery]\ndate = 2026-03-02\nside = "left"\n'
    )
    case = read(one(date="03/04/2026"), "date\n03/04/2026\n", toml=toml)
    assert case.readings[0].date == case.visits[0].date == day


def test_a_date_against_the_order_of_the_case_is_refused(error: Error) -> None:
    """Whichever it is, one of the two is wrong."""
    toml = (
        'date_order = "year first"\n[athlete]\npseudonym = "W"\n[surgery]\ndate = 2026-03-02\nside = "left"\n'
    )
    assert "begin with the year" in error(one(date="16/04/2026"), toml=toml).what


def test_decimal_commas_of_a_file_settle_three_decimals(read: Read) -> None:
    """2,345 s is a time where 2,31 s stands beside it."""
    hop = {**PLAIN, "date": "2026-09-01", "measure": "timed_hop_6m"}
    found = read(
        table({**hop, "trial": "1", "value": "2,31"}, {**hop, "trial": "2", "value": "2,345"})
    ).readings
    assert [reading.value for reading in found] == [2.31, 2.345]


def test_a_date_typed_into_a_number_is_shortened_in_the_sentence(error: Error) -> None:
    """A very long cell does not flood the message."""
    assert len(error(one(value="x" * 90_000)).sentence()) < 400


def test_involved_cannot_be_settled_without_an_operated_side(errors: Callable[..., list[Problem]]) -> None:
    """The fault is the missing side of the surgery, once."""
    toml = '[athlete]\npseudonym = "W"\n[surgery]\ndate = 2026-03-02\n'
    assert [p.column for p in errors(one(side="involved"), toml=toml)] == ["surgery.side"]


def test_extra_is_empty_where_there_is_none(read: Read) -> None:
    """Plain rows carry nothing more."""
    found: Any = read(one()).readings[0].extra
    assert found == {}


@pytest.mark.parametrize(
    ("value", "unit", "celsius"), [("92", "°F", 33.333333), ("92 F", "", 33.333333), ("33.5", "", 33.5)]
)
def test_temperatures_come_in_both_scales(
    reading: Callable[..., Reading], value: str, unit: str, celsius: float
) -> None:
    """The pool's thermometer may read Fahrenheit; what was typed is kept."""
    found = reading(measure="water_temperature", side="", motion="", value=value, unit=unit)

    assert found.value == pytest.approx(celsius)
    assert found.unit == "celsius"
    assert found.raw_value == value.split()[0]


def test_a_misspelled_side_is_told_of_beside_an_unknown_measure(
    errors: Callable[..., list[Problem]],
) -> None:
    """Every fault of a row is named at once, so that one mending is enough."""
    problems = errors(one(measure="knee_flexon", side="lft", date="2026-02-30"))

    assert sorted(p.column for p in problems) == ["date", "measure", "side"]
