"""lifting.points by hand: 2000 kg midway between two eyes 2 m apart, the hook 1 m above them.

Each leg at 45°: 1000 kg × 9.80665 × √2 = 13 868.7 N, with the jerk × 1.5 = 20 803.1 N, which is 2121.3 kg.
"""

from __future__ import annotations

import math
from collections.abc import Callable

import pytest
from hypothesis import given, strategies as st

from speclint import Grade, OutOfRange
from speclint.facts import centre_together
from speclint.testing import DesignFolder, limit, on_sheet
from speclint_clearances.formulae.lifting import leg_pull, leg_slope, share_of_leg
from speclint_clearances.formulae.lugs import (
    fillet_stress,
    hook_along_plane,
    hook_beside_plane,
    part_across,
    root_stress,
)
from tests.own_limits import own_limit
from tests.plugins.clearances.bench import write

RULE = "lifting.points"


def eye(name: str, x: str, across: str) -> str:
    return f"""
[points.{name}]
x = "{x}"
y = "0 m"
z = "1 m"
opposite = "{across}"
form = "eye bolt"
working_load = "3200 kg"
thread = "M30"
engagement = "45 mm"
"""


PLAN = (
    """
kind = "lifting-plan"
id = "plan"
lifts = "block"
hook_height = "1 m"
sling_leans = "0 °"
[weights.block]
mass = "1500 kg"
x = "0.8 m"
y = "0 m"
z = "0.4 m"
[weights.covers]
mass = "500 kg"
x = "1.6 m"
y = "0 m"
z = "0.4 m"
"""
    + eye("front", "2 m", "back")
    + eye("back", "0 m", "front")
)
BLOCK = 'kind = "cylinder-block"\nid = "block"\nmaterial = "{metal}"\n'
LUG = """
[points.front]
x = "2 m"
y = "0 m"
z = "1 m"
opposite = "back"
form = "lug"
[points.front.lug]
material = "known-steel"
thickness = "20 mm"
width = "80 mm"
hole = "30 mm"
pin = "25 mm"
edge = "40 mm"
height = "40 mm"
root_width = "200 mm"
plane = "0 °"
weld = "full penetration"
"""

#: The plan with a lug at either end.
LUGS = PLAN.replace(eye("front", "2 m", "back"), LUG).replace(
    eye("back", "0 m", "front"),
    LUG.replace("points.front", "points.back").replace('"2 m"', '"0 m"').replace('"back"', '"front"'),
)


def lifted(
    workshop: DesignFolder,
    *changes: tuple[str, str],
    text: str = PLAN,
    settings: str = "",
    metal: str = "known-steel",
) -> DesignFolder:
    for old, new in changes:
        assert old in text, old
        text = text.replace(old, new)
    return write(workshop, {"plan.toml": text, "block.toml": BLOCK.format(metal=metal)}, settings=settings)


def test_the_pull_of_a_leg_by_hand(workshop: DesignFolder) -> None:
    """The centre: (1500 × 0.8 + 500 × 1.6)/2000 = 1.0 m."""
    check = lifted(workshop).only(RULE)
    assert check.outcome == "conforms"
    assert (on_sheet(check, "m"), on_sheet(check, "x_c")) == (2000.0, pytest.approx(1.0))
    assert on_sheet(check, "F front") == pytest.approx(13868.7, abs=0.1)
    assert on_sheet(check, "F_d front") == pytest.approx(20803.1, abs=0.1)


def test_a_piece_that_is_put_in_afterwards_is_no_load(workshop: DesignFolder) -> None:
    """Of the block and its covers the block alone, 1500 kg at 0.8 m."""
    later = ('mass = "500 kg"', 'mass = "500 kg"\nin_place = false')
    check = lifted(workshop, later).only(RULE)
    assert (on_sheet(check, "m"), on_sheet(check, "x_c")) == (1500.0, pytest.approx(0.8))


