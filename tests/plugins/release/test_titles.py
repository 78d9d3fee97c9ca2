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
    ("wall", "title", "outcome"),
    [
        ("12.49 mm", "wall 12 mm", "conforms"),
        ("12.51 mm", "wall 12 mm", "finding"),
        ("11.51 mm", "wall 12 mm", "conforms"),
        ("11.49 mm", "wall 12 mm", "finding"),
        ("12.54 mm", "wall 12.5 mm", "conforms"),
        ("12.56 mm", "wall 12.5 mm", "finding"),
        ("12.56 mm", "12.5 mm wall", "finding"),
        ("12.56 mm", "12,5 wall", "finding"),
        ("12.5 mm", "12,5 wall", "conforms"),
        ("40.39 mm", "wall 40 mm", "conforms"),  # 0.5 mm is more than 1 % of 40
        ("40.51 mm", "wall 40 mm", "finding"),
        ("10.09 mm", "wall 1 cm", "conforms"),  # 1 % of 10
        ("10.11 mm", "wall 1 cm", "finding"),
        ("9.61 mm", "3/8 in wall", "conforms"),  # 9.525 and 1 %, 0.095
        ("9.63 mm", "3/8 in wall", "finding"),
    ],
)
def test_titles_are_rounded_in_their_last_figure(
    workshop: DesignFolder, wall: str, title: str, outcome: str
) -> None:
    """By hand: half of the last figure; of round tens 5 mm, of inches half of a sixteenth, and no more than 1 %."""
    check = titled(workshop, VALVE.replace("6 mm ±0.5", wall), f"Inlet valve, {title}").only(RULE)
    assert check.outcome == outcome


@pytest.mark.parametrize(
    ("diameter", "title", "outcome"),
    [
        ("80.79 mm", "diameter 80 mm", "conforms"),  # 1 % of 80
        ("80.81 mm", "diameter 80 mm", "finding"),
        ("81.49 mm", "diameter 81 mm", "conforms"),
        ("81.51 mm", "diameter 81 mm", "finding"),
        ("102.35 mm", "diameter 4 in", "conforms"),  # 101.6 and half of a sixteenth, 0.794
        ("102.45 mm", "diameter 4 in", "finding"),
        ("0.09 m", "diameter 0.09 m", "conforms"),
        ("90.89 mm", "diameter 0.09 m", "conforms"),  # half of the last figure is 5 mm, and 1 % is 0.9
        ("90.91 mm", "diameter 0.09 m", "finding"),
    ],
)
def test_a_round_size_may_be_rounded_by_a_share(
    workshop: DesignFolder, diameter: str, title: str, outcome: str
) -> None:
    rod = f'kind = "piston-rod"\nid = "part"\ndiameter = "{diameter}"\n'
    assert titled(workshop, rod, f"Piston rod, {title}").only(RULE).outcome == outcome


@pytest.mark.parametrize(
    ("title", "outcome"),
    [
        ("Liner, 500 mm bore", "conforms"),
        ("Liner, 510 mm bore", "finding"),
        ("Liner, 505 mm bore", "finding"),
        ("Liner, 501 mm bore", "finding"),
        ("Liner, 500 bore", "conforms"),
        ("Liner, 510 bore", "finding"),
        ("Liner, bore Ø500 H8", "conforms"),
        ("Liner, bore Ø510 H8", "finding"),
        ("Liner, Bohrung 510 mm", "finding"),
        ("Liner Ø500", "conforms"),
        ("Liner Ø578", "conforms"),  # it has two diameters
        ("Liner Ø510", "finding"),
        ("Liner, 510 mm dia bore", "finding"),
        ("Liner, 500 I.D.", "not applicable"),  # its bore stands under another key
        ("Liner, 578 O.D.", "conforms"),
        ("Liner, 590 OD", "finding"),
        ("Liner, 590 o.d. x 900", "finding"),
        ("Liner, no. 20 bore", "not applicable"),
        ("Liner 2 bore", "not applicable"),
        ("Liner, collar Ø620", "not applicable"),
        ("Liner, 19 11/16 in bore", "conforms"),  # 500.06 mm
        ("Liner, 19-3/4 in bore", "finding"),  # 501.65 mm
        ('Liner, 19 11/16" bore', "conforms"),
        ("Liner, 19.7 in bore", "conforms"),  # 500.38 mm
    ],
)
def test_a_liner_by_its_title(workshop: DesignFolder, title: str, outcome: str) -> None:
    """A bore of 500 mm to 500.097, an outside of 578: 510 less 5 is 505, and 19 11/16 in is 19.6875 × 25.4 mm."""
    liner = 'kind = "cylinder-liner"\nid = "part"\nbore = "500 mm H8"\noutside_diameter = "578 mm"\n'
    assert titled(workshop, liner, title).only(RULE).outcome == outcome


