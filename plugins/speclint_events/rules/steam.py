"""The steam in the cylinder: compression, cut-off, release and exhaust by the cycle of the running notch."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.facts import SIDES, end_on
from speclint.handbook.steam import IF97, excess_pressure, share_of_pressure
from speclint.handbook.valve_events import End
from speclint.specs import LoadCase, ValveGear
from speclint_events.inputs import steam_of

LEFT_OUT = (
    "waves of steam in chest and belt, leakage past rings and valves, the drop through regulator and pipes, unequal "
    "temperature of the walls"
)


@rule(
    "events.compression-peak",
    edition=3,
    title="Steam shut in the cylinder is pressed to at most 0.9 of the live pressure before the inlet opens",
    on=ValveGear,
    cases=("running",),
    grade=Grade.OBSERVATION,
    gravest=Grade.HOLD,
    cites=[IF97, FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="steam pressed above the chest lifts the inlet; above the relief valves it blows off at every turn",
    leaves_out=f"water in the cylinder; {LEFT_OUT}; the local code and a competent person decide on relief valves",
    against=(),
    limits=[Limit("most", "0.9", "ratio", COMMON_PRACTICE, "greatest share of the live pressure, absolute")],
)
def compression_peak(gear: ValveGear, case: LoadCase, sheet: Sheet) -> Judgement:
    """Greatest pressure of the cycle from the shutting of the exhaust to the opening of the inlet, each end.

    The clearance of an end is the less of the stated one and of what the faces leave, with the limits of the first.
    """
    steam = steam_of(gear, case, sheet)
    live = sheet.take_absolute("p_1", case.live_pressure)

    def judge(side: End) -> Judgement:
        mark = side.value[0]
        p = steam.of_end(f"p_k{mark}", side, "compression")
        most = sheet.work("p_n", share_of_pressure, x=sheet.limit("most", "x"), p=live)
        judged = sheet.at_most(p, most).else_says("{item} end compresses to {found}, {limit} allowed")
        if p > live:
            judged = judged.graded(Grade.NONCONFORMITY)
        _, end = end_on(*steam.gear.place, side, sheet)
        if sheet.is_stated("setting of the relief valves", end.relief_set):
            relief = sheet.at_most(p, sheet.take_absolute(f"p_r{mark}", end.relief_set)).else_says(
                "{item} end compresses to {found}, its relief valves open at {limit}"
            )
            return sheet.worst(judged, relief.graded(Grade.HOLD))
        return judged

    return sheet.each(SIDES, judge)


@rule(
    "events.wire-drawing",
    title="The pressure at cut-off is reported beside the live pressure; engines that run well have 0.6 to 0.9 of it",
    on=ValveGear,
    cases=("running",),
    grade=Grade.OBSERVATION,
    cites=[IF97, FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="what the inlet throttles before it shuts is pressure that was paid for and does no work",
    leaves_out=LEFT_OUT,
    against=(),
)
def wire_drawing(gear: ValveGear, case: LoadCase, sheet: Sheet) -> Judgement:
    """Pressure of the cycle at cut-off, each end; nothing is judged."""
    steam = steam_of(gear, case, sheet)
    sheet.take_absolute("p_1", case.live_pressure)

    def judge(side: End) -> Judgement:
        p = steam.of_end(f"p_c{side.value[0]}", side, "cut-off")
        return sheet.reported(p, f"pressure at cut-off, {side.value}, absolute")

    return sheet.each(SIDES, judge)


@rule(
    "events.exhaust-free",
    title="Over the return stroke, up to compression, the mean pressure is at most 0.25 bar above that of the exhaust",
    wrong="{found} above the exhaust stands against the piston, {item} end, {limit} allowed",
    on=ValveGear,
    cases=("running",),
    grade=Grade.OBSERVATION,
    cites=[IF97, FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="what stands against the returning piston is taken from every stroke's work",
    leaves_out=LEFT_OUT,
    against=(),
    limits=[
        Limit("most", "0.25 bar", "pressure", COMMON_PRACTICE, "greatest mean pressure above the exhaust's")
    ],
)
def exhaust_free(gear: ValveGear, case: LoadCase, sheet: Sheet) -> Judgement:
    """Mean pressure by the piston's travel from dead centre to compression, less that of the belt."""
    steam = steam_of(gear, case, sheet)
    belt = sheet.take_absolute("p_b", case.exhaust_pressure)

    def judge(side: End) -> Judgement:
        mark = side.value[0]
        p = steam.of_end(f"p_e{mark}", side, "return")
        return sheet.at_most(sheet.work(f"Δp_{mark}", excess_pressure, p_1=p, p_2=belt), sheet.limit("most"))

    return sheet.each(SIDES, judge)


@rule(
    "events.expansion-used",
    title="At release the steam has expanded to at most 0.30 of the live pressure",
    wrong="{item} end lets its steam go at {found}, {limit} allowed",
    on=ValveGear,
    cases=("running",),
    grade=Grade.OBSERVATION,
    cites=[IF97, FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="steam let go at high pressure takes with it the work that expansion would have given",
    leaves_out=LEFT_OUT,
    against=(),
    limits=[Limit("most", "0.30", "ratio", COMMON_PRACTICE, "greatest share of the live pressure, absolute")],
)
def expansion_used(gear: ValveGear, case: LoadCase, sheet: Sheet) -> Judgement:
    """Pressure of the cycle when the exhaust opens, each end."""
    steam = steam_of(gear, case, sheet)
    live = sheet.take_absolute("p_1", case.live_pressure)

    def judge(side: End) -> Judgement:
        p = steam.of_end(f"p_r{side.value[0]}", side, "release")
        return sheet.at_most(p, sheet.work("p_n", share_of_pressure, x=sheet.limit("most", "x"), p=live))

    return sheet.each(SIDES, judge)


@rule(
    "events.dry-at-release",
    title="The steam is at least 0.98 dry at release and at least 0.96 dry in the exhaust",
    on=ValveGear,
    cases=("running",),
    grade=Grade.OBSERVATION,
    cites=[IF97, FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="water in the cylinder washes the oil off, wets the walls and takes heat that the next charge must give again",
    leaves_out=f"lag of condensation; films of water on the walls; {LEFT_OUT}",
    against=(),
    limits=[
        Limit("release", "0.98", "ratio", COMMON_PRACTICE, "least dryness at release"),
        Limit("exhaust", "0.96", "ratio", COMMON_PRACTICE, "least dryness of the exhaust, mixed"),
    ],
)
def dry_at_release(gear: ValveGear, case: LoadCase, sheet: Sheet) -> Judgement:
    """Dryness by enthalpy and pressure of the cycle."""
    steam = steam_of(gear, case, sheet)
    ends = [(f"x_r{side.value[0]}", side) for side in SIDES]
    exhaust = sheet.at_least(steam.of_both("x_e", "exhaust dryness"), sheet.limit("exhaust")).else_says(
        "exhaust {found} dry, {limit} wanted"
    )

    def judge(item: tuple[str, End]) -> Judgement:
        x = steam.of_end(item[0], item[1], "release dryness")
        return sheet.at_least(x, sheet.limit("release")).else_says(
            "steam {found} dry at release, {limit} wanted"
        )

    return sheet.worst(exhaust, sheet.each(ends, judge))


RULES = (compression_peak, wire_drawing, exhaust_free, expansion_used, dry_at_release)
