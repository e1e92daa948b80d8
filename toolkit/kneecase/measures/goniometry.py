"""Angles of one knee and differences between two knees, with extension's sign kept straight.

Everywhere: 0 is straight, positive lacks extension, negative hyperextends.
"""

from __future__ import annotations

import numpy as np

from kneecase.errors import InputError
from kneecase.measures.accepted import Quantity, accepted, plain
from kneecase.record import measure_named
from kneecase.units import number_text

__all__ = [
    "allowed_arc_pct",
    "difference_sem",
    "extension_deficit_deg",
    "flexion_deficit_deg",
    "motion_arc_deg",
    "neutral_zero_text",
]

_EXTENSION = measure_named("knee_extension").hard
_FLEXION = measure_named("knee_flexion").hard
_SIGN = "Extension is 0 straight, positive when it lacks, negative when it hyperextends."


def extension_deficit_deg(
    *, involved_extension_deg: Quantity, uninvolved_extension_deg: Quantity
) -> Quantity:
    """Extension deficit [deg]: what the operated knee lacks against the other knee's own extension.

    Looked at from the first visit on. A knee that is straight still lacks 5° beside one that hyperextends 5°.

    Formula: ``involved_extension_deg - uninvolved_extension_deg``.

    Parameters
    ----------
    involved_extension_deg, uninvolved_extension_deg : float or array of float
        Extension of each knee, 0 straight, positive lacks, negative hyperextends [deg].

    Returns
    -------
    float or array of float
        Positive when the operated knee extends less than the other, negative when it extends further [deg].

    Raises
    ------
    InputError
        If an angle is missing or impossible.

    Notes
    -----
    Both knees in the same position, both active or both passive.

    Examples
    --------
    >>> extension_deficit_deg(involved_extension_deg=2.0, uninvolved_extension_deg=-5.0)
    7.0
    """
    return _extension("involved_extension_deg", involved_extension_deg) - _extension(
        "uninvolved_extension_deg", uninvolved_extension_deg
    )


def flexion_deficit_deg(*, involved_flexion_deg: Quantity, uninvolved_flexion_deg: Quantity) -> Quantity:
    """Flexion deficit [deg]: what the operated knee lacks against the other knee.

    Looked at from the first visit on; the other knee is the target before any norm.

    Formula: ``uninvolved_flexion_deg - involved_flexion_deg``.

    Parameters
    ----------
    involved_flexion_deg, uninvolved_flexion_deg : float or array of float
        Flexion of each knee [deg].

    Returns
    -------
    float or array of float
        Positive when the operated knee bends less than the other [deg].

    Raises
    ------
    InputError
        If an angle is missing or impossible.

    Examples
    --------
    >>> flexion_deficit_deg(involved_flexion_deg=118.0, uninvolved_flexion_deg=142.0)
    24.0
    """
    return _flexion("uninvolved_flexion_deg", uninvolved_flexion_deg) - _flexion(
        "involved_flexion_deg", involved_flexion_deg
    )


def difference_sem(involved_sem: Quantity, uninvolved_sem: Quantity) -> Quantity:
    """Standard error [unit of the errors] of a difference between two knees measured independently.

    Formula: ``sqrt(involved_sem**2 + uninvolved_sem**2)``.

    Parameters
    ----------
    involved_sem, uninvolved_sem : float or array of float
        Standard error of measurement of each reading [any one unit].

    Returns
    -------
    float or array of float
        Standard error of their difference [the same unit].

    Raises
    ------
    InputError
        If an error is negative or missing.

    Examples
    --------
    >>> difference_sem(3.0, 4.0)
    5.0
    """
    a = accepted("involved_sem", involved_sem, low=0.0)
    return plain(np.hypot(a, accepted("uninvolved_sem", uninvolved_sem, low=0.0)), a)


