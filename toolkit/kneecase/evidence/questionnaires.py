"""The outcome scores as instruments: how many items, the points an item can get, whose form it is.

Items are known here by number only.  No wording of any form is kept in kneecase: the forms belong to
their owners, and the arithmetic works on numbers.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from kneecase.evidence.provenance import HowKnown

__all__ = ["QUESTIONNAIRES", "Questionnaire"]

_ItemRange = tuple[float, float]


@dataclass(frozen=True, kw_only=True)
class Questionnaire:
    """One instrument: points allowed for each item by number [points], the total's range, the owner.

    ``item_ranges`` is empty where only the total is taken.  ``items_known`` says how the item list is
    known; ``entry`` how the numbers are to be entered; ``ownership`` whose form it is (unverified).
    """

    measure: str
    label: str
    item_ranges: tuple[_ItemRange, ...]
    entry: str
    ownership: str
    items_known: HowKnown

    @property
    def item_count(self) -> int:
        """Number of scored items."""
        return len(self.item_ranges)


_FIVE_STEPS: _ItemRange = (0, 4)
_TEN: _ItemRange = (0, 10)
_IKDC_TEN_POINT = (2, 3, 18)
_IKDC_YES_NO = 6
_IKDC_ITEMS = 18


def _ikdc_ranges() -> tuple[_ItemRange, ...]:
    """18 scored items: 14 of 0-4, 3 of 0-10, 1 of 0-1; the question on the time before is not scored."""
    special = dict.fromkeys(_IKDC_TEN_POINT, _TEN) | {_IKDC_YES_NO: (0, 1)}
    return tuple(special.get(number, _FIVE_STEPS) for number in range(1, _IKDC_ITEMS + 1))


_KOOS_ENTRY = "0 is no problem, 4 the worst; in the form's own order within the subscale"
_KOOS_OWNER = "E. Roos; the form is not to be altered"


def _koos(measure: str, label: str, count: int) -> Questionnaire:
    return Questionnaire(
        measure=measure,
        label=label,
        item_ranges=(_FIVE_STEPS,) * count,
        entry=_KOOS_ENTRY,
        ownership=_KOOS_OWNER,
        items_known="full text",
    )


_ALL = (
    Questionnaire(
        measure="ikdc_subjective",
        label="IKDC subjective knee score",
        item_ranges=_ikdc_ranges(),
        entry="points as scored, 0 the worst, so reverse-keyed items are entered already turned round; items "
        "2, 3 and 18 take 0-10, item 6 takes 0-1, the rest 0-4; the item on the time before the injury is "
        "left out",
        ownership="American Orthopaedic Society for Sports Medicine",
        items_known="full text",
    ),
    _koos("koos_pain", "KOOS pain", 9),
    _koos("koos_symptoms", "KOOS symptoms", 7),
    _koos("koos_adl", "KOOS daily living", 17),
    _koos("koos_sport", "KOOS sport and recreation", 5),
    _koos("koos_qol", "KOOS quality of life", 4),
    Questionnaire(
        measure="acl_rsi",
        label="ACL-RSI readiness",
        item_ranges=((0, 100),) * 12,
        entry="12 items of 0-100, or of 0-10; write 'items 0-100' or 'items 0-10' in administration",
        ownership="Webster, Feller and Lambros",
        items_known="full text",
    ),
    Questionnaire(
        measure="lysholm",
        label="Lysholm total",
        item_ranges=(),
        entry="total only",
        ownership="published 1982 and 1985",
        items_known="from memory",
    ),
    Questionnaire(
        measure="tegner",
        label="Tegner activity level",
        item_ranges=(),
        entry="one level, 0-10",
        ownership="published 1985",
        items_known="from memory",
    ),
    Questionnaire(
        measure="kos_adl",
        label="KOS activities of daily living",
        item_ranges=((0, 5),) * 14,
        entry="14 items of 0-5, 5 the best",
        ownership="J. Irrgang and others, 1998",
        items_known="from memory",
    ),
    Questionnaire(
        measure="tsk_11",
        label="TSK-11 fear of movement",
        item_ranges=((1, 4),) * 11,
        entry="11 items of 1-4, 4 the most fear, none turned round",
        ownership="status of the form unclear: numbers only",
        items_known="from memory",
    ),
    Questionnaire(
        measure="global_rating",
        label="global rating of the knee",
        item_ranges=(),
        entry="one number, 0-100 against before the injury",
        ownership="a single rating, nobody's form",
        items_known="abstract",
    ),
)

QUESTIONNAIRES: Mapping[str, Questionnaire] = MappingProxyType({q.measure: q for q in _ALL})
"""Every outcome score by the id of its measure."""
