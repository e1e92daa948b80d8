"""Starting a case: the folder, the template, and what is refused."""

from __future__ import annotations

import csv
import datetime as dt
import re
import tomllib

import pytest

from kneecase.errors import CaseError, InputError, SaveError
from kneecase.record import Reading, new_case, read_case, template_texts
from kneecase.record.columns import MEASUREMENT_COLUMNS, VISIT_COLUMNS
from kneecase.record.reading import case_from_texts
from kneecase.record.template import TEMPLATE_KEYS

NEEDED = {"pseudonym": "Wren", "surgery_date": "2026-03-02", "side": "left"}


def test_a_new_case_has_its_files_and_can_be_read(tmp_path):
    """Three files that a clinician can open, and the case in hand is the one on disk."""
    case = new_case(tmp_path / "deep" / "wren", **NEEDED)
    assert (case.athlete.pseudonym, case.surgery.date, case.involved) == ("Wren", dt.date(2026, 3, 2), "left")
    assert (case.readings, case.visits, case.warnings) == ((), (), ())
    assert read_case(tmp_path / "deep" / "wren") == case


def test_everything_that_is_given_is_in_the_case(tmp_path):
    """Every argument reaches its key and reads back, quotes and accents included."""
    case = new_case(
        tmp_path / "a",
        pseudonym='Wren "the second"',
        surgery_date=dt.date(2026, 3, 2),
        side="right",
        graft="hamstring tendon",
        harvest_side="left",
        allograft=False,
        revision=True,
        concomitant=["medial meniscus repair"],
        earlier_left=["ankle sprain 2022"],
        earlier_right=("ACL reconstruction 2019",),
        year_of_birth=2004,
        age_years=22,
        sex="female",
        mass_kg=66.5,
        height_cm=171,
        limb_length_left_cm=88,
        limb_length_right_cm=88.5,
        shank_length_left_cm=44,
        shank_length_right_cm=44.5,
        dominant_side="right",
        sport="Händball\\",
        position="wing",
        skeletally_mature=False,
    )
    athlete, surgery = case.athlete, case.surgery
    assert (athlete.pseudonym, athlete.sport, athlete.position) == ('Wren "the second"', "Händball\\", "wing")
    assert (athlete.year_of_birth, athlete.age_years, athlete.sex) == (2004, 22.0, "female")
    assert (athlete.mass_kg, athlete.height_cm) == (66.5, 171.0)
    assert athlete.limb_length_cm == {"left": 88.0, "right": 88.5}
    assert athlete.shank_length_cm == {"left": 44.0, "right": 44.5}
    assert (athlete.dominant_side, athlete.skeletally_mature) == ("right", False)
    assert (surgery.graft, surgery.harvest_side, surgery.allograft, surgery.revision) == (
        *("hamstring tendon", "left", False),
        True,
    )
    assert surgery.concomitant == ("medial meniscus repair",)
    assert surgery.earlier == {"left": ("ankle sprain 2022",), "right": ("ACL reconstruction 2019",)}


def test_what_is_not_given_is_explained_and_stays_out(tmp_path):
    """Every key stands there with its use; one that was not given is commented out, not invented."""
    case = new_case(tmp_path / "a", **NEEDED)
    text = (tmp_path / "a" / "case.toml").read_text(encoding="utf-8")
    for key in TEMPLATE_KEYS:
        assert f"{key.name} = " in text
        assert key.about in text
    for part in ("[[limit]]", "[[event]]", "[[reference]]", "date_order"):
        assert f"# {part}" in text
    assert "INVENTED" not in text
    assert case.athlete.sex == ""
    assert case.surgery.allograft is None


def test_the_blank_template_says_what_is_invented():
    """It reads as a case, and every value in it that must be replaced says so."""
    texts = template_texts()
    case = case_from_texts(texts, path=None, fingerprint={})
    assert case.warnings == ()
    for line in texts["case.toml"].splitlines():
        if " = " in line and not line.startswith(("#", "format")):
            assert "INVENTED, REPLACE" in line
    assert next(csv.reader([texts["measurements.csv"]])) == list(MEASUREMENT_COLUMNS)
    assert next(csv.reader([texts["visits.csv"]])) == list(VISIT_COLUMNS)


