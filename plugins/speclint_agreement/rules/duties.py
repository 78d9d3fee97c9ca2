"""What a duty states of one moment belongs together: pressures in their order, the speed of the wheel, the fastest."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import COMMON_PRACTICE, Grade, Limit, Must, Pair, Rule, Sheet, agreement, worked
from speclint.facts import engine_of, is_typed, new_wheel, turns_of_crank, worn_wheel
from speclint.specs import CylinderBlock, LoadCase, Pressure
from speclint_agreement.formulae.duties import speed_of_crank

#: Load cases in which live steam is let in: what is in the exhaust has come through the cylinder.
_STEAM_ON = ("warming", "starting", "running")


def _pressures(block: CylinderBlock, sheet: Sheet) -> Iterator[Pair]:
    """In each load case but the test: live steam, safety valves, design pressure, each not above the next.

    In a case that names no safety valves they are those of the engine's boiler, or of the first case that names them:
    a boiler has one set. Where nothing names them its live steam is held against the design pressure. In warming,
    starting and running the exhaust not above the live steam, from which all of it comes then; in other cases an air
    pump may blow into the exhaust. With water in the cylinder, its pressure against the relief valves.
    The cylinder opens to the exhaust at each turn: its least pressure is not above that, nor its greatest below.
    """
    boiler = next(iter(_safety_valves(block, sheet)), None)
    designed = sheet.is_stated("design pressure", block.design_pressure)
    if boiler is not None and designed:
        yield Pair(boiler, block.design_pressure, "at most", name="safety valves")
    for name, case in sheet.follow(block.duty).cases.items():
        if name == "test":
            continue
        own = sheet.is_stated(f"safety-valve pressure, {name}", case.safety_valve_pressure)
        valves = case.safety_valve_pressure if own else boiler
        live = sheet.is_stated(f"live pressure, {name}", case.live_pressure)
        if live and valves is not None:
            yield Pair(case.live_pressure, valves, "at most", name=f"{name}, live steam")
        elif live and designed:
            yield Pair(case.live_pressure, block.design_pressure, "at most", name=f"{name}, live steam")
        if own and designed and valves is not boiler:
            yield Pair(
                case.safety_valve_pressure, block.design_pressure, "at most", name=f"{name}, safety valves"
            )
        exhaust = sheet.is_stated(f"exhaust pressure, {name}", case.exhaust_pressure)
        if live and exhaust and name in _STEAM_ON:
            yield Pair(case.exhaust_pressure, case.live_pressure, "at most", name=f"{name}, exhaust")
        if exhaust:
            yield from _in_cylinder(name, case, sheet)
        if name == "water":
            yield from _relief(block, case, sheet)


def _in_cylinder(name: str, case: LoadCase, sheet: Sheet) -> Iterator[Pair]:
    """The least and the greatest pressure in the cylinder, as far as they are typed, against that of the exhaust."""
    pressures: tuple[tuple[str, Pressure, Must], ...] = (
        ("least", case.least_cylinder_pressure, "at most"),
        ("greatest", case.cylinder_pressure, "at least"),
    )
    for says, pressure, must in pressures:
        if is_typed(f"{says} pressure in the cylinder, {name}", pressure, sheet):
            yield Pair(pressure, case.exhaust_pressure, must, name=f"{name}, {says} in the cylinder")


def _relief(block: CylinderBlock, case: LoadCase, sheet: Sheet) -> Iterator[Pair]:
    """The pressure of water against the lowest setting of the relief valves of the block: below it none lets any out.

    As the drawing aims at it, since a duty that states the setting itself says what is meant; of a block that states
    the setting of each end, without which the lowest is not known.
    """
    settings = {
        name: end.relief_set
        for name, end in block.ends.items()
        if sheet.is_stated(f"relief valve of {name}", end.relief_set)
    }
    if settings and len(settings) == len(block.ends):
        aims = {name: sheet.take_nominal(f"p_r of {name}", one) for name, one in settings.items()}
        end = min(aims, key=lambda name: aims[name])
        yield Pair(case.cylinder_pressure, worked(aims[end], settings[end]), "at least", name="water")


def _boiler(block: CylinderBlock, sheet: Sheet) -> Iterator[Pair]:
    """The pressure of the safety valves in each load case against that of the boiler of the engine.

    Where no engine gives it, against that of the first load case which states one.
    """
    valves = _safety_valves(block, sheet)
    for other in valves[1:]:
        yield Pair(other, valves[0])


def _safety_valves(block: CylinderBlock, sheet: Sheet) -> list[Pressure]:
    """The pressure of the safety valves wherever it is stated, that of the engine's boiler first."""
    valves = [
        case.safety_valve_pressure
        for name, case in sheet.follow(block.duty).cases.items()
        if sheet.is_stated(f"safety-valve pressure, {name}", case.safety_valve_pressure)
    ]
    engine = engine_of(block, sheet)
    if engine is not None and sheet.is_stated("boiler", engine.boiler.safety_valve_pressure):
        valves.insert(0, engine.boiler.safety_valve_pressure)
    return valves


