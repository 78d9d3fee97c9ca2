"""What a rule says of itself: the hazards that it guards against, its gravest grade, its limits, whom it concerns."""

from __future__ import annotations

from typing import Any, ClassVar

import pytest

from speclint import (
    COMMON_PRACTICE,
    FIRST_PRINCIPLES,
    Grade,
    Judgement,
    Limit,
    Rule,
    Sheet,
    agreement,
    filled_once,
    rule,
)
from speclint.rules import rules_in
from speclint.specs import Component, Hazards


class Shell(Component):
    """A shell under pressure."""

    kind: ClassVar[str] = "shell"
    called: ClassVar[str] = "shell"
    hazards: ClassVar[Hazards | None] = ("burst", "leak", "wear")


class Vessel(Shell):
    """A shell with ends."""

    kind: ClassVar[str] = "vessel"
    called: ClassVar[str] = "vessel"


class Label(Component):
    """A label, which can suffer nothing."""

    kind: ClassVar[str] = "label"
    called: ClassVar[str] = "label"


def made(**changed: Any) -> Rule:
    said: dict[str, Any] = {"title": "t", "on": Shell, "grade": Grade.QUERY, "cites": [FIRST_PRINCIPLES]}

    @rule("shell.holds", **{**said, "why": "w", "leaves_out": "l", **changed})
    def holds(_shell: Shell, sheet: Sheet) -> Judgement:
        return sheet.states(True, "it holds")

    return holds


@pytest.mark.parametrize(
    ("against", "against_on", "kind", "guards", "beside"),
    [
        (("burst",), {}, Shell, ("burst",), ()),
        (("leak", "burst"), {}, Shell, ("burst", "leak"), ()),  # in the order of the part
        (("seize",), {}, Shell, (), ()),  # what the part cannot suffer
        (("burst",), {}, Label, (), ()),
        (None, {"shell": ("leak",)}, Shell, ("leak",), ("leak",)),
        (None, {"shell": ("leak",)}, Vessel, ("leak",), ("leak",)),  # built on a shell
        (None, {"vessel": ("leak",)}, Shell, (), ()),
        (("wear",), {"shell": ("leak", "seize")}, Vessel, ("leak", "wear"), ("leak",)),
        (None, {"label": ("leak",)}, Label, (), ()),
        (None, {}, Shell, (), ()),
    ],
)
def test_a_rule_guards_against_what_it_names_and_the_part_can_suffer(
    against: Hazards | None,
    against_on: dict[str, Hazards],
    kind: type[Component],
    guards: Hazards,
    beside: Hazards,
) -> None:
    one = made(against=against, against_on=against_on)
    assert one.guards(kind) == guards
    assert one.guards_beside(kind) == beside


def test_the_gravest_grade_is_never_below_the_usual_one() -> None:
    assert made().gravest is Grade.QUERY
    assert made(gravest=Grade.HOLD).gravest is Grade.HOLD
    assert made(grade=Grade.NONCONFORMITY, gravest=Grade.QUERY).gravest is Grade.NONCONFORMITY


def test_a_limit_is_found_by_its_name() -> None:
    limits = [Limit(name, "1", "ratio", COMMON_PRACTICE) for name in ("least", "most")]
    assert made(limits=limits).limit("most") is limits[1]
    with pytest.raises(KeyError, match=r"rule shell\.holds declares no limit 'mean'"):
        made(limits=limits).limit("mean")


@pytest.mark.parametrize(
    ("kinds", "asked", "concerns"),
    [
        ((), ["shell"], True),  # of every component
        ((), [], True),
        (("shell",), ["vessel", "shell"], True),
        (("shell", "label"), ["label"], True),
        (("shell",), ["label"], False),
        (("shell",), [], False),
    ],
)
def test_rules_of_a_module_concern_the_kinds_that_it_names(
    kinds: tuple[str, ...], asked: list[str], concerns: bool
) -> None:
    assert rules_in("tests.tubes", *kinds).concern(asked) is concerns


def test_a_rule_is_known_to_its_family() -> None:
    one = made(cases=["running"], edition=3, row=2, wrong="it fails", reached_by="held_in")
    known = one.of_family("shells")
    assert (one.family, known.family) == ("", "shells")
    assert (known.cases, known.edition, known.row, known.wrong, known.reached_by) == (
        ("running",),
        3,
        2,
        "it fails",
        "held_in",
    )
    assert known == one


def test_a_rule_is_of_its_first_edition_and_reviews_nothing_unless_it_says_so() -> None:
    one = made()
    assert (one.edition, one.row, one.reviews, one.agreement) == (1, 0, False, False)
    assert (one.cases, one.limits, one.wrong, one.reached_by, one.against) == ((), (), "", "", None)
    assert made(reviews=True).reviews
    words: Any = {"title": "t", "on": Shell, "grade": Grade.QUERY, "why": "w", "leaves_out": "l"}

    def pairs(_shell: Shell, _sheet: Sheet) -> Any:
        """Nothing."""
        return ()

    held = agreement("shell.agrees", pairs=pairs, **words)
    assert (held.edition, held.row, held.agreement, held.against) == (1, 0, True, ())
    assert [(limit.name, limit.default) for limit in held.limits] == [("difference", "0.01 mm")]
    del words["grade"]
    filled = filled_once("shell.filled", places=pairs, row=3, gravity="part", **words)
    assert (filled.edition, filled.row, filled.against) == (1, 3, ())
