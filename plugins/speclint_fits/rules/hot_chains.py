"""Dimension chains with each part at its own temperature: worst case and statistical."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Rule, Sheet, rule
from speclint.equations import Metres
from speclint.facts import links_of, size_of_link, with_link
from speclint.handbook.fits import (
    DRAWING_TEMPERATURE,
    MONTE_CARLO_CITES,
    STATISTICAL_CITES,
    WORST_CASE_CITES,
    chains,
    growth_of_length,
)
from speclint.handbook.materials import Material
from speclint.handbook.tables import Reading
from speclint.specs import HOT_CASES, ChainLink, Component, DimensionChain, LoadCase
from speclint_fits.formulae.chains import gap_when_hot
from speclint_fits.formulae.fits import middle
from speclint_fits.inputs.chains import asked_hot, handbook_link, held, judged_by_chance


@rule(
    "chain.worst-case-hot",
    title="The hot gap stays within its limits with every link and every temperature at its worst limit at "
    "once",
    on=DimensionChain,
    edition=2,
    cases=(*HOT_CASES, "water"),
    grade=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES, *WORST_CASE_CITES],
    why="A gap set with a feeler gauge in the shop changes in steam: each part grows by its own expansion "
    "and temperature.",
    leaves_out="load and wear, temperature differences along one link, errors of form that no link states",
    against=(),
)
def worst_case_hot(chain: DimensionChain, case: LoadCase, sheet: Sheet) -> Judgement:
    """Σ k x (1 + α (T − 20 °C)) over the links at the governing corner of sizes, temperatures and metals."""
    asked = asked_hot(chain, sheet)
    gap = growth = 0.0
    for one in links_of(chain, sheet):
        place = _place_of(one.name, one.link, sheet)
        x = sheet.take(one.name, size_of_link(one, sheet))
        gap = sheet.work("g", with_link, g_0=gap, k=one.k, x=x)
        y = _growth(one.name, x, place, case, sheet)
        growth = sheet.work("y", with_link, g_0=growth, k=one.k, x=y)
    hot = sheet.work("g_h", gap_when_hot, g=gap, y=growth)
    judged = held(hot, asked, sheet)
    cold, grown = sheet.millimetres(gap, ".3f"), sheet.millimetres(growth, "+.3f")
    return judged.saying(f"{judged.says}; cold {cold}, changed by thermal growth by {grown}")


@dataclass(frozen=True)
class Place:
    """Where a link lies: its part, and the name of its temperature where that is not the part's."""

    part: Component
    named: str

    @property
    def called(self) -> str:
        """What the sheet calls it."""
        return self.named or self.part.id


def _place_of(name: str, link: ChainLink, sheet: Sheet) -> Place:
    own = not sheet.is_stated(f"{name} grows with", link.grows_with)
    part = sheet.follow(link.of if own else link.grows_with)
    named = sheet.is_stated(f"temperature of {name}", link.temperature)
    return Place(part, sheet.read(f"temperature of {name}", link.temperature) if named else "")


def _growth(name: str, x: Metres, place: Place, case: LoadCase, sheet: Sheet) -> Metres:
    T = sheet.take(
        f"T of {name}",
        case.temperature_named(place.named) if place.named else case.temperature_of(place.part),
    )
    metal = sheet.material_of(place.part)
    alpha = sheet.look_up(f"α of {name}", metal.expansion, of=place.part, at=T)
    return sheet.work(f"y of {name}", growth_of_length, L=x, alpha=alpha, T=T, T_ref=DRAWING_TEMPERATURE)


@rule(
    "chain.statistical-hot",
    title="The share of chains whose hot gap comes out within its limits is at least the wanted yield",
    on=DimensionChain,
    edition=2,
    cases=(*HOT_CASES, "water"),
    grade=Grade.OBSERVATION,
    cites=[*STATISTICAL_CITES, *MONTE_CARLO_CITES],
    why="It shows whether tolerances or temperatures spread the gap, and what closer limits would gain.",
    leaves_out="the single engine, for which the worst case counts; correlation between the temperatures of "
    "neighbouring parts; how well the distributions describe shop and service",
    against=(),
    limits=[
        Limit("trials", "5000", "ratio", COMMON_PRACTICE, "trials of the Monte Carlo, at least 1000"),
        Limit("seed", "1902", "ratio", COMMON_PRACTICE, "seed of its generator"),
    ],
)
def statistical_hot(chain: DimensionChain, case: LoadCase, sheet: Sheet) -> Judgement:
    """The cold links as they vary, and the growth of each part as one more link, uniform between its extremes.

    All lengths of one part at one temperature grow together: their growth is one random quantity, not several.
    """
    wanted = sheet.take("Y_w", chain.wanted_yield)
    asked = asked_hot(chain, sheet)
    links: list[chains.Link] = []
    lengths: dict[tuple[str, str], tuple[Place, Metres]] = {}
    for one in links_of(chain, sheet):
        place = _place_of(one.name, one.link, sheet)
        link = handbook_link(one, sheet)
        links.append(link)
        m = sheet.work(f"m of {one.name}", middle, a=link.low, b=link.high)
        key = (place.part.id, place.named)
        so_far = lengths[key][1] if key in lengths else 0.0
        lengths[key] = place, sheet.work(f"L of {place.called}", with_link, g_0=so_far, k=one.k, x=m)
    links += [_growing(place, L, case, sheet) for place, L in lengths.values()]
    return judged_by_chance(tuple(links), asked, wanted, sheet)


def _growing(place: Place, L: Metres, case: LoadCase, sheet: Sheet) -> chains.Link:
    """The growth of all lengths of a part as a link, between the extremes of its temperature and its metal."""
    measure = case.temperature_named(place.named) if place.named else case.temperature_of(place.part)
    metal = sheet.material_of(place.part)
    grown = _extremes(place, L, sheet.take_limits(f"T of {place.called}", measure), metal, sheet)
    return chains.Link(f"growth of {place.called}", min(grown), max(grown), 1.0, "uniform")


def _extremes(
    place: Place, L: Metres, temperatures: Iterable[float], metal: Material, sheet: Sheet
) -> list[Metres]:
    grown = []
    for side, T in zip(("min", "max"), temperatures, strict=True):
        for end, table in (("least", least_expansion), ("greatest", greatest_expansion)):
            name = f"{place.called}, {end} at T_{side}"
            alpha = sheet.look_up(f"α of {name}", table, metal=metal, at=T)
            grown.append(
                sheet.work(f"y of {name}", growth_of_length, L=L, alpha=alpha, T=T, T_ref=DRAWING_TEMPERATURE)
            )
    return grown


def least_expansion(metal: Material, at: float) -> Reading:
    """The least mean coefficient that a material may have from 20 °C to a temperature, 1/K."""
    found = metal.expansion(at=at)
    return Reading.exact(f"least {found.what}", found.low, found.unit, found.source)


def greatest_expansion(metal: Material, at: float) -> Reading:
    """The greatest mean coefficient that a material may have from 20 °C to a temperature, 1/K."""
    found = metal.expansion(at=at)
    return Reading.exact(f"greatest {found.what}", found.high, found.unit, found.source)


RULES: tuple[Rule, ...] = (worst_case_hot, statistical_hot)
