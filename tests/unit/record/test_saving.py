"""Saving a case: what is written, what stays, and when it is refused."""

from __future__ import annotations

import datetime as dt
import errno
import os
from dataclasses import replace
from pathlib import Path

import pytest

from kneecase.errors import CaseChangedError, CaseError, SaveError
from kneecase.record import Condition, Event, Limit, Reading, Visit, read_case, save_case, undo
from kneecase.record.case import Case
from kneecase.record.toml_text import case_toml_text

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


def case_in(folder: Path, measurements: str | bytes = MEASUREMENTS, toml: str = TOML) -> Case:
    folder.mkdir()
    (folder / "case.toml").write_text(toml, encoding="utf-8", newline="")
    data = measurements if isinstance(measurements, bytes) else measurements.encode()
    (folder / "measurements.csv").write_bytes(data)
    (folder / "visits.csv").write_text(VISITS, encoding="utf-8")
    return read_case(folder)


def flexion(id_: str = "new", value: float | None = 75.0, **rest: object) -> Reading:
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
    return {p.name: p.read_bytes() for p in folder.iterdir() if not p.name.startswith(("journal", "."))}


def test_an_unchanged_case_writes_nothing(tmp_path):
    """Not a byte, not a journal, not a lock; the case itself comes back."""
    case = case_in(tmp_path / "a")
    assert case.save() is case
    assert sorted(os.listdir(tmp_path / "a")) == ["case.toml", "measurements.csv", "visits.csv"]


def test_a_new_reading_is_one_more_row_and_nothing_else(tmp_path):
    """The other rows, their spelling and their spaces stay to the byte; columns come as needed."""
    case = case_in(tmp_path / "a")
    before = files(tmp_path / "a")
    saved = case.with_readings(flexion(condition=Condition(motion="passive"))).save()
    after = files(tmp_path / "a")
    lines = after["measurements.csv"].decode().splitlines(keepends=True)
    assert lines[0] == "date,measure,side,value,unit,tester,mood,note,id,motion\n"
    assert "".join(lines[1:4]) == "".join(MEASUREMENTS.splitlines(keepends=True)[1:])
    assert lines[4:] == ["2026-04-01,knee_flexion,left,75,deg,,,,new,passive\n"]
    assert {k: v for k, v in before.items() if k != "measurements.csv"} == {
        k: v for k, v in after.items() if k != "measurements.csv"
    }
    assert saved.readings[-1].id == "new"
    assert saved.save() is saved


def test_the_case_that_comes_back_can_be_saved_again(tmp_path):
    """The fingerprint is that of the disk, so a second change goes through, and equals a fresh reading."""
    case = case_in(tmp_path / "a").with_readings(flexion()).save()
    again = case.with_readings(flexion("newer", 80.0)).save()
    fresh = read_case(tmp_path / "a")
    assert again == fresh
    assert dict(again.fingerprint) == dict(fresh.fingerprint)
    assert dict(again.texts) == dict(fresh.texts)


def test_a_changed_row_keeps_every_cell_that_did_not_change(tmp_path):
    """Unknown columns, the date and the unit as typed stay in the row."""
    case = case_in(tmp_path / "a")
    first = case.readings[0]
    saved = replace(case, readings=(replace(first, note='=HYPERLINK("x")'), *case.readings[1:])).save()
    row = files(tmp_path / "a")["measurements.csv"].decode().splitlines()[1]
    assert row == '2026-03-10,knee_flexion,left,60 deg,,AB,fine,"=HYPERLINK(""x"")"'
    assert saved.readings[0].note == '=HYPERLINK("x")'


def test_a_corrected_value_wins_over_what_was_typed(tmp_path):
    """A new value in code is written in the measure's unit, not the old spelling."""
    case = case_in(tmp_path / "a")
    changed = tuple(replace(r, value=150.0) if r.measure == "single_hop" else r for r in case.readings)
    saved = replace(case, readings=changed).save()
    hop = saved.readings_of("single_hop")[0]
    assert (hop.value, hop.raw_value, hop.raw_unit) == (150.0, "150", "cm")


