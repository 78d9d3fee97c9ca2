"""Which measured part into which place: every pair judged by the rules, and the pairs with the best worst margin."""

from __future__ import annotations

import math
from collections import defaultdict
from collections.abc import Callable, Iterable, Iterator
from functools import cached_property

from msgspec import Struct

from speclint.checking import Assessment, Check
from speclint.errors import Location, replace
from speclint.made.alike import differences, hindrances
from speclint.made.assignment import best_worst
from speclint.made.design_as_made import made_parts, made_to
from speclint.made.judgement import Pair
from speclint.made.judging import Bench
from speclint.quantities import Measure
from speclint.repository import Design
from speclint.specs import Component, Link, MadePart, leaves


class Place(Struct, frozen=True):
    """Where a part goes: the spec that it stands for there, and the measured mates by the specs that they stand for."""

    spec: Component
    mates: dict[str, MadePart]

    @property
    def called(self) -> str:
        """The place by the mates that stand there."""
        return " and ".join(one.id for one in self.mates.values())


class Tried(Struct, frozen=True, dict=True):
    """A part, measured or with a size that it is to get, in a place: the checks that rest on it and on its mates.

    ``measured`` are those that took a measured size of both. ``part`` is None for one that is still to be made.
    ``deciding`` are the names of the rules by which pairs differ; where it is empty, all that compare numbers. ``own``
    are the keys of which the part's own drawing states another value than that of the place: it keeps its own.
    """

    part: MadePart | None
    place: Place
    pairs: tuple[Pair, ...]
    measured: tuple[Check, ...]
    deciding: frozenset[str] = frozenset()
    own: tuple[str, ...] = ()

    @property
    def failing(self) -> tuple[Check, ...]:
        """The checks that stand in the way here.

        Of those that took a measured size of both every one: that the limits of the drawings allow worse is no help to
        two parts that are there. Of the others those that do so more than as drawn, or that cannot be made here.
        """
        return tuple(pair.made for pair in self.pairs if self._fails(pair))

    def _fails(self, pair: Pair) -> bool:
        if pair.made in self.measured:
            return pair.made.stands_in_the_way is not None
        return pair.fails or _unknown(pair)

    @cached_property
    def governing(self) -> Check | None:
        """The check that decides with the least margin; None where none took a measured size of both."""
        known = [one for one in self.measured if margin_of(one) is not None]
        known = [one for one in known if not self.deciding or one.rule.name in self.deciding]
        return min(known, key=lambda one: (margin_of(one) or 0.0, one.order), default=None)

    @property
    def margin(self) -> float | None:
        """The least margin, of the rules that decide, as a share of the limit; None where no rule does."""
        return margin_of(self.governing) if self.governing is not None else None

    @property
    def may_stand(self) -> bool:
        """Whether a rule tells that the two go together, and no check stands in the way."""
        return self.margin is not None and not self.failing


def margin_of(check: Check) -> float | None:
    """What a check leaves before the nearer limit, as a share of it; None where it compares no numbers."""
    found = check.judgement.margin if check.judgement is not None else None
    return found if found is not None and math.isfinite(found) else None


def _unknown(pair: Pair) -> bool:
    unknown = pair.made.outcome == "not assessed" and pair.drawn.outcome != "not assessed"
    return unknown or bool(pair.made.could_not_run)


#: A rule whose margin differs less than this from pair to pair does not tell one from the other: common practice.
_TOLD_APART = 0.005


def deciding_of(some: Iterable[Tried], told_apart: float = _TOLD_APART) -> frozenset[str]:
    """The names of the rules whose margin differs among some pairs by more than a share; none where no rule's does."""
    margins: dict[str, list[float]] = defaultdict(list)
    for one in some:
        for check in one.measured:
            if (margin := margin_of(check)) is not None:
                margins[check.rule.name].append(margin)
    return frozenset(name for name, found in margins.items() if max(found) - min(found) > told_apart)


class Paired(Struct, frozen=True):
    """What was found: the pairs, the parts left over, the empty places, and every pair that was tried.

    ``not_tried`` are parts and places whose drawings differ in links, places or hand, with the keys in which they do.
    ``mates_left_out`` are specs of which several parts were made, and none is said to be fitted.
    """

    pairs: tuple[Tried, ...]
    left_over: tuple[MadePart, ...]
    empty: tuple[Place, ...]
    tried: tuple[Tried, ...]
    not_tried: tuple[tuple[MadePart, Place, tuple[str, ...]], ...]
    mates_left_out: tuple[str, ...]


