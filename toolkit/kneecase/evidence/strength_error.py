"""Published values: the error of dynamometers, and what a hand-held pass is worth."""

from __future__ import annotations

from kneecase.evidence.provenance import PublishedValue, Source

SOLE_2007 = Source(
    key="sole-2007",
    authors="Sole G, et al.",
    year=2007,
    title="Test-retest reliability of isokinetic knee extension and flexion",
    venue="Arch Phys Med Rehabil 88:626-631",
    doi="10.1016/j.apmr.2007.02.006",
    kind="reliability study",
    known="abstract",
)
KAMBIC_2020 = Source(
    key="kambic-2020",
    authors="Kambič T, Lainščak M, Hadžić V",
    year=2020,
    title="Reliability of isokinetic knee strength (title described, not copied)",
    venue="PLoS One",
    doi="10.1371/journal.pone.0237842",
    kind="reliability study",
    known="abstract",
)
ISOMETRIC_2013 = Source(
    key="isometric-reliability-2013",
    authors="Authors not recorded",
    year=2013,
    title="Reliability of isometric and isokinetic knee strength (title described, not copied)",
    venue="Isokinet Exerc Sci",
    doi="10.3233/IES-130522",
    kind="reliability study",
    known="abstract",
)
HAND_HELD_ACLR_2018 = Source(
    key="hand-held-aclr-2018",
    authors="Authors not recorded",
    year=2018,
    title="Hand-held dynamometer for quadriceps asymmetry after ACL reconstruction (title described)",
    venue="Knee Surg Sports Traumatol Arthrosc",
    doi="10.1007/s00167-018-5245-3",
    kind="accuracy study",
    known="abstract",
)
ANCHORED_FRAIL_2020 = Source(
    key="anchored-hand-held-2020",
    authors="Authors not recorded",
    year=2020,
    title="Anchored hand-held dynamometer in frail in-patients (title described, not copied)",
    venue="Ann Rehabil Med",
    kind="reliability study",
    known="abstract",
)
SINACORE_2017 = Source(
    key="sinacore-2017",
    authors="Sinacore JA, et al.",
    year=2017,
    title="Diagnostic accuracy of handheld dynamometry and 1-repetition-maximum tests for identifying "
    "meaningful quadriceps strength asymmetries",
    venue="J Orthop Sports Phys Ther",
    kind="accuracy study",
    known="abstract",
)

# -- error of torque and of force, in percent of the reading -------------------------


def _largest_sem(
    name: str, low: float, high: float, definition: str, n: int, source: Source
) -> PublishedValue:
    """The largest of a printed range of standard errors, in percent of the mean."""
    return PublishedValue(
        name=name,
        value=high,
        low=low,
        high=high,
        spread_is="range, the largest is used",
        unit="pct",
        definition=f"standard error of measurement in percent of the mean, {definition}",
        population="healthy adults",
        n=n,
        source=source,
        known="abstract",
        place="abstract",
    )


STRENGTH_ISOMETRIC_SEM_IES2013 = _largest_sem(
    "STRENGTH_ISOMETRIC_SEM_IES2013", 3.1, 7.4, "isometric and 90°/s", 40, ISOMETRIC_2013
)
STRENGTH_ISOKINETIC_SEM_KAMBIC2020 = _largest_sem(
    "STRENGTH_ISOKINETIC_SEM_KAMBIC2020", 2.54, 6.93, "isokinetic at 60°/s", 19, KAMBIC_2020
)
STRENGTH_ISOKINETIC_SEM_SOLE2007 = _largest_sem(
    "STRENGTH_ISOKINETIC_SEM_SOLE2007", 5.0, 10.0, "concentric and eccentric at 60°/s", 18, SOLE_2007
)


def _frail(name: str, value: float, who: str) -> PublishedValue:
    """The change beyond error of an anchored hand-held device, in percent."""
    return PublishedValue(
        name=name,
        value=value,
        unit="pct",
        definition=f"minimal detectable change of an anchored hand-held device, {who}; its level was not "
        "read, 90 % is taken, which makes the error the larger",
        population="frail in-patients, not athletes",
        n=33,
        source=ANCHORED_FRAIL_2020,
        known="abstract",
        place="abstract",
        caution="a device held by hand without an anchor is worse",
    )


STRENGTH_HAND_HELD_MDC_SAME_TESTER_FRAIL2020 = _frail(
    "STRENGTH_HAND_HELD_MDC_SAME_TESTER_FRAIL2020", 24.1, "one tester"
)
STRENGTH_HAND_HELD_MDC_OTHER_TESTER_FRAIL2020 = _frail(
    "STRENGTH_HAND_HELD_MDC_OTHER_TESTER_FRAIL2020", 29.3, "two testers"
)

# -- what a hand-held pass is worth --------------------------------------------------

STRENGTH_HAND_HELD_SENSITIVITY_HANDHELD2018 = PublishedValue(
    name="STRENGTH_HAND_HELD_SENSITIVITY_HANDHELD2018",
    value=63.4,
    low=48.9,
    high=76.3,
    spread_is="95 % interval",
    unit="pct",
    definition="share of quadriceps deficits above 10 % that a hand-held device finds",
    population="at least 6 months after ACL reconstruction",
    n=70,
    source=HAND_HELD_ACLR_2018,
    known="abstract",
    place="abstract",
)
STRENGTH_HAND_HELD_SPECIFICITY_HANDHELD2018 = PublishedValue(
    name="STRENGTH_HAND_HELD_SPECIFICITY_HANDHELD2018",
    value=100.0,
    low=81.4,
    high=100.0,
    spread_is="95 % interval",
    unit="pct",
    definition="share without a deficit above 10 % that a hand-held device calls so",
    population="at least 6 months after ACL reconstruction",
    n=70,
    source=HAND_HELD_ACLR_2018,
    known="abstract",
    place="abstract",
)
STRENGTH_HAND_HELD_KAPPA90_SINACORE2017 = PublishedValue(
    name="STRENGTH_HAND_HELD_KAPPA90_SINACORE2017",
    value=0.33,
    unit="fraction",
    definition="agreement (kappa) of a hand-held device with a dynamometer at 90 % symmetry (.55 at 80 %)",
    population="patients; the hand-held device overestimates symmetry",
    n=56,
    source=SINACORE_2017,
    known="abstract",
    place="abstract",
)
STRENGTH_HQ_ERROR_SOLE2007 = PublishedValue(
    name="STRENGTH_HQ_ERROR_SOLE2007",
    value=None,
    low=25.0,
    high=30.0,
    spread_is="range",
    unit="pct",
    definition="smallest real difference of a hamstring-to-quadriceps ratio, in percent of the ratio",
    population="healthy adults",
    n=18,
    source=SOLE_2007,
    known="abstract",
    place="abstract",
)
