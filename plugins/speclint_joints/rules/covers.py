"""The plate of a cover, over a cylinder or over a valve's chamber, and its flange."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec import Struct

from speclint import Grade, Judgement, Limit, Sheet, rule
from speclint.facts import circle_of_studs, hole_through
from speclint.handbook.materials import share_of_strength
from speclint.handbook.plates import flat_covers
from speclint.specs import BoltedJoint, CaseName, ChamberCover, CylinderCover, LoadCase
from speclint_joints.formulae.covers import flange_bending_stress, gasket_lever
from speclint_joints.inputs.cover_loads import design_bolting, greatest_pulls, reaction_circle
from speclint_joints.inputs.cover_plates import Strength, plate_stresses, strength_of
from speclint_joints.inputs.holding import joint_holding
from speclint_joints.inputs.pressures import acting_pressure
from speclint_joints.sources import (
    ASME_APPENDIX_2,
    ASME_BENDING,
    CODE_SEATING,
    ROARK,
    TEST_STRESS,
)

_DEFERS = "the local code and a competent person decide."
_DUTY: tuple[CaseName, ...] = ("starting", "running", "water")
_BENDING = Limit("bending", "1.5", "ratio", ASME_BENDING, "allowable bending stress over allowable tension")


class _Plate(Struct, frozen=True):
    """A flat cover on its joint: the lever from studs to joint and the circle G of the joint, m, and the pressure."""

    cover: CylinderCover | ChamberCover
    lever: float
    G: float
    p: float


def _flat_plate(
    cover: CylinderCover | ChamberCover, case: LoadCase, sheet: Sheet, stretch: float
) -> Judgement:
    """Thickness by the code, and for the studs as tightened; stress of the plate, clamped and supported at its edge."""
    if sheet.read("form", cover.form) != "flat":
        raise sheet.not_covered("the rules of flat plates do not cover a dished cover")
    joint = joint_holding(cover, sheet)
    pressure = acting_pressure(joint, case, sheet)
    bolting = design_bolting(joint, case, sheet, pressure)
    t, stock = sheet.take("t", cover.thickness), sheet.take_nominal("t_s", cover.as_made)
    strength = strength_of(cover, joint, case, sheet, stock)
    in_case = sheet.work("S", share_of_strength, k=stretch, R=strength.hot)
    lever = sheet.work("h_G", gasket_lever, D_b=circle_of_studs(joint, sheet), G=bolting.G)
    plate = _Plate(cover, lever, bolting.G, pressure)
    needed = [
        _code_thickness(plate, sheet, "operating", p=pressure, S=in_case, W=bolting.operating),
        _code_thickness(plate, sheet, "seating", p=0.0, S=strength.cold, W=bolting.seating),
        *_for_real_pull(plate, joint, case, sheet, strength),
    ]
    stresses = plate_stresses(cover, sheet, pressure, bolting.G, t)
    return sheet.worst(
        _cut_from(cover, stock, t, sheet),
        *(sheet.at_least(t, least).else_says("cover is {found} thick, {limit} required") for least in needed),
        *(
            sheet.at_most(stress, in_case).else_says("cover stressed to {found}, {limit} allowed")
            for stress in stresses
        ),
    )


def _cut_from(cover: CylinderCover | ChamberCover, stock: float, t: float, sheet: Sheet) -> Judgement:
    """A finished cover is no thicker than the plate or casting that it is cut from."""
    says = (
        "the plate or casting is as thick as what is cut from it"
        if stock >= t
        else ("the cover is thicker than the plate or casting that it is said to be cut from")
    )
    return sheet.states(stock >= t, says, where=cover.as_made.where)


def _for_real_pull(
    plate: _Plate, joint: BoltedJoint, case: LoadCase, sheet: Sheet, strength: Strength
) -> Iterator[float]:
    """Thickness for the greatest pull of the studs, which is above the code's: in bending up to about yield."""
    pulls, bending = greatest_pulls(joint, case, sheet), sheet.limit("bending")
    cold = sheet.work("S_b0", share_of_strength, k=bending, R=strength.cold)
    yield _code_thickness(plate, sheet, "tightened", p=0.0, S=cold, W=pulls.tightened)
    hot = sheet.work("S_bh", share_of_strength, k=bending, R=strength.hot)
    yield _code_thickness(plate, sheet, "pulled", p=plate.p, S=hot, W=pulls.in_work)


