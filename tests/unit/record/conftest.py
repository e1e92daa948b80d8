"""A small case to read rows into, and what reading them says."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from kneecase.errors import CaseError, Problem
from kneecase.record import Case, case_from_texts

SMALL_CASE = """format = 1
[athlete]
pseudonym = "Wren"
year_of_birth = 2004
[surgery]
date = 2026-03-02
side = "left"
"""


@pytest.fixture
def read() -> Callable[..., Case]:
    """Reads tables (as text or bytes) into a small case."""

    def reader(
        measurements: str | bytes | None = None,
        visits: str | bytes | None = None,
        toml: str | bytes = SMALL_CASE,
        workbook: bytes | None = None,
    ) -> Case:
        given = {
            "case.toml": toml,
            "measurements.csv": measurements,
            "visits.csv": visits,
            "measurements.xlsx": workbook,
        }
        texts = {name: text for name, text in given.items() if text is not None}
        return case_from_texts(texts, path=None, fingerprint={})

    return reader


@pytest.fixture
def errors(read: Callable[..., Case]) -> Callable[..., list[Problem]]:
    """Reads what must be refused and gives the errors."""

    def reader(*args: object, **kwargs: object) -> list[Problem]:
        with pytest.raises(CaseError) as caught:
            read(*args, **kwargs)
        return [problem for problem in caught.value.problems if problem.severity == "error"]

    return reader


@pytest.fixture
def error(errors: Callable[..., list[Problem]]) -> Callable[..., Problem]:
    """Reads what must be refused for one reason and gives that error."""

    def reader(*args: object, **kwargs: object) -> Problem:
        found = errors(*args, **kwargs)
        assert len(found) == 1, [problem.sentence() for problem in found]
        return found[0]

    return reader
