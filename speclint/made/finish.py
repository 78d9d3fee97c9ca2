"""The finish size of the last part to be machined: the one that leaves the best worst margin beside its measured mates.

The size is sought over all that the tolerances of the drawings and an interference can ask, by golden section (W. Press
and others, Numerical Recipes, 3rd ed., 2007, section 10.2), and proved by running every rule of the pair again with it.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from functools import cache, partial

from msgspec import Struct

from speclint.errors import replace
from speclint.made.alike import hindrances
from speclint.made.design_as_made import made_to
from speclint.made.judging import Bench
from speclint.made.pairing import Paired, Place, Tried, deciding_of, judged_there, measured_places
from speclint.made.rework import host_key
from speclint.quantities import Measure, read, units
from speclint.rules import greatest_place
from speclint.specs import Component, Link, MadePart, quantities_of, restated

#: A size machined to suit its mate is held to this share of the width of its drawn limits, either way: common practice.
_SHARE = 1 / 8
_MICROMETRE = 1e-6  # m: to which a finish size is stated; common practice
#: The interference or clearance of most fits is less than this share of the diameter: common practice.
_OF_DIAMETER = 1e-3
#: A rule whose margin changes less than this over all the sizes looked at is not about the fit: common practice.
_TOLD_APART = 0.05
_LOOKED_AT = 8  # intervals in one of which the best lies, before golden section closes in


class FinishSize(Struct, frozen=True):
    """A size to which a part is machined for a place: proved where ``proof`` may stand.

    ``part`` is the measured part that has metal left, or a mate where that is machined to suit the part of the proof;
    None for one that is still to be made. ``now`` is the size as measured, or as drawn.
    """

    part: MadePart | None
    key: str
    now: Measure
    then: Measure
    proof: Tried


def finish_sizes(bench: Bench, paired: Paired, within: float | None = None) -> tuple[FinishSize, ...]:
    """For each empty place the finish sizes of the parts left over, or of the mates there, that have metal; where none
    suits, of a new part.

    ``within`` is how closely the machine holds the size, either way [m]; where it is None, an eighth of the width of
    the drawn limits. No size is given where neither is known, nor where the kind names no size that goes into a mate.
    """
    design = bench.drawn.design
    assert design is not None
    found: list[FinishSize] = []
    for place in paired.empty:
        there = (one for one in paired.tried if one.place.spec.id == place.spec.id)
        some = frozenset(check.order for one in there for check in one.measured) or None
        owns = ((part, made_to(part, design)) for part in paired.left_over)
        alike = [part for part, own in owns if own is not None and not hindrances(own, place.spec)]
        sizes = [
            one for part in alike for one in _sizes(bench, place, part, within, some) if one.proof.may_stand
        ]
        sizes += [
            one
            for part in alike
            for one in _mate_sizes(bench, place, part, within, some)
            if one.proof.may_stand
        ]
        found += sizes or _sizes(bench, place, None, within, some)
    return tuple(found)


class _Sought(Struct, frozen=True):
    """A size of a part, measured or to be made, beside its mates: how grave the rules find it at a value."""

    bench: Bench
    place: Place
    part: MadePart | None
    key: str
    hold: float
    mate: str = ""

    @property
    def name(self) -> str:
        """The spec whose size is sought: that of the place, or of a mate."""
        return self.mate or self.place.spec.id

    def drawn(self) -> Component:
        """As its drawing states it."""
        design = self.bench.drawn.design
        assert design is not None
        found = design.specs[self.name]
        assert isinstance(found, Component)
        return found

    def specs(self) -> dict[str, Component]:
        own = {self.place.spec.id: self.part} if self.part is not None else {}
        return self.bench.standing({**self.place.mates, **own})

    def at(self, middle: float, some: frozenset[tuple[str, str]] | None = None) -> tuple[Measure, Tried]:
        """The size as it would be stated, and the checks with it: all, or some."""
        specs, drawn = self.specs(), self.drawn()
        then = _stated(middle, self.hold, drawn.under(self.key))
        specs[self.name] = restated(specs.get(self.name, drawn), {self.key: then})
        sought = frozenset({then.where})
        own = frozenset(measured_places(specs[self.place.spec.id])) if self.mate else sought
        of_mates = sought if self.mate else frozenset()
        tried = judged_there(self.bench, self.place, specs, self.part, own, some, of_mates)
        return then, tried

    def score(self, some: frozenset[tuple[str, str]], middle: float) -> float:
        """The least margin of some checks with the size at a value."""
        margin = self.at(middle, some)[1].margin
        return -math.inf if margin is None else margin


def _sizes(
    bench: Bench,
    place: Place,
    part: MadePart | None,
    within: float | None,
    known: frozenset[tuple[str, str]] | None,
) -> Iterator[FinishSize]:
    """The finish size of the first size of a part that goes into a measured size of a mate.

    ``known`` are the checks that took measured sizes of both where that has been seen, by component and rule.
    """
    for key, aim, bore in _fitted(bench, place):
        drawn = place.spec.under(key)
        if not isinstance(drawn, Measure):
            continue
        held = _held(drawn)
        sought = _Sought(bench, place, part, key, held if within is None else within)
        now = sought.specs().get(place.spec.id, place.spec).under(key)
        if sought.hold <= 0 or not isinstance(now, Measure):
            continue
        room = _room(drawn, aim, bore)
        if part is not None:
            room = _metal(room, now, quantities_of(place.spec)[key].way, sought.hold)
        if (found := _best(sought, part, now, room, known)) is not None:
            yield found
            return


def _best(
    sought: _Sought,
    part: MadePart | None,
    now: Measure,
    room: tuple[float, float],
    known: frozenset[tuple[str, str]] | None,
) -> FinishSize | None:
    """The size in a room that leaves the best worst margin; None where there is no room, or no rule that decides.

    It is a whole number of micrometres within the room, so that no size asks for metal that is not there.
    """
    low, high = math.ceil(_micrometres(room[0])), math.floor(_micrometres(room[1]))
    if low >= high:
        return None
    least, greatest = low * _MICROMETRE, high * _MICROMETRE
    looked_at = [sought.at(size, known)[1] for size in (least, (least + greatest) / 2, greatest)]
    deciding = deciding_of(looked_at, _TOLD_APART)
    some = frozenset(one.order for one in looked_at[1].measured if one.rule.name in deciding)
    if not some:
        return None
    score = cache(partial(sought.score, some))
    middle = round(greatest_place(score, least, greatest, _LOOKED_AT, within=_MICROMETRE) / _MICROMETRE)
    near = range(max(low, middle - 1), min(high, middle + 1) + 1)
    then, proof = sought.at(max((one * _MICROMETRE for one in near), key=score))
    return FinishSize(part, sought.key, now, then, replace(proof, deciding=deciding))


def _mate_sizes(
    bench: Bench,
    place: Place,
    part: MadePart,
    within: float | None,
    known: frozenset[tuple[str, str]] | None,
) -> Iterator[FinishSize]:
    """The finish size of a measured mate with metal left, such as a bore that can be opened, for a measured part."""
    specs = bench.standing({**place.mates, place.spec.id: part})
    for fit in place.spec.hosts:
        link = getattr(place.spec, fit.link)
        if not isinstance(link, Link) or link.id not in place.mates:
            continue
        key = host_key(place.spec, fit.of)
        sought = _Sought(bench, place, part, key, 0.0, link.id)
        drawn, now = sought.drawn().under(key), specs[link.id].under(key)
        aim, size = place.spec.under(fit.key), specs[place.spec.id].under(fit.key)
        if not all(isinstance(one, Measure) for one in (drawn, now, aim, size)):
            continue
        assert isinstance(drawn, Measure)
        assert isinstance(now, Measure)
        assert isinstance(aim, Measure)
        assert isinstance(size, Measure)
        held = _held(drawn)
        sought = replace(sought, hold=held if within is None else within)
        way = quantities_of(sought.drawn())[key].way
        if sought.hold <= 0 or size.provenance != "as made":
            continue
        room = _metal(_room(drawn, aim, size), now, way, sought.hold)
        if (found := _best(sought, place.mates[link.id], now, room, known)) is not None:
            yield found
            return


def _fitted(bench: Bench, place: Place) -> Iterator[tuple[str, Measure, Measure]]:
    """The sizes of a part that go into a measured size of a mate, with that as drawn and as measured."""
    design, specs = bench.drawn.design, bench.standing(place.mates)
    assert design is not None
    for fit in place.spec.hosts:
        link = getattr(place.spec, fit.link)
        if isinstance(link, Link) and link.id in specs:
            key = host_key(place.spec, fit.of)
            aim, bore = design.specs[link.id].under(key), specs[link.id].under(key)
            if isinstance(aim, Measure) and isinstance(bore, Measure) and bore.provenance == "as made":
                yield fit.key, aim, bore


def _room(drawn: Measure, aim: Measure, bore: Measure) -> tuple[float, float]:
    """Where the best size can lie: about the fit of the drawing, as far as tolerances and interference reach."""
    middle = _middle(drawn) + _middle(bore) - _middle(aim)
    reach = drawn.high - drawn.low + aim.high - aim.low + _OF_DIAMETER * middle
    return middle - reach, middle + reach


def _metal(room: tuple[float, float], now: Measure, way: int, hold: float) -> tuple[float, float]:
    """What of it can be had by taking metal off: nothing where the first end is not below the other."""
    low, high = room
    if way < 0:
        return low, min(high, now.low - hold)
    return (max(low, now.high + hold), high) if way > 0 else (low, low)


def _middle(one: Measure) -> float:
    return (one.low + one.high) / 2


def _held(drawn: Measure) -> float:
    """How closely a size is held, m: a share of what is drawn, in whole micrometres."""
    return math.floor(_micrometres((drawn.high - drawn.low) * _SHARE)) * _MICROMETRE


def _micrometres(size: float) -> float:
    """A size in m as micrometres, without what floats add to a whole number of them."""
    return round(size / _MICROMETRE, 6)


def _stated(middle: float, hold: float, drawn: object) -> Measure:
    """A size with its limits either way as a drawing states it, at the place of the drawn one."""
    assert isinstance(drawn, Measure)
    factor = units.factor(drawn.unit, "length")
    size = round(middle / _MICROMETRE) * _MICROMETRE / factor
    text = f"{size:.9g} {drawn.unit} ±{hold / factor:.6g}"
    return replace(read(text, "length", "positive", drawn.where), note="finish size")
