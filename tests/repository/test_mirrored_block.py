"""A mirrored block is checked as one written out by hand: the left block of the example, and its right twin."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from speclint.checking import Assessment, assess, chosen_rules
from speclint.specs import CylinderBlock, Link
from speclint.testing import DesignFolder, changed

EXAMPLE = Path(__file__).parents[2] / "example_specs"
DUTY = "duties/main-line.toml"
LEFT, LINER = "blocks/block.toml", "liners/liner.toml"


def written(file: str) -> str:
    """What a file of the example states for the left, without what differs on other parts."""
    text = (EXAMPLE / file).read_text(encoding="utf-8").partition("\n[for.")[0]
    return re.sub(r"^each = .*\n", "", text, flags=re.MULTILINE).replace("{each}", "left")


def turned(text: str, front: str, back: str) -> str:
    """The text of a spec with two ports, at these angles."""
    one, two = '\nangle = "0 °"', '\nangle = "@"'
    text = text.replace(one, two, 1).replace(one, f'\nangle = "{back}"')
    return text.replace(two, f'\nangle = "{front}"')


@pytest.fixture(scope="module")
def found(tmp_path_factory: pytest.TempPathFactory) -> Assessment:
    """Left as drawn, right as its mirror, and right written out with the angles of the other side: 360° less these."""
    left, liner = (turned(written(file), "30 ° ±1", "340 °") for file in (LEFT, LINER))
    block = changed(turned(written(LEFT), "330 ° ±1", "20 °"), ('id = "block-left"', 'id = "by-hand"'))
    of_block = changed(
        turned(written(LINER), "330 ° ±1", "20 °"),
        ('id = "liner-left"', 'id = "liner-by-hand"'),
        ('housed_in = "block-left"', 'housed_in = "by-hand"'),
    )
    ports = "".join(f'[ports.{end}]\nmatches = "{end}"\n' for end in ("front", "back"))
    mirror = (
        'kind = "cylinder-liner"\nmirror_of = "liner-left"\nhoused_in = "mirrored"\nin_bore = "main"\n'
        + ports
    )
    files = {
        "duty.toml": written(DUTY),
        "block-left.toml": left,
        "liner-left.toml": liner,
        "by-hand.toml": block,
        "liner-by-hand.toml": of_block,
        "mirrored.toml": 'kind = "cylinder-block"\nmirror_of = "block-left"\n',
        "liner-mirrored.toml": mirror,
    }
    folder = DesignFolder(tmp_path_factory.mktemp("blocks")).write(files)
    rules = chosen_rules(folder.loaded, ("agreement", "liners"), ())
    chosen = ("mirrored.toml", "by-hand.toml", "liner-mirrored.toml", "liner-by-hand.toml")
    return assess([folder.root / name for name in chosen], folder.loaded, rules)


def outcomes(found: Assessment, component: str) -> dict[str, tuple[object, ...]]:
    def same(text: str) -> str:
        text = re.sub(r"(\.toml):\d+", r"\1", text)  # a place stated again stands on another line
        text = text.replace("block-left.toml", "by-hand.toml").replace("mirrored", "by-hand")
        return text.replace("liner-left.toml", "liner-by-hand.toml")

    return {
        check.rule.name: (
            check.outcome,
            check.grade,
            check.utilisation,
            check.case,
            tuple(map(same, check.governing)),
            same(check.says),
            tuple(map(same, check.missing)),
        )
        for check in found.checks
        if check.component == component
    }


@pytest.mark.parametrize("part", ["", "liner-"])
def test_both_are_judged_alike(found: Assessment, part: str) -> None:
    assert found.complaints == ()
    mirrored, by_hand = outcomes(found, f"{part}mirrored"), outcomes(found, f"{part}by-hand")
    assert mirrored == by_hand
    assert {one[0] for one in mirrored.values()} >= {"conforms", "finding", "not assessed"}


def test_the_mirror_reads_the_angles_of_the_other_side(found: Assessment) -> None:
    assert found.design is not None
    for name in ("mirrored", "by-hand"):
        block = found.design.specs[name]
        assert isinstance(block, CylinderBlock)
        assert [getattr(port.angle, "text", "") for port in block.ports.values()] == ["330 ° ±1", "20 °"]
    liner = found.design.specs["liner-mirrored"]
    assert isinstance(getattr(liner, "housed_in", None), Link)
