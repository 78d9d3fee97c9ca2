"""The room of a block against its parts and its chains, from both sides.

The frame face 530 mm from the middle, the axis 350 mm farther out: the rim of a cover of 800 mm at 1280 mm, the side of
a box that stands out 420 mm at 1300 mm. Between the frames: 530 − 350 + 400 = 580 mm and 600 mm.
"""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder, changed, found, limit

AXLE_ALONG = "envelope.along-by-rods"
FRAME, GAPS, POINTS = "envelope.frame-of-engine", "envelope.gap-by-chain", "envelope.points-of-parts"
FINE, HOLD = ("conforms", None), ("finding", Grade.HOLD)
UNKNOWN, NEITHER = ("not assessed", Grade.HOLD), ("not applicable", None)
ENGINE = """
kind = "engine"
id = "engine"
[cranks.left]
block = "block"
axis_from_centre = "880 mm"
frame_from_centre = "530 mm"
"""
FILES = {
    "block.toml": """
kind = "cylinder-block"
id = "block"
[bores.main]
axis_from_frame = "350 mm"
[ends.front]
side = "front"
""",
    "cover.toml": """
kind = "cylinder-cover"
id = "cover"
closes = "block"
end = "front"
outside_diameter = "800 mm"
""",
    "box.toml": """
kind = "cam-box"
id = "box"
mounted_on = "block"
of_end = "front"
stands_out = "420 mm"
""",
    "crosshead.toml": 'kind = "crosshead"\nid = "crosshead"\nfront_from_pin = "290 mm"\n',
    "chain.toml": """
kind = "dimension-chain"
id = "chain"
[chain.rod]
size = "322 mm"
direction = "widens"
[chain.crosshead]
of = "crosshead"
dimension = "front_from_pin"
direction = "narrows"
""",
    "envelope.toml": """
kind = "envelope"
id = "envelope"
around = "block"
frame_from_centre = "530 mm"
cylinders = "outside"
[points.rim]
of = "cover"
from_centre = "1280 mm"
[points.lower-rim]
of = "cover"
from_centre = "1100 mm"
[points.box]
of = "box"
from_centre = "1300 mm"
[gaps.crosshead]
to = "crosshead"
chain = "chain"
size = "32 mm ±1"
""",
}


@pytest.mark.parametrize(
    ("rule", "file", "old", "new", "wanted"),
    [
        (POINTS, "envelope.toml", "530 mm", "530 mm", FINE),
        (POINTS, "envelope.toml", "1280 mm", "1279.9 mm", HOLD),
        (POINTS, "envelope.toml", "1300 mm", "1299.9 mm", HOLD),
        (POINTS, "cover.toml", "800 mm", "801 mm", HOLD),
        (POINTS, "box.toml", "420 mm", "421 mm", HOLD),
        (POINTS, "block.toml", "350 mm", "351 mm", HOLD),
        (POINTS, "envelope.toml", 'frame_from_centre = "530 mm"\n', "", ("not assessed", Grade.HOLD)),
        (GAPS, "envelope.toml", "32 mm ±1", "32.5 mm", FINE),
        (GAPS, "envelope.toml", "32 mm ±1", "32.6 mm", HOLD),
        (GAPS, "crosshead.toml", "290 mm", "291 mm", HOLD),
        (GAPS, "envelope.toml", 'chain = "chain"\n', "", ("not assessed", Grade.HOLD)),
        (GAPS, "envelope.toml", 'to = "crosshead"\nchain = "chain"\n', 'moving = "crosshead"\n', UNKNOWN),
        (GAPS, "envelope.toml", 'to = "crosshead"\nchain = "chain"\n', 'moving = "coupling rod"\n', NEITHER),
        (GAPS, "envelope.toml", 'size = "32 mm ±1"\n', "", ("not applicable", None)),
    ],
)
def test_the_room_is_that_of_the_parts(
    workshop: DesignFolder, rule: str, file: str, old: str, new: str, wanted: tuple[str, Grade | None]
) -> None:
    workshop.write(FILES).replace(file, old, new)
    found = workshop.only(rule)
    assert (found.outcome, found.grade) == wanted


