"""The hop battery: symmetry of every test of the day, each with its error, and what it does not say."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass

from kneecase.answers import Answer, Finding, LeftOut
from kneecase.errors import InputError
from kneecase.evidence.hop_norms import HOPS_UNINJURED_PASS_ALL_MARKSTROM2022
from kneecase.measures.comparable import Statistic, is_scored, not_scored
from kneecase.measures.hop_administration import DEFAULT_ADMINISTRATION, hop_administration
from kneecase.measures.hop_combined import combined_symmetry
from kneecase.measures.hop_distance import HopDistance, hop_distances
from kneecase.measures.hop_tests import HopSettings, HopTest, hop_test
from kneecase.measures.index_error import ErrorFrom
from kneecase.measures.reference_limb import reference_limb
from kneecase.measures.reliability import normal_quantile
from kneecase.measures.symmetry_verdict import SymmetryThreshold, chosen_threshold
from kneecase.record import MEASURES, Case, Reading, banner_of

__all__ = ["HOP_TESTS", "HopSymmetry", "hop_symmetry"]

HOP_TESTS = tuple(measure.id for measure in MEASURES.values() if measure.group == "hop")
"""The hop tests of the catalogue, in the order they are shown."""

_BATTERY = ("single_hop", "triple_hop", "crossover_hop", "timed_hop_6m")


@dataclass(frozen=True, kw_only=True)
class HopSymmetry(Answer):
    """Every hop test that was given, one row a test, with all a chart needs.

    ``tests`` are the symmetry rows; ``distances`` the absolute distances by limb; ``combined`` the mean of
    the four classic tests; ``date`` is the latest day of the battery.
    """

    tests: tuple[HopTest, ...]
    distances: tuple[HopDistance, ...]
    combined: Finding
    date: dt.date | None


def hop_symmetry(
    case: Case,
    on: dt.date | None = None,
    *,
    administration: str = DEFAULT_ADMINISTRATION,
    statistic: Statistic | None = None,
    threshold_pct: float | None = None,
    operator: str | None = None,
    level: float = 0.90,
    error_from: ErrorFrom = "default",
) -> HopSymmetry:
    """Limb symmetry of the hop tests [%] from raw trials, each decided unrounded beside its error.

    Looked at before running, jumping and sport, together with strength, readiness, time and the absolute
    distances. A pass by itself permits nothing.

    Formula: ``100 * involved / uninvolved`` of each limb's score for distance, height and count, turned
    over for a time; score by the way the test was given.

    Parameters
    ----------
    case : Case
        The recorded case.
    on : datetime.date, optional
        The day looked at; default the last recorded date.
    administration : str
        Id of the way of giving the tests where the record does not say.
    statistic : {"mean", "best"}, optional
        Overrules how the score is made, to see what the other would have said.
    threshold_pct : float, optional
        Index to reach [%]; default that of Grindem 2020.
    operator : {"≥", ">"}, optional
        Whether the line itself passes; default ≥ as in Grindem 2020. Both stand in print.
    level : float
        Level of the error band [fraction].
    error_from : {"default", "index", "score"}
        Error published for the index, propagated from the score, or the better known of the two.

    Returns
    -------
    HopSymmetry
        One row a test, absolute distances, the mean of four, readings used and left out.

    Raises
    ------
    InputError
        If an argument is not one of its choices.

    Notes
    -----
    Each test stands for its latest day on which it was given, and both limbs must have been tested that
    day. A lost landing and practice are kept and counted, never scored.

    References
    ----------
    reid-2007, bolgla-1997, grindem-2020
    """
    _check_choices(statistic, error_from, level)
    day = on or case.last_date
    settings = HopSettings(
        administration=hop_administration(administration).id,
        statistic=statistic,
        threshold=chosen_threshold(threshold_pct, operator),
        level=level,
        error_from=error_from,
    )
    known = case.as_of(day)
    rows, left_out = _rows(known, day)
    tests = tuple(
        hop_test(known, name, given, reference=reference_limb(known, name, given[0].date), settings=settings)
        for name, given in rows.items()
    )
    return _answer(known, day, tests, left_out, settings)


def _check_choices(statistic: str | None, error_from: str, level: float) -> None:
    normal_quantile(level)  # refuses a level outside 0 to 1
    for name, value, choices in (
        ("statistic", statistic, (None, "mean", "best")),
        ("error_from", error_from, ("default", "index", "score")),
    ):
        if value not in choices:
            allowed = ", ".join(repr(choice) for choice in choices)
            raise InputError(f"{name} must be one of {allowed}, got {value!r}.")


def _rows(case: Case, day: dt.date) -> tuple[dict[str, tuple[Reading, ...]], tuple[LeftOut, ...]]:
    """All readings of each test on its latest day, and every other reading with the reason it is out."""
    rows: dict[str, tuple[Reading, ...]] = {}
    out: list[LeftOut] = []
    for name in HOP_TESTS:
        readings = case.readings_of(name)
        after = [r for r in readings if day < case.surgery.date or r.date >= case.surgery.date]
        latest = max((r.date for r in after if r.status != "practice"), default=None)
        if latest is not None:
            rows[name] = tuple(r for r in after if r.date == latest)
            out += not_scored(rows[name])
        out += [LeftOut(reading=r, reason=_why_out(case, r, latest)) for r in readings if r.date != latest]
    return rows, tuple(out)


def _why_out(case: Case, reading: Reading, latest: dt.date | None) -> str:
    if reading.date < case.surgery.date and (latest is None or latest >= case.surgery.date):
        return "before surgery: a reference for later, not part of today's symmetry"
    if latest is None:
        return "practice only: nothing was scored"
    return f"another day than the latest of this test ({latest.isoformat()}): days are not mixed"


def _answer(
    case: Case,
    day: dt.date,
    tests: tuple[HopTest, ...],
    left_out: tuple[LeftOut, ...],
    settings: HopSettings,
) -> HopSymmetry:
    distances = hop_distances(case, tests)
    combined = combined_symmetry(tests, settings.level)
    findings: tuple[Finding, ...] = (*tests, combined, *distances, _base_rate()) if tests else ()
    used = [
        r
        for test in tests
        if test.value is not None
        for r in (*test.involved.readings, *test.uninvolved.readings)
        if is_scored(r)
    ]
    no_index = [
        LeftOut(reading=r, reason=test.words)
        for test in tests
        if test.value is None
        for r in (*test.involved.readings, *test.uninvolved.readings)
        if is_scored(r)
    ]
    return HopSymmetry(
        heading="Hop tests: symmetry between limbs",
        banner=banner_of(case, day),
        summary=_summary(tests, settings.threshold),
        findings=findings,
        used=tuple(used),
        left_out=(*left_out, *no_index),
        cautions=_cautions(tests),
        tests=tests,
        distances=distances,
        combined=combined,
        date=max((test.date for test in tests), default=None),
    )


def _summary(tests: tuple[HopTest, ...], threshold: SymmetryThreshold) -> str:
    if not tests:
        return "No hop test is recorded."
    counts = {
        verdict: [t.label for t in tests if t.verdict == verdict]
        for verdict in ("met", "not met", "too close to call", "unknown")
    }
    parts = [f"{len(labels)} {verdict} ({', '.join(labels)})" for verdict, labels in counts.items() if labels]
    plural = "test" if len(tests) == 1 else "tests"
    return f"{len(tests)} hop {plural} held against {threshold.words()}: {'; '.join(parts)}."


def _base_rate() -> Finding:
    value = HOPS_UNINJURED_PASS_ALL_MARKSTROM2022
    return Finding(
        label="For comparison: uninjured athletes who were symmetric in every test of a battery",
        value=value.number,
        unit=value.unit,
        digits=0,
        words="failing one of several tests is common in people who were never injured",
        formula="as published",
        evidence=(value,),
    )


def _cautions(tests: tuple[HopTest, ...]) -> tuple[str, ...]:
    if not tests:
        return ("Nothing is known about hopping; nothing recorded never passes.",)
    found: list[str] = []
    given = {test.measure for test in tests}
    absent = [MEASURES[name].label for name in _BATTERY if name not in given]
    if absent:
        found.append(f"Not recorded: {', '.join(absent)}. What was not tested is unknown.")
    days = sorted({test.date for test in tests})
    if len(days) > 1:
        listed = ", ".join(d.isoformat() for d in days)
        found.append(f"The tests are of different days ({listed}): each row has its own day.")
    found += _limb_cautions(tests)
    found += [
        "Distance hides the knee: hip, ankle and trunk make up for it, and the quadriceps usually lags. "
        "Strength, quality of landing, readiness, time since surgery and training done are needed too.",
        "A symmetry of two limbs says nothing about how good either is: both may have lost.",
        "Meeting every line is not permission to return: it says what was measured. The surgeon's orders, "
        "the local protocol and the treating team decide.",
    ]
    return tuple(found)


def _limb_cautions(tests: tuple[HopTest, ...]) -> list[str]:
    """Once for each set of reasons against the other limb: the reasons, and the tests they hold for."""
    doubted: dict[str, list[str]] = {}
    for test in tests:
        if not test.reference.trustworthy:
            doubted.setdefault(test.reference.words(), []).append(test.label)
    return [
        f"{words[:1].upper()}{words[1:]}. Shown, but meets no criterion: {', '.join(labels)}."
        + (" The other tests rest on the same limb." if len(labels) < len(tests) else "")
        for words, labels in doubted.items()
    ]
