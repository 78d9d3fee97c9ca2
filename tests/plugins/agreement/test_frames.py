"""The block on its frame: each agreement from both sides, and the hold rules on what is worked."""

from __future__ import annotations

import math

import pytest

from speclint import Grade
from speclint.testing import DesignFolder, changed, expect_not_applicable, on_sheet
from tests.plugins.joints.test_frames import FACE, FASTENING, fastened

HOLD, FINE = ("finding", Grade.HOLD), ("conforms", None)
#: A pad of 250 × 280 mm with 30 holes of 25 mm: 70 000 - 14 726 = 55 274 mm².
_SIDES = 'width = "250 mm"\nheight = "280 mm"\narea = "62000 mm²"'
_FACE = 250 * 280 - 30 * math.pi / 4 * 25**2


def judged(workshop: DesignFolder, rule: str, component: str) -> tuple[str, Grade | None]:
    found = workshop.only(rule, component)
    return found.outcome, found.grade


@pytest.mark.parametrize(("area", "wanted"), [("55273 mm²", FINE), ("55275 mm²", HOLD), ("620000 mm²", HOLD)])
def test_the_face_of_a_pad_is_within_its_sides(
    workshop: DesignFolder, area: str, wanted: tuple[str, Grade | None]
) -> None:
    assert pytest.approx(55274, abs=0.5) == _FACE
    fastened(workshop).replace("block.toml", 'area = "62000 mm²"', _SIDES.replace("62000 mm²", area))
    assert judged(workshop, "pad.area-of-sides", "block") == wanted


@pytest.mark.parametrize("area", ["620000 mm²", "62000 mm²"])
def test_a_larger_face_eases_no_pressure(workshop: DesignFolder, area: str) -> None:
    """Pressed on 55 274 mm² whatever is stated: 30 × 130 + 263.4 = 4163 kN, 75.3 MPa."""
    fastened(workshop).replace("block.toml", 'area = "62000 mm²"', _SIDES.replace("62000 mm²", area))
    thrust = math.pi / 4 * 500**2 * 2 + 3 * 9.80665 * 2000
    found = workshop.only("frame.block-couple", "fastening")
    assert on_sheet(found, "q") == pytest.approx((30 * 130e3 + thrust * 350 / 600) / _FACE * 1e6, rel=1e-6)


@pytest.mark.parametrize(("height", "outcome"), [("266 mm", "conforms"), ("264 mm", "finding")])
def test_the_sides_alone_give_the_face(workshop: DesignFolder, height: str, outcome: str) -> None:
    """At 80 MPa 4163 kN want 52 043 mm²: (52 043 + 14 726)/252 = 264.96 mm."""
    sides = f'width = "252 mm"\nheight = "{height}"'
    fastened(workshop).replace("block.toml", 'area = "62000 mm²"', sides)
    assert pytest.approx(264.96, abs=0.01) == (52043 + 14726) / 252
    assert workshop.only("frame.block-couple", "fastening").outcome == outcome


#: A second bore of 300 mm, whose axis is 500 mm from the frame.
_INSIDE = '[bores.inside]\naxis_from_frame = "500 mm"\n[pads.back]'
_INSIDE_LINER = """
kind = "cylinder-liner"
id = "inside-liner"
housed_in = "block"
in_bore = "inside"
bore = "300 mm"
last_bore = "300 mm"
"""
#: 20 bar on 500 and on 300 mm, and 3 × 9.80665 × 2000 N.
_MAIN, _SECOND, _JOLT = math.pi / 4 * 500**2 * 2, math.pi / 4 * 300**2 * 2, 3 * 9.80665 * 2000


def of_two(workshop: DesignFolder) -> DesignFolder:
    """A block of two bores on one frame."""
    fastened(workshop).replace("block.toml", "[pads.back]", _INSIDE)
    for end in ("front", "back"):
        named = f'[ends.{end}]\nof_bore = "main"'
        inside = f'[ends.inside-{end}]\nof_bore = "inside"\nside = "{end}"\nrelief_set = "0.5 bar gauge"\n'
        workshop.replace("block.toml", f"[ends.{end}]", f"{inside}{named}")
    (workshop.root / "inside.toml").write_text(_INSIDE_LINER, encoding="utf-8")
    return workshop


def on_two_frames(workshop: DesignFolder, bore: str, locates: str = "true") -> DesignFolder:
    """The same with another pad, of another frame, whose fastening names a bore."""
    pad = f'[pads.beyond]\nat = "0 mm"\nlocates = {locates}\narea = "62000 mm²"\n[pads.front]'
    of_two(workshop).replace("block.toml", "[pads.front]", pad)
    other = changed(
        FASTENING, ('id = "fastening"', 'id = "other"'), ('pad = "back"', 'pad = "beyond"'), ("main", bore)
    )
    (workshop.root / "other.toml").write_text(other, encoding="utf-8")
    return workshop


