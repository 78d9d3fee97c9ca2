"""Dimension chains cold: the gap in the worst case, statistically, and as measured on the job."""

from __future__ import annotations

import math

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Rule, Sheet, rule
from speclint.facts import Acting, links_of, size_of_link, with_link
from speclint.handbook.fits import MONTE_CARLO_CITES, STATISTICAL_CITES, WORST_CASE_CITES, last_link
from speclint.specs import DimensionChain
from speclint_fits.formulae.chains import (
    half_of_limits,
    off_middle,
    others_vary,
    reach_of_link,
    reaches_together,
    share_of_reach,
    spread_asked,
)
from speclint_fits.formulae.fits import middle
from speclint_fits.inputs.chains import (
    asked_cold,
    handbook_link,
    held,
    judged_by_chance,
    shares_in_words,
)


@rule(
    "chain.worst-case",
    title="The gap stays within its limits with every link at its worst limit at once",
    on=DimensionChain,
    grade=Grade.NONCONFORMITY,
    cites=[*WORST_CASE_CITES],
    why="Parts made once have no average: any size within the limits may be delivered.",
    leaves_out="thermal growth (chain.worst-case-hot covers it), load and wear; errors of form and position "
    "that no link states",
    against=(),
    edition=3,
)
def worst_case(chain: DimensionChain, sheet: Sheet) -> Judgement:
    """Σ k x over the links at the governing corner, and the share of each link in the spread."""
    asked = asked_cold(chain, sheet)
    links = list(links_of(chain, sheet))
    gap, reach, reaches = 0.0, 0.0, {}
    for one in links:
        measure = size_of_link(one, sheet)
        gap = sheet.work("g", with_link, g_0=gap, k=one.k, x=sheet.take(one.name, measure))
        width = sheet.tolerance(f"t of {one.name}", measure)
        reaches[one.name] = sheet.work(f"r of {one.name}", reach_of_link, k=one.k, t=width)
        reach = sheet.work("R", reaches_together, R_0=reach, r=reaches[one.name])
    judged = held(gap, asked, sheet)
    shares = shares_in_words(reaches, reach, share_of_reach, sheet)
    return judged.saying(f"{judged.says}; {shares}" if shares else judged.says)


@rule(
    "chain.statistical",
    title="The share of chains whose gap comes out within its limits is at least the wanted yield",
    on=DimensionChain,
    grade=Grade.OBSERVATION,
    cites=[*STATISTICAL_CITES, *MONTE_CARLO_CITES],
    why="It shows which tolerance to tighten, and how much fitting a second engine would need.",
    leaves_out="thermal growth (chain.statistical-hot covers it); the single engine, for which the worst "
    "case counts; how well the distribution describes the shop",
    against=(),
    edition=3,
    limits=[
        Limit("trials", "20000", "ratio", COMMON_PRACTICE, "trials of the Monte Carlo, at least 1000"),
        Limit("seed", "1902", "ratio", COMMON_PRACTICE, "seed of its generator"),
    ],
)
def statistical(chain: DimensionChain, sheet: Sheet) -> Judgement:
    """Root-sum-square about the middle, and the yield of a seeded trial at its lower confidence limit."""
    wanted = sheet.take("Y_w", chain.wanted_yield)
    asked = asked_cold(chain, sheet)
    links = tuple(handbook_link(one, sheet) for one in links_of(chain, sheet))
    return judged_by_chance(links, asked, wanted, sheet)


@rule(
    "chain.measured",
    title="Every measured size is within its drawn limits, and the other links vary no more than the gap's "
    "limits allow, so that the last link can be machined to suit",
    on=DimensionChain,
    grade=Grade.OBSERVATION,
    gravest=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES],
    why="One face left to the last and machined to measurement achieves what tolerances on five drawings "
    "cannot.",
    leaves_out="whether metal is left on that face; the uncertainty of a measurement stated without limits",
    against=(),
    edition=4,
)
def measured(chain: DimensionChain, sheet: Sheet) -> Judgement:
    """Each measured size against the limits of its drawing, and the size of the last link for either limit."""
    links = list(links_of(chain, sheet))
    judged = [_as_drawn(one, sheet) for one in links if _is_measured(one, sheet)]
    found = [one for one in judged if one is not None]
    if not sheet.is_stated("last", chain.last):
        if not found:
            raise sheet.not_applicable(
                "no link is measured, and no last link is stated to be machined to measurement"
            )
        return sheet.worst(*found)
    last = _last(chain, links, sheet)
    governs = sheet.worst(last, *found)
    return governs if governs.says == last.says else governs.saying(f"{last.says}; {governs.says}")


def _is_measured(one: Acting, sheet: Sheet) -> bool:
    """Whether a link is measured on the job, and its part's spec states the size that was drawn."""
    drawn = sheet.is_stated(f"{one.name} is drawn", one.link.dimension)
    return drawn and sheet.is_stated(f"{one.name} is measured", one.link.measured)


def _as_drawn(one: Acting, sheet: Sheet) -> Judgement | None:
    """A measured size within the drawn limits; None where the drawing states no limits."""
    drawn = sheet.dimension(one.link)
    a, b = sheet.take_limits(f"{one.name} drawn", drawn)
    if a == b:
        return None
    m = sheet.work(f"m of {one.name}", middle, a=a, b=b)
    off = sheet.work(f"e of {one.name}", off_middle, x=sheet.take(one.name, one.link.measured), m=m)
    half = sheet.work(f"h of {one.name}", half_of_limits, a=a, b=b)
    judged = (
        sheet.at_most(off, half)
        .else_says(f"{one.name} measured {{found}} off the middle of its limits, {{limit}} allowed")
        .graded(Grade.NONCONFORMITY)
    )
    return judged.saying(f"{one.name} as measured: {judged.says}")


def _last(chain: DimensionChain, links: list[Acting], sheet: Sheet) -> Judgement:
    last = sheet.entry({one.name: one for one in links}, chain.last, f"links of {chain.id}")
    asked = asked_cold(chain, sheet)
    left = [0.0, 0.0]
    for one in links:
        if one is not last:
            ends = sheet.take_limits(one.name, size_of_link(one, sheet))
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
    judged = sheet.at_most(varies, sheet.work("t_g", spread_asked, a=asked[0], b=asked[1])).else_says(
        "the other links vary by {found}, the gap by no more than {limit}"
    )
    if not judged.holds:
        return judged.saying(f"no size of {name} brings the gap within its limits: {judged.says}")
    span = sheet.millimetres(sizes[0], ".3f", sizes[1])
    return judged.saying(f"machine {name} to {span}; {judged.says}")


RULES: tuple[Rule, ...] = (worst_case, statistical, measured)
