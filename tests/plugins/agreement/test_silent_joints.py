"""Joints, bolts and the fastening of a block to its frames where a place is silent."""

from __future__ import annotations

import pytest

from speclint.testing import DesignFolder, changed
from tests.plugins.agreement.silent import ASKED, FINE, SILENT, Row, expect_said, named, rows
from tests.plugins.agreement.test_frames import _PLAN, _SIDES, _WELDMENT
from tests.plugins.joints import bench as joint
from tests.plugins.joints.test_frames import files as fastened
from tests.plugins.joints.test_lenses import LENS

_FASTENED = fastened()
#: Bolts of M24 through 50 mm of a cover's flange into a block.
_STUDS = {**joint.FILES, "speclint.toml": _FASTENED["speclint.toml"]}
#: The cut-out of the back pad, in a frame plate as thick as that which the bolts go through.
_BEARING = {
    **_FASTENED,
    "block.toml": changed(_FASTENED["block.toml"], ('at = "0 mm"', 'at = "0 mm"\nheight = "300 mm"')),
    "face-back.toml": _FASTENED["face-back.toml"]
    + 'bearing_height = "300 mm"\nbearing_depth = "28 mm"\nin_frame = "frame"\n',
    "frame.toml": 'kind = "frame"\nthickness = "28 mm"\n',
}
#: A pad of 250 × 280 mm with 30 holes of 25 mm.
_SIDED = {
    **_FASTENED,
    "block.toml": changed(
        _FASTENED["block.toml"], ('area = "62000 mm²"', _SIDES.replace("62000 mm²", "55000 mm²"))
    ),
}
_WEIGHED = {**_FASTENED, "plan.toml": _PLAN, "weldment.toml": _WELDMENT}
#: Studs of a gland, whose flange may be slotted.
_GLANDED = {
    **_STUDS,
    "gland.toml": 'kind = "gland"\n',
    "studs.toml": changed(joint.STUDS, ('holds = "cover"', 'holds = "gland"')),
}
#: A cover that states the circle and the holes of its joint.
_CIRCLED = {
    **_STUDS,
    "cover.toml": f'{joint.COVER}circle = "700 mm"\nholes = 20\n',
}
#: A liner of 500 mm under the cover, the recess of its collar 590 mm wide: 55 mm within the circle.
_LINED = {
    **_STUDS,
    "block.toml": joint.BLOCK
    + changed(joint.ENDS, ('side = "front"', 'of_bore = "main"\nside = "front"'))
    + '[bores.main]\nrecess_diameter = "590 mm"\n',
    "liner.toml": 'kind = "cylinder-liner"\nhoused_in = "block"\nin_bore = "main"\nbore = "500 mm"\n'
    'last_bore = "560 mm"\n[collar]\nend = "front"\n',
}
#: A lens ring that touches on 150 mm.
_LENS = {
    **_STUDS,
    "lens.toml": LENS,
    "lens-studs.toml": changed(
        joint.STUDS,
        ('id = "studs"', 'id = "lens-studs"'),
        ('holds = "cover"', 'holds = "lens"'),
        ('seal = "gasket"', 'seal = "lens ring"'),
        ("[gasket]", 'pressure_circle = "150 mm"\n[gasket]'),
    ),
}

