"""What a material may be used for."""

from __future__ import annotations

from typing import TYPE_CHECKING

from speclint import COMMON_PRACTICE, Grade, Judgement, Sheet, rule
from speclint.facts import is_safety_part
from speclint.handbook.materials import Material
from speclint.specs import BoltedJoint, Component
from speclint_pairings.inputs.components import holds_pressure, require_metal
from speclint_pairings.inputs.pieces import Piece, pieces_of, temperature_of_pieces
from speclint_pairings.sources import (
    ASTM_A278,
    EN_10028_2,
    EN_13445_2,
    FIRST_OF_TUBE,
    LAST_TEMPERATURE,
    SPECIFIC_INSPECTION,
)

if TYPE_CHECKING:
    from speclint.specs import LoadCase


@rule(
    "material.known",
    title="The material is one that the handbook, a family or the repository describes",
    on=Component,
    grade=Grade.QUERY,
    cites=[COMMON_PRACTICE],
    why="no stress, fit or temperature can be judged for a metal without data",
    leaves_out="whether the metal delivered is the metal named: its inspection document shows that",
    against=(),
)
def known(component: Component, sheet: Sheet) -> Judgement:
    """The name is looked for among all materials."""
    require_metal(component, sheet)
    name = sheet.read("material", component.material)
    where = component.material.where
    if sheet.knows_material(component.material):
        return sheet.states(True, f"{name} is known", where=where)
    says = f"{name} is neither in the handbook nor among the repository's own materials"
    return sheet.states(False, says, where=where)


@rule(
    "material.temperature",
    title="The metal of the part, and of every bearing, slipper, bush, pin, guide and nut that it names, is no "
    "hotter than the temperature limit of its material in this use",
    on=Component,
    cases=("starting", "running", "drifting"),
    grade=Grade.NONCONFORMITY,
    gravest=Grade.HOLD,
    cites=[
        ASTM_A278.at("scope 1.2, grey iron of all classes"),
        LAST_TEMPERATURE,
        COMMON_PRACTICE,
    ],
    why="above its limit iron grows and scales, bronze softens, tempered steel loses its hardness and "
    "springs relax",
    edition=4,
    leaves_out="gasket, packing and seal, which have rules of their own; creep, which is time under stress "
    "above the creep limit (material.time-dependent); for pressure parts the local code's own limits and a "
    "competent person decide",
    against=("burn",),
)
def temperature(component: Component, case: LoadCase, sheet: Sheet) -> Judgement:
    """Metal temperature in the hot cases against the limit of the handbook for pressure part, running part,
    bolting or spring."""
    require_metal(component, sheet)
    use = _use_of(component, sheet)
    metal = sheet.take("T", case.temperature_of(component))
    material = sheet.material_of(component)
    limit = sheet.look_up("T_max", material.temperature_limit, of=component, use=use)
    judged = [sheet.no_hotter(metal, limit).else_says("metal at {found}, its limit is {limit}")]
    for piece in pieces_of(component):
        if sheet.is_stated(f"material of {piece.called}", piece.material):
            judged.append(_piece(piece, component, case, sheet))
    worst = sheet.worst(*judged)
    return worst.graded(Grade.HOLD) if holds_pressure(component, sheet) else worst


def _piece(piece: Piece, component: Component, case: LoadCase, sheet: Sheet) -> Judgement:
    metal = sheet.material_named(piece.called, piece.material)
    limit = sheet.look_up(f"T_max of {piece.called}", metal.temperature_limit, use=piece.use)
    return sheet.no_hotter(temperature_of_pieces(component, case, sheet), limit).else_says(
        f"{piece.called} at {{found}}, its metal is for {{limit}}"
    )


def _use_of(component: Component, sheet: Sheet) -> str:
    if component.is_one_of(("bolted-joint", "frame-fastening")):
        return "bolting"
    if component.is_one_of(("compression-spring",)):
        return "spring"
    return "pressure-part" if holds_pressure(component, sheet) else "running-part"


@rule(
    "material.time-dependent",
    title="A steel pressure part, its studs and nuts among them, is no hotter than the temperature from which "
    "creep governs its strength",
    wrong="metal creeps at {found}, from {limit} on",
    on=Component,
    cases=("starting", "running", "drifting"),
    grade=Grade.HOLD,
    cites=[EN_10028_2.at("annex, first temperature of the creep tables"), FIRST_OF_TUBE],
    why="above it the metal stretches a little every hour under a load that it would carry without end "
    "when cooler, and plain carbon steel turns part of its carbide to graphite",
    edition=4,
    leaves_out="the creep life of a part above the limit: the local code and a competent person decide",
    against=("burn",),
)
def time_dependent(component: Component, case: LoadCase, sheet: Sheet) -> Judgement:
    """Metal temperature in the hot cases against the first temperature of the material's creep table."""
    require_metal(component, sheet)
    if not holds_pressure(component, sheet):
        raise sheet.not_applicable("it is not stated to be a pressure part")
    metals = [sheet.material_of(component)]
    nut = component.nut if isinstance(component, BoltedJoint) else None
    if nut is not None and sheet.is_stated("material of the nut", nut.material):
        metals.append(sheet.material_named(f"the nut of {component.id}", nut.material))
    creeping = [metal for metal in metals if _creeps(metal)]
    if not creeping:
        raise sheet.not_applicable(f"{metals[0].title} has no creep limit beside its temperature limit")
    at = sheet.take("T", case.temperature_of(component))
    return sheet.worst(
        *(
            sheet.no_hotter(at, sheet.look_up(f"T_c of {metal.name}", metal.time_dependent_from))
            for metal in creeping
        )
    )


def _creeps(metal: Material) -> bool:
    """Whether a metal must have a creep limit: any steel, but for bolting steel that no standard states hot."""
    if metal.family in _STEELS:
        return True
    return metal.family == "bolting-steel" and (
        metal.holds("time-dependent-from") or not metal.holds("temperature-limit bolting")
    )


@rule(
    "material.certificate",
    title="The material of a pressure part or a safety part comes with an inspection document of type 3.1 or 3.2",
    on=Component,
    grade=Grade.HOLD,
    cites=[SPECIFIC_INSPECTION, EN_13445_2.at("4.6, inspection documents")],
    why="only a document for the melt itself shows that the steel in the part is the steel of the "
    "calculation",
    edition=5,
    leaves_out="whether type 3.2 is required: the local code and the competent person or body decide",
    against=(),
)
def certificate(component: Component, sheet: Sheet) -> Judgement:
    """Types 2.1 and 2.2 state only that the maker supplied what was ordered; a weldment states it of its plates."""
    if not component.is_one_of(("weldment",)):
        require_metal(component, sheet)
    if not (holds_pressure(component, sheet) or is_safety_part(component, sheet)):
        raise sheet.not_applicable("it is not stated to be a pressure part or a safety part")
    kind = sheet.read("inspection document", component.inspection_document)
    where = component.inspection_document.where
    holds = kind in ("3.1", "3.2")
    says = f"inspection document of type {kind}"
    return sheet.states(holds, says if holds else f"{says}, which does not certify this melt", where=where)


#: Families of steel, whose standards give temperatures of creep.
_STEELS = (
    "carbon-steel",
    "alloy-steel",
    "cast-steel",
    "stainless-martensitic",
    "stainless-austenitic",
)

RULES = (known, temperature, time_dependent, certificate)
