"""Two looks at the end of extension: the heels of a prone athlete, and the quadriceps lag."""

from __future__ import annotations

from kneecase.answers import Finding, reading_words
from kneecase.evidence.motion_grades import (
    HEEL_HEIGHT_DEG_PER_CM_COMMON_PRACTICE,
    HEEL_HEIGHT_DEG_PER_CM_SCHLEGEL2002,
    LAG_5_DEG_SHARE_AFTER_5_S_STILLMAN2004,
    LAG_5_DEG_SHARE_AT_ONCE_STILLMAN2004,
    LAG_AFTER_5_S_STILLMAN2004,
    LAG_AT_ONCE_STILLMAN2004,
)
from kneecase.measures.comparable import by_condition, condition_words, day_scores
from kneecase.measures.heel_height import shank_angle_deg, thumb_rule_angle_deg
from kneecase.measures.limb_pair import LimbPair
from kneecase.record import Case, Reading
from kneecase.units import quantity_text

__all__ = ["heel_height_findings", "lag_finding"]

_RULES = (HEEL_HEIGHT_DEG_PER_CM_COMMON_PRACTICE, HEEL_HEIGHT_DEG_PER_CM_SCHLEGEL2002)
_LAGS = (
    LAG_AT_ONCE_STILLMAN2004,
    LAG_AFTER_5_S_STILLMAN2004,
    LAG_5_DEG_SHARE_AT_ONCE_STILLMAN2004,
    LAG_5_DEG_SHARE_AFTER_5_S_STILLMAN2004,
)


def heel_height_findings(case: Case) -> tuple[tuple[Finding, tuple[Reading, ...]], ...]:
    """The latest heel-height difference under each condition in degrees, with the readings behind it."""
    rows = [r for r in case.readings_of("heel_height_difference") if r.date >= case.surgery.date]
    found = []
    for key, group in by_condition(rows).items():
        latest = day_scores(group)[-1]
        condition = condition_words("heel_height_difference", key)
        finding = _heel_height_finding(case, latest.value, condition, latest.readings)
        found.append((finding, latest.readings))
    return tuple(found)


def lag_finding(pair: LimbPair) -> Finding:
    """The quadriceps lag of the operated knee beside that of the other; a healthy knee lags too."""
    own = pair.involved.value
    if pair.uninvolved is None:
        words = "the other knee's lag was not read that day: healthy knees lag too, so read both"
    else:
        more = own - pair.uninvolved.value
        words = (
            f"other knee {quantity_text(pair.uninvolved.value, 'deg')}: "
            f"{quantity_text(abs(more), 'deg')} {'more' if more >= 0 else 'less'} than the other"
        )
    return Finding(
        label="quadriceps lag" + (f", {pair.condition}" if pair.condition else ""),
        value=own,
        unit="deg",
        words=words,
        inputs=tuple(reading_words(r) for r in pair.readings),
        formula="passive extension reached minus active extension reached",
        error="no published error of a quadriceps lag is known",
        evidence=_LAGS,
        cautions=("Read within the first second, and compare with the other leg, not with a fixed number.",),
    )


def _heel_height_finding(
    case: Case, height_cm: float, condition: str, readings: tuple[Reading, ...]
) -> Finding:
    label = "extension deficit by heel height" + (f", {condition}" if condition else "")
    rules = " or ".join(quantity_text(thumb_rule_angle_deg(height_cm, r.number), "deg") for r in _RULES)
    rule = f"rules of thumb would say {rules}"
    inputs = tuple(reading_words(r) for r in readings)
    shank = case.athlete.shank_length_cm.get(case.involved, case.athlete.shank_length_cm.get(case.uninvolved))
    if shank is None:
        return Finding(
            label=label,
            value=None,
            unit="deg",
            words=f"shank length is not recorded, so there is no angle; {rule}: measure knee axis to heel",
            inputs=inputs,
            evidence=_RULES,
        )
    return Finding(
        label=label,
        value=shank_angle_deg(height_cm, shank),
        unit="deg",
        words=f"{quantity_text(height_cm, 'cm')} at the heels; {rule}",
        inputs=(*inputs, f"shank length {quantity_text(shank, 'cm')}"),
        formula="asin(heel-height difference / shank length)",
        error="no published error of the heel-height difference is known",
        evidence=_RULES,
    )
