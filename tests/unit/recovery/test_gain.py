"""Gain rate of one series: which interval, and the words for it."""

from __future__ import annotations

import math

import numpy as np
import pytest

from kneecase.errors import InputError
from kneecase.record import MEASURES
from kneecase.recovery import gain_rate, known_error_line, least_squares_line

FLEXION_SEMS = [rule.published.number / (1.959964 * math.sqrt(2)) for rule in MEASURES["knee_flexion"].errors]


def test_robust_from_five_days_on() -> None:
    """Five days lead with the robust line; four do not."""
    assert gain_rate([1, 2, 3, 4, 6], [88, 102, 110, 118, 126]).method == "robust"
    assert gain_rate([1, 2, 3, 4], [88, 102, 110, 118], error_sd=1.8).method == "known error"
    assert gain_rate([1, 2, 3, 4], [88, 102, 110, 118]).method == "least squares"


def test_five_readings_on_four_days_are_four() -> None:
    """Days count, not readings: two trials of a day do not make the rank interval fair."""
    rate = gain_rate([1, 2, 3, 4, 4], [88, 102, 110, 118, 119], method="robust")

    assert rate.deg_per_week is not None
    assert (rate.low, rate.high) == (None, None)
    assert rate.words().endswith("no interval: the robust line has none below five days of readings")


def test_no_rank_interval_below_five() -> None:
    """Asked for the robust line of three days, there is a slope and no interval."""
    rate = gain_rate([1, 2, 3], [88, 102, 110], error_sd=1.8, method="robust")

    assert rate.deg_per_week == 11.0
    assert rate.low is None
    assert rate.shown == "cannot tell"
    assert rate.includes_zero


def test_two_readings_take_the_known_error() -> None:
    """85° to 135° in two weeks: 25° a week, with an interval from the error alone."""
    rate = gain_rate([0, 2], [85, 135], error_sd=1.8)
    line = known_error_line([0, 2], [85, 135], error_sd=1.8)

    assert (rate.deg_per_week, rate.low, rate.high) == (25.0, float(line.low), float(line.high))
    assert rate.shown == "gain"
    assert rate.words().startswith("gains 25° a week: ")


def test_two_readings_without_an_error_have_no_interval() -> None:
    """The rate is given, the interval is not, and the words say why."""
    rate = gain_rate([0, 2], [85, 135])

    assert rate.deg_per_week == 25.0
    assert rate.words() == "25° a week, no interval: two readings and no known measurement error"


def test_three_readings_take_the_larger_of_error_and_scatter() -> None:
    """Scatter beyond the known error widens the interval; scatter below it does not narrow it."""
    wild = gain_rate([0, 1, 2], [100, 120, 104], error_sd=1.8)
    scatter = float(least_squares_line([0, 1, 2], [100, 120, 104]).scatter_deg)
    calm = gain_rate([0, 1, 2], [100, 102, 104], error_sd=1.8)

    assert scatter > 1.8
    assert wild.high - wild.deg_per_week == pytest.approx(1.959964 * scatter / math.sqrt(2), abs=1e-5)
    assert calm.high - calm.deg_per_week == pytest.approx(1.959964 * 1.8 / math.sqrt(2), abs=1e-5)


def test_a_stuck_knee_in_words() -> None:
    """An interval that includes zero says so, and says the most that may be gained."""
    rate = gain_rate([0, 2], [98, 99], error_sd=1.8)

    assert rate.shown == "no gain"
    assert rate.words() == "−2° to 3° a week: no gain shown, at most 3° a week"


def test_the_smallest_ends_do_not_vanish() -> None:
    """An end that rounds to nothing is shown with another digit, so 'at most 0' is never said of a gain."""
    rate = gain_rate([0, 200], [98, 99], error_sd=1.8)

    assert rate.high > 0
    assert "at most 0.03° a week" in rate.words()


def test_a_loss_in_words() -> None:
    """A falling knee loses."""
    rate = gain_rate([1, 2, 3, 4, 5], [110, 107, 103, 100, 96])

    assert rate.shown == "loss"
    assert rate.words().startswith("loses 3.5° a week: −4° to −3°")


def test_a_jump_is_an_uneven_gain() -> None:
    """85, 133, 135 in two weeks does not lie on a line, yet is a gain and not noise."""
    rate = gain_rate([0, 1, 2], [85, 133, 135], error_sd=1.8)

    assert rate.includes_zero
    assert rate.shown == "uneven gain"
    assert "a gain, but not a steady one; at most" in rate.words()


def test_least_squares_may_speak_beside_the_robust_line() -> None:
    """One day that slips back takes the rank interval of five days across zero; the words show both."""
    rate = gain_rate([0, 0.5, 1, 1.5, 2], [85, 98, 110, 109, 135])

    assert rate.low < 0
    assert rate.second_method == "least squares"
    assert "(least squares: " in rate.words()
    assert rate.shown == "uneven gain"


