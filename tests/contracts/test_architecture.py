"""The direction of imports, the rooms, and the habits that the design asks of every module."""

from __future__ import annotations

import ast
import importlib
import re
import subprocess
import sys
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from speclint.checking import assess
from speclint.quantities import Measure
from speclint.specs import Link, Stated
from tests.workshop import installed_families

ROOT = Path(__file__).parents[2]
CORE = sorted((ROOT / "speclint").rglob("*.py"))
FAMILIES = sorted((ROOT / "plugins").rglob("*.py"))

#: The rooms from the ground up: a module may import from its own level and below.
LEVELS = (
    {"errors", "where", "sources", "courses"},
    {"formula", "units", "tolerance_classes", "complaints", "locator"},
    {"quantities"},
    {"specs", "handbook"},
    {"loading"},
    {"settings", "rules"},
    {"design", "judgement", "writing", "corners", "systems"},
    {"record", "context", "repository", "limits", "register", "signing", "revisions"},
    {"touched"},
    {"judging"},
    {"sheet"},
    {"checks"},
    {"hookspecs", "assess", "report_writers"},
    {"plugins", "remedies", "register_writing"},
    {"concessions"},
    {"assessment"},
    {"conceding", "bench"},
    {"hands"},
    {"staged", "gate"},
    {"reports"},
    {"printing", "progress"},
    {"register_commands", "review_commands"},
    {"cli"},
)
LEVEL = {room: level for level, rooms in enumerate(LEVELS) for room in rooms}


def room_of(path: Path) -> str:
    return path.relative_to(ROOT / "speclint").parts[0].removesuffix(".py")


def imported(path: Path) -> Iterator[tuple[str, bool]]:
    """Every speclint module imported, and whether at run time at the top of the module."""
    tree = ast.parse(path.read_text(encoding="utf-8"))
    for node in ast.walk(tree):
        if isinstance(node, ast.ImportFrom) and node.module and node.module.split(".")[0] == "speclint":
            names = (
                [f"{node.module}.{alias.name}" for alias in node.names]
                if node.module == "speclint"
                else [node.module]
            )
            for name in names:
                yield name, node in tree.body
        elif isinstance(node, ast.Import):
            for alias in node.names:
                yield alias.name, node in tree.body


@pytest.mark.parametrize("path", CORE, ids=lambda path: path.relative_to(ROOT).as_posix())
def test_imports_run_one_way(path: Path) -> None:
    if path.name == "__init__.py" and path.parent.name == "speclint":
        return
    room = room_of(path)
    if room == "__main__":
        return
    for name, at_top in imported(path):
        parts = name.split(".")
        if parts[0] == "speclint" and len(parts) > 1 and parts[1] in LEVEL and at_top:
            assert LEVEL[parts[1]] <= LEVEL[room], f"{room} imports {parts[1]}, which stands above it"


def test_every_room_of_the_core_has_its_level() -> None:
    rooms = {room_of(path) for path in CORE} - {"__init__", "__main__"}
    assert rooms == set(LEVEL)


@pytest.mark.parametrize("path", CORE, ids=lambda path: path.relative_to(ROOT).as_posix())
def test_the_core_never_imports_a_family(path: Path) -> None:
    text = path.read_text(encoding="utf-8")
    assert not re.search(r"^\s*(from|import) speclint_", text, re.MULTILINE)


@pytest.mark.parametrize("path", FAMILIES, ids=lambda path: path.relative_to(ROOT).as_posix())
def test_a_family_imports_only_what_is_meant_for_it(path: Path) -> None:
    """The names of speclint, of its specs, handbook and formula; those of the family itself; of no other family."""
    own = path.relative_to(ROOT / "plugins").parts[0]
    allowed = ("speclint", "speclint.specs", "speclint.equations.equation", "speclint.handbook")
    tree = ast.parse(path.read_text(encoding="utf-8"))
    for node in ast.walk(tree):
        if isinstance(node, ast.ImportFrom) and node.module and node.module.startswith("speclint"):
            inside = node.module == own or node.module.startswith(f"{own}.")
            assert inside or node.module in allowed or node.module.startswith("speclint.handbook."), (
                node.module
            )


