"""``case.toml`` as it is saved: comments, unknown keys and blocks stay."""

from __future__ import annotations

import datetime as dt
from dataclasses import replace

import pytest

from kneecase.record import Event, Limit
from kneecase.record.toml_text import case_toml_text
from saved_case import MEASUREMENTS, REFERENCES, TOML, case_in, files, flexion


def test_case_toml_keeps_comments_and_unknown_keys(tmp_path):
    """Only the keys that changed are touched; the mass in pounds gives way to the new mass."""
    case = case_in(tmp_path / "a")
    athlete = replace(case.athlete, mass_kg=70.0, sport="handball", limb_length_cm={"left": 88.5})
    surgery = replace(case.surgery, concomitant=("medial meniscus repair",), earlier={"right": ("sprain",)})
    saved = replace(case, athlete=athlete, surgery=surgery).save()
    text = files(tmp_path / "a")["case.toml"].decode()
    for kept in (
        "# who and what",
        "shoe_size = 42            # a key",
        "surgeon_code",
        "# after a meniscus",
        "clinic",
    ):
        assert kept in text
    assert "146 lb" not in text
    assert "mass_kg = 70\n" in text
    assert (saved.athlete, saved.surgery) == (athlete, surgery)
    bare = replace(saved, athlete=replace(athlete, sport="", mass_kg=None)).save()
    assert "mass" not in files(tmp_path / "a")["case.toml"].decode()
    assert bare.athlete.sport == ""


def test_limits_and_events_are_added_changed_and_removed(tmp_path):
    """A limit is lifted in its own block, others are added after it, and one is taken out."""
    case = case_in(tmp_path / "a")
    running = Limit(kind="running", start=dt.date(2026, 3, 2), note="until seen")
    event = Event(date=dt.date(2026, 5, 1), kind="manipulation")
    saved = case.with_limits(running).with_events(event).save()
    lifted = replace(saved.limits[0], lifted=dt.date(2026, 4, 10))
    again = replace(saved, limits=(lifted, running)).save()
    text = files(tmp_path / "a")["case.toml"].decode()
    assert text.index("lifted = 2026-04-10") < text.index('kind = "running"')
    assert "# after a meniscus repair" in text
    assert 'clinic = "north"' in text
    assert again.limits == (lifted, running)
    alone = replace(again, limits=(running,), events=()).save()
    assert (alone.limits, alone.events) == ((running,), ())
    assert "[[event]]" not in files(tmp_path / "a")["case.toml"].decode()


def test_references_are_changed_where_they_stand(tmp_path):
    """A reading from before the surgery stays in case.toml; the others keep their blocks and keys."""
    case = case_in(tmp_path / "a", toml=REFERENCES)
    assert case.save() is case
    girth = next(r for r in case.readings if r.id == "mine")
    others = tuple(r for r in case.readings if r != girth)
    saved = replace(case, readings=(*others, replace(girth, value=42.0))).save()
    text = files(tmp_path / "a")["case.toml"].decode()
    assert REFERENCES.replace("value = 41.5", 'value = 42\nunit = "cm"') in text
    assert files(tmp_path / "a")["measurements.csv"].decode() == MEASUREMENTS
    motion = [r.id for r in saved.readings if r.id.startswith("ref-") and r.measure != "quadriceps_torque"]
    gone = saved.without_readings(*motion).save()
    text = files(tmp_path / "a")["case.toml"].decode()
    assert len(motion) == 2
    assert "5-0-140" not in text
    assert 'chair = "B"' in text
    left = {r.measure for r in gone.readings if r.date < case.surgery.date}
    assert left == {"quadriceps_torque", "knee_girth"}


