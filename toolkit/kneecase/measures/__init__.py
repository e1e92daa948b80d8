"""One visit: motion, effusion, girth, strength, hops, balance, landing, outcome scores, and their error."""

from __future__ import annotations

from kneecase.measures.symmetry import limb_symmetry_index, symmetry_band, symmetry_sem_points
from kneecase.measures.threshold import chance_true_value_passes, is_met

__all__ = [
    "chance_true_value_passes",
    "is_met",
    "limb_symmetry_index",
    "symmetry_band",
    "symmetry_sem_points",
]
