"""The units that drawings write: worked by hand, in words, on axes and on scale bars, and in the pack of a works.

By the definitions of 1959 and of the CGPM: 1 in is 25.4 mm, 1 lb is 0.45359237 kg, 1 lbf is that times 9.80665 m/s²,
1 hp is 550 ft·lbf/s; 32 °F is 0 °C and 212 °F is 100 °C.
"""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from pathlib import Path
from types import SimpleNamespace
from typing import cast
from xml.etree import ElementTree

import pytest

from speclint.checking import Assessment, assess
from speclint.errors import NOWHERE
from speclint.families import FigureMaker
from speclint.quantities import Measure, System, read, unit_in
from speclint.reports.pack.bars import Bar, chart
from speclint.reports.pack.document import document
from speclint.reports.pack.drawings import figures
from speclint.reports.pack.drawn_units import (
    drawn,
    drawn_in,
    drawn_names,
    drawn_number,
    drawn_places,
    drawn_system,
    metric_number,
)
from speclint.reports.pack.figures import Figure, said
from speclint.reports.pack.paper import Paper, axis_marks
from speclint.reports.pack.plot import Plot
from speclint.reports.pack.printed import InSpec, Quantity, as_on_sheet, quoted, shown, words
from speclint.testing import DesignFolder
from tests.plugins.valves.gear import train_files
from tests.reports.held_drawings import METRIC, texts_of, units_in

ROOT = Path(__file__).parents[2]
with drawn_in("imperial"):
    IMPERIAL = dict(drawn_names())


def of(value: float) -> Quantity:
    """A quantity that no test looks up."""
    return Quantity(value, InSpec(NOWHERE, "nominal"))


# Numbers


@pytest.mark.parametrize(
    ("number", "unit", "other", "name"),
    [
        (25.4, "mm", 1.0, "in"),
        (25.4, "µm", 1.0, "thou"),
        (645.16, "mm²", 1.0, "in²"),
        (6.4516, "cm²", 1.0, "in²"),
        (4.4482216152605, "N", 1.0, "lbf"),
        (1.0, "kN", 224.80894309971, "lbf"),
        (1.0, "N/mm", 5.710147154732646, "lbf/in"),  # 25.4/4.4482216
        (1.0, "kN·m", 737.56214927727, "lbf·ft"),  # 1000/(4.4482216 · 0.3048)
        (1.0, "MPa", 145.03773773022, "psi"),  # 25.4²/4.4482216
        (1.0, "bar", 14.503773773022, "psi"),
        (1000.0, "mbar", 14.503773773022, "psi"),
        (0.3048, "m/s", 1.0, "ft/s"),
        (0.3048, "m/s²", 1.0, "ft/s²"),
        (1.609344, "km/h", 1.0, "mph"),
        (100.0, "°C", 212.0, "°F"),
        (-40.0, "°C", -40.0, "°F"),
        (1.0, "kg/s", 7936.6414386555925, "lb/h"),  # 3600/0.45359237
        (1.0, "kg/kWh", 1.643986806, "lb/ihp·h"),  # 0.7456998716/0.45359237
    ],
)
def test_a_number_is_the_same_in_both_systems(number: float, unit: str, other: float, name: str) -> None:
    with drawn_in("imperial"):
        assert drawn(unit) == name
        assert drawn_number(number, unit) == pytest.approx(other, rel=1e-12)
        assert metric_number(other, unit) == pytest.approx(number, rel=1e-12)


def test_the_units_are_those_of_the_sheets_but_for_the_small_and_the_fast() -> None:
    """Sheets print in, psi and ft/s alone; a drawing of a fit has thou, that of a speed of the engine mph."""
    si = {"mm": "m", "mm²": "m²", "cm²": "m²", "N": "N", "kN": "N", "N/mm": "N/m", "kN·m": "N·m", "MPa": "Pa"}
    si |= {"bar": "Pa", "mbar": "Pa", "m/s": "m/s", "m/s²": "m/s²", "°C": "K", "kg/s": "kg/s"}
    assert {unit: unit_in("imperial", one) for unit, one in si.items()} == {
        unit: name for unit, name in IMPERIAL.items() if unit in si
    }
    assert set(IMPERIAL) - set(si) == {"µm", "km/h", "kg/kWh"}


