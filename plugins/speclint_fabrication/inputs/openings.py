"""Openings in the plates of a welded block: which they are, their shell, its pressure, strength and heat."""

from __future__ import annotations

from msgspec import Struct

from speclint import Sheet
from speclint.equations import Metres, Pascals
from speclint.facts import weldment_of
from speclint.handbook.materials import Material, share_of_strength
from speclint.specs import (
    BlockOpening,
    Casting,
    Component,
    CutOpening,
    CylinderBlock,
    FlatWall,
    LoadCase,
    NotStated,
    Plate,
    ShellOpening,
    Stated,
    SteamPassage,
    SteamPipe,
    Weldment,
)
from speclint_fabrication.formulae.openings import chord_aslant
from speclint_fabrication.inputs.plates import metal_of, rolled_thickness, wall_left
from speclint_fabrication.inputs.pressures import greatest_on
from speclint_fabrication.inputs.temperatures import temperature_of_wall


class Cut(Struct, frozen=True):
    """An opening, where it is cut, and what may be on the inside of its plate."""

    name: str
    opening: BlockOpening | ShellOpening
    weldment: Weldment
    block: CylinderBlock


class Shell(Struct, frozen=True):
    """A round shell in a load case: inside radius, net thickness, corrosion, pressure and allowable tension."""

    r: Metres
    e: Metres
    c: Metres
    P: Pascals
    f: Pascals


def welded(block: CylinderBlock, sheet: Sheet) -> Weldment:
    """The weldment of a block; a block without one has no openings that are worked here."""
    weldment = weldment_of(block, sheet)
    if weldment is not None:
        return weldment
    if not (block.openings or block.ports):
        raise sheet.not_applicable("no opening of the block is stated")
    if sheet.said("construction", block.construction) == "cast":
        raise sheet.not_covered("openings of a casting want a proof test or finite elements")
    raise sheet.not_assessed(f"no weldment is stated that makes {block.id}", block.where)


def cuts_of(block: CylinderBlock, sheet: Sheet) -> list[Cut]:
    """The openings of a block, and those of its weldment under which none of the block's stands."""
    weldment = welded(block, sheet)
    openings: list[tuple[str, BlockOpening | ShellOpening]] = [
        *block.openings.items(),
        *((name, one) for name, one in weldment.openings.items() if name not in block.openings),
    ]
    return [Cut(name, opening, weldment, block) for name, opening in openings]


def seats_cut_in(block: CylinderBlock, sheet: Sheet) -> list[Cut]:
    """The bores of valve seats as holes without a branch, each in its flat wall or plate; a seat does not stay it.

    Those that name neither are left out (:func:`silent_seats`), and a block that states none asks for no weldment.
    """
    if not block.seat_bores:
        return []
    weldment = weldment_of(block, sheet)
    if weldment is None:
        return []
    silent, found = silent_seats(block, sheet), []
    for name, bore in block.seat_bores.items():
        if name not in silent:
            opening = ShellOpening(
                diameter=bore.diameter,
                plate=bore.plate,
                flat_wall=bore.flat_wall,
                to_edge=bore.wall,
                set=Stated("drilled", bore.diameter.where),
            )
            found.append(Cut(name, opening, weldment, block))
    return found


def silent_seats(block: CylinderBlock, sheet: Sheet) -> list[str]:
    """The seat bores of a welded block that name no wall and no plate in which they are cut."""
    return [
        name
        for name, bore in block.seat_bores.items()
        if not sheet.is_stated(f"flat wall of {name}", bore.flat_wall)
        and not sheet.is_stated(f"plate of {name}", bore.plate)
    ]


def is_in_flat_wall(cut: Cut, sheet: Sheet) -> bool:
    """Whether an opening is cut in a flat wall; else in a plate that serves as a round shell."""
    return sheet.is_stated(f"flat wall of {cut.name}", cut.opening.flat_wall)


def wall_of(cut: Cut, sheet: Sheet) -> FlatWall:
    """The flat wall in which an opening is cut."""
    return sheet.entry(cut.weldment.walls, cut.opening.flat_wall, f"walls of {cut.weldment.id}")


