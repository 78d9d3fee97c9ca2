"""Work and results as bytes, and back: a rule is passed by its name, and is that of the process that unpacks it.

What is read from a file can only become data: where it holds anything else, it is as if it were not there.
"""

from __future__ import annotations

import io
import pickle
from collections.abc import Mapping
from dataclasses import fields, is_dataclass
from enum import Enum
from functools import cache
from typing import Any

from speclint.errors import is_record
from speclint.rules import Rule, RuleEnded


class _Packer(pickle.Pickler):
    def persistent_id(self, one: object) -> str | None:
        return one.name if isinstance(one, Rule) else None

    def reducer_override(self, one: object) -> Any:
        """Frozen data with slots by a call of its class: read in half the time of what Python does by itself."""
        kind = type(one)
        if not (names := _names(kind)):  # type: ignore[arg-type]  # every class can be looked up
            return NotImplemented
        return kind, tuple(getattr(one, name) for name in names)


class Unpacker(pickle.Unpickler):
    """Reads what was packed, with the rules of this process by their names."""

    def __init__(self, file: io.BytesIO, rules: Mapping[str, Rule]) -> None:
        super().__init__(file)
        self._rules = rules

    def persistent_load(self, name: str) -> Rule:
        """The rule of a name. Raises KeyError for one that is not loaded."""
        return self._rules[name]


def packed(value: object) -> bytes:
    """A piece of work or a result as bytes."""
    file = io.BytesIO()
    _Packer(file).dump(value)
    return file.getvalue()


@cache
def _names(kind: type) -> tuple[str, ...]:
    """The fields of a frozen class of data with nothing but slots, which its call takes as they are; else none.

    A struct is read as quickly by what it does by itself.
    """
    if not is_dataclass(kind) or kind.__dictoffset__ or hasattr(kind, "__post_init__"):
        return ()
    every = fields(kind)
    as_they_are = kind.__dataclass_params__.frozen and all(one.init and not one.kw_only for one in every)  # type: ignore[attr-defined]
    return tuple(one.name for one in every) if as_they_are and kind.__reduce__ is object.__reduce__ else ()


class _DataOnly(Unpacker):
    def find_class(self, module: str, name: str) -> Any:
        """A class of data of speclint itself; nothing else is made from a file."""
        if module.partition(".")[0] != "speclint":
            raise pickle.UnpicklingError(f"{module}.{name}")
        found = super().find_class(module, name)
        if not isinstance(found, type) or not _holds_data(found):
            raise pickle.UnpicklingError(f"{module}.{name}")
        return found


def _holds_data(kind: type) -> bool:
    return is_record(kind) or issubclass(kind, Enum | RuleEnded)


def unpacked(body: bytes, rules: Mapping[str, Rule]) -> Any:
    """A result from its bytes; None where they do not hold one."""
    try:
        return _DataOnly(io.BytesIO(body), rules).load()
    except Exception:  # whatever a file may hold: it is made anew
        return None
