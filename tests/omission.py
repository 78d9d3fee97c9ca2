"""What a check of hold grade rests on, left out: keys removed, lists cut to one entry, words made kindest.

For each check of the example that conforms, and each key that its rule promises to read, the spec is changed and read
again. Then the check must no longer conform, or the reader complain; where the fact is worked from elsewhere no
comparison, in any load case, may have more left of its limit than before. What passes is open, unless another rule
tells it: each is listed with its reason in ``data/promises.toml`` of the family. The cases of a duty and the
temperatures of a case are no such lists: a rule asks for each by its name.

``python -m tests.omission`` tries them all, and fails where one is open and not listed, or listed and told. The test of
the same name tries a sample.
"""

from __future__ import annotations

import argparse
import random
import sys
from collections import Counter, defaultdict
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import date
from fnmatch import fnmatchcase
from functools import cached_property
from typing import Any, Literal

from pydantic import BaseModel

from speclint.checking import Check, check
from speclint.checking.inputs import Inputs, context_of
from speclint.errors import replace
from speclint.repository import Design, Register, open_repository, steps_of_key
from speclint.repository.misfits import misfits
from speclint.repository.reading import Draft, Read, read_drafts, validated
from speclint.repository.taking_over import taken_over
from speclint.rules import Context, Rule
from speclint.specs import Component, Leaf, Spec, Stated, Table
from speclint.testing import installed_families
from speclint.testing.statable import declared_words
from speclint.testing.taken_values import taken_by
from tests.contracts.omissions import hold_rules
from tests.contracts.promises import names_a_key, promised
from tests.example import EXAMPLE, assessed
from tests.shares import add_part, share_of

Way = Literal["removed", "shortened", "set"]
ELSEWHERE = "worked from elsewhere"
#: What a draft says of a place that nothing fills: it stands in the list of what is still to be drawn.
TO_DRAW = "still to be drawn"
_EPSILON = 1e-9  # of a margin: the same value, but for rounding


@dataclass(frozen=True, order=True)
class Omission:
    """A change that a check should tell: of the specs and keys in ``places``, all of one general key.

    ``to`` is the word that is set, or the one entry that a list keeps.
    """

    rule: str
    component: str
    key: str
    way: Way
    to: str
    places: tuple[tuple[str, str], ...]

    @property
    def row(self) -> str:
        """As the table of a family names it."""
        return f"{self.key} {self.way}" + (f" to {self.to}" if self.way == "set" else "")

    def __str__(self) -> str:
        to = f" to {self.to}" if self.to else ""
        places = ", ".join(" ".join(place) for place in self.places)
        return f"{self.rule} on {self.component}: {self.key} {self.way}{to} ({places})"


