"""What one search found for a line serves every finding that reads it."""

from __future__ import annotations

from types import SimpleNamespace
from typing import Any

import pytest

from speclint.checking import Remedy, remedy_for_all
from speclint.checking.remedy_for_all import TrialForAll
from speclint.checking.stated_value import StatedValue
from speclint.errors import Location, replace
from speclint.rules import Context


def where(part: str, line: int = 3) -> Location:
    return Location("tube.toml", line, "bore", part)


def finding(part: str, *lines: int) -> Any:
    steps = [SimpleNamespace(where=where(part, line)) for line in lines]
    return SimpleNamespace(
        component=part, rule=SimpleNamespace(name="tube.stress", reviews=False), steps=steps
    )


REMEDY = Remedy(where("a"), "bore", 0.1, 0.09, "m", "mm", None)


class Trial:
    """The first change that looks well is not proved; the second is."""

    calls: list[str] = []

    def __init__(self, *_: Any, **__: Any) -> None:
        self.used = {"a": 0.8, "b": 0.9}
        self.proofs = 0
        self.calls.append("made")

    def hoped(self) -> Remedy | None:
        self.calls.append("hoped")
        return replace(REMEDY, then=0.09 - self.proofs / 100)

    def proved(self, remedy: Remedy) -> Remedy | None:
        self.calls.append("proved")
        self.proofs += 1
        return replace(remedy, utilisation=0.8) if self.proofs > 1 else None


@pytest.fixture
def context(monkeypatch: pytest.MonkeyPatch) -> Context:
    monkeypatch.setattr(remedy_for_all, "Trial", Trial)
    monkeypatch.setattr(Trial, "calls", [])
    design: Any = SimpleNamespace()
    return Context(design, lambda _: None, {})  # type: ignore[arg-type,return-value]


def sought(part: str, beside: list[Any], context: Context) -> Remedy | None:
    step: Any = SimpleNamespace(where=where(part), kind="taken", name=f"bore of {part}")
    component: Any = SimpleNamespace(id=part)
    trial = TrialForAll(StatedValue(step, finding(part, 3), component, [], context), beside)
    first = trial.hoped()
    assert first is not None
    assert trial.proved(first) is None
    second = trial.hoped()
    assert second is not None
    assert second.then == pytest.approx(0.08)
    return trial.proved(second)


def test_each_finding_is_told_the_same_of_its_own_part(context: Context) -> None:
    a, b, elsewhere = finding("a", 3), finding("b", 3), finding("c", 9)
    found = [sought("a", [b], context), sought("b", [a, elsewhere], context)]
    expected = [("a", "bore of a", 0.8), ("b", "bore of b", 0.9)]
    assert [(one.where.part, one.name, one.utilisation) for one in found if one] == expected
    assert Trial.calls == ["made", "hoped", "proved", "hoped", "proved"]


def test_where_nothing_is_hoped_for_there_is_nothing(
    context: Context, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(Trial, "hoped", lambda _: None)
    step: Any = SimpleNamespace(where=where("a"), kind="taken", name="bore")
    component: Any = SimpleNamespace(id="a")
    assert TrialForAll(StatedValue(step, finding("a", 3), component, [], context), []).hoped() is None
