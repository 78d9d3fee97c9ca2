"""Pads that carry the block, putting it in and drawing it out again."""

from __future__ import annotations

from typing import NamedTuple

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Rule, Sheet, rule
from speclint.equations import Metres, NewtonMetres, Newtons, NewtonsPerMetre, Ratio
from speclint.facts import (
    face_of_cut_out,
    fastenings_of_pad,
    locks_block,
    mass_drawn,
    taken_by,
)
from speclint.handbook.fits import DRAWING_TEMPERATURE, cooling_for_entry
from speclint.handbook.materials import share_of_strength
from speclint.handbook.members import rectangle_area, sum_of_loads
from speclint.specs import CylinderBlock, FrameFastening, LocatingFace
from speclint_fits.formulae.carrying_pads import (
    inside_of_edge,
    load_by_share,
    load_of_pad,
    moment_added,
    product_added,
    share_of_weight,
    sinking_of_block,
    stiffness_added,
    tilt_of_block,
    upright_couple,
    weight_moved,
    weight_of,
    with_shock,
)
from speclint_fits.formulae.locked_pads import force_to_leave, pressure_on_face
from speclint_fits.formulae.pads import force_to_enter
from speclint_fits.formulae.squareness import chamfer_to_lead_in
from speclint_fits.formulae.three_pads import (
    give_of_three,
    load_of_three,
    out_of_line,
    share_of_three,
    share_on_line,
    sinking_of_line,
)
from speclint_fits.inputs.seating import Seated, area_of_faces, interference_of, seated, stress_of, with_form
from speclint_fits.inputs.thrust import GRAVITY, LEAD, thrust_of

#: Load cases in which the thrust pushes at the pads.
_PUSHED = ("starting", "running", "water")


class _Carried(NamedTuple):
    """Weight of a block and its place."""

    G: Newtons
    x: Metres


class _Load(NamedTuple):
    """Load of a pad, and its share of the weight."""

    R: Newtons
    r: Ratio


class _Spring(NamedTuple):
    """A pad that gives: its place, its stiffness, and the height of its carrying face."""

    x: Metres
    k: NewtonsPerMetre
    h: Metres


@rule(
    "frame.carrying-pads",
    edition=4,
    title="No carrying pad is unloaded by errors of height or the upright couple of the thrust, a single one has the "
    "weight within its width, and none is pressed, the weight three times by jolts, by over 30 MPa",
    on=CylinderBlock,
    grade=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="A block that rests on two of three pads bends, its bores with it, and the third pad hammers.",
    leaves_out="bending of the block, friction of its bolts, sharing between two frames: each is asked with the whole "
    "weight; the couple that lies flat (frame.block-couple), the upright one where no height of an axis is stated",
    against=("loosen", "break under load"),
    limits=[
        LEAD,
        Limit("pressure", "30 MPa", "stress", COMMON_PRACTICE, "greatest pressure of a carrying pad"),
        Limit("jolts", "2", "ratio", COMMON_PRACTICE, "greatest upward acceleration, in times gravity"),
    ],
)
def carrying_pads(block: CylinderBlock, sheet: Sheet) -> Judgement:
    """Loads by statics for two pads, for more by their stiffness with the errors of height as corners; the thrust acts
    both ways, and its upright couple moves the place of the weight."""
    carrying = [
        name for name, pad in block.pads.items() if pad.takes and "weight" in taken_by(name, pad, sheet)
    ]
    if not carrying:
        raise sheet.not_applicable("no pad says that it takes weight (frame.scheme-of-pads)")
    weight = _Carried(_weight(block, sheet), sheet.take("x", block.weight_at))
    at_rest = _loads(carrying, weight, block, sheet)
    M = _upright(block, sheet)
    ways = [weight] if M is None else [_moved(weight, way, sheet) for way in (M, -M)]
    loads = [at_rest] if M is None else [_loads(carrying, one, block, sheet) for one in ways]

    def judge(name: str) -> Judgement:
        judged = []
        for one, load in zip(ways, loads, strict=True):
            if len(carrying) == 1:
                judged.append(_within_pad(name, one, block, sheet))
            else:
                judged.append(
                    sheet.stays(load[name].r, 1.0).else_says(
                        "pad {item} carries nothing: {left} of the weight left"
                    )
                )
            judged.append(_pressed(name, load[name].R, at_rest[name].R, block, sheet))
        return sheet.worst(*judged)

    return sheet.each([(name, name) for name in carrying], lambda item: judge(item[1]))