class Bench:
    """The example, read once, with its checks of hold rules."""

    def __init__(self) -> None:
        self.loaded = installed_families()
        opened = open_repository([EXAMPLE], self.loaded.kinds)
        assert not opened.complaints
        self.design, self._materials = opened.design, opened.materials
        self.rules = {rule.name: rule for rule in hold_rules()}
        self.checks = assessed().checks
        self._before = {(done.rule.name, done.component): done for done in self.checks}
        self._told: dict[tuple[tuple[tuple[str, str], ...], Way, str], str] = {}

    @cached_property
    def omissions(self) -> list[Omission]:
        """Every omission to be tried, once for each rule and kind of component."""
        found: dict[tuple[str, ...], Omission] = {}
        for done in self.checks:
            if done.rule.name in self.rules and done.outcome == "conforms":
                for one in self._of(done):
                    found.setdefault((one.rule, done.kind, one.key, one.way, one.to), one)
        return list(found.values())

    def _of(self, done: Check) -> Iterator[Omission]:
        rule, part = done.rule.name, done.component
        taken: dict[str, dict[tuple[str, str], None]] = defaultdict(dict)
        for one in taken_by(done, self.design):
            if one.stated and promised()[rule].includes(one.general):
                taken[one.general][one.spec, one.key] = None
        for key, places in taken.items():
            yield Omission(rule, part, key, "removed", "", tuple(places))
            for spec, at in places:
                for word in _other_words(self.design.specs[spec], at):
                    yield Omission(rule, part, key, "set", word, ((spec, at),))
                lists = () if key.startswith("duty.cases") else _lists(self.table(spec), key, at)
                for short, of_list, entries in lists:
                    for entry in entries[:2]:
                        yield Omission(rule, part, short, "shortened", entry, ((spec, of_list),))

    @cached_property
    def _drafts(self) -> Mapping[str, Read]:
        """Every spec as its file states it, with what it takes over from others."""
        files = sorted(set(self.design.files.values()))
        read = (one for file in files for one in read_drafts(EXAMPLE / file, file, self.loaded.kinds))
        return taken_over({one.id: one for one in read})

    def draft(self, name: str) -> Draft:
        """A spec as it is read."""
        found = self._drafts[name]
        assert isinstance(found, Draft)
        return found

    def table(self, name: str) -> Table:
        """The table of a spec as it is read."""
        return self.draft(name).table

    def told_by(self, one: Omission) -> str:
        """What tells an omission: "complaint", how the check comes out, or another rule; "" where nothing does."""
        design = self.without(one)
        if design is None:
            return "complaint"
        context = self._context(design)
        after = check(self.rules[one.rule], _component(design, one.component), context)
        if after.could_not_run:
            raise AssertionError(f"{one}: {after.could_not_run}")
        if _tells(after):
            return after.outcome if after.outcome != "not applicable" else TO_DRAW
        if after.outcome == "conforms" and one.way != "shortened" and self._no_better(one, design):
            return ELSEWHERE
        change = one.places, one.way, one.to
        if (
            change not in self._told
        ):  # the same change is tried for each rule that rests on what it takes away
            told = next(self._others(one, design, context), "")
            if not told:
                return ""
            self._told[change] = told
        return self._told[change]

    def without(self, one: Omission) -> Design | None:
        """The design with an omission in it; None where reading it draws a complaint."""
        tables = {spec: self.table(spec) for spec, _ in one.places}
        places = [(spec, steps_of_key(key)) for spec, key in one.places]
        for spec, path in sorted(
            places, reverse=True
        ):  # of an array the last entry first: each keeps its place
            tables[spec] = _changed(tables[spec], path, one.way, one.to)
        specs = dict(self.design.specs)
        for name, table in tables.items():
            found = validated(replace(self.draft(name), table=table), self.loaded.kinds).spec
            if found is None:
                return None
            specs[name] = found
        return None if any(misfits(specs)) else replace(self.design, specs=specs)

    def _no_better(self, one: Omission, design: Design) -> bool:
        """Whether every comparison, in each load case, has left no more of its limit than before."""
        rule = self.rules[one.rule]
        for case in rule.cases or ("",):
            alone = replace(rule, cases=(case,)) if case else rule
            before, after = (
                check(alone, _component(of, one.component), self._context(of)) for of in (self.design, design)
            )
            if after.outcome == "conforms" and not _has_no_more_left(before, after):
                return False
        return True

    def _context(self, design: Design) -> Context:
        return context_of(Inputs(design, {}, self._materials, Register(""), date.today()), self.loaded)

    def _others(self, one: Omission, design: Design, context: Context) -> Iterator[str]:
        """Other rules on the component, and on those near the changed specs, that now tell something new.

        Farther off, agreements: they compare what stands two links apart, as a valve and the bore of its seat.
        """
        near = {name: design.specs[name] for name in (one.component, *(spec for spec, _ in one.places))}
        changed = [design.specs[spec] for spec, _ in one.places]
        before = [self.design.specs[spec] for spec, _ in one.places]  # a link that is left out led somewhere
        near |= {link.id: design.specs[link.id] for spec in (*changed, *before) for link in spec.links()}
        near |= {part.id: part for spec in tuple(near.values()) for part in design.linking_to(spec)}
        far = {part.id: part for spec in near.values() for part in design.linking_to(spec)}
        touched = {spec.id for spec in changed} | {
            link.id for spec in (*changed, *before) for link in spec.links()
        }
        for part in (near | far).values():
            if not isinstance(part, Component):
                continue
            for rule in self.loaded.rules_for({part.kind}):
                if rule.reviews or not isinstance(part, rule.on) or not (part.id in near or rule.agreement):
                    continue
                if not self._could_see(rule, part, touched):
                    continue
                after = check(rule, part, context)
                if _tells(after) and self._is_new(after):
                    yield f"{rule.name} on {part.id}, {after.outcome}"

    def _could_see(self, rule: Rule, part: Component, touched: set[str]) -> bool:
        """Whether a check asked of a spec that is changed, or of what it links to: else it comes out as before."""
        consulted = self._check_before(rule, part.id).consulted
        return not touched.isdisjoint(consulted.ids) or bool(consulted.asked)

    def _check_before(self, rule: Rule, part: str) -> Check:
        at = rule.name, part
        if at not in self._before:
            self._before[at] = check(rule, _component(self.design, part), self._context(self.design))
        return self._before[at]

    def _is_new(self, after: Check) -> bool:
        before = self._check_before(after.rule, after.component)
        if before.outcome != after.outcome or len(before.failing) < len(after.failing):
            return True
        return after.outcome == "not assessed" and before.says != after.says


