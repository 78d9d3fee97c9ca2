"""The pressure behind the exhaust valves: as the duty states it, and no less than the blast nozzle needs."""

from __future__ import annotations

from typing import TYPE_CHECKING

from speclint.equations import Pascals
from speclint.facts.engine import engine_of
from speclint.facts.nozzles import back_pressures
from speclint.handbook.steam import excess_pressure
from speclint.rules import NotAssessed, Sheet
from speclint.specs import BlastNozzle, Component, CylinderBlock

if TYPE_CHECKING:
    from speclint.specs import LoadCase


def greatest_exhaust_pressure(part: Component, case: LoadCase, sheet: Sheet, symbol: str = "p_e") -> Pascals:
    """The greatest gauge pressure of the exhaust steam that a part holds in a load case, Pa.

    As the duty states it; in running no less than the nozzle of the engine needs at the flow of the case, where nozzle
    and ways are drawn whole. Where they are not, duty.back-pressure-by-nozzle tells what is missing. The sizes of the
    ways are those that the drawings aim at.
    """
    nozzle = _nozzle_of(part, sheet) if case.name == "running" else None
    known = nozzle is not None and all(
        sheet.is_stated("exhaust pressure or flow", one) for one in (case.exhaust_pressure, case.steam_flow)
    )
    needed: Pascals = 0.0
    if nozzle is not None and known:
        needed = sheet.once(("back pressure", nozzle.id, case.where), lambda: _needed(nozzle, case, sheet))
    return max(sheet.take(symbol, case.exhaust_pressure, "exhaust pressure"), needed)


def _nozzle_of(part: Component, sheet: Sheet) -> BlastNozzle | None:
    """The blast nozzle of the engine whose block is nearest to a part; None where none is drawn."""
    block = part if isinstance(part, CylinderBlock) else sheet.nearest(part, "cylinder-block")
    engine = engine_of(block, sheet) if isinstance(block, CylinderBlock) else None
    return sheet.follow(engine.nozzle) if engine and sheet.is_stated("nozzle", engine.nozzle) else None


def _needed(nozzle: BlastNozzle, case: LoadCase, sheet: Sheet) -> Pascals:
    out = float(sheet.setting("site pressure"))
    try:
        absolute = list(back_pressures(nozzle, case, sheet, sheet.take_nominal))
    except NotAssessed:
        return 0.0
    return max((sheet.work("p_g", excess_pressure, p_1=p, p_2=out) for p in absolute), default=0.0)
