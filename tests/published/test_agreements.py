"""Facts that two drawings state, with figures of standards and textbooks in both places, and the next size in one.

Parts of one size of a standard agree; a part of the next size of the same table is told. Figures of standards are from
memory, as the trade's tables print them.
"""

from __future__ import annotations

import pytest

from speclint.testing import DesignFolder, on_sheet
from tests.plugins.agreement.test_access import FILES as REACHED
from tests.plugins.agreement.test_chains import CHAIN, chained
from tests.plugins.agreement.test_frames import reamed
from tests.plugins.agreement.test_lifting import LINER, loaded
from tests.plugins.agreement.test_pipes import FILES as PIPED
from tests.plugins.joints.bench import bench
from tests.plugins.springs.spring import spring
from tests.published.proof import proves

_ENDS = {True: "conforms", False: "finding"}


@proves("speclint_agreement.rules.bolts", memory="ISO 273, table 1: M24 fine 25, medium 26, coarse 28 mm")
@pytest.mark.parametrize(
    ("hole", "agrees"),
    [("25 mm", True), ("26 mm", True), ("28 mm", True), ("22 mm", False), ("30 mm", False)],
)
def test_clearance_holes_of_the_three_series(workshop: DesignFolder, hole: str, agrees: bool) -> None:
    """22 and 30 mm are those of M20 and M27."""
    slim = ("studs", 'shank = "24 mm"', 'shank = "20 mm"')
    design = bench(workshop, slim, ("studs", 'hole = "26 mm"', f'hole = "{hole}"'))
    assert design.only("joint.bolt-passes", "studs").outcome == _ENDS[agrees]


@proves("speclint_agreement.rules.frames", memory="ISO 273, table 1: M24 fine 25, medium 26, coarse 28 mm")
@pytest.mark.parametrize(
    ("hole", "agrees"), [("25 mm", True), ("26 mm", True), ("28 mm", True), ("32 mm", False)]
)
def test_clearance_holes_of_a_frame(workshop: DesignFolder, hole: str, agrees: bool) -> None:
    """32 mm is the coarse hole of M27."""
    design = reamed(workshop, hole, "26 mm", "friction")
    assert design.only("frame.bolt-fits-hole", "fastening").outcome == _ENDS[agrees]


@proves("speclint_agreement.rules.bolts", memory="ISO 4032: M24, face of the nut 33.2 mm, 36 mm across flats")
@pytest.mark.parametrize(("face", "agrees"), [("33.2 mm", True), ("38 mm", False)])
def test_the_face_of_a_nut_lies_within_its_flats(workshop: DesignFolder, face: str, agrees: bool) -> None:
    """38 mm is the face of M27."""
    design = bench(workshop, ("studs", 'face = "36 mm"', f'face = "{face}"'))
    assert design.only("joint.bolt-passes", "studs").outcome == _ENDS[agrees]


@proves("speclint_agreement.rules.access", memory="ISO 272: across flats M22 34, M24 36, M27 41 mm")
@pytest.mark.parametrize(("flats", "agrees"), [("36 mm", True), ("34 mm", False), ("41 mm", False)])
def test_a_spanner_of_the_nut(workshop: DesignFolder, flats: str, agrees: bool) -> None:
    plan = 'kind = "access-plan"\nid = "plan"\nserves = "block"\n[spanners.studs]\n'
    design = workshop.write({**REACHED, "plan.toml": f'{plan}across_flats = "{flats}"\n'})
    assert design.only("access.of-its-joints").outcome == _ENDS[agrees]


PIPE = """
kind = "steam-pipe"
id = "pipe"
outside_diameter = "168.3 mm"
wall = "4.5 mm"
"""
FLANGE = 'kind = "pipe-flange"\nid = "flange"\nof = "pipe"\nbore = "159.3 mm"\ncircle = "{}"\nholes = {}\n'
BOLTS = """
kind = "bolted-joint"
id = "bolts"
holds = "flange"
fastener = "bolt"
seal = "gasket"
thread = "M20"
count = 8
circle = "240 mm"
hole = "22 mm"
[gasket]
inside = "{}"
outside = "{}"
"""
_EN_1092 = "EN 1092-1, PN 16: DN 125 8 holes on 210 mm, DN 150 8 of 22 mm on 240, DN 200 12 on 295"


@proves(
    "speclint_agreement.rules.joints",
    memory=[
        _EN_1092,
        "EN 1514-1, PN 16, within the bolts: DN 125 141 and 192 mm, DN 150 169 and 218, DN 200 220 and 273",
    ],
)
@pytest.mark.parametrize(
    ("inside", "outside", "agrees"),
    [("169 mm", "218 mm", True), ("141 mm", "192 mm", False), ("220 mm", "273 mm", False)],
)
def test_the_ring_of_a_flange(workshop: DesignFolder, inside: str, outside: str, agrees: bool) -> None:
    """A ring of the next smaller flange lies in the pipe of 159.3 mm, one of the next greater on the bolts."""
    files = {"pipe.toml": PIPE, "flange.toml": FLANGE.format("240 mm", 8)}
    design = workshop.write({**files, "bolts.toml": BOLTS.format(inside, outside)})
    assert design.only("joint.ring-outside-bore", "bolts").outcome == _ENDS[agrees]