def test_a_higher_point_is_nearer_to_the_hook(workshop: DesignFolder) -> None:
    """The front eye 0.5 m higher, 1 m aside of a hook 1.5 m above the other: shares 0.5 · 1/(0.5 · 1 + 0.5 · 1.5) = 0.4
    and 0.6; slopes 1 and 2/3; pulls 784.5 · 10 √2 = 11 095 N and 1176.8 · 10 √(1 + 4/9) = 14 144 N."""
    higher = (eye("front", "2 m", "back"), eye("front", "2 m", "back").replace('z = "1 m"', 'z = "1.5 m"'))
    check = lifted(workshop, higher, ('hook_height = "1 m"', 'hook_height = "1.5 m"')).only(RULE)
    assert check.outcome == "conforms"
    assert on_sheet(check, "F front") == pytest.approx(11095, abs=1)
    assert on_sheet(check, "F back") == pytest.approx(14144, abs=1)


@pytest.mark.parametrize(
    ("z", "outcome"), [("1.49 m", "conforms"), ("1.51 m", "finding"), ("2.6 m", "finding")]
)
def test_a_point_too_near_to_the_hook_or_above_it_is_told(
    workshop: DesignFolder, z: str, outcome: str
) -> None:
    """1 m aside of a hook 1.5 m above the lower point: 45° at 0.5 m above that, and above 1.5 m it is over the hook."""
    higher = (eye("front", "2 m", "back"), eye("front", "2 m", "back").replace('z = "1 m"', f'z = "{z}"'))
    hook = ('hook_height = "1 m"', 'hook_height = "1.5 m"')
    assert lifted(workshop, higher, hook).only(RULE).outcome == outcome


@pytest.mark.parametrize(
    "formula", [lambda h: leg_pull(k=0.5, m=1e3, g=9.8, r=1.0, h=h), lambda h: leg_slope(1.0, h)]
)
@pytest.mark.parametrize("h", [0.0, -1.0])
def test_a_hook_not_above_the_points_lifts_nothing(formula: Callable[[float], float], h: float) -> None:
    with pytest.raises(OutOfRange, match="not above"):
        formula(h)


@pytest.mark.parametrize(("load", "outcome"), [("2122 kg", "conforms"), ("2121 kg", "finding")])
def test_an_eye_is_marked_for_its_pull(workshop: DesignFolder, load: str, outcome: str) -> None:
    check = lifted(workshop, ("3200 kg", load)).only(RULE)
    assert (check.outcome, check.grade) == (outcome, Grade.HOLD if outcome == "finding" else None)


@pytest.mark.parametrize(
    ("old", "new", "outcome"),
    [
        ('hook_height = "1 m"', 'hook_height = "0.99 m"', "finding"),  # flatter than 45°
        ('engagement = "45 mm"', 'engagement = "30 mm"', "conforms"),
        ('engagement = "45 mm"', 'engagement = "29.9 mm"', "finding"),
        ('z = "0.4 m"', 'z = "1.01 m"', "finding"),  # hangs above its points
        (
            'x = "0 m"',
            'x = "0.9 m"',
            "finding",
        ),  # 0.1 of 1.1 m: less than a tenth on the front leg
        ('x = "0 m"', 'x = "0.888 m"', "conforms"),  # 0.112 of 1.112 m: 0.1007
        ('x = "0 m"', 'x = "0.889 m"', "finding"),  # 0.111 of 1.111 m: 0.0999
        ('x = "0 m"', 'x = "1.1 m"', "finding"),  # the centre is outside the legs
        ('form = "eye bolt"', "", "not assessed"),
        ('working_load = "3200 kg"', "", "not assessed"),
        ('opposite = "back"', "", "not assessed"),
        (
            'opposite = "back"',
            'opposite = "front"',
            "finding",
        ),  # the back one has the front, which has itself
        ('mass = "500 kg"', "", "not assessed"),
        ('hook_height = "1 m"', "", "not assessed"),
    ],
)
def test_each_condition_of_a_lift(workshop: DesignFolder, old: str, new: str, outcome: str) -> None:
    check = lifted(workshop, (old, new)).only(RULE)
    assert (check.outcome, check.grade) == (outcome, None if outcome == "conforms" else Grade.HOLD)


