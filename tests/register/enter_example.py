"""Enters the register of ``example_specs`` anew, by the program's own means.

``python -m tests.register.enter_example`` is to be run after a change of the example or of an edition.

It shows an accepted hold, an entry that ends soon, one that ended and was renewed, and one that lapsed because the
drawing moved on: that one is entered while the drawing is as it once was. So is the reading of a drawing that changed.
"""

from __future__ import annotations

import datetime as dt
import shutil
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

from speclint.register import Acceptance, Reader, concede, enter_reading
from speclint.testing import installed_families

EXAMPLE = Path(__file__).parents[2] / "example_specs"
REGISTER = "register.toml"
MADE = dt.date(2025, 3, 3)  # before any clock on which this runs
LONG, SOON = dt.date(2039, 12, 31), dt.date(2029, 6, 30)


@dataclass(frozen=True)
class Entry:
    """One entry to make: what was accepted, when, and how the drawing then was (file, as it is now, as it was)."""

    accepted: Acceptance
    made: dt.date = MADE
    once: tuple[str, str, str] | None = None


ENTRIES = (
    Entry(
        Acceptance(
            "liner-right",
            "liner.wall-at-last-bore",
            "M. Coyle",
            "The liner is condemned at 509 mm and not bored to 527 mm; the drawing says so from revision C on.",
            LONG,
            reference="CN-DR-007",
        )
    ),
    Entry(
        Acceptance(
            "ring-right-back",
            "liner.iron",
            "M. Coyle",
            "The rings of the first set are in store; the liner's wear is gauged at every washout.",
            SOON,
            reference="CN-DR-011",
        )
    ),
    Entry(
        Acceptance(
            "block-middle",
            "release.warming-procedure",
            "A. Render",
            "The engine is not steamed before the drains of the middle cylinder are drawn.",
            dt.date(2025, 9, 30),
            role="section leader, cylinders",
        )
    ),
    Entry(
        Acceptance(
            "block-middle",
            "release.warming-procedure",
            "A. Render",
            "As before; the drawing of the drains is waiting for the frame.",
            LONG,
            role="section leader, cylinders",
        ),
        made=dt.date(2025, 9, 29),
    ),
    Entry(
        Acceptance(
            "studs-front-right",
            "joint.stud-pitch",
            "M. Coyle",
            "A graphite gasket on a ground face carries the pitch; proved at the test of the first cover.",
            LONG,
            reference="CN-DR-009",
        ),
        once=("joints/studs-cover.toml", 'circle = "740 mm"', 'circle = "736 mm"'),
    ),
)


#: The drawings that were read: the component, who read it, and the drawing as it then was, where it changed since.
READINGS = (
    ("casting-liner-left", "M. Coyle", None),
    ("nozzle-left", "M. Coyle", ("drawings/CN-B-1610.svg", "; bore opened out", "")),
)


def enter(into: Path) -> None:
    """Make every entry in a copy of the example, and put the register into a folder."""
    with tempfile.TemporaryDirectory() as folder:
        copy = Path(folder) / EXAMPLE.name
        shutil.copytree(EXAMPLE, copy, ignore=shutil.ignore_patterns(REGISTER))
        for entry in ENTRIES:
            _enter(entry, copy)
        for component, by, once in READINGS:
            _read(component, by, once, copy)
        shutil.copy(copy / REGISTER, into / REGISTER)


def _enter(entry: Entry, copy: Path) -> None:
    with _as_it_was(entry.once, copy):
        concede(entry.accepted, copy, installed_families(), entry.made)


def _read(component: str, by: str, once: tuple[str, str, str] | None, copy: Path) -> None:
    with _as_it_was(once, copy):
        enter_reading([component], Reader(by), copy, installed_families(), MADE)


@contextmanager
def _as_it_was(once: tuple[str, str, str] | None, copy: Path) -> Iterator[None]:
    """A file of the copy as it once was, while something is entered."""
    if once is None:
        yield
        return
    file, now, then = once
    path = copy / file
    text = path.read_text(encoding="utf-8")
    if text.count(now) != 1:
        raise ValueError(f"{now} stands {text.count(now)} times in {file}")
    path.write_text(text.replace(now, then), encoding="utf-8", newline="\n")
    yield
    path.write_text(text, encoding="utf-8", newline="\n")


if __name__ == "__main__":
    enter(EXAMPLE)
