"""Small designs to begin with: each component of the example with what it is linked to, its settings and register."""

from __future__ import annotations

from collections import deque
from dataclasses import dataclass
from functools import cache
from pathlib import Path

from speclint.repository import Design, open_repository
from speclint.specs import Component
from speclint.testing import installed_families

EXAMPLE = Path(__file__).parents[2] / "example_specs"
_MOST_FILES = 12


@dataclass(frozen=True)
class SmallDesign:
    """Files by name, and the one that is checked."""

    files: dict[str, bytes]
    checked: str


@cache
def small_designs() -> tuple[SmallDesign, ...]:
    """One for each component of the example whose closure of links is small, in the order of their ids."""
    design = open_repository([EXAMPLE], installed_families().kinds).design
    common = {name: (EXAMPLE / name).read_bytes() for name in ("speclint.toml", "register.toml")}
    found = []
    for name in sorted(design.specs):
        files = _closure(design, name)
        if isinstance(design.specs[name], Component) and len(files) <= _MOST_FILES:
            texts = {file: (EXAMPLE / file).read_bytes() for file in files}
            found.append(SmallDesign({**common, **texts}, files[0]))
    return tuple(found)


def _closure(design: Design, name: str) -> list[str]:
    """The files of a spec, of all that its links lead to and of what it is like, its own first."""
    seen = {name: None}
    waiting = deque([name])
    while waiting:
        one = waiting.popleft()
        linked = [link.id for link in design.specs[one].links()]
        for other in (*linked, design.alike.get(one, "")):
            if other in design.specs and other not in seen:
                seen[other] = None
                waiting.append(other)
    return [design.files[one] for one in seen]
