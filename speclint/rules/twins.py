"""Functions of rules and formulae made to run on enclosures: the same code, with other names for ``math`` and the like.

A twin shares the code of its function. What the code calls by name is a twin as well; what runs on plain numbers only,
such as a library of steam properties, says so by asking an enclosure for one number.
"""

from __future__ import annotations

import functools
import math
import sys
from collections.abc import Callable, Hashable, Iterator
from contextlib import contextmanager
from copy import copy
from dataclasses import is_dataclass
from importlib import import_module
from inspect import signature
from types import CellType, CodeType, FunctionType, MethodType, ModuleType
from typing import Any

from speclint.rules.enclosed_functions import BUILT_IN, MATHEMATICS, STANDS_IN
from speclint.rules.enclosure import Enclosure
from speclint.rules.many import at_each, holds_many
from speclint.rules.replay import replayed

_originals: dict[int, object] = {}
_MARK = "__twin__"  # among the names of a twin
_LEFT_ALONE = ("msgspec", "pydantic", "pydantic_core", "pint", "pluggy", "rich", "tomli", "seuif97")
#: What of a class may calculate.
_METHODS = (FunctionType, property, classmethod, staticmethod, functools.cached_property)
_OF_TUPLES = ("_make", "_replace", "_asdict")
#: Results for enclosures that a function remembers, before it forgets them all.
_REMEMBERED = 512
#: Functions whose stand-ins have a module of their own, read only where they are called.
_IN_MODULE = {("speclint.handbook.cams.profiles", "follower_at"): "speclint.rules.enclosed_cams"}
#: Such functions whose stand-ins leave to them, as first argument, what they do not work themselves.
_BEFORE = {("speclint.handbook.materials.tables", "look_up"): "speclint.rules.enclosed_tables"}
_twins: dict[int, tuple[object, object]] = {}  # the original is kept, so that its id stays its own


def twin(original: Any) -> Any:
    """What stands in for an object where enclosures run: itself, for whatever calculates nothing."""
    known = _twins.get(id(original))
    if known is not None:
        return known[1]
    if isinstance(original, MethodType):  # made anew each time it is asked for, and so not remembered
        return MethodType(twin(original.__func__), original.__self__)
    if isinstance(original, FunctionType) and _MARK in original.__globals__:  # made by a twin as it ran
        return original
    made = _made(original)
    if made is not original:
        _keep(original, made)
        _keep(made, made)
    return made


def _keep(original: object, made: object) -> None:
    _twins[id(original)] = (original, made)
    _originals.setdefault(id(made), original)


@contextmanager
def twins_put_away() -> Iterator[None]:
    """Put away all twins for a while: those asked for meanwhile are made anew, and go when those before come back."""
    before = dict(_twins), dict(_originals)
    _forget()
    try:
        yield
    finally:
        _forget()
        _twins.update(before[0])
        _originals.update(before[1])


def _forget() -> None:
    _twins.clear()
    _originals.clear()


def original_of(made: Any) -> Any:
    """What a twin was made of, or the object itself."""
    return _originals.get(id(made), made)


def _made(original: Any) -> Any:
    if original is math:
        return MATHEMATICS
    try:
        if original in STANDS_IN:
            return STANDS_IN[original]
    except TypeError:
        pass
    if isinstance(original, FunctionType):
        module = _IN_MODULE.get((original.__module__, original.__name__))
        if module is not None:
            return getattr(import_module(module), original.__name__)
        module = _BEFORE.get((original.__module__, original.__name__))
        if module is not None:
            return functools.partial(getattr(import_module(module), original.__name__), _function(original))
        return _function(original) if _ours(original.__module__) else original
    if isinstance(original, functools._lru_cache_wrapper):
        return _remembered(original)
    if isinstance(original, functools.partial):
        return functools.partial(twin(original.func), *original.args, **original.keywords)
    if isinstance(original, ModuleType):
        return _Module(original) if _ours(original.__name__) else original
    if isinstance(original, type):
        return _class(original)
    return _collection(original)


def _ours(module: str | None) -> bool:
    top = (module or "").split(".")[0]
    return bool(top) and top not in sys.stdlib_module_names and top not in _LEFT_ALONE


def _function(original: FunctionType) -> FunctionType:
    space: dict[str, Any] = {"__builtins__": original.__globals__["__builtins__"], _MARK: True}
    closure = tuple(_cell(cell) for cell in original.__closure__ or ())
    made = FunctionType(original.__code__, space, original.__name__, original.__defaults__, closure)
    made.__kwdefaults__ = original.__kwdefaults__
    made.__dict__.update(original.__dict__)
    made.__qualname__, made.__module__ = original.__qualname__, original.__module__
    _keep(original, made)
    for name in _names(original.__code__):
        if name in original.__globals__:
            space[name] = twin(original.__globals__[name])
        elif name in BUILT_IN:
            space[name] = BUILT_IN[name]
    return made


