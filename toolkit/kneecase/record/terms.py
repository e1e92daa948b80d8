"""The closed lists of words a record may use, each in the trade's own terms."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

__all__ = [
    "ACTIONS",
    "EFFUSION_GRADES",
    "EVENT_KINDS",
    "GRAFTS",
    "LIMIT_KINDS",
    "MISSING_REASONS",
    "OUTSIDE_SCOPE",
    "QUESTIONS",
    "SORENESS",
    "STATUSES",
]

GRAFTS = ("patellar tendon", "hamstring tendon", "quadriceps tendon", "other")
"""Where the graft was taken from."""

EFFUSION_GRADES = ("zero", "trace", "1+", "2+", "3+")
"""The five grades of the stroke test, least first; a reading's ``value`` is the place in this list."""

SORENESS: Mapping[str, str] = MappingProxyType(
    {
        "none": "no joint soreness",
        "warm-up, then gone": "sore in the warm-up, then gone",
        "warm-up, continues": "sore in the warm-up and through the session",
        "warm-up, gone, returns": "sore in the warm-up, gone, back during the session",
        "after": "sore more than an hour after, or next day",
    }
)
"""Joint soreness (not muscle soreness) around the last session."""

QUESTIONS: Mapping[str, str] = MappingProxyType(
    {
        "giving_way": "giving way since the last visit",
        "locking": "locking or catching that blocks motion",
        "wound_problem": "wound open, draining, or red and hot",
        "fever": "fever or feeling ill",
        "calf_pain_or_swelling": "new calf pain or swelling",
        "breathlessness": "breathlessness",
        "chest_pain": "chest pain",
        "foot_numb_or_cold": "foot numb, cold or weak",
        "pop_or_fall": "a pop, a fall or a new injury",
        "painful_clunk": "painful clunk at the end of extension",
        "pain_out_of_proportion": "pain out of proportion to the findings",
        "gait_normal": "walks without a limp",
        "straight_leg_raise": "raises the straight leg",
        "lag": "the knee sags during the straight-leg raise",
        "warm_up_done": "warmed up before testing",
    }
)
"""Intake questions; each is answered yes, no or not asked."""

MISSING_REASONS = ("declined", "unsafe", "not done")
"""Why there is no reading."""

STATUSES = ("scored", "lost", "practice")
"""Whether a trial counts: scored, a lost landing, or practice."""

ACTIONS = ("progress", "hold", "step back", "refer")
"""What a clinician may decide for the whole knee on a day."""

EVENT_KINDS = ("manipulation", "re-injury", "second surgery", "change of programme", "other")
"""Dated events that restart the clock or bend the course."""

LIMIT_KINDS: Mapping[str, str] = MappingProxyType(
    {
        "flexion": "deg",
        "extension": "deg",
        "weight bearing": "pct",
        "brace": "",
        "open-chain strength": "",
        "strength testing": "",
        "running": "",
        "jumping and hopping": "",
        "other": "",
    }
)
"""What a surgeon may limit, and the unit of its number ('' where it has none: not allowed while in force)."""

OUTSIDE_SCOPE = ("multiligament", "fracture", "osteotomy", "large cartilage repair")
"""Concomitant procedures that put a knee outside what kneecase reasons about: recorded, red flags only."""
