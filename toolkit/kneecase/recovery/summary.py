"""A gain answer in one or two sentences, and why no date for a target is given."""

from __future__ import annotations

from kneecase.record import measure_named
from kneecase.recovery.progress import Progress

__all__ = ["summary_of", "why_no_date"]

_SAID = ("plateau", "target reached", "near the target", "no target")


def summary_of(progress: Progress) -> str:
    """The whole answer: what the rate shows, of the window and of the last weeks, and the last change."""
    series = progress.series
    label = measure_named(series.measure).label
    if not series.days:
        return f"No rate: no reading of {label} {series.window.words()} can be used."
    sentences = [f"{label.capitalize()}, {series.words()}, {series.window.words()}: {progress.rate.words()}."]
    if progress.recent is not None:
        start = progress.recent_days[0].date.isoformat()
        sentences.append(f"Since {start}: {progress.recent.words()}.")
    if progress.since_last is not None:
        sentences.append(f"Since the last visit: {progress.since_last.words()}.")
    if progress.held is not None and progress.held.verdict in _SAID:
        sentences.append(f"Plateau test: {progress.held.words()}.")
    reached = progress.held is not None and progress.held.verdict == "target reached"
    if progress.now.deg_per_week is not None and progress.now.includes_zero and not reached:
        sentences.append(f"{why_no_date(progress)}.")
    return " ".join(sentences)


def why_no_date(progress: Progress) -> str:
    """Why no date for reaching a target is given."""
    if progress.now.deg_per_week is None:
        return "No date for a target is given: there is no rate"
    if progress.now.includes_zero:
        return "No date for a target is given: a standstill is not excluded"
    return (
        "No date for a target is given: motion comes back more slowly the nearer it is to full, so a "
        "straight line would promise too early a day"
    )
