"""The list of what can be recorded leaves nothing out and says what to write."""

from __future__ import annotations

from kneecase import cli
from kneecase.measures import HOP_ADMINISTRATIONS
from kneecase.record import MEASURES
from kneecase.report import catalogue_text


def test_every_measure_has_its_line():
    """Each word, each way of giving the hop tests, and neutral-zero motion."""
    words = [line.split()[0] for line in catalogue_text().splitlines() if line.startswith("  ")]

    assert words == list(dict.fromkeys(words))
    assert set(words) == {*MEASURES, *HOP_ADMINISTRATIONS, "knee_motion"}


def test_a_line_says_unit_side_and_items():
    """What a person filling in a row needs."""
    line = {line.split()[0]: line for line in catalogue_text().splitlines() if line.startswith("  ")}

    assert "n_m (or ft-lb); needs a side" in line["quadriceps_torque"]
    assert "celsius (or °F); no side" in line["body_temperature"]
    assert "items 1 to 17" in line["landing_errors"]
    assert "trace" in line["effusion"]


def test_the_command_prints_it(capsys):
    """``kneecase measures`` needs no case."""
    assert cli.main(["measures"]) == 0
    assert "single_hop" in capsys.readouterr().out
