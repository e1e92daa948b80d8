"""The readings as a table: columns in a fixed order, kinds that can be computed with."""

from __future__ import annotations

from collections.abc import Callable

import pandas as pd
import pytest

from kneecase.record import Case, measurements_table
from kneecase.record.tables import MEASUREMENT_TABLE_COLUMNS

ORDER = (
    "date week measure side limb trial value unit tester device note item status missing position motion "
    "timing mode angle_deg speed_deg_per_s lever_arm_m administration text raw_value raw_unit id"
)
TABLE = (
    "date,measure,side,trial,value,unit,missing,item,angle_deg,tester,note\n"
    "2026-03-16,knee_flexion,left,,34.5,,,,,AB,x\n"
    "2026-03-16,single_hop,right,2,60,in,,,,,\n"
    "2026-03-17,single_hop,left,1,,,unsafe,,,,\n"
    "2026-03-18,koos_pain,,,4,,,9,,,\n"
    "2026-03-19,quadriceps_torque,left,,98,ft-lb,,,90,,\n"
)


def kinds(table: pd.DataFrame) -> dict[str, str]:
    """The kind of each column: date, number, whole or text."""
    tests = {
        "date": pd.api.types.is_datetime64_any_dtype,
        "whole": pd.api.types.is_integer_dtype,
        "number": pd.api.types.is_float_dtype,
    }
    return {
        name: next((kind for kind, is_kind in tests.items() if is_kind(table[name])), "text")
        for name in table
    }


@pytest.mark.parametrize("text", [TABLE, None])
def test_columns_and_their_kinds(read: Callable[..., Case], text: str | None) -> None:
    """The same with and without rows."""
    table = read(text).measurements
    assert " ".join(table.columns) == ORDER == " ".join(MEASUREMENT_TABLE_COLUMNS)
    wanted = dict.fromkeys(table.columns, "text")
    wanted |= dict.fromkeys(("week", "value", "angle_deg", "speed_deg_per_s", "lever_arm_m"), "number")
    wanted |= {"date": "date", "trial": "whole", "item": "whole"}
    assert kinds(table) == wanted


def test_what_stands_in_it(read: Callable[..., Case]) -> None:
    """Weeks from surgery, limbs beside sides, canonical values beside what was typed."""
    table = measurements_table(read(TABLE))
    assert list(table["week"]) == pytest.approx([2, 2, 15 / 7, 16 / 7, 17 / 7])
    assert list(table["side"]) == ["left", "right", "left", "", "left"]
    assert list(table["limb"]) == ["involved", "uninvolved", "involved", "", "involved"]
    assert table["value"].iloc[1] == pytest.approx(152.4)
    assert (table["raw_value"].iloc[1], table["raw_unit"].iloc[1]) == ("60", "in")
    assert pd.isna(table["value"].iloc[2])
    assert table["missing"].iloc[2] == "unsafe"
    assert table["item"].iloc[3] == 9
    assert table["angle_deg"].iloc[4] == 90
    assert table["date"].iloc[0] == pd.Timestamp("2026-03-16")
