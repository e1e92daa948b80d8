"""Motion over the weeks: readings with their error, the other knee, the surgeon's limit, what is usual."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass
from typing import Any

from kneecase.charts.figure import Figure, figure_of
from kneecase.charts.motion_frame import HEIGHT_PX, WIDTH_PX, EndLabel, Frame, framed
from kneecase.charts.motion_marks import (
    event_layers,
    limit_layers,
    reading_layers,
    usual_layers,
    usual_values,
)
from kneecase.charts.motion_series import Series, motion_series, other_knee
from kneecase.charts.motion_trend import trend_layers, trend_words
from kneecase.charts.motion_words import motion_alt, motion_caption
from kneecase.charts.theme import INK
from kneecase.errors import InputError
from kneecase.record import Case, Limit, Reading, banner_of, measure_named
from kneecase.recovery import MotionGain, motion_gain
from kneecase.recovery.findings import angle_words

__all__ = ["MotionBoard", "motion_board", "motion_chart", "motion_spec"]

_AXES = {"knee_flexion": "Knee flexion [°]", "knee_extension": "Knee extension [°]"}
_READ_AS = {
    "knee_flexion": "more is better",
    "knee_extension": "0 is straight, above it lacks, below it hyperextends",
}


def motion_chart(
    case: Case,
    measure: str = "knee_flexion",
    on: dt.date | None = None,
    *,
    gain: MotionGain | None = None,
    trend: bool = True,
    usual: bool = True,
) -> Figure:
    """Every reading of a motion since surgery, by week, with its error and what it is held against.

    Looked at when the question is whether a knee still gains.

    Parameters
    ----------
    case : Case
        The case.
    measure : {"knee_flexion", "knee_extension"}
        Which motion [deg].
    on : datetime.date, optional
        As known on this day; the last recorded date by default.
    gain : MotionGain, optional
        The answer whose rate is drawn as a line with its band; by default
        :func:`kneecase.recovery.motion_gain` of this case, measure and day.
    trend : bool
        Draw the rate and say it under the picture; without it the readings stand alone, for a reader who
        is to judge them first.
    usual : bool
        Also show the common target and an observed median of flexion, each by itself. A knee outside the
        scope of kneecase is drawn without them and without a rate.

    Returns
    -------
    Figure
        Weeks since surgery [weeks] against the angle [deg].

    Raises
    ------
    InputError
        If the measure is not a motion, or the operated knee has no reading of it since surgery.
    """
    if measure not in _AXES:
        raise InputError(f"measure must be 'knee_flexion' or 'knee_extension', got {measure!r}.")
    day = on or case.last_date
    series = motion_series(case, measure, day)
    if not series:
        raise InputError(
            f"case must hold a reading of {measure_named(measure).label} of the operated knee since surgery, "
            f"got none up to {day.isoformat()}."
        )
    if trend and gain is None:
        gain = motion_gain(case, measure, on=day)
    gain = gain if trend else None
    usual = usual and measure == "knee_flexion" and not case.outside_scope
    board = motion_board(case, measure, day, series, gain, usual)
    told = (trend_words(gain) if gain else "", motion_caption(case, measure, day, series, usual=usual))
    return figure_of(
        motion_spec(board),
        alt=motion_alt(case, measure, series, board.other, board.limits),
        caption=" ".join(words for words in told if words),
    )


@dataclass(frozen=True, kw_only=True)
class MotionBoard:
    """Everything one motion chart shows."""

    case: Case
    measure: str
    day: dt.date
    series: tuple[Series, ...]
    other: Reading | None
    limits: tuple[Limit, ...]
    usual: bool
    gain: MotionGain | None
    frame: Frame


def motion_board(
    case: Case,
    measure: str,
    day: dt.date,
    series: tuple[Series, ...],
    gain: MotionGain | None,
    usual: bool,
) -> MotionBoard:
    """What a motion chart shows of a case, gathered; nothing is worked out."""
    kind = measure.removeprefix("knee_")
    limits = tuple(x for x in case.as_of(day).limits if x.kind == kind and x.value is not None)
    other = other_knee(case, measure, day, series[0])
    weeks = [case.weeks(r.date) for s in series for r in s.readings]
    degrees = [_at(r) + side * (s.half_bar or 0.0) for s in series for r in s.readings for side in (-1, 1)]
    degrees += [x.value for x in limits if x.value is not None] + ([_at(other)] if other else [])
    degrees += [0.0] if measure == "knee_extension" else []
    if usual:
        points = usual_values()
        weeks += [point.week for point in points]
        degrees += [point.deg for point in points]
    return MotionBoard(
        case=case,
        measure=measure,
        day=day,
        series=series,
        other=other,
        limits=limits,
        usual=usual,
        gain=gain,
        frame=framed([*weeks, case.weeks(day)], degrees, _AXES[measure]),
    )


def motion_spec(board: MotionBoard) -> dict[str, Any]:
    """The Vega-Lite specification of a motion chart."""
    frame, case = board.frame, board.case
    layers = event_layers(frame, case, board.day)
    layers += [_zero_line(frame)] if board.measure == "knee_extension" else []
    layers += trend_layers(frame, case, board.gain) if board.gain else []
    layers += _other_line(board)
    layers += reading_layers(frame, case, board.series)
    layers += limit_layers(frame, case, board.limits, board.day)
    layers += usual_layers(frame) if board.usual else []
    layers += frame.end_labels(_end_labels(board))
    banner = banner_of(case, board.day)
    return {
        "width": WIDTH_PX,
        "height": HEIGHT_PX,
        "title": {
            "text": f"{measure_named(board.measure).label.capitalize()}, {banner.side} (operated) knee",
            "subtitle": f"{banner.pseudonym}, {banner.date.isoformat()}; {_READ_AS[board.measure]}",
        },
        "layer": layers,
    }


def _other_line(board: MotionBoard) -> list[dict[str, Any]]:
    if board.other is None:
        return []
    return [
        {
            "data": {"values": [{"deg": _at(board.other)}]},
            "mark": {"type": "rule", "color": INK["uninvolved"], "strokeWidth": 1.6, "strokeDash": [1, 3]},
            "encoding": {"y": board.frame.y()},
        }
    ]


def _zero_line(frame: Frame) -> dict[str, Any]:
    return {
        "data": {"values": [{"deg": 0.0}]},
        "mark": {"type": "rule", "color": INK["soft"], "strokeWidth": 1},
        "encoding": {"y": frame.y()},
    }


def _end_labels(board: MotionBoard) -> list[EndLabel]:
    case, frame = board.case, board.frame
    labels = [
        EndLabel(
            text=f"{s.label}: {angle_words(board.measure, _at(s.readings[-1]))}",
            week=case.weeks(s.readings[-1].date),
            deg=_at(s.readings[-1]),
            ink="involved",
        )
        for s in board.series
    ]
    if board.other is not None:
        text = f"other knee: {angle_words(board.measure, _at(board.other))}"
        labels.append(EndLabel(text=text, week=frame.weeks[1], deg=_at(board.other), ink="uninvolved"))
    if board.measure == "knee_extension":
        labels.append(EndLabel(text="0°: straight", week=frame.weeks[1], deg=0.0, ink="soft"))
    return labels


def _at(reading: Reading) -> float:
    if reading.value is None:  # series hold scored readings only
        raise InputError(f"reading {reading.id!r} must have a value to be drawn.")
    return reading.value
