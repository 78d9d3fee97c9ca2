"""Numbers of drawings with where they come from, each by hand, and the loads on a valve as bars."""

from __future__ import annotations

from types import SimpleNamespace
from typing import Any
from xml.etree import ElementTree

import pytest

from speclint.checking import Check, Processes, assess
from speclint.errors import NOWHERE, Location, replace
from speclint.quantities import Measure
from speclint.reports.pack.drawn_units import drawn_in, drawn_number, drawn_places, from_si, metric_number
from speclint.reports.pack.figures import (
    Figure,
    dimension_of,
    followed,
    millimetres,
    said,
    specs_of,
    taken_again,
    word,
)
from speclint.reports.pack.printed import (
    InSpec,
    OnSheet,
    Printed,
    Quantity,
    along,
    argument,
    as_on_sheet,
    counted,
    joined,
    judged,
    of_step,
    on_sheet,
    quoted,
    shown,
    stated,
    words,
    worked,
)
from speclint.reports.pack.valve_loads import valve_load_figures
from speclint.rules import Amount, Judgement, Series, Step
from speclint.specs import NOT_STATED, PoppetValve, Stated
from speclint.testing import DesignFolder
from tests import tubes
from tests.reports.placed_marks import numbers

HERE = Location("tube.toml", 4, "bore")


def of(value: float) -> Quantity:
    return Quantity(value, InSpec(NOWHERE, "nominal"))


def step(symbol: str, value: Any, **more: Any) -> Step:
    return Step("worked", symbol, symbol, value, "N", **more)


STEPS = (
    step("F", 1.0, filled=(("d", 5.0, "m"),), series=(Series("s", "s", "m", (0.1, None)),)),
    step(
        "F",
        2.0,
        filled=(("d", 6.0, "m"), ("k", 7.0, "N/m")),
        series=(Series("s", "s", "m", (0.3, None)), Series("t", "t", "s", (1.0,))),
    ),
    step("F", "open"),
    step("F", 3.0),
    step("G", True),
)


def check(**other: Any) -> Check:
    return replace(Check("tube", "tube", tubes.stress, "conforms", "", HERE, "", steps=STEPS), **other)


def on(symbol: str, **more: Any) -> OnSheet:
    return OnSheet("tube", "tube.stress", symbol, **more)


def test_the_last_number_under_a_symbol_is_that_of_the_sheet() -> None:
    """What is a word or a count of yes is no number."""
    assert on_sheet(check(), "F") == Quantity(3.0, on("F"))
    assert on_sheet(check(), "G") is None
    assert on_sheet(check(), "H") is None
    assert on_sheet(check(steps=STEPS[:3]), "F") == Quantity(2.0, on("F"))


def test_an_argument_is_that_of_the_last_step_that_has_any() -> None:
    assert argument(check(), "F", "d") == Quantity(6.0, on("F", argument="d"))
    assert argument(check(), "F", "x") is None
    assert argument(check(), "G", "d") is None


def test_a_step_is_told_by_its_place() -> None:
    assert of_step(check(), 0) == Quantity(1.0, on("F", at=0))
    assert of_step(check(), 1, "k") == Quantity(7.0, on("F", argument="k", at=1))


def test_a_series_is_the_last_that_was_recorded() -> None:
    assert along(check(), "s", 0) == Quantity(0.3, on("s", place=0))
    assert along(check(), "s", 1) is None
    assert along(check(), "t", 0) == Quantity(1.0, on("t", place=0))
    assert along(check(), "u", 0) is None


def test_what_is_judged_and_its_limit() -> None:
    judgement = Judgement(holds=True, says="", found=Amount(1.0, "N"), limit=Amount(2.0, "N"))
    assert judged(check(judgement=judgement)) == (Quantity(1.0, on("found")), Quantity(2.0, on("limit")))
    for other in (None, replace(judgement, found=None), replace(judgement, limit=None)):
        assert judged(check(judgement=other)) is None


def measure(text: str = "20 mm ±0.5", nominal: float = 0.02, unit: str = "mm") -> Measure:
    return Measure(nominal, nominal - 5e-4, nominal + 5e-4, "length", text, unit, where=HERE)


