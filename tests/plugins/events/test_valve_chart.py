"""The chart of the valves of the worked engine: curves, names and events, placed by hand.

In the notch of 20 % the inlet is open from −5.9545° to 52.9545° and lifts by 10.1 mm, the exhaust from 144.5455° to
317.4545° by 24.4 mm. The chart runs from −50° to 330° over 660 units from 70 on; its lifts stand between 24 and 174, up
to 1.25 of the greatest, its areas between 208 and 388, up to 1.2 of the greatest.
"""

from __future__ import annotations

import math
from types import SimpleNamespace
from typing import Any

import pytest

from speclint.errors import replace
from speclint_events.figures import valve_chart as made
from speclint_events.figures.fields import Field
from speclint_events.figures.gears import GearDrawn, gears_drawn
from tests.plugins.events.marks import Noted, curves, lines, said, said_in_order
from tests.plugins.events.test_figures import assessed, drawn, number, size_of

CHART, RULE = "valves-gear", "events.area-enough"
OPENED = {"inlet": (-5.9545, 52.9545), "exhaust": (144.5455, 317.4545)}
EVENTS = (-42.5455, -5.9545, 52.9545, 144.5455, 317.4545)
Pair = tuple[float, float]


def across(angle: float) -> float:
    return 70 + (angle + 50) / 380 * 660


def gear() -> GearDrawn:
    (found,) = gears_drawn(assessed())
    return found


def bare() -> GearDrawn:
    """The gear without the sheet of its areas."""
    return replace(gear(), checks={})


def side() -> str:
    return "front" if "front end" in drawn(CHART).heading else "back"


def of_lifts(drawing: str) -> list[list[Pair]]:
    return [line for ink, line in curves(drawing) if ink == "edge" and line[0][1] <= 174]


def of_areas(drawing: str, ink: str = "edge") -> list[list[Pair]]:
    return [line for found, line in curves(drawing) if found == ink and line[0][1] > 174]


def up_in_cm2(y: float) -> float:
    """The area at a height of the chart, by two marks of its axis."""
    marks = [one for one in drawn(CHART).held.marks if one.axis == "y70 208"]
    first, last = marks[0], marks[-1]
    return first.value + (first.at - y) / (first.at - last.at) * (last.value - first.value)


def test_both_lifts_rise_to_their_greatest() -> None:
    """10.1 and 24.4 mm of 1.25 × 24.4 = 30.5 on 150 units; the exhaust of the turn before shows at the left.

    Of that there are 7.45° on a ramp of 1.1 mm over 10°: no more than 0.82 mm, 4.03 units.
    """
    lifts = of_lifts(drawn(CHART).drawing)
    assert [min(y for _, y in line) for line in lifts] == [
        pytest.approx(174 - 10.1 / 30.5 * 150, abs=0.1),
        pytest.approx(172, abs=2.05),
        pytest.approx(174 - 24.4 / 30.5 * 150, abs=0.1),
    ]
    assert [(line[0][0], line[-1][0]) for line in (lifts[0], lifts[2])] == [
        pytest.approx(tuple(map(across, OPENED[name])), abs=0.1) for name in ("inlet", "exhaust")
    ]
    assert [len(line) for line in (lifts[0], lifts[2])] == [61, 61]


def test_both_areas_rise_to_their_greatest() -> None:
    """The independent model of the same inlet opens 5845.08 mm²; the greatest of all stands at 1/1.2 of the axis."""
    areas = of_areas(drawn(CHART).drawing)
    inlet = next(line for line in areas if line[0][0] == pytest.approx(across(-5.9545), abs=0.1))
    assert up_in_cm2(min(y for _, y in inlet)) == pytest.approx(58.4508, abs=0.3)
    every = [*areas, *of_areas(drawn(CHART).drawing, "ghost")]
    assert min(y for line in every for _, y in line) == pytest.approx(388 - 180 / 1.2, abs=0.1)


