"""Force and moment of a pipe on the part that it is joined to, against its weight."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator

from speclint import COMMON_PRACTICE, Grade, Limit, Pair, Rule, Sheet, Worked, agreement
from speclint.equations import Kilograms
from speclint.facts import bore_of_pipe, mass_of_part
from speclint.specs import Bracket, Force, Moment, PipeEnd, SteamPipe
from speclint_agreement.formulae.pipes import share_of_moment, share_of_weight


def _forces(pipe: SteamPipe, sheet: Sheet) -> Iterator[Pair]:
    """The greatest force that each end is said to bring on its part against a share of the weight of the pipe."""
    ends = ((name, end.force) for name, end in _ends(pipe))

    def least(mass: Kilograms) -> float:
        return float(sheet.work("F_l", share_of_weight, k=sheet.limit("share", "k"), M=mass))

    yield from _against_weight("force", ends, least, pipe, sheet)


def _moments(pipe: SteamPipe, sheet: Sheet) -> Iterator[Pair]:
    """The same of the greatest moment, against that of the weight of a level pipe full of water, between brackets."""
    ends = ((name, end.moment) for name, end in _ends(pipe))

    def least(mass: Kilograms) -> float:
        D, t = sheet.take_nominal("D", pipe.outside_diameter), sheet.take_nominal("t", pipe.wall)
        given = {
            "M": mass,
            "L": sheet.take_nominal("L", pipe.length),
            "d": sheet.work("d", bore_of_pipe, D=D, t=t),
            "n": float(len(sheet.belonging_to(pipe, Bracket))),
        }
        return float(sheet.work("M_l", share_of_moment, k=sheet.limit("share", "k"), **given))

    yield from _against_weight("moment", ends, least, pipe, sheet)


def _ends(pipe: SteamPipe) -> tuple[tuple[str, PipeEnd], ...]:
    return ("start", pipe.starts_at), ("end", pipe.ends_at)


def _against_weight(
    of: str,
    ends: Iterable[tuple[str, Force | Moment]],
    least: Callable[[Kilograms], float],
    pipe: SteamPipe,
    sheet: Sheet,
) -> Iterator[Pair]:
    """What each end states against what the mass of the pipe gives at least; nothing where that cannot be worked."""
    stated = [(name, one) for name, one in ends if sheet.is_stated(f"{of} at its {name}", one)]
    mass = mass_of_part(pipe, sheet, sheet.take_nominal)
    if mass is not None:
        worked = Worked(least(mass.value), mass.places)
        yield from (Pair(one, worked, "at least", name=name) for name, one in stated)


by_weight: Rule = agreement(
    "pipe.end-force-by-weight",
    title="The force that an end of a pipe is said to bring on its part is at least a quarter of the pipe's weight",
    on=SteamPipe,
    pairs=_forces,
    within="",
    limits=[
        Limit(
            "share",
            "0.25",
            "ratio",
            COMMON_PRACTICE,
            "least force of an end over the weight of the pipe, which both ends carry, or hold upright as it is shaken",
        )
    ],
    grade=Grade.QUERY,
    why="an opening that was judged by a force without the weight of its pipe cracks at its branch as the engine rides",
    leaves_out="what heat and pressure add, which is the most of it and wants an analysis; water and lagging in and "
    "round the pipe; a hanger that carries the pipe, which no spec states",
)

moment_by_weight: Rule = agreement(
    "pipe.end-moment-by-weight",
    title="The moment that an end of a pipe is said to bring on its part is at least a quarter of that of the weight "
    "of a level pipe, full of water, held at both ends and by its brackets",
    on=SteamPipe,
    pairs=_moments,
    within="",
    edition=2,
    limits=[
        Limit(
            "share",
            "0.25",
            "ratio",
            COMMON_PRACTICE,
            "least moment of an end over that of the weight: a pipe that rises, or is hung up, brings less",
        )
    ],
    grade=Grade.QUERY,
    why="the branch of an opening that was judged by a moment without the weight of its pipe cracks in service",
    leaves_out="what heat adds, which is the most of it and wants an analysis; jolts and lagging; brackets not "
    "evenly apart, and what each carries; a pipe that stands upright, whose weight bends nothing",
)

RULES = (by_weight, moment_by_weight)