def test_a_stated_size_is_quoted_as_its_drawing_has_it() -> None:
    """And beside it in the units that are drawn, where it has others; without a text by its number."""
    assert stated(measure()) == Quantity(0.02, InSpec(HERE, "nominal"))
    assert stated(measure(), "low") == Quantity(0.02 - 5e-4, InSpec(HERE, "low"))
    line = quoted(measure())
    assert line == "20 mm ±0.5"
    assert [(one.text, one.as_stated) for one in line.numbers] == [("20 mm ±0.5", True)]
    assert quoted(measure(text="")) == "20 mm"
    with drawn_in("imperial"):
        both = quoted(measure())
    assert both == "20 mm ±0.5 (0.7874 in)"
    assert [(one.text, one.unit, one.as_stated) for one in both.numbers] == [
        ("20 mm ±0.5", "", True),
        ("0.7874", "in", False),
    ]
    assert counted(Stated(4, HERE)) == Quantity(4.0, InSpec(HERE, "nominal"))


def test_words_know_their_numbers() -> None:
    one, two = Printed("1", of(1.0)), Printed("2", of(2.0))
    inner = words("{} and {}", one, two)
    line = words("{}, {}: {} {mm}", inner, "plain", one)
    assert line == "1 and 2, plain: 1 mm"
    assert line.numbers == (one, two, one)
    both = joined("; ", (inner, "so"))
    assert (both, both.numbers) == ("1 and 2; so", (one, two))


@pytest.mark.parametrize(
    ("value", "more", "text"),
    [
        (0.0123456, {}, "12.35"),
        (0.0123456, {"places": 1}, "12.3"),
        (0.0123456, {"places": 1, "signed": True}, "+12.3"),
        (-0.0123456, {"places": 1, "signed": True}, "−12.3"),
        (-0.0123456, {"places": 1, "sign": -1}, "12.3"),
        (-0.00001, {"places": 1}, "0.0"),
        (0.00001, {"places": 1, "signed": True}, "0.0"),
        (123.456789, {}, "1.235e+05"),
    ],
)
def test_a_number_is_shown_in_four_figures_or_so_many_decimals(
    value: float, more: dict[str, Any], text: str
) -> None:
    found = shown(of(value), "mm", **more)
    assert (found.text, found.unit, found.sign) == (text, "mm", more.get("sign", 1))


def test_in_inches_a_number_is_as_fine() -> None:
    """0.01 mm is 0.0004 in: four decimals for two; without a number of them as on a sheet."""
    with drawn_in("imperial"):
        assert shown(of(0.0254), "mm", 2).text == "1.0000"
        assert shown(of(0.0254), "mm").text == "1"
        assert as_on_sheet(of(0.0254), "mm") == Printed("1", of(0.0254), "in")
        assert (drawn_places("mm", 0), drawn_places("MPa", 2), drawn_places("°", 1)) == (2, 0, 1)
        assert drawn_number(25.4, "mm") == pytest.approx(1.0)
        assert metric_number(1.0, "mm") == pytest.approx(25.4)
        assert metric_number(212.0, "°C") == pytest.approx(100.0)
        assert drawn_number(3.0, "°") == metric_number(3.0, "°") == 3.0
    assert as_on_sheet(of(0.0254), "mm") == Printed("25.4", of(0.0254), "mm")
    assert (drawn_number(3.0, "mm"), metric_number(3.0, "mm")) == (3.0, 3.0)
    assert from_si(300.0, "K") == 300.0
    assert of(373.15).in_unit("°C") == pytest.approx(100.0)


def test_units_of_steam_for_work() -> None:
    """1 kg/kWh is 2.20462 lb for 1.34102 hp·h: 1.6440 lb/ihp·h; 1 kg/s is 7936.64 lb/h."""
    assert from_si(1.0, "lb/ihp·h") == pytest.approx(1.6440, abs=1e-4)
    assert from_si(1.0, "kg/kWh") == 1.0
    assert from_si(1.0, "lb/h") == pytest.approx(7936.64, abs=0.01)
    assert from_si(50.0, "°F difference") == pytest.approx(90.0)


