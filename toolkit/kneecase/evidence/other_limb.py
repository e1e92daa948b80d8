"""Published values: the other limb moves too, and what holding against its earlier value changes."""

from __future__ import annotations

from kneecase.evidence.provenance import PublishedValue, Source

WELLSANDT_2017 = Source(
    key="wellsandt-2017",
    authors="Wellsandt E, Failla MJ, Snyder-Mackler L",
    year=2017,
    title="Limb symmetry indexes can overestimate knee function after anterior cruciate ligament injury",
    venue="J Orthop Sports Phys Ther 47:334-338",
    doi="10.2519/jospt.2017.7285",
    kind="cohort",
    known="abstract",
    note="the doi is from memory",
)
CONTRALATERAL_2022 = Source(
    key="contralateral-strength-2022",
    authors="Authors not recorded",
    year=2022,
    title="Strength of the other limb between 6 and 9 months after ACL reconstruction (title described)",
    venue="Arthrosc Sports Med Rehabil",
    doi="10.1016/j.asmr.2022.06.018",
    kind="cohort",
    known="abstract",
)
PATTERSON_2020 = Source(
    key="patterson-2020",
    authors="Patterson BE, et al.",
    year=2020,
    title="Limb symmetry from 1 to 5 years after ACL reconstruction (title described)",
    venue="Phys Ther Sport 44:67-74",
    kind="cohort",
    known="abstract",
)

_WELLSANDT = "athletes tested before and 6 months after ACL reconstruction, quadriceps and four hops"


def _wellsandt(name: str, value: float, definition: str) -> PublishedValue:
    """A percentage or a proportion out of the Wellsandt cohort."""
    return PublishedValue(
        name=name,
        value=value,
        unit="pct",
        definition=definition,
        population=_WELLSANDT,
        n=70,
        source=WELLSANDT_2017,
        known="abstract",
        place="abstract",
    )


OTHER_LIMB_LSI_PASS_WELLSANDT2017 = _wellsandt(
    "OTHER_LIMB_LSI_PASS_WELLSANDT2017", 57.1, "share with every plain symmetry index ≥ 90 %"
)
OTHER_LIMB_CAPACITY_PASS_WELLSANDT2017 = _wellsandt(
    "OTHER_LIMB_CAPACITY_PASS_WELLSANDT2017",
    28.6,
    "share at ≥ 90 % of the other limb before surgery in every test",
)
OTHER_LIMB_LSI_ONLY_WELLSANDT2017 = _wellsandt(
    "OTHER_LIMB_LSI_ONLY_WELLSANDT2017",
    34.3,
    "share that passes by the plain index and fails against the other limb before surgery",
)
OTHER_LIMB_LSI_SENSITIVITY_WELLSANDT2017 = PublishedValue(
    name="OTHER_LIMB_LSI_SENSITIVITY_WELLSANDT2017",
    value=0.273,
    low=0.010,
    high=0.566,
    spread_is="95 % interval as printed; the lower end looks like a misprint of .097",
    unit="fraction",
    definition="of athletes who had a second ACL injury, the share who had failed the plain index (3 of 11, "
    "counts worked back)",
    population=_WELLSANDT,
    n=70,
    source=WELLSANDT_2017,
    known="abstract",
    place="abstract",
)
OTHER_LIMB_CAPACITY_SENSITIVITY_WELLSANDT2017 = PublishedValue(
    name="OTHER_LIMB_CAPACITY_SENSITIVITY_WELLSANDT2017",
    value=0.818,
    low=0.523,
    high=0.949,
    spread_is="95 % interval",
    unit="fraction",
    definition="of athletes who had a second ACL injury, the share who had failed against the other limb "
    "before surgery (9 of 11, counts worked back)",
    population=_WELLSANDT,
    n=70,
    source=WELLSANDT_2017,
    known="abstract",
    place="abstract",
    caution="by our own sums sensitivity was bought with specificity, and with 11 injuries neither rule "
    "separates the groups",
)
OTHER_LIMB_GAIN_ASMR2022 = PublishedValue(
    name="OTHER_LIMB_GAIN_ASMR2022",
    value=24.3,
    unit="pct",
    definition="share whose other limb gained more than 10 % extension strength from month 6 to month 9",
    population="after ACL reconstruction",
    n=144,
    source=CONTRALATERAL_2022,
    known="abstract",
    place="abstract",
)
OTHER_LIMB_SINGLE_LSI_5Y_PATTERSON2020 = PublishedValue(
    name="OTHER_LIMB_SINGLE_LSI_5Y_PATTERSON2020",
    value=95.0,
    unit="pct",
    definition="single hop index at 5 years (87 at 1 year), risen mainly because the other limb got worse",
    population="after ACL reconstruction",
    n=59,
    source=PATTERSON_2020,
    known="abstract",
    place="abstract",
)
