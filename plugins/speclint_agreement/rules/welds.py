"""A block and the weldment that it is made of state one preheat, one heat treatment and one carbon equivalent."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import COMMON_PRACTICE, Grade, Limit, Pair, Rule, Sheet, Worked, agreement
from speclint.specs import CylinderBlock, Weldment

_TREATED = "stress relieved"
#: Treatments that relieve a weldment of its stresses, too.
_OTHER_TREATMENTS = ("normalized", "quenched and tempered")


def _welding(block: CylinderBlock, sheet: Sheet) -> Iterator[Pair]:
    """What the block states of its welding against the weldment that makes it, and against the plates of this."""
    own = block.welding
    for made in sheet.belonging_to(block, Weldment):
        of = made.welding
        if sheet.is_stated(f"preheat of {made.id}", of.preheat):
            yield Pair(own.preheat, of.preheat, name=f"preheat, {made.id}", within="preheat")
        if sheet.is_stated(f"heat treatment of {made.id}", of.heat_treatment):
            yield Pair(own.heat_treatment, of.heat_treatment, name=f"heat treatment, {made.id}")
        if sheet.is_stated(f"stress relief of {made.id}", made.treatment.temperature):
            relieved = Worked(_TREATED, (made.treatment.temperature.where,))
            stated = own.heat_treatment if sheet.is_stated("heat treatment", own.heat_treatment) else None
            if stated is not None and sheet.read("heat treatment", stated) not in _OTHER_TREATMENTS:
                yield Pair(stated, relieved, name=f"stress relief, {made.id}")
        if sheet.is_stated(f"carbon equivalent of {made.id}", of.carbon_equivalent):
            yield Pair(
                own.carbon_equivalent, of.carbon_equivalent, name=f"carbon, {made.id}", within="carbon"
            )
        yield from _plates(block, made, sheet)


def _plates(block: CylinderBlock, made: Weldment, sheet: Sheet) -> Iterator[Pair]:
    """The carbon equivalent of the block not less than that of any plate."""
    for name, plate in made.plates.items():
        if sheet.is_stated(f"carbon equivalent of {name}", plate.carbon_equivalent):
            carbon = plate.carbon_equivalent
            yield Pair(block.welding.carbon_equivalent, carbon, "at least", name=f"plate {name}, {made.id}")


same_as_block: Rule = agreement(
    "weldment.same-as-block",
    title="A block states the preheat, heat treatment and carbon equivalent of its weldment, and no less carbon than a "
    "plate of it has",
    on=CylinderBlock,
    pairs=_welding,
    within="",
    limits=[
        Limit("preheat", "1 K", "temperature difference", COMMON_PRACTICE, "what two preheats may differ by"),
        Limit("carbon", "0.005 %", "ratio", COMMON_PRACTICE, "what two carbon equivalents may differ by"),
    ],
    grade=Grade.NONCONFORMITY,
    why="the welder has one sheet before him, and the preheat on it is that of the plate which hardens most",
    leaves_out="filler metal, and a block that is cast",
)

RULES = (same_as_block,)
