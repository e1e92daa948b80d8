"""The landing and movement answer: landing errors, step-down quality, alignment in pictures, load shift."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass
from typing import get_args

from kneecase.answers import Answer
from kneecase.errors import InputError
from kneecase.measures.alignment_findings import alignment_part
from kneecase.measures.landing import TrialRule
from kneecase.measures.landing_findings import landing_part
from kneecase.measures.parts import joined
from kneecase.measures.stance_findings import stance_part
from kneecase.measures.step_down_findings import step_down_part
from kneecase.record import Case, banner_of

__all__ = ["LandingQuality", "landing_quality"]


@dataclass(frozen=True, kw_only=True)
class LandingQuality(Answer):
    """How somebody lands and moves; ``trial_rule`` is how one landing score was made from several."""

    trial_rule: TrialRule = "mean"


def landing_quality(
    case: Case, on: dt.date | None = None, *, trial_rule: TrialRule = "mean"
) -> LandingQuality:
    """How the athlete lands, steps down, aligns and shares the load, each on its last day up to ``on``.

    Looked at for teaching a landing and for what a symmetric number can hide. Nothing here predicts injury or
    decides return.

    Parameters
    ----------
    case : Case
        The recorded case.
    on : datetime.date, optional
        The day looked at; default the last recorded date.
    trial_rule : {"mean", "best of three", "worst", "single"}
        How one landing error score is made from several landings; kept in the answer. The mean is
        the default, because the best of three lies about a point lower.

    Returns
    -------
    LandingQuality
        Findings on landing errors, step-down quality, angles from pictures and load under the involved limb;
        a landing with a missing item has no total, and says which.

    Raises
    ------
    InputError
        If the rule is unknown.
    """
    if trial_rule not in get_args(TrialRule):
        raise InputError(f"trial_rule must be one of {', '.join(get_args(TrialRule))}, got {trial_rule!r}.")
    day = on or case.last_date
    part = joined(
        (
            landing_part(case, day, trial_rule),
            step_down_part(case, day),
            alignment_part(case, day),
            stance_part(case, day),
        )
    )
    nothing = f"No landing, step-down, angle or load is recorded up to {day.isoformat()}."
    return LandingQuality(
        heading="Landing and movement quality",
        banner=banner_of(case, day),
        summary=part.says if part.findings and part.says else _only_angles(len(part.findings)) or nothing,
        findings=part.findings,
        used=part.used,
        left_out=part.left_out,
        cautions=part.cautions,
        trial_rule=trial_rule,
    )


def _only_angles(count: int) -> str:
    return f"{count} angles from pictures; described, not judged." if count else ""
