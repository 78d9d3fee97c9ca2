"""Sheet.take_nominal: what a rule takes that holds a drawing against itself."""

from __future__ import annotations

from pathlib import Path

from speclint.equations import FIRST_PRINCIPLES
from speclint.handbook.materials import material
from speclint.quantities import read
from speclint.repository import Design, Settings
from speclint.rules import Context, Corner, Grade, Sheet, rule
from speclint.specs import Component


@rule(
    "test.nominal",
    title="t",
    on=Component,
    grade=Grade.OBSERVATION,
    cites=[FIRST_PRINCIPLES],
    why="w",
    leaves_out="l",
)
def _rule(component: Component, sheet: Sheet) -> object:  # noqa: ARG001 - the form of a rule
    raise AssertionError("never run")


def _sheet(corner: Corner) -> Sheet:
    part = Component(id="part")
    design = Design(Path(), Settings(), {"part": part}, {"part": "part.toml"}, frozenset({"part"}))
    return Sheet(_rule, part, Context(design, material, {}), corner, record=True)


def test_nominal_is_the_size_written_and_no_corner() -> None:
    """25 mm +0.05/-0.02 aims at 25; its low is 24.98."""
    measure = read("25 mm +0.05/-0.02", "length")
    corner = Corner()
    sheet = _sheet(corner)
    assert sheet.take_nominal("d", measure, "wire") == 0.025
    assert corner.met == {}
    assert sheet.record.steps[0].value == 0.025
    assert sheet.record.steps[0].name == "wire"


def test_taken_with_its_limits_it_has_two_corners() -> None:
    measure = read("25 mm +0.05/-0.02", "length")
    corner = Corner()
    assert _sheet(corner).take("d", measure, "wire") == 0.02498
    assert len(corner.met) == 1
