"""Named ways of giving hop tests: what counts, how a trial is scored, and who describes it so."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from kneecase.errors import InputError
from kneecase.evidence import HowKnown, PublishedValue, Source
from kneecase.evidence.hop_administration import (
    FOOTBALL_COHORT_2023,
    GUSTAVSSON_2006,
    HOPS_LANDING_HOLD_REID2007,
    HOPS_PRACTICE_TRIALS_FOOTBALL2023,
    HOPS_PRACTICE_TRIALS_GUIDELINE2010,
    HOPS_PRACTICE_TRIALS_MYERS2014,
    HOPS_PRACTICE_TRIALS_REID2007,
    HOPS_SCORED_TRIALS_FOOTBALL2023,
    HOPS_SCORED_TRIALS_GUIDELINE2010,
    HOPS_SCORED_TRIALS_KRAMER1992,
    HOPS_SCORED_TRIALS_MYERS2014,
    HOPS_SCORED_TRIALS_REID2007,
    KRAMER_1992,
    MYERS_2014,
)
from kneecase.evidence.hops import GUIDELINE_2010, REID_2007
from kneecase.measures.comparable import Statistic
from kneecase.units import number_text

__all__ = ["DEFAULT_ADMINISTRATION", "HOP_ADMINISTRATIONS", "HopAdministration", "hop_administration"]

_UNREAD = {"from memory": "from memory, unverified", "secondary": "read second-hand, unverified"}
_FOUR = ("single_hop", "timed_hop_6m", "triple_hop", "crossover_hop")


@dataclass(frozen=True, kw_only=True)
class HopAdministration:
    """One way of giving hop tests, as its author describes it; ``None`` and ``""`` mean not said.

    ``scored`` and ``practice`` are the trials on each limb; ``statistic`` makes the limb's score from
    its scored trials, and ``statistic_known`` says how that is known; ``read_to`` is the part of the
    landing foot the distance is read to.
    """

    id: str
    tests: tuple[str, ...]
    source: Source
    statistic: Statistic | None
    statistic_known: HowKnown
    scored: PublishedValue | None = None
    practice: PublishedValue | None = None
    landing_hold: PublishedValue | None = None
    landing: str = ""
    arms: str = ""
    read_to: str = ""
    first_limb: str = ""
    order: str = ""
    note: str = ""

    @property
    def evidence(self) -> tuple[PublishedValue, ...]:
        """The published values this way of giving the tests rests on."""
        return tuple(v for v in (self.practice, self.scored, self.landing_hold) if v is not None)

    def words(self) -> str:
        """The whole description on one line; what the author does not say is said to be unsaid."""
        hold = self.landing_hold
        parts = [
            f"practice trials {_count(self.practice)}",
            f"scored trials {_count(self.scored)}",
            f"score: {self.statistic or 'not said'}"
            + (f" ({_UNREAD[self.statistic_known]})" if self.statistic_known in _UNREAD else ""),
            f"landing {'held ' + hold.quantity() if hold else self.landing or 'not said'}",
            f"arms {self.arms or 'not said'}",
            f"distance read to {self.read_to or 'not said'}",
            f"first limb {self.first_limb or 'not said'}",
            f"order {self.order or 'not said'}",
        ]
        return f"{self.id}: {'; '.join(parts)}"


def _count(value: PublishedValue | None) -> str:
    return "not said" if value is None else number_text(value.number)


_ALL = (
    HopAdministration(
        id="reid-2007",
        tests=_FOUR,
        source=REID_2007,
        statistic="mean",
        statistic_known="from memory",
        scored=HOPS_SCORED_TRIALS_REID2007,
        practice=HOPS_PRACTICE_TRIALS_REID2007,
        landing_hold=HOPS_LANDING_HOLD_REID2007,
        arms="free",
        first_limb="the one not operated on",
        order="single, 6-m timed, triple, crossover",
        note="a trial is lost and repeated when the other foot or a hand touches, balance is lost or an "
        "extra hop follows; usual footwear; rest between trials and tests",
    ),
    HopAdministration(
        id="guideline-2010",
        tests=_FOUR,
        source=GUIDELINE_2010,
        statistic=None,
        statistic_known="full text",
        scored=HOPS_SCORED_TRIALS_GUIDELINE2010,
        practice=HOPS_PRACTICE_TRIALS_GUIDELINE2010,
        first_limb="the one not operated on",
        note="time by stopwatch from the command until the line is crossed; a functional brace is advised in "
        "the first year",
    ),
    HopAdministration(
        id="myers-2014",
        tests=_FOUR,
        source=MYERS_2014,
        statistic="mean",
        statistic_known="abstract",
        scored=HOPS_SCORED_TRIALS_MYERS2014,
        practice=HOPS_PRACTICE_TRIALS_MYERS2014,
        first_limb="by the toss of a coin",
        order="random",
    ),
    HopAdministration(
        id="kramer-1992",
        tests=("single_hop",),
        source=KRAMER_1992,
        statistic="mean",
        statistic_known="abstract",
        scored=HOPS_SCORED_TRIALS_KRAMER1992,
        note="compared mean and longest: the longest goes farther, the symmetry index was the same",
    ),
    HopAdministration(
        id="football-2023",
        tests=("single_hop", "triple_hop", "crossover_hop"),
        source=FOOTBALL_COHORT_2023,
        statistic="best",
        statistic_known="full text",
        scored=HOPS_SCORED_TRIALS_FOOTBALL2023,
        practice=HOPS_PRACTICE_TRIALS_FOOTBALL2023,
        landing="controlled",
        read_to="heel",
        note="more trials while the athlete still improves",
    ),
    HopAdministration(
        id="gustavsson-2006",
        tests=("vertical_hop", "single_hop", "side_hop_30s"),
        source=GUSTAVSSON_2006,
        statistic="best",
        statistic_known="secondary",
        landing="without an extra hop",
        arms="behind the back",
        read_to="heel",
        note="side hop over 40 cm for 30 s; a strip that is touched is an error, above 25 % errors the test "
        "is repeated after 3 min",
    ),
)

HOP_ADMINISTRATIONS: Mapping[str, HopAdministration] = MappingProxyType({way.id: way for way in _ALL})
"""Every named way of giving hop tests, by its id; what a record writes under ``administration``."""

DEFAULT_ADMINISTRATION = "reid-2007"
"""Taken where the record does not say: the error of the symmetry index was measured with it, and the mean
uses every scored trial, so that it does not grow with the number of trials as the best one does."""


def hop_administration(id: str) -> HopAdministration:
    """The named way of giving hop tests with this id.

    Parameters
    ----------
    id : str
        One of :data:`HOP_ADMINISTRATIONS`.

    Returns
    -------
    HopAdministration
        Trials, score, landing, arms and order, with the source.

    Raises
    ------
    InputError
        If there is none of this name.

    Examples
    --------
    >>> hop_administration("myers-2014").statistic
    'mean'
    """
    if id not in HOP_ADMINISTRATIONS:
        raise InputError(f"administration must be one of {', '.join(HOP_ADMINISTRATIONS)}, got {id!r}.")
    return HOP_ADMINISTRATIONS[id]
