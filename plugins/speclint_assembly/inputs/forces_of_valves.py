"""Which of seats, valves, cages, spindles, springs and their gear goes in before which, and the sizes that force it."""

from __future__ import annotations

from collections.abc import Iterator

from speclint.specs import (
    BlockPort,
    Cam,
    CamBox,
    ChamberCover,
    CylinderBlock,
    CylinderLiner,
    LinerPort,
    PoppetValve,
    RetainingRing,
    Rocker,
    SeatBore,
    Shaft,
    Tappet,
    ValveCage,
    ValveSeat,
    ValveSpindle,
)
from speclint_assembly.inputs.known import Force, Known, Sized


def of_seat(seat: ValveSeat, known: Known) -> Iterator[Force]:
    """A seat goes in before the seat that it passes, before its valve, and before what retains it."""
    outside = Sized(seat, "outside diameter", seat.outside_diameter)
    for other in _seats_passed(seat, known):
        yield from known.does_not_pass(seat.id, other.id, outside, Sized(other, "bore", other.bore))
    for ring in known.belonging_to(seat, RetainingRing):
        yield from known.does_not_pass(seat.id, ring.id, outside, Sized(ring, "bore", ring.bore))
    for valve in known.belonging_to(seat, PoppetValve):
        over = Sized(valve, "outside diameter", valve.outside_diameter)
        yield from known.does_not_pass(seat.id, valve.id, over, Sized(seat, "bore", seat.bore))
        for cage in known.belonging_to(valve, ValveCage) if not _stands_below(valve, known) else ():
            opening = Sized(cage, "opening", cage.opening)
            yield from known.does_not_pass(seat.id, cage.id, outside, opening)
        yield from _before_cover(seat.id, valve, outside, known)
    yield from _before_liner(seat, known)


def _before_cover(first: str, valve: PoppetValve, large: Sized, known: Known) -> Iterator[Force]:
    """What goes into the chamber of a valve goes in before the cover over it, whose hole it does not pass."""
    for cover in known.belonging_to(valve, ChamberCover):
        hole = Sized(cover, "central hole", cover.central_hole)
        yield from known.does_not_pass(first, cover.id, large, hole)


def _places(seat: ValveSeat, known: Known) -> Iterator[tuple[CylinderBlock, SeatBore]]:
    """The block that a seat is pressed into, with the bore that it names there; none where either is not stated."""
    name = known.word(f"bore of {seat.id}", seat.in_bore)
    for block in known.led_to(f"block of {seat.id}", seat.pressed_into):
        if name in block.seat_bores:
            yield block, block.seat_bores[name]


def _seats_passed(seat: ValveSeat, known: Known) -> Iterator[ValveSeat]:
    """The seats in the bores that a seat passes, from the side that it is entered from."""
    side = known.word(f"side of {seat.id}", seat.entered_from)
    for block, own in _places(seat, known):
        end, serves, beat = _words(own, known)
        lifts = known.word(f"side to which the valve of {seat.id} lifts", own.opens_into)
        if None in (side, lifts, end, serves) or beat != ("lower" if side == lifts else "upper"):
            continue
        across = end, serves, "upper" if beat == "lower" else "lower"
        for other in known.belonging_to(block, ValveSeat):
            if any(_words(bore, known) == across for _, bore in _places(other, known)):
                yield other


def _words(bore: SeatBore, known: Known) -> tuple[str | None, str | None, str | None]:
    return (
        known.word("end of the seat bore", bore.end),
        known.word("what the seat bore serves", bore.serves),
        known.word("beat of the seat bore", bore.beat),
    )


def _before_liner(seat: ValveSeat, known: Known) -> Iterator[Force]:
    """A seat that is put in by way of the cylinder goes in before a liner whose port it does not pass on its edge."""
    if known.word(f"side of {seat.id}", seat.entered_from) != "cylinder":
        return
    length = Sized(seat, "length", seat.length)
    across = Sized(seat, "outside diameter", seat.outside_diameter)
    for block, own in _places(seat, known):
        for liner in known.belonging_to(block, CylinderLiner):
            for port in _ports_to(own, block, liner, known):
                height = Sized(liner, "height of the port", port.height)
                width = Sized(liner, "width of the port", port.width)
                yield from known.does_not_pass(seat.id, liner.id, length, height)
                yield from known.does_not_pass(seat.id, liner.id, across, width)


def _ports_to(
    bore: SeatBore, block: CylinderBlock, liner: CylinderLiner, known: Known
) -> Iterator[LinerPort]:
    """The ports of a liner that face those of its block which lead to a seat."""
    facing = {name for name, port in block.ports.items() if _leads_to(port, bore, known)}
    for port in liner.ports.values():
        if known.word(f"port of {liner.id}", port.matches) in facing:
            yield port


def _leads_to(port: BlockPort, bore: SeatBore, known: Known) -> bool:
    """Whether a port is of the end of a seat's bore, and serves what that serves; one that says nothing serves both."""
    end, serves, _ = _words(bore, known)
    if end is None or known.word("end of the port", port.of_end) != end:
        return False
    return known.word("what the port serves", port.serves) in (None, serves)


def of_valve(valve: PoppetValve, known: Known) -> Iterator[Force]:
    """A valve goes in before the cage that closes over it; a perforated plate below it before its lower seat."""
    over = Sized(valve, "outside diameter", valve.outside_diameter)
    yield from _before_cover(valve.id, valve, over, known)
    lowest = valve.lower_beat if known.word(f"beats of {valve.id}", valve.beats) == 2 else valve.upper_beat
    for cage in known.belonging_to(valve, ValveCage):
        outside = Sized(cage, "outside diameter", cage.outside_diameter)
        if _stands_below(valve, known):
            for seat in known.led_to(f"lowest seat of {valve.id}", lowest.seat):
                yield from known.does_not_pass(cage.id, seat.id, outside, Sized(seat, "bore", seat.bore))
        else:
            yield from _before_cover(cage.id, valve, outside, known)
            yield from known.does_not_pass(valve.id, cage.id, over, Sized(cage, "opening", cage.opening))


