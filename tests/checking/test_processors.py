"""As many processors as the process may use, not as there are."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from speclint.checking import processors
from speclint.checking.processors import usable_processors


@pytest.fixture(autouse=True)
def _of_this_test(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    """Eight processors, and no container."""
    monkeypatch.setattr(os, "sched_getaffinity", lambda _: set(range(8)), raising=False)
    monkeypatch.setattr(processors, "_NOW", tmp_path / "cpu.max")
    monkeypatch.setattr(processors, "_BEFORE", (tmp_path / "quota", tmp_path / "period"))


def test_all_that_the_system_allows_without_a_container() -> None:
    assert usable_processors() == 8


@pytest.mark.parametrize(
    ("said", "usable"),
    [
        ("max 100000", 8),
        ("200000 100000", 2),
        ("150000 100000", 2),  # one and a half processors' time keeps two busy
        ("50000 100000", 1),
        ("1600000 100000", 8),
        ("nonsense", 8),
    ],
)
def test_no_more_than_a_container_grants(tmp_path: Path, said: str, usable: int) -> None:
    (tmp_path / "cpu.max").write_text(said, encoding="ascii")
    assert usable_processors() == usable


@pytest.mark.parametrize(("quota", "usable"), [("-1", 8), ("300000", 3)])
def test_the_former_way_of_saying_so(tmp_path: Path, quota: str, usable: int) -> None:
    (tmp_path / "quota").write_text(f"{quota}\n", encoding="ascii")
    (tmp_path / "period").write_text("100000\n", encoding="ascii")
    assert usable_processors() == usable


def test_where_the_system_does_not_say(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.delattr(os, "sched_getaffinity", raising=False)
    monkeypatch.setattr(os, "cpu_count", lambda: 3)
    assert usable_processors() == 3
