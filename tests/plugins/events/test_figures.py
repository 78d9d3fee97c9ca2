"""The drawings of the family: well formed, small, with the numbers of their sheets, and moved by what moves them.

Where a check's sheet has a number that is drawn, both are held against each other; the others against hand working.
"""

from __future__ import annotations

import math
import re
from functools import cache
from itertools import pairwise
from pathlib import Path
from tempfile import TemporaryDirectory
from types import SimpleNamespace
from typing import Any
from xml.etree import ElementTree

import pytest

from speclint.checking import Assessment, Check, assess
from speclint.errors import replace
from speclint.reports import Figure, Labels, Paper, courses_of
from speclint.testing import DesignFolder
from speclint_events.figures import turning_moments as turning_figure
from speclint_events.figures.event_circle import event_circles
from speclint_events.figures.gears import gear_of, gears_drawn
from speclint_events.figures.indicator_card import indicator_cards, thinned
from speclint_events.figures.notch_efforts import Notch, notch_efforts
from speclint_events.figures.spring_forces import _Scan, spring_forces
from speclint_events.figures.turning_moments import turning_moments
from speclint_events.figures.valve_chart import _end, _turned, valve_charts
from tests.plugins.events.gear import foot
from tests.plugins.events.worked_engine import worked_engine
from tests.plugins.known_metals import WITH_METALS
from tests.plugins.valves.gear import train_files
from tests.reports.held_drawings import Holder

MAKERS = {
    "valves-gear": valve_charts,
    "indicator-gear": indicator_cards,
    "circle-gear": event_circles,
    "efforts-gear": notch_efforts,
    "moment-gear": turning_moments,
}
RULES = (
    "cycle.steam-rate",
    "events.adhesion",
    "events.area-enough",
    "events.boiler-feeds",
    "events.both-directions",
    "events.cut-off-as-asked",
    "events.starts-anywhere",
)
EVENTS = ("admission", "cut-off", "release", "compression")
LARGEST = 15_000  # letters of a drawing: the pack holds some hundred


@cache
def assessed(*changes: tuple[str, str, str], rules: tuple[str, ...] = RULES) -> Assessment:
    """The engine of the worked cases, some passages changed, judged by the rules whose sheets are drawn."""
    with TemporaryDirectory() as folder:
        design = DesignFolder(Path(folder)).write(worked_engine(*changes), settings=WITH_METALS)
        return assess([design.root], design.loaded, [one for one in design.loaded.rules if one.name in rules])


@cache
def drawn(name: str, *changes: tuple[str, str, str]) -> Figure:
    (found,) = MAKERS[name](assessed(*changes))
    assert found.name == name
    return found


@cache
def spring_on_cam() -> tuple[Assessment, Check]:
    """The check of one spring that holds a valve on its cam, and its assessment."""
    with TemporaryDirectory() as folder:
        design = DesignFolder(Path(folder)).write(train_files())
        chosen = [one for one in design.loaded.rules if one.name == "valve.spring-follows-cam"]
        assessment = assess([design.root], design.loaded, chosen)
    (check,) = assessment.checks
    return assessment, check


def following() -> Figure:
    (found,) = spring_forces(spring_on_cam()[0])
    return found


def number(rule: str, symbol: str, *changes: tuple[str, str, str]) -> float:
    """The last number under a symbol on a sheet."""
    (check,) = (one for one in assessed(*changes).checks if one.rule.name == rule)
    value = [step.value for step in check.steps if step.symbol == symbol][-1]
    assert isinstance(value, float)
    return value


def marks(figure: Figure, tag: str, ink: str) -> list[ElementTree.Element]:
    root = ElementTree.fromstring(figure.drawing)
    return [one for one in root.iter() if one.tag.endswith(f"}}{tag}") and one.get("class") == ink]


def texts(figure: Figure) -> list[str]:
    return [
        one.text or "" for one in ElementTree.fromstring(figure.drawing).iter() if one.tag.endswith("}text")
    ]


def size_of(figure: Figure, *what: str) -> str:
    (found,) = (row[len(what)] for row in figure.rows if row[: len(what)] == what)
    return found


def points(mark: ElementTree.Element) -> list[tuple[float, float]]:
    flat = [float(one) for one in (mark.get("points") or "").replace(",", " ").split()]
    return list(zip(flat[::2], flat[1::2], strict=True))


ALL = [*MAKERS, "following-valve"]


def of_name(name: str) -> Figure:
    return following() if name == "following-valve" else drawn(name)


@pytest.mark.parametrize("name", ALL)
def test_each_is_well_formed_and_small(name: str) -> None:
    figure = of_name(name)
    root = ElementTree.fromstring(figure.drawing)
    assert root.get("role") == "img"
    assert len(figure.drawing) < LARGEST
    assert figure.rows
    assert all(len(row) == len(figure.columns) for row in figure.rows)


