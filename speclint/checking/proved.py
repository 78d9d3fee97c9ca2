"""How it is known that a corner is the worst: what is kept of a proof, and imported without what proves."""

from __future__ import annotations

from typing import Literal

from msgspec import Struct

Method = Literal["nothing is toleranced", "enclosed", "split", "enumerated", "searched"]


class Proof(Struct, frozen=True):
    """How it is known that a corner is the worst, with the runs at corners and over boxes that it took.

    ``inside`` where it is the worst of all between the corners too. ``why`` says what stood in the way of enclosing.
    A corner that was only searched for is not proved to be the worst.
    """

    method: Method
    inside: bool
    runs: int
    boxes: int = 0
    why: str = ""
