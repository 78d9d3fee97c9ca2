"""What if a value were another: every margin that moves, by hand; the value that just holds; and no file is touched."""

from __future__ import annotations

import json
import sys
from pathlib import Path
from typing import Any

import jsonschema
import pytest

from speclint import checking
from speclint.checking import Solved, WhatIf, assess, question, solved, what_if
from speclint.commands import main
from speclint.errors import DesignError, SettingsError, replace
from speclint.families import loading
from speclint.reports import hooks
from speclint.testing import DesignFolder
from tests import tubes
from tests.reports.test_page import Terminal
from tests.repository.test_mirrored_block import DUTY, LEFT, turned, written
from tests.tubes import FILES


@pytest.fixture
def shop(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> DesignFolder:
    """A design of one tube, in the current folder, and the family of tubes alone."""
    monkeypatch.setattr(loading, "installed", lambda: [tubes.entry_point("tubes")])
    monkeypatch.chdir(tmp_path)
    return DesignFolder(tmp_path, loading.load_families(built_in=hooks)).write(FILES)


def asked(shop: DesignFolder, *said: str) -> WhatIf:
    before = shop.assess()
    assert before.design is not None
    values = [question(one, before.design) for one in said]
    return what_if(before, values, lambda folder: assess([folder], shop.loaded))


def solving(shop: DesignFolder, value: str, rule: str) -> Solved:
    before = shop.assess()
    assert before.design is not None
    return solved(before, question(f"{value}=?", before.design), rule)


def contents(folder: Path) -> dict[str, bytes]:
    return {path.name: path.read_bytes() for path in folder.rglob("*") if path.is_file()}


def test_every_margin_that_moves_is_told_before_and_then(shop: DesignFolder) -> None:
    """By hand, σ = p d/(D − d) at d = 100.5, D = 104.5 mm: 30 bar uses 0.75375 of 100 MPa, 45 bar 1.130625."""
    before = contents(shop.root)
    found = asked(shop, "tube.pressure=45 bar gauge")
    (stress,) = (one for one in found.moved if one.check.rule.name == "tube.stress")
    assert stress.before is not None
    assert stress.after is not None
    assert stress.before.utilisation == pytest.approx(0.75375)
    assert stress.after.utilisation == pytest.approx(1.130625)
    assert found.moved[0].check.outcome == "finding"  # the worst first
    assert [one.rule.name for one in found.new] == ["tube.stress"]
    assert found.cleared == ()
    assert contents(shop.root) == before


def test_a_finding_that_goes_is_cleared(shop: DesignFolder) -> None:
    shop.replace("tube.toml", "30 bar", "45 bar")
    found = asked(shop, "tube.pressure=30 bar gauge")
    assert [one.rule.name for one in found.cleared] == ["tube.stress"]
    assert found.new == ()


def test_several_values_are_written_together(shop: DesignFolder) -> None:
    """At 45 bar a tube of 106 mm uses 4.5 × 100.5/(105.5 − 100.5) = 90.45 MPa."""
    found = asked(shop, "tube.pressure=45 bar gauge", "tube.outside=106 mm ±0.5")
    then = next(one for one in found.after.checks if one.rule.name == "tube.stress")
    assert then.utilisation == pytest.approx(0.9045)
    assert [one.was for one in found.restated] == ["30 bar gauge", "105 mm ±0.5"]


def test_a_check_that_rests_on_nothing_of_it_does_not_move(shop: DesignFolder) -> None:
    found = asked(shop, "tube.pressure=31 bar gauge")
    assert {one.check.rule.name for one in found.moved} == {"tube.stress"}


def test_parts_that_read_the_same_line_change_with_it(shop: DesignFolder) -> None:
    tube = (shop.root / "tube.toml").read_text(encoding="utf-8")
    shop.replace("tube.toml", 'kind = "tube"', 'kind = "tube"\nid = "tube-{each}"\neach = ["left", "right"]')
    assert 'kind = "tube"' in tube
    found = asked(shop, "tube-left.pressure=45 bar gauge")
    assert found.restated[0].with_it == ("tube-right",)
    assert {one.check.component for one in found.moved} == {"tube-left", "tube-right"}


def test_a_value_that_is_not_stated_yet_is_written_for_all_that_read_its_file(shop: DesignFolder) -> None:
    """Nowhere on a line so far: the file and the key are known, and the other parts that have the file."""
    shop.replace("tube.toml", 'kind = "tube"', 'kind = "tube"\nid = "tube-{each}"\neach = ["left", "right"]')
    shop.replace("tube.toml", "hoops = 4\n", "")
    found = asked(shop, "tube-left.hoops=3")
    (restated,) = found.restated
    assert (restated.question.name, restated.question.written) == ("tube-left.hoops", "3")
    assert (restated.where.file, restated.where.key) == ("tube.toml", "hoops")
    assert (restated.was, restated.with_it) == ("", ("tube-right",))
    assert {one.check.rule.name for one in found.moved} == {"tube.hoops"}
    outcomes = {
        (one.before.outcome, one.after.outcome)
        for one in found.moved
        if one.before is not None and one.after is not None
    }
    assert outcomes == {("not assessed", "finding")}


@pytest.mark.parametrize(
    ("said", "told"),
    [
        ("tube.pressure", "write it as COMPONENT.KEY=VALUE"),
        ("tube=3 mm", "write it as COMPONENT.KEY=VALUE"),
        ("tubee.bore=3 mm", 'no spec is called tubee; write "tube"'),
        ("tube.x.bore=3 mm", "tube has no key x.bore"),
        ("tube.boore=3 mm", 'tube has no key boore; write "bore"'),
        ("tube.bore=5,5 mm", 'a comma is not a decimal point; read "5,5 mm"; write "5.5 mm"'),
        ("tube.held_in=rak", 'no spec has this id; read "rak"; write "rack"'),
        ("tube.hoops=many", "this is not a whole number"),
    ],
)
def test_a_bad_key_or_value_is_one_line(
    said: str, told: str, shop: DesignFolder, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["check", str(shop.root), "--set", said]) == 2
    line = capsys.readouterr().err
    assert line.startswith("speclint: --set tube")
    assert told in line
    assert line.count("\n") == 1


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (["check", ".", "--set", "tubee.bore=3 mm"], "no spec is called tubee"),
        (["check", ".", "--set", "tube.boore=3 mm"], "tube has no key boore"),
        (["check", ".", "--set", "tube.bore=?"], "add --solve RULE"),
        (["check", ".", "--set", "tube.bore=3 mm", "--solve", "tube.stress"], "say which one value"),
        (["affects", "tubee.bore"], "no spec is called tubee"),
        (["affects", "tube.boore"], "tube has no key boore"),
    ],
)
@pytest.mark.usefixtures("shop")
def test_what_the_design_has_not_is_refused_before_it_is_checked(
    words: list[str],
    told: str,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
) -> None:
    """The whole example takes most of a minute."""

    def read(paths: Any, loaded: Any, rules: Any = None, **more: Any) -> Any:
        if rules is None or rules:
            raise AssertionError("the design was checked")
        return assess(paths, loaded, rules, **more)

    monkeypatch.setattr(checking, "assess", read)
    assert main(words) == 2
    assert told in capsys.readouterr().err


