"""Every module of the handbook that states units or reads data is proved by the world outside.

A module is bound when it imports more than sources from ``speclint.equations`` (units, formulae, ranges) or names a
data file. What does neither has no number of its own: works cited, readings, interpolation, the reader of tables.
"""

from __future__ import annotations

import ast
import importlib
import inspect
from collections import Counter, defaultdict
from collections.abc import Callable, Iterator
from math import prod
from pathlib import Path

import pytest

from tests.each import each
from tests.published.proof import Proof, proves
from tests.published.reaching import MODULES, parametrisations, reached
from tests.published.row import Row
from tests.published.test_steam import PRESSURES, SUPERHEATS

FOLDER = Path(__file__).parents[1] / "published"
FEWEST_CHECKS, FEWEST_SOURCES, FEWEST_IN_ALL = 5, 2, 250


#: What a module that only cites imports of the equations.
_SOURCES = {"Source", "FIRST_PRINCIPLES", "COMMON_PRACTICE"}


def is_bound(source: str) -> bool:
    """Whether a module states units, checks a range or reads a data file."""
    return any(
        (
            isinstance(node, ast.ImportFrom)
            and node.module == "speclint.equations"
            and not {alias.name for alias in node.names} <= _SOURCES
        )
        or (
            isinstance(node, ast.Constant)
            and isinstance(node.value, str)
            and " " not in node.value
            and node.value.endswith((".csv", ".toml"))
        )
        for node in ast.walk(ast.parse(source))
    )


BOUND = [name for name, path in MODULES.items() if is_bound(path.read_text(encoding="utf-8"))]


def published_tests() -> Iterator[Callable[..., None]]:
    for path in sorted(FOLDER.glob("test_*.py")):
        module = importlib.import_module(f"tests.published.{path.stem}")
        for name, found in vars(module).items():
            if name.startswith("test") and inspect.isfunction(found):
                yield found


TESTS = list(published_tests())


def proofs(test: Callable[..., None]) -> list[Proof]:
    """One proof for each case of a test; none when it names no source."""
    cases = parametrisations(test)
    if found := [one.proof for values in cases for one in values if isinstance(one, Row)]:
        return found
    proof = getattr(test, "proof", None)
    return [proof] * prod(len(values) for values in cases) if proof else []


def counted() -> tuple[Counter[str], dict[str, set[str]]]:
    checks: Counter[str] = Counter()
    works: dict[str, set[str]] = defaultdict(set)
    for test in TESTS:
        for proof in proofs(test):
            checks.update(proof.topics)
            for topic in proof.topics:
                works[topic] |= proof.works
    return checks, works


CHECKS, WORKS = counted()


@pytest.mark.parametrize("topic", BOUND)
def test_a_module_has_published_checks_from_more_than_one_source(topic: str) -> None:
    assert CHECKS[topic] >= FEWEST_CHECKS, f"add published checks of {topic} to tests/published"
    assert len(WORKS[topic]) >= FEWEST_SOURCES, f"{topic} is checked against {WORKS[topic]} alone"


def test_there_are_enough_published_checks() -> None:
    assert sum(len(proofs(test)) for test in TESTS) >= FEWEST_IN_ALL


def test_steam_is_checked_at_two_hundred_states() -> None:
    assert len(PRESSURES) * len(SUPERHEATS) >= 200


@each(TESTS, lambda test: f"{test.__module__.split('.')[-1]}.{test.__name__}")
def test_a_published_test_says_what_it_proves_and_reaches_it(test: Callable[..., None]) -> None:
    found = proofs(test)
    assert found, "mark it with @proves(...) of tests.published.proof, or move it out of tests/published"
    topics = {topic for proof in found for topic in proof.topics}
    in_handbook = {topic for topic in topics if not topic.startswith("speclint")}
    assert in_handbook <= set(MODULES)
    assert in_handbook <= reached(test), "claimed but never reached"


def test_the_rule_binds_what_has_numbers_and_lets_go_what_has_none() -> None:
    assert is_bound('_TABLE = "soft-irons.csv"\n')
    assert is_bound("from speclint.equations import require\n")
    assert not is_bound('"""Files such as irons.csv are named here only in words."""\n')
    assert not {"tables.published_works", "tables.reading", "tables.csv_files", "tables.interpolation"} & set(
        BOUND
    )
    assert {"materials.packings", "members.beams", "steam.if97", "cams.profiles", "materials.library"} <= set(
        BOUND
    )


def test_a_check_without_a_source_is_refused() -> None:
    with pytest.raises(ValueError, match="which source"):
        proves("members.beams")
    with pytest.raises(ValueError, match="which module"):
        Row(abs, {}, 1.0, 0.0, "hand working", "derived")


def test_cases_and_works_are_counted() -> None:
    @proves("members.beams", memory=["AISC Manual, case 7", "AISC Manual, case 8"], derived="hand working")
    @pytest.mark.parametrize("a", [1, 2, 3])
    @pytest.mark.parametrize("b", [1, 2])
    def test_of_a_beam(a: int, b: int) -> None:
        raise NotImplementedError(a, b)

    found = proofs(test_of_a_beam)
    assert len(found) == 6
    assert found[0].works == {"AISC Manual", "hand working"}
    assert "members.beams" not in reached(test_of_a_beam)
