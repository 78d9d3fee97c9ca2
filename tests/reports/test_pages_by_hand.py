"""The pages of the reference for a small family: rules, formulae, words, names, materials, and what a family brings."""

from __future__ import annotations

from types import SimpleNamespace
from typing import Any

import pytest

from speclint.equations import COMMON_PRACTICE
from speclint.errors import replace
from speclint.families import Loaded, RuleExample
from speclint.handbook.materials import PROPERTIES, Table
from speclint.reports.reference import every_page, material_pages, name_pages, table_pages
from speclint.reports.reference.entries import Entry
from speclint.reports.reference.family_page import family_page
from speclint.reports.reference.formula_pages import (
    formula_pages,
    link_to,
    shown_formula,
    title_of,
    with_those_behind,
)
from speclint.reports.reference.reference_page import Link, ReferencePage
from speclint.reports.reference.rule_pages import link_to as rule_link, rule_pages
from speclint.reports.reference.word_pages import word_pages
from speclint.reports.reference.worked_formulae import FormulaSearch, name_of
from speclint.rules import Rule
from tests import tubes
from tests.reports import test_formula_text as formulae


def rules(*names: str) -> tuple[Rule, ...]:
    """The rules of the tubes, as those of a family."""
    found = tuple(replace(one, family="tubes") for one in tubes.RULES)
    return tuple(one for one in found if not names or one.name in names)


@pytest.fixture(scope="module")
def loaded() -> Loaded:
    return tubes.tubes()


def links(some: tuple[Rule, ...]) -> dict[str, Link]:
    return {one.name: Link(one.name, one.name) for one in some}


# Rules and formulae


def test_the_formulae_of_rules_with_those_behind_and_the_rules_that_use_each() -> None:
    some = rules()
    worked = every_page._worked(some, links(some))
    assert [one.name for one in worked.by_rule["tube.loose-hot"]] == ["gap", "hot_gap"]
    assert [one.name for one in worked.by_rule["tube.stress"]] == ["mean_hoop_stress"]
    assert worked.by_rule["tube.hoops"] == []
    stress = worked.every["tests.tubes.mean_hoop_stress"]
    assert [link.words for link in stress.used_by] == ["tube.stress", "tube.case-stress"]
    assert worked.by_sheet
    assert all(one in worked.every.values() for one in worked.by_sheet)
    assert list(worked.every) == sorted(worked.every)


def test_a_formula_in_short() -> None:
    found = shown_formula(formulae.quoted, FormulaSearch(), [Link("a rule", "place")])
    assert (found.name, found.link.words) == ("quoted", "quoted")
    assert found.link.place == "formulae/tests.html#test_formula_text.quoted"
    assert found.anchor == "test_formula_text.quoted"
    assert "<mfrac>" in found.equation
    assert [(unit, means) for _, unit, means in found.symbols] == [
        ("Pa", "pressure within"),
        ("m", "bore and outside"),
    ]
    assert found.symbols[1][0].count("<math") == 2
    assert (found.unit, found.result) == ("Pa", " the stress [Pa]")
    assert found.used_by == (Link("a rule", "place"),)
    assert found.of_family
    assert [one.words for one in shown_formula(formulae.calls_deep, FormulaSearch(), ()).behind] == ["deep"]
    ratio = shown_formula(formulae.listed, FormulaSearch(), ())
    assert [unit for _, unit, _ in ratio.symbols] == ["m", "1"]
    assert link_to(formulae.calls_deep).words == "calls deep"


def test_what_formulae_call_stands_with_them_once() -> None:
    search = FormulaSearch()
    start = {name_of(formulae.calls_deep): formulae.calls_deep}
    found = with_those_behind(start, search)
    assert list(found.values()) == [formulae.calls_deep, formulae.deep]
    assert list(start.values()) == [formulae.calls_deep]


def test_formulae_of_families_come_first_each_group_on_its_page() -> None:
    from speclint.facts.stages import bore_of_pipe, pressure_after
    from speclint.handbook.members import round_area

    search = FormulaSearch()
    some = (bore_of_pipe, formulae.deep, round_area, pressure_after, tubes.gap)
    shown = {name_of(one): shown_formula(one, search, ()) for one in some}
    index, *pages = formula_pages(shown)
    (listed,) = index.content["groups"]
    assert [(link.words, said) for link, said in listed[1]] == [
        ("Formulae: tests", "2 formulae"),
        ("Formulae: facts", "2 formulae"),
        ("Formulae: handbook, members", "1 formula"),
    ]
    assert [page.here for page in pages] == [
        ["deep", "gap"],
        ["bore of pipe", "pressure after"],
        ["round area"],
    ]
    assert pages[1].entries[0].place == "formulae/facts.html#stages.bore_of_pipe"
    assert title_of("handbook") == "Formulae: handbook"
    assert title_of("bolted-joints") == "Formulae: bolted joints"