def _code_thickness(plate: _Plate, sheet: Sheet, when: str, *, p: float, S: float, W: float) -> float:
    """The code's thickness, for its opening too where the cover has one."""
    factor = sheet.look_up("C", flat_covers.bolted_cover_factor)
    weld = sheet.take("E", plate.cover.weld_efficiency)
    like = {"G": plate.G, "h_G": plate.lever, "C": factor, "E": weld}
    plain = sheet.work(f"t_{when}", flat_covers.bolted_cover_thickness, p=p, S=S, W=W, **like)
    hole = hole_through(plate.cover, sheet)
    if hole <= 0:
        return plain
    return sheet.work(f"t_{when},h", flat_covers.cover_thickness_with_opening, t=plain, d=hole, G=plate.G)


@rule(
    "cover.thickness",
    title="The cover plate is at least as thick as the code requires for pressure and bolt load, and its bending "
    "stress, also at the greatest load of its studs, does not exceed what is allowed",
    on=(CylinderCover, ChamberCover),
    cases=_DUTY,
    grade=Grade.HOLD,
    cites=[
        flat_covers.BOLTED_COVER,
        flat_covers.OPENING,
        ROARK.at("Table 11.2"),
        CODE_SEATING,
        ASME_BENDING,
    ],
    why="A cover that bends opens its own joint, and one that breaks is thrown at whoever stands in front "
    "of it.",
    leaves_out=f"Ribs and bosses are not credited; holes off the centre are not judged; {_DEFERS}",
    against=("burst", "break under load"),
    limits=[_BENDING],
    edition=8,
)
def thickness(cover: CylinderCover | ChamberCover, case: LoadCase, sheet: Sheet) -> Judgement:
    """Code form of a bolted flat cover, by the code's load and by the real one, and plate theory, in work."""
    return _flat_plate(cover, case, sheet, 1.0)


@rule(
    "cover.test",
    title="At the greatest test pressure stated for any part tested with it, the cover plate is at least as thick "
    "as the code requires, and its bending stress does not exceed what is allowed on test",
    on=(CylinderCover, ChamberCover),
    cases=("test",),
    grade=Grade.HOLD,
    cites=[
        flat_covers.BOLTED_COVER,
        flat_covers.OPENING,
        TEST_STRESS,
        ASME_BENDING,
    ],
    why="The test must prove the cover, not damage it.",
    leaves_out=f"Ribs and bosses are not credited; the test is done by the local code; {_DEFERS}",
    against=("burst",),
    limits=[
        Limit(
            "on test",
            "1.43",
            "ratio",
            TEST_STRESS,
            "allowable stress on test over that in work",
        ),
        _BENDING,
    ],
    edition=8,
)
def on_test(cover: CylinderCover | ChamberCover, case: LoadCase, sheet: Sheet) -> Judgement:
    """The same, with the allowable stress of a test; under the real pull bending goes no further than in work."""
    return _flat_plate(cover, case, sheet, sheet.limit("on test"))


@rule(
    "cover.flange",
    title="The bending stress of the cover's flange between stud circle and joint, at the greatest load of its studs "
    "as tightened and in work, does not exceed the allowable bending stress",
    wrong="studs bend the flange to {found}, {limit} allowed",
    on=(CylinderCover, ChamberCover),
    cases=_DUTY,
    grade=Grade.NONCONFORMITY,
    cites=[
        ASME_APPENDIX_2.at("2-6 and UG-34, moment of the bolt load"),
        ASME_BENDING,
    ],
    why="The flange is a short cantilever all round; a thin one bends, and the joint opens at its inner "
    "edge.",
    leaves_out="Hoop stiffness of the flange, which helps, and the stud holes: the flange is taken as solid.",
    against=("break under load",),
    limits=[_BENDING],
    edition=6,
)
def flange(cover: CylinderCover | ChamberCover, case: LoadCase, sheet: Sheet) -> Judgement:
    """Bending of a strip round the joint by the greatest load of the studs as tightened."""
    joint = joint_holding(cover, sheet)
    pulls = greatest_pulls(joint, case, sheet)
    G = reaction_circle(joint, sheet)
    lever = sheet.work("h_G", gasket_lever, D_b=circle_of_studs(joint, sheet), G=G)
    t, stock = sheet.take("t_f", cover.flange_thickness), sheet.take_nominal("t_s", cover.as_made)
    strength = strength_of(cover, joint, case, sheet, stock)
    judged = [_cut_from(cover, stock, t, sheet)]
    for mark, pull, tension in (("0", pulls.tightened, strength.cold), ("f", pulls.in_work, strength.hot)):
        stress = sheet.work(f"sigma_{mark}", flange_bending_stress, W=pull, h_G=lever, G=G, t=t)
        limit = sheet.work(f"f_b{mark}", share_of_strength, k=sheet.limit("bending"), R=tension)
        judged.append(sheet.at_most(stress, limit))
    return sheet.worst(*judged)


RULES = (thickness, on_test, flange)
