"""What must hold for any entry: round trips of notation, units and dates, and refusals only in sentences."""

from __future__ import annotations

import datetime as dt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from kneecase.errors import CaseError, InputError, Problem
from kneecase.record import MEASURES, Case, case_from_texts, neutral_zero
from kneecase.record.columns import MEASUREMENT_COLUMNS, VISIT_COLUMNS
from kneecase.record.dates import calendar_date
from kneecase.record.numbers import number, quantity
from kneecase.units import SUFFIXES, converted, typed_units

TOML = '[athlete]\npseudonym = "W"\n[surgery]\ndate = 2026-03-02\nside = "left"\n'
tenths = st.integers(1, 300).map(lambda n: n / 10)
separators = st.sampled_from(["-", " - ", "–", "/", "°-", " / ", " "])


@given(tenths, st.integers(31, 170), separators, st.booleans())
def test_hyperextension_survives_the_notation(
    hyper: float, flexion: int, gap: str, flexion_first: bool
) -> None:
    """Written either way round, with any separator."""
    parts = [f"{hyper:g}", "0", str(flexion)]
    assert neutral_zero(gap.join(reversed(parts) if flexion_first else parts)) == (-hyper, flexion)


@given(st.integers(1, 120), st.integers(0, 50), separators, st.booleans())
def test_lacking_extension_survives_the_notation(lack: int, arc: int, gap: str, flexion_first: bool) -> None:
    """Zero, lack, flexion; or the other way round."""
    parts = ["0", str(lack), str(lack + arc)]
    assert neutral_zero(gap.join(reversed(parts) if flexion_first else parts)) == (lack, lack + arc)


@given(st.lists(st.integers(0, 200), min_size=2, max_size=3), separators)
def test_an_entry_is_possible_motion_or_refused(numbers: list[int], gap: str) -> None:
    """Whatever three numbers come, extension never exceeds flexion, and reversed they mean the same."""

    def outcome(parts: list[int]) -> tuple[float, float] | None:
        try:
            return neutral_zero(gap.join(map(str, parts)))
        except InputError:
            return None

    found = outcome(numbers)
    assert found == outcome(numbers[::-1])
    if found is not None:
        assert -30 <= found[0] <= found[1] <= 170


units = st.sampled_from(
    [(unit, typed) for unit in SUFFIXES for typed in typed_units(unit) if unit != "grade"]
)


@given(units, st.floats(0.001, 5000))
def test_a_unit_beside_the_number_is_converted_once(unit: tuple[str, str], value: float) -> None:
    """As units.converted does it, and back again."""
    name, typed = unit
    found = quantity(repr(value) if "e" not in repr(value) else f"{value:.6f}", typed, name)
    assert found.value == converted(float(found.raw_value), typed, name)
    if name != "celsius":
        per_unit = converted(1, typed, name)
        assert found.value / per_unit == pytest.approx(float(found.raw_value), rel=1e-12)


@given(st.decimals(-9999, 9999, places=2))
def test_a_decimal_comma_is_a_decimal_point(value: object) -> None:
    """With two decimals there is only one way to read it."""
    text = str(value)
    assert number(text) == number(text.replace(".", ",")) == number(text.replace("-", "−")) == float(text)


@given(st.dates(dt.date(1900, 1, 1), dt.date(2199, 12, 31)))
def test_dates_survive_every_order(date: dt.date) -> None:
    """Written and read by the same order."""
    assert calendar_date(date.isoformat()) == date
    assert calendar_date(f"{date.day}.{date.month}.{date.year:04}", "day first") == date
    assert calendar_date(f"{date.month:02}/{date.day:02}/{date.year:04}", "month first") == date
    assert calendar_date(date.strftime("%d %B %Y")) == date


def outcome(texts: dict[str, str | bytes]) -> tuple[Case | None, tuple[Problem, ...]]:
    """The case and its warnings, or no case and the problems of the refusal."""
    try:
        case = case_from_texts({"case.toml": TOML, **texts}, path=None, fingerprint={})
    except CaseError as refusal:
        return None, refusal.problems
    return case, case.warnings


cells = st.text(st.characters(codec="utf-8", exclude_characters="\0"), max_size=12) | st.sampled_from(
    [
        "2026-03-16",
        "03/04/2026",
        "left",
        "L",
        "85",
        "34,5 in",
        "5-0-140",
        "knee_motion",
        "1+",
        "declined",
        "nan",
        '"',
        "=",
    ]
)


@given(
    st.lists(st.sampled_from([*MEASUREMENT_COLUMNS, *VISIT_COLUMNS, "", "x"]), max_size=9),
    st.lists(st.lists(cells, max_size=9), max_size=4),
    st.sampled_from([",", ";", "\t"]),
)
def test_any_table_is_read_or_refused_in_sentences(
    header: list[str], rows: list[list[str]], gap: str
) -> None:
    """Never anything but a case or a refusal whose every sentence names its file."""
    text = "\n".join(gap.join(row) for row in [header, *rows])
    case, problems = outcome({"measurements.csv": text, "visits.csv": text})
    assert (case is None) == any(problem.severity == "error" for problem in problems)
    assert all(problem.sentence().startswith(problem.file) and problem.mend for problem in problems)
    for reading in case.readings if case else ():
        low, high = MEASURES[reading.measure].hard
        assert (reading.value is None) == bool(reading.missing)
        assert reading.value is None or reading.item is not None or low <= reading.value <= high


@given(st.binary(max_size=200))
def test_any_bytes_are_read_or_refused(content: bytes) -> None:
    """In every file of the case."""
    for name in ("case.toml", "measurements.csv", "visits.csv", "measurements.xlsx"):
        case, problems = outcome({name: content})
        assert (case is None) == any(problem.severity == "error" for problem in problems)


@given(st.text(st.characters(exclude_categories=["Cs"], exclude_characters='\0"\r'), max_size=60))
def test_a_note_is_kept_letter_by_letter(note: str) -> None:
    """Whatever is in it: markup, formulas, line ends, signs."""
    quoted = f'date,measure,side,value,note\n2026-03-16,knee_flexion,left,85,"{note}"\n'
    case = case_from_texts({"case.toml": TOML, "measurements.csv": quoted}, path=None, fingerprint={})
    assert case.readings[0].note == note
