"""The heat that all walls beside live steam give to one exhaust stream, and the work that it costs."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Rule, Sheet, rule
from speclint.handbook.heat import GNIELINSKI, INCROPERA
from speclint.specs import CylinderBlock, LoadCase
from speclint_steamways.formulae.heat import indicated_power, share_of_power, work_lost
from speclint_steamways.inputs.streams import (
    BAND,
    LEAST,
    Stream,
    exchange_of,
    streams_of,
    times_of,
    warmed_by,
)

#: A kilowatt, W: the power for which the setting says how much steam it takes.
_KILOWATT = 1000.0
_LEFT_OUT = (
    "heat that the walls of the cylinder carry from stroke to stroke, wet exhaust, radiation within the passages, and "
    "walls that no face and no partition names (heat.every-face-counted)"
)


@rule(
    "heat.exhaust-heating",
    title="Heat through all walls between live steam and one exhaust stream, from its first valve to the nozzle, warms "
    "it by at most 10 K, at 2 times and at 4 times the steady estimate",
    on=CylinderBlock,
    cases=("running",),
    grade=Grade.NONCONFORMITY,
    cites=[
        GNIELINSKI,
        INCROPERA.at("chapter 11, effectiveness of parallel flow"),
        FIRST_PRINCIPLES,
        COMMON_PRACTICE,
    ],
    why="Heat that warms the exhaust cost fuel, cools the steam before it works, and goes up the chimney.",
    leaves_out=_LEFT_OUT,
    against=(),
    limits=[
        Limit(
            "rise",
            "10 K",
            "temperature difference",
            COMMON_PRACTICE,
            "greatest temperature rise of the exhaust",
        ),
        Limit(
            "met",
            "56 K",
            "temperature difference",
            COMMON_PRACTICE,
            "rise met in practice where one wall only stood between both, reported",
        ),
        *BAND,
    ],
)
def exhaust_heating(block: CylinderBlock, case: LoadCase, sheet: Sheet) -> Judgement:
    """Both films, walls and areas of the whole stream as two streams side by side; the steady estimate beside the band.

    A rise above the limit only at the greater factor is a query.
    """

    def judge(stream: Stream) -> Judgement:
        exchange = exchange_of(stream, case, sheet)
        warmed_by(exchange, 1.0, "1", sheet)
        low, high = times_of("steady_times", "ψ_1", block, sheet), sheet.limit("unsteady_times", "ψ_2")
        sheet.limit("met", "ΔT_p")
        allowed = sheet.limit("rise", "ΔT_a")
        least = sheet.at_most(warmed_by(exchange, low, "2", sheet).rise, allowed).else_says(
            "exhaust warmed by {found} at the least, {limit} allowed"
        )
        greatest = sheet.at_most(warmed_by(exchange, high, "4", sheet).rise, allowed).else_says(
            "exhaust may be warmed by {found}, {limit} allowed"
        )
        return sheet.worst(least, greatest.graded(Grade.QUERY))

    return sheet.each(streams_of(block, sheet), judge)


@rule(
    "heat.lost-work",
    title="The heat that live steam gives to an exhaust stream, at 2 times the steady estimate, costs at most 1.5 % of "
    "the indicated power; above 3 % is a nonconformity",
    wrong="heat given to the exhaust costs {found} of the power, {limit} allowed",
    on=CylinderBlock,
    cases=("running",),
    grade=Grade.OBSERVATION,
    gravest=Grade.NONCONFORMITY,
    cites=[GNIELINSKI, FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="Steam that is cooled before it works does less work for the same fuel.",
    leaves_out=f"that no engine reaches Carnot's share, which is taken here; {_LEFT_OUT}",
    against=(),
    limits=[
        Limit("share", "1.5 %", "ratio", COMMON_PRACTICE, "lost work over indicated power, observed above"),
        Limit(
            "most", "3 %", "ratio", COMMON_PRACTICE, "lost work over indicated power, a nonconformity above"
        ),
        Limit(
            "steam_of_kilowatt",
            "7.5 kg/h",
            "mass flow",
            COMMON_PRACTICE,
            "steam that one kilowatt of indicated power takes",
        ),
        *LEAST,
    ],
)
def lost_work(block: CylinderBlock, case: LoadCase, sheet: Sheet) -> Judgement:
    """Q (1 − T_e/T_l) at the lesser factor over the indicated power by the steam that is used."""

    def judge(stream: Stream) -> Judgement:
        exchange = exchange_of(stream, case, sheet)
        ψ = times_of("steady_times", "ψ_1", block, sheet)
        Q = warmed_by(exchange, ψ, "2", sheet).Q
        lost = sheet.work("P", work_lost, Q=Q, T_1=exchange.live.T, T_2=exchange.exhaust.T)
        power = sheet.work(
            "P_i",
            indicated_power,
            m=exchange.m_e,
            m_1=sheet.limit("steam_of_kilowatt", "m_1"),
            W_1=_KILOWATT,
        )
        share = sheet.work("x_P", share_of_power, P=lost, P_i=power)
        grave = sheet.at_most(share, sheet.limit("most", "x_m")).graded(Grade.NONCONFORMITY)
        return sheet.worst(sheet.at_most(share, sheet.limit("share", "x_a")), grave)

    return sheet.each(streams_of(block, sheet), judge)


RULES: tuple[Rule, ...] = (exhaust_heating, lost_work)
