"""heat.pad-temperature and heat.chamber-temperature: ways of heat through metal, worked by hand with λ = 45 W/(m·K)."""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st
from scipy.special import kv

from speclint import Grade
from speclint.testing import DesignFolder, changed, on_sheet
from speclint_steamways.formulae.conducted import between, path_resistance, surface_resistance
from speclint_steamways.formulae.plate_fins import fin_argument, plate_spreading_resistance, round_foot
from tests.plugins.known_metals import METALS, WITH_METALS
from tests.plugins.steamways.exhaust import STEEL

PAD, CHAMBER = "heat.pad-temperature", "heat.chamber-temperature"

DUTY = """
kind = "duty"
id = "duty"
[cases.running]
ambient_temperature = "20 °C"
hottest_ambient = "30 °C"
[cases.running.temperatures]
cylinder-block = "260 °C"
locating-face = "70..100 °C"
pads = "90..115 °C"
compression-spring = "80..90 °C"
[cases.standing-hot]
ambient_temperature = "20 °C"
hottest_ambient = "30 °C"
[cases.standing-hot.temperatures]
cylinder-block = "150 °C"
locating-face = "55..70 °C"
pads = "58..70 °C"
compression-spring = "80..90 °C"
"""
BLOCK = """
kind = "cylinder-block"
id = "block"
material = "steel-45"
duty = "duty"
[pads.back.path]
section = "0.012 m²"
length = "150 mm"
contact_area = "0.062 m²"
"""
FACE = """
kind = "locating-face"
id = "face"
material = "steel-45"
locks = "block"
pad = "back"
bearing_depth = "28 mm"
pad_temperature = "pads"
"""
VALVE = 'kind = "poppet-valve"\nid = "valve"\nmaterial = "steel-45"\n'
SPRING = 'kind = "compression-spring"\nid = "spring"\nmaterial = "known-wire"\ncloses = "valve"\n'
COVER = """
kind = "chamber-cover"
id = "cover"
material = "steel-45"
closes = "block"
over = "valve"
path = { section = "0.003 m²", length = "120 mm" }
chamber = { cooled_area = "0.25 m²" }
"""
BOX = """
kind = "cam-box"
id = "box"
material = "steel-45"
mounted_on = "block"
path = { section = "0.003 m²", length = "120 mm" }
chamber = { cooled_area = "0.25 m²" }
lubrication = { lubricant = "engine oil", flash_point = "200 °C" }
"""
TAPPET = 'kind = "tappet"\nid = "tappet"\nmaterial = "steel-45"\nworks = "spindle"\ncarried_in = "box"\n'
SPINDLE = (
    'kind = "valve-spindle"\nid = "spindle"\nmaterial = "steel-45"\nmoves = "valve"\ndiameter = "22 mm"\n'
    'seal_temperature = "120 °C"\n'
)
TEXTS = {
    "duty": DUTY,
    "block": BLOCK,
    "face": FACE,
    "valve": VALVE,
    "spring": SPRING,
    "cover": COVER,
}


def files(part: str = "", *changes: tuple[str, str], **more: str) -> dict[str, str]:
    texts = {**TEXTS, **more}
    if part:
        texts[part] = changed(texts[part], *changes)
    found = {f"{name}.toml": text for name, text in texts.items()}
    return {**found, "metals.toml": METALS + STEEL, "speclint.toml": WITH_METALS}


def test_the_path_of_the_page_by_hand() -> None:
    """h = 15 and h_c = 3000: 0.278 + 0.005 + 0.115 K/W, pad 93 and frame 89 °C; the solid pad 214 °C."""
    R_p, R_c = path_resistance(0.15, 45.0, 0.012), surface_resistance(3000.0, 0.062)
    x = fin_argument(round_foot(0.062), 15.0, 45.0, 0.028)
    R_f = plate_spreading_resistance(x, 45.0, 0.028)
    assert (R_p, R_c, R_f) == pytest.approx((0.2778, 0.00538, 0.1151), rel=1e-2)
    assert between(293.15, 533.15, R_p, R_c + R_f) - 273.15 == pytest.approx(92.6, abs=0.1)
    assert between(293.15, 533.15, R_p + R_c, R_f) - 273.15 == pytest.approx(89.4, abs=0.1)
    solid = path_resistance(0.08, 45.0, 0.062)
    assert between(293.15, 533.15, solid, R_c + R_f) - 273.15 == pytest.approx(213.9, abs=0.1)


