"""The cylinders of a block: liner, piston, ends, covers, valves and ports, each in its place once."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import Rule, Sheet, ToFill, filled_once, replace
from speclint.facts import ends_of, liners_of
from speclint.specs import (
    Bore,
    Casting,
    CylinderBlock,
    CylinderCover,
    CylinderEnd,
    CylinderLiner,
    Piston,
    PistonRing,
    PoppetValve,
    SteamPassage,
    ValveSeat,
)
from speclint_wholeness.inputs import blanked, closed, entries, place, twice_where_unlisted

_SIDES = ("front", "back")


def _unlined(name: str, bore: Bore, sheet: Sheet) -> bool:
    return sheet.is_stated(f"liner of bore {name}", bore.lined) and not sheet.read(
        f"bore {name} lined", bore.lined
    )


def _liners(block: CylinderBlock, sheet: Sheet) -> Iterator[ToFill]:
    """For each bore the liner that names it; where it takes none, the rings that bear on the block.

    Where the block lists no bores, two liners that name one are told all the same.
    """
    yield from entries(block, "bores", sheet)
    yield from twice_where_unlisted(
        "bore", block, "bores", CylinderLiner, sheet, by="housed_in", key="in_bore"
    )
    for name, bore in block.bores.items():
        if _unlined(name, bore, sheet):
            yield _rings(name, bore, block, sheet)
        else:
            inside = place(
                f"bore {name}",
                block,
                CylinderLiner,
                sheet,
                by="housed_in",
                named=("in_bore", name),
                entry=bore,
            )
            yield _with_unnamed(inside, block, sheet) if len(block.bores) == 1 else inside


def _with_unnamed(inside: ToFill, block: CylinderBlock, sheet: Sheet) -> ToFill:
    """The one bore of a block with the liners that name no bore, where there are several in all."""
    unnamed = [
        one
        for one in sheet.fillers(block, CylinderLiner, by="housed_in")
        if not sheet.is_stated(f"bore of {one.id}", one.in_bore)
    ]
    both = (*inside.fillers, *unnamed)
    return replace(inside, fillers=both) if len(both) > 1 else inside


def _rings(name: str, bore: Bore, block: CylinderBlock, sheet: Sheet) -> ToFill:
    """The rings of an unlined bore, for which no liner is to be drawn."""
    liners = sheet.fillers(block, CylinderLiner, by="housed_in", named=("in_bore", name))
    rings = sheet.fillers(block, PistonRing, by="bears_on")
    drawn = f"it is unlined, and {liners[0].id} ({liners[0].where.file}) is drawn for it" if liners else ""
    return ToFill(f"bore {name}", PistonRing.called, rings, 1, 0, drawn, bore.where)


def _ends(block: CylinderBlock, sheet: Sheet) -> Iterator[ToFill]:
    """For each bore an end at the front and one at the back."""
    for bore in block.bores:
        sides: dict[str, list[str]] = {side: [] for side in _SIDES}
        for name, end in ends_of(block, bore, sheet).items():
            sides.setdefault(_side(name, end, sheet), []).append(f"end {name}")
        for side in _SIDES:
            yield ToFill(
                f"{side} of bore {bore}", f"{side} end", tuple(sides[side]), where=block.bores[bore].where
            )


def _pistons(block: CylinderBlock, sheet: Sheet) -> Iterator[ToFill]:
    """For each bore with a liner the pistons that run in it; where the block lists no bores, two in one liner."""
    if not sheet.names_under(block, "bores"):
        for liner in sheet.fillers(block, CylinderLiner, by="housed_in"):
            pistons = sheet.fillers(liner, Piston, by="runs_in")
            if len(pistons) > 1:
                yield ToFill(liner.id, Piston.called, pistons, where=liner.where)
    for name, bore in block.bores.items():
        liners = liners_of(block, name, sheet)
        if liners:
            found = {one.id: one for liner in liners for one in sheet.fillers(liner, Piston, by="runs_in")}
            yield ToFill(f"bore {name}", Piston.called, tuple(found.values()), where=bore.where)


def _covers(block: CylinderBlock, sheet: Sheet) -> Iterator[ToFill]:
    """For each end the covers that name it, or that are on its side where it is the only one there.

    Where the block lists no ends, two covers that name one are told all the same.
    """
    yield from twice_where_unlisted("end", block, "ends", CylinderCover, sheet, by="closes", key="of_end")
    sides = [_side(name, end, sheet) for name, end in block.ends.items()]
    for name, end in block.ends.items():
        side = _side(name, end, sheet)
        found = [
            one
            for one in sheet.fillers(block, CylinderCover, by="closes")
            if _closes(one, name, side, sides, sheet)
        ]
        wrong = next((words for one in found if (words := _of_other_side(one, side, sheet))), "")
        yield ToFill(f"end {name}", CylinderCover.called, tuple(found), wrong=wrong, where=end.where)


def _side(name: str, end: CylinderEnd, sheet: Sheet) -> str:
    """The side on which an end is; "" where it is not stated."""
    side = sheet.said(f"side of end {name}", end.side)
    return side or ""


def _closes(cover: CylinderCover, name: str, side: str, sides: list[str], sheet: Sheet) -> bool:
    named = sheet.said(f"end that {cover.id} closes", cover.of_end)
    if named:
        return named == name
    return bool(side) and sides.count(side) == 1 and sheet.said(f"side of {cover.id}", cover.end) == side


def _of_other_side(cover: CylinderCover, side: str, sheet: Sheet) -> str:
    stated = sheet.said(f"side of {cover.id}", cover.end)
    return (
        f"{cover.id} is a {stated} cover, and the end is at the {side}"
        if stated and side and stated != side
        else ""
    )


def _valves(block: CylinderBlock, sheet: Sheet) -> Iterator[ToFill]:
    """For each end the inlet and the exhaust valves that sit on the seats in its seat bores."""
    for name, end in block.ends.items():
        for serves in ("inlet", "exhaust"):
            found = valves_at(block, name, serves, sheet)
            yield ToFill(f"end {name}", f"{serves} valve", found, where=end.where)


def valves_at(block: CylinderBlock, end: str, serves: str, sheet: Sheet) -> tuple[PoppetValve, ...]:
    """The valves at an end that serve inlet or exhaust: by the bore of the upper seat, else of the lower one."""
    upper: dict[str, tuple[PoppetValve, str]] = {}
    lower: dict[str, tuple[PoppetValve, str]] = {}
    for name in block.seat_bores:
        for seat in sheet.fillers(block, ValveSeat, by="pressed_into", named=("in_bore", name)):
            upper |= {one.id: (one, name) for one in sheet.fillers(seat, PoppetValve, by="upper_beat.seat")}
            lower |= {one.id: (one, name) for one in sheet.fillers(seat, PoppetValve, by="lower_beat.seat")}
    found = {**lower, **upper}
    return tuple(
        valve for _, (valve, bore) in sorted(found.items()) if _is_of(block, bore, end, serves, sheet)
    )


def _is_of(block: CylinderBlock, name: str, end: str, serves: str, sheet: Sheet) -> bool:
    """Whether a seat bore belongs to an end, and serves inlet or exhaust."""
    bore = block.seat_bores[name]
    of_end = sheet.said(f"end of seat bore {name}", bore.end) == end
    return of_end and sheet.said(f"what seat bore {name} serves", bore.serves) == serves


def _ports(block: CylinderBlock, sheet: Sheet) -> Iterator[ToFill]:
    """For each end the ports of the block that lead into it and are open."""
    yield from entries(block, "ends", sheet)
    for name, end in block.ends.items():
        found = tuple(
            f"port {port}"
            for port, one in block.ports.items()
            if sheet.said(f"end of port {port}", one.of_end) == name
            and not blanked(f"port {port}", one, sheet)
        )
        yield ToFill(f"end {name}", "port", found, most=0, where=end.where)


def _openings(block: CylinderBlock, sheet: Sheet) -> Iterator[ToFill]:
    """For each port of the block that of the liner which matches it; for each of a liner, that it matches one."""
    for name, port in block.ports.items():
        liners = _liners_at(block, sheet.said(f"end of port {name}", port.of_end) or "", sheet)
        if liners:
            found = max((_matching(liner, name, sheet) for liner in liners), key=len)
            inside = ToFill(f"port {name}", "port of the liner", found, where=port.where)
            yield closed(f"port {name}", name, port, block, inside, sheet)
    for liner in sheet.fillers(block, CylinderLiner, by="housed_in"):
        for name, opening in liner.ports.items():
            if not sheet.is_stated(f"port that {name} of {liner.id} matches", opening.matches):
                yield ToFill(f"port {name} of {liner.id}", "port of the block", where=opening.where)


def _liners_at(block: CylinderBlock, end: str, sheet: Sheet) -> tuple[CylinderLiner, ...]:
    table: CylinderEnd | None = block.ends.get(end)
    bore = sheet.said(f"bore of end {end}", table.of_bore) if table is not None else ""
    return liners_of(block, bore, sheet) if bore else sheet.fillers(block, CylinderLiner, by="housed_in")


def _matching(liner: CylinderLiner, port: str, sheet: Sheet) -> tuple[str, ...]:
    return tuple(
        f"port {name} of {liner.id} ({liner.where.file})"
        for name, one in liner.ports.items()
        if sheet.said(f"port that {name} of {liner.id} matches", one.matches) == port
    )


def _breathing(block: CylinderBlock, sheet: Sheet) -> Iterator[ToFill]:
    """For each bore a breathing way, or at each of its ends a valve that lifts while the engine drifts."""
    for name, bore in block.bores.items():
        ways = [
            one
            for one in sheet.fillers(block, SteamPassage, by="in_block", named=("cylinder_bore", name))
            if sheet.said(f"place of {one.id}", one.place) == "breathing way"
        ]
        at_ends = {end: _lifting(block, end, sheet) for end in ends_of(block, name, sheet)}
        lifting = [valve for valves in at_ends.values() for valve in valves]
        shut = [end for end, valves in at_ends.items() if not valves]
        wrong = f"no valve of end {shut[0]} lifts" if lifting and shut and not ways else ""
        yield ToFill(f"bore {name}", "breathing way", (*ways, *lifting), 1, 0, wrong, bore.where)


def _lifting(block: CylinderBlock, end: str, sheet: Sheet) -> list[PoppetValve]:
    """The valves at an end that are meant to lift while the engine drifts: not one whose lifting hurts."""
    return [
        valve
        for serves in ("inlet", "exhaust")
        for valve in valves_at(block, end, serves, sheet)
        if sheet.said(f"{valve.id} lifts drifting", valve.lifts_drifting)
        and not sheet.said(f"lifting of {valve.id} hurts", valve.reversal_hurts)
    ]


def _castings(liner: CylinderLiner, sheet: Sheet) -> Iterator[ToFill]:
    """The casting that becomes the liner, where it is of cast iron."""
    if "iron" in (sheet.said("material", liner.material) or ""):
        yield place(liner.id, liner, Casting, sheet, by="becomes")


one_liner: Rule = filled_once(
    "bore.one-liner",
    title="Each bore of a block takes one liner, or is unlined and rings bear on the block",
    on=CylinderBlock,
    places=_liners,
    row=40,
    gravity="hold",
    why="a bore without its liner, or with two drawn for it, is judged by sizes that no metal has",
    leaves_out="whether the liner fits (liner rules)",
    edition=3,
)

two_ends: Rule = filled_once(
    "bore.two-ends",
    title="Each bore of a block has one end at the front and one at the back",
    on=CylinderBlock,
    places=_ends,
    row=50,
    gravity="hold",
    why="an end that is not stated has no relief valve, no drain and no cover that anybody checks",
    leaves_out="ends that do not say their side",
)

one_piston: Rule = filled_once(
    "bore.one-piston",
    title="One piston runs in the liner of each bore",
    on=CylinderBlock,
    places=_pistons,
    row=60,
    gravity="hold",
    why="a second piston drawn for one bore leaves open by which the rod and the clearances are judged",
    leaves_out="pistons of other sizes for later bores of the same liner, which are stated in the liner",
    edition=2,
)

one_cover: Rule = filled_once(
    "end.one-cover",
    title="One cover closes each end of a cylinder, and is of the side of that end",
    on=CylinderBlock,
    places=_covers,
    row=70,
    gravity="hold",
    why="an end without a cover that is drawn holds the full pressure by a part that nobody checked",
    leaves_out="the strength of the cover",
    edition=2,
)

its_valves: Rule = filled_once(
    "end.its-valves",
    title="Each end of a cylinder has one inlet valve and one exhaust valve",
    on=CylinderBlock,
    places=_valves,
    row=90,
    gravity="hold",
    why="an exhaust valve that is not there shuts steam and water in the cylinder",
    leaves_out="seat bores that do not say to which end they belong, and what they serve",
)

has_ports: Rule = filled_once(
    "end.has-ports",
    title="An open port leads into each end of a cylinder",
    on=CylinderBlock,
    places=_ports,
    row=100,
    gravity="part",
    why="steam that has no way into the cylinder does no work",
    leaves_out="the area of the ports",
    edition=2,
)

one_opening: Rule = filled_once(
    "port.one-opening",
    title="Each port of a block meets one port of the liner, and each port of a liner one of the block",
    on=CylinderBlock,
    places=_openings,
    row=130,
    gravity="hold",
    why="a port with a blind liner behind it shuts steam and water in; one with two is drawn twice",
    leaves_out="how well the edges meet (liner.ports-register)",
    edition=4,
)

breathing: Rule = filled_once(
    "cylinder.breathing-way",
    title="Each cylinder breathes while the engine drifts: by a breathing way, or by valves that "
    "lift at both ends and do no harm by it",
    on=CylinderBlock,
    places=_breathing,
    row=500,
    gravity="part",
    why="a piston that pumps against shut valves sucks ash from the smokebox and heats what it shuts in",
    leaves_out="how large the way must be (steamway.drifting); whether the springs let the valves lift "
    "(valve.spring-holds-shut)",
    edition=3,
)

its_casting: Rule = filled_once(
    "liner.has-its-casting",
    title="A liner of cast iron has one casting from which it is made",
    on=CylinderLiner,
    places=_castings,
    row=150,
    gravity="part",
    why="the foundry pours what the drawing of a casting says, with metal left for the tool",
    leaves_out="liners cast to the works' own pattern without a drawing",
)

RULES = (
    breathing,
    has_ports,
    its_casting,
    its_valves,
    one_cover,
    one_liner,
    one_opening,
    one_piston,
    two_ends,
)