@pytest.mark.parametrize("words", [["check", ".", "--set", "tube.bore=3 mm"], ["affects", "tube.bore"]])
def test_settings_that_cannot_be_read_are_told_in_one_line(
    words: list[str], shop: DesignFolder, capsys: pytest.CaptureFixture[str]
) -> None:
    (shop.root / "speclint.toml").write_text("grade = [", encoding="utf-8")
    assert main(words) == 2
    told = capsys.readouterr().err
    assert told == "speclint: the settings could not be read: speclint check says why\n"


def test_a_mirrored_angle_is_asked_about_where_its_drawing_states_it(workshop: DesignFolder) -> None:
    """A block and its mirror read one drawing: at the place of the mirror the angle is turned: no text has it."""
    block = turned(written(LEFT), "30 ° ±1", "340 °")
    mirror = 'kind = "cylinder-block"\nmirror_of = "block-left"\n'
    first = {"a-duty.toml": written(DUTY).replace('"duty"', '"a-duty"', 1)}  # of another file
    workshop.write({**first, "duty.toml": written(DUTY), "block-left.toml": block, "mirrored.toml": mirror})
    before = assess([workshop.root], workshop.loaded, ())
    assert before.design is not None
    asked = question("mirrored.ports.front.angle=331 °", before.design)
    with pytest.raises(SettingsError) as problem:
        what_if(before, [asked], lambda folder: assess([folder], workshop.loaded, ()))
    assert str(problem.value) == (
        "--set mirrored.ports.front.angle: it is mirrored from block-left, whose drawing states it: "
        "ask about block-left.ports.front.angle"
    )