@pytest.mark.parametrize("name", ALL)
def test_nothing_written_is_cut_off(name: str) -> None:
    """By the widest letter of usual faces, 7 units of a line of 13; the half of it to either side of the middle."""
    figure = of_name(name)
    root = ElementTree.fromstring(figure.drawing)
    _, _, wide, tall = map(float, (root.get("viewBox") or "").split())
    for one in (one for one in root.iter() if one.tag.endswith("}text") and not one.get("transform")):
        x, y, length = float(one.get("x", "")), float(one.get("y", "")), 7 * len(one.text or "")
        left = {"start": x, "middle": x - length / 2, "end": x - length}[one.get("text-anchor", "start")]
        assert left >= -2, one.text
        assert left + length <= wide + 2, one.text
        assert 8 <= y <= tall - 2, one.text


@pytest.mark.parametrize("name", ALL)
def test_every_number_is_that_of_its_sheet_and_stands_where_its_axis_has_it(name: str) -> None:
    """As of every drawing of the example."""
    assessment = spring_on_cam()[0] if name == "following-valve" else assessed()
    assert Holder(assessment).wrong(of_name(name)) == []


@pytest.mark.parametrize("name", ALL)
def test_every_ink_is_known_to_the_page(name: str) -> None:
    from speclint.reports.pack.templating import file_text

    style = file_text("drawings.css")
    root = ElementTree.fromstring(of_name(name).drawing)
    inks = {ink for one in root.iter() for ink in (one.get("class") or "").split()}
    for ink in inks - {"drawing", "word", "figure"}:
        assert ink.startswith("own-") or re.search(rf"[. ]\.?{re.escape(ink)}[ ,]", style), ink


# Valves over the crank angle


def test_the_valves_stand_at_the_angles_of_their_cams() -> None:
    """Cams of 20 %: feet −10.5° and 140°; 0.5 mm of a ramp of 1.1 mm over 10° is used up after 4.545°.

    The inlet is shut 4.545° before the end of its 10 + 21 + 6 + 21 + 10 = 68°, at 52.95°, the exhaust before the end of
    its 10 + 56 + 50 + 56 + 10 = 182°, at 317.45°, which is −42.55° of the turn before.
    """
    figure = drawn("valves-gear")
    assert [size_of(figure, event).split(",")[0] for event in EVENTS] == [
        "−6.0°",
        "53.0°",
        "144.5°",
        "317.5°",
    ]
    assert {"−42.5°", "−6.0°", "53.0°", "144.5°", "317.5°"} <= set(texts(figure))
    assert [
        one
        for one in texts(figure)
        if one in {"compression", "lead", "admission", "expansion", "release", "exhaust"}
    ] == ["compression", "lead", "admission", "expansion", "release", "exhaust"]


def test_inlet_and_exhaust_are_not_taken_for_one_another() -> None:
    """9.5 and 23.8 mm of the cams and 1.1 mm of their ramps, less 0.5 mm of clearance: 10.1 and 24.4 mm."""
    figure = drawn("valves-gear")
    assert size_of(figure, "greatest lift of the inlet") == "10.10 mm"
    assert size_of(figure, "greatest lift of the exhaust") == "24.40 mm"
    assert {"inlet, 10.1 mm", "exhaust, 24.4 mm"} <= set(texts(figure))
    lifts = sorted(marks(figure, "polyline", "edge"), key=lambda mark: -len(points(mark)))[:4]
    inlet, exhaust = sorted((points(one) for one in lifts if points(one)[0][1] < 180), key=lambda one: one[0])
    assert max(x for x, _ in inlet) < min(x for x, _ in exhaust)
    assert min(y for _, y in inlet) > min(y for _, y in exhaust)


def test_the_chart_has_the_mach_indices_of_their_sheet() -> None:
    figure = drawn("valves-gear")
    end = "front" if "front end" in figure.heading else "back"
    for valve in ("inlet", "exhaust"):
        sheet = number("events.area-enough", f"Z_{valve[0]}{end[0]}")
        assert size_of(figure, f"Mach index of the {valve}, events.area-enough").startswith(f"{sheet:.3g}")


def test_the_demand_is_greatest_where_the_piston_is_fastest() -> None:
    """A piston is fastest a little before the rod stands square to the crank: at 80° of the front, 100° of the back."""
    figure = drawn("valves-gear")
    inlet = max(marks(figure, "polyline", "ghost"), key=lambda mark: len(points(mark)))
    asked = points(inlet)
    start, stop = asked[0][0], asked[-1][0]
    top = min(asked, key=lambda point: point[1])[0]
    angle = 180 * (top - start) / (stop - start)
    assert angle == pytest.approx(80 if "front end" in figure.heading else 100, abs=4)


