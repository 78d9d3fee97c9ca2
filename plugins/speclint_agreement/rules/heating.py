"""The block is heated once for all that is shrunk into it, and no hotter than its stress relief."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import COMMON_PRACTICE, Grade, Limit, Pair, Rule, Sheet, agreement, worked
from speclint.handbook.heat import tied_temperature
from speclint.handbook.steam import rise_from_cold
from speclint.specs import CylinderBlock, CylinderLiner, LoadCase, SteamPassage, ValveSeat, Weldment


def _heatings(block: CylinderBlock, sheet: Sheet) -> Iterator[Pair]:
    """What each liner, seat and step states against the heating of the block, or against the first that is stated."""
    parts: tuple[CylinderLiner | ValveSeat, ...] = (
        *sheet.belonging_to(block, CylinderLiner),
        *sheet.belonging_to(block, ValveSeat),
    )
    named = [part for part in parts if sheet.is_stated(f"heating for {part.id}", part.block_heated_to)]
    once = sheet.is_stated("heating of the block", block.heated_to)
    if not (once or named):
        return
    heating = block.heated_to if once else named[0].block_heated_to
    for part in named if once else named[1:]:
        yield Pair(part.block_heated_to, heating, name=part.id)
    for step, detail in block.making.details.items():
        if step.startswith("heat block") and sheet.is_stated(f"temperature of {step}", detail.temperature):
            yield Pair(detail.temperature, heating, name=step)
    for weldment in sheet.belonging_to(block, Weldment):
        if sheet.is_stated("stress relief", weldment.treatment.temperature):
            yield Pair(heating, weldment.treatment.temperature, "at most", name="stress relief")


heated_once: Rule = agreement(
    "block.heated-once",
    title="All that is shrunk into a block goes in at one temperature of it, not above that of its stress relief",
    on=CylinderBlock,
    pairs=_heatings,
    within="5 K",
    dimension="temperature difference",
    edition=2,
    grade=Grade.NONCONFORMITY,
    why="a block heated a second time lets go what is already in it, and one heated like a furnace load moves again",
    leaves_out="how long block and parts take to come to one temperature; a stress relief made after the parts are in",
)


def _warmed(weldment: Weldment, sheet: Sheet) -> Iterator[Pair]:
    """The time of warming that a weldment states against that of its duty."""
    duty = sheet.duty_of(weldment)
    if duty is not None and sheet.is_stated("time of warming", duty.warming.time):
        yield Pair(weldment.warming_time, duty.warming.time)


warmed_in_time: Rule = agreement(
    "duty.one-warming",
    title="A weldment is warmed in the time that its duty states",
    on=Weldment,
    pairs=_warmed,
    within="1 min",
    dimension="time",
    grade=Grade.NONCONFORMITY,
    why="a block that is warmed faster than its walls were reckoned for cracks, and its drains do not pass the water",
    leaves_out="a duty that states no time of warming",
)


def _rise(weldment: Weldment, case: LoadCase, sheet: Sheet) -> Iterator[Pair]:
    """The rise of the steam side that a weldment allows against that of the hottest that steam washes while warming.

    That is the block, or a passage in it of which the load case says how hot it becomes; both from the air outside.
    """
    if not sheet.is_stated("rise allowed", weldment.warming_rise):
        return
    block = sheet.follow(weldment.makes)
    warmed = [case.temperature_of(block)]
    for passage in sheet.belonging_to(block, SteamPassage):
        if sheet.is_stated(f"temperature of {passage.id}", case.temperature_of(passage)):
            warmed.append(case.temperature_of(passage))
    T_0 = sheet.take("T_0", case.ambient_temperature)
    rises = [sheet.work("θ", rise_from_cold, T=sheet.take("T", one), T_0=T_0) for one in warmed]
    hottest = max(range(len(rises)), key=rises.__getitem__)
    rise = worked(rises[hottest], warmed[hottest], case.ambient_temperature)
    yield Pair(weldment.warming_rise, rise, "at least")


warmed_by_duty: Rule = agreement(
    "duty.warming-rise",
    title="A weldment is reckoned for no less rise of temperature in the time of its warming than its duty gives the "
    "block and the passages in it",
    on=Weldment,
    cases=("warming",),
    pairs=_rise,
    within="",
    grade=Grade.NONCONFORMITY,
    why="walls that were reckoned for a slow rise crack at their corners when the steam warms them at its own rate",
    leaves_out="steam let into a block that is colder than the air of the load case, for which the first shock is "
    "reckoned by itself (block.warming-rate); metal beside the steam that is hotter than the mean of its part",
)


def _air(weldment: Weldment, case: LoadCase, _: Sheet) -> Iterator[Pair]:
    """The lowest temperature of a weldment against the coldest air in which steam is let into it."""
    yield Pair(weldment.least_temperature, case.coldest_ambient, "at most")


coldest_air: Rule = agreement(
    "duty.coldest-air",
    title="A weldment is reckoned for a lowest temperature no higher than the coldest air in which its engine stands",
    on=Weldment,
    cases=("warming",),
    pairs=_air,
    within="",
    grade=Grade.NONCONFORMITY,
    why="plate that was chosen for a mild climate breaks brittly on the first winter's morning, as steam is let in",
    leaves_out="whether the coldest air is that of the line, which nothing in a repository tells: EN 50125-1 has "
    "classes of -25 and -40 °C (from memory)",
)


def _cold(_: CylinderBlock, case: LoadCase, sheet: Sheet) -> Iterator[Pair]:
    """The coldest and the hottest that each part is stated to be, cold, against the air of that case."""
    if not case.temperatures:
        return
    air, apart = sheet.take("T_a", case.ambient_temperature), sheet.limit("apart", "ΔT")
    least = sheet.work("T_c", tied_temperature, T_b=air, ΔT=-apart)
    most = sheet.work("T_h", tied_temperature, T_b=air, ΔT=apart)
    for name in case.temperatures:
        metal = case.temperature_named(name)
        coldest, hottest = sheet.take_limits(f"T {name}", metal)
        yield Pair(worked(coldest, metal), worked(least, case.ambient_temperature), "at least", name=name)
        yield Pair(worked(hottest, metal), worked(most, case.ambient_temperature), "at most", name=name)


cold_as_air: Rule = agreement(
    "duty.cold-as-the-air",
    title="In the cold engine every part is about as cold as the air in which it is put together and measured",
    on=CylinderBlock,
    cases=("cold",),
    pairs=_cold,
    within="",
    grade=Grade.NONCONFORMITY,
    why="fits and clearances are judged cold by these temperatures: a part that is colder than all others has room "
    "that nobody finds in the shop",
    leaves_out="parts that are chilled or heated to be put in, which state that by themselves; how cold the shop is",
    limits=[
        Limit(
            "apart",
            "10 K",
            "temperature difference",
            COMMON_PRACTICE,
            "what a part of the cold engine may be colder or hotter than the air",
            "not negative",
        )
    ],
)

RULES = (cold_as_air, coldest_air, heated_once, warmed_by_duty, warmed_in_time)
