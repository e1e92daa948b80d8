"""How many items of a KOOS subscale must be answered, by the year of the rule."""

from __future__ import annotations

from typing import Literal, get_args

from kneecase.errors import InputError
from kneecase.evidence import PublishedValue
from kneecase.evidence.scores import (
    SCORES_KOOS_ADL_MIN_ANSWERED_KOOS2012,
    SCORES_KOOS_ADL_MIN_ANSWERED_OLDER_KOOS2012,
    SCORES_KOOS_PAIN_MIN_ANSWERED_KOOS2012,
    SCORES_KOOS_PAIN_MIN_ANSWERED_OLDER_KOOS2012,
    SCORES_KOOS_QOL_MIN_ANSWERED_KOOS2012,
    SCORES_KOOS_QOL_MIN_ANSWERED_OLDER_KOOS2012,
    SCORES_KOOS_SPORT_MIN_ANSWERED_KOOS2012,
    SCORES_KOOS_SPORT_MIN_ANSWERED_OLDER_KOOS2012,
    SCORES_KOOS_SYMPTOMS_MIN_ANSWERED_KOOS2012,
    SCORES_KOOS_SYMPTOMS_MIN_ANSWERED_OLDER_KOOS2012,
)

__all__ = ["KoosRule", "koos_min_answered"]

KoosRule = Literal["2012", "1998"]
"""Year of the missing-item rule: that of 2012 asks for half of the items, that of 1998 for more."""

_RULES: dict[tuple[str, str], PublishedValue] = {
    ("koos_pain", "2012"): SCORES_KOOS_PAIN_MIN_ANSWERED_KOOS2012,
    ("koos_symptoms", "2012"): SCORES_KOOS_SYMPTOMS_MIN_ANSWERED_KOOS2012,
    ("koos_adl", "2012"): SCORES_KOOS_ADL_MIN_ANSWERED_KOOS2012,
    ("koos_sport", "2012"): SCORES_KOOS_SPORT_MIN_ANSWERED_KOOS2012,
    ("koos_qol", "2012"): SCORES_KOOS_QOL_MIN_ANSWERED_KOOS2012,
    ("koos_pain", "1998"): SCORES_KOOS_PAIN_MIN_ANSWERED_OLDER_KOOS2012,
    ("koos_symptoms", "1998"): SCORES_KOOS_SYMPTOMS_MIN_ANSWERED_OLDER_KOOS2012,
    ("koos_adl", "1998"): SCORES_KOOS_ADL_MIN_ANSWERED_OLDER_KOOS2012,
    ("koos_sport", "1998"): SCORES_KOOS_SPORT_MIN_ANSWERED_OLDER_KOOS2012,
    ("koos_qol", "1998"): SCORES_KOOS_QOL_MIN_ANSWERED_OLDER_KOOS2012,
}


def koos_min_answered(subscale: str, rule: KoosRule = "2012") -> PublishedValue:
    """Fewest answered items for a KOOS subscale score, with its source.

    Parameters
    ----------
    subscale : str
        Id of the measure: koos_pain, koos_symptoms, koos_adl, koos_sport or koos_qol.
    rule : {"2012", "1998"}
        Year of the rule.

    Returns
    -------
    PublishedValue
        Number of items [items].

    Raises
    ------
    InputError
        If the subscale or the rule is unknown.

    Examples
    --------
    >>> koos_min_answered("koos_pain").number, koos_min_answered("koos_pain", "1998").number
    (5.0, 7.0)
    """
    if rule not in get_args(KoosRule):
        raise InputError(f"rule must be '2012' or '1998', got {rule!r}.")
    if (subscale, rule) not in _RULES:
        known = ", ".join(dict.fromkeys(name for name, _ in _RULES))
        raise InputError(f"subscale must be one of {known}, got {subscale!r}.")
    return _RULES[subscale, rule]
