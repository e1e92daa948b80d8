"""Whatever a case holds, it reads back from its files as it was saved."""

from __future__ import annotations

import datetime as dt
import tempfile
from dataclasses import fields, replace
from pathlib import Path
from typing import Any

from hypothesis import given, settings
from hypothesis import strategies as st

from kneecase.record import (
    ACTIONS,
    EVENT_KINDS,
    GRAFTS,
    LIMIT_KINDS,
    MEASURES,
    MISSING_REASONS,
    QUESTIONS,
    SORENESS,
    STATUSES,
    Athlete,
    Case,
    Condition,
    Event,
    Limit,
    Reading,
    Surgery,
    Visit,
    read_case,
    undo,
)

SURGERY_DAY = dt.date(2026, 3, 2)
SIDES = st.sampled_from(["left", "right"])
DAYS = st.dates(dt.date(2025, 9, 1), dt.date(2027, 12, 31))
AWKWARD = (
    *("", "=1+1", '=HYPERLINK("http://x","y")', "-3", "+5", "@sum", "<b>5</b> & \"so\" 'so'", "a,b;c\td"),
    *("line\nline\r\nline\rline", "  spaces at both ends ", "الركبة لا تزال متورمة", "müde – 5°", "🦵🏽 ok"),
    *("\u202eright to left\u202c", "\u2028\u2029\x85\x0b\x0c\x1c", '"', '""', "'''", "\\n \\ \\u0041"),
    *("sep=;", "# not a comment", "not asked", "NaN", "null", "x" * 5000, "0" * 40, "a\u0301", "\x7f\x01"),
    "\ufeff",
)
"""Text that breaks files when it is written without care."""

CHARACTERS = st.characters(exclude_categories=["Cs"], exclude_characters="\0")
TEXT = st.one_of(st.sampled_from(AWKWARD), st.text(CHARACTERS, max_size=30))
SHORT = TEXT.map(str.strip)
NAMES = st.text(CHARACTERS, min_size=1, max_size=8).map(str.strip).filter(lambda t: t and t[:4] != "ref-")
IDS = st.lists(NAMES, min_size=12, max_size=12, unique=True)
EARLIER = st.lists(SHORT.filter(bool), min_size=1, max_size=2).map(tuple)
EVENTS = st.builds(Event, date=DAYS, kind=st.sampled_from(EVENT_KINDS), note=SHORT)
CHOSEN = ("knee_flexion", "knee_extension", "knee_girth", "single_hop", "effusion", "quadriceps_torque")


def number(low: float, high: float) -> st.SearchStrategy[float]:
    return st.one_of(
        st.floats(low, high, allow_nan=False, allow_subnormal=False),
        st.integers(int(low) + 1, int(high)).map(float),
    )


@st.composite
def readings(draw: st.DrawFn, id_: str, trial: int) -> Reading:
    measure = MEASURES[draw(st.sampled_from(CHOSEN))]
    missing = draw(st.sampled_from(["", "", "", *MISSING_REASONS]))
    value = None
    if not missing:
        is_grade = measure.unit == "grade"
        value = float(draw(st.integers(0, 4))) if is_grade else draw(number(*measure.hard))
    return Reading(
        id=id_,
        date=draw(DAYS),
        measure=measure.id,
        side=draw(SIDES) if measure.per_limb else None,
        value=value,
        unit=measure.unit,
        trial=trial,
        status=draw(st.sampled_from(STATUSES)),
        missing=missing,  # type: ignore[arg-type]
        tester=draw(SHORT),
        device=draw(SHORT),
        condition=draw(conditions()),
        note=draw(TEXT),
        extra=draw(st.dictionaries(st.sampled_from(["mood", "Wetter, heute", "raum\n2"]), TEXT.filter(bool))),
    )


@st.composite
def conditions(draw: st.DrawFn) -> Condition:
    return Condition(
        position=draw(SHORT),
        motion=draw(st.sampled_from(["", "active", "passive"])),
        timing=draw(st.sampled_from(["", "before", "after"])),
        mode=draw(st.sampled_from(["", "isometric", "concentric", "eccentric"])),
        angle_deg=draw(st.none() | number(-10, 120)),
        speed_deg_per_s=draw(st.none() | number(0, 300)),
        lever_arm_m=draw(st.none() | st.floats(0.05, 0.6)),
        administration=draw(SHORT),
    )