def test_a_rule_on_the_page_of_its_family(loaded: Loaded) -> None:
    some = rules("tube.loose-hot", "tube.case-stress")
    search = FormulaSearch()
    own = shown_formula(tubes.gap, search, ())
    from speclint.facts.stages import bore_of_pipe

    other = shown_formula(bore_of_pipe, search, ())
    worked = {"tube.loose-hot": [own, other], "tube.case-stress": []}
    example: Any = RuleExample
    index, page = rule_pages(loaded, some, worked, [other], {"tube.loose-hot": example})
    assert index.content["groups"] == [("tubes", [(rule_link(one), one.title) for one in some])]
    assert page.file == "rules/tubes.html"
    assert page.here == ["tube.case-stress", "tube.loose-hot"]
    case, loose = page.content["rules"]
    assert (loose.own_formulae, loose.other_formulae) == ((own,), (other,))
    assert (loose.example, case.example) == (example, None)
    assert loose.on == (Link("tube", "kinds/tube.html"),)
    assert [link.words for link in case.cases] == ["starting", "running"]
    assert loose.worked == "A limit at zero, a link, and a table with a tolerance."
    assert page.content["by_sheet"] == [other]
    assert page.entries[0] == Entry(
        "tube.case-stress",
        "rule",
        "rules/tubes.html#tube.case-stress",
        "the tube carries the steam. for tests",
    )


# Words and families


def test_load_cases_grades_and_hazards_name_their_rules(loaded: Loaded) -> None:
    some = rules()
    cases, _, words = word_pages(loaded, some, links(some))
    rows = {case: [link.words for link in on] for case, _, on in cases.content["rows"]}
    assert rows["starting"] == rows["running"] == ["tube.case-stress"]
    assert rows["drifting"] == []
    grades = [(word, [link.words for link in on]) for word, on in words.content["grades"]]
    assert grades == [
        ("hold", ["tube.stress", "tube.loose-hot"]),
        ("nonconformity", ["tube.case-stress"]),
        ("query", ["tube.ends"]),
        ("observation", ["tube.hoops"]),
    ]
    assert not any(against for *_, against in words.content["hazards"])
    suffer = {hazard: [link.words for link in kinds] for _, hazard, _, kinds, _ in words.content["hazards"]}
    assert "cylinder-cover" in suffer["burst"]
    assert "tube" not in suffer["burst"], "a tube does not say what it can suffer"
    burst = replace(some[0], against=("burst",))
    *_, words = word_pages(loaded, (burst,), links((burst,)))
    against = {hazard: [link.words for link in on] for _, hazard, _, _, on in words.content["hazards"]}
    assert against["burst"] == ["tube.stress"]
    assert against["leak"] == []


def test_a_family_is_told_with_what_it_brings(loaded: Loaded) -> None:
    page = family_page(loaded, rules("tube.stress", "tube.ends"))
    (family,) = page.content["families"]
    assert [(heading, [link.words for link in some]) for heading, some in family.brings] == [
        ("rules", ["2 rules"]),
        ("kinds", ["tube", "rack"]),
    ]
    (bare,) = family_page(loaded, ()).content["families"]
    assert [heading for heading, _ in bare.brings] == ["kinds"]


def test_words_that_keys_fix_stand_with_the_keys(loaded: Loaded) -> None:
    page = name_pages._words_of_keys(loaded)
    rows = {words: [link.words for link in keys] for _, words, keys in page.content["rows"]}
    assert rows["open", "closed"] == ["tube.ends"]
    places = {one.place: one.says for one in page.entries if one.name == "closed"}
    assert places["names/words-of-keys.html#open-closed"] == "of tube.ends"
    keys = [link.words for _, _, taken_by in page.content["rows"] for link in taken_by]
    assert "every component.drawing_file" not in keys, "any word may stand there"
    assert any(one.startswith("every component.") for one in keys)
    assert not any(one.startswith("tube.inspection") for one in keys), "of every component it stands once"


