"""What locks a nut, a set screw and a cotter, and what does not."""

from __future__ import annotations

from typing import Final, Literal, TypeAlias

#: What is locked: a nut or a bolt, a set screw that bears by its point, or a cotter.
Locked: TypeAlias = Literal["nut", "set screw", "cotter"]

#: The words for locks that lock it not, common practice. A screw set against a nut turns back with it under a load that
#: reverses, and a second screw goes in behind a set screw alone. No pin goes through a set screw, and no washer is
#: pressed under it, since it bears by its point; nor under a cotter, which has no face for one.
_NO_LOCK: Final[dict[Locked, tuple[str, ...]]] = {
    "nut": ("nothing", "set screw", "second screw on each", "spring washer"),
    "set screw": ("nothing", "split pin", "tab washer", "spring washer"),
    "cotter": ("nothing", "tab washer"),
}


def is_locked(what: Locked, by: str) -> bool:
    """Whether a lock, by the word that specs use for it, keeps a nut, a set screw or a cotter from working back.

    >>> is_locked("nut", "second screw on each"), is_locked("set screw", "second screw on each")
    (False, True)
    >>> is_locked("nut", "split pin"), is_locked("set screw", "split pin")
    (True, False)
    """
    return by not in _NO_LOCK[what]