@pytest.mark.parametrize("system", ["as written", "metric"])
def test_otherwise_numbers_are_metric(system: System) -> None:
    with drawn_in(system):
        for unit in (*IMPERIAL, "°", "%", ""):
            assert drawn(unit) == unit
            assert drawn_number(7.0, unit) == metric_number(7.0, unit) == 7.0
            assert drawn_places(unit, 2) == 2


def test_angles_and_shares_are_the_same_in_inch_pound_units() -> None:
    with drawn_in("imperial"):
        for unit in ("°", "%", ""):
            assert drawn(unit) == unit
            assert drawn_number(7.0, unit) == metric_number(7.0, unit) == 7.0


@pytest.mark.parametrize("places", range(5))
@pytest.mark.parametrize("unit", IMPERIAL)
def test_a_number_is_as_fine_in_either_system(unit: str, places: int) -> None:
    """Its last decimal is worth at most twice that of the metric number, and not so little that one could be left out.

    It never is rounded to tens.
    """
    with drawn_in("imperial"):
        own = drawn_places(unit, places)
        step = metric_number(10.0**-own, unit) - metric_number(0.0, unit)
    if own:
        assert 0.2 < step / 10.0**-places <= 2.0
    else:
        assert step / 10.0**-places <= 2.0


def test_what_was_set_ends_with_the_drawings() -> None:
    def made() -> None:
        with drawn_in("imperial"):
            with drawn_in("metric"):
                assert drawn("mm") == "mm"
            assert drawn("mm") == "in"
            raise ArithmeticError

    with pytest.raises(ArithmeticError):
        made()
    assert drawn_system() == "as written"
    assert drawn("mm") == "mm"


# Words


@pytest.mark.parametrize(
    ("value", "unit", "places", "text"),
    [
        (0.578, "mm", None, "22.7559"),  # 578/25.4 = 22.75591
        (0.0005, "mm", 3, "0.01969"),  # 0.5/25.4 = 0.019685
        (-0.00022, "µm", 0, "−8.66"),  # 220/25.4 = 8.6614
        (0.0, "µm", 0, "0.00"),
        (1.25e8, "MPa", 1, "18130"),  # 125 · 145.0377 = 18129.7
        (1.25e8, "MPa", None, "18130"),
        (1520.0, "N", 0, "341.7"),  # 1520/4.4482216 = 341.710
        (40.0, "m/s", None, "131.2"),  # 40/0.3048 = 131.234
        (433.15, "°C", 0, "320"),  # 160 · 1.8 + 32
        (0.5, "%", 1, "50.0"),
        (3.141592653589793, "°", 1, "180.0"),
    ],
)
def test_a_number_is_written_in_inch_pound_units(
    value: float, unit: str, places: int | None, text: str
) -> None:
    with drawn_in("imperial"):
        found = shown(of(value), unit, places)
        assert (found.text, found.unit) == (text, drawn(unit))


def test_a_sign_is_kept_and_a_zero_has_none() -> None:
    with drawn_in("imperial"):
        assert shown(of(0.0000254), "µm", 0, signed=True).text == "+1.00"
        assert shown(of(0.0000254), "µm", 0, sign=-1).text == "−1.00"
        assert shown(of(-1e-9), "µm", 0, signed=True).text == "0.00"


def test_a_number_of_a_sheet_is_rounded_as_there() -> None:
    """By hand: 12.192 m/s is 40 ft/s; 0.33 m/s is 1.08268 ft/s."""
    with drawn_in("imperial"):
        assert [as_on_sheet(of(one), "m/s").text for one in (12.192, 0.33)] == ["40", "1.083"]
    assert [as_on_sheet(of(one), "m/s").text for one in (12.192, 0.33)] == ["12.19", "0.33"]