def test_a_removed_reading_is_gone_and_can_be_had_back(tmp_path):
    """Its row is taken out of the file, the others stay, and undo brings it back to the byte."""
    case = case_in(tmp_path / "a")
    before = files(tmp_path / "a")
    saved = case.without_readings(case.readings[-1].id).save()
    assert [r.measure for r in saved.readings] == ["knee_flexion", "knee_extension"]
    assert files(tmp_path / "a")["measurements.csv"].decode() == "".join(
        MEASUREMENTS.splitlines(keepends=True)[:3]
    )
    assert undo(tmp_path / "a").readings == case.readings
    assert files(tmp_path / "a") == before


def test_ids_stay_when_an_earlier_row_without_id_is_removed(tmp_path):
    """Ids that were counted from the rows are written down before they would shift."""
    case = case_in(tmp_path / "a")
    saved = case.without_readings(case.readings[0].id).save()
    assert [(r.id, r.measure) for r in saved.readings] == [(r.id, r.measure) for r in case.readings[1:]]
    assert saved.readings[1].raw_unit == "in"


def test_dates_are_settled_when_the_row_that_settled_them_goes(tmp_path):
    """03/04 was read by 25/03 in the same file; without it the date is written out."""
    text = (
        "id,date,measure,side,value\na,25/03/2026,knee_flexion,left,60\nb,03/04/2026,knee_flexion,left,70\n"
    )
    case = case_in(tmp_path / "a", text)
    saved = case.without_readings("a").save()
    assert [(r.id, r.date) for r in saved.readings] == [("b", dt.date(2026, 4, 3))]


def test_a_file_of_a_european_spreadsheet_is_written_in_its_own_way(tmp_path):
    """Semicolons, decimal commas, Windows line ends; old rows to the byte, the file becomes UTF-8."""
    text = "id;date;measure;side;value;unit;note\r\na;22.03.2026;knee_girth;left;41,5;cm;müde\r\n"
    case = case_in(tmp_path / "a", text.encode("cp1252"))
    new = replace(flexion(), measure="knee_girth", value=40.25, unit="cm")
    case.with_readings(new).save()
    assert files(tmp_path / "a")["measurements.csv"] == (
        text + "new;2026-04-01;knee_girth;left;40,25;cm;\r\n"
    ).encode("utf-8")
    undo(tmp_path / "a")
    assert files(tmp_path / "a")["measurements.csv"] == text.encode("cp1252")


def test_a_mark_and_an_announced_delimiter_stay(tmp_path):
    """What a spreadsheet program wrote at the start of the file, it finds again."""
    text = "\ufeffsep=\t\ndate\tmeasure\tside\tvalue\n2026-03-10\tknee_flexion\tleft\t60"
    case = case_in(tmp_path / "a", text)
    saved = case.with_readings(flexion()).save()
    new = files(tmp_path / "a")["measurements.csv"].decode()
    assert new.startswith(
        "\ufeffsep=\t\ndate\tmeasure\tside\tvalue\tid\tunit\n2026-03-10\tknee_flexion\tleft\t60\n"
    )
    assert len(saved.readings) == 2
    assert read_case(tmp_path / "a") == saved


def test_neutral_zero_motion_stays_one_row(tmp_path):
    """Two readings of one row are written back as that row, also when both get the same note."""
    text = "id,date,measure,side,value\nm,2026-03-10,knee_motion,left,0-5-120\n"
    case = case_in(tmp_path / "a", text)
    saved = case.with_readings(flexion()).save()
    assert files(tmp_path / "a")["measurements.csv"].decode().splitlines()[1] == text.splitlines()[1]
    noted = replace(saved, readings=tuple(replace(r, note="warm") for r in saved.readings)).save()
    rows = files(tmp_path / "a")["measurements.csv"].decode().splitlines()
    assert rows[1].startswith("m,2026-03-10,knee_motion,left,0-5-120")
    assert len(rows) == 3
    assert [r.note for r in noted.readings] == ["warm"] * 3


