"""Hop tests."""

from __future__ import annotations

from kneecase.evidence.hops import (
    HOPS_CROSSOVER_SEM_BOLGLA1997,
    HOPS_MEDIAL_TRIPLE_SEM_DINGENEN2019,
    HOPS_SINGLE_SEM_BOLGLA1997,
    HOPS_TIMED_6M_SEM_BOLGLA1997,
    HOPS_TRIPLE_SEM_BOLGLA1997,
)
from kneecase.evidence.provenance import PublishedValue
from kneecase.record.catalogue.measure import ErrorRule, Measure

__all__ = ["HOP_MEASURES"]

_MATCH = ("administration",)


def _uninjured(published: PublishedValue) -> tuple[ErrorRule, ...]:
    """The error of one score in uninjured adults; no study tells testers and devices apart."""
    return (
        ErrorRule(
            published=published,
            is_a="sem",
            reason="from uninjured adults two days apart; no study tells testers or devices apart",
        ),
    )


_MEDIAL_TRIPLE_ERROR = ErrorRule(
    published=HOPS_MEDIAL_TRIPLE_SEM_DINGENEN2019,
    is_a="sem",
    relative=True,
    reason="the largest printed for four hop tests, because the abstract does not say which test has which",
)

HOP_MEASURES = (
    Measure(
        id="single_hop",
        label="single hop for distance",
        unit="cm",
        group="hop",
        hard=(1, 400),
        plausible=(15, 280),
        better="higher",
        must_match=_MATCH,
        errors=_uninjured(HOPS_SINGLE_SEM_BOLGLA1997),
    ),
    Measure(
        id="triple_hop",
        label="triple hop for distance",
        unit="cm",
        group="hop",
        hard=(1, 1200),
        plausible=(60, 850),
        better="higher",
        must_match=_MATCH,
        errors=_uninjured(HOPS_TRIPLE_SEM_BOLGLA1997),
    ),
    Measure(
        id="crossover_hop",
        label="crossover hop for distance",
        unit="cm",
        group="hop",
        hard=(1, 1200),
        plausible=(60, 800),
        better="higher",
        must_match=_MATCH,
        errors=_uninjured(HOPS_CROSSOVER_SEM_BOLGLA1997),
    ),
    Measure(
        id="timed_hop_6m",
        label="6-m timed hop",
        unit="s",
        group="hop",
        hard=(0.5, 60),
        plausible=(1.2, 10),
        better="lower",
        must_match=_MATCH,
        errors=_uninjured(HOPS_TIMED_6M_SEM_BOLGLA1997),
    ),
    Measure(
        id="vertical_hop",
        label="vertical hop",
        unit="cm",
        group="hop",
        hard=(0.5, 120),
        plausible=(2, 60),
        better="higher",
        must_match=_MATCH,
        note="height; from flight time with kneecase.measures.jump_height_cm",
    ),
    Measure(
        id="side_hop_30s",
        label="side hop, count in 30 s",
        unit="reps",
        group="hop",
        hard=(0, 150),
        plausible=(3, 90),
        better="higher",
        must_match=_MATCH,
    ),
    Measure(
        id="side_hop_10_timed",
        label="side hop, time for ten",
        unit="s",
        group="hop",
        hard=(1, 120),
        plausible=(2, 40),
        better="lower",
        must_match=_MATCH,
    ),
    Measure(
        id="medial_triple_hop",
        label="medial side triple hop",
        unit="cm",
        group="hop",
        hard=(1, 1200),
        plausible=(60, 700),
        better="higher",
        must_match=_MATCH,
        errors=(_MEDIAL_TRIPLE_ERROR,),
    ),
)