def test_a_unit_in_braces_is_that_of_the_numbers() -> None:
    template = "{} {mm} of {mm²}, {}°"
    assert words(template, shown(of(0.0508), "mm"), "7") == "50.8 mm of mm², 7°"
    with drawn_in("imperial"):
        assert words(template, shown(of(0.0508), "mm"), "7") == "2 in of in², 7°"


def test_a_unit_that_drawings_do_not_have_is_an_error() -> None:
    with pytest.raises(KeyError, match="furlong"):
        words("{} {furlong}", "3")


@pytest.mark.parametrize(
    ("text", "dimension", "system", "says"),
    [
        ("578 mm H7", "length", "as written", "578 mm H7"),
        ("578 mm H7", "length", "metric", "578 mm H7"),
        ("578 mm H7", "length", "imperial", "578 mm H7 (22.7559 in)"),
        ("22.75 in ±0.01", "length", "imperial", "22.75 in ±0.01"),
        ("22.75 in ±0.01", "length", "as written", "22.75 in ±0.01"),
        ("22.75 in ±0.01", "length", "metric", "22.75 in ±0.01 (577.85 mm)"),
        ("17 bar gauge", "fluid pressure", "imperial", "17 bar gauge (246.6 psi)"),  # 17 · 14.50377
        ("160 °C", "temperature", "imperial", "160 °C (320 °F)"),
        ("45 °", "angle", "imperial", "45 °"),
        ("12 N/mm", "stiffness", "imperial", "12 N/mm (68.52 lbf/in)"),  # 12 · 5.710147
    ],
)
def test_what_a_spec_states_is_quoted_with_the_units_beside_it(
    text: str, dimension: str, system: System, says: str
) -> None:
    with drawn_in(system):
        found = quoted(read(text, dimension))
    assert found == said(read(text, dimension)) + says.removeprefix(text)
    assert found == says
    assert [one.text for one in found.numbers if one.as_stated] == [text]
    for one in found.numbers:
        assert one.as_stated or one.quantity.in_unit(one.unit) == pytest.approx(float(one.text), rel=5e-4)


def test_a_quantity_that_no_spec_wrote_has_its_own_unit() -> None:
    measure = Measure(273.15 + 160, 273.15 + 160, 273.15 + 160, "temperature")
    assert quoted(measure) == "160 °C"
    with drawn_in("imperial"):
        assert quoted(measure) == "160 °C (320 °F)"


# Axes and scale bars


def test_marks_of_an_axis_are_round_in_the_unit_that_is_drawn() -> None:
    """0 to 60 mm is 0 to 2.36 in: five steps of 0.47 in at most, so 0.2 in; 20 to 160 °C is 68 to 320 °F."""
    with drawn_in("imperial"):
        lengths, heat = axis_marks(0.0, 60.0, "mm"), axis_marks(20.0, 160.0, "°C")
    assert [round(number, 9) for number, _ in lengths] == [round(0.2 * n, 9) for n in range(12)]
    assert [place for _, place in lengths] == pytest.approx([5.08 * n for n in range(12)])
    assert [number for number, _ in heat] == [100.0, 150.0, 200.0, 250.0, 300.0]
    assert [place for _, place in heat] == pytest.approx([(one - 32) / 1.8 for one in range(100, 301, 50)])
    assert axis_marks(0.0, 60.0, "mm") == [(10.0 * n, 10.0 * n) for n in range(7)]


def of_paper(paper: Paper) -> Figure:
    return Figure.of(paper, "", "h", "s")


