"""Frozen data classes that are made several times sooner than by the decorator of Python's library.

Before Python 3.13 that compiles six functions from text for each class, half of what a short check does while it
starts. Here ``__init__`` alone is compiled, and the others are closures over the names of the fields.
"""

from __future__ import annotations

import dataclasses
import reprlib
from collections.abc import Callable
from operator import attrgetter
from types import MemberDescriptorType
from typing import TYPE_CHECKING, Any

Fields = tuple[dataclasses.Field[Any], ...]
_ABSENT = object()


def _dataclass(
    cls: type | None = None, /, *, frozen: bool = False, eq: bool = True, slots: bool = False
) -> Any:
    """The decorator of Python's library, with the options that speclint uses."""

    def made(cls: type) -> type:
        if not frozen or dataclasses.is_dataclass(cls):  # one that is built on another is left to the library
            return dataclasses.dataclass(frozen=frozen, eq=eq, slots=slots)(cls)
        return _frozen(cls, eq, slots)

    return made if cls is None else made(cls)


def _frozen(plain: type, eq: bool, slots: bool) -> type:
    own = {name for name, value in vars(plain).items() if (name, value) != ("__hash__", None)}
    plain.__doc__ = (
        plain.__doc__ or plain.__name__
    )  # or the library would work out a signature to stand for it
    cls: Any = dataclasses.dataclass(init=False, repr=False, eq=False, slots=slots)(plain)
    stated = cls.__dataclass_params__  # what a class that is built on this one asks for
    stated.init = stated.repr = stated.frozen = True
    stated.eq = eq
    fields = dataclasses.fields(cls)
    functions = {"__init__": _init(cls, fields), "__repr__": _repr(fields), **_refusing(cls, fields)}
    if eq:
        functions.update(_comparing(fields))
    if slots:
        functions.update(_moved(fields))
    for name, function in functions.items():
        if name not in own:
            function.__name__, function.__qualname__ = name, f"{cls.__qualname__}.{name}"
            setattr(cls, name, function)
    return cls  # type: ignore[no-any-return]


def _init(cls: type, fields: Fields) -> Callable[..., None]:
    """``__init__``: a parameter for each field, whose value is put where a frozen instance still takes it."""
    known: dict[str, Any] = {"_set": object.__setattr__, "_absent": _ABSENT}
    parameters, lines = ["self"], list[str]()
    for field in fields:
        name = value = field.name
        if field.default_factory is not dataclasses.MISSING:
            known[f"_make_{name}"] = field.default_factory
            value = f"_make_{name}()" + (f" if {name} is _absent else {name}" if field.init else "")
            parameters += [f"{name}=_absent"] if field.init else []
        elif not field.init:
            continue
        elif field.default is not dataclasses.MISSING:
            known[f"_default_{name}"] = field.default
            parameters.append(f"{name}=_default_{name}")
        else:
            parameters.append(name)
        slot = vars(cls).get(name)
        if isinstance(slot, MemberDescriptorType):
            known[f"_set_{name}"] = slot.__set__
            lines.append(f"_set_{name}(self, {value})")
        else:
            lines.append(f"_set(self, {name!r}, {value})")
    if hasattr(cls, "__post_init__"):
        lines.append("self.__post_init__()")
    exec(f"def __init__({', '.join(parameters)}):\n " + "\n ".join(lines or ["pass"]), known)
    init: Callable[..., None] = known["__init__"]
    init.__module__ = cls.__module__
    init.__annotations__ = {field.name: field.type for field in fields if field.init} | {"return": None}
    return init


def _repr(fields: Fields) -> Callable[..., Any]:
    shown = [field.name for field in fields if field.repr]

    @reprlib.recursive_repr()
    def written(self: Any) -> str:
        values = ", ".join(f"{name}={getattr(self, name)!r}" for name in shown)
        return f"{type(self).__qualname__}({values})"

    return written


def _refusing(cls: type[Any], fields: Fields) -> dict[str, Callable[..., Any]]:
    """That fields stay as they are; a plain class that is built on this one may have more beside them."""
    names = frozenset(field.name for field in fields)

    def assign(self: Any, name: str, value: object) -> None:
        if type(self) is cls or name in names:
            raise dataclasses.FrozenInstanceError(f"cannot assign to field {name!r}")
        super(cls, self).__setattr__(name, value)

    def delete(self: Any, name: str) -> None:
        if type(self) is cls or name in names:
            raise dataclasses.FrozenInstanceError(f"cannot delete field {name!r}")
        super(cls, self).__delattr__(name)

    return {"__setattr__": assign, "__delattr__": delete}


def _comparing(fields: Fields) -> dict[str, Callable[..., Any]]:
    """Equality and hash, both of the fields that compare."""
    names = [field.name for field in fields if field.compare]
    values: Callable[[Any], object] = (
        attrgetter(*names) if len(names) > 1 else lambda self: tuple(getattr(self, name) for name in names)
    )

    def equal(self: Any, other: object) -> Any:
        return values(self) == values(other) if other.__class__ is self.__class__ else NotImplemented

    def hashed(self: Any) -> int:
        return hash(values(self))

    return {"__eq__": equal, "__hash__": hashed}


def _moved(fields: Fields) -> dict[str, Callable[..., Any]]:
    """How an instance in slots is copied and pickled, though its fields cannot be assigned."""
    names = [field.name for field in fields]

    def state_of(self: Any) -> list[Any]:
        return [getattr(self, name) for name in names]

    def place(self: Any, state: list[Any]) -> None:
        for name, value in zip(names, state, strict=True):
            object.__setattr__(self, name, value)

    return {"__getstate__": state_of, "__setstate__": place}


if TYPE_CHECKING:
    from dataclasses import dataclass as dataclass
else:
    dataclass = _dataclass
