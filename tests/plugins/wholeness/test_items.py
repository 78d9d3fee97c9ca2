"""Parts of one kind on one drawing: what tells two sizes apart, and what is no size of a drawing."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import SETTINGS, DesignFolder, expect_conforms, expect_finding, expect_not_applicable

ITEMS = "release.items-of-one-drawing"
CAM = 'kind = "cam"\ndrawing = "D-1"\nlift = "20 mm"\n'
VALVE = 'kind = "poppet-valve"\ndrawing = "D-1"\nwall = "8 mm"\n'


def two(workshop: DesignFolder, first: str, second: str, stage: str = "draft") -> DesignFolder:
    files = {"first.toml": first, "second.toml": second}
    return workshop.write(files, settings=SETTINGS.replace("draft", stage))


@pytest.mark.parametrize(
    ("first", "second", "says"),
    [
        ("", "", "neither says which item of the drawing it is"),
        ('item = "1"\n', "", "only this says which item"),
        ("", 'item = "2"\n', "only the other says which item"),
        ('item = "1"\n', 'item = "1"\n', "both are item 1"),
        ('item = "No 1"\n', 'item = "no1"\n', "both are item No 1"),
        ('item = "1"\n', 'item = "01"\n', "both are item 1"),
        ('item = "1"\n', 'item = "item 1"\n', "both are item 1"),
        ('item = "Pos. 1"\n', 'item = "001"\n', "both are item Pos. 1"),
        ('item = "1"\n', 'item = "2"\n', ""),
    ],
)
def test_two_sizes_are_two_items(workshop: DesignFolder, first: str, second: str, says: str) -> None:
    lower = CAM.replace("20 mm", "19.9 mm")
    check = two(workshop, CAM + first, lower + second).only(ITEMS, "first")
    if not says:
        expect_conforms(check)
        assert check.says == "second (second.toml) is item 2 of the drawing, and this is item 1"
        return
    expect_finding(check, grade=Grade.NONCONFORMITY, says="differs in lift 20 mm, there 19.9 mm")
    assert says in check.says
    assert str(check.where) == "first.toml:3 lift"


@pytest.mark.parametrize(
    ("second", "one_drawing"),
    [
        ("CN C 1502", True),
        ("cn-c1502", True),
        ("CN–C 1502", True),
        ("CN/C/1502", True),
        ("CN_C_1502", True),
        ("CN/C/15/02", False),
        ("CN-C-1503", False),
        ("CN-C-15-02", False),
    ],
)
def test_a_number_is_one_however_its_letters_are_parted(
    workshop: DesignFolder, second: str, one_drawing: bool
) -> None:
    cam = CAM.replace("D-1", "CN-C-1502")
    lower = CAM.replace("D-1", second).replace("20 mm", "19.9 mm")
    check = two(workshop, cam, lower).only(ITEMS, "first")
    assert check.outcome == ("finding" if one_drawing else "conforms")


@pytest.mark.parametrize(
    ("first", "second"),
    [
        ('lift = "20 mm"', 'lift = "2 cm"'),  # one size
        # ISO 286-2, 80 to 120 mm: f7 is −36 and −71 µm
        ('lift = "20 mm"\nwidth = "105 mm f7"', 'lift = "20 mm"\nwidth = "105 mm -0.036/-0.071"'),
        ('lift = "20 mm"', ""),  # stated by one alone
        ('lift = "20 mm"\n[wear]\nlimit = "0.1 mm"', 'lift = "20 mm"\n[wear]\nlimit = "0.2 mm"'),
    ],
)
def test_what_is_no_other_size(workshop: DesignFolder, first: str, second: str) -> None:
    cam = 'kind = "cam"\ndrawing = "D-1"\n'
    check = two(workshop, f"{cam}{first}\n", f"{cam}{second}\n").only(ITEMS, "first")
    expect_conforms(check)
    assert check.says == "second (second.toml) on the same drawing is made alike"


@pytest.mark.parametrize(
    ("first", "second", "alike"),
    [
        ("M24", "M24x3", True),  # ISO 261: the coarse pitch of M24 is 3 mm
        ("M24x3", "M24", True),
        ("M24×3", "M24", True),
        ("M24", "M24x2", False),
        ("M24x3", "M27", False),
        ("1 UNC", "1-8 UNC", True),  # ASME B1.1: 8 threads per inch
        ("1 UNC", "1 BSW", False),  # BS 84 has 8 too, of another form
    ],
)
def test_a_thread_is_one_with_its_coarse_pitch_and_without(
    workshop: DesignFolder, first: str, second: str, alike: bool
) -> None:
    piston = 'kind = "piston"\ndrawing = "D-1"\nfastening.thread = "{}"\n'.format
    check = two(workshop, piston(first), piston(second)).only(ITEMS, "first")
    (expect_conforms if alike else expect_finding)(check)


@pytest.mark.parametrize(
    ("first", "second"),
    [
        ('lift = "20 mm"', 'lift = "20 mm ±0.1"'),  # the limits
        ('lift = "20 mm"\nwidth = "105 mm f7"', 'lift = "20 mm"\nwidth = "105 mm -0.036/-0.070"'),
        ('lift = "20 mm"\nwidth = "105 mm f7"', 'lift = "20 mm"\nwidth = "105 mm f6"'),
        ('lift = "20 mm"\nrise_angle = "60 °"', 'lift = "20 mm"\nrise_angle = "61 °"'),
        ('lift = "20 mm"\nmaterial = "steel-C45"', 'lift = "20 mm"\nmaterial = "steel-C35"'),
    ],
)
def test_limits_angles_and_metal_are_told_apart(workshop: DesignFolder, first: str, second: str) -> None:
    cam = 'kind = "cam"\ndrawing = "D-1"\n'
    design = two(workshop, f"{cam}{first}\n", f"{cam}{second}\n")
    for name in ("first", "second"):
        expect_finding(design.only(ITEMS, name), grade=Grade.NONCONFORMITY)


@pytest.mark.parametrize(
    ("kind", "first", "second", "says"),
    [
        ("cam", 'law = "harmonic"', 'law = "cycloidal"', "law harmonic, there cycloidal"),
        ("compression-spring", 'hand = "left"', 'hand = "right"', "hand left, there right"),
        ("compression-spring", 'process = "cold"', 'process = "hot"', "process cold, there hot"),
        ("compression-spring", 'ends = "ground"', 'ends = "closed"', "ends ground, there closed"),
        (
            "compression-spring",
            'working_coils = "6.5"',
            'working_coils = "8.5"',
            "working_coils 6.5, there 8.5",
        ),
        ("compression-spring", 'total_coils = "8.5"', 'total_coils = "10.5"', "total_coils 8.5, there 10.5"),
        ("tappet", 'follower = "roller"', 'follower = "flat foot"', "follower roller, there flat foot"),
        ("chamber-cover", 'form = "flat"', 'form = "dished"', "form flat, there dished"),
        ("cylinder-cover", 'form = "flat"', 'form = "dished"', "form flat, there dished"),
        ("crosshead", 'rod_held.by = "cotter"', 'rod_held.by = "nut"', "rod_held.by cotter, there nut"),
        ("cylinder-block", 'construction = "cast"', 'construction = "fabricated"', "construction cast"),
        (
            "cylinder-liner",
            'structure = "pearlitic grey"',
            'structure = "ferritic grey"',
            "structure pearlitic grey",
        ),
        (
            "piston-ring",
            'structure = "pearlitic grey"',
            'structure = "ferritic grey"',
            "structure pearlitic grey",
        ),
        ("lagging", 'form = "round"', 'form = "flat"', "form round, there flat"),
        ("pin", 'seat.by = "press fit"', 'seat.by = "end plate"', "seat.by press fit, there end plate"),
        ("piston", 'crown.form = "dished"', 'crown.form = "two walls"', "crown.form dished, there two walls"),
        ("piston", 'fastening.by = "nut"', 'fastening.by = "forged in one"', "fastening.by nut"),
        (
            "piston",
            'fastening.seat = "taper"',
            'fastening.seat = "collar"',
            "fastening.seat taper, there collar",
        ),
        (
            "piston",
            'fastening.thread = "M85x4"',
            'fastening.thread = "M80x4"',
            "fastening.thread M85x4, there M80x4",
        ),
        (
            "piston-rod",
            'sections.a.thread = "M85x4"',
            'sections.a.thread = "M80x4"',
            "sections.a.thread M85x4",
        ),
        ("piston-rod", 'sections.a.form = "plain"', 'sections.a.form = "thread"', "sections.a.form plain"),
        ("retaining-ring", 'fastened = "screwed in"', 'fastened = "bolted on"', "fastened screwed in"),
        ("slide-bar", 'section = "I"', 'section = "rectangle"', "section I, there rectangle"),
        (
            "steam-pipe",
            'bends_are = "formed elbows"',
            'bends_are = "bent from the pipe"',
            "bends_are formed elbows",
        ),
        (
            "steam-pipe",
            'takes_up_by = "bellows"',
            'takes_up_by = "bends"',
            "takes_up_by bellows, there bends",
        ),
        (
            "valve-spindle",
            'least_section = "plain"',
            'least_section = "thread"',
            "least_section plain, there thread",
        ),
        ("valve-spindle", 'valve_held.by = "nut"', 'valve_held.by = "forged in one"', "valve_held.by nut"),
        (
            "valve-spindle",
            'valve_held.thread = "M24"',
            'valve_held.thread = "M20"',
            "valve_held.thread M24, there M20",
        ),
        (
            "valve-spindle",
            'cap.hardening = "nitrided"',
            'cap.hardening = "not hardened"',
            "cap.hardening nitrided",
        ),
        ("rocker", 'pin_surface = "nitrided"', 'pin_surface = "case hardened"', "pin_surface nitrided"),
        ("compression-spring", "shot_peened = true", "shot_peened = false", "shot_peened"),
        ("compression-spring", "preset = true", "preset = false", "preset"),
        (
            "compression-spring",
            'wire_grade = "VDSiCr"',
            'wire_grade = "VDCrV"',
            "wire_grade VDSiCr, there VDCrV",
        ),
        ("compression-spring", 'quality_grade = "1"', 'quality_grade = "2"', "quality_grade 1, there 2"),
        ("piston-rod", 'hardness = "250 HB"', 'hardness = "550 HB"', "hardness 250 HB, there 550 HB"),
        ("piston-rod", 'hardness = "250 HB ±10"', 'hardness = "250 HB ±20"', "hardness 250 HB ±10, there"),
        ("piston-rod", "sections.a.rolled = true", "sections.a.rolled = false", "sections.a.rolled"),
        ("piston-ring", 'hardness = "210 HB"', 'hardness = "230 HB"', "hardness 210 HB, there 230 HB"),
        ("piston-ring", 'phosphorus = "0.5 %"', 'phosphorus = "0.3 %"', "phosphorus 0.5 %, there 0.3 %"),
        ("cylinder-liner", 'hardness = "200 HB"', 'hardness = "220 HB"', "hardness 200 HB, there 220 HB"),
        ("cylinder-liner", 'phosphorus = "0.5 %"', 'phosphorus = "0.3 %"', "phosphorus 0.5 %, there 0.3 %"),
        (
            "piston",
            'fastening.taper = "1/12"',
            'fastening.taper = "1/10"',
            "fastening.taper 1/12, there 1/10",
        ),
        (
            "pin",
            'welding.heat_treatment = "none"',
            'welding.heat_treatment = "stress relieved"',
            "welding.heat_treatment none",
        ),
        (
            "weldment",
            'treatment.temperature = "580 °C"',
            'treatment.temperature = "620 °C"',
            "treatment.temperature 580 °C",
        ),
        ("weldment", 'treatment.time = "1 h"', 'treatment.time = "2 h"', "treatment.time 1 h, there 2 h"),
        ("weldment", 'plates.a.z_quality = "Z15"', 'plates.a.z_quality = "Z25"', "plates.a.z_quality Z15"),
    ],
)
def test_a_word_or_a_number_of_the_form_makes_another_item(
    workshop: DesignFolder, kind: str, first: str, second: str, says: str
) -> None:
    part = f'kind = "{kind}"\ndrawing = "D-1"\n'
    expect_finding(two(workshop, f"{part}{first}\n", f"{part}{second}\n").only(ITEMS, "first"), says=says)
    expect_conforms(two(workshop, f"{part}{first}\n", f"{part}{first}\n").only(ITEMS, "first"))
    expect_conforms(two(workshop, f"{part}{first}\n", part).only(ITEMS, "first"))
    apart = two(workshop, f'{part}item = "1"\n{first}\n', f'{part}item = "2"\n{second}\n')
    expect_conforms(apart.only(ITEMS, "first"))


@pytest.mark.parametrize(
    ("kind", "key", "stated", "other"),
    [
        ("tappet", "surface", "nitrided", "case hardened"),
        ("piston-rod", "general_tolerance", "ISO 2768-2 K", "ISO 2768-2 H"),
        ("cam", "hardened_depth", "1 mm", "1.5 mm"),
        ("cylinder-liner", "roughness", "3.2 µm", "6.3 µm"),
        ("pin", "seat.roughness", "3.2 µm", "6.3 µm"),
    ],
)
def test_a_finish_that_one_part_alone_states_makes_another_item(
    workshop: DesignFolder, kind: str, key: str, stated: str, other: str
) -> None:
    part = f'kind = "{kind}"\ndrawing = "D-1"\n'
    with_it, with_other = (f'{part}{key} = "{one}"\n' for one in (stated, other))
    expect_finding(two(workshop, with_it, part).only(ITEMS, "first"), says=f"{stated}, there not stated")
    expect_finding(two(workshop, with_it, part).only(ITEMS, "second"), says=f"not stated, there {stated}")
    expect_finding(two(workshop, with_it, with_other).only(ITEMS, "first"), says=f"{stated}, there {other}")
    expect_conforms(two(workshop, with_it, with_it).only(ITEMS, "first"))
    first, second = (f'{one}item = "{item}"\n' for one, item in ((part, 1), (part, 2)))
    expect_conforms(two(workshop, first + with_it[len(part) :], second).only(ITEMS, "first"))


@pytest.mark.parametrize(("grade", "differs"), [("K", False), ("H", True), ("", True)])
def test_a_class_left_out_is_that_of_all_drawings(workshop: DesignFolder, grade: str, differs: bool) -> None:
    part = 'kind = "piston-rod"\ndrawing = "D-1"\n'
    files = {"first.toml": f'{part}general_tolerance = "ISO 2768-2 K"\n', "second.toml": part}
    settings = SETTINGS + (f'[drawings]\ngeneral_geometry = "{grade}"\n' if grade else "")
    design = workshop.write(files, settings=settings)
    for name in ("first", "second"):
        (expect_finding if differs else expect_conforms)(design.only(ITEMS, name))


@pytest.mark.parametrize(
    ("kind", "first", "second"),
    [
        ("compression-spring", 'loading = "steady"', 'loading = "alternating"'),
        (
            "compression-spring",
            'seating = "both ends hinged in line"',
            'seating = "one end held and the other free"',
        ),
        ("cam", 'held_along = "set screw"', 'held_along = "nothing"'),
        ("tappet", 'locked_by = "lock nut"', 'locked_by = "tab washer"'),
        ("poppet-valve", 'serves = "inlet"', 'serves = "exhaust"'),
        ("cylinder-liner", 'entered = "pressed"', 'entered = "chilled"'),
        ("valve-seat", 'retention = "none"', 'retention = "screwed ring"'),
        ("slide-bar", 'ends = "both pinned"', 'ends = "both fixed"'),
        ("piston-ring", 'place = "front"', 'place = "back"'),
        ("piston-rod", 'sections.a.thread = "M85x4"', 'sections.a.thread = "M85 x4"'),
        ("piston-rod", 'sections.a.thread = "M80x3"', 'sections.a.thread = "M 80 × 3"'),
    ],
)
def test_how_a_part_is_fitted_locked_and_loaded_makes_no_other(
    workshop: DesignFolder, kind: str, first: str, second: str
) -> None:
    part = f'kind = "{kind}"\ndrawing = "D-1"\n'
    expect_conforms(two(workshop, f"{part}{first}\n", f"{part}{second}\n").only(ITEMS, "first"))


@pytest.mark.parametrize("key", ["clearance_open", "clearance_piston", "lift", "overtravel"])
def test_what_is_set_where_a_valve_is_fitted_is_on_no_drawing_of_it(workshop: DesignFolder, key: str) -> None:
    """The wall is, and is told."""
    first, second = f'{VALVE}{key} = "4 mm"\n', f'{VALVE}{key} = "5 mm"\n'
    expect_conforms(two(workshop, first, second).only(ITEMS, "first"))
    thicker = second.replace("8 mm", "9 mm")
    expect_finding(
        two(workshop, first, thicker).only(ITEMS, "first"), says="differs in wall 8 mm, there 9 mm;"
    )


def test_places_are_not_sizes(workshop: DesignFolder) -> None:
    """Two cams of one drawing stand at two places of their shaft; two axles at two places of the engine."""
    for kind in ("cam", "driving-axle"):
        part = f'kind = "{kind}"\ndrawing = "D-1"\n'
        first, second = f'{part}at = "1 m"\n', f'{part}at = "1.5 m"\n'
        expect_conforms(two(workshop, first, second).only(ITEMS, "first"))


def test_an_axle_with_other_balance_weights_is_another_item(workshop: DesignFolder) -> None:
    axle = 'kind = "driving-axle"\ndrawing = "D-1"\n[left]\nbalance_angle = "{} °"\n'
    design = two(workshop, axle.format(10), axle.format(11))
    expect_finding(design.only(ITEMS, "first"), says="left.balance_angle 10 °, there 11 °")


def test_the_same_studs_on_two_circles_are_one_part(workshop: DesignFolder) -> None:
    joint = 'kind = "bolted-joint"\ndrawing = "D-1"\ncircle = "{} mm"\n'
    check = two(workshop, joint.format(500), joint.format(520)).only(ITEMS, "first")
    expect_not_applicable(check, "no piece is made to its drawing by itself")


@pytest.mark.parametrize(("first", "second", "differs"), [("left", "right", False), (None, None, True)])
def test_an_angle_of_the_other_hand_is_no_other_size(
    workshop: DesignFolder, first: str | None, second: str | None, differs: bool
) -> None:
    """A drawing of both hands gives the angle of one; where neither states its hand, they are two angles."""
    texts = [
        'kind = "cylinder-liner"\ndrawing = "D-1"\n'
        + (f'hand = "{hand}"\n' if hand else "")
        + f'[ports.front]\nangle = "{angle} °"\n'
        for hand, angle in ((first, 30), (second, 330))
    ]
    check = two(workshop, *texts).only(ITEMS, "first")
    if differs:
        expect_finding(check, says="ports.front.angle 30 °, there 330 °")
    else:
        expect_conforms(check)


def test_other_kinds_and_other_numbers_are_left_alone(workshop: DesignFolder) -> None:
    other = 'kind = "piston-ring"\ndrawing = "D-1"\nwidth = "8 mm"\n'
    says = "no other part of its kind is on drawing D-1"
    check = two(workshop, CAM, other).only(ITEMS, "first")
    expect_conforms(check)
    assert check.says == says
    expect_conforms(two(workshop, CAM, CAM.replace("D-1", "D-2").replace("20", "21")).only(ITEMS, "first"))
    expect_not_applicable(two(workshop, 'kind = "cam"\n', CAM).only(ITEMS, "first"), "release.identity")


def test_no_more_than_three_sizes_are_written_out(workshop: DesignFolder) -> None:
    keys = ("lift", "base_radius", "width", "bore")
    cams = [
        'kind = "cam"\ndrawing = "D-1"\n' + "".join(f'{key} = "{size} mm"\n' for key in keys)
        for size in (40, 41)
    ]
    check = two(workshop, *cams).only(ITEMS, "first")
    assert check.says.count("there 41 mm") == 3
    assert "41 mm and 1 more; neither says" in check.says
    three = [cam.replace("bore", "hub_length").rsplit("\n", 2)[0] + "\n" for cam in cams]
    assert "more;" not in two(workshop, *three).only(ITEMS, "first").says


@pytest.mark.parametrize(
    ("kind", "stage", "grade"),
    [
        ("piston-rod", "released", Grade.HOLD),
        ("piston-rod", "for-review", Grade.NONCONFORMITY),
        ("piston-ring", "released", Grade.NONCONFORMITY),
    ],
)
def test_a_hold_where_it_can_hurt_in_a_release(
    workshop: DesignFolder, kind: str, stage: str, grade: Grade
) -> None:
    key = "sections.bore.diameter" if kind == "piston-rod" else "width"
    parts = [f'kind = "{kind}"\ndrawing = "D-1"\n{key} = "{size} mm"\n' for size in (40, 41)]
    expect_finding(two(workshop, parts[0], parts[1], stage).only(ITEMS, "first"), grade=grade)


@pytest.mark.parametrize(
    ("kind", "key", "first", "second"),
    [
        ("valve-cage", "bars", "40", "44"),
        ("poppet-valve", "beats", "2", "1"),
        ("rocker", "bush_material", '"bronze-CC483K"', '"bronze-CC480K"'),
        ("stuffing-box", "split", "false", "true"),
        ("lens-joint", "sphere_radius", '"180 mm ±0.2"', '"190 mm ±0.2"'),  # a ring is a piece of its own
        ("lens-joint", "seat", '"cone"', '"sphere"'),
        ("pipe-flange", "holes", "4", "6"),
        ("pipe-flange", "weld_throat", '"6 mm"', '"8 mm"'),
        ("cylinder-cover", "holes", "2", "4"),
    ],
)
def test_numbers_and_metals_of_a_drawing_tell_parts_apart(
    workshop: DesignFolder, kind: str, key: str, first: str, second: str
) -> None:
    part = f'kind = "{kind}"\ndrawing = "D-1"\n{key} = '
    expect_conforms(two(workshop, part + first, part + first).only(ITEMS, "first"))
    says = f"differs in {key} {first.strip(chr(34))}, there {second.strip(chr(34))}"
    expect_finding(two(workshop, part + first, part + second).only(ITEMS, "first"), says=says)


def test_bolts_of_a_crosshead_are_its_holes(workshop: DesignFolder) -> None:
    part = 'kind = "crosshead"\ndrawing = "D-1"\n[rod_held]\nbolts = '
    expect_finding(
        two(workshop, f"{part}8", f"{part}6").only(ITEMS, "first"), says="rod_held.bolts 8, there 6"
    )