def _upright(block: CylinderBlock, sheet: Sheet) -> NewtonMetres | None:
    """The greatest upright couple of the thrust, which is that of all bores at the axis farthest from the pads.

    None where no bore states how high its axis is.
    """
    heights = [
        sheet.take(f"h of {name}", bore.axis_above_pads)
        for name, bore in block.bores.items()
        if sheet.is_stated(f"height of the axis of {name}", bore.axis_above_pads)
    ]
    if not heights:
        return None
    locking = [name for name, pad in block.pads.items() if locks_block(name, pad, sheet)]
    duty = sheet.duty_of(block)
    cases = [] if duty is None else [case for name, case in duty.cases.items() if name in _PUSHED]
    if not locking or not cases:
        raise sheet.not_assessed(
            f"no thrust of {block.id} is known: it wants a locked pad and a duty", block.where
        )
    T = max(thrust_of(block, name, case, sheet) for name in locking for case in cases)
    return max(sheet.work("M", upright_couple, T=T, h=h) for h in heights)


def _moved(weight: _Carried, M: NewtonMetres, sheet: Sheet) -> _Carried:
    return _Carried(weight.G, sheet.work("x_e", weight_moved, x=weight.x, M=M, G=weight.G))


def _pressed(name: str, R: Newtons, R_0: Newtons, block: CylinderBlock, sheet: Sheet) -> Judgement:
    """The carrying face of a pad as the engine is jolted."""
    depth = sheet.take(f"d_{name}", face_of_cut_out(block, name, sheet).bearing_depth)
    A = sheet.work(f"A_{name}", rectangle_area, b=sheet.take(f"b_{name}", block.pads[name].width), h=depth)
    F = sheet.work(f"F_{name}", with_shock, R=R, n=sheet.limit("jolts", "n"), R_0=R_0)
    p = sheet.work(f"p_{name}", pressure_on_face, F=F, A=A)
    return sheet.at_most(p, sheet.limit("pressure", "p_a")).else_says(
        "pad {item} pressed by {found}, {limit} allowed"
    )


def _within_pad(name: str, weight: _Carried, block: CylinderBlock, sheet: Sheet) -> Judgement:
    """The weight on a single pad acts within its width, or the block tips over the edge of it."""
    pad = block.pads[name]
    w = sheet.take(f"b_{name}", pad.width)
    inside = sheet.work("c", inside_of_edge, w=w, x=weight.x, x_1=sheet.take(f"x_{name}", pad.at))
    return sheet.stays(inside, w).else_says(
        "block tips over the edge of its only carrying pad {item}: {left} left"
    )


def _weight(block: CylinderBlock, sheet: Sheet) -> Newtons:
    drawn = mass_drawn(block, sheet, sheet.take)
    if drawn is None:
        raise sheet.not_assessed(f"no mass of {block.id} and of what is on it is drawn", block.where)
    return sheet.work("G", weight_of, m=drawn.value, g=sheet.look_up("g", lambda: GRAVITY))


def _loads(names: list[str], weight: _Carried, block: CylinderBlock, sheet: Sheet) -> dict[str, _Load]:
    places = {name: sheet.take(f"x_{name}", block.pads[name].at) for name in names}
    if len(names) == 1:
        return {names[0]: _Load(weight.G, 1.0)}
    if len(names) == 2:
        one, other = names
        return {name: _of_two(name, far, places, weight, sheet) for name, far in ((one, other), (other, one))}
    pads = {name: _spring(name, x, block, sheet) for name, x in places.items()}
    if len(names) == 3:
        return {name: _of_three(name, pads, weight, sheet) for name in names}
    return _on_springs(pads, weight, sheet)


def _of_two(name: str, far: str, places: dict[str, Metres], weight: _Carried, sheet: Sheet) -> _Load:
    r = sheet.work(f"r_{name}", share_on_line, x=weight.x, x_j=places[name], x_k=places[far])
    return _Load(sheet.work(f"R_{name}", load_by_share, r=r, G=weight.G), r)


