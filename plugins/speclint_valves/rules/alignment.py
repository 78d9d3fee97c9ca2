"""Valve, seats and guide in line, and the edge of the guide."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.equations import Metres
from speclint.facts import (
    block_under,
    growth_since_drawn,
    shift_at_seat,
    side_load,
    zone_at_distance,
    zone_of,
)
from speclint.handbook.fits import diametral_clearance
from speclint.specs import ORIENTATIONS, CamBox, Component, CylinderBlock, LoadCase, ValveSeat, ValveSpindle
from speclint_valves.formulae.alignment import (
    edge_pressure,
    errors_together,
    out_of_line,
    shift_by_heat,
    tip_beyond_guide,
)
from speclint_valves.inputs.guides import box_with_guide

#: The limit that each family of metal has as a guide.
_GUIDES = {"copper-alloy": "bronze", "grey-iron": "iron", "ductile-iron": "iron"}


@rule(
    "gear.in-line",
    title="Each seat of a valve is in line with the guide of its spindle within what the clearance there allows, and "
    "both seats are within 0.02 mm of one axis",
    on=ValveSpindle,
    cases=("running", "standing-hot"),
    grade=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    edition=3,
    why="a spindle that its guide holds beside the seat bends at each landing, and one beat of two never seats",
    leaves_out="heat and tilt of the cam box where the block holds seats and guide, which then move alike; wear "
    "(wear.works-at-limit)",
    against=("wear",),
    against_on={"poppet-valve": ("leak",), "valve-seat": ("leak",)},
    limits=[
        Limit("beats", "0.02 mm", "length", COMMON_PRACTICE, "greatest distance of the axes of both seats")
    ],
)
def in_line(spindle: ValveSpindle, case: LoadCase, sheet: Sheet) -> Judgement:
    """Half of the coaxial zones of seat to guide against c/2 (1 + 2 a/L), and half of that of seat to seat.

    A guide that the cam box holds is off by the zone of guide to box, the tilt of the box's foot and unlike growth too.
    """
    d = sheet.take("d", spindle.diameter)
    c = sheet.work("c", diametral_clearance, D=sheet.take("D_g", spindle.guide_bore), d=d)
    a, L = sheet.take("a", spindle.guide_from_seat), sheet.take("L", spindle.guide_length)
    allowed = sheet.work("e_n", shift_at_seat, c=c, a=a, L=L)
    valve = sheet.follow(spindle.moves)
    box = box_with_guide(spindle, sheet)
    by_box = _by_box(spindle, box, case, sheet) if box else 0.0
    seats = [sheet.follow(valve.upper_beat.seat), sheet.follow(valve.lower_beat.seat)]

    def judge(item: tuple[str, ValveSeat]) -> Judgement:
        name, seat = item
        zone = _zone(seat, spindle, sheet)
        if zone is None:
            raise sheet.not_assessed(f"{seat.id} states no coaxial zone to {spindle.id}", seat.where)
        e = sheet.work(f"e_s of {name}", out_of_line, e_0=0.0, t=zone)
        if box:
            e = sheet.work(f"e of {name}", errors_together, e_s=e, e_x=by_box)
        return sheet.at_most(e, allowed).else_says(
            "{item} may be {found} out of line with the guide, which allows {limit}"
        )

    lines = sheet.each([(seat.id, seat) for seat in seats], judge)
    return lines if seats[0].id == seats[1].id else sheet.worst(lines, _one_axis(seats[0], seats[1], sheet))


def _by_box(spindle: ValveSpindle, box: CamBox, case: LoadCase, sheet: Sheet) -> Metres:
    """How far the guide may be off where a cam box holds it: its place in the box, the box's tilt, and heat."""
    zones = [t for t in (_zone(box, spindle, sheet), _zone(spindle, box, sheet)) if t is not None]
    if not zones:
        raise sheet.not_assessed(
            f"neither {box.id} nor {spindle.id} states a coaxial zone to the other", box.where
        )
    feet = [
        (name, one)
        for name, one in box.tolerances.items()
        if sheet.read(f"face of {name}", one.of) == "foot"
        and sheet.read(f"form of {name}", one.form) in ORIENTATIONS
    ]
    if not feet:
        raise sheet.not_assessed(f"{box.id} states no squareness of its foot", box.where)
    L = sheet.take("L_x", box.block_length)
    tilt = max(
        sheet.work(
            f"e_t of {name}",
            zone_at_distance,
            t=zone_of(f"t of {name}", name, one, box, sheet),
            L=L,
            l=sheet.take(f"l of {name}", one.over),
        )
        for name, one in feet
    )
    grown = {
        index: growth_since_drawn(part, index, case, sheet)
        for index, part in (("x", box), ("b", _block(spindle, sheet)))
    }
    shift = sheet.work(
        "e_h",
        shift_by_heat,
        s=sheet.take("s", box.axis_from_dowels),
        ε_x=grown["x"],
        ε_b=grown["b"],
    )
    e = sheet.work("e_x", errors_together, e_s=tilt, e_x=shift)
    return sheet.work("e_x′", out_of_line, e_0=e, t=min(zones))


