"""How far a cylinder reaches at its ends, by hand, in mm forward of its block's fixed point.

The collar's seat is at 700 at the front, in a recess 30 deep: the block's own face is at 730. The bore is 860 long from
the seat: its other face is at −160. The front cover reaches in to 25 behind the seat, 675, the back one ends at −161.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint.facts.end_outsides import diameter_at, outermost
from speclint.rules.judgement import RuleEnded
from tests.facts.bench import Bench, bench

BLOCK = """[bores.main]
seat_at = "700 mm"
recess_depth = "30 mm"
length = "860 mm"
[ends.front]
of_bore = "main"
side = "front"
face_diameter = "804 mm"
face_from_seat = "25 mm"
[ends.back]
of_bore = "main"
side = "back"
face_diameter = "754 mm"
face_from_seat = "861 mm"
"""
LINER = 'housed_in = "block"\nin_bore = "main"\n[collar]\nend = "front"\n'
OUTSIDE = 'outside_diameter = "800 mm"\n'


def made(folder: Path, block: str, covers: dict[str, str]) -> Bench:
    """A block with covers, each on the end that it names."""
    files = {"cylinder-block block": block, "cylinder-liner liner": LINER}
    for end, sizes in covers.items():
        files[f"cylinder-cover cover-{end}"] = f'closes = "block"\nof_end = "{end}"\n{sizes}'
    return bench(folder, files, "block")


@pytest.mark.parametrize(
    ("end", "cover", "old", "new", "place"),
    [
        (
            "front",
            'thickness = "80 mm"\nflange_thickness = "40 mm"\n',
            "",
            "",
            770,
        ),  # 730 + 40, beyond 675 + 80
        ("front", 'thickness = "80 mm"\nflange_thickness = "20 mm"\n', "", "", 755),
        ("front", 'thickness = "80 mm"\n', "", "", 810),  # a plate as thick as its flange
        ("front", "", "", "", 730),
        ("front", "", '"25 mm"', '"-35 mm"', 735),  # a face beyond that of the block
        ("front", 'thickness = "80 mm"\nflange_thickness = "40 mm"\n', 'recess_depth = "30 mm"\n', "", 755),
        ("front", "", 'recess_depth = "30 mm"\n', "", 675),
        ("back", 'thickness = "50 mm"\nflange_thickness = "45 mm"\n', "", "", -211),
        ("back", 'thickness = "50 mm"\nflange_thickness = "60 mm"\n', "", "", -220),
        ("back", "", "", "", -161),
        ("back", "", '"861 mm"', '"855 mm"', -160),
    ],
)
def test_what_stands_out_farthest_along_the_engine(
    tmp_path: Path, end: str, cover: str, old: str, new: str, place: float
) -> None:
    on = made(tmp_path, BLOCK.replace(old, new) if old else BLOCK, {end: cover} if cover else {})
    assert outermost(on["block"], end, on.sheet) == pytest.approx(place / 1e3)


def test_a_cover_at_the_other_end_stands_out_there_alone(tmp_path: Path) -> None:
    on = made(tmp_path, BLOCK, {"back": 'thickness = "80 mm"\n' + OUTSIDE})
    assert outermost(on["block"], "front", on.sheet) == pytest.approx(0.730)
    assert diameter_at(on["block"], "back", on.sheet) == pytest.approx(0.800)


@pytest.mark.parametrize(
    ("face", "cover", "diameter"),
    [
        ("804 mm", OUTSIDE, 0.804),
        ("796 mm", OUTSIDE, 0.800),
        ("", OUTSIDE, 0.800),
        ("804 mm", "", 0.804),
    ],
)
def test_an_end_is_as_large_as_the_larger_of_its_face_and_its_cover(
    tmp_path: Path, face: str, cover: str, diameter: float
) -> None:
    stated = f'face_diameter = "{face}"\n' if face else ""
    block = BLOCK.replace('face_diameter = "804 mm"\n', stated)
    on = made(tmp_path, block, {"front": cover} if cover else {})
    assert diameter_at(on["block"], "front", on.sheet) == pytest.approx(diameter)


@pytest.mark.parametrize("covers", [{}, {"front": 'thickness = "80 mm"\n'}])
def test_an_end_of_which_nothing_says_how_large_it_is(tmp_path: Path, covers: dict[str, str]) -> None:
    on = made(tmp_path, BLOCK.replace('face_diameter = "804 mm"\n', ""), covers)
    with pytest.raises(RuleEnded):
        diameter_at(on["block"], "front", on.sheet)