def test_all_bores_thrust_on_the_frame(workshop: DesignFolder) -> None:
    """392.7 + 141.4 + 58.8 kN; 392.7 × 0.35 + (141.4 + 58.8) × 0.5 = 237.5 kN·m, over 0.6 m and 30 bolts."""
    found = of_two(workshop).only("frame.block-slip", "fastening")
    assert on_sheet(found, "F_T") == pytest.approx(_MAIN + _SECOND + _JOLT, rel=1e-9)
    lift = (_MAIN * 0.35 + (_SECOND + _JOLT) * 0.5) / 0.6 / 30
    assert on_sheet(found, "P") == pytest.approx(lift, rel=1e-9)


#: 20 bar on a third bore, of 400 mm, whose axis is 200 mm from the frame.
_THIRD = math.pi / 4 * 400**2 * 2


def of_three(workshop: DesignFolder, far: str, inside: str = 'angle = "120 °"') -> DesignFolder:
    """A block of three bores on one frame, with the angles of their cranks; that of the main bore counts from 0°."""
    of_two(workshop).replace(
        "block.toml", "[bores.inside]", '[bores.far]\naxis_from_frame = "200 mm"\n[bores.inside]'
    )
    for end in ("front", "back"):
        third = f'[ends.far-{end}]\nof_bore = "far"\nside = "{end}"\nrelief_set = "0.5 bar gauge"\n'
        workshop.replace("block.toml", f"[ends.inside-{end}]", f"{third}[ends.inside-{end}]")
    liner = changed(_INSIDE_LINER, ("inside-liner", "far-liner"), ('"inside"', '"far"'))
    (workshop.root / "far.toml").write_text(liner.replace("300 mm", "400 mm"), encoding="utf-8")
    cranks = {"main": 'angle = "0 °"', "inside": inside, "far": f'angle = "{far}"'}
    text = "".join(
        f'[cranks.{name}]\nblock = "block"\nbore = "{name}"\n{angle}\n' for name, angle in cranks.items()
    )
    (workshop.root / "engine.toml").write_text(f'kind = "engine"\nid = "engine"\n{text}', encoding="utf-8")
    return workshop


@pytest.mark.parametrize(
    ("far", "inside", "thrust", "couple"),
    [
        # a third of a turn apart two push together at the most: 392.7 + 251.3 kN; 392.7 × 0.35 + 141.4 × 0.5 kN·m
        ("240 °", 'angle = "120 °"', _MAIN + _THIRD, _MAIN * 0.35 + _SECOND * 0.5),
        ("-120 °", 'angle = "120 °"', _MAIN + _THIRD, _MAIN * 0.35 + _SECOND * 0.5),
        # from 30° before its dead centre the last may push the new way: at 180 + 30° beyond the first, with both others
        ("210.1 °", 'angle = "120 °"', _MAIN + _THIRD, _MAIN * 0.35 + _SECOND * 0.5),
        ("209.9 °", 'angle = "120 °"', _MAIN + _SECOND + _THIRD, _MAIN * 0.35 + _SECOND * 0.5 + _THIRD * 0.2),
        # an angle that is not stated relieves nothing
        ("240 °", "", _MAIN + _SECOND + _THIRD, _MAIN * 0.35 + _SECOND * 0.5 + _THIRD * 0.2),
    ],
)
def test_those_bores_thrust_together_whose_cranks_let_them(
    workshop: DesignFolder, far: str, inside: str, thrust: float, couple: float
) -> None:
    found = of_three(workshop, far, inside).only("frame.block-slip", "fastening")
    assert on_sheet(found, "F_T") == pytest.approx(thrust + _JOLT, rel=1e-9)
    assert on_sheet(found, "P") == pytest.approx((couple + _JOLT * 0.5) / 0.6 / 30, rel=1e-9)


def test_a_fastening_that_names_one_bore_of_two(workshop: DesignFolder) -> None:
    assert judged(fastened(workshop), "frame.thrust-of-all", "fastening") == FINE
    assert judged(of_two(workshop), "frame.thrust-of-all", "fastening") == HOLD
    workshop.replace("fastening.toml", 'bore = "main"\n', "")
    assert workshop.only("frame.thrust-of-all", "fastening").outcome == "not applicable"


