"""pipe.goes-in by hand: a pipe reaches both faces of its place by its seals and what its joint gives.

Two gaskets of 2 mm. The steel grows 12.5e-6/K at 220 °C (mean of 11.5 at 20 and 13.5 at 420 °C), ± 0.3e-6: at most
12.8e-6 × 200 × 1000 = 2.56 mm; with the anchors 4.56 mm of a joint of 10 mm, which gives 5.44 mm.
"""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder, changed, on_sheet
from tests.plugins.known_metals import METALS, WITH_METALS

RULE = "pipe.goes-in"
PIPE = """
kind = "steam-pipe"
id = "pipe"
material = "known-steel"
outside_diameter = "168 mm"
design_temperature = "220 °C"
anchor_distance = "1 m"
anchor_movement = "2 mm"
takes_up_by = "sliding joint"
joint_movement = "10 mm"
faces_gap = "1003 mm"
faces_length = "1000 mm"
"""
GASKET = 'kind = "bolted-joint"\nid = "{id}"\nholds = "{of}"\nseal = "gasket"\ngasket.thickness = "2 mm"\n'
FILES = {
    "metals.toml": METALS,
    "pipe.toml": PIPE,
    "flange.toml": 'kind = "pipe-flange"\nid = "flange"\nof = "pipe"\nheld = "welded on"\n',
    "start.toml": GASKET.format(id="start", of="flange"),
    "end.toml": GASKET.format(id="end", of="pipe"),
}


@pytest.mark.parametrize(
    ("gap", "grade"),
    [
        ("1000.6 mm", None),
        ("1009.4 mm", None),
        ("1009.5 mm", Grade.NONCONFORMITY),
        ("1040 mm", Grade.NONCONFORMITY),
    ],
)
def test_a_sliding_joint_gives_what_the_hot_pipe_leaves_of_it(
    workshop: DesignFolder, gap: str, grade: Grade | None
) -> None:
    """1000 + 2 × 2 + 5.44 = 1009.44 mm."""
    files = {**FILES, "pipe.toml": changed(PIPE, ("1003 mm", gap))}
    check = workshop.write(files, settings=WITH_METALS).only(RULE, "pipe")
    assert (check.outcome, check.grade) == ("conforms" if grade is None else "finding", grade)
    if grade is not None:
        assert on_sheet(check, "Y") == pytest.approx(4.56e-3)


@pytest.mark.parametrize(("gap", "outcome"), [("998.6 mm", "conforms"), ("998.5 mm", "finding")])
def test_a_sliding_joint_is_pushed_together_by_no_more_than_that(
    workshop: DesignFolder, gap: str, outcome: str
) -> None:
    """A pipe of 994 mm with gaskets of 5 mm is 1004 mm long, of which 5.44 mm go into the joint: 998.56 mm."""
    thick = {name: FILES[name].replace('"2 mm"', '"5 mm"') for name in ("start.toml", "end.toml")}
    files = {**FILES, **thick, "pipe.toml": changed(PIPE, ("1003 mm", gap), ('"1000 mm"', '"994 mm"'))}
    assert workshop.write(files, settings=WITH_METALS).only(RULE, "pipe").outcome == outcome


@pytest.mark.parametrize(("gap", "outcome"), [("1009.9 mm", "conforms"), ("1010 mm", "finding")])
def test_anchors_are_no_nearer_than_most_of_the_faces(workshop: DesignFolder, gap: str, outcome: str) -> None:
    """Stated 0.5 m apart, but 0.8 × 1010 = 808 mm: 12.8e-6 × 200 × 808 = 2.07 mm; 10 − 4.07 mm are left to 1004 mm."""
    files = {**FILES, "pipe.toml": changed(PIPE, ("1003 mm", gap), ('"1 m"', '"0.5 m"'))}
    assert workshop.write(files, settings=WITH_METALS).only(RULE, "pipe").outcome == outcome


HOT = """
kind = "duty"
id = "duty"
[cases.running.temperatures]
cylinder-block = "220 °C"
"""
BLOCK = """
kind = "cylinder-block"
id = "block"
material = "known-steel"
[openings.end]
at = "2 m"
"""


@pytest.mark.parametrize(
    ("gap", "hot", "outcome"),
    [
        ("1006.3 mm", HOT, "conforms"),
        ("1006.4 mm", HOT, "finding"),
        ("1006.3 mm", HOT.replace("running", "drifting"), "conforms"),
        ("1006.4 mm", HOT.replace("running", "drifting"), "finding"),
        ("1009.4 mm", HOT.replace("cylinder-block", "shaft"), "conforms"),
    ],
)
def test_a_block_moves_the_end_of_the_pipe_by_more_than_is_stated(
    workshop: DesignFolder, gap: str, hot: str, outcome: str
) -> None:
    """12.8e-6 × 200 × 2000 = 5.12 mm and not 2; with 2.56 mm of the pipe 2.32 mm are left to 1004 mm.

    Drifting counts as running does. Where no case says how hot the block is, the 2 mm that are stated count.
    """
    ends = 'duty = "duty"\n[starts_at]\npart = "block"\nopening = "end"\n'
    files = {**FILES, "pipe.toml": changed(PIPE, ("1003 mm", gap)) + ends}
    files |= {"duty.toml": hot, "block.toml": BLOCK}
    assert workshop.write(files, settings=WITH_METALS).only(RULE, "pipe").outcome == outcome


