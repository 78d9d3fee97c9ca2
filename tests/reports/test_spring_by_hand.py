"""A spring in its positions and the diagram of its endurance, where each line stands, worked by hand.

The spring is that of the tests of its rules: 8 mm wire on 48 mm, 10 coils in all, 140, 118 and 100 mm long. 140 mm in
240 units are 1.714 to the millimetre; the coils across, 48 mm in 90, would allow 1.875.
"""

from __future__ import annotations

from xml.etree import ElementTree

import pytest

from speclint.checking import Assessment, Processes, assess
from speclint.reports.pack.figures import Figure
from speclint.reports.pack.spring_drawing import asked, endured, spring_views
from speclint.testing import DesignFolder
from tests.plugins.springs.spring import spring
from tests.reports.placed_marks import numbers

SCALE = 240 / 140
FOOT = 34 + 240
HALF = 24 * SCALE
RULES = ("coil-spring.solid-clearance", "coil-spring.stress-solid", "coil-spring.fatigue")
LOADS = 'shut_load = "1012 N"\nopen_load = "1840 N"\n'


def made(workshop: DesignFolder, *changes: tuple[str, str], add: str = "", rules: bool = False) -> Assessment:
    workshop.write(spring(*changes, add=add))
    chosen = [one for one in workshop.loaded.rules if one.name in RULES] if rules else []
    return assess([workshop.root], workshop.loaded, chosen, processes=Processes(0))


def positions(workshop: DesignFolder, *changes: tuple[str, str], add: str = "") -> Figure:
    (figure,) = spring_views(made(workshop, *changes, add=add))
    return figure


def marks(figure: Figure, tag: str, ink: str) -> list[ElementTree.Element]:
    root = ElementTree.fromstring(figure.drawing)
    return [one for one in root.iter() if one.tag.endswith(f"}}{tag}") and one.get("class") == ink]


def lines(figure: Figure, ink: str) -> list[list[float]]:
    return [numbers(one, "x1", "y1", "x2", "y2") for one in marks(figure, "line", ink)]


def points(figure: Figure, ink: str) -> list[list[tuple[float, float]]]:
    found = []
    for one in marks(figure, "polyline", ink):
        flat = [float(number) for number in one.get("points", "").replace(",", " ").split()]
        found.append(list(zip(flat[::2], flat[1::2], strict=True)))
    return found


def says(figure: Figure) -> dict[str, list[float]]:
    root = ElementTree.fromstring(figure.drawing)
    return {one.text or "": numbers(one, "x", "y") for one in root.iter() if one.tag.endswith("}text")}


def near(places: list[list[float]]) -> list[object]:
    return [pytest.approx(one, abs=0.02) for one in places]


def test_the_positions_stand_side_by_side_on_one_line(workshop: DesignFolder) -> None:
    """The middles are 150 apart from 60 + 34 + 75 on; above each its length, on the line its plates."""
    figure = positions(workshop, add=LOADS)
    middles, tall = (169, 319, 469), [length * SCALE for length in (140, 118, 100)]
    assert lines(figure, "edge") == near(
        [
            *(
                [x - HALF - 12, FOOT - high, x + HALF + 12, FOOT - high]
                for x, high in zip(middles, tall, strict=True)
            ),
            [60, FOOT, 60 + 3 * 150 + 40 - 20, FOOT],
        ]
    )
    assert lines(figure, "axis") == near(
        [[x, FOOT + 6, x, FOOT - high - 8] for x, high in zip(middles, tall, strict=True)]
    )
    left = [x - HALF - 18 for x in middles]
    fine = [[x - 6, y, x + 18, y] for x, high in zip(left, tall, strict=True) for y in (FOOT, FOOT - high)]
    assert lines(figure, "fine") == near(fine)
    assert lines(figure, "thin") == near(
        [[x, FOOT - high, x, FOOT] for x, high in zip(left, tall, strict=True)]
    )
    said = says(figure)
    for name, length, x, high in zip(
        ("free", "valve shut", "valve open"), ("140", "118", "100"), middles, tall, strict=True
    ):
        assert said[name] == [x, FOOT + 20]
        assert said[f"{length} mm"] == pytest.approx([x - HALF - 24, FOOT - high / 2], abs=0.02)
    assert said["1012 N"] == [319, FOOT + 38]
    assert said["1840 N"] == [469, FOOT + 38]
    root = ElementTree.fromstring(figure.drawing)
    assert list(map(float, (root.get("viewBox") or "").split()))[2:] == [60 + 450 + 40, FOOT + 84]
    bar = marks(figure, "rect", "solid")[0]
    assert numbers(bar, "x", "y", "width") == pytest.approx([60, FOOT + 58, 10 * SCALE], abs=0.02), (
        "50 of 52.5 mm"
    )


