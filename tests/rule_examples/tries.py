"""Changes to try on what a check took, the smallest first: sizes, classes, words, names, keys and parts left out."""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator
from dataclasses import dataclass
from decimal import Decimal
from functools import cached_property
from typing import Any

from speclint.checking import Check
from speclint.errors import DesignError
from speclint.repository import Change, DraftedDesign, steps_of_key
from speclint.repository.toml_writing import toml_text
from speclint.specs import Component, bare
from speclint.testing.statable import words_for, written_elsewhere
from speclint.testing.taken_values import Taken
from tests.rule_examples.shown import places_of

#: A size is multiplied and divided by each of these, of all places the smallest first.
FACTORS = ("1.02", "1.05", "1.1", "1.2", "1.5", "2", "5")
_DIGITS = 3
#: A place among those that are stated, and whether its size is made larger.
Way = tuple[int, bool]
_NUMBER = re.compile(r"(?<![\w.])-?\d+(?:\.\d+)?(?![\w/])")
_CLASS = re.compile(r"(?<= )([A-Za-z]{1,2})(\d{1,2})$")
_HOLES, _SHAFTS = "DEFGHJKMNPRSTU", "defghjkmnprstu"
#: Values of the same key elsewhere in the design that are tried.
_ELSEWHERE = 8


def times(text: str, factor: Decimal) -> str:
    """A quantity as written with its size times a factor, rounded to three digits; its unit and limits as they are.

    >>> times("578 mm t6", Decimal("1.02")), times("25.1 mm ±0.02", Decimal("0.5")), times("180..220 °C", Decimal(2))
    ('590 mm t6', '12.6 mm ±0.02', '360..440 °C')
    """
    numbers = 2 if ".." in text else 1
    return _NUMBER.sub(
        lambda found: rounded(Decimal(found[0]) * factor), text.replace("..", " .. "), numbers
    ).replace(" .. ", "..")


def rounded(number: Decimal) -> str:
    """A number of three digits, without an exponent; of a whole one of more digits all.

    >>> rounded(Decimal("589.56")), rounded(Decimal("0.30600")), rounded(Decimal("12345.6")), rounded(Decimal("1.00"))
    ('590', '0.306', '12346', '1')
    """
    if not number:
        return "0"
    places = max(_DIGITS - 1 - number.adjusted(), 0)
    text = f"{round(number, places):f}"
    return text.rstrip("0").rstrip(".") if "." in text else text


