"""Cams, shafts, cam boxes and valve gear: what each place wants, in words."""

from __future__ import annotations

import pytest

from speclint.testing import DesignFolder
from tests.plugins.wholeness.engine import told

NO_PLACE = "not applicable: it has no such place"
CAM = 'kind = "cam"\nlifts = "tappet"\nlaw = "cycloidal"'
TABLE = 'table = ["0 mm", "5 mm", "0 mm"]'
TRACKS = {name: f'{CAM}\ntrack = "{name}"' for name in ("early", "late")}


@pytest.mark.parametrize(
    ("cams", "says"),
    [
        ({"cam": CAM}, ""),
        ({}, "tappet wants a cam: none is there"),
        ({"cam": CAM.replace('law = "cycloidal"', TABLE)}, ""),
        ({"cam": f"{CAM}\n{TABLE}"}, "tappet: cam states a law and a table of lifts"),
        (
            {"cam": CAM.replace('law = "cycloidal"', "")},
            "tappet: cam states neither a law nor a table of lifts",
        ),
        ({"cam": CAM, "second": CAM}, "tappet is filled twice (cam): cam (cam.toml), second (second.toml)"),
        (TRACKS, ""),
        (
            {"early": TRACKS["early"], "late": TRACKS["early"]},
            "tappet is filled twice (cam): early (early.toml), late (late.toml)",
        ),
        (
            {**TRACKS, "cam": CAM},
            "tappet is filled 3 times (cam): cam (cam.toml), early (early.toml), late (late.toml)",
        ),
    ],
)
def test_a_tappet_has_one_cam_or_one_of_each_track(
    workshop: DesignFolder, cams: dict[str, str], says: str
) -> None:
    assert told(workshop, {"tappet": 'kind = "tappet"', **cams}, "tappet.one-cam", "tappet") == says


#: Two cylinders in a block, each with a valve at its end and a valve gear.
TWO = {
    "block": 'kind = "cylinder-block"\n'
    + "".join(
        f'[bores.{one}]\n[ends.{one}]\nof_bore = "{one}"\n[seat_bores.{one}]\nend = "{one}"\n'
        for one in ("left", "right")
    ),
    **{
        f"seat-{one}": f'kind = "valve-seat"\npressed_into = "block"\nin_bore = "{one}"'
        for one in ("left", "right")
    },
    **{f"valve-{one}": f'kind = "poppet-valve"\nupper_beat.seat = "seat-{one}"' for one in ("left", "right")},
    **{
        f"gear-{one}": f'kind = "valve-gear"\nin_block = "block"\ncylinder_bore = "{one}"'
        for one in ("left", "right")
    },
}
ONE = {
    "block": 'kind = "cylinder-block"\n[bores.main]\n[ends.front]\n[seat_bores.front]\nend = "front"',
    "seat": 'kind = "valve-seat"\npressed_into = "block"\nin_bore = "front"',
    "valve": 'kind = "poppet-valve"\nupper_beat.seat = "seat"',
    "gear": 'kind = "valve-gear"\nin_block = "block"',
}
WANTS_GEAR = "valve gear of bore {} wants a valve gear: none is there"


@pytest.mark.parametrize(
    ("parts", "says"),
    [
        (TWO, ""),
        ({**TWO, "gear-left": ""}, WANTS_GEAR.format("left")),
        ({**TWO, "gear-right": ""}, WANTS_GEAR.format("right")),
        # which of the two bores it serves is not said
        ({**TWO, "gear-left": 'kind = "valve-gear"\nin_block = "block"'}, WANTS_GEAR.format("left")),
        (
            {**TWO, "gear-left": TWO["gear-right"]},
            "valve gear of bore left wants a valve gear: none is there",
        ),
        ({**TWO, "gear-left": "", "valve-left": ""}, ""),  # a cylinder without valves wants none
        (ONE, ""),
        ({**ONE, "gear": ""}, WANTS_GEAR.format("main")),
        ({**ONE, "gear": "", "valve": ""}, NO_PLACE),
        (
            {**ONE, "second": ONE["gear"]},
            "valve gear of bore main is filled twice (valve gear): gear (gear.toml), second (second.toml)",
        ),
    ],
)
def test_a_cylinder_with_valves_has_its_gear(
    workshop: DesignFolder, parts: dict[str, str], says: str
) -> None:
    assert told(workshop, parts, "cylinder.its-valve-gear", "block") == says


BOXED = {
    "block": 'kind = "cylinder-block"',
    "other": 'kind = "cylinder-block"',
    "cambox": 'kind = "cam-box"\nmounted_on = "block"',
    "studs": 'kind = "bolted-joint"\nholds = "cambox"\nscrewed_into = "block"',
    "fit": 'kind = "fit"\n[hole]\nof = "block"\n[shaft]\nof = "cambox"',
}


@pytest.mark.parametrize(
    ("parts", "says"),
    [
        ({}, ""),
        ({"studs": ""}, "cambox wants a bolted joint: none is there"),
        ({"fit": ""}, "cambox wants a fit: none is there"),
        ({"fit": 'kind = "fit"\n[hole]\nof = "cambox"\n[shaft]\nof = "block"'}, ""),
        (
            {"studs": BOXED["studs"].replace('into = "block"', 'into = "other"')},
            "cambox: studs is screwed into other, not screwed into block",
        ),
        # on which block it stands is not said
        (
            {
                "cambox": 'kind = "cam-box"',
                "studs": BOXED["studs"].replace('into = "block"', 'into = "other"'),
            },
            "",
        ),
    ],
)
def test_a_cam_box_is_fastened(workshop: DesignFolder, parts: dict[str, str], says: str) -> None:
    assert told(workshop, {**BOXED, **parts}, "box.fastened", "cambox") == says


TURNED = {
    "cambox": 'kind = "cam-box"',
    "shaft": 'kind = "shaft"',
    "other": 'kind = "shaft"',
    **{f"tappet-{one}": 'kind = "tappet"\ncarried_in = "cambox"' for one in ("inlet", "exhaust")},
    **{
        f"cam-{one}": f'kind = "cam"\nlifts = "tappet-{one}"\nturns_on = "shaft"'
        for one in ("inlet", "exhaust")
    },
}


@pytest.mark.parametrize(
    ("parts", "says"),
    [
        ({}, ""),
        (
            {"cam-inlet": TURNED["cam-inlet"].replace('"shaft"', '"other"')},
            "shaft of cambox is filled twice (shaft): shaft (shaft.toml), other (other.toml)",
        ),
        (
            {"cam-inlet": 'kind = "cam"\nlifts = "tappet-inlet"'},
            "",
        ),  # a cam without a shaft is told of the cam
        ({"cam-inlet": "", "cam-exhaust": ""}, NO_PLACE),
    ],
)
def test_the_cams_of_a_box_turn_on_one_shaft(
    workshop: DesignFolder, parts: dict[str, str], says: str
) -> None:
    assert told(workshop, {**TURNED, **parts}, "box.has-shaft", "cambox") == says
