"""What clears the rules that fail on a part as made: metal comes off, not on, or the mate is made to match.

Every rework is proved: all rules that rest on the part, and on the mate where that is made to match, are run again with
it, and none fails that does not fail as drawn.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from itertools import islice
from typing import TYPE_CHECKING

from speclint.checking import Check, reworks
from speclint.errors import replace
from speclint.made.dimensions import DimensionMade
from speclint.made.judgement import Change, Pair, PartMade, Rework
from speclint.quantities import Measure, read
from speclint.specs import Component, Link, MadePart, NotStated, Stated, as_range, quantities_of, restated

if TYPE_CHECKING:
    from speclint.made.judging import Bench
    from speclint.made.trial import Trial

Specs = Mapping[str, Component]


def reworks_of(part: PartMade, specs: Specs, bench: Bench, trial: Trial) -> tuple[Rework, ...]:
    """The reworks that clear every rule that fails on a part, the least machining first."""
    assert part.drawn is not None  # or nothing was checked
    single = (*_to_the_drawing(part, specs), *_further(part, specs, trial), *_matching(part, specs, bench))
    found = tuple(rework for rework, other in single if _clears(part, specs, other, bench, trial))
    if found:
        return found
    double = _of_two(part, specs, bench, trial)
    return tuple(islice((one for one, other in double if _clears(part, specs, other, bench, trial)), _PAIRS))


#: So many reworks of two sizes are given, and so many first sizes are tried for each rule that fails: common practice.
_PAIRS, _FIRST = 3, 4


def _clears(part: PartMade, specs: Specs, other: Specs, bench: Bench, before: Trial) -> bool:
    """Whether no rule that rests on the part, or on what else is changed, fails more than as drawn."""
    trial = bench.trial(other, before)
    mates = {name for name, spec in other.items() if spec is not specs.get(name)}
    own = {pair.drawn.order for pair in part.pairs}
    checks = [
        one
        for one in bench.drawn.checks
        if one.order in own
        or (not one.rule.reviews and one.kind != MadePart.kind and one.consulted.ids & mates)
    ]
    failing_first = {pair.made.order for pair in part.pairs if pair.fails}
    beside = {pair.drawn.order: pair.beside for pair in part.pairs}
    ordered = sorted(checks, key=lambda one: one.order not in failing_first)
    return not any(Pair(one, trial.again(one), beside.get(one.order)).fails for one in ordered)


def _to_the_drawing(part: PartMade, specs: Specs) -> Iterator[tuple[Rework, Specs]]:
    """Every dimension that is out with metal left on it, machined to the limits of the drawing."""
    assert part.drawn is not None
    ways = _ways(part.drawn)
    some = [one for one in part.departures if _has_metal(one, ways.get(one.key, 0))]
    if not some:
        return
    as_drawn = {one.key: _drawn(one) for one in some}
    changes = tuple(_change(part.drawn.id, one, as_drawn[one.key].text) for one in some)
    spec = restated(specs[part.drawn.id], as_drawn)
    yield Rework("machine to the drawing", changes), {**specs, part.drawn.id: spec}


def _has_metal(one: DimensionMade, way: int) -> bool:
    """Whether machining takes the whole of a size into its limits."""
    drawn = _drawn(one)
    return one.size.greatest < drawn.high if way > 0 else way < 0 and one.size.least > drawn.low


def _drawn(one: DimensionMade) -> Measure:
    """A size that is out, as it is drawn."""
    assert one.drawn is not None  # or it would not be out
    return one.drawn


def _further(part: PartMade, specs: Specs, trial: Trial) -> Iterator[tuple[Rework, Specs]]:
    """A size of the part machined so far as clears one of the rules that fail."""
    assert part.drawn is not None
    own = specs[part.drawn.id]
    made = [pair.made for pair in part.pairs]
    for change, spec in _machined(part.failing, own, _ways(part.drawn), made, trial):
        yield Rework("machine until it conforms", (change,)), {**specs, own.id: spec}


def _machined(
    failing: Iterable[Check],
    own: Component,
    ways: Mapping[str, int],
    made: Sequence[Check],
    trial: Trial,
    *,
    spoiling: bool = False,
) -> Iterator[tuple[Change, Component]]:
    """A size of a part machined so far as clears one of the checks that fail, each once."""
    seen: set[tuple[str, str]] = set()
    for found in failing:
        for remedy in reworks(found, own, ways, made, trial.context, spoiling=spoiling):
            key = remedy.where.key
            now = own.under(key)
            if not isinstance(now, Measure) or (key, remedy.instead) in seen:
                continue
            seen.add((key, remedy.instead))
            value = _as_stated(now, remedy.instead)
            yield Change(own.id, key, remedy.written, remedy.instead), restated(own, {key: value})


def _of_two(part: PartMade, specs: Specs, bench: Bench, before: Trial) -> Iterator[tuple[Rework, Specs]]:
    """Two sizes of the part: one machined so far as clears a rule, another as far as what then fails asks."""
    assert part.drawn is not None
    own, ways = specs[part.drawn.id], _ways(part.drawn)
    made = [pair.made for pair in part.pairs]
    first = _machined(part.failing, own, ways, made, before, spoiling=True)
    tried: set[frozenset[Change]] = set()
    for change, spec in islice(first, _FIRST * len(part.failing)):
        other = {**specs, own.id: spec}
        trial = bench.trial(other, before)
        pairs = [Pair(one.drawn, trial.again(one.drawn), one.beside) for one in part.pairs]
        left = {key: way for key, way in ways.items() if key != change.key}
        made = [one.made for one in pairs]
        for second, both in _machined([one.made for one in pairs if one.fails], spec, left, made, trial):
            if (changes := frozenset((change, second))) not in tried:
                tried.add(changes)
                yield Rework("machine until it conforms", (change, second)), {**specs, own.id: both}


def _matching(part: PartMade, specs: Specs, bench: Bench) -> Iterator[tuple[Rework, Specs]]:
    """A mate that is still to be made, made to match a size that is out: as much greater or less as that is."""
    assert part.drawn is not None
    for one in part.departures:
        for mate, key in _mates(part.drawn, one.key, bench):
            now = mate.under(key)
            if not isinstance(now, Measure):
                continue
            drawn = _drawn(one)
            middle, aim = (one.size.least + one.size.greatest) / 2, (drawn.low + drawn.high) / 2
            by = round((middle - aim) / _MICROMETRE) * _MICROMETRE
            value = as_range(now.low + by, now.high + by, now, now.where)
            change = Change(mate.id, key, now.text, value.text)
            yield (
                Rework("make the mate to match", (change,)),
                {**specs, mate.id: restated(mate, {key: value})},
            )


_MICROMETRE = 1e-6  # m: to which a size is stated at the finest; common practice


def _mates(drawn: Component, key: str, bench: Bench) -> Iterator[tuple[Component, str]]:
    """The parts without one made of them that go into a size of a part, or that it goes into, with their keys."""
    design = bench.drawn.design
    assert design is not None
    for part in design.linking_to(drawn):
        for fit in part.hosts:
            link = getattr(part, fit.link)
            leads = isinstance(link, Link) and link.id == drawn.id
            if leads and part.id not in bench.fitted and host_key(part, fit.of) == key:
                yield part, fit.key
    for fit in drawn.hosts:
        link = getattr(drawn, fit.link)
        host = design.follow(link) if isinstance(link, Link) else None
        if fit.key == key and isinstance(host, Component) and host.id not in bench.fitted:
            yield host, host_key(drawn, fit.of)


def host_key(part: Component, of: str) -> str:
    """The key of the host's size, with the names that the part states put in."""
    named = {name: getattr(part, name) for name in type(part).model_fields if f"{{{name}}}" in of}
    if any(isinstance(one, NotStated) for one in named.values()):
        return ""
    return of.format(**{name: one.value for name, one in named.items() if isinstance(one, Stated)})


def _ways(drawn: Component) -> dict[str, int]:
    """The keys of the sizes that can be machined, each with the sign in which it then goes."""
    return {key: one.way for key, one in quantities_of(drawn).items() if one.way}


def _change(spec: str, one: DimensionMade, then: str) -> Change:
    assert one.band is not None  # or it would not be out
    return Change(spec, one.key, one.band.text, then)


def _as_stated(now: Measure, text: str) -> Measure:
    """A size as a rework states it, in the place of the present one."""
    other = read(text, now.dimension, "any", now.where)
    return replace(other, provenance=now.provenance, tolerance_class=now.tolerance_class, note="after rework")