def test_an_uneven_loss() -> None:
    """The mirror of an uneven gain says that no gain is shown."""
    rate = gain_rate([0, 1, 2], [135, 133, 85], error_sd=1.8)

    assert rate.shown == "uneven loss"
    assert "no gain shown: a loss, but not a steady one" in rate.words()


def test_readings_that_turn_back_show_no_steady_gain() -> None:
    """Up and down by more than the error explains is no gain, and the words say that it moves too much."""
    rate = gain_rate([0, 1, 2, 3], [90, 112, 92, 113], error_sd=1.8)

    assert rate.shown == "no gain"
    assert "no steady gain shown, at most" in rate.words()
    assert rate.words().endswith("though the readings move more than measurement error explains")


def test_few_readings_of_unknown_error_cannot_tell() -> None:
    """Three scattered readings with no known error call nothing noise."""
    rate = gain_rate([0, 1, 2], [85, 100, 135])

    assert rate.shown == "cannot tell"
    assert rate.words().endswith("cannot tell, three readings and no known measurement error")


@pytest.mark.parametrize("sem", FLEXION_SEMS)
@pytest.mark.parametrize(
    "between",
    [
        {},
        {1.0: 110.0},
        {0.5: 85.0, 1.0: 86.0, 1.5: 85.0},
        {1.9: 85.0, 1.92: 85.0, 1.94: 86.0, 1.96: 85.0, 1.98: 86.0},
        {0.2: 133.0, 1.0: 134.0},
        {1.0: 84.0},
    ],
)
def test_a_knee_from_85_to_135_in_two_weeks_is_never_called_noise(
    sem: float, between: dict[float, float]
) -> None:
    """Whatever lies between, and with every published error of flexion, the gain is shown as one."""
    days = {0.0: 85.0, **between, 2.0: 135.0}
    rate = gain_rate(list(days), list(days.values()), error_sd=sem)

    assert rate.shown in ("gain", "uneven gain")


def test_rounded_readings_take_the_width_of_the_known_error() -> None:
    """Six equal readings leave no rank interval; the known error gives its width, and says so."""
    weeks = np.arange(6.0)
    rate = gain_rate(weeks, np.full(6, 95.0), error_sd=1.8)
    line = known_error_line(weeks, np.full(6, 95.0), error_sd=1.8)

    assert rate.high - rate.low == pytest.approx(float(line.high) - float(line.low))
    assert rate.shown == "no gain"
    assert "known error" in rate.why


def test_rounded_readings_without_an_error_have_no_interval() -> None:
    """A flat row of equal readings is not certainty."""
    rate = gain_rate(range(6), [95] * 6)

    assert rate.low is None
    assert "no measurement error is known" in rate.words()


@pytest.mark.parametrize(
    ("weeks", "degrees", "why"),
    [([], [], "no reading"), ([3], [90], "one day only"), ([3, 3], [90, 95], "all readings are of one day")],
)
def test_no_rate(weeks: list[float], degrees: list[float], why: str) -> None:
    """Nothing, one reading, or one day has no rate and says why."""
    rate = gain_rate(weeks, degrees, error_sd=1.8)

    assert rate.deg_per_week is None
    assert rate.shown == "no rate"
    assert rate.words() == f"no rate: {why}"
    assert rate.includes_zero


def test_extension_gains_by_falling() -> None:
    """With better='lower' the same numbers turned over give the same rate; the start stays an angle."""
    weeks, lacks = [1, 2, 3, 4, 6], [12, 10, 9, 7, 4]
    rate = gain_rate(weeks, lacks, better="lower")
    turned = gain_rate(weeks, [-x for x in lacks])

    assert rate.deg_per_week == turned.deg_per_week > 0
    assert (rate.low, rate.high) == (turned.low, turned.high)
    assert rate.start_deg == -turned.start_deg > 0


@pytest.mark.parametrize(
    ("given", "named"),
    [
        ({"method": "known error"}, "error_sd must be given"),
        ({"method": "eye"}, "method must be"),
        ({"better": "more"}, "better must be"),
        ({"error_sd": 0.0}, "error_sd must be above 0"),
        ({"level": 95}, "level"),
    ],
)
def test_refusals(given: dict[str, object], named: str) -> None:
    """What cannot be is named."""
    with pytest.raises(InputError, match=named):
        gain_rate([1, 2, 3], [80, 85, 90], **given)  # type: ignore[arg-type]


def test_shapes_are_refused() -> None:
    """One series only, and one entry a reading."""
    with pytest.raises(InputError, match="one entry a reading"):
        gain_rate([1, 2], [80])
    with pytest.raises(InputError, match="one case"):
        gain_rate([[1, 2]], [[80, 90]])
