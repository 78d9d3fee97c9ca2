"""Which of seats, valves, cages, spindles, springs and their gear goes in before which, and the sizes that force it."""

from __future__ import annotations

from collections.abc import Iterator

from speclint.specs import (
    Cam,
    CamBox,
    ChamberCover,
    CylinderBlock,
    CylinderLiner,
    PoppetValve,
    RetainingRing,
    Rocker,
    SeatBore,
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
        for cage in known.belonging_to(valve, ValveCage):
            opening = Sized(cage, "opening", cage.opening)
            yield from known.does_not_pass(seat.id, cage.id, outside, opening)
        yield from _before_cover(seat.id, valve, outside, known)
    yield from _before_liner(seat, known)


def _before_cover(first: str, valve: PoppetValve, large: Sized, known: Known) -> Iterator[Force]:
    """What goes into the chamber of a valve goes in before the cover over it, whose hole it does not pass."""
    for cover in known.belonging_to(valve, ChamberCover):
        hole = Sized(cover, "central hole", cover.central_hole)
        yield from known.does_not_pass(first, cover.id, large, hole)


def _bore(seat: ValveSeat, known: Known) -> tuple[CylinderBlock, SeatBore] | None:
    block = known.followed(f"block of {seat.id}", seat.pressed_into)
    name = known.word(f"bore of {seat.id}", seat.in_bore)
    return (block, block.seat_bores[name]) if block and name in block.seat_bores else None


def _seats_passed(seat: ValveSeat, known: Known) -> Iterator[ValveSeat]:
    """The seats in the bores that a seat passes, from the side that it is entered from."""
    found = _bore(seat, known)
    if found is None:
        return
    block, own = found
    side, lifts = (
        known.word(f"side of {seat.id}", seat.entered_from),
        known.word(f"side to which the valve of {seat.id} lifts", own.opens_into),
    )
    if side is None or lifts is None or _words(own, known)[2] != ("lower" if side == lifts else "upper"):
        return
    for other in known.belonging_to(block, ValveSeat):
        beside = _bore(other, known)
        if beside is None or other is seat:
            continue
        (end, serves, beat), own_words = _words(beside[1], known), _words(own, known)
        if None not in (end, serves, beat) and (end, serves) == own_words[:2] and beat != own_words[2]:
            yield other


def _words(bore: SeatBore, known: Known) -> tuple[str | None, str | None, str | None]:
    return (
        known.word("end of the seat bore", bore.end),
        known.word("what the seat bore serves", bore.serves),
        known.word("beat of the seat bore", bore.beat),
    )


def _before_liner(seat: ValveSeat, known: Known) -> Iterator[Force]:
    """A seat that is put in by way of the cylinder goes in before a liner whose port it does not pass on its edge."""
    found = _bore(seat, known)
    if found is None or known.word(f"side of {seat.id}", seat.entered_from) != "cylinder":
        return
    block, own = found
    for liner in known.belonging_to(block, CylinderLiner):
        for port in liner.ports.values():
            name = known.word(f"port of {liner.id}", port.matches)
            facing = block.ports.get(name or "")
            if facing is None or known.word("end of the port", facing.of_end) != _words(own, known)[0]:
                continue
            length, height = (
                Sized(seat, "length", seat.length),
                Sized(liner, "height of the port", port.height),
            )
            yield from known.does_not_pass(seat.id, liner.id, length, height)
            across = Sized(seat, "outside diameter", seat.outside_diameter)
            width = Sized(liner, "width of the port", port.width)
            yield from known.does_not_pass(seat.id, liner.id, across, width)


def of_valve(valve: PoppetValve, known: Known) -> Iterator[Force]:
    """A valve goes in before the cage that closes over it; a perforated plate below it before its lower seat."""
    over = Sized(valve, "outside diameter", valve.outside_diameter)
    yield from _before_cover(valve.id, valve, over, known)
    plate = known.word(f"what retains pieces of {valve.id}", valve.retained) == "perforated plate"
    lowest = valve.lower_beat if known.word(f"beats of {valve.id}", valve.beats) == 2 else valve.upper_beat
    for cage in known.belonging_to(valve, ValveCage):
        seat = known.followed(f"lowest seat of {valve.id}", lowest.seat)
        if plate and seat is not None:
            outside = Sized(cage, "outside diameter", cage.outside_diameter)
            yield from known.does_not_pass(cage.id, seat.id, outside, Sized(seat, "bore", seat.bore))
        elif not plate:
            around = Sized(cage, "outside diameter", cage.outside_diameter)
            yield from _before_cover(cage.id, valve, around, known)
            yield from known.does_not_pass(valve.id, cage.id, over, Sized(cage, "opening", cage.opening))


def of_spindle(spindle: ValveSpindle, known: Known) -> Iterator[Force]:
    """A spindle that is put in from the gear's side goes in before the cam box, where the gap is too short for it."""
    valve = known.followed(f"valve of {spindle.id}", spindle.moves)
    seat = valve and known.followed(f"seat of {valve.id}", valve.upper_beat.seat)
    block = seat and known.followed(f"block of {seat.id}", seat.pressed_into)
    if block is None or known.word("side it enters from", spindle.enters_from) != "gear side":
        return
    for box in known.belonging_to(block, CamBox):
        if box.id in _boxes_of(spindle, known):
            length = Sized(spindle, "heated length", spindle.heated_length)
            gap = Sized(box, "datum length", box.datum_length)
            yield from known.does_not_pass(spindle.id, box.id, length, gap)


def _boxes_of(spindle: ValveSpindle, known: Known) -> set[str]:
    """The ids of the boxes that carry the gear of a spindle."""
    rockers = known.belonging_to(spindle, Rocker)
    carried: list[Rocker | Tappet] = [*rockers, *known.belonging_to(spindle, Tappet)]
    carried += [tappet for rocker in rockers for tappet in known.belonging_to(rocker, Tappet)]
    boxes = (known.followed(f"box of {one.id}", one.carried_in) for one in carried)
    return {box.id for box in boxes if box is not None}


def of_tappet(tappet: Tappet, known: Known) -> Iterator[Force]:
    """A tappet goes into the guide of its box; one whose roller or foot does not pass that, before cam and shaft."""
    box = known.followed(f"box of {tappet.id}", tappet.carried_in)
    if box is None:
        return
    guide = Sized(box, "tappet bore", box.tappet_bore)
    yield from known.stands_in(box.id, tappet.id, guide, Sized(tappet, "stem diameter", tappet.stem_diameter))
    across, least = _across_the_foot(tappet, known), known.limits(guide)
    length = known.limits(Sized(tappet, "length of its guide", tappet.guide_length))
    gap = known.limits(Sized(tappet, "overhang", tappet.overhang))
    if across is None or least is None or across <= least[0]:
        return
    if length is None or gap is None or length[0] <= gap[1]:
        return  # there may be room to push it in over the cam
    says = f"{across * 1e3:.6g} mm over the foot of {tappet.id} does not pass {guide.said(least[0])}"
    for cam in known.belonging_to(tappet, Cam):
        yield Force(tappet.id, cam.id, says)
        shaft = known.followed(f"shaft of {cam.id}", cam.turns_on)
        if shaft is not None:
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
    shaft = known.followed(f"shaft of {cam.id}", cam.turns_on)
    tappet = known.followed(f"tappet of {cam.id}", cam.lifts)
    box = known.followed(f"box of {tappet.id}", tappet.carried_in) if tappet is not None else None
    if shaft is None or box is None:
        return
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
    if cam.table:
        rises = [
            known.limits(Sized(cam, f"lift {number}", one)) for number, one in enumerate(cam.table, start=1)
        ]
        lift = max(one[1] for one in rises if one is not None)
    else:
        parts = [
            known.limits(Sized(cam, called, value))
            for called, value in (("lift", cam.lift), ("ramp height", cam.ramp_height))
        ]
        if None in parts:
            return None
        lift = sum(one[1] for one in parts if one is not None)
    return None if radius is None else 2 * (radius[1] + lift)
