"""Each kind of change on a little function: a test that catches it, and one that does not."""

from __future__ import annotations

import ast
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from tests.mutation import kinds

Test = Callable[[Any], bool]

CASES: dict[str, tuple[str, str, Test, Test]] = {
    "comparison": ("return a < 3", "< -> <=", lambda f: not f(3), lambda f: f(2)),
    "membership": ("return a in (1, 2)", "in -> not in", lambda f: f(1), lambda f: f(1) is not None),
    "arithmetic": ("return a + 2", "+ -> -", lambda f: f(1) == 3, lambda f: abs(f(0)) == 2),
    "and": ("return a > 1 and a < 5", "and -> or", lambda f: not f(7), lambda f: f(3)),
    "not": ("return not a", "not x -> x", lambda f: f(0), lambda f: f(1) in (0, 1)),
    "always": ("return 2 if a else 3", "condition -> True", lambda f: f(0) == 3, lambda f: f(1) == 2),
    "never": ("return 2 if a else 3", "condition -> False", lambda f: f(1) == 2, lambda f: f(0) == 3),
    "filter": ("return [b for b in a if b]", "condition -> True", lambda f: f([0]) == [], lambda f: f([1])),
    "any": ("return any(a)", "any -> all", lambda f: f([0, 1]), lambda f: f([1])),
    "greatest": ("return max(a)", "max -> min", lambda f: f([2, 1]) == 2, lambda f: f([2]) == 2),
    "call": ("a.append(1)\n    return a", "call -> nothing", lambda f: f([]) == [1], lambda f: f([1])),
    "raise": (
        "if a:\n        raise KeyError\n    return 1",
        "raise -> nothing",
        lambda f: _fails(f),
        lambda f: f(0),
    ),
    "continue": (
        "b = 0\n    for c in a:\n        if c:\n            continue\n        b = 1\n    return b",
        "continue -> nothing",
        lambda f: f([1]) == 0,
        lambda f: f([0]) == 1,
    ),
    "return": (
        "if a:\n        return 'x'\n    return 'y'",
        "return x -> return None",
        lambda f: f(1) == "x",
        lambda f: f(0) == "y",
    ),
    "word": ("return a == 'hot'", "'hot' -> 'hot~'", lambda f: f("hot"), lambda f: not f("cold")),
    "index": ("return a[0]", "0 -> 1", lambda f: f([1, 2]) == 1, lambda f: f([2, 2]) == 2),
    "number": ("return 2.5 * a", "2.5 -> 2.55", lambda f: f(1) == 2.5, lambda f: f(1) > 0),
    "swap": ("return divmod(a, b)", "a, b -> b, a", lambda f: f(9, 2) == (4, 1), lambda f: f(3, 3) == (1, 0)),
    "flag": (
        "return sorted(a, reverse=True)",
        "True -> False",
        lambda f: f([1, 2]) == [2, 1],
        lambda f: f([1]),
    ),
}


def _fails(f: Any) -> bool:
    with pytest.raises(KeyError):
        f(1)
    return True


@pytest.mark.parametrize("name", CASES)
def test_one_test_catches_it_and_one_does_not(tmp_path: Path, name: str) -> None:
    body, change, catches, misses = CASES[name]
    text = f"def f(a, b=1):\n    {body}\n"
    (tmp_path / "one.py").write_text(text, encoding="utf-8")
    mutant = next(each for each in kinds.mutants(tmp_path, "one.py") if each.change == change)
    real, mutated = _function(ast.parse(text)), ast.parse(text)
    kinds.make(mutated, mutant)
    assert catches(real)
    assert misses(real)
    assert misses(_function(mutated))
    with pytest.raises((AssertionError, pytest.fail.Exception)):
        assert catches(_function(mutated))


def _function(tree: ast.Module) -> Any:
    room: dict[str, Any] = {}
    exec(compile(ast.fix_missing_locations(tree), "one.py", "exec"), room)
    return room["f"]