def test_the_front_page_counts_what_each_section_has() -> None:
    some = [
        ReferencePage("a", "a", "Rules", "x", entries=[Entry("1", "", ""), Entry("2", "", "")]),
        ReferencePage("b", "b", "Kinds", "x", entries=[Entry("3", "", "")]),
        ReferencePage("c", "c", "Rules", "x", entries=[Entry("4", "", "")]),
    ]
    assert [(section, number) for section, _, number in every_page._counts(some)] == [
        ("Rules", 3),
        ("Kinds", 1),
    ]


# Materials


def table(*rows: tuple[Any, ...], at: tuple[float, ...] = (), edges: tuple[float, ...] = ()) -> Table:
    return Table("MPa", COMMON_PRACTICE, rows, at, edges)


@pytest.mark.parametrize(
    ("figure", "said"),
    [
        ((200e6, 200e6, 200e6), "200 MPa"),
        ((200e6, 200e6, 250e6), "200 MPa to 250 MPa"),
        ((180e6, 200e6, 250e6), "200 MPa (180 MPa to 250 MPa)"),
        ((180e6, 200e6, 200e6), "200 MPa (180 MPa to 200 MPa)"),
    ],
)
def test_a_figure_stands_with_the_least_and_the_most_where_they_are_others(
    figure: tuple[float, float, float], said: str
) -> None:
    one = replace(table((figure,)), unit="Pa")
    assert material_pages._figure(one, 0, 0) == said


def test_a_table_has_a_column_for_each_temperature_and_a_row_for_each_band() -> None:
    """One figure for all temperatures stands between the first and the last."""
    one, two = (1.0, 1.0, 1.0), (2.0, 2.0, 2.0)
    by_heat = material_pages._table("modulus", table((one, two), at=(293.15, 393.15)))
    assert by_heat.columns == ("20 °C", "120 °C")
    assert by_heat.rows == (("", ("1 MPa", "2 MPa")),)
    assert by_heat.size == ""
    over = material_pages._table("modulus", table((one,), at=(293.15, 343.15, 393.15)))
    assert over.columns == ("20 °C to 120 °C",)
    assert material_pages._table("modulus", table((one,), at=(293.15,))).columns == ("20 °C",)
    assert material_pages._table("modulus", table((one,))).columns == ("value",)
    banded = material_pages._table("carbon-equivalent", table((one,), (two,), edges=(0.0, 0.016, 0.040)))
    assert banded.rows == (("to 16 mm", ("1 MPa",)), ("over 16 mm to 40 mm", ("2 MPa",)))
    assert banded.size == "thickness"
    assert banded.source == str(COMMON_PRACTICE)


def test_bands_of_size_in_words() -> None:
    """The first holds its lower edge, so that from nothing it is only to its upper."""
    assert material_pages._bands((0.0, 0.016, 0.040)) == ["to 16 mm", "over 16 mm to 40 mm"]
    assert material_pages._bands((0.010, 0.016)) == ["over 10 mm to 16 mm"]
    assert material_pages._bands(()) == []


def test_a_metal_has_its_properties_and_its_contents_apart() -> None:
    tables = {
        "modulus": (table(((1.0, 1.0, 1.0),)),),
        "composition carbon": (replace(table(((0.1, 0.1, 0.2),)), unit=""),),
    }
    metal: Any = SimpleNamespace(name="a metal", tables=tables)
    found = material_pages._shown(metal)
    assert found.anchor == "a-metal"
    assert [one.name for one in found.properties] == [PROPERTIES["modulus"].words]
    assert found.contents == (("carbon", "0.1 to 0.2", str(COMMON_PRACTICE)),)
    head = next(iter(PROPERTIES))
    assert material_pages._words(f"{head} of spring") == f"{PROPERTIES[head].words} (of spring)"


def test_a_package_without_tables_is_not_in_their_list(monkeypatch: pytest.MonkeyPatch) -> None:
    of_package = {"one": ("a.csv", "b.csv"), "other": ()}
    monkeypatch.setattr(table_pages, "packages", lambda _: [*of_package])
    monkeypatch.setattr(table_pages, "tables_in", of_package.__getitem__)
    monkeypatch.setattr(table_pages, "said_of_table", lambda file, package: (f"{file} of {package}", ()))
    monkeypatch.setattr(table_pages, "_taken_by", lambda _: {("one", "b.csv"): ("a rule",)})
    monkeypatch.setattr(table_pages, "_page", lambda *given: given)
    nothing: Any = None
    found: list[Any] = list(table_pages.table_pages(nothing))
    [(package, links)] = found[0].content["groups"]
    assert (package, [said for _, said in links]) == ("one", ["a.csv of one", "b.csv of one"])
    assert found[1:] == [("one", "a.csv", ()), ("one", "b.csv", ("a rule",))]