@pytest.mark.parametrize(
    ("rim", "box", "wanted"), [("580", "600", FINE), ("579", "600", HOLD), ("580", "599", HOLD)]
)
def test_cylinders_between_the_frames(
    workshop: DesignFolder, rim: str, box: str, wanted: tuple[str, Grade | None]
) -> None:
    workshop.write(FILES).replace("envelope.toml", '"outside"', '"inside"')
    workshop.replace("envelope.toml", "1280 mm", f"{rim} mm").replace("envelope.toml", "1300 mm", f"{box} mm")
    workshop.replace("envelope.toml", "1100 mm", "500 mm")
    found = workshop.only(POINTS)
    assert (found.outcome, found.grade) == wanted


@pytest.mark.parametrize(
    ("file", "old", "new", "wanted"),
    [
        ("envelope.toml", "530 mm", "530.01 mm", FINE),
        ("envelope.toml", "530 mm", "530.02 mm", HOLD),
        ("envelope.toml", '"outside"', '"inside"', HOLD),
        ("engine.toml", "530 mm", "600 mm", HOLD),
        ("engine.toml", "880 mm", "180 mm", HOLD),
        ("engine.toml", 'frame_from_centre = "530 mm"\n', "", NEITHER),
        ("engine.toml", 'block = "block"\n', "", NEITHER),
    ],
)
def test_the_frame_is_that_of_the_engine(
    workshop: DesignFolder, file: str, old: str, new: str, wanted: tuple[str, Grade | None]
) -> None:
    """Axis at 880 mm beyond a frame face at 530 mm: outside. At 180 mm it is between the frames."""
    workshop.write({**FILES, "engine.toml": ENGINE}).replace(file, old, new)
    found = workshop.only(FRAME)
    assert (found.outcome, found.grade) == wanted


#: Driven axles at 3.7, 1.85 and 0 m, a carrying axle 2.4 m behind the last, and a bogie.
AXLED = {
    **FILES,
    "envelope.toml": FILES["envelope.toml"].replace(
        'cylinders = "outside"\n', 'cylinders = "outside"\nrigid_wheelbase = "3.7 m"\n'
    ),
    "engine.toml": f"""{ENGINE}
[carrying.trailing]
at = "-2.4 m"
[carrying.bogie]
at = "6.3 m"
wheelbase = "2.2 m"
""",
    **{
        f"axle-{name}.toml": f'kind = "driving-axle"\nid = "axle-{name}"\nengine = "engine"\nat = "{at}"\n'
        for name, at in (("first", "0 m"), ("second", "3.7 m"), ("third", "1.85 m"))
    },
}


@pytest.mark.parametrize(
    ("wheelbase", "wanted"),
    [
        ("3702 mm", FINE),
        ("3702.03 mm", HOLD),
        ("3698 mm", FINE),
        ("3697.9 mm", HOLD),
        ("1.85 m", FINE),  # the first or the last is free to move sideways
        ("6.1 m", FINE),  # with the trailing axle, which is then in the rigid frame
        ("4.25 m", FINE),
        ("2.4 m", FINE),
        ("2.6 m", HOLD),  # from the middle of the bogie, where no axle stands
        ("8.7 m", HOLD),  # from the trailing axle to the bogie
        ("3.5 m", HOLD),
    ],
)
def test_the_rigid_wheelbase_is_between_two_axles(
    workshop: DesignFolder, wheelbase: str, wanted: tuple[str, Grade | None]
) -> None:
    """3700 and 1850 mm between driven axles, 2400, 4250 and 6100 mm from these to the trailing one."""
    workshop.write(AXLED).replace("envelope.toml", "3.7 m", wheelbase)
    found = workshop.only(FRAME)
    assert (found.outcome, found.grade) == wanted


def test_a_wheelbase_of_no_two_axles_is_held_against_the_driven_ones(workshop: DesignFolder) -> None:
    """3500 mm is nearest to 3700, and 1800 to 1850 mm: both times the outermost are named."""
    for wheelbase in ("3.5 m", "1.8 m"):
        workshop.write(AXLED).replace("envelope.toml", "3.7 m", wheelbase)
        says = workshop.only(FRAME).says
        assert "3.7 m, worked from at of axle-first" in says
        assert "at of axle-second" in says