def _block(spindle: ValveSpindle, sheet: Sheet) -> CylinderBlock:
    return block_under(sheet.follow(spindle.moves), sheet)


def _one_axis(one: ValveSeat, other: ValveSeat, sheet: Sheet) -> Judgement:
    """The distance of the axes of both seats: by the zone that either has to the other."""
    zones = [t for t in (_zone(one, other, sheet), _zone(other, one, sheet)) if t is not None]
    if not zones:
        raise sheet.not_assessed(
            f"neither {one.id} nor {other.id} states a coaxial zone to the other", one.where
        )
    e = sheet.work("e_b", out_of_line, e_0=0.0, t=min(zones))
    return sheet.at_most(e, sheet.limit("beats")).else_says(
        "axes of the seats {found} apart, {limit} allowed"
    )


def _zone(part: Component, to: Component, sheet: Sheet) -> Metres | None:
    """The coaxial zone of a part to another, the least where several are stated; None without one."""
    found = []
    for name, one in part.tolerances.items():
        is_coaxial = sheet.said(f"form of {name}", one.form) == "coaxial"
        if is_coaxial and to.id in [sheet.read(f"datum of {name}", datum) for datum in one.to]:
            found.append(zone_of(f"t_{name} of {part.id}", name, one, part, sheet))
    return min(found) if found else None


@rule(
    "gear.guide-edge-load",
    edition=3,
    title="The side load of a spindle presses the edge of its guide with at most 2 MPa on iron and 5 MPa on bronze",
    wrong="edge of the guide pressed by {found}, {limit} allowed",
    on=ValveSpindle,
    grade=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="a guide whose edge is pressed hard wears to a bell, and its valve lands on one side",
    leaves_out="oil at the edge, and heat, for which the limits are low",
    against=("wear",),
    limits=[
        Limit("iron", "2 MPa", "pressure", COMMON_PRACTICE, "greatest pressure of a guide of cast iron"),
        Limit("bronze", "5 MPa", "pressure", COMMON_PRACTICE, "greatest pressure of a guide of bronze"),
    ],
)
def guide_edge_load(spindle: ValveSpindle, sheet: Sheet) -> Judgement:
    """Mean pressure and that of the moment of a force at the gear's end of the spindle."""
    metal = sheet.material_named(f"the guide of {spindle.id}", spindle.guide_material)
    if metal.family not in _GUIDES:
        raise sheet.not_covered(f"no pressure is held for a guide of {metal.name}")
    L = sheet.take("L", spindle.guide_length)
    b = sheet.work(
        "b",
        tip_beyond_guide,
        H=sheet.take("H", spindle.heated_length),
        a=sheet.take("a", spindle.guide_from_seat),
        L=L,
    )
    if b <= 0:
        said = f"the guide of {spindle.id} reaches beyond the point at which the gear drives it"
        return sheet.states(False, said, where=spindle.guide_from_seat.where)
    p = sheet.work(
        "p", edge_pressure, F=side_load(spindle, sheet), d=sheet.take("d", spindle.diameter), L=L, b=b
    )
    return sheet.at_most(p, sheet.limit(_GUIDES[metal.family]))


RULES = (in_line, guide_edge_load)
