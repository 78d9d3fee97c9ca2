"""How far a pipe must give between cold and hot: by its own growth, and by that of the blocks at its ends."""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import TYPE_CHECKING

from speclint.equations import FIRST_PRINCIPLES, Kelvins, Metres, Radians, formula
from speclint.handbook.fits import DRAWING_TEMPERATURE, share_of_size
from speclint.handbook.steam import movement_to_take_up, pipe_growth, rise_from_cold
from speclint.quantities import Measure
from speclint.rules import Sheet, Worked, worked
from speclint.specs import HOT_CASES, BlockOpening, CylinderBlock, LensJoint, NotStated, SteamPipe, Tie

if TYPE_CHECKING:
    from speclint.specs import LoadCase, PipeEnd

#: Least distance of the anchors of a pipe over that of its faces: common practice, as in pipe.anchors-at-its-ends.
_LEAST_OF_FACES = 0.8


@formula("s = s_0 + |Δ|", cites=[FIRST_PRINCIPLES])
def movements_together(s_0: Metres, Δ: Metres) -> Metres:
    """Movement of the ends of a pipe, added up end by end whatever their directions.

    s = s_0 + |Δ|

    s_0: of the ends before, m. Δ: of one more, m, either way. Returns m.

    >>> round(movements_together(s_0=0.002, Δ=-0.001), 6)
    0.003
    """
    return s_0 + abs(Δ)


def blocks_at_ends(pipe: SteamPipe, sheet: Sheet) -> Iterator[tuple[str, PipeEnd, CylinderBlock]]:
    """The ends of a pipe that stand at a block, "starts" or "ends", each with its block."""
    for name, end in (("starts", pipe.starts_at), ("ends", pipe.ends_at)):
        if sheet.is_stated(f"part at which it {name}", end.part):
            part = sheet.follow(end.part)
            if isinstance(part, CylinderBlock):
                yield name, end, part


def openings_of(pipe: SteamPipe, sheet: Sheet) -> Iterator[tuple[PipeEnd, CylinderBlock, BlockOpening]]:
    """The openings of blocks at which a pipe starts or ends, each with its block."""
    for name, end, block in blocks_at_ends(pipe, sheet):
        if sheet.is_stated(f"opening at which it {name}", end.opening):
            yield end, block, sheet.entry(block.openings, end.opening, f"the openings of {block.id}")


def movement_by_blocks(pipe: SteamPipe, case: LoadCase, sheet: Sheet) -> Worked | None:
    """How far the openings at the ends of a pipe move from cold to hot as their blocks grow from their fixed points, m.

    None where no opening states its place.
    """
    found: Worked | None = None
    for end, block, opening in openings_of(pipe, sheet):
        if not sheet.is_stated(f"place of the opening of {block.id}", opening.at):
            continue
        T = sheet.take("T_b", temperature_of_block(block, case, sheet))
        ΔT = sheet.work("ΔT_b", rise_from_cold, T=T, T_0=DRAWING_TEMPERATURE)
        alpha = sheet.look_up("α_b", sheet.material_of(block).expansion, of=block, at=T)
        growth = sheet.work("Δ_b", pipe_growth, alpha=alpha, L=sheet.take("x", opening.at), ΔT=ΔT)
        before = found if found is not None else Worked(0.0)
        moved = sheet.work("s_b", movements_together, s_0=before.value, Δ=growth)
        found = Worked(moved, (*before.places, *worked(moved, end.opening, opening.at).places))
    return found


def temperature_of_block(block: CylinderBlock, case: LoadCase, sheet: Sheet) -> Measure | Tie | NotStated:
    """What a load case states of a block's metal; where the duty of the pipe states none, what its own duty does."""
    here: Measure | Tie | NotStated = case.temperature_of(block)
    if not sheet.is_stated(f"temperature of {block.id}", here):
        name, duty = case.name, sheet.duty_of(block)
        own = {str(one): its_case for one, its_case in duty.cases.items()} if duty is not None else {}
        if name in own:
            here = own[name].temperature_of(block)
    return here


def movement_of_anchors(pipe: SteamPipe, case: LoadCase, sheet: Sheet) -> Metres:
    """The movement of the anchors of a pipe, m: the greater of the stated one and of that of the blocks at its ends.

    That of the blocks alone where both ends stand at one; what moves another end, such as a boiler, is to be stated.
    """
    by_blocks = movement_by_blocks(pipe, case, sheet)
    if by_blocks is None:
        return sheet.take("s", pipe.anchor_movement)
    moved: Metres = by_blocks.value
    placed = [
        one for _, _, one in openings_of(pipe, sheet) if sheet.is_stated("place of the opening", one.at)
    ]
    if len(placed) == 2 and not sheet.is_stated("movement of the anchors", pipe.anchor_movement):
        return moved
    return max(moved, sheet.take("s", pipe.anchor_movement))


