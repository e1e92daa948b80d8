"""Reading a case: every file looked through, every fault gathered, then one case or one refusal."""

from __future__ import annotations

import difflib
import os
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path

from kneecase.errors import CaseError, Problem
from kneecase.record.case import Case
from kneecase.record.case_file import CaseFile, case_file_from
from kneecase.record.doubts import (
    note_repeated_ids,
    note_repeated_readings,
    note_repeated_visits,
    note_unlikely_sides,
)
from kneecase.record.folder import CASE_FILES, read_folder
from kneecase.record.headers import Headers
from kneecase.record.measurement_rows import readings_from
from kneecase.record.problems import ProblemList, Row
from kneecase.record.rows import Reading, Visit
from kneecase.record.text_files import decoded, table_rows
from kneecase.record.toml_parts import CASE_FILE
from kneecase.record.visit_rows import visits_from
from kneecase.record.workbook import SHEETS, WORKBOOK, Workbook

__all__ = ["case_from_texts", "read_case"]

MEASUREMENTS, VISITS = "measurements.csv", "visits.csv"


def read_case(path: str | Path) -> Case:
    """The case recorded in a folder.

    Parameters
    ----------
    path : str or Path
        The case folder, or the ``case.toml`` in it.

    Returns
    -------
    Case
        With everything unlikely but possible in :attr:`Case.warnings`.

    Raises
    ------
    CaseError
        If anything in it is impossible or cannot be understood; ``problems`` holds all of it,
        each with file, row, column, value, what is allowed and how to mend it.
    NewerFormatError
        If a later kneecase wrote it.
    CaseLockedError
        If another program keeps saving it.
    """
    place = Path(path)
    folder = place.parent if place.name == CASE_FILE and not place.is_dir() else place
    found = read_folder(folder)
    problems = (*found.problems, *_misnamed(folder, found.contents))
    return case_from_texts(found.contents, path=folder, fingerprint=found.fingerprint, problems=problems)


def case_from_texts(
    texts: Mapping[str, str | bytes],
    *,
    path: Path | None,
    fingerprint: Mapping[str, str],
    problems: Sequence[Problem] = (),
) -> Case:
    """The case whose files hold ``texts``, by file name; nothing on disk is touched.

    Parameters
    ----------
    texts : mapping
        Bytes as read, or text, of ``case.toml``, ``measurements.csv``, ``visits.csv`` and
        ``measurements.xlsx``; only the first has to be there.
    path : Path or None
        The folder, kept in the case.
    fingerprint : mapping
        The SHA-256 of each file, kept in the case.
    problems : sequence of Problem
        What was already found about the folder.

    Returns
    -------
    Case
        With everything unlikely but possible in :attr:`Case.warnings`.

    Raises
    ------
    CaseError, NewerFormatError
        As :func:`read_case`.
    """
    noted = ProblemList(problems)
    plain = {name: decoded(content, name, noted) for name, content in texts.items() if name != WORKBOOK}
    case_file = _case_file(plain, noted)
    workbook = _workbook(texts, noted)
    readings, reading_file = _readings(_table("measurements", plain, workbook, noted), case_file)
    visits, visit_file = _visits(_table("visits", plain, workbook, noted), case_file)
    _note_ids(noted, case_file.references, readings, reading_file, visits, visit_file)
    if noted.error_count or case_file.athlete is None or case_file.surgery is None:
        raise CaseError(noted.all)
    return Case(
        athlete=case_file.athlete,
        surgery=case_file.surgery,
        readings=tuple(sorted((*case_file.references, *readings), key=lambda reading: reading.date)),
        visits=tuple(sorted(visits, key=lambda visit: visit.date)),
        limits=case_file.limits,
        events=case_file.events,
        warnings=noted.warnings,
        format_version=case_file.format_version,
        path=path,
        fingerprint=dict(fingerprint),
        texts=plain,
    )


@dataclass(frozen=True)
class _Table:
    """The rows of one table and where they stand."""

    file: str
    headers: Headers
    rows: Sequence[Row]
    problems: ProblemList

    @property
    def own_ids(self) -> set[str]:
        """The ids that were typed."""
        return {row.cell("id") for row in self.rows} - {""}