def test_the_demand_of_the_exhaust_begins_where_that_of_the_inlet_ends() -> None:
    lines = [points(one) for one in marks(drawn("valves-gear"), "polyline", "ghost")]
    inlet = max(lines, key=len)
    assert any(line[0] == inlet[-1] for line in lines)


def test_the_end_is_the_one_whose_valves_are_the_least_ample() -> None:
    """Of the four Mach indices, each over the 0.5 of an inlet or the 0.4 of an exhaust, by the sheet."""
    used = {
        f"{valve[0]}{side[0]}": number("events.area-enough", f"Z_{valve[0]}{side[0]}") / most
        for valve, most in (("inlet", 0.5), ("exhaust", 0.4))
        for side in ("front", "back")
    }
    side = {"f": "front", "b": "back"}[max(used, key=used.__getitem__)[1]]
    assert drawn("valves-gear").heading.endswith(f"valves of the {side} end")


@pytest.mark.parametrize(
    ("indices", "side"),
    [
        # of each end the valve that uses more of its limit, 0.5 or 0.4: 0.8 in front against 0.6, whatever others use
        ({"Z_if": 0.4, "Z_ef": 0.1, "Z_ib": 0.3, "Z_eb": 0.2}, "front"),
        ({"Z_if": 0.3, "Z_ef": 0.2, "Z_ib": 0.1, "Z_eb": 0.32}, "back"),
        ({}, "front"),
    ],
)
def test_the_least_ample_valve_of_each_end_counts(indices: dict[str, float], side: str) -> None:
    ends = {one: SimpleNamespace(at=lambda _, one=one: one) for one in ("front", "back")}
    given: Any = SimpleNamespace(
        given=SimpleNamespace(**ends),
        limit=lambda _, what: 0.5 if what.endswith("inlet") else 0.4,
        on_sheet=lambda _, symbol: indices.get(symbol),
    )
    assert _end(given) == side


def test_a_foot_that_is_moved_moves_its_valve_alone() -> None:
    moved = drawn("valves-gear", foot("20", "inlet_front", "-8.5 °"), foot("20", "inlet_back", "-8.5 °"))
    assert size_of(moved, "admission").startswith("−4.0°")
    assert size_of(moved, "release") == size_of(drawn("valves-gear"), "release")


def test_an_inlet_that_opens_late_has_no_lead() -> None:
    feet = [foot("20", f"inlet_{side}", "-1.5 °") for side in ("front", "back")]
    assert "lead" in texts(drawn("valves-gear"))
    assert "lead" not in texts(drawn("valves-gear", *feet))
    assert texts(drawn("valves-gear", *feet)).count("admission") == 1


def test_the_strip_of_events_is_to_the_scale_of_the_chart() -> None:
    """From −50° to 330° over 660 units from 70: the events above, and both dead centres."""
    places = [70 + (angle + 50) / 380 * 660 for angle in (-42.55, -5.95, 0, 52.95, 144.55, 180, 317.45)]
    lines = [
        (float(one.get("x1", "")), float(one.get("x2", "")))
        for one in marks(drawn("valves-gear"), "line", "thin")
        if one.get("y1") == one.get("y2") == "448"
    ]
    assert [at for line in lines for at in line] == pytest.approx(
        [at for pair in pairwise(places) for at in pair], abs=0.15
    )


def test_both_dead_centres_are_named_at_their_angles() -> None:
    """0° and 180° of −50° to 330° over 660 units from 70, above the lifts, whose field begins at 24."""
    found = [
        (one.text, float(one.get("x", "")), one.get("y"))
        for one in ElementTree.fromstring(drawn("valves-gear").drawing).iter()
        if one.tag.endswith("}text") and (one.text or "").endswith("dead centre")
    ]
    assert found == [
        ("dead centre", pytest.approx(70 + 50 / 380 * 660, abs=0.1), "16"),
        ("far dead centre", pytest.approx(70 + 230 / 380 * 660, abs=0.1), "16"),
    ]


def test_a_wide_span_has_its_word_in_the_middle_and_a_narrow_one_beneath() -> None:
    """Of the strip above: expansion from 248.8 to 407.9, 7 above its line; the lead's 10 units have no room."""
    root = ElementTree.fromstring(drawn("valves-gear").drawing)
    at = {one.text: one for one in root.iter() if one.tag.endswith("}text")}
    expansion, lead, compression = at["expansion"], at["lead"], at["compression"]
    assert float(expansion.get("x", "")) == pytest.approx((248.8 + 407.9) / 2, abs=0.2)
    assert (expansion.get("y"), expansion.get("text-anchor")) == ("441", "middle")
    assert float(lead.get("x", "")) == pytest.approx(146.5 + 3, abs=0.2)
    assert lead.get("y") == "486"
    assert compression.get("y") == "486"