def movement_of_pipe(pipe: SteamPipe, case: LoadCase, sheet: Sheet) -> Metres:
    """The movement that a pipe must take up between its anchors, m: its own growth and the movement of the anchors."""
    growth = growth_of_pipe(pipe, sheet.take("T", case.temperature_of(pipe)), sheet)
    return sheet.work("Y", movement_to_take_up, Δ=growth, s=movement_of_anchors(pipe, case, sheet))


def movement_in_service(pipe: SteamPipe, sheet: Sheet) -> Metres:
    """The movement of the anchors of a pipe that is put in cold, m: the greatest of any hot case of its duty.

    The stated one counts alone where the pipe sees no duty, or where its cases state no temperature of the blocks.
    """
    hot = _hot_cases(pipe, sheet)
    if not hot:
        return sheet.take("s", pipe.anchor_movement)
    return max(movement_of_anchors(pipe, case, sheet) for case in hot)


def _hot_cases(pipe: SteamPipe, sheet: Sheet) -> list[LoadCase]:
    """The hot cases of the duty of a pipe that state the temperature of the blocks at its ends."""
    duty = sheet.duty_of(pipe)
    cases = {str(name): case for name, case in duty.cases.items()} if duty is not None else {}
    return [cases[name] for name in HOT_CASES if name in cases and _is_known(pipe, cases[name], sheet)]


def _is_known(pipe: SteamPipe, case: LoadCase, sheet: Sheet) -> bool:
    """Whether a case states the temperature of each block at the ends of a pipe."""
    blocks = [block for _, block, _ in openings_of(pipe, sheet)]
    return all(sheet.is_stated(f"temperature of {one.id}", case.temperature_of(one)) for one in blocks)


def growth_of_pipe(pipe: SteamPipe, T: Kelvins, sheet: Sheet) -> Metres:
    """Growth of a pipe between its anchors from cold to a temperature, m."""
    ΔT = sheet.work("ΔT", rise_from_cold, T=T, T_0=DRAWING_TEMPERATURE)
    alpha = sheet.look_up("α", sheet.material_of(pipe).expansion, of=pipe, at=T)
    return sheet.work("Δ", pipe_growth, alpha=alpha, L=distance_of_anchors(pipe, sheet), ΔT=ΔT)


def distance_of_anchors(pipe: SteamPipe, sheet: Sheet) -> Metres:
    """Distance over which a pipe grows, m: as stated, and no less than its share of that of the faces at its ends."""
    U = sheet.take("U", pipe.anchor_distance)
    faces = [one for one in (pipe.faces_gap, pipe.faces_length) if sheet.is_stated("faces of its ends", one)]
    if not faces:
        return U
    apart = max(sheet.take_nominal(f"L_{number}", one) for number, one in enumerate(faces, start=1))
    return max(U, sheet.work("U_l", share_of_size, k=_LEAST_OF_FACES, t=apart))


@formula("φ = arctan(Y/U)", cites=[FIRST_PRINCIPLES])
def angle_of_swing(Y: Metres, U: Metres) -> Radians:
    """Angle by which a pipe turns between the lens joints at its ends when one of them moves across it.

    φ = arctan(Y/U)

    Y: movement, m. U: distance of the joints, m, above 0. Returns rad.

    Hand working: 21 mm on 2.1 m is 0.01 rad, or 0.573°.

    >>> round(math.degrees(angle_of_swing(Y=0.021, U=2.1)), 3)
    0.573
    """
    return math.atan(Y / U)


def swing_needed(lens: LensJoint, case: LoadCase, sheet: Sheet) -> Worked | None:
    """The angle by which a pipe turns in its lens joints to take up its movement, rad; None where they do not."""
    pipe = sheet.follow(lens.of)
    if not (isinstance(pipe, SteamPipe) and sheet.is_stated("taken up by", pipe.takes_up_by)):
        return None
    if sheet.read("taken up by", pipe.takes_up_by) != "lens joints":
        return None
    Y, U = movement_of_pipe(pipe, case, sheet), sheet.take("U", pipe.anchor_distance)
    return worked(sheet.work("φ", angle_of_swing, Y=Y, U=U), pipe.takes_up_by, pipe.anchor_distance)


def swing_of_lens(lens: LensJoint, case: LoadCase, sheet: Sheet) -> Radians:
    """The swing that a lens joint must allow, rad: as stated, and no less than its pipe needs in any hot case."""
    by_pipe = swing_needed(lens, case, sheet)
    if by_pipe is None:
        return sheet.take("δ_s", lens.swing)
    swing: Radians = max([by_pipe.value, *_swings_in_other_cases(lens, case, sheet)])
    return max(swing, sheet.take("δ_s", lens.swing)) if sheet.is_stated("swing", lens.swing) else swing


def _swings_in_other_cases(lens: LensJoint, case: LoadCase, sheet: Sheet) -> Iterator[Radians]:
    pipe = sheet.follow(lens.of)
    assert isinstance(pipe, SteamPipe)  # as it swings
    for other in _hot_cases(pipe, sheet):
        if other.name != case.name and sheet.is_stated("temperature of the pipe", other.temperature_of(pipe)):
            needed = swing_needed(lens, other, sheet)
            assert needed is not None  # as in the case that is judged
            yield needed.value