@pytest.mark.parametrize(("leans", "outcome"), [("10 °", "conforms"), ("11 °", "finding"), ("", "conforms")])
def test_an_eye_stays_within_its_angle_where_its_sling_leans_most(
    workshop: DesignFolder, leans: str, outcome: str
) -> None:
    """The hook 1.43 m above points that are 1 m aside: arctan(1/1.43) = 34.97°, and 10.03° are left to 45°."""
    stated = f'sling_leans = "{leans}"' if leans else ""
    changes = ('hook_height = "1 m"', 'hook_height = "1.43 m"'), ('sling_leans = "0 °"', stated)
    check = lifted(workshop, *changes).only(RULE)
    assert (check.outcome, check.grade) == (outcome, None if outcome == "conforms" else Grade.HOLD)


def test_an_eye_in_iron_wants_half_as_much_again(workshop: DesignFolder) -> None:
    assert lifted(workshop, metal="known-iron").only(RULE).outcome == "conforms"
    short = lifted(workshop, ('"45 mm"', '"44 mm"'), metal="known-iron").only(RULE)
    assert (short.outcome, limit(short)) == ("finding", pytest.approx(45e-3))


@pytest.mark.parametrize(("engaged", "outcome"), [("3.9 mm", "conforms"), ("3.8 mm", "finding")])
def test_the_thread_does_not_pull_out(workshop: DesignFolder, engaged: str, outcome: str) -> None:
    """M30 6g/6H (ISO 965-1, from memory): d least 29.522, D_2 greatest 28.007 mm.

    π × 29.522 × (1.75 + 1.515 tan 30°)/3.5 = 69.55 mm² a millimetre; 0.58 × 400 MPa: 16.136 kN a millimetre, of
    3 × 20.803 = 62.41 kN: 3.868 mm. The rule of a diameter is set aside for this test.
    """
    settings = own_limit(RULE, "clearances", engagement="0.1")
    check = lifted(workshop, ('"45 mm"', f'"{engaged}"'), settings=settings).only(RULE)
    assert check.outcome == outcome
    assert on_sheet(check, "A front") == pytest.approx(69.55e-6 * float(engaged[:3]), rel=2e-3)


def test_a_metal_whose_threads_are_not_known_is_a_hold(workshop: DesignFolder) -> None:
    check = lifted(workshop, metal="white-metal-tin").only(RULE)
    assert check.grade is Grade.HOLD
    assert "no shear strength of a thread in" in check.says


def test_the_metal_is_that_of_the_part_and_not_of_the_plan(workshop: DesignFolder) -> None:
    """44 mm of M30 are enough for steel, and too short for the iron that the eye is screwed into."""
    says = ('lifts = "block"', 'lifts = "block"\nmaterial = "known-steel"')
    check = lifted(workshop, ('"45 mm"', '"44 mm"'), says, metal="known-iron").only(RULE)
    assert (check.outcome, check.grade) == ("finding", Grade.HOLD)
    assert lifted(workshop, ('lifts = "block"\n', "")).only(RULE).outcome == "not assessed"


def test_opposite_points_name_each_other(workshop: DesignFolder) -> None:
    """Left and right would carry as a pair; but the right one has the front opposite, which has the back."""
    left = eye("left", "2 m", "right").replace('y = "0 m"', 'y = "0.5 m"')
    right = eye("right", "0 m", "left").replace('y = "0 m"', 'y = "-0.5 m"')
    higher = ('"1 m"', '"1.2 m"')
    assert lifted(workshop, higher, text=PLAN + left + right).only(RULE).outcome == "conforms"
    astray = right.replace('opposite = "left"', 'opposite = "front"')
    check = lifted(workshop, higher, text=PLAN + left + astray).only(RULE)
    assert (check.outcome, check.grade) == ("finding", Grade.HOLD)
    assert "left has right opposite, and right has front" in check.says