def test_neutral_zero_motion_becomes_two_rows_when_one_angle_is_corrected(tmp_path):
    """Ids stay, and the other angle keeps its value."""
    text = "id,date,measure,side,value\nm,2026-03-10,knee_motion,left,0-5-120\n"
    case = case_in(tmp_path / "a", text)
    bent = case.readings_of("knee_flexion")[0]
    others = tuple(r for r in case.readings if r != bent)
    saved = replace(case, readings=(*others, replace(bent, value=125.0))).save()
    assert {(r.id, r.value) for r in saved.readings} == {("m.extension", 5.0), ("m.flexion", 125.0)}
    alone = saved.without_readings("m.extension").save()
    assert [r.id for r in alone.readings] == ["m.flexion"]


def test_a_missing_reading_and_a_lost_trial_are_kept(tmp_path):
    """The reason there is none, and a trial that does not count."""
    case = case_in(tmp_path / "a")
    none = flexion("n1", None, missing="unsafe")
    lost = flexion("n2", 90.0, status="lost", trial=2, date=dt.date(2026, 4, 2))
    saved = case.with_readings(none, lost).save()
    found = {r.id: r for r in saved.readings}
    assert (found["n1"].value, found["n1"].missing) == (None, "unsafe")
    assert (found["n2"].status, found["n2"].trial, found["n2"].value) == ("lost", 2, 90.0)


def test_what_is_typed_is_written_as_typed_where_it_says_the_value(tmp_path):
    """Inches stay inches, a grade its word, words for extension their words; a stale spelling does not."""
    case = case_in(tmp_path / "a")
    hop = flexion("h", 121.92, measure="single_hop", unit="cm", raw_value="48", raw_unit="in", trial=1)
    stale = flexion("s", 130.0, measure="single_hop", unit="cm", raw_value="48", raw_unit="in", trial=2)
    grade = flexion("e", 2.0, measure="effusion", unit="grade")
    words = flexion("x", 7.0, measure="knee_extension", raw_value="lacks 7", text="lacks 7")
    saved = case.with_readings(hop, stale, grade, words).save()
    found = {r.id: (r.value, r.raw_value, r.raw_unit, r.text) for r in saved.readings}
    assert found["h"] == (121.92, "48", "in", "")
    assert found["s"] == (130.0, "130", "cm", "")
    assert found["e"] == (2.0, "1+", "", "1+")
    assert found["x"] == (7.0, "lacks 7", "", "lacks 7")


def test_visits_are_added_changed_and_removed(tmp_path):
    """Answers, pain and notes; a question that is not there stays not asked."""
    case = case_in(tmp_path / "a")
    visit = Visit(
        id="v2",
        date=dt.date(2026, 3, 24),
        pain={"rest": 1.5, "next morning": 3},
        answers={"giving_way": "no", "fever": "not asked", "locking": "yes"},
        action="hold",
        note="first line\nsecond, with “quotes”",
        extra={"room": "3"},
    )
    saved = case.with_visits(visit).save()
    assert saved.visits[1].pain == {"rest": 1.5, "next morning": 3.0}
    assert [saved.visits[1].answer(q) for q in ("giving_way", "fever", "locking", "lag")] == [
        *("no", "not asked", "yes", "not asked")
    ]
    assert (saved.visits[1].note, saved.visits[1].extra) == (visit.note, {"room": "3"})
    changed = replace(saved, visits=(replace(saved.visits[0], soreness="none"), saved.visits[1])).save()
    assert [v.soreness for v in changed.visits] == ["none", ""]
    gone = replace(changed, visits=changed.visits[1:]).save()
    assert [v.id for v in gone.visits] == ["v2"]


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


def test_tables_that_were_not_there_are_made_when_needed(tmp_path):
    """A folder with case.toml alone gets the table that has rows, and no other."""
    (tmp_path / "a").mkdir()
    (tmp_path / "a" / "case.toml").write_text(TOML, encoding="utf-8")
    case = read_case(tmp_path / "a")
    case.with_readings(flexion()).save()
    assert sorted(files(tmp_path / "a")) == ["case.toml", "measurements.csv"]
    undo(tmp_path / "a")
    assert sorted(files(tmp_path / "a")) == ["case.toml"]


