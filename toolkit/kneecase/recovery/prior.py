"""What is expected of a motion's recovery before a reading is taken, put together from the evidence."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, replace
from types import MappingProxyType
from typing import Any

import numpy as np

from kneecase.errors import InputError
from kneecase.evidence.motion_normal import (
    MOTION_ACTIVE_FLEXION_ROACHMILES1991,
    MOTION_HYPEREXTENSION_MALE_20_44_SOUCIE2011,
)
from kneecase.evidence.provenance import PublishedValue
from kneecase.evidence.recovery_prior import (
    RECOVERY_EXTENSION_HALF_TIME_OURS,
    RECOVERY_EXTENSION_LATE_A_SSMR2011,
    RECOVERY_EXTENSION_LATE_B_SSMR2011,
    RECOVERY_EXTENSION_LATE_C_SSMR2011,
    RECOVERY_EXTENSION_NORM_SD_OURS,
    RECOVERY_EXTENSION_START_LACK_OURS,
    RECOVERY_EXTENSION_STIFF_LACK_OURS,
    RECOVERY_FLEXION_HALF_TIME_FAST_WILK2018,
    RECOVERY_FLEXION_HALF_TIME_REPLACEMENT_DERIVED,
    RECOVERY_FLEXION_HALF_TIME_SLOW_OUWELEEN2021,
    RECOVERY_FLEXION_LATE_A_SSMR2011,
    RECOVERY_FLEXION_LATE_B_SSMR2011,
    RECOVERY_FLEXION_LATE_C_SSMR2011,
    RECOVERY_FLEXION_START_FAST_WILK2018,
    RECOVERY_FLEXION_START_SD_OURS,
    RECOVERY_FLEXION_START_SLOW_OUWELEEN2021,
    RECOVERY_FLEXION_STIFF_SHORTFALL_OURS,
    RECOVERY_HALF_TIME_LOG_SD_OURS,
    RECOVERY_STIFF_SHARE_POOLED_OUWELEEN2021,
    RECOVERY_STIFF_SHARE_UDALL2025,
)
from kneecase.evidence.stiffness import (
    COURSE_STIFFNESS_HAMSTRING_OUWELEEN2021,
    COURSE_STIFFNESS_PATELLAR_OUWELEEN2021,
    COURSE_STIFFNESS_PROCEDURE_HOPPER2024,
    COURSE_STIFFNESS_PROCEDURE_HULEATT2018,
    COURSE_STIFFNESS_PROCEDURE_NWACHUKWU2011,
    COURSE_STIFFNESS_QUADRICEPS_OUWELEEN2021,
)
from kneecase.measures.accepted import accepted
from kneecase.recovery.course import STIFF, Course
from kneecase.recovery.gain import Better
from kneecase.recovery.lines import Numbers
from kneecase.units import number_text

__all__ = ["INCIDENCES", "ORDINARY", "STIFF_BY_GRAFT", "RecoveryPrior", "course_words", "recovery_prior"]

ORDINARY = "ordinary"
"""The name of the course whose plateau lies near the other knee."""
STIFF_BY_GRAFT: Mapping[str, PublishedValue] = MappingProxyType(
    {
        "hamstring tendon": COURSE_STIFFNESS_HAMSTRING_OUWELEEN2021,
        "quadriceps tendon": COURSE_STIFFNESS_QUADRICEPS_OUWELEEN2021,
        "patellar tendon": COURSE_STIFFNESS_PATELLAR_OUWELEEN2021,
    }
)
"""Share of knees stiff at three months by graft, all of one cohort."""
INCIDENCES = (
    RECOVERY_STIFF_SHARE_POOLED_OUWELEEN2021,
    *STIFF_BY_GRAFT.values(),
    RECOVERY_STIFF_SHARE_UDALL2025,
    COURSE_STIFFNESS_PROCEDURE_HOPPER2024,
    COURSE_STIFFNESS_PROCEDURE_HULEATT2018,
    COURSE_STIFFNESS_PROCEDURE_NWACHUKWU2011,
)
"""Published shares of stiff knees, each with its own definition; one is used, never several multiplied."""
_DISAGREEING: Mapping[str, tuple[PublishedValue, ...]] = MappingProxyType(
    {
        "knee_flexion": (
            RECOVERY_FLEXION_HALF_TIME_FAST_WILK2018,
            RECOVERY_FLEXION_START_FAST_WILK2018,
            RECOVERY_FLEXION_HALF_TIME_REPLACEMENT_DERIVED,
            RECOVERY_FLEXION_LATE_B_SSMR2011,
            RECOVERY_FLEXION_LATE_C_SSMR2011,
        ),
        "knee_extension": (RECOVERY_EXTENSION_LATE_B_SSMR2011, RECOVERY_EXTENSION_LATE_C_SSMR2011),
    }
)


@dataclass(frozen=True, kw_only=True)
class RecoveryPrior:
    """What is expected of one motion: its courses, and the values they are made of.

    ``evidence`` are the values used, ``beside`` those that disagree or frame them and are not used. Print
    it to see all of it; :meth:`with_course` replaces any number, and any other courses can be given to
    :func:`~kneecase.recovery.fit_recovery` instead.
    """

    measure: str
    better: Better
    courses: tuple[Course, ...]
    evidence: tuple[PublishedValue, ...]
    beside: tuple[PublishedValue, ...] = ()
    notes: tuple[str, ...] = ()

    def with_course(self, name: str, **changed: Numbers) -> RecoveryPrior:
        """The same prior with numbers of one course replaced; a changed chance is made good by the others.

        Parameters
        ----------
        name : str
            The course.
        changed : float or array of float
            Numbers of :class:`Course` by name [unit of each].

        Returns
        -------
        RecoveryPrior
            A new prior that says what was changed.

        Raises
        ------
        InputError
            If there is no course of that name or a number is not one a course has.
        """
        if name not in [course.name for course in self.courses]:
            raise InputError(f"name must be one of {', '.join(c.name for c in self.courses)}, got {name!r}.")
        unknown = [key for key in changed if key == "name" or key not in Course.__dataclass_fields__]
        if unknown:
            raise InputError(f"{unknown[0]} must be a number of a course, such as plateau or chance.")
        given: dict[str, Any] = dict(changed)
        courses = [replace(c, **given) if c.name == name else c for c in self.courses]
        if "chance" in changed:
            rest: Any = sum(np.asarray(c.chance) for c in self.courses if c.name != name)
            left = 1 - np.asarray(changed["chance"])
            courses = [
                c if c.name == name else replace(c, chance=(np.asarray(c.chance) * left / rest)[()])
                for c in courses
            ]
        note = f"{name} course changed by hand: {', '.join(changed)}"
        return replace(self, courses=tuple(courses), notes=(*self.notes, note))

    def __str__(self) -> str:
        lines = [f"Expected before any reading, {self.measure.replace('_', ' ')}:"]
        lines += [f"  {course_words(course)}" for course in self.courses]
        lines += ["Made of:", *(f"  - {value.line()}" for value in self.evidence)]
        if self.beside:
            lines += ["Beside it, not used:", *(f"  - {value.line()}" for value in self.beside)]
        return "\n".join([*lines, *(f"Note: {note}." for note in self.notes)])


def course_words(course: Course) -> str:
    """One course in words, with the spread of each number."""

    def shown(value: Numbers, digits: int = 1) -> str:
        return number_text(float(value), digits) if np.ndim(value) == 0 else "one for each case"

    return (
        f"{course.name} course, chance {shown(100 * course.chance)} %: plateau {shown(course.plateau)} "
        f"(SD {shown(course.plateau_sd)}), level at week 0 {shown(course.start)} "
        f"(SD {shown(course.start_sd)}), half-time {shown(course.half_time_weeks, 2)} weeks "
        f"(SD of its logarithm {shown(course.half_time_log_sd, 2)})"
    )


def recovery_prior(
    measure: str = "knee_flexion",
    *,
    other_side: Numbers | None = None,
    other_side_sem: float = 0.0,
    graft: str | None = None,
    incidence: PublishedValue | None = None,
) -> RecoveryPrior:
    """What is expected of a motion's recovery: an ordinary and a stiff course with their chances.

    Looked at before a forecast is believed: with few readings the forecast is mostly this.

    Formula: plateau = the other knee less the shortfall seen late (ordinary) or set for stiff knees;
    chance of the stiff course = one cohort's share.

    Parameters
    ----------
    measure : {"knee_flexion", "knee_extension"}
        Which motion.
    other_side : float or array of float, shape (cases,), optional
        The other knee's angle as recorded [deg]; a norm with its wide spread without it.
    other_side_sem : float
        Standard error of that reading [deg].
    graft : str, optional
        Chooses the share of the default cohort for this graft.
    incidence : PublishedValue, optional
        Another published share [pct], such as one of :data:`INCIDENCES`.

    Returns
    -------
    RecoveryPrior
        Courses in degrees as recorded, and everything they are made of.

    Raises
    ------
    InputError
        If the measure is another, or the incidence is not a share in percent.

    Notes
    -----
    The default cohort is one of adolescents, because its definition (a lack at three months) is the one
    that fits a course; shares of procedures are lower. Odds ratios of risk factors come from other cohorts
    and are never multiplied onto it. The half-time of flexion is the one through that cohort's observed
    median, because the faster curve goes through a programme's targets and another through knee
    replacements; both stand beside it. The share is of knees stiff in flexion or extension, so for either
    alone it is at most this.

    Examples
    --------
    >>> prior = recovery_prior("knee_flexion", other_side=142, graft="patellar tendon")
    >>> [(c.name, round(c.chance, 3), round(c.plateau, 1)) for c in prior.courses]
    [('ordinary', 0.9, 140.6), ('stiff', 0.1, 112.0)]
    """
    if measure not in _DISAGREEING:
        raise InputError(f"measure must be 'knee_flexion' or 'knee_extension', got {measure!r}.")
    share = incidence or STIFF_BY_GRAFT.get(graft or "", RECOVERY_STIFF_SHARE_POOLED_OUWELEEN2021)
    if share.unit != "pct" or not 0 < share.number < 100:
        raise InputError(f"incidence must be a share in percent, got {share.quantity()}.")
    notes = [] if incidence is not None or graft in STIFF_BY_GRAFT else ["share pooled over grafts"]
    accepted("other_side_sem", other_side_sem, "deg", low=0.0)
    spread = other_side_sem
    norm: tuple[PublishedValue, ...] = ()
    if other_side is None:
        other_side, spread, norm = _norm(measure)
        notes.append("the other knee is not known: a norm stands in for it")
    else:
        accepted("other_side", np.asarray(other_side), "deg")
    courses, used = _courses(measure, other_side, spread, share.number / 100)
    return RecoveryPrior(
        measure=measure,
        better="higher" if measure == "knee_flexion" else "lower",
        courses=courses,
        evidence=(share, *used, *norm),
        beside=_DISAGREEING[measure],
        notes=tuple(notes),
    )


def _norm(measure: str) -> tuple[float, float, tuple[PublishedValue, ...]]:
    if measure == "knee_flexion":
        norm = MOTION_ACTIVE_FLEXION_ROACHMILES1991
        return norm.number, _sd(norm), (norm,)
    end, spread = MOTION_HYPEREXTENSION_MALE_20_44_SOUCIE2011, RECOVERY_EXTENSION_NORM_SD_OURS
    return -end.number, spread.number, (end, spread)


def _sd(value: PublishedValue) -> float:
    """Standard deviation of a value whose ends lie one of it to either side."""
    return (float(value.high or 0) - float(value.low or 0)) / 2


def _courses(
    measure: str, other_side: Any, spread: float, stiff: float
) -> tuple[tuple[Course, ...], tuple[PublishedValue, ...]]:
    """The two courses, and the values in them."""
    log_sd = RECOVERY_HALF_TIME_LOG_SD_OURS
    used: tuple[PublishedValue, ...]
    if measure == "knee_flexion":
        way = -1.0
        late, short = RECOVERY_FLEXION_LATE_A_SSMR2011, RECOVERY_FLEXION_STIFF_SHORTFALL_OURS
        begin, begin_sd = RECOVERY_FLEXION_START_SLOW_OUWELEEN2021, RECOVERY_FLEXION_START_SD_OURS
        half = RECOVERY_FLEXION_HALF_TIME_SLOW_OUWELEEN2021  # the one made of an observation of such knees
        start: Any = begin.number
        start_sd = begin_sd.number
        used = (late, short, begin, begin_sd, half, log_sd)
    else:
        way = 1.0
        late, short = RECOVERY_EXTENSION_LATE_A_SSMR2011, RECOVERY_EXTENSION_STIFF_LACK_OURS
        begin, half = RECOVERY_EXTENSION_START_LACK_OURS, RECOVERY_EXTENSION_HALF_TIME_OURS
        start = other_side + begin.number
        start_sd = math.hypot(_sd(begin), spread)
        used = (late, short, begin, half, log_sd)
    shared = {
        "start": start,
        "start_sd": start_sd,
        "half_time_weeks": half.number,
        "half_time_log_sd": log_sd.number,
    }
    courses = tuple(
        Course(
            name=name,
            chance=chance,
            plateau=other_side + way * value.number,
            plateau_sd=math.hypot(_sd(value), spread),
            **shared,
        )
        for name, chance, value in ((ORDINARY, 1 - stiff, late), (STIFF, stiff, short))
    )
    return courses, used
