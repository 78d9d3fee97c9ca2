"""Pipes, their joints, and the metal of what stands in steam, from both sides."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint import Grade
from speclint.testing import DesignFolder, changed, on_sheet

DUTY = """
kind = "duty"
id = "duty"
[cases.running]
live_temperature = "390 °C ±10"
exhaust_temperature = "170 °C"
[cases.running.temperatures]
steam-pipe = "380..395 °C"
lens-joint = "350 °C"
poppet-valve = "350 °C"
cylinder-block = "250..270 °C"
"""
BLOCK = 'kind = "cylinder-block"\nid = "block"\nduty = "duty"\n'
CHEST = 'kind = "steam-passage"\nid = "chest"\nin_block = "block"\nfollows = "pipe"\ncarries = "live steam"\n'
PIPE = """
kind = "steam-pipe"
id = "pipe"
duty = "duty"
joined_to = "block"
carries = "live steam"
outside_diameter = "168.3 mm"
wall = "5.6 mm"
bends = 2
length = "2.7 m"
anchor_distance = "2.1 m"
"""
LENS = """
kind = "lens-joint"
id = "lens"
of = "pipe"
bore = "157 mm"
contact_diameter = "180 mm"
outside_diameter = "205 mm"
"""
FLANGE = 'kind = "pipe-flange"\nid = "flange"\nof = "pipe"\nbore = "157 mm"\n'
VALVE = 'kind = "poppet-valve"\nid = "valve"\nduty = "duty"\nserves = "inlet"\n'
FILES = {
    "duty.toml": DUTY,
    "block.toml": BLOCK,
    "chest.toml": CHEST,
    "pipe.toml": PIPE,
    "lens.toml": LENS,
    "flange.toml": FLANGE,
    "valve.toml": VALVE,
}
HOLD, WRONG, FINE = ("finding", Grade.HOLD), ("finding", Grade.NONCONFORMITY), ("conforms", None)
Ends = tuple[str, Grade | None]


@pytest.fixture
def design(tmp_path: Path) -> DesignFolder:
    return DesignFolder(tmp_path).write(FILES)


def outcome(design: DesignFolder, rule: str, component: str) -> Ends:
    found = design.only(rule, component)
    return found.outcome, found.grade


@pytest.mark.parametrize(("carries", "ends"), [("live steam", FINE), ("exhaust steam", HOLD)])
def test_a_pipe_carries_what_its_chest_holds(design: DesignFolder, carries: str, ends: Ends) -> None:
    design.replace("pipe.toml", "live steam", carries)
    assert outcome(design, "steamway.same-steam", "pipe") == ends


#: Pipe, flange, ring and the bolts that hold the ring, all tested at 40 bar.
TESTED = {
    **{name: text for name, text in FILES.items() if name != "valve.toml"},
    "pipe.toml": PIPE + 'test_pressure = "40 bar gauge"\n',
    "flange.toml": FLANGE + 'test_pressure = "40 bar gauge"\n',
    "lens.toml": LENS + 'test_pressure = "40 bar gauge"\n',
    "bolts.toml": 'kind = "bolted-joint"\nid = "bolts"\nholds = "lens"\nbolted_to = "flange"\n'
    'test_pressure = "40 bar gauge"\n',
}


@pytest.mark.parametrize("file", ["flange.toml", "lens.toml", "bolts.toml"])
@pytest.mark.parametrize(("pressure", "ends"), [("40 bar", FINE), ("39.9 bar", HOLD), ("45 bar", FINE)])
def test_the_joints_of_a_pipe_are_tested_with_it(
    tmp_path: Path, file: str, pressure: str, ends: Ends
) -> None:
    design = DesignFolder(tmp_path).write(TESTED)
    design.replace(file, "40 bar gauge", f"{pressure} gauge")
    assert outcome(design, "pipe.tested-together", "pipe") == ends


#: A ring under 45 mm of flange, whose bolts go on to the flange of its pipe, as thick.
FLANGED = {
    "pipe.toml": PIPE,
    "lens.toml": LENS + 'flange_thickness = "45 mm"\n',
    "flange.toml": FLANGE + 'thickness = "45 mm"\n',
    "bolts.toml": 'kind = "bolted-joint"\nid = "bolts"\nholds = "lens"\nbolted_to = "flange"\n',
    "block.toml": BLOCK,
    "duty.toml": DUTY,
}
STUDDED = 'kind = "bolted-joint"\nid = "bolts"\nholds = "lens"\nscrewed_into = "block"\n'
OTHER = 'kind = "pipe-flange"\nid = "other"\nof = "pipe"\nthickness = "60 mm"\n'
NONE = ("not applicable", None)


@pytest.mark.parametrize(
    ("thickness", "ends"),
    [
        ("45 mm", FINE),
        ("45.49 mm", FINE),
        ("45.51 mm", HOLD),
        ("44.51 mm", FINE),
        ("44.49 mm", HOLD),
        ("60 mm", HOLD),
        ("45 mm ±1", FINE),
    ],
)
@pytest.mark.parametrize("file", ["flange.toml", "lens.toml"])
@pytest.mark.parametrize("bolts", [FLANGED["bolts.toml"], STUDDED])
def test_the_flange_of_a_ring_is_that_of_its_joint(
    tmp_path: Path, bolts: str, file: str, thickness: str, ends: Ends
) -> None:
    design = DesignFolder(tmp_path).write({**FLANGED, "bolts.toml": bolts})
    design.replace(file, 'thickness = "45 mm"', f'thickness = "{thickness}"')
    assert outcome(design, "lens-joint.flange-of-its-joint", "lens") == ends


@pytest.mark.parametrize(
    ("bolts", "ends"),
    [
        (FLANGED["bolts.toml"], FINE),
        (FLANGED["bolts.toml"].replace('"flange"', '"other"'), HOLD),
        (FLANGED["bolts.toml"].replace('"flange"', '"other"') + 'far_grip = "80 mm"\n', NONE),
        (FLANGED["bolts.toml"].replace('"flange"', '"block"'), NONE),
        (STUDDED, FINE),
        (STUDDED.replace('"block"', '"other"'), FINE),
        (STUDDED.replace('"block"', '"flange"'), HOLD),
    ],
)
def test_which_flange_the_bolts_of_a_ring_clamp(tmp_path: Path, bolts: str, ends: Ends) -> None:
    """Of two flanges of a pipe, 45 and 60 mm: bolts name theirs, studs clamp one in which they do not stand."""
    design = DesignFolder(tmp_path).write({**FLANGED, "other.toml": OTHER, "bolts.toml": bolts})
    assert outcome(design, "lens-joint.flange-of-its-joint", "lens") == ends


def test_each_of_two_joints_of_a_ring_is_held_against_its_flange(tmp_path: Path) -> None:
    more = FLANGED["bolts.toml"].replace('id = "bolts"', 'id = "more"').replace('"flange"', '"other"')
    design = DesignFolder(tmp_path).write({**FLANGED, "other.toml": OTHER, "more.toml": more})
    check = design.only("lens-joint.flange-of-its-joint", "lens")
    assert (check.outcome, len(check.failing)) == ("finding", 1)


def test_a_pipe_tested_harder_than_its_joints_is_told(tmp_path: Path) -> None:
    """All three others are tested at 40 bar: each is told."""
    design = DesignFolder(tmp_path).write(TESTED).replace("pipe.toml", "40 bar gauge", "40.1 bar gauge")
    check = design.only("pipe.tested-together", "pipe")
    assert len(check.failing) == 3


def test_a_wrong_word_eases_no_wall(design: DesignFolder) -> None:
    """The pipe called exhaust is worked at the pressure of the safety valves all the same: 1.66 MPa."""
    steam = 'safety_valve_pressure = "16.6 bar gauge"\nexhaust_pressure = "0.3 bar gauge"\n'
    running = DUTY.replace("[cases.running]\n", f"[cases.running]\n{steam}")
    starting = running.split('id = "duty"')[1].replace("running", "starting")
    (design.root / "duty.toml").write_text(running + starting, encoding="utf-8")
    made = 'material = "tube-16Mo3"\njoint_factor = "1"\nmill_tolerance = "12.5 %"\ncorrosion_allowance = "1 mm"\n'
    pipe = PIPE.replace("bends = 2", "bends = 0") + made
    for carries in ("live steam", "exhaust steam"):
        (design.root / "pipe.toml").write_text(pipe.replace("live steam", carries), encoding="utf-8")
        assert on_sheet(design.only("pipe.wall"), "p") == pytest.approx(1.66e6)


def test_a_pipe_that_follows_another_carries_its_steam(design: DesignFolder) -> None:
    more = PIPE.replace('id = "pipe"', 'id = "more"').replace("live steam", "exhaust steam")
    (design.root / "more.toml").write_text(f'{more}follows = "pipe"\n', encoding="utf-8")
    assert outcome(design, "steamway.same-steam", "more") == HOLD


@pytest.mark.parametrize(
    ("stated", "carries", "ends"),
    [
        ('carries = "live steam"\n', "live steam", FINE),
        ('carries = "live steam"\n', "exhaust steam", HOLD),
        ("", "exhaust steam", HOLD),
    ],
)
def test_each_neighbour_of_a_pipe_carries_its_steam(
    design: DesignFolder, stated: str, carries: str, ends: Ends
) -> None:
    """The chest holds live steam, whatever a second branch of the pipe says; a silent pipe does not hide that."""
    more = PIPE.replace('id = "pipe"', 'id = "more"').replace("live steam", carries)
    (design.root / "more.toml").write_text(f'{more}follows = "pipe"\n', encoding="utf-8")
    design.replace("pipe.toml", 'carries = "live steam"\n', stated)
    assert outcome(design, "steamway.same-steam", "pipe") == ends


@pytest.mark.parametrize(
    ("changes", "ends"),
    [
        ((("bends = 2", "bends = 0"), ("2.7 m", "2.12 m")), FINE),  # 2.1 × 1.01 = 2.121 m
        ((("bends = 2", "bends = 0"), ("2.7 m", "2.13 m")), HOLD),
        ((("bends = 2", "bends = 0"),), HOLD),
    ],
)
def test_a_straight_pipe_is_as_long_as_its_way(
    design: DesignFolder, changes: tuple[tuple[str, str], ...], ends: Ends
) -> None:
    for old, new in changes:
        design.replace("pipe.toml", old, new)
    assert outcome(design, "pipe.length-agrees", "pipe") == ends


@pytest.mark.parametrize(
    ("old", "new", "ends"),
    [
        ('bore = "157 mm"', 'bore = "159 mm"', FINE),  # 168.3 less 2 × 5.6 is 157.1 mm
        ('bore = "157 mm"', 'bore = "159.2 mm"', WRONG),
    ],
)
def test_a_lens_of_its_pipe(design: DesignFolder, old: str, new: str, ends: Ends) -> None:
    assert outcome(design.replace("lens.toml", old, new), "lens-joint.of-its-pipe", "lens") == ends


@pytest.mark.parametrize(("collar", "ends"), [("195 mm", FINE), ("194.5 mm", WRONG)])
def test_a_seat_is_cut_in_a_collar_that_is_wide_enough(design: DesignFolder, collar: str, ends: Ends) -> None:
    design.write({"lens.toml": f'{LENS}seat_mouth = "195 mm"\n'})
    design.write({"pipe.toml": f'{PIPE}collar_diameter = "{collar}"\n'})
    assert outcome(design, "lens-joint.of-its-pipe", "lens") == ends


@pytest.mark.parametrize(("bore", "ends"), [("156.1 mm", FINE), ("156 mm", WRONG)])
def test_a_flange_of_its_pipe(design: DesignFolder, bore: str, ends: Ends) -> None:
    assert outcome(design.replace("flange.toml", "157 mm", bore), "flange.of-its-pipe", "flange") == ends


@pytest.mark.parametrize(
    ("part", "old", "new", "ends"),
    [
        ("pipe", "380..395 °C", "380..405 °C", FINE),  # steam of at most 400 °C, and 5 K
        ("pipe", "380..395 °C", "380..405.1 °C", HOLD),
        ("pipe", "380..395 °C", "340..370 °C", FINE),  # 30 K below
        ("pipe", "380..395 °C", "340..369.9 °C", HOLD),
        ("lens", 'lens-joint = "350 °C"', 'lens-joint = "340 °C"', FINE),  # 60 K below
        ("lens", 'lens-joint = "350 °C"', 'lens-joint = "339.9 °C"', HOLD),
        ("valve", 'poppet-valve = "350 °C"', 'poppet-valve = "339.9 °C"', HOLD),
        ("valve", 'poppet-valve = "350 °C"', 'poppet-valve = "405.1 °C"', HOLD),
        ("block", "250..270 °C", "250..400 °C", FINE),
        ("block", "250..270 °C", "250..400.1 °C", HOLD),
        ("block", "250..270 °C", "20 °C", FINE),
        ("pipe", "390 °C ±10", "450 °C ±10", HOLD),
    ],
)
def test_metal_follows_its_steam(design: DesignFolder, part: str, old: str, new: str, ends: Ends) -> None:
    assert outcome(design.replace("duty.toml", old, new), "duty.metal-follows-steam", part) == ends


@pytest.mark.parametrize(
    ("metal", "ends"), [("140 °C", FINE), ("139.9 °C", HOLD), ("175 °C", FINE), ("176 °C", HOLD)]
)
def test_an_exhaust_pipe_follows_the_exhaust(design: DesignFolder, metal: str, ends: Ends) -> None:
    design.replace("pipe.toml", "live steam", "exhaust steam").replace(
        "chest.toml", "live steam", "exhaust steam"
    )
    design.replace("duty.toml", "380..395 °C", metal)
    assert outcome(design, "duty.metal-follows-steam", "pipe") == ends


def test_an_exhaust_valve_is_only_no_hotter_than_live_steam(design: DesignFolder) -> None:
    design.replace("valve.toml", "inlet", "exhaust")
    design.replace("duty.toml", 'poppet-valve = "350 °C"', 'poppet-valve = "200 °C"')
    assert outcome(design, "duty.metal-follows-steam", "valve") == FINE


@pytest.mark.parametrize("held", ["lens", "flange"])
@pytest.mark.parametrize(("metal", "ends"), [("320 °C", FINE), ("319.9 °C", HOLD), ("401 °C", HOLD)])
def test_the_bolts_of_a_live_steam_pipe_are_nearly_as_hot(
    design: DesignFolder, held: str, metal: str, ends: Ends
) -> None:
    """No more than 80 K below 400 °C, the hottest live steam, and no hotter than it."""
    bolts = f'kind = "bolted-joint"\nid = "bolts"\nduty = "duty"\nholds = "{held}"\n'
    design.write({"bolts.toml": bolts})
    design.replace(
        "duty.toml", "[cases.running.temperatures]\n", f'[cases.running.temperatures]\nbolts = "{metal}"\n'
    )
    assert outcome(design, "duty.metal-follows-steam", "bolts") == ends


@pytest.mark.parametrize("part", ["pipe", "lens"])
def test_the_bolts_of_what_is_of_no_known_pipe_may_be_cool(design: DesignFolder, part: str) -> None:
    """A joint that holds a pipe itself, or a lens that does not say of which, stands round no live steam."""
    lens = 'kind = "lens-joint"\nid = "lens"\nduty = "duty"\n'
    bolts = f'kind = "bolted-joint"\nid = "bolts"\nduty = "duty"\nholds = "{part}"\n'
    design.write({"lens.toml": lens, "bolts.toml": bolts})
    design.replace(
        "duty.toml", "[cases.running.temperatures]\n", '[cases.running.temperatures]\nbolts = "90 °C"\n'
    )
    assert outcome(design, "duty.metal-follows-steam", "bolts") == FINE


def test_the_bolts_of_an_exhaust_pipe_may_be_cool(design: DesignFolder) -> None:
    bolts = 'kind = "bolted-joint"\nid = "bolts"\nduty = "duty"\nholds = "flange"\n'
    design.write({"bolts.toml": bolts})
    for file in ("pipe.toml", "chest.toml"):
        design.replace(file, "live steam", "exhaust steam")
    design.replace(
        "duty.toml", "[cases.running.temperatures]\n", '[cases.running.temperatures]\nbolts = "90 °C"\n'
    )
    assert outcome(design, "duty.metal-follows-steam", "bolts") == FINE


@pytest.mark.parametrize(
    ("rule", "part"), [("flange.of-its-pipe", "flange"), ("lens-joint.of-its-pipe", "lens")]
)
def test_a_flange_or_a_ring_of_another_part_has_no_pipe_to_be_held_against(
    design: DesignFolder, rule: str, part: str
) -> None:
    design.write({"nozzle.toml": 'kind = "blast-nozzle"\n'})
    assert outcome(design.replace(f"{part}.toml", 'of = "pipe"', 'of = "nozzle"'), rule, part) == (
        "not applicable",
        None,
    )


ANCHORED = {"pipe.toml": PIPE + 'faces_gap = "2000 mm"\nfaces_length = "1900 mm"\n'}


@pytest.mark.parametrize(
    ("old", "new", "ends"),
    [
        ("2.1 m", "1601 mm", FINE),
        ("2.1 m", "1599 mm", ("finding", Grade.QUERY)),
        ("2.1 m", "210 mm", ("finding", Grade.QUERY)),
    ],
)
def test_anchors_are_no_nearer_than_the_ends(
    workshop: DesignFolder, old: str, new: str, ends: tuple[str, Grade | None]
) -> None:
    """0.8 of 2000 mm between the faces are 1600 mm."""
    found = workshop.write({**FILES, "pipe.toml": changed(ANCHORED["pipe.toml"], (old, new))})
    made = found.only("pipe.anchors-at-its-ends", "pipe")
    assert (made.outcome, made.grade) == ends


@pytest.mark.parametrize(
    ("gap", "length", "ends"),
    [
        ("2002 mm", "1900 mm", FINE),
        ("1998 mm", "1900 mm", ("finding", Grade.QUERY)),
        ("1900 mm", "2002 mm", FINE),
        ("1900 mm", "1845 mm", ("finding", Grade.QUERY)),
    ],
)
def test_anchors_are_little_farther_apart_than_the_ends(
    workshop: DesignFolder, gap: str, length: str, ends: Ends
) -> None:
    """Anchors 2100 mm apart, 100 mm more than the faces at most: these are 2000 mm apart at the least."""
    text = changed(ANCHORED["pipe.toml"], ("1900 mm", length), ("2000 mm", gap))
    made = workshop.write({**FILES, "pipe.toml": text}).only("pipe.anchors-at-its-ends", "pipe")
    assert (made.outcome, made.grade) == ends


def test_without_a_gap_the_length_between_its_faces_counts(workshop: DesignFolder) -> None:
    """0.8 of 1900 mm are 1520 mm."""
    for apart, outcome in (("1521 mm", "conforms"), ("1519 mm", "finding")):
        text = changed(ANCHORED["pipe.toml"], ("2.1 m", apart), ('faces_gap = "2000 mm"\n', ""))
        made = workshop.write({**FILES, "pipe.toml": text}).only("pipe.anchors-at-its-ends", "pipe")
        assert made.outcome == outcome


@pytest.mark.parametrize(
    ("gap", "length", "anchors", "ends"),
    [
        ("1000 mm", "1900 mm", "1521 mm", FINE),
        ("1000 mm", "1900 mm", "1519 mm", ("finding", Grade.QUERY)),
        ("1000 mm", "1900 mm", "1000 mm", ("finding", Grade.QUERY)),
        ("2000 mm", "1000 mm", "1599 mm", ("finding", Grade.QUERY)),
        ("2000 mm", "1000 mm", "1601 mm", FINE),
    ],
)
def test_of_two_distances_of_the_faces_the_greater_counts(
    workshop: DesignFolder, gap: str, length: str, anchors: str, ends: Ends
) -> None:
    """A gap that is as wrong as the anchors does not excuse them: 0.8 of 1900 mm are 1520, of 2000 mm 1600 mm."""
    text = changed(ANCHORED["pipe.toml"], ("2000 mm", gap), ("1900 mm", length), ("2.1 m", anchors))
    made = workshop.write({**FILES, "pipe.toml": text}).only("pipe.anchors-at-its-ends", "pipe")
    assert (made.outcome, made.grade) == ends


@pytest.mark.parametrize(
    ("bends", "length", "ends"),
    [
        (0, "2.499 m", FINE),
        (0, "2.501 m", ("finding", Grade.QUERY)),
        (1, "2.501 m", FINE),
    ],
)
@pytest.mark.parametrize("anchors", ['anchor_distance = "2.1 m"\n', ""])
def test_a_pipe_without_bends_is_about_as_long_as_between_its_faces(
    workshop: DesignFolder, anchors: str, bends: int, length: str, ends: Ends
) -> None:
    """2000 mm over 0.8 are 2500 mm."""
    text = changed(
        ANCHORED["pipe.toml"],
        ("bends = 2", f"bends = {bends}"),
        ("2.7 m", length),
        ('anchor_distance = "2.1 m"\n', anchors),
    )
    made = workshop.write({**FILES, "pipe.toml": text}).only("pipe.anchors-at-its-ends", "pipe")
    assert made.outcome == ("not applicable" if not anchors and bends else ends[0])
    assert made.grade == ends[1]