@pytest.mark.parametrize(
    ("system", "says", "long"), [("as written", "100 mm", 100.0), ("imperial", "2 in", 50.8)]
)
def test_a_scale_bar_has_a_round_length_of_the_unit_that_is_drawn(
    system: System, says: str, long: float
) -> None:
    """130 mm is 5.12 in, 100 mm 3.94 in; the round length of either below."""
    with drawn_in(system):
        paper = Paper("p", "t", "a", 400.0, 100.0)
        paper.scale_bar((10.0, 50.0), 0.5, 100.0)
        figure = of_paper(paper)
    assert texts_of(figure) == [says]
    boxes = [one for one in ElementTree.fromstring(figure.drawing).iter() if one.tag.endswith("}rect")]
    assert sum(float(one.get("width", "0")) for one in boxes) == pytest.approx(long * 0.5, abs=0.05)


def test_a_bar_keeps_its_place_and_its_axis_changes() -> None:
    """A bar of 50.8 mm: its end stands where 2 in stands, and where 50.8 mm stands."""

    def made() -> Figure:
        size = of(0.0508)
        rows = [Bar("one", 0.0, 50.8, words("{} {mm}", shown(size, "mm")), of=((size, "mm", 1),))]
        return of_paper(chart("c", "t", "a", rows, "{mm} of wall"))

    metric = made()
    with drawn_in("imperial"):
        imperial = made()
    (one,), (two,) = metric.held.placed, imperial.held.placed
    assert (one.unit, two.unit) == ("mm", "in")
    assert {"50.8 mm", "mm of wall", "50"} <= set(texts_of(metric))
    assert {"2 in", "in of wall", "2"} <= set(texts_of(imperial))
    marks = {mark.value: mark.at for mark in imperial.held.marks}
    assert two.at == pytest.approx(marks[2.0])


def test_both_axes_of_a_plot_are_in_the_units_of_their_titles() -> None:
    """From 0 to 100 °C and 0 to 1000 N: 50 °F stands at 10 °C, 100 lbf at 444.8 N; shares stay as they are."""
    with drawn_in("imperial"):
        plot = Plot("p", "t", "a", (0.0, 100.0), (0.0, 1000.0), ("heat, {°C}", "load, {N}"))
        share = Plot("s", "t", "a", (0.0, 1.0), (0.0, 1.0), ("share", "share"))
        figure = of_paper(plot.paper)
    marks = {(one.axis, one.value): one.at for one in figure.held.marks}
    assert marks["x", 100.0] == pytest.approx(plot.place((100 - 32) / 1.8, 0.0)[0])
    assert marks["y", 100.0] == pytest.approx(plot.place(0.0, 444.82216)[1])
    assert {"heat, °F", "load, lbf"} <= set(texts_of(figure))
    assert [one.value for one in share.paper.held().marks if one.axis == "x"] == pytest.approx(
        [0, 0.2, 0.4, 0.6, 0.8, 1.0]
    )


# The pack of a works


def followed(folder: Path, units: str) -> Assessment:
    """A valve on its cam, of works that chose units."""
    design = DesignFolder(folder).write(train_files())
    if units:
        design.replace("speclint.toml", "[works]", f'[works]\nunits = "{units}"')
    chosen = [one for one in design.loaded.rules if one.name == "valve.spring-follows-cam"]
    return assess([design.root], design.loaded, chosen)


@pytest.mark.parametrize(
    ("units", "asked", "axis"),
    [
        ("", "as written", "lift, mm"),
        ("metric", "as written", "lift, mm"),
        ("imperial", "as written", "lift, in"),
        ("imperial", "metric", "lift, mm"),
        ("metric", "imperial", "lift, in"),
        ("", "imperial", "lift, in"),
    ],
)
def test_figures_are_in_the_units_of_the_works_or_those_that_are_asked_for(
    tmp_path: Path, units: str, asked: System, axis: str
) -> None:
    made = document(followed(tmp_path, units), asked)
    found = [one.shown.figure for part in made.parts for one in part.figures]
    (own,) = (one for one in found if one.name == "following-valve")
    assert axis in texts_of(own)


def test_no_system_outlasts_the_figures_that_are_being_made(tmp_path: Path) -> None:
    made = figures(followed(tmp_path, ""), "imperial")
    next(made)
    assert drawn_system() == "as written"