FILLET = ('weld = "full penetration"', 'weld = "fillet on both sides"\nthroat = "{a} mm"')


@pytest.mark.parametrize(("throat", "outcome"), [("2.01", "conforms"), ("1.99", "finding")])
def test_the_weld_of_a_lug_bears_its_pull(workshop: DesignFolder, throat: str, outcome: str) -> None:
    """The sling 10° out of its line: V = 20 803 sin 10° = 3612 N, U = 20 803 sin 55° = 17 041 N.

    20 803/(2 × 200 a) + 3 × 40 × 17 041/(200² a) + 40 × 3612/(200 × 20 a) = (52.01 + 51.12 + 36.12)/a = 139.25/a of
    0.29 × 240 = 69.6 MPa: 2.0007 mm.
    """
    text = LUGS
    old, new = FILLET
    leans = ('sling_leans = "0 °"', 'sling_leans = "10 °"')
    check = lifted(workshop, (old, new.format(a=throat)), leans, text=text).only(RULE)
    assert on_sheet(check, "τ_w front") / 1e6 == pytest.approx(139.25 / float(throat), rel=1e-4)
    assert (check.outcome, check.grade) == (outcome, Grade.HOLD if outcome == "finding" else None)


@pytest.mark.parametrize("missing", ['weld = "full penetration"\n', 'throat = "5 mm"\n'])
def test_a_lug_says_how_it_is_welded(workshop: DesignFolder, missing: str) -> None:
    old, new = FILLET
    text = LUGS
    if "throat" in missing:
        text = text.replace(old, new.format(a="5") + "\n")
    check = lifted(workshop, (missing, ""), text=text).only(RULE)
    assert (check.outcome, check.grade) == ("not assessed", Grade.HOLD)


@pytest.mark.parametrize(
    ("old", "new", "outcome"),
    [
        # 20 803 N; tear-out over 2 × 25 mm ≤ 69.6 MPa: 5.978 mm; across 10 × 20 mm 104 of 120 MPa; pin 192 MPa
        ('thickness = "20 mm"', 'thickness = "5.98 mm"', "conforms"),
        ('thickness = "20 mm"', 'thickness = "5.97 mm"', "finding"),
        ('width = "80 mm"', 'width = "38.7 mm"', "conforms"),
        ('width = "80 mm"', 'width = "38.6 mm"', "finding"),
        ('pin = "25 mm"', 'pin = "5.42 mm"', "conforms"),
        ('pin = "25 mm"', 'pin = "5.41 mm"', "finding"),
        ('edge = "40 mm"', "", "not assessed"),
    ],
)
def test_a_lug_bears_its_pull(workshop: DesignFolder, old: str, new: str, outcome: str) -> None:
    text = PLAN.replace(eye("front", "2 m", "back"), LUG)
    assert lifted(workshop, (old, new), text=text).only(RULE).outcome == outcome


@pytest.mark.parametrize(
    ("leans", "thickness", "outcome"),
    [
        ("0 °", "6 mm", "conforms"),
        ("21 °", "6 mm", "finding"),
        ("21 °", "9.6 mm", "conforms"),
        ("21 °", "9.58 mm", "finding"),
    ],
)
def test_a_sling_out_of_its_plane_bends_the_lug(
    workshop: DesignFolder, leans: str, thickness: str, outcome: str
) -> None:
    """20 803 N, 40 mm above a weld of 200 mm, the plate towards the hook.

    21° out of its plane: V = 20 803 sin 21° = 7455 N; in it U = 20 803 sin 66° = 19 005 N. At 6 mm across the plate
    6 × 40 × 7455/(200 × 36) = 248.5 MPa, along it 6 × 40 × 19 005/(200² × 6) = 19.0, direct 17.3: 284.9 of 120 MPa.
    At 9.6 mm 97.07 + 11.88 + 10.84 = 119.8.
    """
    text = LUGS
    changes = ('sling_leans = "0 °"', f'sling_leans = "{leans}"'), ('"20 mm"', f'"{thickness}"')
    assert lifted(workshop, *changes, text=text).only(RULE).outcome == outcome


