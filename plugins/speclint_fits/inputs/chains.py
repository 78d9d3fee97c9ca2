"""Inputs that the rules of dimension chains share: links and their effect, limits of the gap, shares, statistics."""

from __future__ import annotations

import math
from collections.abc import Callable

from speclint import Judgement, Sheet
from speclint.facts import Acting, size_of_link, with_link
from speclint.handbook.fits import MONTE_CARLO_CITES, chains
from speclint.handbook.tables import Reading
from speclint.specs import DimensionChain, Position
from speclint_fits.formulae.chains import (
    high_end,
    link_tolerance,
    low_end,
    reach_of_link,
    reaches_in_square,
    share_of_square,
)
from speclint_fits.formulae.fits import middle


def asked_cold(chain: DimensionChain, sheet: Sheet) -> tuple[float, float]:
    """Limits of the gap cold; minus infinity and infinity on a side without a limit.

    What the chain states none of is asked of it by the size, in another spec, that the gap is, where that has limits.
    """
    stated = [
        sheet.is_stated(name, one) for name, one in (("least", chain.least), ("greatest", chain.greatest))
    ]
    if all(stated) or not sheet.is_stated("size that the gap is", chain.closes.dimension):
        return _asked(chain, sheet, "", chain.least, chain.greatest)
    drawn = sheet.take_limits("g", sheet.dimension(chain.closes))
    if not any(stated):
        return drawn
    own = _asked(chain, sheet, "", chain.least, chain.greatest)
    if drawn[0] == drawn[1]:
        return own
    return own[0] if stated[0] else drawn[0], own[1] if stated[1] else drawn[1]


def asked_hot(chain: DimensionChain, sheet: Sheet) -> tuple[float, float]:
    """Limits of the gap hot; minus infinity and infinity on a side without a limit."""
    return _asked(chain, sheet, "hot", chain.least_hot, chain.greatest_hot)


def _asked(
    chain: DimensionChain, sheet: Sheet, when: str, lowest: Position, highest: Position
) -> tuple[float, float]:
    least = greatest = math.inf
    if sheet.is_stated(f"least {when}".rstrip(), lowest):
        least = -sheet.take_nominal("g_least", lowest)
    if sheet.is_stated(f"greatest {when}".rstrip(), highest):
        greatest = sheet.take_nominal("g_greatest", highest)
    if math.isinf(least) and math.isinf(greatest):
        key = f"_{when}" if when else ""
        raise sheet.not_assessed(f"neither least{key} nor greatest{key} is stated for the gap", chain.where)
    return -least, greatest


def held(gap: float, asked: tuple[float, float], sheet: Sheet) -> Judgement:
    """The gap against its limits."""
    least, greatest = asked
    if math.isinf(greatest):
        return sheet.at_least(gap, least).else_says("gap {found}, at least {limit} wanted")
    if math.isinf(least):
        return sheet.at_most(gap, greatest).else_says("gap {found}, at most {limit} wanted")
    return sheet.within(gap, least, greatest).else_says("gap {found}, where the nearer limit is {limit}")


def shares_in_words(
    reaches: dict[str, float], whole: float, formula: Callable[..., float], sheet: Sheet
) -> str:
    """The share of each link in words, the greatest first; "" where nothing varies."""
    if whole == 0:
        return ""
    found = {
        name: sheet.work(f"share of {name}", formula, r=reach, R=whole) for name, reach in reaches.items()
    }
    ordered = sorted(found, key=lambda name: -found[name])
    return "shares: " + ", ".join(f"{name} {found[name]:.0%}" for name in ordered)


def handbook_link(one: Acting, sheet: Sheet) -> chains.Link:
    spread = "normal"
    if sheet.is_stated(f"spread of {one.name}", one.link.spread):
        spread = sheet.read(f"spread of {one.name}", one.link.spread)
    low, high = sheet.take_limits(one.name, size_of_link(one, sheet))
    return chains.Link(one.name, low, high, one.k, "uniform" if spread == "uniform" else "normal")


def judged_by_chance(
    links: tuple[chains.Link, ...], asked: tuple[float, float], wanted: float, sheet: Sheet
) -> Judgement:
    """The yield of a seeded trial at its lower confidence limit, and the root-sum-square for comparison."""
    low, high, shares = _root_sum_square(links, sheet)
    trials, seed = (int(sheet.limit(name)) for name in ("trials", "seed"))
    share = sheet.look_up("Y", monte_carlo_yield, links=links, asked=asked, trials=trials, seed=seed)
    judged = sheet.at_least(share, wanted).else_says(
        "{found} of the chains come out within limits, {limit} wanted"
    )
    about = f"root-sum-square {sheet.millimetres(low, '.3f', high)}"
    return judged.saying("; ".join(one for one in (judged.says, about, shares) if one))


def _root_sum_square(links: tuple[chains.Link, ...], sheet: Sheet) -> tuple[float, float, str]:
    """Ends of the spread by root-sum-square, and the shares of the links in it."""
    centre, reach, reaches = 0.0, 0.0, {}
    for link in links:
        half_way = sheet.work(f"m of {link.name}", middle, a=link.low, b=link.high)
        centre = sheet.work("m", with_link, g_0=centre, k=link.direction, x=half_way)
        width = sheet.work(f"t of {link.name}", link_tolerance, a=link.low, b=link.high)
        reaches[link.name] = sheet.work(f"r of {link.name}", reach_of_link, k=link.direction, t=width)
        reach = sheet.work("R", reaches_in_square, R_0=reach, r=reaches[link.name])
    low = sheet.work("g_low", low_end, m=centre, R=reach)
    high = sheet.work("g_high", high_end, m=centre, R=reach)
    return low, high, shares_in_words(reaches, reach, share_of_square, sheet)


def monte_carlo_yield(
    links: tuple[chains.Link, ...], asked: tuple[float, float], trials: int, seed: int
) -> Reading:
    """Share of chains within the limits by a seeded trial, with the uncertainty of its sampling."""
    found = chains.monte_carlo(links, *asked, trials=trials, seed=seed)
    what = (
        f"yield in {trials} trials, seed {seed}: mean {found.mean * 1e3:.4f} mm, "
        f"standard deviation {found.deviation * 1e3:.4f} mm; 95 % confidence of sampling alone"
    )
    return Reading(what, found.share, found.low, found.high, "", MONTE_CARLO_CITES[0])
