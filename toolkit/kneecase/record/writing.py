"""The texts of a case's files as they would be saved, checked by reading them before they are."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any, get_args

from kneecase.errors import CaseError, SaveError
from kneecase.record.columns import MEASUREMENT_COLUMNS, PAIN_COLUMNS, VISIT_COLUMNS
from kneecase.record.references import in_table, reference_blocks
from kneecase.record.same_case import differences
from kneecase.record.table_changes import RowChanges, Thoroughness, reading_changes, visit_changes
from kneecase.record.table_text import TableText
from kneecase.record.template import texts_of_new_case
from kneecase.record.toml_text import case_toml_text
from kneecase.record.workbook import SHEETS, WORKBOOK

if TYPE_CHECKING:
    from kneecase.record.case import Case

__all__ = ["Written", "written"]

_NUMBER_COLUMNS = ("value", "angle_deg", "speed_deg_per_s", "lever_arm_m")
_SHOWN = 5


@dataclass(frozen=True)
class Written:
    """The text of every file as it is to stand, and the case those texts read as."""

    texts: Mapping[str, str]
    case: Case


def written(case: Case, folder: Path) -> Written:
    """The texts of ``case``, with as little changed as will read back as this very case.

    Raises
    ------
    SaveError
        If no text reads back as it: a value that is not allowed, or one that no column holds.
    """
    from kneecase.record.reading import case_from_texts

    texts = dict(case.texts) or texts_of_new_case(_needed(case))
    base = case_from_texts(texts, path=folder, fingerprint={})
    refusals: list[str] = []
    for how in get_args(Thoroughness):
        try:
            new = _texts(texts, base, case, how)
            content = {name: text.encode("utf-8") for name, text in new.items()}
            found = base if new == texts else case_from_texts(content, path=folder, fingerprint={})
        except (CaseError, ValueError) as error:
            refusals.append(str(error))
            continue
        said = differences(case, found)
        if not said:
            return Written(new, found)
        refusals.append("; ".join(said[:_SHOWN]) + ("; and more" if len(said) > _SHOWN else ""))
    raise SaveError(
        f"This case would not read back as it is, so nothing was saved. {refusals[-1]} "
        "Mend it and save again; the case in hand still holds everything."
    )


def _needed(case: Case) -> dict[tuple[str, str], Any]:
    return {
        ("athlete", "pseudonym"): case.athlete.pseudonym,
        ("surgery", "date"): case.surgery.date,
        ("surgery", "side"): case.surgery.side,
    }


def _texts(texts: Mapping[str, str], base: Case, case: Case, how: Thoroughness) -> dict[str, str]:
    """Every file's text for ``case``; one that need not change is the very same text."""
    references = reference_blocks(base.readings), reference_blocks(case.readings)
    readings = in_table(base.readings), in_table(case.readings)
    new = {
        "case.toml": case_toml_text(texts["case.toml"], base, case, references),
        "measurements.csv": _table_text(
            texts.get("measurements.csv", ""),
            MEASUREMENT_COLUMNS,
            _NUMBER_COLUMNS,
            lambda mark: reading_changes(*readings, mark, how),
        ),
        "visits.csv": _table_text(
            texts.get("visits.csv", ""),
            VISIT_COLUMNS,
            tuple(PAIN_COLUMNS),
            lambda mark: visit_changes(base.visits, case.visits, mark, how),
        ),
    }
    if WORKBOOK in case.fingerprint:  # a table that is not written would come back from its sheet
        new = {name: text or ",".join(SHEETS[name.removesuffix(".csv")]) + "\n" for name, text in new.items()}
    return {name: text for name, text in new.items() if text or name in texts}


def _table_text(
    text: str, known: Sequence[str], numbers: Sequence[str], changes_for: Callable[[str], RowChanges]
) -> str:
    table = TableText(text, known)
    changes = changes_for(table.decimal_mark_of(numbers))
    if not changes.changed and not changes.added:
        return text
    return table.rewritten(changes.changed, changes.added)
