"""Seats, valves and what moves and shuts them: each in its place once."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import Rule, Sheet, ToFill, filled_once, replace
from speclint.facts import seats_named
from speclint.specs import (
    ChamberCover,
    CompressionSpring,
    CylinderBlock,
    PoppetValve,
    SteamPassage,
    ValveCage,
    ValveSeat,
    ValveSpindle,
)
from speclint_wholeness.inputs import closed, entries, place, twice_where_unlisted

_STEAM = {"inlet": "live steam", "exhaust": "exhaust steam"}


def _seats(block: CylinderBlock, sheet: Sheet) -> Iterator[ToFill]:
    """For each seat bore the seat that names it; or what blanks it.

    Where the block lists no seat bores, two seats that name one are told all the same.
    """
    yield from entries(block, "seat_bores", sheet)
    yield from twice_where_unlisted(
        "seat bore", block, "seat_bores", ValveSeat, sheet, by="pressed_into", key="in_bore"
    )
    for name, bore in block.seat_bores.items():
        inside = place(
            f"seat bore {name}",
            block,
            ValveSeat,
            sheet,
            by="pressed_into",
            named=("in_bore", name),
            entry=bore,
        )
        yield closed(f"seat bore {name}", name, bore, block, inside, sheet)


def _beats(seat: ValveSeat, sheet: Sheet) -> Iterator[ToFill]:
    """The beats that sit on the seat, each of its valve; a seat without one is told of the valve or of the end."""
    beats = [
        f"{beat} beat of {valve.id} ({valve.where.file})"
        for beat, key in (("upper", "upper_beat.seat"), ("lower", "lower_beat.seat"))
        for valve in sheet.fillers(seat, PoppetValve, by=key)
    ]
    if beats:
        yield ToFill(seat.id, "beat of a valve", tuple(beats), where=seat.where)


def _seats_of(valve: PoppetValve, sheet: Sheet) -> Iterator[ToFill]:
    """The seat of each beat of the valve, as far as the number of its beats is stated; of one beat no lower one."""
    beats = sheet.count("n", valve.beats, "beats") if sheet.is_stated("beats", valve.beats) else 0
    for name, beat in (("upper", valve.upper_beat), ("lower", valve.lower_beat)):
        seated = sheet.is_stated(f"seat of the {name} beat", beat.seat)
        found = (sheet.follow(beat.seat).id,) if seated else ()
        place = ToFill(f"{name} beat of {valve.id}", ValveSeat.called, found, where=valve.where)
        if name == "upper" or beats >= 2:
            yield place
        elif beats == 1 and (seated or sheet.is_stated(f"diameter, {name} beat", beat.seat_diameter)):
            yield replace(place, wrong="the valve states one beat, and a lower beat as well")


def _spindles(valve: PoppetValve, sheet: Sheet) -> Iterator[ToFill]:
    """The spindles that move the valve."""
    yield place(valve.id, valve, ValveSpindle, sheet, by="moves")


def _cages(valve: PoppetValve, sheet: Sheet) -> Iterator[ToFill]:
    """The cages round the valve, which needs none."""
    yield replace(place(valve.id, valve, ValveCage, sheet, by="surrounds"), least=0)


def _springs(valve: PoppetValve, sheet: Sheet) -> Iterator[ToFill]:
    """The springs that shut the valve: one, or a nest in which each stands in the next larger one."""
    found = sheet.fillers(valve, CompressionSpring, by="closes")
    outer = tuple(one for one in found if not sheet.is_stated(f"nest of {one.id}", one.nested_in))
    wrong = next((words for one in found if one not in outer and (words := _apart(one, valve, sheet))), "")
    yield ToFill(valve.id, CompressionSpring.called, outer, wrong=wrong, where=valve.where)
    for spring in found:
        inner = sheet.fillers(spring, CompressionSpring, by="nested_in")
        if inner:
            yield ToFill(f"inside of {spring.id}", CompressionSpring.called, inner, where=spring.where)


def _apart(inner: CompressionSpring, valve: PoppetValve, sheet: Sheet) -> str | None:
    """What is wrong with an inner spring of a valve: the spring round it shuts another."""
    outer = sheet.follow(inner.nested_in)
    if not sheet.is_stated(f"valve of {outer.id}", outer.closes):
        return None
    shut = sheet.follow(outer.closes).id
    return None if shut == valve.id else f"{inner.id} is nested in {outer.id}, which shuts {shut}"


def _covers(valve: PoppetValve, sheet: Sheet) -> Iterator[ToFill]:
    """The cover over the valve: one that names the valve, or a seat bore of the block in which it sits."""
    found = {one.id: one for one in sheet.fillers(valve, ChamberCover, by="over")}
    blocks: list[str] = []
    for seat in seats_named(valve, sheet):
        if sheet.is_stated("block of the seat", seat.pressed_into) and (
            bore := sheet.said(f"bore of {seat.id}", seat.in_bore)
        ):
            block = sheet.follow(seat.pressed_into)
            blocks.append(block.id)
            covers = sheet.fillers(block, ChamberCover, by="closes", named=("seat_bore", bore))
            found |= {one.id: one for one in covers}
    wrong = next((words for one in found.values() if (words := _of_other_block(one, blocks, sheet))), "")
    yield ToFill(
        f"chamber of {valve.id}", ChamberCover.called, tuple(found.values()), wrong=wrong, where=valve.where
    )


def _of_other_block(cover: ChamberCover, blocks: list[str], sheet: Sheet) -> str | None:
    """What is wrong with a cover over a valve: it closes a block in which the valve has no seat."""
    if not blocks or not sheet.is_stated(f"block of {cover.id}", cover.closes):
        return None
    closed_one = sheet.follow(cover.closes).id
    return (
        None if closed_one in blocks else f"{cover.id} closes {closed_one}, and the valve is in {blocks[0]}"
    )


def _paths(valve: PoppetValve, sheet: Sheet) -> Iterator[ToFill]:
    """The passage at which the steam path of the valve ends or begins: its own, or one of valves that open in turn."""
    serves = sheet.said("serves", valve.serves) or ""
    carries = _STEAM.get(serves, "")

    def of_other_steam(passage: SteamPassage) -> str:
        stated = sheet.said(f"what {passage.id} carries", passage.carries)
        wrong = carries and stated and stated != carries
        return f"{passage.id} carries {stated}, and the valve {carries}" if wrong else ""

    own = replace(place(valve.id, valve, SteamPassage, sheet, by="valve", wrong=of_other_steam), most=0)
    yield own if own.fillers else replace(own, fillers=_in_turn(valve, serves, sheet))


def _in_turn(valve: PoppetValve, serves: str, sheet: Sheet) -> tuple[SteamPassage, ...]:
    """The passages of the block, pockets left out, that name another valve of the same service."""
    blocks = {
        block.id: block
        for seat in seats_named(valve, sheet)
        for into in (seat.pressed_into,)
        if sheet.is_stated("block of the seat", into)
        for block in (sheet.follow(into),)
    }
    return tuple(
        passage
        for block in blocks.values()
        for passage in sheet.fillers(block, SteamPassage, by="in_block")
        if sheet.is_stated(f"valve of {passage.id}", passage.valve)
        and sheet.said(f"place of {passage.id}", passage.place) != "valve pocket"
        and serves == sheet.said(f"serves of {passage.id}", sheet.follow(passage.valve).serves)
    )


def _seals(spindle: ValveSpindle, sheet: Sheet) -> Iterator[ToFill]:
    """The seal and the guide of the spindle, by the keys that say what they are."""
    for word, stated in (("seal", spindle.seal), ("guide", spindle.guide_bore)):
        found = (f"{word} of {spindle.id}",) if sheet.is_stated(word, stated) else ()
        yield ToFill(spindle.id, word, found, where=spindle.where)


one_seat: Rule = filled_once(
    "seat-bore.one-seat",
    title="One seat is in each seat bore of a block, or a plug closes it",
    on=CylinderBlock,
    places=_seats,
    row=110,
    gravity="hold",
    why="a seat bore without its seat joins boiler and cylinder; one with two is drawn twice",
    leaves_out="whether the seat fits (seat rules)",
    edition=5,
)

one_beat: Rule = filled_once(
    "seat.one-beat",
    title="One beat of one valve sits on each seat",
    on=ValveSeat,
    places=_beats,
    row=120,
    gravity="hold",
    why="two valves drawn on one seat cannot both be there",
    leaves_out="a seat on which nothing sits (valve.has-its-seats, end.its-valves)",
)

has_its_seats: Rule = filled_once(
    "valve.has-its-seats",
    title="Each beat of a valve has its seat, and a valve of one beat has no lower beat",
    edition=2,
    on=PoppetValve,
    places=_seats_of,
    row=240,
    gravity="hold",
    why="a beat that sits on nothing shuts nothing",
    leaves_out="whether both seats belong to one end (valve.of-one-end); two beats on one seat (seat.one-beat)",
)

one_spindle: Rule = filled_once(
    "valve.one-spindle",
    title="One spindle moves each valve",
    on=PoppetValve,
    places=_spindles,
    row=250,
    gravity="hold",
    why="a valve that nothing moves never opens, and water is shut in the cylinder",
    leaves_out="how spindle and valve are fastened",
)

one_cage: Rule = filled_once(
    "valve.one-cage",
    title="No more than one cage surrounds a valve",
    on=PoppetValve,
    places=_cages,
    row=255,
    gravity="part",
    why="two cages drawn round one valve cannot both be there: one of them belongs to a valve that has none, and its "
    "pieces would fall into the cylinder",
    leaves_out="a valve that needs a cage and has none (valve.cannot-fall-in), whether the cage holds it "
    "(cage.holds-a-broken-valve); a cage in two parts, which is one spec",
)

has_springs: Rule = filled_once(
    "valve.has-springs",
    title="One spring, or one nest of springs, shuts each valve",
    on=PoppetValve,
    places=_springs,
    row=260,
    gravity="hold",
    why="a valve that no spring shuts stays open, and the engine runs with the regulator shut",
    leaves_out="the load of the springs",
    edition=3,
)

chamber_closed: Rule = filled_once(
    "valve.chamber-closed",
    title="One cover closes the chamber of each valve",
    on=PoppetValve,
    places=_covers,
    row=275,
    gravity="hold",
    why="a chamber that nothing closes blows its steam into the cab, and one with two covers is drawn twice",
    leaves_out="its joint (cover.one-joint), its size and strength (cover.enters, cover.thickness); a chamber that is "
    "closed by another part, for which a concession says so",
    edition=2,
)

on_its_path: Rule = filled_once(
    "valve.on-its-path",
    title="A passage of its own steam ends or begins at each valve",
    on=PoppetValve,
    places=_paths,
    row=280,
    gravity="part",
    why="pressure losses are worked along the path, and a valve on none has none worked",
    leaves_out="the size of the passages, and whether a belt is that of all valves that open in turn",
)

sealed: Rule = filled_once(
    "spindle.sealed",
    title="Each valve spindle states its seal and its guide",
    on=ValveSpindle,
    places=_seals,
    row=310,
    gravity="hold",
    why="live steam blows out along a spindle that nothing seals",
    leaves_out="seals and guides that have specs of their own",
)

RULES = (
    chamber_closed,
    has_its_seats,
    has_springs,
    on_its_path,
    one_beat,
    one_cage,
    one_seat,
    one_spindle,
    sealed,
)
