"""Strength kernels: torque from a force, torque for body mass, quadriceps index, ratio of the two muscles."""

from __future__ import annotations

from kneecase.measures.accepted import Quantity, accepted
from kneecase.measures.symmetry import limb_symmetry_index

__all__ = [
    "hamstring_quadriceps_fraction",
    "quadriceps_index_pct",
    "torque_n_m",
    "torque_per_mass_n_m_per_kg",
]


def torque_n_m(force_n: Quantity, lever_arm_m: Quantity) -> Quantity:
    """Torque about the knee [N·m] from a force held against the shank.

    Looked at where strength was tested by a hand-held device: the same force lower on the shank is more.

    Formula: ``force_n * lever_arm_m``.

    Parameters
    ----------
    force_n : float or array of float
        Force at right angles to the shank [N].
    lever_arm_m : float or array of float
        From the knee's axis to the pad [m], 1 m at most.

    Returns
    -------
    float or array of float
        Torque [N·m].

    Raises
    ------
    InputError
        If the force is missing or negative, or the lever arm not above 0 and at most 1 m.

    Examples
    --------
    >>> round(torque_n_m(430.0, 0.32), 1)
    137.6
    """
    force = accepted("force_n", force_n, "N", low=0.0, cure="Is it in kilograms or pounds? Convert it to N.")
    arm = accepted("lever_arm_m", lever_arm_m, "m", above=0.0, high=1.0, cure="Is it in centimetres?")
    return force * arm


def torque_per_mass_n_m_per_kg(torque_n_m: Quantity, mass_kg: Quantity) -> Quantity:
    """Torque relative to body mass [N·m/kg].

    Looked at beside the index: it shows whether either limb is strong enough for the body it carries.

    Formula: ``torque_n_m / mass_kg``.

    Parameters
    ----------
    torque_n_m : float or array of float
        Peak torque [N·m].
    mass_kg : float or array of float
        Body mass [kg].

    Returns
    -------
    float or array of float
        Torque for each kilogram [N·m/kg].

    Raises
    ------
    InputError
        If the torque is missing or negative, or the mass not above zero.

    Examples
    --------
    >>> torque_per_mass_n_m_per_kg(171.0, 72.0)
    2.375
    """
    torque = accepted("torque_n_m", torque_n_m, "N·m", low=0.0)
    return torque / accepted("mass_kg", mass_kg, "kg", above=0.0)


def quadriceps_index_pct(involved_n_m: Quantity, uninvolved_n_m: Quantity) -> Quantity:
    """Quadriceps index [%]: peak torque of the operated limb in percent of the other.

    Looked at before running, hopping and sport. Both torques must be of the same mode, angle and speed.

    Formula: the limb symmetry index, ``100 * involved_n_m / uninvolved_n_m``.

    Parameters
    ----------
    involved_n_m, uninvolved_n_m : float or array of float
        Peak torque of each limb [N·m].

    Returns
    -------
    float or array of float
        Index [%], unrounded.

    Raises
    ------
    InputError
        If a torque is missing or negative, or the other limb's is zero.

    Examples
    --------
    >>> round(quadriceps_index_pct(171.0, 198.0), 4)
    86.3636
    """
    return limb_symmetry_index(involved_n_m, uninvolved_n_m)


def hamstring_quadriceps_fraction(hamstring_n_m: Quantity, quadriceps_n_m: Quantity) -> Quantity:
    """Hamstring-to-quadriceps ratio of one limb [fraction].

    Looked at only with both torques and the graft: a high ratio may be a weak quadriceps, a low one a
    hamstring that gave the graft. It is never scored.

    Formula: ``hamstring_n_m / quadriceps_n_m``.

    Parameters
    ----------
    hamstring_n_m, quadriceps_n_m : float or array of float
        Peak torque of the two muscles of the same limb, mode and speed [N·m].

    Returns
    -------
    float or array of float
        Ratio [fraction].

    Raises
    ------
    InputError
        If a torque is missing or negative, or that of the quadriceps zero.

    References
    ----------
    coombs-2002, sole-2007

    Examples
    --------
    >>> round(hamstring_quadriceps_fraction(102.0, 171.0), 4)
    0.5965
    """
    hamstring = accepted("hamstring_n_m", hamstring_n_m, "N·m", low=0.0)
    return hamstring / accepted("quadriceps_n_m", quadriceps_n_m, "N·m", above=0.0)