def test_a_curve_is_drawn_in_every_turn_of_which_two_points_show() -> None:
    """Within −50° to 330°: 320° and 325° show as they are and as −40° and −35°; of one point there is no line."""
    two = [(320.0, 1.0), (325.0, 2.0)]
    assert list(_turned(two, (-50.0, 330.0))) == [[(-40.0, 1.0), (-35.0, 2.0)], two]
    assert list(_turned(two[:1], (-50.0, 330.0))) == []
    assert list(_turned([(-50.0, 1.0), (330.0, 2.0)], (-50.0, 330.0))) == [[(-50.0, 1.0), (330.0, 2.0)]]


def test_the_moments_are_those_of_the_gear_that_is_drawn(monkeypatch: pytest.MonkeyPatch) -> None:
    rule, other = SimpleNamespace(name=turning_figure._RULE), SimpleNamespace(name="another.rule")
    checks = [("other gear", rule), ("gear", other), ("gear", rule)]
    assessment: Any = SimpleNamespace(
        checks=[SimpleNamespace(component=name, rule=one) for name, one in checks]
    )
    monkeypatch.setattr(
        turning_figure, "taken_again", lambda _, check, __: [f"{check.component}, {check.rule.name}"]
    )
    assert turning_figure.turning_of(assessment, "gear") == [f"gear, {turning_figure._RULE}"]


def test_what_no_sheet_has_is_no_number() -> None:
    (gear,) = gears_drawn(assessed())
    assert gear.on_sheet("cycle.steam-rate", "no such symbol") is None
    assert gear.on_sheet("no.such-rule", "p_mf") is None
    assert gear.quantity("cycle.steam-rate", "no such symbol") is None
    assert gear.limit("events.area-enough", "no such limit") is None
    assert gear.limit("no.such-rule", "greatest Mach index of an inlet") is None


def test_a_word_on_a_sheet_is_no_number() -> None:
    """What was read as a word has no symbol, and a limit may be a word: neither is drawn to any scale."""
    (gear,) = gears_drawn(assessed())
    check = gear.checks["cycle.steam-rate"]
    (word, *_) = (step for step in check.steps if isinstance(step.value, str))
    limit = replace(word, kind="limit", name="in words")
    of_words = replace(gear, checks={"cycle.steam-rate": replace(check, steps=(word, limit))})
    assert of_words.on_sheet("cycle.steam-rate", word.symbol) is None
    assert of_words.limit("cycle.steam-rate", "in words") is None


# Indicator card


def test_the_card_has_the_mean_pressures_and_factors_of_its_sheet() -> None:
    """All clearances of this engine are alike, its chest exact: the sheet's number is that as drawn."""
    figure = drawn("indicator-gear")
    for side in ("front", "back"):
        p_m, k = (number("cycle.steam-rate", symbol) for symbol in (f"p_m{side[0]}", f"k_{side[0]}"))
        assert size_of(figure, f"mean effective pressure, {side}, as drawn") == f"{p_m / 1e5:.2f} bar"
        assert any(
            text.startswith(f"{side}: mean effective pressure {p_m / 1e5:.2f} bar") for text in texts(figure)
        )
        assert f"{k:.3f}" in size_of(figure, f"diagram factor, {side}, as drawn")


def test_the_area_of_each_diagram_is_its_mean_pressure() -> None:
    """Measured as with a planimeter: the axes run from 0 to 1 of the stroke and from 0 on, to scale by two ticks."""
    figure = drawn("indicator-gear")
    root = ElementTree.fromstring(figure.drawing)
    at = {one.text: one for one in root.iter() if one.tag.endswith("}text")}
    wide = float(at["1"].get("x", "")) - float(at["0.5"].get("x", ""))
    tall = (float(at["4"].get("y", "")) - float(at["8"].get("y", ""))) / 4
    for side, ink in (("front", "edge"), ("back", "edge dashed")):
        (line,) = (one for one in marks(figure, "polyline", ink) if len(points(one)) > 50)
        corners = points(line)
        area = (
            sum(a[0] * b[1] - b[0] * a[1] for a, b in zip(corners, [*corners[1:], corners[0]], strict=True))
            / 2
        )
        mean = abs(area) / (2 * wide * tall)
        assert mean == pytest.approx(number("cycle.steam-rate", f"p_m{side[0]}") / 1e5, rel=0.01)


