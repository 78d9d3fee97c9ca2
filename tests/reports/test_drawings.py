"""The drawings of the pack: to scale, from what specs state and sheets work, and silent about nothing."""

from __future__ import annotations

import itertools
import math
from collections.abc import Iterator
from xml.etree import ElementTree

import pytest

from speclint.errors import replace
from speclint.reports.pack.chambers_drawing import chamber_figures
from speclint.reports.pack.curves import alike, courses_of
from speclint.reports.pack.cylinder_drawing import liner_figures
from speclint.reports.pack.cylinder_sizes import cylinders_of
from speclint.reports.pack.figures import Figure
from speclint.reports.pack.fit_charts import fit_figures
from speclint.reports.pack.overview_charts import overview_figures
from speclint.reports.pack.plot import Plot
from speclint.reports.pack.printed import OnSheet, Quantity, Worked
from speclint.reports.pack.spring_charts import spring_figures
from speclint.reports.pack.stations import Station, paths_of
from speclint.reports.pack.valve_drawing import valve_figures
from speclint.rules import Grade
from speclint.testing import DesignFolder
from tests.example import of_one_cylinder
from tests.plugins.valves.gear import train_files
from tests.reports.held_drawings import all_figures


def inked(figure: Figure, tag: str, ink: str) -> list[ElementTree.Element]:
    """The marks of a drawing with a tag and an ink."""
    root = ElementTree.fromstring(figure.drawing)
    return [one for one in root.iter() if one.tag.endswith(tag) and ink in (one.get("class") or "").split()]


def number(mark: ElementTree.Element, name: str) -> float:
    return float(mark.get(name, "nan"))


def texts(figure: Figure) -> list[str]:
    root = ElementTree.fromstring(figure.drawing)
    return [one.text or "" for one in root.iter() if one.tag.endswith("}text")]


def size_of(figure: Figure, what: str) -> str:
    (found,) = (row[-1] for row in figure.rows if row[-2] == what)
    return found


@pytest.mark.parametrize(
    "name",
    [
        "utilisations",
        "speeds",
        "drawing-liner-left",
        "chambers-block-left",
        "fit-liner-left",
        "fit-spindle-inlet-left-front",
        "fit-fit-bolts-left-back",
        "drawing-studs-front-left",
        "path-passage-pocket-left-front",
        "drawing-valve-inlet-left-front",
        "load-valve-inlet-left-front",
        "asked-valve-inlet-left-front",
        "chain-chain-front-pad-left",
    ],
)
def test_each_sort_of_drawing_is_made_and_is_well_formed(name: str) -> None:
    figure = all_figures()[name]
    root = ElementTree.fromstring(figure.drawing)
    assert root.get("role") in ("img", "group")
    assert figure.heading
    assert figure.says


def test_every_ink_is_known_to_the_style_sheet() -> None:
    from speclint.reports.pack.templating import file_text

    style = file_text("drawings.css")
    inks = set()
    for figure in all_figures().values():
        for mark in ElementTree.fromstring(figure.drawing).iter():
            inks.update((mark.get("class") or "").split())
    inks -= {"drawing", "word", "figure", "edge"}
    inks = {
        ink for ink in inks if not ink.startswith("own-")
    }  # the width of one drawing; the page adds its rule
    assert "metal" in inks
    for ink in inks:
        assert f".{ink} " in style or f".{ink}," in style or f".{ink}.hold" in style, ink


# All utilisations


def lefts(figure: Figure) -> set[float]:
    """Where the columns of names end."""
    return {number(one, "x") for one in inked(figure, "text", "word")}


