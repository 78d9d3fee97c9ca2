"""How a rule is worked, as it is printed with it: of rules made here, each line by hand."""

from __future__ import annotations

import pytest

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Rule, Sheet, formula, require, rule
from speclint.equations import CGPM, Kilograms, Metres, Newtons, Ratio
from speclint.handbook.fits import share_of_size
from speclint.reports import rule_working
from speclint.reports.listings import rules_data
from speclint.reports.page import Page
from speclint.reports.rule_working import working_data, working_on
from speclint.specs import Component
from speclint.testing import installed_families


@formula("F = k M · 9.80665 m/s²", cites=[FIRST_PRINCIPLES, CGPM], empirical="kg and N")
def lifted(M: Kilograms, k: Ratio) -> Newtons:
    """Force that lifts a part.

    F = k M · 9.80665 m/s²

    ``M`` mass [kg]; ``k`` share of it [-]. Returns [N]. Raises OutOfRange unless k > 0.

    >>> lifted(M=1.0, k=1.0)
    9.80665
    """
    require(k > 0, "something is lifted")
    return k * M * 9.80665


@formula("z = 2 y", cites=[COMMON_PRACTICE])
def twice(y: Metres) -> Metres:
    """Twice a length.

    ``y`` the length [m]. Returns [m].
    """
    return 2 * y


@rule(
    "part.lifts",
    title="it can be lifted",
    on=Component,
    grade=Grade.QUERY,
    cites=[COMMON_PRACTICE],
    why="for tests",
    leaves_out="the crane",
)
def lifts(_part: Component, sheet: Sheet) -> Judgement:
    """The force is ``k M g``.

    A part without a mass
    has none.
    """
    k = sheet.work("k", share_of_size, d=2.0, share=0.5)
    return sheet.states(sheet.work("F", lifted, M=1000.0, k=k) > 0, "it lifts")


@rule(
    "part.is",
    title="it is there",
    on=Component,
    grade=Grade.QUERY,
    cites=[COMMON_PRACTICE],
    why="for tests",
    leaves_out="all else",
)
def stands(_part: Component, sheet: Sheet) -> Judgement:
    return sheet.states(True, "it is there")


LIFTS, STANDS = lifts.of_family("lifting"), stands.of_family("lifting")


@pytest.fixture
def _a_family(monkeypatch: pytest.MonkeyPatch) -> None:
    """This module stands for a family."""
    search = rule_working._search()
    monkeypatch.setattr(search, "of_rule", lambda one: (twice, *search.named_by(one.function)))


def printed(one: Rule) -> list[str]:
    page = Page(100)
    working_on(page, one)
    return [line.rstrip() for line in page.text().splitlines()]


@pytest.mark.usefixtures("_a_family")
def test_words_formulae_of_the_family_and_the_others_in_short() -> None:
    *own, shared, number, last = printed(LIFTS)
    assert own == [
        "  works        The force is k M g.",
        "               A part without a mass has none.",
        "  formula      z = 2 y",
        "               Twice a length. y: the length [m]. Source: common practice.",
        "  formula      F = k M · 9.80665 m/s²",
        "               Force that lifts a part. M: mass [kg]; k: share of it. Stated in kg and N. There is",
        "               no result unless k > 0. Source: first principles; General Conference on Weights and",
        "               Measures, 3rd meeting, 1901, standard acceleration of gravity.",
    ]
    assert shared == "  and by       t_n = k t: Share of a size, or of the zone of a tolerance."
    assert (
        number
        == "               1 formula that other rules share: speclint reference writes them out, speclint sheet"
    )
    assert last == "               those that a part needs"


@pytest.mark.usefixtures("_a_family")
def test_more_than_a_reader_takes_in_are_told_by_their_number(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(rule_working, "_MOST_IN_SHORT", 0)
    assert printed(LIFTS)[-2].startswith("  and by       1 formula that other rules share:")


def test_a_rule_without_words_or_formulae_prints_nothing() -> None:
    assert printed(STANDS) == []
    assert working_data(STANDS) == {"works": "", "formulae": [], "shared_formulae": []}


@pytest.mark.usefixtures("_a_family")
def test_the_same_as_data() -> None:
    found = working_data(LIFTS)
    assert found["works"] == "The force is k M g.\n\nA part without a mass has none."
    assert found["formulae"] == [
        {
            "equation": "z = 2 y",
            "says": "Twice a length.",
            "symbols": [{"names": ["y"], "unit": "m", "means": "the length"}],
            "unit": "m",
            "ranges": [],
            "sources": [str(COMMON_PRACTICE)],
        },
        {
            "equation": "F = k M · 9.80665 m/s²",
            "says": "Force that lifts a part.",
            "symbols": [
                {"names": ["M"], "unit": "kg", "means": "mass"},
                {"names": ["k"], "unit": "1", "means": "share of it"},
            ],
            "unit": "N",
            "ranges": ["There is no result unless k > 0."],
            "sources": [str(FIRST_PRINCIPLES), str(CGPM)],
        },
    ]
    assert len(found["shared_formulae"]) == 1
    assert "formulae" not in rules_data([LIFTS])[0]
    assert rules_data([LIFTS], full=True)[0]["formulae"] == found["formulae"]


def test_every_rule_that_is_installed_says_how_it_is_worked() -> None:
    """In words or by formulae of its own: a reader who has only this can begin."""
    silent = [
        one.name
        for one in installed_families().rules
        if not printed(one) or printed(one)[0].split()[0] == "and"
    ]
    assert silent == []
