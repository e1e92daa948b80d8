"""The two tables as they are saved: only rows that differ, in the file's own way."""

from __future__ import annotations

import datetime as dt
from dataclasses import replace

from kneecase.record import Condition, Reading, Visit, read_case, undo
from saved_case import MEASUREMENTS, TOML, case_in, files, flexion


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