def test_the_coils_go_from_side_to_side_between_the_middles_of_the_end_wires(workshop: DesignFolder) -> None:
    """10 turns of the free spring: 132 mm between the end wires, 6.6 mm from side to side, the ends flat."""
    first = points(positions(workshop), "stated")[0]
    low, step = FOOT - 4 * SCALE, 13.2 * SCALE / 2
    sides = [(169 + (HALF if n % 2 else -HALF), low - n * step) for n in range(21)]
    wanted = [(169 + HALF, low), *sides, (169 + HALF, low - 20 * step)]
    assert first == [pytest.approx(one, abs=0.02) for one in wanted]
    few = points(positions(workshop, ('total_coils = "10"\n', "")), "stated")[0]
    assert len(few) == 2 + 17, "8 where nobody states how many"


def test_a_wide_spring_is_drawn_to_its_coils(workshop: DesignFolder) -> None:
    """80 mm in 90 units; the foot then stands 140 × 1.125 below the top."""
    figure = positions(workshop, ('mean_diameter = "48 mm"', 'mean_diameter = "80 mm"'))
    assert figure.held.scale == pytest.approx(90 / 80)
    assert lines(figure, "edge")[-1][1] == pytest.approx(34 + 140 * 90 / 80, abs=0.02)


def test_the_table_of_a_spring(workshop: DesignFolder) -> None:
    figure = positions(workshop, add=LOADS + 'rate = "46 N/mm"\n')
    assert figure.heading == "spring: free, shut, open and solid"
    assert figure.rows == (
        ("wire", "8 mm VDSiCr"),
        ("mean diameter", "48 mm"),
        ("coils, working and in all", "8 and 10"),
        ("rate", "46 N/mm"),
        ("free", "140 mm"),
        ("valve shut", "118 mm at 1012 N"),
        ("valve open", "100 mm at 1840 N"),
    )


def test_a_spring_without_its_lengths_is_not_drawn(workshop: DesignFolder) -> None:
    for line in ('free_length = "140 mm"\n', 'shut_length = "118 mm"\n', 'mean_diameter = "48 mm"\n'):
        assert not list(spring_views(made(workshop, (line, ""))))
    assert len(positions(workshop, ('open_length = "100 mm"\n', "")).rows) == 6


def test_solid_it_stands_as_its_sheet_has_it(workshop: DesignFolder) -> None:
    figure, *_ = spring_views(made(workshop, rules=True))
    assert [name for name, _ in figure.rows][-1] == "solid"
    assert len(points(figure, "stated")) == 4
    (length,) = (said for name, said in figure.rows if name == "solid")
    assert " mm at " in length
    assert length.endswith(" N")


# Endurance


def test_what_a_wire_endures_by_hand() -> None:
    """τ_U = 100, stroke strength 400, slope 0.7: 100 + 400 − 30 = 470; with a factor of 1.2: 100 + 370/1.2."""
    assert endured(100.0, 400.0, 0.7) == pytest.approx(470)
    assert asked(100.0, 400.0, 0.7, 1.2) == pytest.approx(100 + 370 / 1.2)