def _spring(name: str, x: Metres, block: CylinderBlock, sheet: Sheet) -> _Spring:
    pad = block.pads[name]
    return _Spring(x, sheet.take(f"k_{name}", pad.stiffness), sheet.take(f"h_{name}", pad.carry_height))


def _of_three(name: str, pads: dict[str, _Spring], weight: _Carried, sheet: Sheet) -> _Load:
    """What closes the gap between a pad and the block on the two others."""
    own = pads[name]
    j, k = (pad for far, pad in pads.items() if far != name)
    p = sheet.work(f"p_{name}", share_on_line, x=own.x, x_j=j.x, x_k=k.x)
    q = sheet.work(f"q_{name}", share_on_line, x=own.x, x_j=k.x, x_k=j.x)
    s_j = sheet.work("s_j", share_on_line, x=weight.x, x_j=j.x, x_k=k.x)
    s_k = sheet.work("s_k", share_on_line, x=weight.x, x_j=k.x, x_k=j.x)
    gap = {
        "e": sheet.work(f"e_{name}", out_of_line, h=own.h, p=p, h_j=j.h, q=q, h_k=k.h),
        "G": weight.G,
        "w": sheet.work(f"w_{name}", sinking_of_line, p=p, s_j=s_j, k_j=j.k, q=q, s_k=s_k, k_k=k.k),
        "c": sheet.work(f"c_{name}", give_of_three, k=own.k, p=p, k_j=j.k, q=q, k_k=k.k),
    }
    return _Load(
        sheet.work(f"R_{name}", load_of_three, **gap), sheet.work(f"r_{name}", share_of_three, **gap)
    )


def _on_springs(pads: dict[str, _Spring], weight: _Carried, sheet: Sheet) -> dict[str, _Load]:
    """A stiff block on four pads or more that give, each at its own height."""
    S_0: NewtonsPerMetre = 0.0
    S_1 = S_2 = H_0 = H_1 = 0.0
    for x, k, h in pads.values():
        S_0 = sheet.work("S_0", stiffness_added, s_0=S_0, k=k)
        S_1 = sheet.work("S_1", moment_added, s_0=S_1, k=k, x=x)
        S_2 = sheet.work("S_2", product_added, s_0=S_2, k=k, x=x, y=x)
        H_0 = sheet.work("H_0", moment_added, s_0=H_0, k=k, x=h)
        H_1 = sheet.work("H_1", product_added, s_0=H_1, k=k, x=h, y=x)
    b = sheet.work("b", tilt_of_block, G=weight.G, x=weight.x, S_0=S_0, S_1=S_1, S_2=S_2, H_0=H_0, H_1=H_1)
    a = sheet.work("a", sinking_of_block, G=weight.G, H_0=H_0, b=b, S_1=S_1, S_0=S_0)
    loads = {}
    for name, (x, k, h) in pads.items():
        R = sheet.work(f"R_{name}", load_of_pad, k=k, h=h, a=a, b=b, x=x)
        loads[name] = _Load(R, sheet.work(f"r_{name}", share_of_weight, R=R, G=weight.G))
    return loads


