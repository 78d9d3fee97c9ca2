"""Speed, pressure and area along a steam path, judged at its end."""

from __future__ import annotations

from collections.abc import Callable

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.equations import SquareMetres
from speclint.facts import Stage, SteamPath, carries_live, paths_to, section_of, steam_along, throat_of
from speclint.handbook.members import tube_area
from speclint.handbook.steam import (
    BORDA,
    CENGEL_FLUIDS,
    COLEBROOK,
    CRANE,
    HEYWOOD,
    HUGHES,
    IF97,
    beat_area,
    choked_steam_flux,
    double_beat_flow_area,
    napier_superheated_flow,
    nozzle_mass_flow,
    single_beat_flow_area,
    speed_ratio,
    superheat,
    throat_area,
)
from speclint.specs import Beat, BlastNozzle, LoadCase, PoppetValve, SteamPassage, SteamPipe
from speclint_steamways.formulae.paths import area_ratio, flow_ratio, share_lost
from speclint_steamways.sources import STEAM_SPEED

End = SteamPassage | SteamPipe | BlastNozzle
#: Kinds at which a steam path may end.
ENDS = (SteamPassage, SteamPipe, BlastNozzle)
STEAM = IF97.at("basic and backward equations")


def _each_path(end: End, judge: Callable[[tuple[Stage, ...]], Judgement], sheet: Sheet) -> Judgement:
    """The worst of the paths that end here."""
    paths = paths_to(end, sheet)
    if len(paths) == 1:
        return judge(paths[0])
    return sheet.each([(stages[-1].id, stages) for stages in paths], lambda item: judge(item[1]))


@rule(
    "steamway.speed",
    title="Along its path the live steam of all cylinders that a stage feeds has a mean speed of at most 40 m/s, "
    "exhaust steam 80 m/s, and neither exceeds Mach 0.3",
    on=ENDS,
    cases=("running",),
    edition=3,
    grade=Grade.OBSERVATION,
    cites=[STEAM, FIRST_PRINCIPLES, COMMON_PRACTICE, STEAM_SPEED],
    why="Fast steam wears metal, makes noise and loses pressure in every bend.",
    leaves_out="pulsation: while a valve is open steam runs faster than its mean speed; the period "
    "figure is only reported",
    against=("wear",),
    limits=[
        Limit("live", "40 m/s", "speed", COMMON_PRACTICE, "greatest mean speed of live steam"),
        Limit("exhaust", "80 m/s", "speed", COMMON_PRACTICE, "greatest mean speed of exhaust steam"),
        Limit("mach", "0.3", "ratio", COMMON_PRACTICE, "greatest Mach number of the mean speed"),
        Limit("period", "100 ft/s", "speed", STEAM_SPEED, "period figure for steam through ports, reported"),
    ],
)
def speed(end: End, case: LoadCase, sheet: Sheet) -> Judgement:
    """Mean speed and Mach number of each stage, at the state of the steam there."""
    return _each_path(end, lambda stages: _speeds(stages, case, sheet), sheet)


def _speeds(stages: tuple[Stage, ...], case: LoadCase, sheet: Sheet) -> Judgement:
    path = steam_along(stages, case, sheet)
    greatest = sheet.limit("live" if carries_live(stages, sheet) else "exhaust", "v_max")
    mach, period = sheet.limit("mach", "Ma_max"), sheet.limit("period", "v_0")
    judgements = []
    for flow in path.flows:
        sheet.work(f"x_v{flow.i}", speed_ratio, v=flow.v, v_0=period)
        judgements += [
            sheet.at_most(flow.v, greatest).else_says("steam at {found} along the path, {limit} allowed"),
            sheet.at_most(flow.Ma, mach).else_says("steam at Mach {found} along the path, {limit} allowed"),
        ]
    return sheet.worst(*judgements)


