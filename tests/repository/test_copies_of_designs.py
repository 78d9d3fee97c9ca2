"""A design with other specs finds its links anew, and leaves those of the design it was copied from as they are."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path
from typing import ClassVar

from speclint.errors import replace
from speclint.families import load_families
from speclint.specs import NOT_STATED, Component, CylinderLiner, Length, Word
from speclint.testing import DesignFolder, made_family

FILES = {
    "block.toml": 'kind = "cylinder-block"\nid = "block"\n',
    "liner.toml": 'kind = "cylinder-liner"\nid = "liner"\nhoused_in = "block"\n',
}


def test_a_copy_without_a_part_links_to_nothing_and_changes_nothing(tmp_path: Path) -> None:
    design = DesignFolder(tmp_path).write(FILES).assess().design
    assert design is not None
    block = design.specs["block"]
    assert [part.id for part in design.linking_to(block)] == ["liner"]
    copy = replace(design, specs={"block": block})
    assert copy.linking_to(block) == ()
    assert [part.id for part in design.linking_to(block)] == ["liner"]


def test_a_copy_with_other_links_cut_follows_the_others(tmp_path: Path) -> None:
    design = DesignFolder(tmp_path).write(FILES).assess().design
    assert design is not None
    (link,) = design.specs["liner"].links()
    assert design.follow(link) is design.specs["block"]
    copy = replace(design, cut=frozenset({link.where}))
    assert copy.follow(link) is None
    assert copy.linking_to(design.specs["block"]) == ()
    same = replace(design, selected=frozenset())
    assert same.index is design.index


def test_a_design_tells_of_drawings_of_what_is_left_over_and_of_the_way(tmp_path: Path) -> None:
    files = {
        **FILES,
        "duty.toml": 'kind = "duty"\n',
        "twin.toml": 'kind = "cylinder-liner"\ndrawing = "L 2"\n',
    }
    design = DesignFolder(tmp_path).write(files).assess("duty.toml").design
    assert design is not None
    liner, twin = design.specs["liner"], design.specs["twin"]
    assert isinstance(liner, CylinderLiner)
    assert isinstance(twin, CylinderLiner)
    assert design.of_drawing("l2") == (twin,)
    assert design.left_over() == (design.specs["duty"],)
    assert design.way_to(liner, ["cylinder-block"]) == (design.specs["block"], frozenset({"liner", "block"}))
    assert design.way_to(twin, ["cylinder-block"]) == (None, frozenset({"twin"}))
    assert design.listed_under(liner) == ("block", frozenset({"liner", "block"}))
    assert (design.only_indexed, [*design.parts()]) == (0, [])


class Clip(Component):
    """A clip with a key that was called otherwise before."""

    kind: ClassVar[str] = "clip"
    called: ClassVar[str] = "clip"
    old_keys: ClassVar[Mapping[str, str]] = {"size": "thickness", "grade": "material"}

    size: Length = NOT_STATED
    grade: Word[str] = NOT_STATED


def test_old_keys_are_told_of_the_selected_specs_in_their_order(tmp_path: Path) -> None:
    text = 'kind = "clip"\nsize = "8 mm"\ngrade = "S235"\n'
    loaded = load_families([made_family("clips", kinds=[Clip], rules=[])])
    shop = DesignFolder(tmp_path, loaded).write({f"{name}.toml": text for name in "cab"})
    design = shop.assess("c.toml", "a.toml").design
    assert design is not None
    assert [(one.where.file, one.where.line) for one in design.old_keys] == [
        ("a.toml", 2),
        ("a.toml", 3),
        ("c.toml", 2),
        ("c.toml", 3),
    ]
