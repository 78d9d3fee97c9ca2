"""What titles promise in numbers, and what they name of neighbours."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder
from speclint_release.inputs.title_sizes import promised_sizes, threads_in
from tests.plugins.release.part import settings

RULE = "release.title-sizes"
VALVE = 'kind = "poppet-valve"\nid = "part"\nwall = "6 mm ±0.5"\noutside_diameter = "164 mm"\nlift = "20 mm ±0.2"\n'
SPRING = 'kind = "compression-spring"\nid = "part"\nwire = "7.9 mm ±0.04"\nmean_diameter = "50 mm ±0.4"\n'
STUDS = 'kind = "bolted-joint"\nid = "part"\nthread = "M24"\ncircle = "740 mm"\n'
PISTON = 'kind = "piston"\nid = "part"\ndiameter = "498.5 mm 0/-0.1"\n'


PARTS = {
    "valve": VALVE,
    "spring": SPRING,
    "studs": STUDS,
    "studs of a fine thread": STUDS.replace("M24", "M24x2"),
    "studs of another system": STUDS.replace("M24", "7/8 BSF"),
    "piston": PISTON,
    "fit": 'kind = "fit"\nid = "part"\nbore = { size = "500 mm H7" }\n',
    "pipe": 'kind = "steam-pipe"\nid = "part"\noutside_diameter = "168.3 mm"\nwall = "5.6 mm"\n',
    "pipe of any wall": 'kind = "steam-pipe"\nid = "part"\noutside_diameter = "168.3 mm"\n',
    "studs M36": STUDS.replace("M24", "M36"),
    "rod": 'kind = "piston-rod"\nid = "part"\nsections.end.thread = "M85x4"\nsections.head.thread = "M72x6"\n',
    "nut": 'kind = "piston"\nid = "part"\nfastening.thread = "M85x4"\n',
    "partition": 'kind = "partition"\nid = "part"\nwall = "wall"\n',
}


def titled(workshop: DesignFolder, part: str, title: str) -> DesignFolder:
    return workshop.write({"part.toml": f"{PARTS.get(part, part)}title = '{title}'\n"}, settings=settings())


@pytest.mark.parametrize(
    ("part", "title"),
    [
        ("valve", "Inlet valve, wall 12 mm"),
        ("valve", "Inlet valve of 12 mm wall, two beats"),
        ("valve", "Inlet valve, wall of 1/2 in"),
        ("valve", 'Inlet valve, 1/2" wall'),
        ("valve", "Inlet valve, Wall: 12 mm"),
        ("valve", "Inlet valve, 200 mm outside diameter"),
        ("valve", "Inlet valve, wall 6 mm, lift 25 mm"),
        ("spring", "Spring, wire 12 mm"),
        ("spring", "Spring, 12 mm wire, mean diameter 50 mm"),
        ("spring", "Spring mean diameter 60 mm"),
        ("spring", "Spring, wire 7.9 mm, 60 mm mean diameter"),
        ("studs", "Studs M30 of the front cover"),
        ("studs", "Studs M24x2 of the front cover"),
        ("studs", "Studs M30 x 110 of the front cover"),
        ("studs", "Studs M24 of the front cover, pitch circle 700 mm"),
        ("studs of another system", "Studs M24 of the front cover"),
        ("piston", "Piston, diameter 520 mm"),
        ("pipe", "Live steam pipe 168.3 x 6.3"),
        ("pipe", "Live steam pipe Ø159 × 5.6"),
        ("pipe", "Live steam pipe Ø 159 × 5.6 mm, left"),
        ("pipe", "Live steam pipe OD 159 x 5.6"),
        ("pipe", "Live steam pipe, 159,0x5,6"),
        ("pipe", "Live steam pipe 168.3 x 6.3 x 1200"),
        ("pipe", "Live steam pipe 10 x 1"),
        ("pipe", "Live steam pipe 10.1 x 1"),
        ("pipe", "Live steam pipe 20 x 9.9"),
        ("pipe", "Live steam pipe (6.25 x 0.22 in)"),
        ("pipe of any wall", "Live steam pipe 159 x 5.6"),
        ("studs M36", "Studs M36 x 3 of the front cover"),
        ("studs M36", "Studs M36x3,0 of the front cover"),
        ("studs of a fine thread", "Studs M24x3 of the front cover"),
        ("studs of a fine thread", "Studs M24x1,5 of the front cover"),
        ("rod", "Piston rod M85x6, left"),
        ("rod", "Piston rod M80"),
        ("nut", "Piston, nut M80x4"),
    ],
)
def test_a_title_that_promises_another_size_is_a_query(workshop: DesignFolder, part: str, title: str) -> None:
    check = titled(workshop, part, title).only(RULE)
    assert (check.outcome, check.grade) == ("finding", Grade.QUERY)
    assert "the title says" in check.says


@pytest.mark.parametrize(
    ("part", "title"),
    [
        ("valve", "Inlet valve, wall 6 mm"),
        ("valve", "Inlet valve, wall 6 mm, 20 mm lift, 164 mm outside diameter"),
        ("valve", "Inlet valve, 1/4 in wall"),
        ("spring", "Spring, 8 mm wire, 50 mm mean diameter"),
        ("spring", "Spring, 7.9 mm wire 50 mm mean diameter"),
        ("studs", "Studs M24 of the front cover, pitch circle 740 mm"),
        ("studs", "Studs M24 x 110 of the front cover"),
        ("studs of a fine thread", "Studs M24 of the front cover"),
        ("studs of a fine thread", "Studs M24x2 of the front cover"),
        ("piston", "Piston, 500 mm diameter"),
        ("pipe", "Live steam pipe 168.3 x 5.6"),
        ("pipe", "Live steam pipe Ø168.3 × 5.6, left"),
        ("pipe", "Live steam pipe 168,3x5,6 mm"),
        ("pipe", "Live steam pipe 168.3 mm x 5.6 mm x 1200 mm"),
        ("pipe", 'Live steam pipe 6.625 x 0.22"'),
        ("pipe of any wall", "Live steam pipe 168.3 x 7.1"),
        ("studs M36", "Studs M36 x 4 of the front cover"),
        ("studs M36", "Studs M36x4,0 of the front cover"),
        ("studs M36", "Studs M36 x 130 of the front cover"),
        ("rod", "Piston rod M85x4, left"),
        ("rod", "Piston rod M72 x 6, left"),
        ("rod", "Piston rod M85"),
        ("nut", "Piston, nut M85x4"),
    ],
)
def test_a_title_that_promises_what_is_drawn_conforms(workshop: DesignFolder, part: str, title: str) -> None:
    assert titled(workshop, part, title).only(RULE).outcome == "conforms"


@pytest.mark.parametrize(
    ("part", "title"),
    [
        ("valve", "Inlet valve, left front"),
        ("valve", "Inlet valve CN-V-1411-12, 2 off"),
        ("valve", "Inlet valve for a cage of 12 mm wall"),
        ("valve", "Inlet valve, 210 mm box"),
        ("valve", "Inlet valve, section 3000 mm²"),
        ("spring", "Spring, coil diameter 58 mm"),
        ("spring", "Spring, 11 coils, 28 N/mm"),
        ("studs", "Studs of the front cover, CN-M30"),
        ("studs", "Studs of the 500 mm cylinder"),
        ("piston", "Piston, rim diameter 480 mm"),
        ("fit", "Fit, bore 510 mm"),
        ("partition", "Partition, wall 30 mm"),
        ("pipe", "Live steam pipe, 2 x 45° bends"),
        ("pipe", "Live steam pipe, 12 x 2 off"),
        ("pipe", "Live steam pipe, 8 x 3"),
        ("pipe", "Live steam pipe, 8 x 3 mm"),
        ("pipe", "Live steam pipe, 159 x 5.6 x 159"),
        ("pipe", "Live steam pipe, 10 x 5 x 2 mm"),
        ("pipe", "Live steam pipe, 90 x 45"),
        ("pipe", "Live steam pipe for a branch 159 x 5.6"),
        ("pipe", "Live steam pipe DN 150 x 5"),
        ("pipe", "Live steam pipe CN-150 x 5"),
        ("pipe", "Live steam pipe M36 x 3"),
        ("pipe", "Live steam pipe 1200 x 159 x 5.6"),
        ("valve", "Inlet valve 180 x 12"),
    ],
)
def test_other_numbers_in_a_title_promise_nothing(workshop: DesignFolder, part: str, title: str) -> None:
    assert titled(workshop, part, title).only(RULE).outcome == "not applicable"


@pytest.mark.parametrize(
    ("wall", "outcome"),
    [("12.235 mm", "conforms"), ("12.25 mm", "finding"), ("11.765 mm", "conforms"), ("11.75 mm", "finding")],
)
def test_titles_are_rounded_to_one_part_in_fifty(workshop: DesignFolder, wall: str, outcome: str) -> None:
    """12 mm, and 2 % of it, 0.24 mm."""
    check = titled(workshop, VALVE.replace("6 mm ±0.5", wall), "Inlet valve, wall 12 mm").only(RULE)
    assert check.outcome == outcome


@pytest.mark.parametrize(
    ("title", "outcome"),
    [
        ("Pipe 171.7 x 5.6", "conforms"),
        ("Pipe 171.8 x 5.6", "finding"),
        ("Pipe 165 x 5.6", "conforms"),
        ("Pipe 164.9 x 5.6", "finding"),
        ("Pipe 168.3 x 5.71", "conforms"),
        ("Pipe 168.3 x 5.72", "finding"),
        ("Pipe 168.3 x 5.5", "conforms"),
        ("Pipe 168.3 x 5.49", "finding"),
    ],
)
def test_a_tube_by_its_diameter_and_its_wall(workshop: DesignFolder, title: str, outcome: str) -> None:
    """168.3/0.98 = 171.73 and 168.3/1.02 = 165.0; 5.6/0.98 = 5.714 and 5.6/1.02 = 5.490."""
    assert titled(workshop, "pipe", title).only(RULE).outcome == outcome


def test_a_tube_is_named_with_what_is_drawn(workshop: DesignFolder) -> None:
    assert titled(workshop, "pipe", "Pipe 168.3 x 6.3").only(RULE).says == (
        'the title says "168.3 x 6.3", and wall is 5.6 mm'
    )
    assert titled(workshop, "pipe", "Pipe 159 x 5.6").only(RULE).says == (
        'the title says "159 x 5.6", and outside diameter is 168.3 mm'
    )
    assert titled(workshop, "rod", "Rod M80x4").only(RULE).says == (
        'the title says "M80x4", and the thread is M85x4 and M72x6'
    )


def test_a_size_within_its_limits_is_promised_well(workshop: DesignFolder) -> None:
    """6 ± 0.5 mm is 6.5 mm at most: 6.6 less 2 %, 6.47, is within, and 6.7 less 2 %, 6.57, is not."""
    for said, outcome in (("6.6", "conforms"), ("6.7", "finding")):
        assert titled(workshop, VALVE, f"Inlet valve, wall {said} mm").only(RULE).outcome == outcome


def test_the_finding_says_both(workshop: DesignFolder) -> None:
    assert titled(workshop, SPRING, "Spring, wire 12 mm").only(RULE).says == (
        'the title says "wire 12 mm", and wire is 7.86 mm to 7.94 mm'
    )
    assert (
        titled(workshop, STUDS, "Studs M30").only(RULE).says == 'the title says "M30", and the thread is M24'
    )


def test_a_word_for_a_size_follows_what_opens_it() -> None:
    """Of "rim diameter 480 mm" the rim is meant; of "pin of diameter 90 mm" the pin."""
    assert [one.size for one in promised_sizes("Pin of diameter 90 mm, rim diameter 480 mm")] == [0.09]
    assert [one.key for one in promised_sizes("Valve wall 6 mm by 20 mm lift")] == ["wall", "lift"]
    assert threads_in("M24 and M24x2; M6-1, 3M24") == [("24", ""), ("24", "2")]


@pytest.mark.parametrize(
    ("title", "words", "size"),
    [
        ("Rod, 2 in diameter", "2 in diameter", 0.0508),  # an inch is 25.4 mm by definition
        ('Rod, diameter 2"', 'diameter 2"', 0.0508),
        ("Rod, 1 1/2 inches thick", "1 1/2 inches thick", 0.0381),
        ("Rod, 2 inch bore", "2 inch bore", 0.0508),
        ("Rod, length of 40 cm", "length of 40 cm", 0.4),
    ],
)
def test_a_size_is_read_in_its_unit_with_its_word(title: str, words: str, size: float) -> None:
    (found,) = promised_sizes(title)
    assert found.words == words
    assert found.size == pytest.approx(size, rel=1e-9)


@pytest.mark.parametrize(
    ("thread", "pitch"), [("M160x8", "8"), ("M160x8.1", ""), ("M20x1.5", "1.5"), ("M20 x 60", "")]
)
def test_no_metric_pitch_is_greater_than_8_mm(thread: str, pitch: str) -> None:
    """The general plan of ISO 261 ends with 8 mm (from memory): a greater number is the length of the bolt."""
    ((_, found),) = threads_in(thread)
    assert found == pitch