def test_the_back_is_drawn_from_the_right() -> None:
    figure = drawn("indicator-gear")
    for ink, left in (("edge", True), ("edge dashed", False)):
        (line,) = (points(one) for one in marks(figure, "polyline", ink) if len(points(one)) > 50)
        x, _ = min(line, key=lambda point: point[1])
        assert (x < 400) == left
    on_sheet = number("cycle.steam-rate", "p_mb") / 1e5
    assert size_of(figure, "on the sheet of cycle.steam-rate, back").startswith(f"{on_sheet:.2f} bar")


def test_the_crosses_of_the_front_stand_on_its_diagram() -> None:
    """The front's from the left: cut-off left of release, both on the way out, above compression."""
    figure = drawn("indicator-gear")
    front = {event: size_of(figure, f"{event}, front") for event in EVENTS}
    pressures = {event: float(text.split()[0]) for event, text in front.items()}
    assert pressures["cut-off"] == pytest.approx(
        number_of_rule("events.wire-drawing", "p_cf") / 1e5, abs=0.006
    )
    assert pressures["release"] == pytest.approx(
        number_of_rule("events.expansion-used", "p_rf") / 1e5, abs=0.006
    )
    assert len(marks(figure, "line", "edge")) == 2 * 8


def number_of_rule(rule: str, symbol: str) -> float:
    (check,) = assessed(rules=(rule,)).checks
    return next(step.value for step in check.steps if step.symbol == symbol and isinstance(step.value, float))


@pytest.mark.parametrize(("line", "below"), [("chest", -4), ("belt", -4), ("atmosphere", 14)])
def test_the_lines_of_the_pressures_are_named(line: str, below: float) -> None:
    """Chest and belt above their lines, the atmosphere, which lies near that of the belt, below its own."""
    figure = drawn("indicator-gear")
    root = ElementTree.fromstring(figure.drawing)
    text = {one.text: one for one in root.iter() if one.tag.endswith("}text")}
    levels = sorted(
        {float(one.get("y1", "")) for one in marks(figure, "line", "fine") if one.get("y1") == one.get("y2")}
    )
    assert len(levels) == 3
    level = levels[["chest", "belt", "atmosphere"].index(line)]
    assert float(text[line].get("y", "")) - level == pytest.approx(below, abs=0.11)


@pytest.mark.parametrize(
    ("long", "kept"),
    [(2, [0, 1]), (4, [0, 1, 2, 3]), (5, [0, 2, 4]), (7, [0, 2, 4, 6]), (8, [0, 3, 6, 7])],
)
def test_a_thinned_card_has_no_more_points_than_asked_and_both_ends(long: int, kept: list[int]) -> None:
    """Of four points three spaces: of seven spaces every third, 7/3 rounded up, and the rest."""
    card = tuple((float(n), 10.0 * n) for n in range(long))
    assert thinned(card, 4) == [card[n] for n in kept]


# Circle of the crank


def test_the_circle_has_the_distances_that_a_fitter_checks() -> None:
    (check,) = (one for one in assessed().checks if one.rule.name == "events.cut-off-as-asked")
    told = {step.name: str(step.value) for step in check.steps if "piston from its end" in step.name}
    figure = drawn("circle-gear")
    notches = {row[0] for row in figure.rows}
    assert notches == {"20", "b"}
    for notch, end, event, _, travel in figure.rows:
        sheet = told[f"notch {notch}, {end}: piston from its end at {event}"]
        assert travel.startswith(sheet.split(",")[0])
    assert len(figure.rows) == 2 * 2 * 4


def test_a_ring_is_black_where_its_valve_is_open() -> None:
    """Front inlet from −5.95° to 52.95°, the centre at (210, 205), forward below the line of stroke; radius 96."""
    arcs = [points(one) for one in marks(drawn("circle-gear"), "polyline", "stated")]
    assert len(arcs) == 8
    (front,) = (arc for arc in arcs if arc[0][0] < 420 and radius(arc[0]) == pytest.approx(96, abs=0.2))
    assert [turned(front[0]), turned(front[-1])] == pytest.approx([-5.95, 52.95], abs=0.1)
    (exhaust,) = (arc for arc in arcs if arc[0][0] < 420 and radius(arc[0]) == pytest.approx(105, abs=0.2))
    assert turned(exhaust[0]) == pytest.approx(144.55, abs=0.1)
    (back,) = (arc for arc in arcs if arc[0][0] < 420 and radius(arc[0]) == pytest.approx(122, abs=0.2))
    assert turned(back[0]) % 360 == pytest.approx(180 - 5.95, abs=0.1)


