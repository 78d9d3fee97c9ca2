"""Work and results as bytes and back: what is read is what was written, whatever sort of data it is."""

from __future__ import annotations

import pickle
from dataclasses import dataclass, field
from pathlib import Path

import pytest

from speclint.checking.packing import packed, unpacked
from speclint.errors import Location
from speclint.testing import DesignFolder
from tests import tubes
from tests.tubes import FILES


@dataclass(frozen=True, slots=True)
class Plain:
    """Data that its call takes as they are."""

    name: str
    values: tuple[float, ...] = ()


@dataclass(frozen=True, slots=True)
class Doubled:
    """Data that its call would change again."""

    size: float

    def __post_init__(self) -> None:
        object.__setattr__(self, "size", self.size * 2)


@dataclass(frozen=True, slots=True)
class Counted:
    """Data of which the call takes less than there is."""

    size: float
    number: int = field(init=False, default=0)


@dataclass(frozen=True)
class Noted:
    """Data that may hold more than its fields."""

    size: float


@pytest.mark.parametrize("one", [Plain("a", (1.0, 2.5)), Doubled(2.0), Counted(3.0), Noted(4.0)])
def test_data_are_read_as_they_were_written(one: object) -> None:
    if isinstance(one, Counted):
        object.__setattr__(one, "number", 7)
    if isinstance(one, Noted):
        one.__dict__["more"] = 5
    found = pickle.loads(packed(one))
    assert found == one
    assert type(found) is type(one)
    assert getattr(found, "__dict__", {}) == getattr(one, "__dict__", {})
    assert getattr(found, "number", 7) == 7


def test_plain_data_are_packed_as_a_call_of_their_class() -> None:
    """Pickle writes R for a call (REDUCE) and b for a state that is set afterwards (BUILD)."""
    written = packed(Plain("a"))
    assert b"R" in written
    assert not written.endswith(b"b.")
    assert packed(Doubled(2.0)).endswith(b"b.")


def test_a_check_is_read_as_it_was_kept(workshop: DesignFolder) -> None:
    workshop.loaded = tubes.tubes()
    assessment = workshop.write(FILES).assess()
    rules = {one.rule.name: one.rule for one in assessment.checks}
    assert len(assessment.checks) > 3
    for one in assessment.checks:
        assert unpacked(packed(one), rules) == one


def test_nothing_but_data_is_made_from_a_file() -> None:
    """A call of a class is data too; a call of anything else is refused, and it is as if nothing were kept."""
    assert unpacked(packed(Location("a.toml", 3, "bore")), {}) == Location("a.toml", 3, "bore")
    assert unpacked(pickle.dumps(Path("a")), {}) is None
    assert unpacked(pickle.dumps(print), {}) is None
