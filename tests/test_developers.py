"""DEVELOPERS.md: its family runs as printed, and every hook is a heading with its arguments."""

from __future__ import annotations

import inspect
import re
import sys
from importlib.metadata import EntryPoint
from pathlib import Path

import pytest

from speclint.families import hooks as hookspecs, load_families
from speclint.testing import DesignFolder

PAGE = (Path(__file__).parents[1] / "DEVELOPERS.md").read_text(encoding="utf-8")


def test_the_family_in_ten_minutes_runs_as_printed(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    package = tmp_path / "src" / "speclint_drains"
    package.mkdir(parents=True)
    names = re.findall(r"`speclint_drains/(\w+\.py)` holds", PAGE)
    blocks = re.findall(r"```python\n(.*?)```", PAGE, re.DOTALL)
    assert names == ["__init__.py", "rules.py"]
    assert len(blocks) == len(names)
    for name, block in zip(names, blocks, strict=True):
        (package / name).write_text(block, encoding="utf-8")
    monkeypatch.syspath_prepend(str(package.parent))
    try:
        loaded = load_families([EntryPoint("drains", "speclint_drains", "speclint")])
        shop = DesignFolder(tmp_path / "design", loaded)
        spec = 'kind = "drain-cock"\nbore = "{bore}"\nspace = "{space}"\n'
        # by hand: 20³ mm³ over 20 l = 8e3/2e7 = 4e-4, four times the least share; 11 mm is less than 12
        sound = shop.write({"cock.toml": spec.format(bore="20 mm", space="20 l")}).only("drain-cock.bore")
        narrow = shop.write({"cock.toml": spec.format(bore="11 mm", space="1 l")}).only("drain-cock.bore")
        # by hand: 12³ mm³ over 20 l = 1728/2e7 = 8.64e-5 of 1e-4
        wide_space = shop.write({"cock.toml": spec.format(bore="12 mm", space="20 l")}).only(
            "drain-cock.bore"
        )
    finally:
        for name in [name for name in sys.modules if name.startswith("speclint_drains")]:
            del sys.modules[name]
    assert (sound.outcome, narrow.outcome, wide_space.outcome) == ("conforms", "finding", "finding")
    assert narrow.utilisation == pytest.approx(12 / 11)
    assert wide_space.utilisation == pytest.approx(1 / 0.864)


def test_every_hook_is_a_heading_with_its_arguments() -> None:
    hooks = {
        name: inspect.signature(function)
        for name, function in inspect.getmembers(hookspecs, inspect.isfunction)
        if name.startswith("speclint_")
    }
    headings = set(re.findall(r"^### (speclint_\w+\(.*?\))$", PAGE, re.MULTILINE))
    assert headings == {f"{name}({', '.join(signature.parameters)})" for name, signature in hooks.items()}


def test_every_hook_has_a_test() -> None:
    tests = "".join(path.read_text(encoding="utf-8") for path in Path(__file__).parent.rglob("test_*.py"))
    for name in ("speclint_kinds", "speclint_rules", "speclint_materials", "speclint_reports"):
        assert name in tests
