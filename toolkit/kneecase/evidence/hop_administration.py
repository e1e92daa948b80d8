"""Published values: how many trials count and how they are given, as each author describes it."""

from __future__ import annotations

from kneecase.evidence.hops import GUIDELINE_2010, REID_2007
from kneecase.evidence.provenance import HowKnown, PublishedValue, Source

GUSTAVSSON_2006 = Source(
    key="gustavsson-2006",
    authors="Gustavsson A, et al.",
    year=2006,
    title=(
        "A test battery for evaluating hop performance in patients with an ACL injury and patients "
        "who have undergone ACL reconstruction"
    ),
    venue="Knee Surg Sports Traumatol Arthrosc 14:778-788",
    doi="10.1007/s00167-006-0045-6",
    kind="reliability and accuracy study",
    known="abstract",
)
MYERS_2014 = Source(
    key="myers-2014",
    authors="Myers BA, Jenkins WL, Killian C, Rundquist P",
    year=2014,
    title="Normative data for hop tests in high school and collegiate basketball and soccer players",
    venue="Int J Sports Phys Ther 9:596-603",
    kind="normative study",
    known="abstract",
)
KRAMER_1992 = Source(
    key="kramer-1992",
    authors="Kramer JF, et al.",
    year=1992,
    title="Test-retest reliability of the one-leg hop test after ACL reconstruction (title described)",
    venue="Clin J Sport Med",
    kind="reliability study",
    known="abstract",
)
FOOTBALL_COHORT_2023 = Source(
    key="football-cohort-2023",
    authors="Authors not recorded",
    year=2023,
    title="Hop tests in a football cohort, methods table (title described, not copied)",
    venue="Sports Med Open",
    doi="10.1186/s40798-023-00656-7",
    kind="cohort",
    known="full text",
)


def _trials(
    name: str, value: float, who: str, source: Source, known: HowKnown, what: str = "trials that count"
) -> PublishedValue:
    """A number of trials on each limb."""
    return PublishedValue(
        name=name,
        value=value,
        unit="reps",
        definition=f"{what} on each limb in a hop test",
        population=who,
        source=source,
        known=known,
    )


_PRACTICE = "practice trials"
_REID = "patients after ACL reconstruction"
HOPS_SCORED_TRIALS_REID2007 = _trials("HOPS_SCORED_TRIALS_REID2007", 2, _REID, REID_2007, "full text")
HOPS_PRACTICE_TRIALS_REID2007 = _trials(
    "HOPS_PRACTICE_TRIALS_REID2007", 1, _REID, REID_2007, "full text", _PRACTICE
)
HOPS_LANDING_HOLD_REID2007 = PublishedValue(
    name="HOPS_LANDING_HOLD_REID2007",
    value=2.0,
    unit="s",
    definition="time the landing must be held for the trial to count",
    population=_REID,
    source=REID_2007,
    known="full text",
    place="methods",
)
_PATIENTS = "patients with a knee ligament sprain"
HOPS_SCORED_TRIALS_GUIDELINE2010 = _trials(
    "HOPS_SCORED_TRIALS_GUIDELINE2010", 2, _PATIENTS, GUIDELINE_2010, "full text"
)
HOPS_PRACTICE_TRIALS_GUIDELINE2010 = _trials(
    "HOPS_PRACTICE_TRIALS_GUIDELINE2010", 2, _PATIENTS, GUIDELINE_2010, "full text", _PRACTICE
)
_SCHOOL = "high-school and college basketball and soccer players"
HOPS_SCORED_TRIALS_MYERS2014 = _trials("HOPS_SCORED_TRIALS_MYERS2014", 3, _SCHOOL, MYERS_2014, "abstract")
HOPS_PRACTICE_TRIALS_MYERS2014 = _trials(
    "HOPS_PRACTICE_TRIALS_MYERS2014", 1, _SCHOOL, MYERS_2014, "abstract", _PRACTICE
)
HOPS_SCORED_TRIALS_KRAMER1992 = _trials(
    "HOPS_SCORED_TRIALS_KRAMER1992", 3, "38 patients after ACL reconstruction", KRAMER_1992, "abstract"
)
_FOOTBALL = "football players"
HOPS_SCORED_TRIALS_FOOTBALL2023 = _trials(
    "HOPS_SCORED_TRIALS_FOOTBALL2023", 3, _FOOTBALL, FOOTBALL_COHORT_2023, "full text"
)
HOPS_PRACTICE_TRIALS_FOOTBALL2023 = _trials(
    "HOPS_PRACTICE_TRIALS_FOOTBALL2023", 3, _FOOTBALL, FOOTBALL_COHORT_2023, "full text", _PRACTICE
)
HOPS_BATTERY_SENSITIVITY_GUSTAVSSON2006 = PublishedValue(
    name="HOPS_BATTERY_SENSITIVITY_GUSTAVSSON2006",
    value=91.0,
    unit="pct",
    definition="share of operated patients found abnormal when any of vertical, single and side hop "
    "differs by 10 % or more between sides",
    population="patients after ACL reconstruction",
    n=35,
    source=GUSTAVSSON_2006,
    known="abstract",
    place="abstract",
)
