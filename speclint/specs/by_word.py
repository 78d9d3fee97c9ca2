"""What stands for the class of a kind: it answers by the word of the kind, and imports the class for anything else.

``from speclint.specs import Cam`` gives it, so that a module which asks which kind a part is of, or names the kinds
that a rule is on, imports the fields of none. ``isinstance(part, Cam)`` is answered from the word of the part's kind.
Called, built upon, or asked for its fields it is the class itself. For the checker of types it always is.
"""

from __future__ import annotations

import copyreg
from collections.abc import Callable, Collection
from functools import cache
from types import new_class
from typing import Any, TypeVar

from speclint.specs.kind_places import KINDS, imported

_Kind = TypeVar("_Kind", bound=type)

#: Kinds that are no components.
_NO_PART = ("duty", "gauge-outline")


class KindByWord(type):
    """What stands for the class of a kind; whatever is of that kind, or of one built on it, is one of its own."""

    kind: str
    known: dict[type, bool]

    def __new__(cls, name: str, bases: tuple[type, ...], space: dict[str, Any], **options: Any) -> Any:
        if not bases:
            return super().__new__(cls, name, bases, {**space, "known": {}})
        return new_class(name, tuple(map(class_of, bases)), options, lambda filled: filled.update(space))

    def __call__(cls, *values: Any, **named: Any) -> Any:
        return class_of(cls)(*values, **named)

    def words(cls) -> tuple[str, ...]:
        """As those of the class: its own, and that of every component."""
        return (cls.kind,) if cls.kind in _NO_PART else (cls.kind, "component")

    def is_one_of(cls, kinds: Collection[str]) -> bool:
        """As of the class."""
        return any(word in kinds for word in cls.words())

    def __instancecheck__(cls, instance: object) -> bool:
        of = type(instance)
        try:
            return cls.known[of]
        except KeyError:
            return cls.known.setdefault(of, cls.__subclasscheck__(of))

    def __subclasscheck__(cls, other: type) -> bool:
        is_one_of: Callable[[Collection[str]], bool] | None = getattr(other, "is_one_of", None)
        return is_one_of is not None and is_one_of((cls.kind,))

    def __getattr__(cls, name: str) -> Any:
        if name.startswith("__"):  # asked by Python's own parts, not by a reader
            raise AttributeError(name)
        return getattr(class_of(cls), name)


def class_of(kind: _Kind) -> _Kind:
    """The class of a kind itself, imported where something stands for it; any other class as it is."""
    if not isinstance(kind, KindByWord):
        return kind
    found: Any = imported(KINDS[kind.kind])
    return found  # type: ignore[no-any-return]


@cache
def kind_by_word(name: str) -> Any:
    """What stands for the class of a kind, by the name of the class; AttributeError where no kind is called so."""
    for word, place in KINDS.items():
        module, _, called = place.partition(":")
        if called == name:
            return KindByWord(name, (), {"kind": word, "__module__": module, "__qualname__": name})
    raise AttributeError(f"no kind of spec is called {name}")


copyreg.pickle(KindByWord, lambda kind: (kind_by_word, (kind.__name__,)))


def __getattr__(name: str) -> Any:
    """``by_word.Cam``, as families have it that were written before ``speclint.specs`` gave kinds by their words."""
    return kind_by_word(name)
