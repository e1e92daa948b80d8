"""Text from a case made safe to show: nothing in it can steer a terminal, turn a line round or forge one."""

from __future__ import annotations

import re

__all__ = ["on_one_line", "shown_plainly"]

# Control characters (a terminal obeys ESC) but not tab and line feed; marks that reverse the order in
# which a line is read (they could make LEFT look as if it belonged elsewhere); line separators.
_STEERING = re.compile(
    r"[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\u202a-\u202e\u2066-\u2069\u2028\u2029]|\r(?!\n)"
)


def shown_plainly(text: str) -> str:
    r"""``text`` with every steering character written out as its code.

    The record keeps what was typed; only what is shown changes.  Letters of scripts that run from
    right to left stay as they are.

    Examples
    --------
    >>> shown_plainly("Wren\x1b[31m")
    'Wren\\x1b[31m'
    """
    return _STEERING.sub(lambda found: ascii(found[0])[1:-1], text)


def on_one_line(text: str) -> str:
    r"""``text`` made plain, with every line break in it turned into a space.

    For what stands on a line of its own: a break typed into a note cannot begin another line
    that would read as if kneecase had said it.

    Examples
    --------
    >>> on_one_line("brace locked\nquadriceps: met")
    'brace locked quadriceps: met'
    """
    return shown_plainly(text).replace("\r\n", " ").replace("\n", " ")
