"""Springs, cages and retaining rings: what each passes on its way to its place."""

from __future__ import annotations

from speclint import Grade, Judgement, Sheet, rule
from speclint.equations import Metres
from speclint.facts import bore_of, height_to_grip
from speclint.specs import CompressionSpring, PoppetValve, RetainingRing, ValveCage, ValveSeat
from speclint_assembly.formulae.sizes import over_the_coils
from speclint_assembly.inputs.room import BY_HAND, passes
from speclint_assembly.inputs.ways import opening_of
from speclint_assembly.sources import GEOMETRY


@rule(
    "spring.enters",
    title="A spring passes into its housing with 0.5 mm to spare on its diameter, and the tool takes hold of "
    "its plate at its free length",
    on=CompressionSpring,
    grade=Grade.NONCONFORMITY,
    cites=GEOMETRY,
    why="a spring that the tool cannot take hold of is pressed in with a lever, and flies out",
    leaves_out="growth of the coils as it is compressed, which coil-spring.house judges; room for a spring inside "
    "another (coil-spring.one-broken); the strength of the tool",
    against=(),
    limits=[BY_HAND],
    edition=2,
)
def spring_enters(spring: CompressionSpring, sheet: Sheet) -> Judgement:
    """Outside diameter, stated or mean diameter and wire, against the housing; height of the tool against L − plate."""
    free, plate = sheet.take("L", spring.free_length), sheet.take("y", spring.plate_depth)
    held = sheet.at_least(
        sheet.take("h_t", spring.tool_height), sheet.work("h", height_to_grip, L=free, y=plate)
    ).else_says("tool holds a spring {found} high, this one asks for {limit}")
    nested = sheet.is_stated("spring round it", spring.nested_in)
    if nested and not sheet.is_stated("housing", spring.housing):
        return held
    D_e = _outside(spring, sheet)
    return sheet.worst(passes(sheet.take("D_h", spring.housing), D_e, "h", "in the housing", sheet), held)


def _outside(spring: CompressionSpring, sheet: Sheet) -> Metres:
    if sheet.is_stated("outside diameter", spring.outside_diameter):
        return sheet.take("D_e", spring.outside_diameter)
    mean, wire = sheet.take("D_m", spring.mean_diameter), sheet.take("w", spring.wire)
    return sheet.work("D_e", over_the_coils, D_m=mean, w=wire)


@rule(
    "cage.enters",
    title="A cage, or the ring that retains a seat, passes the opening of the chamber with 0.5 mm to spare, and "
    "the seat the thread of a screwed ring",
    on=(ValveCage, RetainingRing),
    grade=Grade.NONCONFORMITY,
    cites=GEOMETRY,
    why="a cage that does not pass the opening is cut in two on the engine",
    leaves_out="rings that retain a liner, which lie beyond its collar; how far a screwed ring must be turned",
    against=(),
    limits=[BY_HAND],
)
def cage_enters(part: ValveCage | RetainingRing, sheet: Sheet) -> Judgement:
    """The opening stated with the bore of the seat; the seat against the crests of the thread above it."""
    if isinstance(part, ValveCage):
        seat = sheet.follow(sheet.follow(part.surrounds).upper_beat.seat)
    else:
        retained = sheet.follow(part.retains)
        if not isinstance(retained, ValveSeat):
            raise sheet.not_applicable("it retains a liner")
        seat = retained
    outside = sheet.take("D", part.outside_diameter)
    opening = opening_of(bore_of(seat, sheet), sheet.belonging_to(seat, PoppetValve), sheet)
    judged = [passes(sheet.take("D_o", opening), outside, "o", "through the opening of the chamber", sheet)]
    if isinstance(part, RetainingRing) and sheet.read("fastened", part.fastened) == "screwed in":
        ring = sheet.take("D_s", seat.outside_diameter)
        judged.append(
            passes(sheet.take("d_t", part.thread_bore), ring, "t", "of the seat through the thread", sheet)
        )
    return sheet.worst(*judged)


RULES = (spring_enters, cage_enters)