def plate_of(cut: Cut, sheet: Sheet) -> Plate:
    """The round plate in which an opening is cut; not assessed where it serves as something else."""
    plate = sheet.entry(cut.weldment.plates, cut.opening.plate, f"plates of {cut.weldment.id}")
    serves = sheet.read(f"plate of {cut.name} serves as", plate.serves_as)
    if serves != "shell":
        said = f"opening {cut.name} is cut in a {serves}, whose flat wall is not named"
        raise sheet.not_assessed(said, cut.opening.where)
    return plate


def bores_of_plate(name: str, block: CylinderBlock, sheet: Sheet) -> list[str]:
    """The bores of a block whose barrel is a plate."""
    return [bore for bore, one in block.bores.items() if sheet.said(f"plate of {bore}", one.plate) == name]


def shell_of(
    name: str, plate: Plate, sides: list[str], bores: list[str], cut: Cut, case: LoadCase, sheet: Sheet
) -> Shell:
    """A round plate in a load case."""
    block = cut.block
    c = sheet.take(f"c of {name}", plate.corrosion_allowance)
    return Shell(
        r=shell_inside(name, plate, bores, cut, sheet),
        e=wall_left(name, plate, sides, sheet),
        c=c,
        P=max(greatest_on(side, case, block, sheet) for side in sides),
        f=allowed_in(name, plate, sides, block, case, sheet),
    )


def shell_inside(name: str, plate: Plate, bores: list[str], cut: Cut, sheet: Sheet) -> Metres:
    """Inside radius of a round plate: of a barrel the bore is its inside."""
    if bores:
        return max(sheet.take(f"D of {bore}", cut.block.bores[bore].diameter) for bore in bores) / 2
    return sheet.take(f"D of {name}", plate.inside_diameter) / 2


def sides_of_cut(cut: Cut, bores: list[str], sheet: Sheet) -> list[str]:
    """What may be on the inside of the plate: the steam that passes, live where nothing says; in a barrel the cylinder.

    A bore that names no plate may have any as its barrel.
    """
    carried = "live steam"
    if sheet.is_stated(f"{cut.name} carries", cut.opening.carries):
        carried = steam_through(cut, sheet)
    barrel = bores or not all(
        sheet.is_stated(f"plate of {bore}", one.plate) for bore, one in cut.block.bores.items()
    )
    return [carried, *(["cylinder"] if barrel and carried != "cylinder" else [])]


def steam_through(cut: Cut, sheet: Sheet) -> str:
    """What is said to pass an opening."""
    word: Stated[str] | NotStated = cut.opening.carries  # type: ignore[assignment]  # words of two lists
    return sheet.read(f"{cut.name} carries", word)


def allowed_in(
    name: str, plate: Plate, sides: list[str], block: CylinderBlock, case: LoadCase, sheet: Sheet
) -> Pascals:
    """Allowable tension of a plate in a load case, as rolled; on test that of a test."""
    at = temperature_of_wall(name, sides, case, block, sheet)
    metal, rolled = metal_of(name, plate, sheet), rolled_thickness(name, plate, sheet)
    if case.name == "test":
        R = sheet.look_up(f"R of {name}", metal.proof_stress, at=at, thickness=rolled)
        return sheet.work(f"f of {name}", share_of_strength, k=sheet.limit("test_share", "k_t"), R=R)
    return sheet.look_up(f"f of {name}", metal.allowable_tension, at=at, wall=rolled)