@proves("speclint_agreement.rules.joints", memory=_EN_1092)
@pytest.mark.parametrize(
    ("circle", "holes", "agrees"), [("240 mm", 8, True), ("210 mm", 8, False), ("240 mm", 12, False)]
)
def test_the_circle_of_a_flange(workshop: DesignFolder, circle: str, holes: int, agrees: bool) -> None:
    files = {"pipe.toml": PIPE, "flange.toml": FLANGE.format(circle, holes)}
    design = workshop.write({**files, "bolts.toml": BOLTS.format("169 mm", "218 mm")})
    assert design.only("joint.one-circle", "bolts").outcome == _ENDS[agrees]


@proves(
    "speclint_agreement.rules.pipes",
    memory="ASME B36.10M: NPS 6 standard 6.625 in by 0.280, inside 6.065; NPS 5 inside 5.047, NPS 8 inside 7.981",
)
@pytest.mark.parametrize(("bore", "agrees"), [("6.065 in", True), ("5.047 in", False), ("7.981 in", False)])
def test_the_lens_ring_of_a_pipe(workshop: DesignFolder, bore: str, agrees: bool) -> None:
    design = workshop.write(PIPED)
    design.replace("pipe.toml", '"168.3 mm"', '"6.625 in"').replace("pipe.toml", '"5.6 mm"', '"0.280 in"')
    ring = f'kind = "lens-joint"\nid = "lens"\nof = "pipe"\nbore = "{bore}"\n'
    check = design.write({"lens.toml": ring}).only("lens-joint.of-its-pipe", "lens")
    assert check.outcome == _ENDS[agrees]
    assert on_sheet(check, "d") / 0.0254 == pytest.approx(6.065, abs=5e-4)


@proves(
    "speclint_agreement.rules.lifting",
    memory="EN 10220, mass of tube at 7850 kg/m³: 508 by 12.5 mm 153 kg/m, by 10 mm 123, by 16 mm 194",
)
@pytest.mark.parametrize(("weight", "agrees"), [("153 kg", True), ("123 kg", False), ("194 kg", False)])
def test_the_mass_of_a_liner_as_a_tube(workshop: DesignFolder, weight: str, agrees: bool) -> None:
    """A liner of a metre without a collar; a tenth is allowed either way."""
    design = loaded(workshop, liner=weight)
    sizes = LINER.partition("[collar]")[0]
    for old, new in (
        ('"500 mm"', '"483 mm"'),
        ('"580 mm"', '"508 mm"'),
        ('"900 mm"', '"1 m"'),
        ('"known-iron"', '"tube-steel"'),
    ):
        sizes = sizes.replace(old, new)
    (design.root / "liner.toml").write_text(sizes, encoding="utf-8")
    with (design.root / "metals.toml").open("a", encoding="utf-8") as more:
        more.write(
            '[tube-steel]\ntitle = "tube"\nfamily = "carbon-steel"\nstandard = "EN 10220"\n'
            'density = { value = 7850, unit = "kg/m³", tolerance = 0, source = "common practice" }\n'
        )
    check = design.only("lifting.mass-complete", "plan")
    assert check.outcome == _ENDS[agrees]
    assert any(
        isinstance(step.value, float) and step.value == pytest.approx(153, abs=0.5) for step in check.steps
    )


@proves(
    "speclint_agreement.rules.chains",
    memory="ISO 286-2, H7: over 18 to 30 mm +21 µm, over 30 to 50 mm +25 µm",
)
@pytest.mark.parametrize(("greatest", "agrees"), [("36.025 mm", True), ("36.021 mm", False)])
def test_the_limits_of_a_hole_that_a_chain_asks(workshop: DesignFolder, greatest: str, agrees: bool) -> None:
    chain = CHAIN.replace('least = "2.4 mm"', 'least = "36 mm"')
    chain = chain.replace('greatest = "3.6 mm"', f'greatest = "{greatest}"')
    design = chained(workshop, chain=chain, room="36 mm H7")
    assert design.only("chain.asks-what-is-drawn").outcome == _ENDS[agrees]


@proves("speclint_springs.rules.loads", seen="Sadhu Singh, Machine Design I, example 8.3, p. 229: 9.72 N/mm")
@pytest.mark.parametrize(("rate", "agrees"), [("9.20 N/mm", True), ("10.5 N/mm", False), ("8.0 N/mm", False)])
def test_the_rate_of_a_valve_spring(workshop: DesignFolder, rate: str, agrees: bool) -> None:
    """Wire of 3 mm, index 6, 15 coils: 9.72 N/mm at 84 kN/mm², so 9.72 × 79.5/84 = 9.20 at the 79.5 of the tests."""
    sizes = (
        ('wire = "8 mm"', 'wire = "3 mm"'),
        ('"48 mm"', '"18 mm"'),
        ('working_coils = "8"', 'working_coils = "15"'),
        ('total_coils = "10"', 'total_coils = "17"'),
    )
    check = workshop.write(spring(*sizes, add=f'rate = "{rate}"\n')).only("coil-spring.rate")
    assert check.outcome == _ENDS[agrees]
