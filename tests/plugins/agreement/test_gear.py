"""The gear of a valve and its spring: each agreement from both sides, and a wrong copy that eases no hold."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint import Grade
from speclint.testing import DesignFolder, changed, found, on_sheet
from tests.plugins.valves.gear import train_files

HOLD = ("finding", Grade.HOLD)
WRONG = ("finding", Grade.NONCONFORMITY)
FINE = ("conforms", None)
SILENT = ("not applicable", None)
#: A ramp of 1 mm and 19.6 mm above it, less 0.4 mm of clearance: 20.2 mm of lift, at most 20.6.
RAMP = (('lift = "20 mm"', 'lift = "19.6 mm"'), ('ramp_height = "0.001 mm"', 'ramp_height = "1 mm"'))
#: A spring whose sizes give 46.007 N/mm and, 24 mm shorter than free, 1104.2 N.
SIZES = """
wire = "8 mm"
mean_diameter = "48 mm"
working_coils = "8"
free_length = "140 mm"
shut_length = "116 mm"
open_length = "96 mm"
loading = "alternating"
process = "cold"
ends = "ground"
total_coils = "10"
quality_grade = "2"
stroke_strength = "450 MPa"
broken_half_caught = false
"""
SPRING = (
    ("1100 N ±0.0001", "1100 N ±5 %"),
    ('rate = "40 N/mm"', f'rate = "46 N/mm"\ninspection_document = "3.1"\n{SIZES}'),
)


def trained() -> dict[str, str]:
    """A valve with its whole train, and a spring that states its sizes."""
    return train_files(cam=RAMP, spring=SPRING, valve=(('overtravel = "0.5 mm"', 'overtravel = "0.6 mm"'),))


@pytest.fixture
def design(tmp_path: Path) -> DesignFolder:
    return DesignFolder(tmp_path).write(trained())


def outcome(design: DesignFolder, rule: str, component: str = "") -> tuple[str, Grade | None]:
    check = design.only(rule, component)
    return check.outcome, check.grade


@pytest.mark.parametrize(
    ("file", "old", "new", "ends"),
    [
        ("valve.toml", 'lift = "20 mm"', 'lift = "20.2 mm"', FINE),
        ("valve.toml", 'lift = "20 mm"', 'lift = "20.3 mm"', HOLD),
        ("valve.toml", 'lift = "20 mm"', 'lift = "20.4 mm ±0.2"', FINE),
        ("cam.toml", 'lift = "19.6 mm"', 'lift = "19.4 mm"', FINE),
        ("cam.toml", 'lift = "19.6 mm"', 'lift = "19.3 mm"', HOLD),
        ("cam.toml", 'lift = "19.6 mm"', 'lift = "21 mm"', HOLD),
        ("tappet.toml", 'clearance = "0.4 mm"', 'clearance = "0.7 mm"', HOLD),
        ("valve.toml", 'overtravel = "0.6 mm"', 'overtravel = "0.5 mm"', HOLD),
        ("valve.toml", 'overtravel = "0.6 mm"', "", FINE),
        ("valve.toml", 'lift_stop = "21 mm"', 'lift_stop = "20.6 mm"', FINE),
        ("valve.toml", 'lift_stop = "21 mm"', 'lift_stop = "20.5 mm"', HOLD),
    ],
)
def test_the_cam_gives_the_lift(
    design: DesignFolder, file: str, old: str, new: str, ends: tuple[str, Grade | None]
) -> None:
    design.replace(file, old, new)
    assert outcome(design, "valve.cam-gives-lift") == ends


def test_a_rocker_multiplies_the_lift(design: DesignFolder) -> None:
    """Arms of 60 and 50 mm: 1.2 × 20.6 = 24.72 mm at the most, beyond the stop at 21."""
    rocker = (
        'kind = "rocker"\nid = "rocker"\nmaterial = "known-steel"\nworks = "spindle"\ncarried_in = "box"\n'
    )
    arms = 'valve_arm = "60 mm"\ntappet_arm = "50 mm"\n'
    (design.root / "rocker.toml").write_text(rocker + arms, encoding="utf-8")
    design.replace("tappet.toml", 'works = "spindle"', 'works = "rocker"')
    check = design.only("valve.cam-gives-lift")
    assert (check.outcome, check.grade) == HOLD
    assert on_sheet(check, "h_o") == pytest.approx(0.02472)


def test_a_small_overtravel_opens_no_room(design: DesignFolder) -> None:
    """The gear goes to 20.6 mm: 0.6 beyond full lift, whatever is stated; 5 − 0.6 = 4.4 mm are left, all at 20 °C."""
    design.replace("valve.toml", 'overtravel = "0.6 mm"', 'overtravel = "0 mm"')
    assert found(design.only("valve.foul-clearance")) == pytest.approx(0.0044)
    design.replace("valve.toml", 'lift_stop = "21 mm"', 'lift_stop = "20.5 mm"')
    assert outcome(design, "valve.lift-stop") == WRONG


def test_a_cam_by_table_gives_its_greatest_lift(design: DesignFolder) -> None:
    design.replace("cam.toml", 'law = "harmonic"', 'table_step = "90 °"\ntable = ["0 mm", "20.6 mm", "0 mm"]')
    assert outcome(design, "valve.cam-gives-lift") == FINE
    design.replace("cam.toml", '"20.6 mm"', '"21.1 mm"')
    assert outcome(design, "valve.cam-gives-lift") == HOLD


#: 200 + 180 − 379.6 mm: what block, box and spindle leave, without a screw.
CLOSING = (('clearance_setting = "0 mm"\n', ""),)


@pytest.mark.parametrize(("spindle", "ends"), [("379.6 mm", FINE), ("379.58 mm", HOLD), ("379 mm", HOLD)])
def test_the_lengths_leave_the_clearance(
    design: DesignFolder, spindle: str, ends: tuple[str, Grade | None]
) -> None:
    design.replace("tappet.toml", *CLOSING[0])
    design.replace("spindle.toml", 'heated_length = "400 mm"', f'heated_length = "{spindle}"')
    assert outcome(design, "tappet.lengths-close") == ends


def test_a_stated_clearance_hides_no_long_spindle(design: DesignFolder) -> None:
    """380.1 mm leave −0.1 mm, worn −0.2: the valve is held off its seat, though 0.4 mm are stated."""
    design.replace("tappet.toml", *CLOSING[0])
    design.replace("spindle.toml", 'heated_length = "400 mm"', 'heated_length = "380.1 mm"')
    check = design.only("tappet.clearance-hot")
    assert (check.outcome, check.grade) == HOLD
    assert found(check) == pytest.approx(-0.0002)
    design.replace("tappet.toml", 'clearance = "0.4 mm"\n', "")
    assert found(design.only("tappet.clearance-hot")) == pytest.approx(-0.0002)
    assert outcome(design, "tappet.lengths-close") == SILENT


def test_a_ground_cap_makes_up_the_length(design: DesignFolder) -> None:
    """200 + 180 − 380.2 + 0.6 = 0.4 mm; what is set is the stated clearance."""
    design.replace("tappet.toml", *CLOSING[0])
    design.replace(
        "spindle.toml",
        'heated_length = "400 mm"',
        'heated_length = "380.2 mm"\ncap_ground_off = "0.6 mm ±0.3"',
    )
    assert outcome(design, "tappet.lengths-close") == FINE
    assert on_sheet(design.only("tappet.clearance-hot"), "c_w") == pytest.approx(0.0003)
    design.replace("spindle.toml", '"0.6 mm ±0.3"', '"0.5 mm ±0.3"')
    assert outcome(design, "tappet.lengths-close") == HOLD


def test_a_screw_needs_no_lengths(design: DesignFolder) -> None:
    assert outcome(design, "tappet.lengths-close") == SILENT


@pytest.mark.parametrize(("face", "ends"), [("25 mm", FINE), ("24.9 mm", WRONG)])
def test_the_tappet_covers_the_cam(design: DesignFolder, face: str, ends: tuple[str, Grade | None]) -> None:
    design.replace("tappet.toml", 'face_width = "30 mm"', f'face_width = "{face}"')
    assert outcome(design, "cam.under-its-tappet") == ends


#: A second track of the cam, beside the first.
OTHER_TRACK = (('id = "cam"', 'id = "other"\ntrack = "20"'),)


def two_tracks() -> dict[str, str]:
    """The train of a valve whose tappet two tracks lift, both with a base circle of 60 mm."""
    files = trained()
    first = changed(files["cam.toml"], ('id = "cam"', 'id = "cam"\ntrack = "65"'))
    return {**files, "cam.toml": first, "other.toml": changed(files["cam.toml"], *OTHER_TRACK)}


@pytest.mark.parametrize(
    ("radius", "ends"),
    [
        ("60.01 mm", FINE),
        ("60.0101 mm", HOLD),
        ("59.99 mm", FINE),
        ("59.9899 mm", HOLD),
        ("60 mm ±0.05", FINE),
        ("60.5 mm", HOLD),
    ],
)
def test_tracks_of_one_tappet_have_one_base_circle(
    tmp_path: Path, radius: str, ends: tuple[str, Grade | None]
) -> None:
    """0.01 mm may lie between them; what is compared is what the drawings aim at."""
    design = DesignFolder(tmp_path).write(two_tracks())
    design.replace("other.toml", 'base_radius = "60 mm"', f'base_radius = "{radius}"')
    assert outcome(design, "cam.one-base-circle", "other") == ends
    assert outcome(design, "cam.one-base-circle", "cam") == ends


def test_a_track_of_another_tappet_may_be_larger(tmp_path: Path) -> None:
    design = DesignFolder(tmp_path).write(two_tracks())
    design.replace("other.toml", 'lifts = "tappet"', 'lifts = "next"')
    design.replace("other.toml", 'base_radius = "60 mm"', 'base_radius = "70 mm"')
    next_tappet = changed(two_tracks()["tappet.toml"], ('id = "tappet"', 'id = "next"'))
    (design.root / "next.toml").write_text(next_tappet, encoding="utf-8")
    assert outcome(design, "cam.one-base-circle", "other") == SILENT


@pytest.mark.parametrize(
    ("opened", "ends"), [("96 mm", FINE), ("96.1 mm", FINE), ("96.2 mm", HOLD), ("100 mm", HOLD)]
)
def test_the_spring_works_the_lift(design: DesignFolder, opened: str, ends: tuple[str, Grade | None]) -> None:
    design.replace("spring.toml", 'open_length = "96 mm"', f'open_length = "{opened}"')
    assert outcome(design, "spring.works-the-lift") == ends


def test_a_short_stroke_on_paper_spares_no_spring(design: DesignFolder) -> None:
    """k 1.238095, 0.295573 MPa for each N; 1155 N shut, 46 × 20.6 = 947.6 N of stroke: 341.39 and 280.08 MPa.

    (450 − 0.3 × 341.39)/280.08 = 1.2410 ≥ 1.2; at 22 mm of stroke the spring would break, at 100 mm open it would not.
    """
    check = design.only("coil-spring.fatigue")
    assert check.outcome == "conforms"
    design.replace("spring.toml", 'open_length = "96 mm"', 'open_length = "110 mm"')
    assert found(design.only("coil-spring.fatigue")) == pytest.approx(found(check))
    design.replace("spring.toml", 'open_length = "110 mm"\n', "")
    assert found(design.only("coil-spring.fatigue")) == pytest.approx(found(check))
    assert outcome(design, "spring.works-the-lift") == SILENT
    design.replace("cam.toml", 'lift = "19.6 mm"', 'lift = "22 mm"')
    assert outcome(design, "coil-spring.fatigue") == HOLD


@pytest.mark.parametrize(("load", "least"), [("1120 N ±5 %", 1064.0), ("1600 N ±5 %", None)])
def test_a_load_beyond_the_sizes_holds_no_valve_shut(
    design: DesignFolder, load: str, least: float | None
) -> None:
    """46.007 × 24 = 1104 N by the sizes, G of −2 % 1082: 1120 N agrees within 5 %, 1600 N does not.

    Then 1082 + 1520 − 1600 = 1002 N are counted on.
    """
    design.replace("spring.toml", "1100 N ±5 %", load)
    check = design.only("valve.spring-holds-shut")
    if least is None:
        assert on_sheet(check, "F_w_1") == pytest.approx(1082.1 - 80, rel=1e-3)
    else:
        assert not [step for step in check.steps if step.symbol == "F_w_1"]
        assert on_sheet(check, "F_U1") == pytest.approx(least)
    judged = design.only("coil-spring.rate")
    assert (judged.outcome, judged.grade) == (WRONG if least is None else FINE)


def test_a_load_below_the_sizes_tires_the_spring_no_less(design: DesignFolder) -> None:
    """800 N stated, 1104 N by the sizes, G of +2 % 1126: fatigue counts 1126 + 840 − 800 = 1166 N."""
    design.replace("spring.toml", "1100 N ±5 %", "800 N ±5 %")
    assert on_sheet(design.only("coil-spring.fatigue"), "F_w") == pytest.approx(1166.3, rel=1e-3)


def test_springs_of_a_nest_make_one_stroke(design: DesignFolder) -> None:
    text = (design.root / "spring.toml").read_text(encoding="utf-8")
    inner = text.replace('id = "spring"', 'id = "inner"\nnested_in = "spring"')
    (design.root / "inner.toml").write_text(inner, encoding="utf-8")
    assert outcome(design, "spring.nest-agrees", "inner") == FINE
    design.replace("inner.toml", 'open_length = "96 mm"', 'open_length = "99 mm"')
    assert outcome(design, "spring.nest-agrees", "inner") == WRONG


@pytest.mark.parametrize(
    ("material", "grade", "ends"),
    [
        ("wire-oil-tempered-VDSiCr", "VDSiCr", FINE),
        ("wire-patented-SH", "SH", FINE),
        ("wire-patented-SH", "VDSiCr", HOLD),
        ("wire-oil-tempered-VDCrV", "VDSiCr", HOLD),
        ("stainless-1.4021", "VDSiCr", HOLD),  # no wire at all
        ("known-wire", "VDSiCr", ("not applicable", None)),  # one of the repository's own, named for no grade
        ("works-wire", "VDSiCr", ("not assessed", Grade.HOLD)),  # a name that no table has
    ],
)
def test_a_spring_has_one_wire(
    design: DesignFolder, material: str, grade: str, ends: tuple[str, Grade | None]
) -> None:
    design.replace("spring.toml", '"known-wire"', f'"{material}"\nwire_grade = "{grade}"')
    assert outcome(design, "spring.grade-of-its-wire", "spring") == ends


@pytest.mark.parametrize(("pin", "ends"), [("22 mm", FINE), ("21.9 mm", WRONG)])
def test_the_guide_pin_takes_the_spindle(
    design: DesignFolder, pin: str, ends: tuple[str, Grade | None]
) -> None:
    design.replace("spring.toml", 'wire = "8 mm"', f'wire = "8 mm"\nguide_pin = "{pin}"')
    assert outcome(design, "spring.in-its-housing") == ends
