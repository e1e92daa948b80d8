"""Direct labels that do not lie on top of each other."""

from __future__ import annotations

from collections.abc import Sequence

__all__ = ["spread"]


def spread(places: Sequence[float], gap: float) -> list[float]:
    """Places moved apart until neighbours are at least ``gap`` away, each as near its own as can be.

    Parameters
    ----------
    places : sequence of float
        Where each label would like to stand, in any order.
    gap : float
        The least distance, in the same unit.

    Returns
    -------
    list of float
        In the order given.

    Examples
    --------
    >>> spread([10.0, 11.0, 30.0], gap=4.0)
    [8.5, 12.5, 30.0]
    """
    blocks: list[list[float]] = []  # each: centre of its members' wishes, members
    order = sorted(range(len(places)), key=lambda i: (places[i], i))
    for i in order:
        blocks.append([places[i], 1])
        while len(blocks) > 1 and _top(blocks[-2], gap) + gap > _foot(blocks[-1], gap):
            (low, n), (high, m) = blocks[-2], blocks[-1]
            blocks[-2:] = [[(low * n + high * m) / (n + m), n + m]]
    moved = [0.0] * len(places)
    at = iter(order)
    for block in blocks:
        for k in range(int(block[1])):
            moved[next(at)] = _foot(block, gap) + k * gap
    return moved


def _foot(block: Sequence[float], gap: float) -> float:
    return block[0] - (block[1] - 1) * gap / 2


def _top(block: Sequence[float], gap: float) -> float:
    return block[0] + (block[1] - 1) * gap / 2
