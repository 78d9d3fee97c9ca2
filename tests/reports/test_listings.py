"""Lists of what is loaded, of the family of tubes and one made here: each line by hand."""

from __future__ import annotations

from typing import ClassVar

import pytest

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Sheet, rule
from speclint.errors import replace
from speclint.families import Loaded, load_families
from speclint.reports.listings import (
    about_family,
    families_page,
    kind_page,
    kinds_page,
    rules_data,
    rules_page,
)
from speclint.reports.rule_words import hazards_in_words
from speclint.rules import Rule
from speclint.specs import Component, Hazards
from speclint.testing import made_family
from tests import tubes
from tests.specs.made_up import Foot, Rest, Stand


@rule(
    "stand.firm",
    title="it stands firm",
    on=(Component, Stand),
    grade=Grade.QUERY,
    cases=("starting", "running"),
    limits=[
        Limit("least", "3", "ratio", COMMON_PRACTICE, "least number of feet"),
        Limit("most", "9", "ratio", COMMON_PRACTICE),
    ],
    cites=[COMMON_PRACTICE],
    why="for tests",
    leaves_out="the floor",
    against=("foul",),
    against_on={"piston": ("seize", "wear")},
    edition=3,
)
def firm(_part: Component, _case: object, sheet: Sheet) -> Judgement:
    """Made for a test."""
    return sheet.states(True, "it stands")


FIRM = firm.of_family("stands")
HOOPS, LOOSE = (one.of_family("tubes") for one in (tubes.hoops, tubes.loose_hot))


def lines(text: str) -> list[str]:
    return [line.rstrip() for line in text.splitlines()]


def test_rules_stand_below_their_family_in_a_line_each() -> None:
    assert lines(rules_page((LOOSE, FIRM, HOOPS), 100, full=False).text()) == [
        "family stands",
        "  stand.firm      query: it stands firm",
        "",
        "family tubes",
        "  tube.hoops      observation: the tube has hoops enough",
        "  tube.loose-hot  nonconformity, or hold: the tube stays loose",
    ]
    assert rules_page((), 100, full=False).lines == []


def test_a_rule_in_full() -> None:
    found = lines(rules_page((FIRM,), 100, full=True).text())
    assert found[:2] == ["family stands", ""]
    assert found[2].startswith("stand.firm  ")
    assert found[2].endswith("  edition 3")
    assert found[3:] == [
        "  says         it stands firm",
        "  why          for tests",
        "  grade        query",
        "  on           every component, stand",
        "  load cases   starting, running",
        f"  limit        least = 3 (least number of feet); {COMMON_PRACTICE}",
        f"  limit        most = 9 (most); {COMMON_PRACTICE}",
        "  not covered  the floor",
        "  against      foul; seize, wear of the piston",
        f"  source       {COMMON_PRACTICE}",
        "  works        Made for a test.",
    ]
    assert "  load cases   none" in lines(rules_page((HOOPS,), 100, full=True).text())


@pytest.mark.parametrize(
    ("against", "of_others", "said"),
    [
        (("foul", "fall"), {}, "foul, fall"),
        ((), {"piston": ("seize",)}, "seize of the piston"),
        ((), {}, "no hazard by itself"),
        (None, {}, "it does not say which hazard it guards against"),
    ],
)
def test_what_a_rule_guards_against(
    against: tuple[str, ...] | None, of_others: dict[str, tuple[str, ...]], said: str
) -> None:
    one: Rule = replace(FIRM, against=against, against_on=of_others)  # type: ignore[arg-type]  # words of hazards
    assert hazards_in_words(one) == said


def test_rules_as_data() -> None:
    (found,) = rules_data((FIRM,))
    assert found == {
        "rule": "stand.firm",
        "family": "stands",
        "statement": "it stands firm",
        "why": "for tests",
        "grade": "query",
        "gravest": "query",
        "on": ["every component", "stand"],
        "cases": ["starting", "running"],
        "limits": [
            {
                "name": "least",
                "default": "3",
                "says": "least number of feet",
                "source": str(COMMON_PRACTICE),
            },
            {"name": "most", "default": "9", "says": "", "source": str(COMMON_PRACTICE)},
        ],
        "leaves_out": "the floor",
        "against": ["foul"],
        "against_on": {"piston": ["seize", "wear"]},
        "sources": [str(COMMON_PRACTICE)],
        "edition": 3,
    }
    (bare,) = rules_data((replace(FIRM, against=None, against_on={}),))
    assert (bare["against"], bare["against_on"]) == ([], {})


def test_kinds_in_a_line_each() -> None:
    assert lines(kinds_page((Stand, Rest), 100).text()) == [
        "  stand  A stand of a test.",
        "  rest   What a stand carries.",
    ]
    assert kinds_page((), 100).lines == []


def test_a_kind_with_its_keys_those_of_every_component_last() -> None:
    found = lines(kind_page(Stand, 200).text())
    assert found[0].startswith("stand  ")
    assert found[0].endswith("  stand")
    assert found[1:5] == ["A stand of a test.", "", "Keys", f'  {"kind":26}"stand"']
    own, of_every = (
        found.index(f"  {'legs':26}a whole number"),
        found.index("Keys of every component"),
    )
    assert own < of_every
    assert found[of_every - 1] == ""
    assert found.count("Keys of every component") == 1
    assert any(line.startswith("  drawing ") for line in found[of_every:])
    assert not any(line.startswith("  drawing ") for line in found[:of_every])
    assert f"  {'feet.NAME.fixed':26}whether it is bolted down; true or false" in found


def test_a_kind_says_what_it_can_suffer() -> None:
    class Risky(Stand):
        """A stand that may fall."""

        kind: ClassVar[str] = "risky"
        hazards: ClassVar[Hazards] = ("fall", "foul")

    said = "What it can suffer, by common practice: fall, foul."
    assert said in kind_page(Risky, 200).text()
    assert "can suffer" not in kind_page(Stand, 200).text()


def test_families_with_what_they_are_and_how_many_rules_they_have() -> None:
    loaded = load_families([made_family("stands", (Stand, Rest), (firm,)), tubes.entry_point("tubes")])
    found = families_page(loaded, 200).text()
    stands, of_tubes = lines(found)
    assert stands.startswith("  stands          A family made for a test. ")
    assert ", 1 rules (family_stands_" in stands
    assert of_tubes.startswith("  tubes           A family made for a test. ")
    assert ", 5 rules (family_tubes_" in of_tubes


def test_families_that_are_left_out_or_not_there() -> None:
    nothing = Loaded((), (), ())
    assert lines(families_page(nothing, 100).text()) == ["no family is installed"]
    left_out = replace(nothing, left_out=("stands",))
    assert lines(families_page(left_out, 100).text()) == [
        "  stands          left out by speclint.toml",
        "no other family is installed",
    ]


def test_what_a_family_concerns_is_the_first_line_of_its_module() -> None:
    assert about_family("tests.tubes") == (
        "A small family for tests of the core: tubes under pressure, their racks, and rules of every shape. "
    )
    assert about_family("no.such.module") == ""
    assert Foot.__doc__