def test_nothing_is_asked_of_a_design_that_could_not_be_read(shop: DesignFolder) -> None:
    before = shop.assess()
    assert before.design is not None
    asked = question("tube.pressure=45 bar gauge", before.design)
    unread = replace(before, design=None)
    with pytest.raises(DesignError, match=r"^the settings could not be read: nothing can be asked"):
        what_if(unread, [asked], lambda folder: assess([folder], shop.loaded))


@pytest.mark.parametrize(
    ("more", "told"),
    [
        (["--staged"], "leave out --staged"),
        (["--against", "HEAD"], "leave out --against"),
        (["--as", "csv"], "there is no csv of it"),
    ],
)
def test_options_that_ask_something_else_are_refused(
    more: list[str], told: str, shop: DesignFolder, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["check", str(shop.root), "--set", "tube.bore=3 mm", *more]) == 2
    assert told in capsys.readouterr().err


# The value that just holds


def test_where_a_rule_holds_it_says_how_far_the_value_may_go(shop: DesignFolder) -> None:
    """By hand at 30 bar: D ≥ 100.5 × 1.03 = 103.515 mm, so that 104.015 mm ±0.5 just holds: 104.1 mm, in steps of 0.1.

    There it uses 3 × 100.5/(103.6 − 100.5) = 97.258 of 100 MPa. A thicker tube holds as far as is looked.
    """
    found = solving(shop, "tube.outside", "tube.stress")
    assert found.holds
    (bound,) = found.bounds
    assert (bound.written, bound.beyond, bound.higher) == ("104.1 mm ±0.5", "104 mm ±0.5", False)
    assert bound.used == pytest.approx(0.97258, abs=1e-5)


def test_the_greatest_pressure_that_holds(shop: DesignFolder) -> None:
    """By hand: 100 MPa × 4/100.5 = 39.801 bar × 10⁵ Pa, in steps of 0.1 bar."""
    (bound,) = solving(shop, "tube.pressure", "tube.stress").bounds
    assert (bound.written, bound.beyond, bound.higher) == ("39.8 bar gauge", "39.9 bar gauge", True)


@pytest.mark.parametrize("hoops", [4, 6])
def test_the_least_count_that_holds(hoops: int, shop: DesignFolder) -> None:
    """Four hoops are the least: 4 of 4 use the whole limit, and 3 are too few."""
    shop.replace("tube.toml", "hoops = 4", f"hoops = {hoops}")
    (bound,) = solving(shop, "tube.hoops", "tube.hoops").bounds
    assert (bound.written, bound.beyond, bound.higher) == ("4", "3", False)
    assert bound.used == pytest.approx(1.0)


def test_a_value_that_cannot_be_greater_is_itself_the_greatest(shop: DesignFolder) -> None:
    """By hand as above 39.801 bar: 39.8 bar holds, and 39.9 bar does not. A smaller one holds as far as is looked."""
    shop.replace("tube.toml", "30 bar", "39.8 bar")
    (bound,) = solving(shop, "tube.pressure", "tube.stress").bounds
    assert (bound.written, bound.beyond, bound.higher) == ("39.8 bar gauge", "39.9 bar gauge", True)
    assert not bound.exact


def test_where_it_fails_it_is_the_least_change_that_holds(shop: DesignFolder) -> None:
    """As in the test of remedies: at 45 bar the least outside diameter is 105.5225 mm."""
    shop.replace("tube.toml", "30 bar", "45 bar")
    found = solving(shop, "tube.outside", "tube.stress")
    assert not found.holds
    assert [one.written for one in found.bounds] == ["105.6 mm ±0.5"]