def test_a_workbook_is_left_and_tables_are_written_beside_it(tmp_path):
    """Unchanged it writes nothing; changed, both tables are written and count from then on."""
    from openpyxl import Workbook

    folder = tmp_path / "a"
    folder.mkdir()
    (folder / "case.toml").write_text(TOML, encoding="utf-8")
    book = Workbook()
    sheet = book.active
    sheet.title = "measurements"
    sheet.append(["date", "measure", "side", "value", "mood"])
    sheet.append([dt.date(2026, 3, 10), "knee_flexion", "left", 60.5, "fine"])
    visits = book.create_sheet("visits")
    visits.append(["id", "date"])
    visits.append(["v1", dt.date(2026, 3, 10)])
    book.save(folder / "measurements.xlsx")
    case = read_case(folder)
    before = files(folder)
    assert case.save() is case
    assert files(folder) == before
    saved = replace(case.with_readings(flexion()), visits=()).save()
    assert [r.value for r in saved.readings] == [60.5, 75.0]
    assert saved.readings[0].extra == {"mood": "fine"}
    assert saved.visits == ()
    assert files(folder)["measurements.xlsx"] == before["measurements.xlsx"]
    assert len(undo(folder).visits) == 1


def test_a_case_is_saved_to_a_new_folder_whole(tmp_path):
    """Everything it holds, comments too; the first folder is not touched."""
    case = case_in(tmp_path / "a")
    before = files(tmp_path / "a")
    there = case.with_readings(flexion()).save(tmp_path / "new" / "b")
    assert there.path == tmp_path / "new" / "b"
    assert there == read_case(there.path)
    assert files(there.path)["case.toml"] == before["case.toml"]
    assert files(tmp_path / "a") == before
    assert save_case(there, str(there.path)) is there


def test_a_folder_that_holds_another_case_is_never_written_over(tmp_path):
    """Refused by name; saving the very same case there again is fine."""
    case = case_in(tmp_path / "a")
    other = case_in(tmp_path / "b", MEASUREMENTS.replace("60 deg", "61 deg"))
    before = files(tmp_path / "b")
    with pytest.raises(SaveError, match=r"already holds a case .*case\.toml"):
        case.save(tmp_path / "b")
    assert files(tmp_path / "b") == before
    assert replace(other, path=None).save(tmp_path / "b").readings == other.readings


def test_a_case_made_in_code_is_saved_whole(tmp_path):
    """Without a text to start from, the explained template is; nothing is lost."""
    case = case_in(tmp_path / "a", toml=REFERENCES)
    made = replace(case, texts={}, fingerprint={}, path=None)
    with pytest.raises(SaveError, match="no folder yet"):
        made.save()
    saved = made.save(tmp_path / "b")
    assert {(r.id, r.value, r.note) for r in saved.readings} >= {
        (r.id, r.value, r.note) for r in case.readings if not r.id.startswith("ref-")
    }
    assert len(saved.readings) == len(case.readings)
    assert (saved.athlete, saved.surgery, saved.limits) == (case.athlete, case.surgery, case.limits)
    assert "5-0-140" in files(tmp_path / "b")["case.toml"].decode()


def test_part_of_a_case_is_not_saved_over_the_whole(tmp_path):
    """A case as of an earlier day lacks what came later, so its own folder refuses it."""
    case = case_in(tmp_path / "a")
    part = case.as_of(dt.date(2026, 3, 11))
    with pytest.raises(SaveError, match="only a part of the case"):
        part.save()
    assert len(part.save(tmp_path / "b").readings) == 2
    assert len(read_case(tmp_path / "a").readings) == 3


@pytest.mark.parametrize("name", ["case.toml", "measurements.csv", "visits.csv"])
def test_a_file_changed_since_is_not_written_over(tmp_path, name):
    """The sentence names the file and both ways out, and both ways work."""
    case = case_in(tmp_path / "a").with_readings(flexion())
    path = tmp_path / "a" / name
    path.write_bytes(path.read_bytes() + b"\n")
    before = files(tmp_path / "a")
    with pytest.raises(CaseChangedError, match=rf"{name} .*read_case .*case\.save\(path\)"):
        case.save()
    with pytest.raises(CaseChangedError):
        replace(case, readings=case.readings[:-1]).save()
    assert files(tmp_path / "a") == before
    assert len(read_case(tmp_path / "a").with_readings(case.readings[-1]).save().readings) == 4
    assert len(case.save(tmp_path / "b").readings) == 4


