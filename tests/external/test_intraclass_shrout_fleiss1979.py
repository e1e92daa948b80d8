"""Shrout & Fleiss, Psychol Bull 1979;86:420-428: six targets, four judges, six printed coefficients.

The table and the printed values are the well-known worked example, as the tests of the R package psych repeat
them; the paper itself was not read.  The intervals are compared with the package pingouin (a test-only
reference).
"""

from __future__ import annotations

import pandas as pd
import pingouin
import pytest

from kneecase.measures import intraclass_correlation

TABLE = [[9, 2, 5, 8], [6, 1, 3, 2], [8, 4, 6, 8], [7, 1, 2, 6], [10, 5, 6, 9], [6, 2, 4, 7]]
PRINTED = [("1,1", 0.17), ("2,1", 0.29), ("3,1", 0.71), ("1,k", 0.44), ("2,k", 0.62), ("3,k", 0.91)]
PINGOUIN = {
    "1,1": "ICC(1,1)",
    "2,1": "ICC(A,1)",
    "3,1": "ICC(C,1)",
    "1,k": "ICC(1,k)",
    "2,k": "ICC(A,k)",
    "3,k": "ICC(C,k)",
}


def long(table: pd.DataFrame) -> pd.DataFrame:
    """A table of subjects by raters as one row a reading."""
    return table.rename_axis("subject").reset_index().melt("subject", var_name="rater")


@pytest.mark.parametrize(("form", "printed"), PRINTED)
def test_printed_value(form: str, printed: float) -> None:
    """Each form to the two decimals of the paper."""
    found = intraclass_correlation(TABLE, form)  # type: ignore[arg-type]

    assert found.value == pytest.approx(printed, abs=0.005)


@pytest.mark.parametrize("form", PINGOUIN)
@pytest.mark.parametrize("which", ["shrout-fleiss", "wines"])
def test_same_as_another_implementation(form: str, which: str) -> None:
    """Value to 1e-10 and interval to pingouin's two decimals, on this table and on its own of 8 by 4."""
    if which == "wines":
        data = pingouin.read_dataset("icc")
        table = data.pivot(index="Wine", columns="Judge", values="Scores")
    else:
        table = pd.DataFrame(TABLE)
    theirs = pingouin.intraclass_corr(long(table), "subject", "rater", "value").set_index("Type")
    row = theirs.loc[PINGOUIN[form]]
    ours = intraclass_correlation(table.to_numpy(), form)  # type: ignore[arg-type]

    assert ours.value == pytest.approx(row["ICC"], abs=1e-10)
    assert [ours.low, ours.high] == pytest.approx(list(row["CI95"]), abs=0.00501)
