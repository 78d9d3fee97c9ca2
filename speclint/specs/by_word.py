"""The kinds by their words alone: for a module that only asks which kind a part is of, and so imports none of them.

``isinstance(part, by_word.Cam)`` is answered from the word of the part's kind, ``sheet.belonging_to(block,
by_word.Engine)`` and a rule's ``on=by_word.Cam`` likewise. The class of the kind is imported when anything else is
asked of it. For the checker of types they are the classes themselves.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from speclint.specs import *  # noqa: F403
else:
    import copyreg
    from collections.abc import Collection
    from functools import cache
    from typing import Any

    from speclint.specs.catalogue import KINDS, imported

    #: Kinds that are no components.
    _NO_PART = ("duty", "gauge-outline")

    class KindByWord(type):
        """What stands for the class of a kind; whatever is of that kind, or of one built on it, is one of its own."""

        kind: str

        def __init__(cls, name: str, bases: tuple[type, ...], space: dict[str, Any]) -> None:
            if bases:
                raise TypeError(
                    f"{name} is to be built on a class of speclint.specs, not on what stands for it"
                )
            super().__init__(name, bases, space)

        def __call__(cls, *values: Any, **named: Any) -> Any:
            return imported(KINDS[cls.kind])(*values, **named)

        def words(cls) -> tuple[str, ...]:
            """As those of the class: its own, and that of every component."""
            return (cls.kind,) if cls.kind in _NO_PART else (cls.kind, "component")

        def is_one_of(cls, kinds: Collection[str]) -> bool:
            """As of the class."""
            return any(word in kinds for word in cls.words())

        def __instancecheck__(cls, instance: object) -> bool:
            return cls.__subclasscheck__(type(instance))

        def __subclasscheck__(cls, other: type) -> bool:
            is_one_of = getattr(other, "is_one_of", None)
            return is_one_of is not None and is_one_of((cls.kind,))

        def __getattr__(cls, name: str) -> Any:
            if name.startswith("__"):  # asked by Python's own parts, not by a reader
                raise AttributeError(name)
            return getattr(imported(KINDS[cls.kind]), name)

    @cache
    def kind_by_word(name: str) -> KindByWord:
        """What stands for the class of a kind, by the name of the class."""
        for word, place in KINDS.items():
            module, _, called = place.partition(":")
            if called == name:
                return KindByWord(name, (), {"kind": word, "__module__": module, "__qualname__": name})
        raise AttributeError(f"no kind of spec is called {name}")

    copyreg.pickle(KindByWord, lambda kind: (kind_by_word, (kind.__name__,)))
    __getattr__ = kind_by_word