def test_the_arcs_of_the_tenths_divide_the_line_of_stroke_evenly() -> None:
    """The crank pin swung about the crosshead: the circle's 168 units of stroke lie 16.8 apart, each arc with the rod.

    The rod of 1.9 m on a crank of 0.33 m is 483.6 units on the 84 of the circle: every point of an arc lies
    as far from the crosshead, on the line of stroke to the left.
    """
    arcs = [points(one) for one in marks(drawn("circle-gear"), "polyline", "fine")]
    first = sorted((arc for arc in arcs if arc[4][0] < 420), key=lambda arc: arc[4])
    assert [len(arc) for arc in first] == [9] * 9
    assert [arc[4][0] for arc in first] == pytest.approx([126 + 16.8 * n for n in range(1, 10)], abs=0.11)
    for arc in first:
        crosshead = (arc[4][0] - 84 * 1.9 / 0.33, 205.0)
        assert [math.dist(crosshead, at) for at in arc] == pytest.approx([84 * 1.9 / 0.33] * 9, abs=0.2)
        assert [radius(arc[0]), radius(arc[-1])] == pytest.approx([84, 84], abs=0.1)
        heights = [y for _, y in arc]
        assert heights == pytest.approx(
            [205 + (arc[-1][1] - arc[0][1]) / 8 * n for n in range(-4, 5)], abs=0.11
        )


def test_the_letters_of_the_back_stand_outside_of_its_rings() -> None:
    """To the left of the centre words end at their place and to the right begin there; the front's stand across."""
    found = [
        (one.get("text-anchor", "start"), float(one.get("x", "")), float(one.get("y", "")) - 4)
        for one in ElementTree.fromstring(drawn("circle-gear").drawing).iter()
        if one.tag.endswith("}text") and re.fullmatch(r"[ACRK] [0-9.]+ %", one.text or "")
    ]
    assert len(found) == 16
    for anchor, x, y in found:
        centre = 210.0 if x < 420 else 630.0
        away = math.dist((x, y), (centre, 205.0))
        if anchor == "middle":
            assert away == pytest.approx(66, abs=0.2)
        else:
            assert away == pytest.approx(150, abs=0.2)
            assert anchor == ("end" if x < centre else "start")


def radius(at: tuple[float, float]) -> float:
    return math.dist(at, (210, 205))


def turned(at: tuple[float, float]) -> float:
    return math.degrees(math.atan2(at[1] - 205, 210 - at[0]))


def test_running_backward_turns_the_other_way() -> None:
    """The arrow within the circle: above the line of stroke running forward, below it backward."""
    thin = [points(one) for one in marks(drawn("circle-gear"), "polyline", "thin")]
    forward, backward = sorted(thin, key=lambda line: line[0][0])
    assert max(y for _, y in forward) < 205 < min(y for _, y in backward)


# Springs over the cam


def test_the_springs_have_the_loads_of_their_sheet() -> None:
    with TemporaryDirectory() as folder:
        check = DesignFolder(Path(folder)).write(train_files()).only("valve.spring-follows-cam")
    values = {step.symbol: step.value for step in check.steps if isinstance(step.value, float)}
    figure = following()
    assert size_of(figure, "load available to keep the valve on the cam, there") == f"{values['F']:.0f} N"
    assert size_of(figure, "load to be held, including its margin, there") == f"{values['F_n']:.0f} N"
    assert f"{values['F'] - values['F_n']:.0f} N left" in texts(figure)
    (step,) = (step for step in check.steps if step.series)
    recorded = {one.symbol: [value for value in one.values if value is not None] for one in step.series}
    assert f"−{abs(min(recorded['a'])):.4g} m/s²" in texts(figure)
    assert f"{max(recorded['h']) * 1e3:.4g} mm" in texts(figure)


def test_the_velocity_of_a_valve_adds_up_to_its_lift() -> None:
    """From the foot to the top: the mean velocity of the rise, by the time in which the cam turns through it."""
    with TemporaryDirectory() as folder:
        check = DesignFolder(Path(folder)).write(train_files()).only("valve.spring-follows-cam")
    (courses,) = courses_of([check])
    scan = _Scan(courses, check)
    values = {step.symbol: step.value for step in check.steps if isinstance(step.value, float)}
    angles, speeds = scan.angles, [one.value if one is not None else 0.0 for one in scan.velocities()]
    top = courses.top
    risen = sum(speeds[n] * math.radians(angles[n + 1] - angles[n]) / values["ω_o"] for n in range(top))
    lifted = courses.travel.values[top]
    assert lifted
    assert risen == pytest.approx(lifted, rel=0.01)
    assert len(marks(following(), "polyline", "edge")) == 4, "lift, velocity, acceleration and load"