def test_the_band_of_a_pad_by_hand(workshop: DesignFolder) -> None:
    """Running: R_f by scipy 0.0813 (40) and 0.1314 K/W (10), R_c 0.00269 and 0.01075.

    Pad 20 + 240 × 0.0840/0.3618 = 75.7 to 20 + 240 × 0.1421/0.4199 = 101.2 °C; frame 72.7 to 96.6 °C.
    """
    check = workshop.write(files()).only(PAD)
    assert check.outcome == "conforms"
    assert on_sheet(check, "T_p1") - 273.15 == pytest.approx(75.7, abs=0.1)
    assert on_sheet(check, "T_p2") - 273.15 == pytest.approx(101.2, abs=0.1)
    low = 20 + 240 * 0.08129 / (0.27778 + 0.01075 + 0.08129)
    high = 20 + 240 * 0.13137 / (0.27778 + 0.00269 + 0.13137)
    assert on_sheet(check, "T_f1") - 273.15 == pytest.approx(low, abs=0.1)
    assert on_sheet(check, "T_f2") - 273.15 == pytest.approx(high, abs=0.1)


def test_what_stands_between_pad_and_air_by_hand(workshop: DesignFolder) -> None:
    """Joint 1/(6000 × 0.062) = 0.0026882 and 1/(1500 × 0.062) = 0.0107527 K/W; frame by scipy with 40, 10 W/(m²·K).

    r = √(0.062/π) = 0.140482 m; x = r √(2 h/(45 × 0.028)); R_f = K_0(x)/(2 π × 45 × 0.028 x K_1(x)).
    """
    check = workshop.write(files()).only(PAD)
    joints = [step.value for step in check.steps if step.symbol == "R_c"]
    assert joints == pytest.approx([0.00268817, 0.0107527], rel=1e-5)
    frames = []
    for h in (40.0, 10.0):
        x = 0.140482 * (2 * h / (45 * 0.028)) ** 0.5
        frames.append(kv(0, x) / (2 * 3.14159265 * 45 * 0.028 * x * kv(1, x)))
    assert [step.value for step in check.steps if step.symbol == "R_f"] == pytest.approx(frames, rel=1e-5)


def test_the_band_goes_by_the_coldest_and_the_hottest_of_block_and_air(workshop: DesignFolder) -> None:
    """Air 10 to 30, block 250 to 270 °C, the ways as above: 0.27778, then 0.08398 or 0.14212 K/W to the air.

    Pad 10 + 240 × 0.08398/0.36176 = 65.7 to 30 + 240 × 0.14212/0.41990 = 111.2 °C; frame 10 + 240 × 0.08129/0.36982 =
    62.8 to 30 + 240 × 0.13137/0.41184 = 106.6 °C.
    """
    made = files()
    made["duty.toml"] = (
        made["duty.toml"]
        .replace('ambient_temperature = "20 °C"', 'ambient_temperature = "10..30 °C"', 1)
        .replace('"260 °C"', '"250..270 °C"')
    )
    check = workshop.write(made).only(PAD)
    for symbol, celsius in (("T_p1", 65.7), ("T_p2", 111.2), ("T_f1", 62.8), ("T_f2", 106.6)):
        assert on_sheet(check, symbol) - 273.15 == pytest.approx(celsius, abs=0.1), symbol


def test_a_solid_pad_is_hotter_than_it_was_stated(workshop: DesignFolder) -> None:
    """0.062 m² × 0.08 m, stated 90 to 115 °C as before: worked 199 °C and more."""
    made = files("block", ('"0.012 m²"', '"0.062 m²"'), ('"150 mm"', '"80 mm"'))
    check = workshop.write(made).only(PAD)
    assert (check.outcome, check.grade) == ("finding", Grade.NONCONFORMITY)


@pytest.mark.parametrize(
    ("stated", "outcome", "grade"),
    [
        ("50.9..115 °C", "conforms", None),  # 75.7 − 25 = 50.7
        ("50.5..115 °C", "finding", Grade.QUERY),
        ("40..50.9 °C", "finding", Grade.QUERY),
        ("40..50.5 °C", "finding", Grade.NONCONFORMITY),
        ("90..126 °C", "conforms", None),  # 101.2 + 25 = 126.2
        ("90..126.4 °C", "finding", Grade.QUERY),
    ],
)
def test_the_pad_from_both_sides(
    workshop: DesignFolder, stated: str, outcome: str, grade: Grade | None
) -> None:
    check = workshop.write(files("duty", ('"90..115 °C"', f'"{stated}"'))).only(PAD)
    assert (check.outcome, check.grade) == (outcome, grade)


