"""Dimension chains as bars: each link in its turn, its tolerance, and the gap that closes the chain."""

from __future__ import annotations

from collections.abc import Iterator

from speclint.checking import Assessment
from speclint.quantities import Measure
from speclint.reports.pack.bars import Bar, chart
from speclint.reports.pack.figures import Figure, dimension_of, said, specs_of, word
from speclint.specs import ChainLink, DimensionChain

_MILLI = 1e3


def chain_figures(assessment: Assessment) -> Iterator[Figure]:
    """A figure for each chain whose links can all be found."""
    for chain in specs_of(assessment, DimensionChain):
        links = [(name, link, dimension_of(assessment, link)) for name, link in chain.chain.items()]
        if links and all(measure is not None for *_, measure in links):
            known = [(name, link, one) for name, link, one in links if one is not None]
            yield _figure(chain, known)
            yield _tolerances(chain, known)


def _figure(chain: DimensionChain, links: list[tuple[str, ChainLink, Measure]]) -> Figure:
    rows: list[Bar] = []
    at = low = high = 0.0
    for name, link, measure in links:
        lever = _lever(link)
        sign = lever if word(link.direction) == "widens" else -lever
        ends = sorted((sign * measure.low, sign * measure.high))
        start, at = at, at + sign * (measure.low + measure.high) / 2
        low, high = low + ends[0], high + ends[1]
        half = (ends[1] - ends[0]) / 2 * _MILLI
        share = f", {lever:g} of it" if lever != 1 else ""
        says = f"{word(link.direction) or 'direction not stated'} by {measure.text}{share}"
        ink = "shaft" if sign > 0 else "hole"
        marks = ((at * _MILLI - half, "limit"), (at * _MILLI + half, "limit"))
        rows.append(Bar(name, start * _MILLI, at * _MILLI, says, ink, marks))
    gap = f"{low * _MILLI:.3f} to {high * _MILLI:.3f} mm".replace("-", "−")
    rows.append(Bar("gap", low * _MILLI, high * _MILLI, gap, "cold"))
    paper = chart(
        f"chain-{chain.id}",
        f"Chain of {chain.id}",
        "; ".join(f"{row.label} {row.says}" for row in rows),
        rows,
        "mm from where the chain begins",
        labels=150.0,
    )
    return Figure(
        paper.name,
        chain.id,
        f"{chain.id}: the links and the gap that they leave",
        f"Each bar begins where the last one ended. Required gap: at least {said(chain.least)}, at most "
        f"{said(chain.greatest)}.",
        paper.markup(),
        tuple((row.label, row.says) for row in rows),
        ("link", "size"),
    )


def _tolerances(chain: DimensionChain, links: list[tuple[str, ChainLink, Measure]]) -> Figure:
    """What each link adds to the spread of the gap, the greatest first."""
    spreads = [(name, abs(_lever(link)) * (measure.high - measure.low)) for name, link, measure in links]
    spreads.sort(key=lambda one: -one[1])
    rows = [Bar(name, 0.0, spread * _MILLI, f"{spread * _MILLI:.3g} mm", "bar") for name, spread in spreads]
    paper = chart(
        f"spread-{chain.id}",
        f"Spread of the gap of {chain.id}",
        "; ".join(f"{row.label} {row.says}" for row in rows),
        rows,
        "mm between least and greatest, as it acts on the gap",
        labels=150.0,
    )
    return Figure(
        paper.name,
        chain.id,
        f"{chain.id}: which link adds most to the spread of the gap",
        "Where a closer tolerance would help, and where it would only add cost.",
        paper.markup(),
    )


def _lever(link: ChainLink) -> float:
    return link.lever.nominal if isinstance(link.lever, Measure) else 1.0
