"""A block, its plans and its engine: made once, lifted by a plan, lagged, its openings closed, in one engine."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import Rule, Sheet, ToFill, filled_once
from speclint.specs import (
    AccessPlan,
    Assembly,
    CamBox,
    Casting,
    ChamberCover,
    Component,
    CylinderBlock,
    CylinderCover,
    CylinderLiner,
    Engine,
    Envelope,
    Lagging,
    LiftingPlan,
    SteamPipe,
    ValveSeat,
    Weldment,
)
from speclint_wholeness.inputs import closed, place

#: Parts that go into a block or onto it, one after another, each with the link by which it names the block.
_PUT_IN: tuple[tuple[type[Component], str], ...] = (
    (CylinderLiner, "housed_in"),
    (ValveSeat, "pressed_into"),
    (CylinderCover, "closes"),
    (ChamberCover, "closes"),
    (CamBox, "mounted_on"),
)
#: The heavy parts of which a block is made up as it is lifted, each with the link by which it names the block.
_MADE_UP_OF: tuple[tuple[type[Component], str], ...] = (
    (Weldment, "makes"),
    (Casting, "becomes"),
    (CylinderLiner, "housed_in"),
)


def _engines(block: CylinderBlock, sheet: Sheet) -> Iterator[ToFill]:
    """The engines whose cranks name the block."""
    yield place(f"engine of {block.id}", block, Engine, sheet, by="cranks.*.block")


def _cranks(block: CylinderBlock, sheet: Sheet) -> Iterator[ToFill]:
    """For each bore the cranks that name it, where one engine names the block; else its engine is asked for."""
    engines = sheet.fillers(block, Engine, by="cranks.*.block")
    turned = [
        (name, sheet.said(f"bore of crank {name}", crank.bore))
        for engine in engines
        for name, crank in engine.cranks.items()
        if sheet.is_stated(f"block of crank {name}", crank.block) and sheet.follow(crank.block).id == block.id
    ]
    for bore, table in block.bores.items() if len(engines) == 1 else ():
        found = tuple(
            f"crank {name}" for name, of in turned if of == bore or (not of and len(block.bores) == 1)
        )
        yield ToFill(f"bore {bore}", "crank", found, where=table.where)


def _nozzles(engine: Engine, sheet: Sheet) -> Iterator[ToFill]:
    """The nozzle that the engine states."""
    found = (sheet.follow(engine.nozzle),) if sheet.is_stated("nozzle", engine.nozzle) else ()
    yield ToFill(f"exhaust of {engine.id}", "blast nozzle", found, where=engine.where)


def _blanks(block: CylinderBlock, sheet: Sheet) -> Iterator[ToFill]:
    """The weldments that make the block and the castings that become it, against its construction."""
    welded = sheet.fillers(block, Weldment, by="makes")
    cast = sheet.fillers(block, Casting, by="becomes")
    built = sheet.said("construction", block.construction) or ""
    wants = {"fabricated": "weldment", "cast": "casting"}.get(built, "weldment or casting")
    wrong = ""
    if built == "fabricated" and cast:
        wrong = f"the block is fabricated, and casting {cast[0].id} becomes it"
    if built == "cast" and welded:
        wrong = f"the block is cast, and weldment {welded[0].id} makes it"
    yield ToFill(f"blank of {block.id}", wants, (*welded, *cast), wrong=wrong, where=block.where)


def _lifts(block: CylinderBlock, sheet: Sheet) -> Iterator[ToFill]:
    """The lifting plans of the block, and in a plan with weights one of each heavy part of which the block is made up.

    These are its weldment or casting and its liners; a weight that is the block itself stands for all of them. Parts
    that are drawn twice are told by their own places, and not asked for.
    """
    one = place(block.id, block, LiftingPlan, sheet, by="lifts")
    yield one
    parts: list[Component] = []
    for kind, by in _MADE_UP_OF:
        found = sheet.fillers(block, kind, by=by)
        if len(found) <= (len(block.bores) if kind is CylinderLiner else 1):
            parts += found
    for plan in one.fillers if len(one.fillers) == 1 else ():
        if not isinstance(plan, LiftingPlan) or not sheet.names_under(plan, "weights"):
            continue
        weighed = {
            name: sheet.follow(weight.of).id
            for name, weight in plan.weights.items()
            if sheet.is_stated(f"part of {name} of {plan.id}", weight.of)
        }
        for part in parts if block.id not in weighed.values() else ():
            weights = tuple(f"weight {name}" for name, of in weighed.items() if of == part.id)
            yield ToFill(f"{part.id} in {plan.id}", "weight", weights, where=plan.where)


def _plans(block: CylinderBlock, sheet: Sheet) -> Iterator[ToFill]:
    """The access plan that serves the block, with the weldment of that block; the envelope around it."""

    def of_another(plan: AccessPlan) -> str | None:
        if not sheet.is_stated(f"weldment of {plan.id}", plan.weldment):
            return None
        weldment = sheet.follow(plan.weldment)
        if not sheet.is_stated(f"block of {weldment.id}", weldment.makes):
            return None
        made = sheet.follow(weldment.makes).id
        return None if made == block.id else f"{plan.id} shows the welds of {weldment.id}, which makes {made}"

    yield place(block.id, block, AccessPlan, sheet, by="serves", wrong=of_another)
    yield place(block.id, block, Envelope, sheet, by="around")


def _orders(block: CylinderBlock, sheet: Sheet) -> Iterator[ToFill]:
    """The orders of assembly of a block with two or more liners, seats, covers and cam boxes."""
    parts = [part for kind, by in _PUT_IN for part in sheet.fillers(block, kind, by=by)]
    if len(parts) > 1:
        yield place(block.id, block, Assembly, sheet, by="of")


def _lagged(block: CylinderBlock, sheet: Sheet) -> Iterator[ToFill]:
    """Lagging on the block, and on a cover of each of its ends."""
    on_block = sheet.fillers(block, Lagging, by="covers")
    yield ToFill(block.id, Lagging.called, on_block, most=0, where=block.where)
    covers: dict[str, CylinderCover] = {}
    for cover in sheet.fillers(block, CylinderCover, by="closes"):
        covers.setdefault(sheet.said(f"end that {cover.id} closes", cover.of_end) or cover.id, cover)
    for cover in covers.values():
        yield place(cover.id, cover, Lagging, sheet, by="covers")


def _openings(block: CylinderBlock, sheet: Sheet) -> Iterator[ToFill]:
    """For each opening the pipe with an end there, which carries the steam that passes it; or what blanks it."""
    pipes = sheet.fillers(block, SteamPipe, by=("starts_at.part", "ends_at.part"))
    for name, opening in block.openings.items():
        found = [
            pipe
            for pipe in pipes
            for end in (pipe.starts_at, pipe.ends_at)
            if sheet.is_stated(f"part at an end of {pipe.id}", end.part)
            and sheet.follow(end.part).id == block.id
            and sheet.said(f"opening at an end of {pipe.id}", end.opening) == name
        ]
        carries = sheet.said(f"what opening {name} carries", opening.carries)
        other = [(pipe, sheet.said(f"what {pipe.id} carries", pipe.carries)) for pipe in found]
        wrong = next(
            (
                f"{pipe.id} carries {stated}, and the opening {carries}"
                for pipe, stated in other
                if carries and stated and stated != carries
            ),
            "",
        )
        inside = ToFill(f"opening {name}", SteamPipe.called, tuple(found), wrong=wrong, where=opening.where)
        yield closed(f"opening {name}", name, opening, block, inside, sheet)


one_engine: Rule = filled_once(
    "engine.blocks-named",
    title="Each cylinder block belongs to one engine, whose cranks name it",
    on=CylinderBlock,
    places=_engines,
    row=10,
    gravity="part",
    why="stroke, wheels and boiler stand in the engine, and a block of none is judged by nobody's",
    leaves_out="whether the engine is the right one: its wheels and boiler are compared by agreements",
)

one_crank: Rule = filled_once(
    "bore.one-crank",
    title="The piston of each bore turns one crank of the engine of its block",
    on=CylinderBlock,
    places=_cranks,
    row=15,
    gravity="part",
    why="a cylinder whose crank is left out counts neither in the thrust on the frames nor in the back pressure",
    leaves_out="a block that no engine names, of which engine.blocks-named tells; the angle of the crank",
)

one_nozzle: Rule = filled_once(
    "engine.exhaust-ends-in-nozzle",
    title="An engine names the blast nozzle in which its exhaust ends",
    on=Engine,
    places=_nozzles,
    row=20,
    gravity="part",
    why="without a nozzle nobody draws the fire, and the back pressure is not known",
    leaves_out="an engine that condenses or exhausts elsewhere, for which a concession says so",
)

made_once: Rule = filled_once(
    "block.made-once",
    title="A cylinder block is made by one weldment or becomes of one casting, as its construction says",
    on=CylinderBlock,
    places=_blanks,
    row=30,
    gravity="hold",
    why="walls and welds that nobody drew hold the pressure of the boiler unchecked",
    leaves_out="a block assembled of several castings",
)

lifted: Rule = filled_once(
    "block.lifted-by-a-plan",
    title="A cylinder block has one lifting plan, in which its weldment or casting and each liner is one weight",
    on=CylinderBlock,
    places=_lifts,
    row=610,
    gravity="plan to hold",
    why="a load slung by eye tilts or drops on those who stand beside it",
    leaves_out="what the weights are (lifting.mass-complete), and other parts that hang on the block; the lifting plan "
    "is a matter for a competent person",
    edition=2,
)

plans: Rule = filled_once(
    "block.has-its-plans",
    title="A cylinder block has one access plan, which shows its own welds, and one envelope",
    on=CylinderBlock,
    places=_plans,
    row=620,
    gravity="plan",
    why="a nut that no spanner reaches, or a corner outside the gauge, is found when all is built",
    leaves_out="what the plans say",
)

order: Rule = filled_once(
    "block.has-its-order",
    title="A cylinder block into which several parts go has one order of assembly",
    on=CylinderBlock,
    places=_orders,
    row=625,
    gravity="plan",
    why="a part that had to go in first is missed when the others are in, and they come out again for it",
    leaves_out="what the order says (assembly.order); a block with one part, and parts that name no block",
)

lagged: Rule = filled_once(
    "block.lagged",
    title="A cylinder block is lagged, and one lagging covers each of its cylinder covers",
    on=CylinderBlock,
    places=_lagged,
    row=630,
    gravity="plan",
    why="bare metal wets the steam and burns the hand",
    leaves_out="how much of the surface is covered, and parts that are out of reach",
)

openings: Rule = filled_once(
    "opening.closed-once",
    title="One pipe, which carries what the opening carries, or one cover closes each opening of a block",
    on=CylinderBlock,
    places=_openings,
    row=140,
    gravity="hold",
    why="an opening that nothing closes lets out live steam",
    leaves_out="openings that the block does not list, and the size of flange and pipe",
    edition=4,
)

RULES = (lagged, lifted, made_once, one_crank, one_engine, one_nozzle, openings, order, plans)
