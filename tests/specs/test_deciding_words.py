"""Which words of a spec decide by what it is judged: found by their type, or by the mark on the field."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated, ClassVar, Literal

from speclint.families import load_families
from speclint.specs import FOR_REVIEW, NOT_STATED, Component, Length, SpecTable, Word, deciding_words
from speclint.testing import DesignFolder, made_family


class Foot(SpecTable):
    """A foot."""

    fixed: Word[bool] = NOT_STATED
    height: Length = NOT_STATED


class Stand(Component):
    """A stand."""

    kind: ClassVar[str] = "stand"
    called: ClassVar[str] = "stand"

    form: Word[Literal["welded", "cast"]] = NOT_STATED
    sides: tuple[Word[Literal["left", "right"]], ...] = ()
    maker: Word[str] = NOT_STATED
    inspector: Annotated[Word[str], FOR_REVIEW] = NOT_STATED
    legs: Word[int] = NOT_STATED
    height: Length = NOT_STATED
    main_foot: Foot = Foot.unstated()
    feet: dict[str, Foot] = {}
    spares: tuple[Foot, ...] = ()


SPEC = """
kind = "stand"
title = "stand"
prepared_by = "A. Render"
material = "cast-steel"
duty = "duty"
pressure_part = false
form = "cast"
sides = ["left", "right"]
maker = "a foundry"
inspector = "B. Thorne"
legs = 4
height = { value = "1 m", from = "measured" }
[main_foot]
fixed = true
height = "40 mm"
[feet.front]
fixed = false
height = { value = "40 mm", from = "assumed" }
[[spares]]
fixed = true
"""


def test_choices_marked_fields_and_provenances_decide_and_nothing_else(tmp_path: Path) -> None:
    loaded = load_families([made_family("stands", (Stand,))])
    design = DesignFolder(tmp_path, loaded).write({"stand.toml": SPEC, "duty.toml": 'kind = "duty"\n'})
    found = design.assess().design
    assert found is not None
    assert deciding_words(found.specs["stand"]) == {
        "kind": "stand",
        "prepared_by": "A. Render",
        "material": "cast-steel",
        "duty": "duty",
        "pressure_part": "false",
        "form": "cast",
        "sides[0]": "left",
        "sides[1]": "right",
        "inspector": "B. Thorne",
        "height from": "measured",
        "main_foot.fixed": "true",
        "feet.front.fixed": "false",
        "feet.front.height from": "assumed",
        "spares[0].fixed": "true",
    }