@pytest.mark.parametrize(("stated", "outcome"), [("37.5..70 °C", "conforms"), ("37.1..70 °C", "finding")])
def test_the_air_beside_a_frame_that_stands_is_still(
    workshop: DesignFolder, stated: str, outcome: str
) -> None:
    """Block 150 °C, R_f 0.13137 K/W at either end: 20 + 130 × 0.13406/0.41184 = 62.3 °C, less 25 K.

    In moving air, of 0.08129 K/W, it would be 20 + 130 × 0.08398/0.36176 = 50.2 °C.
    """
    check = workshop.write(files("duty", ('"58..70 °C"', f'"{stated}"'))).only(PAD)
    assert (check.outcome, check.case if outcome == "finding" else "standing-hot") == (
        outcome,
        "standing-hot",
    )
    assert check.grade is (Grade.QUERY if outcome == "finding" else None)


def test_the_frame_beside_the_pad_is_asked_too(workshop: DesignFolder) -> None:
    """72.7 − 25 = 47.7 °C."""
    made = files(
        "duty", ('locating-face = "70..100 °C"\npads = "90', 'locating-face = "20..40 °C"\npads = "90')
    )
    assert workshop.write(made).only(PAD).grade is Grade.NONCONFORMITY


@pytest.mark.parametrize(
    "missing", ['section = "0.012 m²"', 'length = "150 mm"', 'contact_area = "0.062 m²"']
)
def test_the_path_must_be_stated(workshop: DesignFolder, missing: str) -> None:
    assert workshop.write(files("block", (missing, ""))).only(PAD).outcome == "not assessed"


def test_a_sound_spring_chamber(workshop: DesignFolder) -> None:
    """R_s = 0.12/(45 × 0.003) = 0.889; running R_a = 1/(15 × 0.25) = 0.267: 30 + 230 × 0.2308 = 83 °C."""
    check = workshop.write(files()).only(CHAMBER, "cover")
    assert check.outcome == "conforms"
    assert check.case == "running"
    assert on_sheet(check, "T") - 273.15 == pytest.approx(83.1, abs=0.1)


def test_a_boxed_in_chamber_is_too_hot(workshop: DesignFolder) -> None:
    """0.12 m², standing, block 260: R_a = 1/(8 × 0.12) = 1.042; 30 + 230 × 0.5396 = 154 °C, stated as 80 to 90."""
    made = files("cover", ('"0.25 m²"', '"0.12 m²"'))
    made["duty.toml"] = made["duty.toml"].replace('"150 °C"', '"260 °C"')
    check = workshop.write(made).only(CHAMBER, "cover")
    assert (check.outcome, check.grade, check.case) == ("finding", Grade.QUERY, "standing-hot")
    assert on_sheet(check, "T") - 273.15 == pytest.approx(154.1, abs=0.1)


@pytest.mark.parametrize(("block", "outcome"), [("345 °C", "conforms"), ("348 °C", "finding")])
def test_the_wire_bears_no_more(workshop: DesignFolder, block: str, outcome: str) -> None:
    """0.12 m², standing: 30 + (T_b − 30) × 0.5396 = 200 °C of the wire at 345.1 °C; stated as hot as it is."""
    made = files("cover", ('"0.25 m²"', '"0.12 m²"'))
    made["duty.toml"] = (
        made["duty.toml"].replace('"150 °C"', f'"{block}"').replace('"80..90 °C"', '"190..200 °C"')
    )
    check = workshop.write(made).only(CHAMBER, "cover")
    assert (check.outcome, check.grade) == (outcome, None if outcome == "conforms" else Grade.NONCONFORMITY)


@pytest.mark.parametrize(("stated", "outcome"), [("60..68.3 °C", "conforms"), ("60..67.9 °C", "finding")])
def test_what_the_duty_states_of_the_springs(workshop: DesignFolder, stated: str, outcome: str) -> None:
    """Running 83.08 °C less 15 K."""
    made = files("duty", ('"80..90 °C"\n[cases.standing', f'"{stated}"\n[cases.standing'))
    check = workshop.write(made).only(CHAMBER, "cover")
    assert (check.outcome, check.grade) == (outcome, None if outcome == "conforms" else Grade.QUERY)