def test_the_diagram_of_endurance(workshop: DesignFolder) -> None:
    """By the tests of the rule: 305.149 MPa shut and 249.667 of stroke; 500 MPa of stroke strength, slope 0.7.

    Endured 305.149 + 500 − 0.3 × 305.149 = 713.604; with the factor of 1.2 305.149 + 408.455/1.2 = 645.528. The axis
    goes to 1.3 × 305.149 = 396.694 across and to 1.15 × 713.604 up.
    """
    found = list(
        spring_views(
            made(workshop, add='broken_half_caught = true\nstroke_strength = "500 MPa"\n', rules=True)
        )
    )
    figure = found[1]
    assert figure.heading == "spring: stresses of the wire, and what it endures"
    assert figure.rows == (
        ("lower stress, valve shut", "305.1 MPa"),
        ("upper stress, valve open", "554.8 MPa"),
        ("stroke strength of the wire", "500.0 MPa"),
        ("upper stress that is endured", "713.6 MPa"),
        ("factor of the range", "1.636, at least 1.20"),
    )
    left = 44 + 3 * 13 * 0.62
    end, most = 396.694, 1.15 * 713.604

    def at(across: float, up: float) -> object:
        return pytest.approx((left + across / end * (736 - left), 262 - up / most * 240), abs=0.1)

    same, whole = points(figure, "edge")
    assert same == [at(0, 0), at(end, end)]
    assert whole == [at(0, 500), at(end, 500 + 0.7 * end)]
    (factor,) = points(figure, "edge dashed")
    assert factor == [at(0, 500 / 1.2), at(end, end + (500 - 0.3 * end) / 1.2)]
    circles = [tuple(numbers(one, "cx", "cy")) for one in marks(figure, "circle", "point")]
    assert circles == [at(305.149, 305.149), at(305.149, 554.816)]
    (upright,) = [one for one in lines(figure, "thin") if one[0] == one[2]]
    assert [tuple(upright[:2]), tuple(upright[2:])] == [at(305.149, 305.149), at(305.149, 713.604)]
    x = left + 305.149 / end * (736 - left)
    ticks = [
        one
        for one in lines(figure, "edge")
        if one[2] - one[0] == pytest.approx(10, abs=0.02) and one[1] == one[3]
    ]
    assert [((one[0] + one[2]) / 2, one[1]) for one in ticks] == [at(305.149, 645.528), at(305.149, 713.604)]
    assert {"305 MPa", "555 MPa", "714 MPa", "both the same", "endured", "with the factor"} <= says(
        figure
    ).keys()
    assert [one.at for one in figure.held.placed if one.axis == "x"] == [pytest.approx(x, abs=0.1)]
    assert len([one for one in figure.held.placed if one.axis == "y"]) == 4


def test_a_range_beyond_what_is_endured_is_told_apart(workshop: DesignFolder) -> None:
    """391.0 MPa of stroke strength are too little, as the tests of the rule work."""
    weak = 'broken_half_caught = true\nstroke_strength = "391.0 MPa"\n'
    figure = list(spring_views(made(workshop, add=weak, rules=True)))[1]
    assert len(marks(figure, "circle", "point bad")) == 2
    assert not marks(figure, "circle", "point")


def test_a_lower_stress_of_little_leaves_a_hundred_across(workshop: DesignFolder) -> None:
    """A stroke from nearly nothing: shut at 139 mm 13.9 MPa, of which 1.3 times are less than 100."""
    soft = ('shut_length = "118 mm"', 'shut_length = "139 mm"')
    add = 'broken_half_caught = true\nstroke_strength = "900 MPa"\n'
    figure = list(spring_views(made(workshop, soft, add=add, rules=True)))[1]
    assert [one.value for one in figure.held.marks if one.axis == "x"][-1] == 100


def test_without_a_check_of_its_endurance_there_is_no_diagram(workshop: DesignFolder) -> None:
    assert len(list(spring_views(made(workshop, ('wire_grade = "VDSiCr"\n', ""), rules=True)))) == 1