@pytest.mark.parametrize("side", ["left", "right"])
def test_of_parts_that_read_one_line_that_which_is_asked_about_answers(side: str, shop: DesignFolder) -> None:
    shop.replace("tube.toml", 'kind = "tube"', 'kind = "tube"\nid = "tube-{each}"\neach = ["left", "right"]')
    found = solving(shop, f"tube-{side}.pressure", "tube.stress")
    assert found.check.component == f"tube-{side}"
    assert [one.written for one in found.bounds] == ["39.8 bar gauge"]


def test_a_check_that_fails_answers_before_one_that_holds(shop: DesignFolder) -> None:
    """Two tubes in one rack: by hand a tube of 108 mm has no gap in a hole of 106 mm, one of 105 mm has 0.5 mm."""
    wide = (shop.root / "tube.toml").read_text(encoding="utf-8").replace("105 mm", "108 mm")
    shop.write({"wide.toml": wide})
    found = solving(shop, "rack.hole", "tube.loose-hot")
    assert (found.check.component, found.holds) == ("wide", False)


@pytest.mark.parametrize(
    ("value", "rule", "told"),
    [
        ("tube.outside", "tube.stres", 'no check of this rule is made here; write "tube.stress"'),
        ("rack.hole", "tube.stress", "no check of it rests on rack.hole; tube.loose-hot does"),
        ("tube.ends", "tube.stress", "no check of it rests on tube.ends"),
    ],
)
def test_a_rule_that_does_not_rest_on_the_value_is_told(
    value: str, rule: str, told: str, shop: DesignFolder
) -> None:
    with pytest.raises(SettingsError) as problem:
        solving(shop, value, rule)
    assert told in str(problem.value)


def test_a_rule_that_was_not_assessed_says_what_is_wanting(shop: DesignFolder) -> None:
    """That none of its checks rests on the value would be false: with a temperature it does."""
    shop.replace("tube.toml", 'temperature = "200..220 °C"\n', "")
    with pytest.raises(SettingsError) as problem:
        solving(shop, "tube.outside", "tube.loose-hot")
    assert str(problem.value).startswith(
        "--solve tube.loose-hot: not assessed on tube: temperature is not stated"
    )


@pytest.mark.parametrize(
    ("words", "stages"),
    [
        (
            ["--set", "tube.pressure=?", "--solve", "tube.stress"],
            ["checking as it is", "looking for the value that just holds", "checking with the values"],
        ),
        (["--set", "tube.pressure=31 bar gauge"], ["checking as it is", "checking with the values"]),
    ],
)
def test_a_terminal_is_told_each_stage_of_the_work(
    shop: DesignFolder, monkeypatch: pytest.MonkeyPatch, words: list[str], stages: list[str]
) -> None:
    stream = Terminal()
    monkeypatch.setenv("TERM", "xterm")
    monkeypatch.setattr(sys, "stderr", stream)
    assert main(["check", str(shop.root), *words]) == 0
    told = [one.strip() for one in stream.getvalue().split("\r")]
    assert list(dict.fromkeys(one.split(":")[0] for one in told if one)) == stages


def test_the_page_and_the_data_tell_the_same(shop: DesignFolder, capsys: pytest.CaptureFixture[str]) -> None:
    words = ["check", str(shop.root), "--set", "tube.pressure=?", "--solve", "tube.stress"]
    assert main(words) == 0
    page = " ".join(capsys.readouterr().out.split())
    assert "tube.pressure: 30 bar gauge → 39.8 bar gauge" in page
    assert "It just holds up to 39.8 bar gauge, 1.00 of the limit; proved by running the rule with it" in page
    assert "0.75 1.00 tube tube.stress" in page
    assert main([*words, "--as", "json"]) == 0
    data = json.loads(capsys.readouterr().out)
    assert data["schema"] == "speclint.what-if/1"
    assert data["set"][0] | {"line": 0} == {
        "component": "tube",
        "key": "pressure",
        "was": "30 bar gauge",
        "then": "39.8 bar gauge",
        "file": "tube.toml",
        "line": 0,
        "read_for": [],
    }
    assert data["solved"]["bounds"][0]["beyond"] == "39.9 bar gauge"
    assert [one["rule"] for one in data["moved"]] == ["tube.stress"]


