"""Work and results as bytes, and back: a rule is passed by its name, and is that of the process that unpacks it."""

from __future__ import annotations

import io
import pickle
from collections.abc import Mapping

from speclint.rules import Rule


class _Packer(pickle.Pickler):
    def persistent_id(self, one: object) -> str | None:
        return one.name if isinstance(one, Rule) else None


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