@dataclass(frozen=True)
class Tries:
    """The changes to try on one check."""

    state: DraftedDesign
    done: Check

    @cached_property
    def _places(self) -> list[Taken]:
        own = self.done.component
        return sorted(places_of(self.done, self.state), key=lambda one: one.spec != own)

    @cached_property
    def _stated(self) -> list[tuple[Taken, Any, str]]:
        """Each place that is stated, with what the spec writes there under which key."""
        found = []
        for one in self._places:
            try:
                raw, key = self.state.raw_at(one.spec, one.key)
            except DesignError:
                continue
            found.append((one, raw, key))
        return found

    def __iter__(self) -> Iterator[tuple[Change, ...]]:
        sizes, words = (
            (self._sizes(), self._classes()),
            (self._words(), self._elsewhere(), self._orders(), self._left_out()),
        )
        for changes in (*words, *sizes) if self.done.utilisation is None else (*sizes, *words):
            yield from ((one,) for one in changes)
        yield from self._parts()
        yield from ((one,) for one in self._put_in())

    def _sizes(self) -> Iterator[Change]:
        """Every size a little larger and smaller, then each by more."""
        for factor in map(Decimal, FACTORS):
            for _, change in self.sized(factor):
                yield change

    def sized(self, factor: Decimal, some: Collection[Way] | None = None) -> Iterator[tuple[Way, Change]]:
        """Every size times a factor and divided by it, or some of these, each with its place and way."""
        for place, (one, raw, key) in enumerate(self._stated):
            for larger, by in ((True, factor), (False, 1 / factor)):
                if some is None or (place, larger) in some:
                    yield from (((place, larger), change) for change in self._sized(one, raw, key, by))

    def _sized(self, one: Taken, raw: Any, key: str, by: Decimal) -> Iterator[Change]:
        if isinstance(raw, list):
            (index,) = [step for step in steps_of_key(one.key)[-1:] if isinstance(step, int)] or [-1]
            if 0 <= index < len(raw) and (new := _sized(raw[index], by)) is not None:
                yield Change(one.spec, key, [*raw[:index], new, *raw[index + 1 :]])
        elif isinstance(raw, dict) and "value" in raw:
            if (new := _sized(raw["value"], by)) is not None:
                yield Change(one.spec, key, raw | {"value": new})
        elif (new := _sized(raw, by)) is not None:
            yield Change(one.spec, key, new)

    def _classes(self) -> Iterator[Change]:
        """Every tolerance class another, the nearest letters first, then another grade."""
        for step in (1, 2, 3, 5, 8):
            for one, raw, key in self._stated:
                found = _CLASS.search(raw) if isinstance(raw, str) else None
                for letters, grade in _near(found[1], int(found[2]), step) if found else ():
                    assert found is not None
                    yield Change(one.spec, key, f"{raw[: found.start()]}{letters}{grade}")

    def _words(self) -> Iterator[Change]:
        """Every word of a list and every yes or no another."""
        for one, raw, key in self._stated:
            if isinstance(raw, bool):
                yield Change(one.spec, key, not raw)
            elif isinstance(raw, str):
                yield from (
                    Change(one.spec, key, word)
                    for word in words_for(self.state, one.spec, one.key)
                    if word != raw
                )

    def _orders(self) -> Iterator[Change]:
        """Every list with two neighbours the other way round, or without one of them."""
        for one, raw, key in {(one.spec, key): (one, raw, key) for one, raw, key in self._stated}.values():
            if isinstance(raw, list) and not any(isinstance(inner, dict) for inner in raw):
                for at in range(len(raw) - 1):
                    yield Change(one.spec, key, [*raw[:at], raw[at + 1], raw[at], *raw[at + 2 :]])
                yield from (Change(one.spec, key, [*raw[:at], *raw[at + 1 :]]) for at in range(len(raw)))
                yield from (
                    Change(one.spec, key, [*raw[:at], *raw[at + 1 :], raw[at]]) for at in range(len(raw) - 1)
                )

    def _elsewhere(self) -> Iterator[Change]:
        """What the same key says elsewhere in the design: another material, another name, another part linked to."""
        for one, raw, key in self._stated:
            known = written_elsewhere(self.state)[one.general]
            others = [value for value in known if value != raw]
            yield from (Change(one.spec, key, value) for value in others[:_ELSEWHERE])

    def _left_out(self) -> Iterator[Change]:
        """Every key left out, and the tables in which keys stand."""
        for one, _, key in self._stated:
            yield Change(one.spec, key, absent=True)
        tables: dict[tuple[str, str], None] = {}
        for one, _, key in self._stated:
            steps = key.split(".")
            tables.update(
                ((one.spec, ".".join(steps[:depth])), None) for depth in range(len(steps) - 1, 0, -1)
            )
        yield from (Change(spec, key, absent=True) for spec, key in tables if not key.endswith("]"))

    def _parts(self) -> Iterator[tuple[Change, ...]]:
        """Every other part left out, or there twice."""
        parts = dict.fromkeys(one.spec for one in self._places if one.spec != self.done.component)
        more = sorted(self.done.consulted.ids - parts.keys() - {self.done.component})
        for part in (*parts, *more):
            if part in self.state.design.specs:
                yield (Change(part, absent=True),)
        for part in (*parts, self.done.component):
            spec = self.state.design.specs[part]
            if isinstance(spec, Component):
                tree = {"kind": spec.kind, **bare(self.state.draft(part).table), "id": f"{part}-again"}
                yield (Change(f"{part}-again", value=toml_text(_plain(tree))),)

    def _put_in(self) -> Iterator[Change]:
        """What is not stated, stated: a word of its list, or what the same key says elsewhere."""
        for one in self._places:
            if one.stated or one.spec not in self.state.design.specs:
                continue
            for word in words_for(self.state, one.spec, one.key):
                yield Change(one.spec, one.key, {"true": True, "false": False}.get(word, word))
            for value in written_elsewhere(self.state)[one.general][:_ELSEWHERE]:
                yield Change(one.spec, one.key, value)


def _sized(raw: Any, by: Decimal) -> Any:
    """A plain value times a factor; None where it is no size, or comes out the same."""
    if isinstance(raw, bool):
        return None
    if isinstance(raw, int):
        count = round(raw * by)
        count = count if count != raw else raw + (1 if by > 1 else -1)
        return count if count > 0 else None
    if isinstance(raw, float):
        return float(rounded(Decimal(str(raw)) * by))
    if not isinstance(raw, str) or not _NUMBER.match(raw):
        return None
    text = times(raw, by)
    return text if text != raw else None


def _near(letters: str, grade: int, step: int) -> Iterator[tuple[str, int]]:
    row = _HOLES if letters.isupper() else _SHAFTS
    at = row.find(letters)
    if at >= 0:
        yield from ((row[place], grade) for place in (at + step, at - step) if 0 <= place < len(row))
    yield from ((letters, other) for other in (grade + step, grade - step) if 4 <= other <= 12)


def _plain(value: Any) -> Any:
    """A tree without what TOML cannot write."""
    if isinstance(value, dict):
        return {name: _plain(one) for name, one in value.items() if name not in ("each", "for")}
    return [_plain(one) for one in value] if isinstance(value, list | tuple) else value