@pytest.mark.parametrize(("left", "wanted"), [(("axle-first",), HOLD), (("axle-first", "axle-third"), FINE)])
def test_one_axle_has_no_wheelbase(
    workshop: DesignFolder, left: tuple[str, ...], wanted: tuple[str, Grade | None]
) -> None:
    """Of two axles, at 3.7 and 1.85 m, it is not 3.7 m; of one nothing is known."""
    workshop.write({name: text for name, text in AXLED.items() if name.removesuffix(".toml") not in left})
    found = workshop.only(FRAME)
    assert (found.outcome, found.grade) == wanted


#: Two blocks of one engine, each with its envelope.
_BESIDE = """
kind = "envelope"
id = "beside"
around = "other"
least_curve = "200 m"
spring_drop = "30 mm"
spring_rise = "20 mm"
"""
ON_ONE_LINE = {
    **FILES,
    "engine.toml": f'{ENGINE}[cranks.right]\nblock = "other"\n',
    "other.toml": 'kind = "cylinder-block"\nid = "other"\n',
    "beside.toml": _BESIDE,
}


@pytest.mark.parametrize(
    ("key", "value", "wanted"),
    [
        ("least_curve", "200 m", FINE),
        ("least_curve", "201 m", HOLD),
        ("least_curve", "199 m", FINE),
        ("spring_drop", "30 mm", FINE),
        ("spring_drop", "29.9 mm", HOLD),
        ("spring_rise", "20 mm", FINE),
        ("spring_rise", "19.9 mm", HOLD),
    ],
)
def test_one_engine_has_one_curve_and_one_set_of_springs(
    workshop: DesignFolder, key: str, value: str, wanted: tuple[str, Grade | None]
) -> None:
    """Beside an envelope of 200 m, 30 mm below and 20 mm above the setting of the springs."""
    workshop.write(ON_ONE_LINE)
    workshop.replace("envelope.toml", "[points.rim]", f'{key} = "{value}"\n[points.rim]')
    check = workshop.only(FRAME, "envelope")
    assert (check.outcome, check.grade) == wanted


def test_an_envelope_of_another_engine_has_curves_of_its_own(workshop: DesignFolder) -> None:
    workshop.write({**ON_ONE_LINE, "engine.toml": ENGINE})
    workshop.replace("envelope.toml", "[points.rim]", 'least_curve = "500 m"\n[points.rim]')
    assert workshop.only(FRAME, "envelope").outcome == "conforms"


#: The axle at 1.85 m, the middle of the wheelbase, is driven by rods of 1.9 and 1.45 m: covers at 3.35 ± 0.51 m.
ALONG = {
    **AXLED,
    "engine.toml": changed(
        AXLED["engine.toml"], ('id = "engine"\n', 'id = "engine"\nconnecting_rod_length = "1.9 m"\n')
    ),
    "axle-third.toml": AXLED["axle-third.toml"] + 'driven_by = ["left"]\n',
    "block.toml": FILES["block.toml"] + '[drive]\nrod_length = "1.45 m"\n',
    "back.toml": 'kind = "cylinder-cover"\nid = "back"\ncloses = "block"\n',
    "envelope.toml": AXLED["envelope.toml"]
    + '[points.ahead]\nof = "cover"\nalong = "3.86 m"\n[points.behind]\nof = "back"\nalong = "2.84 m"\n',
}