def motion_arc_deg(*, extension_deg: Quantity, flexion_deg: Quantity) -> Quantity:
    """Arc of motion [deg]: from the end of extension to the end of flexion.

    Looked at for a stiff knee, where both ends are short.

    Formula: ``flexion_deg - extension_deg``.

    Parameters
    ----------
    extension_deg, flexion_deg : float or array of float
        The two ends of motion of one knee [deg].

    Returns
    -------
    float or array of float
        Arc, never negative [deg].

    Raises
    ------
    InputError
        If an angle is missing or impossible, or flexion ends before extension.

    Examples
    --------
    >>> motion_arc_deg(extension_deg=10.0, flexion_deg=95.0)
    85.0
    >>> motion_arc_deg(extension_deg=-5.0, flexion_deg=140.0)
    145.0
    """
    arc = _flexion("flexion_deg", flexion_deg) - _extension("extension_deg", extension_deg)
    if np.any(np.asarray(arc) < 0):
        raise InputError(
            f"flexion_deg must not lie below extension_deg, got flexion {flexion_deg!r} and extension "
            f"{extension_deg!r}. Were the two swapped?"
        )
    return arc


def allowed_arc_pct(
    *, extension_deg: Quantity, flexion_deg: Quantity, extension_limit_deg: float, flexion_limit_deg: float
) -> Quantity:
    """Share of the allowed arc that the knee reaches [%], while the surgeon's limit is in force.

    Looked at instead of a comparison with the other knee while motion is limited by order: what is
    forbidden cannot be missing.

    Formula: ``100 * (flexion_deg - extension_deg) / (flexion_limit_deg - extension_limit_deg)``.

    Parameters
    ----------
    extension_deg, flexion_deg : float or array of float
        The two ends of motion of the knee [deg].
    extension_limit_deg : float
        End of the allowed arc towards straight: the surgeon's limit, else full extension [deg].
    flexion_limit_deg : float
        The surgeon's limit of flexion [deg].

    Returns
    -------
    float or array of float
        Above 100 when the knee moves beyond what is allowed [%].

    Raises
    ------
    InputError
        If an angle is impossible or the allowed arc is empty.

    Examples
    --------
    >>> allowed_arc_pct(
    ...     extension_deg=5.0, flexion_deg=77.0, extension_limit_deg=0.0, flexion_limit_deg=90.0
    ... )
    80.0
    """
    allowed = motion_arc_deg(extension_deg=extension_limit_deg, flexion_deg=flexion_limit_deg)
    if allowed == 0.0:
        raise InputError(
            f"flexion_limit_deg must lie above extension_limit_deg, got {flexion_limit_deg!r} and "
            f"{extension_limit_deg!r}. No motion is allowed then."
        )
    return 100.0 * motion_arc_deg(extension_deg=extension_deg, flexion_deg=flexion_deg) / allowed


def neutral_zero_text(extension_deg: float, flexion_deg: float) -> str:
    """Neutral-zero notation of one knee's motion, as written in a chart.

    Hyperextension stands first (``5-0-140``), lacking extension in the middle (``0-5-120``), straight is
    ``0-0-135``.

    Parameters
    ----------
    extension_deg, flexion_deg : float
        The two ends of motion [deg].

    Returns
    -------
    str
        Three numbers joined by hyphens, at most one decimal each.

    Raises
    ------
    InputError
        If an angle is missing or impossible, or flexion ends before extension.

    Examples
    --------
    >>> neutral_zero_text(-5.0, 140.0), neutral_zero_text(5.0, 120.0)
    ('5-0-140', '0-5-120')
    """
    motion_arc_deg(extension_deg=extension_deg, flexion_deg=flexion_deg)
    ends = (max(-extension_deg, 0.0), max(extension_deg, 0.0), flexion_deg)
    return "-".join(number_text(abs(end) if end == 0 else end) for end in ends)


def _extension(name: str, angle_deg: Quantity) -> Quantity:
    return accepted(name, angle_deg, "deg", low=_EXTENSION[0], high=_EXTENSION[1], cure=_SIGN)


def _flexion(name: str, angle_deg: Quantity) -> Quantity:
    return accepted(name, angle_deg, "deg", low=_FLEXION[0], high=_FLEXION[1], cure="Is a point missing?")