def test_a_file_that_came_or_went_counts_as_changed(tmp_path):
    """A table that somebody added or took away since is a change too."""
    case = case_in(tmp_path / "a").with_readings(flexion())
    (tmp_path / "a" / "visits.csv").unlink()
    with pytest.raises(CaseChangedError, match=r"visits\.csv"):
        case.save()


def test_a_folder_that_is_gone_is_refused(tmp_path):
    """Nothing is made anew in its place without being asked."""
    case = case_in(tmp_path / "a").with_readings(flexion())
    (tmp_path / "a").rename(tmp_path / "moved")
    with pytest.raises(SaveError, match="not there any more"):
        case.save()
    assert not (tmp_path / "a").exists()


@pytest.mark.parametrize(
    ("reading", "sentence"),
    [
        (flexion(value=1350.0), "impossible"),
        (flexion(value=float("nan")), "finite number"),
        (flexion(measure="wrist_angle"), "not in the catalogue"),
        (flexion(value=None), "neither a value nor a reason"),
        (flexion(text="felt stiff"), "no column holds its text 'felt stiff'"),
        (flexion(trial=0), "whole number from 1 up"),
        (flexion(measure="effusion", unit="grade", value=7.0), "grade"),
        (flexion("ref-9"), "reference is taken before the surgery"),
        (flexion(id_="a\0b"), "NUL"),
    ],
)
def test_what_would_not_read_back_is_refused_before_anything_is_written(tmp_path, reading, sentence):
    """The reader's own sentence says why; the files stay."""
    case = case_in(tmp_path / "a").with_readings(reading)
    before = files(tmp_path / "a")
    with pytest.raises(SaveError, match="would not read back") as refused:
        case.save()
    assert sentence in str(refused.value)
    assert files(tmp_path / "a") == before
    assert not (tmp_path / "a" / "journal.jsonl").exists()


def test_many_faults_are_not_all_listed(tmp_path):
    """The sentence stays readable."""
    many = [flexion(f"n{n}", 60.0 + n, text="words", trial=n + 1) for n in range(9)]
    with pytest.raises(SaveError, match="and more"):
        case_in(tmp_path / "a").with_readings(*many).save()


def test_a_full_disk_while_saving_leaves_the_case_and_another_folder_takes_it(tmp_path, monkeypatch):
    """Typed content is not lost: it is still in hand and goes to another disk."""
    case = case_in(tmp_path / "a").with_readings(flexion())
    before = files(tmp_path / "a")
    with pytest.MonkeyPatch.context() as patch:

        def full(*_):
            raise OSError(errno.ENOSPC, "No space left on device")

        patch.setattr(os, "write", full)
        with pytest.raises(SaveError, match="the disk is full"):
            case.save()
    assert files(tmp_path / "a") == before
    assert len(case.save(tmp_path / "b").readings) == 4
    assert len(case.save().readings) == 4


def test_a_place_where_no_folder_can_be_made_is_refused(tmp_path):
    """A file in the way is named."""
    (tmp_path / "file").write_text("x")
    with pytest.raises(SaveError, match="could not be made"):
        case_in(tmp_path / "a").save(tmp_path / "file" / "b")


def test_a_very_long_note_is_refused_in_words(tmp_path):
    """Longer than any reader of tables takes: said before saving, not found out after."""
    with pytest.raises(SaveError, match="characters"):
        case_in(tmp_path / "a").with_readings(flexion(note="x" * 140_000)).save()


def test_a_case_that_cannot_be_read_names_its_faults_on_the_way_back(tmp_path):
    """After an undo by hand-made faults the reading says what is wrong."""
    case_in(tmp_path / "a").with_readings(flexion()).save()
    (tmp_path / "a" / "case.toml").write_text("format = 1\n", encoding="utf-8")
    with pytest.raises(CaseError, match="surgery"):
        undo(tmp_path / "a")