def test_the_curves_of_the_springs_are_named() -> None:
    """What is there at the left of its flat top; what must be held in the middle of the lift, beneath its curve."""
    root = ElementTree.fromstring(following().drawing)
    at = {one.text: one for one in root.iter() if one.tag.endswith("}text")}
    there = at["load available to keep the valve on the cam"]
    held = at["load to be held, including its margin"]
    assert float(held.get("x", "")) == pytest.approx(400, abs=3)
    assert float(there.get("y", "")) < float(held.get("y", ""))


def test_no_other_rule_over_the_cam_is_drawn_as_springs() -> None:
    assessment, check = spring_on_cam()
    other = replace(check, rule=replace(check.rule, name="valve.of-another-rule"), component="other")
    assert list(spring_forces(replace(assessment, checks=(other,)))) == []
    for checks in ((check, other), (other, check)):
        (figure,) = spring_forces(replace(assessment, checks=checks))
        assert figure.component == check.component


# What each notch does


def test_the_limits_of_rail_and_boiler_are_those_of_their_sheets() -> None:
    figure = drawn("efforts-gear")
    F_a, F = (number("events.adhesion", symbol) / 1e3 for symbol in ("F_a", "F"))
    assert {f"adhesion, {F_a:.1f} kN", f"starting, {F:.1f} kN"} <= set(texts(figure))
    assert f"boiler, {number('events.boiler-feeds', 'm_b'):.2f} kg/s" in texts(figure)


def test_the_running_point_is_worked_from_the_mean_pressures_of_the_sheet() -> None:
    """F = z Σ p_m A S/(π D): 3 cylinders, π/4 · 0.5² and the same less π/4 · 0.09², 0.66 m, worn wheels of 1.675 m."""
    areas = {"f": math.pi / 4 * 0.5**2, "b": math.pi / 4 * (0.5**2 - 0.09**2)}
    work = sum(number("cycle.steam-rate", f"p_m{end}") * area * 0.66 for end, area in areas.items())
    assert f"running, {3 * work / (math.pi * 1.675) / 1e3:.1f} kN" in texts(drawn("efforts-gear"))


def test_notches_of_the_other_direction_are_left_out() -> None:
    assert {row[0] for row in drawn("efforts-gear").rows if row[1]} == {"65", "35", "20"}


def test_the_boilers_limit_lies_where_the_steam_passes_it() -> None:
    """From 2 to 4 kg/s between 10 and 30 km/h, 2.5 kg/s are passed at 15 km/h; below and above nothing is passed."""
    notch = Notch("a", ((10.0, 100.0, 2.0, 8.0), (30.0, 80.0, 4.0, 8.0)))
    assert notch.limit(2.5) == pytest.approx((15.0, 95.0))
    assert notch.limit(1.9) is None
    assert notch.limit(4.1) is None


def test_a_notch_is_dashed_beyond_what_the_boiler_feeds() -> None:
    """The longest notch alone takes more than 5 kg/s, and only from the cross on."""
    figure = drawn("efforts-gear")
    (dashed,) = (points(one) for one in marks(figure, "polyline", "edge dashed"))
    fed = [
        float(row[1].split()[0]) for row in figure.rows if row[0] == "65" and float(row[3].split()[0]) <= 5
    ]
    assert fed
    assert len(fed) < 4
    assert len(dashed) == 1 + 4 - len(fed)


# Standstill


def test_the_moments_are_those_of_their_sheet() -> None:
    figure = drawn("moment-gear")
    M, M_m = (number("events.starts-anywhere", symbol) for symbol in ("M_f", "M_m"))
    assert size_of(figure, "least moment, forward, notch 65").startswith(f"{M / 1e3:.2f} kN·m")
    assert {f"mean, {M_m / 1e3:.1f} kN·m", f"least allowed, {M_m / 4e3:.1f} kN·m"} <= set(texts(figure))


def test_each_direction_has_the_least_moment_of_its_sheet() -> None:
    """Cranks that are not even, and a seat that wears: the directions differ, and so do cold, hot and worn."""
    changes = (
        ("engine.toml", 'angle = "120 °"', 'angle = "90 °"'),
        ("tappet-inlet-front.toml", 'seat_wear = "0 mm"', 'seat_wear = "0.3 mm"'),
        ("tappet-inlet-back.toml", 'seat_wear = "0 mm"', 'seat_wear = "0.3 mm"'),
    )
    figure = drawn("moment-gear", *changes)
    for direction, notch in (("forward", "65"), ("backward", "b")):
        sheet = number("events.starts-anywhere", f"M_{direction[0]}", *changes) / 1e3
        assert size_of(figure, f"least moment, {direction}, notch {notch}").startswith(f"{sheet:.2f} kN·m")


