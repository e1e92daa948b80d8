"""What a case holds, counted: the summary that ``kneecase check`` prints."""

from __future__ import annotations

from collections import Counter

from kneecase.record import Case, banner_of, measure_named

__all__ = ["contents_text", "is_invented", "measured_lines"]


def contents_text(case: Case) -> str:
    """Banner, counts and warnings of a case, as text.

    Parameters
    ----------
    case : Case
        The case.

    Returns
    -------
    str
        Plain text, several lines.
    """
    lines = [banner_of(case).line(), "", *_counts(case), *measured_lines(case)]
    if is_invented(case):
        lines.append("This case is invented, for teaching.")
    if case.warnings:
        lines += ["", f"{_some(len(case.warnings), 'warning')}; the values are kept as they are:"]
        lines += [f"- {warning.sentence()}" for warning in case.warnings]
    return "\n".join(lines)


def measured_lines(case: Case) -> list[str]:
    """One line a measure: how many readings, from when to when, and how many are missing with a reason."""
    lines = []
    for measure in dict.fromkeys(reading.measure for reading in case.readings):
        rows = case.readings_of(measure)
        held = [row for row in rows if not row.missing]
        reasons = Counter(row.missing for row in rows if row.missing)
        text = f"{measure_named(measure).label}: {_some(len(held), 'reading')}"
        if held:
            first, last = min(row.date for row in held), max(row.date for row in held)
            text += f", {first.isoformat()}" + (f" to {last.isoformat()}" if last != first else "")
        text += "".join(f"; {count} {reason}" for reason, count in reasons.items())
        lines.append(f"  {text}")
    return lines


def is_invented(case: Case) -> bool:
    """Whether the case itself says that it is made up: the pseudonym holds the word 'invented'."""
    return "invented" in case.athlete.pseudonym.lower()


def _counts(case: Case) -> list[str]:
    parts = [
        _some(len(case.readings), "measurement row"),
        _some(len(case.visits), "visit"),
        _some(len(case.limits), "surgeon's limit"),
        _some(len(case.events), "event"),
    ]
    return [", ".join(parts) + ":"]


def _some(count: int, thing: str) -> str:
    return f"{count} {thing}{'' if count == 1 else 's'}"
