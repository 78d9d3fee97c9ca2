"""What a material may be used for."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, Grade, Judgement, Sheet, rule
from speclint.specs import BoltedJoint, Component, CompressionSpring, LoadCase
from speclint_pairings.sources import ASTM_A278, EN_10028_2


@rule(
    "material.known",
    title="The material is in the handbook or among the repository's own, with its sources",
    on=Component,
    grade=Grade.QUERY,
    cites=[COMMON_PRACTICE],
    why="no stress, fit or temperature can be judged for a metal of which nothing is written down",
    leaves_out="whether the metal delivered is the metal named: its inspection document says that",
)
def known(component: Component, sheet: Sheet) -> Judgement:
    """The name is looked for among all materials."""
    name = sheet.read("material", component.material)
    where = component.material.where
    if sheet.knows_material(component.material):
        return sheet.states(True, f"{name} is known", where=where)
    says = f"{name} is neither in the handbook nor among the repository's own materials"
    return sheet.states(False, says, where=where)


@rule(
    "material.temperature",
    title="The metal is no hotter than its material allows in this use",
    on=Component,
    cases=("starting", "running", "drifting"),
    grade=Grade.NONCONFORMITY,
    gravest=Grade.HOLD,
    cites=[
        ASTM_A278.at("scope 1.2, grey iron of all classes"),
        EN_10028_2.at("table 4, last temperature"),
        COMMON_PRACTICE,
    ],
    why="past its limit iron grows and scales, bronze softens, temper is lost and springs go slack",
    leaves_out="time under stress above the limit of creep (material.time-dependent); for pressure parts the "
    "local code's own limits and a competent person decide",
)
def temperature(component: Component, case: LoadCase, sheet: Sheet) -> Judgement:
    """Metal temperature in the hot cases against the limit of the handbook for pressure part, running part,
    bolting or spring."""
    use = _use_of(component, sheet)
    metal = sheet.take("T", case.temperature_of(component))
    material = sheet.material_of(component)
    limit = sheet.look_up("T_max", material.temperature_limit, of=component, use=use)
    judged = sheet.at_most(metal, limit)
    return judged.graded(Grade.HOLD) if _holds_pressure(component, sheet) else judged


def _use_of(component: Component, sheet: Sheet) -> str:
    if isinstance(component, BoltedJoint):
        return "bolting"
    if isinstance(component, CompressionSpring):
        return "spring"
    return "pressure-part" if _holds_pressure(component, sheet) else "running-part"


def _holds_pressure(component: Component, sheet: Sheet) -> bool:
    stated = sheet.is_stated("pressure part", component.pressure_part)
    return stated and sheet.read("pressure part", component.pressure_part)


RULES = (known, temperature)