def test_each_curve_is_named_above_its_middle() -> None:
    """23.5° and 231°, 6 above the greatest of the curve."""
    figure = drawn(CHART).drawing
    stand = said(figure)
    for name, lift, curve in (("inlet", "10.1", 0), ("exhaust", "24.4", 2)):
        middle = across(sum(OPENED[name]) / 2)
        top = min(y for _, y in of_lifts(figure)[curve])
        assert stand[f"{name}, {lift} mm"] == (
            pytest.approx(middle, abs=0.1),
            pytest.approx(top - 6, abs=0.1),
            "middle",
        )
        (area,) = (text for text in stand if text.startswith(f"{name}, ") and text.endswith(" cm²"))
        height = float(area.split()[1])
        assert stand[area][0] == pytest.approx(middle, abs=0.1)
        assert up_in_cm2(stand[area][1] + 6) == pytest.approx(height, abs=0.3)


def test_the_area_asked_for_at_90_degrees() -> None:
    """There the crosshead moves by 0.33 m a radian: A 2π n 0.33 m/(Z a) at 3 turns a second, by the sheet's a.

    That of the inlet over 180° in 61 points, that of the exhaust from 180° on, its last part at the left.
    """
    figure = drawn(CHART).drawing
    area = {"front": math.pi / 4 * 0.5**2, "back": math.pi / 4 * (0.5**2 - 0.09**2)}[side()]
    asked = {(round(line[0][0]), len(line)): line for line in of_areas(figure, "ghost")}
    inlet = asked[round(across(0)), 61]
    exhaust = next(line for line in asked.values() if line[0][0] == pytest.approx(across(180), abs=0.1))
    for line, most, valve, at in ((inlet, 0.5, "i", 90), (exhaust, 0.4, "e", 270)):
        wanted = area * 2 * math.pi * 3 * 0.33 / (most * number(RULE, f"a_{valve}")) * 1e4
        x, y = line[30]
        assert x == pytest.approx(across(at), abs=0.1)
        assert up_in_cm2(y) == pytest.approx(wanted, abs=0.3)


def test_nothing_is_asked_for_where_the_areas_were_not_judged() -> None:
    end = gear().given.front.at("hot")
    assert made._demands(bare(), end) == {}
    check = gear().checks[RULE]
    for missing in ("a_i", "greatest Mach index of an inlet"):
        steps = tuple(step for step in check.steps if missing not in (step.symbol, step.name))
        without = replace(gear(), checks={RULE: replace(check, steps=steps)})
        assert list(made._demands(without, end)) == ["exhaust"]


def test_the_figure_says_at_which_mach_index_the_piston_asks() -> None:
    assert "Mach index allowed (inlet 0.5; exhaust 0.4)" in drawn(CHART).says
    figure = made._figure(bare(), gear().given.front.at("hot"))
    assert "Mach index allowed (not worked)" in figure.says
    assert not any(what.startswith("Mach index") for what, _ in figure.rows)


@pytest.mark.parametrize("missing", ["Z_i", "greatest Mach index of an inlet"])
def test_a_mach_index_of_which_one_number_is_missing_is_not_in_the_table(missing: str) -> None:
    check, end = gear().checks[RULE], gear().given.front.at("hot")
    steps = tuple(
        step for step in check.steps if not (step.symbol or "").startswith(missing) and step.name != missing
    )
    rows = made._rows(replace(gear(), checks={RULE: replace(check, steps=steps)}), end)
    assert [what for what, _ in rows if what.startswith("Mach")] == [f"Mach index of the exhaust, {RULE}"]


def test_the_table_says_what_is_allowed() -> None:
    for valve, most in (("inlet", "0.5"), ("exhaust", "0.4")):
        assert size_of(drawn(CHART), f"Mach index of the {valve}, {RULE}").endswith(f", {most} allowed")
    whats = [what for what, _ in drawn(CHART).rows]
    assert whats[:4] == ["admission", "cut-off", "release", "compression"]
    assert whats.count("clearance at its tappet, hot") == 2


