"""The direction of imports, the packages, and the habits that the design asks of every module."""

from __future__ import annotations

import ast
import importlib
import re
import subprocess
import sys
import tomllib
from collections.abc import Callable
from dataclasses import dataclass
from functools import cache
from graphlib import TopologicalSorter
from pathlib import Path

import pytest

from speclint.checking import assess
from speclint.quantities import Measure
from speclint.repository import Design
from speclint.specs import Link, Stated
from speclint.testing import installed_families
from tests.benchmarks.specs import make
from tests.each import each
from tests.example import EXAMPLE, is_of_one

ROOT = Path(__file__).parents[2]
CORE = sorted((ROOT / "speclint").rglob("*.py"))
STRANGER = ROOT / "tests" / "families" / "stranger"
FAMILIES = sorted([*(ROOT / "plugins").rglob("*.py"), *STRANGER.rglob("*.py")])

#: The packages from the ground up: a module imports from its own package and from those before it. The one place
#: where the order is written; DEVELOPERS.md prints it.
ORDER = (
    ("errors",),
    ("quantities",),
    ("equations",),
    ("specs", "handbook"),
    ("repository",),
    ("rules",),
    ("facts",),
    ("families",),
    ("checking",),
    ("register", "made"),
    ("reports",),
    ("editing",),
    ("commands", "testing"),
)
LEVEL = {package: level for level, packages in enumerate(ORDER) for package in packages}
#: Modules that stand above all packages: the public names, and the program.
ABOVE = ("speclint", "speclint.__main__")
#: What a family imports of speclint: listed for its authors in DEVELOPERS.md.
FOR_FAMILIES = ("speclint", "speclint.specs", "speclint.equations", "speclint.facts", "speclint.reports")
#: Of ``speclint.reports`` only what a family's own report or drawing is made of: the rest reads assessments for people,
#: and a rule that leaned on it would depend on how its finding is shown.
OF_REPORTS = {
    *(
        "Bar",
        "Figure",
        "Labels",
        "Paper",
        "Plot",
        "Point",
        "axis_marks",
        "chart",
        "compared",
        "followed",
        "hatched",
        "known_of",
    ),
    *("millimetres", "niced", "said", "specs_of", "taken_again", "ticks", "title_at", "unit_named"),
    *("visible", "word"),
    # numbers that a drawing prints, each with the quantity that it is
    *("Courses", "DrawnAgain", "OnSheet", "Printed", "Quantity", "Words", "along", "argument", "courses_of"),
    *("joined", "judged", "of_step", "on_sheet", "quoted", "shown", "stated", "words", "worked"),
}


def module_of(path: Path) -> str:
    parts = path.relative_to(ROOT).with_suffix("").parts
    return ".".join(parts).removesuffix(".__init__")


MODULES = {module_of(path): path for path in CORE}


@dataclass(frozen=True)
class Import:
    """One name that a module imports: from where, and whether only for the checker of types."""

    module: str
    name: str
    for_types: bool


@cache
def imports_of(path: Path) -> tuple[Import, ...]:
    """Every import of speclint and of families in a module, at its top or within a function."""
    tree = ast.parse(path.read_text(encoding="utf-8"))
    guarded = [
        node
        for node in ast.walk(tree)
        if isinstance(node, ast.If) and "TYPE_CHECKING" in ast.unparse(node.test)
    ]
    for_types = {id(inner) for node in guarded for part in node.body for inner in ast.walk(part)}
    found: list[Import] = []
    for node in ast.walk(tree):
        if isinstance(node, ast.ImportFrom) and node.module and node.module.startswith("speclint"):
            found += [Import(node.module, alias.name, id(node) in for_types) for alias in node.names]
        elif isinstance(node, ast.Import):
            found += [
                Import(alias.name, "", id(node) in for_types)
                for alias in node.names
                if alias.name.startswith("speclint")
            ]
    return tuple(found)


@cache
def exported(package: str) -> dict[str, str]:
    """The public names of a package, and the module that each comes from."""
    stub = ROOT.joinpath(*package.split("."), "__init__.pyi")
    if not stub.exists():
        return {}
    nodes = [
        node for node in ast.parse(stub.read_text(encoding="utf-8")).body if isinstance(node, ast.ImportFrom)
    ]
    return {
        alias.name: f"{package}.{node.module}" if node.module else f"{package}.{alias.name}"
        for node in nodes
        for alias in node.names
    }


