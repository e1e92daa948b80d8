"""What a positive screen means for one person, once it is counted how rare the injury is."""

from __future__ import annotations

from kneecase.measures.accepted import Quantity, accepted

__all__ = ["positive_predictive_fraction"]


def positive_predictive_fraction(
    *, sensitivity_fraction: Quantity, specificity_fraction: Quantity, prevalence_fraction: Quantity
) -> Quantity:
    """Share of positive screens that are right [fraction].

    Looked at before a screening score is told to an athlete: a rare injury makes most of them false.

    Formula: ``sens * prev / (sens * prev + (1 - spec) * (1 - prev))``.

    Parameters
    ----------
    sensitivity_fraction : float or array of float
        Share of the injured who screen positive, 0 to 1 [fraction].
    specificity_fraction : float or array of float
        Share of the uninjured who screen negative, 0 to 1 [fraction].
    prevalence_fraction : float or array of float
        Share of all who are injured, above 0 and at most 1 [fraction].

    Returns
    -------
    float or array of float
        Positive predictive value [fraction].

    Raises
    ------
    InputError
        If a share lies outside its limits, or nobody would screen positive.

    References
    ----------
    padua-2015

    Examples
    --------
    7 injured among 829, sensitivity 86 %, specificity 64 %: 2 of 100 positives are right.

    >>> round(positive_predictive_fraction(
    ...     sensitivity_fraction=0.86, specificity_fraction=0.64, prevalence_fraction=7 / 829
    ... ), 3)
    0.02
    """
    cure = "Write 0.86 for 86 %."
    right = accepted("sensitivity_fraction", sensitivity_fraction, low=0.0, high=1.0, cure=cure)
    clear = accepted("specificity_fraction", specificity_fraction, low=0.0, high=1.0, cure=cure)
    share = accepted("prevalence_fraction", prevalence_fraction, above=0.0, high=1.0, cure=cure)
    positive = right * share + (1.0 - clear) * (1.0 - share)
    accepted("share of positive screens", positive, above=0.0, cure="Nobody would screen positive.")
    return right * share / positive