def test_words_keep_clear_of_the_areas_and_of_what_is_asked_for(monkeypatch: pytest.MonkeyPatch) -> None:
    """What is asked for is named once, at 0.55 of the way along that of the inlet."""
    noted = Noted()
    monkeypatch.setattr(Field, "labels", lambda _: noted)
    (figure,) = made.valve_charts(assessed())
    inlet = max(of_areas(figure.drawing, "ghost"), key=len)
    assert noted.put_at == [(inlet[33], "asked for by the piston")]
    of_inlet, of_exhaust, asked = noted.avoided
    assert asked == inlet
    assert of_inlet in of_areas(figure.drawing)
    assert of_exhaust in of_areas(figure.drawing)
    assert [len(one) for one in (of_inlet, of_exhaust)] == [61, 61]


def test_both_fields_have_their_axes_and_dead_centres() -> None:
    """Numbers of the crank angle beneath the lower field alone."""
    figure = drawn(CHART).drawing
    assert [(y, anchor) for text, _, y, anchor in said_in_order(figure) if text == "90"] == [(405, "middle")]
    stand = said(figure)
    assert stand["lift, mm"][1] == 99
    assert stand["effective area, cm²"][1] == 298
    upright = [(x, top, foot) for x, foot, _, top in lines(figure, "axis")]
    assert upright == [
        (pytest.approx(across(angle), abs=0.1), *ends)
        for ends in ((24, 174), (208, 388))
        for angle in (0, 180)
    ]


def test_each_event_has_its_line_and_its_angle_beneath_the_chart() -> None:
    """From 24 beneath the foot at 388 to 6 beneath the dimension at 448; dead centres have lines and no angles."""
    figure = drawn(CHART).drawing
    feet = [x for x, top, _, foot in lines(figure, "thin") if (top, foot) == (412, 454)]
    assert feet == pytest.approx([across(at) for at in sorted((*EVENTS, 0, 180))], abs=0.1)
    angles = [(text, x) for text, x, y, _ in said_in_order(figure) if y == 470]
    assert angles == [(f"{at:.1f}°".replace("-", "−"), pytest.approx(across(at), abs=0.1)) for at in EVENTS]
    assert said(figure)["crank angle from the end's dead centre, °"] == (400, 510, "middle")


def test_the_words_of_the_strip() -> None:
    """Above the line where there is room, else 38 beneath: the first ends 1 before its event, others begin 3 after."""
    stand = said(drawn(CHART).drawing)
    between = {"admission": (0, 52.9545), "expansion": (52.9545, 144.5455), "release": (144.5455, 180)}
    for what, (first, last) in (between | {"exhaust": (180, 317.4545)}).items():
        assert stand[what] == (pytest.approx((across(first) + across(last)) / 2, abs=0.1), 441, "middle")
    assert stand["compression"] == (pytest.approx(across(-5.9545) - 1, abs=0.1), 486, "end")
    assert stand["lead"] == (pytest.approx(across(-5.9545) + 3, abs=0.1), 486, "start")


@pytest.mark.parametrize(
    ("admission", "first"),
    [
        (-0.1, [(-0.1, "lead"), (0.0, "admission")]),
        (0.0, [(0.0, "admission")]),
        (0.1, [(0.1, "admission")]),
    ],
)
def test_an_inlet_that_opens_at_dead_centre_has_no_lead(
    admission: float, first: list[tuple[float, str]]
) -> None:
    events: Any = SimpleNamespace(admission=admission, cut_off=1.0, release=2.5, compression=5.5)
    assert made._places(events) == [
        (pytest.approx(5.5 - 2 * math.pi), "compression"),
        *first,
        (1.0, "expansion"),
        (2.5, "release"),
        (math.pi, "exhaust"),
        (5.5, ""),
    ]
