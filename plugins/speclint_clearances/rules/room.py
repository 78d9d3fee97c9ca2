"""Clearance to the loading gauge."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Rule, Sheet, rule
from speclint.equations import Kelvins, Metres, PerKelvin
from speclint.facts import (
    engine_of,
    has_drain_cock,
    parts_standing_out,
    wheelbase_by_axles,
)
from speclint.handbook.fits import DRAWING_TEMPERATURE, growth_of_length
from speclint.specs import Component, CylinderBlock, Envelope, GaugePoint, LoadCase
from speclint_clearances.formulae.room import (
    curve_throw,
    half_width_taken,
    highest_height,
    lowest_height,
    overhang_of_side_play,
)
from speclint_clearances.formulae.tables import Corners, gauge_half_width
from speclint_clearances.inputs.counted import ROUNDING
from speclint_clearances.inputs.moved_points import GROWS, length_grown, worn_radius
from speclint_clearances.sources import UIC_505

WHEELBASE = Limit(
    "wheelbase",
    "2 mm",
    "length",
    COMMON_PRACTICE,
    "what the rigid wheelbase may differ by from the distance of two axles, else the worse of both counts",
    "not negative",
)


class Outline(Struct, frozen=True):
    """The corners of a gauge, and who issued it."""

    corners: Corners
    issued_by: str


class _Moved(Struct, frozen=True):
    """Wheelbases of which the worse counts, side play and wear of the tyres' radius."""

    wheelbases: Sequence[Metres]
    s: Metres
    worn: Metres


class _Hot(Struct, frozen=True):
    """The part, its temperature, and how it grows."""

    part: Component
    T: Kelvins
    α: PerKelvin


