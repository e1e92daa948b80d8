"""What has to be said beside a recovery curve."""

from __future__ import annotations

from collections.abc import Iterator

from kneecase.evidence.recovery_prior import RECOVERY_CHANGE_ODDS_OURS
from kneecase.record import limit_words
from kneecase.recovery.curve_answer import RecoveryCurve
from kneecase.recovery.window import BREAKS

__all__ = ["NEVER_TESTED", "curve_cautions"]

NEVER_TESTED = (
    "This forecast was never tested on real patients' individual courses: no week-by-week series of single "
    "knees was found to test it on. It is no promise; the surgeon's orders and what this knee does go first."
)


def curve_cautions(curve: RecoveryCurve) -> tuple[str, ...]:
    """Every caution that applies, the weightiest first."""
    return (*_changed(curve), *_capped(curve), NEVER_TESTED, *_expected(curve), *_held(curve), *_notes(curve))


def _changed(curve: RecoveryCurve) -> Iterator[str]:
    change, series = curve.change, curve.series
    if change is None or series is None or change.odds < RECOVERY_CHANGE_ODDS_OURS.number:
        return
    day = series.dates[change.place].isoformat()
    yield (
        f"The readings since {day} do not follow the course of those before. The forecast here takes all of "
        "them as one course and is not to be relied on; look for a cause, tell the surgeon, and ask for the "
        "new course with since=."
    )


def _capped(curve: RecoveryCurve) -> Iterator[str]:
    if curve.limit is not None:
        yield (
            f"Surgeon's limit in force: {limit_words(curve.limit)}. Curve and target are capped by it while "
            "it holds, and stiffness is not to be read from this motion."
        )


def _expected(curve: RecoveryCurve) -> Iterator[str]:
    series = curve.series
    if series is None:
        return
    if curve.prior is None:
        after = f" after a {series.opened_by}" if series.opened_by in BREAKS else ""
        yield (
            f"No prior: no cohort was found that says what to expect{after}, so the curve rests on these "
            "values alone and is wide."
        )
        return
    count = len(series.values)
    if count < 3:
        yield (
            f"With {count} reading{'s' if count > 1 else ''} the forecast is mostly what was expected "
            "beforehand: print the prior to see it."
        )
    yield (
        "The prior is made of few published numbers and several choices of kneecase, each marked as derived; "
        "the share of stiff knees is one cohort's, and no risk factor is multiplied onto it."
    )


def _held(curve: RecoveryCurve) -> Iterator[str]:
    held = [x for x in curve.left_out if "surgeon's limit" in x.reason]
    if held:
        yield (
            f"{len(held)} reading{'s' if len(held) > 1 else ''} at a surgeon's limit left out: the limit was "
            "reached, and how far the knee would have gone is not known."
        )


def _notes(curve: RecoveryCurve) -> Iterator[str]:
    if curve.series is not None:
        yield from curve.series.notes
