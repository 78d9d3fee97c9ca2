"""The sentences that say what is wrong where a comparison fails, as the source of a family has them."""

from __future__ import annotations

import ast
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from pathlib import Path

PLUGINS = Path(__file__).parents[2] / "plugins"
COMPARISONS = ("at_most", "no_hotter", "at_least", "within", "stays", "equals")


@dataclass(frozen=True)
class Compared:
    """A comparison of numbers in a family: where it stands, and whether it says itself what is wrong."""

    module: str
    line: int
    says: bool


@dataclass(frozen=True)
class RuleSource:
    """A rule as its source has it: its name, its sentence, and every comparison that its function can come to."""

    name: str
    wrong: str
    compared: frozenset[Compared]


@dataclass(frozen=True)
class Module:
    """A module of a family: its functions and classes by name, and what it imports from others of the family."""

    name: str
    tree: ast.Module
    defined: dict[str, ast.FunctionDef | ast.ClassDef]
    imported: dict[str, tuple[str, str]]


@cache
def modules_of(family: str) -> dict[str, Module]:
    """The modules of a family by name."""
    found = {}
    for path in sorted((PLUGINS / family).rglob("*.py")):
        name = ".".join(path.relative_to(PLUGINS).with_suffix("").parts).removesuffix(".__init__")
        tree = ast.parse(path.read_text(encoding="utf-8"))
        defined = {node.name: node for node in tree.body if isinstance(node, ast.FunctionDef | ast.ClassDef)}
        imported = {
            alias.asname or alias.name: (node.module or "", alias.name)
            for node in ast.walk(tree)
            if isinstance(node, ast.ImportFrom)
            for alias in node.names
        }
        found[name] = Module(name, tree, defined, imported)
    return found


@cache
def rules_of(family: str) -> tuple[RuleSource, ...]:
    """The rules of a family that a function makes."""
    return tuple(
        RuleSource(name, wrong, reached(family, module.name, node.name))
        for module in modules_of(family).values()
        for node in module.defined.values()
        for name, wrong in _declared(node)
    )


def _declared(node: ast.FunctionDef | ast.ClassDef) -> Iterator[tuple[str, str]]:
    for by in node.decorator_list:
        if isinstance(by, ast.Call) and isinstance(by.func, ast.Name) and by.func.id == "rule":
            yield text(by.args[0]), next((text(key.value) for key in by.keywords if key.arg == "wrong"), "")


@cache
def reached(family: str, module: str, name: str) -> frozenset[Compared]:
    """Every comparison that a function of a family can come to, in itself and in what it names."""
    modules, seen, waiting = modules_of(family), set[tuple[str, str]](), [(module, name)]
    found: set[Compared] = set()
    while waiting:
        at = waiting.pop()
        if at in seen or at[0] not in modules:
            continue
        seen.add(at)
        inside = modules[at[0]]
        node = inside.defined.get(at[1])
        if node is None:
            waiting += [inside.imported[at[1]]] if at[1] in inside.imported else []
            continue
        found |= set(compared_in(at[0], node))
        named = {one.id for one in ast.walk(node) if isinstance(one, ast.Name)}
        waiting += [(at[0], one) for one in named & inside.defined.keys()]
        waiting += [inside.imported[one] for one in named & inside.imported.keys()]
    return frozenset(found)


def compared_in(module: str, node: ast.AST) -> Iterator[Compared]:
    """The comparisons in a piece of source."""
    said = {id(receiver) for _, receiver in _calls(node, ("else_says",))}
    for call, _ in _calls(node, COMPARISONS):
        yield Compared(module, call.lineno, id(call) in said)


def sentences_of(family: str) -> Iterator[str]:
    """Every sentence that a family gives to a rule or to a comparison."""
    yield from (one.wrong for one in rules_of(family) if one.wrong)
    for module in modules_of(family).values():
        yield from (text(call.args[0]) for call, _ in _calls(module.tree, ("else_says",)))


def _calls(node: ast.AST, names: tuple[str, ...]) -> Iterator[tuple[ast.Call, ast.expr]]:
    """The calls of some methods, each with what it is called on."""
    for one in ast.walk(node):
        if isinstance(one, ast.Call) and isinstance(one.func, ast.Attribute) and one.func.attr in names:
            yield one, one.func.value


def text(node: ast.expr) -> str:
    """A text of the source; a name that is put in as the family runs is left out."""
    if isinstance(node, ast.JoinedStr):
        return "".join(text(part) for part in node.values)
    return node.value if isinstance(node, ast.Constant) and isinstance(node.value, str) else ""
