"""Calibration of the recovery curve on simulated cohorts; writes the table beside this file.

Run ``python tests/calibration/recovery_curve.py`` to make the table anew. Knees drawn from the prior must be
covered as stated; the cohorts that break the model are reported, and nothing is required of them. None of
this says anything about real knees: it tests the arithmetic, not the prior.
"""

from __future__ import annotations

import csv
from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from pathlib import Path

import numpy as np

from kneecase.recovery import Course, RecoveryFit, course_change, fit_recovery, recovery_prior

TABLE = Path(__file__).with_suffix(".csv")
COLUMNS = ("cohort", "readings", "quantity", "stated", "found", "cases")
SEM, OTHER_KNEE, TARGET = 1.8, 140.0, 130.0
COURSES = recovery_prior("knee_flexion", other_side=OTHER_KNEE, graft="patellar tendon").courses
LATER, BY = 16.0, 10.0
CASES, FEW_CASES, CHANGE_CASES = 4000, 2000, 300
Row = tuple[str, int, str, str, str, int]
Array = np.ndarray


@dataclass(frozen=True)
class Knees:
    """Simulated knees: plateau, start and error of a reading [deg], rate [1/week], and which are stiff."""

    plateau: Array
    start: Array
    rate: Array
    error: Array
    stiff: Array

    def at(self, weeks: Array | float) -> Array:
        """The true curve in these weeks [deg]."""
        left = np.exp(-self.rate[:, None] * np.asarray(weeks, dtype=float))
        return self.plateau[:, None] - (self.plateau - self.start)[:, None] * left


def drawn(random: np.random.Generator, cases: int, courses: tuple[Course, ...] = COURSES) -> Knees:
    """Knees drawn from the prior, day-to-day variation included."""
    place = random.choice(len(courses), cases, p=[float(c.chance) for c in courses])

    def field(name: str) -> Array:
        return np.array([float(getattr(c, name)) for c in courses])[place]

    half_time = field("half_time_weeks") * np.exp(random.normal(0, field("half_time_log_sd")))
    more = np.abs(random.normal(0, 1, cases))
    return Knees(
        plateau=random.normal(field("plateau"), field("plateau_sd")),
        start=random.normal(field("start"), field("start_sd")),
        rate=np.log(2) / half_time,
        error=SEM * np.sqrt(1 + more**2),
        stiff=np.array([c.name == "stiff" for c in courses])[place],
    )


def read(random: np.random.Generator, curve: Callable[[Array], Array], knees: Knees, count: int) -> tuple:
    """Weeks and readings: ``count`` days between half a week and twelve weeks after surgery."""
    weeks = np.sort(random.uniform(0.5, 12, (knees.plateau.size, count)), axis=1)
    return weeks, curve(weeks) + random.normal(0, 1, weeks.shape) * knees.error[:, None]


def covered(fit: RecoveryFit, truth: Array, week: float, level: float, *, reading: bool = False) -> float:
    """Share of true values inside the interval [pct]."""
    band = fit.at([week], level=level, reading=reading)
    return float(100 * ((band.low[:, 0] <= truth) & (truth <= band.high[:, 0])).mean())


def reliability(chance: Array, happened: Array) -> Iterator[tuple[str, float, float, int]]:
    """Mean chance stated and share that happened, by tenth of the chance [pct]."""
    for tenth in range(10):
        inside = (chance >= tenth / 10) & (chance < (tenth + 1) / 10 + (tenth == 9))
        if inside.sum() >= 100:
            name = f"{10 * tenth} to {10 * tenth + 10} %"
            yield name, 100 * chance[inside].mean(), 100 * happened[inside].mean(), int(inside.sum())


def prior_rows(count: int, cases: int = CASES, seed: int = 41) -> list[Row]:
    """Coverage and reliability for knees drawn from the prior."""
    random = np.random.default_rng([seed, count])
    knees = drawn(random, cases)
    weeks, values = read(random, knees.at, knees, count)
    fit = fit_recovery(weeks, values, sem=SEM, courses=COURSES)
    truth = knees.at([LATER])[:, 0]
    next_reading = truth + random.normal(0, 1, cases) * knees.error
    rows: list[Row] = []
    for level in (0.5, 0.8, 0.95):
        rows.append(
            _row("prior", count, "curve at week 16", 100 * level, covered(fit, truth, LATER, level), cases)
        )
        inside = covered(fit, next_reading, LATER, level, reading=True)
        rows.append(_row("prior", count, "reading at week 16", 100 * level, inside, cases))
    for what, chance, happened in (
        ("130° by week 10", fit.chance_by(TARGET, BY), knees.at([BY])[:, 0] >= TARGET),
        ("130° never", fit.chance_never(TARGET), knees.plateau < TARGET),
        ("stiff course", fit.chance_stiff, knees.stiff),
    ):
        for name, stated, found, size in reliability(np.asarray(chance), happened):
            rows.append(_row("prior", count, f"chance of {what}, {name}", stated, found, size))
    return rows


# -- cohorts that break the model: reported, nothing required -----------------------------


def setback(knees: Knees) -> Callable[[Array], Array]:
    """At week 5 the knee loses 15° and comes back from there at its own rate."""

    def curve(weeks: Array) -> Array:
        level = knees.at([5.0]) - 15
        later = knees.plateau[:, None] - (knees.plateau[:, None] - level) * np.exp(
            -knees.rate[:, None] * (np.asarray(weeks) - 5)
        )
        return np.where(np.asarray(weeks) > 5, later, knees.at(weeks))

    return curve


