"""Designs of a few parts, and what the order worked from their sizes puts before what."""

from __future__ import annotations

import re
from collections.abc import Mapping

from speclint.testing import DesignFolder, expect_not_assessed

RULE = "block.order-of-assembly"
#: Two seats of one valve, of which the upper one does not let the lower one through.
UPPER = """
kind = "valve-seat"
pressed_into = "block"
in_bore = "upper"
entered_from = "chamber"
outside_diameter = "164 mm"
bore = "152 mm"
"""
LOWER = """
kind = "valve-seat"
pressed_into = "block"
in_bore = "lower"
entered_from = "chamber"
outside_diameter = "160 mm"
bore = "142 mm"
"""
_LINE = re.compile(r"before ([\w-]+), since (.*?)(?=; before |$)")


def forced(workshop: DesignFolder, parts: Mapping[str, str]) -> dict[tuple[str, str], str]:
    """Each two parts of a block in the order in which they go in, and what is said of their sizes.

    ``parts`` is what each spec says, by its id; the block is called block.
    """
    for old in workshop.root.glob("*.toml"):
        old.unlink()
    check = workshop.write({f"{name}.toml": text for name, text in parts.items()}).only(RULE, "block")
    if check.outcome == "not assessed":
        expect_not_assessed(check, "no size that is stated forces an order")
        return {}
    assert check.outcome == "conforms", check.says
    found: dict[tuple[str, str], str] = {}
    for step in check.steps:
        number, _, first = step.name.partition(". ")
        if number.isdigit():
            found |= {(first, then): says for then, says in _LINE.findall(str(step.value))}
    return found


def without(parts: Mapping[str, str], part: str, line: str) -> dict[str, str]:
    """The same parts, of which one says a line less."""
    return instead(parts, part, f"{line}\n", "")


def instead(parts: Mapping[str, str], part: str, old: str, new: str) -> dict[str, str]:
    """The same parts, of which one says something else; it must have said the old once."""
    assert parts[part].count(old) == 1, f"{old!r} in {part}"
    return {**parts, part: parts[part].replace(old, new)}
