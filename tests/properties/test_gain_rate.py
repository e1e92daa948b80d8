"""What must hold of gain rates whatever the readings."""

from __future__ import annotations

import datetime as dt
import math

import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from kneecase.record import MEASURES, Athlete, Case, Condition, Reading, Surgery
from kneecase.recovery import GainRate, cohort_gain, gain_rate, motion_gain, real_change

SURGERY = dt.date(2026, 1, 5)
FLEXION_SEMS = [rule.published.number / (1.959964 * math.sqrt(2)) for rule in MEASURES["knee_flexion"].errors]
METHODS = (None, "robust", "least squares", "known error")

# Readings on different days; degrees in quarters, so that shifts and halvings are exact in binary.
degrees = st.integers(-40, 600).map(lambda q: q / 4)
series = st.lists(
    st.tuples(st.integers(0, 200), degrees), min_size=2, max_size=12, unique_by=lambda pair: pair[0]
).map(lambda pairs: ([day / 7 for day, _ in pairs], [value for _, value in pairs]))
sems = st.sampled_from([0.9, 1.8, 3.4, 6.35])
methods = st.sampled_from(METHODS)


def ends(rate: GainRate) -> list[float]:
    """Rate and ends, with not a number where there is none."""
    return [math.nan if x is None else x for x in (rate.deg_per_week, rate.low, rate.high)]


def close(found: list[float], expected: list[float]) -> bool:
    """Equal up to rounding, not-a-numbers in the same places."""
    return bool(np.allclose(found, expected, rtol=1e-9, atol=1e-9, equal_nan=True))


@given(series, sems, methods, st.integers(-60, 60))
def test_a_shift_of_the_angles_changes_no_rate(rows, sem, method, shift) -> None:  # type: ignore[no-untyped-def]
    """A goniometer that reads 10° high gives the same gain."""
    x, y = rows
    assert close(
        ends(gain_rate(x, [v + shift for v in y], error_sd=sem, method=method)),
        ends(gain_rate(x, y, error_sd=sem, method=method)),
    )


@given(series, sems, methods, st.sampled_from([0.5, 2.0, 4.0]))
def test_a_scale_of_the_angles_scales_the_rate(rows, sem, method, factor) -> None:  # type: ignore[no-untyped-def]
    """Angles and their error in another unit give the rate in that unit, and show the same."""
    x, y = rows
    plain = gain_rate(x, y, error_sd=sem, method=method)
    scaled = gain_rate(x, [v * factor for v in y], error_sd=sem * factor, method=method)

    assert close(ends(scaled), [v * factor for v in ends(plain)])


@given(series, sems, methods, st.integers(-100, 100))
def test_a_shift_of_time_changes_no_rate(rows, sem, method, days) -> None:  # type: ignore[no-untyped-def]
    """Weeks since surgery or since the first visit: the same gain."""
    x, y = rows
    assert close(
        ends(gain_rate([w + days / 7 for w in x], y, error_sd=sem, method=method)),
        ends(gain_rate(x, y, error_sd=sem, method=method)),
    )


@given(series, sems, methods)
def test_the_other_direction_is_the_mirror(rows, sem, method) -> None:  # type: ignore[no-untyped-def]
    """Turned angles give the negative rate; turned and read as a deficit, the same rate."""
    x, y = rows
    plain = gain_rate(x, y, error_sd=sem, method=method)
    turned = gain_rate(x, [-v for v in y], error_sd=sem, method=method)
    deficit = gain_rate(x, [-v for v in y], error_sd=sem, method=method, better="lower")

    rate, low, high = ends(plain)
    assert close(ends(turned), [-rate, -high, -low])
    assert ends(deficit) == pytest.approx(ends(plain), nan_ok=True)
    assert deficit.shown == plain.shown


@given(series, sems, methods, st.randoms(use_true_random=False))
def test_the_order_of_the_rows_does_not_matter(rows, sem, method, random) -> None:  # type: ignore[no-untyped-def]
    """Rows in any order give the same rate and the same words."""
    pairs = list(zip(*rows, strict=True))
    random.shuffle(pairs)
    x, y = zip(*pairs, strict=True)
    mixed, plain = gain_rate(x, y, error_sd=sem, method=method), gain_rate(*rows, error_sd=sem, method=method)

    assert close(ends(mixed), ends(plain))


@given(series)
def test_every_reading_twice_leaves_both_slopes(rows) -> None:  # type: ignore[no-untyped-def]
    """The same readings again on the same days move neither slope."""
    x, y = rows
    for method in ("robust", "least squares"):
        once = gain_rate(x, y, method=method).deg_per_week
        assert gain_rate(x + x, y + y, method=method).deg_per_week == pytest.approx(once, abs=1e-9)


@given(series, sems, methods)
def test_the_rate_lies_in_its_interval(rows, sem, method) -> None:  # type: ignore[no-untyped-def]
    """Low, rate and high are in order, and the word agrees with the ends."""
    rate = gain_rate(*rows, error_sd=sem, method=method)
    assume(rate.low is not None)

    assert rate.low <= rate.deg_per_week + 1e-9
    assert rate.deg_per_week <= rate.high + 1e-9
    assert (rate.shown == "gain") == (rate.low > 0)
    assert (rate.shown == "loss") == (rate.high < 0)
    if rate.includes_zero:
        assert "at most" in rate.words()


