"""README.md shows the spec as it is, the command's real output, and two commands that do all the set-up."""

from __future__ import annotations

import re
from pathlib import Path

from speclint.checking.family_names import misspelt_families
from speclint.families import load_families
from speclint.handbook.materials import material, read_materials
from speclint.repository.settings import load_settings
from speclint.rules import read_limits
from tests.readme import README, SHOWN, rewritten

TEXT = README.read_text(encoding="utf-8")


def test_the_spec_and_the_output_are_the_real_ones() -> None:
    """Written anew by ``python -m tests.readme``; read it before committing it."""
    assert rewritten(TEXT) == TEXT
    assert f"speclint check {SHOWN}" in TEXT


def test_the_settings_that_it_shows_are_read_as_they_stand(tmp_path: Path) -> None:
    """Its limit of a rule that holds a part back is accepted by a reviewer whom the same settings name."""
    (shown,) = re.findall(r"```toml\n(\[works\] .*?)```", TEXT, re.DOTALL)
    (tmp_path / "speclint.toml").write_text(shown, encoding="utf-8")
    settings, complaints = load_settings(tmp_path)
    assert settings is not None
    assert complaints == ()
    loaded = load_families()
    assert list(misspelt_families(settings, loaded)) == []
    limits, refused = read_limits(settings, loaded.rules)
    assert (len(limits), refused) == (1, [])


def test_it_opens_with_one_paragraph_then_a_spec() -> None:
    title, paragraph, *_ = [part for part in TEXT.split("\n\n") if part.strip()]
    assert title.startswith("# speclint")
    assert not paragraph.startswith(("#", "-", "`", "|"))
    assert TEXT.index("```toml") < TEXT.index("```text")


def test_the_first_two_shell_blocks_are_one_command_each() -> None:
    blocks = re.findall(r"```sh\n(.*?)```", TEXT, re.DOTALL)
    assert len(blocks) >= 2
    for block in blocks[:2]:
        assert block.count("\n") == 1
    assert 'pip install ".[pack]"' in blocks[0]
    assert blocks[0].rstrip().endswith("speclint check example_specs")
    assert "pytest" in blocks[1]


def test_the_own_metal_is_read_and_states_its_hardness() -> None:
    """Of the block that is a file of materials: 215 HB as stated there, and the rest of the iron that it is like."""
    (block,) = (one for one in re.findall(r"```toml\n(.*?)```", TEXT, re.DOTALL) if "metals.toml" in one)
    (iron,) = read_materials(block, "metals.toml")
    assert (iron.name, iron.hardness().nominal) == ("liner-iron-2", 215.0)
    assert iron.modulus(293.15).nominal == material("grey-iron-250").modulus(293.15).nominal
