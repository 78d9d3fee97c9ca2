"""Ports, rings and lands of a liner: each agreement from both sides, by sizes written here.

The collar is at the front: faces at 35 and 860 mm from its seat, 8 mm of clearance at either end.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint import Grade
from speclint.testing import DesignFolder
from tests.plugins.agreement.test_cylinders import PISTON
from tests.plugins.liners.bench import bench

FINE, QUERY, WRONG = ("conforms", None), ("finding", Grade.QUERY), ("finding", Grade.NONCONFORMITY)
BACK = """[ports.back]
matches = "back"
from_collar = "835 mm"
height = "40 mm"
crossed_by_rings = false
[lands.front]
"""
OF_BLOCK = """
[ports.back]
of_end = "back"
from_seat = "835 mm"
height = "40 mm"
"""
BEHIND = """
kind = "piston-ring"
id = "behind"
runs_in = "liner"
place = "back"
edge_from_piston_face = "40 mm"
"""
GROOVES = """
[grooves.front]
takes = "ahead"
at = "40 mm"
width = "16 mm"
[grooves.back]
takes = "behind"
at = "94 mm"
width = "16 mm"
"""


@pytest.fixture
def design(tmp_path: Path) -> DesignFolder:
    """The liner with a port of 40 mm at 60 mm from its collar, and one at 835 mm; rings 40 mm behind either face."""
    files = {**bench(), "piston.toml": PISTON, "behind.toml": BEHIND}
    files["liner.toml"] = files["liner.toml"].replace("[lands.front]\n", BACK)
    files["block.toml"] += OF_BLOCK
    return DesignFolder(tmp_path).write(files)


def outcome(design: DesignFolder, rule: str) -> tuple[str, Grade | None]:
    found = design.only(rule, "liner")
    return found.outcome, found.grade


@pytest.mark.parametrize(
    ("chamfer", "front", "back", "ends"),
    [
        ("17 mm", "60 mm", "835 mm", FINE),
        ("16.9 mm", "60 mm", "835 mm", QUERY),
        ("", "60 mm", "835 mm", QUERY),
        ("12 mm", "55 mm", "840 mm", FINE),
        ("12 mm", "55.1 mm", "840 mm", QUERY),
        ("12 mm", "55 mm", "839.9 mm", QUERY),
    ],
)
def test_half_of_a_port_is_open_at_the_dead_centre(
    design: DesignFolder, chamfer: str, front: str, back: str, ends: tuple[str, Grade | None]
) -> None:
    """The piston stands 43 mm from the seat at the front and 852 mm at the back, its chamfer further in.

    A chamfer of 17 mm opens 40 to 60 mm of 40 to 80 mm, and 835 to 855 mm of 815 to 855 mm: 20 of 40 mm each.
    """
    cut = f'crown_chamfer = "{chamfer}"\n' if chamfer else ""
    design.replace("piston.toml", 'mass = "112 kg"\n', f'mass = "112 kg"\n{cut}')
    design.replace("liner.toml", 'from_collar = "60 mm"', f'from_collar = "{front}"')
    design.replace("liner.toml", 'from_collar = "835 mm"', f'from_collar = "{back}"')
    assert outcome(design, "liner.port-open-at-dead-centre") == ends


def test_without_a_piston_nothing_covers_a_port(design: DesignFolder) -> None:
    (design.root / "piston.toml").unlink()
    assert outcome(design, "liner.port-open-at-dead-centre") == ("not applicable", None)


@pytest.mark.parametrize(
    ("old", "new", "ends"),
    [
        ('from_collar = "60 mm"', 'from_collar = "63 mm"', FINE),
        ('from_collar = "60 mm"', 'from_collar = "63.1 mm"', WRONG),
        ('from_collar = "835 mm"', 'from_collar = "832 mm"', FINE),
        ('from_collar = "835 mm"', 'from_collar = "831.9 mm"', WRONG),
        ('height = "40 mm"\nangle', 'height = "46.2 mm"\nangle', WRONG),
    ],
)
def test_rings_run_over_what_lies_between_them(
    design: DesignFolder, old: str, new: str, ends: tuple[str, Grade | None]
) -> None:
    """From 35 + 8 + 40 = 83 mm to 860 − 8 − 40 = 812 mm."""
    design.replace("liner.toml", old, new)
    assert outcome(design, "liner.rings-over-port") == ends


@pytest.mark.parametrize(
    ("old", "new", "ends"),
    [
        ('from_collar = "60 mm"', 'from_collar = "63 mm"', FINE),
        ('from_collar = "60 mm"', 'from_collar = "63.1 mm"', WRONG),
        ('from_collar = "835 mm"', 'from_collar = "833 mm"', FINE),
        ('from_collar = "835 mm"', 'from_collar = "832.9 mm"', WRONG),
    ],
)
def test_the_grooves_say_where_rings_run(
    design: DesignFolder, old: str, new: str, ends: tuple[str, Grade | None]
) -> None:
    """The front groove 40 mm behind its face: 35 + 8 + 40 = 83 mm; the back one 149 − 94 − 16 = 39: 860 − 8 − 39 = 813.

    The rings state no edge, and one states the wrong place.
    """
    design.write({"ahead.toml": BEHIND.replace("behind", "ahead"), "piston.toml": PISTON + GROOVES})
    for name in ("ahead.toml", "behind.toml"):
        design.replace(name, 'edge_from_piston_face = "40 mm"\n', "")
    assert outcome(design.replace("liner.toml", old, new), "liner.rings-over-port") == ends


def test_a_port_said_to_be_crossed_is_crossed(design: DesignFolder) -> None:
    design.replace("liner.toml", 'from_collar = "60 mm"', 'from_collar = "300 mm"')
    assert outcome(design, "liner.rings-over-port") == WRONG
    assert design.only("liner.port-bars", "liner").outcome == "not assessed"
    design.replace(
        "liner.toml",
        'width = "300 mm"\ncrossed_by_rings = false',
        'width = "300 mm"\ncrossed_by_rings = true',
    )
    assert outcome(design, "liner.rings-over-port") == FINE


@pytest.mark.parametrize(
    ("relief", "land", "fit", "ends"),
    [
        (("330 mm", "570 mm"), "35 mm", "70 mm", FINE),
        (("330 mm", "570 mm"), "35 mm", "71 mm", FINE),
        (("330 mm", "570 mm"), "35 mm", "71.1 mm", WRONG),
        (("330 mm", "570 mm"), "40 mm", "75 mm", FINE),
        (("330 mm", "570 mm"), "40.1 mm", "75.1 mm", WRONG),
        (("35 mm", "570 mm"), "35 mm", "70 mm", FINE),
        (("34.9 mm", "570 mm"), "35 mm", "70 mm", WRONG),
        (("330 mm", "855 mm"), "35 mm", "70 mm", FINE),
        (("330 mm", "855.1 mm"), "35 mm", "70 mm", WRONG),
    ],
)
def test_lands_lie_on_metal(
    design: DesignFolder, relief: tuple[str, str], land: str, fit: str, ends: tuple[str, Grade | None]
) -> None:
    """Lands from 5 to 35 mm and from 855 to 895 mm: 30 + 40 mm; the ports from 40 to 80 and from 815 to 855 mm."""
    design.replace(
        "block.toml",
        "[ports.front]\n",
        f'[bores.main.relieved.middle]\nstarts = "{relief[0]}"\nends = "{relief[1]}"\n[ports.front]\n',
    )
    design.replace("liner.toml", 'starts = "120 mm"', 'starts = "855 mm"')
    design.replace("liner.toml", 'ends = "890 mm"', 'ends = "895 mm"')
    design.replace("liner.toml", 'ends = "35 mm"', f'ends = "{land}"')
    design.replace("liner.toml", 'fit_length = "800 mm"', f'fit_length = "{fit}"')
    assert outcome(design, "liner.lands-on-metal") == ends


@pytest.mark.parametrize(("starts", "ends"), [("35 mm", FINE), ("34.9 mm", WRONG)])
def test_no_land_lies_over_another(design: DesignFolder, starts: str, ends: tuple[str, Grade | None]) -> None:
    """A land to 35 mm and one from there to 39 mm, before the port at 40 mm: 30 + 4 + 40 mm, or 0.1 mm more."""
    design.replace("liner.toml", 'starts = "120 mm"', 'starts = "855 mm"')
    design.replace("liner.toml", 'ends = "890 mm"', 'ends = "895 mm"')
    design.replace("liner.toml", 'fit_length = "800 mm"', 'fit_length = "74 mm"')
    second = f'[lands.second]\nstarts = "{starts}"\nends = "39 mm"\n[lands.front]\n'
    design.replace("liner.toml", "[lands.front]\n", second)
    assert outcome(design, "liner.lands-on-metal") == ends