def test_correcting_the_operated_side_keeps_every_other_side(tmp_path):
    """Words such as uninvolved would change their meaning, so they are written out."""
    toml = REFERENCES.replace('side = "left"', 'side = "left"\nharvest_side = "involved"', 1).replace(
        'surgeon_code = "K7"', '[surgery.earlier]\nuninvolved = ["sprain"]'
    )
    case = case_in(tmp_path / "a", MEASUREMENTS.replace(",right,", ",uninvolved,"), toml)
    saved = replace(case, surgery=replace(case.surgery, side="right")).save()
    assert saved.surgery == replace(case.surgery, side="right")
    assert saved.surgery.earlier == {"right": ("sprain",)}
    assert [(r.measure, r.side) for r in saved.readings] == [(r.measure, r.side) for r in case.readings]


def test_an_old_format_is_raised_on_saving(tmp_path):
    """A case that states no format is read, and states it once it is saved; line ends stay."""
    old = TOML.replace("format = 1\n", "").replace("\n", "\r\n")
    case = case_in(tmp_path / "a", toml=old)
    saved = case.save()
    text = files(tmp_path / "a")["case.toml"].decode()
    assert text == "format = 1\r\n" + old
    assert (case.format_version, saved.format_version) == (0, 1)
    stated = case_in(tmp_path / "b", toml=TOML.replace("format = 1", "format = 0")).save()
    assert stated.format_version == 1


def test_an_operated_side_corrected_where_nothing_else_is_known(tmp_path):
    """No part of case.toml is made only to be left blank."""
    case = case_in(tmp_path / "a")
    saved = replace(case, surgery=replace(case.surgery, side="right")).save()
    assert saved.involved == "right"
    assert "earlier" not in files(tmp_path / "a")["case.toml"].decode()


def test_limits_between_others_and_without_their_note(tmp_path):
    """A limit may come before others, and a key that has gone blank is taken out."""
    case = case_in(tmp_path / "a")
    running = Limit(kind="running", start=dt.date(2026, 3, 2), note="until seen")
    jumping = Limit(kind="jumping and hopping", start=dt.date(2026, 3, 2))
    first = case.with_limits(running).save()
    second = replace(first, limits=(jumping, first.limits[0], replace(running, note=""))).save()
    assert [(x.kind, x.note) for x in second.limits] == [
        *(("jumping and hopping", ""), ("flexion", "")),
        ("running", ""),
    ]
    assert "until seen" not in files(tmp_path / "a")["case.toml"].decode()


def test_a_reference_written_in_code_keeps_whole_numbers_whole(tmp_path):
    """Trial and item are whole numbers, a value typed with its unit stays text, a date a date."""
    case = case_in(tmp_path / "a")
    before = dt.date(2026, 2, 1)
    hop = flexion(value=121.92, measure="single_hop", unit="cm", raw_value="48", raw_unit="in")
    saved = case.with_readings(replace(hop, id="ref-1", date=before, trial=2)).save()
    text = files(tmp_path / "a")["case.toml"].decode()
    assert "trial = 2\n" in text
    assert 'value = 48\nunit = "in"' in text
    assert "date = 2026-02-01" in text
    assert next(r for r in saved.readings if r.id == "ref-1").value == 121.92


def test_limits_in_a_list_on_one_line_stay_there(tmp_path):
    """The other spelling of TOML for the same is kept as it is, and grows in its own way."""
    toml = 'limit = [{kind = "running", start = 2026-03-02}]\n' + TOML[: TOML.index("# the surgeon")]
    case = case_in(tmp_path / "a", toml=toml)
    noted = replace(case.limits[0], note="seen")
    saved = replace(case, limits=(noted,)).with_limits(Limit(kind="brace", start=dt.date(2026, 3, 2))).save()
    assert [(x.kind, x.note) for x in saved.limits] == [("running", "seen"), ("brace", "")]
    assert files(tmp_path / "a")["case.toml"].startswith(b'limit = [{kind = "running", start')


def test_blocks_that_are_not_those_that_were_read_are_not_touched(tmp_path):
    """A text that does not belong to the case is refused instead of changed in the wrong place."""
    case = case_in(tmp_path / "a")
    changed = replace(case, limits=())
    with pytest.raises(ValueError, match="were read as 1"):
        case_toml_text(TOML[: TOML.index("[[limit]]")], case, changed, ([], []))
