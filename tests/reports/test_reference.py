"""The reference: whatever is loaded has its place, every link leads somewhere, and the search finds it."""

from __future__ import annotations

import inspect
import json
import os
import re
import subprocess
import sys
from collections.abc import Iterator, Mapping
from functools import cache
from html import unescape
from html.parser import HTMLParser
from pathlib import Path

import pytest

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, formula, rule
from speclint.equations import Metres, described
from speclint.families import Loaded, NameLists, RuleExample, load_families
from speclint.handbook.materials import Material, material, names
from speclint.reports import hooks
from speclint.reports.listed_keys import listed_keys
from speclint.reports.reference import REFERENCE_FRONT, REFERENCE_MARK, reference_files
from speclint.reports.reference.formula_text import plain
from speclint.reports.reference.kind_pages import _in_words
from speclint.reports.reference.places import (
    CASES_FILE,
    EVERY_COMPONENT,
    FAMILIES_FILE,
    SETTINGS_FILE,
    WORDS_FILE,
    anchor,
    kind_place,
    list_place,
    material_place,
    rule_place,
    table_place,
)
from speclint.reports.reference.reference_page import INDEX_FILE
from speclint.reports.reference.worked_formulae import FormulaSearch
from speclint.repository import Change, Settings
from speclint.specs import CASE_NAMES, HAZARDS, NOT_STATED, Component, ExtraTable, Length, Piston, SpecTable
from speclint.testing import installed_families, made_family
from tests.each import each
from tests.example import assessed

ROOT = Path(__file__).parents[2]


class Read(HTMLParser):
    """What a page has: its anchors, its links, its text, and marks of elements that must not be there."""

    def __init__(self, page: str) -> None:
        super().__init__()
        self.anchors: list[str] = []
        self.links: list[str] = []
        self.own_styles_and_handlers: list[str] = []
        self._words: list[str] = []
        self._unread = 0
        self.feed(page)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        given = {name: value or "" for name, value in attrs}
        self._unread += tag in ("style", "script")
        if "id" in given:
            self.anchors.append(given["id"])
        if tag == "a":
            self.links.append(given["href"])
        self.own_styles_and_handlers += [name for name in given if name == "style" or name.startswith("on")]

    def handle_endtag(self, tag: str) -> None:
        self._unread -= tag in ("style", "script")

    def handle_data(self, data: str) -> None:
        if not self._unread:
            self._words.append(data)

    @property
    def text(self) -> str:
        """All words in one line."""
        return " ".join(" ".join(self._words).split())


@cache
def files() -> Mapping[str, str]:
    return reference_files(installed_families())


@cache
def read(file: str) -> Read:
    return Read(files()[file])


def has_place(place: str) -> bool:
    """Whether a place is there: its file, and its anchor where it names one."""
    file, _, mark = place.partition("#")
    return file in files() and (not mark or mark in read(file).anchors)


def pages() -> list[str]:
    return [file for file in files() if file.endswith(".html")]


def broken(found: Mapping[str, str]) -> Iterator[str]:
    """Links of pages that lead to no file or no anchor of theirs."""
    known = {file: Read(text) for file, text in found.items() if file.endswith(".html")}
    for file, page in known.items():
        for link in page.links:
            path, _, mark = unescape(link).partition("#")
            target = os.path.normpath(os.path.join(os.path.dirname(file), path)) if path else file
            target = target.replace(os.sep, "/")
            if target not in known or (mark and mark not in known[target].anchors):
                yield f"{file}: {link}"


def test_every_link_leads_to_a_place_that_is_there() -> None:
    assert sum(len(read(file).links) for file in pages()) > 10_000
    assert list(broken(files())) == []


def test_a_link_that_leads_nowhere_is_seen() -> None:
    """The look of the test above, at a wrong file and at a wrong anchor."""
    page = '<p id=here><a href="other.html">x</a><a href="#there">y</a><a href="#here">z</a>'
    assert list(broken({"a.html": page})) == ["a.html: other.html", "a.html: #there"]


def test_an_anchor_stands_once_on_its_page() -> None:
    for file in pages():
        marks = read(file).anchors
        assert len(marks) == len(set(marks)), (file, {one for one in marks if marks.count(one) > 1})


def test_every_rule_stands_in_full() -> None:
    """Statement, reason, what it leaves out, each limit with default and source, each source, grade and edition."""
    rules = installed_families().rules
    assert len(rules) > 500
    for one in rules:
        place = rule_place(one.family, one.name)
        assert has_place(place), one.name
        section = section_of(files()[place.partition("#")[0]], anchor(one.name))
        said = Read(section).text
        limits = [part for limit in one.limits for part in (limit.name, limit.default, str(limit.source))]
        wanted = [
            one.title,
            inspect.getdoc(one.function) or "",
            one.why,
            one.leaves_out,
            one.grade.word,
            f"edition {one.edition}",
            *one.cases,
        ]
        for part in (*wanted, *map(str, one.cites), *limits):
            assert plain(part) in said, (one.name, part)


