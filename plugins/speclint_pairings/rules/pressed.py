"""Iron pressed into steel: have the checks of its hot fit been made?"""

from __future__ import annotations

from speclint import COMMON_PRACTICE, Grade, Judgement, Sheet, rule
from speclint.specs import Component, CylinderLiner, ValveSeat

#: What the families of liners and of valves ask of such a fit, by the kind of the part that is pressed in.
_ASKED = {
    "cylinder-liner": ("liner.fit-hot", "liner.fit-stress-cold", "liner.fit-warming"),
    "valve-seat": ("seat.fit-stress", "seat.fit-warming", "seat.retained-hot"),
}


@rule(
    "pairing.iron-on-steel-seat",
    title="An iron ring or liner in a steel block has had every check of its fit hot, warming and cold",
    on=(CylinderLiner, ValveSeat),
    grade=Grade.HOLD,
    cites=[COMMON_PRACTICE],
    why="steel outgrows iron: a fit that is tight in the shop may hold nothing at all in steam",
    leaves_out="whether the checks found the fit good, which they say themselves; where one is wanting the local code "
    "and a competent person decide",
    reviews=True,
)
def iron_in_steel(part: CylinderLiner | ValveSeat, sheet: Sheet) -> Judgement:
    """Looks for an outcome of each check; one that no family made is as bad as one not assessed."""
    block = sheet.follow(part.housed_in if isinstance(part, CylinderLiner) else part.pressed_into)
    if not (_is_iron(part, sheet) and _is_steel(block, sheet)):
        raise sheet.not_applicable("it is not iron in steel")
    outcomes = sheet.outcomes()
    wanting = [name for name in _ASKED[part.kind] if outcomes.get(name) not in ("conforms", "finding")]
    if wanting:
        return sheet.states(False, f"not assessed: {', '.join(wanting)}")
    return sheet.states(True, f"assessed: {', '.join(_ASKED[part.kind])}")


def _is_iron(component: Component, sheet: Sheet) -> bool:
    return sheet.material_of(component).family.endswith("iron")


def _is_steel(component: Component, sheet: Sheet) -> bool:
    return sheet.material_of(component).family.endswith("steel")


RULES = (iron_in_steel,)
