"""What is found to be changed, and how it comes out."""

from __future__ import annotations

import ast
from pathlib import Path

import pytest

from tests.mutation import cells, kinds
from tests.mutation.accepted import accepted, stale
from tests.mutation.drawing import drawn, drawn_evenly
from tests.mutation.mutants import Mutant

ROOT = Path(__file__).parents[2]


def changed(folder: Path, text: str) -> dict[str, str]:
    """Each change of a module, and the module as it makes it."""
    (folder / "one.py").write_text(text, encoding="utf-8")
    found = {}
    for mutant in kinds.mutants(folder, "one.py"):
        tree = ast.parse(text)
        kinds.make(tree, mutant)
        found[mutant.change] = ast.unparse(tree)
    return found


@pytest.mark.parametrize(
    ("text", "changes"),
    [
        ("a < b", {"< -> <=": "a <= b"}),
        ("a >= b", {">= -> >": "a > b"}),
        ("a == b", {"== -> !=": "a != b"}),
        ("a not in b", {"not in -> in": "a in b"}),
        ("a is None", {"is -> is not": "a is not None"}),
        ("a + b", {"+ -> -": "a - b"}),
        ("a / b", {"/ -> *": "a * b"}),
        ("a ** b", {"** -> *": "a * b"}),
        ("-a", {"-x -> x": "a"}),
        ("a + 'text'", {}),
        ("a and b", {"and -> or": "a or b"}),
        ("not a", {"not x -> x": "a"}),
        ("any(a)", {"any -> all": "all(a)"}),
        ("max(a, b)", {"max -> min": "min(a, b)"}),
        (
            "a if b else c",
            {"condition -> False": "a if False else c", "condition -> True": "a if True else c"},
        ),
        ("f(a, b)", {"a, b -> b, a": "f(b, a)"}),
        ("f(a, sheet)", {}),
        ("max(a, b, key=f)", {"max -> min": "min(a, b, key=f)"}),
        ("a[0]", {"0 -> 1": "a[1]"}),
        ("2 * a", {"* -> /": "2 / a", "2 -> 2.04": "2.04 * a"}),
        ("round(a, 1)", {}),
        ("a == 'hot'", {"== -> !=": "a != 'hot'", "'hot' -> 'hot~'": "a == 'hot~'"}),
        ("f(deep=True)", {"True -> False": "f(deep=False)"}),
        ("zip(a, b, strict=True)", {"a, b -> b, a": "zip(b, a, strict=True)"}),
        (
            "Limit('least', '1.2 mm', 'length')",
            {
                "limit 1.2 mm -> 1.164 mm": "Limit('least', '1.164 mm', 'length')",
                "limit 1.2 mm -> 1.236 mm": "Limit('least', '1.236 mm', 'length')",
            },
        ),
    ],
)
def test_an_expression(tmp_path: Path, text: str, changes: dict[str, str]) -> None:
    assert changed(tmp_path, f"r = {text}\n") == {change: f"r = {after}" for change, after in changes.items()}


@pytest.mark.parametrize(
    ("body", "changes"),
    [
        ("f()", {"call -> nothing": "pass"}),
        ("a += b", {"+ -> -": "a -= b", "addition -> nothing": "pass"}),
        ("raise ValueError(1.5 + a)", {"raise -> nothing": "pass"}),
        ("return False", {"return False -> return True": "return True"}),
        ("return a", {}),
        ("assert a > 1", {}),
        ("b: int = 3", {"3 -> 3.06": "b: int = 3.06"}),
    ],
)
def test_a_statement(tmp_path: Path, body: str, changes: dict[str, str]) -> None:
    found = changed(tmp_path, f"def g():\n    {body}\n")
    assert found == {change: f"def g():\n    {after}" for change, after in changes.items()}


@pytest.mark.parametrize(
    "text",
    [
        '"""1.5 in words."""\n',
        "__all__ = ['a' == 'b']\n",
        "if TYPE_CHECKING:\n    a = 2\n",
        "Take = Callable[[str, 2], float]\n",
        "def f(a: Literal[2]) -> Span[3]: ...\n",
        "class P(Protocol):\n    a: int = 3\n",
        "@rule('x', edition=4)\ndef f(): ...\n",
        "a = f'{b:>12}'\n",
    ],
)
def test_what_means_nothing_is_left_alone(tmp_path: Path, text: str) -> None:
    assert not changed(tmp_path, text)


def test_a_result_is_dropped_where_another_is_returned(tmp_path: Path) -> None:
    text = "def f(a):\n    if a:\n        return a\n    return 2 * a\n"
    found = changed(tmp_path, text)
    assert list(found) == [
        "condition -> False",
        "condition -> True",
        "return x -> return None",
        "* -> /",
        "2 -> 2.04",
    ]


def test_cells_are_numbers_of_the_table(little: Path) -> None:
    values = [cell.change.split(" ")[0] for cell in cells.mutants(little, "cells.csv")]
    assert values == ["1.5", "8", "-20"]
    values = [cell.change.split(" ")[0] for cell in cells.mutants(little, "cells.toml")]
    assert values == ["1000.0", "40", "50", "60"]


def test_one_cell_is_multiplied(little: Path) -> None:
    text, tables = ((little / file).read_text(encoding="utf-8") for file in ("cells.csv", "cells.toml"))
    by_place = [cells.corrupt(cell, text) for cell in cells.mutants(little, "cells.csv")]
    assert by_place[0] == text.replace("1.5", "1.53")
    assert by_place[2] == text.replace("-20", "-20.4")
    assert cells.corrupt(cells.mutants(little, "cells.toml")[2], tables) == tables.replace("50", "51")


def of(file: str, number: int) -> list[Mutant]:
    return [Mutant(file, line, line, "< -> <=", f"a < {line}") for line in range(number)]


def test_a_sample_draws_evenly_and_is_the_same_for_the_same_seed() -> None:
    packages = {"a": of("a/one.py", 30), "b": of("b/one.py", 2), "c": of("c/one.py", 30)}
    chosen = drawn_evenly(packages, 12, seed=26)
    assert [sum(mutant.file[0] == name for mutant in chosen) for name in "abc"] == [5, 2, 5]
    assert chosen == drawn_evenly(packages, 12, seed=26)
    assert chosen != drawn_evenly(packages, 12, seed=27)


def test_a_change_in_one_file_draws_no_other_anew() -> None:
    one, other = of("a/one.py", 30), of("a/two.py", 30)
    before = drawn([*one, *other], 20, seed=26)
    after = drawn([*one, *other[3:]], 20, seed=26)
    left = [mutant for mutant in before if mutant not in other[:3]]
    assert left
    assert set(left) <= set(after)


def test_what_is_accepted_is_still_there() -> None:
    files = sorted({entry.file for entry in accepted(ROOT)})
    assert files
    assert not stale(ROOT, files, [mutant for file in files for mutant in kinds.mutants(ROOT, file)])
