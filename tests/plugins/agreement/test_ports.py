"""A valve's port, as block, liner and passage have it: from both sides."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint import Grade
from speclint.testing import DesignFolder, changed
from tests.plugins.valves.gear import BLOCK, LINER, gear_files

FINE = ("conforms", None)
WRONG = ("finding", Grade.NONCONFORMITY)
#: Two openings of 250 × 40 mm at the front: 20000 mm²; the liner has the same.
PORTS = """
[bores.main]
diameter = "560 mm"
[ports.left]
of_end = "front"
width = "250 mm"
height = "40 mm"
[ports.right]
of_end = "front"
width = "250 mm"
height = "40 mm"
[ports.back]
of_end = "back"
width = "900 mm"
height = "40 mm"
"""
OPENINGS = """
[ports.left]
matches = "left"
width = "250 mm"
height = "40 mm"
[ports.right]
matches = "right"
width = "250 mm"
height = "40 mm"
"""
PASSAGE = 'kind = "steam-passage"\nid = "port"\nplace = "port"\nvalve = "valve"\narea = "20000 mm²"\n'


def ported() -> dict[str, str]:
    """An inlet valve of the front end that states a port of 20000 mm²."""
    end = ("[seat_bores.upper]\n", '[seat_bores.upper]\nend = "front"\n')
    files = {**gear_files(), "block.toml": changed(BLOCK, end) + PORTS, "liner.toml": LINER + OPENINGS}
    return {**files, "passage.toml": PASSAGE}


@pytest.fixture
def design(tmp_path: Path) -> DesignFolder:
    return DesignFolder(tmp_path).write(ported())


@pytest.mark.parametrize(
    ("file", "old", "new", "ends"),
    [
        ("valve.toml", 'port_area = "20000 mm²"', 'port_area = "20000 mm²"', FINE),
        ("valve.toml", 'port_area = "20000 mm²"', 'port_area = "20011 mm²"', WRONG),
        ("valve.toml", 'port_area = "20000 mm²"', 'port_area = "19000 mm²"', WRONG),
        ("valve.toml", 'port_area = "20000 mm²"\n', "", ("not applicable", None)),
        ("passage.toml", 'place = "port"', 'place = "chest"', FINE),
        ("passage.toml", 'area = "20000 mm²"', 'area = "25000 mm²"', WRONG),
        ("block.toml", '[ports.right]\nof_end = "front"', '[ports.right]\nof_end = "back"', WRONG),
        (
            "block.toml",
            '[ports.right]\nof_end = "front"',
            '[ports.right]\nserves = "exhaust"\nof_end = "front"',
            WRONG,
        ),
        ("liner.toml", 'matches = "right"\nwidth = "250 mm"', 'matches = "right"\nwidth = "240 mm"', WRONG),
        ("liner.toml", 'matches = "right"\nwidth = "250 mm"', 'matches = "right"\nwidth = "260 mm"', FINE),
    ],
)
def test_the_port_is_as_wide_as_it_is_cut(
    design: DesignFolder, file: str, old: str, new: str, ends: tuple[str, Grade | None]
) -> None:
    design.replace(file, old, new)
    check = design.only("port.one-area")
    assert (check.outcome, check.grade) == ends
