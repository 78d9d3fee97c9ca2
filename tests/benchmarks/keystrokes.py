"""What a designer waits for while typing: from a keystroke to the findings that rest on it, in a large repository."""

from __future__ import annotations

import time
from pathlib import Path

from speclint.editing.workspace import Workspace
from speclint.testing import installed_families
from tests.benchmarks.specs import make

_SPECS, _ASKED, _LIMIT = (
    2000,
    300.0,
    600.0,
)  # ms; 60 to 90 ms was measured, and the limit is for a busy machine


def soon_enough(folder: Path) -> bool:
    """Whether findings follow a keystroke soon, once the repository is open in an editor."""
    make(folder, _SPECS)
    space = Workspace(folder, installed_families())
    text = (folder / "spring-7.toml").read_text(encoding="utf-8")
    space.write("spring-7.toml", text)
    checks = sum(1 for _ in space.checking("spring-7.toml"))
    taken = []
    for free in ("147", "148", "149", "150", "151"):
        began = time.perf_counter()
        space.write("spring-7.toml", text.replace('free_length = "147 mm', f'free_length = "{free} mm'))
        steps = sum(1 for _ in space.checking("spring-7.toml"))
        taken.append((time.perf_counter() - began) * 1e3)
        assert steps == checks
    best = min(taken)
    print(
        f"a keystroke in one of {_SPECS} specs, {checks - 1} checks: {best:.0f} ms (asked: {_ASKED:.0f} ms)"
    )
    return best <= _LIMIT
