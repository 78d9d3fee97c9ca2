"""The places of a module where a change means something, found by its syntax alone.

Left out, since no change of them can alter what the program does, or only its wording: docstrings, annotations, what
builds types, ``if TYPE_CHECKING`` and ``if __name__ == …``, ``__all__`` and ``__slots__``, assertions, overloads and
protocols, what a ``raise`` or a warning says, and the form in which an f-string writes a value.
"""

from __future__ import annotations

import ast
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import Any

_TYPES = frozenset(
    {"cast", "TypeVar", "ParamSpec", "NewType", "NamedTuple", "TypedDict", "Literal", "get_type_hints"}
)
_TELLS = frozenset({"warn", "debug", "info", "warning", "attach", "attach_stub"})
_NAMES = frozenset({"__all__", "__slots__", "__match_args__"})
_SUBSCRIPTED = frozenset(
    {"dict", "list", "tuple", "set", "frozenset", "type", "Callable", "Mapping", "Sequence", "Iterable"}
)
_NOT_CODE = frozenset({"annotation", "returns", "type_comment", "format_spec", "type_params", "ctx"})


@dataclass(frozen=True)
class Change:
    """What is written before and after, and how the tree comes to say the second."""

    text: str
    line: int
    column: int
    node: ast.AST
    make: Callable[[], None]


class Spot:
    """A node of the tree and the place where it hangs."""

    def __init__(self, node: ast.AST, parent: Spot | None, name: str, index: int | None) -> None:
        self.node, self.parent, self.name, self.index = node, parent, name, index

    def put(self, node: ast.AST) -> None:
        """Hang another node here."""
        assert self.parent is not None
        if self.index is None:
            setattr(self.parent.node, self.name, node)
        else:
            getattr(self.parent.node, self.name)[self.index] = node

    def change(self, text: str, make: Callable[[], None]) -> Change:
        node: Any = self.node
        return Change(text, node.lineno, node.col_offset, node, make)

    def instead(self, text: str, node: ast.AST) -> Change:
        """The change that hangs another node here."""
        return self.change(text, lambda: self.put(node))

    def above(self) -> Iterator[Spot]:
        """What it stands in, from the nearest out."""
        spot = self.parent
        while spot is not None:
            yield spot
            spot = spot.parent


def spots(tree: ast.Module) -> Iterator[Spot]:
    """Every place of the module that is not left out, from the outside in."""
    return _below(Spot(tree, None, "", None))


def called(node: ast.AST) -> str:
    """The last name of what a call calls, or of a name; empty for anything else."""
    if isinstance(node, ast.Call):
        return called(node.func)
    return node.id if isinstance(node, ast.Name) else node.attr if isinstance(node, ast.Attribute) else ""


def _below(spot: Spot) -> Iterator[Spot]:
    yield spot
    for name, value in ast.iter_fields(spot.node):
        if name in _NOT_CODE or (name == "bases" and isinstance(spot.node, ast.ClassDef)):
            continue
        found = value if isinstance(value, list) else [value]
        for index, node in enumerate(found):
            inner = Spot(node, spot, name, index if isinstance(value, list) else None)
            if isinstance(node, ast.AST) and not _is_left_out(inner):
                yield from _below(inner)


def _is_left_out(spot: Spot) -> bool:
    node = spot.node
    assert spot.parent is not None
    if isinstance(node, ast.Expr):
        return isinstance(node.value, ast.Constant)
    if isinstance(node, ast.If):
        return called(node.test) == "TYPE_CHECKING" or "__name__" in ast.dump(node.test)
    if isinstance(node, ast.Assign):
        return bool({called(target) for target in node.targets} & _NAMES) or _builds_type(node)
    if isinstance(node, ast.AnnAssign):
        return called(node.annotation) == "TypeAlias" or called(node.target) in _NAMES
    if isinstance(node, ast.ClassDef):
        return any(called(base) == "Protocol" or "Protocol" in ast.dump(base) for base in node.bases)
    if isinstance(node, ast.FunctionDef):
        return any(called(decorator) in {"overload", "abstractmethod"} for decorator in node.decorator_list)
    if isinstance(node, ast.Call):
        return called(node) in _TYPES | _TELLS or isinstance(spot.parent.node, ast.Raise)
    if isinstance(node, ast.Subscript):
        return called(node.value) in {"Literal", "Annotated"}
    return isinstance(node, ast.Assert | ast.Import | ast.ImportFrom | ast.alias | ast.Global | ast.Nonlocal)


def _builds_type(node: ast.Assign) -> bool:
    """``Read = Callable[[str], float]``: a name for a type."""
    value = node.value
    return isinstance(value, ast.Subscript) and called(value.value) in _SUBSCRIPTED