@pytest.mark.parametrize(
    ("bore", "locates", "wanted", "thrust"),
    [
        ("inside", "true", FINE, _MAIN + _JOLT),
        ("main", "true", HOLD, _MAIN + _SECOND + _JOLT),  # nobody takes the inside one
        ("inside", "false", HOLD, _MAIN + _SECOND + _JOLT),  # a pad that slides takes no thrust
    ],
)
def test_another_frame_takes_the_bore_that_its_pad_names(
    workshop: DesignFolder, bore: str, locates: str, wanted: tuple[str, Grade | None], thrust: float
) -> None:
    on_two_frames(workshop, bore, locates)
    workshop.replace("other.toml", 'friction = "0.7"', 'friction = "0.1"\ngreatest_friction = "0.1"')
    assert judged(workshop, "frame.thrust-of-all", "fastening") == wanted
    face = FACE.format(pad="beyond")
    (workshop.root / "face-beyond.toml").write_text(face, encoding="utf-8")
    found = workshop.only("frame.block-slip", "fastening")
    assert on_sheet(found, "F_T") == pytest.approx(thrust, rel=1e-9)


def test_a_bore_without_a_liner_thrusts_at_its_last(workshop: DesignFolder) -> None:
    """20 bar on 520 mm: 424.7 kN."""
    fastened(workshop).replace(
        "block.toml", "[pads.back]", 'lined = false\ndiameter = "500 mm"\nlast_bore = "520 mm"\n[pads.back]'
    )
    (workshop.root / "liner.toml").unlink()
    found = workshop.only("frame.block-slip", "fastening")
    assert on_sheet(found, "F_s") == pytest.approx(math.pi / 4 * 520**2 * 2, rel=1e-9)


#: Two weights, one of which names no part; the liner and the covers are not drawn with sizes.
_PLAN = """
kind = "lifting-plan"
id = "plan"
lifts = "block"
[weights.welded]
of = "weldment"
mass = "1600 kg"
[weights.studs]
mass = "300 kg"
"""
_WELDMENT = 'kind = "weldment"\nid = "weldment"\nmakes = "block"\nmass = "1700 kg"\n'


def weighed(workshop: DesignFolder, mass: str = "2000 kg") -> DesignFolder:
    """Drawn: 1700 kg of the weldment by its own spec, and 300 kg that name no part."""
    fastened(workshop, ('carried_mass = "2000 kg"', f'carried_mass = "{mass}"'))
    (workshop.root / "plan.toml").write_text(_PLAN, encoding="utf-8")
    (workshop.root / "weldment.toml").write_text(_WELDMENT, encoding="utf-8")
    return workshop


@pytest.mark.parametrize(("mass", "wanted"), [("2000 kg", FINE), ("1999 kg", HOLD), ("20 kg", HOLD)])
def test_the_frame_carries_all_that_is_drawn(
    workshop: DesignFolder, mass: str, wanted: tuple[str, Grade | None]
) -> None:
    assert judged(weighed(workshop, mass), "frame.mass-adds-up", "fastening") == wanted


def test_without_a_plan_there_is_no_mass_to_compare(workshop: DesignFolder) -> None:
    fastened(workshop)
    expect_not_applicable(workshop.only("frame.mass-adds-up", "fastening"))


@pytest.mark.parametrize(("mass", "jolted"), [("20 kg", 2000), ("2000 kg", 2000), ("2400 kg", 2400)])
def test_a_lesser_mass_eases_no_shock(workshop: DesignFolder, mass: str, jolted: int) -> None:
    found = weighed(workshop, mass).only("frame.block-slip", "fastening")
    assert on_sheet(found, "S") == pytest.approx(3 * 9.80665 * jolted, rel=1e-9)


def test_what_is_drawn_does_not_stand_for_the_mass(workshop: DesignFolder) -> None:
    """Valves, gear and lagging have no weights: 2000 kg of what is drawn may be a part of it."""
    weighed(workshop).replace("fastening.toml", 'carried_mass = "2000 kg"\n', "")
    assert workshop.only("frame.mass-adds-up", "fastening").outcome == "not applicable"
    found = workshop.only("frame.block-slip", "fastening")
    assert (found.outcome, found.grade) == ("not assessed", Grade.HOLD)
    assert "carried_mass is not stated" in found.says


@pytest.mark.parametrize(("other", "wanted"), [("900 kg", FINE), ("899 kg", HOLD)])
def test_two_frames_share_the_mass(
    workshop: DesignFolder, other: str, wanted: tuple[str, Grade | None]
) -> None:
    """1100 kg are left of 2000 kg when the other frame carries 900 kg."""
    on_two_frames(workshop, "inside")
    (workshop.root / "plan.toml").write_text(_PLAN, encoding="utf-8")
    (workshop.root / "weldment.toml").write_text(_WELDMENT, encoding="utf-8")
    workshop.replace("fastening.toml", 'carried_mass = "2000 kg"', 'carried_mass = "1100 kg"')
    workshop.replace("other.toml", 'carried_mass = "2000 kg"', f'carried_mass = "{other}"')
    assert judged(workshop, "frame.mass-adds-up", "fastening") == wanted


