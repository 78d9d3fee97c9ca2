"""The force of a pipe on the part that it is joined to, against its weight."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import COMMON_PRACTICE, Grade, Limit, Pair, Rule, Sheet, Worked, agreement
from speclint.facts import mass_of_part
from speclint.specs import SteamPipe
from speclint_agreement.formulae.pipes import share_of_weight


def _forces(pipe: SteamPipe, sheet: Sheet) -> Iterator[Pair]:
    """The greatest force that each end is said to bring on its part against a share of the weight of the pipe."""
    ends = [
        (name, end)
        for name, end in (("start", pipe.starts_at), ("end", pipe.ends_at))
        if sheet.is_stated(f"force at its {name}", end.force)
    ]
    mass = mass_of_part(pipe, sheet, sheet.take_nominal) if ends else None
    if mass is None:
        return
    least = sheet.work("F_l", share_of_weight, k=sheet.limit("share", "k"), M=mass.value)
    for name, end in ends:
        yield Pair(end.force, Worked(least, mass.places), "at least", name=name)


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

RULES = (by_weight,)
