"""Our data classes are those of Python's library, made sooner: each habit of theirs is held against its own."""

from __future__ import annotations

import copy
import dataclasses
import inspect
import pickle
import re
from collections.abc import Callable
from typing import Any, ClassVar

import pytest

from speclint.errors import dataclass
from tests.each import each


def made(decorator: Callable[..., Any], slots: bool, eq: bool) -> Any:
    """A class with every sort of field that speclint has, made by one decorator or the other."""

    @decorator(frozen=True, slots=slots, eq=eq)
    class Valve:
        """A valve."""

        count: ClassVar[int] = 2

        name: str
        beats: float = 2
        sizes: list[float] = dataclasses.field(default_factory=lambda: [0.1])
        note: str = dataclasses.field(default="", repr=False, compare=False)
        seen: list[str] = dataclasses.field(init=False, repr=False, compare=False, default_factory=list)

        def __post_init__(self) -> None:
            self.seen.append(self.name)

    return Valve


@dataclass(frozen=True, slots=True)
class InSlots:
    """Stands in a module, so that it can be pickled."""

    name: str
    sizes: tuple[float, ...] = ()


def _within_itself(made: Any) -> str:
    one = made("inlet", 1, [])
    one.sizes.append(one)
    return repr(one)


NAN = float("nan")
#: What a class can be asked, by its decorator: the answers of both are to be the same.
ASKED: dict[str, Callable[[Any], object]] = {
    "parameters": lambda made: [
        (one.name, one.kind, one.annotation) for one in inspect.signature(made).parameters.values()
    ],
    "defaults": lambda made: (made("inlet").beats, made("inlet").sizes, made(name="inlet").note),
    "a list of its own": lambda made: made("inlet").sizes is made("inlet").sizes,
    "what it is given": lambda made: dataclasses.astuple(made("inlet", 1, [], note="new")),
    "too little": lambda made: made(),
    "too much": lambda made: made("inlet", 1, [], "", []),
    "no field": lambda made: made("inlet", lift=3),
    "text": lambda made: repr(made("inlet", note="hidden")),
    "text of one in itself": lambda made: _within_itself(made),
    "equal": lambda made: made("inlet", note="old") == made("inlet", note="new"),
    "different": lambda made: made("inlet") == made("exhaust"),
    "another class": lambda made: made("inlet") == ("inlet", 2, [0.1]),
    "no number, the same": lambda made: made("inlet", NAN) == made("inlet", NAN),
    "hash": lambda made: len({made("inlet", 2, ()), made("inlet", 2, (), "new")}),
    "hash of a list": lambda made: isinstance(hash(made("inlet")), int),
    "changed": lambda made: setattr(made("inlet"), "beats", 1),
    "deleted": lambda made: delattr(made("inlet"), "beats"),
    "replaced": lambda made: repr(dataclasses.replace(made("inlet"), beats=1)),
    "copied": lambda made: dataclasses.astuple(copy.copy(made("inlet", 1, note="new"))),
    "fields": lambda made: [(one.name, one.type, one.compare) for one in dataclasses.fields(made)],
    "in a match": lambda made: made.__match_args__,
    "built on": lambda made: repr(
        dataclasses.make_dataclass("Inlet", [("lift", int, 3)], bases=(made,), frozen=True)("a", lift=4)
    ),
    "built on, not frozen": lambda made: dataclasses.make_dataclass("Inlet", [], bases=(made,)),
    "a field in one built on": lambda made: setattr(type("Inlet", (made,), {})("inlet"), "beats", 3),
}


def told(ask: Callable[[Any], object], kind: Any) -> object:
    """What it answers, or the error that it raises, without the names of Python's own parts."""
    try:
        return ask(kind)
    except Exception as problem:
        return type(problem), re.sub(r"made\.<locals>\.", "", str(problem))


@each([(word, slots, eq) for word in ASKED for slots in (False, True) for eq in (False, True)])
def test_a_class_does_what_the_library_makes_it_do(asked: tuple[str, bool, bool]) -> None:
    word, slots, eq = asked
    ours, theirs = (told(ASKED[word], made(maker, slots, eq)) for maker in (dataclass, dataclasses.dataclass))
    assert ours == theirs


@each(range(pickle.HIGHEST_PROTOCOL + 1))
def test_one_in_slots_is_pickled(protocol: int) -> None:
    one = InSlots("inlet", (0.1,))
    assert protocol < 2 or pickle.loads(pickle.dumps(one, protocol)) == one


def test_one_field_is_compared_as_several_are() -> None:
    """As a tuple compares: what is the same object is equal, though it is no number that equals itself."""

    @dataclass(frozen=True, slots=True)
    class Lift:
        of: float

    assert (Lift(NAN) == Lift(NAN)) is True
    assert Lift(1.0) != Lift(2.0)
    assert hash(Lift(1.0)) == hash(Lift(1))


@each((False, True), lambda slots: "in slots" if slots else "with a dictionary")
def test_only_what_is_built_on_it_takes_more(slots: bool) -> None:
    """As the library has it since it was put right: before Python 3.12 one in slots fails with another error."""
    kind = made(dataclass, slots, eq=True)
    with pytest.raises(dataclasses.FrozenInstanceError, match="cannot assign to field 'lift'"):
        kind("inlet").lift = 3
    longer = type("Longer", (kind,), {})("inlet")
    longer.lift = 3
    assert longer.lift == 3


def test_what_a_class_states_itself_stays() -> None:
    @dataclass(frozen=True)
    class Sized:
        size: float

        def __eq__(self, other: object) -> bool:
            return isinstance(other, Sized)

        def __repr__(self) -> str:
            return "sized"

    assert Sized(1.0) == Sized(2.0)
    assert repr(Sized(1.0)) == "sized"
    assert hash(Sized(1.0)) == hash(Sized(1.0))


def test_one_that_is_not_frozen_is_the_librarys() -> None:
    @dataclass
    class Count:
        of: int = 0

    one = Count()
    one.of = 3
    assert one == Count(3)