def _fastest(block: CylinderBlock, sheet: Sheet) -> Iterator[Pair]:
    """Speeds of crank and engine in each load case against those of running."""
    cases = sheet.follow(block.duty).cases
    running = cases.get("running")
    if running is None:
        return
    for name, case in cases.items():
        speeds = {
            f"{name}, crank": (case.rotational_speed, running.rotational_speed),
            f"{name}, track": (case.track_speed, running.track_speed),
        }
        for which, (own, most) in speeds.items() if name != "running" else ():
            if sheet.is_stated(which, own) and sheet.is_stated(f"running beside {which}", most):
                yield Pair(own, most, "at most", name=which)


def _speeds(block: CylinderBlock, case: LoadCase, sheet: Sheet) -> Iterator[Pair]:
    """The speed of the crank between those that the new and the worn wheel give at the track speed."""
    if not (
        sheet.is_stated("speed", case.rotational_speed) and sheet.is_stated("track speed", case.track_speed)
    ):
        return
    i, wheel = turns_of_crank(block, sheet, sheet.take_nominal), new_wheel(block, sheet)
    v = sheet.take_nominal("v", case.track_speed)
    new = sheet.take_nominal("D_1", wheel)
    worn = sheet.take_nominal("D_2", worn_wheel(block, sheet))
    x = sheet.limit("share", "x")
    slow = sheet.work("ω_1", speed_of_crank, i=i, v=v, D=new, x=-x)
    fast = sheet.work("ω_2", speed_of_crank, i=i, v=v, D=worn, x=x)
    at = (case.track_speed, wheel)
    yield Pair(case.rotational_speed, worked(slow, *at), "at least", name="new wheel")
    yield Pair(case.rotational_speed, worked(fast, *at), "at most", name="worn wheel")


pressures_in_order: Rule = agreement(
    "duty.pressures-in-order",
    title="In each load case live steam ≤ safety valves ≤ design pressure, least in the cylinder ≤ exhaust ≤ "
    "greatest, warming, starting and running exhaust ≤ live steam, and water ≥ the lowest relief valve",
    on=CylinderBlock,
    pairs=_pressures,
    within="",
    grade=Grade.HOLD,
    why="half of the rules take one of these pressures and half another: each is safe only while they are in order",
    leaves_out="the hydraulic test, whose pressures have no order; a duty that the block takes from another part; how "
    "far the pressure of water rises above the setting of the relief valves, with which rules of "
    "strength reckon by themselves; a block of which an end states no setting (cylinder.water-relief); a design "
    "pressure or safety valves that nothing states (release.pressure-part); how far below the exhaust the "
    "least pressure lies",
    edition=6,
)

one_boiler: Rule = agreement(
    "duty.one-boiler",
    title="The safety valves of a duty blow at one pressure in all its load cases, that of the engine's boiler",
    on=CylinderBlock,
    pairs=_boiler,
    within="0.01 bar",
    dimension="pressure",
    grade=Grade.HOLD,
    why="one boiler has one set of safety valves: a case with a lower one judges parts at a pressure that is exceeded",
    leaves_out="a duty that the block takes from another part; the boiler of a block that no engine names",
    edition=2,
)

speed_of_wheel: Rule = agreement(
    "duty.speed-of-wheel",
    title="The speed of the crank is that of the driving wheel at the track speed, new or worn",
    on=CylinderBlock,
    pairs=_speeds,
    within="",
    cases=("starting", "running", "drifting"),
    limits=[
        Limit("share", "2 %", "ratio", COMMON_PRACTICE, "what the speed may lie beyond that of the wheel")
    ],
    grade=Grade.HOLD,
    why="forces of inertia go with the square of the speed: one typed in for another wheel judges another engine",
    leaves_out="slip of the wheels",
    edition=3,
)

running_is_fastest: Rule = agreement(
    "duty.running-is-fastest",
    title="In no load case of a duty does the engine go faster than in running",
    on=CylinderBlock,
    pairs=_fastest,
    within="",
    grade=Grade.HOLD,
    why="rods, cams and seals are judged at the speed of running, and break where the engine drifts downhill faster",
    leaves_out="a duty that the block takes from another part; an engine that runs away",
)

RULES = (one_boiler, pressures_in_order, running_is_fastest, speed_of_wheel)
