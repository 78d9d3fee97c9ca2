"""Checks that conform by the same working: their sheets differ in names only, and stand in the pack once."""

from __future__ import annotations

from collections.abc import Collection, Hashable

from speclint.checking import Check


class SameWorking:
    """Tells of each check of a document whether an earlier one had the same working.

    A finding has a sheet of its own, and so has a check that could not be made: each is looked at by itself.
    """

    def __init__(self, names: Collection[str]) -> None:
        self._names = names
        self._first: dict[Hashable, Check] = {}

    def first(self, check: Check) -> Check:
        """The check on whose sheet the same stands; the check itself where there was none before."""
        if check.outcome != "conforms":
            return check
        return self._first.setdefault(self._working(check), check)

    def _working(self, check: Check) -> Hashable:
        """The lines of a sheet without the names of parts: of one rule and kind, with every number and word."""
        lines = tuple(
            (one.kind, one.symbol, one.name, self._value(one.value), one.numbers) for one in check.steps
        )
        return (
            check.kind,
            check.rule.name,
            check.case,
            repr(check.utilisation),
            self._plain(check.says),
            lines,
        )

    def _value(self, value: object) -> str:
        return self._plain(value) if isinstance(value, str) else repr(value)

    def _plain(self, text: str) -> str:
        return " ".join("part" if word.strip(",;:()") in self._names else word for word in text.split())
