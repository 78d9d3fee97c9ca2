"""What exhausts through a blast nozzle: its cylinders and their bores, the flow, and the pressure that it needs."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING

from speclint.equations import FIRST_PRINCIPLES, KilogramsPerSecond, Pascals, Ratio, SquareMetres, formula
from speclint.errors import Location
from speclint.facts.cylinder_volume import bore_as_drawn
from speclint.facts.jets import pressure_before_nozzle
from speclint.facts.stages import flow_of_cylinders
from speclint.facts.steam_paths import Stage, paths_into
from speclint.facts.steam_states import SteamPath, steam_along
from speclint.facts.taking import Take
from speclint.facts.valves import block_under, bore_served
from speclint.handbook.steam import nozzle_area
from speclint.quantities import Measure
from speclint.rules import Sheet, Worked, worked
from speclint.specs import BlastNozzle, CylinderBlock, Engine, NotStated, SteamPassage

if TYPE_CHECKING:
    from speclint.specs import LoadCase


@formula("z = z_0 + z_1", cites=[FIRST_PRINCIPLES])
def cylinders_together(z_0: Ratio, z_1: Ratio) -> Ratio:
    """Number of cylinders, added up engine by engine or path by path.

    z_0: of those before. z_1: of one more. Returns a number.

    >>> cylinders_together(z_0=1.0, z_1=2.0)
    3.0
    """
    return z_0 + z_1


@formula("m = m_0 + z m_1", cites=[FIRST_PRINCIPLES])
def flow_together(m_0: KilogramsPerSecond, z: Ratio, m_1: KilogramsPerSecond) -> KilogramsPerSecond:
    """Flow of several paths, added up path by path.

    m = m_0 + z m_1

    m_0: of the paths before, kg/s. z: cylinders of one more. m_1: flow of one of them, kg/s. Returns kg/s.

    >>> flow_together(m_0=1.5, z=2.0, m_1=1.0)
    3.5
    """
    return m_0 + z * m_1


@formula("p_1 = p_n + (p − p_e)", cites=[FIRST_PRINCIPLES])
def pressure_at_valves(p_n: Pascals, p: Pascals, p_e: Pascals) -> Pascals:
    """Pressure that the nozzle needs at the start of the exhaust: that before it, and what the path loses.

    p_1 = p_n + (p − p_e)

    ``p_n`` pressure before the nozzle; ``p`` pressure at the start of the path as it was worked; ``p_e`` pressure at
    its end. All in Pa, of one datum. Returns Pa.

    >>> pressure_at_valves(p_n=1.25e5, p=1.5e5, p_e=1.375e5)
    137500.0
    """
    return p_n + (p - p_e)


def cylinders_of(nozzle: BlastNozzle, sheet: Sheet) -> Iterator[tuple[Worked, CylinderBlock, str]]:
    """The cylinders of all engines whose nozzle it is: the place of each crank, its block and bore."""
    for engine in sheet.belonging_to(nozzle, Engine):
        for name, crank in engine.cranks.items():
            if not sheet.is_stated(f"block of crank {name}", crank.block):
                continue
            block = sheet.follow(crank.block)
            named = sheet.is_stated(f"bore of crank {name}", crank.bore) or len(block.bores) != 1
            bore = sheet.read(f"bore of crank {name}", crank.bore) if named else next(iter(block.bores))
            yield worked(name, crank.block), block, bore


def cylinders_by_engine(nozzle: BlastNozzle, sheet: Sheet) -> Worked | None:
    """How many cylinders exhaust through a nozzle, by the cranks of its engines; None where none is drawn."""
    z, places = 0.0, list[Location]()
    for crank, _, _ in cylinders_of(nozzle, sheet):
        z = sheet.work("z_e", cylinders_together, z_0=z, z_1=1.0)
        places.extend(crank.places)
    return Worked(z, tuple(places)) if places else None


def cylinders_by_paths(nozzle: BlastNozzle, sheet: Sheet) -> Worked | None:
    """How many cylinders exhaust by the paths that are drawn; None where one does not say."""
    lasts = [stages[-1] for stages in paths_into(nozzle, sheet)] if nozzle.follows else []
    if not lasts or not all(sheet.is_stated(f"cylinders of {one.id}", one.cylinders) for one in lasts):
        return None
    z = 0.0
    for number, one in enumerate(lasts, 1):
        own = sheet.count(f"z_{number}", one.cylinders)
        z = sheet.work("z_p", cylinders_together, z_0=z, z_1=float(own))
    return worked(z, *(one.cylinders for one in lasts))


def cylinders_on(nozzle: BlastNozzle, sheet: Sheet) -> Ratio:
    """How many cylinders exhaust through a nozzle: by its engines; else the greater of path and statement."""
    by_paths, by_engine = cylinders_by_paths(nozzle, sheet), cylinders_by_engine(nozzle, sheet)
    known: list[float] = [one.value for one in (by_engine, by_paths) if one is not None]
    if by_engine is None and (not known or sheet.is_stated("cylinders", nozzle.cylinders)):
        known.append(float(sheet.count("z", nozzle.cylinders)))
    return max(known)


def bores_on(nozzle: BlastNozzle, sheet: Sheet) -> tuple[Measure | NotStated, ...]:
    """The bores of the cylinders that exhaust through a nozzle, to be taken.

    By its engines; else by the valves at which its paths begin; else as it states.
    """
    found = [(block, bore) for _, block, bore in cylinders_of(nozzle, sheet)] or [
        cylinder for stages in paths_into(nozzle, sheet) for cylinder in _at_valve(stages, sheet)
    ]
    bores = tuple(dict.fromkeys(bore_as_drawn(block, bore, sheet) for block, bore in found))
    return bores or (nozzle.cylinder_bore,)


def _at_valve(stages: Sequence[Stage], sheet: Sheet) -> Iterator[tuple[CylinderBlock, str]]:
    for stage in stages:
        if isinstance(stage, SteamPassage) and sheet.is_stated(f"valve of {stage.id}", stage.valve):
            valve = sheet.follow(stage.valve)
            if sheet.is_stated(f"seat of {valve.id}", valve.upper_beat.seat):
                yield block_under(valve, sheet), bore_served(valve, sheet)


def flow_to(
    nozzle: BlastNozzle, paths: Sequence[tuple[tuple[Stage, ...], SteamPath]], sheet: Sheet
) -> KilogramsPerSecond:
    """The flow of all cylinders at a nozzle, kg/s.

    Cylinders whose path is not drawn count with the greatest flow of those that are.
    """
    z = cylinders_on(nozzle, sheet)
    greatest = max(path.m for _, path in paths)
    if len(paths) == 1:
        return sheet.work("m", flow_of_cylinders, z=z, m_1=greatest)
    m, left = 0.0, z
    for number, (stages, path) in enumerate(paths, 1):
        own = sheet.count(f"z_{number}", stages[-1].cylinders)
        m, left = sheet.work("m", flow_together, m_0=m, z=float(own), m_1=path.m), left - own
    return sheet.work("m", flow_together, m_0=m, z=left, m_1=greatest) if left > 0 else m


def opening_of(nozzle: BlastNozzle, sheet: Sheet, take: Take | None = None) -> SquareMetres:
    """Area of all openings of a nozzle together, m²."""
    z, d = sheet.count("z_n", nozzle.nozzles), (take or sheet.take)("d", nozzle.diameter)
    return sheet.work("A", nozzle_area, z=float(z), d=d)


def back_pressures(
    nozzle: BlastNozzle, case: LoadCase, sheet: Sheet, take: Take | None = None
) -> Iterator[Pascals]:
    """The absolute pressure that a nozzle needs behind the exhaust valves at the flow of a load case, path by path.

    What the path loses is reckoned at the pressure of the load case. ``take`` is how sizes and steam are taken, with
    their limits where none is given.
    """
    paths = [(stages, steam_along(stages, case, sheet, take)) for stages in paths_into(nozzle, sheet)]
    m, A = flow_to(nozzle, paths, sheet), opening_of(nozzle, sheet, take)
    C, out = (take or sheet.take)("C", nozzle.discharge_coefficient), float(sheet.setting("site pressure"))
    for _, path in paths:
        p_n = sheet.work("p_n", pressure_before_nozzle, m=m, C=C, A=A, h=path.h, p_2=out)
        yield sheet.work("p_v", pressure_at_valves, p_n=p_n, p=path.flows[0].p, p_e=path.p)