@pytest.mark.parametrize(("mass", "wanted"), [("2097 kg", FINE), ("2096 kg", HOLD)])
def test_a_drawn_part_may_be_what_a_weight_without_a_name_is(
    workshop: DesignFolder, mass: str, wanted: tuple[str, Grade | None]
) -> None:
    """A liner of 600 mm outside, 500 mm inside, 640 mm long, of 7180 kg/m³ is 397.0 kg: more than the 300 kg, and not
    added to them."""
    liner = 7180 * math.pi / 4 * (0.6**2 - 0.5**2) * 0.64
    assert pytest.approx(397.0, abs=0.05) == liner
    weighed(workshop, mass)
    sizes = 'material = "liner-iron"\noutside_diameter = "600 mm"\nlength = "640 mm"\n'
    with (workshop.root / "liner.toml").open("a", encoding="utf-8") as more:
        more.write(sizes)
    with (workshop.root / "metals.toml").open("a", encoding="utf-8") as more:
        more.write(
            '[liner-iron]\ntitle = "iron"\nfamily = "grey-iron"\nstandard = "none"\n'
            'density = { value = 7180, unit = "kg/m³", tolerance = 0, source = "common practice" }\n'
        )
    assert judged(workshop, "frame.mass-adds-up", "fastening") == wanted


_FIT = """
kind = "fit"
id = "fit-bolts"
hole = {{ of = "face-back", size = "{hole}" }}
shaft = {{ of = "fastening", dimension = "fitted_diameter" }}
"""


def reamed(workshop: DesignFolder, hole: str, in_frame: str, taken_by: str = "fitted bolts") -> DesignFolder:
    """Fitted bolts of 25 mm m6 in a pad and a frame."""
    fastened(
        workshop,
        ('taken_by = "friction"', f'taken_by = "{taken_by}"'),
        ('fitted_diameter = "25 mm"', 'fitted_diameter = "25 mm m6"'),
        ('hole = "25 mm"', f'hole = "{hole}"'),
    )
    (workshop.root / "fit.toml").write_text(_FIT.format(hole=in_frame), encoding="utf-8")
    return workshop


@pytest.mark.parametrize(
    ("hole", "in_frame", "wanted"),
    [
        ("25 mm H7", "25 mm H7", FINE),
        ("26 mm H7", "25 mm H7", HOLD),
        ("25 mm H7", "26 mm H7", HOLD),
        ("26 mm", "26 mm", HOLD),
        ("25.009 mm", "25 mm", FINE),
        ("25.011 mm", "25 mm", HOLD),
    ],
)
def test_bolt_and_holes_are_of_one_size(
    workshop: DesignFolder, hole: str, in_frame: str, wanted: tuple[str, Grade | None]
) -> None:
    assert judged(reamed(workshop, hole, in_frame), "frame.bolt-fits-hole", "fastening") == wanted


@pytest.mark.parametrize(
    ("hole", "in_frame", "outcome"),
    [
        ("25 mm H7", "25 mm H7", "conforms"),  # 21 µm less 8: 13 µm of play at most
        ("25 mm H9", "25 mm H7", "conforms"),  # 52 less 8: 44 µm
        ("25 mm H7", "25 mm H10", "finding"),  # 84 less 8: 76 µm
        ("26 mm", "25 mm H7", "finding"),
    ],
)
def test_a_loose_hole_on_either_drawing_takes_no_thrust(
    workshop: DesignFolder, hole: str, in_frame: str, outcome: str
) -> None:
    """ISO 286-2 at 25 mm: H7 +21 µm, H9 +52 µm, H10 +84 µm; m6 +8 to +21 µm."""
    assert reamed(workshop, hole, in_frame).only("frame.block-slip", "fastening").outcome == outcome


@pytest.mark.parametrize(
    ("hole", "wanted"), [("24.9 mm", HOLD), ("25 mm", FINE), ("28 mm +0.5/0", FINE), ("28.1 mm", HOLD)]
)
def test_bolts_that_only_clamp_pass_through_the_hole_of_their_series(
    workshop: DesignFolder, hole: str, wanted: tuple[str, Grade | None]
) -> None:
    """ISO 273 for M24, from memory: fine 25 mm, coarse 28 mm; their fits are not asked."""
    assert judged(reamed(workshop, hole, "26 mm", "friction"), "frame.bolt-fits-hole", "fastening") == wanted


def test_a_bolt_without_a_metric_thread_has_no_series(workshop: DesignFolder) -> None:
    reamed(workshop, "40 mm", "26 mm", "friction").replace(
        "fastening.toml", 'thread = "M24"\ncount', 'thread = "1 in BSW"\ncount'
    )
    assert workshop.only("frame.bolt-fits-hole", "fastening").outcome == "not applicable"
