"""Every family has one layout, and each thing stands in its place; what two families would work alike stands once.

``__init__.py`` hooks and nothing else; ``rules/`` one module a subject; ``formulae/`` what the rules work and the
tables that they look up. ``sources.py`` (the works cited, beside those that the core names), ``inputs`` (a module or a
package: what several rules take alike), ``figures/`` (drawings for the review pack) and ``data/`` (tables in files)
stand only where they are needed.
"""

from __future__ import annotations

import ast
from collections import defaultdict
from collections.abc import Iterator
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
FAMILIES = sorted(path.parent for path in (ROOT / "plugins").glob("speclint_*/__init__.py"))
NEEDED, OPTIONAL = (
    {"__init__.py", "rules", "formulae"},
    {"sources.py", "inputs.py", "inputs", "figures", "data"},
)
#: Where each mark may stand.
ROOM = {"formula": "formulae", "rule": "rules", "family": "__init__"}
each_family = pytest.mark.parametrize("family", FAMILIES, ids=lambda path: path.name)


def faults_of_layout(family: Path) -> Iterator[str]:
    """What stands at the top of a family and should not, and what is missing there."""
    found = {path.name for path in family.iterdir() if path.name != "__pycache__"}
    yield from (f"{name} has no place in a family" for name in sorted(found - NEEDED - OPTIONAL))
    yield from (f"{name} is missing" for name in sorted(NEEDED - found))
    if {"inputs.py", "inputs"} <= found:
        yield "inputs is a module or a package, not both"
    for name in sorted(found & {"rules", "formulae", "inputs", "figures"}):
        if not (family / name / "__init__.py").is_file():
            yield f"{name} is not a package"
    if "data" in found and not any(path.suffix in (".csv", ".toml") for path in (family / "data").iterdir()):
        yield "data holds no table"


def faults_of_place(family: Path) -> Iterator[str]:
    """What is defined in a module of a family and belongs elsewhere."""
    for path in sorted(family.rglob("*.py")):
        within = path.relative_to(family)
        room = within.parts[0].removesuffix(".py")
        tree = ast.parse(path.read_text(encoding="utf-8"))
        for mark, name in marked(tree):
            if ROOM.get(mark, room) != room:
                yield f"{within}: {name}, marked @{mark}, belongs in {ROOM[mark]}"
        if room == "rules" and within.name != "__init__.py":
            yield from (f"{within}: {fault}" for fault in faults_of_rules(tree))


def marked(tree: ast.Module) -> Iterator[tuple[str, str]]:
    """Each mark on a function, at whatever depth, with the function's name."""
    for node in ast.walk(tree):
        if isinstance(node, ast.FunctionDef):
            for one in node.decorator_list:
                mark = one.func if isinstance(one, ast.Call) else one
                yield ast.unparse(mark).rpartition(".")[2], node.name


def faults_of_rules(tree: ast.Module) -> Iterator[str]:
    """What RULES of a module leaves out, or that there is none."""
    for node in tree.body:
        target = node.targets[0] if isinstance(node, ast.Assign) else getattr(node, "target", None)
        if isinstance(target, ast.Name) and target.id == "RULES":
            listed = {one.id for one in ast.walk(node) if isinstance(one, ast.Name)}
            rules = (name for mark, name in marked(tree) if mark == "rule")
            yield from (f"{name} is not in RULES" for name in rules if name not in listed)
            return
    yield "has no RULES; what rules take alike belongs in inputs"


def written(family: Path, files: dict[str, str]) -> Path:
    for name, text in files.items():
        (family / name).parent.mkdir(parents=True, exist_ok=True)
        (family / name).write_text(text, encoding="utf-8")
    return family


SOUND = {
    "__init__.py": "@family\ndef speclint_rules(): ...\n",
    "rules/__init__.py": "",
    "rules/bores.py": '@rule("drain.bore")\ndef bore(): ...\nRULES = (bore,)\n',
    "formulae/__init__.py": "",
    "formulae/bores.py": '@formula("a = b")\ndef same(b): ...\n',
    "sources.py": "",
}


def test_there_are_families() -> None:
    assert len(FAMILIES) > 5


@each_family
def test_a_family_has_the_one_layout(family: Path) -> None:
    assert list(faults_of_layout(family)) == []


@each_family
def test_each_thing_stands_in_its_place(family: Path) -> None:
    assert list(faults_of_place(family)) == []


