"""What an observer looks for, by item number and in our own words, each with how the item is known."""

from __future__ import annotations

from dataclasses import dataclass

from kneecase.evidence.landing import PADUA_2009
from kneecase.evidence.movement import PIVA_2006
from kneecase.evidence.provenance import HowKnown, Source

__all__ = ["LANDING_ITEMS", "STEP_DOWN_ITEMS", "ObservedItem"]


@dataclass(frozen=True, kw_only=True)
class ObservedItem:
    """One thing to look for: its number, what counts as an error, the most points it can get [points]."""

    number: int
    words: str
    highest: int
    source: Source
    known: HowKnown

    @property
    def verified(self) -> bool:
        """Whether the item was read at first hand."""
        return self.known in ("full text", "abstract")


def _landing(number: int, words: str, known: HowKnown = "full text", highest: int = 1) -> ObservedItem:
    return ObservedItem(number=number, words=words, highest=highest, source=PADUA_2009, known=known)


def _step(number: int, words: str, highest: int = 1) -> ObservedItem:
    return ObservedItem(number=number, words=words, highest=highest, source=PIVA_2006, known="full text")


LANDING_ITEMS = (
    _landing(1, "at contact the knee is bent less than 30°"),
    _landing(2, "at contact the thigh is in line with the trunk"),
    _landing(3, "at contact the trunk is upright or leans back"),
    _landing(4, "at contact either foot lands on the heel or flat"),
    _landing(5, "at contact the line down from the patella falls inside the middle of the foot"),
    _landing(6, "at contact the trunk is bent to one side"),
    _landing(7, "the stance is wider than the shoulders"),
    _landing(8, "the stance is narrower than the shoulders"),
    _landing(9, "the foot is turned in more than 30°", "from memory"),
    _landing(10, "the foot is turned out more than 30°", "from memory"),
    _landing(11, "the feet land at different times or in different ways"),
    _landing(12, "the knee bends less than 45° further after contact", "from memory"),
    _landing(13, "the hip bends no further by the deepest point", "from memory"),
    _landing(14, "the trunk bends no further by the deepest point", "from memory"),
    _landing(15, "at the worst moment the knee is inside the great toe", "from memory"),
    _landing(16, "motion over all joints: 0 soft, 1 average, 2 stiff", "from memory", highest=2),
    _landing(17, "impression of the whole: 0 excellent, 1 average, 2 poor", "from memory", highest=2),
)
"""The 17 items of the landing error score, 0 to 19 points in all, more is worse."""

STEP_DOWN_ITEMS = (
    _step(1, "an arm leaves the waist"),
    _step(2, "the trunk leans"),
    _step(3, "the pelvis does not stay level"),
    _step(4, "the knee goes inward: 1 past the second toe, 2 past the inner edge of the foot", highest=2),
    _step(5, "unsteady, or the other foot touches down"),
)
"""The 5 items of the lateral step-down, 0 to 6 points in all, more is worse."""