def test_a_quantity_that_is_worked_knows_from_what() -> None:
    found = worked(lambda a, b: a - b, a=of(3.0), b=of(1.0))
    assert found.value == 2.0
    assert found.origin.of == {"a": of(3.0), "b": of(1.0)}  # type: ignore[union-attr]


# What figures take of specs


def test_stated_values_in_words() -> None:
    assert millimetres(measure()) == pytest.approx(20.0)
    assert millimetres(NOT_STATED) is None
    assert (said(measure()), said(NOT_STATED), said(4)) == ("20 mm ±0.5", "not stated", "4")
    assert (word(Stated("open", HERE)), word(NOT_STATED)) == ("open", "")


def test_without_a_design_nothing_is_found() -> None:
    empty: Any = SimpleNamespace(design=None, context=None)
    assert followed(empty, object()) is None
    assert list(specs_of(empty, PoppetValve)) == []
    assert taken_again(empty, check(), lambda *_: 1) is None
    some: Any = SimpleNamespace(design=SimpleNamespace(follow=lambda _: "spec"))
    assert followed(some, "no link") is None


def test_a_dimension_is_its_own_or_that_of_the_spec_it_points_at(monkeypatch: pytest.MonkeyPatch) -> None:
    own: Any = SimpleNamespace(size=measure())
    empty: Any = SimpleNamespace(design=None)
    assert dimension_of(empty, own) == measure()
    from speclint.reports.pack import figures

    def under(key: str) -> object:
        return {"bore": measure(), "ends": "open"}[key]

    def found(spec: object, key: str) -> Measure | None:
        monkeypatch.setattr(figures, "followed", lambda *_: spec)
        table: Any = SimpleNamespace(size=NOT_STATED, of="link", dimension=Stated(key, HERE))
        return dimension_of(empty, table)

    spec = SimpleNamespace(under=under)
    assert found(spec, "bore") == measure()
    assert found(spec, "ends") is None
    assert found(spec, "absent") is None
    assert found(None, "bore") is None


# The loads on a valve


def test_each_load_that_a_valve_asks_for_is_a_bar_with_what_is_needed(workshop: DesignFolder) -> None:
    """Only what is held against a least load in newtons, of the valve itself."""
    workshop.write({"valve.toml": 'kind = "poppet-valve"\n', "other.toml": 'kind = "poppet-valve"\n'})
    read = assess([workshop.root], workshop.loaded, [], processes=Processes(0))
    judgement = Judgement(
        holds=True, says="", found=Amount(800.0, "N"), limit=Amount(600.0, "N"), compared="≥"
    )
    some = [
        check(component="valve", judgement=judgement),
        check(
            component="valve",
            judgement=replace(judgement, found=Amount(500.0, "N")),
            outcome="finding",
            case="drifting",
        ),
        check(component="valve", judgement=replace(judgement, compared="≤")),
        check(component="elsewhere", judgement=judgement),
        check(component="valve", judgement=None),
    ]
    (figure,) = valve_load_figures(replace(read, checks=tuple(some)))
    assert isinstance(figure, Figure)
    assert figure.component == "valve"
    assert figure.rows == (
        (tubes.stress.title, "800 N, needs 600 N"),
        (tubes.stress.title, "500 N, needs 600 N"),
    )
    root = ElementTree.fromstring(figure.drawing)
    found = {one.get("class"): numbers(one, "x", "width") for one in root.iter() if one.tag.endswith("}rect")}
    (zero, long), (_, short) = found["bar"], found["bad"]
    assert short / long == pytest.approx(500 / 800, abs=1e-3)
    limits = [numbers(one, "x1")[0] for one in root.iter() if one.get("class") == "limit"]
    assert limits == [pytest.approx(zero + long * 0.75, abs=0.02)] * 2
    texts = {one.text for one in root.iter() if one.tag.endswith("}text")}
    assert {"tube.stress", "tube.stress, drifting"} <= texts
    assert 'href="#sheet.valve.tube.stress"' in figure.drawing
    assert [(one.unit, one.sign) for one in figure.held.placed] == [("N", 1)] * 4
