"""What engine, axles and crossheads state of one mass: adhesive weight, small end, share balanced."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import Grade, Must, Pair, Rule, Sheet, Worked, agreement
from speclint.facts import crossheads_on, mass_together, rods_in, small_end_of
from speclint.specs import DrivingAxle, Engine
from speclint_agreement.formulae.axles import shares_together


def _loads(engine: Engine, sheet: Sheet) -> Iterator[Pair]:
    """The adhesive weight against the loads of all wheels that are driven."""
    total = Worked(0.0)
    for axle in sheet.belonging_to(engine, DrivingAxle):
        for side, wheel in (("left", axle.left), ("right", axle.right)):
            m = sheet.take_nominal(f"m {axle.id} {side}", wheel.load)
            both = sheet.work("m", mass_together, m_0=total.value, m_1=m)
            total = Worked(both, (*total.places, wheel.load.where))
    if total.places:
        yield Pair(engine.adhesive_weight, total)


def _small_ends(engine: Engine, sheet: Sheet) -> Iterator[Pair]:
    """The small end that a crosshead states against that of its connecting rod, by the rod's centre of gravity."""
    for name, crank in engine.cranks.items():
        small = small_end_of(crank, engine, sheet, sheet.take_nominal)
        if small is None or not sheet.is_stated(f"block of {name}", crank.block):
            continue
        block = sheet.follow(crank.block)
        own = sheet.is_stated(f"bore of {name}", crank.bore)
        bores = [sheet.read(f"bore of {name}", crank.bore)] if own else list(block.bores)
        rods = [rod for bore in bores for rod in rods_in(block, bore, sheet)]
        for head in (head for rod in rods for head in crossheads_on(rod, sheet)):
            yield Pair(head.small_end_mass, small, name=name)


def _shares(engine: Engine, sheet: Sheet) -> Iterator[Pair]:
    """The share that the engine's wheels are to balance against those of its axles together.

    Where an axle states none, the others' together are no more than it.
    """
    drawn = sheet.belonging_to(engine, DrivingAxle)
    axles = [axle for axle in drawn if sheet.is_stated(f"share of {axle.id}", axle.balanced_share)]
    c = 0.0
    for axle in axles:
        c = sheet.work(
            "c", shares_together, c_1=c, c_2=sheet.take_nominal(f"c {axle.id}", axle.balanced_share)
        )
    if axles:
        must: Must = "equal" if len(axles) == len(drawn) else "at least"
        yield Pair(engine.balanced_share, Worked(c, tuple(axle.balanced_share.where for axle in axles)), must)


adhesive_weight: Rule = agreement(
    "engine.adhesive-weight",
    title="The adhesive weight of an engine is what rests on the wheels that it drives",
    on=Engine,
    pairs=_loads,
    within="500 kg",
    dimension="mass",
    grade=Grade.NONCONFORMITY,
    why="tractive effort is promised by a weight that does not rest on the wheels which are to pull",
    leaves_out="an engine that states no adhesive weight",
)

small_ends: Rule = agreement(
    "crosshead.small-end-of-rod",
    title="The share of the connecting rod that a crosshead counts as reciprocating is that of the rod's centre of "
    "gravity",
    on=Engine,
    pairs=_small_ends,
    within="2 kg",
    dimension="mass",
    grade=Grade.NONCONFORMITY,
    why="what is counted twice, at neither end, or at the wrong one is balanced wrongly and pulls unseen",
    leaves_out="a rod whose mass or centre of gravity is not stated",
    edition=2,
)

shares_add_up: Rule = agreement(
    "engine.shares-add-up",
    title="The shares of the reciprocating masses that the axles balance add up to that of the engine",
    on=Engine,
    pairs=_shares,
    within="0.001",
    dimension="ratio",
    grade=Grade.NONCONFORMITY,
    why="an axle whose share was moved to another one keeps its old weights",
    leaves_out="axles that state no share",
    edition=2,
)

RULES = (adhesive_weight, shares_add_up, small_ends)
