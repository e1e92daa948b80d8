"""Published values: how much a pain rating has to move before a person calls it better."""

from __future__ import annotations

from kneecase.evidence.provenance import PublishedValue, Source

SALAFFI_2004 = Source(
    key="salaffi-2004",
    authors="Salaffi F, et al.",
    year=2004,
    title="A change of pain that matters, numerical rating, chronic pain (title in our words)",
    venue="",
    kind="cohort",
    known="abstract",
)

PAIN_SLIGHTLY_BETTER_SALAFFI2004 = PublishedValue(
    name="PAIN_SLIGHTLY_BETTER_SALAFFI2004",
    value=1.0,
    unit="points",
    definition="fall of pain, 0 to 10, that people call slightly better",
    population="chronic musculoskeletal pain, 233 of them with knee osteoarthritis",
    source=SALAFFI_2004,
    known="abstract",
    n=825,
    place="abstract",
    caution="depends on how strong the pain was to begin with",
)
PAIN_MUCH_BETTER_SALAFFI2004 = PublishedValue(
    name="PAIN_MUCH_BETTER_SALAFFI2004",
    value=2.0,
    unit="points",
    definition="fall of pain, 0 to 10, that people call much better",
    population="chronic musculoskeletal pain, 233 of them with knee osteoarthritis",
    source=SALAFFI_2004,
    known="abstract",
    n=825,
    place="abstract",
    caution="depends on how strong the pain was to begin with",
)
