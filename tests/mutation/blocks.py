"""The blocks of statements of a module, each with a key that edits elsewhere in the file do not move."""

from __future__ import annotations

import ast
import hashlib
from collections import Counter


class Blocks:
    """Keys ``file::function:number``; a function's own statements have number 0.

    Fields:
        bodies: each block's statements by its key.
        of_node: the key of the block that runs a node; none for what runs as the module is imported.
        functions: a digest of each function's text by ``file::function``.
    """

    def __init__(self, tree: ast.Module, file: str) -> None:
        self.bodies: dict[str, list[ast.stmt]] = {}
        self.of_node: dict[ast.AST, str] = {}
        self.functions: dict[str, str] = {}
        self._file = file
        self._numbers: Counter[str] = Counter()
        self._statements(tree.body, "", "")

    def _statements(self, body: list[ast.stmt], scope: str, block: str) -> None:
        for statement in body:
            self._node(statement, scope, block)

    def _node(self, node: ast.AST, scope: str, block: str) -> None:
        if block:
            self.of_node[node] = block
        if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef):
            self._function(node, scope, block)
        elif isinstance(node, ast.ClassDef):
            self._parts(node, f"{scope}{node.name}.", block)
        else:
            self._parts(node, scope, block)

    def _function(self, node: ast.FunctionDef | ast.AsyncFunctionDef, scope: str, block: str) -> None:
        for outside in (node.args, *node.decorator_list):
            self._node(outside, scope, block)
        name = f"{self._file}::{scope}{node.name}"
        while name in self.functions:
            name += "'"
        self.functions[name] = hashlib.sha256(ast.dump(node).encode()).hexdigest()[:16]
        self._block(node.body, f"{name.partition('::')[2]}.", name)

    def _parts(self, node: ast.AST, scope: str, block: str) -> None:
        for _, value in ast.iter_fields(node):
            if not isinstance(value, list):
                if isinstance(value, ast.AST):
                    self._node(value, scope, block)
            elif value and isinstance(value[0], ast.stmt) and block and not isinstance(node, ast.ClassDef):
                self._block(value, scope, block.rpartition(":")[0])
            else:
                for inner in value:
                    if isinstance(inner, ast.AST):
                        self._node(inner, scope, block)

    def _block(self, body: list[ast.stmt], scope: str, function: str) -> None:
        key = f"{function}:{self._numbers[function]}"
        self._numbers[function] += 1
        self.bodies[key] = body
        self._statements(body, scope, key)