def test_neutral_zero_text_is_written_as_one_row_only_where_it_says_both_angles(tmp_path):
    """A pair whose text is stale or no notation becomes two rows with the angles themselves."""
    case = case_in(tmp_path / "a")

    def pair(name: str, bent: float, text: str, first: str = "extension") -> list[Reading]:
        rest = {"text": text, "raw_value": text, "date": dt.date(2026, 4, ord(name) - 90)}
        both = [
            flexion(f"{name}.extension", 5.0, measure="knee_extension", **rest),
            flexion(f"{name}.flexion", bent, **rest),
        ]
        return both if first == "extension" else both[::-1]

    added = [
        *pair("a", 120.0, "0-5-120"),
        *pair("b", 110.0, "0-5-120"),
        *pair("c", 120.0, "0-5-120", "flexion"),
    ]
    none = [replace(r, value=None, missing="declined", raw_value="", text="") for r in pair("d", 1.0, "")]
    saved = case.with_readings(*added, *none).save()
    rows = files(tmp_path / "a")["measurements.csv"].decode().splitlines()[4:]
    assert sum("knee_motion" in row for row in rows) == 3
    assert len(rows) == 5
    found = {r.id: (r.value, r.missing) for r in saved.readings}
    assert (found["b.extension"], found["b.flexion"]) == ((5.0, ""), (110.0, ""))
    assert (found["c.extension"], found["c.flexion"]) == ((5.0, ""), (120.0, ""))
    assert found["d.flexion"] == (None, "declined")


def test_a_pair_whose_text_is_no_notation_is_two_rows(tmp_path):
    """Words that say nothing about both angles do not stand for them."""
    case = case_in(tmp_path / "a")
    both = (
        flexion("a.extension", 5.0, measure="knee_extension", text="lacks 5", raw_value="lacks 5"),
        flexion("a.flexion", 120.0, text="lacks 5"),
    )
    saved = case.with_readings(*both).save()
    assert {r.id: r.value for r in saved.readings if r.id.startswith("a.")} == {
        "a.extension": 5.0,
        "a.flexion": 120.0,
    }


def test_what_was_typed_and_cannot_be_read_gives_way_to_the_value(tmp_path):
    """A spelling that is no number is not written in place of one."""
    new = flexion(value=80.0, raw_value="about eighty")
    assert case_in(tmp_path / "a").with_readings(new).save().readings[-1].value == 80.0


def test_numbers_that_another_row_made_clear_are_written_out(tmp_path):
    """1,234 was a bit over one by the commas of another row; without that row it is written with a point."""
    text = (
        "id;date;measure;side;value;note\na;2026-03-10;knee_girth;left;41,5;\n"
        "b;2026-03-11;knee_girth;left;41,375;kept\n"
    )
    case = case_in(tmp_path / "a", text)
    saved = case.without_readings("a").save()
    assert [(r.id, r.value, r.note) for r in saved.readings] == [("b", 41.375, "kept")]


def test_a_row_with_too_few_cells_is_filled_up(tmp_path):
    """A short row may be corrected; a table without a line end at its end may grow."""
    text = "id,date,measure,side,value,note\na,2026-03-10,knee_flexion,left,60"
    case = case_in(tmp_path / "a", text)
    noted = replace(case, readings=(replace(case.readings[0], note="seen"),))
    saved = noted.with_readings(flexion()).save()
    assert [r.note for r in saved.readings] == ["seen", ""]
    assert case_in(tmp_path / "b", text).with_readings(flexion()).save().readings[1].id == "new"


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


def test_a_limit_that_no_text_can_say_is_refused_by_name(tmp_path):
    """A number on a limit that has none is refused with the reader's sentence."""
    limit = Limit(kind="running", start=dt.date(2026, 3, 2), value=5.0)
    with pytest.raises(SaveError, match="a limit on running has no number"):
        case_in(tmp_path / "a").with_limits(limit).save()


def test_words_that_read_back_as_others_are_refused_by_name(tmp_path):
    """A procedure is spelt as the scope spells it; a case that insists otherwise is told so."""
    case = case_in(tmp_path / "a")
    odd = replace(case, surgery=replace(case.surgery, concomitant=("FRACTURE",)))
    with pytest.raises(SaveError, match=r"concomitant \('FRACTURE',\) would read back as \('fracture',\)"):
        odd.save()
    odd_limit = replace(case.limits[0], kind="Flexion")
    with pytest.raises(SaveError, match=r"limit .*'Flexion'.* would not read back; limit .*would come back"):
        replace(case, limits=(odd_limit,)).save()
