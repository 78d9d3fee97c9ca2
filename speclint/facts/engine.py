"""What the engine says for all its blocks: stroke, connecting rod, wheels and gear."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING, Literal, TypeAlias

from speclint.facts.taking import Take
from speclint.quantities import Measure
from speclint.rules import Sheet
from speclint.specs import CylinderBlock, Engine, NotStated, Stated

if TYPE_CHECKING:
    from speclint.specs import Crank

#: The name of a bore, or where a spec gives it; "" for all bores of a block.
Bore: TypeAlias = str | Stated[str] | NotStated


def engine_of(block: CylinderBlock, sheet: Sheet) -> Engine | None:
    """The engine whose cranks name a block; None where none is drawn.

    :raises NotAssessed: where several do.
    """
    found = sheet.belonging_to(block, Engine)
    if len(found) > 1:
        names = " and ".join(one.id for one in found)
        raise sheet.not_assessed(f"the cranks of {names} all name {block.id}", found[1].where)
    return found[0] if found else None


def cranks_of(engine: Engine, block: CylinderBlock, sheet: Sheet) -> Iterator[tuple[str, Crank]]:
    """The cranks of an engine that the cylinders of a block turn, each with the name of its bore.

    A crank that names no bore is that of the only one of the block.
    """
    from speclint.specs import Crank  # only where there is an engine, and its spec with its cranks is read

    for name, crank in sheet.leading_to(block, Crank, engine, "cranks", by="block", called="crank"):
        yield bore_of_crank(name, crank, block, sheet), crank


def bore_of_crank(name: str, crank: Crank, block: CylinderBlock, sheet: Sheet) -> str:
    """The bore of a block whose piston turns a crank: that which it names, else the only one."""
    if sheet.is_stated(f"bore of crank {name}", crank.bore) or len(block.bores) != 1:
        return sheet.read(f"bore of crank {name}", crank.bore)
    return next(iter(block.bores))


def stroke_of(block: CylinderBlock, sheet: Sheet, bore: Bore = "") -> Measure | NotStated:
    """The stroke of the piston in a bore, to be taken: that of its crank, else of the engine, else of the block.

    Without ``bore`` that of all bores of the block.

    :raises NotAssessed: where no bore is named and a crank of several has a stroke of its own.
    """
    return _of_crank("stroke", block, sheet, bore)


def connecting_rod_of(block: CylinderBlock, sheet: Sheet, bore: Bore = "") -> Measure | NotStated:
    """The length of the connecting rod of a bore, to be taken; as of the stroke."""
    return _of_crank("connecting_rod_length", block, sheet, bore)


def new_wheel(block: CylinderBlock, sheet: Sheet) -> Measure | NotStated:
    """The diameter of the driving wheels with new tyres, to be taken: of the engine, else of the block."""
    return _of_engine("driving_wheel_diameter", block, sheet)


def worn_wheel(block: CylinderBlock, sheet: Sheet) -> Measure | NotStated:
    """The diameter of the driving wheels with tyres worn to their limit, to be taken: of engine, else of block."""
    return _of_engine("least_wheel_diameter", block, sheet)


def crank_gear(block: CylinderBlock, sheet: Sheet) -> Measure | NotStated:
    """Turns of the crank for one of the wheels, to be taken: of the engine, else of the block; or not stated."""
    return _of_engine("gear_ratio", block, sheet)


def turns_of_crank(block: CylinderBlock, sheet: Sheet, take: Take) -> float:
    """Turns of the crank for one of the wheels: as geared, else 1."""
    gear = crank_gear(block, sheet)
    return take("i", gear) if sheet.is_stated("gear", gear) else 1.0


_EngineKey = Literal[
    "stroke", "connecting_rod_length", "driving_wheel_diameter", "least_wheel_diameter", "gear_ratio"
]


def _of_engine(key: _EngineKey, block: CylinderBlock, sheet: Sheet) -> Measure | NotStated:
    """What the engine states, else what the block does; where neither does, the key that the engine would have."""
    engine = engine_of(block, sheet)
    own: Measure | NotStated = getattr(block.drive, key)
    if engine is None:
        return own
    general: Measure | NotStated = getattr(engine, key)
    if sheet.is_stated(f"{key} of {engine.id}", general) or not sheet.is_stated(f"{key} of {block.id}", own):
        return general
    return own


def _of_crank(
    key: Literal["stroke", "connecting_rod_length"], block: CylinderBlock, sheet: Sheet, bore: Bore
) -> Measure | NotStated:
    engine = engine_of(block, sheet)
    cranks = tuple(cranks_of(engine, block, sheet)) if engine is not None else ()
    special: dict[str, Measure] = {
        name: found
        for name, crank in cranks
        if sheet.is_stated(f"{key} of the crank of {name}", found := getattr(crank, key))
    }
    if special and len(cranks) == 1:
        return special[cranks[0][0]]
    if special:
        name = bore if isinstance(bore, str) else sheet.read("bore", bore)
        if not name:
            says = f"a crank of {block.id} has a {key.replace('_', ' ')} of its own: its bores are not alike"
            raise sheet.not_assessed(says, next(iter(special.values())).where)
        if name in special:
            return special[name]
    return _of_engine(key, block, sheet)
