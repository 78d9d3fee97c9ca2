"""The blast nozzle, the cylinders that exhaust through it, and the back pressure that the duty states."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Pair, Rule, Sheet, Worked, agreement
from speclint.facts import back_pressures, bores_on, cylinders_by_engine, cylinders_by_paths, engine_of
from speclint.handbook.steam import IF97, excess_pressure
from speclint.specs import BlastNozzle, CylinderBlock, LoadCase


def _cylinders(nozzle: BlastNozzle, sheet: Sheet) -> Iterator[Pair]:
    """The cylinders of the nozzle, and of the paths that end in it, against the cranks of its engines; their bores.

    Where no engine is drawn, against the paths that are, of which some may not be.
    """
    by_engine, by_paths = cylinders_by_engine(nozzle, sheet), cylinders_by_paths(nozzle, sheet)
    if by_engine is not None:
        yield Pair(nozzle.cylinders, by_engine, name="cylinders")
        if by_paths is not None:
            yield Pair(by_paths, by_engine, "at most", name="cylinders of the paths")
    elif by_paths is not None:
        yield Pair(nozzle.cylinders, by_paths, "at least", name="cylinders")
    if sheet.is_stated("bore", nozzle.cylinder_bore):
        for bore in bores_on(nozzle, sheet):
            if bore is not nozzle.cylinder_bore:
                yield Pair(nozzle.cylinder_bore, bore, name="bore")


def _back_pressure(block: CylinderBlock, case: LoadCase, sheet: Sheet) -> Iterator[Pair]:
    """The exhaust pressure of the load case against what nozzle and path of the engine need at the stated flow."""
    engine = engine_of(block, sheet)
    known = (case.exhaust_pressure, case.steam_flow)
    if engine is None or not sheet.is_stated("nozzle", engine.nozzle):
        return
    if not all(sheet.is_stated("exhaust pressure or flow", one) for one in known):
        return
    nozzle = sheet.follow(engine.nozzle)
    out = float(sheet.setting("site pressure"))
    for number, needed in enumerate(back_pressures(nozzle, case, sheet), 1):
        gauge = sheet.work("p_g", excess_pressure, p_1=needed, p_2=out)
        places = (engine.nozzle.where, case.steam_flow.where)
        name = "nozzle" if len(nozzle.follows) == 1 else f"nozzle, path {number}"
        yield Pair(case.exhaust_pressure, Worked(gauge, places), "at least", name=name)


of_its_cylinders: Rule = agreement(
    "blast-pipe.of-its-cylinders",
    title="A nozzle is said to have the cylinders whose cranks its engines have, and their bore",
    on=BlastNozzle,
    pairs=_cylinders,
    grade=Grade.NONCONFORMITY,
    why="back pressure is made by all that blows through the nozzle, whatever its drawing counts",
    leaves_out="an engine that names no nozzle; exhaust of pumps and other auxiliaries",
)

back_pressure: Rule = agreement(
    "duty.back-pressure-by-nozzle",
    title="The exhaust pressure of a duty is not below that which the blast nozzle and the way to it need at its flow",
    on=CylinderBlock,
    pairs=_back_pressure,
    within="",
    cases=("running",),
    grade=Grade.NONCONFORMITY,
    cites=(IF97.at("basic and backward equations"), FIRST_PRINCIPLES, COMMON_PRACTICE),
    why="every load of the return stroke, and the work lost on it, go by this pressure",
    leaves_out="pulsation of the exhaust; the vacuum of the smokebox, which helps a little; a nozzle that chokes, "
    "which is not covered",
)

RULES = (back_pressure, of_its_cylinders)