def test_directions_that_differ_are_both_drawn() -> None:
    dwells = (("front", "8.5"), ("back", "18"))
    same = [(f"cam-inlet-{side}-b.toml", f'"{dwell} °"', '"13.5 °"') for side, dwell in dwells]
    for figure, dashed in ((drawn("moment-gear"), 1), (drawn("moment-gear", *same), 0)):
        assert len(marks(figure, "polyline", "edge")) == 1
        assert len(marks(figure, "polyline", "edge dashed")) == dashed
    both = [text for text in texts(drawn("moment-gear", *same)) if text.startswith("forward and backward, ")]
    assert len(both) == 1


# What is drawn at all


def test_nothing_is_drawn_where_there_is_no_gear(tmp_path: Path) -> None:
    design = DesignFolder(tmp_path).write({"ring.toml": 'kind = "piston-ring"'})
    chosen = [one for one in design.loaded.rules if one.name in RULES]
    assessment = assess([design.root], design.loaded, chosen)
    assert [list(make(assessment)) for make in (*MAKERS.values(), spring_forces)] == [[]] * 6


def test_nothing_is_drawn_of_what_cannot_be_worked() -> None:
    """Without the length of the stroke no cylinder is known, and the checks say so."""
    assessment = assessed(("engine.toml", 'stroke = "660 mm"\n', ""))
    assert assessment.checks
    assert [list(make(assessment)) for make in MAKERS.values()] == [[]] * 5


@pytest.mark.parametrize(("foot_of_65", "drawn_as"), [("-9.5 °", [("gear", ("second",))]), ("-9 °", None)])
def test_gears_alike_are_drawn_once(
    foot_of_65: str, drawn_as: list[tuple[str, tuple[str, ...]]] | None
) -> None:
    with TemporaryDirectory() as folder:
        files = worked_engine()
        files["second.toml"] = files["gear.toml"].replace('foot = "-9.5 °"', f'foot = "{foot_of_65}"')
        design = DesignFolder(Path(folder)).write(files, settings=WITH_METALS)
        rules = [one for one in design.loaded.rules if one.name == "cycle.steam-rate"]
        assessment = assess([design.root], design.loaded, rules)
        found = list(gears_drawn(assessment))
        names = [one.name for one in found]
        assert [gear_of(assessment, name).name for name in reversed(names)] == names[::-1]
    assert [(one.name, one.alike) for one in found] == (drawn_as or [("gear", ()), ("second", ())])


def test_a_drawing_says_of_which_notch_and_speed_it_is() -> None:
    (gear,) = gears_drawn(assessed())
    assert gear.of == "gear: notch 20, 180 rev/min"
    assert replace(gear, alike=("second",)).of == "gear, second: notch 20, 180 rev/min"


def test_a_gear_whose_steam_was_not_worked_is_not_drawn() -> None:
    assert list(gears_drawn(assessed(rules=("events.wire-drawing",)))) == []


def test_of_several_springs_the_worst_is_drawn() -> None:
    assessment, check = spring_on_cam()
    assert check.utilisation
    easy = replace(check, component="easy", judgement=None)
    for checks in ((check, easy), (easy, check)):
        (figure,) = spring_forces(replace(assessment, checks=checks))
        assert figure.component == "valve"


# Words beside the points that they name


def put(labels: Labels, paper: Paper) -> tuple[float, float]:
    """Where twelve letters were written beside the middle of the paper: their middle, and their foot."""
    labels.put((200.0, 200.0), "twelve signs")
    mark = ElementTree.fromstring(paper.markup())[-1]
    return float(mark.get("x", "")), float(mark.get("y", ""))


def test_words_keep_clear_of_words_and_of_curves() -> None:
    """Twelve letters at 7.2 units are 86 wide and 12 tall: the second are that far from the first."""
    paper = Paper("a", "a", "a", 400.0, 400.0)
    labels = Labels(paper, (0.0, 0.0, 400.0, 400.0))
    first, second = put(labels, paper), put(labels, paper)
    assert abs(first[0] - second[0]) > 86 or abs(first[1] - second[1]) > 12
    free = Labels(paper, (0.0, 0.0, 400.0, 400.0))
    assert put(free, paper) == first
    kept_off = Labels(paper, (0.0, 0.0, 400.0, 400.0))
    kept_off.avoid([(first[0] - 40, first[1] - 5), (first[0] + 40, first[1] - 5)])
    assert put(kept_off, paper) != first


def test_words_stay_within_their_field() -> None:
    paper = Paper("a", "a", "a", 400.0, 400.0)
    x, _ = put(Labels(paper, (0.0, 0.0, 210.0, 400.0)), paper)
    assert x + 43 <= 210
