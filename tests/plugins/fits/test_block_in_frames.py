"""The block in its frames: scheme of pads, two locked pads, carrying pads, putting in and out; worked by hand."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, strategies as st

from speclint import Grade
from speclint.testing import DesignFolder, changed, expect_not_assessed, found, on_sheet, without_key
from speclint_fits.formulae.carrying_pads import (
    load_of_pad,
    moment_added,
    product_added,
    sinking_of_block,
    tilt_of_block,
)
from speclint_fits.formulae.locked_pads import force_of_growth, in_series, stress_of_web
from speclint_fits.formulae.three_pads import (
    give_of_three,
    load_of_three,
    out_of_line,
    share_of_three,
    share_on_line,
    sinking_of_line,
)
from tests.plugins.fits.frames import PRESSURE, files, solid

SCHEME, FORCE, GRIP = "frame.scheme-of-pads", "frame.locked-force", "frame.grip-kept"
TRUE, CARRY, OUT, SQUARE = (
    "frame.true-interference",
    "frame.carrying-pads",
    "frame.put-in-and-out",
    "frame.square-to-axis",
)


def test_two_locked_pads_are_a_sound_scheme(workshop: DesignFolder) -> None:
    """It was refused by counting; the sizes of both pads are asked instead."""
    workshop.write(files())
    assert workshop.only(SCHEME).outcome == "conforms"
    assert workshop.only("block.fixed-at-pad").outcome == "conforms"
    assert {check.outcome for check in workshop.check("fit.locating-lugs")} <= {"conforms", "not assessed"}


@pytest.mark.parametrize(
    ("old", "new", "outcome", "grade"),
    [
        ('"two locked"', '"one locked"', "finding", Grade.NONCONFORMITY),
        ('"lengthwise", ', "", "finding", Grade.HOLD),
        ('"crosswise", ', "", "finding", Grade.NONCONFORMITY),
        ('"weight"', '"crosswise"', "finding", Grade.NONCONFORMITY),
        ('scheme = "two locked"\n', "", "finding", Grade.HOLD),
        ('takes = ["lengthwise", "weight"]', "locates = true", "conforms", None),
    ],
)
def test_what_takes_the_forces(
    workshop: DesignFolder, old: str, new: str, outcome: str, grade: Grade | None
) -> None:
    check = workshop.write(files((old, new))).only(SCHEME)
    assert (check.outcome, check.grade) == (outcome, grade)


def test_a_pad_that_only_locates_does_not_say_what_carries(workshop: DesignFolder) -> None:
    old = (
        ('"two locked"', '"one locked"'),
        ('takes = ["lengthwise", "crosswise", "weight"]', "locates = true"),
        ('takes = ["lengthwise", "weight"]', "locates = false"),
    )
    check = workshop.write(files(*old)).only(SCHEME)
    assert (check.outcome, check.grade) == ("not assessed", Grade.HOLD)


@pytest.mark.parametrize(("at", "outcome"), [("300 mm", "conforms"), ("700 mm", "finding")])
def test_locked_at_the_middle(workshop: DesignFolder, at: str, outcome: str) -> None:
    """Pads at 0 and 620 mm slide; the third locks."""
    third = f'[pads.middle]\nat = "{at}"\ntakes = ["lengthwise"]\n'
    made = files(('"two locked"', '"locked at the middle"'), ('"lengthwise", ', ""))
    made["block.toml"] += third
    made["face-middle.toml"] = (
        made["face-back.toml"].replace("face-back", "face-middle").replace('pad = "back"', 'pad = "middle"')
    )
    check = workshop.write(made).only(SCHEME)
    assert check.outcome == outcome
    said = {one.says for one in (check.judgement.parts if check.judgement else ())}
    stands = "stands" if outcome == "conforms" else "does not stand"
    assert f"middle {stands} between two that slide" in said | {check.says}


@pytest.mark.parametrize("takes", ['"lengthwise", "weight", "nothing"', '"nothing", "lengthwise"'])
def test_a_pad_that_takes_nothing_takes_nothing_else(workshop: DesignFolder, takes: str) -> None:
    made = files(('takes = ["lengthwise", "weight"]', f"takes = [{takes}]"))
    check = workshop.write(made).only(SCHEME)
    assert check.outcome == "finding"
    assert "pad front is said to take" in check.says


@pytest.mark.parametrize(("proof", "outcome"), [(65, "conforms"), (63, "finding")])
def test_a_face_bears_what_the_weaker_metal_bears(workshop: DesignFolder, proof: int, outcome: str) -> None:
    """64.0 MPa on the faces of block and frame: the frame's metal sets at less, a hold; the block's bears 314."""
    made = files()
    head, mark, rest = made["metals.toml"].partition("[frame-steel]")
    made["metals.toml"] = head + mark + rest.replace("value = 314", f"value = {proof}", 1)
    check = workshop.write(made).only(FORCE)
    assert check.outcome == outcome
    assert check.grade is (Grade.HOLD if outcome == "finding" else None)
    assert outcome == "conforms" or "mean pressure on a face 64.01 MPa" in check.says


def test_the_shares_of_the_thrust_stand_under_their_pads(workshop: DesignFolder) -> None:
    """Webs of 1.5e6 and 3e6 N/mm: a third and two thirds of 326 kN."""
    made = files()
    head, mark, rest = made["block.toml"].partition("[pads.front]")
    made["block.toml"] = head + mark + rest.replace('"1.5e6 N/mm"', '"3e6 N/mm"')
    check = workshop.write(made).only(FORCE)
    assert on_sheet(check, "P_back") == pytest.approx(326e3 / 3, rel=1e-3)
    assert on_sheet(check, "P_front") == pytest.approx(326e3 * 2 / 3, rel=1e-3)


def test_the_force_between_the_pads_by_hand(workshop: DesignFolder) -> None:
    """0.699 mm, 0.536e6 N/mm, 375 kN: block 42, frame 36 with 60 mm, face 45 and 64 MPa with half of 326 kN."""
    check = workshop.write(files()).only(FORCE)
    assert check.outcome == "conforms"
    assert on_sheet(check, "Δ") * 1e3 == pytest.approx(0.699, abs=0.001)
    assert on_sheet(check, "F") == pytest.approx(374.7e3, rel=1e-3)
    assert on_sheet(check, "σ_b") / 1e6 == pytest.approx(41.6, rel=1e-2)
    assert on_sheet(check, "σ_f") / 1e6 == pytest.approx(35.7, rel=1e-2)
    assert on_sheet(check, "σ_gback") / 1e6 == pytest.approx(74, rel=1e-2)
    assert on_sheet(check, "p_back") / 1e6 == pytest.approx(64, rel=1e-2)


def test_solid_pads_far_apart_break_their_webs(workshop: DesignFolder) -> None:
    """1.490 mm, 1533 kN: block 170, frame 146, webs 301 MPa by growth alone, 333 with the thrust, of 210."""
    check = workshop.write(solid()).only(FORCE)
    assert (check.outcome, check.grade) == ("finding", Grade.HOLD)
    assert on_sheet(check, "Δ") * 1e3 == pytest.approx(1.490, abs=0.001)
    assert on_sheet(check, "F") == pytest.approx(1533e3, rel=1e-3)
    assert on_sheet(check, "σ_b") / 1e6 == pytest.approx(170, rel=1e-2)
    assert on_sheet(check, "σ_f") / 1e6 == pytest.approx(146, rel=1e-2)
    assert on_sheet(check, "σ_gback") / 1e6 == pytest.approx(301, rel=1e-2)
    assert on_sheet(check, "σ_wback") / 1e6 == pytest.approx(301.2 * 1696 / 1533, rel=1e-2)
    assert on_sheet(check, "p_back") / 1e6 == pytest.approx(202, rel=1e-2)


def test_the_same_on_webs_is_sound(workshop: DesignFolder) -> None:
    """708 kN: 139 MPa by growth, 171 with the thrust."""
    check = workshop.write(solid("1.5e6 N/mm")).only(FORCE)
    assert check.outcome == "conforms"
    assert on_sheet(check, "F") == pytest.approx(708e3, rel=1e-2)
    assert on_sheet(check, "σ_gback") / 1e6 == pytest.approx(139, rel=1e-2)


@pytest.mark.parametrize(("arm", "outcome"), [("173 mm", "conforms"), ("175 mm", "finding")])
def test_webs_from_both_sides(workshop: DesignFolder, arm: str, outcome: str) -> None:
    """537.7 kN: √((537.7 a/0.6)² + 3 (44.81)²) = 0.67 × 314 = 210.38 MPa at 195.6 × 0.6/0.5377... mm of arm."""
    F = 374.7e3 + 163e3
    edge = math.sqrt(210.38**2 - 3 * (F / 12000) ** 2) * 600000 / F
    assert float(arm[:3]) == pytest.approx(edge, abs=50)
    made = files(('arm = "80 mm"', f'arm = "{edge + (-1 if outcome == "conforms" else 1):.2f} mm"'))
    assert workshop.write(made).only(FORCE).outcome == outcome


@pytest.mark.parametrize(("height", "outcome"), [("61.6 mm", "conforms"), ("60.8 mm", "finding")])
def test_faces_bear_their_proof_stress(workshop: DesignFolder, height: str, outcome: str) -> None:
    """374.7 + 163 kN over 314 MPa × 28 mm: 61.16 mm of face; above its proof stress it sets, a hold."""
    made = files(('bearing_height = "300 mm"', f'bearing_height = "{height}"'), part="face-back")
    check = workshop.write(made).only(FORCE)
    assert (check.outcome, check.grade) == (outcome, Grade.HOLD if outcome == "finding" else None)


def _of_three(made: dict[str, str], far: str) -> dict[str, str]:
    """Three bores of 326 kN each, their cranks at 0°, 105° and another angle; where nothing turns, no steam."""
    made["block.toml"] += "".join(f'[bores.{name}]\ndiameter = "500 mm"\n' for name in ("middle", "far"))
    cranks = {"main": "0 °", "middle": "105 °", "far": far}
    made["engine.toml"] = 'kind = "engine"\nid = "engine"\n' + "".join(
        f'[cranks.{name}]\nblock = "block"\nbore = "{name}"\nangle = "{angle}"\n'
        for name, angle in cranks.items()
    )
    head, *cases = made["duty.toml"].split("[cases.")
    for index, case in enumerate(cases):
        if case.startswith(("warming", "standing-hot", "cooling")):
            cases[index] = case.replace(f'"{PRESSURE:.6f} bar gauge"', '"0 bar gauge"')
    made["duty.toml"] = "[cases.".join((head, *cases))
    return made


@pytest.mark.parametrize(("far", "outcome"), [("210.5 °", "conforms"), ("209.5 °", "finding")])
def test_three_pistons_load_the_webs_from_thirty_degrees_before_dead_centre(
    workshop: DesignFolder, far: str, outcome: str
) -> None:
    """Steam pushes from 30° before a dead centre to the next: cranks within 210° push together.

    Two put 326 kN on each pad, three 489. With the growth's 374.7 kN on an arm of 130 mm √(46.94 + 20.83) × 1e-4 =
    2.603e-4/mm² gives 182.4 or 224.9 MPa, of 0.67 × 314 = 210.4.
    """
    made = _of_three(files(('arm = "80 mm"', 'arm = "130 mm"')), far)
    check = workshop.write(made).only(FORCE)
    assert (check.outcome, check.grade) == (outcome, Grade.NONCONFORMITY if outcome == "finding" else None)
    assert on_sheet(check, "F") == pytest.approx(374.7e3, rel=1e-3)


def test_rigid_pads_are_not_assumed_soft(workshop: DesignFolder) -> None:
    check = workshop.write(files(('stiffness = "1.5e6 N/mm"\n', ""))).only(FORCE)
    assert (check.outcome, check.grade) == ("not assessed", Grade.HOLD)


def test_one_locked_pad_has_none_of_it(workshop: DesignFolder) -> None:
    made = files(('"two locked"', '"one locked"'), ('takes = ["lengthwise", "weight"]', 'takes = ["weight"]'))
    workshop.write(made)
    assert workshop.only(SCHEME).outcome == "conforms"
    assert workshop.only(FORCE).outcome == "not applicable"
    assert workshop.only(GRIP).outcome == "not applicable"
    assert workshop.only(TRUE, "face-front").outcome == "not applicable"


def _gripping(width: str) -> dict[str, str]:
    made = files(("220.03 mm", width))
    for name in ("back", "front"):
        made[f"face-{name}.toml"] += 'slot_stiffness = "7.5e6 N/mm"\n'
    # the modulus of 207 GPa of the worked pad
    made["metals.toml"] = made["metals.toml"].replace("value = 195", "value = 207")
    return made


@pytest.mark.parametrize(("width", "outcome"), [("220.0215 mm", "conforms"), ("220.0208 mm", "finding")])
def test_the_grip_from_both_sides(workshop: DesignFolder, width: str, outcome: str) -> None:
    """Half of 163 kN is 81.5 kN: × (1/7.904e6 + 1/7.5e6) = 0.0212 mm of interference."""
    check = workshop.write(_gripping(width)).only(GRIP)
    assert (check.outcome, check.grade) == (outcome, Grade.HOLD if outcome == "finding" else None)


@pytest.mark.parametrize("silent", ["face-back", "face-front"])
@pytest.mark.parametrize("rule", [FORCE, GRIP])
def test_the_frame_is_that_of_either_cut_out(workshop: DesignFolder, rule: str, silent: str) -> None:
    """Whichever of the two says in which frame it is cut: what is worked does not hang on their order."""
    made = _gripping("220.05 mm")
    whole = workshop.write(made).only(rule)
    made[f"{silent}.toml"] = without_key(made[f"{silent}.toml"], "in_frame")
    check = workshop.write(made).only(rule)
    assert whole.utilisation is not None
    assert (check.outcome, check.utilisation) == (whole.outcome, whole.utilisation)


@pytest.mark.parametrize(("far", "outcome"), [("210.5 °", "conforms"), ("209.5 °", "finding")])
def test_three_pistons_loosen_a_pad_from_thirty_degrees_before_dead_centre(
    workshop: DesignFolder, far: str, outcome: str
) -> None:
    """Of half of 326 kN, by two pistons, and of 489, by three, × 0.25985e-6 mm/N: 0.0424 and 0.0635 mm.

    0.05 mm is there.
    """
    check = workshop.write(_of_three(_gripping("220.05 mm"), far)).only(GRIP)
    assert (check.outcome, check.grade) == (outcome, Grade.HOLD if outcome == "finding" else None)


def test_a_hundredth_is_too_little_without_bolts(workshop: DesignFolder) -> None:
    """0.010 mm: it lay within 0 to 0.05 mm, and that was all that was asked. Fitted bolts take the thrust off it."""
    made = _gripping("220.010 mm")
    assert workshop.write(made).only(GRIP).outcome == "finding"
    for name in ("back", "front"):
        made[f"fastening-{name}.toml"] = made[f"fastening-{name}.toml"].replace('"lugs"', '"fitted bolts"')
    assert workshop.write(made).only(GRIP).outcome == "conforms"


def _by_heat(key: str, usual: int, cool: int, hot: int) -> tuple[str, str]:
    """A figure of a metal, another up to the 70 °C of the frame than from the 160 of the block."""
    return (
        f"{key} = {{ degC = [-80, 420], value = {usual}",
        f"{key} = {{ degC = [-80, 70, 160, 420], value = [{cool}, {cool}, {hot}, {hot}]",
    )


def test_block_and_frame_are_each_of_their_own_heat(workshop: DesignFolder) -> None:
    """At the 160 °C of the block the frame's face would set at 60 MPa, below the 64.0 there, and give at 100 GPa.

    The block at the 70 °C of the frame would be stiffer by half. All stays as it is worked without them: 374.7 kN.
    """
    made = files()
    head, of_frame, rest = made["metals.toml"].partition("[frame-steel]")
    frame, of_others, others = rest.partition("[hot-steel]")
    block = changed(head, _by_heat("modulus", 195, 290, 195))
    frame = changed(frame, _by_heat("proof-stress", 314, 314, 60), _by_heat("modulus", 207, 207, 100))
    made["metals.toml"] = block + of_frame + frame + of_others + others
    check = workshop.write(made).only(FORCE)
    assert check.outcome == "conforms"
    assert on_sheet(check, "F") == pytest.approx(374.7e3, rel=1e-3)


def test_what_a_web_sets_is_gone_of_the_interference(workshop: DesignFolder) -> None:
    """Faces that give, 2 × 7.5e6 N/mm at each pad: 1/(1490/1533 + 2/15) = 0.905e6 N/mm, 1348 kN.

    Webs at 301.2 × 1348/1533 = 264.9 MPa by growth alone, of 250, set 1.490 × (1 − 250/264.9) = 0.0838 mm.
    """
    made = solid()
    made["metals.toml"] = made["metals.toml"].replace("value = 314", "value = 250")
    for name in ("back", "front"):
        made[f"face-{name}.toml"] += 'slot_stiffness = "7.5e6 N/mm"\n'
    check = workshop.write(made).only(GRIP)
    sets = [step.value for step in check.steps if step.symbol == "s"]
    assert max(one for one in sets if isinstance(one, float)) == pytest.approx(0.0838e-3, rel=0.01)


def test_a_pad_that_has_set_lets_go(workshop: DesignFolder) -> None:
    """Solid pads: webs at 265 of 200 MPa set 1.49 × (1 − 200/265) = 0.37 mm, and no interference is left."""
    made = solid()
    made["metals.toml"] = made["metals.toml"].replace("value = 314", "value = 200")
    for name in ("back", "front"):
        made[f"face-{name}.toml"] += 'slot_stiffness = "7.5e6 N/mm"\n'
    check = workshop.write(made).only(GRIP)
    assert (check.outcome, check.grade) == ("finding", Grade.HOLD)
    assert "used up by what the hottest case sets: nothing grips it" in check.says


def test_a_duty_of_some_of_the_hot_cases_judges_the_grip(workshop: DesignFolder) -> None:
    """One that states running alone; one that states no hot case cannot."""
    made = _gripping("220.05 mm")
    head, *cases = made["duty.toml"].split("[cases.")
    running = [one for one in cases if one.startswith("running")]
    made["duty.toml"] = "[cases.".join((head, *running))
    assert workshop.write(made).only(GRIP).outcome == "conforms"
    water = [one for one in cases if one.startswith("water")]
    made["duty.toml"] = "[cases.".join((head, *water))
    check = workshop.write(made).only(GRIP)
    assert (check.outcome, check.grade) == ("not assessed", Grade.HOLD)
    assert "no hot load case is stated" in check.says


@pytest.mark.parametrize(("width", "outcome"), [("220.0249 mm", "conforms"), ("220.0247 mm", "finding")])
def test_form_and_smoothing_from_both_sides(workshop: DesignFolder, width: str, outcome: str) -> None:
    """Ground faces flat to 0.01 mm, Rz 3 µm: 0.020 + 0.8 × 0.006 = 0.0248 mm."""
    made = files(("220.03 mm", width), ('flatness = "0 mm"', 'flatness = "0.01 mm"'))
    made["face-back.toml"] = made["face-back.toml"].replace('flatness = "0 mm"', 'flatness = "0.01 mm"')
    check = workshop.write(made).only(TRUE, "face-back")
    assert (check.outcome, check.grade) == (outcome, Grade.QUERY if outcome == "finding" else None)


@pytest.mark.parametrize(
    ("depth", "outcome"),
    [("18.7 µm", "conforms"), ("18.8 µm", "finding")],
)
def test_smoothing_alone_of_one_locked_pad_from_both_sides(
    workshop: DesignFolder, depth: str, outcome: str
) -> None:
    """0.03 mm of interference is smoothed away by 0.8 × 2 × 18.75 µm; flat faces, so that form takes nothing."""
    made = files(
        ('"two locked"', '"one locked"'),
        ('takes = ["lengthwise", "weight"]', 'takes = ["weight"]'),
        ('roughness = "3 µm"', f'roughness = "{depth}"'),
    )
    made["face-back.toml"] = made["face-back.toml"].replace('roughness = "3 µm"', f'roughness = "{depth}"')
    check = workshop.write(made).only(TRUE, "face-back")
    assert (check.outcome, check.grade) == (outcome, Grade.NONCONFORMITY if outcome == "finding" else None)


def test_a_locked_pad_of_unknown_roughness_is_not_taken_as_smooth(workshop: DesignFolder) -> None:
    made = files(('roughness = "3 µm"', ""))
    assert workshop.write(made).only(TRUE, "face-back").outcome == "not assessed"


def test_form_adds_to_the_greatest_interference(workshop: DesignFolder) -> None:
    """0.03 mm wants 2 × 0.15 × 195e9 × 0.03/220.03 × 8400 mm² = 67.0 kN for each pad; with 0.02 mm of form 111.7."""
    made = files(('flatness = "0 mm"', 'flatness = "0.01 mm"'))
    for name in ("back", "front"):
        made[f"face-{name}.toml"] = (
            made[f"face-{name}.toml"]
            .replace('flatness = "0 mm"', 'flatness = "0.01 mm"')
            .replace('"500 kN"', '"200 kN"')
            .replace('"0.10..0.15"', '"0.15"')
        )
    check = workshop.write(made).only("fit.locating-lugs", "face-back")
    assert check.outcome in ("finding", "not assessed")
    assert on_sheet(check, "F") == pytest.approx(2 * 111.67e3, rel=1e-3)


def test_two_carrying_pads_by_hand(workshop: DesignFolder) -> None:
    """2200 kg at 270 mm of 620: 12.18 and 9.40 kN, three times on 220.03 × 28 mm 5.93 MPa; 180 mm wide 7.25."""
    check = workshop.write(files()).only(CARRY)
    assert check.outcome == "conforms"
    assert check.utilisation == pytest.approx(1 - 270 / 620)  # of the front pad's share, of the whole weight
    assert on_sheet(check, "R_back") == pytest.approx(12.18e3, rel=1e-3)
    assert on_sheet(check, "R_front") == pytest.approx(9.40e3, rel=1e-3)
    assert [step.symbol for step in check.steps].count("R_back") == 1, "worked once where no thrust moves it"
    narrow = workshop.write(files(("220.03 mm", "180 mm"))).only(CARRY)
    assert on_sheet(narrow, "p_back") / 1e6 == pytest.approx(7.2, rel=1e-2)


@pytest.mark.parametrize(("width", "outcome"), [("43.6 mm", "conforms"), ("43.4 mm", "finding")])
def test_the_pressure_of_a_carrying_pad(workshop: DesignFolder, width: str, outcome: str) -> None:
    """3 × 12.179 kN over 30 MPa × 28 mm: 43.50 mm."""
    assert workshop.write(files(("220.03 mm", width))).only(CARRY).outcome == outcome


def _three(height: str) -> dict[str, str]:
    """Pads of 1e6 N/mm at 0, 310 and 620 mm with 10 kN each; the middle one at a height of its own."""
    made = files(("1.5e6 N/mm", "1e6 N/mm"), ('weight_at = "270 mm"', 'weight_at = "310 mm"'))
    made["weldment.toml"] = made["weldment.toml"].replace('"2200 kg"', f'"{30e3 / 9.80665:.4f} kg"')
    made["block.toml"] += (
        f'[pads.middle]\nat = "310 mm"\nwidth = "220 mm"\ntakes = ["weight"]\nstiffness = "1e6 N/mm"\n'
        f'carry_height = "{height}"\n'
    )
    made["face-middle.toml"] = (
        made["face-back.toml"].replace("face-back", "face-middle").replace('pad = "back"', 'pad = "middle"')
    )
    return made


@pytest.mark.parametrize(
    ("height", "outcome"),
    [
        ("0.0299 mm", "conforms"),
        ("0.0301 mm", "finding"),
        ("-0.0149 mm", "conforms"),
        ("-0.0151 mm", "finding"),
        ("0 mm ± 0.0149 mm", "conforms"),
        ("0 mm ± 0.0151 mm", "finding"),
    ],
)
def test_three_pads_want_one_plane(workshop: DesignFolder, height: str, outcome: str) -> None:
    """Each end loses k δ/3 of its 10 kN: nothing is left at 3 × 10 kN/1e6 N/mm = 0.030 mm; low, the middle 2 k δ/3."""
    assert workshop.write(_three(height)).only(CARRY).outcome == outcome


def test_a_tenth_high_lifts_both_ends(workshop: DesignFolder) -> None:
    """0.10 mm: 33 kN off each end."""
    check = workshop.write(_three("0.10 mm")).only(CARRY)
    assert (check.outcome, check.grade) == ("finding", Grade.NONCONFORMITY)
    assert on_sheet(check, "R_back") == pytest.approx(10e3 - 33.3e3, rel=1e-2)


def test_the_worst_of_three_pads_is_proved(workshop: DesignFolder) -> None:
    """Places, heights, stiffness and weights all with tolerances: few boxes enclose the loads, none is searched."""
    made = _three("0 mm ± 0.01 mm")
    made["block.toml"] = changed(
        made["block.toml"],
        ('at = "620 mm"', 'at = "620 mm ± 0.5 mm"'),
        ('at = "310 mm"\nwidth', 'at = "310 mm ± 0.5 mm"\nwidth'),
        ('weight_at = "310 mm"', 'weight_at = "310 mm ± 5 mm"'),
        ('diameter = "500 mm"', 'diameter = "500 mm ± 1 mm"\naxis_above_pads = "2 mm ± 1 mm"'),
    )
    made["block.toml"] = made["block.toml"].replace('"1e6 N/mm"', '"1e6 N/mm ± 1e5 N/mm"')
    made["weldment.toml"] = made["weldment.toml"].replace(' kg"', ' kg ± 50 kg"')
    check = workshop.write(made).only(CARRY)
    assert check.outcome == "conforms"
    assert {proof.method for proof in check.proofs.values()} <= {"enclosed", "split"}


@pytest.mark.parametrize(("height", "outcome"), [("0.0249 mm", "conforms"), ("0.0251 mm", "finding")])
def test_four_pads_want_one_plane(workshop: DesignFolder, height: str, outcome: str) -> None:
    """Like pads of 12.5 kN at 0, 200, 400 and 600 mm, the inner pair high by δ: an end loses k δ/2, all at 0.025 mm."""
    made = _three(height)
    made["block.toml"] = changed(
        made["block.toml"],
        ('at = "620 mm"', 'at = "600 mm"'),
        ('at = "310 mm"\nwidth', 'at = "200 mm"\nwidth'),
        ('weight_at = "310 mm"', 'weight_at = "300 mm"'),
    )
    fourth = made["block.toml"][made["block.toml"].index("[pads.middle]") :]
    made["block.toml"] += fourth.replace("pads.middle", "pads.fourth").replace('"200 mm"', '"400 mm"')
    made["face-fourth.toml"] = made["face-middle.toml"].replace("middle", "fourth")
    made["weldment.toml"] = made["weldment.toml"].replace(f"{30e3 / 9.80665:.4f}", f"{50e3 / 9.80665:.4f}")
    assert workshop.write(made).only(CARRY).outcome == outcome


def _above(height: str, *changes: tuple[str, str]) -> dict[str, str]:
    """The axis of the bore above, or below, the faces that take its thrust of 326 kN."""
    bore = ('diameter = "500 mm"', f'diameter = "500 mm"\naxis_above_pads = "{height}"')
    return files(bore, *changes)


@pytest.mark.parametrize(
    ("height", "outcome"),
    [("17.8 mm", "conforms"), ("17.95 mm", "finding"), ("-17.8 mm", "conforms"), ("-17.95 mm", "finding")],
)
def test_the_thrust_unloads_a_pad(workshop: DesignFolder, height: str, outcome: str) -> None:
    """9.395 kN on the front pad, 620 mm from the back one: 5.825 kN·m of 326 kN are 17.868 mm, above or below."""
    assert workshop.write(_above(height)).only(CARRY).outcome == outcome


@pytest.mark.parametrize(("width", "outcome"), [("49.9 mm", "conforms"), ("49.6 mm", "finding")])
def test_the_thrust_presses_a_pad(workshop: DesignFolder, width: str, outcome: str) -> None:
    """10 mm: 3.26 kN·m over 620 mm and 3 × 12.179 kN are 41.795 kN, over 30 MPa × 28 mm 49.76 mm."""
    assert workshop.write(_above("10 mm", ("220.03 mm", width))).only(CARRY).outcome == outcome


@pytest.mark.parametrize(("height", "outcome"), [("18.9 mm", "conforms"), ("19.1 mm", "finding")])
def test_the_thrust_unloads_one_of_three(workshop: DesignFolder, height: str, outcome: str) -> None:
    """An end of three like pads loses M/620 mm: 10 kN at 6.2 kN·m, 19.018 mm of 326 kN."""
    made = _three("0 mm")
    made["block.toml"] = changed(
        made["block.toml"],
        ('diameter = "500 mm"', f'diameter = "500 mm"\naxis_above_pads = "{height}"'),
    )
    assert workshop.write(made).only(CARRY).outcome == outcome


@pytest.mark.parametrize(("height", "outcome"), [("16.7 mm", "conforms"), ("16.8 mm", "finding")])
@pytest.mark.parametrize("pad", ["back", "front"])
def test_the_greatest_thrust_of_either_locked_pad_unloads(
    workshop: DesignFolder, pad: str, height: str, outcome: str
) -> None:
    """Buffing by gravity at one of the two adds 2200 × 9.80665 = 21.575 kN: 5.825 kN·m of 347.575 are 16.759 mm."""
    made = _above(height)
    made[f"fastening-{pad}.toml"] = changed(made[f"fastening-{pad}.toml"], ('shock = "0"', 'shock = "1"'))
    check = workshop.write(made).only(CARRY)
    assert check.outcome == outcome, check.says


@pytest.mark.parametrize(("height", "outcome"), [("3.9 mm", "conforms"), ("4.1 mm", "finding")])
def test_the_thrust_tips_a_block_on_one_pad(workshop: DesignFolder, height: str, outcome: str) -> None:
    """21.575 kN at 50 mm of half of 220.03: 60.015 mm more are 1.295 kN·m, 3.972 mm of 326 kN."""
    front = ('takes = ["lengthwise", "weight"]', 'takes = ["lengthwise"]')
    made = _above(height, ('weight_at = "270 mm"', 'weight_at = "50 mm"'), front)
    assert workshop.write(made).only(CARRY).outcome == outcome


def test_a_block_of_which_no_mass_is_drawn_has_no_known_load(workshop: DesignFolder) -> None:
    made = files()
    del made["weldment.toml"]
    check = workshop.write(made).only(CARRY)
    expect_not_assessed(check, "no mass of block and of what is on it is drawn")


def test_without_a_locked_pad_the_thrust_is_not_known(workshop: DesignFolder) -> None:
    check = workshop.write(_above("10 mm", ('"lengthwise", ', ""))).only(CARRY)
    assert check.outcome == "not assessed"


@pytest.mark.parametrize(("force", "outcome"), [("290 kN", "conforms"), ("289 kN", "finding")])
def test_the_means_draw_it_out(workshop: DesignFolder, force: str, outcome: str) -> None:
    """Both pads, 0.03 mm, 0.15: 2 × 67.00 kN; twice that and 21.57 kN of weight: 289.6 kN."""
    made = files(('"400 kN"', f'"{force}"'), part="fastening-back")
    check = workshop.write(made).only(OUT, "face-back")
    assert (check.outcome, check.grade) == (outcome, Grade.NONCONFORMITY if outcome == "finding" else None)


@pytest.mark.parametrize(("face", "outcome"), [("1385 mm²", "conforms"), ("1368 mm²", "finding")])
def test_the_means_press_on_face_enough(workshop: DesignFolder, face: str, outcome: str) -> None:
    """289.6 kN over 0.67 × 314 = 210.4 MPa: 1376.6 mm²."""
    made = files(('face = "4000 mm²"', f'face = "{face}"'), part="fastening-back")
    assert workshop.write(made).only(OUT, "face-back").outcome == outcome


@pytest.mark.parametrize(
    ("friction", "outcome"),
    [("0.051", "conforms"), ("0.0495", "finding"), ("0.01..0.02", "finding"), ("0.1..0.15", "conforms")],
)
def test_no_paste_lets_a_pad_come_out_as_on_ice(workshop: DesignFolder, friction: str, outcome: str) -> None:
    """Less than 0.05 is told at either pad, and counted at 0.05: 2 × 67.00 kN × 0.05/0.15 = 44.67 kN.

    The modulus, 3 % either way, is not at the same side for what is told and for what is counted.
    """
    made = files()
    for name in ("face-back.toml", "face-front.toml"):
        made[name] = made[name].replace('"0.10..0.15"', f'"{friction}"')
    check = workshop.write(made).only(OUT, "face-back")
    assert (check.outcome, check.grade) == (outcome, Grade.NONCONFORMITY if outcome == "finding" else None)
    if outcome == "finding":
        assert on_sheet(check, "F") == pytest.approx(44.67e3, rel=0.062)


def test_heat_frees_a_pad(workshop: DesignFolder) -> None:
    """0.045 mm: (0.045 + 0.03)/(12.3e-6 × 220.045) = 27.7 K."""
    heated = ('by = "jacks"', 'by = "heat"')
    made = files(heated, part="fastening-back")
    made["block.toml"] = made["block.toml"].replace("220.03 mm", "220.045 mm")
    check = workshop.write(made).only(OUT, "face-back")
    assert check.outcome == "conforms"
    assert on_sheet(check, "ΔT") == pytest.approx(27.7, abs=0.1)


@pytest.mark.parametrize(("width", "outcome"), [("220.29 mm", "conforms"), ("220.30 mm", "finding")])
def test_heat_from_both_sides(workshop: DesignFolder, width: str, outcome: str) -> None:
    """120 K × 12.3e-6 × 220.3 = 0.3252 mm, less 0.03."""
    made = files(('by = "jacks"', 'by = "heat"'), part="fastening-back")
    made["block.toml"] = made["block.toml"].replace("220.03 mm", width)
    assert workshop.write(made).only(OUT, "face-back").outcome == outcome


@pytest.mark.parametrize(("square", "outcome"), [("0.49 mm", "conforms"), ("0.51 mm", "finding")])
def test_the_chamfer_leads_in(workshop: DesignFolder, square: str, outcome: str) -> None:
    """A chamfer of 1 mm; by heat, so that form asks no force."""
    made = files(('squareness = "0 mm"', f'squareness = "{square}"'))
    made["face-back.toml"] = made["face-back.toml"].replace('flatness = "0 mm"\n', "")
    made["fastening-back.toml"] = made["fastening-back.toml"].replace('by = "jacks"', 'by = "heat"')
    assert workshop.write(made).only(OUT, "face-back").outcome == outcome


@pytest.mark.parametrize(("zone", "outcome"), [("0.0620 mm", "conforms"), ("0.0621 mm", "finding")])
def test_square_to_the_axis(workshop: DesignFolder, zone: str, outcome: str) -> None:
    """1120 + 330 = 1450 mm over 300 mm of face: 0.3 mm at 0.06207 mm; 0.05 mm gives 0.24."""
    check = workshop.write(files(('"0.02 mm"', f'"{zone}"'))).only(SQUARE, "face-back")
    assert (check.outcome, check.grade) == (outcome, Grade.NONCONFORMITY if outcome == "finding" else None)
    check = workshop.write(files(('"0.02 mm"', '"0.05 mm"'))).only(SQUARE, "face-back")
    assert found(check) * 1e3 == pytest.approx(0.242, abs=0.001)


def _on_one_axle(zone: str, driven: str = '["left", "right"]') -> dict[str, str]:
    """The block and one like it, that says its own zone, on the cranks of one axle."""
    made = files()
    for name in ("block", "face-back"):
        text = made[f"{name}.toml"].replace('"block"', '"block-right"').replace('"face-back"', '"face-right"')
        made[f"right-{name}.toml"] = text.replace('square_to_axis = "0.02 mm"', f'square_to_axis = "{zone}"')
    made["engine.toml"] = """
