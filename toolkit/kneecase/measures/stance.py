"""Shift to the good leg: how much of the load stands under the involved limb."""

from __future__ import annotations

from kneecase.measures.accepted import Quantity, accepted

__all__ = ["involved_load_pct"]


def involved_load_pct(*, involved_kg: Quantity, uninvolved_kg: Quantity) -> Quantity:
    """Share of the load under the involved limb [%]: 50 is even, less is a shift to the good leg.

    Looked at in standing, squatting and two-leg landing on two scales: hops and strength can look even while
    the involved limb is spared.

    Formula: ``100 * involved_kg / (involved_kg + uninvolved_kg)``.

    Parameters
    ----------
    involved_kg, uninvolved_kg : float or array of float
        Load read under each limb at the same moment [kg].

    Returns
    -------
    float or array of float
        Share under the involved limb [%].

    Raises
    ------
    InputError
        If a load is negative or both are 0.

    Notes
    -----
    No error and no norm was found: a difference between days is described, not judged.

    References
    ----------
    common-practice

    Examples
    --------
    >>> round(involved_load_pct(involved_kg=25.5, uninvolved_kg=33.0), 2)
    43.59
    """
    involved = accepted("involved_kg", involved_kg, "kg", low=0.0)
    total = involved + accepted("uninvolved_kg", uninvolved_kg, "kg", low=0.0)
    accepted("involved_kg + uninvolved_kg", total, "kg", above=0.0, cure="Was nobody on the scales?")
    return 100.0 * involved / total
