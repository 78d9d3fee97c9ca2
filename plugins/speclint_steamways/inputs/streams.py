"""The exhaust streams of a block, and the heat that all walls beside live steam give to each."""

from __future__ import annotations

from typing import NamedTuple

from speclint import COMMON_PRACTICE, Limit, Sheet
from speclint.equations import (
    KelvinDifference,
    KilogramsPerSecond,
    Ratio,
    Watts,
    WattsPerKelvin,
    WattsPerSquareMetreKelvin,
)
from speclint.facts import flow_in
from speclint.handbook.heat import overall_coefficient, temperature_rise
from speclint.specs import BlastNozzle, CylinderBlock, LoadCase, SteamPassage, SteamPipe
from speclint_steamways.formulae.exchange import capacity_flow, parallel_exchange
from speclint_steamways.formulae.heat import conducted_together, flow_of_branch
from speclint_steamways.inputs.dividing import (
    area_of,
    ask_faces,
    dividers_of,
    is_live,
    resistance_of,
)
from speclint_steamways.inputs.films import Steam, film_in, steam_of
from speclint_steamways.inputs.gaps import EMISSIVITY

#: Which passages hold no exhaust steam on its way, whatever they carry.
_NO_EXHAUST = ("breathing way",)
#: The limits that every rule on the heat of an exhaust stream declares.
LEAST = (
    Limit(
        "steady_times",
        "2",
        "ratio",
        COMMON_PRACTICE,
        "least factor on the steady estimate, for pulsation and jets",
    ),
    EMISSIVITY,
)
#: Both ends of the band.
BAND = (
    *LEAST,
    Limit(
        "unsteady_times",
        "4",
        "ratio",
        COMMON_PRACTICE,
        "greatest factor on the steady estimate, for pulsation and jets",
    ),
)
#: Below this a factor wants a measurement.
_LEAST_TIMES = 2.0


class Stream(NamedTuple):
    """The passages that the exhaust of some cylinders takes through a block."""

    passages: tuple[SteamPassage, ...]

    @property
    def id(self) -> str:
        """What a report calls it: the id of its last passage."""
        return self.passages[-1].id


class Exchange(NamedTuple):
    """Both streams as they come in, the flow of the exhaust, and U A over all walls between them."""

    live: Steam
    exhaust: Steam
    m_l: KilogramsPerSecond
    m_e: KilogramsPerSecond
    UA: WattsPerKelvin


def exhaust_passages(block: CylinderBlock, sheet: Sheet) -> list[SteamPassage]:
    """The passages of a block that the exhaust takes, those that leave its path too."""
    return [
        one
        for one in sheet.belonging_to(block, SteamPassage)
        if sheet.read(f"place of {one.id}", one.place) not in _NO_EXHAUST and not is_live(one, sheet)
    ]


def streams_of(block: CylinderBlock, sheet: Sheet) -> tuple[Stream, ...]:
    """The exhaust streams of a block, each from the first valve to where it leaves the block.

    A passage that leads nowhere joins the stream in metal where it ends; since no link says which, it counts with each.

    :raises NotApplicable: where no passage of exhaust steam is drawn.
    """
    passages = exhaust_passages(block, sheet)
    if not passages:
        raise sheet.not_applicable("no passage of exhaust steam is drawn in the block")
    groups: dict[str, list[SteamPassage]] = {}
    for one in passages:
        groups.setdefault(_first_of(one, sheet).id, []).append(one)
    out = {key for key, group in groups.items() if any(_leads_out(one, sheet) for one in group)}
    lost = [one for key, group in groups.items() if key not in out for one in group]
    if len(out) <= 1:
        kept = [one for key in groups if key in out for one in groups[key]]
        return (Stream((*lost, *kept)),)
    return tuple(Stream((*lost, *groups[key])) for key in groups if key in out)


def _first_of(passage: SteamPassage, sheet: Sheet) -> SteamPassage:
    """The first passage of the path on which one lies."""
    first = passage
    while sheet.is_stated(f"what {first.id} follows", first.follows):
        before = sheet.follow(first.follows)
        if not isinstance(before, SteamPassage):
            break
        first = before
    return first