def section_of(page: str, mark: str) -> str:
    """The section of a page whose heading has an anchor."""
    begun = page.index(f'aria-labelledby="{mark}"')
    return page[begun : page.index("</section>", begun)]


def test_every_kind_and_every_key_of_it_has_its_place() -> None:
    kinds = installed_families().kinds
    assert len(kinds) > 50
    keys = 0
    for kind in kinds.values():
        said = read(kind_place(kind.kind)).text
        for key in listed_keys(kind):
            keys += 1
            if key.field is None:
                assert key.takes in said, (kind.kind, key.takes)
                continue
            assert has_place(kind_place(kind.kind, key.written)), (kind.kind, key.written)
            assert key.means in said, (kind.kind, key.written)
            assert key.inner is not None or key.takes in said, (kind.kind, key.written)
    assert keys > 4000


def test_keys_of_every_component_and_settings_have_their_places() -> None:
    for key in listed_keys(Component):
        assert key.field is None or has_place(f"{EVERY_COMPONENT}#{anchor(key.written)}"), key.written
    for key in listed_keys(Settings):
        assert key.field is None or has_place(f"{SETTINGS_FILE}#{anchor(key.written)}"), key.written


def test_a_key_that_is_left_out_says_what_it_is_then() -> None:
    """The id is that of the file; a key whose default is a value has that."""
    assert "left out it is the name of the file without .toml" in read(EVERY_COMPONENT).text

    class Turned(SpecTable):
        """A table.

        Fields:
            times: how often
        """

        times: str = "twice"

    from speclint.reports.reference.kind_pages import key_groups

    (group,) = key_groups(Turned, frozenset(), "")
    assert [(one.key.name, one.means, one.unset) for one in group.keys] == [("times", "how often", "twice")]


@pytest.mark.parametrize(
    ("value", "said"),
    [
        (True, "true"),
        (False, "false"),
        (None, ""),
        ((), ""),
        ({}, ""),
        (NOT_STATED, ""),
        (4, "4"),
        ("x", "x"),
    ],
)
def test_what_a_key_is_when_it_is_left_out_is_written_as_a_spec_would(value: object, said: str) -> None:
    assert _in_words(value) == said


def test_every_material_has_its_place_with_each_property_and_source() -> None:
    assert len(names()) > 70
    for name in names():
        metal = material(name)
        place = material_place(metal.family, name)
        assert has_place(place), name
        said = Read(section_of(files()[place.partition("#")[0]], anchor(name))).text
        assert metal.title in said
        for tables in metal.tables.values():
            for table in tables:
                assert str(table.source) in said, (name, table.source)


def test_figures_of_a_material_stand_as_its_file_has_them() -> None:
    """The file has of plate-16Mo3 up to 16 mm 264 MPa at 100 °C, over 100 to 150 mm 140 MPa at 350 °C."""
    place = material_place("alloy-steel", "plate-16Mo3")
    page = section_of(files()[place.partition("#")[0]], "plate-16Mo3")
    table = page[page.index("yield or 0.2 % proof stress") :]
    table = table[: table.index("</table>")]
    heads = [one.strip() for one in re.findall(r"<th scope=col>([^<]+)", table)]
    assert heads[:5] == ["thickness", "−20 °C", "20 °C", "50 °C", "100 °C"]
    rows = [
        [cell.strip() for cell in re.findall(r"<t[hd][^>]*>([^<]+)", row)] for row in table.split("<tr>")[2:]
    ]
    by_band = {row[0]: dict(zip(heads[1:], row[1:], strict=True)) for row in rows}
    assert by_band["to 16 mm"]["100 °C"] == "264 MPa"
    assert by_band["over 100 mm to 150 mm"]["350 °C"] == "140 MPa"


def tables() -> list[tuple[str, Path]]:
    """Every table in a folder of data of the source tree, with the package whose it is."""
    found = [(f"speclint.{path.parents[1].name}", path) for path in (ROOT / "speclint").glob("*/data/*.csv")]
    return found + [(path.parents[1].name, path) for path in (ROOT / "plugins").glob("*/data/*.csv")]


@each(tables(), lambda one: one[1].name)
def test_every_table_has_its_place_with_every_row_and_its_source(one: tuple[str, Path]) -> None:
    package, path = one
    place = table_place(package, path.name)
    said = read(place).text
    lines = path.read_text(encoding="utf-8").splitlines()
    comments = [" ".join(line.lstrip("# ").split()) for line in lines if line.startswith("#")]
    assert comments
    assert all(comment in said for comment in comments)
    body = [line for line in lines if line.strip() and not line.startswith("#")][1:]
    assert files()[place].count("<tr>") == 1 + len(body)
    assert body[-1].split(",")[0].strip('"') in said