def test_a_family_never_reads_past_the_sheet(monkeypatch: pytest.MonkeyPatch) -> None:
    """Watched while example_specs is assessed: no family's code opens a measure, a word or a link."""
    opened: set[str] = set()
    for kind, fields in ((Measure, {"nominal", "low", "high", "text"}), (Stated, {"value"}), (Link, {"id"})):
        plain = kind.__getattribute__

        def watched(
            self: object, name: str, plain: Callable[..., object] = plain, fields: set[str] = fields
        ) -> object:
            frame = sys._getframe(1)
            if name in fields and str(frame.f_globals.get("__name__", "")).startswith("speclint_"):
                opened.add(f"{frame.f_globals['__name__']}:{frame.f_lineno} opens .{name}")
            return plain(self, name)

        monkeypatch.setattr(kind, "__getattribute__", watched)
    assert assess([ROOT / "example_specs"], installed_families()).checks
    assert opened == set()


@pytest.mark.parametrize("path", CORE + FAMILIES, ids=lambda path: path.relative_to(ROOT).as_posix())
def test_modules_stay_small_and_say_what_they_are(path: Path) -> None:
    text = path.read_text(encoding="utf-8")
    tree = ast.parse(text)
    assert ast.get_docstring(tree), "a module says in one sentence what it is"
    code = [line for line in text.splitlines() if line.strip() and not line.strip().startswith("#")]
    assert len(code) < 500
    for node in ast.walk(tree):
        if isinstance(node, ast.FunctionDef):
            docstring = ast.get_docstring(node, clean=False) or ""
            length = (node.end_lineno or 0) - node.lineno - docstring.count("\n")
            assert length <= 45, f"{node.name} has {length} lines"


def test_each_module_can_be_imported_alone_without_warnings() -> None:
    names = [
        ".".join(path.relative_to(ROOT).with_suffix("").parts) for path in CORE if path.name != "__main__.py"
    ]
    names = [name.removesuffix(".__init__") for name in names]
    program = "import importlib, sys\nfor name in sys.argv[1:]: importlib.import_module(name)"
    for name in (
        "speclint.equations.equation",
        "speclint.rules.sheet",
        "speclint.specs",
        "speclint.reports",
        "speclint.families.loading",
    ):
        subprocess.run([sys.executable, "-W", "error", "-c", program, name], check=True, cwd=ROOT)
    subprocess.run([sys.executable, "-W", "error", "-c", program, *names], check=True, cwd=ROOT)


def test_heavy_imports_wait_until_they_are_used() -> None:
    """Neither pint nor rich nor seuif97 nor jinja2 is loaded by a check of specs in common units."""
    program = (
        "import sys\n"
        "from pathlib import Path\n"
        "from speclint.families.loading import load_families\n"
        "from speclint.checking.assessment import assess\n"
        "assess([Path('example_specs/liners')], load_families())\n"
        "print([name for name in ('pint', 'rich', 'jinja2', 'matplotlib', 'numpy', 'scipy') if name in sys.modules])\n"
    )
    done = subprocess.run(
        [sys.executable, "-c", program], capture_output=True, text=True, check=True, cwd=ROOT
    )
    assert done.stdout.strip() == "[]"


def test_public_names_of_the_package() -> None:
    speclint = importlib.import_module("speclint")
    assert sorted(speclint.__all__) == list(speclint.__all__) or set(speclint.__all__) <= set(dir(speclint))
    for name in speclint.__all__:
        assert getattr(speclint, name) is not None


def test_the_top_level_holds_four_folders() -> None:
    done = subprocess.run(["git", "ls-files"], capture_output=True, text=True, check=False, cwd=ROOT)
    if done.returncode:
        pytest.skip("not a git work tree")
    top = {line.split("/")[0] for line in done.stdout.splitlines()}
    folders = {name for name in top if (ROOT / name).is_dir() and not name.startswith(".")}
    files = {name for name in top if not (ROOT / name).is_dir() and not name.startswith(".")}
    assert folders == {"speclint", "plugins", "tests", "example_specs"}
    assert files == {"README.md", "DEVELOPERS.md", "pyproject.toml", "LICENSE"}
