"""The order in which the parts of a block go in, as their sizes force it."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from heapq import heapify, heappop, heappush
from typing import Any

from speclint.specs import Cam, Component, CylinderBlock
from speclint_assembly.inputs import forces_of_cylinders as cylinders, forces_of_valves as valves
from speclint_assembly.inputs.known import Force, Known

#: What forces a part of each kind before others, the kinds in the order in which they go in where nothing forces them.
_FORCES: Mapping[str, Callable[[Any, Known], Iterator[Force]]] = {
    "valve-seat": valves.of_seat,
    "cylinder-liner": cylinders.of_liner,
    "bolted-joint": cylinders.of_joint,
    "poppet-valve": valves.of_valve,
    "valve-spindle": valves.of_spindle,
    "piston-ring": cylinders.of_ring,
    "stuffing-box": cylinders.of_box,
    "piston-rod": cylinders.of_rod,
    "piston": cylinders.of_piston,
    "cylinder-cover": cylinders.of_cover,
    "tappet": valves.of_tappet,
    "cam": valves.of_cam,
    "steam-pipe": cylinders.of_pipe,
}
_RANKS = {kind: rank for rank, kind in enumerate(_FORCES)}


def parts_of(block: CylinderBlock, known: Known) -> dict[str, Component]:
    """The parts of metal that belong to a block, directly or by way of others, by their ids; without the block."""
    found: dict[str, Component] = {}
    waiting: list[Component] = [block]
    while waiting:
        one = waiting.pop()
        above: list[Component] = [*known.belonging_to(one, Component)]
        if isinstance(one, Cam):
            shafts = known.led_to(f"shaft of {one.id}", one.turns_on)
            above += shafts
        for part in above:
            if part.of_metal and part.id not in found and part is not block:
                found[part.id] = part
                waiting.append(part)
    return dict(sorted(found.items()))


def forces_among(parts: Mapping[str, Component], known: Known) -> tuple[Force, ...]:
    """What forces one of some parts before another, each pair of parts once."""
    found: dict[tuple[str, str], Force] = {}
    for part in parts.values():
        for kind, of in _FORCES.items():
            if part.is_one_of([kind]):
                for force in of(part, known):
                    if force.first in parts and force.then in parts:
                        found.setdefault((force.first, force.then), force)
    return tuple(found.values())


def in_order(parts: Mapping[str, Component], forces: Iterable[Force]) -> list[str]:
    """The parts that sizes force into an order, earliest first; those of a loop, and all after them, are left out."""
    waits: dict[str, set[str]] = {}
    frees: dict[str, set[str]] = {}
    for force in forces:
        waits.setdefault(force.then, set()).add(force.first)
        waits.setdefault(force.first, set())
        frees.setdefault(force.first, set()).add(force.then)
    ready = [(_rank(parts[name]), name) for name, before in waits.items() if not before]
    heapify(ready)
    order: list[str] = []
    while ready:
        _, name = heappop(ready)
        order.append(name)
        for then in frees.get(name, ()):
            waits[then].discard(name)
            if not waits[then]:
                heappush(ready, (_rank(parts[then]), then))
    return order


def loop_in(forces: Iterable[Force]) -> list[Force]:
    """The forces of one loop, in each of which the part must go in before the next; none where there is no loop."""
    after: dict[str, list[Force]] = {}
    for force in forces:
        after.setdefault(force.first, []).append(force)
    for start in sorted(after):
        if found := _way_back(start, after):
            return found
    return []


def _way_back(start: str, after: Mapping[str, list[Force]]) -> list[Force] | None:
    """The shortest way from a part back to itself; None where there is none."""
    ways: list[list[Force]] = [[force] for force in after[start]]
    seen: set[str] = set()
    while ways:
        way = ways.pop(0)
        last = way[-1].then
        if last == start:
            return way
        if last not in seen:
            seen.add(last)
            ways += [[*way, force] for force in after.get(last, ())]
    return None


def after_all(names: Iterable[str], forces: Iterable[Force]) -> dict[str, Force]:
    """All parts that go in after some others, and so come out before them, each with the force that says so."""
    known, wanted = tuple(forces), set(names)
    found: dict[str, Force] = {}
    waiting = sorted(wanted)
    while waiting:
        one = waiting.pop()
        for force in known:
            if force.first == one and force.then not in found and force.then not in wanted:
                found[force.then] = force
                waiting.append(force.then)
    return found


def _rank(part: Component) -> int:
    return next((rank for kind, rank in _RANKS.items() if part.is_one_of([kind])), len(_RANKS))
