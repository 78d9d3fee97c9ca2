"""README.md shows the spec as it is, the command's real output, and two commands that do all the set-up."""

from __future__ import annotations

import re

from tests.readme import README, SHOWN, rewritten

TEXT = README.read_text(encoding="utf-8")


def test_the_spec_and_the_output_are_the_real_ones() -> None:
    """Written anew by ``python -m tests.readme``; read it before committing it."""
    assert rewritten(TEXT) == TEXT
    assert f"speclint check {SHOWN}" in TEXT


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