@pytest.mark.parametrize(("components", "columns"), [(40, 1), (41, 2)])
def test_utilisations_stand_in_two_columns_where_one_is_too_tall_for_a_page(
    components: int, columns: int
) -> None:
    """230 units for a name and 500 for a column; names stand to the left of 230 and 730."""
    base = next(check for check in of_one_cylinder().checks if check.utilisation is not None)
    assert base.judgement is not None
    checks = tuple(  # each used by a little more than the last, or they would stand in one row
        replace(
            base, component=f"part-{index:03}", judgement=replace(base.judgement, utilisation=index / 1000)
        )
        for index in range(components)
    )
    (figure,) = (
        one
        for one in overview_figures(replace(of_one_cylinder(), checks=checks))
        if one.name == "utilisations"
    )
    assert lefts(figure) == {230.0, 730.0} if columns == 2 else lefts(figure) == {230.0}
    assert [name for name in texts(figure) if name.startswith("part-")] == [
        check.component for check in checks
    ]
    root = ElementTree.fromstring(figure.drawing)
    _, _, wide, tall = map(float, (root.get("viewBox") or "").split())
    assert wide == 500.0 * columns
    assert tall == 40 + 44 + 16 * -(-components // columns)


def test_parts_whose_checks_come_out_alike_stand_in_one_row() -> None:
    """Three of five: the two others differ in kind, or in how much of the limit is used."""
    base = next(check for check in of_one_cylinder().checks if check.utilisation is not None)
    assert base.judgement is not None
    more = replace(base.judgement, utilisation=(base.utilisation or 0.0) + 0.1)
    checks = (
        *(replace(base, component=f"part-{index}") for index in range(3)),
        replace(base, component="part-3", kind="another"),
        replace(base, component="part-4", judgement=more),
    )
    figure = next(overview_figures(replace(of_one_cylinder(), checks=checks)))
    names = [one for one in texts(figure) if one.startswith("part-")]
    assert names == ["part-0 and 2 alike", "part-3", "part-4"]
    assert ">part-0, part-1, part-2</title>" in figure.drawing, "the others are named where one points at it"


def test_what_is_wrong_lies_on_top_of_what_holds() -> None:
    base = next(check for check in of_one_cylinder().checks if check.utilisation is not None)
    wrong = replace(base, outcome="finding", grade=Grade.HOLD)
    right = replace(base, outcome="conforms", grade=None)
    figure = next(overview_figures(replace(of_one_cylinder(), checks=(wrong, right))))
    root = ElementTree.fromstring(figure.drawing)
    inks = [one.get("class") for one in root.iter() if "point" in (one.get("class") or "").split()]
    assert inks == ["point", "point hold"]


def test_what_is_wrong_without_a_number_is_on_the_page_too_and_what_is_round_conforms() -> None:
    """One column of 500 units: the limit at 244 + 204/1.5 = 380, what has no number right of 448, the end of all."""
    base = next(check for check in of_one_cylinder().checks if check.utilisation is not None)
    assert base.judgement is not None
    none, over, half = (replace(base.judgement, utilisation=used) for used in (None, 1.06, 0.5))
    checks = (
        replace(base, outcome="finding", grade=Grade.HOLD, judgement=none),
        replace(base, outcome="not assessed", grade=None, judgement=none),
        replace(base, outcome="finding", grade=Grade.NONCONFORMITY, judgement=over),
        replace(base, outcome="conforms", grade=None, judgement=half),
    )
    figure = next(overview_figures(replace(of_one_cylinder(), checks=checks)))
    (diamond,) = inked(figure, "polygon", "hold")
    (ring,) = inked(figure, "circle", "balloon")
    (square,) = inked(figure, "rect", "bad")
    (group,) = inked(figure, "g", "point")
    (circle,) = group
    assert number(circle, "cx") == 312.0  # 244 + 0.5 × 136
    assert number(square, "x") + 4 == pytest.approx(388.16)  # 244 + 1.06 × 136
    assert min(float(pair.split(",")[0]) for pair in (diamond.get("points") or "").split()) > 448
    assert number(ring, "cx") == 486.0, "beside the other"
    (limit, *_) = inked(figure, "line", "limit")
    assert number(limit, "x1") == 380.0


# Cylinders


def scale_of(figure: Figure, millimetres: str) -> float:
    """Units to the millimetre by the first scale bar, whose length stands beside it."""
    assert f"{millimetres} mm" in texts(figure)
    bars = inked(figure, "rect", "solid")[:3]
    assert len(bars) == 3
    return 5 * number(bars[0], "width") / float(millimetres)


def test_a_liner_is_drawn_to_scale() -> None:
    """By the scale bar: length 900 mm, bore 500 mm, last bore 509 mm, each mark apart by so much."""
    figure = all_figures()["drawing-liner-left"]
    assert size_of(figure, "wall when new") == "39.00 mm"  # (578 − 500)/2
    assert size_of(figure, "wall at the last bore") == "34.50 mm"  # (578 − 509)/2
    scale = scale_of(figure, "200")
    last = [one for one in inked(figure, "line", "last") if number(one, "x2") - number(one, "x1") > 300]
    heights = sorted({number(one, "y1") for one in last})
    assert heights[-1] - heights[0] == pytest.approx(509 * scale, abs=0.05)
    longest = max(last, key=lambda one: number(one, "x2") - number(one, "x1"))
    assert number(longest, "x2") - number(longest, "x1") == pytest.approx((900 + 25.1) * scale, abs=0.1)
    assert {"Ø 500 new", "Ø 509 last", "Ø 578 outside", "900"} <= set(texts(figure))


def test_the_walls_at_new_and_last_bore_stand_side_by_side_to_one_scale() -> None:
    """Block 40 mm in both; liner 39 mm new, 34.5 mm and 4.5 mm bored out at the last bore."""
    figure = all_figures()["drawing-liner-left"]
    foot = max(number(one, "y") for one in inked(figure, "rect", "removed"))
    walls = [one for one in inked(figure, "rect", "metal") if number(one, "width") == 120.0]
    assert len(walls) == 4
    block, new, again, last = (number(one, "height") for one in walls)
    (removed,) = (number(one, "height") for one in inked(figure, "rect", "removed"))
    assert block == again
    assert block / 40 == pytest.approx(new / 39, rel=1e-3)
    assert last / 34.5 == pytest.approx(removed / 4.5, rel=5e-3)
    assert foot > 0


def test_pads_and_covers_stand_where_the_specs_put_them() -> None:
    """Collar's seat at 676 + 35 = −150 + 861 = 711 mm from the fixed point: back pad 711 ± 110, front 91 ± 90.

    The front cover's plate runs from 35 mm outwards by 50 mm, its flange from the recess's depth of 25 mm.
    """
    (cylinder,) = (one for one in cylinders_of(of_one_cylinder()) if one.liner.id == "liner-left")
    assert {pad.name: (pad.start, pad.end, pad.locates) for pad in cylinder.pads} == {
        "back": (pytest.approx(601.0), pytest.approx(821.0), True),
        "front": (pytest.approx(1.0), pytest.approx(181.0), False),
    }
    front, back = cylinder.covers
    assert (front.spec.id, front.out, front.inner, front.joint) == ("cover-front-left", -1, 35.0, -25.0)
    assert (back.spec.id, back.out, back.inner, back.joint) == ("cover-back-left", 1, 861.0, None)
    assert front.studs is not None
    assert (front.studs.circle, front.studs.size, front.studs.depth) == (740.0, 24.0, 55.0)
    figure = all_figures()["drawing-liner-left"]
    assert "flange not placed" in size_of(figure, "cover-back-left")
    assert "Where no spec states the face" in figure.says
    assert size_of(figure, "studs-front-left") == "24 of M24 on Ø 740 mm"


def test_a_cover_of_which_no_studs_are_stated_is_drawn_without_them_and_without_a_gasket() -> None:
    """Studs of M24 stand on a circle of 740 mm, one drawn above the axis and one below; the cover keeps its plate."""
    whole = of_one_cylinder()
    assert whole.design is not None
    specs = {name: spec for name, spec in whole.design.specs.items() if name != "studs-front-left"}
    bare = replace(whole, design=replace(whole.design, specs=specs))
    (figure,) = [one for one in liner_figures(bare) if one.name == "drawing-liner-left"]
    with_studs = all_figures()["drawing-liner-left"]
    assert len(inked(with_studs, "line", "land")) == len(inked(figure, "line", "land")) + 2  # above and below
    scale = with_studs.held.scale
    assert scale is not None

    def shanks(one: Figure) -> list[float]:
        high = 24 * scale
        drawn = [
            box for box in inked(one, "rect", "stud") if number(box, "height") == pytest.approx(high, abs=0.1)
        ]
        return [number(box, "y") + high / 2 for box in drawn]

    above, below = sorted(shanks(with_studs))
    assert below - above == pytest.approx(740 * scale, abs=0.2)
    assert shanks(figure) == []
    named = [row[-2] for row in figure.rows]
    assert "cover-front-left" in named
    assert "studs-front-left" not in named


LINER = """
kind = "cylinder-liner"
id = "liner"
bore = "500 mm"
outside_diameter = "578 mm"
length = "900 mm"
[ports.side]
from_collar = "100 mm"
height = "40 mm"
angle = "90 °"
width = "200 mm"
[ports.top]
from_collar = "400 mm"
height = "60 mm"
angle = "350 °"
width = "120 mm"
"""


def test_a_port_is_cut_where_the_plane_of_the_section_meets_it(workshop: DesignFolder) -> None:
    """200 mm of arc on 578 mm is ±19.8° about 90°: below only. ±11.9° about 350° reaches the top at 10° off."""
    assessment = workshop.write({"liner.toml": LINER}).assess()
    (cylinder,) = cylinders_of(assessment)
    assert [(one.start, one.end, one.above, one.below) for one in cylinder.openings] == [
        (80.0, 120.0, False, True),
        (370.0, 430.0, True, False),
    ]
    (figure,) = liner_figures(assessment)
    assert not inked(figure, "polygon", "metal"), "no block is stated, and none is drawn"
    assert len(inked(figure, "rect", "metal")) == 2 + 2 + 2  # two stretches each half, two walls enlarged
    assert size_of(figure, "last bore") == "not stated"
    narrow = LINER.replace('"120 mm"', '"90 mm"')  # ±8.9° no longer reaches the top
    (cylinder,) = cylinders_of(workshop.write({"liner.toml": narrow}).assess())
    assert [one.above for one in cylinder.openings] == [False, False]


def test_a_liner_without_its_main_sizes_is_not_drawn(workshop: DesignFolder) -> None:
    bare = LINER.replace('length = "900 mm"\n', "")
    assert not list(liner_figures(workshop.write({"liner.toml": bare}).assess()))


def test_chambers_of_a_block_are_drawn_to_one_scale() -> None:
    """Chest 45 000 mm²: Ø 239.4 mm as a round opening; the first seat bore Ø 170 mm in 170 + 2 × 22 = 214 mm."""
    figure = all_figures()["chambers-block-left"]
    scale = scale_of(figure, "200")
    radii = [number(one, "r") for one in inked(figure, "circle", "live")]
    assert any(radius == pytest.approx(math.sqrt(45000 / math.pi) * scale, abs=0.02) for radius in radii)
    assert any(radius == pytest.approx(85 * scale, abs=0.02) for radius in radii)
    rings = [number(one, "r") for one in inked(figure, "circle", "metal")]
    assert len(rings) == 8
    assert rings[0] == pytest.approx(107 * scale, abs=0.02)
    assert len(inked(figure, "circle", "spent")) == 4 + 1  # four seat bores and the belt
    assert "since no spec places them" in figure.says
    assert not list(chamber_figures(replace(of_one_cylinder(), design=None)))


# Valves and springs


def test_a_valve_with_its_wall_is_drawn_in_section_and_without_it_in_outline(workshop: DesignFolder) -> None:
    """Lift 20 mm, beats 110 mm apart, seats 150 and 140 mm: the heights of the dimensions give the scale."""
    (plain,) = valve_figures(workshop.write(train_files()).assess())
    assert "No spec states the wall" in plain.says
    assert not inked(plain, "polygon", "valve")
    stated = (("beats = 2", 'beats = 2\nwall = "6 mm"'),)
    (figure,) = valve_figures(workshop.write(train_files(valve=stated)).assess())
    (shell,) = inked(figure, "polygon", "valve")
    points = [tuple(map(float, pair.split(","))) for pair in (shell.get("points") or "").split()]
    tall = max(y for _, y in points) - min(y for _, y in points)
    scale = scale_of(figure, "50")
    assert tall == pytest.approx((110 + 6) * scale, abs=0.2)  # flat seats: the rim is the wall thick
    inside = min(x for x, _ in points)
    assert inside == pytest.approx(100 + (70 - 6) * scale, abs=0.2)  # the axis stands at 100
    assert "No spec" not in figure.says
    assert {"20 lift", "110"} <= set(texts(figure))


def value_at(figure: Figure, height: float) -> float:
    """What a height means by two figures of the axis of loads."""
    root = ElementTree.fromstring(figure.drawing)
    marks = {
        float((one.text or "").replace("−", "-")): float(one.get("y", "nan")) - 4
        for one in root.iter()
        if one.tag.endswith("}text") and one.get("text-anchor") == "end" and (one.text or "").isdecimal()
    }
    (low, at_low), (high, at_high) = min(marks.items()), max(marks.items())
    return low + (height - at_low) / (at_high - at_low) * (high - low)


def test_what_is_asked_of_a_spring_is_drawn_over_the_lift_as_its_sheet_judges_it() -> None:
    """Load there F = 843 N below the 895 N to be held, not the 810 N of the springs and the 862 N asked of them."""
    figure = all_figures()["load-valve-exhaust-left-back"]
    (found,) = (
        one for one in courses_of(of_one_cylinder().checks) if one.check.component == figure.component
    )
    worked = {step.symbol: step.value for step in found.check.steps if step.kind == "worked"}
    assert found.check.outcome == "finding"
    drawn_points = inked(figure, "circle", "bad")
    heights = sorted(value_at(figure, number(one, "cy")) for one in drawn_points)
    assert heights == pytest.approx(sorted([worked["F"], worked["F_n"]]), rel=5e-3)
    assert {"843 N", "895 N"} <= set(texts(figure))
    (curve,) = (one for one in inked(figure, "polyline", "asked"))
    highest = min(float(pair.split(",")[1]) for pair in (curve.get("points") or "").split())
    most = max(value for _, value in found.curves[1] if value is not None)
    assert value_at(figure, highest) == pytest.approx(most, rel=5e-3)
    assert size_of(figure, "judged") == "843.0 N ≥ 895.1 N: finding"
    assert size_of(figure, "worked for") == "drifting"


def test_every_fifteenth_place_of_a_scan_is_held_to_its_sheet_up_to_the_full_lift() -> None:
    """From the first place on; a load that is not asked for at a place is not drawn there."""
    figure = all_figures()["load-valve-exhaust-left-back"]
    (found,) = (
        one for one in courses_of(of_one_cylinder().checks) if one.check.component == figure.component
    )
    held: dict[str, list[int]] = {found.there.symbol: [], found.needed.symbol: []}
    for one in figure.held.placed:
        origin = one.quantity.origin
        load = origin.of.get("load") if isinstance(origin, Worked) else None
        if load is not None and isinstance(load.origin, OnSheet) and load.origin.place is not None:
            held[load.origin.symbol].append(load.origin.place)
    for series in (found.there, found.needed):
        stated = [place for place in range(found.top + 1) if series.values[place] is not None]
        assert held[series.symbol] == [place for place in stated if place % 15 == 0]
    assert held[found.there.symbol][0] == 0
    assert held[found.there.symbol][-1] > found.top - 15


def test_flanks_that_differ_are_drawn_apart(workshop: DesignFolder) -> None:
    (alike_figure,) = spring_figures(workshop.write(train_files()).assess())
    assert "as the valve shuts" not in alike_figure.says
    assert len(inked(alike_figure, "polyline", "asked")) == 1
    slower = (('fall_angle = "70 °"', 'fall_angle = "90 °"'),)
    (figure,) = spring_figures(workshop.write(train_files(cam=slower)).assess())
    assert "as the valve shuts" in figure.says
    lines = inked(figure, "polyline", "asked")
    assert [one.get("class") for one in lines] == ["asked", "asked shutting"]
    tops = [min(float(pair.split(",")[1]) for pair in (one.get("points") or "").split()) for one in lines]
    assert tops[0] < tops[1], "the slower flank asks for less"


def test_a_valve_that_no_check_scanned_says_so(workshop: DesignFolder) -> None:
    files = train_files()
    del files["cam.toml"]
    (figure,) = spring_figures(workshop.write(files).assess())
    assert "is not drawn" in figure.says
    assert not inked(figure, "polyline", "asked")


@pytest.mark.parametrize(
    ("closing", "same"),
    [
        ([(10.0, 5.0), (0.0, 1.04)], True),
        ([(10.0, 5.0), (0.0, 1.06)], False),
        ([(10.0, 5.0), (0.0, None)], False),
        ([(0.0, 1.0)], False),
    ],
)
def test_flanks_are_alike_within_a_hundredth(closing: list[tuple[float, float | None]], same: bool) -> None:
    assert alike([(0.0, 1.0), (10.0, 5.0)], closing) is same


def test_a_line_of_a_plot_breaks_off_where_there_is_no_value() -> None:
    plot = Plot("plot", "t", "a", (0.0, 10.0), (0.0, 100.0), ("x", "y"))
    plot.line([(0.0, 1.0), (1.0, 2.0), (2.0, None), (3.0, 4.0), (4.0, 5.0)], "curve")
    markup = plot.paper.markup()
    assert markup.count("<polyline") == 2
    low, high = plot.place(0.0, 0.0), plot.place(10.0, 100.0)
    middle = plot.place(5.0, 50.0)
    assert middle == (pytest.approx((low[0] + high[0]) / 2), pytest.approx((low[1] + high[1]) / 2))


# The steam path


def stations() -> tuple[Station, ...]:
    return dict(paths_of(of_one_cylinder()))["passage-pocket-left-front"]


def test_a_steam_path_follows_the_steam_from_pipe_to_nozzle() -> None:
    """Pipe Ø 168.3 − 2 × 5.6 = 157.1 mm: 19 384 mm²; nozzle Ø 176.5 mm; the port is the narrower of valve.

    Three cylinders exhaust through the nozzle; the path is that of one of them.
    """
    found = stations()
    assert [one.what for one in found] == [
        "pipe",
        "chest",
        "valve pocket",
        "inlet valve",
        "port",
        "cylinder",
        "port",
        "exhaust valve",
        "belt",
        "pipe",
        "nozzle",
    ]
    assert found[0].area.value * 1e6 == pytest.approx(math.pi / 4 * 157.1**2, rel=1e-6)
    assert found[1].area.value * 1e6 == pytest.approx(45000)
    assert found[4].area.value * 1e6 == pytest.approx(16000)
    assert found[-1].area.value * 1e6 == pytest.approx(math.pi / 4 * 176.5**2, rel=1e-6)
    assert [one.live for one in found].count(True) == 6
    assert found[0].speed is not None
    assert found[1].speed is not None
    assert found[1].speed.value / found[0].speed.value == pytest.approx(19384 / 45000, rel=1e-3), (
        "a wider place is slower"
    )
    assert [one.limit and one.limit.value for one in found[:3]] == [40.0] * 3
    assert found[3].speed is None
    assert found[4].limit is not None
    assert found[4].limit.value == 100.0
    assert all(one.mach and one.lost for one in found[:3])


def test_openings_and_speeds_of_a_path_are_to_scale() -> None:
    figure = all_figures()["path-passage-pocket-left-front"]
    openings = [number(one, "height") for one in inked(figure, "rect", "live")]
    areas = [one.area.value for one in stations() if one.live]
    assert len(openings) == len(areas) == 6
    for height, area in zip(openings, areas, strict=True):
        assert height / openings[0] == pytest.approx(math.sqrt(area / areas[0]), rel=2e-3)
    drawn = [*inked(figure, "rect", "bar"), *inked(figure, "rect", "bad")]
    bars = [number(one, "height") for one in sorted(drawn, key=lambda one: number(one, "x"))]
    speeds = [one.speed.value for one in stations() if one.speed is not None]
    assert len(bars) == len(speeds)
    for height, speed in zip(bars[:-1], speeds[:-1], strict=True):
        assert height / bars[0] == pytest.approx(speed / speeds[0], rel=2e-2)
    assert len(inked(figure, "polygon", "break")) == 1, (
        "the jet is faster than the sheet is high, and says so"
    )
    # three times 1.3668 kg/s through 0.95 × 0.024467 m²; at 1.005 bar and 2754 kJ/kg − v²/2 = 2706 kJ/kg steam
    # tables give some 114 °C and 0.571 kg/m³: 309 m/s
    jet = size_of_path(figure, "nozzle")[4].removesuffix(" m/s")
    assert float(jet) == pytest.approx(309.0, rel=0.01)


def size_of_path(figure: Figure, what: str) -> tuple[str, ...]:
    return next(row for row in figure.rows if row[1] == what)


@pytest.mark.parametrize(
    ("outcome", "speed", "over"),
    [("finding", 40.1, True), ("finding", 39.9, False), ("conforms", 40.1, False)],
)
def test_a_station_is_over_where_its_sheet_found_it(outcome: str, speed: float, over: bool) -> None:
    check = replace(of_one_cylinder().checks[0], outcome=outcome)  # type: ignore[arg-type]
    area, fast, limit = (
        Quantity(one, OnSheet(check.component, check.rule.name, "found")) for one in (0.02, speed, 40.0)
    )
    assert Station("pipe", "pipe", area, fast, limit, check).over is over


@pytest.mark.parametrize("end", ["front", "back"])
def test_steam_leaves_the_cylinder_by_the_exhaust_valve_of_the_end_that_it_came_in_by(end: str) -> None:
    found = dict(paths_of(of_one_cylinder()))[f"passage-pocket-left-{end}"]
    assert {one.component for one in found if one.what.endswith(" valve")} == {
        f"valve-inlet-left-{end}",
        f"valve-exhaust-left-{end}",
    }


# Fits


def fits() -> Iterator[Figure]:
    yield from fit_figures(of_one_cylinder())


def test_every_fit_is_drawn_cold_and_hot_whatever_its_kind() -> None:
    """Ø 36 H7 (0 to +25) with m6 (+9 to +25): clearance 25 − 9 = 16 to interference 25 µm."""
    found = {figure.component: figure for figure in fits() if figure.name.startswith("fit-")}
    bolts = found["fit-bolts-left-back"]
    assert size_of(bolts, "between them, cold") == "clearance 16 to interference 25 µm"
    assert "transition" in bolts.heading
    guide = found["spindle-inlet-left-front"]
    assert size_of(guide, "between them, cold").startswith("clearance")
    assert size_of(found["fit-saddle-cambox-left-front"], "between them, cold").startswith("clearance 600 to")
    for name in (
        "seat-inlet-left-front-upper",
        "fit-seat-inlet-left-front-upper",
        guide.component,
    ):
        assert [row for row in found[name].rows if row[0].startswith("on the sheet, ")], name
    hot = [row for row in found["liner-left"].rows if row[0].startswith("on the sheet, ")]
    assert len(hot) == 1, "a wall that is worked from the same sizes is no fit"


def test_a_hot_clearance_lies_to_the_left_of_nothing_and_an_interference_to_the_right() -> None:
    found = {figure.component: figure for figure in fits() if figure.name.startswith("fit-")}
    for name, says in (
        ("spindle-inlet-left-front", "clearance"),
        ("seat-inlet-left-front-upper", "interference"),
    ):
        figure = found[name]
        (row,) = (one for one in figure.rows if one[0].startswith("on the sheet, "))
        assert row[1].startswith(says)
        (zero,) = (number(one, "x1") for one in inked(figure, "line", "edge"))
        between, bar = inked(figure, "rect", "hot")  # of the zones, and of the sheet
        for one in (between, bar):
            middle = number(one, "x") + number(one, "width") / 2
            assert (middle < zero) is (says == "clearance")


def test_a_saddle_is_as_much_wider_hot_as_its_sheet_has_it() -> None:
    """Saddle 701 ± 0.2 mm at 60 °C by 10.47e-6: at its least 700.8 (1 + 40 α) = 701.0934; barrel 700 ± 0.2 mm at
    270 °C by 13.42e-6: at its greatest 700.2 (1 + 250 α) = 702.5492: 1.456 mm of interference, whatever gap is judged.
    """
    figure = {one.component: one for one in fits()}["fit-saddle-cambox-left-front"]
    assert size_of(figure, "on the sheet, fit.curved-seat") == "interference 1456 µm"
    assert size_of(figure, "between them, running") == "interference 656 to 1456 µm"
    assert size_of(figure, "hole at 60 °C") == "+93 to +493 µm"  # 0.0934 mm of growth


def test_a_fit_hot_has_the_zone_of_each_part_at_its_temperature() -> None:
    """Block Ø 578.07 by 12.76e-6 × 140 K: 1033 µm; liner by 10.87e-6 × 100 K: 628 µm over its +310 to +354."""
    figure = {one.component: one for one in fits() if one.name.startswith("fit-")}["liner-left"]
    assert size_of(figure, "hole at 160 °C") == "+1033 to +1103 µm"
    assert size_of(figure, "shaft at 120 °C") == "+938 to +982 µm"
    assert len(inked(figure, "rect", "hole")) == len(inked(figure, "rect", "shaft")) == 2


def test_the_interference_over_the_temperature_ends_where_the_sheet_has_it() -> None:
    """230 µm cold and −175 µm at 160 °C: nothing left at 20 + 140 × 229.9/(229.9 + 174.6) = 99.6 °C."""
    figure = all_figures()["warmed-liner-left"]
    assert size_of(figure, "none is left with the outer part at") == "100 °C"
    assert len(inked(figure, "circle", "point")) == 3
    assert len(inked(figure, "line", "limit")) == len(inked(figure, "polygon", "band")) == 1
    assert "none is left with the outer part at" not in [
        row[0] for row in all_figures()["warmed-seat-inlet-left-back-lower"].rows
    ]


def test_a_fit_that_no_check_works_hot_says_so(workshop: DesignFolder) -> None:
    spindle = 'kind = "valve-spindle"\nid = "spindle"\nguide_bore = "22.08 mm"\ndiameter = "22 mm"\n'
    (figure,) = fit_figures(workshop.write({"spindle.toml": spindle}).assess())
    assert "No check of this part calculates the fit hot" in figure.says


# Chains


def test_the_gap_of_a_chain_has_a_scale_of_its_own() -> None:
    """Cut-out 220 +0.02/0 less pad 220 +0.045/+0.032: −0.045 to −0.012 mm. Links to 220 mm, gap to some 0.06 mm.

    Hot, the sheet judges the gap at the least or the greatest; the mark of a finding is red.
    """
    figure = all_figures()["chain-chain-back-pad-left"]
    assert size_of_row(figure, "gap, cold") == ("−0.045 to −0.012 mm", "0.033 mm")
    places = {mark.axis: [] for mark in figure.held.marks}  # type: dict[str, list[tuple[float, float]]]
    for mark in figure.held.marks:
        places[mark.axis].append((mark.value, mark.at))
    scales = {
        axis: (max(marks)[1] - min(marks)[1]) / (max(marks)[0] - min(marks)[0])
        for axis, marks in places.items()
    }
    assert scales["x gap"] > 1000 * scales["x links"]
    assert len(inked(figure, "rect", "metal")) == len(inked(figure, "path", "hatch")) == 1
    assert len(inked(figure, "rect", "bad")) == 1, "hot, as its sheet finds it"
    (hot,) = (
        one
        for one in of_one_cylinder().checks
        if one.order == ("chain-back-pad-left", "chain.worst-case-hot")
    )
    assert hot.outcome == "finding"
    assert len(inked(figure, "line", "limit")) == 3  # least and greatest cold, greatest hot


def size_of_row(figure: Figure, what: str) -> tuple[str, ...]:
    return next(row[1:] for row in figure.rows if row[0] == what)


def test_what_moves_a_gap_stands_end_to_end_from_its_least_to_its_greatest() -> None:
    """0.020 mm of the cut-out and 0.013 mm of the pad are the whole 0.033 mm."""
    figure = all_figures()["chain-chain-back-pad-left"]
    (band,) = inked(figure, "rect", "metal")
    by = [
        one
        for one in (*inked(figure, "rect", "shaft"), *inked(figure, "rect", "hole"))
        if number(one, "height") == 10
    ]
    start, end = number(band, "x"), number(band, "x") + number(band, "width")
    assert min(number(one, "x") for one in by) == pytest.approx(start, abs=0.02)
    assert sum(number(one, "width") for one in by) == pytest.approx(end - start, abs=0.05)


# Studs, springs, lagging


def test_a_stud_circle_has_its_diameters_and_the_way_from_stud_to_stud() -> None:
    """24 studs on Ø 690: 690 sin 7.5° = 90.06 mm; ring 636 and 600, cover 750; nut face 33.2: 56.9 mm free."""
    figure = all_figures()["drawing-studs-back-left"]
    assert {"Ø 600 inside", "Ø 636 outside of the ring", "Ø 690 studs", "Ø 750 outside", "90.1 apart"} <= set(
        texts(figure)
    )
    assert size_of_row(figure, "free between the faces of two nuts") == ("56.9 mm",)
    assert len(inked(figure, "circle", "nut")) == len(inked(figure, "circle", "ghost")) == 24
    assert len(inked(figure, "polygon", "gasket")) == 1


def test_a_spring_stands_free_shut_open_and_solid() -> None:
    """215.2, 146 and 126 mm by the drawing; solid 13 coils of 7.94 mm: 103.2 mm."""
    figure = all_figures()["spring-spring-inlet-left-back"]
    assert {"215.2 mm", "146 mm", "126 mm", "103.2 mm", "1948 N", "2511 N"} <= set(texts(figure))
    coils = inked(figure, "polyline", "stated")
    assert len(coils) == 4
    heights = [
        max(places) - min(places)
        for one in coils
        for places in [[float(pair.split(",")[1]) for pair in (one.get("points") or "").split()]]
    ]
    assert heights == sorted(heights, reverse=True)
    scale = scale_of(figure, "50")
    assert heights[0] == pytest.approx((215.2 - 7.9) * scale, abs=0.1), "to the middles of the end wires"


def test_the_endurance_of_a_spring_is_drawn_as_its_sheet_has_it() -> None:
    """τ_H0 = 435.96 MPa, m = 0.7, τ_U = 659.95: endured 435.96 + 0.7 × 659.95 = 897.9 MPa; range used 857.4."""
    figure = all_figures()["endurance-spring-inlet-left-back"]
    assert {"660 MPa", "857 MPa", "898 MPa"} <= set(texts(figure))
    assert size_of(figure, "factor of the range").startswith("1.205")
    assert len(inked(figure, "polyline", "edge")) == 3
    assert len(inked(figure, "polyline", "dashed")) == 1
    assert len(inked(figure, "circle", "point")) == 2


def test_lagging_is_drawn_with_the_temperatures_through_it() -> None:
    """Flat lagging: a straight line from 260 °C of the metal to the surface; beside the drain cock 82.8 °C, too hot."""
    figure = all_figures()["drawing-lagging-cover-back-left"]
    assert {"260 °C", "surface 82.8 °C", "at most 60 °C", "air 35 °C", "30 mm"} <= set(texts(figure))
    assert len(inked(figure, "circle", "bad")) == len(inked(figure, "line", "limit")) == 1
    assert len(inked(figure, "path", "hatch")) == 1
    (line,) = inked(figure, "polyline", "edge")
    points = [tuple(map(float, pair.split(","))) for pair in (line.get("points") or "").split()][1:18]
    slopes = {round((b[1] - a[1]) / (b[0] - a[0]), 2) for a, b in itertools.pairwise(points)}
    assert len(slopes) == 1
    (line,) = inked(all_figures()["drawing-lagging-pipe-live-left"], "polyline", "edge")
    points = [tuple(map(float, pair.split(","))) for pair in (line.get("points") or "").split()][1:18]
    assert points[8][1] > (points[0][1] + points[16][1]) / 2, "round: it falls faster at the metal"


def test_a_valve_stands_in_the_metal_round_it_with_its_cage_and_spindle() -> None:
    """Two seats of 22 mm of metal, guide of Ø 34 by 100 from 60 mm above the seat, cage end 92 − 52 = 40 above it."""
    figure = all_figures()["drawing-valve-exhaust-left-back"]
    scale = scale_of(figure, "20")
    boxes = [
        (number(one, "width") / scale, number(one, "height") / scale)
        for one in inked(figure, "rect", "metal")
    ]
    assert (
        sum(wide == pytest.approx(22, abs=0.1) and tall == pytest.approx(28, abs=0.1) for wide, tall in boxes)
        == 2
    )
    assert (
        sum(wide == pytest.approx(6, abs=0.1) and tall == pytest.approx(100, abs=0.1) for wide, tall in boxes)
        == 1
    )
    assert (
        sum(wide == pytest.approx(115, abs=0.1) and tall == pytest.approx(6, abs=0.1) for wide, tall in boxes)
        == 1
    )
    (spindle,) = inked(figure, "rect", "stud")
    assert number(spindle, "width") == pytest.approx(11 * scale, abs=0.05)
    assert {"from the cylinder", "to the exhaust"} <= set(texts(figure))


# Covers, pipes and rods


def test_a_cover_is_drawn_with_the_thickness_that_it_needs() -> None:
    """Back cover: 76 mm of plate where 73.5 are needed, flange 45, hole 150, studs on 690, pressure to Ø 620.9."""
    figure = all_figures()["drawing-cover-back-left"]
    scale = scale_of(figure, "50")
    plate, flange = inked(figure, "rect", "metal")
    assert number(plate, "height") == pytest.approx(76 * scale, abs=0.05)
    assert number(plate, "width") == pytest.approx((499.8 - 150) / 2 * scale, abs=0.1)
    assert number(flange, "height") == pytest.approx(45 * scale, abs=0.05)
    (needed,) = inked(figure, "line", "last")
    assert number(needed, "y1") - number(plate, "y") == pytest.approx(73.523 * scale, abs=0.05)
    assert len(inked(figure, "path", "hatch")) == 2
    assert len(inked(figure, "line", "land")) == len(inked(figure, "rect", "bore")) == 1
    assert {"needs 73.5", "Ø 150 hole", "Ø 620.9 pressure", "Ø 690 studs"} <= set(texts(figure))


def test_the_wall_of_a_pipe_is_drawn_at_each_critical_place() -> None:
    """5.6 mm less 12.5 % is 4.9 mm; less 15 % on the outside of a bend 4.165 mm; needed 2.89, 2.74, 3.16 mm."""
    figure = all_figures()["drawing-pipe-live-left"]
    assert [row[1] for row in figure.rows[2:]] == [
        "5.6 mm",
        "4.90 mm, needs 2.89 mm",
        "4.16 mm, needs 2.74 mm",
        "4.90 mm, needs 3.16 mm",
    ]
    assert len(inked(figure, "polygon", "metal")) == 2, "the two walls of a bend"
    assert len(inked(figure, "circle", "balloon")) == 3
    assert len(inked(figure, "line", "limit")) == 3


def test_a_rod_is_drawn_with_the_stress_at_each_section() -> None:
    """Thread at the piston 93.5 MPa, above the 80 that are allowed; plain 65.2 pulled; flange 68.2 and 73.8 pushed."""
    figure = all_figures()["drawing-rod-left"]
    assert {"93.5", "65.2", "68.2", "73.8"} <= set(texts(figure))
    assert len(inked(figure, "rect", "bad")) == len(inked(figure, "line", "limit")) == 1
    assert len(inked(figure, "rect", "bar")) == len(inked(figure, "rect", "hole")) == 2
    assert len(inked(figure, "rect", "metal")) == len(inked(figure, "path", "hatch")) == 2


def test_what_a_shoulder_of_a_rod_runs_up_to_stands_beyond_its_section() -> None:
    """Towards the end of the rod on which the section lies, and touching it: the piston to the left, the crosshead to
    the right."""
    figure = all_figures()["drawing-rod-left"]
    sections = sorted((number(one, "x"), number(one, "width")) for one in inked(figure, "rect", "metal"))
    plain, *larger = sorted(inked(figure, "rect", "stud"), key=lambda one: -number(one, "width"))
    middle = number(plain, "x") + number(plain, "width") / 2
    assert larger
    for one in larger:
        x, wide = number(one, "x"), number(one, "width")
        if x > middle:
            assert any(x == pytest.approx(at + long) for at, long in sections)
        else:
            assert any(x + wide == pytest.approx(at) for at, _ in sections)


def test_a_steam_path_names_and_numbers_each_place_over_it() -> None:
    """What a place is, its first word above the others, in the middle of its column, as its number is."""
    figure = all_figures()["path-passage-pocket-left-front"]
    root = ElementTree.fromstring(figure.drawing)
    at: dict[str | None, list[tuple[float, float]]] = {}
    for one in root.iter():
        if one.tag.endswith("}text"):
            at.setdefault(one.text, []).append((number(one, "x"), number(one, "y")))
    for row in figure.rows:
        ((x, top),) = [place for place in at[row[0]] if place[1] < 40]
        parts = row[1].split(" ", 1)
        heights = [y for part in parts for across, y in at[part] if across == x]
        assert len(heights) >= len(parts), row[1]
        assert top < heights[0]
        assert heights == sorted(heights)


def test_an_end_of_a_cylinder_is_drawn_put_together() -> None:
    """Cover 54 mm thick, piston 8 mm from it with three grooves of 16 by 15.5 mm, flange 45 under a nut of M24."""
    figure = all_figures()["end-cover-front-left"]
    scale = scale_of(figure, "20")
    boxes = [
        (number(one, "width") / scale, number(one, "height") / scale)
        for one in inked(figure, "rect", "metal")
    ]
    assert any(wide == pytest.approx(54, abs=0.1) for wide, _ in boxes)  # the plate
    assert any(wide == pytest.approx(45, abs=0.1) for wide, _ in boxes)  # the flange
    assert any(wide == pytest.approx(150, abs=0.1) for wide, _ in boxes)  # the piston
    grooves = [
        one
        for one in inked(figure, "rect", "bore")
        if number(one, "width") == pytest.approx(16 * scale, abs=0.1)
    ]
    assert len(grooves) == 3
    assert len(inked(figure, "line", "land")) == 1, "the gasket"
    assert {"8 clearance", "54"} <= set(texts(figure))
    assert len(inked(figure, "path", "hatch")) == len(inked(figure, "rect", "metal"))
    assert len(boxes) == 9, (
        "cover and flange, piston, collar, recess, and liner and block before and after the port"
    )
