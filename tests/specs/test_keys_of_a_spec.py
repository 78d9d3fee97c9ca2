"""What stands under a key of a spec, what is put there instead, and what a word must not be."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint.quantities import Measure, read
from speclint.specs import NOT_STATED, Estimate, Link, NotStated, Stated, axis_in_words, could_state, restated
from speclint.specs.listed_in import ListedIn
from speclint.specs.named_in import NamedIn
from speclint.specs.stated_values import as_written, stated_values
from tests.facts.bench import bench

BLOCK = '[bores.main]\ndiameter = "500 mm"\n'
LINER = 'bore = "500 mm"\npistons_for = ["500 mm", "503 mm"]\n[ports.a]\nheight = "40 mm"\n'


@pytest.mark.parametrize(
    ("key", "text"),
    [
        ("bore", "500 mm"),
        ("pistons_for.0", "500 mm"),
        ("pistons_for.1", "503 mm"),
        ("ports.a.height", "40 mm"),
        ("length", ""),
    ],
)
def test_a_key_leads_to_a_quantity(tmp_path: Path, key: str, text: str) -> None:
    liner = bench(tmp_path, {"cylinder-liner liner": LINER}, "liner")["liner"]
    found = liner.under(key)
    assert (found.text if isinstance(found, Measure) else "") == text
    other = read("41 mm", "length")
    assert restated(liner, {key: other}).under(key) is other
    assert isinstance(restated(liner, {key: NOT_STATED}).under(key), NotStated)
    assert liner.under(key) is found


@pytest.mark.parametrize(
    "key",
    [
        "id",
        "ports",
        "ports.b.height",
        "ports.a",
        "pistons_for.2",
        "pistons_for.-1",
        "bore.width",
        "borre",
        "pistons_for.a",
    ],
)
def test_a_key_that_leads_to_none_is_told(tmp_path: Path, key: str) -> None:
    liner = bench(tmp_path, {"cylinder-liner liner": LINER}, "liner")["liner"]
    with pytest.raises(LookupError):
        liner.under(key)
    with pytest.raises(LookupError):
        restated(liner, {key: read("41 mm", "length")})
    with pytest.raises(LookupError):
        could_state(liner, key, read("41 mm", "length"))


@pytest.mark.parametrize(
    ("key", "text", "could"),
    [
        ("pistons_for.1", "510 mm", True),
        ("pistons_for.1", "50 mm", False),
        ("ports.a.height", "41 mm", True),
        ("ports.a.height", "500 mm", False),
        ("ports.a.height", "0 mm", False),
    ],
)
def test_what_a_list_or_a_named_table_could_state(tmp_path: Path, key: str, text: str, could: bool) -> None:
    liner = bench(tmp_path, {"cylinder-liner liner": LINER}, "liner")["liner"]
    assert could_state(liner, key, read(text, "length", "any")) is could


def test_an_allowance_may_be_nothing_and_a_position_below_it(tmp_path: Path) -> None:
    cam = bench(tmp_path, {"tappet tappet": 'seat_wear = "0.1 mm"\noffset = "1 mm"\n'}, "tappet")["tappet"]
    assert could_state(cam, "seat_wear", read("0 mm", "length", "any"))
    assert not could_state(cam, "seat_wear", read("-0.1 mm", "length", "any"))
    assert could_state(cam, "offset", read("-1 mm", "length", "any"))


DUTY = """[cases.running]
steam_flow = { from = "events" }
cylinder_pressure = "12 bar gauge"
[cases.running.temperatures]
cylinder-block = "200 °C"
piston = "estimate"
liner-left = "cylinder-block + 20..30 K"
"""


def test_values_are_written_as_they_stand(tmp_path: Path) -> None:
    on = bench(tmp_path, {"duty duty": DUTY, "piston piston": ""}, "piston")
    found = stated_values(on["duty"])
    assert found["cases.running.steam_flow"] == "from the valve events"
    assert found["cases.running.cylinder_pressure"] == "12 bar gauge"
    assert found["cases.running.temperatures.piston"] == "an estimate"
    assert found["cases.running.temperatures.cylinder-block"] == "200 °C"
    assert found["cases.running.temperatures.liner-left"] == "cylinder-block + 20..30 K"
    assert "cases.running.live_pressure" not in found
    case = on["duty"].cases["running"]
    asked = case.temperatures["piston"]
    assert isinstance(asked, Estimate)
    assert asked.name == "piston"
    assert as_written(Stated(True)) == "true"
    assert as_written(Stated(4)) == "4"
    assert as_written(Link("block", ("cylinder-block",))) == "block"
    assert as_written("plain") == "plain"


@pytest.mark.parametrize(
    ("words", "why"),
    [
        ({"called": "", "about": "things"}, "a list has a name"),
        ({"called": "things", "about": ""}, "a list has a name"),
        ({"called": "things", "about": "a", "table": "t.csv"}, "a table has a column of names"),
        ({"called": "things", "about": "a", "column": "c"}, "a table has a column of names"),
        ({"called": "things", "about": "a", "shows": (("d", "{}"),)}, "only a table shows more"),
    ],
)
def test_a_list_that_cannot_be_looked_up_is_refused(words: dict[str, str], why: str) -> None:
    with pytest.raises(ValueError, match=why):
        ListedIn(**words)  # type: ignore[arg-type]  # of which some are wrong on purpose
    assert ListedIn("things", "a", table="t.csv", column="c", shows=(("d", "{}"),)).called == "things"


@pytest.mark.parametrize(
    ("words", "why"),
    [
        ({}, "names stand in a table or are ids"),
        ({"table": "bores", "ids_of": ("piston",)}, "names stand in a table or are ids"),
        ({"table": "plates", "of": "weldment"}, "a table of specs that link here names their link"),
        ({"table": "plates", "by": "makes"}, "a table of specs that link here names their link"),
        ({"table": "plates", "through": "block"}, "links are gone through to a spec only where"),
    ],
)
def test_names_that_cannot_be_looked_up_are_refused(words: dict[str, str], why: str) -> None:
    with pytest.raises(ValueError, match=why):
        NamedIn(**words)  # type: ignore[arg-type]  # of which some are wrong on purpose
    assert NamedIn("plates", of="weldment", by="makes", through="block").table == "plates"
    assert NamedIn(ids_of=("piston",)).ids_of == ("piston",)


@pytest.mark.parametrize(
    ("said", "read_as"),
    [
        ("upwards", True),
        ("35 ° from upright, back", True),
        ("180 ° from upright, back", True),
        ("180.1 ° from upright, back", False),
        ("35 degrees outwards", False),
        ("aloft", False),
    ],
)
def test_how_an_axis_stands_is_read_or_refused(tmp_path: Path, said: str, read_as: bool) -> None:
    assert (axis_in_words(said) is not None) == read_as
    text = {"poppet-valve valve": f'opens = "{said}"\n', "piston piston": ""}
    if read_as:
        assert bench(tmp_path, text, "piston")["valve"].opens.value == said
        return
    with pytest.raises(AssertionError, match="this does not say how an axis stands"):
        bench(tmp_path, text, "piston")