ROWS: list[Row] = [
    *rows(
        "frame.pads-reciprocal",
        "fastening",
        _FASTENED,
        (SILENT, ("fastening.toml", 'other_pad = "front"\n')),
        (ASKED, ("fastening.toml", 'holds = "block"\n')),
        (FINE, ("sliding.toml", 'other_pad = "back"\n')),
        (FINE, ("sliding.toml", 'bore = "main"\n')),
        (ASKED, ("fastening.toml", 'bore = "main"\n')),
        (FINE, ("sliding.toml", 'carried_mass = "2000 kg"\n')),
        (FINE, ("fastening.toml", 'carried_mass = "2000 kg"\n')),
        (FINE, ("sliding.toml", 'shock = "3"\n')),
        (FINE, ("fastening.toml", 'shock = "3"\n')),
        (SILENT, ("sliding.toml", 'pad = "front"\nother_pad = "back"\n')),
    ),
    *rows(
        "pad.bears-within",
        "face-back",
        _BEARING,
        (FINE, ("face-back.toml", 'bearing_height = "300 mm"\n')),
        (FINE, ("block.toml", 'height = "300 mm"\n')),
        (FINE, ("fastening.toml", 'frame_grip = "28 mm"\n')),
        (FINE, ("face-back.toml", 'in_frame = "frame"\n')),
        (FINE, ("frame.toml", 'thickness = "28 mm"\n')),
        (
            SILENT,
            ("face-back.toml", 'bearing_height = "300 mm"\nbearing_depth = "28 mm"\n'),
        ),
        (ASKED, ("face-back.toml", 'pad = "back"\n')),
        (ASKED, ("face-back.toml", 'locks = "block"\n')),
    ),
    *rows(
        "block.fixed-at-pad",
        "block",
        _FASTENED,
        (ASKED, ("block.toml", "locates = true\n")),
        (ASKED, ("block.toml", "locates = false\n")),
        (FINE, ("block.toml", 'at = "0 mm"\n')),
    ),
    *rows(
        "pad.area-of-sides",
        "block",
        _SIDED,
        (SILENT, ("block.toml", 'area = "55000 mm²"\n')),
        (SILENT, ("block.toml", 'width = "250 mm"\n')),
        (SILENT, ("block.toml", 'height = "280 mm"\n')),
    ),
    *rows(
        "frame.thrust-of-all",
        "fastening",
        _FASTENED,
        (SILENT, ("fastening.toml", 'bore = "main"\n')),
        (ASKED, ("fastening.toml", 'holds = "block"\n')),
    ),
    *rows(
        "frame.mass-adds-up",
        "fastening",
        _WEIGHED,
        (SILENT, ("fastening.toml", 'carried_mass = "2000 kg"\n')),
        (FINE, ("plan.toml", 'lifts = "block"\n')),  # the weldment states its mass
        (SILENT, ("plan.toml", 'lifts = "block"\n'), ("weldment.toml", 'makes = "block"\n')),
        (ASKED, ("fastening.toml", 'holds = "block"\n')),
    ),
    *rows(
        "frame.bolt-fits-hole",
        "fastening",
        _FASTENED,
        (ASKED, ("fastening.toml", 'hole = "25 mm"\n')),
        (ASKED, ("fastening.toml", 'thrust_taken_by = "friction"\n')),
    ),
    *rows(
        "joint.bolt-passes",
        "studs",
        _STUDS,
        (ASKED, ("studs.toml", 'hole = "26 mm"\n')),
        (FINE, ("studs.toml", 'across_flats = "36 mm"\n')),
        (FINE, ("studs.toml", 'face = "36 mm"\n')),
        (ASKED, ("studs.toml", 'thread = "M24"\nthread_made = "cut"\n')),
    ),
    *rows("joint.bolt-passes", "studs", _GLANDED, (SILENT, ("studs.toml", 'hole = "26 mm"\n'))),
    *rows(
        "joint.hole-in-plate",
        "studs",
        _STUDS,
        (SILENT, ("studs.toml", 'depth = "56 mm"\n')),
        (SILENT, ("studs.toml", 'set_in = "8.8 mm"\n')),
    ),
    *rows(
        "joint.one-circle",
        "studs",
        _CIRCLED,
        (FINE, ("cover.toml", 'circle = "700 mm"\n')),
        (FINE, ("cover.toml", "holes = 20\n")),
        (SILENT, ("studs.toml", 'holds = "cover"\n')),
        (ASKED, ("studs.toml", 'circle = "700 mm"\n')),
        (ASKED, ("studs.toml", "count = 20\n")),
    ),
    *rows(
        "joint.pressure-of-part",
        "studs",
        _STUDS,
        (SILENT, ("studs.toml", 'pressure = "cylinder"\n')),
        (SILENT, ("studs.toml", 'holds = "cover"\n')),
    ),
    *rows(
        "joint.grip-of-flange",
        "studs",
        _STUDS,
        (SILENT, ("studs.toml", 'grip = "50 mm"\n')),
        (SILENT, ("cover.toml", 'flange_thickness = "50 mm"\n')),
    ),
    *rows(
        "joint.ring-outside-bore",
        "studs",
        _STUDS,
        (ASKED, ("studs.toml", 'inside = "604 mm"\n')),
        (ASKED, ("studs.toml", 'outside = "636 mm"\n')),
        (ASKED, ("studs.toml", 'seal = "gasket"\n')),
        (ASKED, ("studs.toml", 'circle = "700 mm"\n')),
        (ASKED, ("studs.toml", 'hole = "26 mm"\n')),
        (ASKED, ("studs.toml", 'holds = "cover"\n')),
    ),
    *rows(
        "joint.edge-left",
        "studs",
        _LINED,
        (SILENT, ("studs.toml", 'edge_distance = "30 mm"\n')),
        (SILENT, ("studs.toml", 'circle = "700 mm"\n')),
        (ASKED, ("studs.toml", 'fastener = "stud"\n')),
        (ASKED, ("studs.toml", 'holds = "cover"\n')),
    ),
    *rows(
        "joint.pressure-circle",
        "lens-studs",
        _LENS,
        (SILENT, ("lens-studs.toml", 'pressure_circle = "150 mm"\n')),
        (ASKED, ("lens-studs.toml", 'seal = "lens ring"\n')),
        (ASKED, ("lens-studs.toml", 'holds = "lens"\n')),
    ),
]


@pytest.mark.parametrize("row", ROWS, ids=named)
def test_what_is_said_where_a_place_is_silent(workshop: DesignFolder, row: Row) -> None:
    expect_said(workshop, row)
