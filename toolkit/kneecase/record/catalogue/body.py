"""Body and water: mass, temperature of the body, temperature of the pool."""

from __future__ import annotations

from kneecase.record.catalogue.measure import Measure

__all__ = ["BODY_MEASURES"]

BODY_MEASURES = (
    Measure(
        id="body_mass",
        label="body mass",
        unit="kg",
        group="body",
        hard=(10, 350),
        plausible=(25, 180),
        better="neither",
        per_limb=False,
    ),
    Measure(
        id="body_temperature",
        label="body temperature",
        unit="celsius",
        group="body",
        hard=(25, 45),
        plausible=(35, 41),
        better="neither",
        per_limb=False,
        note="write where it was taken in position",
    ),
    Measure(
        id="water_temperature",
        label="water temperature",
        unit="celsius",
        group="body",
        hard=(0, 60),
        plausible=(10, 40),
        better="neither",
        per_limb=False,
        note="of the pool or tub the session was held in",
    ),
)
