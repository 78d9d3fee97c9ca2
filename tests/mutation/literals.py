"""The numeric literals of a module that state something about the world, by a rule.

Left out, because 2 % of it means nothing: zero; booleans; whatever is in a string or an annotation; and an integer
that counts or points rather than measures, which is one inside a subscript, one in a comparison or a sum with
``len``, and one given to a function in ``COUNTING``. What the rule cannot know is left out by hand, in ``exempt``.
"""

from __future__ import annotations

import ast
from collections.abc import Iterable
from pathlib import Path

from tests.mutation.mutants import Mutant, corrupted

#: Functions whose integers are positions, counts or digits to print.
COUNTING = frozenset(
    {"range", "islice", "enumerate", "round", "split", "rsplit", "get_close_matches", "lru_cache"}
)


def mutants(root: Path, file: str) -> list[Mutant]:
    """One for each literal of the module, in the order of the text."""
    text = (root / file).read_text(encoding="utf-8")
    lines = text.splitlines()
    found = _Finder()
    found.visit(ast.parse(text))
    return [
        Mutant(file, node.lineno, order, _value(node), lines[node.lineno - 1].strip(), function)
        for order, (node, function) in enumerate(found.literals)
    ]


def corrupt(tree: ast.Module, order: int) -> None:
    """Multiply the literal of this order where it stands."""
    found = _Finder()
    found.visit(tree)
    node = found.literals[order][0]
    node.value = corrupted(_value(node))


def _value(node: ast.Constant) -> float:
    assert isinstance(node.value, int | float)
    return node.value


class _Finder(ast.NodeVisitor):
    """Collects literals, each with the first line of the function that reads it when it runs."""

    def __init__(self) -> None:
        self.literals: list[tuple[ast.Constant, int]] = []
        self._function = 0
        self._counts = False

    def visit_Constant(self, node: ast.Constant) -> None:
        number = isinstance(node.value, int | float) and not isinstance(node.value, bool) and node.value != 0
        if number and not (self._counts and isinstance(node.value, int)):
            self.literals.append((node, self._function))

    def visit_FunctionDef(self, node: ast.FunctionDef) -> None:
        self._visit_all((*node.decorator_list, *node.args.defaults, *filter(None, node.args.kw_defaults)))
        outer = self._function
        self._function = 0 if _is_kept(node) else node.lineno
        self._visit_all(node.body)
        self._function = outer

    def visit_AnnAssign(self, node: ast.AnnAssign) -> None:
        if node.value is not None:
            self.visit(node.value)

    def visit_Subscript(self, node: ast.Subscript) -> None:
        self.visit(node.value)
        self._visit_counting((node.slice,))

    def visit_Call(self, node: ast.Call) -> None:
        self.visit(node.func)
        inner = (*node.args, *(keyword.value for keyword in node.keywords))
        if _name(node.func) in COUNTING:
            self._visit_counting(inner)
        else:
            self._visit_all(inner)

    def visit_Compare(self, node: ast.Compare) -> None:
        self._visit_beside_length((node.left, *node.comparators))

    def visit_BinOp(self, node: ast.BinOp) -> None:
        self._visit_beside_length((node.left, node.right))

    def _visit_beside_length(self, nodes: Iterable[ast.expr]) -> None:
        nodes = tuple(nodes)
        if any(isinstance(node, ast.Call) and _name(node.func) == "len" for node in nodes):
            self._visit_counting(nodes)
        else:
            self._visit_all(nodes)

    def _visit_counting(self, nodes: Iterable[ast.AST]) -> None:
        outer, self._counts = self._counts, True
        self._visit_all(nodes)
        self._counts = outer

    def _visit_all(self, nodes: Iterable[ast.AST]) -> None:
        for node in nodes:
            self.visit(node)


def _is_kept(node: ast.FunctionDef) -> bool:
    """Whether its result stays with an object, so that a later test can see it without running it."""
    return any(_name(decorator) == "cached_property" for decorator in node.decorator_list)


def _name(node: ast.expr) -> str:
    return node.id if isinstance(node, ast.Name) else node.attr if isinstance(node, ast.Attribute) else ""