def source_of(one: Import) -> str:
    """The module that a name comes from, looked up through the public face of its package."""
    whole = f"{one.module}.{one.name}"
    if whole in MODULES and not exported(one.module):
        return whole
    return exported(one.module).get(one.name, one.module)


def package_of(module: str) -> str:
    return module.split(".")[1]


def door_of(module: str) -> str:
    """The package through whose public face a module is reached: of the handbook, one of its own packages."""
    parts = module.split(".")
    return ".".join(parts[:3] if parts[1:2] == ["handbook"] else parts[:2])


def name_of(path: Path) -> str:
    return path.relative_to(ROOT).as_posix()


BELOW = [path for path in CORE if module_of(path) not in ABOVE]


def test_every_package_has_its_place_in_the_order() -> None:
    folders = {path.name for path in (ROOT / "speclint").iterdir() if (path / "__init__.py").exists()}
    assert folders == set(LEVEL)
    loose = {path.name for path in (ROOT / "speclint").glob("*.py")}
    assert loose == {"__init__.py", "__main__.py"}
    page = " ".join((ROOT / "DEVELOPERS.md").read_text(encoding="utf-8").split())
    assert " -> ".join(", ".join(packages) for packages in reversed(ORDER)) in page


@each(BELOW, name_of)
def test_imports_run_one_way(path: Path) -> None:
    """Wherever the import stands: at the top of a module, within a function, or for the checker of types."""
    own = package_of(module_of(path))
    for one in imports_of(path):
        assert one.module != "speclint", f"{path.name} takes {one.name} from the top: name its package"
        other = package_of(one.module)
        assert other == own or LEVEL[other] < LEVEL[own], f"{own} imports {one.module}"


@each(BELOW, name_of)
def test_another_package_is_reached_through_its_public_names(path: Path) -> None:
    own = door_of(module_of(path))
    for one in imports_of(path):
        if door_of(one.module) != own and one.module != "speclint.handbook":
            assert one.module == door_of(one.module), f"{one.module} is no public face"
            assert one.name in exported(one.module), f"{one.module} does not export {one.name}"


def test_no_module_waits_for_itself() -> None:
    """No circle of modules, imports within functions included; between packages not even for the checker of types."""
    graph = {
        module: {
            source_of(one)
            for one in imports_of(path)
            if not (one.for_types and package_of(module) == package_of(one.module))
        }
        for module, path in MODULES.items()
        if module not in ABOVE
    }
    TopologicalSorter(graph).prepare()


def test_no_package_of_the_handbook_waits_for_itself() -> None:
    graph: dict[str, set[str]] = {}
    for module, path in MODULES.items():
        if module.startswith("speclint.handbook."):
            graph.setdefault(door_of(module), set()).update(
                door_of(source_of(one))
                for one in imports_of(path)
                if door_of(source_of(one)) != door_of(module)
            )
    TopologicalSorter(graph).prepare()


DOORS = {door_of(module_of(path)) for path in BELOW} - {"speclint.handbook"}


@each(sorted(DOORS))
def test_a_package_has_one_public_face(package: str) -> None:
    """Its names lead somewhere, none hides a module of the same name, and its docstring says what lives there."""
    face = importlib.import_module(package)
    assert face.__doc__
    assert sorted(face.__all__) == sorted(exported(package))
    for name, module in exported(package).items():
        assert getattr(face, name) is not None
        hidden = f"{package}.{name}" in MODULES
        assert not hidden or module == f"{package}.{name}", f"{package}.{name} is a module and a name"


@each(CORE, name_of)
def test_the_core_never_imports_a_family(path: Path) -> None:
    text = path.read_text(encoding="utf-8")
    assert not re.search(r"^\s*(from|import) speclint_", text, re.MULTILINE)


@each(FAMILIES, name_of)
def test_a_family_imports_only_what_is_meant_for_it(path: Path) -> None:
    """The names of speclint, of its specs and equations and of the handbook's packages; of no other family."""
    own = path.relative_to(STRANGER if STRANGER in path.parents else ROOT / "plugins").parts[0]
    for one in imports_of(path):
        if one.module.split(".")[0] != own:
            door = one.module in FOR_FAMILIES or (
                one.module.startswith("speclint.handbook.") and one.module == door_of(one.module)
            )
            assert door, f"{one.module} is not meant for families"
            assert one.name in exported(one.module) or f"{one.module}.{one.name}" in MODULES, str(one)
            assert one.module != "speclint.reports" or one.name in OF_REPORTS, str(one)