@pytest.mark.parametrize(("gap", "outcome"), [("1000.51 mm", "conforms"), ("1000.49 mm", "finding")])
def test_between_ground_faces_it_passes_with_half_a_millimetre(
    workshop: DesignFolder, gap: str, outcome: str
) -> None:
    ground = {
        name: f'kind = "bolted-joint"\nid = "{name[:-5]}"\nholds = "{of}"\nseal = "ground face"\n'
        for name, of in (("start.toml", "flange"), ("end.toml", "pipe"))
    }
    text = changed(PIPE, ("1003 mm", gap), ('"sliding joint"', '"bends"'))
    check = workshop.write({**FILES, **ground, "pipe.toml": text}, settings=WITH_METALS).only(RULE, "pipe")
    assert check.outcome == outcome
    if outcome == "finding":
        assert "0.49 mm" in check.actual
        assert "between the faces" in check.actual


@pytest.mark.parametrize("by", ["bends", "lens joints"])
@pytest.mark.parametrize(("gap", "outcome"), [("1003.01 mm", "conforms"), ("1002.99 mm", "finding")])
def test_without_such_a_joint_it_is_a_millimetre_too_long_at_most(
    workshop: DesignFolder, by: str, gap: str, outcome: str
) -> None:
    """1000 + 2 × 2 − 1 mm."""
    text = changed(PIPE, ("1003 mm", gap), ('takes_up_by = "sliding joint"', f'takes_up_by = "{by}"'))
    check = workshop.write({**FILES, "pipe.toml": text}, settings=WITH_METALS).only(RULE, "pipe")
    assert check.outcome == outcome


@pytest.mark.parametrize("by", ["bends", "lens joints", ""])
@pytest.mark.parametrize(("gap", "outcome"), [("1004.99 mm", "conforms"), ("1005.01 mm", "finding")])
def test_without_such_a_joint_the_bolts_draw_a_millimetre_together(
    workshop: DesignFolder, by: str, gap: str, outcome: str
) -> None:
    """1000 + 2 × 2 + 1 mm, whatever movement is stated."""
    taken = f'takes_up_by = "{by}"' if by else ""
    text = changed(PIPE, ("1003 mm", gap), ('takes_up_by = "sliding joint"', taken))
    check = workshop.write({**FILES, "pipe.toml": text}, settings=WITH_METALS).only(RULE, "pipe")
    assert check.outcome == outcome


@pytest.mark.parametrize(
    ("end", "filled"),
    [
        ('seal = "ground face"', 2.0),
        ('seal = "gasket"\ngasket.thickness = "4 mm"', 6.0),
        (None, 5.0),
    ],
)
def test_a_ground_face_fills_nothing_and_a_joint_not_drawn_three_millimetres(
    workshop: DesignFolder, end: str | None, filled: float
) -> None:
    """Beside the 2 mm of the other end."""
    files = {name: text for name, text in FILES.items() if name != "end.toml"}
    if end is not None:
        files["end.toml"] = f'kind = "bolted-joint"\nid = "end"\nholds = "pipe"\n{end}\n'
    check = workshop.write(files, settings=WITH_METALS).only(RULE, "pipe")
    assert on_sheet(check, "e") == pytest.approx((3.0 - filled) / 1e3)


@pytest.mark.parametrize(("gap", "outcome"), [("1023.9 mm", "conforms"), ("1024.1 mm", "finding")])
def test_a_lens_ring_fills_its_thickness(workshop: DesignFolder, gap: str, outcome: str) -> None:
    """A ring of 20 mm, an end that is not drawn and 1 mm by bolts: 1000 + 20 + 3 + 1 mm."""
    text = changed(PIPE, ("1003 mm", gap), ('"sliding joint"', '"bends"'))
    ring = 'kind = "lens-joint"\nid = "ring"\nof = "pipe"\nthickness = "20 mm"\n'
    files = {"metals.toml": METALS, "pipe.toml": text, "ring.toml": ring}
    assert workshop.write(files, settings=WITH_METALS).only(RULE, "pipe").outcome == outcome


@pytest.mark.parametrize(
    "missing",
    [
        'design_temperature = "220 °C"',
        'joint_movement = "10 mm"',
        'anchor_movement = "2 mm"',
        'anchor_distance = "1 m"',
    ],
)
def test_what_the_joint_gives_needs_all_that_moves_the_pipe(workshop: DesignFolder, missing: str) -> None:
    files = {**FILES, "pipe.toml": PIPE.replace(f"{missing}\n", "")}
    check = workshop.write(files, settings=WITH_METALS).only(RULE, "pipe")
    assert check.outcome == "not assessed"