@pytest.mark.parametrize(("in_chosen_units", "says"), [(True, "2 in"), (False, "50.8 mm")])
def test_a_maker_that_names_no_units_in_braces_draws_in_metric_ones(in_chosen_units: bool, says: str) -> None:
    """So that a number in inches never stands before a unit that its author wrote as mm."""

    def make(_: object) -> list[Figure]:
        return [Figure("one", "", words("{} {mm}", shown(of(0.0508), "mm")), "", "<svg/>")]

    maker = FigureMaker("mine", "", make, in_chosen_units=in_chosen_units)
    loaded = cast("Assessment", SimpleNamespace(loaded=SimpleNamespace(drawings=[("mine", maker)])))
    (figure,) = figures(loaded, "imperial")
    assert figure.heading == says


# Sources

_OWN = {"paper", "printed", "plot", "bars", "figures", "labels"}


def drawing_modules() -> list[Path]:
    """Every module that makes figures, or something that stands on them."""
    pack = [
        path
        for path in (ROOT / "speclint/reports/pack").glob("*.py")
        if re.search(rf"from speclint\.reports\.pack\.(?:{'|'.join(_OWN)}) import", path.read_text("utf-8"))
    ]
    return sorted(
        [*pack, *(ROOT / "plugins").glob("*/figures/*.py"), *(ROOT / "plugins").glob("*/figures.py")]
    )


def templates(source: str) -> Iterator[tuple[int, str]]:
    """Every text of a module but documentation, with a 0 for whatever is put into it."""
    tree = ast.parse(source)
    left_out = set()
    for node in ast.walk(tree):
        if isinstance(node, ast.Expr) and isinstance(node.value, ast.Constant):
            left_out.add(id(node.value))
        if isinstance(node, ast.JoinedStr):
            left_out |= {id(one) for one in node.values}
            parts = (str(one.value) if isinstance(one, ast.Constant) else "0" for one in node.values)
            yield node.lineno, re.sub(r"\{[^{}]*\}", "0", "".join(parts))
    for node in ast.walk(tree):
        if isinstance(node, ast.Constant) and isinstance(node.value, str) and id(node) not in left_out:
            yield node.lineno, re.sub(r"\{[^{}]*\}", "0", node.value)


def literal_units(source: str) -> list[str]:
    """Texts with a unit in them that no system changes; a text that is a unit names one to a function."""
    return [
        f"{line}: {text}"
        for line, text in templates(source)
        if (found := units_in(text) - {"in"}) and found != {text}
    ]


def test_no_drawing_has_a_unit_of_its_own() -> None:
    modules = drawing_modules()
    assert {"chain_charts.py", "path_drawing.py", "valve_chart.py", "fields.py"} <= {
        one.name for one in modules
    }
    assert len(modules) > 35
    found = {one.name: literal_units(one.read_text("utf-8")) for one in modules}
    assert {name: lines for name, lines in found.items() if lines} == {}


@pytest.mark.parametrize(
    ("source", "found"),
    [
        ('words("{} mm left", x)', 1),
        ('words(f"{name} {{}} µm", x)', 1),
        ('x = f"{stress:.1f} MPa"', 1),
        ('x = "lift of the valve, mm"', 1),
        ('x = "{} bar"', 1),
        ('x = "pressure, bar absolute"', 1),
        ('words("{} {mm} left", x)', 0),
        ('words(f"{name} {{}} {{µm}}", x)', 0),
        ('shown(x, "mm", 3)', 0),
        ('x = "there is no bar where none is given"', 0),
        ('"""A length in mm."""', 0),
    ],
)
def test_a_unit_in_a_template_is_found(source: str, found: int) -> None:
    assert len(literal_units(source)) == found


def test_units_of_both_systems_are_known_to_the_tests() -> None:
    assert set(IMPERIAL) <= METRIC
    for name in (*IMPERIAL, *IMPERIAL.values()):
        assert units_in(f"about 3 {name}, at most") == {name}