@pytest.mark.parametrize(
    ("file", "changes", "wanted"),
    [
        ("envelope.toml", [], FINE),
        ("envelope.toml", [("3.86 m", "4.159 m"), ("2.84 m", "3.139 m")], FINE),
        ("envelope.toml", [("3.86 m", "4.161 m"), ("2.84 m", "3.141 m")], HOLD),
        ("envelope.toml", [("3.86 m", "3.561 m"), ("2.84 m", "2.541 m")], FINE),
        ("envelope.toml", [("3.86 m", "3.559 m"), ("2.84 m", "2.539 m")], HOLD),
        ("envelope.toml", [("3.86 m", "4.459 m")], FINE),  # 0.599 m on one side alone
        ("envelope.toml", [("3.86 m", "4.461 m")], HOLD),
        ("axle-third.toml", [("1.85 m", "2.149 m")], FINE),
        ("axle-third.toml", [("1.85 m", "2.151 m")], HOLD),
        ("block.toml", [("1.45 m", "1.749 m")], FINE),
        ("block.toml", [("1.45 m", "1.751 m")], HOLD),
        ("engine.toml", [("1.9 m", "1.599 m")], HOLD),
        ("envelope.toml", [("3.86 m", "-2.8 m"), ("2.84 m", "-3.9 m")], FINE),  # rods that run forward
        (
            "envelope.toml",
            [("3.7 m", "4.25 m")],
            HOLD,
        ),  # its middle is at -0.275 m: the covers too near by 2.1 m
        (
            "envelope.toml",
            [("3.7 m", "3.5 m")],
            FINE,
        ),  # of no two axles: the middle of the driven ones counts
    ],
)
def test_the_room_stands_at_the_axle_of_its_cylinder(
    workshop: DesignFolder, file: str, changes: list[tuple[str, str]], wanted: tuple[str, Grade | None]
) -> None:
    workshop.write({**ALONG, file: changed(ALONG[file], *changes)})
    found = workshop.only(AXLE_ALONG)
    assert (found.outcome, found.grade) == wanted


def test_of_two_wheelbases_of_one_length_the_one_that_suits_counts(workshop: DesignFolder) -> None:
    """A wheelbase of 1.85 m from 0 or from 1.85 m: its middle at 0.925 or 2.775 m, the covers at 4.275 or 2.425 m."""
    for along, wanted in (
        (("3.765 m", "4.785 m"), FINE),
        (("1.915 m", "2.935 m"), FINE),
        (("5 m", "6 m"), HOLD),
    ):
        behind, ahead = along
        text = changed(ALONG["envelope.toml"], ("3.7 m", "1.85 m"), ("2.84 m", behind), ("3.86 m", ahead))
        found = workshop.write({**ALONG, "envelope.toml": text}).only(AXLE_ALONG)
        assert (found.outcome, found.grade) == wanted


def test_the_middle_of_the_covers_is_held_against_the_rods(workshop: DesignFolder) -> None:
    """(3.86 + 2.84)/2 + 1.85 − 2.35 m, where the axle stands 0.5 m further forward."""
    found_ = workshop.write(ALONG).replace("axle-third.toml", "1.85 m", "2.35 m").only(AXLE_ALONG)
    assert (found(found_), limit(found_)) == (pytest.approx(2.85), pytest.approx(3.35))


def test_one_driven_axle_has_no_wheelbase_to_count_from(workshop: DesignFolder) -> None:
    left = ("axle-first.toml", "axle-second.toml")
    workshop.write({name: text for name, text in ALONG.items() if name not in left})
    assert workshop.only(AXLE_ALONG).outcome == "not applicable"


def test_a_block_of_two_bores_is_left_out(workshop: DesignFolder) -> None:
    workshop.write({**ALONG, "block.toml": ALONG["block.toml"] + "[bores.other]\n"})
    assert workshop.only(AXLE_ALONG).outcome == "not applicable"


def test_an_axle_of_another_cylinder_says_nothing_of_this(workshop: DesignFolder) -> None:
    """The first axle is driven by another block, which stands far away; that of this block counts."""
    workshop.write(
        {
            **ALONG,
            "other.toml": 'kind = "cylinder-block"\nid = "other"\n',
            "engine.toml": ALONG["engine.toml"] + '[cranks.middle]\nblock = "other"\n',
            "axle-first.toml": ALONG["axle-first.toml"] + 'driven_by = ["middle"]\n',
        }
    )
    assert workshop.only(AXLE_ALONG).outcome == "conforms"


NO_WHEELBASE = changed(ALONG["envelope.toml"], ('rigid_wheelbase = "3.7 m"\n', ""))


@pytest.mark.parametrize(
    ("places", "wanted"),
    [
        (("2.84 m", "3.86 m"), FINE),
        (("3.139 m", "4.159 m"), FINE),
        (("3.141 m", "4.161 m"), HOLD),
        (("2.541 m", "3.561 m"), FINE),
        (("2.539 m", "3.559 m"), HOLD),
        (("3.765 m", "4.785 m"), HOLD),  # from the middle of the first two axles it would suit
    ],
)
def test_without_a_wheelbase_the_outermost_driven_axles_count(
    workshop: DesignFolder, places: tuple[str, str], wanted: tuple[str, Grade | None]
) -> None:
    """Driven axles from 0 to 3.7 m: the covers at 3.35 ± 0.51 m from their middle, as with the wheelbase stated."""
    text = changed(NO_WHEELBASE, ("2.84 m", places[0]), ("3.86 m", places[1]))
    found = workshop.write({**ALONG, "envelope.toml": text}).only(AXLE_ALONG)
    assert (found.outcome, found.grade) == wanted


