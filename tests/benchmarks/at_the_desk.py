"""What a user waits for, as ratios in one run: one spec of many, a commit, a run again, a change, and all made anew.

One spec is checked after one of its values was changed, and again where nothing was since.

The floor is a Python that imports the same libraries, and parses and validates every file of the repository; for one
spec of the example it is that spec alone. What is asked for in seconds is written as a ratio to the floor of the
machine on which it was asked: 0.2 s for one spec.
"""

from __future__ import annotations

import shutil
import subprocess
from pathlib import Path

from tests.benchmarks.replicated import EXAMPLE, replicate
from tests.benchmarks.timed import Bound, Desk, told

_ROUNDS = 5
_RING = Path("rings") / "ring-left-front.toml"
_THICKNESS = 'thickness = "16'
_ONE = Bound("one spec of the example, changed", 1.6, 4.8)
_ONE_AGAIN = Bound("one spec of the example, again", 1.6, 1.0)
_IN_COPIES = Bound("one spec of {specs} of the example replicated, changed", 2.0, 4.0)
_IN_COPIES_AGAIN = Bound("one spec of {specs} of the example replicated, again", 2.0, 1.0)
_IN_TEN_THOUSAND = Bound("one spec of {specs} of the example replicated, changed", 2.0, 2.0)
_IN_TEN_THOUSAND_AGAIN = Bound("one spec of {specs} of the example replicated, again", 2.0, 1.0)
_ANEW = Bound("the example made anew, in full with remedies", 30.0, 235.0)
_ANEW_AS_DATA = Bound("the example made anew, as JSON", 25.0, 144.0)
_AGAIN = Bound("the example again, nothing changed", 10.7, 2.0)
_CHANGED = Bound("the example, one spec changed", 13.3, 13.3)
_STAGED = Bound("a commit that changes a title", 8.0, 8.0)


def one_spec(folder: Path) -> bool:
    """Whether one spec of the example is checked soon, once its repository is indexed."""
    desk = Desk(folder / "example")
    shutil.copytree(EXAMPLE, desk.folder)
    return _one_of(desk, (_ONE, _ONE_AGAIN), desk.folder / _RING, desk.folder / _RING)


def one_of_copies(folder: Path, copies: int) -> bool:
    """Whether one spec of many is checked soon, once its repository is indexed."""
    desk = Desk(folder / f"copies-{copies}")
    specs = replicate(desk.folder, copies)
    most = copies > 50
    bounds = (_IN_TEN_THOUSAND, _IN_TEN_THOUSAND_AGAIN) if most else (_IN_COPIES, _IN_COPIES_AGAIN)
    changed, again = (Bound(one.what.format(specs=specs), one.asked, one.most) for one in bounds)
    return _one_of(desk, (changed, again), desk.folder, desk.folder / "copy-1" / _RING)


def _one_of(desk: Desk, bounds: tuple[Bound, Bound], read: Path, spec: Path) -> bool:
    """Whether one spec is checked soon after a value of it was changed, and again as it then is.

    Both checks and the floor take turns, so that all meet the same machine.
    """
    desk.check(str(spec))
    drawn = spec.read_text(encoding="utf-8")
    rounds: list[tuple[float, float, float]] = []
    for turn in range(1, _ROUNDS + 1):
        spec.write_text(drawn.replace(_THICKNESS, f"{_THICKNESS}.00{turn}"), encoding="utf-8")
        rounds.append((desk.check(str(spec)), desk.check(str(spec)), desk.floor(read, 1)))
    changed, again, floors = (min(seconds) for seconds in zip(*rounds, strict=True))
    return all([told(bounds[0], changed, floors), told(bounds[1], again, floors)])


def whole_example(folder: Path) -> bool:
    """Whether runs of the example are short enough: made anew, again, with one spec changed, and before a commit."""
    desk = Desk(folder / "whole")
    shutil.copytree(EXAMPLE, desk.folder)
    place, ring = str(desk.folder), desk.folder / _RING
    floor = desk.floor(desk.folder)
    kept = [
        told(_ANEW, desk.check(place, "--full", "--afresh"), floor),
        told(_ANEW_AS_DATA, desk.check(place, "--afresh", "--as", "json"), floor),
    ]
    desk.check(place)
    kept.append(told(_AGAIN, min(desk.check(place) for _ in range(2)), floor))
    ring.write_text(ring.read_text(encoding="utf-8") + "# looked at again\n", encoding="utf-8")
    kept.append(told(_CHANGED, desk.check(place), floor))
    _git(desk, "init", "-q")
    _git(desk, "add", ".")
    _git(desk, "commit", "-q", "-m", "as it was")
    text = ring.read_text(encoding="utf-8")
    ring.write_text(text.replace('title = "Piston ring', 'title = "Ring'), encoding="utf-8")
    _git(desk, "add", ".")
    desk.check("--staged", place)
    kept.append(told(_STAGED, min(desk.check("--staged", place) for _ in range(2)), floor))
    return all(kept)


def _git(desk: Desk, *words: str) -> None:
    who = ["-c", "user.name=A. Render", "-c", "user.email=a@example.org", "-c", "commit.gpgsign=false"]
    subprocess.run(["git", "-C", str(desk.folder), *who, *words], check=True, capture_output=True)
