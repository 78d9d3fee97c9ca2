"""Specs that are read when they are asked for: what is told is the same to the byte as where every spec is read."""

from __future__ import annotations

import random
from collections.abc import Callable
from pathlib import Path

import pytest

from speclint.checking import Assessment, KeptFolder, assess, chosen_rules
from speclint.reports import json_report, terminal_page
from speclint.testing import DesignFolder, installed_families

DUTY = 'kind = "duty"\n[cases.running]\nlive_pressure = "15 bar gauge"\n'
BLOCK = (
    'kind = "cylinder-block"\nduty = "duty"\ndrawing = "B-1"\n[bores.left]\ndiameter = "480 mm H7"\n'
    '[bores.right]\ndiameter = "480 mm"\n'
)
LINER = (
    'kind = "cylinder-liner"\nhoused_in = "block"\nin_bore = "left"\ndrawing = "L-1"\nbore = "450 mm"\n'
    'outside_diameter = "480 mm"\n'
)
RING = 'kind = "piston-ring"\nruns_in = "liner"\ndrawing = "R-{number}"\n'
FILES = {
    "duty.toml": DUTY,
    "block.toml": BLOCK,
    "liner.toml": LINER,
    "liner-right.toml": 'kind = "cylinder-liner"\nlike = "liner"\nin_bore = "right"\n',
    **{f"ring-{number}.toml": RING.format(number=number) for number in range(4)},
}
#: Edits that a designer makes, among them such as leave something wrong.
EDITS: dict[str, Callable[[dict[str, str]], object]] = {
    "a title": lambda files: files.update({"block.toml": 'title = "block"\n' + files["block.toml"]}),
    "another drawing number": lambda files: files.update(
        {"ring-1.toml": files["ring-1.toml"].replace("R-1", "R-2")}
    ),
    "a bore renamed": lambda files: files.update(
        {"block.toml": files["block.toml"].replace("bores.left", "bores.middle")}
    ),
    "a smaller bore": lambda files: files.update({"block.toml": files["block.toml"].replace("480", "470")}),
    "a link to nothing": lambda files: files.update(
        {"ring-2.toml": files["ring-2.toml"].replace('"liner"', '"lined"')}
    ),
    "a spec taken away": lambda files: files.pop("ring-3.toml", None),
    "a spec added": lambda files: files.update({"ring-9.toml": RING.format(number=9)}),
    "no TOML": lambda files: files.update({"ring-0.toml": "kind = \n"}),
    "an unknown key": lambda files: files.update({"liner.toml": files["liner.toml"] + 'colour = "red"\n'}),
    "a change of what another is like": lambda files: files.update(
        {"liner.toml": files["liner.toml"].replace("450 mm", "452 mm")}
    ),
    "an id twice": lambda files: files.update({"ring-8.toml": 'id = "ring-1"\n' + RING.format(number=8)}),
    "a loop": lambda files: files.update({"block.toml": 'like = "block"\n' + files["block.toml"]}),
}


def told(shop: DesignFolder, spec: str, kept: KeptFolder | None = None) -> tuple[str, Assessment]:
    loaded = installed_families()
    rules = chosen_rules(loaded, ["liners", "wholeness"], [])
    found = assess([shop.root / spec], loaded, rules, kept=kept)
    return json_report.write(found), found


@pytest.mark.parametrize("seed", range(4))
def test_what_is_told_after_edits_is_the_same_as_where_every_spec_is_read(tmp_path: Path, seed: int) -> None:
    files, kept, chance = dict(FILES), KeptFolder(tmp_path / "kept"), random.Random(seed)
    (tmp_path / "shop").mkdir()
    shop = DesignFolder(tmp_path / "shop").write(files)
    for edit in ["", *chance.sample(sorted(EDITS), 4)]:
        if edit:
            EDITS[edit](files)
            for old in set(FILES) - set(files):
                (shop.root / old).unlink(missing_ok=True)
            shop.write(files)
        assert edit or not told(shop, ".", kept)[1].complaints
        for spec in ("liner-right.toml", "."):
            assert told(shop, spec, kept)[0] == told(shop, spec)[0], edit


def test_only_what_a_check_asks_for_is_read(tmp_path: Path) -> None:
    (tmp_path / "shop").mkdir()
    shop, kept = DesignFolder(tmp_path / "shop").write(FILES), KeptFolder(tmp_path / "kept")
    first = told(shop, "ring-1.toml", kept)[1]
    again = told(shop, "ring-1.toml", kept)[1]
    assert first.design is not None
    assert again.design is not None
    assert first.design.only_indexed == 0
    assert again.design.only_indexed == 4  # the other liner, and three other rings
    assert "4 of 8 specs read, 4 indexed by an earlier run" in terminal_page.write(again, 100).text()
    assert "indexed" not in terminal_page.write(first, 100).text()


def test_an_unread_spec_is_as_before_when_it_is_asked_for(tmp_path: Path) -> None:
    (tmp_path / "shop").mkdir()
    shop, kept = DesignFolder(tmp_path / "shop").write(FILES), KeptFolder(tmp_path / "kept")
    every = told(shop, "ring-1.toml", kept)[1].design
    lazily = told(shop, "ring-1.toml", kept)[1].design
    assert every is not None
    assert lazily is not None
    for file in shop.root.glob("*.toml"):
        file.unlink()  # what was indexed is not looked for on the disk again
    assert dict(lazily.specs) == dict(every.specs)
    assert lazily.specs["liner-right"].taken_over == every.specs["liner-right"].taken_over
