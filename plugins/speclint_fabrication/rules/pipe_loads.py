"""Loads that steam pipes bring on the openings of a block."""

from __future__ import annotations

from speclint import FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.specs import CylinderBlock, LoadCase, PipeEnd, SteamPipe
from speclint_fabrication.formulae.pipe_loads import force_on_branch, moment_on_branch, share_of_pipe_load
from speclint_fabrication.inputs.openings import (
    Cut,
    Shell,
    bores_of_plate,
    cuts_of,
    hole_of,
    is_in_flat_wall,
    plate_of,
    shell_of,
    sides_of_cut,
)
from speclint_fabrication.rules.openings import TEST
from speclint_fabrication.sources import LOCAL_LOADS

#: A pipe that ends at an opening, with its name for the sheet.
_Piped = tuple[str, PipeEnd, Cut]


@rule(
    "opening.pipe-load",
    title="Force and moment of each steam pipe take at most 5 % of what the shell round its opening bears; above that "
    "an analysis of the shell with its branch is wanted",
    wrong="loads of {item} take {found} of what the shell bears, {limit} without an analysis",
    on=CylinderBlock,
    cases=("starting", "running"),
    grade=Grade.QUERY,
    cites=[LOCAL_LOADS, FIRST_PRINCIPLES],
    why="A pipe that grows hot pushes at its branch, and the shell cracks round it though it bears its pressure.",
    leaves_out="how the loads of a pipe were worked (pipe.flexibility), a pipe that ends in a flat wall, the branch "
    "itself, and what the shell bears beyond the least of the charts",
    against=(),
    limits=[
        Limit("share", "5 %", "ratio", LOCAL_LOADS.at("set here: no analysis below"), "greatest share"),
        TEST,
    ],
)
def pipe_load(block: CylinderBlock, case: LoadCase, sheet: Sheet) -> Judgement:
    """u = F/(1.81 f e²) + M/(4.90 f e² d/4): the code's charts give no less, whatever the diameters."""
    cuts = {cut.name: cut for cut in cuts_of(block, sheet)}
    piped = list(_piped(block, cuts, sheet))
    if not piped:
        raise sheet.not_applicable("no steam pipe ends at an opening of the block")
    return sheet.each([(one[0], one) for one in piped], lambda item: _judged(item[1], case, sheet))


def _piped(block: CylinderBlock, cuts: dict[str, Cut], sheet: Sheet) -> list[_Piped]:
    found: list[_Piped] = []
    for pipe in sheet.belonging_to(block, SteamPipe):
        for end in (pipe.starts_at, pipe.ends_at):
            if (
                not sheet.is_stated(f"part at an end of {pipe.id}", end.part)
                or sheet.follow(end.part) is not block
            ):
                continue
            found.append((pipe.id, end, sheet.entry(cuts, end.opening, f"openings of {block.id}")))
    return found


def _judged(piped: _Piped, case: LoadCase, sheet: Sheet) -> Judgement:
    name, end, cut = piped
    if is_in_flat_wall(cut, sheet):
        raise sheet.not_covered(f"{name} ends in a flat wall: an analysis by finite elements is wanted")
    shell, d = _shell(cut, case, sheet), hole_of(cut.name, cut.opening, sheet)
    F_a = sheet.work(f"F_a of {name}", force_on_branch, f=shell.f, e=shell.e)
    M_a = sheet.work(f"M_a of {name}", moment_on_branch, f=shell.f, e=shell.e, d=d)
    F, M = sheet.take(f"F of {name}", end.force), sheet.take(f"M of {name}", end.moment)
    u = sheet.work(f"u of {name}", share_of_pipe_load, F=F, M=M, F_a=F_a, M_a=M_a)
    return sheet.at_most(u, sheet.limit("share", "u_a"))


def _shell(cut: Cut, case: LoadCase, sheet: Sheet) -> Shell:
    """The round plate in which the opening is cut."""
    plate = plate_of(cut, sheet)
    of_plate = sheet.read(f"plate of {cut.name}", cut.opening.plate)
    bores = bores_of_plate(of_plate, cut.block, sheet)
    return shell_of(of_plate, plate, sides_of_cut(cut, bores, sheet), bores, cut, case, sheet)


RULES = (pipe_load,)
