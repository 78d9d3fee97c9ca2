"""Formulae that an earlier run set are taken from what it kept, and the pack is the same to the byte."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from speclint.checking import Assessment, KeptFolder, Processes, assess
from speclint.reports.pack import mathematics, review_page
from speclint.reports.pack.kept_formulae import keep_new, take_kept
from speclint.testing import DesignFolder
from tests import tubes
from tests.checking.test_kept_results import FILES


@pytest.fixture(autouse=True)
def _of_this_test(monkeypatch: pytest.MonkeyPatch) -> None:
    """The family of tubes is made in memory: its name stands for its code. No formula is set so far."""
    tubes.code_known(monkeypatch)
    monkeypatch.setattr(mathematics, "_known", {})


def assessed(shop: DesignFolder, folder: Path) -> Assessment:
    with Processes(0) as processes:
        return assess([shop.root], shop.loaded, processes=processes, kept=KeptFolder(folder))


@pytest.fixture
def shop(workshop: DesignFolder) -> DesignFolder:
    workshop.loaded = tubes.tubes()
    return workshop.write(FILES)


def test_a_later_run_sets_no_formula_again(
    shop: DesignFolder, tmp_path_factory: pytest.TempPathFactory, monkeypatch: pytest.MonkeyPatch
) -> None:
    folder = tmp_path_factory.mktemp("cache")
    first = review_page(assessed(shop, folder))
    assert any("<math" in page for page in mathematics.known().values())
    assert len(mathematics.known()) > 3
    mathematics._known.clear()
    monkeypatch.setattr(mathematics, "_mathml", lambda _: pytest.fail("a formula was set again"))
    assert review_page(assessed(shop, folder)) == first


@pytest.mark.parametrize("held", [b"no JSON", b"[1, 2]", b'[["p", "x"], [["a"], "y"]]', b'[[["a", 3], "y"]]'])
def test_what_is_damaged_is_set_anew(
    held: bytes, shop: DesignFolder, tmp_path_factory: pytest.TempPathFactory
) -> None:
    folder = tmp_path_factory.mktemp("cache")
    first = review_page(assessed(shop, folder))
    kept = assessed(shop, folder).kept
    assert kept is not None
    kept.keep_of_code("formulae as MathML", held)
    mathematics._known.clear()
    assert review_page(assessed(shop, folder)) == first


class Drawer:
    """What is kept, by its name."""

    def __init__(self, held: bytes | None = None) -> None:
        self.held = held
        self.written: list[tuple[str, bytes]] = []

    def of_code(self, called: str) -> bytes | None:
        assert called == "formulae as MathML"
        return self.held

    def keep_of_code(self, called: str, body: bytes) -> None:
        self.written.append((called, body))


def drawer(held: bytes | None = None) -> Any:
    return Drawer(held)


def test_what_is_kept_is_known_and_counted() -> None:
    held = '[["d =", "<math>d</math>"], [["π d", ["d", "n"]], "<math>π</math>"]]'.encode()
    assert take_kept(drawer(held)) == 2
    assert mathematics.known() == {"d =": "<math>d</math>", ("π d", ("d", "n")): "<math>π</math>"}
    assert take_kept(drawer()) == take_kept(None) == 0


@pytest.mark.parametrize("held", [b"no JSON", b"[1]", b'[[["a", 3], "y"]]', b'[[[3, ["a"]], "y"]]'])
def test_of_what_is_damaged_nothing_is_known(held: bytes) -> None:
    assert take_kept(drawer(held)) == 0
    assert mathematics.known() == {}


def test_all_is_kept_where_there_is_more_than_was_taken() -> None:
    """In as few letters as may be, none of them spelt by its number."""
    mathematics.learn([("σ =", "one"), (("π d", ("d",)), "two")])
    same, more = drawer(), drawer()
    keep_new(same, 2)
    keep_new(None, 0)
    keep_new(more, 1)
    assert same.written == []
    ((_, body),) = more.written
    assert body.decode("utf-8") == '[["σ =","one"],[["π d",["d"]],"two"]]'
