"""Geometrical tolerances, flat faces and holes that match, worked by hand."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, strategies as st

from speclint import Grade
from speclint.testing import DesignFolder, expect_not_applicable, found, on_sheet
from speclint_fits.formulae.geometry import opening_of_zone, zone_of_coordinates, zones_together
from tests.plugins.known_metals import METALS, WITH_METALS

WHOLE, FLAT, MATCH, ROOM = (
    "geometry.whole",
    "geometry.joint-face-flat",
    "holes.match",
    "geometry.room-for-form",
)
COVER = 'kind = "cylinder-cover"\nid = "cover"\n'
ROD = {"rod.toml": 'kind = "piston-rod"\nid = "rod"\n'}
BLOCK = 'kind = "cylinder-block"\nid = "block"\n'


def zone(name: str, form: str, size: str, of: str = "face", to: str = "") -> str:
    datums = f'to = ["{to}"]\n' if to else ""
    return f'[tolerances.{name}]\nform = "{form}"\nof = "{of}"\nzone = "{size}"\n{datums}'


DATUM = '[datums.A]\nfeature = "face"\n'


@pytest.mark.parametrize(
    ("text", "outcome"),
    [
        (DATUM + zone("flat", "flat", "0.05 mm") + zone("bore", "square", "0.1 mm", "bore", "A"), "conforms"),
        (DATUM + zone("flat", "flat", "0.051 mm") + zone("bore", "square", "0.1 mm", "bore", "A"), "finding"),
        (DATUM + zone("bore", "square", "0.1 mm", "bore", "A"), "finding"),
        (
            DATUM
            + zone("flat", "flat", "0.051 mm")
            + zone("far", "flat", "0.01 mm", "side")
            + zone("bore", "square", "0.1 mm", "bore", "A"),
            "finding",
        ),
        (zone("bore", "square", "0.1 mm", "bore", "A"), "finding"),
        (zone("bore", "run-out", "0.1 mm", "bore"), "finding"),
        (zone("flat", "flat", "0.05 mm", to="B"), "finding"),
        (
            zone("bore", "round", "0.02 mm", "bore") + zone("at", "position", "0.02 mm", "bore", "rod"),
            "conforms",
        ),
        (
            zone("bore", "round", "0.03 mm", "bore") + zone("at", "position", "0.02 mm", "bore", "rod"),
            "finding",
        ),
    ],
)
def test_tolerances_are_whole(workshop: DesignFolder, text: str, outcome: str) -> None:
    """A datum half as wide as what counts from it, whatever another face has; form in orientation, that in location."""
    check = workshop.write({"cover.toml": COVER + text, **ROD}).only(WHOLE, "cover")
    assert (check.outcome, check.grade) == (outcome, Grade.NONCONFORMITY if outcome == "finding" else None)


@pytest.mark.parametrize(
    ("to", "said"),
    [
        ("rod", []),
        ("A", []),
        ("rodd", ['cover.toml:7 tolerances.at.to[0]: no component has this id; read "rodd"; write "rod"']),
        (
            "journal",
            [
                'cover.toml:7 tolerances.at.to[0]: no component has this id; read "journal"; '
                'write the id of a component, or "A" to "Z"'
            ],
        ),
    ],
)
def test_what_a_zone_counts_from_is_a_letter_or_a_part(
    workshop: DesignFolder, to: str, said: list[str]
) -> None:
    text = COVER + zone("at", "position", "0.02 mm", "bore", to)
    assert [str(one) for one in workshop.write({"cover.toml": text, **ROD}).assess().complaints] == said


@pytest.mark.parametrize(
    ("key", "size", "refused"),
    [
        ("position", "0 mm", True),
        ("position", "0.05 mm", False),
        ("coordinates", "0 mm", True),
        ("coordinates", "-0.2 mm", True),
        ("coordinates", "0.2 mm", False),
    ],
)
def test_holes_stand_in_a_zone_that_can_be_made(
    workshop: DesignFolder, key: str, size: str, refused: bool
) -> None:
    """Nobody drills a hole to nothing, nor on the far side of nothing."""
    made = joined(holes(f'{key} = "{size}"'), holes())
    told = [str(one) for one in workshop.write(made).assess().complaints]
    assert bool(told) is refused
    assert all(f"hole_patterns.studs.{key}" in one for one in told)


BORE = 'bore = "{size}"\n'


@pytest.mark.parametrize(
    ("text", "outcome"),
    [
        ('form = "position"\ndiameter_zone = "0.1 mm"\n', "conforms"),
        ('form = "position"\ndiameter_zone = "0.1 mm"\nzone = "0.1 mm"\n', "finding"),
        ('form = "run-out"\ndiameter_zone = "0.1 mm"\n', "finding"),
        ('form = "position"\nzone = "0.1 mm"\nmodifier = "M"\n', "conforms"),
        ('form = "run-out"\nzone = "0.1 mm"\nmodifier = "M"\n', "finding"),
        ('form = "position"\nzone = "0.1 mm"\nmodifier = "P"\nprojects = "40 mm"\n', "conforms"),
        ('form = "position"\nzone = "0.1 mm"\nmodifier = "P"\n', "finding"),
        ('form = "coaxial"\nzone = "0.1 mm"\nmodifier = "P"\nprojects = "40 mm"\n', "finding"),
    ],
)
def test_a_zone_is_written_as_the_standard_has_it(workshop: DesignFolder, text: str, outcome: str) -> None:
    """A round zone is of an axis; at maximum material there is a size to leave it; projected there is a height."""
    tolerance = f'[tolerances.at]\nof = "bore"\nto = ["rod"]\n{text}'
    check = workshop.write({"cover.toml": COVER + BORE.format(size="450 mm H7") + tolerance, **ROD}).only(
        WHOLE, "cover"
    )
    assert check.outcome == outcome, check.says


@pytest.mark.parametrize(
    ("of", "size", "outcome"),
    [("bore", "450 mm", "finding"), ("bore", "450 mm ±0.02", "conforms"), ("face", "450 mm", "not assessed")],
)
def test_maximum_material_is_of_a_size_with_limits(
    workshop: DesignFolder, of: str, size: str, outcome: str
) -> None:
    text = COVER + BORE.format(size=size) + zone("at", "position", "0.1 mm", of, "rod") + 'modifier = "M"\n'
    assert workshop.write({"cover.toml": text, **ROD}).only(WHOLE, "cover").outcome == outcome


def test_a_part_without_tolerances_is_not_asked(workshop: DesignFolder) -> None:
    assert workshop.write({"cover.toml": COVER}).only(WHOLE).outcome == "not applicable"


JOINT = """
kind = "bolted-joint"
id = "studs"
holds = "cover"
screwed_into = "block"
fastener = "stud"
thread = "M24"
hole = "26 mm"
count = 24
circle = "600 mm"
grip = "40 mm"
tapped.engagement = "36 mm"
"""


def holes(position: str = 'position = "0.8 mm"', more: str = "", angle: str = "0 °") -> str:
    return f'[hole_patterns.studs]\njoint = "studs"\nfirst_angle = "{angle}"\n{position}\n{more}\n'


def joined(cover: str, block: str, joint: str = 'seal = "gasket"\ngasket.form = "flat"\n') -> dict[str, str]:
    return {"studs.toml": JOINT + joint, "cover.toml": COVER + cover, "block.toml": BLOCK + block}


def in_steel(cover: str, block: str, hot: tuple[str, str] = ("20 °C", "20 °C")) -> dict[str, str]:
    """The joint with its parts in steel, cover and block at a temperature each in every load case."""
    made = joined('material = "known-steel"\n' + cover, 'material = "known-steel"\nduty = "duty"\n' + block)
    cases = "".join(
        f'[cases.{name}.temperatures]\ncylinder-cover = "{hot[0]}"\ncylinder-block = "{hot[1]}"\n'
        for name in ("warming", "running", "cooling")
    )
    return made | {"metals.toml": METALS, "duty.toml": f'kind = "duty"\nid = "duty"\n{cases}'}


def fastened(
    folder: DesignFolder, cover: str, block: str, hot: tuple[str, str] = ("20 °C", "20 °C")
) -> DesignFolder:
    return folder.write(in_steel(cover, block, hot), settings=WITH_METALS)


def flat(size: str) -> str:
    return zone("joint", "flat", size, "studs")


@pytest.mark.parametrize(
    ("seal", "size", "outcome"),
    [
        ('seal = "gasket"\ngasket.form = "flat"\n', "0.25 mm", "conforms"),
        ('seal = "gasket"\ngasket.form = "flat"\n', "0.254 mm", "finding"),
        ('seal = "gasket"\ngasket.form = "ring in a groove"\n', "0.15 mm", "conforms"),
        ('seal = "gasket"\ngasket.form = "ring in a groove"\n', "0.152 mm", "finding"),
        ('seal = "ground face"\n', "0.02 mm", "conforms"),
        ('seal = "ground face"\n', "0.0203 mm", "finding"),
        ('seal = "lens ring"\n', "1 mm", "not applicable"),
    ],
)
def test_faces_are_flat_from_both_sides(workshop: DesignFolder, seal: str, size: str, outcome: str) -> None:
    made = joined(flat("0.01 mm"), flat(size), seal)
    assert workshop.write(made).only(FLAT).outcome == outcome


def test_the_bolts_of_a_lens_joint_pass_two_flanges_alike(workshop: DesignFolder) -> None:
    check = workshop.write(joined(holes(), holes(), 'seal = "lens ring"\n')).only(MATCH)
    expect_not_applicable(check, "of which the lens joint says the sizes")


def test_a_face_that_states_nothing_is_not_assessed(workshop: DesignFolder) -> None:
    assert workshop.write(joined(flat("0.1 mm"), "")).only(FLAT).outcome == "not assessed"


@pytest.mark.parametrize(
    ("cover", "block", "outcome", "taken"),
    [
        (holes(), holes(more="projected = true"), "conforms", 1.6),
        (holes(), holes(more="projected = false"), "finding", 3.378),
        (holes('position = "1.21 mm"'), holes(more="projected = true"), "finding", 2.01),
        (
            holes('coordinates = "0.3 mm"'),
            holes('coordinates = "0.3 mm"', "projected = true"),
            "conforms",
            1.697,
        ),
        (holes(angle="0.25 °"), holes(more="projected = true"), "finding", 1.6 + 2 * 1.309),
        (holes(angle="0.03 °"), holes(more="projected = true"), "conforms", 1.6 + 2 * 0.1571),
    ],
)
def test_the_holes_of_the_page(
    workshop: DesignFolder, cover: str, block: str, outcome: str, taken: float
) -> None:
    """M24 in 26 mm leaves 2.0 mm; 0.8 (1 + 80/36) + 0.8 = 3.378; ±0.3 is 0.849; 0.25° at 300 mm 1.309 mm, each way."""
    check = fastened(workshop, cover, block).only(MATCH)
    assert check.outcome == outcome
    assert found(check) * 1e3 == pytest.approx(taken, abs=2e-3)


@pytest.mark.parametrize(("height", "outcome"), [("35.5 mm", "finding"), ("35.6 mm", "conforms")])
def test_a_projection_reaches_through_the_plate(workshop: DesignFolder, height: str, outcome: str) -> None:
    """1.0 (1 + 2 (40 − h)/h) + 0.75 = 2.0 at h = 80/2.25 = 35.56 mm of a plate of 40 mm."""
    projected = holes('position = "1.0 mm"', f'projected = true\nprojects = "{height}"')
    check = fastened(workshop, holes('position = "0.75 mm"'), projected).only(MATCH)
    assert check.outcome == outcome


@pytest.mark.parametrize(
    "other", [holes(more="projected = true\ncount = 20"), holes(more='projected = true\ncircle = "601 mm"')]
)
def test_another_count_or_circle_is_found(workshop: DesignFolder, other: str) -> None:
    check = fastened(workshop, holes(), other).only(MATCH)
    assert (check.outcome, check.grade) == ("finding", Grade.NONCONFORMITY)


@pytest.mark.parametrize(
    ("cover", "block", "drawn", "says"),
    [
        ("count = 22", "count = 20", "600 mm", "cover has 22 holes, block 20, the joint 24 studs"),
        ("", 'circle = "610 mm"', "600 mm", "circle of the holes 600 mm, of the others 610 mm"),
        (
            'circle = "600 mm"',
            'circle = "600 mm"',
            "610 mm",
            "circle of the holes 600 mm, of the studs 610 mm",
        ),
    ],
)
def test_what_does_not_match_is_told_by_part(
    workshop: DesignFolder, cover: str, block: str, drawn: str, says: str
) -> None:
    design = fastened(workshop, holes(more=cover), holes(more=f"projected = true\n{block}"))
    check = design.replace("studs.toml", '"600 mm"', f'"{drawn}"').only(MATCH)
    assert check.outcome == "finding"
    assert says in check.actual


def test_the_circle_of_the_clearance_holes_is_that_of_the_studs(workshop: DesignFolder) -> None:
    """600 mm beside 650 of the tapped holes and of the studs: wrong by either."""
    design = fastened(workshop, holes(more='circle = "600 mm"'), holes(more="projected = true"))
    check = design.replace("studs.toml", '"600 mm"', '"650 mm"').only(MATCH)
    assert check.judgement is not None
    assert [part.holds for part in check.judgement.parts] == [True, False, False, True]


def test_angle_and_growth_count_at_the_circle_of_the_clearance_holes(workshop: DesignFolder) -> None:
    """300 mm, whatever the tapped ones have: 1.6 + 2 × 300 × 0.03° = 1.9142 mm, and 600 Δε by heat."""
    cover = holes(more='circle = "600 mm"', angle="0.03 °")
    block = holes(more='projected = true\ncircle = "500 mm"')
    check = fastened(workshop, cover, block, ("70 °C", "20 °C")).only(MATCH)
    assert on_sheet(check, "T_n") * 1e3 == pytest.approx(1.6 + 600 * math.radians(0.03))
    hot = on_sheet(check, "T_h") - on_sheet(check, "T_n")
    assert hot == pytest.approx(0.6 * on_sheet(check, "Δε"))
    assert 11.2e-6 * 50 < on_sheet(check, "Δε") < 12.6e-6 * 50


def placed(x: str, y: str, more: str = "projected = true") -> str:
    """Three holes off a circle, one of them moved."""
    return (
        f'[hole_patterns.studs]\njoint = "studs"\nposition = "0.8 mm"\nx = ["-200 mm", "{x}", "200 mm"]\n'
        f'y = ["0 mm", "{y}", "0 mm"]\n{more}\n'
    )


def _of_three(folder: DesignFolder, cover: str, block: str) -> DesignFolder:
    return fastened(folder, cover, block).replace("studs.toml", "count = 24", "count = 3")


@pytest.mark.parametrize(
    ("x", "y", "outcome"),
    [
        ("0 mm", "150 mm", "conforms"),
        ("0.11 mm", "150.16 mm", "conforms"),
        ("0.13 mm", "150.16 mm", "finding"),
    ],
)
def test_holes_off_a_circle(workshop: DesignFolder, x: str, y: str, outcome: str) -> None:
    """2.0 − 1.6 mm are left, 0.2 mm apart: √(0.11² + 0.16²) = 0.194, √(0.13² + 0.16²) = 0.206."""
    check = _of_three(workshop, placed(x, y, ""), placed("0 mm", "150 mm")).only(MATCH)
    assert check.outcome == outcome, check.says
    assert check.judgement is not None
    assert check.judgement.parts[0].says == "cover has 3 holes, block 3, the joint 3 studs"
    assert on_sheet(check, "e of hole 1") == 0.0
    assert on_sheet(check, "e of hole 2") * 1e3 == pytest.approx(
        math.hypot(float(x[:-3]), float(y[:-3]) - 150)
    )


def test_holes_off_a_circle_are_as_many_and_all_placed(workshop: DesignFolder) -> None:
    made = _of_three(workshop, placed("0 mm", "150 mm", ""), placed("0 mm", "150 mm"))
    fewer = made.replace("cover.toml", 'x = ["-200 mm", "0 mm", "200 mm"]', 'x = ["-200 mm", "200 mm"]')
    assert fewer.only(MATCH).outcome == "not assessed"
    two = fewer.replace("cover.toml", 'y = ["0 mm", "150 mm", "0 mm"]', 'y = ["0 mm", "0 mm"]')
    assert two.only(MATCH).outcome == "finding"


@pytest.mark.parametrize("part", ["cover", "block"])
def test_holes_of_one_part_alone_off_a_circle_cannot_be_matched(workshop: DesignFolder, part: str) -> None:
    """The other says its angle and its circle: whichever has no places is named."""
    patterns = {"cover": placed("0 mm", "150 mm", ""), "block": placed("0 mm", "150 mm")}
    check = _of_three(workshop, **{**patterns, part: holes()}).only(MATCH)
    assert check.outcome == "not assessed"
    assert f"{part} does not state a place along and across for each hole of studs" in check.says


def test_holes_that_nobody_drew_are_not_assessed(workshop: DesignFolder) -> None:
    assert fastened(workshop, holes(), "").only(MATCH).outcome == "not assessed"


@pytest.mark.parametrize(("cover", "outcome"), [("70 °C", "conforms"), ("80 °C", "finding")])
def test_a_cover_hotter_than_its_block_takes_of_the_room(
    workshop: DesignFolder, cover: str, outcome: str
) -> None:
    """Block at 20 °C; 2 × 300 mm × 11.3 to 12.1e-6 × 50 K = 0.36 mm at most beside the 1.6 of the zones, 60 K 0.44."""
    check = fastened(workshop, holes(), holes(more="projected = true"), (cover, "20 °C")).only(MATCH)
    assert check.outcome == outcome
    assert 1.6 + 0.6 * 11.2e-3 * 50 <= found(check) * 1e3 <= 1.6 + 0.6 * 12.6e-3 * 60


@pytest.mark.parametrize(("bent", "outcome"), [("0.019 mm", "conforms"), ("0.021 mm", "finding")])
def test_a_long_spindle_keeps_room_for_its_form(workshop: DesignFolder, bent: str, outcome: str) -> None:
    """22.03 − 22 − 0.01 − 0.02 = 0."""
    text = 'kind = "valve-spindle"\nid = "spindle"\ndiameter = "22 mm"\nguide_bore = "22.03 mm"\n'
    text += 'guide_length = "100 mm"\n' + zone("a", "straight", "0.01 mm", "guide")
    made = {"spindle.toml": text + zone("b", "straight", bent, "diameter")}
    assert workshop.write(made).only(ROOM).outcome == outcome


@pytest.mark.parametrize(("length", "outcome"), [("32.7 mm", "not applicable"), ("33.3 mm", "finding")])
def test_a_spindle_is_long_beyond_one_and_a_half_diameters(
    workshop: DesignFolder, length: str, outcome: str
) -> None:
    """1.5 × 22 = 33 mm; as bent as it is, a long one has 0.03 − 0.02 − 0.02 mm left."""
    text = 'kind = "valve-spindle"\nid = "spindle"\ndiameter = "22 mm"\nguide_bore = "22.03 mm"\n'
    text += f'guide_length = "{length}"\n' + zone("a", "straight", "0.02 mm", "guide")
    made = {"spindle.toml": text + zone("b", "straight", "0.02 mm", "diameter")}
    assert workshop.write(made).only(ROOM).outcome == outcome


@given(x=st.floats(1e-6, 1e-3), θ=st.floats(0.0, 6.28))
def test_the_zone_of_coordinates_holds_every_error(x: float, θ: float) -> None:
    """No point of the square of ±x lies beyond half of the zone."""
    edge = x / max(abs(math.cos(θ)), abs(math.sin(θ)))
    assert edge <= zone_of_coordinates(x=x) / 2 * (1 + 1e-12)


@given(P=st.floats(0.0, 0.1), T=st.floats(0.0, 1e-3))
def test_a_projected_zone_takes_the_least(P: float, T: float) -> None:
    k = opening_of_zone(P=P, D=0.036)
    wide = zones_together(T_1=T, k=k, T_2=T, r=0.3, Δθ=0.0)
    assert wide >= zones_together(T_1=T, k=1.0, T_2=T, r=0.3, Δθ=0.0) == pytest.approx(2 * T)


@pytest.mark.parametrize(("datum", "outcome"), [("0.05 mm", "conforms"), ("0.06 mm", "finding")])
def test_the_closest_form_of_a_datum_counts(workshop: DesignFolder, datum: str, outcome: str) -> None:
    """Half of 0.1 mm: the face is flat to 0.05 beside straight to 0.09, or to 0.06."""
    text = DATUM + zone("flat", "flat", datum) + zone("line", "straight", "0.09 mm")
    text += zone("bore", "square", "0.1 mm", "bore", "A")
    assert workshop.write({"cover.toml": COVER + text}).only(WHOLE, "cover").outcome == outcome


@pytest.mark.parametrize(
    ("seal", "over", "outcome"),
    [
        ('seal = "gasket"\ngasket.form = "flat"\ngasket.outside = "640 mm"\n', "640 mm", "conforms"),
        ('seal = "gasket"\ngasket.form = "flat"\ngasket.outside = "640 mm"\n', "630 mm", "not assessed"),
        ('seal = "ground face"\nground_face.outside = "640 mm"\n', "640 mm", "conforms"),
        ('seal = "ground face"\nground_face.outside = "640 mm"\n', "630 mm", "not assessed"),
    ],
)
def test_flatness_holds_over_the_whole_of_the_seal(
    workshop: DesignFolder, seal: str, over: str, outcome: str
) -> None:
    made = joined(flat("0.01 mm"), flat("0.01 mm") + f'over = "{over}"\n', seal)
    assert workshop.write(made).only(FLAT).outcome == outcome


@pytest.mark.parametrize(("zone_", "outcome"), [("1.0 mm", "conforms"), ("1.01 mm", "finding")])
def test_bolts_go_through_two_clearance_holes(workshop: DesignFolder, zone_: str, outcome: str) -> None:
    """M24 in 26 mm leaves 2.0 mm for two zones, which open over no plate as that of a tapped hole does."""
    own = f'position = "{zone_}"'
    design = fastened(workshop, holes(own), holes(own))
    design.replace(
        "studs.toml", 'screwed_into = "block"\nfastener = "stud"', 'bolted_to = "block"\nfastener = "bolt"'
    )
    check = design.only(MATCH)
    assert check.outcome == outcome, check.says


def test_the_wider_of_zone_and_coordinates_counts(workshop: DesignFolder) -> None:
    """±0.3 mm are 0.849 on the diameter, beside a zone of 0.2 and of 0.9: 0.849 + 0.8 and 0.9 + 0.8."""
    for position, taken in (("0.2 mm", 0.8485 + 0.8), ("0.9 mm", 1.7)):
        cover = holes(f'position = "{position}"\ncoordinates = "0.3 mm"')
        check = fastened(workshop, cover, holes(more="projected = true")).only(MATCH)
        assert found(check) * 1e3 == pytest.approx(taken, abs=1e-3)


def test_holes_off_a_circle_are_as_many_as_the_studs(workshop: DesignFolder) -> None:
    made = _of_three(workshop, placed("0 mm", "150 mm", ""), placed("0 mm", "150 mm"))
    made.replace("studs.toml", "count = 3", "count = 4")
    check = made.only(MATCH)
    assert check.outcome == "finding"
    assert "cover has 3 holes, block 3, the joint 4 studs" in check.says
