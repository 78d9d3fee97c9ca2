"""A design with other specs finds its links anew, and leaves those of the design it was copied from as they are."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

from speclint.testing import DesignFolder

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
