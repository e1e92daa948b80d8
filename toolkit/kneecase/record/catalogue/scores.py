"""Outcome scores, as totals or by item number; no item wording is kept here or anywhere."""

from __future__ import annotations

from typing import Literal

from kneecase.evidence.questionnaires import QUESTIONNAIRES
from kneecase.evidence.score_errors import (
    SCORES_ACLRSI_SEM_FALEIDE2020,
    SCORES_GLOBAL_MDC_MAX_JOHNSON2020,
    SCORES_IKDC_SEM_MAX_COLLINS2011,
    SCORES_KOOS_MDC_MAX_PARADOWSKI2013,
    SCORES_KOSADL_MDC_PIVA2009,
    SCORES_LYSHOLM_MDC_BRIGGS2009,
    SCORES_TEGNER_MDC_BRIGGS2009,
    SCORES_TSK11_MDC_WOBY2005,
)
from kneecase.record.catalogue.measure import ErrorRule, Measure

__all__ = ["SCORE_MEASURES"]

_LARGEST = "the largest published, because it is the careful one"
_ONLY = "the only value known to kneecase"

_IKDC_ERROR = ErrorRule(published=SCORES_IKDC_SEM_MAX_COLLINS2011, is_a="sem", reason=_LARGEST)
_KOOS_ERROR = ErrorRule(
    published=SCORES_KOOS_MDC_MAX_PARADOWSKI2013,
    is_a="mdc95",
    reason="the largest of the subscales, because it was not read which has which",
)
_ACL_RSI_ERROR = ErrorRule(published=SCORES_ACLRSI_SEM_FALEIDE2020, is_a="sem", reason=_ONLY)
_LYSHOLM_ERROR = ErrorRule(published=SCORES_LYSHOLM_MDC_BRIGGS2009, is_a="mdc95", reason=_ONLY)
_TEGNER_ERROR = ErrorRule(published=SCORES_TEGNER_MDC_BRIGGS2009, is_a="mdc95", reason=_ONLY)
_KOS_ERROR = ErrorRule(
    published=SCORES_KOSADL_MDC_PIVA2009,
    is_a="mdc95",
    reason="from patellofemoral pain, the only value known",
)
_TSK_ERROR = ErrorRule(published=SCORES_TSK11_MDC_WOBY2005, is_a="mdc95", reason=_ONLY)
_GLOBAL_ERROR = ErrorRule(published=SCORES_GLOBAL_MDC_MAX_JOHNSON2020, is_a="mdc95", reason=_LARGEST)


def _score(
    id: str,
    error: ErrorRule,
    *,
    high: float = 100,
    low: float = 0,
    better: Literal["higher", "lower"] = "higher",
) -> Measure:
    form = QUESTIONNAIRES[id]
    ranges = form.item_ranges
    return Measure(
        id=id,
        label=form.label,
        unit="points",
        group="score",
        hard=(low, high),
        plausible=(low, high),
        better=better,
        per_limb=False,
        items=form.item_count or None,
        item_range=(min(r[0] for r in ranges), max(r[1] for r in ranges)) if ranges else None,
        item_ranges=ranges,
        errors=(error,),
        note=form.entry,
    )


SCORE_MEASURES = (
    _score("ikdc_subjective", _IKDC_ERROR),
    _score("koos_pain", _KOOS_ERROR),
    _score("koos_symptoms", _KOOS_ERROR),
    _score("koos_adl", _KOOS_ERROR),
    _score("koos_sport", _KOOS_ERROR),
    _score("koos_qol", _KOOS_ERROR),
    _score("acl_rsi", _ACL_RSI_ERROR),
    _score("lysholm", _LYSHOLM_ERROR),
    _score("tegner", _TEGNER_ERROR, high=10),
    _score("kos_adl", _KOS_ERROR),
    _score("tsk_11", _TSK_ERROR, low=11, high=44, better="lower"),
    _score("global_rating", _GLOBAL_ERROR),
)
