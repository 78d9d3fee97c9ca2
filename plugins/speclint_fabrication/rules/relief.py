"""Stress relief after welding, and the machining allowance left until then."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Rule, Sheet, rule
from speclint.specs import FinishedFace, Weldment
from speclint_fabrication.formulae.relief import face_wanted, holding_time
from speclint_fabrication.formulae.tables import weldment_tolerance
from speclint_fabrication.sources import EN_13445_4, ISO_13920

_PLACE = EN_13445_4.at("Table 10.1-1, steels of groups 1.1 and 1.2")


@rule(
    "block.stress-relief",
    title="The weldment is stress relieved before finish machining, within the temperature limits, for at "
    "least the holding time, with at least the machining allowance required on each face",
    on=Weldment,
    grade=Grade.NONCONFORMITY,
    cites=[_PLACE, ISO_13920.at("Table 1"), COMMON_PRACTICE],
    why="Bores machined before stress relief come out oval; a weldment never stress relieved distorts in "
    "service.",
    leaves_out="rates of heating and cooling, support in the furnace, alloy steels, which need other "
    "temperatures",
    limits=[
        Limit("coolest", "550 °C", "temperature", _PLACE, "least temperature of stress relief"),
        Limit("hottest", "600 °C", "temperature", _PLACE, "greatest temperature of stress relief"),
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
    """Temperature and time by the thickest plate, machining after it, allowance ≥ tolerance + clean-up."""
    if not weldment.plates:
        raise sheet.not_assessed("no plate is stated", weldment.where)
    treatment = weldment.treatment
    order = sheet.states(
        sheet.read("finished after relief", treatment.before_finishing),
        "finish machining comes before the stress relief",
    )
    if not order.holds:
        return order
    T = sheet.take("T_r", treatment.temperature)
    warm = sheet.within(T, sheet.limit("coolest"), sheet.limit("hottest"))
    thickest = max(sheet.take(f"t of {name}", plate.thickness) for name, plate in weldment.plates.items())
    wanted = sheet.work("τ", holding_time, t=thickest)
    held = sheet.at_least(sheet.take("τ_0", treatment.time), wanted)
    if not weldment.faces:
        raise sheet.not_assessed("no finished face is stated", weldment.where)
    grade = sheet.read("class of tolerance", weldment.tolerance_class)
    faces = sheet.each(weldment.faces.items(), lambda item: _face(*item, grade, sheet))
    return sheet.worst(warm, held, faces)


def _face(name: str, face: FinishedFace, grade: str, sheet: Sheet) -> Judgement:
    size = sheet.take_nominal(f"L {name}", face.dimension)
    tolerance = sheet.look_up(f"Δ {name}", weldment_tolerance, grade=grade, size=size)
    wanted = sheet.work(f"a {name}", face_wanted, Delta=tolerance, c=sheet.limit("clean_up", "c"))
    return sheet.at_least(sheet.take(f"a_0 {name}", face.allowance), wanted)


RULES: tuple[Rule, ...] = (stress_relief,)