@rule(
    "envelope.loading-gauge",
    title="Covers, cam boxes, pipes and drain cocks each have a point, and every point stays in the gauge hot, from "
    "worn tyres and low springs to new and high, on the sharpest curve with side play, 4 mm or more",
    on=Envelope,
    cases=("running", "drifting"),
    edition=8,
    grade=Grade.HOLD,
    cites=[UIC_505, FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="A part that stands out of gauge by a few millimetres strikes a platform at speed, with people on "
    "it.",
    leaves_out="other parts that stand out, such as lubricators, steps and lifting lugs, unless a point is of them; "
    "roll on the springs, cant, gauge widening on curves and wind; whether a side play above its least is all that "
    "axles, boxes and springs have; wheels that no engine states; the railway that issued the gauge, the local code "
    "and a competent person decide",
    limits=[
        Limit(
            "side play",
            "4 mm",
            "length",
            COMMON_PRACTICE,
            "least side play: new flanges alone have half of 9 mm between new rails of 1435 mm, from memory",
        ),
        WHEELBASE,
        ROUNDING,
        GROWS,
    ],
    against=("foul",),
    against_on={
        "cylinder-block": ("foul",),
        "cylinder-cover": ("foul",),
        "cam-box": ("foul",),
        "steam-pipe": ("foul",),
    },
)
def loading_gauge(envelope: Envelope, case: LoadCase, sheet: Sheet) -> Judgement:
    """y + k s + |a²/4 − x²|/(2 R) + growth within the outline, from the lowest to the highest the point can stand.

    A side play that is said to be less than wheels have between the rails, a wear of the tyres less than that of the
    engine's wheels and a length that grows less than that from the frame are told, and counted at the least.
    """
    if not envelope.points:
        raise sheet.not_assessed("no point near the outline is stated", envelope.where)
    outline = _outline(envelope, sheet)
    part = sheet.follow(envelope.around)
    without = _without_point(envelope, part, sheet) if isinstance(part, CylinderBlock) else []
    named = sheet.states(
        not without,
        f"no point of {', '.join(without)}" if without else "every part that stands out has a point",
    )
    at = sheet.take("T", case.temperature_of(part))
    hot = _Hot(part, at, sheet.look_up("α", sheet.material_of(part).expansion, of=part, at=at))
    s, least = sheet.take("s", envelope.side_play), sheet.limit("side play", "s_0")
    free = sheet.at_least(s, least).else_says(
        "axles are said to have {found} of play to a side, {limit} at least between the rails"
    )
    worn = worn_radius(envelope, part, sheet)
    moved = _Moved(_wheelbases(envelope, part, sheet), max(s, least), worn.counted)
    inside = sheet.each(
        envelope.points.items(),
        lambda item: sheet.worst(*_point(*item, envelope, moved, outline, hot, sheet)),
    )
    return sheet.worst(named, free.graded(Grade.NONCONFORMITY), *worn.told, inside)


def _without_point(envelope: Envelope, block: CylinderBlock, sheet: Sheet) -> list[str]:
    """Covers, cam boxes and pipes of a block that no point is of, and its ends whose drain cock has none."""
    points = envelope.points.items()
    of = {sheet.follow(point.of).id for name, point in points if sheet.is_stated(f"part of {name}", point.of)}
    cocks = {
        sheet.read(f"end of {name}", point.cock_of)
        for name, point in points
        if sheet.is_stated(f"end of {name}", point.cock_of)
    }
    drained = [
        name
        for name, end in block.ends.items()
        if (end.drains or sheet.is_stated(f"drain cock of end {name}", end.drain_cock))
        and has_drain_cock(name, end, sheet)
    ]
    return [
        *(part.id for part in parts_standing_out(block, sheet) if part.id not in of),
        *(f"the drain cock of end {name}" for name in drained if name not in cocks),
    ]


def _wheelbases(envelope: Envelope, part: Component, sheet: Sheet) -> list[Metres]:
    """As stated, and that of its axles where it is another."""
    found = [sheet.take("a", envelope.rigid_wheelbase)]
    engine = engine_of(part, sheet) if isinstance(part, CylinderBlock) else None
    if engine is None:
        return found
    within = sheet.limit(WHEELBASE.name, "δ_a")
    by_axles = wheelbase_by_axles(envelope, engine, within, sheet)
    if by_axles and abs(by_axles.value - sheet.take_nominal("a", envelope.rigid_wheelbase)) > within:
        found.append(by_axles.value)
    return found


def _outline(envelope: Envelope, sheet: Sheet) -> Outline:
    gauge = sheet.follow(envelope.gauge)
    issued_by = sheet.read("issued by", gauge.issued_by)
    corners = tuple(
        (sheet.take_nominal(f"h_{n}", corner.height), sheet.take_nominal(f"w_{n}", corner.half_width))
        for n, corner in enumerate(gauge.corners, 1)
    )
    if not corners:
        raise sheet.not_assessed(f"{gauge.id} states no corner of its outline", gauge.where)
    return Outline(corners, issued_by)


def _point(
    name: str,
    point: GaugePoint,
    envelope: Envelope,
    moved: _Moved,
    outline: Outline,
    hot: _Hot,
    sheet: Sheet,
) -> list[Judgement]:
    x, length = sheet.take(f"x {name}", point.along), length_grown(name, point, envelope, sheet)
    grown = sheet.work(
        f"g {name}", growth_of_length, L=length.counted, alpha=hot.α, T=hot.T, T_ref=DRAWING_TEMPERATURE
    )
    width = max(
        sheet.work(
            f"w {name}",
            half_width_taken,
            y=sheet.take(f"y {name}", point.from_centre),
            k=sheet.work(f"k {name}", overhang_of_side_play, a=a, x=x),
            s=moved.s,
            v=sheet.work(f"v {name}", curve_throw, a=a, x=x, R=sheet.take("R", envelope.least_curve)),
            g=grown,
        )
        for a in moved.wheelbases
    )
    h = sheet.take(f"h {name}", point.height)
    drop = sheet.take("d", envelope.spring_drop)
    low = sheet.work(f"h_low {name}", lowest_height, h=h, w=moved.worn, d=drop, g=grown)
    rise = sheet.take("r", envelope.spring_rise)
    high = sheet.work(f"h_high {name}", highest_height, h=h, r=rise, g=grown)
    foot = sheet.at_least(low, outline.corners[0][0]).else_says(
        "{item} hangs down to {found}, the gauge begins at {limit}"
    )
    if not foot.holds:
        return [*length.told, foot]
    between = sorted({height for height, _ in outline.corners if low < height < high})
    return [*length.told, foot, *(_width(width, at, outline, sheet) for at in (low, *between, high))]


def _width(width: Metres, at: Metres, outline: Outline, sheet: Sheet) -> Judgement:
    allowed = sheet.look_up(
        f"w at {at * 1e3:.0f} mm",
        gauge_half_width,
        corners=outline.corners,
        height=at,
        issued_by=outline.issued_by,
    )
    return sheet.at_most(width, allowed).else_says(
        "{item} takes a half width of {found}, the gauge allows {limit}"
    )


RULES: tuple[Rule, ...] = (loading_gauge,)
