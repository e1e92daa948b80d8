"""A gain rate as an answer: degrees a week, its interval, and in words what it shows and what not."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from kneecase.units import number_text

__all__ = ["GainRate", "Method", "Shown", "rate_text"]

Method = Literal["robust", "least squares", "known error"]
Shown = Literal["gain", "loss", "uneven gain", "uneven loss", "no gain", "cannot tell", "no rate"]


@dataclass(frozen=True, kw_only=True)
class GainRate:
    """A gain rate [deg per week], positive when the motion improves, with its interval and what it shows.

    ``deg_per_week`` is ``None`` where there is no rate and ``low`` and ``high`` are ``None`` where there is
    no interval; ``why`` then says so. ``method`` is how the interval was made; ``start_deg`` is the line
    at week 0, as an angle. ``shown``: ``"gain"`` or ``"loss"`` where the interval lies on one side of zero;
    ``"uneven gain"`` or ``"uneven loss"`` where it includes zero, yet least squares or the known
    measurement error does not; ``"no gain"`` where nothing speaks against zero; ``"cannot tell"`` where
    there is no fair interval. ``second_deg_per_week`` is the interval that speaks for an uneven change
    [deg per week], made as ``second_method`` says.
    """

    deg_per_week: float | None
    low: float | None
    high: float | None
    level: float
    method: Method
    n: int
    shown: Shown
    start_deg: float | None = None
    why: str = ""
    second_deg_per_week: tuple[float, float] | None = None
    second_method: Method | None = None

    @property
    def includes_zero(self) -> bool:
        """Whether a standstill is not excluded: the interval includes zero, or there is none."""
        return self.low is None or self.high is None or self.low <= 0 <= self.high

    def words(self) -> str:
        """What the rate shows, in words; a standstill is never called certain, nor a gain noise."""
        if self.deg_per_week is None:
            return f"no rate: {self.why}"
        if self.low is None or self.high is None:
            return f"{rate_text(self.deg_per_week)}° a week, no interval: {self.why}"
        ends = f"{rate_text(self.low)}° to {rate_text(self.high)}° a week"
        if self.shown == "gain":
            return f"gains {rate_text(self.deg_per_week)}° a week: {ends}"
        if self.shown == "loss":
            return f"loses {rate_text(-self.deg_per_week)}° a week: {ends}"
        if self.shown == "cannot tell":
            return f"{ends}: cannot tell, {self.why}"
        return f"{ends}: {self._standstill_words(self.high)}"

    def _standstill_words(self, high: float) -> str:
        if self.shown == "no gain":
            steady = " steady" if self.second_deg_per_week else ""
            scatter = (
                ", though the readings move more than measurement error explains"
                if self.second_deg_per_week
                else ""
            )
            return f"no{steady} gain shown, at most {rate_text(high)}° a week{scatter}"
        what = self.shown.removeprefix("uneven ")
        beside = ""
        if self.second_deg_per_week is not None and self.second_method == "least squares":
            low, top = self.second_deg_per_week
            beside = f" (least squares: {rate_text(low)}° to {rate_text(top)}°)"
        if what == "gain":
            return f"a gain, but not a steady one{beside}; at most {rate_text(high)}° a week"
        return f"no gain shown: a loss, but not a steady one{beside}; at most {rate_text(high)}° a week"


def rate_text(value: float) -> str:
    """A rate for people: one decimal, or two where one would show a small number as nothing.

    Parameters
    ----------
    value : float
        A rate [deg per week].

    Returns
    -------
    str
        The number alone.

    Examples
    --------
    >>> rate_text(7.96), rate_text(-0.04)
    ('8', '−0.04')
    """
    text = number_text(value)
    return text if text != "0" else number_text(value, 2)