def _case_file(texts: Mapping[str, str], problems: ProblemList) -> CaseFile:
    if CASE_FILE in texts:
        return case_file_from(texts[CASE_FILE], problems)
    mend = "Give the folder that holds case.toml, or make a new case with kneecase.new_case(path, ...)."
    problems.add("error", CASE_FILE, "this file is missing, and a case cannot be without it", mend)
    return CaseFile()


def _workbook(texts: Mapping[str, str | bytes], problems: ProblemList) -> Workbook | None:
    """The workbook, opened only where a CSV file leaves something to it."""
    content = texts.get(WORKBOOK)
    if not isinstance(content, bytes):
        return None
    if MEASUREMENTS in texts and VISITS in texts:
        _warn_of_both(problems, f"{MEASUREMENTS} and {VISITS}")
        return None
    workbook = Workbook(content, problems)
    workbook.warn_without_tables()
    return workbook


def _warn_of_both(problems: ProblemList, names: str) -> None:
    what = f"this workbook was left aside in favour of {names}"
    problems.add("warning", WORKBOOK, what, "Keep one of them, and move the other out of the folder.")


def _table(
    name: str, texts: Mapping[str, str], workbook: Workbook | None, problems: ProblemList
) -> _Table | None:
    """One table, from its CSV file or else from its sheet."""
    file = f"{name}.csv"
    in_workbook = workbook is not None and workbook.has(name)
    if file in texts:
        if in_workbook:
            _warn_of_both(problems, file)
        return _Table(file, *table_rows(texts[file], file, SHEETS[name], problems), problems)
    if workbook is not None and in_workbook:
        headers, rows = workbook.table(name)
        return _Table(headers.file, headers, rows, problems)
    return None


def _readings(table: _Table | None, case_file: CaseFile) -> tuple[list[Reading], str]:
    if table is None:
        return [], MEASUREMENTS
    table.headers.demand("date", "measure")
    table.headers.demand_one_of("value", "missing")
    if not table.headers.has("date", "measure"):
        return [], table.file
    readings = readings_from(table.rows, case_file.facts, table.headers.extra)
    note_repeated_readings(table.problems, table.file, readings, table.own_ids)
    if case_file.surgery is not None:
        surgery = case_file.surgery
        note_unlikely_sides(table.problems, table.file, readings, surgery.date, surgery.side)
    return readings, table.file


def _visits(table: _Table | None, case_file: CaseFile) -> tuple[list[Visit], str]:
    if table is None:
        return [], VISITS
    table.headers.demand("date")
    if not table.headers.has("date"):
        return [], table.file
    visits = visits_from(table.rows, case_file.facts, table.headers.extra)
    note_repeated_visits(table.problems, table.file, visits, table.own_ids)
    return visits, table.file


def _note_ids(
    problems: ProblemList,
    references: Sequence[Reading],
    readings: Sequence[Reading],
    reading_file: str,
    visits: Sequence[Visit],
    visit_file: str,
) -> None:
    """Ids that stand twice, among readings and among visits."""
    pairs = [*((CASE_FILE, row) for row in references), *((reading_file, row) for row in readings)]
    note_repeated_ids(problems, pairs)
    note_repeated_ids(problems, [(visit_file, row) for row in visits])


def _misnamed(folder: Path, found: Mapping[str, bytes]) -> list[Problem]:
    """Warnings of files that look like a table of the case under a slightly wrong name."""
    absent = [name for name in CASE_FILES if name not in found]
    problems = []
    for name in sorted(os.listdir(folder)) if os.access(folder, os.R_OK) else ():
        near = difflib.get_close_matches(name.lower(), absent, n=1, cutoff=0.85)
        if name not in CASE_FILES and near and name.rsplit(".")[-1].lower() == near[0].rsplit(".")[-1]:
            mend = f"Is it meant to be {near[0]}? Then give it that name."
            what = "this file is not part of a case and was not read"
            problems.append(Problem(severity="warning", file=name, what=what, mend=mend))
    return problems
