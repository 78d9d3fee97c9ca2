"""The kinds as a link names them: at run time their words alone, so that a spec of one kind imports no other.

A kind's module takes the class of a kind that it links to from here: ``LinkTo[CylinderBlock]``.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from speclint.specs import *  # noqa: F403
else:
    from functools import cache

    from speclint.specs.catalogue import KINDS

    @cache
    def __getattr__(name: str) -> type:
        for word, place in KINDS.items():
            if place.endswith(f":{name}"):
                return type(name, (), {"kind": word})
        raise AttributeError(f"no kind of spec is called {name}")
