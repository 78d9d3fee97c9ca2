"""DEVELOPERS.md: its family runs as printed, its tables are those of the code, every hook is a heading."""

from __future__ import annotations

import inspect
import re
import sys
from pathlib import Path

import pytest

from speclint.commands import main
from speclint.commands.new_family import family_files
from speclint.families import hooks as hookspecs
from speclint.quantities import DIMENSIONS
from speclint.testing import DesignFolder, changed_files, expect_conforms, expect_finding, load_family
from tests.contracts.test_architecture import FOR_FAMILIES, OF_REPORTS, ORDER, ROOT
from tests.developers import NAME, PAGE as FILE, names_of, printed_files, renewed

PAGE = FILE.read_text(encoding="utf-8")
#: What of the family is not printed: modules that only say what their package is.
NOT_PRINTED = {"speclint_pipework/formulae/__init__.py"}


def test_the_page_prints_what_the_command_writes() -> None:
    """Renewed by ``python -m tests.developers``; read the change before you commit it."""
    assert renewed(PAGE) == PAGE
    written = {place for place in family_files(NAME) if re.match(r"speclint_pipework/.*\.py$", place)}
    assert set(printed_files(PAGE)) == written - NOT_PRINTED


def test_what_is_printed_of_its_tests_stands_there() -> None:
    whole = printed_files(PAGE).values()
    parts = [code for code in re.findall(r"```python\n(.*?)```", PAGE, re.DOTALL) if code not in whole]
    tests = [text for place, text in family_files(NAME).items() if place.startswith("tests/test_")]
    assert len(parts) == 4
    assert all(any(code in text for text in tests) for code in parts)


def test_the_entry_point_that_is_printed_is_the_one_written() -> None:
    (block,) = re.findall(r"```toml\n(.*?)```", PAGE, re.DOTALL)
    assert block in family_files(NAME)["pyproject.toml"]


def test_the_family_in_ten_minutes_runs_as_printed(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.chdir(tmp_path)
    command, enter = re.findall(r"^    ((?:speclint families|cd) .+)$", PAGE, re.MULTILINE)
    assert main(command.split()[1:]) == 0
    assert capsys.readouterr().err == ""
    root = tmp_path / enter.split()[1]
    for place, code in printed_files(PAGE).items():
        (root / place).write_text(code, encoding="utf-8")
    text = (root / "tests" / "design.py").read_text(encoding="utf-8")
    design: dict[str, dict[str, str]] = {}
    exec(compile(text, "design.py", "exec"), design)
    files = design["FILES"]
    monkeypatch.syspath_prepend(str(root))
    try:
        folder = DesignFolder(tmp_path / "design", load_family("speclint_pipework"))
        # by hand: 12 000 N/(2 × π/4 × 10² mm²) = 76.394 of 160 MPa; 11.5 − 10 = 1.5 mm where 1 mm is wanted
        folder.write(files)
        expect_conforms(folder.only("pipework-hanger.stress"), used=76.394 / 160)
        expect_conforms(folder.only("pipework-hanger.hole"), used=1 / 1.5)
        # by hand: 76.394 × (10/6)² = 212.2 of 160 MPa
        folder.write(changed_files(files, ("hanger.toml", "10 mm", "6 mm")))
        expect_finding(folder.only("pipework-hanger.stress"), used=212.2 / 160)
    finally:
        for name in [name for name in sys.modules if name.startswith("speclint_pipework")]:
            del sys.modules[name]


def section(heading: str) -> str:
    return PAGE.split(f"## {heading}\n")[1].split("\n## ")[0]


def test_the_map_has_every_package_in_the_order_of_imports() -> None:
    rows = re.findall(r"^\| `([a-z_.]+)/` \|", section("The map"), re.MULTILINE)
    packages = [package for packages in reversed(ORDER) for package in packages]
    handbook = sorted(path.parent.name for path in (ROOT / "speclint" / "handbook").glob("*/__init__.py"))
    assert rows[: len(packages)] == packages
    assert rows[len(packages) :] == [*(f"handbook.{name}" for name in handbook), "tests", "example_specs"]


def test_what_a_family_imports_is_listed() -> None:
    """The table names the packages that the contract of imports allows, and every name of the two short ones."""
    rows = dict(re.findall(r"^\| `([a-z_.*]+)` \| (.*) \|$", section("What a family imports"), re.MULTILINE))
    assert set(rows) == {*FOR_FAMILIES, "speclint.handbook.*", "speclint.testing"}
    assert rows["speclint"] == names_of("speclint")
    assert rows["speclint.testing"] == names_of("speclint.testing")
    assert set(re.findall(r"`(\w+)`", rows["speclint.reports"])) == OF_REPORTS
    drawn = re.findall(
        r"^\| (`.*?) \| ", section("Every hook").split("### speclint_drawings()")[1], re.MULTILINE
    )
    assert set(re.findall(r"\w+", " ".join(drawn))) == OF_REPORTS


def test_the_dimensions_of_limits_are_listed() -> None:
    said = " ".join(section("What kinds and rules can say").split())
    listed = said.split("the name of one that speclint can read: ")[1].split(". A limit")[0]
    assert set(re.findall(r"`(.*?)`", listed)) == {
        *DIMENSIONS,
        "fluid pressure",
        "temperature",
        "temperature difference",
    }


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
    for name in (name for name in vars(hookspecs) if name.startswith("speclint_")):
        assert name in tests