def test_every_example_of_the_template_is_allowed():
    """With every # before a key taken away, the template is a case without a fault."""
    text = template_texts()["case.toml"]
    is_key = re.compile(r"# (\[\[|\w+ = )")
    opened = "\n".join(line[2:] if is_key.match(line) else line for line in text.splitlines())
    assert tomllib.loads(opened)["limit"][0]["kind"] == "flexion"
    case = case_from_texts({"case.toml": opened}, path=None, fingerprint={})
    assert (len(case.limits), len(case.events), len(case.readings)) == (1, 1, 1)
    assert case.athlete.shank_length_cm == {"left": 44.0, "right": 44.0}


def test_a_reading_goes_into_the_new_case_in_order_of_the_header(tmp_path):
    """The table made with its header takes a row without another column."""
    case = new_case(tmp_path / "a", **NEEDED)
    new = Reading(
        id="m1", date=dt.date(2026, 3, 9), measure="knee_flexion", side="left", value=40, unit="deg"
    )
    assert case.with_readings(new).save().readings[0].value == 40.0
    lines = (tmp_path / "a" / "measurements.csv").read_text(encoding="utf-8").splitlines()
    assert lines == [
        ",".join(MEASUREMENT_COLUMNS),
        "m1,2026-03-09,knee_flexion,,left,,40,deg,scored" + "," * 12,
    ]


@pytest.mark.parametrize(
    "name", ["case.toml", "measurements.csv", "visits.csv", "measurements.xlsx", "journal.jsonl"]
)
def test_a_folder_that_holds_a_case_is_not_written_over(tmp_path, name):
    """Any file of a case in the way is named, and stays."""
    (tmp_path / name).write_bytes(b"")
    with pytest.raises(SaveError, match=f"already holds a case .*{name.replace('.', '[.]')}"):
        new_case(tmp_path, **NEEDED)
    assert {p.name for p in tmp_path.iterdir()} <= {name, ".lock"}


def test_other_files_in_the_folder_do_not_matter(tmp_path):
    """A folder with letters in it takes a case."""
    (tmp_path / "letter.txt").write_text("x")
    assert new_case(tmp_path, **NEEDED).path == tmp_path


@pytest.mark.parametrize(
    ("change", "named"),
    [
        ({"side": "middle"}, ["side", "middle"]),
        ({"graft": "hamstring"}, ["graft", "hamstring tendon"]),
        ({"mass_kg": 6600}, ["mass_kg"]),
        ({"mass_kg": float("nan")}, ["mass_kg"]),
        ({"pseudonym": ""}, ["pseudonym"]),
        ({"year_of_birth": 2004.5, "sex": "f?"}, ["year_of_birth", "sex"]),
    ],
)
def test_values_that_are_not_allowed_are_all_named_and_nothing_is_made(tmp_path, change, named):
    """The reader's own sentences, before a folder exists."""
    with pytest.raises(CaseError) as refused:
        new_case(tmp_path / "a", **{**NEEDED, **change})
    for word in named:
        assert word in str(refused.value)
    assert not (tmp_path / "a").exists()


@pytest.mark.parametrize("date", ["2.3.2026", "2026-02-30", "", None, dt.datetime(2026, 3, 2), 20260302])
def test_the_day_of_surgery_is_a_calendar_date(tmp_path, date):
    """One spelling for text, and no time of day."""
    with pytest.raises(InputError, match="surgery_date must be a calendar date"):
        new_case(tmp_path / "a", **{**NEEDED, "surgery_date": date})


def test_a_text_in_place_of_a_list_is_one_entry(tmp_path):
    """A single procedure given as text is not taken apart into letters."""
    case = new_case(tmp_path / "a", **NEEDED, concomitant="medial meniscus repair", earlier_left="sprain")
    assert case.surgery.concomitant == ("medial meniscus repair",)
    assert case.surgery.earlier == {"left": ("sprain",)}


def test_a_value_of_another_kind_is_refused_by_name(tmp_path):
    """What a text file cannot hold is refused as an input, with its name."""
    with pytest.raises(InputError, match=r"mass_kg must be .*got \(1\+2j\)"):
        new_case(tmp_path / "a", **NEEDED, mass_kg=1 + 2j)
