"""Room along the engine for its wheels: between one another, and beside the cylinders."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations
from typing import NamedTuple

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.equations import Metres
from speclint.facts import (
    axles_of,
    bore_of_crank,
    diameter_at,
    driven_by,
    ends_of,
    face_forward,
    half_of_planes,
    outermost,
    rod_length,
)
from speclint.specs import Crank, CylinderBlock, DrivingAxle, Engine
from speclint_motion.formulae.balance import centres_apart
from speclint_motion.formulae.wheels import (
    gap_across,
    gap_to_wheel,
    middle_of_stroke,
    outer_axle,
    over_flanges,
    place_along,
    wheels_touch,
)

_FLANGE = Limit(
    "flange", "28 mm", "length", COMMON_PRACTICE, "height of a flange over the running circle of its tyre"
)


class _Wheel(NamedTuple):
    """The wheels of an axle: its name, where it stands along the engine, and how large they are over the flange."""

    name: str
    x: Metres
    D: Metres


class _Cylinder(NamedTuple):
    """A cylinder, the block that it is in, the crank that it turns, and the driven axle of that crank."""

    bore: str
    block: CylinderBlock
    crank: Crank
    axle: DrivingAxle

    @property
    def name(self) -> str:
        return f"{self.block.id} {self.bore}"


@rule(
    "engine.wheels-clear",
    title="Axles stand farther apart than their wheels are in diameter over the flanges",
    on=Engine,
    grade=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="wheels that stand nearer than that run into one another, and the engine is not put together",
    leaves_out="brake blocks and sanding gear between the wheels; wheels without flanges; carrying axles whose wheels "
    "are not stated, and the sideways play of trucks",
    limits=[_FLANGE],
    against=(),
    edition=2,
)
def wheels_clear(engine: Engine, sheet: Sheet) -> Judgement:
    """Distance of each two axles against half of both wheels, new and over their flanges."""
    wheels = [*_driven(engine, sheet), *_carrying(engine, sheet)]
    pairs = [(f"{one.name} and {other.name}", (one, other)) for one, other in combinations(wheels, 2)]
    if not pairs:
        raise sheet.not_applicable("it has no two axles")

    def judge(item: tuple[str, tuple[_Wheel, _Wheel]]) -> Judgement:
        name, (one, other) = item
        apart = sheet.work(f"δ {name}", centres_apart, x_1=one.x, x_2=other.x)
        touch = sheet.work(f"δ_0 {name}", wheels_touch, D_1=one.D, D_2=other.D)
        return sheet.at_least(apart, touch).else_says(
            f"{name} {{found}} apart, their wheels touch at {{limit}}"
        )

    return sheet.each(pairs, judge)


@rule(
    "engine.cylinders-beside-wheels",
    title="A cylinder that stands in the plane of the wheels lies ahead of or behind each wheel beside it, covers "
    "included",
    on=Engine,
    grade=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="where rods are too short for the axle that they turn, a wheel stands where the cylinder is to be",
    leaves_out="nuts, glands, chests and pipes on the cylinder; brake gear; cylinders behind the axle that they turn, "
    "or high enough to pass over a wheel; carrying axles whose wheels are not stated, and their play",
    limits=[
        _FLANGE,
        Limit("gap", "25 mm", "length", COMMON_PRACTICE, "least gap between a wheel and a cylinder"),
        Limit(
            "tyre",
            "140 mm",
            "length",
            COMMON_PRACTICE,
            "width of a tyre, its middle in the plane of its wheel",
        ),
    ],
    against=(),
)
def cylinders_beside_wheels(engine: Engine, sheet: Sheet) -> Judgement:
    """Back and front of each cylinder, by the rods ahead of the axle that it turns, against every wheel."""
    cylinders = [(one.name, one) for one in _cylinders(engine, sheet)]
    if not cylinders:
        raise sheet.not_applicable("it states no cranks")
    wheels = [*_driven(engine, sheet), *_carrying(engine, sheet)]
    least = sheet.limit("gap")

    def judge(item: tuple[str, _Cylinder]) -> Judgement:
        name, one = item
        ends = _ends(one, sheet)
        if not _in_plane(one, ends, sheet):
            raise sheet.not_applicable("no cylinder stands in the plane of its wheels")
        back, front = _along(one, ends, engine, sheet)

        def beside(wheel: _Wheel) -> Judgement:
            gap = sheet.work(
                f"g {name} {wheel.name}", gap_to_wheel, x_1=back, x_2=front, x=wheel.x, D=wheel.D
            )
            return sheet.at_least(gap, least).else_says(
                f"cylinder {name} and the wheels of {wheel.name}: {{found}} between them, {{limit}} wanted"
            )

        return sheet.each(wheels, beside)

    return sheet.each(cylinders, judge)


def _driven(engine: Engine, sheet: Sheet) -> Iterator[_Wheel]:
    D = sheet.take("D", engine.driving_wheel_diameter)
    over = sheet.work("D_f", over_flanges, D=D, h=sheet.limit("flange", "h"))
    for axle in axles_of(engine, sheet):
        yield _Wheel(axle.id, sheet.take(f"x {axle.id}", axle.at), over)


def _carrying(engine: Engine, sheet: Sheet) -> Iterator[_Wheel]:
    """The first and the last axle of each truck whose wheels are stated; one of a single axle."""
    for name, truck in engine.carrying.items():
        if not sheet.is_stated(f"wheels of {name}", truck.wheel_diameter):
            continue
        D = sheet.take(f"D {name}", truck.wheel_diameter)
        over = sheet.work(f"D_f {name}", over_flanges, D=D, h=sheet.limit("flange", "h"))
        x = sheet.take(f"x {name}", truck.at)
        if not sheet.is_stated(f"wheelbase of {name}", truck.wheelbase):
            yield _Wheel(name, x, over)
            continue
        b = sheet.take(f"b {name}", truck.wheelbase)
        for which, k in (("front", 1.0), ("back", -1.0)):
            place = sheet.work(f"x {name} {which}", outer_axle, x_0=x, k=k, b=b)
            yield _Wheel(f"{name}, {which}", place, over)


def _cylinders(engine: Engine, sheet: Sheet) -> Iterator[_Cylinder]:
    """The cylinders of an engine whose cranks are turned by rods, each with the axle that it drives."""
    turned = {name: axle for axle in axles_of(engine, sheet) for name, _ in driven_by(axle, engine, sheet)}
    for name, crank in engine.cranks.items():
        block = sheet.follow(crank.block)
        if name not in turned:
            raise sheet.not_assessed(f"no driving axle is driven by the crank {name}", engine.where)
        yield _Cylinder(bore_of_crank(name, crank, block, sheet), block, crank, turned[name])


def _in_plane(one: _Cylinder, ends: tuple[str, str], sheet: Sheet) -> bool:
    """Whether a cylinder stands before the tyres of the wheels, by the larger of its ends."""
    y, b = sheet.take(f"y {one.name}", one.crank.axis_from_centre), half_of_planes(one.axle, sheet)
    D = max(diameter_at(one.block, end, sheet) for end in ends)
    return sheet.work(f"g_y {one.name}", gap_across, y=y, b=b, D=D, w=sheet.limit("tyre", "w")) < 0


def _ends(one: _Cylinder, sheet: Sheet) -> tuple[str, str]:
    """The names of the back and of the front end of a cylinder.

    :raises NotAssessed: where no end, or more than one, is on one side.
    """
    ends = ends_of(one.block, one.bore, sheet)
    sides = {name: sheet.read(f"side of end {name}", end.side) for name, end in ends.items()}
    if sorted(sides.values()) != ["back", "front"]:
        raise sheet.not_assessed(
            f"bore {one.bore} of {one.block.id} wants one end at the front and one at the back",
            one.block.where,
        )
    back, front = sorted(sides, key=lambda name: sides[name])
    return back, front


def _along(one: _Cylinder, ends: tuple[str, str], engine: Engine, sheet: Sheet) -> tuple[Metres, Metres]:
    """Where the outsides of the covers of a cylinder are along the engine: at the back, and at the front."""
    name, block, (back, front) = one.name, one.block, ends
    middle = sheet.work(
        f"x_m {name}",
        middle_of_stroke,
        x=sheet.take(f"x {one.axle.id}", one.axle.at),
        l=sheet.take(f"l {name}", rod_length(one.crank, engine, sheet)),
        L=sheet.take(f"L {name}", block.drive.rod_length),
    )
    faces = {
        "x_f": face_forward(block, block.ends[front], sheet),
        "x_b": face_forward(block, block.ends[back], sheet),
    }
    x_1, x_2 = (
        sheet.work(symbol, place_along, x_m=middle, X_e=outermost(block, end, sheet), **faces)
        for symbol, end in ((f"x_1 {name}", back), (f"x_2 {name}", front))
    )
    return x_1, x_2


RULES = (cylinders_beside_wheels, wheels_clear)
