"""Limits of agreement against two outside numbers.

Giavarina, Biochem Med 2015;25:141-151 (doi 10.11613/BM.2015.015): bias -27.17, SD 34.8, limits -95.4 to 41.1
on 30 pairs (printed values from memory, reproduced from the data set ``blandaltman`` of the package
pingouin, a test-only reference).  Lenssen et al., BMC Musculoskelet Disord 2007;8:83, abstract: limits of
agreement of two therapists; the smallest detectable change is half their width (derived).
"""

from __future__ import annotations

import pingouin
import pytest

from kneecase.measures import limits_of_agreement, minimal_detectable_change, sem_from_limits_of_agreement

# movement, printed limits, half their width, SD of differences and SEM by the rounded z of 1.96
LENSSEN = [
    ("passive flexion sitting", -6.7, 12.1, 9.4, 4.80, 3.39),
    ("passive flexion supine", -16.2, 19.0, 17.6, 8.98, 6.35),
    ("passive extension", -6.2, 10.6, 8.4, 4.29, 3.03),
]


def test_giavarina() -> None:
    """Bias, spread and limits to the printed digits; the bias interval as a t interval of the differences."""
    data = pingouin.read_dataset("blandaltman")
    found = limits_of_agreement(data["A"], data["B"])

    assert found.n == 30
    assert found.bias == pytest.approx(-27.17, abs=0.005)
    assert found.sd == pytest.approx(34.8, abs=0.05)
    assert (found.low, found.high) == pytest.approx((-95.4, 41.1), abs=0.05)
    t = pingouin.ttest(data["A"] - data["B"], 0)["CI95"].iloc[0]
    assert (found.bias_low, found.bias_high) == pytest.approx(tuple(t), abs=0.00501)


@pytest.mark.parametrize(("movement", "low", "high", "change", "sd", "sem"), LENSSEN)
def test_lenssen(movement: str, low: float, high: float, change: float, sd: float, sem: float) -> None:
    """Half the width of printed limits is the change beyond error between two testers."""
    ours = sem_from_limits_of_agreement(low, high)

    assert minimal_detectable_change(ours) == pytest.approx(change, abs=0.05)
    assert ours == pytest.approx(sem, abs=0.005)
    assert ours * 2**0.5 == pytest.approx(sd, abs=0.005)
