"""Prone heel-height difference in degrees, with the athlete's own shank length."""

from __future__ import annotations

import numpy as np

from kneecase.errors import InputError
from kneecase.measures.accepted import Quantity, accepted, plain

__all__ = ["heel_height_cm", "shank_angle_deg", "thumb_rule_angle_deg"]


def shank_angle_deg(heel_height_difference_cm: Quantity, shank_length_cm: Quantity) -> Quantity:
    """Side-to-side difference of extension [deg] behind a prone heel-height difference.

    Looked at when a small loss of extension is easier to see at the heels than at the goniometer.

    Formula: ``degrees(asin(heel_height_difference_cm / shank_length_cm))``.

    Parameters
    ----------
    heel_height_difference_cm : float or array of float
        How much higher the heel of the operated side hangs; negative when it hangs lower [cm].
    shank_length_cm : float or array of float
        From the axis of the knee to the heel, measured on this athlete [cm].

    Returns
    -------
    float or array of float
        Positive when the operated knee extends less than the other [deg].

    Raises
    ------
    InputError
        If a length is missing, the shank not above 0, or the difference longer than the shank.

    Notes
    -----
    Assumes thighs level on the table, both patellae just off its edge, shanks of the same length, and the
    other shank level. Where the other knee bends or hyperextends by a few degrees the error is small.

    Examples
    --------
    >>> round(shank_angle_deg(3.0, 45.0), 2)
    3.82
    """
    length = accepted("shank_length_cm", shank_length_cm, "cm", above=0.0)
    height = accepted("heel_height_difference_cm", heel_height_difference_cm, "cm")
    ratio = height / length
    if np.any(np.abs(np.asarray(ratio)) > 1):
        raise InputError(
            "heel_height_difference_cm must not be longer than shank_length_cm, got "
            f"{heel_height_difference_cm!r} cm beside {shank_length_cm!r} cm. Was one typed in another unit?"
        )
    return plain(np.degrees(np.arcsin(ratio)), ratio)


def heel_height_cm(shank_angle_deg: Quantity, shank_length_cm: Quantity) -> Quantity:
    """Heel-height difference [cm] that belongs to a side-to-side difference of extension.

    Looked at to say what a goal in degrees means at the heels.

    Formula: ``shank_length_cm * sin(shank_angle_deg)``, the inverse of :func:`shank_angle_deg`.

    Parameters
    ----------
    shank_angle_deg : float or array of float
        Side-to-side difference of extension, between -90 and 90 [deg].
    shank_length_cm : float or array of float
        From the axis of the knee to the heel [cm].

    Returns
    -------
    float or array of float
        Heel-height difference [cm].

    Raises
    ------
    InputError
        If a number is missing, the shank not above 0, or the angle beyond a right angle.

    Examples
    --------
    >>> round(heel_height_cm(5.0, 40.0), 2)
    3.49
    """
    length = accepted("shank_length_cm", shank_length_cm, "cm", above=0.0)
    right_angle = np.degrees(np.arcsin(1.0))
    angle = accepted("shank_angle_deg", shank_angle_deg, "deg", low=-right_angle, high=right_angle)
    return plain(length * np.sin(np.radians(angle)), angle)


def thumb_rule_angle_deg(heel_height_difference_cm: Quantity, rule_deg: float) -> Quantity:
    """Difference of extension [deg] by a rule of thumb, only to cross-check :func:`shank_angle_deg`.

    Formula: ``heel_height_difference_cm * rule_deg``.

    Parameters
    ----------
    heel_height_difference_cm : float or array of float
        Heel-height difference [cm].
    rule_deg : float
        The rule, for example 1 [deg for each cm].

    Returns
    -------
    float or array of float
        Difference of extension [deg].

    Raises
    ------
    InputError
        If a number is missing or the rule not above 0.

    Examples
    --------
    >>> thumb_rule_angle_deg(3.0, 1.0)
    3.0
    """
    rule = accepted("rule_deg", rule_deg, "deg", above=0.0)
    return accepted("heel_height_difference_cm", heel_height_difference_cm, "cm") * rule