#: Both faces, 0.8 m apart, as counted from the collar's seat or from the fixed point.
FROM_SEAT = (
    '[ends.front]\nside = "front"\nface_from_seat = "20 mm"\n'
    '[ends.back]\nside = "back"\nface_from_seat = "820 mm"\n'
)
FROM_POINT = (
    '[ends.front]\nside = "front"\nface_at = "680 mm"\n[ends.back]\nside = "back"\nface_at = "-120 mm"\n'
)
BACK = changed(ALONG["back.toml"], ('closes = "block"\n', 'closes = "block"\nend = "back"\n'))


_FRONT = 'kind = "cylinder-cover"\nid = "cover"\n'


def one_cover(
    workshop: DesignFolder, ends: str, points: str, front: str = FILES["cover.toml"]
) -> DesignFolder:
    """A room with points of one cover alone, or of none."""
    envelope = ALONG["envelope.toml"].partition("[points.ahead]")[0] + points
    block = changed(ALONG["block.toml"], ('[ends.front]\nside = "front"\n', ends))
    return workshop.write(
        {**ALONG, "envelope.toml": envelope, "block.toml": block, "back.toml": BACK, "cover.toml": front}
    )


@pytest.mark.parametrize("ends", [FROM_SEAT, FROM_POINT], ids=["from the seat", "from the point"])
@pytest.mark.parametrize(
    ("cover", "along", "wanted"),
    [
        ("cover", "3.75 m", FINE),
        ("cover", "4.049 m", FINE),
        ("cover", "4.051 m", HOLD),
        ("cover", "3.451 m", FINE),
        ("cover", "3.449 m", HOLD),
        ("back", "2.95 m", FINE),
        ("back", "3.249 m", FINE),
        ("back", "3.251 m", HOLD),
        ("back", "2.651 m", FINE),
        ("back", "2.649 m", HOLD),
    ],
)
def test_one_cover_gives_the_place_of_the_other(
    workshop: DesignFolder, ends: str, cover: str, along: str, wanted: tuple[str, Grade | None]
) -> None:
    """The cylinder's middle is at 3.35 m: the front face 0.4 m before it, the back face 0.4 m behind."""
    one_cover(workshop, ends, f'[points.one]\nof = "{cover}"\nalong = "{along}"\n')
    found = workshop.only(AXLE_ALONG)
    assert (found.outcome, found.grade) == wanted


@pytest.mark.parametrize(
    ("cover", "first", "second", "wanted"),
    [
        ("cover", "3.7 m", "3.8 m", FINE),
        ("cover", "2.84 m", "3.86 m", HOLD),
        ("cover", "3.5 m", "3.41 m", FINE),
        ("cover", "3.47 m", "3.42 m", HOLD),
        ("back", "2.9 m", "3.0 m", FINE),
        ("back", "3.86 m", "2.84 m", HOLD),
        ("back", "3.2 m", "3.29 m", FINE),
        ("back", "3.23 m", "3.28 m", HOLD),
    ],
)
def test_both_points_of_one_cover(
    workshop: DesignFolder, cover: str, first: str, second: str, wanted: tuple[str, Grade | None]
) -> None:
    """The middle of both points, less 0.4 m for the front cover and more for the back one, is at 3.35 ± 0.3 m."""
    points = "".join(
        f'[points.{name}]\nof = "{cover}"\nalong = "{along}"\n'
        for name, along in (("a", first), ("b", second))
    )
    found = one_cover(workshop, FROM_SEAT, points).only(AXLE_ALONG)
    assert (found.outcome, found.grade) == wanted