def _leads_out(passage: SteamPassage, sheet: Sheet) -> bool:
    """Whether a pipe or the nozzle follows a passage."""
    return bool(
        sheet.fillers(passage, SteamPipe, by="follows")
        or sheet.fillers(passage, BlastNozzle, by=("follows", "follows.*"))
    )


def exchange_of(stream: Stream, case: LoadCase, sheet: Sheet) -> Exchange:
    """Films, walls and areas of a whole stream.

    Each side flows with the greatest flow that any of its passages carries.
    """
    for passage in stream.passages:
        ask_faces(passage, sheet)
    live, exhaust = steam_of("live", case, sheet), steam_of("exhaust", case, sheet)
    m_1 = sheet.take("m", case.steam_flow)
    films: dict[str, WattsPerSquareMetreKelvin] = {}
    flows: dict[str, dict[str, KilogramsPerSecond]] = {"live": {}, "exhaust": {}}

    def film(passage: SteamPassage, side: str, steam: Steam) -> WattsPerSquareMetreKelvin:
        if passage.id not in films:
            flows[side][passage.id] = m = _flow(passage, m_1, sheet)
            films[passage.id] = film_in(passage, steam, m, passage.id, sheet)
        return films[passage.id]

    UA: WattsPerKelvin = 0.0
    for passage in stream.passages:
        if sheet.read(f"place of {passage.id}", passage.place) != "branch":
            flows["exhaust"].setdefault(passage.id, _flow(passage, m_1, sheet))
        for one in dividers_of(passage, sheet):
            h_1, h_2 = film(one.live, "live", live), film(passage, "exhaust", exhaust)
            R = resistance_of(one, live.T, exhaust.T, sheet)
            U = sheet.work(f"U_{one.name}", overall_coefficient, h_1=h_1, R=R, h_2=h_2)
            UA = sheet.work("UA", conducted_together, UA_0=UA, U=U, A=area_of(one, sheet))
    m_l = max(flows["live"].values(), default=m_1)
    return Exchange(live, exhaust, m_l, max(flows["exhaust"].values(), default=m_1), UA)


def _flow(passage: SteamPassage, m_1: KilogramsPerSecond, sheet: Sheet) -> KilogramsPerSecond:
    """The flow in a passage: of its cylinders, or a branch's share of the passage that it leaves."""
    if sheet.read(f"place of {passage.id}", passage.place) != "branch":
        return flow_in(passage, passage.id, m_1, sheet)
    before = sheet.follow(passage.follows)
    if not isinstance(before, SteamPassage):
        raise sheet.not_assessed(f"{before.id} is no passage of steam", passage.follows.where)
    m = flow_in(before, before.id, m_1, sheet)
    x = sheet.take(f"x_{passage.id}", passage.share)
    return sheet.work(f"M_{passage.id}", flow_of_branch, m=m, x=x)


class Warmed(NamedTuple):
    """Heat that passes to the exhaust, and by how much that warms it."""

    Q: Watts
    rise: KelvinDifference


def warmed_by(exchange: Exchange, ψ: Ratio, i: str, sheet: Sheet) -> Warmed:
    """Heat and rise of temperature at a factor on the steady estimate; ``i`` marks its symbols."""
    W_l = sheet.work("W_l", capacity_flow, m=exchange.m_l, c_p=exchange.live.c_p)
    W_e = sheet.work("W_e", capacity_flow, m=exchange.m_e, c_p=exchange.exhaust.c_p)
    Q = sheet.work(
        f"Q_{i}",
        parallel_exchange,
        U=exchange.UA,
        ψ=ψ,
        W_1=W_l,
        W_2=W_e,
        T_1=exchange.live.T,
        T_2=exchange.exhaust.T,
    )
    return Warmed(Q, sheet.work(f"ΔT_{i}", temperature_rise, Q=Q, m=exchange.m_e, c_p=exchange.exhaust.c_p))


def times_of(name: str, symbol: str, block: CylinderBlock, sheet: Sheet) -> Ratio:
    """A factor on the steady estimate by the settings.

    :raises NotCovered: for one below 2, unless the notes of the block name the measurement under the name of the limit.
    """
    ψ = sheet.limit(name, symbol)
    if ψ < _LEAST_TIMES and not sheet.reason_given(block, name):
        raise sheet.not_covered(
            f"{name} is set below 2: that takes a measurement, named under {name} in [notes] of {block.id}"
        )
    return ψ
