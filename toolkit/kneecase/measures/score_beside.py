"""What is published beside each outcome score: change that is seen, change that matters, acceptable state."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from kneecase.evidence import PublishedValue
from kneecase.evidence.readiness import (
    READINESS_BATTERY_LINE_GOKELER2016,
    READINESS_BEFORE_SELL2024,
    READINESS_EARLY_HIGH_UEDA2024,
    READINESS_EARLY_SELL2024,
    READINESS_FEAR_ACTIVITY_PATERNO2018,
    READINESS_FEAR_INJURY_PATERNO2018,
    READINESS_RETURN_SADEQI2018,
    READINESS_YOUNG_INJURED_MCPHERSON2019,
    READINESS_YOUNG_LINE_MCPHERSON2019,
    READINESS_YOUNG_UNINJURED_MCPHERSON2019,
)
from kneecase.evidence.score_changes import (
    SCORES_ACLRSI_MCID_PIUSSI2025,
    SCORES_IKDC_MCID_IRRGANG2006,
    SCORES_IKDC_MCID_ORTHOPEDICS2021,
    SCORES_IKDC_SCB_ORTHOPEDICS2021,
    SCORES_KOOS_ADL_MCID_ORTHOPEDICS2021,
    SCORES_KOOS_ADL_SCB_ORTHOPEDICS2021,
    SCORES_KOOS_PAIN_MCID_ORTHOPEDICS2021,
    SCORES_KOOS_PAIN_SCB_ORTHOPEDICS2021,
    SCORES_KOOS_QOL_MCID_ORTHOPEDICS2021,
    SCORES_KOOS_QOL_SCB_ORTHOPEDICS2021,
    SCORES_KOOS_RULE_OF_THUMB_ROOS2003,
    SCORES_KOOS_SPORT_MCID_ORTHOPEDICS2021,
    SCORES_KOOS_SPORT_SCB_ORTHOPEDICS2021,
    SCORES_KOOS_SYMPTOMS_MCID_ORTHOPEDICS2021,
    SCORES_KOOS_SYMPTOMS_SCB_ORTHOPEDICS2021,
    SCORES_KOSADL_MCID_PIVA2009,
    SCORES_LYSHOLM_MCID_BRASORTOP2023,
    SCORES_TSK11_MCID_WOBY2005,
)
from kneecase.evidence.score_errors import (
    SCORES_ACLRSI_SDC_FALEIDE2020,
    SCORES_GLOBAL_MDC_MIN_JOHNSON2020,
    SCORES_IKDC_MDC_COLLINS2011,
    SCORES_IKDC_SEM_MIN_COLLINS2011,
    SCORES_KOOS_MDC_MIN_PARADOWSKI2013,
)
from kneecase.evidence.score_states import (
    SCORES_IKDC_ACCEPTABLE_MULLER2016,
    SCORES_IKDC_ACCEPTABLE_URHAUSEN2024,
    SCORES_KOOS_ADL_ACCEPTABLE_MULLER2016,
    SCORES_KOOS_ADL_ACCEPTABLE_URHAUSEN2024,
    SCORES_KOOS_PAIN_ACCEPTABLE_MULLER2016,
    SCORES_KOOS_PAIN_ACCEPTABLE_URHAUSEN2024,
    SCORES_KOOS_QOL_ACCEPTABLE_MULLER2016,
    SCORES_KOOS_QOL_ACCEPTABLE_URHAUSEN2024,
    SCORES_KOOS_SPORT_ACCEPTABLE_MULLER2016,
    SCORES_KOOS_SPORT_ACCEPTABLE_URHAUSEN2024,
    SCORES_KOOS_SYMPTOMS_ACCEPTABLE_MULLER2016,
    SCORES_KOOS_SYMPTOMS_ACCEPTABLE_URHAUSEN2024,
)
from kneecase.evidence.scores import (
    SCORES_IKDC_NORM_MEN_18_ANDERSON2006,
    SCORES_IKDC_NORM_MEN_25_ANDERSON2006,
    SCORES_IKDC_NORM_MEN_35_ANDERSON2006,
    SCORES_IKDC_NORM_MEN_51_ANDERSON2006,
    SCORES_IKDC_NORM_WOMEN_18_ANDERSON2006,
    SCORES_IKDC_NORM_WOMEN_25_ANDERSON2006,
    SCORES_IKDC_NORM_WOMEN_35_ANDERSON2006,
    SCORES_IKDC_NORM_WOMEN_51_ANDERSON2006,
    SCORES_LYSHOLM_EXCELLENT_FILBAY2023,
    SCORES_LYSHOLM_EXCELLENT_LYSHOLM1985,
    SCORES_LYSHOLM_FAIR_LYSHOLM1985,
    SCORES_LYSHOLM_GOOD_LYSHOLM1985,
)

__all__ = ["BESIDE", "IKDC_NORMS", "Beside"]

_Values = tuple[PublishedValue, ...]


@dataclass(frozen=True, kw_only=True)
class Beside:
    """Published values to be read beside one score, disagreeing ones together.

    ``errors`` are further values of the detectable change than the one used; ``matters`` the changes that
    matter to people; ``acceptable`` the scores people call acceptable; ``lines`` other lines and means.
    """

    errors: _Values = ()
    matters: _Values = ()
    acceptable: _Values = ()
    lines: _Values = ()
    cautions: tuple[str, ...] = ()


def _koos(matters: _Values, acceptable: _Values) -> Beside:
    return Beside(
        errors=(SCORES_KOOS_MDC_MIN_PARADOWSKI2013,),
        matters=(*matters, SCORES_KOOS_RULE_OF_THUMB_ROOS2003),
        acceptable=acceptable,
    )


IKDC_NORMS: Mapping[str, _Values] = MappingProxyType(
    {
        "male": (
            SCORES_IKDC_NORM_MEN_18_ANDERSON2006,
            SCORES_IKDC_NORM_MEN_25_ANDERSON2006,
            SCORES_IKDC_NORM_MEN_35_ANDERSON2006,
            SCORES_IKDC_NORM_MEN_51_ANDERSON2006,
        ),
        "female": (
            SCORES_IKDC_NORM_WOMEN_18_ANDERSON2006,
            SCORES_IKDC_NORM_WOMEN_25_ANDERSON2006,
            SCORES_IKDC_NORM_WOMEN_35_ANDERSON2006,
            SCORES_IKDC_NORM_WOMEN_51_ANDERSON2006,
        ),
    }
)
"""Means of the general population by sex, unverified."""

BESIDE: Mapping[str, Beside] = MappingProxyType(
    {
        "ikdc_subjective": Beside(
            errors=(SCORES_IKDC_MDC_COLLINS2011, SCORES_IKDC_SEM_MIN_COLLINS2011),
            matters=(
                SCORES_IKDC_MCID_ORTHOPEDICS2021,
                SCORES_IKDC_SCB_ORTHOPEDICS2021,
                SCORES_IKDC_MCID_IRRGANG2006,
            ),
            acceptable=(SCORES_IKDC_ACCEPTABLE_URHAUSEN2024, SCORES_IKDC_ACCEPTABLE_MULLER2016),
        ),
        "koos_pain": _koos(
            (SCORES_KOOS_PAIN_MCID_ORTHOPEDICS2021, SCORES_KOOS_PAIN_SCB_ORTHOPEDICS2021),
            (SCORES_KOOS_PAIN_ACCEPTABLE_URHAUSEN2024, SCORES_KOOS_PAIN_ACCEPTABLE_MULLER2016),
        ),
        "koos_symptoms": _koos(
            (SCORES_KOOS_SYMPTOMS_MCID_ORTHOPEDICS2021, SCORES_KOOS_SYMPTOMS_SCB_ORTHOPEDICS2021),
            (SCORES_KOOS_SYMPTOMS_ACCEPTABLE_URHAUSEN2024, SCORES_KOOS_SYMPTOMS_ACCEPTABLE_MULLER2016),
        ),
        "koos_adl": _koos(
            (SCORES_KOOS_ADL_MCID_ORTHOPEDICS2021, SCORES_KOOS_ADL_SCB_ORTHOPEDICS2021),
            (SCORES_KOOS_ADL_ACCEPTABLE_URHAUSEN2024, SCORES_KOOS_ADL_ACCEPTABLE_MULLER2016),
        ),
        "koos_sport": _koos(
            (SCORES_KOOS_SPORT_MCID_ORTHOPEDICS2021, SCORES_KOOS_SPORT_SCB_ORTHOPEDICS2021),
            (SCORES_KOOS_SPORT_ACCEPTABLE_URHAUSEN2024, SCORES_KOOS_SPORT_ACCEPTABLE_MULLER2016),
        ),
        "koos_qol": _koos(
            (SCORES_KOOS_QOL_MCID_ORTHOPEDICS2021, SCORES_KOOS_QOL_SCB_ORTHOPEDICS2021),
            (SCORES_KOOS_QOL_ACCEPTABLE_URHAUSEN2024, SCORES_KOOS_QOL_ACCEPTABLE_MULLER2016),
        ),
        "acl_rsi": Beside(
            errors=(SCORES_ACLRSI_SDC_FALEIDE2020,),
            matters=(SCORES_ACLRSI_MCID_PIUSSI2025,),
            lines=(
                READINESS_BATTERY_LINE_GOKELER2016,
                READINESS_RETURN_SADEQI2018,
                READINESS_YOUNG_LINE_MCPHERSON2019,
                READINESS_YOUNG_INJURED_MCPHERSON2019,
                READINESS_YOUNG_UNINJURED_MCPHERSON2019,
                READINESS_EARLY_HIGH_UEDA2024,
                READINESS_BEFORE_SELL2024,
                READINESS_EARLY_SELL2024,
            ),
            cautions=(
                "A signal of returning to sport, never of safety. Studies contradict each other: young "
                "people who were injured again had felt less ready (McPherson 2019), yet a high score at 3 "
                "months went with more second injuries (Ueda 2024), and so did better readiness in female "
                "athletes (Zarzycki 2023).",
            ),
        ),
        "lysholm": Beside(
            matters=(SCORES_LYSHOLM_MCID_BRASORTOP2023,),
            lines=(
                SCORES_LYSHOLM_EXCELLENT_LYSHOLM1985,
                SCORES_LYSHOLM_GOOD_LYSHOLM1985,
                SCORES_LYSHOLM_FAIR_LYSHOLM1985,
                SCORES_LYSHOLM_EXCELLENT_FILBAY2023,
            ),
            cautions=(SCORES_LYSHOLM_EXCELLENT_FILBAY2023.caution,),
        ),
        "tegner": Beside(),
        "kos_adl": Beside(matters=(SCORES_KOSADL_MCID_PIVA2009,)),
        "tsk_11": Beside(
            matters=(SCORES_TSK11_MCID_WOBY2005,),
            lines=(READINESS_FEAR_ACTIVITY_PATERNO2018, READINESS_FEAR_INJURY_PATERNO2018),
            cautions=(READINESS_FEAR_INJURY_PATERNO2018.caution,),
        ),
        "global_rating": Beside(errors=(SCORES_GLOBAL_MDC_MIN_JOHNSON2020,)),
    }
)
"""What stands beside each outcome score, by the id of its measure."""