def test_a_cover_may_name_its_end(workshop: DesignFolder) -> None:
    cover = _FRONT + 'closes = "block"\nof_end = "front"\n'
    for along, outcome in (("3.75 m", "conforms"), ("4.051 m", "finding")):
        one_cover(workshop, FROM_SEAT, f'[points.one]\nof = "cover"\nalong = "{along}"\n', cover)
        assert workshop.only(AXLE_ALONG).outcome == outcome


def test_a_finding_from_one_cover_names_the_faces(workshop: DesignFolder) -> None:
    one_cover(workshop, FROM_SEAT, '[points.one]\nof = "cover"\nalong = "4.6 m"\n')
    says = workshop.only(AXLE_ALONG).says
    assert "face from seat, ends front of block 20 mm" in says
    assert "face from seat, ends back of block 820 mm" in says


def test_of_several_points_the_outermost_count_in_whatever_order(workshop: DesignFolder) -> None:
    """2.84 and 3.86 m: with 3.85 m in the place of the former, which is stated last, the middle would be 0.5 m off."""
    text = ALONG["envelope.toml"] + '[points.between]\nof = "cover"\nalong = "3.85 m"\n'
    assert workshop.write({**ALONG, "envelope.toml": text}).only(AXLE_ALONG).outcome == "conforms"


@pytest.mark.parametrize(
    ("ends", "front"),
    [
        (FROM_SEAT.replace('side = "front"\n', ""), 'closes = "block"\nof_end = "front"\n'),
        (FROM_SEAT.replace('face_from_seat = "820 mm"\n', ""), 'closes = "block"\nend = "front"\n'),
        (FROM_SEAT.partition("[ends.back]")[0], 'closes = "block"\nend = "front"\n'),
        (FROM_SEAT, 'closes = "block"\n'),
        (FROM_SEAT, 'end = "front"\n'),
    ],
    ids=["no side", "no face", "no other end", "no end", "no block"],
)
def test_one_cover_of_which_the_end_or_the_faces_are_not_known(
    workshop: DesignFolder, ends: str, front: str
) -> None:
    one_cover(workshop, ends, '[points.one]\nof = "cover"\nalong = "3.75 m"\n', _FRONT + front)
    assert workshop.only(AXLE_ALONG).outcome == "not applicable"


def apart(workshop: DesignFolder, front: str, back: str, *changes: tuple[str, str]) -> DesignFolder:
    """A room with a point of each cover, which say their ends; the faces are 0.8 m apart."""
    points = (
        f'[points.ahead]\nof = "cover"\nalong = "{front}"\n[points.behind]\nof = "back"\nalong = "{back}"\n'
    )
    one_cover(workshop, FROM_SEAT, points)
    for file, text in changes:
        workshop.write({file: text})
    return workshop


@pytest.mark.parametrize(
    ("front", "back", "wanted"),
    [
        ("3.86 m", "2.84 m", FINE),
        ("2.84 m", "3.86 m", HOLD),  # exchanged: the middle is where it was
        ("3.726 m", "2.975 m", FINE),  # 0.751 m apart, with 0.75 allowed
        ("3.724 m", "2.975 m", HOLD),
        ("4.1 m", "2.801 m", FINE),  # 1.299 m apart, with 1.3 allowed
        ("4.1 m", "2.799 m", HOLD),
        ("3.86 m", "2.235 m", HOLD),  # one cover 605 mm off, and the middle by 302.5 mm
        ("3.255 m", "2.84 m", HOLD),
    ],
)
def test_the_front_cover_is_as_far_before_the_back_one_as_their_faces_are(
    workshop: DesignFolder, front: str, back: str, wanted: tuple[str, Grade | None]
) -> None:
    """The faces are 0.8 m apart: covers from 0.05 m less to 0.5 m more."""
    found = apart(workshop, front, back).only(AXLE_ALONG)
    assert (found.outcome, found.grade) == wanted


def test_the_points_of_two_covers_that_are_nearest_to_each_other_count(workshop: DesignFolder) -> None:
    """A relief valve far out on a cover takes nothing from the rim that is at its face."""
    apart(workshop, "3.8 m", "2.9 m")
    text = (workshop.root / "envelope.toml").read_text(encoding="utf-8")
    for extra, wanted in (("4.25 m", FINE), ("2.95 m", HOLD)):
        more = text + f'[points.more]\nof = "cover"\nalong = "{extra}"\n'
        found = workshop.write({"envelope.toml": more}).only(AXLE_ALONG)
        assert (found.outcome, found.grade) == wanted


