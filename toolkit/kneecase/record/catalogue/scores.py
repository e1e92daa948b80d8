"""Outcome scores, as totals or by item number; no item wording is kept here or anywhere."""

from __future__ import annotations

from kneecase.record.catalogue.measure import Measure

__all__ = ["SCORE_MEASURES"]


def _score(
    id: str,
    label: str,
    *,
    high: float = 100,
    low: float = 0,
    better: str = "higher",
    items: int | None = None,
    item_range: tuple[float, float] | None = None,
) -> Measure:
    return Measure(
        id=id,
        label=label,
        unit="points",
        group="score",
        hard=(low, high),
        plausible=(low, high),
        better="lower" if better == "lower" else "higher",
        per_limb=False,
        items=items,
        item_range=item_range,
    )


SCORE_MEASURES = (
    _score("ikdc_subjective", "IKDC subjective knee score", items=18, item_range=(0, 10)),
    _score("koos_pain", "KOOS pain", items=9, item_range=(0, 4)),
    _score("koos_symptoms", "KOOS symptoms", items=7, item_range=(0, 4)),
    _score("koos_adl", "KOOS daily living", items=17, item_range=(0, 4)),
    _score("koos_sport", "KOOS sport and recreation", items=5, item_range=(0, 4)),
    _score("koos_qol", "KOOS quality of life", items=4, item_range=(0, 4)),
    _score("acl_rsi", "ACL-RSI readiness", items=12, item_range=(0, 100)),
    _score("lysholm", "Lysholm total"),
    _score("tegner", "Tegner activity level", high=10),
    _score("kos_adl", "KOS activities of daily living", items=14, item_range=(0, 5)),
    _score("tsk_11", "TSK-11 fear of movement", low=11, high=44, better="lower", items=11, item_range=(1, 4)),
    _score("global_rating", "global rating of the knee"),
)