def test_what_is_meant_for_reports_and_drawings_is_public() -> None:
    assert set(exported("speclint.reports")) >= OF_REPORTS


@pytest.mark.long
def test_a_family_never_reads_past_the_sheet(monkeypatch: pytest.MonkeyPatch) -> None:
    """Watched while a part of each kind is assessed: no family's code opens a measure, a word or a link."""
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

    def one_of_each_kind(design: Design, _: object) -> set[str]:
        """The last by name."""
        names = sorted(filter(is_of_one, design.selected))
        return set({design.index.entries[name].kind: name for name in names}.values())

    assert len(assess([EXAMPLE], installed_families(), only=one_of_each_kind).checks) > 1000
    assert opened == set()


@each(CORE + FAMILIES, name_of)
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
        "speclint.equations",
        "speclint.rules.sheet",
        "speclint.specs.fields",
        "speclint.families.loading",
    ):
        subprocess.run([sys.executable, "-W", "error", "-c", program, name], check=True, cwd=ROOT)
    subprocess.run([sys.executable, "-W", "error", "-c", program, *names], check=True, cwd=ROOT)


#: The libraries that every check needs; all others of the project wait until something uses them.
_LIGHT = {"lazy_loader", "msgspec", "packaging", "pluggy", "pydantic", "tomli"}


def heavy() -> list[str]:
    """Every other library that the program may use, by the name under which it is imported."""
    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    extras = project["optional-dependencies"]
    wanted = [
        *project["dependencies"],
        *(one for name in sorted(extras) if name != "test" for one in extras[name]),
    ]
    names = {re.split(r"[^\w.-]", one)[0].removesuffix(".py") for one in wanted}
    assert names > _LIGHT
    return sorted(names - _LIGHT | {"numpy"})


def test_heavy_imports_wait_until_they_are_used() -> None:
    """Not one of them is loaded by a check of specs in common units, all of it made in one process."""
    program = (
        "import sys\n"
        "from pathlib import Path\n"
        "from speclint.families import load_families\n"
        "from speclint.checking import Processes, assess\n"
        "assert assess([Path('example_specs/liners')], load_families(), processes=Processes(0)).checks\n"
        f"print(*[name for name in {heavy()} if name in sys.modules])\n"
    )
    done = subprocess.run(
        [sys.executable, "-c", program], capture_output=True, text=True, check=True, cwd=ROOT
    )
    assert done.stdout.split() == []


#: What a check of a spring alone has no use for: remedies, cams, steam, joints, and rules of parts that it is not.
_OF_OTHERS = (
    "speclint.checking.remedy_search",
    "speclint.checking.office_steps",
    "speclint.checking.design_changes",
    "speclint.handbook.cams",
    "speclint.handbook.steam",
    "speclint.specs.making",
    "speclint.facts.cylinders",
    "speclint.facts.joint_edges",
    "speclint.facts.joint_grips",
    "speclint.facts.joints",
    "speclint_motion.rules.rods",
    "speclint_motion.rules.shafts",
    "speclint_joints.rules",
)


def test_what_other_parts_need_waits_until_there_is_one(tmp_path: Path) -> None:
    make(tmp_path, 2)
    program = (
        "import sys\n"
        "from pathlib import Path\n"
        "from speclint.families import load_families\n"
        "from speclint.checking import Processes, assess\n"
        "from speclint.reports import terminal_page\n"
        f"found = assess([Path({str(tmp_path)!r})], load_families(), processes=Processes(0))\n"
        "assert terminal_page.write(found, 80, full=False).lines\n"
        "print(*sorted(name for name in sys.modules if name.startswith('speclint')))\n"
    )
    done = subprocess.run(
        [sys.executable, "-c", program], capture_output=True, text=True, check=True, cwd=ROOT
    )
    read = done.stdout.split()
    assert "speclint_springs.rules" in read
    assert [name for name in _OF_OTHERS if name in read] == []
    kinds = "speclint.specs.kinds."
    assert [name.removeprefix(kinds) for name in read if name.startswith(kinds)] == [
        "compression_spring",
        "duty",
    ]


def test_public_names_of_the_package() -> None:
    speclint = importlib.import_module("speclint")
    assert sorted(speclint.__all__) == sorted(exported("speclint"))
    written = set(re.findall(r"``(\w+)``", speclint.__doc__ or ""))
    assert written <= set(speclint.__all__), "the docstring lists what a family imports"
    assert {"rule", "Sheet", "OutOfRange", "API"} <= set(speclint.__all__)
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