@given(series, sems)
def test_fewer_than_five_days_have_no_rank_interval(rows, sem) -> None:  # type: ignore[no-untyped-def]
    """The robust line has an interval from five days on and not before."""
    x, y = rows
    rate = gain_rate(x, y, error_sd=sem, method="robust")

    assert (rate.low is None) == (len(x) < 5)


@given(
    st.sampled_from(FLEXION_SEMS),
    st.lists(st.tuples(st.integers(1, 13), st.floats(85, 135)), max_size=6, unique_by=lambda pair: pair[0]),
)
def test_85_to_135_in_two_weeks_is_never_noise(sem, between) -> None:  # type: ignore[no-untyped-def]
    """Whichever way it rose between, no published error of flexion turns the gain into noise."""
    days = [0, *sorted(day for day, _ in between), 14]
    values = [85.0, *sorted(value for _, value in between), 135.0]
    rate = gain_rate([day / 7 for day in days], values, error_sd=sem)

    assert rate.shown in ("gain", "uneven gain")


@given(st.lists(st.tuples(st.integers(0, 9), st.integers(0, 60), st.integers(40, 150)), max_size=60))
def test_a_long_table_is_its_cases(rows) -> None:  # type: ignore[no-untyped-def]
    """Many cases at once give each case its own slope."""
    found = cohort_gain(
        [case for case, _, _ in rows], [day / 7 for _, day, _ in rows], [value for _, _, value in rows]
    )

    for place, case in enumerate(found.case_ids):
        own = [(day / 7, value) for name, day, value in rows if name == case]
        rate = gain_rate([x for x, _ in own], [y for _, y in own], method="least squares")
        assert close(
            [found.least_squares_deg_per_week[place]],
            [math.nan if rate.deg_per_week is None else rate.deg_per_week],
        )


@given(degrees, degrees, sems, st.sampled_from([0.8, 0.9, 0.95]))
def test_a_change_back_is_the_mirror(before, after, sem, level) -> None:  # type: ignore[no-untyped-def]
    """The way back is the negative change with the same verdict, and the chances make one."""
    there = real_change(before, after, sem=sem, level=level)
    back = real_change(after, before, sem=sem, level=level)

    assert there.change == -back.change
    assert there.is_real == back.is_real
    assert there.chance + back.chance == pytest.approx(1.0)


def flexion(day: int, value: float, trial: int = 1) -> Reading:
    """A passive reading of the operated knee so many days after surgery."""
    return Reading(
        id=f"r{day}-{trial}",
        date=SURGERY + dt.timedelta(days=day),
        measure="knee_flexion",
        side="left",
        value=value,
        unit="deg",
        trial=trial,
        tester="KM",
        device="goniometer",
        condition=Condition(motion="passive", timing="before", position="supine"),
    )


def case_of(rows: list[Reading]) -> Case:
    """An invented case with these readings."""
    return Case(
        athlete=Athlete(pseudonym="Plover (invented)"),
        surgery=Surgery(date=SURGERY, side="left"),
        readings=tuple(sorted(rows, key=lambda r: r.date)),
    )


days_of_case = st.lists(
    st.tuples(st.integers(1, 120), st.integers(40, 150)), min_size=1, max_size=8, unique_by=lambda p: p[0]
)


@given(days_of_case)
@settings(max_examples=40)
def test_an_equal_trial_of_the_same_day_changes_nothing(pairs) -> None:  # type: ignore[no-untyped-def]
    """A second trial that reads the same leaves the rate, the change and the verdict of the answer."""
    once = [flexion(day, value) for day, value in pairs]
    twice = [*once, *(flexion(day, value, trial=2) for day, value in pairs)]
    first, second = motion_gain(case_of(once)), motion_gain(case_of(twice))

    assert first.rate == second.rate
    assert first.since_last == second.since_last
    assert first.held == second.held


@given(days_of_case, st.integers(1, 40))
@settings(max_examples=40)
def test_a_worse_last_reading_is_never_a_better_answer(pairs, loss) -> None:  # type: ignore[no-untyped-def]
    """Taking degrees off the last reading lowers least squares and the change since the last visit."""
    pairs = sorted(pairs)
    assume(len(pairs) > 1)
    day, value = pairs[-1]
    before = motion_gain(case_of([flexion(*pair) for pair in pairs]))
    after = motion_gain(case_of([flexion(*pair) for pair in [*pairs[:-1], (day, value - loss)]]))

    assert after.least_squares.deg_per_week < before.least_squares.deg_per_week
    assert after.robust.deg_per_week <= before.robust.deg_per_week
    assert after.since_last.change < before.since_last.change


@pytest.mark.parametrize("n", [2, 3, 4, 5, 8, 14])
def test_intervals_hold_the_true_rate(n: int) -> None:
    """Over 2,000 simulated straight courses the 95 % interval of the leading line holds the true rate.

    The rank interval is discrete, so its share may exceed 95 %; the floor allows three standard errors of
    the simulation and, for ranks, the rounding of the normal approximation.
    """
    random = np.random.default_rng(1968 + n)
    hits = 0
    for _ in range(2000):
        weeks = np.sort(random.choice(90, n, replace=False)) / 7
        rate = gain_rate(weeks, 80 + 3 * weeks + random.normal(0, 2, n), error_sd=2.0)
        hits += rate.low <= 3 <= rate.high

    assert hits / 2000 >= 0.935