@pytest.mark.parametrize(
    ("old", "new", "value", "rule", "told"),
    [
        (
            "hoops = 4",
            "hoops = 4",
            "hoops",
            "hoops",
            "with a greater value within 12 more or fewer, as far as",
        ),
        ("hoops = 4", "hoops = 30", "hoops", "hoops", "holds either way within 12 more or fewer, as far as"),
        (
            "30 bar",
            "30 bar",
            "pressure",
            "stress",
            "with a smaller value within 50 % of the value, as far as",
        ),
        ("30 bar", "300 bar", "pressure", "stress", "No change within 50 % of the value makes it hold."),
        (
            "30 bar",
            "0 bar",
            "pressure",
            "stress",
            "No other value was tried: as it is written, it has no step",
        ),
    ],
)
def test_the_page_says_how_far_was_looked(
    shop: DesignFolder,
    capsys: pytest.CaptureFixture[str],
    old: str,
    new: str,
    value: str,
    rule: str,
    told: str,
) -> None:
    """At least 4 hoops are wanted; the tube holds to 39.8 bar gauge, which lies beyond half of 300 bar."""
    shop.replace("tube.toml", old, new)
    main(["check", str(shop.root), "--set", f"tube.{value}=?", "--solve", f"tube.{rule}"])
    assert told in " ".join(capsys.readouterr().out.split())


def test_the_data_keep_to_their_schema(shop: DesignFolder, capsys: pytest.CaptureFixture[str]) -> None:
    """The tube of 30 bar at 45 bar uses 113.1 MPa of 100: one margin moves and one finding comes."""
    words = ["check", str(shop.root), "--set", "tube.pressure=45 bar gauge"]
    assert main([*words, "--schema"]) == 0
    schema = json.loads(capsys.readouterr().out)
    jsonschema.Draft202012Validator.check_schema(schema)
    keeps = jsonschema.Draft202012Validator(schema)
    main([*words, "--as", "json"])
    data = json.loads(capsys.readouterr().out)
    keeps.validate(data)
    assert [one["rule"] for one in data["new"]] == ["tube.stress"]
    main(["check", str(shop.root), "--set", "tube.pressure=?", "--solve", "tube.stress", "--as", "json"])
    solved = json.loads(capsys.readouterr().out)
    keeps.validate(solved)
    assert solved["solved"]["bounds"]
    wrongs: tuple[dict[str, Any], ...] = (
        {"set": []},
        {"moved": [{**data["moved"][0], "after": {}}]},
        {"new": [{"rule": "tube.stress"}]},
    )
    for wrong in wrongs:
        assert not keeps.is_valid({**data, **wrong})


def test_a_value_with_a_question_mark_asks_for_a_rule(
    shop: DesignFolder, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["check", str(shop.root), "--set", "tube.bore=?"]) == 2
    assert "add --solve RULE" in capsys.readouterr().err
    assert main(["check", str(shop.root), "--set", "tube.bore=3 mm", "--solve", "tube.stress"]) == 2
    assert "say which one value is to be found" in capsys.readouterr().err


def test_results_kept_of_the_question_are_not_those_of_the_design(
    shop: DesignFolder, capsys: pytest.CaptureFixture[str]
) -> None:
    """Enough parts for results to be kept: after the question the design itself checks as before."""
    tube = (shop.root / "tube.toml").read_text(encoding="utf-8")
    shop.write({f"other-{number}.toml": tube for number in range(4)})
    assert main(["check", str(shop.root)]) == 0
    first = capsys.readouterr().out
    assert main(["check", str(shop.root), "--set", "tube.pressure=45 bar gauge"]) == 1
    assert "NEW: 1 finding" in capsys.readouterr().out
    assert main(["check", str(shop.root)]) == 0
    assert capsys.readouterr().out == first


def test_an_id_may_hold_points(shop: DesignFolder) -> None:
    """The longest id that is known is meant: of tube and tube.left the second."""
    left = (shop.root / "tube.toml").read_text(encoding="utf-8")
    shop.write({"left.toml": f'id = "tube.left"\n{left}'})
    design = shop.assess().design
    assert design is not None
    asked = question("tube.left.bore=3 mm", design)
    assert (asked.component, asked.key) == ("tube.left", "bore")
    asked = question("tube.bore=3 mm", design)
    assert (asked.component, asked.key) == ("tube", "bore")
