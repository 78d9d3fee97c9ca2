"""Processor time of commands, each in a process of its own, and the lines of the table of benchmarks."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from dataclasses import dataclass
from pathlib import Path

_HERE = Path(__file__).parent


@dataclass(frozen=True)
class Bound:
    """What was asked for of a measurement, and beyond what it fails: times the floor of the same run."""

    what: str
    asked: float
    most: float


class Desk:
    """A folder of a user's own, with what is kept between runs beside it."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self._cache = folder.parent / f"{folder.name}-kept"

    @property
    def environment(self) -> dict[str, str]:
        """As a user's, whose compiled modules are kept; what is kept between runs has a place of this desk's own."""
        usual = {name: value for name, value in os.environ.items() if name != "PYTHONDONTWRITEBYTECODE"}
        return {**usual, "XDG_CACHE_HOME": str(self._cache), "LOCALAPPDATA": str(self._cache)}

    def check(self, *words: str) -> float:
        """Processor seconds of one check."""
        return self.timed("-m", "speclint", "check", *words)

    def floor(self, path: Path, runs: int = 3) -> float:
        """The least processor seconds of some floors."""
        return min(self.timed(str(_HERE / "floor_of_all.py"), str(path)) for _ in range(runs))

    def timed(self, *words: str) -> float:
        """Processor seconds of one run of Python; 1 is the exit code of a design with findings."""
        before = _children()
        done = subprocess.run(
            [sys.executable, *words], capture_output=True, check=False, env=self.environment
        )
        if done.returncode > 1:
            raise RuntimeError(done.stderr.decode())
        return _children() - before

    def forget(self) -> None:
        """Keep nothing of the runs so far."""
        shutil.rmtree(self._cache, ignore_errors=True)


def told(bound: Bound, seconds: float, floor: float) -> bool:
    """Print one line of the table; whether the measurement stays within its bound."""
    ratio = seconds / floor
    print(
        f"{bound.what:58} {seconds:6.2f} s {ratio:7.1f} × the floor of {floor:.2f} s "
        f"(asked for: {bound.asked:g}; fails beyond {bound.most:g})",
        flush=True,
    )
    return ratio <= bound.most


def _children() -> float:
    """Processor time of all processes started so far that have ended."""
    try:
        import resource
    except ImportError:  # Windows has no such module, and a coarser clock
        times = os.times()
        return times.children_user + times.children_system
    used = resource.getrusage(resource.RUSAGE_CHILDREN)
    return used.ru_utime + used.ru_stime