@pytest.mark.parametrize(
    ("title", "outcome"),
    [
        ("Crosshead pin Ø95", "conforms"),
        ("Crosshead pin Ø 95 mm", "conforms"),
        ("Crosshead pin ⌀95,0", "conforms"),
        ("Crosshead pin Ø90", "finding"),
        ("Crosshead pin, 95Ø", "conforms"),
        ("Crosshead pin, 90 Ø", "finding"),
        ("Crosshead pin dia 95", "conforms"),
        ("Crosshead pin dia. 90", "finding"),
        ("Crosshead pin diam. 90 mm", "finding"),
        ("Crosshead pin, 90 dia.", "finding"),
        ("Crosshead pin, 90 mm dia., left", "finding"),
        ("Kreuzkopfbolzen, Durchmesser 90", "finding"),
        ("Crosshead pin, hole Ø20", "not applicable"),
        ("Crosshead pin, 2 holes Ø20", "not applicable"),
        ("Crosshead pin for a bush Ø90", "not applicable"),
        ("Crosshead pin 95", "not applicable"),
    ],
)
def test_a_diameter_by_its_sign(workshop: DesignFolder, title: str, outcome: str) -> None:
    rod = 'kind = "piston-rod"\nid = "part"\ndiameter = "95 mm h8"\n'
    assert titled(workshop, rod, title).only(RULE).outcome == outcome


@pytest.mark.parametrize(
    ("part", "title", "outcome"),
    [
        ('kind = "crosshead"\nid = "part"\nrod_held.thread = "M24"\n', "Crosshead, bolts M20", "finding"),
        ('kind = "crosshead"\nid = "part"\nrod_held.thread = "M24"\n', "Crosshead, 4 bolts M24", "conforms"),
        ('kind = "slide-bar"\nid = "part"\nsupports.a.thread = "M24"\n', "Slide bar, bolts M20", "finding"),
        ('kind = "slide-bar"\nid = "part"\nsupports.a.thread = "M24"\n', "Slide bar, bolts M24", "conforms"),
        ('kind = "valve-spindle"\nid = "part"\nvalve_held.thread = "M24"\n', "Spindle M20", "finding"),
        ('kind = "lagging"\nid = "part"\nfixing.thread = "M6"\n', "Lagging, screws M8", "finding"),
        ("studs", "Bolts M20 of the front cover", "finding"),
        ("studs", "M20s of the front cover", "finding"),
        ("studs", "12 off M20's of the front cover", "finding"),
        ("studs", "M24s of the front cover", "conforms"),
    ],
)
def test_bolts_in_a_title(workshop: DesignFolder, part: str, title: str, outcome: str) -> None:
    plain = title.replace("'", "’")
    assert titled(workshop, part, plain).only(RULE).outcome == outcome


@pytest.mark.parametrize(
    ("title", "outcome"),
    [
        ("Pipe 168.34 x 5.6", "finding"),
        ("Pipe 168.4 x 5.6", "finding"),
        ("Pipe 168 x 5.6", "conforms"),
        ("Pipe 169 x 5.6", "finding"),
        ("Pipe 168.3 x 6", "conforms"),
        ("Pipe 168.3 x 5", "finding"),
        ("Pipe 168.3 x 5.7", "finding"),
        ("Pipe 168.3 dia. x 5.6 wall", "conforms"),
        ("Pipe 168.3 dia. x 8 wall", "finding"),
        ("Pipe 219.1 dia. x 5.6 wall", "finding"),
        ("Pipe 168.3 OD x 5.6 WT", "conforms"),
        ("Pipe 168.3 O.D. x 8 W.T.", "finding"),
        ("Pipe 168.3 mm dia x 8 mm wall", "finding"),
        ("Rohr 168,3 x 8,0", "finding"),
        ("Rohr Ø168,3 x 5,6", "conforms"),
        ("Rohr, Wanddicke 8 mm", "finding"),
        ("Pipe 6 5/8 in OD x 0.22 in wall", "conforms"),
        ("Pipe 6 5/8 in OD x 0.28 in wall", "finding"),
    ],
)
def test_a_tube_by_its_diameter_and_its_wall(workshop: DesignFolder, title: str, outcome: str) -> None:
    """168.3 and 5.6 mm: 168 is 167.5 to 168.5, 169 from 168.5; 6 is from 5.5, 5 to 5.5; 0.22 in is 5.588 mm."""
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
    """6 ± 0.5 mm is 6.5 mm at most: 7 may be 6.5 and 6.54 may be 6.535; 6.6 is 6.55 at least."""
    for said, outcome in (("6.5", "conforms"), ("6.9", "finding"), ("6.6", "finding"), ("6.51", "finding")):
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
    ("thread", "pitch"),
    [
        ("M160x8", "8"),
        ("M 80 x 3", "3"),
        ("M 80×3", "3"),
        ("Nuts M 24", ""),
        ("M160x8.1", ""),
        ("M20x1.5", "1.5"),
        ("M20 x 60", ""),
    ],
)
def test_no_metric_pitch_is_greater_than_8_mm(thread: str, pitch: str) -> None:
    """The general plan of ISO 261 ends with 8 mm (from memory): a greater number is the length of the bolt."""
    ((_, found),) = threads_in(thread)
    assert found == pitch


@pytest.mark.parametrize(
    ("thread", "title", "outcome"),
    [
        ("M 80 x 3", "Studs M80x3", "conforms"),
        ("M80x3", "Studs M 80 x 3", "conforms"),
        ("M80x3", "Studs M 80 x 4", "finding"),
        ("M 80 x 3", "Studs M80x4", "finding"),
        ("M24", "Studs M 30", "finding"),
    ],
)
def test_a_thread_may_be_written_with_blanks(
    workshop: DesignFolder, thread: str, title: str, outcome: str
) -> None:
    assert titled(workshop, STUDS.replace("M24", thread), title).only(RULE).outcome == outcome