def hole_of(name: str, opening: CutOpening, sheet: Sheet) -> Metres:
    """The longest chord of an opening in the plane worked: of a round one its diameter, of another its longer side."""
    if sheet.is_stated(f"diameter of {name}", opening.diameter):
        d = sheet.take(f"d of {name}", opening.diameter)
        if isinstance(opening, BlockOpening) and sheet.is_stated(f"bore of {name}", opening.bore):
            d = max(d, sheet.take(f"d_b of {name}", opening.bore))  # what fills a hole is no wider than it
    elif isinstance(opening, BlockOpening) and not sheet.is_stated(f"width of {name}", opening.width):
        d = sheet.take(f"d of {name}", opening.bore)
    else:
        one, other = sheet.take(f"b of {name}", opening.width), sheet.take(f"a of {name}", opening.length)
        if max(one, other) > 2 * min(one, other):
            raise sheet.not_covered(
                f"{name} is more than twice as long as it is wide: finite elements are wanted"
            )
        d = max(one, other)
    if not sheet.is_stated(f"angle of {name}", opening.angle):
        return d
    return sheet.work(f"d_φ of {name}", chord_aslant, d=d, φ=sheet.take(f"φ of {name}", opening.angle))


def branch_of(cut: Cut, sheet: Sheet) -> SteamPassage | SteamPipe | None:
    """The passage or pipe that is welded into an opening; None where none is named, or it is none of the block's."""
    if not sheet.is_stated(f"branch at {cut.name}", cut.opening.branch):
        return None
    name = sheet.read(f"branch at {cut.name}", cut.opening.branch)
    parts: list[SteamPassage | SteamPipe] = [*sheet.belonging_to(cut.block, SteamPassage)]
    parts += sheet.belonging_to(cut.block, SteamPipe)
    return next((part for part in parts if part.id == name), None)


def piece_of(cut: Cut, sheet: Sheet) -> Component | None:
    """The piece of metal that is welded in: the branch, or the casting that becomes it; None where none is named."""
    part = branch_of(cut, sheet)
    if isinstance(part, SteamPassage):
        return next(
            iter(sheet.belonging_to(part, Casting)), part
        )  # a casting's one link says what it becomes
    return part


def wall_of_branch(cut: Cut, sheet: Sheet) -> Metres:
    """Wall of a branch: as stated with the opening, and no more than that of the pipe which it is."""
    name, part, walls = cut.name, branch_of(cut, sheet), []
    if isinstance(part, SteamPipe) and sheet.is_stated("wall of the branch", part.wall):
        walls.append(sheet.take(f"e_b of {part.id}", part.wall))
    if not walls or sheet.is_stated("wall of the branch", cut.opening.wall):
        walls.append(sheet.take(f"e_b of {name}", cut.opening.wall))
    return min(walls)


def strength_of_branch(cut: Cut, sides: list[str], e: Metres, case: LoadCase, sheet: Sheet) -> Pascals:
    """Allowable tension of a branch, as hot as its shell, on test that of a test: of the weaker of its metals."""
    if case.name != "test":
        return tension_of_branch(cut, sides, e, case, sheet)
    at, name = temperature_of_wall(cut.name, sides, case, cut.block, sheet), cut.name
    proofs = [
        sheet.look_up(f"R_b of {name}", metal.proof_stress, at=at, thickness=e)
        for metal in _metals_of_branch(cut, sheet)
    ]
    return sheet.work(f"f_b of {name}", share_of_strength, k=sheet.limit("test_share", "k_t"), R=min(proofs))


def tension_of_branch(cut: Cut, sides: list[str], e: Metres, case: LoadCase, sheet: Sheet) -> Pascals:
    """Allowable tension of a branch in every case alike, as hot as its wall: of the weaker of its metals."""
    at = temperature_of_wall(cut.name, sides, case, cut.block, sheet)
    return min(
        sheet.look_up(f"f_b of {cut.name}", metal.allowable_tension, at=at, wall=e)
        for metal in _metals_of_branch(cut, sheet)
    )


def _metals_of_branch(cut: Cut, sheet: Sheet) -> list[Material]:
    """The metal of a branch: of the piece that it is, and that which its opening states."""
    piece = piece_of(cut, sheet)
    metals = [] if piece is None else [sheet.material_of(piece)]
    if piece is None or sheet.is_stated("material of the branch", cut.opening.material):
        metals.append(sheet.material_named("the branch", cut.opening.material))
    return metals
