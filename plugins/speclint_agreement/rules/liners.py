"""A liner in its bore: the collar in its recess, cold and hot, and the ports that meet."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import COMMON_PRACTICE, Grade, Limit, Pair, Rule, Sheet, Worked, agreement, worked
from speclint.handbook.fits import DRAWING_TEMPERATURE, SHRINK_FIT, size_when_hot
from speclint.specs import BlockPort, CylinderBlock, CylinderLiner, LinerPort, LoadCase
from speclint_agreement.formulae.liners import size_of_port


def _collars(liner: CylinderLiner, case: LoadCase, sheet: Sheet) -> Iterator[Pair]:
    """The outside of the collar against the recess of its bore, as they are made and at their own temperatures."""
    if not _is_placed(liner, sheet):
        return
    block = sheet.follow(liner.housed_in)
    recess = sheet.entry(block.bores, liner.in_bore, f"the bores of {block.id}").recess_diameter
    collar = liner.collar.diameter
    if not (sheet.is_stated("collar", collar) and sheet.is_stated("recess", recess)):
        return
    yield Pair(collar, recess, "at most", name="cold")
    hot = [
        _hot(symbol, part, sheet.take(symbol, size), case, sheet)
        for symbol, part, size in (("D_c", liner, collar), ("D_r", block, recess))
    ]
    yield Pair(worked(hot[0], collar), worked(hot[1], recess), "at most", name="hot")


def _is_placed(liner: CylinderLiner, sheet: Sheet) -> bool:
    return sheet.is_stated("block", liner.housed_in) and sheet.is_stated("bore", liner.in_bore)


def _hot(
    symbol: str, part: CylinderLiner | CylinderBlock, cold: float, case: LoadCase, sheet: Sheet
) -> float:
    at = sheet.take(f"T_{part.kind}", case.temperature_of(part))
    alpha = sheet.look_up(f"α_{part.kind}", sheet.material_of(part).expansion, of=part, at=at)
    return sheet.work(f"{symbol}h", size_when_hot, L=cold, alpha=alpha, T=at, T_ref=DRAWING_TEMPERATURE)


def _ports(liner: CylinderLiner, sheet: Sheet) -> Iterator[Pair]:
    """Each port against that of the block which it meets: its width and height, and the bore at whose end it is."""
    if not sheet.is_stated("block", liner.housed_in):
        return
    block = sheet.follow(liner.housed_in)
    for name, port in liner.ports.items():
        if not sheet.is_stated(f"port that {name} meets", port.matches):
            continue
        meets = sheet.entry(block.ports, port.matches, f"the ports of {block.id}")
        yield from _sizes(name, port, meets, sheet)
        placed = sheet.is_stated("bore", liner.in_bore)
        if not (placed and sheet.is_stated(f"end of port {name}", meets.of_end)):
            continue
        end = sheet.entry(block.ends, meets.of_end, f"the ends of {block.id}")
        if sheet.is_stated(f"bore of end {name}", end.of_bore):
            of_end = Worked(
                sheet.read(f"bore of end {name}", end.of_bore), (end.of_bore.where, meets.of_end.where)
            )
            yield Pair(liner.in_bore, of_end, name=name)


def _sizes(name: str, port: LinerPort, meets: BlockPort, sheet: Sheet) -> Iterator[Pair]:
    """Width and height of a liner's port against the most by those of the block's."""
    for what, own, other in (("width", port.width, meets.width), ("height", port.height, meets.height)):
        if sheet.is_stated(f"{what} of {name}", own) and sheet.is_stated(f"{what} it meets", other):
            size = sheet.take_nominal(f"{what[0]}_b", other)
            most = sheet.work(f"{what[0]}_m", size_of_port, k=sheet.limit("wider"), s=size)
            nominal = sheet.take_nominal(f"{what[0]}_l", own)
            yield Pair(worked(nominal, own), worked(most, other), "at most", name=f"{what} of {name}")


collar_enters: Rule = agreement(
    "liner.collar-enters",
    title="The collar of a liner is no wider than the recess that takes it, as made and hot",
    on=CylinderLiner,
    pairs=_collars,
    within="",
    cases=("warming", "starting", "running", "drifting", "cooling"),
    cites=[*SHRINK_FIT],
    grade=Grade.NONCONFORMITY,
    why="a collar that grows more than the block on first steam is crushed in its recess, and cracks off",
    leaves_out="scale and jointing in the recess, and a collar or recess out of round",
    against=("break under load",),
)

port_of_its_bore: Rule = agreement(
    "liner.port-of-its-bore",
    title="Each port of a liner meets a port of the block at an end of the liner's own bore, and is at most 1.1 times "
    "as wide and as high",
    on=CylinderLiner,
    pairs=_ports,
    within="",
    edition=2,
    limits=[
        Limit("wider", "1.1", "ratio", COMMON_PRACTICE, "greatest size of a liner's port over the block's")
    ],
    grade=Grade.NONCONFORMITY,
    why="ports matched by name alone meet on paper, though the block has that port in the neighbouring bore; one "
    "cut for another port opens the liner to the joint behind it",
    leaves_out="limits of the sizes; how far the two openings cover each other (liner.port-register)",
)

RULES = (collar_enters, port_of_its_bore)
