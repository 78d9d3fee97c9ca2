"""The allowances that the wall of a steam pipe is reckoned with, against how tubes are delivered and bent."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Sheet, rule
from speclint.specs import SteamPipe
from speclint_steamways.formulae.pipes import least_thinning
from speclint_steamways.sources import EN_10216_2, ISO_1127, TEMA_BENDS

#: Families of metal that steam, water and soot eat away evenly.
_RUSTS = ("carbon-steel", "alloy-steel", "cast-steel")


@rule(
    "pipe.wall-as-delivered",
    title="The mill tolerance of a pipe is at least that of the closest class of tube, and the thinning of its "
    "sharpest bend at least that of a tube which is bent to its radius",
    on=SteamPipe,
    grade=Grade.HOLD,
    cites=[EN_10216_2, ISO_1127, TEMA_BENDS, COMMON_PRACTICE],
    why="a wall reckoned with no tolerance and no thinning passes on paper, and the tube that comes from the mill "
    "and the bender is a fifth thinner",
    leaves_out="a wall drawn with its own limits, which are measured as the tube comes in; formed elbows, whose wall "
    "their standard gives; how the bend is made: one of small radius may thin twice as much; the local code and a "
    "competent person decide",
    against=("burst",),
    limits=[
        Limit(
            "mill tolerance",
            "7.5 %",
            "ratio",
            ISO_1127,
            "least tolerance of a wall below that ordered: of class T4, the closest",
        ),
        Limit(
            "thinning",
            "1",
            "ratio",
            TEMA_BENDS,
            "least thinning of a bend over that which its radius gives",
        ),
    ],
)
def as_delivered(pipe: SteamPipe, sheet: Sheet) -> Judgement:
    """Both shares of the wall as stated against the least that is met with."""
    judged = [*_from_the_mill(pipe, sheet), *_as_bent(pipe, sheet)]
    if not judged:
        raise sheet.not_applicable("its wall has limits of its own, and it is not bent")
    return sheet.worst(*judged)


def _from_the_mill(pipe: SteamPipe, sheet: Sheet) -> Iterator[Judgement]:
    if sheet.tolerance("Δt", pipe.wall) > 0:
        return
    u = sheet.take("u", pipe.mill_tolerance)
    yield sheet.at_least(u, sheet.limit("mill tolerance", "u_0")).else_says(
        "mill tolerance {found}, tubes are delivered with {limit} or more"
    )


def _as_bent(pipe: SteamPipe, sheet: Sheet) -> Iterator[Judgement]:
    if sheet.count("n", pipe.bends) == 0 or sheet.said("bends are", pipe.bends_are) == "formed elbows":
        return
    k = sheet.take("k", pipe.bend_thinning)
    least = sheet.work(
        "k_0",
        least_thinning,
        x=sheet.limit("thinning", "x"),
        D=sheet.take("D", pipe.outside_diameter),
        R=sheet.take("R", pipe.bend_radius),
    )
    yield sheet.at_least(k, least).else_says(
        "bend thinned by {found}, its radius thins it by {limit} or more"
    )


@rule(
    "pipe.corrosion-allowance",
    title="A steam pipe of steel that rusts has at least 0.75 mm for corrosion and wear",
    wrong="pipe has {found} for corrosion, {limit} or more is usual",
    on=SteamPipe,
    grade=Grade.QUERY,
    cites=[COMMON_PRACTICE],
    why="a pipe rusts where water lies in it as the engine stands, and where soot and water lie on it; a wall reckoned "
    "with a tenth of what it will lose is thin long before it is looked at",
    leaves_out="how fast it rusts where it lies, which the years until it is renewed decide; pitting, and erosion by "
    "wet steam in bends; threads cut into it",
    against=("corrode",),
    limits=[
        Limit(
            "allowance",
            "0.75 mm",
            "length",
            COMMON_PRACTICE,
            "least allowance for corrosion and wear; 1 mm to 2 mm are usual",
        )
    ],
)
def corrosion_allowance(pipe: SteamPipe, sheet: Sheet) -> Judgement:
    """The allowance that every rule on the wall takes off, as it is stated."""
    family = sheet.material_of(pipe).family
    if family not in _RUSTS:
        raise sheet.not_applicable(f"{family.replace('-', ' ')} does not rust")
    return sheet.at_least(sheet.take("A", pipe.corrosion_allowance), sheet.limit("allowance"))


RULES = (as_delivered, corrosion_allowance)