kind = "engine"
id = "engine"
cranks.left = { block = "block", bore = "main" }
cranks.right = { block = "block-right", bore = "main" }
"""
    made["axle.toml"] = f'kind = "driving-axle"\nid = "axle"\nengine = "engine"\ndriven_by = {driven}\n'
    return made


@pytest.mark.parametrize(("zone", "outcome"), [("0.0420 mm", "conforms"), ("0.0421 mm", "finding")])
@pytest.mark.parametrize("face", ["face-back", "face-right"])
def test_both_blocks_together_against_the_axle(
    workshop: DesignFolder, zone: str, outcome: str, face: str
) -> None:
    """0.02 and 0.04207 mm over 300: at 1450 mm 0.0967 and 0.2033 mm, which passed alone, are 0.3 mm together."""
    workshop.write(_on_one_axle(zone))
    check = workshop.only(SQUARE, face)
    assert (check.outcome, check.grade) == (outcome, Grade.NONCONFORMITY if outcome == "finding" else None)
    assert found(check) * 1e3 == pytest.approx(0.300, abs=0.0005)


def test_blocks_on_two_axles_are_not_added(workshop: DesignFolder) -> None:
    """0.02 mm alone gives 0.0967 mm; the coupling rods leave each axle to be set for itself."""
    workshop.write(_on_one_axle("0.06 mm", '["left"]'))
    check = workshop.only(SQUARE, "face-back")
    assert check.outcome == "conforms"
    assert found(check) * 1e3 == pytest.approx(0.0967, abs=0.0001)


def test_a_block_that_turns_no_drawn_axle_stands_alone(workshop: DesignFolder) -> None:
    """Of 0.06 mm over 300 at 1450 mm 0.29 mm: the other block turns the axle, and it does not."""
    check = workshop.write(_on_one_axle("0.06 mm", '["left"]')).only(SQUARE, "face-right")
    assert found(check) * 1e3 == pytest.approx(0.29, abs=0.0001)


def test_a_block_without_a_drawn_pad_is_not_taken_as_square(workshop: DesignFolder) -> None:
    made = _on_one_axle("0.02 mm")
    del made["right-face-back.toml"]
    check = workshop.write(made).only(SQUARE, "face-back")
    assert check.outcome == "not assessed"
    assert "block-right" in check.says


@given(k=st.floats(1e7, 1e11), Δ=st.floats(-2e-3, 2e-3), more=st.floats(1e7, 1e11))
def test_a_softer_web_never_presses_harder(k: float, Δ: float, more: float) -> None:
    assert force_of_growth(in_series(k, more), Δ) <= force_of_growth(k, Δ)


@given(F=st.floats(1e3, 2e6), arm=st.floats(0, 0.3), more=st.floats(1, 2))
def test_more_force_stresses_a_web_more(F: float, arm: float, more: float) -> None:
    assert stress_of_web(F * more, 12e-3, arm, 6e-4) >= stress_of_web(F, 12e-3, arm, 6e-4)


@given(
    x=st.floats(0.05, 0.55),
    heights=st.lists(st.floats(-1e-4, 1e-4), min_size=3, max_size=3),
    stiff=st.lists(st.floats(1e8, 1e10), min_size=3, max_size=3),
    G=st.floats(1e3, 1e5),
)
def test_loads_of_three_pads_carry_the_weight(
    x: float, heights: list[float], stiff: list[float], G: float
) -> None:
    """Statics, and the same loads as a stiff block on springs gives, pad by pad."""
    places = (0.0, 0.25, 0.62)
    S_0 = S_1 = S_2 = H_0 = H_1 = 0.0
    for at, h, k in zip(places, heights, stiff, strict=True):
        S_0, S_1, S_2 = S_0 + k, moment_added(S_1, k, at), product_added(S_2, k, at, at)
        H_0, H_1 = moment_added(H_0, k, h), product_added(H_1, k, h, at)
    b = tilt_of_block(G, x, S_0, S_1, S_2, H_0, H_1)
    a = sinking_of_block(G, H_0, b, S_1, S_0)
    loads = [load_of_pad(k, h, a, b, at) for at, h, k in zip(places, heights, stiff, strict=True)]
    assert sum(loads) == pytest.approx(G, rel=1e-6, abs=1.0)
    assert sum(one * at for one, at in zip(loads, places, strict=True)) == pytest.approx(
        G * x, rel=1e-6, abs=1.0
    )
    for own, one in enumerate(loads):
        j, k_ = (other for other in range(3) if other != own)
        p, q = (
            share_on_line(places[own], *far) for far in ((places[j], places[k_]), (places[k_], places[j]))
        )
        s_j, s_k = (share_on_line(x, *far) for far in ((places[j], places[k_]), (places[k_], places[j])))
        gap = {
            "e": out_of_line(heights[own], p, heights[j], q, heights[k_]),
            "w": sinking_of_line(p, s_j, stiff[j], q, s_k, stiff[k_]),
            "c": give_of_three(stiff[own], p, stiff[j], q, stiff[k_]),
        }
        assert load_of_three(G=G, **gap) == pytest.approx(one, rel=1e-6, abs=1.0)
        assert share_of_three(G=G, **gap) * G == pytest.approx(one, rel=1e-6, abs=1.0)


def test_a_case_that_pushes_no_piston_unloads_no_pad(workshop: DesignFolder) -> None:
    """Standing hot with three times the pressure: the couple is that of the 326 kN of the cases that push."""
    made = _above("17.8 mm")
    head, own, tail = made["duty.toml"].partition("[cases.standing-hot]")
    case, other, rest = tail.partition("[cases.")
    case = case.replace(f"{PRESSURE:.6f}", f"{3 * PRESSURE:.6f}")
    made["duty.toml"] = head + own + case + other + rest
    check = workshop.write(made).only(CARRY)
    assert check.outcome == "conforms", check.says
    assert on_sheet(check, "M") == pytest.approx(326e3 * 0.0178, rel=1e-3)