@st.composite
def visits(draw: st.DrawFn, id_: str) -> Visit:
    answers = st.dictionaries(st.sampled_from(list(QUESTIONS)), st.sampled_from(["yes", "no"]))
    return Visit(
        id=id_,
        date=draw(DAYS),
        clinician=draw(SHORT),
        pain=draw(st.dictionaries(st.sampled_from(["rest", "activity", "next morning"]), number(0, 10))),
        answers=draw(answers),
        soreness=draw(st.sampled_from(["", *SORENESS])),
        aids=draw(SHORT),
        activity=draw(SHORT),
        dose=draw(SHORT),
        action=draw(st.sampled_from(["", *ACTIONS])),
        agreement=draw(st.sampled_from(["", "agrees", "overrides"])),
        reason=draw(TEXT),
        decided_by=draw(SHORT),
        note=draw(TEXT),
    )


@st.composite
def limits(draw: st.DrawFn) -> Limit:
    kind = draw(st.sampled_from(list(LIMIT_KINDS)))
    unit = LIMIT_KINDS[kind]
    value = draw(number(0, 100)) if unit else None
    start = draw(DAYS)
    return Limit(
        kind=kind,
        start=start,
        value=value,
        unit=unit,
        until=draw(st.none() | st.dates(start, dt.date(2028, 1, 1))),
        ordered_by=draw(SHORT),
        note=draw(SHORT),
    )


@st.composite
def cases(draw: st.DrawFn) -> Case:
    names = iter(draw(IDS))
    count = draw(st.integers(0, 6))
    lengths = st.dictionaries(SIDES, number(60, 115))
    return Case(
        athlete=Athlete(
            pseudonym=draw(SHORT.filter(bool)),
            year_of_birth=draw(st.none() | st.integers(1990, 2012)),
            sex=draw(st.sampled_from(["", "female", "male", "other"])),
            mass_kg=draw(st.none() | number(40, 120)),
            height_cm=draw(st.none() | number(140, 210)),
            limb_length_cm=draw(lengths),
            dominant_side=draw(st.none() | SIDES),
            sport=draw(SHORT),
            skeletally_mature=draw(st.none() | st.booleans()),
        ),
        surgery=Surgery(
            date=SURGERY_DAY,
            side=draw(SIDES),
            graft=draw(st.sampled_from(["", *GRAFTS])),
            harvest_side=draw(st.none() | SIDES),
            revision=draw(st.none() | st.booleans()),
            earlier=draw(st.dictionaries(SIDES, EARLIER)),
        ),
        readings=by_date(draw(readings(next(names), n + 1)) for n in range(count)),
        visits=by_date(draw(visits(next(names))) for _ in range(draw(st.integers(0, 3)))),
        limits=tuple(draw(st.lists(limits(), max_size=2))),
        events=tuple(draw(st.lists(EVENTS, max_size=2))),
    )


def by_date(rows: Any) -> tuple[Any, ...]:
    return tuple(sorted(rows, key=lambda row: row.date))


def content(case: Case) -> dict[str, Any]:
    """Everything a case says, without where and how it is written."""
    values = {field.name: getattr(case, field.name) for field in fields(case)}
    for name in ("path", "fingerprint", "texts", "warnings", "format_version"):
        del values[name]
    values["readings"] = {
        r.id: replace(r, row=None, text="", raw_value="", raw_unit="") for r in case.readings
    }
    values["visits"] = {v.id: replace(v, row=None) for v in case.visits}
    return values


@settings(derandomize=True, max_examples=100, deadline=None)
@given(cases())
def test_a_case_reads_back_as_it_was_saved(case):
    """Every value, note and word, whatever characters it has; numbers to the last bit."""
    with tempfile.TemporaryDirectory() as place:
        saved = case.save(Path(place) / "case")
        assert content(saved) == content(case)
        assert content(read_case(Path(place) / "case")) == content(case)
        assert [r.date for r in saved.readings] == [r.date for r in case.readings]


