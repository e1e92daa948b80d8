"""Which values of a case a recovery curve of one measure is fitted to."""

from __future__ import annotations

from kneecase.errors import InputError
from kneecase.record import Case, measure_named
from kneecase.recovery.curve_motion import motion_values
from kneecase.recovery.curve_series import CurveSeries
from kneecase.recovery.curve_tests import GIRTHS, girth_values, score_values, symmetry_values
from kneecase.recovery.window import Window

__all__ = ["curve_series"]

_MOTIONS = ("knee_flexion", "knee_extension")


def curve_series(
    case: Case,
    measure: str,
    window: Window,
    *,
    motion: str | None = None,
    timing: str | None = None,
    position: str | None = None,
) -> CurveSeries:
    """The values of ``measure`` in ``window``, in the form a curve is fitted to.

    Motion as recorded; hop and strength tests as limb symmetry [%] and girths as the difference between
    limbs [cm], both limbs of one day; scores in points. All but motion start at their first value.
    """
    info = measure_named(measure)
    if info.id == "effusion":
        raise InputError(
            "measure must be one with a number, got 'effusion': its grades have no distances between them, "
            "so it gets no curve. effusion_course shows its grades."
        )
    if measure in _MOTIONS:
        return motion_values(case, info, window, motion=motion, timing=timing, position=position)
    if any(asked is not None for asked in (motion, timing, position)):
        raise InputError(
            f"motion, timing and position are chosen for a motion only, got measure {measure!r}."
        )
    if info.group in ("hop", "strength"):
        return symmetry_values(case, info, window)
    if measure in GIRTHS:
        return girth_values(case, info, window)
    if info.group == "score" and info.better != "neither":
        return score_values(case, info, window)
    raise InputError(
        "measure must be a motion, a hop or strength test, knee or thigh girth, or an outcome score, got "
        f"{measure!r}."
    )
