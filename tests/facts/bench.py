"""A design from text with a sheet on which single facts are worked, without a rule and without a check."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from speclint.equations import FIRST_PRINCIPLES
from speclint.handbook.materials import material
from speclint.repository import Design, open_repository
from speclint.rules import Context, Corner, Grade, Rule, Sheet, rule
from speclint.specs import Component
from speclint.testing import SETTINGS, installed_families
from tests.plugins.known_metals import FILES


@rule(
    "test.fact",
    title="t",
    on=Component,
    grade=Grade.OBSERVATION,
    cites=[FIRST_PRINCIPLES],
    why="w",
    leaves_out="l",
)
def _rule(component: Component, sheet: Sheet) -> object:  # noqa: ARG001 - the form of a rule
    raise AssertionError("never run")


@dataclass(frozen=True)
class Bench:
    """The parts of a design by their ids, and a sheet that stands on one of them."""

    design: Design
    sheet: Sheet

    def __getitem__(self, name: str) -> Any:
        return self.design.specs[name]

    @property
    def silent(self) -> list[str]:
        """The places that were asked whether they state anything, and state nothing."""
        return self.sheet.silent


def bench(
    folder: Path, files: Mapping[str, str], on: str, *, metals: bool = False, readable: bool = True
) -> Bench:
    """The design of some specs, each named by its kind and its id; all must be readable unless that is not asked.

    With ``metals`` it knows the metals whose figures hand working can rely on.
    """
    texts = {f"{one.split()[1]}.toml": _HEAD.format(*one.split()) + text for one, text in files.items()}
    return opened(folder, texts | (FILES if metals else {"speclint.toml": SETTINGS}), on, readable=readable)


def opened(
    folder: Path, texts: Mapping[str, str], on: str, *, readable: bool = True, by: Rule | None = None
) -> Bench:
    """The design of some files by their names, the settings among them; the sheet has the limits of a rule, or none."""
    for name, text in texts.items():
        (folder / name).write_text(text, encoding="utf-8")
    found = open_repository([folder], installed_families().kinds)
    assert not (readable and found.complaints), found.complaints
    part = found.design.specs[on]
    assert isinstance(part, Component)
    context = Context(found.design, lambda name: found.materials.get(name) or material(name), {})
    return Bench(found.design, Sheet(by or _rule, part, context, Corner(), record=True))


_HEAD = 'kind = "{}"\nid = "{}"\n'