def test_a_lug_across_its_sling_is_bent_by_all_of_the_slope(workshop: DesignFolder) -> None:
    """The plate at right angles to the sling of 45°: V = 20 803 sin 45° = 14 710 N and U = 0.

    20 mm: 20 803/4000 + 6 × 40 × 14 710/(200 × 400) = 5.20 + 44.13 = 49.33 MPa.
    """
    text = PLAN.replace(eye("front", "2 m", "back"), LUG)
    check = lifted(workshop, ('plane = "0 °"', 'plane = "90 °"'), text=text).only(RULE)
    assert check.outcome == "conforms"
    assert on_sheet(check, "σ_w front") / 1e6 == pytest.approx(49.33, abs=0.01)


@pytest.mark.parametrize(
    "missing", ['sling_leans = "0 °"', 'height = "40 mm"', 'root_width = "200 mm"', 'plane = "0 °"']
)
def test_a_lug_needs_all_that_bends_it(workshop: DesignFolder, missing: str) -> None:
    text = PLAN.replace(eye("front", "2 m", "back"), LUG)
    assert lifted(workshop, (missing, ""), text=text).only(RULE).outcome == "not assessed"


def test_four_legs_carry_as_two(workshop: DesignFolder) -> None:
    """Two more eyes change nothing: a stiff load hangs on two."""
    more = eye("left", "2 m", "right").replace('y = "0 m"', 'y = "0.5 m"') + eye(
        "right", "0 m", "left"
    ).replace('y = "0 m"', 'y = "-0.5 m"')
    check = lifted(workshop, ('"1 m"', '"1.2 m"'), text=PLAN + more).only(RULE)
    # √(1 + 0.25) m out, 1.2 m up: 9806.65 √(1 + 1.25/1.44)
    assert on_sheet(check, "F left") == pytest.approx(9806.65 * (1 + 1.25 / 1.44) ** 0.5)
    assert on_sheet(check, "k left") == pytest.approx(0.5)


def test_weights_and_points_must_be_stated(workshop: DesignFolder) -> None:
    assert lifted(workshop, text=PLAN.split("[weights")[0]).only(RULE).outcome == "not assessed"
    assert lifted(workshop, text=PLAN.split("\n[points")[0]).only(RULE).outcome == "not assessed"


@given(x=st.floats(0.1, 1.9), y=st.floats(-0.5, 0.5), m=st.floats(100.0, 5000.0), h=st.floats(0.5, 5.0))
def test_two_legs_carry_all_and_never_less_than_plumb(x: float, y: float, m: float, h: float) -> None:
    one = share_of_leg(x, y, 2.0, 0.0, 0.0, 0.0, 2.0)
    other = share_of_leg(x, y, 0.0, 0.0, 2.0, 0.0, 2.0)
    assert one + other == pytest.approx(1.0)
    assert leg_pull(one, m, 9.80665, 1.0, h) >= one * m * 9.80665
    assert min(x, y) - 1e-9 <= centre_together(m, x, m / 3, y) <= max(x, y) + 1e-9


