"""Starting a case: a folder with everything a clinician fills in, explained where it stands."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable
from pathlib import Path
from typing import TYPE_CHECKING

from kneecase.errors import InputError
from kneecase.record.commit import changing, commit, made_folder, refuse_a_case_in
from kneecase.record.rows import Side
from kneecase.record.template import texts_of_new_case, toml_value

if TYPE_CHECKING:
    from kneecase.record.case import Case

__all__ = ["new_case"]


def new_case(
    path: str | Path,
    *,
    pseudonym: str,
    surgery_date: dt.date | str,
    side: Side,
    graft: str | None = None,
    harvest_side: Side | None = None,
    allograft: bool | None = None,
    revision: bool | None = None,
    concomitant: str | Iterable[str] = (),
    earlier_left: str | Iterable[str] = (),
    earlier_right: str | Iterable[str] = (),
    year_of_birth: int | None = None,
    age_years: float | None = None,
    sex: str | None = None,
    mass_kg: float | None = None,
    height_cm: float | None = None,
    limb_length_left_cm: float | None = None,
    limb_length_right_cm: float | None = None,
    shank_length_left_cm: float | None = None,
    shank_length_right_cm: float | None = None,
    dominant_side: Side | None = None,
    sport: str | None = None,
    position: str | None = None,
    skeletally_mature: bool | None = None,
) -> Case:
    """A new case in the folder ``path``: ``case.toml`` with every key explained, and two empty tables.

    Parameters
    ----------
    path : str or Path
        The folder to make. It may be there already, as long as it holds no case.
    pseudonym : str
        A name that is not the athlete's own.
    surgery_date : datetime.date or str
        The day of the operation; text as year-month-day.
    side : {"left", "right"}
        The operated knee.
    graft, harvest_side, allograft, revision, concomitant, earlier_left, earlier_right
        The operation, and previous injury or surgery of either limb.
    year_of_birth, age_years, sex, mass_kg, height_cm
        The athlete; age at surgery [years], mass [kg], height [cm].
    limb_length_left_cm, limb_length_right_cm, shank_length_left_cm, shank_length_right_cm
        Lengths [cm]; the shank from the knee axis to the heel.
    dominant_side, sport, position, skeletally_mature
        The leg that kicks or jumps, and what is played where.

    Returns
    -------
    Case
        The case as it stands on disk.

    Raises
    ------
    CaseError
        If a value is not allowed; every fault is named and nothing is written.
    InputError
        If ``surgery_date`` is not a calendar date.
    SaveError
        If the folder already holds a case, or cannot be written.

    Examples
    --------
    >>> import tempfile
    >>> folder = Path(tempfile.mkdtemp()) / "wren"
    >>> case = new_case(folder, pseudonym="Wren", surgery_date="2026-03-02", side="left")
    >>> case.involved, len(case.readings)
    ('left', 0)
    """
    values: dict[tuple[str, str], object] = {
        ("athlete", "pseudonym"): pseudonym,
        ("athlete", "year_of_birth"): year_of_birth,
        ("athlete", "age_years"): age_years,
        ("athlete", "sex"): sex,
        ("athlete", "mass_kg"): mass_kg,
        ("athlete", "height_cm"): height_cm,
        ("athlete", "limb_length_left_cm"): limb_length_left_cm,
        ("athlete", "limb_length_right_cm"): limb_length_right_cm,
        ("athlete", "shank_length_left_cm"): shank_length_left_cm,
        ("athlete", "shank_length_right_cm"): shank_length_right_cm,
        ("athlete", "dominant_side"): dominant_side,
        ("athlete", "sport"): sport,
        ("athlete", "position"): position,
        ("athlete", "skeletally_mature"): skeletally_mature,
        ("surgery", "date"): _calendar_date(surgery_date),
        ("surgery", "side"): side,
        ("surgery", "graft"): graft,
        ("surgery", "harvest_side"): harvest_side,
        ("surgery", "allograft"): allograft,
        ("surgery", "revision"): revision,
        ("surgery", "concomitant"): _listed(concomitant),
        ("surgery.earlier", "left"): _listed(earlier_left),
        ("surgery.earlier", "right"): _listed(earlier_right),
    }
    given = {key: toml_value(key[1], value) for key, value in values.items() if value is not None}
    return _created(Path(path), texts_of_new_case(given))


def _created(folder: Path, texts: dict[str, str]) -> Case:
    """The case of ``texts`` written to a folder that holds none, checked before anything is written."""
    from kneecase.record.reading import case_from_texts, read_case

    case_from_texts(texts, path=folder, fingerprint={})
    made_folder(folder)
    with changing(folder) as journal:
        refuse_a_case_in(folder)
        after = {name: text.encode("utf-8") for name, text in texts.items()}
        commit(folder, journal, kind="create", before={}, after=after)
    return read_case(folder)


def _listed(entries: str | Iterable[str]) -> tuple[str, ...] | None:
    """The entries of a list, one where a single text was given; ``None`` for none."""
    return ((entries,) if isinstance(entries, str) else tuple(entries)) or None


def _calendar_date(value: dt.date | str) -> dt.date:
    if isinstance(value, str):
        try:
            return dt.date.fromisoformat(value.strip())
        except ValueError:
            pass
    elif isinstance(value, dt.date) and not isinstance(value, dt.datetime):
        return value
    raise InputError(
        f"surgery_date must be a calendar date written year-month-day, such as 2026-03-02, got {value!r}."
    )
