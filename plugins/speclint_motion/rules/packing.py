"""The stuffing box: rating of its packing, clearance of the rod in its bushes, and drain."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.equations import Metres
from speclint.facts import openings_at_end, speed_of_crank, stroke_of
from speclint.handbook.cams import mean_piston_speed, revolutions
from speclint.handbook.fits import diametral_clearance, share_of_diameter
from speclint.handbook.materials import fastest, greatest_pressure, hottest
from speclint.specs import LoadCase, StuffingBox
from speclint_motion.formulae.diameters import left_off_centre
from speclint_motion.inputs.thrust import boiler_pressure, cylinder_of, piston_of


@rule(
    "packing.rating",
    title="The temperatures of box, rod and admitted steam, boiler pressure and mean speed of the rod do not "
    "exceed the rating of the packing",
    on=StuffingBox,
    cases=("starting", "running"),
    edition=3,
    grade=Grade.NONCONFORMITY,
    cites=[COMMON_PRACTICE],
    why="Packing beyond its rating leaks within weeks, and the steam takes away the driver's view.",
    leaves_out="oil, finish of the rod (rod.finish), bending of the rod; the maker's data sheet takes "
    "precedence over the table",
    against=("leak", "burn"),
)
def rating(box: StuffingBox, case: LoadCase, sheet: Sheet) -> Judgement:
    """Box, rod and admitted steam, boiler pressure and mean speed of the rod, each against the table of packings.

    The steam counts as it is admitted: the rod carries it past the packing at every stroke.
    """
    packing = sheet.read("packing", box.packing)
    rod = sheet.follow(box.seals)
    temperatures = (
        sheet.take("T_s", case.temperature_of(box)),
        sheet.take("T_r", case.temperature_of(rod)),
        sheet.take("T_l", case.live_temperature),
    )
    hottest_allowed = sheet.look_up("T_max", hottest, packing=packing)
    cylinder = cylinder_of(piston_of(rod, sheet), sheet)
    stroke = stroke_of(cylinder.block, sheet, cylinder.liner.in_bore)
    n = sheet.work("n", revolutions, ω=speed_of_crank(cylinder.block, case, sheet))
    mean = sheet.work("v_m", mean_piston_speed, S=sheet.take("S", stroke), n=n)
    return sheet.worst(
        *(
            sheet.no_hotter(at, hottest_allowed).else_says("packing meets {found}, rated for {limit}")
            for at in temperatures
        ),
        sheet.at_most(
            boiler_pressure(case, sheet), sheet.look_up("p_max", greatest_pressure, packing=packing)
        ).else_says("steam of {found} on a packing rated for {limit}"),
        sheet.at_most(mean, sheet.look_up("v_max", fastest, packing=packing)).else_says(
            "rod runs at {found} in a packing rated for {limit}"
        ),
    )


@rule(
    "packing.gland",
    title="The diametral clearance of the rod in neck bush and gland is within its limits and greater than the play of "
    "the box in its cover and of the cover's spigot together, and the stuffing box is drained",
    wrong="clearance round the rod {found}, where the nearer limit is {limit}",
    on=StuffingBox,
    edition=3,
    grade=Grade.OBSERVATION,
    gravest=Grade.NONCONFORMITY,
    cites=[COMMON_PRACTICE, FIRST_PRINCIPLES],
    why="A rod that touches its bush is scored; water from a gland without a drain runs into the axleboxes.",
    leaves_out="sag of the rod and wear of the slippers, which use up the clearance at the bottom; a box or cover "
    "set by its rod as it is tightened; a cover without a spigot, and the play of a size that is not stated "
    "(cover.enters, box.enters)",
    against=("seize", "wear"),
    against_on={"piston-rod": ("wear",)},
    limits=[
        Limit(
            "least", "0.004", "ratio", COMMON_PRACTICE, "least diametral clearance over the rod's diameter"
        ),
        Limit(
            "most", "0.02", "ratio", COMMON_PRACTICE, "greatest diametral clearance over the rod's diameter"
        ),
    ],
)
def gland(box: StuffingBox, sheet: Sheet) -> Judgement:
    """Bore of neck bush and gland less the rod, as a share of its diameter; the drain as stated.

    A rod that has no clearance in one of them does not go in, or seizes: a nonconformity. So is one that the box
    touches where box and cover lie to one side, each by half of its play.
    """
    d = sheet.take("d", sheet.follow(box.seals).diameter)
    low = sheet.work("c_min", share_of_diameter, k=sheet.limit("least", "k_min"), D=d)
    high = sheet.work("c_max", share_of_diameter, k=sheet.limit("most", "k_max"), D=d)

    bores = {"n": box.neck_bush, "g": box.gland_bore}
    plays = _plays(box, sheet)

    def judge(symbol: str) -> Judgement:
        taken = sheet.take(f"D_{symbol}", bores[symbol])
        left = sheet.work(f"c_{symbol}", diametral_clearance, D=taken, d=d)
        judged = sheet.within(left, low, high)
        judged = judged.graded(Grade.NONCONFORMITY) if left <= 0 else judged
        return sheet.worst(judged, *_centred(left, plays, sheet))

    return sheet.worst(
        sheet.each((box,), lambda box: _drained(box, sheet)),
        sheet.each(bores, judge),
    )


def _plays(box: StuffingBox, sheet: Sheet) -> list[Metres]:
    """Play of the box in the hole of its cover, and of the cover's spigot in what it enters, as far as stated."""
    if not sheet.is_stated("cover of the box", box.in_cover):
        return []
    cover, plays = sheet.follow(box.in_cover), []
    if sheet.is_stated("hole of the cover", cover.central_hole) and sheet.is_stated(
        "outside of the box", box.outside_diameter
    ):
        D, d = sheet.take("D_h", cover.central_hole), sheet.take("d_b", box.outside_diameter)
        plays.append(sheet.work("p_b", diametral_clearance, D=D, d=d))
    if sheet.is_stated("spigot", cover.spigot_diameter) and sheet.is_stated(
        "spigot enters", cover.spigot_enters
    ):
        spigot = sheet.take("d_s", cover.spigot_diameter)
        entered = openings_at_end(cover, sheet).get(sheet.read("spigot enters", cover.spigot_enters))
        if spigot > 0 and entered is not None:
            plays.append(sheet.work("p_s", diametral_clearance, D=sheet.take("D_s", entered), d=spigot))
    return plays


def _centred(left: Metres, plays: list[Metres], sheet: Sheet) -> list[Judgement]:
    """What is left of a clearance with box and cover to one side, where a play is known."""
    if not plays or left <= 0:
        return []
    whole, c = left, left
    for p in plays:
        c = sheet.work("c_r", left_off_centre, c=c, p=p)
    stays = sheet.stays(c, whole, strictly=True).else_says(
        "rod touches its bush as box and cover lie to one side by their play: {left} of clearance left"
    )
    return [stays.graded(Grade.NONCONFORMITY)]


def _drained(box: StuffingBox, sheet: Sheet) -> Judgement:
    drained = sheet.read("drained", box.drained)
    says = "the stuffing box is drained" if drained else "nothing drains what leaks past the packing"
    return sheet.states(drained, says)


RULES = (rating, gland)