def _component(design: Design, name: str) -> Component:
    found = design.specs[name]
    assert isinstance(found, Component)
    return found


def _tells(after: Check) -> bool:
    """Whether a check draws the eye: to a finding, to what is not assessed, or to a place that is still to be drawn."""
    return after.outcome in ("finding", "not assessed") or (
        after.outcome == "not applicable" and TO_DRAW in after.says
    )


def _has_no_more_left(before: Check, after: Check) -> bool:
    """Whether no comparison of a check has more left of its limit than it had, and none is gone."""
    if before.judgement is None or after.judgement is None:
        return False
    was, now = before.judgement.every, after.judgement.every
    return len(now) >= len(was) and all(
        other.says == one.says
        if one.margin is None or other.margin is None
        else other.margin <= one.margin + _EPSILON
        for one, other in zip(was, now, strict=False)
    )


def _changed(table: Any, path: tuple[str | int, ...], way: Way, to: str) -> Any:
    """A copy of a table in which what stands at a path is left out, cut to one entry or set to a word."""
    copied = type(table)(table, table.where)
    step, rest = path[0], path[1:]
    if rest:
        copied[step] = _changed(table[step], rest, way, to)
    elif way == "removed":
        del copied[step]
    elif way == "shortened":
        inner = table[step]
        copied[step] = Table({to: inner[to]}, inner.where)
    else:
        copied[step] = Leaf({"true": True, "false": False}.get(to, to), table[step].where)
    return copied


def _lists(table: Table, general_key: str, key: str) -> Iterator[tuple[str, str, tuple[str, ...]]]:
    """The tables of several entries in which a value stands: in general, here, and their entries."""
    here: Any = table
    path, named = key.split("."), general_key.split(".")
    for depth, step in enumerate(path):
        if depth and named[depth + 1] == "*" and isinstance(here, Table) and len(here) > 1:
            yield ".".join(named[: depth + 1]), ".".join(path[:depth]), tuple(here)
        if "[" in step:  # an array of tables has no names
            return
        here = here[step]


def _other_words(spec: Spec, key: str) -> tuple[str, ...]:
    """The other words that a key may hold, where it holds one chosen from a list, or a yes or no."""
    value: Any = spec
    declared: Any = None
    for step in steps_of_key(key):
        if isinstance(value, BaseModel):
            declared = type(value).model_fields[str(step)].annotation
            value = getattr(value, str(step))
        else:
            value = value[step]
    if not isinstance(value, Stated):
        return ()
    said = str(value.value).lower() if isinstance(value.value, bool) else str(value.value)
    return tuple(word for word in declared_words(declared) if word != said)


def main() -> int:
    reader = argparse.ArgumentParser(description=__doc__)
    reader.add_argument("--sample", type=int, default=0, help="so many of them, drawn with the seed")
    reader.add_argument("--seed", type=int, default=16)
    reader.add_argument("--rule", default="", help="only those of one rule")
    reader.add_argument("--every", action="store_true", help="print what is told as well, and by what")
    add_part(reader)
    given = reader.parse_args()
    bench = Bench()
    tried = [one for one in bench.omissions if given.rule in ("", one.rule)]
    if given.sample:
        tried = random.Random(given.seed).sample(tried, given.sample)
    tried = share_of(tried, given.part)
    told: Counter[str] = Counter()
    wrong, seen = 0, set[tuple[str, str]]()
    rows_met = {
        (one.rule, row) for one in tried for row in promised()[one.rule].open if fnmatchcase(one.row, row)
    }
    for number, one in enumerate(tried):
        by = bench.told_by(one)
        told[by.partition(",")[0].partition(" on ")[0]] += 1
        if given.every:
            print(f"{by or 'NOTHING'} | {one}", flush=True)
        if not by:
            row = promised()[one.rule].listing(one.row)
            seen.add((one.rule, row))
            wrong += not row
            if not row:
                print(f"told by nothing, and not listed as open: {one}", flush=True)
        if number % 200 == 0:
            print(f"{number} of {len(tried)}", file=sys.stderr, flush=True)
    print(f"{len(tried)} omissions: {dict(told.most_common())}")
    if len(tried) == len(bench.omissions):
        for rule, promise in promised().items():
            for row in promise.open:
                if not names_a_key(row, bench.loaded.kinds):
                    wrong += 1
                    print(f"listed as open, and no kind has such a key: {rule}: {row}")
                elif (rule, row) in rows_met and (rule, row) not in seen:
                    wrong += 1
                    print(f"listed as open, and told: {rule}: {row}")
    return int(wrong > 0)


if __name__ == "__main__":
    raise SystemExit(main())