def pair(bench: Bench, kind: str, mates: str, told: Callable[[str], None] | None = None) -> Paired:
    """Pair the parts made of a kind with the parts made of the kind that they go into, or that goes into them.

    A part may stand in the place of every spec of its kind, with all that its own drawing states, unless the two differ
    in links, in places or in what is of one hand. As many are paired as can be without a
    check that fails (:attr:`Tried.failing`); of these ways, the one with the best worst margin is taken, then with
    the best sum; a rule whose margin is the same in every pair does not decide. Whatever else there is in the design
    stands as drawn.

    :raises SettingsError: where scipy is not installed.
    """
    design = bench.drawn.design
    assert design is not None
    parts = [one for one in made_parts(design) if _is(made_to(one, design), kind)]
    places = list(_places(bench, design, kind, mates))
    tried: dict[tuple[int, int], Tried] = {}
    not_tried = []
    for row, part in enumerate(parts):
        own = made_to(part, design)
        assert own is not None  # it is of the kind
        if told is not None and places:
            told(part.id)
        for column, place in enumerate(places):
            if hindered := hindrances(own, place.spec):
                not_tried.append((part, place, hindered))
            else:
                tried[row, column] = stood(bench, place, part)
    deciding = deciding_of(tried.values())
    tried = {at: replace(one, deciding=deciding) for at, one in tried.items()}
    margins = [
        [_margin(tried.get((row, column))) for column in range(len(places))] for row in range(len(parts))
    ]
    chosen = best_worst(margins)
    rows, columns = {row for row, _ in chosen}, {column for _, column in chosen}
    return Paired(
        tuple(tried[one] for one in chosen),
        tuple(one for row, one in enumerate(parts) if row not in rows),
        tuple(one for column, one in enumerate(places) if column not in columns),
        tuple(tried.values()),
        tuple(not_tried),
        tuple(_left_out(bench, design, mates)),
    )


def stood(bench: Bench, place: Place, part: MadePart) -> Tried:
    """A measured part in a place."""
    specs = bench.standing({place.spec.id: part, **place.mates})
    tried = judged_there(bench, place, specs, part, frozenset(measured_places(specs[place.spec.id])))
    assert bench.drawn.design is not None
    own = made_to(part, bench.drawn.design)
    assert own is not None  # it is of the kind of the place
    return replace(tried, own=differences(own, place.spec))


def judged_there(
    bench: Bench,
    place: Place,
    specs: dict[str, Component],
    part: MadePart | None,
    own: frozenset[Location],
    some: frozenset[tuple[str, str]] | None = None,
    of_mates: frozenset[Location] = frozenset(),
) -> Tried:
    """The checks that rest on what stands in a place, as the specs state it; ``own`` are the places of its sizes.

    ``of_mates`` are the places of sizes of mates that are still to be machined. All checks that consulted the part and
    a mate are made, or some of them by component and rule.
    """
    others = {*of_mates, *(where for name in place.mates for where in measured_places(specs[name]))}
    trial = bench.trial(specs, keep=part is not None)
    pairs = [
        Pair(one, trial.again(one))
        for one in bench.drawn.checks
        if _rests_on_both(one, place) and (some is None or one.order in some)
    ]
    measured = [one.made for one in pairs if _took(one.made, own) and _took(one.made, others)]
    return Tried(part, place, tuple(pairs), tuple(measured))


def bench_of(drawn: Assessment) -> Bench:
    """The bench on which the parts of a design are paired."""
    if drawn.design is None:
        raise ValueError("nothing could be read to pair parts as made")
    return Bench.of(drawn)


def _places(bench: Bench, design: Design, kind: str, mates: str) -> Iterator[Place]:
    """The specs of a kind that are linked with parts made of another, whichever way the link leads."""
    for _, spec in sorted(design.specs.items()):
        if isinstance(spec, Component) and _is(spec, kind):
            beside = sorted(one.id for one in _linked(design, spec) if _is(one, mates))
            if found := {name: bench.fitted[name] for name in beside if name in bench.fitted}:
                yield Place(spec, found)


def _linked(design: Design, spec: Component) -> Iterator[Component]:
    links = (leaf.value for leaf in leaves(spec) if isinstance(leaf.value, Link))
    found = {one.id: one for one in map(design.follow, links) if isinstance(one, Component)}
    yield from (found | {one.id: one for one in design.linking_to(spec)}).values()


def _left_out(bench: Bench, design: Design, kind: str) -> Iterator[str]:
    specs = (made_to(one, design) for one in made_parts(design))
    names = {one.id for one in specs if one is not None and _is(one, kind)}
    yield from sorted(names - set(bench.fitted))


def _is(spec: Component | None, kind: str) -> bool:
    return spec is not None and not isinstance(spec, MadePart) and spec.is_one_of((kind,))


def _rests_on_both(check: Check, place: Place) -> bool:
    ids = check.consulted.ids
    reviews = check.rule.reviews or check.kind == MadePart.kind
    return not reviews and place.spec.id in ids and any(name in ids for name in place.mates)


def measured_places(spec: Component) -> Iterator[Location]:
    """The places of the sizes of a spec that stand as measured."""
    for leaf in leaves(spec):
        if isinstance(leaf.value, Measure) and leaf.value.provenance == "as made":
            yield leaf.value.where


def _took(check: Check, places: frozenset[Location] | set[Location]) -> bool:
    return any(step.where in places for step in check.steps)


def _margin(tried: Tried | None) -> float:
    if tried is None or not tried.may_stand or tried.margin is None:
        return -math.inf
    return tried.margin