def test_there_are_tables_of_speclint_and_of_families() -> None:
    owners = {package for package, _ in tables()}
    assert {"speclint.handbook", "speclint.quantities", "speclint_fits"} <= owners
    assert len(tables()) > 50


def test_every_name_that_a_list_has_stands_on_its_page() -> None:
    loaded = installed_families()
    lists = NameLists(loaded.kinds, loaded.materials)
    assert len(lists.called()) > 10
    for called in lists.called():
        (found,) = lists.of(called)
        assert all(has_place(list_place(called, one.name)) for one in found.names), called


def test_load_cases_families_and_hazards_have_their_places() -> None:
    assert all(has_place(f"{CASES_FILE}#{case}") for case in CASE_NAMES)
    assert all(has_place(f"{FAMILIES_FILE}#{one.name}") for one in installed_families().families)
    assert all(has_place(f"{WORDS_FILE}#{anchor(one)}") for one in HAZARDS)
    assert all(has_place(f"{WORDS_FILE}#{one.word}") for one in Grade)


def test_the_search_finds_each_thing_at_a_place_that_is_there() -> None:
    script = files()[INDEX_FILE]
    assert script.startswith(f"/* {REFERENCE_MARK} */\nglobalThis.referenceIndex = ")
    index = json.loads(script[script.index("{") : script.rindex(";")])
    found: dict[str, set[str]] = {}
    for name, sort, file, mark, _ in index["entries"]:
        place = index["files"][file] + ("" if mark == 0 else f"#{mark or name}")
        assert has_place(place), (name, place)
        found.setdefault(index["sorts"][sort], set()).add(name)
    assert found["rule"] == {one.name for one in installed_families().rules}
    assert found["kind"] == set(installed_families().kinds)
    assert found["material"] == set(names())
    assert "cylinder-liner.last_bore" in found["key"]
    assert "every component.material" in found["key"]


def test_what_sheets_work_stands_among_the_formulae_of_their_rule() -> None:
    """Formulae are found by reading the code of a rule; here each line that a sheet of the example worked."""
    search = FormulaSearch()
    by_itself = {described(one).equation for one in search.of_sheet()}
    assert by_itself == {"T = T_b + ΔT"}
    worked = 0
    for check in assessed().checks:
        known = by_itself | {described(one).equation for one in search.of_rule(check.rule)}
        equations = {step.expression for step in check.steps if step.kind == "worked"}
        worked += len(equations)
        assert equations <= known, (check.rule.name, equations - known)
    assert worked > 10_000


def test_a_formula_says_what_its_symbols_mean_its_range_and_its_source() -> None:
    """Of Bourne's wall and of the spring index as their docstrings have them."""
    page = files()["formulae/handbook-springs.html"]
    said = Read(section_of(page, "helical.spring_index")).text
    assert "Spring index: mean coil diameter over wire." in said
    assert "mean coil diameter [m]" in said
    assert "There is no result unless D > d > 0: a coil narrower than its own wire cannot be wound." in said
    assert "6.0" in said


def test_no_page_has_a_style_or_a_handler_in_an_element_and_each_says_what_it_may_do() -> None:
    for file in pages():
        page = read(file)
        assert page.own_styles_and_handlers == [], file
        policy = re.search(r'http-equiv=Content-Security-Policy content="([^"]+)"', files()[file])
        assert policy is not None
        said = unescape(policy[1])
        assert said.startswith("default-src 'none'; style-src 'sha256-")
        assert re.search(r"script-src 'sha256-[^']+' 'strict-dynamic';", said)
        assert "unsafe" not in said
        assert REFERENCE_MARK in files()[file]


@pytest.mark.long
def test_the_same_families_give_the_same_bytes() -> None:
    """In another process, whose sets are in another order."""
    code = (
        "import hashlib, json\n"
        "from speclint.testing import load_family\n"
        "from speclint.reports.reference import reference_files\n"
        "found = reference_files(load_family('speclint_pairings'))\n"
        "print(hashlib.sha256(json.dumps(found, sort_keys=True).encode()).hexdigest())\n"
    )
    surroundings = {**os.environ, "PYTHONPATH": os.pathsep.join(map(str, (ROOT, ROOT / "plugins")))}
    said = [
        subprocess.run(
            [sys.executable, "-c", code],
            env={**surroundings, "PYTHONHASHSEED": seed},
            capture_output=True,
            text=True,
            check=True,
        ).stdout
        for seed in ("1", "2")
    ]
    assert len(said[0]) == 65
    assert said[0] == said[1]


# A stranger's family


