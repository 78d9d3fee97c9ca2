"""The connecting rod on a crank: what the crank states of its own, else what the engine states of all."""

from __future__ import annotations

from typing import TYPE_CHECKING

from speclint.facts.engine import cranks_of, engine_of
from speclint.facts.taking import Take
from speclint.handbook.balance import small_end_share
from speclint.quantities import Measure
from speclint.rules import Sheet, Worked, worked
from speclint.specs import CylinderBlock, Engine, NotStated

if TYPE_CHECKING:
    from speclint.specs import Crank


def rod_length(crank: Crank, engine: Engine, sheet: Sheet) -> Measure | NotStated:
    """Length of the connecting rod on a crank, to be taken: its own, else the engine's."""
    own = sheet.is_stated("length of its own rod", crank.connecting_rod_length)
    return crank.connecting_rod_length if own else engine.connecting_rod_length


def rod_mass(crank: Crank, engine: Engine, sheet: Sheet) -> Measure | NotStated:
    """Mass of the connecting rod on a crank, to be taken: its own, else the engine's."""
    own = sheet.is_stated("mass of its own rod", crank.connecting_rod_mass)
    return crank.connecting_rod_mass if own else engine.connecting_rod_mass


def rod_centre(crank: Crank, engine: Engine, sheet: Sheet) -> Measure | NotStated:
    """From the crank pin to the centre of gravity of the rod on a crank, to be taken: its own, else the engine's."""
    own = sheet.is_stated("centre of its own rod", crank.connecting_rod_centre)
    return crank.connecting_rod_centre if own else engine.connecting_rod_centre


def small_end_of(crank: Crank, engine: Engine, sheet: Sheet, take: Take | None = None) -> Worked | None:
    """Share of a connecting rod that reciprocates, kg, by its centre of gravity; None where that is not stated.

    ``take`` is how sizes are taken, with their limits where none is given.
    """
    places = (
        rod_mass(crank, engine, sheet),
        rod_length(crank, engine, sheet),
        rod_centre(crank, engine, sheet),
    )
    if not all(sheet.is_stated("mass, length or centre of the rod", one) for one in places):
        return None
    named = zip(("m_c of rod", "l of rod", "a_c of rod"), places, strict=True)
    m, l, a = ((take or sheet.take)(symbol, one) for symbol, one in named)  # noqa: E741 - the symbol of the trade
    return worked(sheet.work("m_s", small_end_share, m=m, l=l, a=a), *places)


def small_end_in(block: CylinderBlock, bore: str, sheet: Sheet, take: Take) -> Worked | None:
    """The same of the rod by which a bore of a block turns its crank; None where no engine names the block."""
    engine = engine_of(block, sheet)
    if engine is None:
        return None
    found = (crank for name, crank in cranks_of(engine, block, sheet) if name == bore)
    crank = next(found, None)
    return small_end_of(crank, engine, sheet, take) if crank is not None else None