@settings(derandomize=True, max_examples=50, deadline=None)
@given(cases(), cases(), st.data())
def test_a_case_that_became_another_reads_back_as_that_and_undo_gives_the_first(first, second, data):
    """Any change over any case: rows kept, changed, added and taken away, all back with one undo."""
    kept = {r.id: r for r in first.readings if data.draw(st.booleans())}
    changed = {r.id: replace(r, note="changed", extra={}) for r in kept.values() if data.draw(st.booleans())}
    taken = {r.id for r in (*first.readings, *first.visits)}
    added = {r.id: r for r in second.readings if r.id not in taken}
    added = {id_: replace(r, trial=50 + n) for n, (id_, r) in enumerate(added.items())}
    wanted = {
        "athlete": second.athlete,
        "surgery": second.surgery,
        "readings": by_date(({**kept, **changed, **added}).values()),
        "visits": by_date(v for v in second.visits if v.id not in {r.id for r in first.readings}),
        "limits": (*first.limits[:1], *second.limits),
        "events": second.events,
    }
    with tempfile.TemporaryDirectory() as place:
        folder = Path(place) / "case"
        before = first.save(folder)
        bytes_before = files(folder)
        case = replace(before, **wanted)
        saved = case.save()
        assert content(saved) == content(case)
        if saved is case or saved.fingerprint == before.fingerprint:
            return
        assert content(undo(folder)) == content(first)
        assert files(folder) == bytes_before


def files(folder: Path) -> dict[str, bytes]:
    """The files of the case, without journal and lock."""
    return {p.name: p.read_bytes() for p in folder.iterdir() if p.suffix in (".toml", ".csv")}


CELLS = st.lists(st.lists(SHORT, min_size=3, max_size=3), min_size=1, max_size=5)


@settings(derandomize=True, max_examples=60, deadline=None)
@given(CELLS, st.sampled_from([",", ";", "\t"]), st.sampled_from(["\n", "\r\n"]), st.data())
def test_rows_that_do_not_change_stay_to_the_byte(rows, delimiter, end, data):
    """However its cells are quoted and its lines end, a row is left as it was typed when others go."""
    quoted = [['"' + cell.replace('"', '""') + '"' for cell in row] for row in rows]
    typed = [
        delimiter.join([f"id{n}", "2026-03-10", "knee_flexion", "left", str(60 + n), *row]) + end
        for n, row in enumerate(quoted)
    ]
    header = delimiter.join(["id", "date", "measure", "side", "value", "tester", "mood", "room"]) + end
    gone = data.draw(st.sets(st.integers(0, len(rows) - 1)))
    with tempfile.TemporaryDirectory() as place:
        folder = Path(place)
        toml = 'format = 1\n[athlete]\npseudonym = "Wren"\n[surgery]\ndate = 2026-03-02\nside = "left"\n'
        (folder / "case.toml").write_text(toml, encoding="utf-8")
        (folder / "measurements.csv").write_bytes((header + "".join(typed)).encode("utf-8"))
        read_case(folder).without_readings(*(f"id{n}" for n in gone)).save()
        left = "".join(line for n, line in enumerate(typed) if n not in gone)
        assert (folder / "measurements.csv").read_bytes().decode("utf-8") == header + left


def test_the_awkward_texts_are_all_tried():
    """Each of them as a note, a tester and a pseudonym of one case, side by side."""
    for text in AWKWARD:
        with tempfile.TemporaryDirectory() as folder:
            reading = Reading(
                id="r",
                date=SURGERY_DAY,
                measure="knee_flexion",
                side="left",
                value=40.0,
                unit="deg",
                tester=text.strip(),
                note=text,
            )
            case = Case(
                athlete=Athlete(pseudonym=text.strip() or "Wren"),
                surgery=Surgery(date=SURGERY_DAY, side="left"),
                readings=(reading,),
                visits=(Visit(id="v", date=SURGERY_DAY, note=text, reason=text),),
                events=(Event(date=SURGERY_DAY, kind="other", note=text.strip()),),
            )
            assert content(case.save(Path(folder) / "case")) == content(case)
