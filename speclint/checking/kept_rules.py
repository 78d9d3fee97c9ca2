"""The rules of a module as an earlier run read them of the same code, so that it is imported only where one is run."""

from __future__ import annotations

from typing import Any

from speclint.checking.kept_folder import KeptFolder
from speclint.checking.packing import packed, unpacked
from speclint.errors import compared_names, field_names
from speclint.repository import digest
from speclint.rules import Rule, RulesIn

#: What is no data: taken from the module itself, once it is asked for.
_OF_CODE = ("on", "function")
_DATA = tuple(name for name in field_names(Rule) if name not in _OF_CODE)
_COMPARED = compared_names(Rule)


class RememberedRule(Rule):
    """A rule whose statement is kept: what it applies to, and the function that applies it, are still to be imported.

    :raises LookupError: when the function is asked for, and the module holds no rule of that name any more.
    """

    _within: RulesIn

    def __getattr__(self, name: str) -> Any:
        """Import the module, where what only it holds is asked for."""
        if name not in _OF_CODE:
            raise AttributeError(name)
        read = next((one for one in self._within.load() if one.name == self.name), None)
        if read is None:
            raise LookupError(f"{self._within.module} has no rule {self.name}")
        self.__dict__.update({one: getattr(read, one) for one in _OF_CODE})
        return self.__dict__[name]

    def __eq__(self, other: object) -> bool:
        """Whether it is the same rule as one that was read, or is remembered too."""
        if not isinstance(other, Rule):
            return NotImplemented
        return all(getattr(self, name) == getattr(other, name) for name in _COMPARED)

    __hash__ = Rule.__hash__


class KeptRules:
    """What modules of rules state, by the code of speclint and of all families."""

    def __init__(self, folder: KeptFolder, code: str) -> None:
        self._folder, self._code = folder, code

    def recall(self, family: str, group: RulesIn) -> tuple[Rule, ...] | None:
        """The rules of a module of a family; None where none are kept."""
        body = self._folder.read(self._name(family, group))
        kept = unpacked(body, {}) if body is not None else None
        if not isinstance(kept, list):
            return None
        return tuple(_remembered(dict(zip(_DATA, one, strict=True)), group) for one in kept)

    def keep(self, family: str, group: RulesIn, rules: tuple[Rule, ...]) -> None:
        """Keep what the rules of a module state."""
        stated = [tuple(getattr(one, name) for name in _DATA) for one in rules]
        self._folder.write(self._name(family, group), packed(stated))

    def _name(self, family: str, group: RulesIn) -> str:
        return digest(self._code, "rules", family, group.module)


def _remembered(stated: dict[str, Any], group: RulesIn) -> RememberedRule:
    found = RememberedRule.__new__(RememberedRule)
    found.__dict__.update(stated, _within=group)
    return found
