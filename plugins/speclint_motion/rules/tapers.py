"""The taper by which a piston sits on its rod."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Sheet, rule
from speclint.specs import Piston


@rule(
    "piston.taper",
    title="The taper by which a piston sits on its rod is steep enough to come off, and to be drawn up within its "
    "thread, and slow enough to centre and hold it; none is stated where a collar alone holds it",
    on=Piston,
    grade=Grade.NONCONFORMITY,
    edition=2,
    cites=[COMMON_PRACTICE],
    why="A seat as slow as a pin's is drawn up by millimetres for each hundredth of its bore, bursts the hub, and no "
    "press takes it off; one too steep works loose as soon as the nut slackens.",
    leaves_out="the fit of the cone, which is found with marking blue; the length of the seat; the stress of the hub",
    against=(),
    limits=[
        Limit(
            "slowest",
            "0.04",
            "ratio",
            COMMON_PRACTICE,
            "slowest taper on the diameter, 1 in 25; those of piston rods are 1 in 6 to 1 in 16",
        ),
        Limit(
            "steepest",
            "0.34",
            "ratio",
            COMMON_PRACTICE,
            "steepest taper on the diameter, 1 in 3: above twice the friction a cone lets go by itself",
        ),
    ],
)
def taper(piston: Piston, sheet: Sheet) -> Judgement:
    """The taper on the diameter, where nut and cone hold the piston; a collar alone has none."""
    held = piston.fastening
    if sheet.read("fastened by", held.by) == "forged in one":
        raise sheet.not_applicable("piston and rod are one piece")
    if "taper" not in sheet.read("seat", held.seat):
        if sheet.is_stated("taper", held.taper):
            says = "the nut clamps the piston against a collar alone, and a taper of its seat is stated"
            return sheet.states(False, says, where=held.taper.where)
        raise sheet.not_applicable("a collar holds it, and no taper")
    k = sheet.take("k", held.taper)
    return sheet.worst(
        sheet.at_least(k, sheet.limit("slowest", "k_s")).else_says(
            "taper of {found}, {limit} or more comes off"
        ),
        sheet.at_most(k, sheet.limit("steepest", "k_g")).else_says(
            "taper of {found}, {limit} or less holds itself"
        ),
    )


RULES = (taper,)