@rule(
    "steamway.pressure-drop",
    title="With the steam of all cylinders that each stage feeds, at most 5 % of the pressure is lost from header to "
    "valve, and at most 10 % from valve to nozzle",
    wrong="path loses {found} of the pressure, {limit} allowed",
    on=ENDS,
    cases=("running",),
    edition=3,
    grade=Grade.OBSERVATION,
    cites=[STEAM, CENGEL_FLUIDS, COLEBROOK, CRANE, BORDA, COMMON_PRACTICE],
    why="Pressure lost in a live pipe cost fuel and never reaches the piston; pressure lost in the "
    "exhaust acts against it.",
    leaves_out="pulsation, heat lost on the way, the valves themselves (valve.pressure-loss)",
    against=(),
    limits=[
        Limit("live", "5 %", "ratio", COMMON_PRACTICE, "share of the pressure lost from header to valve"),
        Limit("exhaust", "10 %", "ratio", COMMON_PRACTICE, "share of the pressure lost from valve to nozzle"),
    ],
)
def pressure_drop(end: End, case: LoadCase, sheet: Sheet) -> Judgement:
    """Friction, bends, fittings and steps of every stage, over the absolute pressure at the start.

    Live and exhaust path are judged separately, each by its own pressure: a tenth of the boiler pressure, added
    up over both, would be more than the whole back pressure.
    """
    return _each_path(end, lambda stages: _loss(stages, case, sheet), sheet)


def _loss(stages: tuple[Stage, ...], case: LoadCase, sheet: Sheet) -> Judgement:
    path = steam_along(stages, case, sheet)
    lost = sheet.work("x", share_lost, p_1=path.flows[0].p, p_2=path.p)
    return sheet.at_most(lost, sheet.limit("live" if carries_live(stages, sheet) else "exhaust"))


