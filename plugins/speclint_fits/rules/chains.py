"""Dimension chains: the gap at worst, by chance, and as the fitter makes it."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Rule, Sheet, rule
from speclint.handbook import chains
from speclint.handbook.chains import MONTE_CARLO_CITES, STATISTICAL_CITES, WORST_CASE_CITES, last_link
from speclint.handbook.reading import Reading
from speclint.specs import ChainLink, DimensionChain
from speclint_fits.formulae.chains import (
    high_end,
    link_tolerance,
    low_end,
    others_vary,
    reach_of_link,
    reaches_in_square,
    reaches_together,
    share_of_reach,
    share_of_square,
    spread_asked,
    with_link,
)
from speclint_fits.formulae.fits import middle


@dataclass(frozen=True)
class Acting:
    """A link by name, and how it acts: 1 widens the gap, −1 narrows it, another number by a lever."""

    name: str
    link: ChainLink
    k: float


def _links(chain: DimensionChain, sheet: Sheet) -> Iterator[Acting]:
    """The links of a chain, in the order in which they are stated."""
    if not chain.chain:
        raise sheet.not_assessed("no link of the chain is stated", chain.where)
    for name, link in chain.chain.items():
        sign = 1.0 if sheet.read(f"{name} acts", link.direction) == "widens" else -1.0
        lever = 1.0
        if sheet.is_stated(f"lever of {name}", link.lever):
            lever = sheet.take(f"k of {name}", link.lever)
        yield Acting(name, link, sign * lever)


def _asked(chain: DimensionChain, sheet: Sheet) -> tuple[float, float]:
    """What is asked of the gap; minus infinity and infinity on a side that asks nothing."""
    least = greatest = math.inf
    if sheet.is_stated("least", chain.least):
        least = -sheet.take_nominal("g_least", chain.least)
    if sheet.is_stated("greatest", chain.greatest):
        greatest = sheet.take_nominal("g_greatest", chain.greatest)
    if math.isinf(least) and math.isinf(greatest):
        raise sheet.not_assessed("neither least nor greatest is asked of the gap", chain.where)
    return -least, greatest


def _held(gap: float, asked: tuple[float, float], sheet: Sheet) -> Judgement:
    """The gap against what is asked of it."""
    least, greatest = asked
    if math.isinf(greatest):
        return sheet.at_least(gap, least)
    if math.isinf(least):
        return sheet.at_most(gap, greatest)
    return sheet.within(gap, least, greatest)


@rule(
    "chain.worst-case",
    title="The gap keeps its limits with every link at once at its unkindest",
    on=DimensionChain,
    grade=Grade.NONCONFORMITY,
    cites=[*WORST_CASE_CITES],
    why="Of parts made once there is no average: what the limits allow is what may be delivered.",
    leaves_out="heat, load and wear; errors of form and of position that no link states",
)
def worst_case(chain: DimensionChain, sheet: Sheet) -> Judgement:
    """Σ k x over the links at the governing corner, and the share of each link in the spread."""
    asked = _asked(chain, sheet)
    links = list(_links(chain, sheet))
    gap, reach, reaches = 0.0, 0.0, {}
    for one in links:
        measure = sheet.dimension(one.link)
        gap = sheet.work("g", with_link, g_0=gap, k=one.k, x=sheet.take(one.name, measure))
        width = sheet.tolerance(f"t of {one.name}", measure)
        reaches[one.name] = sheet.work(f"r of {one.name}", reach_of_link, k=one.k, t=width)
        reach = sheet.work("R", reaches_together, R_0=reach, r=reaches[one.name])
    judged = _held(gap, asked, sheet)
    shares = _shares(reaches, reach, share_of_reach, sheet)
    return replace(judged, says=f"{judged.says}; {shares}" if shares else judged.says)


def _shares(reaches: dict[str, float], whole: float, formula: Callable[..., float], sheet: Sheet) -> str:
    """The share of each link in words, the greatest first; "" where nothing varies."""
    if whole == 0:
        return ""
    found = {
        name: sheet.work(f"share of {name}", formula, r=reach, R=whole) for name, reach in reaches.items()
    }
    ordered = sorted(found, key=lambda name: -found[name])
    return "shares: " + ", ".join(f"{name} {found[name]:.0%}" for name in ordered)


@rule(
    "chain.statistical",
    title="As many chains as are wanted come out within the limits, were many made",
    on=DimensionChain,
    grade=Grade.OBSERVATION,
    cites=[*STATISTICAL_CITES, *MONTE_CARLO_CITES],
    why="It says which link to tighten, and what a second engine would cost in fitting.",
    leaves_out="the single engine, which is at the mercy of the worst case; how truly the spread describes the shop",
    limits=[
        Limit("trials", "20000", "ratio", COMMON_PRACTICE, "trials of the Monte Carlo, at least 1000"),
        Limit("seed", "1902", "ratio", COMMON_PRACTICE, "seed of its generator"),
    ],
)
def statistical(chain: DimensionChain, sheet: Sheet) -> Judgement:
    """Root-sum-square about the middle, and the yield of a seeded trial at the low end of its own doubt."""
    wanted = sheet.take("Y_w", chain.wanted_yield)
    asked = _asked(chain, sheet)
    limits = tuple(_handbook_link(one, sheet) for one in _links(chain, sheet))
    low, high, shares = _root_sum_square(limits, sheet)
    trials, seed = (int(sheet.limit(name)) for name in ("trials", "seed"))
    share = sheet.look_up("Y", monte_carlo_yield, links=limits, asked=asked, trials=trials, seed=seed)
    judged = sheet.at_least(share, wanted)
    about = f"root-sum-square {low * 1e3:.3f} to {high * 1e3:.3f} mm"
    return replace(judged, says="; ".join(one for one in (judged.says, about, shares) if one))


def _handbook_link(one: Acting, sheet: Sheet) -> chains.Link:
    spread = "normal"
    if sheet.is_stated(f"spread of {one.name}", one.link.spread):
        spread = sheet.read(f"spread of {one.name}", one.link.spread)
    low, high = sheet.take_limits(one.name, sheet.dimension(one.link))
    return chains.Link(one.name, low, high, one.k, "uniform" if spread == "uniform" else "normal")


def _root_sum_square(links: tuple[chains.Link, ...], sheet: Sheet) -> tuple[float, float, str]:
    """Ends of the spread by root-sum-square, and the shares in its square."""
    centre, reach, reaches = 0.0, 0.0, {}
    for link in links:
        half_way = sheet.work(f"m of {link.name}", middle, a=link.low, b=link.high)
        centre = sheet.work("m", with_link, g_0=centre, k=link.direction, x=half_way)
        width = sheet.work(f"t of {link.name}", link_tolerance, a=link.low, b=link.high)
        reaches[link.name] = sheet.work(f"r of {link.name}", reach_of_link, k=link.direction, t=width)
        reach = sheet.work("R", reaches_in_square, R_0=reach, r=reaches[link.name])
    low = sheet.work("g_low", low_end, m=centre, R=reach)
    high = sheet.work("g_high", high_end, m=centre, R=reach)
    return low, high, _shares(reaches, reach, share_of_square, sheet)


def monte_carlo_yield(
    links: tuple[chains.Link, ...], asked: tuple[float, float], trials: int, seed: int
) -> Reading:
    """Share of chains within the asked limits by a seeded trial, with the doubt of its sampling."""
    found = chains.monte_carlo(links, *asked, trials=trials, seed=seed)
    what = (
        f"yield in {trials} trials, seed {seed}: mean {found.mean * 1e3:.4f} mm, "
        f"standard deviation {found.deviation * 1e3:.4f} mm; 95 % confidence of sampling alone"
    )
    return Reading(what, found.share, found.low, found.high, "", MONTE_CARLO_CITES[0])


@rule(
    "chain.measured",
    title="The last link can be machined to bring the gap within its limits, the others being what they are",
    on=DimensionChain,
    grade=Grade.OBSERVATION,
    cites=[FIRST_PRINCIPLES],
    why="One face left to the last and machined to measurement does what no tolerance on five drawings can.",
    leaves_out="whether metal is left on that face; the doubt of a measurement stated without limits",
)
def measured(chain: DimensionChain, sheet: Sheet) -> Judgement:
    """The size of the last link for either limit, from the others as measured or within the limits left to them."""
    if not sheet.is_stated("last", chain.last):
        raise sheet.not_applicable("no link is left to be machined to measurement")
    links = list(_links(chain, sheet))
    last = sheet.entry({one.name: one for one in links}, chain.last, f"links of {chain.id}")
    asked = _asked(chain, sheet)
    left = [0.0, 0.0]
    for one in links:
        if one is not last:
            ends = sheet.take_limits(one.name, sheet.dimension(one.link))
            for side, end in enumerate(ends if one.k > 0 else reversed(ends)):
                left[side] = sheet.work(("s_low", "s_high")[side], with_link, g_0=left[side], k=one.k, x=end)
    sizes = [
        sheet.work("x", last_link, g=gap, s=others, k=last.k)
        for gap, others in zip(asked, left, strict=True)
        if math.isfinite(gap)
    ]
    return _to_machine(last.name, sorted(sizes), asked, left, sheet)


def _to_machine(
    name: str, sizes: list[float], asked: tuple[float, float], left: list[float], sheet: Sheet
) -> Judgement:
    if len(sizes) == 1:
        bound = "greatest" if math.isinf(asked[0]) else "least"
        return sheet.reported(sizes[0], f"for the {bound} gap machine {name} to")
    varies = sheet.work("t_s", others_vary, a=left[0], b=left[1])
    judged = sheet.at_most(varies, sheet.work("t_g", spread_asked, a=asked[0], b=asked[1]))
    if not judged.holds:
        return replace(judged, says=f"no size of {name} serves: {judged.says}")
    return replace(
        judged, says=f"machine {name} to {sizes[0] * 1e3:.3f} to {sizes[1] * 1e3:.3f} mm; {judged.says}"
    )


RULES: tuple[Rule, ...] = (worst_case, statistical, measured)