@rule(
    "frame.put-in-and-out",
    title="The edges of a cut-out lead a locked pad in, and the stated means draw all of them out again with twice the "
    "force to enter and the weight, or free this one by at most 120 K of heat",
    on=LocatingFace,
    grade=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="A block that has rusted into its frame for ten years must come out without being cut out.",
    leaves_out="the force to enter (fit.locating-lugs), the way through frames and bracing (clearances), paint and "
    "lagging that the heat reaches",
    against=(),
    limits=[
        Limit("heat", "120 K", "temperature difference", COMMON_PRACTICE, "greatest heat that frees a pad"),
        Limit("free", "0.03 mm", "length", COMMON_PRACTICE, "clearance at which a heated pad comes free"),
        Limit(
            "proof_share",
            "0.67",
            "ratio",
            COMMON_PRACTICE,
            "greatest pressure under the means over proof stress",
        ),
        Limit(
            "friction",
            "0.05",
            "ratio",
            COMMON_PRACTICE,
            "least friction of steel faces that are drawn together, with any paste between them",
        ),
    ],
    edition=2,
)
def put_in_and_out(face: LocatingFace, sheet: Sheet) -> Judgement:
    """Chamfer against squareness; force to leave against the means, or heat; the pressure where they press."""
    pad_in = seated(face, sheet)
    name = sheet.read("pad", face.pad)
    if not locks_block(name, pad_in.pad, sheet):
        raise sheet.not_applicable("this pad slides")
    square = sheet.work("c", chamfer_to_lead_in, q=sheet.take("q", pad_in.pad.squareness))
    led = sheet.at_least(sheet.take("c_s", face.chamfer), square).else_says(
        "chamfer of the cut-out {found}, {limit} wanted to lead the pad in"
    )
    fastenings = fastenings_of_pad(pad_in.block, name, sheet)
    if not fastenings:
        raise sheet.not_assessed(f"no fastening of pad {name} of {pad_in.block.id} is stated", face.where)
    out = sheet.each([(one.id, one) for one in fastenings], lambda item: _out(item[1], pad_in, sheet))
    return sheet.worst(led, out)


def _out(fastening: FrameFastening, pad_in: Seated, sheet: Sheet) -> Judgement:
    means = fastening.drawn_out
    if sheet.read("drawn out by", means.by) == "heat":
        block = pad_in.block
        heat = sheet.work(
            "ΔT",
            cooling_for_entry,
            delta=with_form(interference_of(pad_in, sheet), pad_in, sheet),
            c=sheet.limit("free", "c_f"),
            D=sheet.take("w", pad_in.pad.width),
            alpha=sheet.look_up("α", sheet.material_of(block).expansion, of=block, at=DRAWING_TEMPERATURE),
        )
        return sheet.at_most(heat, sheet.limit("heat", "ΔT_a")).else_says(
            "pad comes free at {found} of heat, {limit} allowed"
        )
    entering, told = _entering(pad_in, sheet)
    F = sheet.work("F_o", force_to_leave, F=entering, G=_weight(pad_in.block, sheet))
    sheet.read("drawn out on", means.on)
    pressure = sheet.work("p", pressure_on_face, F=F, A=sheet.take("A_m", means.face))
    R = sheet.look_up(
        "R_p", sheet.material_of(pad_in.block).proof_stress, of=pad_in.block, at=DRAWING_TEMPERATURE
    )
    allowed = sheet.work("S", share_of_strength, k=sheet.limit("proof_share", "k"), R=R)
    return sheet.worst(
        sheet.at_least(sheet.take("F_m", means.force), F).else_says(
            "{item} draws the pad out with {found}, {limit} wanted"
        ),
        sheet.at_most(pressure, allowed).else_says("{item} presses the block by {found}, {limit} allowed"),
        *told,
    )


def _entering(pad_in: Seated, sheet: Sheet) -> tuple[Newtons, list[Judgement]]:
    """Force to enter of all locked pads of a block together; a friction below that of any paste is told.

    It is counted at the least that a paste leaves.
    """
    force: Newtons = 0.0
    least, told = sheet.limit("friction", "μ_0"), list[Judgement]()
    for face in sheet.belonging_to(pad_in.block, LocatingFace):
        one = seated(face, sheet)
        if locks_block(sheet.read(f"pad of {face.id}", face.pad), one.pad, sheet):
            sigma = stress_of(
                one, with_form(interference_of(one, sheet), one, sheet), DRAWING_TEMPERATURE, sheet
            )
            mu = sheet.take(f"μ of {face.id}", face.friction)
            known = sheet.at_least(mu, least).else_says(
                "friction of the pads is said to be {found}, {limit} is the least with any paste"
            )
            told += [] if known.holds else [known]
            A = area_of_faces(one, sheet)
            added = sheet.work("F_2", force_to_enter, mu=max(mu, least), sigma=sigma, A=A)
            force = sheet.work("F", sum_of_loads, F_1=force, F_2=added)
    return force, told


RULES: tuple[Rule, ...] = (carrying_pads, put_in_and_out)