@formula("g = 2 l", cites=[FIRST_PRINCIPLES])
def grip_of_lever(l: Metres) -> Metres:  # noqa: E741 - the symbol of the equation
    """Grip that a lever gives.

    ``l`` length of the lever [m]. Returns [m]. Raises OutOfRange unless l > 0.

    >>> grip_of_lever(l=0.5)
    1.0
    """
    return 2 * l


class Lever(Component):
    """A lever of a stranger.

    Fields:
        reach: from the pivot to the hand
    """

    kind = "stranger-lever"
    called = "lever"
    reach: Length = NOT_STATED


class Grip(SpecTable):
    """How a hand holds it.

    Fields:
        width: of the hand
    """

    width: Length = NOT_STATED


@rule(
    "lever.long-enough",
    title="The lever is long enough <for a hand>",
    on=Lever,
    grade=Grade.QUERY,
    cites=[COMMON_PRACTICE],
    why="A short lever hurts the hand.",
    leaves_out="gloves & mittens",
    limits=[Limit("least", "150 mm", "length", COMMON_PRACTICE, "least grip")],
)
def long_enough(lever: Lever, sheet: Sheet) -> Judgement:
    """The grip against the least."""
    grip = sheet.work("g", grip_of_lever, l=sheet.take("l", lever.reach))
    return sheet.at_least(grip, sheet.limit("least"))


EXAMPLE = RuleExample(
    rule="lever.long-enough",
    component="lever",
    holds='kind = "stranger-lever"\nreach = "80 mm" # <full>',
    result="160 mm, at least 150 mm",
    finding="140 mm is less than 150 mm",
    changes=(Change("lever", "reach", "70 mm"),),
)


def stranger() -> Loaded:
    return load_families(
        [
            made_family(
                "levers",
                kinds=(Lever,),
                rules=(long_enough,),
                speclint_tables=lambda: (ExtraTable(Piston, Grip),),
                speclint_materials=lambda: (Material("stranger-wood", "ash wood", "wood", "none"),),
            )
        ],
        built_in=hooks,
    )


def test_a_family_of_a_stranger_stands_beside_those_of_speclint() -> None:
    found = reference_files(stranger(), {EXAMPLE.rule: EXAMPLE})
    rules = Read(found["rules/levers.html"])
    for part in (
        "lever.long-enough",
        "is long enough <for a hand>",
        "gloves & mittens",
        "least grip",
        "against the least.",
    ):
        assert part in rules.text
    for part in (
        'reach = "80 mm"',
        "160 mm, at least 150 mm",
        'reach = "70 mm"',
        "140 mm is less than 150 mm",
    ):
        assert part in rules.text
    assert (
        "kind = &#34;stranger-lever&#34;\nreach = &#34;80 mm&#34; # &lt;full&gt;\n"
        in found["rules/levers.html"]
    )
    assert "grip of lever" in rules.text
    assert "<math" in found["rules/levers.html"]
    assert "reach" in Read(found["kinds/stranger-lever.html"]).anchors
    assert "levers.width" in Read(found["kinds/piston.html"]).anchors
    assert "stranger-wood" in Read(found["materials/wood.html"]).anchors
    assert "levers" in Read(found[FAMILIES_FILE]).anchors
    (formulae,) = [file for file in found if file.startswith("formulae/") and "grip_of_lever" in found[file]]
    assert "length of the lever [m]" in Read(found[formulae]).text
    assert "&gt;&gt;&gt; grip_of_lever(l=0.5)\n1.0\n" in found[formulae]
    assert list(broken(found)) == []
    assert "rules/liners.html" not in found, "nothing is listed that is not loaded"


def test_a_rule_without_an_example_says_so() -> None:
    assert "No example is given." in Read(reference_files(stranger())["rules/levers.html"]).text


def test_a_table_of_a_strangers_package_has_its_place(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    package = tmp_path / "stranger_with_table"
    (package / "data").mkdir(parents=True)
    (package / "__init__.py").write_text(
        '"""A family with a table."""\nspeclint_api = "1"\n', encoding="utf-8"
    )
    table = "# Rope, a made-up standard, 1900.\nrope,breaks_kN\nhemp,12\n"
    (package / "data" / "ropes-1900.csv").write_text(table, encoding="utf-8")
    monkeypatch.syspath_prepend(str(tmp_path))
    from importlib.metadata import EntryPoint

    found = reference_files(load_families([EntryPoint("ropes", "stranger_with_table", "speclint")]))
    page = Read(found[table_place("stranger_with_table", "ropes-1900.csv")])
    assert "Rope, a made-up standard, 1900." in page.text
    assert "hemp" in page.text
    assert "ropes-1900" in Read(found[FAMILIES_FILE]).text


def test_with_no_family_at_all_the_pages_are_there() -> None:
    found = reference_files(load_families([]))
    assert "No family is installed." in Read(found[FAMILIES_FILE]).text
    assert list(broken(found)) == []
    assert REFERENCE_FRONT in found
