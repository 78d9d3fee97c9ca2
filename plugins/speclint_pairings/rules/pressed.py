"""Iron pressed into steel: have the checks of its hot fit been made?"""

from __future__ import annotations

from speclint import COMMON_PRACTICE, Grade, Judgement, Sheet, rule
from speclint.facts import block_of_ring
from speclint.specs import Component, CylinderLiner, ValveSeat

#: The rules of liners and of valves that assess such a fit, by the kind of the part that is pressed in.
_ASSESSING_RULES = {
    "cylinder-liner": ("liner.fit-hot", "liner.fit-stress-cold", "liner.fit-warming"),
    "valve-seat": ("seat.fit-stress", "seat.fit-warming", "seat.retained-hot"),
}


@rule(
    "pairing.iron-on-steel-seat",
    title="An iron ring or liner in a steel block has every check of its fit assessed: hot, warming and cold",
    on=(CylinderLiner, ValveSeat),
    grade=Grade.HOLD,
    cites=[COMMON_PRACTICE],
    why="steel expands more than iron: a fit that is tight in the shop may have no grip at all in steam",
    leaves_out="the results of those checks, which they report themselves; where one is not assessed "
    "the local code and a competent person decide",
    against=(),
    reviews=True,
)
def iron_in_steel(part: CylinderLiner | ValveSeat, sheet: Sheet) -> Judgement:
    """Looks for an outcome of each check; one that no family makes counts as not assessed."""
    block = sheet.follow(block_of_ring(part))
    if not (_is_iron(part, sheet) and _is_steel(block, sheet)):
        raise sheet.not_applicable("it is not iron in steel")
    outcomes = sheet.outcomes()
    rules = part.by_kind(_ASSESSING_RULES)
    missing = [name for name in rules if outcomes.get(name) not in ("conforms", "finding")]
    if missing:
        return sheet.states(False, f"not assessed: {', '.join(missing)}")
    return sheet.states(True, f"assessed: {', '.join(rules)}")


def _is_iron(component: Component, sheet: Sheet) -> bool:
    return sheet.material_of(component).family.endswith("iron")


def _is_steel(component: Component, sheet: Sheet) -> bool:
    return sheet.material_of(component).family.endswith("steel")


RULES = (iron_in_steel,)