def test_the_foremost_point_of_the_back_cover_counts(workshop: DesignFolder) -> None:
    """A flange far back takes nothing from the rim at 2.9 m; a rim at 3.77 m is 0.03 m behind the front cover."""
    apart(workshop, "3.8 m", "2.9 m")
    text = (workshop.root / "envelope.toml").read_text(encoding="utf-8")
    for extra, wanted in (("2.45 m", FINE), ("3.77 m", HOLD)):
        more = text + f'[points.more]\nof = "back"\nalong = "{extra}"\n'
        found = workshop.write({"envelope.toml": more}).only(AXLE_ALONG)
        assert (found.outcome, found.grade) == wanted


def test_a_rod_with_a_tail_has_a_cover_that_stands_out_far(workshop: DesignFolder) -> None:
    for tail, wanted in (("false", HOLD), ("true", FINE)):
        apart(
            workshop,
            "4.3 m",
            "2.85 m",
            ("rod.toml", f'kind = "piston-rod"\nid = "rod"\ncarries = "piston"\ntail_rod = {tail}\n'),
            ("piston.toml", 'kind = "piston"\nid = "piston"\nruns_in = "liner"\n'),
            ("liner.toml", 'kind = "cylinder-liner"\nid = "liner"\nhoused_in = "block"\nin_bore = "main"\n'),
        )
        found = workshop.only(AXLE_ALONG)
        assert (found.outcome, found.grade) == wanted


def test_without_faces_the_front_cover_is_ahead_by_the_stroke(workshop: DesignFolder) -> None:
    for front, wanted in (("3.611 m", FINE), ("3.609 m", HOLD)):
        apart(workshop, front, "2.95 m")
        workshop.write({"block.toml": ALONG["block.toml"] + '[ends.back]\nside = "back"\n'})
        workshop.replace("engine.toml", 'id = "engine"', 'id = "engine"\nstroke = "660 mm"')
        found = workshop.only(AXLE_ALONG)
        assert (found.outcome, found.grade) == wanted


def test_covers_behind_their_axle_are_not_told_apart(workshop: DesignFolder) -> None:
    """Whether the cover beside the crosshead is its front one is a word of the drawing office."""
    assert apart(workshop, "-3.9 m", "-2.8 m").only(AXLE_ALONG).outcome == "conforms"


#: All axles 10 m further from the datum of the engine, which changes nothing: covers count from mid-wheelbase.
MOVED = {
    f"axle-{name}.toml": ALONG[f"axle-{name}.toml"].replace(old, new)
    for name, old, new in (
        ("first", "0 m", "10 m"),
        ("second", "3.7 m", "13.7 m"),
        ("third", "1.85 m", "11.85 m"),
    )
}


@pytest.mark.parametrize(
    ("front", "back", "wanted"),
    [
        ("3.86 m", "2.84 m", FINE),
        ("2.84 m", "3.86 m", HOLD),
        ("-3.9 m", "-2.8 m", FINE),
        ("-2.8 m", "-3.9 m", FINE),
    ],
)
def test_which_way_a_cylinder_lies_from_its_axle_hangs_on_no_datum(
    workshop: DesignFolder, front: str, back: str, wanted: tuple[str, Grade | None]
) -> None:
    """Ahead of its axle the order of the covers is told, behind it not."""
    found = apart(workshop, front, back, *MOVED.items()).only(AXLE_ALONG)
    assert (found.outcome, found.grade) == wanted


def test_no_point_of_a_cover_says_nothing(workshop: DesignFolder) -> None:
    assert one_cover(workshop, FROM_SEAT, "").only(AXLE_ALONG).outcome == "not applicable"


def test_with_one_end_of_the_block_the_front_cover_is_ahead_by_the_stroke(workshop: DesignFolder) -> None:
    for front, wanted in (("3.611 m", FINE), ("3.609 m", HOLD)):
        apart(workshop, front, "2.95 m", ("block.toml", ALONG["block.toml"]))
        workshop.replace("engine.toml", 'id = "engine"', 'id = "engine"\nstroke = "660 mm"')
        found = workshop.only(AXLE_ALONG)
        assert (found.outcome, found.grade) == wanted