def _cell(cell: CellType) -> CellType:
    """The same cell, unless what it holds has a twin."""
    try:
        held = cell.cell_contents
    except ValueError:  # nothing yet
        return cell
    made = twin(held)
    return cell if made is held else CellType(made)


def _names(code: CodeType) -> Iterator[str]:
    yield from code.co_names
    for constant in code.co_consts:
        if isinstance(constant, CodeType):
            yield from _names(constant)


def _remembered(original: Any) -> Callable[..., Any]:
    """A function that remembers its results does so for enclosures of the same bounds too."""
    own = twin(original.__wrapped__)
    names = tuple(signature(original.__wrapped__).parameters)
    known: dict[Hashable, Any] = {}

    def stands_in(*args: Any, **named: Any) -> Any:
        arguments = {**dict(zip(names, args, strict=False)), **named}
        if holds_many(*arguments.values()):
            return at_each(original, **arguments)
        if not any(_holds_enclosure(one) for one in arguments.values()):
            return _to_be_asked(original(*args, **named))
        if len(known) >= _REMEMBERED:
            known.clear()
        return replayed(own, known, None, arguments)

    return stands_in


def _to_be_asked(result: Any) -> Any:
    """What was worked from plain numbers, where it may be asked for more, with methods that take enclosures."""
    return result if twin(type(result)) is type(result) else twin_of_value(result)


def _holds_enclosure(one: object) -> bool:
    return isinstance(one, Enclosure) or (
        isinstance(one, tuple) and any(_holds_enclosure(part) for part in one)
    )


class _Module:
    """A module of formulae, whose functions are twins."""

    def __init__(self, module: ModuleType) -> None:
        self._module = module

    def __getattr__(self, name: str) -> Any:
        found = twin(getattr(self._module, name))
        setattr(self, name, found)
        return found


class _TwinClass(type):
    """The kind of a twin of a class: what is one of the original counts as one of the twin, for code that asks."""

    def __instancecheck__(cls, instance: object) -> bool:
        return isinstance(instance, cls.__mro__[1])


@functools.cache
def _kind_of_twin(kind: type) -> type:
    """The metaclass of the twin of a class of that metaclass, such as of an abstract one: it must derive from both."""
    return type("_TwinClass", (_TwinClass, kind), {})


def _class(original: type) -> type:
    """A class of values, such as a named tuple, whose methods are twins; any other is left as it is."""
    values = is_dataclass(original) or (issubclass(original, tuple) and hasattr(original, "_fields"))
    if not values or not _ours(original.__module__) or original.__module__.startswith("speclint.specs"):
        return original
    own = {name: value for name, value in vars(original).items() if _calculates(name, value)}
    if not own:
        return original
    kind = _kind_of_twin(type(original))
    made: type = kind(original.__name__, (original,), {"__slots__": ()})
    _keep(original, made)
    for name, value in own.items():
        attribute = _attribute(value)
        setattr(made, name, attribute)
        if isinstance(attribute, functools.cached_property):
            attribute.__set_name__(made, name)
    return made


def _calculates(name: str, value: object) -> bool:
    """Whether an attribute of a class is a method of its own, none that Python or ``NamedTuple`` gave it."""
    return isinstance(value, _METHODS) and not name.startswith("__") and name not in _OF_TUPLES


def _attribute(value: Any) -> Any:
    if isinstance(value, FunctionType):
        return twin(value)
    if isinstance(value, property) and value.fget is not None:
        return property(twin(value.fget))
    if isinstance(value, functools.cached_property):
        return functools.cached_property(twin(value.func))
    if isinstance(value, classmethod | staticmethod):
        return type(value)(twin(value.__func__))
    return value


def _collection(original: Any) -> Any:
    """A table of functions, its functions as twins."""
    if type(original) is dict and any(_runs(one) for one in original.values()):
        return {key: twin(one) for key, one in original.items()}
    if type(original) in (list, tuple) and any(_runs(one) for one in original):
        return type(original)(twin(one) for one in original)
    return original


def _runs(one: object) -> bool:
    return isinstance(one, FunctionType | type | functools.partial)


def twin_of_value(original: Any) -> Any:
    """A copy of a value whose methods are twins, so that it may be asked for a figure at an enclosure."""
    known = _twins.get(id(original))
    if known is not None:
        return known[1]
    kind, made = twin(type(original)), original
    if kind is not type(original):
        made = copy(original)
        object.__setattr__(made, "__class__", kind)
    _keep(original, made)
    return made
