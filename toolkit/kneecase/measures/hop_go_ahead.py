"""Whether maximal hopping may go ahead today: conditions met, not met and unknown; never a permission."""

from __future__ import annotations

import datetime as dt
from collections.abc import Sequence
from dataclasses import dataclass

from kneecase.answers import Answer, Verdict
from kneecase.measures.go_ahead_item import GoAheadItem
from kneecase.measures.go_ahead_items import go_ahead_items
from kneecase.record import Case, Visit, banner_of

__all__ = ["STOP_RULES", "HopGoAhead", "hop_go_ahead"]

STOP_RULES = (
    "Stop at pain above the line of the conditions, or pain that rises from trial to trial.",
    "Stop when the knee gives way, locks, swells, or a pop is felt or heard.",
    "Stop when landings are lost again and again, or the athlete is afraid or wants to stop.",
    "Stop at calf pain, breathlessness or chest pain, and send to urgent care.",
    "Look at effusion and soreness again after the tests and on the next day.",
)
"""When to stop during hop tests; common practice, no source."""


@dataclass(frozen=True, kw_only=True)
class HopGoAhead(Answer):
    """The conditions for maximal hopping on one day.

    ``items`` are the conditions; ``verdict`` is met only when every one is met, not met when any is not,
    else unknown; ``overrides`` are what clinicians recorded against it on that day, in words: they are
    shown and change no condition.
    """

    items: tuple[GoAheadItem, ...]
    verdict: Verdict
    overrides: tuple[str, ...]


def hop_go_ahead(case: Case, on: dt.date | None = None) -> HopGoAhead:
    """Whether the conditions for maximal hopping are met on the day.

    Looked at before the first maximal hop of a session: orders, warning signs, effusion, motion, pain,
    quadriceps and warm-up.

    Parameters
    ----------
    case : Case
        The recorded case.
    on : datetime.date, optional
        The day looked at; default the last recorded date.

    Returns
    -------
    HopGoAhead
        One item a condition, the whole, overrides recorded that day, and stop rules among the cautions.

    Notes
    -----
    What is unknown warns and never passes. The quadriceps index is decided as observed, and against a limb
    that is not a trustworthy reference it is unknown. No published week makes hopping safe.

    References
    ----------
    adams-2012, common-practice
    """
    day = on or case.last_date
    known = case.as_of(day)
    items = go_ahead_items(known, day)
    overrides = tuple(_override_words(v) for v in known.visits if v.date == day and v.override_of)
    return HopGoAhead(
        heading="Before maximal hopping",
        banner=banner_of(case, day),
        summary=_summary(items, overrides),
        findings=items,
        cautions=(
            *_unknown_caution(items),
            *overrides,
            *STOP_RULES,
            "Conditions met are not permission: the surgeon's orders, the local protocol and the clinician "
            "who is present decide.",
        ),
        items=items,
        verdict=_whole(items),
        overrides=overrides,
    )


def _whole(items: Sequence[GoAheadItem]) -> Verdict:
    verdicts = {item.verdict for item in items}
    if "not met" in verdicts:
        return "not met"
    return "met" if verdicts == {"met"} else "unknown"


def _listed(items: Sequence[GoAheadItem], verdict: Verdict) -> str:
    return "; ".join(item.label for item in items if item.verdict == verdict)


def _unknown_caution(items: Sequence[GoAheadItem]) -> tuple[str, ...]:
    unknown = _listed(items, "unknown")
    return (f"Unknown, so it does not count as met: {unknown}.",) if unknown else ()


def _summary(items: Sequence[GoAheadItem], overrides: Sequence[str]) -> str:
    met = sum(item.verdict == "met" for item in items)
    parts = [f"{met} of {len(items)} conditions for maximal hopping are met"]
    failing, unknown = _listed(items, "not met"), _listed(items, "unknown")
    parts += [f"not met: {failing}"] if failing else []
    parts += [f"unknown: {unknown}"] if unknown else []
    if overrides:
        parts.append("an override is recorded")
    return "; ".join(parts) + ". The clinician who is present decides."


def _override_words(visit: Visit) -> str:
    """A clinician's own decision against a condition, as recorded."""
    parts = [f"Override recorded on {visit.date.isoformat()}: {visit.override_of}"]
    parts.append(f"reason: {visit.reason or 'not given'}")
    parts.append(f"decided by: {visit.decided_by or 'not recorded'}")
    parts.append(f"surgeon told: {visit.surgeon_told or 'not recorded'}")
    return "; ".join(parts) + ". It changes no condition above."
