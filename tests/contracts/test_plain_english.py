"""One reading for an engineer in Leeds, Munich or Ohio: turns of phrase that need decoding do not come back."""

from __future__ import annotations

import re
from pathlib import Path

from speclint.rules import Rule
from speclint.testing import installed_families
from tests.each import each

ROOT = Path(__file__).parents[2]
TEXTS = [
    path
    for folder in ("speclint", "plugins", "example_specs")
    for path in sorted((ROOT / folder).rglob("*"))
    if path.suffix in (".py", ".toml", ".csv", ".html", ".txt")
] + [ROOT / "README.md", ROOT / "DEVELOPERS.md"]

#: What was written once, and what an engineer calls it.
INSTEAD = {
    "for ever": "infinite life",
    "unkindest": "worst",
    "beyond measure": "no margin left",
    "to and fro": "reciprocating",
    "turned over at every stroke": "fully reversed",
    "own swing": "natural frequency",
    "eat each other": "corrode",
    "at a creep": "at slow speed",
}
#: What a statement may not leave to the reader: a check proves or breaks a statement, so the limit stands in it.
VAGUE = ("small share", "far above", "far below", "as they count", "set beside", "well within", "good enough")

RULES = installed_families().rules


@each(TEXTS, lambda path: path.relative_to(ROOT).as_posix())
def test_no_turn_of_phrase_needs_decoding(path: Path) -> None:
    text = " ".join(path.read_text(encoding="utf-8").split()).lower()
    for turn, instead in INSTEAD.items():
        assert not re.search(rf"\b{turn}\b", text), f"{turn}: write {instead}"


@each(RULES, lambda rule: rule.name)
def test_a_statement_can_be_proved_or_broken(rule: Rule) -> None:
    for words in VAGUE:
        assert words not in rule.title.lower()
    assert rule.title[:1].isupper()
    assert len(rule.title) <= 200
