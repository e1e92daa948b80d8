"""What is published about batteries: how few pass, what passing went with, where sources disagree."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from kneecase.evidence import PublishedValue
from kneecase.evidence.clearance import (
    CLEARANCE_LSI_GOKELER2016,
    CLEARANCE_LSI_GRINDEM2016,
    CLEARANCE_LSI_GRINDEM2020,
    CLEARANCE_LSI_KYRITSIS2016,
    CLEARANCE_LSI_PIVOTING_THOMEE2011,
    CLEARANCE_RUNNING_LSI_RAMBAUD2018,
    CLEARANCE_RUNNING_PAIN_RAMBAUD2018,
    CLEARANCE_RUNNING_QUADRICEPS_LSI_KOTSIFAKI2023,
    CLEARANCE_STRENGTH_LSI_PIVOTING_KOTSIFAKI2023,
    CLEARANCE_TIME_GRINDEM2016,
)
from kneecase.evidence.hop_administration import HOPS_BATTERY_SENSITIVITY_GUSTAVSSON2006
from kneecase.evidence.hop_norms import (
    HOPS_ABNORMAL_ONE_TEST_NOYES1991,
    HOPS_ACLR_PASS_ALL_MARKSTROM2022,
    HOPS_CHILDREN_SHARE_90_WARMING2021,
    HOPS_HEALTHY_MEAN_LSI_MUNRO2011,
    HOPS_HEALTHY_SHARE_LSI_BARBER1990,
    HOPS_SINGLE_MEAN_LSI_COLLEGE2021,
    HOPS_UNINJURED_PASS_ALL_MARKSTROM2022,
    HOPS_VERTICAL_MEAN_LSI_COLLEGE2021,
)
from kneecase.evidence.other_limb import (
    OTHER_LIMB_CAPACITY_PASS_WELLSANDT2017,
    OTHER_LIMB_CAPACITY_SENSITIVITY_WELLSANDT2017,
    OTHER_LIMB_GAIN_ASMR2022,
    OTHER_LIMB_LSI_ONLY_WELLSANDT2017,
    OTHER_LIMB_LSI_PASS_WELLSANDT2017,
    OTHER_LIMB_LSI_SENSITIVITY_WELLSANDT2017,
    OTHER_LIMB_SINGLE_LSI_5Y_PATTERSON2020,
)
from kneecase.evidence.second_injury import (
    SECOND_INJURY_HR_FAIL_KYRITSIS2016,
    SECOND_INJURY_HR_PASS_GRINDEM2016,
    SECOND_INJURY_HR_PASS_GRINDEM2020,
    SECOND_INJURY_OR_CONTRALATERAL_ZHOU2024,
    SECOND_INJURY_OR_GRAFT_ZHOU2024,
    SECOND_INJURY_OR_SECOND_ACL_ZHOU2024,
    SECOND_INJURY_PASS_ALL_CRISTIANI2019,
    SECOND_INJURY_PASS_ALL_GOKELER2016,
    SECOND_INJURY_PASS_ALL_WEBSTER2019,
    SECOND_INJURY_PASS_ALL_WELLING2018,
    SECOND_INJURY_RR_ALL_ACL_WEBSTER2019,
    SECOND_INJURY_RR_CONTRALATERAL_WEBSTER2019,
    SECOND_INJURY_RR_GRAFT_WEBSTER2019,
    SECOND_INJURY_SAME_LEVEL_PASSED_NAWASREH2017,
)
from kneecase.measures.accepted import Quantity, accepted, plain

__all__ = ["BATTERY_EVIDENCE", "share_passing_all_pct"]

BATTERY_EVIDENCE: Mapping[str, tuple[PublishedValue, ...]] = MappingProxyType(
    {
        "where the line is drawn": (
            CLEARANCE_LSI_GRINDEM2020,
            CLEARANCE_LSI_GRINDEM2016,
            CLEARANCE_LSI_KYRITSIS2016,
            CLEARANCE_LSI_GOKELER2016,
            CLEARANCE_LSI_PIVOTING_THOMEE2011,
            CLEARANCE_STRENGTH_LSI_PIVOTING_KOTSIFAKI2023,
            CLEARANCE_RUNNING_LSI_RAMBAUD2018,
            CLEARANCE_RUNNING_QUADRICEPS_LSI_KOTSIFAKI2023,
            CLEARANCE_RUNNING_PAIN_RAMBAUD2018,
        ),
        "people who were never injured": (
            HOPS_UNINJURED_PASS_ALL_MARKSTROM2022,
            HOPS_ACLR_PASS_ALL_MARKSTROM2022,
            HOPS_HEALTHY_SHARE_LSI_BARBER1990,
            HOPS_HEALTHY_MEAN_LSI_MUNRO2011,
            HOPS_CHILDREN_SHARE_90_WARMING2021,
        ),
        "what one hop test sees": (
            HOPS_ABNORMAL_ONE_TEST_NOYES1991,
            HOPS_BATTERY_SENSITIVITY_GUSTAVSSON2006,
            HOPS_VERTICAL_MEAN_LSI_COLLEGE2021,
            HOPS_SINGLE_MEAN_LSI_COLLEGE2021,
        ),
        "how few pass everything": (
            SECOND_INJURY_PASS_ALL_CRISTIANI2019,
            SECOND_INJURY_PASS_ALL_GOKELER2016,
            SECOND_INJURY_PASS_ALL_WELLING2018,
            SECOND_INJURY_PASS_ALL_WEBSTER2019,
        ),
        "any knee reinjury": (SECOND_INJURY_HR_PASS_GRINDEM2016, CLEARANCE_TIME_GRINDEM2016),
        "graft rupture": (
            SECOND_INJURY_HR_FAIL_KYRITSIS2016,
            SECOND_INJURY_RR_GRAFT_WEBSTER2019,
            SECOND_INJURY_OR_GRAFT_ZHOU2024,
        ),
        "the other knee": (
            SECOND_INJURY_RR_CONTRALATERAL_WEBSTER2019,
            SECOND_INJURY_OR_CONTRALATERAL_ZHOU2024,
        ),
        "a second ACL injury of either knee": (
            SECOND_INJURY_HR_PASS_GRINDEM2020,
            SECOND_INJURY_RR_ALL_ACL_WEBSTER2019,
            SECOND_INJURY_OR_SECOND_ACL_ZHOU2024,
        ),
        "return to the same level": (SECOND_INJURY_SAME_LEVEL_PASSED_NAWASREH2017,),
        "the other limb moves too": (
            OTHER_LIMB_LSI_PASS_WELLSANDT2017,
            OTHER_LIMB_CAPACITY_PASS_WELLSANDT2017,
            OTHER_LIMB_LSI_ONLY_WELLSANDT2017,
            OTHER_LIMB_LSI_SENSITIVITY_WELLSANDT2017,
            OTHER_LIMB_CAPACITY_SENSITIVITY_WELLSANDT2017,
            OTHER_LIMB_GAIN_ASMR2022,
            OTHER_LIMB_SINGLE_LSI_5Y_PATTERSON2020,
        ),
    }
)
"""Published values by question, one outcome a heading; sources that disagree stand side by side."""


def share_passing_all_pct(pass_pct: Quantity, *, tests: int) -> Quantity:
    """Share of athletes who pass every test of a battery [%], when each test is passed by the same share.

    Looked at when one of many tests fails: even truly ready athletes rarely pass all of a long battery.

    Formula: ``100 * (pass_pct / 100) ** tests``.

    Parameters
    ----------
    pass_pct : float or array of float
        Share that passes one test [%].
    tests : int
        How many tests must all be passed [count].

    Returns
    -------
    float or array of float
        Share that passes all [%].

    Raises
    ------
    InputError
        If the share does not lie between 0 and 100, or there is no whole test.

    Notes
    -----
    Assumes that the tests are independent. They are not (a good hopper is good at several), so the true
    share lies between this and ``pass_pct``.

    Examples
    --------
    >>> round(share_passing_all_pct(90.0, tests=5), 1)
    59.0
    """
    share = accepted("pass_pct", pass_pct, "%", low=0.0, high=100.0)
    count = accepted("tests", float(tests), "tests", low=1.0)
    return plain(100.0 * (share / 100.0) ** count, share)