@given(φ=st.floats(-7.0, 7.0), x_c=st.floats(-3.0, 3.0), y_c=st.floats(-3.0, 3.0), δ=st.floats(0.0, 1.5))
def test_the_parts_along_and_across_the_plate_are_of_one_pull(
    φ: float, x_c: float, y_c: float, δ: float
) -> None:
    """By Pythagoras as it hangs; leaning further adds to either, and bends the lug no less."""
    r = (x_c**2 + y_c**2) ** 0.5
    along, beside = (formula(0.0, 0.0, x_c, y_c, φ) for formula in (hook_along_plane, hook_beside_plane))
    assert along**2 + beside**2 == pytest.approx(r**2, abs=1e-9)
    hangs, leans = part_across(1.0, min(beside, r), r, 2.0, 0.0), part_across(1.0, min(beside, r), r, 2.0, δ)
    assert hangs <= leans + 1e-12
    assert root_stress(1.0, 0.5, hangs, 0.1, 0.1, 0.01) <= root_stress(1.0, 0.5, leans, 0.1, 0.1, 0.01) + 1e-3


@pytest.mark.parametrize("nothing", ["b", "t", "a"])
def test_a_lug_or_a_weld_of_no_size_is_refused(nothing: str) -> None:
    sizes = {"b": 0.1, "t": 0.02, "a": 0.005} | {nothing: 0.0}
    with pytest.raises(OutOfRange, match="above 0"):
        fillet_stress(F=20e3, U=10e3, V=2e3, e=0.04, **sizes)
    if nothing != "a":
        with pytest.raises(OutOfRange, match="above 0"):
            root_stress(F=20e3, U=10e3, V=2e3, e=0.04, b=sizes["b"], t=sizes["t"])


def test_pieces_without_mass_have_no_centre() -> None:
    with pytest.raises(OutOfRange, match="not above 0"):
        centre_together(m_0=0.0, x_0=0.4, m_1=0.0, x_1=0.8)


def test_a_hook_in_plan_from_a_lug_that_stands_anywhere() -> None:
    """From (1, 2) to (4, 6) m, 3 and 4 m; the plate at 30°: 3 sin 30° − 4 cos 30° = −1.9641 m beside it.

    Along it 3 cos 30° + 4 sin 30° = 4.5981 m.
    """
    at = {"x": 1.0, "y": 2.0, "x_c": 4.0, "y_c": 6.0, "φ": math.radians(30)}
    assert hook_beside_plane(**at) == pytest.approx(1.9641, abs=1e-4)
    assert hook_along_plane(**at) == pytest.approx(4.5981, abs=1e-4)


@pytest.mark.parametrize(
    ("c", "r", "h", "leans", "part"),
    [
        (3.0, 3.0, 4.0, 0.0, 0.6),  # 3 of 5 m
        (1.4, 3.0, 4.0, 0.0, 0.28),  # 1.4 of 5 m
        (4.0, 4.0, 3.0, 30.0, 0.9928),  # 53.13 + 30°: sin 83.13°
        (4.0, 4.0, 3.0, 60.0, 1.0),  # 113.13° is no more than a right angle
        (0.0, 1.0, 1.0, 90.0, 1.0),
    ],
)
def test_the_part_across_a_lug_by_hand(c: float, r: float, h: float, leans: float, part: float) -> None:
    assert part_across(F=1.0, c=c, r=r, h=h, δ=math.radians(leans)) == pytest.approx(part, abs=1e-4)


@pytest.mark.parametrize(
    ("change", "says"),
    [
        ({"h": 0.0}, "the hook is not above the points"),
        ({"c": 0.0505}, "50.5 mm beside the plane is more than 50 mm from the lug"),
        ({"c": -0.01}, "-10 mm beside the plane"),
        ({"δ": math.radians(-1)}, "leans by -1° is not between 0 and 90°"),
        ({"δ": math.radians(91)}, "leans by 91° is not between 0 and 90°"),
    ],
)
def test_a_sling_that_cannot_be_is_refused(change: dict[str, float], says: str) -> None:
    with pytest.raises(OutOfRange, match=says):
        part_across(**{"F": 1.0, "c": 0.03, "r": 0.05, "h": 1.0, "δ": 0.0} | change)


