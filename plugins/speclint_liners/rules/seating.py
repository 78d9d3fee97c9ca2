"""Axial location of a liner, and sealing behind it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.facts import bore_up_to_stop
from speclint.handbook.fits import DRAWING_TEMPERATURE
from speclint.handbook.materials import share_of_strength
from speclint.handbook.members import direct_stress
from speclint.specs import CylinderLiner
from speclint_liners.formulae.seating import (
    collar_bending,
    collar_nip,
    collar_seat_area,
    collar_seat_width,
    collar_shear,
    land_length,
    room_at_free_end,
    room_left,
    seat_circle,
)
from speclint_liners.inputs.as_made import liner_as_cast
from speclint_liners.inputs.fitted import Housing, housing
from speclint_liners.sources import ASME_VIII, SHIGLEY

if TYPE_CHECKING:
    from speclint.specs import LinerPort, LoadCase, SealingLand


@rule(
    "liner.end-room",
    title="The liner keeps clearance at its free end with liner and block at their own temperatures",
    wrong="liner meets its stop hot: {left} left at the free end",
    on=CylinderLiner,
    cases=("warming", "starting", "running"),
    grade=Grade.NONCONFORMITY,
    gravest=Grade.HOLD,
    cites=[FIRST_PRINCIPLES],
    why="A liner that grows against the cover lifts it off its joint; one that grows against a shoulder is "
    "crushed.",
    leaves_out="elastic cover joints; the local code and a competent person decide where the cover is the "
    "stop",
    against=("break under load",),
    edition=3,
)
def end_room(liner: CylinderLiner, case: LoadCase, sheet: Sheet) -> Judgement:
    """Clearance by the drawings, plus the growth of the block, less that of the liner.

    Where the cover is the stop the bore is as long as from the collar's seat to the face of that cover.

    Where nothing is stated to stop the liner, the face at which its bore ends counts as a cover.
    """
    stop = sheet.read("beyond the free end", liner.free_end_stop)
    housed = housing(liner, sheet)
    long, deep = sheet.take("L_l", liner.length), sheet.take("L_b", bore_up_to_stop(liner, sheet))
    cold = sheet.work("c", room_at_free_end, L_b=deep, L_l=long)
    at_liner = sheet.take("T_l", case.temperature_of(liner))
    at_block = sheet.take("T_b", case.temperature_of(housed.block))
    iron, steel = sheet.material_of(liner), sheet.material_of(housed.block)
    left = sheet.work(
        "c_h",
        room_left,
        c=cold,
        L_b=deep,
        alpha_b=sheet.look_up("α_b", steel.expansion, of=housed.block, at=at_block),
        T_b=at_block,
        L_l=long,
        alpha_l=sheet.look_up("α_l", iron.expansion, of=liner, at=at_liner),
        T_l=at_liner,
        T_ref=DRAWING_TEMPERATURE,
    )
    judged = sheet.stays(left, cold)
    return judged if stop == "shoulder" else judged.graded(Grade.HOLD)


@rule(
    "liner.collar-clamp",
    title="The collar has a seat, its nip is within its limits, its fillet clears the recess, and clamping does not "
    "stress it above the allowable",
    on=CylinderLiner,
    grade=Grade.NONCONFORMITY,
    cites=[SHIGLEY, ASME_VIII.at("UCI-23, a tenth of the strength"), COMMON_PRACTICE],
    why="With too little nip the liner moves; with too much, or pressed off its seat, the collar cracks off.",
    leaves_out="stress concentration at the fillet beyond what the factor of ten on iron covers; change of "
    "nip with heat",
    against=("loosen", "break under load"),
    limits=[
        Limit("least_nip", "0.05 mm", "length", COMMON_PRACTICE, "least nip"),
        Limit("most_nip", "0.15 mm", "length", COMMON_PRACTICE, "greatest nip"),
        Limit("least_seat", "5 mm", "length", COMMON_PRACTICE, "least width of the collar's seat"),
        Limit("least_fillet", "2 mm", "length", COMMON_PRACTICE, "least fillet"),
        Limit("liner_share", "0.5", "ratio", COMMON_PRACTICE, "share of the iron's compressive strength"),
    ],
    edition=2,
)
def collar_clamp(liner: CylinderLiner, sheet: Sheet) -> Judgement:
    """Nip, fillet against chamfer, and the stresses by the clamping force."""
    housed = housing(liner, sheet)
    thickness = sheet.take("b", liner.collar.thickness)
    nip = sheet.work("n", collar_nip, b=thickness, h=sheet.take("h", housed.bore.recess_depth))
    fillet = sheet.take("r", liner.collar.fillet)
    chamfer = sheet.take("k", housed.bore.recess_chamfer)
    across, bore = sheet.take("D_c", liner.collar.diameter), sheet.take("D_b", housed.bore.diameter)
    seat = sheet.work("w", collar_seat_width, D_c=across, D_b=bore, k=chamfer)
    seated = sheet.at_least(seat, sheet.limit("least_seat")).else_says(
        "collar sits on {found} of width, {limit} wanted"
    )
    if not seated.holds:
        return seated
    return sheet.worst(
        seated,
        sheet.within(nip, sheet.limit("least_nip"), sheet.limit("most_nip")).else_says(
            "nip of the collar {found}, where the nearer limit is {limit}"
        ),
        sheet.at_least(fillet, sheet.limit("least_fillet")).else_says(
            "fillet of the collar {found}, {limit} wanted"
        ),
        sheet.at_most(fillet, chamfer).else_says("fillet of the collar {found} fouls the chamfer of {limit}"),
        *_clamped(liner, housed, thickness, chamfer, sheet),
    )


def _clamped(
    liner: CylinderLiner, housed: Housing, thickness: float, chamfer: float, sheet: Sheet
) -> tuple[Judgement, Judgement, Judgement]:
    """Bearing pressure on the seat, shear and bending at the root, cold and clamped."""
    force = sheet.take("F", liner.collar.clamp_force)
    across = sheet.take("D_c", liner.collar.diameter)
    bore = sheet.take("D_b", housed.bore.diameter)
    root = sheet.take("D_l", liner.outside_diameter)
    area = sheet.work("A", collar_seat_area, D_c=across, D_b=bore, k=chamfer)
    crushing = sheet.work("σ_c", direct_stress, F=force, A=area)
    shear = sheet.work("τ", collar_shear, F=force, D=root, b=thickness)
    circle = sheet.work("D_s", seat_circle, D_c=across, D_b=bore, k=chamfer)
    pressed = sheet.take("D_k", liner.collar.clamp_diameter)
    bending = sheet.work("σ", collar_bending, F=force, D_k=pressed, D_s=circle, D=root, b=thickness)
    iron = sheet.material_of(liner)
    strength = sheet.look_up("R_c", iron.compressive_strength, of=liner, at=DRAWING_TEMPERATURE)
    may = sheet.work("S_c", share_of_strength, k=sheet.limit("liner_share"), R=strength)
    cast = liner_as_cast(liner, sheet)
    tension = sheet.look_up("S", iron.allowable_tension, of=liner, at=DRAWING_TEMPERATURE, wall=cast)
    return (
        sheet.at_most(crushing, may).else_says("collar presses on its seat with {found}, {limit} allowed"),
        sheet.at_most(shear, tension).else_says("collar sheared at its root by {found}, {limit} allowed"),
        sheet.at_most(bending, tension).else_says("collar bent at its root to {found}, {limit} allowed"),
    )


@rule(
    "liner.steam-behind",
    title="The liner has at least two sealing lands of the least length, on both sides of each of its ports, a "
    "tell-tale hole and a drain behind it",
    wrong="sealing land {item} is {found} long, {limit} wanted",
    on=CylinderLiner,
    grade=Grade.NONCONFORMITY,
    cites=[COMMON_PRACTICE],
    why="Steam behind a loose liner can collapse it inwards, and water trapped there freezes.",
    leaves_out="the leakage itself",
    against=("leak",),
    limits=[Limit("least_land", "20 mm", "length", COMMON_PRACTICE, "least length of a sealing land")],
    edition=2,
)
def steam_behind(liner: CylinderLiner, sheet: Sheet) -> Judgement:
    """Length of each land, and where it lies beside the ports; a tell-tale hole and a drain."""
    if not liner.lands:
        raise sheet.not_assessed(f"lands is not stated in {liner.where.file}", liner.where)
    least = sheet.limit("least_land")

    def long_enough(land: SealingLand) -> Judgement:
        begins, ends = sheet.take("x_1", land.starts), sheet.take("x_2", land.ends)
        return sheet.at_least(sheet.work("L", land_length, x_1=begins, x_2=ends), least)

    several = len(liner.lands) > 1
    says = "each end has a sealing land" if several else "one sealing land is stated: each end needs one"
    return sheet.worst(
        sheet.each(liner.lands.values(), long_enough),
        sheet.states(several, says),
        *(_sealed(name, port, liner, sheet) for name, port in liner.ports.items()),
        sheet.each((_shown, _drained), lambda judge: judge(liner, sheet)),
    )


def _sealed(name: str, port: LinerPort, liner: CylinderLiner, sheet: Sheet) -> Judgement:
    """Whether steam that comes through a port finds a land on its way to either end."""
    at, height = sheet.take_nominal("x_p", port.from_collar), sheet.take_nominal("h_p", port.height)
    lands = liner.lands.values()
    before = any(sheet.take_nominal("x_1", land.starts) < at - height / 2 for land in lands)
    beyond = any(sheet.take_nominal("x_2", land.ends) > at + height / 2 for land in lands)
    return sheet.states(
        before and beyond,
        f"lands on both sides of port {name}"
        if before and beyond
        else f"no sealing land lies {'beyond' if before else 'before'} port {name}",
    )


def _shown(liner: CylinderLiner, sheet: Sheet) -> Judgement:
    shown = sheet.read("tell-tale", liner.tell_tale)
    return sheet.states(
        shown, "tell-tale hole" if shown else "no tell-tale hole shows steam behind the liner"
    )


def _drained(liner: CylinderLiner, sheet: Sheet) -> Judgement:
    drained = sheet.read("drain", liner.drain_behind)
    return sheet.states(drained, "drained" if drained else "water behind the liner cannot drain")


RULES = (end_room, collar_clamp, steam_behind)
