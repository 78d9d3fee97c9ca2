"""Springs, stops and jack screws that stand on a cover beside the steam."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.facts import circle_of_studs, height_to_grip, hole_through
from speclint.handbook.bolted_joints import loads
from speclint.handbook.plates import circular, rings
from speclint.handbook.springs import deflection
from speclint.specs import BoltedJoint, Borne, ChamberCover, CylinderCover, LoadCase
from speclint_joints.formulae.borne import spread_pressure, stress_together
from speclint_joints.inputs.borne import all_borne, bearing_on
from speclint_joints.inputs.cover_loads import reaction_circle
from speclint_joints.inputs.cover_plates import plate_stresses, strength_of
from speclint_joints.inputs.holding import joint_holding
from speclint_joints.inputs.preload import working_preload
from speclint_joints.inputs.pressures import acting_pressure
from speclint_joints.inputs.purposes import is_steam_tight
from speclint_joints.inputs.seals import lift_per_stud

_Cover = CylinderCover | ChamberCover


@rule(
    "cover.springs-and-stops",
    title="The plate of a cover bears steam and what stands on it, a cover without steam does not part from its joint, "
    "and a spring is free before its cover is off",
    on=(CylinderCover, ChamberCover),
    cases=("starting", "running", "water"),
    grade=Grade.NONCONFORMITY,
    gravest=Grade.HOLD,
    edition=2,
    cites=[*circular.LOADED_WITHIN, rings.LOADED_AT_HOLE, FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="A cover that is let off a loaded spring by its last nut is thrown at the fitter, and a valve whose spring "
    "breaks strikes its stop with many times the load of the spring.",
    leaves_out="Studs and gasket, which the rules of the joint judge with the same loads; which way a load pushes: all "
    "are taken to lift the cover; how strong the tool is. The local code and a competent person decide.",
    against=("break under load",),
    limits=[
        Limit("factor", "1.2", "ratio", COMMON_PRACTICE, "least factor against parting, without steam"),
        Limit("long studs", "2", "ratio", COMMON_PRACTICE, "least number of long studs"),
    ],
)
def springs_and_stops(cover: _Cover, case: LoadCase, sheet: Sheet) -> Judgement:
    """Bending of the plate by p and F, parting by F alone, and what lets a spring out before the cover is off."""
    bears = bearing_on(cover)
    if not bears:
        _nothing_on(cover, sheet)
    joint = joint_holding(cover, sheet)
    judged = [_bends(cover, joint, bears, case, sheet)]
    if not is_steam_tight(joint, sheet):
        judged.append(_parts(joint, case, sheet))
    for name, one in bears.items():
        if sheet.is_stated(f"spring {name}", one.spring):
            judged.append(_let_out(name, one, joint, sheet).graded(Grade.HOLD))
    return sheet.worst(*judged)


def _nothing_on(cover: _Cover, sheet: Sheet) -> None:
    """End the rule on a cover that says nothing: one that drew the stool of its springs ought to."""
    if isinstance(cover, ChamberCover) and sheet.is_stated("stool of the springs", cover.path.section):
        raise sheet.not_assessed(
            "the cover has a stool for springs, and `bears` does not say which stand on it", cover.where
        )
    raise sheet.not_applicable("nothing is said to stand on it beside the steam")


def _bends(
    cover: _Cover, joint: BoltedJoint, bears: dict[str, Borne], case: LoadCase, sheet: Sheet
) -> Judgement:
    """The plate held at its joint, or without steam at its studs, against its allowable tension."""
    if sheet.read("form", cover.form) != "flat":
        raise sheet.not_covered("the rules of flat plates do not cover a dished cover")
    tight = is_steam_tight(joint, sheet)
    G = reaction_circle(joint, sheet) if tight else circle_of_studs(joint, sheet)
    t = sheet.take("t", cover.thickness)
    stock = sheet.take_nominal("t_s", cover.as_made)
    pressure = acting_pressure(joint, case, sheet) if tight else 0.0
    steam = max(plate_stresses(cover, sheet, pressure, G, t))
    nu = sheet.look_up("nu", sheet.material_of(cover).poisson)
    hole = hole_through(cover, sheet)
    by_load = 0.0
    for name, one in bears.items():
        F, by = all_borne({name: one}, case, sheet), f"σ of {name}"
        if hole > 0:
            σ = sheet.work(by, rings.ring_plate_hole_load_stress, F=F, d=hole, D=G, t=t, nu=nu)
        else:
            d = sheet.take(f"d of {name}", one.across)
            p = sheet.work(f"p of {name}", spread_pressure, F=F, d=d)
            σ = sheet.work(by, circular.supported_plate_stress_within, p=p, G=d, D=G, t=t, nu=nu)
        by_load = sheet.work("σ_B", stress_together, sigma_p=by_load, sigma_B=σ)
    stress = sheet.work("σ", stress_together, sigma_p=steam, sigma_B=by_load)
    return sheet.at_most(stress, strength_of(cover, joint, case, sheet, stock).hot).else_says(
        "steam and what stands on the cover stress it to {found}, {limit} allowed"
    )


def _parts(joint: BoltedJoint, case: LoadCase, sheet: Sheet) -> Judgement:
    """A cover without steam is held against what stands on it alone."""
    working = working_preload(joint, case, sheet)
    lift = lift_per_stud(joint, case, sheet, working.stack.studs)
    factor = sheet.work("n_p", loads.separation_factor, F_i=working.low, Phi=working.Phi_face, P=lift)
    return sheet.at_least(factor, sheet.limit("factor")).else_says(
        "studs let the joint part at {found} times what stands on the cover, {limit} wanted"
    )


def _let_out(name: str, one: Borne, joint: BoltedJoint, sheet: Sheet) -> Judgement:
    """A tool that holds the plate of the free spring, or nuts that are still full when it is free."""
    spring = sheet.follow(one.spring)
    free = sheet.take(f"L_0 of {name}", spring.free_length)
    if sheet.read(f"{name} eased by", one.eased_by) == "tool":
        plate, tool = sheet.take("y_t", spring.plate_depth), sheet.take("h_t", spring.tool_height)
        grip = sheet.work("h", height_to_grip, L=free, y=plate)
        return sheet.at_least(tool, grip).else_says(
            "tool lets a spring out to {found}, it is free at {limit}"
        )
    count = sheet.count("n_l", joint.long_studs.count)
    shut = sheet.take(f"L_U of {name}", spring.shut_length)
    way = sheet.work(f"s of {name}", deflection, L_0=free, L=shut)
    spare = sheet.take("x", joint.long_studs.beyond_nut)
    return sheet.worst(
        sheet.at_least(count, sheet.limit("long studs")).else_says("{found} long studs, {limit} wanted"),
        sheet.at_least(spare, way).else_says(
            "nuts of long studs are off after {found}, the spring needs {limit}"
        ),
    )


RULES = (springs_and_stops,)
