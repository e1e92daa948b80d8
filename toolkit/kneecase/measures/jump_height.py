"""Height of a jump from the time in the air."""

from __future__ import annotations

from kneecase.measures.accepted import Quantity, accepted
from kneecase.units import converted

__all__ = ["jump_height_cm"]

_GRAVITY_M_PER_S2 = converted(1.0, "kgf", "n")
"""Standard gravity: the force on one kilogram, divided by one kilogram."""


def jump_height_cm(flight_time_s: Quantity) -> Quantity:
    """Height of a vertical hop [cm] from the time in the air.

    Looked at where a contact mat or timing gates give a time and the record wants a height.

    Formula: ``100 * g * flight_time_s ** 2 / 8`` with standard gravity g.

    Parameters
    ----------
    flight_time_s : float or array of float
        From the foot leaving the ground to its touching it again [s], 2 s at most.

    Returns
    -------
    float or array of float
        Rise of the centre of mass [cm].

    Raises
    ------
    InputError
        If the time is missing, negative or above 2 s.

    Notes
    -----
    True only when the athlete lands as straight as she took off: bent knees lengthen the flight and the
    height. The operated and the other limb may differ in that.

    Examples
    --------
    >>> round(jump_height_cm(0.4), 2)
    19.61
    """
    time = accepted("flight_time_s", flight_time_s, "s", low=0.0, high=2.0, cure="Is it in milliseconds?")
    return 100.0 * _GRAVITY_M_PER_S2 * time**2 / (2 * 4)