def test_a_lug_is_bent_by_its_sling_under_a_low_hook(workshop: DesignFolder) -> None:
    """0.9 m up, 1 m aside, the plate across: F_d = 1.5 × 9806.65 √(1 + 1/0.81) = 21 989 N, V = 14 710/0.9 = 16 344 N.

    21 989/4000 + 6 × 40 × 16 344/(200 × 400) = 5.497 + 49.033 = 54.53 MPa.
    """
    text = PLAN.replace(eye("front", "2 m", "back"), LUG)
    changes = ('plane = "0 °"', 'plane = "90 °"'), ('hook_height = "1 m"', 'hook_height = "0.9 m"')
    check = lifted(workshop, *changes, text=text).only(RULE)
    assert on_sheet(check, "σ_w front") / 1e6 == pytest.approx(54.53, abs=0.01)


#: A steel that yields at half the stress of the known one.
SOFT = """
[soft-steel]
title = "soft steel"
family = "carbon-steel"
standard = "invented for tests"
proof-stress = { degC = [20, 420], value = [120, 80], unit = "MPa", tolerance = 0, source = "common practice" }
tensile-strength = { degC = [20, 420], value = [400, 400], unit = "MPa", tolerance = 0, source = "common practice" }

"""


@pytest.mark.parametrize(("part", "lug"), [("soft-steel", "known-steel"), ("known-steel", "soft-steel")])
@pytest.mark.parametrize(("throat", "outcome"), [("4.01", "conforms"), ("3.99", "finding")])
def test_a_weld_bears_what_the_weaker_of_both_metals_bears(
    workshop: DesignFolder, part: str, lug: str, throat: str, outcome: str
) -> None:
    """139.25/a as above, of 0.29 × 120 = 34.8 MPa: 4.0014 mm."""
    old, new = FILLET
    text = LUGS.replace(old, new.format(a=throat))
    text = text.replace('sling_leans = "0 °"', 'sling_leans = "10 °"').replace('"known-steel"', f'"{lug}"')
    files = {"plan.toml": text, "block.toml": BLOCK.format(metal=part)}
    check = write(workshop, files, ("metals.toml", "[known-steel]", SOFT + "[known-steel]")).only(RULE)
    assert (check.outcome, check.grade) == (outcome, Grade.HOLD if outcome == "finding" else None)


def aside(left: str, right: str) -> str:
    """Front and back on the line y = 0, with two more points at these places beside them."""
    more = ""
    for name, (x, y), across in (("left", left.split(), "right"), ("right", right.split(), "left")):
        more += eye(name, f"{x} m", across).replace('y = "0 m"', f'y = "{y} m"')
    return PLAN + more


ASIDE = "front and back, its opposite, stand on one side of the other points"


@pytest.mark.parametrize(
    ("left", "right", "told"),
    [
        ("2 0.5", "0 -0.5", False),
        ("2 -0.5", "0 0.5", False),
        ("2 0.5", "0 0.5", True),
        ("2 -0.5", "0 -0.5", True),
        ("2 0.5", "1 0", True),  # a point on the line is on neither side of it
        ("2 -0.5", "1 0", True),
        ("2 0.5", "0 -0.051", False),
        ("2 0.5", "0 -0.049", True),  # less than a tenth of 0.5 m beside it
        ("2 -0.049", "0 0.5", True),
    ],
)
def test_a_pair_stands_across_the_other_points(
    workshop: DesignFolder, left: str, right: str, told: bool
) -> None:
    check = lifted(workshop, ('hook_height = "1 m"', 'hook_height = "1.2 m"'), text=aside(left, right)).only(
        RULE
    )
    assert (check.outcome, check.grade) == (("finding", Grade.HOLD) if told else ("conforms", None))
    assert any(ASIDE in one.says for one in check.failing) == told
    assert check.judgement is not None
    across = "front and back, its opposite, have points on either side"
    assert (across in [one.says for one in check.judgement.every]) != told
