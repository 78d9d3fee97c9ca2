"""Which tests README's command runs, which ``--wide`` and ``--part`` take, and that nothing named is left out."""

from __future__ import annotations

from pathlib import Path
from types import SimpleNamespace
from typing import cast

import pytest

from tests.conftest import WIDE, pytest_collection_modifyitems, pytest_ignore_collect

_TESTS = Path(__file__).parent
_ROOT = _TESTS.parent


def is_left_out(place: str, *args: str, wide: bool = False) -> bool:
    """Whether a run with these arguments leaves out a place among the tests; README's command has the usual one."""
    config = SimpleNamespace(
        rootpath=_ROOT,
        args=list(args or ("tests",)),
        getoption={"wide": wide}.__getitem__,
        getini={"testpaths": ["tests"]}.__getitem__,
    )
    return pytest_ignore_collect(_TESTS / place, cast(pytest.Config, config)) is True


@pytest.mark.parametrize("place", WIDE)
def test_every_wide_place_is_there(place: str) -> None:
    assert (_TESTS / place).exists()


def test_no_wide_place_stands_twice() -> None:
    assert len(set(WIDE)) == len(WIDE)


@pytest.mark.parametrize("place", ["reports/test_pack.py", "contracts", "contracts/test_architecture.py"])
def test_wide_tests_run_only_where_they_are_asked_for(place: str) -> None:
    assert is_left_out(place)
    assert not is_left_out(place, wide=True)


@pytest.mark.parametrize("place", ["test_wide.py", "test_readme.py"])
def test_all_others_run_unless_the_wide_ones_are_asked_for(place: str) -> None:
    assert (_TESTS / place).is_file()
    assert not is_left_out(place)
    assert is_left_out(place, wide=True)


def test_the_wide_run_looks_into_folders_for_wide_files() -> None:
    assert not is_left_out("reports", wide=True)


@pytest.mark.parametrize("place", ["reports/test_pack.py", "test_wide.py"])
def test_what_is_named_runs(place: str) -> None:
    assert not is_left_out(place, f"tests/{place}")


def taken(part: str, *names: str) -> tuple[list[str], list[str]]:
    """The names of the tests that a share takes, in the order in which they run, and of those that it leaves."""
    items = [SimpleNamespace(nodeid=name) for name in names]
    left: list[str] = []

    def deselected(items: list[SimpleNamespace]) -> None:
        left.extend(item.nodeid for item in items)

    config = SimpleNamespace(
        getoption={"part": part}.__getitem__, hook=SimpleNamespace(pytest_deselected=deselected)
    )
    pytest_collection_modifyitems(cast(list[pytest.Item], items), cast(pytest.Config, config))
    return [item.nodeid for item in items], left


def test_a_share_of_the_tests_is_the_same_in_every_order() -> None:
    assert taken("1/2", "d", "b", "a", "c", "e") == (["a", "c", "e"], ["d", "b"])
    assert taken("1/2", "e", "c", "b", "a", "d") == (["e", "c", "a"], ["b", "d"])
    assert taken("2/2", "d", "b", "a", "c", "e") == (["d", "b"], ["a", "c", "e"])


def test_of_one_share_all_run() -> None:
    assert taken("1/1", "b", "a") == (["b", "a"], [])