@pytest.mark.parametrize(("stated", "outcome"), [("60..68.3 °C", "conforms"), ("60..67.9 °C", "finding")])
def test_a_spring_nested_in_one_that_is_nested_is_asked_too(
    workshop: DesignFolder, stated: str, outcome: str
) -> None:
    """Three springs one in another: of the innermost the duty states another temperature; 83.08 °C less 15 K."""
    nested = {
        name: SPRING.replace('id = "spring"', f'id = "{name}"').replace(
            'closes = "valve"', f'nested_in = "{within}"'
        )
        for name, within in (("middle", "spring"), ("inner", "middle"))
    }
    made = files(**nested)
    made["duty.toml"] = made["duty.toml"].replace(
        'compression-spring = "80..90 °C"\n[cases.standing',
        f'compression-spring = "80..90 °C"\ninner = "{stated}"\n[cases.standing',
    )
    check = workshop.write(made).only(CHAMBER, "cover")
    assert (check.outcome, check.grade) == (outcome, None if outcome == "conforms" else Grade.QUERY)


def test_a_spindle_leads_heat_beside_the_stool(workshop: DesignFolder) -> None:
    """22 mm are 380 mm²: R_s = 0.12/(45 × 0.00338) = 0.789; running 30 + 230 × 0.2667/1.0557 = 88.1 °C."""
    made = files(spindle=SPINDLE)
    check = workshop.write(made).only(CHAMBER, "cover")
    assert on_sheet(check, "R_s") == pytest.approx(0.789, rel=1e-3)


@pytest.mark.parametrize(
    ("part", "old", "new", "outcome"),
    [
        ("box", '"200 °C"', '"118.3 °C"', "conforms"),  # 118.3 − 30 ≥ 88.1
        ("box", '"200 °C"', '"117.9 °C"', "finding"),
        ("spindle", '"120 °C"', '"88.3 °C"', "conforms"),
        ("spindle", '"120 °C"', '"87.9 °C"', "finding"),
    ],
)
def test_oil_and_seals_of_a_cam_box(
    workshop: DesignFolder, part: str, old: str, new: str, outcome: str
) -> None:
    made = files(part, (old, new), box=BOX, tappet=TAPPET, spindle=SPINDLE)
    check = workshop.write(made).only(CHAMBER, "box")
    assert (check.outcome, check.grade) == (outcome, None if outcome == "conforms" else Grade.NONCONFORMITY)


def test_a_seal_without_a_rating_is_not_asked(workshop: DesignFolder) -> None:
    unrated = SPINDLE.replace('seal_temperature = "120 °C"\n', "")
    check = workshop.write(files(box=BOX, tappet=TAPPET, spindle=unrated)).only(CHAMBER, "box")
    assert check.outcome == "conforms"


def test_springs_without_a_cover_of_their_own_are_asked_with_the_box(workshop: DesignFolder) -> None:
    made = files(box=BOX, tappet=TAPPET, spindle=SPINDLE)
    del made["cover.toml"]
    made["duty.toml"] = made["duty.toml"].replace('"80..90 °C"', '"50..60 °C"')
    assert workshop.write(made).only(CHAMBER, "box").grade is Grade.QUERY


def test_a_cover_without_springs_is_none_of_it(workshop: DesignFolder) -> None:
    made = files()
    del made["spring.toml"]
    assert workshop.write(made).only(CHAMBER, "cover").outcome == "not applicable"


@pytest.mark.parametrize(
    "missing", ['path = { section = "0.003 m²", length = "120 mm" }', 'chamber = { cooled_area = "0.25 m²" }']
)
def test_the_chamber_must_be_stated(workshop: DesignFolder, missing: str) -> None:
    assert workshop.write(files("cover", (missing, ""))).only(CHAMBER, "cover").outcome == "not assessed"


@given(x=st.floats(0.01, 10))
def test_the_fin_against_scipy(x: float) -> None:
    by_scipy = kv(0, x) / (2 * 3.141592653589793 * 45.0 * 0.028 * x * kv(1, x))
    assert plate_spreading_resistance(x, 45.0, 0.028) == pytest.approx(by_scipy, rel=1e-9)


@given(R_1=st.floats(1e-3, 2), R_2=st.floats(1e-3, 2), hot=st.floats(310, 700))
def test_every_place_lies_between_air_and_block(R_1: float, R_2: float, hot: float) -> None:
    assert 300 < between(300.0, hot, R_1, R_2) < hot
