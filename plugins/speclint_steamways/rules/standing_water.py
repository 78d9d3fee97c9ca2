"""Water that stays in a chamber: where it lies on a slope, and whether its way out stays open."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Rule, Sheet, rule
from speclint.equations import CubicMetres, Metres, Ratio
from speclint.facts import bore_named, cold_clearance, ends_of, liners_of, steam_in, volume_of_passages
from speclint.specs import CylinderBlock, CylinderEnd, Drain, SteamPassage
from speclint_steamways.formulae.floors import fall_towards
from speclint_steamways.formulae.water import (
    beyond_drain,
    clearance_volume,
    left_below_drain,
    pool,
    pools_together,
    share_of_volume,
    slope_of_cant,
)
from speclint_steamways.inputs.chambers import (
    Chamber,
    as_one_word,
    drains_of,
    gathers_water,
)
from speclint_steamways.inputs.outlets import beyond_its_block, beyond_its_end, is_open_air

#: Places by which water goes from one end of a cylinder to the other, where they belong to neither.
_JOINING = ("passage", "breathing way")


@rule(
    "water.lies-on-the-grade",
    edition=4,
    title="On the steepest grade and on the greatest cant, either way, the water that lies in a chamber beyond its "
    "drain is at most 10 % of the clearance volume of each cylinder end that it can reach",
    wrong="pool {item} takes {found} of the clearance volume, {limit} allowed",
    on=SteamPassage,
    grade=Grade.NONCONFORMITY,
    gravest=Grade.HOLD,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="Water that lies in a chest goes into the cylinder with the first stroke, and it does not compress.",
    leaves_out="grade and cant at once, floors that are not flat, the lean across of a floor that states none, ports "
    "that name no bore or no end, joined to others, and water that moves as the engine runs; the local code and a "
    "competent person decide",
    against=(),
    against_on={"cylinder-block": ("burst",), "cylinder-cover": ("burst",)},
    limits=[
        Limit("share", "10 %", "ratio", COMMON_PRACTICE, "greatest pool over the clearance volume of an end"),
        Limit("full", "1", "ratio", FIRST_PRINCIPLES, "pool over the clearance volume that leaves no room"),
        Limit(
            "steepest",
            "0.033333",
            "ratio",
            COMMON_PRACTICE,
            "steepest grade, 1 in 30",
            setting="steepest grade",
        ),
        Limit("cant", "150 mm", "length", COMMON_PRACTICE, "greatest cant", setting="cant"),
        Limit("rails", "1500 mm", "length", COMMON_PRACTICE, "distance of the middles of the rails"),
    ],
)
def lies_on_the_grade(passage: SteamPassage, sheet: Sheet) -> Judgement:
    """Pool of a flat floor beyond its nearest drain, at either end and on either side.

    A pool that fills the clearance volume is a hold: only the relief valves save the cover. A passage that joins both
    ends of a cylinder has the pools of the ports with it.
    """
    if not gathers_water(passage, sheet):
        raise sheet.not_applicable("water does not gather in it")
    block = sheet.follow(passage.in_block)
    joined = [passage, *_joined_to(passage, block, sheet)]
    slopes = [
        ("with its front lower", "front", sheet.limit("steepest", "s")),
        ("with its back lower", "back", sheet.limit("steepest", "s")),
        ("canted to the left", "left", _cant(sheet)),
        ("canted to the right", "right", _cant(sheet)),
    ]
    ends = _ends_reached(passage, block, sheet)
    items = [(f"{said}, {name}", way, s, end) for said, way, s in slopes for name, end in ends.items()]

    def judge(item: tuple[str, str, Ratio, CylinderEnd]) -> Judgement:
        _, way, s, end = item
        V: CubicMetres = 0.0
        for one in joined:
            V = sheet.work("V", pools_together, V_0=V, V_1=_pool(one, way, s, sheet))
        x = sheet.work("x", share_of_volume, V=V, V_c=_clearance(end, passage, block, sheet))
        full = sheet.at_most(x, sheet.limit("full", "x_f"))
        small = sheet.at_most(x, sheet.limit("share", "x_a"))
        return small if full.holds else small.graded(Grade.HOLD)

    return sheet.each(items, judge)


def _cant(sheet: Sheet) -> Ratio:
    return sheet.work("s_c", slope_of_cant, u=sheet.limit("cant", "u"), g=sheet.limit("rails", "g"))


def _joined_to(passage: SteamPassage, block: CylinderBlock, sheet: Sheet) -> list[SteamPassage]:
    """The ports that a passage between both ends of a cylinder joins, where water gathers in them."""
    if sheet.read("place", passage.place) not in _JOINING or sheet.is_stated("end", passage.of_end):
        return []
    bore = sheet.read("bore of the cylinder", passage.cylinder_bore)
    return [
        one
        for one in sheet.belonging_to(block, SteamPassage)
        if sheet.is_stated(f"end of {one.id}", one.of_end)
        and sheet.said(f"bore of {one.id}", one.cylinder_bore) == bore
        and gathers_water(one, sheet)
    ]


def _ends_reached(passage: SteamPassage, block: CylinderBlock, sheet: Sheet) -> dict[str, CylinderEnd]:
    """The ends of cylinders that the water of a passage can reach: of its bore and its end, where it names them."""
    ends = dict(block.ends)
    if sheet.is_stated("bore of the cylinder", passage.cylinder_bore):
        ends = ends_of(block, sheet.read("bore of the cylinder", passage.cylinder_bore), sheet)
    if sheet.is_stated("end", passage.of_end):
        name = sheet.read("end", passage.of_end)
        ends = {name: sheet.entry(block.ends, passage.of_end, f"ends of {block.id}")}
    if not ends:
        raise sheet.not_assessed(f"{block.id} states no end of a cylinder", block.where)
    return ends


def _clearance(end: CylinderEnd, passage: SteamPassage, block: CylinderBlock, sheet: Sheet) -> CubicMetres:
    """Volume of an end at its dead centre, with a new bore: the least that water can fill."""
    name = _bore_name(end, passage, block, sheet)
    liners = liners_of(block, name, sheet)
    D = sheet.take("D", liners[0].bore if liners else bore_named(block, name, sheet).diameter)
    c = cold_clearance(block, end, sheet, bore=name)
    V_p = volume_of_passages(block, end, "V_p", sheet)
    return sheet.work("V_c", clearance_volume, D=D, c=c, V_p=V_p)


def _bore_name(end: CylinderEnd, passage: SteamPassage, block: CylinderBlock, sheet: Sheet) -> str:
    if sheet.is_stated("bore of the cylinder", passage.cylinder_bore):
        return sheet.read("bore of the cylinder", passage.cylinder_bore)
    if len(block.bores) == 1:
        return next(iter(block.bores))
    return sheet.read("bore of the end", end.of_bore)


def _pool(passage: SteamPassage, way: str, s: Ratio, sheet: Sheet) -> CubicMetres:
    """Water that stays beyond the nearest drain at the lower end, or at the lower of both sides."""
    chamber = Chamber(passage.id, passage, False)
    drains = list(drains_of(chamber, sheet))
    floor, i = passage.floor, passage.id
    L, b = sheet.take(f"L_{i}", floor.length), sheet.take(f"b_{i}", floor.width)
    H = min((sheet.take(f"H_{i}", one.at) for _, one in drains), default=0.0)
    if way in ("left", "right"):
        left, right = _distances([one for _, one in drains], "across", b, i, sheet)
        a, φ = left if way == "left" else right, _fall_across(passage, way, sheet)
        return sheet.work(f"V_{i}", pool, H=H, L=b, b=L, a=a, s=s, φ=φ)
    front, back = _distances([one for _, one in drains], "along", L, i, sheet)
    φ = _fall_against(passage, way, sheet)
    return sheet.work(f"V_{i}", pool, H=H, L=L, b=b, a=front if way == "front" else back, s=s, φ=φ)


def _distances(drains: list[Drain], key: str, length: Metres, i: str, sheet: Sheet) -> tuple[Metres, Metres]:
    """How far both ends of a floor lie from the drain nearest to each; without a drain, its whole length."""
    places = [sheet.take(f"{key}_{i}", getattr(one, key)) for one in drains]
    if not places:
        return length, length
    return min(places), min(sheet.work(f"a_{i}", beyond_drain, L=length, a=one) for one in places)


def _fall_against(passage: SteamPassage, way: str, sheet: Sheet) -> Ratio:
    """The fall of a floor against a slope to the front or the back: below nothing where it falls with it."""
    if sheet.is_stated(f"how the floor of {passage.id} stands", passage.floor.inclined):
        return -_inclined(passage, way, sheet)
    φ = sheet.take(f"φ_{passage.id}", passage.floor.fall)
    if φ == 0:
        return φ
    return -φ if sheet.read(f"fall of {passage.id}", passage.floor.towards) == way else φ


def _fall_across(passage: SteamPassage, way: str, sheet: Sheet) -> Ratio:
    """The fall of a floor against a slope to the left or the right; nothing where it says no inclination."""
    if not sheet.is_stated(f"how the floor of {passage.id} stands", passage.floor.inclined):
        return 0.0
    outer = sheet.read("hand of the block", sheet.follow(passage.in_block).hand)
    return -_inclined(passage, "outer" if way == outer else "inner", sheet)


def _inclined(passage: SteamPassage, way: str, sheet: Sheet) -> Ratio:
    """Fall of a floor towards one of its edges, by how a line square to it stands."""
    stands = sheet.read(f"how the floor of {passage.id} stands", passage.floor.inclined)
    return sheet.look_up(f"φ_{passage.id}", fall_towards, stands=stands, way=way)


@rule(
    "water.drain-stays-open",
    edition=7,
    title="Every drain has a bore of at least 8 mm and falls all the way, floors fall by 1 in 50 or more to theirs; "
    "none joins two ends of a cylinder, leads to another block, or from end or exhaust to live steam",
    on=(SteamPassage, CylinderBlock),
    grade=Grade.NONCONFORMITY,
    cites=[COMMON_PRACTICE],
    why="A drain chokes with scale or fills a loop with water, and one that joins both ends fills the other with it.",
    leaves_out="frost, and cocks that are worked badly",
    against=("burst",),
    limits=[
        Limit("bore", "8 mm", "length", COMMON_PRACTICE, "least bore of a drain"),
        Limit("fall", "0.02", "ratio", COMMON_PRACTICE, "least fall of a floor towards its drain, 1 in 50"),
        Limit(
            "left",
            "2 mm",
            "length",
            COMMON_PRACTICE,
            "greatest depth of water at the lowest edge of a sloping floor",
        ),
    ],
)
def drain_stays_open(part: SteamPassage | CylinderBlock, sheet: Sheet) -> Judgement:
    """Bore and rises of each drain, fall of the floor, and into what the drains of the ends lead."""
    if isinstance(part, CylinderBlock):
        items = list(_of_ends(part, sheet))
        if not items:
            raise sheet.not_applicable("no end of a cylinder is drawn")
        return sheet.each(items, lambda item: item[1]())
    if not gathers_water(part, sheet) and not part.drains:
        raise sheet.not_applicable("water does not gather in it")
    chamber = Chamber(part.id, part, False)
    drains = list(drains_of(chamber, sheet))
    if not drains:
        raise sheet.not_applicable("it has no drain (steamway.drains)")
    return sheet.each(
        [
            *_ways(chamber, drains, sheet),
            ("floor", lambda: _falls(part, drains, sheet)),
            (f"outlet of {part.id}", lambda: _outlet_of(part, sheet)),
        ],
        lambda item: item[1](),
    )


def _ways(
    chamber: Chamber, drains: list[tuple[str, Drain]], sheet: Sheet
) -> Iterator[tuple[str, Callable[[], Judgement]]]:
    for name, drain in drains:
        yield f"{chamber.name}, {name}", lambda one=drain: _open(one, sheet)  # type: ignore[misc]


def _open(drain: Drain, sheet: Sheet) -> Judgement:
    wide = sheet.at_least(sheet.take("d", drain.bore), sheet.limit("bore", "d_a")).else_says(
        "drain of {item} is {found} wide, {limit} wanted"
    )
    rises = sheet.take("H_r", drain.rises)
    said = "its way falls all the way" if rises <= 0 else "its way rises again, and water stays in the loop"
    return sheet.worst(wide, sheet.states(rises <= 0, said, where=drain.rises.where))


def _falls(passage: SteamPassage, drains: list[tuple[str, Drain]], sheet: Sheet) -> Judgement:
    """Fall of a floor, and that a drain is at the edge to which it falls: no water stays beyond it."""
    way = ""
    if sheet.is_stated(f"how the floor of {passage.id} stands", passage.floor.inclined):
        falls = {one: _inclined(passage, one, sheet) for one in ("front", "back", "outer", "inner")}
        way = max(falls, key=lambda one: falls[one])
        φ = falls[way]
    else:
        φ = sheet.take("φ", passage.floor.fall)
    steep = sheet.at_least(φ, sheet.limit("fall", "φ_a")).else_says(
        "floor falls by {found} of its length, {limit} wanted"
    )
    if not steep.holds:
        return steep
    way = way or sheet.read("fall", passage.floor.towards)
    return sheet.worst(steep, _at_the_edge(passage, (way, φ), drains, sheet))


def _at_the_edge(
    passage: SteamPassage, falls: tuple[str, Ratio], drains: list[tuple[str, Drain]], sheet: Sheet
) -> Judgement:
    """Depth of the water that stays where a floor is lowest, below the lip of the drain nearest to that edge."""
    way, φ = falls
    lengthwise, first = way in ("front", "back"), way == "front"
    key, size = ("along", passage.floor.length) if lengthwise else ("across", passage.floor.width)
    if not lengthwise:
        left = sheet.read("hand of the block", sheet.follow(passage.in_block).hand) == "left"
        first = left == (way == "outer")
    L, depths = sheet.take("L", size), list[Metres]()
    for name, one in drains:
        a = sheet.take(f"{key} {name}", getattr(one, key))
        to_edge = a if first else sheet.work(f"a_{name}", beyond_drain, L=L, a=a)
        d = sheet.take(f"d {name}", one.bore)
        depths.append(sheet.work(f"h_{name}", left_below_drain, φ=φ, a=to_edge, d=d))
    return sheet.at_most(min(depths), sheet.limit("left", "h_a")).else_says(
        "water stays {found} deep where the floor is lowest, beyond its drain; {limit} allowed"
    )


def _of_ends(block: CylinderBlock, sheet: Sheet) -> Iterator[tuple[str, Callable[[], Judgement]]]:
    """The drains of all ends, and for each pair of ends what joins them."""
    for name, end in block.ends.items():
        chamber = Chamber(f"end {name}", end, False)
        if not end.drains:
            yield name, lambda one=chamber: _unstated(one, sheet)  # type: ignore[misc]
        yield from _ways(chamber, list(end.drains.items()), sheet)
    for name, drains in _drains_by_end(block, sheet):
        if drains:
            yield f"outlet of {name}", lambda name=name, drains=drains: _outlet(name, drains, block, sheet)  # type: ignore[misc]
    if len(block.ends) > 1:
        yield "what joins them", lambda: _apart(block, sheet)


def _unstated(chamber: Chamber, sheet: Sheet) -> Judgement:
    list(drains_of(chamber, sheet))
    raise sheet.not_applicable(f"{chamber.name} has no drain (water.drain-passes-it)")


def _outlet_of(passage: SteamPassage, sheet: Sheet) -> Judgement:
    """Whether a passage drains into another block, and one of exhaust into where live steam stands.

    The drains of a port are those of its end.
    """
    if sheet.is_stated("end", passage.of_end):
        raise sheet.not_applicable("its drains are those of an end of a cylinder")
    block = sheet.follow(passage.in_block)
    if steam_in(passage, sheet).value != "live steam":
        return _outlet("", passage.drains, block, sheet)
    wrong = [
        said
        for name, drain in passage.drains.items()
        for said in beyond_its_block(name, drain, block, sheet, live=True)
    ]
    said = "; ".join(wrong) if wrong else "no drain leads to another block"
    return sheet.states(not wrong, said, where=passage.where)


def _outlet(end: str, drains: dict[str, Drain], block: CylinderBlock, sheet: Sheet) -> Judgement:
    """Into which passages and pipes the drains of an end lead, or of an exhaust passage, which is of no end."""
    wrong = [
        said
        for name, drain in drains.items()
        for said in (
            *beyond_its_end(end, name, drain, block, sheet),
            *beyond_its_block(name, drain, block, sheet),
        )
    ]
    said = "; ".join(wrong) if wrong else "no drain leads to another end, to another block or to live steam"
    return sheet.states(not wrong, said, where=block.where)


def _apart(block: CylinderBlock, sheet: Sheet) -> Judgement:
    """Whether the drains of two ends, or of the ports at them, lead into one pipe, trap or passage."""
    led: dict[str, set[str]] = {}
    for name, drains in _drains_by_end(block, sheet):
        for drain in drains.values():
            into = sheet.read(f"drain of {name} leads into", drain.into)
            if not is_open_air(drawn := as_one_word(into)):
                led.setdefault(drawn, set()).add(name)
    joining = {into: ends for into, ends in led.items() if len(ends) > 1}
    if not joining:
        return sheet.states(True, "no drain joins two ends")
    said = "; ".join(f"{into} joins {' and '.join(sorted(ends))}" for into, ends in joining.items())
    return sheet.states(False, said, where=block.where)


def _drains_by_end(block: CylinderBlock, sheet: Sheet) -> Iterator[tuple[str, dict[str, Drain]]]:
    for name, end in block.ends.items():
        yield name, end.drains
    for passage in sheet.belonging_to(block, SteamPassage):
        if passage.drains and sheet.is_stated(f"end of {passage.id}", passage.of_end):
            yield sheet.read(f"end of {passage.id}", passage.of_end), passage.drains


RULES: tuple[Rule, ...] = (drain_stays_open, lies_on_the_grade)