def _stands_below(valve: PoppetValve, known: Known) -> bool:
    """Whether what retains the pieces of a valve is a plate below its lowest seat, which no seat has to pass."""
    return bool(known.word(f"what retains pieces of {valve.id}", valve.retained) == "perforated plate")


def of_spindle(spindle: ValveSpindle, known: Known) -> Iterator[Force]:
    """A spindle that is put in from the gear's side goes in before the cam box, where the gap is too short for it."""
    if known.word("side it enters from", spindle.enters_from) != "gear side":
        return
    length = Sized(spindle, "heated length", spindle.heated_length)
    for box in _boxes_of(spindle, known):
        gap = Sized(box, "datum length", box.datum_length)
        yield from known.does_not_pass(spindle.id, box.id, length, gap)


def _boxes_of(spindle: ValveSpindle, known: Known) -> Iterator[CamBox]:
    """The boxes that carry the gear of a spindle."""
    rockers = known.belonging_to(spindle, Rocker)
    carried: list[Rocker | Tappet] = [*rockers, *known.belonging_to(spindle, Tappet)]
    carried += [tappet for rocker in rockers for tappet in known.belonging_to(rocker, Tappet)]
    for one in carried:
        yield from known.led_to(f"box of {one.id}", one.carried_in)


def of_tappet(tappet: Tappet, known: Known) -> Iterator[Force]:
    """A tappet goes into the guide of its box; one whose roller or foot does not pass that, before cam and shaft."""
    stem = Sized(tappet, "stem diameter", tappet.stem_diameter)
    for box in known.led_to(f"box of {tappet.id}", tappet.carried_in):
        guide = Sized(box, "tappet bore", box.tappet_bore)
        yield from known.stands_in(box.id, tappet.id, guide, stem)
        across, least = _across_the_foot(tappet, known), known.limits(guide)
        if across is not None and least is not None and across > least[0] and _no_room_below(tappet, known):
            says = f"{across * 1e3:.6g} mm over the foot of {tappet.id} does not pass {guide.said(least[0])}"
            yield from _before_its_cams(tappet, says, known)


def _no_room_below(tappet: Tappet, known: Known) -> bool:
    """Whether a tappet is known to be too long to be pushed into its guide over the cam."""
    length = known.limits(Sized(tappet, "length of its guide", tappet.guide_length))
    gap = known.limits(Sized(tappet, "overhang", tappet.overhang))
    return length is not None and gap is not None and length[0] > gap[1]


def _before_its_cams(tappet: Tappet, says: str, known: Known) -> Iterator[Force]:
    for cam in known.belonging_to(tappet, Cam):
        yield Force(tappet.id, cam.id, says)
        for shaft in known.led_to(f"shaft of {cam.id}", cam.turns_on):
            yield Force(tappet.id, shaft.id, says)


def _across_the_foot(tappet: Tappet, known: Known) -> float | None:
    """The greatest size of a roller or a foot in the plane of its cam, m; None where it is not stated."""
    if known.word(f"follower of {tappet.id}", tappet.follower) == "roller":
        radius = known.limits(Sized(tappet, "radius of the roller", tappet.follower_radius))
        return None if radius is None else 2 * radius[1]
    foot = known.limits(Sized(tappet, "length of the foot", tappet.foot_length))
    return None if foot is None else foot[1]


def of_cam(cam: Cam, known: Known) -> Iterator[Force]:
    """A cam goes into its box, and there before the shaft, where it does not pass the bearing housings on it."""
    for tappet in known.led_to(f"tappet of {cam.id}", cam.lifts):
        for box in known.led_to(f"box of {tappet.id}", tappet.carried_in):
            for shaft in known.led_to(f"shaft of {cam.id}", cam.turns_on):
                yield from _past_the_housing(cam, shaft, box, known)


def _past_the_housing(cam: Cam, shaft: Shaft, box: CamBox, known: Known) -> Iterator[Force]:
    bore = Sized(box, "bearing bore", box.bearing_bore)
    across, housing = _over_the_nose(cam, known), known.limits(bore)
    if across is not None and housing is not None and across > housing[0]:
        says = (
            f"circle over the nose of {cam.id}, {across * 1e3:.6g} mm, does not pass {bore.said(housing[0])}"
        )
        yield Force(cam.id, shaft.id, says)
        yield Force(box.id, cam.id, says)
    yield from known.stands_in(box.id, shaft.id, bore, Sized(shaft, "diameter", shaft.diameter))


def _over_the_nose(cam: Cam, known: Known) -> float | None:
    """The greatest diameter of the circle that a cam needs, m; None where its radius or lift is not stated."""
    radius = known.limits(Sized(cam, "base radius", cam.base_radius))
    named = (("lift", cam.lift), ("ramp height", cam.ramp_height))
    rises = [
        known.limits(Sized(cam, called, value))
        for called, value in ([(f"lift {number}", one) for number, one in enumerate(cam.table)] or named)
    ]
    greatest = [one[1] for one in rises if one is not None]
    if radius is None or len(greatest) < len(rises):
        return None
    return 2 * (radius[1] + (max(greatest) if cam.table else sum(greatest)))
