"""Pictures of a case in one theme: still figures with alt text that need no network and no script."""

from __future__ import annotations

from kneecase.charts.effusion import effusion_chart
from kneecase.charts.figure import AltairChart, Figure, figure_of
from kneecase.charts.hops import hop_chart
from kneecase.charts.motion import motion_chart
from kneecase.charts.recovery_chart import recovery_chart
from kneecase.charts.symmetry import symmetry_chart
from kneecase.charts.theme import INK, PANEL, theme

__all__ = [
    "INK",
    "PANEL",
    "AltairChart",
    "Figure",
    "effusion_chart",
    "figure_of",
    "hop_chart",
    "motion_chart",
    "recovery_chart",
    "symmetry_chart",
    "theme",
]
