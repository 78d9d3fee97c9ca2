"""Stress relief after welding, and the machining allowance left until then."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Rule, Sheet, rule
from speclint.equations import Kelvins, Seconds
from speclint.facts import finished_after_relief
from speclint.specs import FinishedFace, Plate, Weldment
from speclint_fabrication.formulae.relief import face_wanted, holding_time
from speclint_fabrication.formulae.tables import (
    coolest_relief,
    hottest_relief,
    steel_group,
    weldment_tolerance,
)
from speclint_fabrication.inputs.plates import metal_of, rolled_thickness
from speclint_fabrication.sources import EN_13445_4, ISO_13920, ISO_TR_15608

_PLACE = EN_13445_4.at("Table 10.1-1")


@rule(
    "block.stress-relief",
    title="The weldment is stress relieved before finish machining, in the temperature range of each plate's steel, "
    "for at least the holding time, with at least the machining allowance required on each face",
    on=Weldment,
    grade=Grade.NONCONFORMITY,
    cites=[_PLACE, ISO_TR_15608.at("Table 1"), ISO_13920, COMMON_PRACTICE],
    why="Bores machined before stress relief come out oval; a weldment never stress relieved distorts in "
    "service.",
    leaves_out="rates of heating and cooling, support in the furnace, the tempering temperature of a tempered "
    "plate, which stress relief must not reach",
    against=(),
    edition=3,
    limits=[
        Limit(
            "clean_up",
            "2 mm",
            "length",
            COMMON_PRACTICE,
            "metal to be removed at the worst limit of the tolerance",
        ),
    ],
)
def stress_relief(weldment: Weldment, sheet: Sheet) -> Judgement:
    """Temperature by each steel, time by the thickest plate as rolled, allowance ≥ tolerance + clean-up.

    The order is that of the list of the making; as stated where that does not say it.
    """
    if not weldment.plates:
        raise sheet.not_assessed("no plate is stated", weldment.where)
    treatment = weldment.treatment
    by_list = finished_after_relief(weldment, sheet)
    order = sheet.states(
        sheet.read("finished after relief", treatment.before_finishing) if by_list is None else by_list.value,
        "finish machining comes before the stress relief",
    )
    if not order.holds:
        return order
    T = sheet.take("T_r", treatment.temperature)
    warm = sheet.worst(*(_warm(name, plate, T, sheet) for name, plate in weldment.plates.items()))
    if not warm.holds:
        return warm
    held = sheet.at_least(sheet.take("τ_0", treatment.time), _time(weldment, sheet)).else_says(
        "stress relief held for {found}, {limit} wanted"
    )
    if not weldment.faces:
        raise sheet.not_assessed("no finished face is stated", weldment.where)
    grade = sheet.read("class of tolerance", weldment.tolerance_class)
    faces = sheet.each(weldment.faces.items(), lambda item: _face(*item, grade, sheet))
    return sheet.worst(warm, held, faces)


def _warm(name: str, plate: Plate, T: Kelvins, sheet: Sheet) -> Judgement:
    metal = metal_of(name, plate, sheet)
    low = sheet.look_up(f"T_min of {name}", coolest_relief, metal=metal)
    return sheet.within(T, low, sheet.look_up(f"T_max of {name}", hottest_relief, metal=metal)).else_says(
        f"stress relief at {{found}}, where the nearer limit of plate {name} is {{limit}}"
    )


def _time(weldment: Weldment, sheet: Sheet) -> Seconds:
    """Holding time by the thickest plate as rolled; that of steels beyond group 1 is not held."""
    for name, plate in weldment.plates.items():
        metal = metal_of(name, plate, sheet)
        if sheet.look_up(f"group of {name}", steel_group, metal=metal) >= 2:
            raise sheet.not_covered(f"no holding time of stress relief is held for {metal.title}")
    thickest = max(rolled_thickness(name, plate, sheet) for name, plate in weldment.plates.items())
    return sheet.work("τ", holding_time, t=thickest)


def _face(name: str, face: FinishedFace, grade: str, sheet: Sheet) -> Judgement:
    size = sheet.take_nominal(f"L {name}", face.dimension)
    tolerance = sheet.look_up(f"Δ {name}", weldment_tolerance, grade=grade, size=size)
    wanted = sheet.work(f"a {name}", face_wanted, Delta=tolerance, c=sheet.limit("clean_up", "c"))
    return sheet.at_least(sheet.take(f"a_0 {name}", face.allowance), wanted).else_says(
        "allowance on face {item} {found}, {limit} wanted"
    )


RULES: tuple[Rule, ...] = (stress_relief,)