def two_phases(knees: Knees) -> Callable[[Array], Array]:
    """From week 3 on the knee comes back at a third of its rate."""

    def curve(weeks: Array) -> Array:
        own = np.minimum(weeks, 3) + np.maximum(np.asarray(weeks) - 3, 0) / 3
        return knees.at(own)

    return curve


def manipulated(knees: Knees) -> Callable[[Array], Array]:
    """A stiff knee that gains 26° at week 8 by manipulation, mean of a knee replacement cohort."""

    def curve(weeks: Array) -> Array:
        return knees.at(weeks) + np.where(np.asarray(weeks) > 8, 26, 0)

    return curve


def misfit_rows() -> Iterator[Row]:
    """What the forecasts are worth where the model is wrong."""
    random = np.random.default_rng(43)
    ordinary = (replace(COURSES[0], chance=1.0),)
    stiff = (replace(COURSES[1], chance=1.0),)
    for name, courses, bend in (
        ("setback of 15° at week 5", ordinary, setback),
        ("two phases, slower from week 3", ordinary, two_phases),
        ("manipulation at week 8, not entered", stiff, manipulated),
        ("no misfit, for comparison", COURSES, lambda knees: knees.at),
    ):
        knees = drawn(random, FEW_CASES, courses)
        curve = bend(knees)
        weeks, values = read(random, curve, knees, 8)
        yield from _misfit(name, weeks, values, curve(np.array([LATER]))[:, 0], COURSES)
        yield _row(
            name, 8, "called a change of course, odds ≥ 10", None, _called(weeks, values), CHANGE_CASES
        )
    knees = drawn(random, FEW_CASES)
    weeks, values = read(random, knees.at, knees, 8)
    tester = random.integers(0, 2, weeks.shape)
    truth = knees.at([LATER])[:, 0]
    yield from _misfit(
        "second tester reads 10° more, not entered", weeks, values + 10 * tester, truth, COURSES
    )
    fit = fit_recovery(weeks, values + 10 * tester, sem=SEM, courses=COURSES, testers=tester, tester_sd=6.0)
    yield from _found("second tester reads 10° more, testers entered", fit, truth)
    wrong = recovery_prior("knee_flexion", other_side=OTHER_KNEE + 15, graft="patellar tendon").courses
    yield from _misfit("other knee entered 15° too high", weeks, values, truth, wrong)


def _misfit(
    name: str, weeks: Array, values: Array, truth: Array, courses: tuple[Course, ...]
) -> Iterator[Row]:
    yield from _found(name, fit_recovery(weeks, values, sem=SEM, courses=courses), truth)


def _found(name: str, fit: RecoveryFit, truth: Array) -> Iterator[Row]:
    yield _row(name, 8, "curve at week 16", 80, covered(fit, truth, LATER, 0.8), truth.size)
    error = np.abs(fit.at([LATER]).middle[:, 0] - truth)
    yield _row(
        name, 8, "median error of the curve at week 16, deg", None, float(np.median(error)), truth.size
    )


def _called(weeks: Array, values: Array) -> float:
    odds = [
        change.odds
        for x, y in zip(weeks[:CHANGE_CASES], values[:CHANGE_CASES], strict=True)
        if (change := course_change(x, y, sem=SEM, courses=COURSES)) is not None
    ]
    return float(100 * (np.array(odds) >= 10).mean())


def stiff_rows() -> Iterator[Row]:
    """The stiff course called from four readings beside a fixed rule at week 6."""
    random = np.random.default_rng(47)
    knees = drawn(random, 2 * CASES)
    weeks = np.broadcast_to(np.array([1.0, 2.0, 4.0, 6.0]), (knees.plateau.size, 4))
    values = knees.at(weeks) + random.normal(0, 1, weeks.shape) * knees.error[:, None]
    chance = np.asarray(fit_recovery(weeks, values, sem=SEM, courses=COURSES).chance_stiff)
    share = (values[:, -1] < 90).mean()
    for name, called, score in (
        ("flexion below 90° at week 6", values[:, -1] < 90, -values[:, -1]),
        ("chance of the stiff course above one half", chance > 0.5, chance),
        (
            "chance of the stiff course, as many called as by the rule",
            chance >= np.quantile(chance, 1 - share),
            chance,
        ),
    ):
        yield _row(
            name, 4, "stiff knees called", None, 100 * called[knees.stiff].mean(), int(knees.stiff.sum())
        )
        other = ~knees.stiff
        yield _row(name, 4, "other knees not called", None, 100 * (~called[other]).mean(), int(other.sum()))
        area = _area(score[knees.stiff], score[other])
        yield _row(name, 4, "a stiff knee ranks above another", None, 100 * area, knees.plateau.size)


def _area(stiff: Array, other: Array) -> float:
    """Chance that a stiff knee scores above another."""
    ordered = np.sort(other)
    below = np.searchsorted(ordered, stiff, side="left") + np.searchsorted(ordered, stiff, side="right")
    return float((below / 2 / ordered.size).mean())


def _row(cohort: str, readings: int, what: str, stated: float | None, found: float, cases: int) -> Row:
    return cohort, readings, what, "" if stated is None else f"{stated:.1f}", f"{found:.1f}", cases


def rows() -> list[Row]:
    """The whole table."""
    return [*(row for count in (2, 4, 8) for row in prior_rows(count)), *misfit_rows(), *stiff_rows()]


def main() -> None:
    """Write the table."""
    with TABLE.open("w", newline="", encoding="utf-8") as file:
        writer = csv.writer(file, lineterminator="\n")
        writer.writerow(COLUMNS)
        writer.writerows(rows())
    print(TABLE.read_text("utf-8"))


if __name__ == "__main__":
    main()