@pytest.mark.parametrize(
    ("files", "fault"),
    [
        ({"helpers.py": ""}, "helpers.py has no place in a family"),
        ({"inputs.py": "", "inputs/__init__.py": ""}, "inputs is a module or a package, not both"),
        ({"inputs/bores.py": ""}, "inputs is not a package"),
        ({"data/README": ""}, "data holds no table"),
        (
            {"inputs.py": '@formula("a = b")\ndef same(b): ...\n'},
            "inputs.py: same, marked @formula, belongs in formulae",
        ),
        (
            {"rules/bores.py": '@speclint.formula("a = b")\ndef same(b): ...\nRULES = ()\n'},
            "rules/bores.py: same, marked @formula, belongs in formulae",
        ),
        (
            {"formulae/bores.py": '@rule("drain.bore")\ndef bore(): ...\n'},
            "formulae/bores.py: bore, marked @rule, belongs in rules",
        ),
        (
            {"__init__.py": '@rule("drain.bore")\ndef bore(): ...\n'},
            "__init__.py: bore, marked @rule, belongs in rules",
        ),
        (
            {"rules/taking.py": "def bore(): ...\n"},
            "rules/taking.py: has no RULES; what rules take alike belongs in inputs",
        ),
        (
            {"rules/bores.py": '@rule("drain.bore")\ndef bore(): ...\nRULES: tuple[Rule, ...] = ()\n'},
            "rules/bores.py: bore is not in RULES",
        ),
    ],
)
def test_what_stands_elsewhere_is_found(tmp_path: Path, files: dict[str, str], fault: str) -> None:
    sound = written(tmp_path / "sound", SOUND)
    assert [*faults_of_layout(sound), *faults_of_place(sound)] == []
    family = written(tmp_path / "family", SOUND | files)
    found = [*faults_of_layout(family), *faults_of_place(family)]
    assert [one.replace("\\", "/") for one in found] == [fault]


@pytest.mark.parametrize("name", sorted(NEEDED))
def test_what_is_missing_is_found(tmp_path: Path, name: str) -> None:
    files = {path: text for path, text in SOUND.items() if Path(path).parts[0] != name}
    assert list(faults_of_layout(written(tmp_path, files))) == [f"{name} is missing"]


class Renamed(ast.NodeTransformer):
    """The working of a formula with its arguments named in the order in which they are used."""

    def __init__(self, arguments: list[str]) -> None:
        self.arguments, self.names = arguments, dict[str, str]()

    def visit_Name(self, node: ast.Name) -> ast.Name:
        if node.id not in self.arguments:
            return node
        return ast.Name(self.names.setdefault(node.id, f"x{len(self.names)}"), node.ctx)


def workings(path: Path) -> Iterator[tuple[tuple[str, str, str], str]]:
    """Of each formula: its printed equation, its units, and what it does; and where it stands."""
    for node in ast.parse(path.read_text(encoding="utf-8")).body:
        if isinstance(node, ast.FunctionDef):
            for one in node.decorator_list:
                if isinstance(one, ast.Call) and ast.unparse(one.func) == "formula":
                    given = [*node.args.args, *node.args.kwonlyargs]
                    units = ", ".join(ast.unparse(arg.annotation) for arg in given if arg.annotation)
                    does = Renamed([arg.arg for arg in given]).visit(ast.Module(node.body[1:], []))
                    yield (ast.unparse(one.args[0]), units, ast.unparse(does)), f"{path.name}: {node.name}"


def shared(rooms: dict[str, list[Path]]) -> list[list[str]]:
    """The formulae that more than one room holds alike: same equation, units and working."""
    found: dict[tuple[str, str, str], dict[str, str]] = defaultdict(dict)
    for room, paths in rooms.items():
        for path in paths:
            for key, place in workings(path):
                found[key][room] = f"{room}/{place}"
    return [sorted(places.values()) for places in found.values() if len(places) > 1]


def test_a_formula_that_two_families_work_stands_once_in_the_handbook() -> None:
    rooms = {family.name: sorted((family / "formulae").glob("*.py")) for family in FAMILIES}
    handbook = sorted((ROOT / "speclint" / "handbook").rglob("*.py"))
    assert sum(1 for path in handbook for _ in workings(path)) > 100
    assert shared({**rooms, "handbook": handbook}) == []


def test_a_formula_written_twice_is_found(tmp_path: Path) -> None:
    text = '@formula("F = m a")\ndef {}({}: Kilograms, {}: MetresPerSecondSquared):\n    """Force."""\n    return {}\n'
    one = written(tmp_path / "one", {"loads.py": text.format("force", "m", "a", "m * a")})
    other = written(tmp_path / "other", {"rods.py": text.format("push", "mass", "by", "mass * by")})
    third = written(tmp_path / "third", {"rods.py": text.format("pull", "m", "a", "-m * a")})
    rooms = {path.name: sorted(path.glob("*.py")) for path in (one, other, third)}
    assert shared(rooms) == [["one/loads.py: force", "other/rods.py: push"]]
