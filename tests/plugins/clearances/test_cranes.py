"""States, cranes and jibs, worked by hand: the block of the page with its liner, cages and gear."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, strategies as st

from speclint import Grade, OutOfRange
from speclint.testing import DesignFolder, found, on_sheet
from speclint_clearances.formulae import cranes
from speclint_clearances.formulae.cranes import pressure_in_socket, stress_of_post, tilt_of_load
from tests.plugins.clearances.bench import write
from tests.ranges import End, expect_end

STATE, CRANE, JIB = "lifting.each-state", "lifting.crane", "lifting.jib"


def weight(name: str, mass: str, x: str, y: str, z: str) -> str:
    return f'[weights.{name}]\nmass = "{mass}"\nx = "{x}"\ny = "{y}"\nz = "{z}"\n'


def eye(name: str, x: str, y: str, across: str) -> str:
    return (
        f'[points.{name}]\nx = "{x}"\ny = "{y}"\nz = "520 mm"\nopposite = "{across}"\n'
        'form = "eye bolt"\nworking_load = "3300 kg"\n'
    )


HEAD = """
kind = "lifting-plan"
id = "plan"
hook_height = "1200 mm"
tackle = "90 kg"
bottom = "-470 mm"
"""
POINTS = (
    eye("front-outer", "760 mm", "210 mm", "back-inner")
    + eye("back-inner", "-60 mm", "-190 mm", "front-outer")
    + eye("front-inner", "760 mm", "-190 mm", "back-outer")
    + eye("back-outer", "-60 mm", "210 mm", "front-inner")
)
BARE = (
    weight("block", "1650 kg", "350 mm", "15 mm", "80 mm")
    + weight("liner", "330 kg", "350 mm", "40 mm", "0 mm")
    + weight("cages", "140 kg", "340 mm", "-20 mm", "310 mm")
)
STATES = '[states.bare]\non = ["block", "liner", "cages"]\n'
#: The crane lifts 2120 kg, 5 % of pieces that name no part, and 90 kg of tackle.
SHOP = '[cranes.shop]\ncapacity = "{}"\nhook_above_floor = "{}"\nlifts_over = "1.4 m"\n'
POST = (
    '[jibs.box]\nmaterial = "known-steel"\nlifts = "box"\nload = "{load}"\n'
    'reach = "{reach}"\npost = "{post}"\nwall = "{wall}"\n'
    'socket = "80 mm"\nposts = "{posts}"\n'
)


BOX = 'kind = "cam-box"\nid = "box"\nmass = "45 kg"\n'


def plan(*more: str, states: str = STATES, weights: str = BARE) -> dict[str, str]:
    return {"plan.toml": HEAD + weights + POINTS + states + "".join(more)}


def test_the_block_of_the_page_hangs_true(workshop: DesignFolder) -> None:
    """At (349.3, 16.6, 82.7) mm: 6.6 mm beside (350, 10), 1637 mm under the hook: 0.23°."""
    check = write(workshop, plan()).only(STATE)
    assert check.outcome == "conforms"
    assert check.judgement is not None
    assert "all pieces are on in one state" in [one.says for one in check.judgement.every]


@pytest.mark.parametrize(
    ("piece", "tilt"),
    [
        (weight("box", "180 kg", "700 mm", "16.6 mm", "82.7 mm"), 0.94),
        (weight("box", "900 kg", "900 mm", "16.6 mm", "82.7 mm"), 5.7),
    ],
)
def test_gear_tips_it(workshop: DesignFolder, piece: str, tilt: float) -> None:
    """x = 376.8 mm: 27.6 mm aside; x = 513 mm: 163 mm aside, above 5°: it passed before."""
    made = plan(weights=BARE + piece, states=STATES.replace('"cages"', '"cages", "box"'))
    check = write(workshop, made).only(STATE)
    worst = check.outcome == "finding"
    assert worst == (tilt > 5)
    if worst:
        assert check.grade == Grade.NONCONFORMITY
        assert math.degrees(found(check)) == pytest.approx(tilt, abs=0.1)


@pytest.mark.parametrize(("x", "outcome"), [("492 mm", "conforms"), ("495 mm", "finding")])
def test_the_tilt_from_both_sides(workshop: DesignFolder, x: str, outcome: str) -> None:
    """520 + 1200 − 80 = 1640 mm under the hook: 5° is 1640 tan 5° = 143.5 mm beside the middle at 350 mm."""
    alone = weight("block", "500 kg", x, "10 mm", "80 mm")
    made = plan(weights=alone, states='[states.bare]\non = ["block"]\n')
    check = write(workshop, made).only(STATE)
    assert (check.outcome, check.grade) == (outcome, Grade.NONCONFORMITY if outcome == "finding" else None)
    assert math.degrees(found(check)) == pytest.approx(5, rel=0.02)


def with_one_higher(made: dict[str, str]) -> dict[str, str]:
    """The first point, front-outer, stands 600 mm higher than the others."""
    return {"plan.toml": made["plan.toml"].replace('z = "520 mm"', 'z = "1120 mm"', 1)}


@pytest.mark.parametrize(("mass", "outcome"), [("3060 kg", "conforms"), ("3110 kg", "finding")])
def test_a_leg_opposite_to_a_higher_point_takes_more(workshop: DesignFolder, mass: str, outcome: str) -> None:
    """The hook is 1200 mm above the lowest point and 600 mm above that one: of the pair it takes 1/3, the other 2/3.

    456.2 mm aside, aslant by √(1 + 0.3802²) = 1.0698: 2/3 × 1.0698 × 1.5 = 1.0698 of the load, 3300 kg at 3084.7.
    """
    alone = weight("block", mass, "350 mm", "10 mm", "80 mm")
    made = with_one_higher(plan(weights=alone, states='[states.bare]\non = ["block"]\n'))
    check = write(workshop, made).only(STATE)
    assert (check.outcome, check.grade) == (outcome, Grade.HOLD if outcome == "finding" else None)


@pytest.mark.parametrize(("x", "outcome"), [("492 mm", "conforms"), ("495 mm", "finding")])
def test_a_higher_point_lifts_no_hook(workshop: DesignFolder, x: str, outcome: str) -> None:
    """1640 mm under the hook as before, whose height is stated above the lowest point: 143.5 mm beside the middle."""
    alone = weight("block", "500 kg", x, "10 mm", "80 mm")
    made = with_one_higher(plan(weights=alone, states='[states.bare]\non = ["block"]\n'))
    assert write(workshop, made).only(STATE).outcome == outcome


def test_a_piece_in_no_state_is_told(workshop: DesignFolder) -> None:
    check = write(workshop, plan(states='[states.bare]\non = ["block", "liner"]\n')).only(STATE)
    assert (check.outcome, check.grade) == ("finding", Grade.NONCONFORMITY)
    assert "cages" in check.says


def test_a_piece_of_a_state_that_is_put_in_after_the_lift_is_told(workshop: DesignFolder) -> None:
    """The state counted without the liner, which it says is on: 330 kg less than hang."""
    late = BARE.replace('mass = "330 kg"', 'mass = "330 kg"\nin_place = false')
    check = write(workshop, plan(weights=late)).only(STATE)
    assert (check.outcome, check.grade) == ("finding", Grade.NONCONFORMITY)
    assert "liner is on in bare, and said to be put in after the lift" in check.says


def test_a_piece_that_is_put_in_after_the_lift_may_be_on_in_no_state(workshop: DesignFolder) -> None:
    late = BARE.replace('mass = "330 kg"', 'mass = "330 kg"\nin_place = false')
    check = write(workshop, plan(weights=late, states='[states.bare]\non = ["block", "cages"]\n')).only(STATE)
    assert check.outcome == "conforms"


def test_pieces_that_hang_together_in_no_state_are_told(workshop: DesignFolder) -> None:
    """Each piece is on in some state, but the liner of 330 kg with the cages in none."""
    states = '[states.bare]\non = ["block"]\n[states.lined]\non = ["block", "liner"]\n'
    check = write(workshop, plan(states=f'{states}[states.complete]\non = ["block", "cages"]\n')).only(STATE)
    assert (check.outcome, check.grade) == ("finding", Grade.NONCONFORMITY)
    assert "in no state are all pieces on: lined lacks cages; complete lacks liner" in check.says


def test_the_lighter_states_may_lack_pieces(workshop: DesignFolder) -> None:
    """Only in the heaviest are all on; and what is put in after the lift is on in none."""
    later = weight("later", "500 kg", "350 mm", "0 mm", "0 mm") + "in_place = false\n"
    states = f'{STATES}[states.lined]\non = ["block", "liner"]\n[states.alone]\non = ["block"]\n'
    assert write(workshop, plan(states=states, weights=BARE + later)).only(STATE).outcome == "conforms"


@pytest.mark.parametrize(("mass", "outcome"), [("4100 kg", "conforms"), ("4126 kg", "finding")])
def test_a_leg_pulled_in_jerks_from_both_sides(workshop: DesignFolder, mass: str, outcome: str) -> None:
    """In the middle of 820 by 400 mm, 456.2 mm from each point, 1.2 m under the hook: half of it × √(1 + 0.3802²).

    1.5 × 0.5 × 1.06983 m is 3300 kg at m = 4112.8 kg.
    """
    alone = weight("block", mass, "350 mm", "10 mm", "80 mm")
    made = plan(weights=alone, states='[states.bare]\non = ["block"]\n')
    check = write(workshop, made).only(STATE)
    assert (check.outcome, check.grade) == (outcome, Grade.HOLD if outcome == "finding" else None)


def test_a_leg_that_takes_nearly_all_is_a_hold(workshop: DesignFolder) -> None:
    """In the one state with the gear the leg beside it is pulled by more than its eye is marked for."""
    gear = weight("gear", "3000 kg", "700 mm", "180 mm", "0 mm")
    made = plan(weights=BARE + gear, states=STATES.replace('"cages"', '"cages", "gear"'))
    made["plan.toml"] = made["plan.toml"].replace("3300 kg", "2000 kg")
    check = write(workshop, made).only(STATE)
    assert (check.outcome, check.grade) == ("finding", Grade.HOLD)


def test_a_plan_without_states_is_not_assessed(workshop: DesignFolder) -> None:
    assert write(workshop, plan(states="")).only(STATE).outcome == "not assessed"


@pytest.mark.parametrize(
    ("capacity", "hook", "outcome"),
    [
        ("3200 kg", "5 m", "conforms"),
        ("2574 kg", "5 m", "conforms"),
        ("2572 kg", "5 m", "finding"),
        ("3200 kg", "3.691 m", "conforms"),
        ("3200 kg", "3.689 m", "finding"),
    ],
)
def test_the_crane_from_both_sides(workshop: DesignFolder, capacity: str, hook: str, outcome: str) -> None:
    """(2120 × 1.05 + 90)/0.9 = 2573.3 kg; 1.4 + 0.1 + 0.52 + 0.47 + 1.2 = 3.69 m."""
    check = write(workshop, plan(SHOP.format(capacity, hook))).only(CRANE)
    assert (check.outcome, check.grade) == (outcome, Grade.HOLD if outcome == "finding" else None)


@pytest.mark.parametrize(("capacity", "outcome"), [("2574 kg", "conforms"), ("2572 kg", "finding")])
def test_a_piece_that_is_put_in_afterwards_is_not_on_the_crane(
    workshop: DesignFolder, capacity: str, outcome: str
) -> None:
    """As above, 2573.3 kg, beside a piece of 500 kg that comes later."""
    later = weight("later", "500 kg", "350 mm", "0 mm", "0 mm") + "in_place = false\n"
    made = plan(SHOP.format(capacity, "5 m"), weights=BARE + later)
    assert write(workshop, made).only(CRANE).outcome == outcome


@pytest.mark.parametrize(("capacity", "outcome"), [("2556 kg", "conforms"), ("2554 kg", "finding")])
def test_a_piece_that_is_no_weldment_gains_nothing_by_its_welds(
    workshop: DesignFolder, capacity: str, outcome: str
) -> None:
    """The liner of 330 kg is none: (2120 + 0.05 × 1790 + 90)/0.9 = 2555.0 kg."""
    liner = weight("liner", "330 kg", "350 mm", "40 mm", "0 mm")
    made = plan(SHOP.format(capacity, "5 m"), weights=BARE.replace(liner, f'{liner}of = "liner"\n'))
    made["liner.toml"] = 'kind = "cylinder-liner"\nid = "liner"\n'
    assert write(workshop, made).only(CRANE).outcome == outcome


@pytest.mark.parametrize(("hook", "outcome"), [("3.791 m", "conforms"), ("3.789 m", "finding")])
def test_the_hook_clears_the_highest_point(workshop: DesignFolder, hook: str, outcome: str) -> None:
    """One point stands at 620 mm: 1.4 + 0.1 + 0.62 + 0.47 + 1.2 = 3.79 m."""
    made = plan(SHOP.format("3200 kg", hook))
    made["plan.toml"] = made["plan.toml"].replace("520 mm", "620 mm", 1)
    assert write(workshop, made).only(CRANE).outcome == outcome


def test_a_plan_without_a_crane_is_a_hold(workshop: DesignFolder) -> None:
    check = write(workshop, plan()).only(CRANE)
    assert (check.outcome, check.grade) == ("not assessed", Grade.HOLD)


@pytest.mark.parametrize(
    ("load", "reach", "post", "wall", "posts", "outcome"),
    [
        ("90 kg", "0.8 m", "60.3 mm", "5 mm", "one", "conforms"),
        ("90 kg", "0.8 m", "48.3 mm", "4 mm", "one", "conforms"),
        ("90 kg", "1.0 m", "48.3 mm", "4 mm", "one", "finding"),
        ("90 kg", "1.0 m", "48.3 mm", "4 mm", "two", "conforms"),
        ("45 kg", "2.1 m", "48.3 mm", "4 mm", "one", "finding"),
    ],
)
def test_the_posts_of_the_page(
    workshop: DesignFolder, load: str, reach: str, post: str, wall: str, posts: str, outcome: str
) -> None:
    """240/1.5 = 160 MPa: 79.5, 154.8, 193.5, 145.1 and 203 MPa; a load of 45 kg is no hold."""
    made = plan(POST.format(load=load, reach=reach, post=post, wall=wall, posts=posts))
    check = write(workshop, {**made, "box.toml": BOX}).only(JIB)
    assert check.outcome == outcome
    if outcome == "finding":
        assert check.grade == (Grade.HOLD if load == "90 kg" else Grade.NONCONFORMITY)


@pytest.mark.parametrize(
    ("box", "lifts", "outcome", "grade"),
    [
        ('mass = "45 kg"', '["box", "other"]', "conforms", None),
        ('mass = "45.1 kg"', '["box", "other"]', "finding", Grade.HOLD),
        ('mass = "89 kg"', '"box"', "conforms", None),
        ("", '"box"', "not assessed", Grade.HOLD),
        ('mass = "45 kg"', "[]", "not assessed", Grade.HOLD),
    ],
)
def test_the_load_of_a_jib_is_what_it_lifts(
    workshop: DesignFolder, box: str, lifts: str, outcome: str, grade: Grade | None
) -> None:
    """45 and 45 kg are the 90 kg that the jib is made for; a part without a mass, or none, tells nothing."""
    sizes = {"load": "90 kg", "reach": "0.8 m", "post": "60.3 mm", "wall": "5 mm", "posts": "one"}
    made = plan(POST.format(**sizes).replace('lifts = "box"', f"lifts = {lifts}"))
    made |= {"box.toml": BOX.replace('mass = "45 kg"', box), "other.toml": BOX.replace('"box"', '"other"')}
    check = write(workshop, made).only(JIB)
    assert (check.outcome, check.grade) == (outcome, grade), check.says


def test_the_post_bears_what_hangs_on_it_and_not_what_is_said(workshop: DesignFolder) -> None:
    """A box of 180 kg on a jib for 90 bends the post of 60.3 mm twice as much: 159 of 160 MPa, and twice the load."""
    sizes = {"load": "90 kg", "reach": "0.8 m", "post": "60.3 mm", "wall": "5 mm", "posts": "one"}
    made = plan(POST.format(**sizes)) | {"box.toml": BOX.replace("45 kg", "180 kg")}
    check = write(workshop, made).only(JIB)
    assert (check.outcome, check.grade) == ("finding", Grade.HOLD)
    assert on_sheet(check, "σ box") / 1e6 == pytest.approx(2 * 79.5, rel=2e-3)


@pytest.mark.parametrize(("reach", "outcome"), [("211 mm", "conforms"), ("209 mm", "finding")])
def test_a_box_hangs_beside_the_post_of_its_jib(workshop: DesignFolder, reach: str, outcome: str) -> None:
    """(360 + 60.3)/2 = 210.15 mm."""
    sizes = {"load": "90 kg", "reach": reach, "post": "60.3 mm", "wall": "5 mm", "posts": "one"}
    box = BOX + 'length = "420 mm"\nwidth = "360 mm"\n'
    check = write(workshop, plan(POST.format(**sizes)) | {"box.toml": box}).only(JIB)
    assert (check.outcome, check.grade) == (outcome, Grade.HOLD if outcome == "finding" else None)


@pytest.mark.parametrize(("length", "outcome"), [("565 mm", "conforms"), ("570 mm", "finding")])
def test_a_box_weighs_no_less_than_its_walls(workshop: DesignFolder, length: str, outcome: str) -> None:
    """45 kg are stated; 0.9 × 7850 kg/m³ × 5 mm of 2 (1.4 l + 0.48) m² are 90 kg at 567.1 mm."""
    sizes = {"load": "90 kg", "reach": "0.8 m", "post": "60.3 mm", "wall": "5 mm", "posts": "one"}
    walls = BOX + f'material = "known-steel"\nlength = "{length}"\nwidth = "800 mm"\nheight = "600 mm"\n'
    check = write(workshop, plan(POST.format(**sizes)) | {"box.toml": walls}).only(JIB)
    assert check.outcome == outcome


@pytest.mark.parametrize(("reach", "outcome"), [("1.097 m", "conforms"), ("1.108 m", "finding")])
def test_each_of_two_posts_takes_three_quarters(workshop: DesignFolder, reach: str, outcome: str) -> None:
    """A tube of 48.3 by 4 mm, π (48.3⁴ − 40.3⁴)/(32 × 48.3) = 5701 mm³, bears 912.1 N·m at 160 MPa.

    0.75 × 1.25 × 90 × 9.80665 = 827.4 N of load: 1.102 m of reach.
    """
    made = plan(POST.format(load="90 kg", reach=reach, post="48.3 mm", wall="4 mm", posts="two"))
    assert write(workshop, {**made, "box.toml": BOX}).only(JIB).outcome == outcome


@pytest.mark.parametrize(("load", "grade"), [("50 kg", Grade.NONCONFORMITY), ("50.1 kg", Grade.HOLD)])
def test_a_weak_jib_is_a_hold_above_fifty_kilograms(workshop: DesignFolder, load: str, grade: Grade) -> None:
    """1.25 × 50 × 9.80665 × 2.1 = 1287 N·m on 5701 mm³: 226 of 160 MPa."""
    made = plan(POST.format(load=load, reach="2.1 m", post="48.3 mm", wall="4 mm", posts="one"))
    check = write(workshop, {**made, "box.toml": BOX}).only(JIB)
    assert (check.outcome, check.grade) == ("finding", grade)


def test_no_jib_is_not_asked_for(workshop: DesignFolder) -> None:
    assert write(workshop, plan()).only(JIB).outcome == "not applicable"


@given(e=st.floats(0.0, 0.5), h=st.floats(0.5, 3.0))
def test_a_higher_hook_hangs_it_truer(e: float, h: float) -> None:
    tilts = [tilt_of_load(e=e, z_p=0.5, h=height, z_c=0.1) for height in (h, 2 * h)]
    assert tilts[1] <= tilts[0]


def test_a_hook_at_the_height_of_the_centre_holds_nothing_upright() -> None:
    """0.5 + 1.0 = 1.5 m: just below it the arm is 10⁻⁶ m, and arctan(0.1/10⁻⁶) is nearly a right angle."""
    held = {"e": 0.1, "z_p": 0.5, "h": 1.0}
    assert tilt_of_load(**held, z_c=1.5 - 1e-6) == pytest.approx(math.pi / 2, abs=2e-5)
    with pytest.raises(OutOfRange, match="the hook is not above the centre of the load"):
        tilt_of_load(**held, z_c=1.5)


@given(M=st.floats(1.0, 1e4))
def test_a_solid_post_bears_the_most(M: float) -> None:
    """With the wall as thick as the radius: 32 M/(π D³)."""
    solid = stress_of_post(M=M, D=0.06, t=0.03 - 1e-12)
    assert solid == pytest.approx(32 * M / (math.pi * 0.06**3))
    assert stress_of_post(M=M, D=0.06, t=0.005) > solid


def pair(near: str, far: str, hook: str = "1200 mm") -> str:
    """A plan with two points 1 m either side of the middle, and what each of them is."""
    ends = (("near", "1 m", "far", near), ("far", "-1 m", "near", far))
    return HEAD.replace("1200 mm", hook) + "".join(
        f'[points.{name}]\nx = "{x}"\ny = "0 m"\nz = "520 mm"\nopposite = "{across}"\n{form}\n'
        for name, x, across, form in ends
    )


def marked(mass: str) -> str:
    return f'form = "eye bolt"\nworking_load = "{mass}"'


@pytest.mark.parametrize(
    ("near", "far", "outcome"),
    [
        ("1032 kg", "916 kg", "conforms"),
        ("1031 kg", "916 kg", "finding"),
        ("1032 kg", "915 kg", "finding"),
    ],
)
def test_each_leg_is_pulled_by_its_own_share(
    workshop: DesignFolder, near: str, far: str, outcome: str
) -> None:
    """1000 kg 0.1 m from the middle: 0.55 of it 0.9 m aside, 1.2 m up, and 0.45 of it 1.1 m aside.

    1.5 × 550 × √(1 + 0.75²) = 1031.25 kg; 1.5 × 450 × √(1 + 0.91667²) = 675 × 1.356568 = 915.68 kg.
    """
    alone = weight("block", "1000 kg", "0.1 m", "0 m", "80 mm") + '[states.bare]\non = ["block"]\n'
    check = write(workshop, {"plan.toml": pair(marked(near), marked(far)) + alone}).only(STATE)
    assert (check.outcome, check.grade) == (outcome, Grade.HOLD if outcome == "finding" else None)


@pytest.mark.parametrize(("x", "outcome"), [("-1 m", "conforms"), ("-1.3 m", "finding")])
def test_a_lug_is_pulled_in_no_state_harder_than_under_all_pieces(
    workshop: DesignFolder, x: str, outcome: str
) -> None:
    """1000 kg 0.1 m from the middle, 3 m under the hook: 550 kg × √(1 + 0.3²) = 574.2 kg of leg.

    200 kg more at the far point: 550 kg, now 1.0833 m aside: × √(1 + 0.36111²) = 584.8. At 0.3 m beyond it:
    520 kg, 1.1333 m aside: × √(1 + 0.37778²) = 555.9, and the far leg 680 kg × √(1 + 0.28889²) = 707.8.
    """
    pieces = weight("block", "1000 kg", "0.1 m", "0 m", "80 mm") + weight("box", "200 kg", x, "0 m", "80 mm")
    states = '[states.bare]\non = ["block"]\n[states.all]\non = ["block", "box"]\n'
    made = pair('form = "lug"', marked("3300 kg"), hook="3 m") + pieces + states
    check = write(workshop, {"plan.toml": made}).only(STATE)
    assert (check.outcome, check.grade) == (outcome, Grade.HOLD if outcome == "finding" else None)


@pytest.mark.parametrize(
    ("foot", "outcome"),
    [
        ('throat = "3.35 mm"', "conforms"),
        ('throat = "3.34 mm"', "finding"),
        ('socket = "23.5 mm"', "conforms"),
        ('socket = "23.3 mm"', "finding"),
    ],
)
def test_the_foot_of_a_post_from_both_sides(workshop: DesignFolder, foot: str, outcome: str) -> None:
    """1.25 × 90 × 9.80665 × 0.8 = 882.6 N·m at the foot of a tube of 60.3 mm.

    A weld bears 240/(1.5 √3) = 92.38 MPa: 4 × 882.6/(π 0.0603² × 92.38e6) = 3.346 mm of throat. A socket bears
    160 MPa: √(6 × 882.6/(0.0603 × 160e6)) = 23.43 mm of depth.
    """
    sizes = {"load": "90 kg", "reach": "0.8 m", "post": "60.3 mm", "wall": "5 mm", "posts": "one"}
    made = plan(POST.format(**sizes).replace('socket = "80 mm"', foot))
    check = write(workshop, {**made, "box.toml": BOX}).only(JIB)
    assert (check.outcome, check.grade) == (outcome, Grade.HOLD if outcome == "finding" else None)


def test_a_mean_is_that_of_points() -> None:
    expect_end(
        End(cranes.mean_with, {"x_0": 0.0, "x_1": 1.0, "n": 1.0}, {"n": 0.999}, "there are no lifting points")
    )


def test_a_socket_without_depth_is_refused() -> None:
    """6 M/(D l²), 1 kN·m on a post of 100 mm: 0.2 m deep 6000/(0.1 × 0.04) = 1.5 MPa."""
    assert pressure_in_socket(M=1e3, D=0.1, l=0.2) == pytest.approx(1.5e6)
    with pytest.raises(OutOfRange, match="no depth"):
        pressure_in_socket(M=1e3, D=0.1, l=0.0)


@pytest.mark.parametrize(("tackle", "outcome"), [("5.3 kg", "conforms"), ("5.2 kg", "finding")])
def test_tackle_is_no_lighter_than_slings_are(workshop: DesignFolder, tackle: str, outcome: str) -> None:
    """0.25 % of 2120 kg is 5.3 kg: four slings of polyester and their shackles weigh 6 to 8 kg."""
    made = plan(SHOP.format("3200 kg", "5 m"))
    made["plan.toml"] = made["plan.toml"].replace('tackle = "90 kg"', f'tackle = "{tackle}"')
    check = write(workshop, made).only(CRANE)
    assert (check.outcome, check.grade) == (outcome, Grade.NONCONFORMITY if outcome == "finding" else None)


@pytest.mark.parametrize(("capacity", "grade"), [("2480 kg", Grade.NONCONFORMITY), ("2478 kg", Grade.HOLD)])
def test_light_tackle_is_counted_at_its_least(workshop: DesignFolder, capacity: str, grade: Grade) -> None:
    """Said to weigh 1 kg: (2120 × 1.05 + 5.3)/0.9 = 2479.2 kg."""
    made = plan(SHOP.format(capacity, "5 m"))
    made["plan.toml"] = made["plan.toml"].replace('tackle = "90 kg"', 'tackle = "1 kg"')
    check = write(workshop, made).only(CRANE)
    assert (check.outcome, check.grade) == ("finding", grade)


#: A block whose barrel reaches down 500/2 + 50 = 300 mm from its axis, and whose wider face 700/2 = 350 mm.
LIFTED = {
    "block.toml": 'kind = "cylinder-block"\nid = "block"\n[bores.main]\ndiameter = "500 mm"\nwall = "50 mm"\n'
    '[ends.front]\nface_diameter = "700 mm"\n[ends.back]\nface_diameter = "640 mm"\n',
    "liner.toml": 'kind = "cylinder-liner"\nid = "liner"\nhoused_in = "block"\n',
}


def _lifted(
    workshop: DesignFolder, bottom: str, hook: str, block: tuple[str, str] = ("", ""), of: str = "liner"
) -> DesignFolder:
    """The block of 500 mm on the hook, with its liner 10 mm above the corner from which the plan measures."""
    weights = BARE.replace('mass = "330 kg"', f'of = "{of}"\nmass = "330 kg"').replace(
        'z = "0 mm"', 'z = "10 mm"'
    )
    made = {**LIFTED, **plan(SHOP.format("3200 kg", hook), weights=weights)}
    made["plan.toml"] = made["plan.toml"].replace('"-470 mm"', f'"{bottom}"\nlifts = "block"')
    made["block.toml"] = made["block.toml"].replace(*block) if block[0] else made["block.toml"]
    return write(workshop, made)


@pytest.mark.parametrize(
    ("bottom", "grade"),
    [("-339.1 mm", None), ("-338.9 mm", Grade.NONCONFORMITY), ("-200 mm", Grade.NONCONFORMITY)],
)
def test_the_block_reaches_down_as_far_as_its_wider_face(
    workshop: DesignFolder, bottom: str, grade: Grade | None
) -> None:
    """Axis at 10 mm: 10 − 350 = −340 mm, 1 mm of rounding allowed; the hook is high enough for all."""
    check = _lifted(workshop, bottom, "5.2 m").only(CRANE)
    assert (check.outcome, check.grade) == ("conforms" if grade is None else "finding", grade)


@pytest.mark.parametrize(("bottom", "outcome"), [("-289.1 mm", "conforms"), ("-288.9 mm", "finding")])
def test_without_faces_it_reaches_down_by_its_barrel(
    workshop: DesignFolder, bottom: str, outcome: str
) -> None:
    """10 − 300 = −290 mm, 1 mm of rounding allowed."""
    ends = LIFTED["block.toml"][LIFTED["block.toml"].index("[ends.front]") :]
    assert _lifted(workshop, bottom, "5.2 m", (ends, "")).only(CRANE).outcome == outcome


@pytest.mark.parametrize(("bottom", "outcome"), [("-289.1 mm", "conforms"), ("-288.9 mm", "finding")])
@pytest.mark.parametrize("stated", ["", 'wall = "45 mm"\n'])
def test_a_barrel_reaches_as_far_as_its_plate(
    workshop: DesignFolder, bottom: str, outcome: str, stated: str
) -> None:
    """The same by a plate of 50 mm, its corrosion allowance with it: no wall is stated, or 45 mm."""
    ends = LIFTED["block.toml"][LIFTED["block.toml"].index('wall = "50 mm"\n') :]
    folder = _lifted(workshop, bottom, "5.2 m", (ends, stated + 'plate = "barrel"\n'))
    (folder.root / "weldment.toml").write_text(
        'kind = "weldment"\nid = "weldment"\nmakes = "block"\n'
        '[plates.barrel]\nthickness = "50 mm"\ncorrosion_allowance = "1.5 mm"\n',
        encoding="utf-8",
    )
    assert folder.only(CRANE).outcome == outcome


@pytest.mark.parametrize(("hook", "grade"), [("3.561 m", Grade.NONCONFORMITY), ("3.559 m", Grade.HOLD)])
def test_the_hook_is_to_be_as_high_as_the_metal_wants(
    workshop: DesignFolder, hook: str, grade: Grade
) -> None:
    """Said to be −200 mm, counted as −340: 1.4 + 0.1 + 0.52 + 0.34 + 1.2 = 3.56 m."""
    check = _lifted(workshop, "-200 mm", hook).only(CRANE)
    assert (check.outcome, check.grade) == ("finding", grade)


def test_where_no_weight_is_a_liner_no_axis_is_known(workshop: DesignFolder) -> None:
    assert _lifted(workshop, "-200 mm", "5.2 m", of="block").only(CRANE).outcome == "conforms"


@pytest.mark.parametrize(("bottom", "outcome"), [("-339.1 mm", "conforms"), ("-338.9 mm", "finding")])
def test_of_several_bores_that_of_the_liner_counts(workshop: DesignFolder, bottom: str, outcome: str) -> None:
    """The other bore, of 900 mm, has no liner that is weighed, nor its face of 1100 mm."""
    files = {
        "block.toml": LIFTED["block.toml"].replace('mm"\n[ends.back]', 'mm"\nof_bore = "main"\n[ends.back]')
        + 'of_bore = "main"\n[ends.other]\nof_bore = "low"\nface_diameter = "1100 mm"\n'
        '[bores.low]\ndiameter = "900 mm"\nwall = "50 mm"\n',
        "liner.toml": LIFTED["liner.toml"] + 'in_bore = "main"\n',
    }
    folder = _lifted(workshop, bottom, "5.2 m")
    for name, text in files.items():
        (folder.root / name).write_text(text, encoding="utf-8")
    assert folder.only(CRANE).outcome == outcome
