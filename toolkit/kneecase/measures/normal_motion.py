"""Normal motion for age and sex: the fallback where the other knee cannot be the target."""

from __future__ import annotations

import re

from kneecase.errors import InputError
from kneecase.evidence import PublishedValue
from kneecase.evidence.motion_normal import (
    MOTION_ACTIVE_FLEXION_ROACHMILES1991,
    MOTION_FLEXION_FEMALE_2_8_SOUCIE2011,
    MOTION_FLEXION_FEMALE_9_19_SOUCIE2011,
    MOTION_FLEXION_FEMALE_20_44_SOUCIE2011,
    MOTION_FLEXION_FEMALE_45_69_SOUCIE2011,
    MOTION_FLEXION_MALE_2_8_SOUCIE2011,
    MOTION_FLEXION_MALE_9_19_SOUCIE2011,
    MOTION_FLEXION_MALE_20_44_SOUCIE2011,
    MOTION_FLEXION_MALE_45_69_SOUCIE2011,
    MOTION_HYPEREXTENSION_FEMALE_2_8_SOUCIE2011,
    MOTION_HYPEREXTENSION_FEMALE_9_19_SOUCIE2011,
    MOTION_HYPEREXTENSION_FEMALE_20_44_SOUCIE2011,
    MOTION_HYPEREXTENSION_FEMALE_45_69_SOUCIE2011,
    MOTION_HYPEREXTENSION_MALE_2_8_SOUCIE2011,
    MOTION_HYPEREXTENSION_MALE_9_19_SOUCIE2011,
    MOTION_HYPEREXTENSION_MALE_20_44_SOUCIE2011,
    MOTION_HYPEREXTENSION_MALE_45_69_SOUCIE2011,
)

__all__ = ["normal_motion"]

_PASSIVE = {
    ("knee_flexion", "female"): (
        MOTION_FLEXION_FEMALE_2_8_SOUCIE2011,
        MOTION_FLEXION_FEMALE_9_19_SOUCIE2011,
        MOTION_FLEXION_FEMALE_20_44_SOUCIE2011,
        MOTION_FLEXION_FEMALE_45_69_SOUCIE2011,
    ),
    ("knee_flexion", "male"): (
        MOTION_FLEXION_MALE_2_8_SOUCIE2011,
        MOTION_FLEXION_MALE_9_19_SOUCIE2011,
        MOTION_FLEXION_MALE_20_44_SOUCIE2011,
        MOTION_FLEXION_MALE_45_69_SOUCIE2011,
    ),
    ("knee_extension", "female"): (
        MOTION_HYPEREXTENSION_FEMALE_2_8_SOUCIE2011,
        MOTION_HYPEREXTENSION_FEMALE_9_19_SOUCIE2011,
        MOTION_HYPEREXTENSION_FEMALE_20_44_SOUCIE2011,
        MOTION_HYPEREXTENSION_FEMALE_45_69_SOUCIE2011,
    ),
    ("knee_extension", "male"): (
        MOTION_HYPEREXTENSION_MALE_2_8_SOUCIE2011,
        MOTION_HYPEREXTENSION_MALE_9_19_SOUCIE2011,
        MOTION_HYPEREXTENSION_MALE_20_44_SOUCIE2011,
        MOTION_HYPEREXTENSION_MALE_45_69_SOUCIE2011,
    ),
}


def normal_motion(measure: str, *, sex: str, age_years: float) -> tuple[PublishedValue, ...]:
    """Published normal motion for a person of this sex and age, none averaged with another.

    Looked at only where the other knee is injured, operated on or not measured.

    Parameters
    ----------
    measure : {"knee_flexion", "knee_extension"}
        Extension is published as hyperextension, a positive number.
    sex : str
        ``"female"`` or ``"male"``; for any other there is no published value.
    age_years : float
        Age on the day [years].

    Returns
    -------
    tuple of PublishedValue
        Passive motion of the age band [deg], and for adults' flexion also active motion of a second survey.

    Raises
    ------
    InputError
        If the measure has no published normal values or the age is missing.

    Examples
    --------
    >>> normal_motion("knee_flexion", sex="female", age_years=5)[0].number
    152.6
    """
    if measure not in {name for name, _ in _PASSIVE}:
        raise InputError(f"measure must be knee_flexion or knee_extension, got {measure!r}.")
    if not isinstance(age_years, int | float) or not age_years >= 0:
        raise InputError(f"age_years must be at least 0 years, got {age_years!r}.")
    found = [v for v in _PASSIVE.get((measure, sex), ()) if _is_in_band(v, age_years)]
    adult = MOTION_FLEXION_FEMALE_20_44_SOUCIE2011
    if measure == "knee_flexion" and age_years >= _band(adult)[0]:
        found.append(MOTION_ACTIVE_FLEXION_ROACHMILES1991)
    return tuple(found)


def _is_in_band(value: PublishedValue, age_years: float) -> bool:
    first, last = _band(value)
    return first <= int(age_years) <= last


def _band(value: PublishedValue) -> tuple[int, int]:
    """First and last year of age, as the value's own name gives them."""
    first, last = re.findall(r"\d+", value.name)[:2]
    return int(first), int(last)
