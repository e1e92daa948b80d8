"""Star excursion reach: by the limb's own length, composite, and the difference between the limbs."""

from __future__ import annotations

from kneecase.measures.accepted import Quantity, accepted

__all__ = ["composite_reach_pct", "normalised_reach_pct", "reach_deficit_cm", "reach_deficit_pct"]


def normalised_reach_pct(reach_cm: Quantity, limb_length_cm: Quantity) -> Quantity:
    """Reach in percent of the length of the limb that stands [%].

    Looked at so that tall and short athletes, and two limbs of different length, can be compared.

    Formula: ``100 * reach_cm / limb_length_cm``.

    Parameters
    ----------
    reach_cm : float or array of float
        Reach distance [cm].
    limb_length_cm : float or array of float
        Length of the stance limb, from the front of the pelvis to the inner ankle [cm].

    Returns
    -------
    float or array of float
        Normalised reach [%].

    Raises
    ------
    InputError
        If a length is not above 0.

    References
    ----------
    munro-herrington-2010

    Examples
    --------
    >>> normalised_reach_pct(66.0, 88.0)
    75.0
    """
    cure = "Reach and limb length are both in cm."
    reach = accepted("reach_cm", reach_cm, "cm", above=0.0, cure=cure)
    return 100.0 * reach / accepted("limb_length_cm", limb_length_cm, "cm", above=0.0, cure=cure)


def composite_reach_pct(
    *,
    anterior_cm: Quantity,
    posteromedial_cm: Quantity,
    posterolateral_cm: Quantity,
    limb_length_cm: Quantity,
) -> Quantity:
    """Composite reach [%]: the mean of the three directions in percent of the stance limb's length.

    Looked at as one number a limb; it hides which direction is short.

    Formula: ``100 * (anterior_cm + posteromedial_cm + posterolateral_cm) / (3 * limb_length_cm)``.

    Parameters
    ----------
    anterior_cm, posteromedial_cm, posterolateral_cm : float or array of float
        Reach in each direction [cm].
    limb_length_cm : float or array of float
        Length of the stance limb [cm].

    Returns
    -------
    float or array of float
        Composite reach [%].

    Raises
    ------
    InputError
        If a length is not above 0.

    References
    ----------
    plisky-2006

    Examples
    --------
    >>> composite_reach_pct(
    ...     anterior_cm=60.0, posteromedial_cm=100.0, posterolateral_cm=104.0, limb_length_cm=88.0
    ... )
    100.0
    """
    total = (
        normalised_reach_pct(accepted("anterior_cm", anterior_cm, "cm", above=0.0), limb_length_cm)
        + normalised_reach_pct(
            accepted("posteromedial_cm", posteromedial_cm, "cm", above=0.0), limb_length_cm
        )
        + normalised_reach_pct(
            accepted("posterolateral_cm", posterolateral_cm, "cm", above=0.0), limb_length_cm
        )
    )
    return total / 3.0


def reach_deficit_cm(*, involved_cm: Quantity, uninvolved_cm: Quantity) -> Quantity:
    """Reach of the other limb less that of the involved limb [cm]: positive when the involved reaches less.

    Looked at for the anterior direction, where a difference was once linked with injury in school athletes.

    Formula: ``uninvolved_cm - involved_cm``.

    Parameters
    ----------
    involved_cm, uninvolved_cm : float or array of float
        Reach while standing on that limb [cm].

    Returns
    -------
    float or array of float
        Deficit [cm].

    Raises
    ------
    InputError
        If a reach is not above 0.

    References
    ----------
    plisky-2006

    Examples
    --------
    >>> reach_deficit_cm(involved_cm=62.0, uninvolved_cm=66.0)
    4.0
    """
    involved = accepted("involved_cm", involved_cm, "cm", above=0.0)
    return accepted("uninvolved_cm", uninvolved_cm, "cm", above=0.0) - involved


def reach_deficit_pct(
    *,
    involved_cm: Quantity,
    uninvolved_cm: Quantity,
    involved_limb_length_cm: Quantity,
    uninvolved_limb_length_cm: Quantity,
) -> Quantity:
    """Difference of the two normalised reaches, each by its own limb length [points of %].

    Looked at beside the difference in cm, because the published error is in percent of limb length.

    Formula: ``100 * (uninvolved_cm / uninvolved_limb_length_cm - involved_cm / involved_limb_length_cm)``.

    Parameters
    ----------
    involved_cm, uninvolved_cm : float or array of float
        Reach while standing on that limb [cm].
    involved_limb_length_cm, uninvolved_limb_length_cm : float or array of float
        Length of each limb [cm].

    Returns
    -------
    float or array of float
        Deficit, positive when the involved limb reaches less [points of %].

    Raises
    ------
    InputError
        If a length is not above 0.

    References
    ----------
    munro-herrington-2010

    Examples
    --------
    >>> reach_deficit_pct(
    ...     involved_cm=62.48,
    ...     uninvolved_cm=66.0,
    ...     involved_limb_length_cm=88.0,
    ...     uninvolved_limb_length_cm=88.0,
    ... )
    4.0
    """
    involved = normalised_reach_pct(
        accepted("involved_cm", involved_cm, "cm", above=0.0),
        accepted("involved_limb_length_cm", involved_limb_length_cm, "cm", above=0.0),
    )
    uninvolved = normalised_reach_pct(
        accepted("uninvolved_cm", uninvolved_cm, "cm", above=0.0),
        accepted("uninvolved_limb_length_cm", uninvolved_limb_length_cm, "cm", above=0.0),
    )
    return uninvolved - involved
