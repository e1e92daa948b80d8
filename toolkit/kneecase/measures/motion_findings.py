"""The single findings of a motion answer: one deficit, one arc, one passive motion grade."""

from __future__ import annotations

from kneecase.answers import Finding, reading_words
from kneecase.evidence import PublishedValue
from kneecase.evidence.motion import (
    MOTION_EXTENSION_RETEST_MDC95_PANTOUVERIS2024,
    MOTION_EXTENSION_TWO_TESTERS_ICC_GONIOMETER_PANTOUVERIS2024,
    MOTION_EXTENSION_TWO_TESTERS_ICC_INCLINOMETER_PANTOUVERIS2024,
    MOTION_EXTENSION_TWO_TESTERS_LIMITS_LENSSEN2007,
    MOTION_EXTENSION_TWO_TESTERS_MDC95_LENSSEN2007,
    MOTION_FLEXION_SITTING_TWO_TESTERS_LIMITS_LENSSEN2007,
    MOTION_FLEXION_SUPINE_TWO_TESTERS_LIMITS_LENSSEN2007,
    MOTION_MINIMUM_DIFFERENCE_INCLINOMETER_HANCOCK2018,
    MOTION_MINIMUM_DIFFERENCE_LONG_ARM_HANCOCK2018,
    MOTION_MINIMUM_DIFFERENCE_PHONE_HANCOCK2018,
    MOTION_MINIMUM_DIFFERENCE_SHORT_ARM_HANCOCK2018,
)
from kneecase.measures.comparable import DayScore
from kneecase.measures.goniometry import (
    allowed_arc_pct,
    difference_sem,
    extension_deficit_deg,
    flexion_deficit_deg,
    motion_arc_deg,
    neutral_zero_text,
)
from kneecase.measures.limb_pair import LimbPair
from kneecase.measures.motion_grade import (
    DECIMAL_RULE,
    EXTENSION_GRADES,
    FLEXION_GRADES,
    GRADE_WORDS,
    extension_grade,
    flexion_grade,
    passive_motion_grade,
)
from kneecase.measures.reliability import minimal_detectable_change, normal_quantile
from kneecase.record import Precision, precision_of
from kneecase.record.neutral_zero import extension_words
from kneecase.units import number_text, quantity_text

__all__ = ["allowed_arc_finding", "arc_finding", "deficit_deg", "deficit_finding", "grade_finding"]

_TWO_LENSSEN = (
    MOTION_FLEXION_SITTING_TWO_TESTERS_LIMITS_LENSSEN2007,
    MOTION_FLEXION_SUPINE_TWO_TESTERS_LIMITS_LENSSEN2007,
)
_HANCOCK = (
    MOTION_MINIMUM_DIFFERENCE_INCLINOMETER_HANCOCK2018,
    MOTION_MINIMUM_DIFFERENCE_LONG_ARM_HANCOCK2018,
    MOTION_MINIMUM_DIFFERENCE_PHONE_HANCOCK2018,
    MOTION_MINIMUM_DIFFERENCE_SHORT_ARM_HANCOCK2018,
)
_OTHER_ERRORS: dict[str, tuple[PublishedValue, ...]] = {
    "knee_extension": (
        MOTION_EXTENSION_RETEST_MDC95_PANTOUVERIS2024,
        MOTION_EXTENSION_TWO_TESTERS_ICC_GONIOMETER_PANTOUVERIS2024,
        MOTION_EXTENSION_TWO_TESTERS_ICC_INCLINOMETER_PANTOUVERIS2024,
        MOTION_EXTENSION_TWO_TESTERS_LIMITS_LENSSEN2007,
        MOTION_EXTENSION_TWO_TESTERS_MDC95_LENSSEN2007,
        *_HANCOCK,
    ),
    "knee_flexion": (*_TWO_LENSSEN, *_HANCOCK),
}
"""Other published errors of the same movement, which disagree and are shown beside the one used."""

_FORMULAS = {
    "knee_extension": "extension of the operated knee minus extension of the other (positive lacks)",
    "knee_flexion": "flexion of the other knee minus flexion of the operated knee",
}


def deficit_deg(pair: LimbPair) -> float | None:
    """The side-to-side deficit of a pair [deg]; ``None`` where the other knee was not measured."""
    if pair.uninvolved is None:
        return None
    own, other = pair.involved.value, pair.uninvolved.value
    if pair.measure == "knee_extension":
        return extension_deficit_deg(involved_extension_deg=own, uninvolved_extension_deg=other)
    return flexion_deficit_deg(involved_flexion_deg=own, uninvolved_flexion_deg=other)


