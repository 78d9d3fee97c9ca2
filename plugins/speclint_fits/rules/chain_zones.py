"""Form, orientation and place of the faces that a dimension chain runs over."""

from __future__ import annotations

import math

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Rule, Sheet, rule
from speclint.facts import links_of, size_of_link, with_link
from speclint.specs import DimensionChain
from speclint_fits.formulae.chains import reaches_together
from speclint_fits.formulae.geometry import gap_at_zone, part_of_zone
from speclint_fits.inputs.chains import asked_cold
from speclint_fits.inputs.zones import zone_of_link
from speclint_fits.sources import ASME_Y14_5, ISO_1101, ISO_2692, ISO_2768_2, ISO_13920


@rule(
    "geometry.in-the-chain",
    edition=3,
    title="The gap of a dimension chain stays within its limits with the zones of form, orientation and place of the "
    "faces that it runs over taken in",
    on=DimensionChain,
    grade=Grade.NONCONFORMITY,
    cites=[ISO_1101, ISO_2692, ISO_2768_2, ISO_13920, ASME_Y14_5, FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="sizes in limits leave a gap on paper that a face out of square takes up in the shop",
    leaves_out="links that were measured, that the chain states itself, or that have a class of fits, whose form "
    "lies within their limits; heat (chain.worst-case-hot); how zones fall by chance",
    against=(),
)
def in_the_chain(chain: DimensionChain, sheet: Sheet) -> Judgement:
    """Σ k x at the governing corner, less and plus Σ |k| e: t/2 of form, place and run-out, t L/l of orientation.

    A projected zone of place opens beyond its height, by 1 + 2 P/h, and one of orientation holds over that height.
    """
    least, greatest = asked_cold(chain, sheet)
    gap, taken, silent = 0.0, 0.0, []
    for one in links_of(chain, sheet):
        gap = sheet.work("g", with_link, g_0=gap, k=one.k, x=sheet.take(one.name, size_of_link(one, sheet)))
        e = zone_of_link(one, sheet)
        if e is None:
            silent.append(sheet.follow(one.link.of).id)
        elif e > 0:
            mine = sheet.work(f"z of {one.name}", part_of_zone, k=abs(one.k), e=e)
            taken = sheet.work("Z", reaches_together, R_0=taken, r=mine)
    if silent:
        says = (
            f"no zone of the faces and no general tolerance is stated by {', '.join(dict.fromkeys(silent))}: "
            "what form and orientation take of the gap is not known"
        )
        return sheet.states(False, says, where=chain.where).graded(Grade.QUERY)
    judged = []
    if math.isfinite(least):
        low = sheet.work("g_low", gap_at_zone, g=gap, z=-taken)
        judged.append(sheet.at_least(low, least).else_says("zones leave a gap of {found}, {limit} wanted"))
    if math.isfinite(greatest):
        high = sheet.work("g_high", gap_at_zone, g=gap, z=taken)
        judged.append(
            sheet.at_most(high, greatest).else_says("zones open the gap to {found}, {limit} allowed")
        )
    return sheet.worst(*judged)


RULES: tuple[Rule, ...] = (in_the_chain,)