@rule(
    "steamway.area-continuity",
    title="No section of the path is smaller than the flow area of its open valve, nor the room round the valve in its "
    "box than that of its larger beat",
    on=ENDS,
    edition=4,
    grade=Grade.NONCONFORMITY,
    cites=[HEYWOOD, FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="A narrow section before the valve throttles the engine, however far the valve lifts.",
    leaves_out="contraction of the stream; the nozzle, which is meant to be narrower",
    against=(),
    limits=[Limit("share", "1", "ratio", COMMON_PRACTICE, "least area over the flow area of the open valve")],
)
def area_continuity(end: End, sheet: Sheet) -> Judgement:
    """Area of each stage over the flow area of the valve at full lift; of the room round it over its larger beat's.

    The throats of the valve are no wider than seat, block and its rim leave.
    """
    return _each_path(end, lambda stages: _areas(stages, sheet), sheet)


def _areas(stages: tuple[Stage, ...], sheet: Sheet) -> Judgement:
    valve = _valve_of(stages, sheet)
    valve_area = _valve_area(valve, sheet)
    least = sheet.limit("share")

    def judge(item: tuple[int, Stage | None]) -> Judgement:
        i, stage = item
        if stage is None:
            return _room_round(valve, sheet)
        A = section_of(stage, str(i), sheet).A
        wide = sheet.at_least(sheet.work(f"x_A{i}", area_ratio, A_1=A, A_2=valve_area), least).else_says(
            "path narrows to {found} times its valve's area, {limit} wanted"
        )
        width = stage.outside_diameter if isinstance(stage, SteamPipe) else stage.area
        return wide.pointing_at(width.where)

    return sheet.each([*enumerate(stages, 1), (len(stages) + 1, None)], judge)


def _room_round(valve: PoppetValve, sheet: Sheet) -> Judgement:
    """The ring between valve and box, by which the steam of the beat on the far side must pass."""
    room = sheet.work(
        "A_r",
        tube_area,
        D=sheet.take("D_b", valve.box_diameter),
        d=sheet.take("D_v", valve.outside_diameter),
    )
    lift = sheet.take("lift", valve.lift)
    beats = [("u", valve.upper_beat)]
    if sheet.count("z", valve.beats) > 1:
        beats.append(("l", valve.lower_beat))
    flows = []
    for index, beat in beats:
        area, throat = _beat(index, valve, beat, lift, sheet)
        flows.append(sheet.work(f"A_f{index}", single_beat_flow_area, A_b=area, T=throat))
    ratio = sheet.work("x_Ar", area_ratio, A_1=room, A_2=max(flows))
    return (
        sheet.at_least(ratio, sheet.limit("share"))
        .else_says("room round the valve {found} times its beat's area, {limit} wanted")
        .pointing_at(valve.box_diameter.where)
    )


def _valve_of(stages: tuple[Stage, ...], sheet: Sheet) -> PoppetValve:
    for stage in stages:
        if isinstance(stage, SteamPassage) and sheet.is_stated(f"valve of {stage.id}", stage.valve):
            return sheet.follow(stage.valve)
    raise sheet.not_assessed("no stage of the path states the valve that it leads to or from")


def _valve_area(valve: PoppetValve, sheet: Sheet) -> SquareMetres:
    """Flow area at full lift, each beat limited by its throat."""
    lift = sheet.take("lift", valve.lift)
    count = sheet.count("z", valve.beats)
    if count == 1:
        area, throat = _beat("u", valve, valve.upper_beat, lift, sheet)
        return sheet.work("A_v", single_beat_flow_area, A_b=area, T=throat)
    (A_u, T_u), (A_l, T_l) = (
        _beat(index, valve, beat, lift, sheet)
        for index, beat in (("u", valve.upper_beat), ("l", valve.lower_beat))
    )
    return sheet.work("A_v", double_beat_flow_area, A_u=A_u, T_u=T_u, A_l=A_l, T_l=T_l)


def _beat(
    index: str, valve: PoppetValve, beat: Beat, lift: float, sheet: Sheet
) -> tuple[SquareMetres, SquareMetres]:
    area = sheet.work(
        f"A_{index}",
        beat_area,
        h=lift,
        d=sheet.take(f"d_{index}", beat.seat_diameter),
        w=sheet.take(f"w_{index}", beat.contact_width),
        β=sheet.take(f"β_{index}", beat.seat_angle),
    )
    bore, blocked = throat_of(valve, beat, index, sheet), sheet.take(f"A_o{index}", beat.blocked_area)
    return area, sheet.work(f"T_{index}", throat_area, D=bore, d=0.0, A_o=blocked)


@rule(
    "steamway.choked",
    title="The flow of all cylinders that a stage feeds is at most 50 % of that at which the tightest section of the "
    "path chokes",
    wrong="flow is {found} of that at which the path chokes, {limit} allowed",
    on=ENDS,
    cases=("running",),
    edition=3,
    grade=Grade.NONCONFORMITY,
    cites=[STEAM, HUGHES, FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="Near choking no opening of the regulator (throttle) brings more steam, and what comes has lost "
    "its pressure.",
    leaves_out="the nozzle (blast-pipe.area); pulsation; Napier's rule is only reported",
    against=(),
    limits=[
        Limit("share", "50 %", "ratio", COMMON_PRACTICE, "greatest share of the choked flow"),
        Limit(
            "coefficient", "0.9", "ratio", COMMON_PRACTICE, "discharge coefficient of the narrowest section"
        ),
    ],
)
def choked(end: End, case: LoadCase, sheet: Sheet) -> Judgement:
    """The flow over what the tightest section passes at the speed of sound, by isentropic expansion of real steam."""
    return _each_path(end, lambda stages: _choked(stages, case, sheet), sheet)


def _choked(stages: tuple[Stage, ...], case: LoadCase, sheet: Sheet) -> Judgement:
    path = steam_along(stages, case, sheet)
    narrow = max(path.flows, key=lambda flow: flow.m / (flow.A * flow.p))
    G = sheet.work("G_c", choked_steam_flux, p=narrow.p, h=path.h)
    most = sheet.work("m_c", nozzle_mass_flow, C=sheet.limit("coefficient", "C"), A=narrow.A, G=G)
    if carries_live(stages, sheet):
        _napier(path, narrow.p, narrow.T, narrow.A, sheet)
    return sheet.at_most(sheet.work("x", flow_ratio, m_1=narrow.m, m_2=most), sheet.limit("share"))


def _napier(path: SteamPath, p: float, T: float, A: SquareMetres, sheet: Sheet) -> None:
    """Napier's rule with superheat over the ideal flow of the same area."""
    napier = sheet.work("m_N", napier_superheated_flow, p=p, A=A, ΔT=sheet.work("ΔT", superheat, p=p, T=T))
    G = sheet.work("G_c", choked_steam_flux, p=p, h=path.h)
    ideal = sheet.work("m_i", nozzle_mass_flow, C=1.0, A=A, G=G)
    sheet.work("x_N", flow_ratio, m_1=napier, m_2=ideal)


RULES = (speed, pressure_drop, area_continuity, choked)