def deficit_finding(pair: LimbPair, level: float, cautions: tuple[str, ...] = ()) -> Finding:
    """One side-to-side deficit with its error band, or 'unknown' and what to measure."""
    condition = pair.condition or "active or passive not recorded"
    label = f"{pair.measure.removeprefix('knee_')} deficit, {condition}"
    inputs = tuple(reading_words(r) for r in pair.readings)
    deficit = deficit_deg(pair)
    if deficit is None or pair.uninvolved is None:
        own = _own_words(pair.measure, pair.involved)
        return Finding(
            label=label,
            value=None,
            unit="deg",
            words=f"the operated knee {own}; the other knee was not measured this way: measure it too",
            inputs=inputs,
            cautions=cautions,
        )
    error = precision_of(pair.measure, pair.readings)
    half = None if error is None else normal_quantile(level) * difference_sem(error.sem, error.sem)
    return Finding(
        label=label,
        value=deficit,
        unit="deg",
        low=None if half is None else deficit - half,
        high=None if half is None else deficit + half,
        level=None if half is None else level,
        words=_deficit_words(pair, pair.uninvolved, deficit, error),
        inputs=inputs,
        formula=_FORMULAS[pair.measure],
        error="no published error is known" if error is None else error.words(),
        evidence=() if error is None else (error.published, *_OTHER_ERRORS[pair.measure]),
        cautions=((pair.note,) if pair.note else ()) + cautions,
    )


def arc_finding(extension: LimbPair, flexion: LimbPair) -> Finding:
    """The arc of motion of the operated knee, with both knees in neutral-zero notation."""
    ends = {"extension_deg": extension.involved.value, "flexion_deg": flexion.involved.value}
    words = f"{neutral_zero_text(**ends)} ({extension_words(extension.involved.value)})"
    if extension.uninvolved is not None and flexion.uninvolved is not None:
        words += f"; other knee {neutral_zero_text(extension.uninvolved.value, flexion.uninvolved.value)}"
    return Finding(
        label=f"arc of motion{_comma(extension.condition)}",
        value=motion_arc_deg(**ends),
        unit="deg",
        words=words,
        inputs=tuple(reading_words(r) for r in extension.involved.readings + flexion.involved.readings),
        formula="flexion minus extension of the operated knee; neutral-zero: hyperextension-lack-flexion",
    )


def allowed_arc_finding(
    extension: LimbPair, flexion: LimbPair, *, flexion_limit_deg: float, extension_limit_deg: float | None
) -> Finding:
    """The share of the allowed arc that the operated knee reaches while its flexion is limited by order."""
    own = extension.involved.value
    other = None if extension.uninvolved is None else extension.uninvolved.value
    full = min(own, 0.0) if other is None else other
    end = full if extension_limit_deg is None else extension_limit_deg
    reached = allowed_arc_pct(
        extension_deg=own,
        flexion_deg=flexion.involved.value,
        extension_limit_deg=end,
        flexion_limit_deg=flexion_limit_deg,
    )
    limit = quantity_text(flexion_limit_deg, "deg")
    beyond = flexion.involved.value > flexion_limit_deg
    return Finding(
        label=f"share of the allowed arc{_comma(extension.condition)}",
        value=reached,
        unit="pct",
        digits=0,
        words=f"flexion is limited to {limit} by order, so what lies beyond it is not missing",
        inputs=(f"end of extension allowed: {extension_words(end)}", f"flexion limit: {limit}"),
        formula="100 x (flexion - extension) / (flexion limit - end of extension allowed)",
        cautions=(f"flexion was recorded beyond the surgeon's limit of {limit}: ask the surgeon",)
        if beyond
        else (),
    )


def grade_finding(extension: LimbPair, flexion: LimbPair, cautions: tuple[str, ...] = ()) -> Finding | None:
    """The passive motion grade; ``None`` where a passive deficit is not known."""
    lack, loss = deficit_deg(extension), deficit_deg(flexion)
    if lack is None or loss is None:
        return None
    grade = passive_motion_grade(extension_lack_deg=lack, flexion_lack_deg=loss)
    return Finding(
        label=f"passive motion grade{_comma(extension.condition)}",
        value=float(tuple(GRADE_WORDS).index(grade)),
        unit="grade",
        digits=0,
        shown=grade,
        words=f"{GRADE_WORDS[grade]} (extension {extension_grade(lack)}, flexion {flexion_grade(loss)}; "
        "the worse counts)",
        inputs=(
            f"lack of extension {quantity_text(lack, 'deg')}",
            f"lack of flexion {quantity_text(loss, 'deg')}",
        ),
        formula=DECIMAL_RULE,
        error="a deficit near a border can fall on either side by measurement error alone",
        evidence=(*EXTENSION_GRADES, *FLEXION_GRADES),
        cautions=cautions,
    )


def _own_words(measure: str, score: DayScore) -> str:
    if measure == "knee_extension":
        words = extension_words(score.value)
        return "is straight" if words == "straight" else words
    return f"bends to {quantity_text(score.value, 'deg')}"


def _deficit_words(pair: LimbPair, other: DayScore, deficit: float, error: Precision | None) -> str:
    what = pair.measure.removeprefix("knee_")
    knees = (
        f"operated knee {_own_words(pair.measure, pair.involved)}, other {_own_words(pair.measure, other)}"
    )
    if deficit == 0:
        return f"{knees}: no difference read"
    size = f"{number_text(abs(deficit))}° {'less' if deficit > 0 else 'more'} {what}"
    if error is None:
        return f"{knees}: {size}"
    change = minimal_detectable_change(error.sem)
    limit = quantity_text(change, "deg") + (f" ({error.flag})" if error.flag else "")
    if abs(deficit) > change:
        return f"{knees}: {size}, more than the {limit} that error explains"
    return f"{knees}: {size}, within the {limit} of measurement error: cannot be told from none"


def _comma(condition: str) -> str:
    return f", {condition}" if condition else ""
